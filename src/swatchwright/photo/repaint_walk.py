"""Carry a few marks over a whole picture: the random walker with priors.

Each pixel is given, for each label, the chance that a walker which starts there first meets a mark
of that label. It steps easily between pixels alike and hardly over an edge [Grady2006]. Now and
then it ends where it is, in the label that the colour there speaks for: so marks on one panel reach
the next one too [Grady2005]. The chances are the solution of one sparse positive definite system,
found by conjugate gradients from that of a picture of half the size.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.photo.repaint_strokes import UNMARKED

__all__ = ["edge_weights", "walked"]

Floats = NDArray[np.floating[Any]]
Labels = NDArray[np.uint8]

_LEAST_WEIGHT = 1e-5
_SMALLEST = 48
_NEAR = 2e-3


def _go_on() -> None:
    """Never stop."""


@dataclass(frozen=True, slots=True, eq=False)
class _Grid:
    """The system on one grid.

    Parameters
    ----------
    across, down
        Weights between neighbours, shapes (rows, columns - 1) and (rows - 1, columns).
    whole
        The diagonal, shape (rows, columns).
    free
        1 where there is no mark, else 0.
    """

    across: Floats
    down: Floats
    whole: Floats
    free: Floats

    def times(self, x: Floats) -> Floats:
        """Multiply fields (labels, rows, columns) by the matrix, rows of marks left out."""
        out = self.whole * x
        out[:, :, :-1] -= self.across * x[:, :, 1:]
        out[:, :, 1:] -= self.across * x[:, :, :-1]
        out[:, :-1] -= self.down * x[:, 1:]
        out[:, 1:] -= self.down * x[:, :-1]
        out *= self.free
        return out


def edge_weights(image: Floats, contrast: float) -> tuple[Floats, Floats]:
    """Give how easily a walker steps to the right and down, 0-1.

    Parameters
    ----------
    image
        Shape (rows, columns, channels).
    contrast
        The weight is exp(-contrast x d²) for a difference of d, the sum over channels.
    """
    across = np.sum((image[:, 1:] - image[:, :-1]) ** 2, axis=-1)
    down = np.sum((image[1:] - image[:-1]) ** 2, axis=-1)
    return np.exp(-contrast * across) + _LEAST_WEIGHT, np.exp(-contrast * down) + _LEAST_WEIGHT


def walked(
    image: Floats,
    marks: Labels,
    prior: Floats,
    *,
    contrast: float,
    strength: float,
    near: float = _NEAR,
    check: Callable[[], None] = _go_on,
) -> Floats:
    """Give the chance of each label at each pixel.

    Parameters
    ----------
    image
        Shape (rows, columns, channels).
    marks
        Shape (rows, columns): a label, or `UNMARKED`.
    prior
        What the colour of a pixel alone speaks for, shape (labels, rows, columns), summing to 1.
    contrast
        As for `edge_weights`.
    strength
        How much the prior counts beside a step to a like neighbour, 0 or more.
    near
        How far the residual may be from none, as a share of the first one of a blank start.
    check
        Called now and then; it may raise to stop.

    Returns
    -------
    Shape of the prior; sums to 1.
    """
    count, (rows, columns) = len(prior), marks.shape
    start = prior.copy()
    if min(rows, columns) > _SMALLEST:
        half = walked(
            _halved(image),
            _halved_marks(marks),
            np.stack([_halved(one) for one in prior]),
            contrast=contrast,
            strength=4 * strength,
            near=near,
            check=check,
        )
        start = np.repeat(np.repeat(half, 2, axis=1), 2, axis=2)[:, :rows, :columns]
    marked = marks != UNMARKED
    for label in range(count):
        start[label][marked] = marks[marked] == label
    if count == 1:
        return np.ones_like(start)
    grid = _grid(image, marked, contrast, strength)
    # Chances sum to 1, so the last label's is what the others leave.
    solved = _solved(grid, start[:-1], strength * prior[:-1], near, check)
    np.clip(solved, 0.0, 1.0, out=solved)
    last = np.clip(1.0 - solved.sum(axis=0, keepdims=True), 0.0, 1.0)
    return np.concatenate([solved, last])


def _grid(image: Floats, marked: NDArray[np.bool_], contrast: float, strength: float) -> _Grid:
    across, down = edge_weights(image, contrast)
    whole = np.full(marked.shape, strength, dtype=across.dtype)
    whole[:, :-1] += across
    whole[:, 1:] += across
    whole[:-1] += down
    whole[1:] += down
    return _Grid(across, down, whole, (~marked).astype(across.dtype))


def _solved(
    grid: _Grid, x: Floats, right: Floats, near: float, check: Callable[[], None]
) -> Floats:
    """Solve by conjugate gradients, each label for itself, preconditioned by the diagonal."""
    most = 6 * max(x.shape[1:])
    rest = grid.free * right - grid.times(x)
    marked_only = grid.free * right - grid.times(x * (1 - grid.free))
    limit = near**2 * np.maximum(_dots(marked_only, marked_only), 1e-12)
    ready = rest / grid.whole
    along, size = ready.copy(), _dots(rest, ready)
    for turn in range(most):
        if np.all(_dots(rest, rest) <= limit):
            break
        if turn % 8 == 0:
            check()
        ahead = grid.times(along)
        step = _share(size, _dots(along, ahead))
        x = x + step * along
        rest -= step * ahead
        ready = rest / grid.whole
        before, size = size, _dots(rest, ready)
        along = ready + _share(size, before) * along
    return x


def _dots(a: Floats, b: Floats) -> Floats:
    """Multiply two fields label by label, shape (labels,)."""
    return np.asarray(np.einsum("kij,kij->k", a, b, dtype=np.float64))


def _share(a: Floats, b: Floats) -> Floats:
    """Divide label by label, and fit the result to fields; 0 where there is nothing left."""
    share = np.divide(a, b, out=np.zeros_like(a), where=b > 0)
    return share[:, None, None].astype(np.float32)


def _even(field: NDArray[Any]) -> NDArray[Any]:
    """Repeat the last row or column of a field whose number of them is odd."""
    rows, columns = field.shape[:2]
    wider = ((0, rows % 2), (0, columns % 2), *((0, 0) for _ in field.shape[2:]))
    return np.pad(field, wider, mode="edge")


def _halved(field: Floats) -> Floats:
    """Average blocks of 2 by 2."""
    even = _even(field)
    rows, columns = even.shape[0] // 2, even.shape[1] // 2
    blocks = even.reshape(rows, 2, columns, 2, *even.shape[2:])
    return np.asarray(blocks.mean(axis=(1, 3), dtype=np.float32))


def _halved_marks(marks: Labels) -> Labels:
    """Give a block the least label marked in it; `UNMARKED` is greater than all."""
    even = _even(marks)
    return np.asarray(
        even.reshape(even.shape[0] // 2, 2, even.shape[1] // 2, 2).min(axis=(1, 3)),
        dtype=np.uint8,
    )
