"""Fitting invented paints whose truth is known; tools/judge_round_trip.py runs 500 of each."""

from __future__ import annotations

import numpy as np
import pytest

from judge_round_trip import judge


@pytest.mark.parametrize(("spectra", "limit"), [(True, 0.5), (False, 1.5)])
def test_round_trip(spectra: bool, limit: float) -> None:  # noqa: FBT001
    """Unseen let-downs and crossings come out, and the stated region holds the truth."""
    found = judge(25, spectra=spectra)
    assert np.median(found.let_downs) < limit
    assert np.median(found.crossings) < limit
    # 85 to 97 % of 500; 75 draws of 90 % lie in 0.80 to 0.98 nearly always.
    assert 0.80 <= found.held <= 0.99
