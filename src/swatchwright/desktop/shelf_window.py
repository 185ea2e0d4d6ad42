"""The paints of the shelf, each with its colour and how it is known, in a window of their own."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt
from PySide6.QtGui import QColor
from PySide6.QtWidgets import QDialog, QHeaderView, QLabel, QTableView, QVBoxLayout, QWidget

from swatchwright.acts.mix import own_colours
from swatchwright.desktop import words
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.paint.paints import Paint

__all__ = ["ShelfModel", "ShelfWindow"]

_ROW_HEIGHT = 40
Index = QModelIndex | QPersistentModelIndex
_NOWHERE = QModelIndex()


class ShelfModel(QAbstractTableModel):
    """The paints of a shelf as rows: in use, colour, name, id, finish, how known, tins."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._paints = session.shelf.paints
        self._colours = [screen_colour(lab) for lab in own_colours(self._paints)]

    def rowCount(self, parent: Index = _NOWHERE) -> int:
        """Give the number of paints."""
        return 0 if parent.isValid() else len(self._paints)

    def columnCount(self, parent: Index = _NOWHERE) -> int:
        """Give the number of columns."""
        return 0 if parent.isValid() else len(words.SHELF_COLUMNS)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> Any:  # noqa: ANN401 - Qt takes whatever the role is for
        """Give the head of a column."""
        if role == Qt.ItemDataRole.DisplayRole and orientation is Qt.Orientation.Horizontal:
            return words.SHELF_COLUMNS[section]
        return None

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:  # noqa: ANN401
        """Give the text or the colour of a cell."""
        if not index.isValid():
            return None
        paint = self._paints[index.row()]
        if index.column() == 0:
            return self._use(paint, role)
        if index.column() == 1:
            return self._colour(index.row(), paint, role)
        if role == Qt.ItemDataRole.DisplayRole:
            return _cells(paint)[index.column() - 2]
        if role == Qt.ItemDataRole.ToolTipRole and paint.note:
            return f"<p>{paint.note}</p>"
        return None

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Let the first column be ticked."""
        flags = super().flags(index)
        return flags | Qt.ItemFlag.ItemIsUserCheckable if index.column() == 0 else flags

    def setData(
        self,
        index: Index,
        value: Any,  # noqa: ANN401 - Qt gives whatever the role is for
        role: int = Qt.ItemDataRole.EditRole,
    ) -> bool:
        """Take a tick or its removal."""
        if not index.isValid() or index.column() or role != Qt.ItemDataRole.CheckStateRole:
            return False
        use = Qt.CheckState(value) is Qt.CheckState.Checked
        self._session.use_paint(self._paints[index.row()].id, use=use)
        self.dataChanged.emit(index, index, [role])
        return True

    def _use(self, paint: Paint, role: int) -> Qt.CheckState | str | None:
        used = paint.id not in self._session.unused
        if role == Qt.ItemDataRole.CheckStateRole:
            return Qt.CheckState.Checked if used else Qt.CheckState.Unchecked
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return f"{words.SHELF_COLUMNS[0]} {paint.name}"
        return None

    def _colour(self, row: int, paint: Paint, role: int) -> QColor | str | None:
        if role == Qt.ItemDataRole.BackgroundRole:
            return self._colours[row]
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return f"{paint.name}, {self._colours[row].name()}"
        return None


def _cells(paint: Paint) -> tuple[str, ...]:
    tins = ", ".join(f"{tin.ml:g}" for tin in paint.tins)
    return (paint.name, paint.id, paint.family.value, paint.how_known.value, tins)


class ShelfWindow(QDialog):
    """A table of the paints; it can stay open beside the bench."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        shelf = session.shelf
        self.setWindowTitle(words.SHELF)
        self.resize(840, 560)
        rows = QVBoxLayout(self)
        self.heading = QLabel()
        self.heading.setObjectName("heading")
        rows.addWidget(self.heading)
        rows.addWidget(QLabel(words.SHELF_HINT))
        self.table = QTableView()
        self.table.setAccessibleName(words.SHELF)
        self.table.setModel(ShelfModel(session, self))
        self.table.setSelectionBehavior(QTableView.SelectionBehavior.SelectRows)
        self.table.verticalHeader().hide()
        self.table.verticalHeader().setDefaultSectionSize(_ROW_HEIGHT)
        head = self.table.horizontalHeader()
        head.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        head.setSectionResizeMode(1, QHeaderView.ResizeMode.Fixed)
        head.setSectionResizeMode(2, QHeaderView.ResizeMode.Stretch)
        self.table.setColumnWidth(1, 96)
        rows.addWidget(self.table)
        session.shelf_changed.connect(self._show_count)
        self._session = session
        self._show_count()
        notes = QLabel(" ".join(shelf.notes))
        notes.setObjectName("small")
        notes.setWordWrap(True)
        rows.addWidget(notes)

    def _show_count(self) -> None:
        """Say how many of the paints are in use."""
        shelf, unused = self._session.shelf, self._session.unused
        used = len(shelf.paints) - len(unused)
        self.heading.setText(words.shelf_line(shelf.name, len(shelf.paints), used))
