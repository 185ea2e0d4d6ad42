"""Hiding of black and white against thicknesses that are exact in Kubelka-Munk theory."""

from __future__ import annotations

import numpy as np
import pytest

from swatchwright.paint import mixture
from swatchwright.paint.film import film_reflectance, ratio_of_reflectance
from swatchwright.paint.mixture import Mixtures, contrast_ratio


def grey(Rinf: float, SX: float, glare: float = 0.0) -> Mixtures:
    """Make a grey paint of this thick-film reflectance, one dry coat of which has this S X."""
    one = np.ones(1)
    S = np.ones((1, 36))
    return Mixtures(
        K=S * float(ratio_of_reflectance(Rinf)),
        S=S,
        glare=glare * one,
        wet_scattering=one,
        milk=0 * one,
        solids=0.4 * one,
        waterborne=one,
        wet_film=SX / 0.4 * one,
    )


@pytest.fixture
def bare(monkeypatch: pytest.MonkeyPatch) -> None:
    """Take the surface away, which the standards' arithmetic does not have."""
    monkeypatch.setattr(mixture, "_K1", 0.0)
    monkeypatch.setattr(mixture, "_K2", 0.0)


@pytest.mark.usefixtures("bare")
@pytest.mark.parametrize(
    ("Rinf", "SX"),
    # S X at which Y over black is 0.98 of Y over a white of 0.8 (the contrast of ISO 6504 and
    # ASTM D2805): the hyperbolic form of Kubelka 1948 solved for it.
    [
        (0.95, 10.808942),
        (0.90, 9.142672),
        (0.85, 7.667049),
        (0.80, 6.500688),
        (0.70, 4.838052),
        (0.60, 3.708540),
        (0.50, 2.871655),
        (0.30, 1.636515),
    ],
)
def test_full_hiding(Rinf: float, SX: float) -> None:
    """Paints from white to dark grey hide at 98 % at just the thickness that theory says."""
    assert float(contrast_ratio(grey(Rinf, SX), 1)[0]) == pytest.approx(0.98, abs=1e-7)


@pytest.mark.parametrize(
    ("Rinf", "SX"),
    # The same over a perfect white.
    [(0.95, 22.388471), (0.90, 14.142680), (0.70, 5.642409), (0.50, 3.138211), (0.30, 1.736529)],
)
def test_full_hiding_over_perfect_white(Rinf: float, SX: float) -> None:
    """Over a perfect white the film itself needs its known, greater thickness."""
    K = float(ratio_of_reflectance(Rinf))
    black, white = (float(film_reflectance(K, 1, SX, ground)) for ground in (0, 1))
    assert black / white == pytest.approx(0.98, abs=1e-7)


@pytest.mark.usefixtures("bare")
def test_coats_add_up() -> None:
    """One to four coats of a white of S X 2 hide as theory says (the same source)."""
    ratios = [float(contrast_ratio(grey(0.85, 2), coats)[0]) for coats in (1, 2, 3, 4)]
    assert ratios == pytest.approx([0.7911, 0.9197, 0.9635, 0.9822], abs=5e-5)


@pytest.mark.parametrize("glare", [0.0, 1.0])
@pytest.mark.parametrize(("Rinf", "SX"), [(0.9, 9.142672), (0.5, 1.0), (0.2, 0.5)])
def test_the_surface_is_part_of_what_is_seen(Rinf: float, SX: float, glare: float) -> None:
    """With its surface the ratio is that of Kubelka's film seen through Saunderson's formula.

    Kubelka 1948 in its hyperbolic form, Saunderson 1942 with k1 0.04 and k2 0.596346 (n = 1.5).
    """
    a = (1 / Rinf + Rinf) / 2
    b = np.sqrt(a**2 - 1)
    seen = []
    for ground in (0.0, 0.8):
        coth = b / np.tanh(b * SX)
        R = (1 - ground * (a - coth)) / (a - ground + coth)
        seen.append(0.04 * glare + 0.96 * (1 - 0.596346) * R / (1 - 0.596346 * R))
    ratio = float(contrast_ratio(grey(Rinf, SX, glare), 1)[0])
    assert ratio == pytest.approx(seen[0] / seen[1], abs=2e-6)
