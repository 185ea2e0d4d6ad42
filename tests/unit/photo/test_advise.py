"""Which reference more would help most."""

from __future__ import annotations

import pytest

from swatchwright.colour.doubt import usual_difference
from swatchwright.photo.advise import next_references
from swatchwright.photo.estimate import estimate
from swatchwright.photo.references import Reference
from unit.photo.boards import COLOURS, GREYS, board, chip, grey_lab, mark, middle, seen_at

LABS = [*(grey_lab(g) for g in GREYS), *COLOURS]


def test_the_best_comes_first_and_all_help() -> None:
    """They are sorted by the doubt that is left, and none leaves more than there was."""
    photo = board(LABS)
    for given in ((), (Reference.grey(mark(1), 0.18),)):
        ranked = next_references(estimate(photo, given), seen_at(photo, 5), *middle(5))
        left = [advice.then for advice in ranked]
        assert left == sorted(left)
        assert all(advice.then <= advice.now + 1e-9 for advice in ranked)


def test_the_doubt_foretold_is_about_the_doubt_that_comes() -> None:
    """Adding the advised white paper narrows the stated doubt as foretold, within a tenth."""
    photo = board(LABS)
    grey = Reference.grey(mark(1), 0.18)
    wanted = (seen_at(photo, 3), *middle(3))
    ranked = next_references(estimate(photo, (grey,)), *wanted)
    foretold = next(advice.then for advice in ranked if advice.addition == "white")
    white = Reference.grey(mark(0), 0.9, 1.2)
    came = usual_difference(*estimate(photo, (grey, white)).apply(*wanted))
    assert foretold == pytest.approx(came, rel=0.1)


def test_a_dark_wanted_colour_asks_for_black_before_white() -> None:
    """Of two cards the one nearer in lightness to the wanted colour tells more of it."""
    photo = board([grey_lab(0.18), (20, 2, -3), (92, 0, 4)])
    correction = estimate(photo, (Reference.grey(mark(0), 0.18),))
    for index, nearer, farther in ((1, "black", "white"), (2, "white", "black")):
        ranked = next_references(correction, seen_at(photo, index), *middle(index))
        order = [advice.addition for advice in ranked]
        assert order.index(nearer) < order.index(farther)  # type: ignore[arg-type]


def test_a_strong_colour_asks_for_a_chip() -> None:
    """With grey, white and black there, only a chip of its own kind helps a strong colour much."""
    photo = board(LABS)
    greys = [Reference.grey(mark(i), g) for i, g in enumerate(GREYS)]
    ranked = next_references(estimate(photo, greys), seen_at(photo, 5), *middle(5))
    assert ranked[0].addition == "chip"
    assert ranked[0].worth_it


def test_with_all_there_little_is_worth_it() -> None:
    """Once the colour itself is known as a chip, a card adds nothing to speak of."""
    photo = board(LABS)
    given = [Reference.grey(mark(i), g) for i, g in enumerate(GREYS)] + [chip(5, COLOURS[2])]
    ranked = next_references(estimate(photo, given), seen_at(photo, 5), *middle(5))
    assert not next(a for a in ranked if a.addition == "black").worth_it
