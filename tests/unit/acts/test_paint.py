"""Looking at one paint, and learning how it dries."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from swatchwright.acts.known import grade_of, likely_errors, white_of
from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.paint import dry_alike, look_of_paint
from swatchwright.colour.difference import delta_e_2000
from swatchwright.errors import MendableError
from swatchwright.paint.family import Family
from swatchwright.paint.paints import HowKnown
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab
from unit.acts.films_made import DEMO, RED, SHELF, WHITE


def test_it_looks_as_its_mixes_do() -> None:
    """Masstone and let-downs are those of the same mixes, and the white is the shelf's."""
    look = look_of_paint(DEMO, "clay-red-muted")
    alone = look_of_mix(DEMO, [("clay-red-muted", 1)])
    assert (look.dry, look.wet) == (alone.dry, alone.wet)
    assert look.likely is None
    for one in look.let_downs:
        mixed = look_of_mix(DEMO, [("clay-red-muted", 1), (one.white.id, one.parts)])
        assert delta_e_2000(one.dry.triple, mixed.dry.triple) < 1e-6
    lightness = [look.dry.L, *(one.dry.L for one in look.let_downs)]
    assert lightness == sorted(lightness)


def test_hiding_is_told() -> None:
    """Black hides in a coat; a paint of which one coat hides less needs more."""
    black, blue = (look_of_paint(DEMO, i) for i in ("soft-black", "deep-blue-red"))
    assert black.coats == 1
    assert black.one_coat >= 0.98 > blue.one_coat
    assert blue.coats is None or blue.coats > 1


def test_hiding_is_told_as_surely_as_it_is_known() -> None:
    """An invented paint hides as stated; a real one within a span, the wider the less is known."""
    exact = look_of_paint(DEMO, "deep-blue-red")
    assert exact.coats_span == (exact.coats, exact.coats)
    spans = []
    for width in (0.0, 0.3, 1.0):
        rows = np.concatenate([np.zeros((1, 36)), np.full((1, 36), width)], axis=1)
        paint = replace(DEMO.paint("deep-blue-red"), how_known=HowKnown.FITTED, spread=rows)
        least, most = look_of_paint(Shelf("x", (paint,)), paint.id).coats_span
        assert least is not None
        assert exact.coats is not None
        assert least <= exact.coats <= (most or 7)
        spans.append((most or 7) - least)
    assert spans == sorted(spans)
    assert spans[0] < spans[-1]


def test_a_paint_with_no_white_to_mix() -> None:
    """Alone, or of another carrier than the white, a paint has no let-downs."""
    assert look_of_paint(Shelf("x", (RED,)), RED.id).let_downs == ()
    oil = replace(RED, family=Family.OIL)
    assert look_of_paint(Shelf("x", (WHITE, oil)), RED.id).let_downs == ()
    assert white_of([]) is None
    assert white_of([RED]) is None


def test_doubt_in_words() -> None:
    """The words follow what mixes are off by: 3.4 with let-downs, 9 to 12 from single drawdowns.

    Medians on open data (docs/accuracy.md).
    """
    words = [grade_of(off).value for off in (3.4, 5.0, 7.0, 9.0)]
    assert words == [
        "well known",
        "known well enough to mix from",
        "roughly known",
        "hardly known",
    ]
    vague = replace(RED, spread=np.full((1, 72), 0.3))
    likely = likely_errors(SHELF, vague)
    assert likely.with_white is not None
    assert likely.crossing is not None
    assert likely.with_white.whole > likely.with_white.paints
    assert likely_errors(Shelf("x", (vague,)), vague).with_white is None


def test_a_shelf_learns_how_a_paint_dries() -> None:
    """Only the paint that was brushed changes, and its wet look goes where the stroke was."""
    before = look_of_paint(DEMO, "clay-red-muted")
    wet = Lab(before.wet.L - 3, before.wet.a, before.wet.b)
    shelf, drying = dry_alike(DEMO, "clay-red-muted", wet=wet, dry=before.dry)
    after = look_of_paint(shelf, "clay-red-muted")
    assert delta_e_2000(after.wet.triple, wet.triple) < delta_e_2000(before.wet.triple, wet.triple)
    assert after.dry == before.dry
    assert drying.off_after < drying.off_before
    changed = [one.id for one, two in zip(DEMO.paints, shelf.paints, strict=True) if one is not two]
    assert changed == ["clay-red-muted"]
    with pytest.raises(MendableError, match="no paint"):
        dry_alike(DEMO, "nope", wet=wet, dry=before.dry)
