"""What is drawn in daylight only says so while all else is seen in another light."""

from __future__ import annotations

from typing import TYPE_CHECKING

from swatchwright.colour.spectrum import Light
from swatchwright.desktop.words import finish as words
from swatchwright.paint.layers import LayerKind
from window.finish_hands import LEFT, lay

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.pages.finish_page import FinishPage


def test_how_a_layer_builds_up(page: FinishPage, shown: Callable[[], None], qtbot: QtBot) -> None:
    """Under a lamp the head of the build-up says that it is in daylight, wet that it is dry."""
    lay(page, LayerKind.WASH, qtbot)
    shown()
    layered = page.layered
    plain = layered.build_up.heading.text()
    assert "daylight" not in plain
    qtbot.mouseClick(layered.lights[Light.LAMP], LEFT)
    assert layered.build_up.heading.text() == words.builds_up(1, Light.LAMP)
    assert "in daylight" in layered.build_up.heading.text()
    layered.layers.set_passes(0, 2)
    shown()
    assert "in daylight" in layered.build_up.heading.text()
    qtbot.mouseClick(layered.wet, LEFT)
    assert layered.build_up.heading.text() == words.builds_up(1, None)
    qtbot.mouseClick(layered.lights[Light.D65], LEFT)
    assert layered.build_up.heading.text() == plain
