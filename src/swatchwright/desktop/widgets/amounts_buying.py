"""What to buy as a table: needed, left, tins sold, and so what to buy and its cost."""

from __future__ import annotations

from math import isnan
from typing import Any

from PySide6.QtCore import QModelIndex, QObject, Qt
from PySide6.QtCore import Signal as QtSignal

from swatchwright.acts.amounts_whole import bought_told
from swatchwright.acts.tins_typed import tins_told, tins_written
from swatchwright.desktop.money import follow_money
from swatchwright.desktop.widgets.fitted_table import CellModel, Index
from swatchwright.desktop.words import amounts as words
from swatchwright.desktop.words.piece import cell_told
from swatchwright.errors import MendableError
from swatchwright.piece.amounts import Amounts, Purchase
from swatchwright.piece.order import AmountsOrder
from swatchwright.piece.tins import MOST_ML, TinSize

__all__ = ["BuyingModel"]

_NOWHERE = QModelIndex()
_NAME, _NEEDED, _LEFT, _TINS, _BUY, _COST = range(6)
_NUMBERS = {_NEEDED, _LEFT, _COST}
_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
_LEFT_SIDE = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter


class BuyingModel(CellModel):
    """A row for each paint; what is left and the tins that are sold can be changed.

    Signals
    -------
    left_changed(str, float)
        So many ml are left of the paint of that id.
    tins_changed(str, object)
        The paint of that id is sold in these tins.
    failed(object)
        What was typed cannot be, as a `MendableError`; it stands in its cell until it is mended.
        None once nothing is left of that.
    """

    left_changed = QtSignal(str, float)
    tins_changed = QtSignal(str, object)
    failed = QtSignal(object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(self._of, parent)
        self._rows: tuple[Purchase, ...] = ()
        self._tins: dict[str, tuple[TinSize, ...]] = {}
        self._needs: dict[str, float] = {}
        self._refused: dict[str, str] = {}
        self._money = ""
        follow_money(self, self._prices_changed)

    def show_amounts(self, order: AmountsOrder | None, found: Amounts | None) -> None:
        """Show what is to be bought for an order, or nothing."""
        rows = () if found is None else found.purchases
        same = len(rows) == len(self._rows)
        if not same:
            self.beginResetModel()
        self._rows = rows
        self._needs = {} if found is None else bought_told(found)
        made = () if order is None else order.products
        was, self._tins = self._tins, {i.id: i.tins for p in made for i in p.ingredients}
        self._forget_refused(was)
        before, self._money = self._money, "" if order is None else order.terms.currency
        if self._money != before:
            self._prices_changed()
        if not same:
            self.endResetModel()
        elif rows:
            self.dataChanged.emit(self.index(0, 0), self.index(len(rows) - 1, _COST))

    def holds_refused(self) -> bool:
        """Tell whether a cell holds what could not be read and is not mended yet."""
        return bool(self._refused)

    def forget_refused(self) -> None:
        """Show the tins of all paints again, as in another job."""
        if self._refused:
            self._refused.clear()
            self.dataChanged.emit(self.index(0, _TINS), self.index(len(self._rows) - 1, _TINS))

    def _forget_refused(self, was: dict[str, tuple[TinSize, ...]]) -> None:
        """Leave what was refused where the tins of the paint are others now, or it is gone."""
        rows = {row.id for row in self._rows}
        for id_ in list(self._refused):
            if id_ not in rows or self._tins.get(id_) != was.get(id_):
                del self._refused[id_]

    def _prices_changed(self) -> None:
        self.headerDataChanged.emit(Qt.Orientation.Horizontal, _TINS, _TINS)
        if self._rows:
            self.dataChanged.emit(self.index(0, _COST), self.index(len(self._rows) - 1, _COST))

    def rowCount(self, parent: Index = _NOWHERE) -> int:
        """Give the number of paints."""
        return 0 if parent.isValid() else len(self._rows)

    def columnCount(self, parent: Index = _NOWHERE) -> int:
        """Give the number of columns."""
        return 0 if parent.isValid() else len(words.BUY_COLUMNS)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> Any:  # noqa: ANN401 - Qt takes whatever the role is for
        """Give the head of a column."""
        if orientation is not Qt.Orientation.Horizontal:
            return None
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _RIGHT if section in _NUMBERS else _LEFT_SIDE
        return words.buy_head(section, self._money) if role == Qt.ItemDataRole.DisplayRole else None

    def _of(self, index: Index, role: int) -> Any:  # noqa: ANN401 - Qt takes whatever the role is for
        """Give the text of a cell, or what is edited of it."""
        if index.row() >= len(self._rows):
            return None
        row, column = self._rows[index.row()], index.column()
        if role == Qt.ItemDataRole.EditRole:
            return {_LEFT: float(row.left_ml), _TINS: self._tins_typed(row)}.get(column)
        if role == Qt.ItemDataRole.DisplayRole:
            return self._shown(row, column)
        if role == Qt.ItemDataRole.TextAlignmentRole and column in _NUMBERS:
            return _RIGHT
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return cell_told(
                words.paint_name(row), words.buy_head(column, self._money), self._shown(row, column)
            )
        return None

    def _tins_typed(self, row: Purchase) -> str:
        """Give what is edited: the tins, or what was typed last and is not mended yet."""
        return self._refused.get(row.id) or tins_written(self._tins.get(row.id, ()))

    def _shown(self, row: Purchase, column: int) -> str:
        return {
            _NAME: words.paint_name(row),
            _NEEDED: words.big_amount(self._needs[row.id]),
            _LEFT: f"{row.left_ml:.0f}",
            _TINS: words.unparted(self._tins_typed(row)) or words.NOT_KNOWN,
            _BUY: words.buy_line(row, self._needs[row.id]),
            _COST: words.cost_line(row, self._money),
        }[column]

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Let what is left and the tins be changed."""
        flags = super().flags(index)
        changes = index.isValid() and index.column() in {_LEFT, _TINS}
        return flags | Qt.ItemFlag.ItemIsEditable if changes else flags

    def setData(
        self,
        index: Index,
        value: Any,  # noqa: ANN401 - Qt gives whatever the role is for
        role: int = Qt.ItemDataRole.EditRole,
    ) -> bool:
        """Take what was typed into a cell."""
        if not index.isValid() or role != Qt.ItemDataRole.EditRole:
            return False
        if index.column() not in {_LEFT, _TINS}:
            return False
        if value == self.data(index, role):
            return True
        row = self._rows[index.row()]
        if index.column() == _LEFT:
            return self._take_left(row, value)
        return self._take_tins(index, row, str(value))

    def _take_tins(self, index: Index, row: Purchase, text: str) -> bool:
        """Take tins as they are typed; what cannot be read stays in the cell, to be mended.

        Where she empties that, the tins stand there again that it had before.
        """
        was = self._refused.pop(row.id, "")
        kept = self._tins.get(row.id, ())
        try:
            tins = tins_told(text, self._money) if text.strip() or not was else kept
        except MendableError as error:
            self._refused[row.id] = text
            self.dataChanged.emit(index, index)
            self.failed.emit(error)
            return False
        if was:
            self.dataChanged.emit(index, index)
            self.failed.emit(None)
        if tins != kept:
            self.tins_changed.emit(row.id, tins)
        return True

    def _take_left(self, row: Purchase, value: object) -> bool:
        """Take what is left of a paint; what is no number is left alone."""
        try:
            ml = float(str(value))
        except ValueError:
            return False
        if isnan(ml):
            return False
        self.left_changed.emit(row.id, min(MOST_ML, max(0.0, ml)))
        return True
