"""The skin of a film against Fresnel's law, published closed forms and Saunderson's formula."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.testing import assert_allclose
from scipy.integrate import quad

from swatchwright.paint.surface import (
    inner_reflectance,
    internal_diffuse,
    normal_reflectance,
    outer_diffuse,
    seen_reflectance,
)


@pytest.mark.parametrize(
    ("n", "normal", "outside", "inside"),
    # Fresnel's law at normal incidence and for diffuse light (Walsh 1926; Stern 1964): the
    # integral and two closed forms agreed to 1e-6.
    [
        (1.33, 0.020059, 0.065931, 0.471949),
        (4 / 3, 0.020408, 0.066458, 0.474883),
        (1.40, 0.027778, 0.076812, 0.528985),
        (1.45, 0.033736, 0.084367, 0.564503),
        (1.48, 0.037461, 0.088829, 0.584016),
        (1.50, 0.040000, 0.091778, 0.596346),
        (1.55, 0.046521, 0.099066, 0.625001),
        (1.60, 0.053254, 0.106246, 0.650877),
    ],
)
def test_a_smooth_surface(n: float, normal: float, outside: float, inside: float) -> None:
    """Surfaces of known index have their reflectance, from outside and from inside."""
    assert float(normal_reflectance(n)) == pytest.approx(normal, abs=6e-7)
    assert float(outer_diffuse(n)) == pytest.approx(outside, abs=6e-7)
    assert float(internal_diffuse(n)) == pytest.approx(inside, abs=6e-7)


def fresnel(cosine: float, n: float) -> float:
    """Give the share of unpolarised light that a surface reflects: Fresnel's law itself."""
    inner = np.sqrt(1 - (1 - cosine**2) / n**2)
    s = ((cosine - n * inner) / (cosine + n * inner)) ** 2
    p = ((inner - n * cosine) / (inner + n * cosine)) ** 2
    return float((s + p) / 2)


@pytest.mark.parametrize("n", [1.05, 1.2, 1.333, 1.5, 1.9, 2.5])
def test_diffuse_light_is_fresnels_law_summed(n: float) -> None:
    """The closed form for diffuse light is Fresnel's law summed over all directions."""
    summed, _ = quad(lambda c: 2 * c * fresnel(c, n), 0, 1, epsabs=1e-12)
    assert float(outer_diffuse(n)) == pytest.approx(summed, abs=1e-9)
    assert float(internal_diffuse(n)) == pytest.approx(1 - (1 - summed) / n**2, abs=1e-9)


def test_the_inside_follows_a_published_fit() -> None:
    """The inside value follows the fit of Egan and Hilgeman 1973 within 0.5 %."""
    n = np.linspace(1.3, 1.7, 21)
    fit = -1.440 / n**2 + 0.710 / n + 0.668 + 0.0636 * n
    assert_allclose(internal_diffuse(n), fit, rtol=5e-3)


INSIDE = (0, 0.05, 0.1, 0.3, 0.5, 0.8, 0.9, 1)

# Saunderson 1942, J. Opt. Soc. Am. 32:727, as Allen 1980 (Optical Radiation Measurements 2,
# chapter 7) writes it, worked out.
SEEN = {
    (0.04, 0.6): (0.04, 0.059794, 0.080851, 0.180488, 0.314286, 0.630769, 0.791304, 1),
    (0.04, 0.4): (0.04, 0.069388, 0.1, 0.236364, 0.4, 0.717647, 0.85, 1),
    (0.04, 0.596): (0.04, 0.059988, 0.081242, 0.181685, 0.316239, 0.633028, 0.792925, 1),
    (0, 0.6): (0, 0.020619, 0.042553, 0.146341, 0.285714, 0.615385, 0.782609, 1),
}


@pytest.mark.parametrize("constants", SEEN)
def test_saunderson_forward(constants: tuple[float, float]) -> None:
    """A film's inner reflectance is seen through its surface as the formula has it."""
    assert_allclose(seen_reflectance(INSIDE, *constants), SEEN[constants], rtol=0, atol=6e-7)


def test_saunderson_backward() -> None:
    """The inner reflectance comes back from the one that is seen."""
    seen = (0.05, 0.1, 0.2, 0.5, 0.8, 0.9)
    inside = (0.025641, 0.142857, 0.333333, 0.696970, 0.904762, 0.955556)
    assert_allclose(inner_reflectance(seen, 0.04, 0.6), inside, rtol=0, atol=6e-7)


@pytest.mark.parametrize(
    ("inside", "gloss", "matte"),
    # The same film (k1 0.04, k2 0.6) with its surface's own reflection unseen and all seen,
    # as L*: Saunderson's formula and ISO/CIE 11664-4, worked out.
    [
        (0.05, 15.4, 29.4),
        (0.1, 23.9, 34.2),
        (0.2, 35.4, 42.4),
        (0.4, 52.1, 56.3),
        (0.7, 73.8, 76.3),
    ],
)
def test_gloss_is_darker_than_matte(inside: float, gloss: float, matte: float) -> None:
    """A gloss seen off its glint is darker than a matte film, and dark colours most."""
    for glare, lightness in ((0, gloss), (1, matte)):
        Y = float(seen_reflectance(inside, 0.04, 0.6, glare))
        assert 116 * np.cbrt(Y) - 16 == pytest.approx(lightness, abs=0.06)
