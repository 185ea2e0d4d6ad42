"""A figure of how far off a colour is never stands alone: the word of the one scale is with it."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import pytest
from PySide6.QtWidgets import QLabel, QWidget

from swatchwright.colour.names import closeness, off_words, scale_told
from swatchwright.desktop.pages.compare_page import ComparePage
from swatchwright.desktop.pages.finish_page import FinishPage
from swatchwright.desktop.words import compare, finish, mixes, sample, shelf
from swatchwright.desktop.words.bits import SCALE_TIP
from window.scenes import Bench, scenes

if TYPE_CHECKING:
    from collections.abc import Iterator

    from swatchwright.desktop.window import Window

# How a difference is told in a figure, wherever one is: "2.1 off", "within about 3 of the cloth".
_TOLD = re.compile(
    r"""
      (?P<off> \d+(?:\.\d+)? ) (?:\ ±\ [\d.]+ )? \ off\b
    | \b[Oo]ff\ by\ (?:about\ )? (?P<by> \d+(?:\.\d+)? )
    | \b(?:lands|reckon\ with)\ about\ (?P<lands> \d+(?:\.\d+)? )
    | \b[Ww]ithin\ (?:about\ )? (?P<within> \d+(?:\.\d+)? ) \b (?!\ *%)
    | \bknown\ give\ or\ take\ (?P<known> \d+(?:\.\d+)? )
    | \b(?:moves\ it|grain|than\ asked,\ by)\ (?P<moved> \d+(?:\.\d+)? )
    | (?P<apart> \d+(?:\.\d+)? ) \ (?: apart | from\ the\ (?:cloth|wanted|mix) | from\ what ) \b
    """,
    re.VERBOSE,
)
# Where a difference is told in figures, at the least.
_MUST = {
    "mixes found",
    "window mend",
    "reach, inside",
    "reach, outside",
    "compared",
    "compared in every light",
    "a job",
    "a sample compared",
    "a sample kept",
    "layers laid",
    "ways to a wish",
}


def figures_in(text: str) -> Iterator[tuple[float, str]]:
    """Give each figure of a difference in a text, and what stands from there to the next."""
    found = list(_TOLD.finditer(text))
    ends = [one.start() for one in found[1:]] + [len(text)] * bool(found)
    for one, end in zip(found, ends, strict=True):
        figure = next(value for value in one.groupdict().values() if value)
        yield float(figure), text[one.end() : end]


def bare(text: str) -> list[float]:
    """Give the figures of differences that stand without their word."""
    return [figure for figure, after in figures_in(text) if closeness(figure) not in after]


def texts(shown: QWidget) -> Iterator[str]:
    """Give all that is read in a window, and what a screen reader says of it."""
    for widget in shown.findChildren(QWidget):
        if widget.isVisible():
            yield from (widget.accessibleName(), widget.accessibleDescription())
            if isinstance(widget, QLabel):
                yield widget.text()


@pytest.mark.parametrize(
    ("text", "alone"),
    [
        (off_words(2.1), []),
        ("It should be within about 2.0 of the cloth (seen side by side).", []),
        ("1.0 to 4.0 off: “just seen” to “plain to see”", []),
        ("From red to blue: 5.4 apart.", [5.4]),
        ("It is 2.1 off, and the pot would still be 0.9 off (just seen).", [2.1]),
        ("It is 2.1 off (just seen).", [2.1]),
        ("Hides in 2 coats, and 14 ml in the end.", []),
    ],
)
def test_a_figure_without_its_word_is_found(text: str, alone: list[float]) -> None:
    """Each figure must have its own word behind it, and the right one; other figures do not."""
    assert bare(text) == alone


def unexplained(shown: QWidget) -> Iterator[str]:
    """Give the texts with a figure that does not explain itself on pointing."""
    for label in shown.findChildren(QLabel):
        told = label.text()
        if label.isVisible() and _TOLD.search(told) and scale_told() not in label.toolTip():
            yield told


def test_on_every_page_each_figure_stands_with_its_word_and_explains_itself(
    window: Window,
) -> None:
    """All through the work on the demonstration job, with figures shown where they can be."""
    bench, met = Bench(window), set[str]()
    for state, shown in scenes(bench):
        if state == "compared":
            bench.press(bench.page("compare", ComparePage).bar.figures)
        if state == "layers laid":
            bench.press(bench.page("finish", FinishPage).layered.figures)
        told = list(texts(shown))
        assert {text: bare(text) for text in told if bare(text)} == {}, state
        assert set(unexplained(shown)) == set(), state
        if any(_TOLD.search(text) for text in told):
            met.add(state)
    assert met >= _MUST


def test_where_a_figure_is_explained_it_is_in_the_same_words() -> None:
    """Every explanation of such a figure holds the two sentences that explain the scale."""
    for tip in (
        mixes.figures_tip(),
        compare.FIGURES_TIP,
        sample.FIGURES_TIP,
        shelf.DOUBT_TIP,
        finish.figures_note(),
    ):
        assert tip.count(scale_told()) == 1
    assert f"<p>{scale_told()}</p>" == SCALE_TIP
