"""Lines of text that come and go in room that stays: what is above them keeps its size."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QRect, Qt
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QFrame, QLabel, QVBoxLayout, QWidget

from swatchwright.desktop.widgets.areas import ScrollArea

__all__ = ["OTHER_LETTERS", "KeptLines", "lines_high"]

OTHER_LETTERS = (QEvent.Type.FontChange, QEvent.Type.StyleChange)
"""What happens to a widget whose letters become larger or smaller."""

_LINES, _FRAME = 2, 4
_ANY = QRect(0, 0, 999, 999)


def lines_high(label: QLabel, lines: int) -> int:
    """Give how high so many lines are in the letters of a label, in pixels."""
    told = "\n".join("A" * lines)
    return label.fontMetrics().boundingRect(_ANY, Qt.TextFlag.TextWordWrap, told).height()


class KeptLines(ScrollArea):
    """Shows labels below one another in the height of two lines; more of them are scrolled.

    Parameters
    ----------
    labels
        What is shown; those that are hidden take no room.
    name
        What a screen reader calls it.
    """

    def __init__(self, labels: Sequence[QLabel], name: str) -> None:
        super().__init__()
        self._first = labels[0]
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setAccessibleName(name)
        holder = QWidget()
        holder.setObjectName("bench")
        rows = QVBoxLayout(holder)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(0)
        for label in labels:
            rows.addWidget(label)
        rows.addStretch(1)
        self.setWidget(holder)
        self.setWidgetResizable(True)
        self._fit()

    def changeEvent(self, event: QEvent) -> None:
        """Take the height of other letters."""
        super().changeEvent(event)
        if event.type() in OTHER_LETTERS and self.widget() is not None:
            self._fit()

    def showEvent(self, event: QShowEvent) -> None:
        """Take the height of the letters that it is shown in."""
        super().showEvent(event)
        self._fit()

    def _fit(self) -> None:
        self._first.ensurePolished()
        self.setFixedHeight(lines_high(self._first, _LINES) + _FRAME)
