"""Laws of mixtures, dry, wet and over a ground."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from swatchwright.colour.spectrum import WAVELENGTHS, Light, xyz_of
from swatchwright.paint.family import Family
from swatchwright.paint.mixture import (
    Mixtures,
    contrast_ratio,
    dry_lab,
    dry_reflectance,
    mix,
    quick_dry_lab,
    wet_lab,
    wet_reflectance,
)
from swatchwright.paint.paints import Paint, stack
from swatchwright.shelf.csv_file import demo_shelf
from unit.paint.made import paint, paints, shares

three = st.lists(paints(), min_size=3, max_size=3)
Shares = tuple[float, float, float]


def mixed(of: list[Paint], parts: tuple[float, ...]) -> Mixtures:
    """Mix paints by their shares."""
    return mix(stack(of), [range(len(of))], [parts])


def alone(of: Paint) -> Mixtures:
    """Take a paint as it is."""
    return mixed([of], (1.0,))


@given(three, shares)
def test_a_mixture_lies_between_its_paints(of: list[Paint], parts: Shares) -> None:
    """K, S and all else of a mixture lie between the least and the greatest of its paints."""
    mixture, each = mixed(of, parts), stack(of)
    for name in ("K", "S", "glare", "wet_scattering", "milk", "solids"):
        value, of_paints = getattr(mixture, name)[0], getattr(each, name)
        slack = 1e-12 * (1 + np.abs(of_paints).max())
        assert np.all(value >= of_paints.min(axis=0) - slack), name
        assert np.all(value <= of_paints.max(axis=0) + slack), name


@given(paints(), shares)
def test_mixing_a_paint_with_itself_changes_nothing(of: Paint, parts: Shares) -> None:
    """Three tins of one paint make that paint, dry and wet."""
    poured, plain = mixed([of] * 3, parts), alone(of)
    assert_allclose(dry_lab(poured), dry_lab(plain), atol=1e-9)
    assert_allclose(wet_lab(poured), wet_lab(plain), atol=1e-9)
    assert_allclose(contrast_ratio(poured, 2), contrast_ratio(plain, 2), atol=1e-12)


@given(three, shares)
def test_the_order_of_pouring_does_not_matter(of: list[Paint], parts: Shares) -> None:
    """Paints named in another order make the same mixture."""
    there, back = mixed(of, parts), mixed(of[::-1], parts[::-1])
    assert_allclose(dry_lab(there), dry_lab(back), atol=1e-9)
    assert_allclose(wet_lab(there), wet_lab(back), atol=1e-9)


@given(three, shares)
def test_mixing_in_two_steps_is_mixing_at_once(of: list[Paint], parts: Shares) -> None:
    """Two paints mixed first, then with the third, make what all three make at once."""
    a, b, c = parts
    first = mixed(of[:2], (a / (a + b), b / (a + b)))
    between = replace(paint(K=first.K[0], S=first.S[0]), volume_solids=float(first.solids[0]))
    at_once = mixed(of, parts)
    in_steps = mixed([between, of[2]], (a + b, c))
    assert_allclose(in_steps.K, at_once.K, rtol=1e-9)
    assert_allclose(in_steps.S, at_once.S, rtol=1e-9)


@given(three, shares)
def test_the_quick_colour_is_the_colour(of: list[Paint], parts: Shares) -> None:
    """The short way to a dry colour agrees with the long one to 1e-9."""
    quick = quick_dry_lab(stack(of), np.array([[0, 1, 2]]), np.array([parts]))
    assert_allclose(quick, dry_lab(mixed(of, parts)), rtol=0, atol=1e-9)


@pytest.mark.parametrize("size", [1, 2, 3])
def test_the_quick_colour_over_the_demonstration_shelf(size: int) -> None:
    """It does so over random mixes of the demonstration shelf, many at once."""
    rng = np.random.default_rng(size)
    each = stack(demo_shelf().paints)
    which = np.array([rng.choice(len(each), size, replace=False) for _ in range(500)])
    parts = rng.dirichlet(np.full(size, 0.4), 500)
    quick = quick_dry_lab(each, which, parts)
    assert_allclose(quick, dry_lab(mix(each, which, parts)), rtol=0, atol=1e-9)


@given(
    paints(Family.SATIN),
    st.lists(st.floats(0, 2), min_size=36, max_size=36),
    st.floats(0, 1),
    st.floats(0, 1),
)
def test_more_of_the_darker_paint_never_lightens(
    light: Paint, darker: list[float], one: float, two: float
) -> None:
    """Where one paint is darker at all wavelengths, more of it never gives a lighter mix.

    Within one family: a dark matte paint may lighten a gloss by its surface alone.
    """
    dark = replace(light, K=light.K * 10 ** np.array(darker))
    less, more = sorted((one, two))
    Y = [
        float(xyz_of(dry_reflectance(mixed([dark, light], (s, 1 - s))), lamp)[0, 1])
        for lamp in (Light.D65, Light.TUBE)
        for s in (less, more)
    ]
    assert Y[1] <= Y[0] + 1e-12
    assert Y[3] <= Y[2] + 1e-12


@given(three, shares)
def test_a_film_never_reflects_more_than_all(of: list[Paint], parts: Shares) -> None:
    """Dry and wet reflectance lie between 0 and 1 at every wavelength."""
    mixture = mixed(of, parts)
    for R in (dry_reflectance(mixture), wet_reflectance(mixture)):
        assert R.min() >= 0
        assert R.max() <= 1


@given(paints())
def test_the_unit_of_length_does_not_change_a_dry_colour(of: Paint) -> None:
    """K and S in another unit give the same opaque, dry colour."""
    scaled = replace(of, K=of.K * 7, S=of.S * 7)
    assert_allclose(dry_lab(alone(scaled)), dry_lab(alone(of)), atol=1e-9)


@given(three, shares)
def test_hiding_grows_with_the_coats(of: list[Paint], parts: Shares) -> None:
    """Each further coat hides more, never beyond all."""
    mixture = mixed(of, parts)
    hiding = [float(contrast_ratio(mixture, coats)[0]) for coats in range(1, 7)]
    assert np.all(np.diff(hiding) >= -1e-12)
    assert 0 <= hiding[0] <= hiding[-1] <= 1 + 1e-12


def test_shares_are_of_the_wet_volume() -> None:
    """Of equal wet volumes the paint of more solids leaves more in the film: 2 of 3 here."""
    rich = paint("rich", 6, 100, volume_solids=0.6, spreading_rate=10)
    thin = paint("thin", 0, 100, volume_solids=0.3, spreading_rate=20)
    mixture = mixed([rich, thin], (0.5, 0.5))
    assert_allclose(mixture.K, 4)
    assert float(mixture.solids[0]) == pytest.approx(0.45)
    # 1/10 and 1/20 of a litre a square metre are 0.1 and 0.05 mm wet.
    assert float(mixture.wet_film[0]) == pytest.approx(0.075)


def test_many_mixtures_at_once() -> None:
    """A batch gives what its mixtures give one by one."""
    rng = np.random.default_rng(8)
    each = stack(demo_shelf().paints)
    which = rng.integers(0, len(each), (20, 3))
    parts = rng.dirichlet(np.ones(3), 20)
    batch = mix(each, which, parts)
    singly = [mix(each, which[i : i + 1], parts[i : i + 1]) for i in range(20)]
    assert_allclose(wet_lab(batch), np.concatenate([wet_lab(m) for m in singly]), atol=1e-10)
    assert_allclose(dry_lab(batch), np.concatenate([dry_lab(m) for m in singly]), atol=1e-10)
    one_by_one = np.concatenate([contrast_ratio(m, 2) for m in singly])
    assert_allclose(contrast_ratio(batch, 2), one_by_one, atol=1e-12)


# --- wet and dry ---------------------------------------------------------------------------------

DEMO = demo_shelf().paints
POROUS = {Family.CHALKY, Family.MINERAL}


def lightness(of: Paint) -> tuple[float, float]:
    """Give L* of a paint, dry and wet."""
    mixture = alone(of)
    return float(dry_lab(mixture)[0, 0]), float(wet_lab(mixture)[0, 0])


@pytest.mark.parametrize("of", [p for p in DEMO if p.family in POROUS], ids=lambda p: p.id)
def test_chalky_and_mineral_paint_dries_lighter(of: Paint) -> None:
    """Chalky and mineral paints dry lighter by one L* or more: common practice, no source."""
    dry, wet = lightness(of)
    assert dry > wet + 1


@pytest.mark.parametrize(
    "of",
    [p for p in DEMO if p.family not in POROUS and 45 < lightness(p)[0] < 90],
    ids=lambda p: p.id,
)
def test_other_mid_tones_dry_darker(of: Paint) -> None:
    """Mid-tones in emulsion, eggshell, satin and gloss dry darker: common practice, no source.

    Of the darkest the matte surface lightens more than the milk did.
    """
    dry, wet = lightness(of)
    assert dry < wet - 1


def test_both_kinds_are_on_the_shelf() -> None:
    """The two tests above look at paints of every family that the shelf has."""
    porous = {p.family for p in DEMO if p.family in POROUS}
    others = {p.family for p in DEMO if p.family not in POROUS and 45 < lightness(p)[0] < 90}
    assert porous == POROUS
    assert {Family.EMULSION, Family.EGGSHELL, Family.SATIN} <= others


@pytest.mark.parametrize("of", [p for p in DEMO if p.finish.milk], ids=lambda p: p.id)
def test_the_milk_of_an_emulsion_lightens_it_while_wet(of: Paint) -> None:
    """Wet, the polymer adds light at every wavelength, most in proportion to blue, and none dry."""
    with_milk = alone(of)
    without = replace(with_milk, milk=0 * with_milk.milk)
    milky, clear = wet_reflectance(with_milk)[0], wet_reflectance(without)[0]
    assert np.all(milky > clear)
    assert_allclose(dry_reflectance(with_milk), dry_reflectance(without))


def test_the_milk_is_bluish() -> None:
    """The milk of a black emulsion is bluish, as small spheres scatter: as the cube of 1/nm."""
    black = alone(paint(K=500.0, S=0.01, family=Family.EMULSION))
    R = wet_reflectance(black)[0]
    at = {nm: float(R[np.flatnonzero(nm == WAVELENGTHS)[0]]) for nm in (420, 630)}
    # Where little is scattered, reflectance is in proportion to scattering.
    assert at[420] / at[630] == pytest.approx((630 / 420) ** 3, rel=0.05)


@given(paints(Family.OIL))
def test_an_oil_paint_hardly_changes(of: Paint) -> None:
    """Oil neither fills pores nor clears: wet and dry differ by the surface alone.

    That is at most 0.3 of 4 % more light when dry, and 1 % less for its higher index.
    """
    dry, wet = (f(alone(of))[0] for f in (dry_reflectance, wet_reflectance))
    assert -0.01 < (dry - wet).min() <= (dry - wet).max() < 0.012 + 1e-9


@given(paints(Family.CHALKY))
def test_wet_paint_is_more_vivid_than_a_chalky_dry_one(of: Paint) -> None:
    """The dry matte surface only adds grey: no spectrum is steeper dry than wet in ratio."""
    dry, wet = (f(alone(of))[0] for f in (dry_reflectance, wet_reflectance))
    assert dry.max() / dry.min() <= wet.max() / wet.min() * (1 + 1e-9)
