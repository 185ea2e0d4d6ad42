"""A recipe of a code with the paints of a shelf."""

from __future__ import annotations

from dataclasses import replace

import pytest

from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.sheet import CodeRecipe
from swatchwright.acts.sheet_on_shelf import on_shelf
from swatchwright.sheet.code import CodePaint
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.values import Lab

RED = Lab(46, 34, 24)


def test_the_same_shelf() -> None:
    """With the paints that it was mixed of it dries as it did."""
    shelf, parts = demo_shelf(), [("soft-black", 1.0), ("white-clean", 9.0)]
    dry = look_of_mix(shelf, parts).dry
    recipe = CodeRecipe(tuple(CodePaint(id_, n) for id_, n in parts), dry=dry)
    found = on_shelf(recipe, shelf)
    assert found.dry == dry
    assert found.apart == pytest.approx(0, abs=1e-9)
    assert found.missing == ()
    assert on_shelf(replace(recipe, dry=None), shelf).apart is None


def test_missing_paints() -> None:
    """Paints that the shelf does not have are named, and no colour is told."""
    recipe = CodeRecipe((CodePaint("gone", 1.0, "Gone green"), CodePaint("lost", 2.0)), dry=RED)
    found = on_shelf(recipe, demo_shelf())
    assert found.missing == ("Gone green", "lost")
    assert found.dry is None
    assert found.apart is None
