"""A bench with a mix to be sampled, for its tests."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from window.known import known_findings

if TYPE_CHECKING:
    from collections.abc import Callable

    from swatchwright.desktop.window import Window


@pytest.fixture
def bench(window: Window, settle: Callable[[], None]) -> Window:
    """Give the window with the first mix for a typed clay red kept for the piece."""
    with known_findings():
        window.session.set_most_paints(2)
        window.session.type_colour("46, 34, 24")
        settle()
        window.keeping.keep(1)
        settle()
    return window
