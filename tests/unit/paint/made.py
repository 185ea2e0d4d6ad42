"""Builders of made-up paints, and strategies that draw them."""

from __future__ import annotations

from typing import Any

import numpy as np
from hypothesis import strategies as st
from numpy.typing import ArrayLike, NDArray

from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.paint.family import Family
from swatchwright.paint.paints import Paint

Floats = NDArray[np.floating[Any]]


def paint(
    id_: str = "made",
    K: ArrayLike = 1.0,
    S: ArrayLike = 100.0,
    family: Family = Family.CHALKY,
    **more: Any,
) -> Paint:
    """Make a paint; K and S may be single numbers, for a grey."""
    k, s = (np.broadcast_to(np.asarray(v, dtype=np.float64), 36).copy() for v in (K, S))
    return Paint(id_, id_.capitalize(), family, k, s, **more)


def smooth(knots: list[float]) -> Floats:
    """Lay a smooth curve through knots evenly spread over the grid, in logarithms."""
    at = np.linspace(380, 730, len(knots))
    return np.asarray(10 ** np.interp(WAVELENGTHS, at, knots))


def spectra(low: float, high: float) -> st.SearchStrategy[Floats]:
    """Draw smooth spectra between two powers of ten."""
    return st.lists(st.floats(low, high), min_size=5, max_size=5).map(smooth)


@st.composite
def paints(draw: st.DrawFn, family: Family | None = None) -> Paint:
    """Draw a paint that could be: any colour, any family unless one is asked for."""
    return paint(
        K=draw(spectra(-1, 3)),
        S=draw(spectra(0, 2.5)),
        family=family or draw(st.sampled_from(Family)),
        volume_solids=draw(st.floats(0.2, 1.0)),
        spreading_rate=draw(st.floats(5, 20)),
    )


shares = st.lists(st.floats(0.001, 1), min_size=3, max_size=3).map(
    lambda parts: tuple(part / sum(parts) for part in parts)
)
"""Three shares that sum to one, none of them 0."""
