"""Buttons say what they are for, and another job begins at the top of its pages."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from PySide6.QtGui import QFontMetrics

from swatchwright.acts.jobs import new_job
from swatchwright.colour.names import colour_name
from swatchwright.desktop.pages.finish_page import FinishPage
from swatchwright.desktop.widgets.areas import ScrollArea
from swatchwright.desktop.widgets.colour_strip import ColourBlock
from swatchwright.desktop.widgets.layer_list import LayerList
from swatchwright.photo.dominant import DominantColour
from swatchwright.values import KnownColour, Lab, isotropic

if TYPE_CHECKING:
    from collections.abc import Callable

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

NARROWEST = 84 - 8
"""Pixels of the narrowest block, without the margins that a word must keep."""


def test_what_is_pressed_first_says_what_it_is_for(window: Window, settle: Settle) -> None:
    """The photo, the amount, the number of paints and each kind of layer have a hint."""
    window.show_page("finish")
    settle()
    page = cast(FinishPage, window.page("finish"))
    layers = page.findChildren(LayerList)
    assert layers
    for control in (
        window.open_photo,
        window.mix_side.volume,
        *window.mix_side.counts.values(),
        *layers[0].add.values(),
    ):
        assert len(control.toolTip()) > 20


def test_another_job_begins_at_the_top(window: Window, settle: Settle) -> None:
    """What was scrolled on a page is at its top when another job is laid on the bench."""
    window.desk.begin(lambda store: new_job(store, title="Blanket box"))
    window.resize(1280, 500)
    window.show_page("shelf")
    window.show_page("brief")
    settle()
    scrolled = [
        area.verticalScrollBar()
        for area in window.findChildren(ScrollArea)
        if area.verticalScrollBar().maximum() > 0
    ]
    assert scrolled
    for bar in scrolled:
        bar.setValue(bar.maximum())
    window.desk.begin(lambda store: new_job(store, title="Chair"))
    settle()
    inside = window._stack.findChildren(ScrollArea)
    left = [area.parentWidget() for area in inside if area.verticalScrollBar().value()]
    assert not left


def test_no_word_of_a_narrow_block_of_colour_is_cut(window: Window, settle: Settle) -> None:
    """Whatever a colour is called, its longest word fits the narrowest block."""
    settle()
    known = KnownColour(Lab(40, 5, 9), isotropic(1.0), "a photo")
    block = ColourBlock(1, DominantColour(known, known, 0.1, ((0, 0),), 1.0), window)
    for lab in (Lab(30, 12, 20), Lab(50, 40, 20), Lab(75, 8, 20), Lab(30, 5, -24), Lab(88, 1, 4)):
        block.follow(lab)
        letters = QFontMetrics(block.word_font(NARROWEST))
        words = colour_name(lab).split()
        assert max(letters.horizontalAdvance(word) for word in words) <= NARROWEST
