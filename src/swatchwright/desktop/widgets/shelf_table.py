"""The shelf as a table: each paint with a large field of its colour, and how it is known."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QModelIndex, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPainter
from PySide6.QtWidgets import QStyledItemDelegate, QStyleOptionViewItem, QTableView, QWidget

from swatchwright.acts.shelf_view import PaintLine
from swatchwright.desktop.letters import follow_letters, grown, growth
from swatchwright.desktop.money import follow_money
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.widgets.fitted_table import CellModel, FittedTable, Index
from swatchwright.desktop.words import shelf as words
from swatchwright.language import say

__all__ = ["ShelfModel", "ShelfTable"]

_NOWHERE = QModelIndex()
_LARGE = 1.15
_ROW_HEIGHT, _COLOUR_WIDTH = 46, 92
_USE, _COLOUR, _NAME, _PRICE = 0, 1, 2, 7


class ShelfModel(CellModel):
    """The paints as rows: in use, colour, name, finish, how known, left, tins, price of a litre.

    Parameters
    ----------
    session
        Knows which paints are in use.
    use
        What takes a tick or its removal: the id, and whether it is ticked.
    """

    def __init__(
        self,
        session: Session,
        use: Callable[[str, bool], None] | None = None,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(self._of, parent)
        self._session = session
        self._use_paint = use or (lambda id_, on: session.use_paint(id_, use=on))
        self._lines: tuple[PaintLine, ...] = ()
        self._colours: list[QColor] = []
        session.wishes_changed.connect(self._ticks_changed)
        follow_money(self, self._prices_changed)

    def show_lines(self, lines: tuple[PaintLine, ...]) -> None:
        """Show these paints."""
        same = [line.paint.id for line in lines] == [line.paint.id for line in self._lines]
        if not same:
            self.beginResetModel()
        self._lines = lines
        self._colours = [screen_colour(line.dry) for line in lines]
        if not same:
            self.endResetModel()
        elif lines:
            last = self.index(len(lines) - 1, len(words.COLUMNS) - 1)
            self.dataChanged.emit(self.index(0, 0), last)

    def line(self, row: int) -> PaintLine:
        """Give the paint of a row."""
        return self._lines[row]

    def row_of(self, id_: str) -> int:
        """Give the row of a paint; -1 if it has none."""
        ids = [line.paint.id for line in self._lines]
        return ids.index(id_) if id_ in ids else -1

    def rowCount(self, parent: Index = _NOWHERE) -> int:
        """Give the number of paints."""
        return 0 if parent.isValid() else len(self._lines)

    def columnCount(self, parent: Index = _NOWHERE) -> int:
        """Give the number of columns."""
        return 0 if parent.isValid() else len(words.COLUMNS)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> Any:  # noqa: ANN401 - Qt takes whatever the role is for
        """Give the head of a column, and what stands in it."""
        if orientation is not Qt.Orientation.Horizontal:
            return None
        if role == Qt.ItemDataRole.DisplayRole:
            return words.COLUMNS[section]
        return words.COLUMN_TIPS[section] if role == Qt.ItemDataRole.ToolTipRole else None

    def _of(self, index: Index, role: int) -> Any:  # noqa: ANN401 - Qt takes whatever the role is for
        """Give the text or the colour of a cell."""
        line = self._lines[index.row()]
        if index.column() == _USE:
            return self._use(line, role)
        if index.column() == _COLOUR:
            return self._colour(index.row(), line, role)
        if role == Qt.ItemDataRole.DisplayRole:
            return _cells(line)[index.column() - _NAME]
        if role == Qt.ItemDataRole.ToolTipRole and index.column() == _NAME:
            return f"<p>{line.paint.name} {line.paint.note}</p>"
        return None

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Let the first column be ticked."""
        flags = super().flags(index)
        return flags | Qt.ItemFlag.ItemIsUserCheckable if index.column() == _USE else flags

    def setData(
        self,
        index: Index,
        value: Any,  # noqa: ANN401 - Qt gives whatever the role is for
        role: int = Qt.ItemDataRole.EditRole,
    ) -> bool:
        """Take a tick or its removal."""
        if not index.isValid() or index.column() or role != Qt.ItemDataRole.CheckStateRole:
            return False
        ticked = Qt.CheckState(value) is Qt.CheckState.Checked
        self._use_paint(self._lines[index.row()].paint.id, ticked)
        self.dataChanged.emit(index, index, [role])
        return True

    def _ticks_changed(self) -> None:
        if self._lines:
            last = self.index(len(self._lines) - 1, _USE)
            self.dataChanged.emit(self.index(0, _USE), last, [Qt.ItemDataRole.CheckStateRole])

    def _prices_changed(self) -> None:
        if self._lines:
            last = self.index(len(self._lines) - 1, _PRICE)
            self.dataChanged.emit(self.index(0, _PRICE), last, [Qt.ItemDataRole.DisplayRole])

    def _use(self, line: PaintLine, role: int) -> Qt.CheckState | str | None:
        if role == Qt.ItemDataRole.CheckStateRole:
            used = line.paint.id not in self._session.unused
            return Qt.CheckState.Checked if used else Qt.CheckState.Unchecked
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return f"{words.COLUMNS[_USE]} {line.paint.name}"
        return None

    def _colour(self, row: int, line: PaintLine, role: int) -> QColor | str | None:
        if role == Qt.ItemDataRole.BackgroundRole:
            return self._colours[row]
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return words.line_told(line, self._colours[row].name())
        return None


