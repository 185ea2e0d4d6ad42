"""What a mix costs is told in whose money it is: hers, by its name or without, or nobody's."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from PySide6.QtWidgets import QLabel

from swatchwright.acts.recipes import MeasuredRecipe
from swatchwright.desktop import words
from swatchwright.desktop.window import Window
from swatchwright.language.money import use_money
from swatchwright.paint.paints import HowKnown

if TYPE_CHECKING:
    from collections.abc import Iterator


@pytest.fixture
def first(mixed: Window) -> Iterator[MeasuredRecipe]:
    """Give a mix of the demonstration, whose paints and prices are invented."""
    assert mixed.session.recipes is not None
    yield mixed.session.recipes.recipes[0]
    use_money("")


def hers(measured: MeasuredRecipe) -> MeasuredRecipe:
    """Give the mix as if its paints were her own."""
    recipe = measured.recipe
    own = tuple(replace(paint, how_known=HowKnown.MEASURED) for paint in recipe.paints)
    return replace(measured, recipe=replace(recipe, paints=own))


def test_invented_prices_say_so(mixed: Window, first: MeasuredRecipe) -> None:
    """A card of the demonstration tells that its prices are invented as its paints are."""
    assert first.price is not None
    told = [label.text() for label in mixed.mix_side.columns()[0].findChildren(QLabel)]
    assert words.known_line(first.recipe.paints, prices=True) in told
    assert words.known_line(first.recipe.paints) not in told
    assert words.cost_line(first) in told
    assert "your money" not in words.cost_line(first)


def test_her_prices_are_in_her_money(first: MeasuredRecipe) -> None:
    """A figure alone says whose money it is, until that has a name."""
    mix = hers(first)
    assert words.cost_line(mix).endswith("in your money")
    use_money("crowns")
    assert words.cost_line(mix).endswith("crowns")
    assert words.known_line(mix.recipe.paints, prices=True) == words.known_line(mix.recipe.paints)


def test_no_price(first: MeasuredRecipe) -> None:
    """Where no price is known nothing is said of money."""
    mix = replace(hers(first), price_per_ml=None)
    assert mix.price is None
    assert "cost" not in words.cost_line(mix)
