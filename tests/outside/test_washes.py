"""Washes, waxes and varnishes over paint against adding-doubling, and published wet albedos.

The oracle is iadpython 0.5.3 (MIT); see tools/compare_with_adding_doubling.py for the factors from
its coefficients to ours. Its slides may not have another refractive index than the paint: with a
lower one it gives back more light than fell in. So tinted coats are compared at the paint's own
index, and others by limits that hold exactly.
"""

from __future__ import annotations

from functools import cache
from itertools import product
from typing import Any

import iadpython  # type: ignore[import-untyped]
import numpy as np
import pytest
from iadpython import combine, start
from numpy.typing import NDArray

from compare_with_adding_doubling import BEAM, spectra
from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import lab_of
from swatchwright.paint.clear import ClearFinish, clear_coats, finished
from swatchwright.paint.film import reflectance_of_ratio
from swatchwright.paint.layered import Base, Clear, Film, look_of
from swatchwright.paint.slabs import on_ground
from swatchwright.paint.surface import internal_diffuse, normal_reflectance, seen_reflectance

Floats = NDArray[np.floating[Any]]

INDEX = 1.5
ANGLES = 16
THICK = 1e4
ALPHA, BETA = BEAM[INDEX]

# Scattering depth of a wash. A pale paint scatters about 160 per mm by the oracle's measure (110
# by ours), and a wash leaves 0.5 to 15 um of it: depths of 0.1 to 2.5.
DEPTHS = (0.1, 0.5, 2.0)


@cache
def oracle(base: float, wash: float, depth: float, tint: float = 0.0) -> float:
    """Give the reflectance of a thick paint under a film of another and a tinted varnish.

    Parameters
    ----------
    base, wash
        Albedos.
    depth
        Scattering depth of the film; 0 for none.
    tint
        Absorption depth of the varnish.
    """
    below = iadpython.Sample(
        a=base, b=THICK, n=INDEX, n_above=INDEX, n_below=INDEX, quad_pts=ANGLES
    )
    below.b_above = tint
    below.update_quadrature()
    R, T = iadpython.simple_layer_matrices(below)
    stack = (R, R, T, T)
    if depth:
        film = iadpython.Sample(a=wash, b=depth / wash, n=INDEX, quad_pts=ANGLES)
        film.update_quadrature()
        Rf, Tf = iadpython.simple_layer_matrices(film)
        stack = combine.add_layers(below, Rf, Rf, Tf, Tf, *stack)
    R02, _, T02, _ = combine.add_slide_above(below, *start.boundary_layer(below, top=True), *stack)
    return float(below.UX1_and_UXU(R02, T02)[0])


def seen_by_oracle(base: Floats, wash: Floats, depth: float, tint: Floats | None = None) -> Floats:
    """Give the oracle's spectrum (36,)."""
    tints = np.zeros(base.size) if tint is None else tint
    rows = zip(base.tolist(), wash.tolist(), tints.tolist(), strict=True)
    return np.array([oracle(b, w, depth, t) for b, w, t in rows])


def film(albedo: Floats, depth: float) -> Film:
    """Make the film, 1 mm thick, of an albedo and a scattering depth by the oracle's measure."""
    K, S = ALPHA * depth * (1 - albedo) / albedo, np.full(albedo.size, BETA * depth)
    return Film(K, S, 1.0, glare=1.0, wet_scattering=1.0, milk=0.0, wet_index=1.33)


def base(albedo: Floats) -> Base:
    """Make a coat that hides."""
    thick = film(albedo, 1.0)
    return Base(Film(thick.K, thick.S, np.inf, 1.0, 1.0, 0.0, 1.33))


def washes() -> dict[tuple[float, float, float], Floats]:
    """Give CIEDE2000 of washes over vivid and grey coats, by albedos and depth."""
    found = {}
    for low, pale, depth in product((0.7, 0.97), (0.9, 0.999), DEPTHS):
        off = []
        for coat in spectra(low, 0.9995)[1:]:
            wash = np.full(coat.size, pale)
            theirs = lab_of(seen_by_oracle(coat, wash, depth))
            off.append(delta_e_2000(theirs, lab_of(look_of(base(coat), [film(wash, depth)]))))
        found[low, pale, depth] = np.array(off)
    return found


def test_washes_of_paint() -> None:
    """Thin films of grey to white over vivid coats: 1.1 in the median, 3 in 95 %, 4 in all."""
    off = np.concatenate([v.ravel() for v in washes().values()])
    assert np.median(off) < 1.1
    assert np.percentile(off, 95) < 3.0
    assert off.max() < 4.0


