"""Learning from a wet and a dry colour how a paint dries."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from swatchwright.errors import MendableError
from swatchwright.paint.family import FAMILIES, Family, Finish
from swatchwright.paint.fit.drying import learn_drying, may_differ
from swatchwright.paint.mixture import dry_lab, mix, wet_lab
from swatchwright.paint.paints import Paint, stack
from unit.paint.made import paint, smooth

CLAY = smooth([2.4, 2.4, 2.1, 1.4, 1.3])


def clay(family: Family = Family.CHALKY, own: Finish | None = None) -> Paint:
    """Make a clay red."""
    return paint("clay", CLAY, 90.0, family, own_finish=own)


def colours(one: Paint) -> tuple[list[float], list[float]]:
    """Give its colour wet and dry."""
    alone = mix(stack([one]), [[0]], [[1.0]])
    return wet_lab(alone)[0].tolist(), dry_lab(alone)[0].tolist()


@pytest.mark.parametrize("family", Family)
def test_a_paint_like_its_family_learns_nothing_new(family: Family) -> None:
    """Where a stroke dries as its family does, every number stays the family's."""
    wet, dry = colours(clay(family))
    found = learn_drying(wet, dry, clay(family))
    for one in found.learnt:
        assert one.own == pytest.approx(one.usual, rel=1e-3)
    assert found.off_before == pytest.approx(0, abs=1e-6)
    assert found.off_after == pytest.approx(0, abs=1e-3)
    assert found.paint.own_finish is not None


def test_a_chalkier_paint_is_found_out() -> None:
    """A chalky paint with fuller pores than most goes towards the truth and is predicted nearer."""
    true = replace(FAMILIES[Family.CHALKY], wet_scattering=0.45)
    wet, dry = colours(clay(own=true))
    found = learn_drying(wet, dry, clay())
    (learnt,) = found.learnt
    assert true.wet_scattering - 0.02 < learnt.own < learnt.usual
    assert found.off_after < 0.4 * found.off_before
    assert 0 < learnt.spread < 0.25 * learnt.usual


def test_only_the_step_counts() -> None:
    """A photo whose light is off alike for wet and dry teaches the same."""
    wet, dry = colours(clay(own=replace(FAMILIES[Family.CHALKY], wet_scattering=0.5)))
    shift = np.array([1.5, -1.0, 2.0])
    one = learn_drying(wet, dry, clay()).paint.finish
    other = learn_drying(wet + shift, dry + shift, clay()).paint.finish
    assert one.wet_scattering == pytest.approx(other.wet_scattering, rel=1e-6)


@pytest.mark.parametrize("family", Family)
def test_no_stroke_takes_a_paint_out_of_its_family(family: Family) -> None:
    """However a stroke looks, numbers stay possible, and those fixed by physics stay fixed."""
    one = clay(family)
    wet, dry = colours(one)
    found = learn_drying([max(wet[0] - 12, 1), *wet[1:]], dry, one).paint
    usual = FAMILIES[family]
    assert 0 <= found.finish.glare <= 1
    assert found.finish.wet_scattering > 0
    assert found.finish.milk >= 0
    for name in {"glare", "wet_scattering", "milk"} - set(may_differ(family)):
        assert getattr(found.finish, name) == getattr(usual, name)
    assert found.finish.waterborne is usual.waterborne
    assert_allclose(found.K, one.K)


def test_what_may_differ() -> None:
    """Pores differ between chalky paints, milk between emulsions, and glare where there is some."""
    assert may_differ(Family.CHALKY) == ("wet_scattering",)
    assert may_differ(Family.SATIN) == ("glare", "wet_scattering", "milk")
    assert may_differ(Family.GLOSS) == ("wet_scattering", "milk")
    assert may_differ(Family.OIL) == ("glare",)


@pytest.mark.parametrize(
    ("wet", "dry", "words"),
    [
        ([40.0, 30, 20], [90.0, 0, 0], "from the colour of clay on the shelf"),
        ([99.0, -40, 20], None, "further than paint dries"),
        ([float("nan"), 0, 0], None, "not a colour"),
        ([130.0, 0, 0], None, "not a colour"),
    ],
)
def test_strokes_of_something_else_are_refused(
    wet: list[float], dry: list[float] | None, words: str
) -> None:
    """Colours that are not of one stroke of this paint are refused."""
    with pytest.raises(MendableError, match=words):
        learn_drying(wet, dry or colours(clay())[1], clay())
