"""What a hand does on the page of the piece, for its tests."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QDoubleSpinBox, QLabel, QLineEdit

if TYPE_CHECKING:
    from PySide6.QtWidgets import QTableView
    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.pages.piece_page import PiecePage

__all__ = ["LEFT", "row_named", "told", "typed"]

LEFT = Qt.MouseButton.LeftButton


def told(page: PiecePage) -> str:
    """Give all the text in view on the page."""
    return "\n".join(label.text() for label in page.findChildren(QLabel) if label.isVisible())


def typed(table: QTableView, row: int, column: int, text: str, qtbot: QtBot) -> None:
    """Type into a cell as a hand does: F2, the text, Return."""
    table.setFocus()
    table.setCurrentIndex(table.model().index(row, column))
    qtbot.keyClick(table, Qt.Key.Key_F2)
    field = QApplication.focusWidget()
    assert isinstance(field, QLineEdit | QDoubleSpinBox)
    field.selectAll()
    qtbot.keyClicks(field, text)
    qtbot.keyClick(field, Qt.Key.Key_Return)
    # A delegate takes what was typed with the next event.
    QApplication.processEvents()


def row_named(page: PiecePage, name: str) -> int:
    """Give the row of a part."""
    assert page.piece is not None
    return [part.name for part in page.piece.parts].index(name)
