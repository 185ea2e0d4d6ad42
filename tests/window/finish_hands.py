"""What a hand does on the page of the finish, for its tests."""

from __future__ import annotations

from math import hypot
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt

from swatchwright.acts.client_wish import Stands
from swatchwright.desktop.pages.finish_page import FinishPage

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtWidgets import QComboBox
    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.widgets.finish_ways import WayColumn
    from swatchwright.desktop.window import Window
    from swatchwright.paint.layers import LayerKind
    from swatchwright.values import Lab

__all__ = [
    "LEFT",
    "PATIENCE",
    "ask",
    "choose",
    "chroma",
    "finish_of",
    "lay",
    "mix_clay_red",
    "rest",
]

LEFT = Qt.MouseButton.LeftButton
PATIENCE = 60_000


def mix_clay_red(window: Window, settle: Callable[[], None]) -> None:
    """Have mixes of two paints for a typed clay red, and lay the page on the bench."""
    window.session.set_most_paints(2)
    window.session.type_colour("46, 34, 24")
    settle()
    window.show_page("finish")
    settle()


def finish_of(window: Window) -> FinishPage:
    """Give the page."""
    page = window.page("finish")
    assert isinstance(page, FinishPage)
    return page


def rest(page: FinishPage, settle: Callable[[], None], qtbot: QtBot) -> None:
    """Wait until the picture shows what is set."""
    qtbot.waitUntil(lambda: not page._reckon_soon.isActive(), timeout=PATIENCE)
    settle()


def chroma(lab: Lab) -> float:
    """Give the chroma of a colour, as ISO/CIE 11664-4 defines it."""
    return hypot(lab.a, lab.b)


def lay(page: FinishPage, kind: LayerKind, qtbot: QtBot) -> None:
    """Press the button that lays on another layer."""
    qtbot.mouseClick(page.layered.layers.add[kind], LEFT)


def choose(combo: QComboBox, text: str) -> None:
    """Choose a line of a combo box as by hand."""
    place = combo.findText(text)
    assert place >= 0, text
    combo.setCurrentIndex(place)
    combo.activated.emit(place)


def ask(
    page: FinishPage,
    qtbot: QtBot,
    settle: Callable[[], None],
    text: str = "",
    *,
    stands: Stands = Stands.PAINTED,
) -> list[WayColumn]:
    """Turn to what the client wants, say how far it has come, and wait for the ways.

    A line is chosen if one is told.
    """
    qtbot.mouseClick(page.sides[1], LEFT)
    button = page.reverse.ask.stands[stands]
    if not button.isChecked():
        qtbot.mouseClick(button, LEFT)
    if text:
        choose(page.reverse.ask.word, text)
    qtbot.waitUntil(lambda: not page.reverse.ask._wait.isActive(), timeout=PATIENCE)
    settle()
    return page.reverse.ways.columns
