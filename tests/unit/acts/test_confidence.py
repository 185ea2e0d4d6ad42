"""How far an untried mix will be off, where it is told how well its paints are known."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from swatchwright.acts.confidence import confidence_in
from swatchwright.acts.recipes import recipes_for, typed_colour
from swatchwright.paint.fit.fitted import FORMULA_SPREAD
from swatchwright.paint.paints import HowKnown
from swatchwright.shelf.shelf import Shelf
from unit.acts.films_made import RED, WHITE

CLAY = typed_colour(60, 20, 14)
SURE = replace(RED, spread=np.zeros((0, 72)))
VAGUE = replace(RED, spread=np.full((1, 72), 0.5))
EXACT = replace(WHITE, spread=np.zeros((0, 72)))


def test_what_the_theory_gets_wrong_is_left() -> None:
    """Of paints known exactly, only the theory's own error is left, and less than by the kind."""
    found = confidence_in(CLAY, (SURE, EXACT), (0.5, 0.5))
    assert found.by_spread
    assert_allclose(found.covariance, FORMULA_SPREAD**2 * np.eye(3), atol=1e-9)
    assert 1 < found.paints < confidence_in(CLAY, (RED, WHITE)).paints


def test_a_paint_that_is_vague_makes_mixes_vague() -> None:
    """Doubt grows with the share of the paint that is not well known, and with how little it is."""
    trace, half = (
        confidence_in(CLAY, (VAGUE, EXACT), (share, 1 - share)).paints for share in (0.01, 0.2)
    )
    assert confidence_in(CLAY, (SURE, EXACT), (0.2, 0.8)).paints < trace < half


def test_one_told_by_its_kind_alone_still_counts() -> None:
    """Beside a paint whose doubt is told, one that is guessed counts as guessed."""
    guessed = replace(WHITE, how_known=HowKnown.GUESSED)
    assert confidence_in(CLAY, (SURE, guessed), (0.5, 0.5)).paints == pytest.approx(10.5)
    assert confidence_in(CLAY, (VAGUE, guessed), (0.5, 0.5)).paints > 10.5


def test_recipes_carry_their_own() -> None:
    """Each recipe of a shelf has the doubt of its own paints and shares."""
    shelf = Shelf("x", (VAGUE, EXACT, replace(SURE, id="sure", K=RED.K * 1.3)))
    found = recipes_for(CLAY, shelf, keep=4)
    doubts = {tuple(sorted(p.id for p in r.recipe.paints)): r.confidence for r in found.recipes}
    for measured in found.recipes:
        r = measured.recipe
        assert measured.confidence == confidence_in(CLAY, r.paints, r.shares)
    sure = [d.paints for ids, d in doubts.items() if RED.id not in ids]
    vague = [d.paints for ids, d in doubts.items() if RED.id in ids]
    assert sure
    assert vague
    assert max(sure) < max(vague)
