"""The piece on a photo looked at more closely: both pictures enlarged, and a divider."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QPoint, Qt

from swatchwright.desktop.pages.repaint_page import RepaintPage
from window.repaint_hands import LEFT, drag, plan_of

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    Settle = Callable[[], None]


class TestLookingCloser:
    """Enlarging, moving about, and a divider between before and after."""

    def test_both_pictures_are_enlarged_together(
        self, on_sample: RepaintPage, qtbot: QtBot
    ) -> None:
        """What is enlarged on the photo is enlarged in the new colours, about the same place."""
        page = on_sample
        qtbot.keyClick(page.canvas, Qt.Key.Key_Plus)
        narrow = page.canvas.scale()
        qtbot.keyClick(page.canvas, Qt.Key.Key_Plus)
        assert page.canvas.scale() == pytest.approx(1.25 * narrow)
        seen = page.after.grab().toImage()
        qtbot.keyClick(page.canvas, Qt.Key.Key_Minus)
        assert page.after.grab().toImage() != seen

    def test_a_stroke_lands_where_it_is_drawn(
        self, bare: RepaintPage, rest: Settle, qtbot: QtBot
    ) -> None:
        """Enlarged and moved about, the brush still draws under the pointer."""
        canvas = bare.canvas
        for _ in range(3):
            qtbot.keyClick(canvas, Qt.Key.Key_Plus)
        start = canvas.rect().center()
        qtbot.mousePress(canvas, Qt.MouseButton.RightButton, pos=start)
        qtbot.mouseMove(canvas, start + QPoint(-60, 20))
        qtbot.mouseRelease(canvas, Qt.MouseButton.RightButton, pos=start + QPoint(-60, 20))
        drag(bare, qtbot, (700.0, 520.0), (760.0, 520.0))
        rest()
        points = plan_of(bare).marked.strokes[-1].points
        assert points[0] == pytest.approx((700.0, 520.0), abs=2)
        assert points[-1] == pytest.approx((760.0, 520.0), abs=4)

    def test_the_divider(self, on_sample: RepaintPage, qtbot: QtBot) -> None:
        """Left of the divider is the piece as it is, right of it in its new colours."""
        page = on_sample
        plain = page.after.image
        qtbot.mouseClick(page.divider, LEFT)
        qtbot.waitUntil(lambda: not page.canvas.isVisible())
        qtbot.keyClick(page.after, Qt.Key.Key_Home)
        new = page.after.grab().toImage()
        qtbot.keyClick(page.after, Qt.Key.Key_End)
        old = page.after.grab().toImage()
        middle = (page.after.width() // 2, int(page.after.height() * 0.6))
        assert new.pixelColor(*middle) != old.pixelColor(*middle)
        place = QPoint(int(page.after.width() * 0.3), 200)
        qtbot.mouseClick(page.after, LEFT, pos=place)
        assert page.after.share == pytest.approx(0.3, abs=0.01)
        both = page.after.grab().toImage()
        assert both.pixelColor(*middle) == new.pixelColor(*middle)
        assert page.after.image is plain
        assert "30%" in page.after.accessibleName() or "30\u00a0%" in page.after.accessibleName()

    def test_one_way_of_looking_at_a_time(self, on_sample: RepaintPage, qtbot: QtBot) -> None:
        """The divider and the new colours alone take each other's place."""
        page = on_sample
        qtbot.mouseClick(page.divider, LEFT)
        qtbot.mouseClick(page.large, LEFT)
        assert not page.divider.isChecked()
        assert not page.after.divided
        qtbot.mouseClick(page.large, LEFT)
        assert page.canvas.isVisible()
