"""A table whose columns are as wide as their words, measured once after a change and not more."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import (
    QAbstractItemModel,
    QAbstractTableModel,
    QEvent,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    Qt,
    QTimer,
    Signal,
)
from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import QHeaderView, QTableView

__all__ = ["CellModel", "FittedTable", "Index"]

Index = QModelIndex | QPersistentModelIndex

_EDGE = 1
"""Pixels of the line between two columns."""

_RESTYLED = {QEvent.Type.StyleChange, QEvent.Type.FontChange}


class CellModel(QAbstractTableModel):
    """Words each cell once until it changes: a view asks for every one many times over.

    Parameters
    ----------
    cell
        Gives what stands in a cell for a role, None for nothing, as `data` does.
    """

    def __init__(self, cell: Callable[[Index, int], Any], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._cell = cell
        self._worded: dict[tuple[int, int, int], Any] = {}
        # Before any view is told, for these are connected first.
        self.dataChanged.connect(self._forget)
        self.modelAboutToBeReset.connect(self._forget)
        self.modelReset.connect(self._forget)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:  # noqa: ANN401
        """Give what stands in a cell for a role."""
        if not index.isValid():
            return None
        key = (index.row(), index.column(), int(role))
        if key not in self._worded:
            self._worded[key] = self._cell(index, role)
        return self._worded[key]

    def _forget(self) -> None:
        self._worded.clear()


class FittedTable(QTableView):
    """Gives each column the width of its words, and one of them the room that is left.

    Qt's own way measures all cells again for each of the steps in which a page takes another
    style; this does it once, when all are done.

    Parameters
    ----------
    roomy
        The column that takes what the others leave, never less than its words: then there is a
        bar below.

    Signals
    -------
    fitted()
        The columns have their widths: there may be a bar below now, or none any more.
    """

    fitted = Signal()

    def __init__(self, roomy: int) -> None:
        super().__init__()
        self._roomy = roomy
        self._kept: dict[int, int] = {}
        self._asks: list[int] = []
        self._wraps = False
        self._later = QTimer(self)
        self._later.setSingleShot(True)
        self._later.setInterval(0)
        self._later.timeout.connect(self._measure)
        self.setTabKeyNavigation(False)
        self.verticalHeader().hide()
        self.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)

    def keep_width(self, column: int, wide: int) -> None:
        """Have a column always as wide as this, in pixels."""
        self._kept[column] = wide
        self._changed()

    def let_wrap(self, *, wraps: bool) -> None:
        """Let the roomy column become narrower than its words, which then take more lines."""
        self._wraps = wraps
        self._changed()

    def setModel(self, model: QAbstractItemModel | None) -> None:
        """Show a model, and measure it whenever it has changed."""
        super().setModel(model)
        if model is not None:
            for signal in (model.dataChanged, model.modelReset, model.headerDataChanged):
                signal.connect(self._changed)
        self._changed()

    def changeEvent(self, event: QEvent) -> None:
        """Measure anew in other letters."""
        super().changeEvent(event)
        if event.type() in _RESTYLED:
            self._changed()

    def showEvent(self, event: QShowEvent) -> None:
        """Take up what has changed out of view."""
        super().showEvent(event)
        if not self._asks:
            self._measure()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give the roomy column what there is now."""
        super().resizeEvent(event)
        self._fit()

    def _changed(self) -> None:
        self._asks = []
        if self.isVisible():
            self._later.start()

    def _measure(self) -> None:
        head = self.horizontalHeader()
        self._asks = [
            self._kept.get(n, max(self.sizeHintForColumn(n), head.sectionSizeHint(n)))
            for n in range(head.count())
        ]
        self._fit()

    def _fit(self) -> None:
        if not self._asks:
            return
        asks, head = list(self._asks), self.horizontalHeader()
        least = head.sectionSizeHint(self._roomy) if self._wraps else asks[self._roomy]
        asks[self._roomy] = 0
        asks[self._roomy] = max(least, self.viewport().width() - sum(asks) - _EDGE)
        for column, wide in enumerate(asks):
            if head.sectionSize(column) != wide:
                head.resizeSection(column, wide)
        self.fitted.emit()
