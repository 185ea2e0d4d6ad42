"""A film over the black and the white of a card."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import xyz_of
from swatchwright.paint.mixture import contrast_ratio, dry_lab, mix
from swatchwright.paint.over_card import CARD_GROUNDS, over_card_lab
from swatchwright.paint.paints import stack
from swatchwright.shelf.csv_file import demo_shelf

PAINTS = demo_shelf().paints


@pytest.mark.parametrize("paint", PAINTS, ids=lambda paint: str(paint.id))
def test_enough_coats_are_the_masstone(paint: object) -> None:
    """Two hundred coats look the same over black and over white: as the paint does by itself."""
    alone = mix(stack([paint]), [[0]], [[1.0]])  # type: ignore[list-item]
    black, white = over_card_lab(alone, 200)
    own = dry_lab(alone)
    assert delta_e_2000(black[0], own[0]) < 0.05
    assert delta_e_2000(white[0], own[0]) < 0.05


@given(st.integers(0, len(PAINTS) - 1), st.integers(1, 6))
def test_luminance_agrees_with_the_contrast_ratio(which: int, coats: int) -> None:
    """Y over black as a share of Y over white is the contrast ratio of ISO 6504."""
    alone = mix(stack([PAINTS[which]]), [[0]], [[1.0]])
    black, white = (_luminance(lab[0][0]) for lab in over_card_lab(alone, coats))
    assert black / white == pytest.approx(float(contrast_ratio(alone, coats)[0]), abs=2e-3)


def test_more_coats_hide_more() -> None:
    """The difference between black and white never grows with another coat."""
    alone = mix(stack(PAINTS), [[n] for n in range(len(PAINTS))], [[1.0]] * len(PAINTS))
    gaps = [
        white[:, 0] - black[:, 0] for black, white in (over_card_lab(alone, n) for n in (1, 2, 4))
    ]
    assert np.all(gaps[0] >= gaps[1] - 1e-9)
    assert np.all(gaps[1] >= gaps[2] - 1e-9)


def test_card_is_black_and_white() -> None:
    """The white of the card has Y = 0.8, as charts for ISO 6504 have, and the black none."""
    assert [float(xyz_of(np.full(36, ground))[1]) for ground in CARD_GROUNDS] == pytest.approx(
        [0.0, 0.8], abs=1e-3
    )


def _luminance(L: float) -> float:
    """Give Y of L*, by the inverse of CIE 15:2004."""
    f = (L + 16) / 116
    return f**3 if f > 6 / 29 else 3 * (6 / 29) ** 2 * (f - 4 / 29)