def test_a_wash_moves_the_colour_as_far_as_it_should() -> None:
    """The step from bare to washed is the oracle's or up to 40 % longer, by 15 % as a rule."""
    ratios = []
    for low, depth in product((0.7, 0.97), DEPTHS):
        for coat in spectra(low, 0.9995)[1:]:
            wash = np.full(coat.size, 0.999)
            theirs = delta_e_2000(
                lab_of(seen_by_oracle(coat, wash, 0.0)), lab_of(seen_by_oracle(coat, wash, depth))
            )
            mine = delta_e_2000(
                lab_of(look_of(base(coat), [])), lab_of(look_of(base(coat), [film(wash, depth)]))
            )
            if theirs > 1:
                ratios.append(float(mine / theirs))
    assert len(ratios) >= 8
    assert 1.0 < np.median(ratios) < 1.2
    assert 0.9 < min(ratios) <= max(ratios) < 1.4


@pytest.mark.parametrize("tint", [0.005, 0.06, 0.2])
def test_varnish_and_amber(tint: float) -> None:
    """A tinted coat of the paint's own index over paint of any lightness is within 1."""
    finish = ClearFinish(INDEX, tint=tint, glare=1.0)
    depth = np.round(finish.depth(), 4)
    off = []
    for low in (0.7, 0.99):
        for coat in spectra(low, 0.9995)[:2]:
            inside = reflectance_of_ratio(ALPHA * (1 - coat) / coat / BETA)
            theirs = seen_by_oracle(coat, coat, 0.0, depth)
            off.append(float(delta_e_2000(lab_of(theirs), lab_of(finished(inside, finish)))))
    assert np.median(off) < 0.6
    assert max(off) < 1.3


def test_varnish_over_a_wash() -> None:
    """A wash under an amber coat is as far off as the bare wash is, within 1.5."""
    finish = ClearFinish(INDEX, tint=0.06, glare=1.0)
    depth = np.round(finish.depth(), 4)
    for coat in spectra(0.9, 0.9995)[1:]:
        wash = np.full(coat.size, 0.99)
        theirs = seen_by_oracle(coat, wash, 0.3, depth)
        mine = look_of(base(coat), [film(wash, 0.3), Clear(finish)])
        assert float(delta_e_2000(lab_of(theirs), lab_of(mine))) < 1.5


# --- what holds exactly --------------------------------------------------------------------------


def test_the_oracle_cannot_judge_a_slide_of_lower_index() -> None:
    """It gives back more than fell in, which is why waxes are not compared with it."""
    sample = iadpython.Sample(a=0.9999, b=THICK, n=INDEX, n_above=1.33, n_below=INDEX, quad_pts=8)
    sample.update_quadrature()
    R, T = iadpython.simple_layer_matrices(sample)
    top = start.boundary_layer(sample, top=True)
    R02, _, T02, _ = combine.add_slide_above(sample, *top, R, R, T, T)
    assert sample.UX1_and_UXU(R02, T02)[0] > 1


@pytest.mark.parametrize("index", [1.333, 1.44, 1.5, 1.6])
def test_no_light_is_lost_or_won_in_clear_coats(index: float) -> None:
    """Untinted coats send light on or back and nothing else, and no white outshines the lamp."""
    none = np.zeros(36)
    slab = clear_coats([index, 1.44], [none, none])
    np.testing.assert_allclose(slab.above + slab.down, 1.0, atol=1e-9)
    np.testing.assert_allclose(slab.below + slab.up, 1.0, atol=1e-9)
    np.testing.assert_allclose(on_ground(slab, 1.0), 1.0, atol=1e-9)


@pytest.mark.parametrize("index", [1.333, 1.45, 1.5])
def test_what_leaves_keeps_to_the_square_law(index: float) -> None:
    """However coats are stacked, light leaves a paint by no more than 1 / n^2 of what goes up.

    The bound of radiance over index squared (Angstrom 1925, Geogr. Ann. 7:323, has it as the
    whole of his model); Fresnel's reflection takes a little more.
    """
    slab = clear_coats([index], [np.zeros(36)], below=1.5)
    assert np.all(slab.up <= 1 / 1.5**2)
    assert np.all(slab.up > 0.9 / 1.5**2)


@pytest.mark.parametrize(
    ("dry", "wet"),
    # Lekner, Dorf 1988, Appl. Opt. 27(7):1278-1280, worked out for n = 1.45, glint included.
    [(0.1, 0.078334), (0.2, 0.128608), (0.3, 0.185715), (0.5, 0.326879), (0.7, 0.520740)],
)
def test_oil_on_a_bare_surface(dry: float, wet: float) -> None:
    """Oil of index 1.45 sunk into a surface without one of its own darkens it as published."""
    oiled = finished(np.full(36, dry), ClearFinish(1.45, glare=1.0), paint_index=1.45)
    np.testing.assert_allclose(oiled, wet, atol=6e-7)


def test_water_on_a_wash_is_a_sheet_of_water() -> None:
    """A wash while it is wet is seen through the surface of its liquid, glint left out."""
    coat = spectra(0.9, 0.9995)[1]
    bare = base(coat)
    wet = look_of(bare, [film(coat, 0.0)], wet=True)
    inside = reflectance_of_ratio(bare.film.K / bare.film.S)
    k1, k2 = normal_reflectance(1.33), internal_diffuse(1.33)
    np.testing.assert_allclose(wet, seen_reflectance(inside, k1, k2, 0.0), atol=1e-9)
