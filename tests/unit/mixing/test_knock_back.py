"""The search for a wash, against the trade's own rules and a search without cleverness."""

from __future__ import annotations

from itertools import product
from math import hypot

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import lab_of
from swatchwright.errors import MendableError
from swatchwright.mixing.asked import Asked, asked_for
from swatchwright.mixing.knock_back import (
    FELT,
    as_grey_as,
    best_washes,
    felt_difference,
    film_of_washing,
)
from swatchwright.paint.clear import AMBER_WAX, CLEAR_WAX, ClearFinish
from swatchwright.paint.layered import Base, Clear, base_of, film_of, look_of
from swatchwright.paint.mixture import mix
from swatchwright.paint.paints import Paint, stack
from swatchwright.paint.wash import GRAIN, Wash
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.values import Lab
from unit.mixing.shelves import some

DEMO = demo_shelf().paints
VIVID = ("strong-red-orange", "deep-blue-red", "strong-yellow-green", "leaf-green-mid")
PALE_GREYISH = ("pale-pink-greyish", "stone-grey-warm", "white-clean")


def coat(*paints: Paint) -> Base:
    """Lay an even mix of paints that hides."""
    shares = np.full(len(paints), 1 / len(paints))
    return base_of(mix(stack(paints), [range(len(paints))], [shares]))


def colour(base: Base) -> Lab:
    """Give its dry colour."""
    return Lab.of(lab_of(look_of(base, []))[0])


@pytest.mark.parametrize(("below", "above"), list(product(VIVID, PALE_GREYISH)))
def test_a_pale_greyish_wash_knocks_a_vivid_colour_back(below: str, above: str) -> None:
    """Each pass of it lowers the chroma again (common practice, no source)."""
    base = coat(*some(below))
    wash = mix(stack(some(above)), [[0]], [[1.0]])
    films = [film_of(wash, Wash(3, 0.2, passes)) for passes in range(6)]
    chroma = [hypot(*lab_of(look_of(base, [f]))[0, 1:]) for f in films]
    assert np.all(np.diff(chroma) < 0)


@settings(max_examples=15)
@given(
    st.lists(st.sampled_from(DEMO), min_size=1, max_size=3, unique_by=lambda p: p.id),
    st.sampled_from(Asked),
    st.floats(0, 1),
)
def test_no_wash_is_worse_than_none(below: list[Paint], word: Asked, dial: float) -> None:
    """What is found is nearer than the bare coat, on the whole and over the grain, or not there."""
    base = coat(*below)
    aim = asked_for(colour(base), word, dial)
    before = float(delta_e_2000(aim.triple, colour(base).triple))
    for washing in best_washes(base, aim, DEMO):
        assert washing.delta_e < before
        assert washing.felt < before
        assert 1 <= washing.water <= 5
        assert washing.passes in {1, 2, 3}


def test_what_is_told_is_what_comes_out() -> None:
    """Laid again from its parts, water and passes, a found wash has the colours that it tells."""
    base = coat(*some("strong-red-orange"))
    aim = asked_for(colour(base), Asked.LESS_VIVID, 0.5)
    for found in best_washes(base, aim, DEMO):
        film = film_of_washing(found.paints, found.parts, found.water, found.passes, found.left)
        labs = lab_of(look_of(base, [film], factor=np.array(GRAIN)))
        told = [found.flat.triple, found.dry.triple, found.grain.triple]
        np.testing.assert_allclose(labs, told, atol=1e-9)
        assert found.felt == pytest.approx(float(felt_difference(labs, aim)))
        assert found.delta_e == pytest.approx(float(delta_e_2000(aim.triple, labs[1])))


@pytest.mark.parametrize("wax", [CLEAR_WAX, AMBER_WAX])
def test_the_wax_above_is_reckoned_with(wax: ClearFinish) -> None:
    """A wash that will be waxed is told as it looks waxed, and aims better than one found bare.

    A wax deepens the wash below it by filling its pores (common practice, no source), so a wash
    that is right bare is not right under it.
    """
    base, over = coat(*some("strong-red-orange", "white-clean")), (Clear(wax),)
    now = Lab.of(lab_of(look_of(base, over))[0])
    aim = asked_for(now, Asked.LESS_VIVID, 1 / 3)
    found = best_washes(base, aim, DEMO, over=over)
    for one in found:
        film = film_of_washing(one.paints, one.parts, one.water, one.passes, one.left)
        labs = lab_of(look_of(base, [film, *over], factor=np.array(GRAIN)))
        told = [one.flat.triple, one.dry.triple, one.grain.triple]
        np.testing.assert_allclose(labs, told, atol=1e-3)
        assert one.delta_e == pytest.approx(float(delta_e_2000(aim.triple, labs[1])), abs=1e-3)
    bare = asked_for(colour(base), Asked.LESS_VIVID, 1 / 3)
    blind = []
    for one in best_washes(base, bare, DEMO):
        film = film_of_washing(one.paints, one.parts, one.water, one.passes, one.left)
        labs = lab_of(look_of(base, [film, *over], factor=np.array(GRAIN)))
        blind.append(float(felt_difference(labs, aim)))
    assert min(one.felt for one in found) < min(blind)


@pytest.mark.parametrize("word", [Asked.LESS_VIVID, Asked.DARKER, Asked.WARMER])
def test_nothing_simpler_was_missed(word: Asked) -> None:
    """No single paint, at any thinning in quarters and any passes, is felt to be much nearer."""
    base = coat(*some("ink-blue-dark", "white-clean"))
    aim = asked_for(colour(base), word, 0.4)
    best = min(found.felt for found in best_washes(base, aim, DEMO))
    each = mix(stack(DEMO), np.arange(len(DEMO))[:, None], np.ones((len(DEMO), 1)))
    for quarters, passes in product(range(4, 21), (1, 2, 3)):
        film = film_of(each, Wash(quarters / 4, 0.2, passes))
        labs = np.stack([lab_of(look_of(base, [film], factor=f)) for f in GRAIN], axis=1)
        assert felt_difference(labs, aim).min() > best - 0.7


def test_a_cloth_lends_its_greyness_only() -> None:
    """As grey as a cloth is its chroma at the own hue and lightness; a grey stays one."""
    aim = as_grey_as(Lab(40, 30, 40), Lab(80, -3, 4))
    assert hypot(aim.a, aim.b) == pytest.approx(5)
    assert aim.b / aim.a == pytest.approx(4 / 3)
    assert aim.L == 40
    assert as_grey_as(Lab(50, 0, 0), Lab(50, 20, 0)) == Lab(50, 0, 0)


def test_what_is_felt_is_all_of_it() -> None:
    """The weights of flat, whole and grain are shares of one."""
    assert sum(FELT) == pytest.approx(1)
    assert float(felt_difference(np.tile([50.0, 0, 0], (3, 1)), Lab(50, 0, 0))) == 0


def test_there_must_be_something_to_wash_with() -> None:
    """No paint, or none of it left, is refused."""
    base = coat(*some("soft-black"))
    with pytest.raises(MendableError, match="no paint to wash with"):
        best_washes(base, Lab(50, 0, 0), ())
    with pytest.raises(MendableError, match="0 % of the wash"):
        best_washes(base, Lab(50, 0, 0), DEMO, left=0.0)
