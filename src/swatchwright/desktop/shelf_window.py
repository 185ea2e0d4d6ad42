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
from swatchwright.shelf.shelf import Shelf

__all__ = ["ShelfModel", "ShelfWindow"]

_ROW_HEIGHT = 40
Index = QModelIndex | QPersistentModelIndex
_NOWHERE = QModelIndex()


class ShelfModel(QAbstractTableModel):
    """The paints of a shelf as rows: colour, name, id, finish, how known, tins."""

    def __init__(self, shelf: Shelf, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._paints = shelf.paints
        self._colours = [screen_colour(lab) for lab in own_colours(shelf.paints)]

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
            return self._colour(index.row(), paint, role)
        if role == Qt.ItemDataRole.DisplayRole:
            return _cells(paint)[index.column() - 1]
        if role == Qt.ItemDataRole.ToolTipRole and paint.note:
            return f"<p>{paint.note}</p>"
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
        self.resize(760, 560)
        rows = QVBoxLayout(self)
        heading = QLabel(words.shelf_line(shelf.name, len(shelf.paints)))
        heading.setObjectName("heading")
        rows.addWidget(heading)
        self.table = QTableView()
        self.table.setAccessibleName(words.SHELF)
        self.table.setModel(ShelfModel(shelf, self))
        self.table.setSelectionBehavior(QTableView.SelectionBehavior.SelectRows)
        self.table.verticalHeader().hide()
        self.table.verticalHeader().setDefaultSectionSize(_ROW_HEIGHT)
        head = self.table.horizontalHeader()
        head.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        head.setSectionResizeMode(0, QHeaderView.ResizeMode.Fixed)
        head.setSectionResizeMode(1, QHeaderView.ResizeMode.Stretch)
        self.table.setColumnWidth(0, 96)
        rows.addWidget(self.table)
        notes = QLabel(" ".join(shelf.notes))
        notes.setObjectName("small")
        notes.setWordWrap(True)
        rows.addWidget(notes)
