"""Kubelka-Munk films against published tables, exact limits and the equation they solve."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from numpy.testing import assert_allclose
from scipy.integrate import solve_ivp

from swatchwright.paint.film import (
    film_reflectance,
    film_transmittance,
    ratio_of_reflectance,
    reflectance_of_ratio,
)

DATA = Path(__file__).parents[1] / "data"


@pytest.mark.parametrize(
    ("R", "ratio"),
    # K/S = (1 - R)^2 / (2 R), exact: Kubelka, Munk 1931, Z. tech. Phys. 12:593.
    [
        (0.01, 49.005),
        (0.02, 24.01),
        (0.05, 9.025),
        (0.1, 4.05),
        (0.18, 1.8677777778),
        (0.25, 1.125),
        (0.4, 0.45),
        (0.5, 0.25),
        (0.8, 0.025),
        (0.9, 0.0055555556),
        (0.98, 0.0002040816),
        (1.0, 0.0),
    ],
)
def test_reflectance_and_ratio(R: float, ratio: float) -> None:
    """A thick film's reflectance gives its K/S, and its K/S the reflectance."""
    assert float(ratio_of_reflectance(R)) == pytest.approx(ratio, abs=5e-9)
    assert float(reflectance_of_ratio((1 - R) ** 2 / (2 * R))) == pytest.approx(R, rel=1e-9)


@pytest.mark.parametrize(
    ("ratio", "R"),
    # Roots of the same equation; three have a closed form.
    [
        (0.001, 0.9562674615),
        (0.01, 0.8682255312),
        (0.1, 0.6417424305),
        (0.25, 0.5),
        (0.5, (3 - np.sqrt(5)) / 2),
        (1, 2 - np.sqrt(3)),
        (2, 3 - 2 * np.sqrt(2)),
        (5, 0.0839202169),
        (10, 0.0455488499),
        (100, 0.0049506164),
    ],
)
def test_ratio_gives_reflectance(ratio: float, R: float) -> None:
    """K/S gives the reflectance of a thick film."""
    assert float(reflectance_of_ratio(ratio)) == pytest.approx(R, abs=5e-11)


@pytest.mark.parametrize(
    ("K", "S", "X", "ground", "R"),
    # Kubelka 1948, J. Opt. Soc. Am. 38:448, worked out by its hyperbolic form and checked
    # against the differential equation by other programs.
    [
        (0.1, 1, 1, 0, 0.4610336233),
        (0.1, 1, 1, 0.8, 0.7123472869),
        (0.1, 1, 1, 1, 0.8289193378),
        (0.5, 1, 1, 0, 0.3465460659),
        (1, 1, 0.5, 0, 0.2233807634),
        (1, 1, 0.5, 0.8, 0.3757020001),
        (0.01, 5, 1, 0, 0.8273836038),
        (0.01, 5, 1, 0.8, 0.8900571916),
        (2, 0.5, 1, 0.8, 0.1066278815),
        (0.05, 2, 3, 0.8, 0.8),
        (0.1, 2, 1.5, 0, 0.6756589321),
        (0.1, 2, 1.5, 0.8, 0.7411796431),
        # Exact without absorption, and without scattering (Rg exp(-2 K X)).
        (0, 1, 1, 0, 0.5),
        (0, 4, 1, 0, 0.8),
        (0, 4, 1, 0.8, 8 / 9),
        (1, 0, 0.5, 0.8, 0.2943035529),
    ],
)
def test_a_film_over_a_ground(K: float, S: float, X: float, ground: float, R: float) -> None:
    """A film of known K, S and thickness has its reflectance over black, grey and white."""
    assert float(film_reflectance(K, S, X, ground)) == pytest.approx(R, abs=5e-11)


@pytest.mark.parametrize(
    ("K", "S", "X", "T"),
    # From the same source.
    [
        (0.1, 1, 1, 0.44528421),
        (0.5, 1, 1, 0.28364763),
        (1, 1, 0.5, 0.39544394),
        (0.01, 5, 1, 0.16274792),
        (2, 0.5, 1, 0.08546304),
        (0.05, 2, 3, 0.09752102),
        (0, 1, 1, 0.5),
        (1, 0, 1, np.exp(-1)),
    ],
)
def test_what_a_film_lets_through(K: float, S: float, X: float, T: float) -> None:
    """A film of known K, S and thickness has its transmittance."""
    assert float(film_transmittance(K, S, X)) == pytest.approx(T, abs=5e-9)


@pytest.mark.parametrize(("K", "S", "ground"), [(0.3, 2, 0), (0.02, 7, 0.8), (4, 0.5, 1)])
def test_the_film_solves_its_equation(K: float, S: float, ground: float) -> None:
    """The film is the solution of dR/dX = S - 2 (K + S) R + S R^2 (Kubelka, Munk 1931)."""

    def slope(_: float, R: np.ndarray) -> np.ndarray:
        return S - 2 * (K + S) * R + S * R**2

    X = np.linspace(0, 1.5, 16)
    solved = solve_ivp(slope, (0, 1.5), [ground], t_eval=X, rtol=1e-11, atol=1e-13)
    assert_allclose(film_reflectance(K, S, X, ground), solved.y[0], rtol=0, atol=1e-9)


def watercolours() -> np.ndarray:
    """Read K, S and reflectance over black and white of eleven watercolours: (11, 4, 3)."""
    table = np.genfromtxt(DATA / "watercolour_films_1997.csv", delimiter=",", skip_header=2)
    return np.asarray(table[:, 1:].reshape(-1, 4, 3))


def test_published_watercolours_over_black_and_white() -> None:
    """Eleven published watercolours have their reflectance over black and over white."""
    K, S, black, white = watercolours().transpose(1, 0, 2)
    assert len(K) == 11
    assert_allclose(film_reflectance(K, S, 1, 0), black, rtol=0, atol=6e-6)
    assert_allclose(film_reflectance(K, S, 1, 1), white, rtol=0, atol=6e-6)


def test_published_watercolours_give_back_their_scattering() -> None:
    """The paper's own inverse takes our two reflectances back to its printed K and S."""
    K, S = watercolours().transpose(1, 0, 2)[:2]
    Rb, Rw = film_reflectance(K, S, 1, 0), film_reflectance(K, S, 1, 1)
    a = (Rw + (Rb - Rw + 1) / Rb) / 2
    b = np.sqrt(a**2 - 1)
    found = np.arctanh(b * (1 - Rw) / (b**2 - (a - Rw) * (a - 1))) / b
    assert_allclose(found, S, rtol=0, atol=5e-5)
    assert_allclose(found * (a - 1), K, rtol=0, atol=5e-5)


def test_published_watercolours_laid_over_each_other() -> None:
    """Two layers let through and reflect what Kubelka's formulas for layers say.

    Kubelka 1954, J. Opt. Soc. Am. 44:330: T = T1 T2 / (1 - R1 R2), R = R1 + T1^2 R2 / (1 - R1 R2)
    with R2 that of all that lies below.
    """
    rows = watercolours()
    (K1, S1, R1, _), (K2, S2, R2, over_white) = rows[7], rows[8]  # a yellow over a green
    T1, T2 = film_transmittance(K1, S1, 1), film_transmittance(K2, S2, 1)
    assert_allclose(T1 * T2 / (1 - R1 * R2), (0.13164, 0.25305, 0.08599), rtol=0, atol=6e-6)
    expected = R1 + T1**2 * over_white / (1 - R1 * over_white)
    ours = film_reflectance(K1, S1, 1, film_reflectance(K2, S2, 1, 1))
    assert_allclose(ours, expected, rtol=0, atol=2e-5)
