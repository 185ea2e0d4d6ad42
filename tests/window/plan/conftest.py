"""The page of the plan, for its tests."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from swatchwright.desktop.pages.plan_page import PlanPage
from swatchwright.piece.work.order import Surface
from window.plan_hands import TUESDAY, choose

if TYPE_CHECKING:
    from collections.abc import Callable

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]


@pytest.fixture
def page(window: Window, settle: Settle) -> PlanPage:
    """Give the page of the plan, in view, with nothing on the bench."""
    window.show_page("plan")
    settle()
    found = window.page("plan")
    assert isinstance(found, PlanPage)
    return found


@pytest.fixture
def raw(page: PlanPage) -> PlanPage:
    """Give the page with a piece of bare wood, from a Tuesday on."""
    choose(page.now.surface, Surface.RAW)
    page.when.start.setDate(TUESDAY)
    return page
