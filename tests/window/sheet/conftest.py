"""The page of the sheet: with nothing on the bench, with a mix, and with a job."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from window.sheet_hands import lay_box, mix_clay_red, rest, sheet_page

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.pages.sheet_page import SheetPage
    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]


@pytest.fixture
def empty(window: Window, settle: Settle) -> SheetPage:
    """Give the page, in view, with nothing on the bench."""
    return sheet_page(window, settle)


@pytest.fixture
def page(empty: SheetPage, window: Window, settle: Settle, qtbot: QtBot) -> SheetPage:
    """Give the page with a mix for a typed clay red, and no job."""
    mix_clay_red(window, settle)
    rest(empty, qtbot)
    return empty


@pytest.fixture
def box(empty: SheetPage, window: Window, settle: Settle, qtbot: QtBot) -> SheetPage:
    """Give the page with a job on the bench: two zones, a piece, a note."""
    lay_box(window, settle)
    rest(empty, qtbot)
    return empty
