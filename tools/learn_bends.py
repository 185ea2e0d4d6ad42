"""Learn how far a paint's K and S may bend away from a sum of known colorants.

    python tools/learn_bends.py

Each colorant of the basis, in turn, is approached by a non-negative sum of the others. What is left
in log K and log S says how far a paint made of pigments that are not in the basis may be from what
is: its level, its shape, and over which distance the shape forgets itself. The rounded values stand
in swatchwright.paint.fit.prior.COLORANT_PAINT. The white is left out: nothing is like it.
"""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import least_squares

from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.paint.fit.prior import basis

Floats = NDArray[np.floating[Any]]

MEASURED = (WAVELENGTHS >= 400) & (WAVELENGTHS <= 700)
STARTS = 6
LAGS = (1, 2, 4, 8)


def what_is_left(colorant: int) -> Floats:
    """Give what is left of log K, then log S (2, bands), of a colorant less a sum of others."""
    _, K, S = basis()
    others = [i for i in range(len(K)) if i != colorant]
    tables = [np.asarray(table)[:, MEASURED] for table in (K, S)]

    def left(log_amounts: Floats) -> Floats:
        parts = np.exp(log_amounts)
        return np.concatenate(
            [np.log(table[colorant] / (parts @ table[others])) for table in tables]
        )

    def residual(log_amounts: Floats) -> Floats:
        return np.concatenate([left(log_amounts), 0.05 * (log_amounts + 3.0)])

    rng = np.random.default_rng(1)
    found = [least_squares(residual, rng.normal(-3, 2, len(others))) for _ in range(STARTS)]
    return left(min(found, key=lambda one: float(one.cost)).x).reshape(2, -1)


def main() -> None:
    """Learn and print."""
    names = basis()[0]
    left = np.array([what_is_left(i) for i, name in enumerate(names) if name != "white"])
    for symbol, rows in zip("KS", left.transpose(1, 0, 2), strict=True):
        level = rows.mean(axis=1)
        shape = rows - level[:, None]
        alike = [float((shape[:, n:] * shape[:, :-n]).mean() / (shape**2).mean()) for n in LAGS]
        print(f"log {symbol}: level {np.sqrt((level**2).mean()):.2f}, shape {shape.std():.2f}")
        print(
            "  alike at "
            + ", ".join(f"{10 * n} nm {a:.2f}" for n, a in zip(LAGS, alike, strict=True))
        )


if __name__ == "__main__":
    main()
