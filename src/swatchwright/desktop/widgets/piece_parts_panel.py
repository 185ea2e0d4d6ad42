"""The list of parts with what can be done to it: change, add, remove, choose painted faces."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QCheckBox,
    QHBoxLayout,
    QLineEdit,
    QPushButton,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.parts import faces_in, with_faces, with_part, without_part
from swatchwright.acts.piece import SizedPiece
from swatchwright.desktop.letters import follow_letters, grown
from swatchwright.desktop.widgets.areas import bring_into_view
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.fields import NumberField
from swatchwright.desktop.widgets.fitted_table import FittedTable
from swatchwright.desktop.widgets.piece_fields import choice, clear, label
from swatchwright.desktop.widgets.piece_gone import GoneZones
from swatchwright.desktop.widgets.piece_parts import PartsModel
from swatchwright.desktop.words import piece as words
from swatchwright.errors import MendableError
from swatchwright.piece.part import Face, Piece, Shape

__all__ = ["PartsPanel"]

_ROW_HEIGHT = 32
_PAINTED = 7
_SHOWN_ROWS = 8
_FRAME, _BESIDE = 6, 8
_LONGEST = 6000.0
_MOST = 200


class PartsPanel(QWidget):
    """The table of parts, the faces of the one that is picked, and buttons.

    Signals
    -------
    changed(Piece)
        Something was changed; the piece with it.
    picked(int)
        The part of this row is picked now; -1 for none.
    """

    changed = Signal(object)
    picked = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._found: SizedPiece | None = None
        self._picked = -1
        self.model = PartsModel(self)
        self.table = FittedTable(_PAINTED)
        self.faces: dict[Face, QCheckBox] = {}
        self.trouble = label("", "warn")
        self.trouble.hide()
        self.gone = GoneZones()
        self._faces_told = label(words.PICK_PART, "quiet")
        self._faces_row = QHBoxLayout()
        self._faces_row.setSpacing(10)
        self.shape = choice([(words.shape_word(shape), shape) for shape in Shape], words.ADD_WHAT)
        self.add = QPushButton(words.ADD_PART)
        self.remove = QPushButton(words.REMOVE_PART)
        self._lay_out()
        self.model.changed.connect(self._take)
        self.model.failed.connect(self._say)
        self.add.clicked.connect(self._add)
        self.remove.clicked.connect(self._remove)
        delete = QShortcut(QKeySequence(Qt.Key.Key_Delete), self.table)
        delete.setContext(Qt.ShortcutContext.WidgetShortcut)
        delete.activated.connect(self._remove)
        self.table.selectionModel().currentRowChanged.connect(self._show_faces)
        self.model.modelReset.connect(self._show_faces)

    def _lay_out(self) -> None:
        table = self.table
        table.setAccessibleName(words.PARTS)
        table.setModel(self.model)
        table.setItemDelegate(_Cells(table))
        table.setSelectionBehavior(QTableView.SelectionBehavior.SelectRows)
        table.setSelectionMode(QTableView.SelectionMode.SingleSelection)
        follow_letters(table, self._grow_rows)
        table.horizontalHeader().geometriesChanged.connect(self._fit_rows)
        table.fitted.connect(self._fit_rows)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(label(words.PARTS_HINT, "quiet"))
        column.addWidget(table)
        column.addWidget(self.trouble)
        column.addWidget(self.gone)
        column.addWidget(self._faces_told)
        column.addLayout(self._faces_row)
        buttons = BreakingRow(_BESIDE)
        buttons.put(self.shape)
        buttons.put(self.add)
        buttons.put(self.remove, pushed=True)
        column.addWidget(buttons)
        column.addStretch(1)

    def _grow_rows(self) -> None:
        """Have rows for the letters that are chosen."""
        self.table.verticalHeader().setDefaultSectionSize(grown(_ROW_HEIGHT))
        self._fit_rows()

    def show_piece(self, found: SizedPiece) -> None:
        """Show the parts of a piece."""
        row = self.table.currentIndex().row()
        if self._found is not None and self._found.piece.name != found.piece.name:
            row = -1
            self.pick(row)
        self._found = found
        self.trouble.hide()
        self.model.show_piece(found)
        rows = self.model.rowCount()
        if row >= 0 and self.table.currentIndex().row() < 0 and rows:
            self.table.selectRow(min(row, rows - 1))
        self._fit_rows()
        self._show_faces()

    def pick(self, row: int) -> None:
        """Pick the part of a row, and scroll the table to it; none for -1."""
        index = self.model.index(row, 0)
        if not index.isValid():
            self.table.clearSelection()
            self.table.setCurrentIndex(index)
            return
        self.table.selectRow(row)
        self.table.scrollTo(index)

    def go_to(self) -> None:
        """Bring the row that is picked into view, with the keyboard on it."""
        bring_into_view(self, above=_BESIDE)
        bring_into_view(self.table, above=_BESIDE)
        self.table.setFocus(Qt.FocusReason.OtherFocusReason)
        self.table.scrollTo(self.table.currentIndex())

    def _fit_rows(self) -> None:
        """Show the first rows whole, in the letters and the look that the table has now."""
        shown = min(self.model.rowCount(), _SHOWN_ROWS)
        head, row = self.table.horizontalHeader(), self.table.verticalHeader().defaultSectionSize()
        bar = self.table.horizontalScrollBar()
        below = bar.sizeHint().height() if bar.maximum() > 0 else 0
        high = max(head.sizeHint().height(), head.height()) + shown * row + below + _FRAME
        if high != self.table.height():
            self.table.setFixedHeight(high)

    def _show_faces(self) -> None:
        """Show a tick for each face of the part that is picked."""
        row = self.table.currentIndex().row()
        part = self.model.part(row)
        self.remove.setEnabled(part is not None)
        told = words.PICK_PART if part is None else words.painted_faces(part)
        self._faces_told.setText(told)
        there = () if part is None else faces_in(part)
        if tuple(self.faces) != there:
            clear(self._faces_row)
            self.faces = {face: QCheckBox(words.face_name(face)) for face in there}
            for box in self.faces.values():
                box.clicked.connect(self._faces_ticked)
                self._faces_row.addWidget(box)
            self._faces_row.addStretch(1)
        for face, box in self.faces.items():
            box.setChecked(part is not None and face in part.painted)
        if row != self._picked:
            self._picked = row
            self.picked.emit(row)

    # --- changes ---------------------------------------------------------------------------------

    def _faces_ticked(self) -> None:
        painted = tuple(face for face, box in self.faces.items() if box.isChecked())
        row = self.table.currentIndex().row()
        self._do(lambda piece: with_faces(piece, row, painted))

    def _add(self) -> None:
        shape = Shape(self.shape.currentData())
        self._do(lambda piece: with_part(piece, shape))
        self.table.selectRow(self.model.rowCount() - 1)
        self.table.scrollToBottom()

    def _remove(self) -> None:
        row = self.table.currentIndex().row()
        if row >= 0:
            self._do(lambda piece: without_part(piece, row))

    def _do(self, act: Callable[[Piece], Piece]) -> None:
        if self._found is None:
            return
        try:
            changed = act(self._found.piece)
        except MendableError as error:
            self._say(error)
            return
        self._take(changed)

    def _take(self, piece: Piece) -> None:
        self.trouble.hide()
        self.changed.emit(piece)

    def _say(self, error: MendableError) -> None:
        self.trouble.setText(f"{error.what} {error.mend}")
        self.trouble.show()


Index = QModelIndex | QPersistentModelIndex


class _Cells(QStyledItemDelegate):
    """Gives numbers a field of their own, without which too much could be typed."""

    def createEditor(self, parent: QWidget, option: QStyleOptionViewItem, index: Index) -> QWidget:
        """Make the field that a cell is changed in."""
        value = index.data(Qt.ItemDataRole.EditRole)
        if isinstance(value, str):
            typed = QLineEdit(parent)
            typed.setMaxLength(80)
            return typed
        field = NumberField(parent)
        whole = isinstance(value, int)
        field.setDecimals(0 if whole else 1)
        field.setRange(1 if whole else 0.5, _MOST if whole else _LONGEST)
        field.setAccessibleName(index.data(Qt.ItemDataRole.AccessibleTextRole))
        del option
        return field
