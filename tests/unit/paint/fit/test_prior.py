"""What is believed of a paint beforehand."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.testing import assert_allclose

from swatchwright.paint.fit.prior import Bend, basis


@pytest.mark.parametrize("rough", [True, False])
def test_a_bend_is_a_covariance(rough: bool) -> None:  # noqa: FBT001
    """Its covariance is symmetric and positive, with the stated variance at each wavelength."""
    covariance = Bend(0.3, 0.4, 60.0, rough=rough).covariance()
    assert_allclose(covariance, covariance.T)
    assert np.linalg.eigvalsh(covariance).min() > 0
    assert_allclose(np.diag(covariance), 0.25, rtol=1e-4)


def test_a_smooth_bend_has_smaller_steps() -> None:
    """Neighbouring bands of a smooth bend are more alike than those of a rough one."""
    rough, smooth = (Bend(0.0, 1.0, 60.0, rough=r).covariance() for r in (True, False))
    assert smooth[0, 1] > rough[0, 1]


def test_the_basis_is_positive() -> None:
    """No colorant has nothing at any wavelength, for logarithms are taken."""
    names, K, S = basis()
    assert K.shape == S.shape == (len(names), 36)
    assert min(K.min(), S.min()) > 0
