"""The laws of layers over a coat."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.testing import assert_allclose
from numpy.typing import NDArray

from swatchwright.colour.spectrum import lab_of
from swatchwright.paint.clear import CLEAR_VARNISH, CLEAR_WAX, ClearFinish, finished, soaked
from swatchwright.paint.family import Family
from swatchwright.paint.film import reflectance_of_ratio
from swatchwright.paint.layered import (
    Base,
    Clear,
    Coat,
    Film,
    base_of,
    film_of,
    look_of,
    primer_inside,
)
from swatchwright.paint.mixture import (
    Mixtures,
    dry_reflectance,
    mix,
    wet_reflectance,
)
from swatchwright.paint.paints import Paint, stack
from swatchwright.paint.wash import GRAIN, Wash
from unit.paint.made import paint, paints

Floats = NDArray[np.floating[Any]]


def alone(one: Paint) -> Mixtures:
    """Take a paint as a mixture of itself."""
    return mix(stack([one]), [[0]], [[1.0]])


GLOSSY = paint("glossy", K=30.0, S=40.0, family=Family.GLOSS)
CHALKY = paint("chalky", K=3.0, S=100.0)


@given(paints())
def test_nothing_on_it_is_the_bare_coat(one: Paint) -> None:
    """Without layers a coat that hides is the mixture as it is elsewhere, dry and wet."""
    mixture = alone(one)
    assert_allclose(look_of(base_of(mixture), []), dry_reflectance(mixture), atol=1e-12)
    assert_allclose(look_of(base_of(mixture), [], wet=True), wet_reflectance(mixture), atol=1e-12)


@given(
    paints(), paints(), st.sampled_from([Wash(passes=0), Wash(left=0.0), Wash(left=0, passes=3)])
)
def test_a_film_of_nothing_is_its_ground(below: Paint, above: Paint, wash: Wash) -> None:
    """A wash of which nothing is left changes neither colour nor sheen."""
    base = base_of(alone(below))
    washed = look_of(base, [film_of(alone(above), wash)], factor=np.array(GRAIN))
    assert_allclose(washed, np.repeat(look_of(base, []), 3, axis=0), atol=1e-12)


@given(paints(), paints())
def test_many_passes_tend_to_the_masstone(below: Paint, above: Paint) -> None:
    """Wash upon wash ends at the wash's own paint, its sheen included."""
    film = film_of(alone(above), Wash(water=3, left=0.2, passes=10_000_000))
    seen = look_of(base_of(alone(below)), [film])
    assert_allclose(seen, dry_reflectance(alone(above)), atol=2e-3)


@given(paints(), paints(), st.floats(0.0, 1e9), st.floats(0.0, 20.0))
def test_it_is_always_a_reflectance(below: Paint, above: Paint, thick: float, coats: float) -> None:
    """From no film to a metre of it, wet and dry, waxed and not, between 0 and 1."""
    film = film_of(alone(above), Wash(passes=2), wet_film=thick)
    wax = Clear(CLEAR_WAX, coats, grain=1.0)
    orders: tuple[list[Coat], ...] = ([film], [film, wax], [wax, film], [wax, wax, film, wax])
    for layers in orders:
        for wet in (False, True):
            R = look_of(base_of(alone(below)), layers, factor=np.array(GRAIN), wet=wet)
            assert R.shape == (3, 36)
            assert np.all(np.isfinite(R))
            assert np.all((R >= 0) & (R <= 1 + 1e-9))


@given(paints(), paints(), st.integers(1, 5))
def test_passes_are_layers(below: Paint, above: Paint, count: int) -> None:
    """A wash in some passes is that many washes of one pass, but for the blend of the sheen."""
    base, top = base_of(alone(below)), alone(above)
    at_once = look_of(base, [film_of(top, Wash(3, 0.2, count))])
    in_turn = look_of(base, [film_of(top, Wash(3, 0.2, 1))] * count)
    assert_allclose(at_once, in_turn, atol=1e-10)


