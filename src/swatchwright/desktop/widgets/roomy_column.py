"""One column of a table that takes the room that is left, and is never too narrow for its words."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QEvent, QObject
from PySide6.QtWidgets import QHeaderView, QTableView

__all__ = ["RoomyColumn"]

_EDGE = 1
"""Pixels of the line between two columns."""


class RoomyColumn(QObject):
    """Lets a column give way no further than to its words: then the table has a bar below.

    Parameters
    ----------
    table
        The table, whose other columns are as wide as their words.
    column
        Which of its columns.
    turned
        What is to be done where the bar comes or goes, which takes height.
    """

    def __init__(self, table: QTableView, column: int, turned: Callable[[], object]) -> None:
        super().__init__(table)
        self._table, self._column, self._turned = table, column, turned
        self._roomy = True
        table.viewport().installEventFilter(self)
        table.horizontalHeader().geometriesChanged.connect(self._fit)
        table.horizontalHeader().sectionResized.connect(self._fit)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Look anew where there is more room, or less."""
        if event.type() == QEvent.Type.Resize:
            self._fit()
        return super().eventFilter(watched, event)

    def _fit(self) -> None:
        table, head = self._table, self._table.horizontalHeader()
        others = sum(head.sectionSize(n) for n in range(head.count()) if n != self._column)
        asks = max(table.sizeHintForColumn(self._column), head.sectionSizeHint(self._column))
        roomy = others + asks + _EDGE <= table.viewport().width()
        if roomy == self._roomy:
            return
        self._roomy = roomy
        mode = QHeaderView.ResizeMode
        head.setSectionResizeMode(self._column, mode.Stretch if roomy else mode.ResizeToContents)
        self._turned()
