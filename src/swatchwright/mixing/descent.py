"""Levenberg-Marquardt over the shares of many mixtures at once.

Shares are written as the softmax of free numbers, the last of which is 0, so that they stay
positive and sum to one, and so that a trace of a strong paint is as easy to find as a half.

References
----------
Marquardt 1963, J. SIAM 11:431 (damping).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

__all__ = ["FURTHEST", "Ends", "descend", "shares_of"]

Floats = NDArray[np.floating[Any]]
Indices = NDArray[np.intp]

Terms = Callable[[Indices, Floats], Floats]
"""Gives for rows (m,) of the batch and their logits (m, k - 1) numbers (m, t) whose squares sum to
what is to be least."""

Thinned = Callable[[int, Floats], NDArray[np.bool_]]
"""Tells after a turn, counted from 1, by all sums of squares (n,), which rows are worth more."""

FURTHEST = 9.0
"""The furthest that a logit may go from the last paint's: a share of about 0.0001."""

_STEP = 1e-4


@dataclass(frozen=True, slots=True)
class Ends:
    """When a mixture moves no more.

    Parameters
    ----------
    turns
        Steps at the most.
    gain, about
        It has come home when a step brings less than `gain` of the sum of squares and `about`.
    stuck
        It is stuck when the damping has grown beyond this.
    """

    turns: int
    gain: float
    about: float
    stuck: float


def shares_of(logits: Floats) -> Floats:
    """Turn logits (..., k - 1), relative to the last paint, into shares (..., k)."""
    full = np.concatenate([logits, np.zeros((*logits.shape[:-1], 1))], axis=-1)
    raised = np.exp(full - full.max(axis=-1, keepdims=True))
    return np.asarray(raised / raised.sum(axis=-1, keepdims=True))


def descend(
    terms_of: Terms, logits: Floats, ends: Ends, worth_more: Thinned | None = None
) -> tuple[Floats, Floats]:
    """Run Levenberg-Marquardt on every mixture that still moves.

    Parameters
    ----------
    terms_of
        What is to be least, by rows.
    logits
        (n, k - 1) starts.
    ends
        When to end.
    worth_more
        Which rows to go on with after a turn; all of them where it is None.

    Returns
    -------
    Logits (n, k - 1) and their sums of squares (n,).
    """
    logits = logits.copy()
    live = np.arange(len(logits))
    terms = terms_of(live, logits)
    size = (terms**2).sum(axis=-1)
    damping = np.full(len(logits), 1e-2)
    for turn in range(1, ends.turns + 1):
        J = _slopes(terms_of, live, logits[live], terms[live])
        moved = logits[live] + _damped_step(J, terms[live], damping[live])
        moved = np.clip(moved, -FURTHEST, FURTHEST)
        new_terms = terms_of(live, moved)
        new_size = (new_terms**2).sum(axis=-1)
        gain = size[live] - new_size
        better = gain > 0
        kept = live[better]
        logits[kept], terms[kept], size[kept] = moved[better], new_terms[better], new_size[better]
        damping[live] = np.where(better, damping[live] / 5, damping[live] * 8)
        home = gain < ends.gain * (ends.about + size[live])
        live = live[~np.where(better, home, damping[live] > ends.stuck)]
        if worth_more is not None:
            live = live[worth_more(turn, size)[live]]
        if not live.size:
            break
    return logits, size


def _slopes(terms_of: Terms, rows: Indices, logits: Floats, terms: Floats) -> Floats:
    """Give the forward-difference Jacobian (m, t, k - 1) of the terms."""
    columns = []
    for i in range(logits.shape[1]):
        moved = logits.copy()
        moved[:, i] += _STEP
        columns.append((terms_of(rows, moved) - terms) / _STEP)
    return np.stack(columns, axis=-1)


def _damped_step(J: Floats, terms: Floats, damping: Floats) -> Floats:
    """Solve the damped normal equations of each mixture."""
    normal = np.einsum("mij,mik->mjk", J, J)
    gradient = np.einsum("mij,mi->mj", J, terms)
    diagonal = np.einsum("mjj->mj", normal)
    # The floor keeps the step finite where a paint no longer moves the colour.
    lift = damping[:, None] * (diagonal + 1e-6) + 1e-9
    damped = normal + lift[:, :, None] * np.eye(normal.shape[-1])
    return np.asarray(-np.linalg.solve(damped, gradient[..., None])[..., 0])
