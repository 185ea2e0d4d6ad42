"""The sheet as it will print, with what is done with it above and what is to be said below."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QSizePolicy, QVBoxLayout, QWidget

from swatchwright.acts.sheet_form import page_size
from swatchwright.desktop.widgets.piece_fields import label
from swatchwright.desktop.widgets.sheet_bar import SheetBar
from swatchwright.desktop.widgets.sheet_maker import DrawnPages, MadeSheet
from swatchwright.desktop.widgets.sheet_preview import SheetPreview
from swatchwright.desktop.words import sheet as words

__all__ = ["SheetSide"]


class SheetSide(QWidget):
    """Bar, preview and lines; in place of all of them, why there is no sheet."""

    def __init__(self) -> None:
        super().__init__()
        self.bar, self.preview = SheetBar(), SheetPreview()
        self.blocked = label(words.MAKING, "waiting")
        self.gaps, self.done = label("", "warn"), label("", "strong")
        self.source, self.lacks = label("", "small"), label("", "small")
        self.pages = label("", "small", wraps=False)
        self._lines = (self.gaps, self.done, self.source, self.lacks, self.pages)
        self.blocked.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.blocked.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(6)
        rows.addWidget(self.bar)
        rows.addWidget(self.blocked, 1)
        rows.addWidget(self.preview, 1)
        for line in self._lines:
            rows.addWidget(line)
        self.bar.full_wanted.connect(lambda full: self.preview.set_full(full=full))
        self.block(words.MAKING)

    def block(self, why: str) -> None:
        """Say in place of the sheet why there is none."""
        self.preview.clear()
        for widget in (self.bar, self.preview, *self._lines):
            widget.hide()
        self.blocked.setText(why)
        self.blocked.show()

    def show_made(self, made: MadeSheet) -> None:
        """Show what is said of a sheet, and ask for its pages."""
        content = made.content
        self.blocked.hide()
        self.bar.show()
        self.preview.show()
        self.bar.show_zones([(zone.name, zone.code) for zone in content.zones])
        _say(self.gaps, words.gaps_line(content))
        _say(self.done, "")
        _say(self.source, "" if content.job else words.FIRST_MIX)
        _say(self.lacks, words.lacks_line(content, made.form))
        self.preview.show_size(page_size(made.form))

    def show_pages(self, drawn: DrawnPages) -> None:
        """Show the pages of a sheet."""
        self.preview.show_pages(drawn.images, drawn.dpi)
        count = len(drawn.images)
        name = words.preview_name(drawn.sheet.form, count, grey=drawn.grey)
        for seen in (self.preview, self.preview.leaves):
            seen.setAccessibleName(name)
            seen.setAccessibleDescription(words.preview_told(drawn.sheet.content))
        _say(self.pages, words.pages_line(count, self.preview.times))

    def say(self, text: str) -> None:
        """Say what was done with it."""
        _say(self.done, text)


def _say(line: QLabel, text: str) -> None:
    line.setText(text)
    line.setVisible(bool(text))
