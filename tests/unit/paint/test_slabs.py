"""Layers on each other, against the formulas of single films and surfaces."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from swatchwright.paint.film import film_reflectance
from swatchwright.paint.slabs import clear_slab, film_slab, on_ground, over, stacked, step_slab
from swatchwright.paint.surface import (
    internal_diffuse,
    normal_reflectance,
    outer_diffuse,
    seen_reflectance,
)

parts = st.floats(0, 1)
films = st.tuples(st.floats(0, 50), st.floats(0, 50), st.floats(0, 3))
indices = st.floats(1.0, 1.7)


@given(films, films, parts)
def test_stacking_is_laying_one_on_the_other(
    top: tuple[float, float, float], bottom: tuple[float, float, float], ground: float
) -> None:
    """A stack of two on a ground is the top on the bottom on the ground."""
    step_by_step = film_reflectance(*top, film_reflectance(*bottom, ground))
    whole = on_ground(over(film_slab(*top), film_slab(*bottom)), 0.999 * ground)
    if ground < 1:
        step_by_step = film_reflectance(*top, film_reflectance(*bottom, 0.999 * ground))
    assert_allclose(whole, step_by_step, atol=2e-3 if ground == 1 else 1e-9)


@given(st.floats(1.05, 1.7), parts)
def test_a_step_over_a_film_is_the_saunderson_correction(n: float, R: float) -> None:
    """A surface lit by a beam is Saunderson's formula with Fresnel's k1 and diffuse k2."""
    step = step_slab(1.0, n, beam=True)
    expected = seen_reflectance(R, normal_reflectance(n), internal_diffuse(n))
    assert float(on_ground(step, R)) == pytest.approx(float(expected), abs=1e-12)


def test_published_layers_compose() -> None:
    """Hansa Yellow over Phthalo Green on white, and the other way about.

    K and S: Curtis et al. 1997, SIGGRAPH, 421-430, Fig. 5; the composites follow from its
    compositing rule, R = R1 + T1^2 R2 / (1 - R1 R2), used once more for the white ground; it
    takes a pile to throw back as much below as above, which ours does not need to.
    """
    yellow = film_slab([0.06, 0.21, 1.78], [0.50, 0.88, 0.009], 1.0)
    green = film_slab([1.55, 0.47, 0.63], [0.01, 0.05, 0.035], 1.0)
    for pile, on_white in (
        (over(yellow, green), [0.34282, 0.50814, 0.01040]),
        (over(green, yellow), [0.03467, 0.25037, 0.02755]),
    ):
        assert_allclose(pile.down, [0.13164, 0.25305, 0.08599], atol=6e-6)
        theirs = pile.above + pile.down * pile.up / (1 - pile.above)
        assert_allclose(theirs, on_white, atol=6e-6)


@given(indices, indices)
def test_a_step_loses_no_light(above: float, below: float) -> None:
    """What a step does not throw back goes through; the way back keeps the law of n squared."""
    step = step_slab(above, below)
    assert float(step.above + step.down) == pytest.approx(1)
    assert float(step.below + step.up) == pytest.approx(1)
    assert float(step.down * above**2) == pytest.approx(float(step.up * below**2), rel=1e-9)


def test_no_step_is_no_surface() -> None:
    """Between media of one index nothing is thrown back, and near it very little."""
    none = step_slab(1.5, 1.5)
    assert float(none.above) == float(none.below) == 0
    near = step_slab(1.5, 1.5 * np.linspace(1.0, 1.05, 50))
    assert np.all(np.diff(near.above) > 0)
    assert float(step_slab(1.0, 1.5).above) == pytest.approx(float(outer_diffuse(1.5)))


@given(st.lists(films, min_size=2, max_size=4), indices)
def test_piles_grow_from_either_end(layers: list[tuple[float, float, float]], n: float) -> None:
    """How the layers are bracketed does not matter, and none lets out more than comes in."""
    slabs = [step_slab(1.0, n), *(film_slab(*layer) for layer in layers)]
    left = stacked(*slabs)
    right = over(slabs[0], stacked(*slabs[1:]))
    for name in ("above", "below", "down", "up"):
        assert_allclose(getattr(left, name), getattr(right, name), atol=1e-9)
    assert float(left.above + left.down) <= 1 + 1e-9


def test_a_tint_darkens_twice() -> None:
    """Light crosses a clear coat twice, and diffuse light twice as far each time."""
    assert float(on_ground(clear_slab(0.1), 0.5)) == pytest.approx(0.5 * np.exp(-0.4))
    assert float(on_ground(clear_slab(0.0), 0.5)) == pytest.approx(0.5)