def test_a_coat_that_does_not_hide_lets_its_primer_through() -> None:
    """A thin coat over white is lighter than over black, and many coats are alike."""
    mixture = alone(paint("thin", K=5.0, S=10.0))

    def over(reflectance: float, coats: int) -> float:
        inside = primer_inside(np.full(36, reflectance))
        return float(look_of(base_of(mixture, primer=inside, coats=coats), [])[0, 17])

    assert over(0.8, 1) > over(0.06, 1) + 0.1
    assert over(0.8, 200) == pytest.approx(over(0.06, 200), abs=1e-6)
    assert over(0.8, 200) == pytest.approx(float(dry_reflectance(mixture)[0, 17]), abs=1e-6)


def test_a_primer_is_seen_through_no_coat_as_it_is() -> None:
    """What is inside a primer gives its own colour back through a matte surface."""
    seen = np.linspace(0.05, 0.9, 36)
    inside = primer_inside(seen)
    bare = Film(np.ones(36), np.ones(36), 0.0, 1.0, 1.0, 0.0, 1.33)
    assert_allclose(look_of(Base(bare, inside), []), seen, atol=1e-12)


def test_a_clear_finish_is_the_finish_on_the_filled_paint() -> None:
    """Wax on a chalky coat is the finish over it with its pores filled; so is it on its wash."""
    chalky, wax = alone(CHALKY), Clear(CLEAR_WAX)
    filled = soaked(chalky.S, chalky.wet_scattering, CLEAR_WAX)
    expected = finished(reflectance_of_ratio(chalky.K / filled), CLEAR_WAX)
    assert_allclose(look_of(base_of(chalky), [wax]), expected, atol=1e-12)
    washed = look_of(base_of(chalky), [film_of(chalky, Wash()), wax])
    assert_allclose(washed, expected, atol=1e-12)


def test_what_lies_over_wax_keeps_its_pores() -> None:
    """Wax fills what is below it and not a wash above."""
    wash = film_of(alone(CHALKY), Wash(passes=1_000_000))
    over = look_of(base_of(alone(GLOSSY)), [Clear(CLEAR_WAX), wash])
    assert_allclose(over, dry_reflectance(alone(CHALKY)), atol=2e-3)


def test_the_last_surface_decides_the_sheen() -> None:
    """Gloss over wax is as deep as gloss alone, within 1 of L*, and deeper than the wax."""
    base = base_of(alone(paint("dark", K=300.0, S=30.0)))
    gloss = ClearFinish(CLEAR_VARNISH.index, glare=0.0)
    wax, both, only = (
        lab_of(look_of(base, layers))[0, 0]
        for layers in (
            [Clear(CLEAR_WAX)],
            [Clear(CLEAR_WAX), Clear(gloss)],
            [Clear(gloss)],
        )
    )
    assert both < wax - 3
    assert both == pytest.approx(only, abs=1.0)


def test_a_wet_wash_darkens_the_chalk_below() -> None:
    """Its water fills the pores of a chalky coat, and leaves a coat without pores as it is."""
    film = film_of(alone(CHALKY), Wash(left=0.0))
    chalky, glossy = (
        float((look_of(base, [film], wet=True) - look_of(base, [film])).mean())
        for base in (base_of(alone(CHALKY)), base_of(alone(GLOSSY)))
    )
    assert chalky < -0.02 < glossy
    sealed: list[Coat] = [Clear(ClearFinish(1.5, fills=0.0)), film]
    wet, dry = (look_of(base_of(alone(CHALKY)), sealed, wet=w) for w in (True, False))
    assert float((wet - dry).mean()) > chalky + 0.01


def test_a_batch_is_its_members() -> None:
    """Many washes at once come out as one by one."""
    pair = mix(stack([GLOSSY, CHALKY]), [[0, 1]] * 3, [[1.0, 0.0], [0.5, 0.5], [0.0, 1.0]])
    base = base_of(alone(CHALKY))
    rows = look_of(base, [film_of(pair, Wash(2, 0.3, 2))])
    for row, share in zip(rows, (1.0, 0.5, 0.0), strict=True):
        one = mix(stack([GLOSSY, CHALKY]), [[0, 1]], [[share, 1 - share]])
        assert_allclose(row, look_of(base, [film_of(one, Wash(2, 0.3, 2))])[0], atol=1e-12)
