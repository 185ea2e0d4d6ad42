"""Widgets side by side, in as few rows as there is room for, with as many in each."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QSize, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

__all__ = ["EvenRows"]


class EvenRows(QWidget):
    """In one row all stand as a layout would lay them; without the room, in two or more.

    Parameters
    ----------
    spacing
        Pixels between widgets, and between rows.
    stretch
        What each takes of the room that is left, in proportion.
    keeps
        Whether room that none of them may take is left at the right.

    Signals
    -------
    broke(bool)
        They stand in more than one row now, or no longer.
    """

    broke = Signal(bool)

    def __init__(self, spacing: int = 6, *, stretch: int = 0, keeps: bool = False) -> None:
        super().__init__()
        self._spacing, self._stretch, self._keeps = spacing, stretch, keeps
        self._widgets: list[QWidget] = []
        self._across = 0
        self._rows: list[QHBoxLayout] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(spacing)

    def put(self, *widgets: QWidget) -> None:
        """Show these, in order, in place of what is there, which the caller removes."""
        self._widgets, self._across = list(widgets), 0
        for widget in widgets:
            widget.setParent(self)
        self._lay()

    def unbroken(self) -> int:
        """Give the width, in pixels, at which all stand in one row."""
        gaps = self._spacing * max(len(self._widgets) - 1, 0)
        return sum(map(_least, self._widgets)) + gaps

    def minimumSizeHint(self) -> QSize:
        """Need the width of the widest: the others may go on below."""
        return QSize(max(map(_least, self._widgets), default=0), super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Break where there is less room, and no longer where there is more."""
        super().resizeEvent(event)
        self._lay()

    def event(self, event: QEvent) -> bool:
        """Break anew once one of them is wider or narrower."""
        done = super().event(event)
        if event.type() == QEvent.Type.LayoutRequest:
            self._lay()
        return done

    def _most(self) -> int:
        """Give how many stand in a row; before there is a width, all."""
        count = len(self._widgets)
        if not self.isVisible():
            return self._across or count
        least = [_least(widget) + self._spacing for widget in self._widgets]
        room = self.width() + self._spacing
        for rows in range(1, count):
            across = -(-count // rows)
            if all(sum(least[at : at + across]) <= room for at in range(0, count, across)):
                return across
        return min(1, count)

    def _lay(self) -> None:
        across = self._most()
        if across == self._across:
            return
        before, self._across = len(self._rows) > 1, across
        for row in self._rows:
            while row.count():
                row.takeAt(0)
            self._column.removeItem(row)
        self._rows = [
            self._row(self._widgets[at : at + across])
            for at in range(0, len(self._widgets), max(across, 1))
        ]
        if before != (len(self._rows) > 1):
            self.broke.emit(not before)

    def _row(self, widgets: list[QWidget]) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(self._spacing)
        for widget in widgets:
            row.addWidget(widget, self._stretch)
        if self._keeps:
            row.addStretch(0)
        self._column.addLayout(row)
        return row


def _least(widget: QWidget) -> int:
    return max(widget.minimumSizeHint().width(), widget.minimumWidth())
