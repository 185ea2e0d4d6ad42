"""What is wrong with the photo and what to do about it: the worst, and the rest on asking."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from swatchwright.desktop.widgets.shelf_bits import button, label, scrolled
from swatchwright.desktop.words import photo as words

__all__ = ["PhotoFindings"]

_HIGHEST = 118


class PhotoFindings(QWidget):
    """A short list that can be made longer in place, and is scrolled where it would be too high."""

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
        row.setSpacing(6)
        row.addWidget(self.area, 1)
        row.addWidget(self.more, 0, Qt.AlignmentFlag.AlignBottom)
        self.hide()

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
        text = words.FEWER if self._all else words.more_findings(len(self._told) - 1)
        self.more.setText(text)
        self.more.setAccessibleName(text)
        self.more.setVisible(len(self._told) > 1)
        self._fit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fit the height to the new width."""
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        """Be as high as the text, up to a limit."""
        spare = self.more.sizeHint().width() + 6 if len(self._told) > 1 else 0
        needs = self.list.heightForWidth(max(120, self.width() - spare - 4))
        self.area.setFixedHeight(min(needs + 4, _HIGHEST))