def _cells(line: PaintLine) -> tuple[str, ...]:
    return (
        line.paint.name,
        say(line.paint.family.value),
        words.known_cell(line),
        words.left_cell(line.ml_left),
        words.tins_cell(line.paint),
        words.price_cell(line.price),
    )


class _Fields(QStyledItemDelegate):
    """Paints the colours edge to edge, in a chosen row too."""

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Fill the cell with its colour."""
        painter.fillRect(option.rect, index.data(Qt.ItemDataRole.BackgroundRole))


class ShelfTable(FittedTable):
    """The table itself.

    Signals
    -------
    chosen(str)
        The id of the paint that is to be shown large.
    """

    chosen = Signal(str)

    def __init__(self, session: Session, use: Callable[[str, bool], None]) -> None:
        super().__init__(_NAME)
        self.paints = ShelfModel(session, use, self)
        self.setModel(self.paints)
        self.setAccessibleName(words.HEADING)
        self.setSelectionBehavior(QTableView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QTableView.SelectionMode.SingleSelection)
        self.setShowGrid(False)
        self.setItemDelegateForColumn(_COLOUR, _Fields(self))
        self.setWordWrap(True)
        head = self.horizontalHeader()
        head.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        head.setHighlightSections(False)
        head.setSectionsClickable(False)
        head.setAccessibleName(", ".join(filter(None, words.COLUMNS)))
        self.keep_width(_COLOUR, _COLOUR_WIDTH)
        follow_letters(self, self._grow)
        self.selectionModel().currentRowChanged.connect(self._current)

    def _grow(self) -> None:
        """Have rows for the letters in use; where these are large, names are told on one line."""
        self.verticalHeader().setDefaultSectionSize(grown(_ROW_HEIGHT))
        self.let_wrap(wraps=growth() <= _LARGE)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Tick the chosen paint, or take its tick away, by the space key from any of its cells."""
        index = self.currentIndex()
        if event.key() != Qt.Key.Key_Space or event.modifiers() or not index.isValid():
            super().keyPressEvent(event)
            return
        role = Qt.ItemDataRole.CheckStateRole
        ticked = index.siblingAtColumn(_USE)
        on = Qt.CheckState(ticked.data(role)) is Qt.CheckState.Checked
        other = Qt.CheckState.Unchecked if on else Qt.CheckState.Checked
        self.paints.setData(ticked, other.value, role)

    def choose(self, id_: str) -> None:
        """Show a paint large."""
        row = self.paints.row_of(id_)
        if row >= 0:
            self.setCurrentIndex(self.paints.index(row, _NAME))

    def _current(self, index: QModelIndex) -> None:
        if index.isValid():
            self.chosen.emit(self.paints.line(index.row()).paint.id)
