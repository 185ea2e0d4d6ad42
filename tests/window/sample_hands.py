"""What a hand does on the page of the sample, for its tests."""

from __future__ import annotations

from typing import TYPE_CHECKING

from swatchwright.desktop.pages.sample_page import SamplePage

if TYPE_CHECKING:
    from swatchwright.desktop.window import Window

__all__ = ["page_of"]


def page_of(window: Window) -> SamplePage:
    """Show the page."""
    window.show_page("sample")
    page = window.page("sample")
    assert isinstance(page, SamplePage)
    return page
