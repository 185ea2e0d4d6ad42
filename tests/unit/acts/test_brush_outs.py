"""What to brush out for a shelf."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from swatchwright.acts.brush_outs import brush_outs_wanted, wanted_text
from swatchwright.acts.known import likely_errors
from swatchwright.errors import MendableError
from swatchwright.paint.family import Family
from swatchwright.shelf.brush_outs import parse_sheet
from swatchwright.shelf.shelf import Shelf
from unit.acts.films_made import DEMO, SHELF, TRUE, WHITE

STRENGTH = np.full((1, 72), 0.4)


def test_a_new_paint_is_asked_for_its_masstone_and_let_downs() -> None:
    """Of a paint that nobody has seen: by itself, half and half, well let down, over a card."""
    wanted = brush_outs_wanted(SHELF, ["blue"])
    mixes = [dict(one.strip.mix) for one in wanted.asked]
    assert {"blue": 1} in mixes
    assert {"blue": 1, "white-clean": 1} in mixes
    assert {"blue": 1, "white-clean": 10} in mixes
    assert [one.strip.over for one in wanted.asked[-2:]] == ["black", "white"]
    assert [one.strip.mix for one in wanted.asked[:2]] == [(), ()]
    assert wanted.asked[-1].strip.id == wanted.asked[-2].strip.id


def test_without_a_card_or_a_white() -> None:
    """Nothing is asked that needs what is not there."""
    wanted = brush_outs_wanted(Shelf("x", ()), ["blue"], card=False)
    assert [dict(one.strip.mix) for one in wanted.asked] == [{"blue": 1}]
    assert "no white" in wanted.notes[-1]


def test_oil_is_not_let_down_with_a_water_white() -> None:
    """Solvent-borne paint is never asked to be mixed with a water-borne white."""
    oil = replace(TRUE, id="oil", family=Family.OIL)
    wanted = brush_outs_wanted(Shelf("x", (*SHELF.paints, oil)), ["oil"])
    assert all(len(one.strip.mix) < 2 for one in wanted.asked)


def test_what_is_known_is_asked_for_no_more() -> None:
    """Measured paints are not asked for; a fitted one only for the mix that teaches most."""
    assert brush_outs_wanted(SHELF).asked == ()
    vague = replace(TRUE, id="blue", spread=STRENGTH)
    (one,) = brush_outs_wanted(Shelf("x", (*SHELF.paints, vague))).asked
    assert set(dict(one.strip.mix)) == {"blue", "white-clean"}
    assert likely_errors(SHELF, vague).words in one.why
    sure = replace(vague, spread=STRENGTH * 1e-3)
    assert brush_outs_wanted(Shelf("x", (*SHELF.paints, sure))).asked == ()


def test_the_sheet_is_one_to_fill_in() -> None:
    """The text of what is wanted is a sheet that can be read, with every strip in it."""
    wanted = brush_outs_wanted(SHELF, ["blue", "ochre"])
    sheet = parse_sheet(wanted_text(wanted), "x")
    assert [strip.id for strip in sheet.strips] == [one.strip.id for one in wanted.asked]
    assert [strip.mix for strip in sheet.strips] == [one.strip.mix for one in wanted.asked]


def test_what_is_refused() -> None:
    """An id with a space, a white that is not there, and more than can be brushed are refused."""
    for ids, white, words in (
        (["deep blue"], None, "is no id"),
        (["blue"], "nope", "no paint “nope”"),
        ([f"p{n}" for n in range(60)], None, "strips would have to be brushed"),
    ):
        with pytest.raises(MendableError, match=words):
            brush_outs_wanted(SHELF, ids, white=white)
    assert len(brush_outs_wanted(DEMO).asked) > 24
    assert WHITE.id in {i for one in brush_outs_wanted(DEMO).asked for i, _ in one.strip.mix}
