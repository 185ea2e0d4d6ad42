"""Wet films against published models of wet, porous surfaces."""

from __future__ import annotations

import numpy as np
import pytest

from swatchwright.paint.family import FAMILIES, Family
from swatchwright.paint.film import ratio_of_reflectance
from swatchwright.paint.mixture import Mixtures, dry_reflectance, wet_reflectance
from swatchwright.paint.surface import (
    inner_reflectance,
    internal_diffuse,
    normal_reflectance,
    seen_reflectance,
)

WATER = 4 / 3

# Lekner, Dorf 1988, Appl. Opt. 27(7):1278-1280: light that gets in, is absorbed in part at each
# hit and turned back inside by the water's surface; worked out for n = 4/3, glint included.
WET_ALBEDO = {
    0.1: 0.074413,
    0.2: 0.134085,
    0.3: 0.200366,
    0.4: 0.274418,
    0.5: 0.357694,
    0.6: 0.452030,
    0.7: 0.559788,
    0.8: 0.684050,
    0.9: 0.828924,
}


@pytest.mark.parametrize(("dry", "wet"), WET_ALBEDO.items())
def test_a_sheet_of_water_darkens(dry: float, wet: float) -> None:
    """A surface under water is seen as in Lekner and Dorf's model, whose sum is Saunderson's."""
    k1, k2 = normal_reflectance(WATER), internal_diffuse(WATER)
    assert float(seen_reflectance(dry, k1, k2)) == pytest.approx(wet, abs=6e-7)


@pytest.mark.parametrize(
    ("dry", "wet"),
    # Angstrom 1925, Geogr. Ann. 7:323: A / (n^2 (1 - A) + A), no loss at the surface.
    [(0.1, 0.058824), (0.3, 0.194245), (0.5, 0.36), (0.7, 0.567568), (0.9, 0.835052)],
)
def test_the_oldest_model_of_wet_ground(dry: float, wet: float) -> None:
    """Without a loss at the surface the same formula is Angstrom's."""
    assert float(seen_reflectance(dry, 0, 1 - 1 / WATER**2)) == pytest.approx(wet, abs=6e-7)


def porous(dry_seen: float, wet_scattering: float, solids: float) -> Mixtures:
    """Make a grey matte film that is seen with this reflectance when dry."""
    inside = inner_reflectance(dry_seen, normal_reflectance(1.5), internal_diffuse(1.5))
    one = np.ones(1)
    S = np.full((1, 36), 100.0)
    return Mixtures(
        K=S * float(ratio_of_reflectance(inside)),
        S=S,
        glare=one,
        wet_scattering=wet_scattering * one,
        milk=0 * one,
        solids=solids * one,
        waterborne=one,
        wet_film=0.08 * one,
    )


def test_full_pores_darken_as_published() -> None:
    """A film of full pores and dry albedo 0.5 gets wet as Lekner and Dorf have it, within 0.01.

    Their wet albedo without the glint, which is how we look at a wet film; volume solids 0.40,
    as the chalky paints of the demonstration have.
    """
    film = porous(0.5, 0.32, 0.40)
    assert float(dry_reflectance(film)[0, 0]) == pytest.approx(0.5, abs=1e-12)
    published = WET_ALBEDO[0.5] - float(normal_reflectance(WATER))
    assert float(wet_reflectance(film)[0, 0]) == pytest.approx(published, abs=0.01)


def test_partly_porous_families_darken_less_than_full_pores() -> None:
    """Chalky and mineral paint, in that order, lie between no pores and full ones."""
    factors = [1.0, *(FAMILIES[f].wet_scattering for f in (Family.CHALKY, Family.MINERAL)), 0.32]
    wet = [float(wet_reflectance(porous(0.5, f, 0.40))[0, 0]) for f in factors]
    assert wet == sorted(wet, reverse=True)
    assert len(set(wet)) == 4
