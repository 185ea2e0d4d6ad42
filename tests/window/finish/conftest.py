"""The page of the finish over mixes for a typed clay red."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from window.finish_hands import finish_of, mix_clay_red, rest

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.pages.finish_page import FinishPage
    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]


@pytest.fixture
def mixed(window: Window, settle: Settle) -> Window:
    """Give the window with mixes for a typed clay red, and the page of the finish in view."""
    mix_clay_red(window, settle)
    return window


@pytest.fixture
def shown(mixed: Window, settle: Settle, qtbot: QtBot) -> Callable[[], None]:
    """Give a function that waits until the picture shows what is set."""
    return lambda: rest(finish_of(mixed), settle, qtbot)


@pytest.fixture
def page(mixed: Window, shown: Callable[[], None]) -> FinishPage:
    """Give the page, its picture drawn."""
    shown()
    return finish_of(mixed)
