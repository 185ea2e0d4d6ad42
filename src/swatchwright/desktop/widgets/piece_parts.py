"""The parts of a piece as a table that can be changed."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QModelIndex, QObject, Qt
from PySide6.QtCore import Signal as QtSignal

from swatchwright.acts.parts import SIZES, faces_in, sizes_in, with_size, with_value
from swatchwright.acts.piece import SizedPiece
from swatchwright.desktop.widgets.fitted_table import CellModel, Index
from swatchwright.desktop.words import piece as words
from swatchwright.errors import MendableError
from swatchwright.piece.areas import part_areas
from swatchwright.piece.part import Part, Piece

__all__ = ["PartsModel"]

_NOWHERE = QModelIndex()
_NAME, _SHAPE, _COUNT, _LENGTH, _ZONE, _PAINTED, _AREA = 0, 1, 2, 3, 6, 7, 8
_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter


class PartsModel(CellModel):
    """Parts as rows: name, shape, how many, length, width, depth, zone, painted faces, area.

    Signals
    -------
    changed(Piece)
        A cell was changed; the piece with it.
    failed(object)
        What was typed cannot be, as a `MendableError`.
    """

    changed = QtSignal(object)
    failed = QtSignal(object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(self._of, parent)
        self._piece: Piece | None = None
        self._areas: list[float] = []

    def show_piece(self, found: SizedPiece | None) -> None:
        """Show the parts of a piece, or none."""
        parts = () if found is None else found.piece.parts
        same = len(parts) == self.rowCount()
        if not same:
            self.beginResetModel()
        self._piece = None if found is None else found.piece
        self._areas = [] if found is None else _areas(found)
        if not same:
            self.endResetModel()
        elif parts:
            last = self.index(len(parts) - 1, len(words.PART_COLUMNS) - 1)
            self.dataChanged.emit(self.index(0, 0), last)

    def part(self, row: int) -> Part | None:
        """Give the part of a row; None where there is none."""
        parts = () if self._piece is None else self._piece.parts
        return parts[row] if 0 <= row < len(parts) else None

    # --- Qt --------------------------------------------------------------------------------------

    def rowCount(self, parent: Index = _NOWHERE) -> int:
        """Give the number of parts."""
        return 0 if parent.isValid() or self._piece is None else len(self._piece.parts)

    def columnCount(self, parent: Index = _NOWHERE) -> int:
        """Give the number of columns."""
        return 0 if parent.isValid() else len(words.PART_COLUMNS)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> Any:  # noqa: ANN401 - Qt takes whatever the role is for
        """Give the head of a column."""
        if orientation is not Qt.Orientation.Horizontal:
            return None
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _RIGHT if _is_number(section) else _LEFT
        return words.PART_COLUMNS[section] if role == Qt.ItemDataRole.DisplayRole else None

    def _of(self, index: Index, role: int) -> Any:  # noqa: ANN401 - Qt takes whatever the role is for
        """Give the text of a cell, what is edited of it, or how it stands."""
        part = self.part(index.row())
        if part is None:
            return None
        column = index.column()
        if role == Qt.ItemDataRole.EditRole:
            return _value(part, column)
        if role == Qt.ItemDataRole.DisplayRole:
            return _shown(part, column, self._areas[index.row()])
        if role == Qt.ItemDataRole.TextAlignmentRole and _is_number(column):
            return _RIGHT
        if role == Qt.ItemDataRole.AccessibleTextRole:
            shown = _shown(part, column, self._areas[index.row()])
            return words.cell_told(words.part_name(part), words.PART_COLUMNS[column], shown)
        return None

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Let be changed what can be."""
        flags = super().flags(index)
        part = self.part(index.row()) if index.isValid() else None
        if part is None or _value(part, index.column()) is None:
            return flags
        return flags | Qt.ItemFlag.ItemIsEditable

    def setData(
        self,
        index: Index,
        value: Any,  # noqa: ANN401 - Qt gives whatever the role is for
        role: int = Qt.ItemDataRole.EditRole,
    ) -> bool:
        """Take what was typed into a cell."""
        piece = self._piece
        part = self.part(index.row()) if index.isValid() else None
        if piece is None or part is None or role != Qt.ItemDataRole.EditRole:
            return False
        if value == _value(part, index.column()):
            return True
        try:
            changed = _change(index.column())(piece, index.row(), value)
        except MendableError as error:
            self.failed.emit(error)
            return False
        except (ValueError, TypeError, OverflowError):
            # No number where one is asked for, which the cell's own field never gives.
            return False
        self.changed.emit(changed)
        return True


def _areas(found: SizedPiece) -> list[float]:
    """Give the painted area of each part, in all its colours."""
    return [sum(row.area for row in part_areas(part)) for part in found.piece.parts]


def _is_number(column: int) -> bool:
    return column in {_COUNT, _AREA} or 0 <= column - _LENGTH < len(SIZES)


def _value(part: Part, column: int) -> str | int | float | None:
    """Give what is edited in a cell; None where nothing is."""
    if 0 <= column - _LENGTH < len(SIZES):
        return _size(part, SIZES[column - _LENGTH])
    values: dict[int, str | int] = {
        _NAME: words.part_name(part),
        _COUNT: part.count,
        _ZONE: words.zone_name(part.zone),
    }
    return values.get(column)


def _size(part: Part, name: str) -> float | None:
    if name not in sizes_in(part):
        return None
    if name == "width" and part.profile:
        return round(2 * max(r for _, r in part.profile), 1)
    return round(float(getattr(part, name)), 1)


def _shown(part: Part, column: int, area: float) -> str:
    if 0 <= column - _LENGTH < len(SIZES):
        size = _size(part, SIZES[column - _LENGTH])
        return words.size_cell(size)
    texts = {
        _NAME: words.part_name(part),
        _SHAPE: words.shape_word(part.shape),
        _COUNT: str(part.count),
        _ZONE: words.zone_name(part.zone),
        _PAINTED: words.painted_told(part, faces_in(part)),
        _AREA: words.area_cell(area),
    }
    return texts[column]


def _change(column: int) -> Callable[[Piece, int, Any], Piece]:
    if 0 <= column - _LENGTH < len(SIZES):
        return lambda piece, row, value: with_size(
            piece, row, SIZES[column - _LENGTH], float(value)
        )
    changes: dict[int, Callable[[Piece, int, Any], Piece]] = {
        _NAME: lambda piece, row, value: with_value(piece, row, name=str(value)),
        _COUNT: lambda piece, row, value: with_value(piece, row, count=int(value)),
        _ZONE: lambda piece, row, value: with_value(piece, row, zone=words.zone_kept(str(value))),
    }
    return changes[column]
