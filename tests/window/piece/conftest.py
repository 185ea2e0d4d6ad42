"""The page of the piece, for its tests."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from swatchwright.desktop.pages.piece_page import PiecePage
from swatchwright.piece.common import Kind
from window.piece_hands import LEFT

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]


@pytest.fixture
def page(window: Window, settle: Settle) -> PiecePage:
    """Give the page of the piece, in view, with nothing on the bench."""
    window.show_page("piece")
    settle()
    found = window.page("piece")
    assert isinstance(found, PiecePage)
    return found


@pytest.fixture
def table(page: PiecePage, qtbot: QtBot, settle: Settle) -> PiecePage:
    """Give the page with a console table."""
    qtbot.mouseClick(page.kinds.buttons[Kind.CONSOLE_TABLE], LEFT)
    settle()
    return page
