"""Mixtures against Duncan's law and a two-constant match worked out elsewhere."""

from __future__ import annotations

import colour
import numpy as np
import pytest
from numpy.testing import assert_allclose

from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.mixing.search import find_recipes
from swatchwright.paint.family import Family
from swatchwright.paint.film import reflectance_of_ratio
from swatchwright.paint.mixture import dry_lab, mix
from swatchwright.paint.paints import Paint, stack
from swatchwright.values import Lab


def grey_pair(S_black: float) -> tuple[Paint, Paint]:
    """Make a white of reflectance 0.9 and S 1, and a black of 0.05 and the given S."""
    flat = np.ones(36)
    white = Paint("white", "White", Family.CHALKY, 0.01 / 1.8 * flat, flat)
    black = Paint("black", "Black", Family.CHALKY, 9.025 * S_black * flat, S_black * flat)
    return white, black


@pytest.mark.parametrize(
    ("S_black", "share", "R"),
    # Duncan 1940, Proc. Phys. Soc. 52:390: K/S of a mixture is sum c K / sum c S. With equal S
    # that is the one-constant law.
    [
        (1.0, 0.90, 0.2831366632),
        (1.0, 0.99, 0.6477901106),
        (1.0, 0.50, 0.0914148586),
        (0.2, 0.90, 0.53536044),
        (0.2, 0.99, 0.80455182),
        (0.2, 0.50, 0.20791411),
    ],
)
def test_white_and_black(S_black: float, share: float, R: float) -> None:
    """White with a little, some and half black has the reflectance of Duncan's law."""
    mixed = mix(stack(grey_pair(S_black)), [[0, 1]], [[share, 1 - share]])
    assert_allclose(reflectance_of_ratio(mixed.K / mixed.S), np.full((1, 36), R), atol=6e-9)


def four_paints() -> tuple[Paint, ...]:
    """Make the white, yellow, blue and red of a match in the way of Allen.

    Allen 1974, J. Opt. Soc. Am. 64:991 (Newton steps for two-constant mixtures); the spectra are
    made up from simple curves and were matched by another program.
    """
    nm = np.clip(WAVELENGTHS, 400, 700)
    spectra = {
        "White": (0.004 + 0.02 * np.exp(-(nm - 400) / 15), 1.0),
        "Yellow": (1.6 / (1 + np.exp((nm - 500) / 12)) + 0.01, 0.6),
        "Blue": (0.05 + 1.2 * np.exp(-(((nm - 610) / 55) ** 2)), 0.25),
        "Red": (1.1 / (1 + np.exp((nm - 585) / 10)) + 0.02, 0.35),
    }
    return tuple(
        Paint(name.lower(), name, Family.SATIN, K, np.full(36, S))
        for name, (K, S) in spectra.items()
    )


def test_the_white_of_the_worked_match() -> None:
    """The white alone has the reflectance that the worked example gives at three wavelengths."""
    mixed = mix(stack(four_paints()), [[0]], [[1.0]])
    R = reflectance_of_ratio(mixed.K / mixed.S)[0][np.isin(WAVELENGTHS, (450, 550, 650))]
    assert_allclose(R, (0.907507, 0.914459, 0.914468), rtol=0, atol=6e-7)


def test_the_target_of_the_worked_match() -> None:
    """The mix of four has the CIELAB of the worked example: D65, 10 degrees, 400 to 700 nm."""
    mixed = mix(stack(four_paints()), [[0, 1, 2, 3]], [[0.80, 0.10, 0.05, 0.05]])
    inside = (WAVELENGTHS >= 400) & (WAVELENGTHS <= 700)
    R = reflectance_of_ratio(mixed.K / mixed.S)[0][inside]
    observer = colour.MSDS_CMFS["CIE 1964 10 Degree Standard Observer"]
    light = colour.SDS_ILLUMINANTS["D65"]
    weights = np.array([observer[w] * light[w] for w in WAVELENGTHS[inside]])
    weights /= weights[:, 1].sum()
    lab = colour.XYZ_to_Lab(R @ weights, colour.XYZ_to_xy(weights.sum(axis=0)))
    assert_allclose(lab, (83.702567, 0.003115, 12.333780), rtol=0, atol=2e-6)


@pytest.mark.parametrize(
    "shares",
    [(0.80, 0.15, 0.05, 0), (0.70, 0, 0.20, 0.10), (0, 0.5, 0.3, 0.2), (0.94, 0.05, 0, 0.01)],
)
def test_a_mix_of_the_worked_match_is_found_again(shares: tuple[float, ...]) -> None:
    """The colour of a mix of three of the four is found again, by the same paints and shares."""
    paints = four_paints()
    wanted = Lab(*dry_lab(mix(stack(paints), [[0, 1, 2, 3]], [shares]))[0].tolist())
    best = find_recipes(wanted, paints).recipes[0]
    found = dict(zip((p.id for p in best.paints), best.shares, strict=True))
    made = {p.id: s for p, s in zip(paints, shares, strict=True) if s}
    assert best.delta_e < 0.05
    assert found == pytest.approx(made, abs=0.0011)
