"""Laying measured spectra on the grid."""

from __future__ import annotations

import numpy as np
from numpy.testing import assert_allclose

from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.paint.fit.readings import on_grid


def test_what_was_not_measured_stays_open() -> None:
    """Bands beyond the instrument's are left open, not held at the last value."""
    nm = np.arange(400.0, 701.0, 10.0)
    spectrum = on_grid(nm, 0.3 + 0.001 * (nm - 400))
    inside = (WAVELENGTHS >= 400) & (WAVELENGTHS <= 700)
    assert_allclose(spectrum[inside], 0.3 + 0.001 * (WAVELENGTHS[inside] - 400))
    assert np.all(np.isnan(spectrum[~inside]))


def test_a_coarse_grid_is_interpolated() -> None:
    """Steps of 20 nm are carried to 10 nm, a straight line exactly."""
    nm = np.arange(380.0, 741.0, 20.0)
    assert_allclose(on_grid(nm, [nm / 1000, nm / 2000])[1], WAVELENGTHS / 2000)
