"""Going down over shares, against scipy's least squares and what shares must keep to."""

from __future__ import annotations

from functools import partial
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.typing import NDArray
from scipy.optimize import least_squares

from swatchwright.mixing.descent import FURTHEST, Ends, descend, shares_of

Floats = NDArray[np.floating[Any]]

_ENDS = Ends(turns=60, gain=1e-12, about=1e-9, stuck=1e8)


def _bent(shares: Floats, places: Floats) -> Floats:
    """Stand for a colour that bends with the shares, as absorption does."""
    return np.asarray(np.log(0.1 + shares @ places))


@given(st.lists(st.floats(-30, 30), min_size=1, max_size=3))
def test_shares_are_shares(logits: list[float]) -> None:
    """Whatever the logits are, none is negative and all sum to one."""
    shares = shares_of(np.array([logits]))
    assert (shares >= 0).all()
    assert shares.sum() == pytest.approx(1, abs=1e-12)


@pytest.mark.parametrize("seed", range(8))
def test_as_low_as_scipy(seed: int) -> None:
    """Each of a batch ends as low as `scipy.optimize.least_squares` does from the same start."""
    random = np.random.default_rng(seed)
    places = random.uniform(0, 1, (5, 3, 3))
    wanted = random.uniform(-1.5, -0.3, (5, 3))
    starts = random.normal(0, 1, (5, 2))

    def terms(rows: NDArray[np.intp], logits: Floats) -> Floats:
        shares = shares_of(logits)
        return np.stack(
            [_bent(s, places[r]) - wanted[r] for r, s in zip(rows, shares, strict=True)]
        )

    def alone_terms(row: int, logits: Floats) -> Floats:
        return np.asarray(terms(np.array([row]), logits[None])[0])

    logits, size = descend(terms, starts, _ENDS)
    for row, start in enumerate(starts):
        alone = least_squares(
            partial(alone_terms, row),
            start,
            bounds=(-FURTHEST, FURTHEST),
            xtol=1e-12,
            ftol=1e-12,
        )
        assert size[row] <= 2 * alone.cost * (1 + 1e-4) + 1e-9
    assert np.abs(logits).max() <= FURTHEST


def test_the_starts_stay() -> None:
    """What is handed over is not changed."""
    starts = np.zeros((2, 1))
    descend(lambda _, logits: logits - 1, starts, _ENDS)
    assert (starts == 0).all()


def test_what_is_left_off_stays_where_it_is() -> None:
    """A row that is not worth more after a turn moves no further; the others come home."""

    def terms(_: NDArray[np.intp], logits: Floats) -> Floats:
        return np.asarray(np.exp(logits) - 2)

    def worth_more(turn: int, size: Floats) -> NDArray[np.bool_]:
        return np.array([True, False]) if turn == 1 else np.ones(size.shape, dtype=np.bool_)

    logits, _ = descend(terms, np.full((2, 1), 3.0), _ENDS, worth_more)
    assert logits[0, 0] == pytest.approx(np.log(2), abs=1e-6)
    assert logits[1, 0] > 1.5
