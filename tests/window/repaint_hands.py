"""What a hand does on the page of the piece on a photo, for its tests."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from PySide6.QtCore import QPoint, Qt

if TYPE_CHECKING:
    from PySide6.QtGui import QImage
    from pytestqt.qtbot import QtBot

    from swatchwright.acts.repaint_job import RepaintPlan
    from swatchwright.desktop.pages.repaint_page import RepaintPage

__all__ = ["LEFT", "colour_at", "drag", "plan_of"]

LEFT = Qt.MouseButton.LeftButton


def plan_of(page: RepaintPage) -> RepaintPlan:
    """Give what is set, which must be there."""
    assert page.piece.plan is not None
    return page.piece.plan


def drag(page: RepaintPage, qtbot: QtBot, *places: tuple[float, float]) -> None:
    """Draw on the photo through places in its pixels."""
    canvas = page.canvas
    points = [canvas.to_widget(x, y).toPoint() for x, y in places]
    qtbot.mousePress(canvas, LEFT, pos=points[0])
    for start, end in pairwise(points):
        for step in range(1, 9):
            qtbot.mouseMove(canvas, start + QPoint(*((end - start) * step / 8).toTuple()))
    qtbot.mouseRelease(canvas, LEFT, pos=points[-1])


def colour_at(image: QImage, x: float, y: float) -> tuple[int, int, int]:
    """Give the colour of a picture at shares of its width and height."""
    colour = image.pixelColor(int(x * image.width()), int(y * image.height()))
    return colour.red(), colour.green(), colour.blue()
