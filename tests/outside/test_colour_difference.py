"""CIEDE2000 against its published pairs and an independent implementation."""

from __future__ import annotations

import csv
from pathlib import Path

import colour
import numpy as np
import pytest
from numpy.testing import assert_allclose

from swatchwright.colour.difference import delta_e_2000, delta_e_terms

# Sharma, Wu, Dalal 2005, Color Res. Appl. 30(1):21-30, table 1.
PAIRS = Path(__file__).parents[1] / "data" / "ciede2000_34pairs.csv"


def read_pairs() -> list[tuple[int, tuple[float, ...], tuple[float, ...], float]]:
    """Read the pairs: number, two colours, published difference."""
    with PAIRS.open(encoding="utf-8", newline="") as file:
        rows = list(csv.reader(file))[1:]
    numbers = [[float(cell) for cell in row] for row in rows]
    return [(int(n[0]), tuple(n[1:4]), tuple(n[4:7]), n[7]) for n in numbers]


def test_all_pairs_are_there() -> None:
    """The table has its 34 pairs."""
    assert [pair[0] for pair in read_pairs()] == list(range(1, 35))


@pytest.mark.parametrize(("number", "one", "two", "published"), read_pairs())
def test_a_published_pair(
    number: int, one: tuple[float, ...], two: tuple[float, ...], published: float
) -> None:
    """Each pair has its published difference, to the four decimals printed, both ways round."""
    del number
    assert float(delta_e_2000(one, two)) == pytest.approx(published, abs=1e-4)
    assert float(delta_e_2000(two, one)) == pytest.approx(published, abs=1e-4)


@pytest.mark.parametrize(
    ("one", "two", "expected"),
    [
        # Worked out by hand from the formula: a lightness step has only its S_L, and a small
        # step from grey along b* only its S_C.
        ((50, 0, 0), (51, 0, 0), 0.99917),
        ((90, 0, 0), (91, 0, 0), 0.62351),
        ((50, 0, 0), (50, 0, 1), 0.97800),
    ],
)
def test_a_step_from_a_grey(
    one: tuple[float, ...], two: tuple[float, ...], expected: float
) -> None:
    """Steps whose difference follows from one term of the formula come out so."""
    assert float(delta_e_2000(one, two)) == pytest.approx(expected, abs=1e-5)


def random_pairs(spread: float) -> tuple[np.ndarray, np.ndarray]:
    """Draw 4000 pairs of colours, the second within about a spread of the first."""
    rng = np.random.default_rng(20052022)
    one = rng.uniform((0, -100, -100), (100, 100, 100), (4000, 3))
    two = one + rng.normal(0, spread, one.shape)
    return one, two


@pytest.mark.parametrize("spread", [0.5, 5, 60])
def test_random_pairs_agree_with_an_independent_program(spread: float) -> None:
    """Near and far pairs agree with colour-science, but for hues exactly opposite.

    Within 1e-9 degrees of opposite the formula jumps, and either side may be taken.
    """
    one, two = random_pairs(spread)
    hue = np.degrees(np.arctan2(one[:, 2], one[:, 1]) - np.arctan2(two[:, 2], two[:, 1])) % 360
    plain = np.abs(hue - 180) > 1e-3
    assert plain.sum() > 3900
    expected = colour.delta_E(one, two, method="CIE 2000")
    assert_allclose(delta_e_2000(one, two)[plain], expected[plain], rtol=0, atol=1e-8)


def test_the_terms_make_the_difference() -> None:
    """The three signed terms and the rotation give back the difference of colour-science."""
    one, two = random_pairs(8)
    dL, dC, dH, rotation = delta_e_terms(one, two)
    squared = dL**2 + dC**2 + dH**2 + rotation * dC * dH
    assert_allclose(squared, colour.delta_E(one, two, method="CIE 2000") ** 2, atol=1e-7)
    assert np.all(np.sign(dL) == np.sign(two[:, 0] - one[:, 0]))
