"""What a hand does with a mouse, for the tests of the window."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

if TYPE_CHECKING:
    from swatchwright.desktop.widgets.photo_view import PhotoView

__all__ = ["drag"]


def drag(
    view: PhotoView,
    start: tuple[float, float],
    end: tuple[float, float],
    held: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier,
) -> None:
    """Drag the mouse from one pixel of the photo to another, with a key held or not."""
    begin, finish = (view.to_widget(*at).toPoint() for at in (start, end))
    QTest.mousePress(view, Qt.MouseButton.LeftButton, held, begin)
    for at in ((begin + finish) / 2, finish):
        QTest.mouseMove(view, at)
    QTest.mouseRelease(view, Qt.MouseButton.LeftButton, held, finish)
