"""What a hand does on the page of the piece, for its tests."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtWidgets import QApplication, QDoubleSpinBox, QLabel, QLineEdit

if TYPE_CHECKING:
    from PySide6.QtWidgets import QTableView
    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.pages.piece_page import PiecePage
    from swatchwright.desktop.widgets.piece_press import PressedDrawing

__all__ = ["LEFT", "press", "row_named", "spot_of", "told", "typed"]

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


def spot_of(drawing: PressedDrawing, number: int) -> QPoint:
    """Give a pixel of a drawing at which a part is seen: one well within it, as a hand would aim.

    `-1` asks for a pixel beside all parts.
    """
    wide, high = drawing.width(), drawing.height()
    pixels = [QPoint(x, y) for y in range(1, high, 3) for x in range(1, wide, 3)]
    found = [pixel for pixel in pixels if drawing.number_at(QPointF(pixel)) == number]
    assert found, number
    return found[len(found) // 2]


def press(page: PiecePage, name: str, qtbot: QtBot) -> int:
    """Press a part on the drawing, and give its row."""
    row = row_named(page, name)
    drawing = page.bench.drawing
    qtbot.mouseClick(drawing, LEFT, pos=spot_of(drawing, row))
    return row
