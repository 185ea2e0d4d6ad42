"""How far a mix as computed may be from the mix as it dries, from how well its paints are known.

What is not known of ln K and ln S is carried to the colour along the slopes of the film and of its
surface, as in any propagation of errors; what the theory of mixing itself gets wrong is added.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

from swatchwright.paint.fit.fitted import FORMULA_SPREAD
from swatchwright.paint.fit.model import colour_slope
from swatchwright.paint.mixture import DRY_INDEX, Mixtures, dry_reflectance, mix
from swatchwright.paint.paints import Paint, stack
from swatchwright.paint.surface import internal_diffuse, normal_reflectance

__all__ = ["mix_covariances", "spread_after"]

Floats = NDArray[np.floating[Any]]

_K1 = float(normal_reflectance(DRY_INDEX))
_K2 = float(internal_diffuse(DRY_INDEX))


def mix_covariances(
    paints: Sequence[Paint], shares: ArrayLike, *, formula: float = FORMULA_SPREAD
) -> Floats:
    """Give the covariances (n, 3, 3) of CIELAB of n dry, opaque mixes of the same paints.

    Parameters
    ----------
    paints
        The paints; one without a spread adds nothing.
    shares
        (n, k) shares of the wet volume, each row summing to 1.
    formula
        Standard deviation in each direction of CIELAB of what the theory gets wrong; it does not
        count where there is a single paint, of which nothing is mixed.
    """
    mixture, dry = _mixed(paints, shares)
    mixed = ((dry > 0).sum(axis=1) > 1).astype(np.float64)
    found = formula**2 * mixed[:, None, None] * np.eye(3)
    for i, paint in enumerate(paints):
        if paint.spread is not None and len(paint.spread):
            pushed = _pushed(mixture, dry[:, i], paint, paint.spread)
            found += pushed @ np.swapaxes(pushed, -1, -2)
    return np.asarray(found)


def spread_after(paints: Sequence[Paint], shares: Sequence[float], error: float) -> Floats:
    """Give the spread (n, 72) that would be left of the first paint if a mix of it were read.

    Parameters
    ----------
    paints, shares
        The mix, by shares of the wet volume; all paints but the first are taken as known.
    error
        Standard deviation of the reading, and of what the theory gets wrong, in each direction
        of CIELAB.

    Raises
    ------
    ValueError
        If the first paint has no spread.
    """
    spread = paints[0].spread
    if spread is None:
        raise ValueError("only of a paint with a spread can be told what would be left of it")
    mixture, dry = _mixed(paints, shares)
    pushed = _pushed(mixture, dry[:, 0], paints[0], spread)[0]
    seen = np.linalg.solve(pushed @ pushed.T + error**2 * np.eye(3), pushed)
    left, directions = np.linalg.eigh(np.eye(len(spread)) - pushed.T @ seen)
    return np.asarray((directions * np.sqrt(np.maximum(left, 0.0))).T @ spread)


def _mixed(paints: Sequence[Paint], shares: ArrayLike) -> tuple[Mixtures, Floats]:
    """Give n mixtures of the same paints, and the paints' shares (n, k) of the dry volume."""
    wet = np.atleast_2d(np.asarray(shares, dtype=np.float64))
    stacked = stack(paints)
    dry = wet * stacked.solids
    mixture = mix(stacked, np.tile(np.arange(len(paints)), (len(wet), 1)), wet)
    return mixture, np.asarray(dry / dry.sum(axis=1, keepdims=True))


def _pushed(mixture: Mixtures, share: Floats, paint: Paint, spread: Floats) -> Floats:
    """Give what each direction (d, 72) of a paint's spread does to the colours: (n, 3, d)."""
    slope = _slope(mixture)
    of_K = share[:, None] * paint.K / np.maximum(mixture.K, 1e-300)
    of_S = share[:, None] * paint.S / mixture.S
    by = np.concatenate([slope * of_K[:, None], -slope * of_S[:, None]], axis=-1)
    return np.asarray(by @ spread.T)


def _slope(mixture: Mixtures) -> Floats:
    """Give how CIELAB (n, 3, 36) changes with the logarithm of K/S."""
    q = mixture.K / mixture.S
    inside = 1.0 / (1.0 + q + np.sqrt(q * (q + 2.0)))
    by_log = -(inside**2) * (q + (q + 1.0) * np.sqrt(q / (q + 2.0)))
    through = (1.0 - _K1) * (1.0 - _K2) / (1.0 - _K2 * inside) ** 2
    return colour_slope(dry_reflectance(mixture)) * (through * by_log)[:, None]
