"""Clear finishes over paint."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.testing import assert_allclose
from scipy.special import expn

from swatchwright.colour.spectrum import lab_of
from swatchwright.paint.clear import (
    AMBER_WAX,
    CLEAR_VARNISH,
    CLEAR_WAX,
    OIL,
    ClearFinish,
    clear_coats,
    finished,
    soaked,
)
from swatchwright.paint.surface import internal_diffuse, normal_reflectance, seen_reflectance

GREY = np.full(36, 0.3)


def test_a_varnish_of_the_paints_index_only_changes_the_gloss() -> None:
    """A colourless gloss of the binder's own index is the paint's own surface made smooth."""
    gloss = ClearFinish(1.5, glare=0.0)
    k1, k2 = normal_reflectance(1.5), internal_diffuse(1.5)
    assert_allclose(finished(GREY, gloss), seen_reflectance(GREY, k1, k2, 0.0))


@pytest.mark.parametrize(("inside", "least", "most"), [(0.05, 12, 16), (0.2, 6, 8), (0.7, 1, 4)])
def test_darks_deepen_most(inside: float, least: float, most: float) -> None:
    """Gloss seen off its glint deepens a matte paint, darks by far the most.

    L* 29.4 to 15.4, 42.4 to 35.4 and 76.3 to 73.8 for k1 = 0.04 and k2 = 0.6, by Saunderson's
    formula; the index of 1.5 has k2 = 0.596.
    """
    R = np.full(36, inside)
    matte = lab_of(seen_reflectance(R, 0.04, internal_diffuse(1.5)))[0]
    fall = matte - lab_of(finished(R, ClearFinish(1.5, glare=0.0)))[0]
    assert least < fall < most


@pytest.mark.parametrize("finish", [AMBER_WAX, OIL])
def test_an_amber_finish_yellows_coat_by_coat(finish: ClearFinish) -> None:
    """Each coat of a tinted finish takes more blue than red."""
    b = [lab_of(finished(np.full(36, 0.7), finish, coats))[2] for coats in (0, 1, 2, 3)]
    assert np.all(np.diff(b) > 0.3)
    bare = ClearFinish(finish.index, glare=finish.glare)
    assert_allclose(finished(GREY, finish, 0), finished(GREY, bare))


def test_a_finish_fills_pores() -> None:
    """A chalky film scatters less once filled; one without pores stays as it is."""
    S = np.full((2, 36), 100.0)
    filled = soaked(S, [0.66, 1.2], CLEAR_WAX)
    assert_allclose(filled[0], 100 * (1 - 0.8 * 0.34))
    assert_allclose(filled[1], 100)
    assert np.all(soaked(S, 0.66, CLEAR_VARNISH) < filled)


def test_bare_coats_of_one_index_are_one_step() -> None:
    """Untinted coats of the paint's index are its own surface, however many."""
    none = np.zeros(36)
    slab = clear_coats([1.5, 1.5, 1.5], [none] * 3)
    assert_allclose(slab.above, normal_reflectance(1.5), atol=1e-12)
    assert_allclose(slab.below, internal_diffuse(1.5), atol=1e-9)


def test_a_tint_between_paints_is_the_exponential_integral() -> None:
    """Diffuse light through a layer of no step is 2 E3 of its depth (Abramowitz, Stegun 5.1)."""
    depth = np.linspace(0.01, 2.0, 36)
    slab = clear_coats([1.5], [depth], above=1.5, below=1.5)
    assert_allclose(slab.down, 2 * expn(3, depth), atol=2e-4)
    assert_allclose(slab.above, 0, atol=1e-12)


def test_coats_in_any_grouping() -> None:
    """A tint laid in two coats is the same as in one."""
    half = 0.5 * AMBER_WAX.depth(2.0)
    one = clear_coats([1.44], [2 * half])
    two = clear_coats([1.44, 1.44], [half, half])
    for name in ("above", "below", "down", "up"):
        assert_allclose(getattr(one, name), getattr(two, name), atol=1e-12)
