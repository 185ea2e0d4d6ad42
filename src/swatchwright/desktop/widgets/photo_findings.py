"""What is wrong with the photo and what to do about it: the worst, and the rest on asking."""

from __future__ import annotations

from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from swatchwright.desktop.widgets.kept_lines import OTHER_LETTERS, lines_high
from swatchwright.desktop.widgets.shelf_bits import button, label, scrolled
from swatchwright.desktop.words import photo as words

__all__ = ["PhotoFindings"]

_LINES, _PADDING = 2, 18
"""Lines that have room without asking; and pixels above and below them."""
_HIGHEST = 118
"""Pixels of all of them, once they are asked for."""

_FRAME, _GAP = 4, 6


class PhotoFindings(QWidget):
    """The worst in two lines, scrolled where it needs more; all of them in place on asking."""

    def __init__(self) -> None:
        super().__init__()
        self._told: tuple[str, ...] = ()
        self._all = False
        self.list = label("", "warn")
        self.list.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.area = scrolled(self.list, words.FINDINGS)
        self.more = button("", self._turn, "little")
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(_GAP)
        row.addWidget(self.area, 1)
        row.addWidget(self.more, 0, Qt.AlignmentFlag.AlignBottom)
        self.hide()

    def room(self) -> int:
        """Give the height of what is shown without asking, in pixels: the same for every text."""
        return lines_high(self.list, _LINES) + _PADDING

    def show_findings(self, told: tuple[str, ...]) -> None:
        """Show what was found, the worst first."""
        self._all = self._all and told == self._told
        self._told = told
        self._show()

    @property
    def any(self) -> bool:
        """Whether anything was found."""
        return bool(self._told)

    def _turn(self) -> None:
        self._all = not self._all
        self._show()

    def _show(self) -> None:
        shown = self._told if self._all else self._told[:1]
        self.list.setText("\n".join(shown))
        others = words.more_findings(len(self._told) - 1) if len(self._told) > 1 else words.READ_ON
        text = words.FEWER if self._all else others
        self.more.setText(text)
        self.more.setAccessibleName(text)
        self._fit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fit the height to the new width."""
        super().resizeEvent(event)
        self._fit()

    def changeEvent(self, event: QEvent) -> None:
        """Fit the height to other letters."""
        super().changeEvent(event)
        if event.type() in OTHER_LETTERS and hasattr(self, "more"):
            self._fit()

    def _fit(self) -> None:
        """Be as high as two lines or, if all is asked for, as the text, up to a limit."""
        room = self.room()
        # A label tells no height below its least.
        self.list.setMinimumHeight(0)
        long = self._needs(with_button=False) > room
        self.more.setVisible(len(self._told) > 1 or long)
        needs = self._needs(with_button=not self.more.isHidden())
        # A label in an area is pressed flat, where it is not told how high it is.
        self.list.setMinimumHeight(max(needs - _FRAME, 0))
        self.area.setFixedHeight(min(max(needs, room), _HIGHEST) if self._all else room)

    def _needs(self, *, with_button: bool) -> int:
        """Give how high the text is beside the button or without it."""
        spare = self.more.sizeHint().width() + _GAP if with_button else 0
        return self.list.heightForWidth(max(120, self.width() - spare - _FRAME)) + _FRAME
