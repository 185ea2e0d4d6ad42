"""Cells: three groups of paints and a triangle of their shares, bounded and cut in two.

What is seen of a mixture in a band is a convex, falling function of K/S, and K/S is a mean of the
corners' own, weighted by share times S. So over a triangle of shares it stays near the plane
through its corners: above it by no more than the spread of S can shift the weights, below it by
that and by the sag of the convex curve. Summed to XYZ this leaves a triangle with a little room
about it, and the room falls as the square of the triangle. With groups in place of paints the
corners are ranges, and the same holds.

References
----------
Duncan 1940, Proc. Phys. Soc. 52:390 (K and S of a mixture); Land, Doig 1960, Econometrica 28:497
(branch and bound). See docs/bibliography.md.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.convert import D65_WHITE
from swatchwright.mixing.ball import Ball
from swatchwright.mixing.groups import (
    K2,
    THROUGH,
    Groups,
    band_weights,
    eye_weights,
    seen_of_bands,
)

__all__ = ["Cells", "Corners", "corners_of", "cut", "lab_boxes", "outside"]

Floats = NDArray[np.floating[Any]]
Indices = NDArray[np.intp]
Rows = NDArray[np.bool_] | slice

_EPSILON = 216 / 24389
_KAPPA = 24389 / 27

_ALIKE = 1e-3
"""Edge, CIELAB, below which a cell's groups are cut however alike their paints are."""


@dataclass(frozen=True, slots=True, eq=False)
class Cells:
    """A batch of cells.

    Parameters
    ----------
    groups
        (m, 3) indices of groups.
    corners
        (m, 3, 3): row i holds the amounts of the three groups at corner i, in units of scattering.
    weight
        (m,) share of the whole search that a cell stands for.
    least
        (m,) a difference that the cell is known not to undercut.
    """

    groups: Indices
    corners: Floats
    weight: Floats
    least: Floats

    def __len__(self) -> int:
        return len(self.groups)

    def pick(self, rows: Rows) -> Cells:
        """Take some of the cells."""
        return Cells(self.groups[rows], self.corners[rows], self.weight[rows], self.least[rows])

    @staticmethod
    def joined(parts: list[Cells]) -> Cells:
        """Put batches together."""
        return Cells(
            np.concatenate([p.groups for p in parts]),
            np.concatenate([p.corners for p in parts]),
            np.concatenate([p.weight for p in parts]),
            np.concatenate([p.least for p in parts]),
        )


@dataclass(frozen=True, slots=True, eq=False)
class Corners:
    """What is seen at the corners (m, 3, 37), K and S there, and how far a cell strays (m, 37).

    `over` and `under` say how far above and below the plane of its corners a band may lie.
    """

    seen_low: Floats
    seen_high: Floats
    K: Floats
    S: Floats
    over: Floats
    under: Floats

    def pick(self, rows: Rows) -> Corners:
        """Take some of the cells."""
        return Corners(*(getattr(self, n)[rows] for n in self.__slots__))


def corners_of(cells: Cells, groups: Groups, *, single: bool) -> Corners:
    """Look at the corners of cells; `single` says that every group is one paint."""
    K_low, S_low = (cells.corners @ v[cells.groups] for v in (groups.K_low, groups.S_low))
    if single:
        q_low = q_high = K_low / S_low
        low = high = seen_of_bands(q_low)
        over, under = _straying((q_low, q_high), (low, high), (S_low, S_low))
        return Corners(low, high, K_low, S_low, over, under)
    K_high, S_high = (cells.corners @ v[cells.groups] for v in (groups.K_high, groups.S_high))
    q_low, q_high = K_low / S_high, K_high / S_low
    low, high = seen_of_bands(q_high), seen_of_bands(q_low)
    # The band of glare is seen as its ratio itself: the greatest ratio is the most seen.
    low[..., -1], high[..., -1] = q_low[..., -1], q_high[..., -1]
    over, under = _straying((q_low, q_high), (low, high), (S_low, S_high))
    return Corners(low, high, (K_low + K_high) / 2, (S_low + S_high) / 2, over, under)


def _straying(
    q: tuple[Floats, Floats], seen: tuple[Floats, Floats], S: tuple[Floats, Floats]
) -> tuple[Floats, Floats]:
    """Say how far above and below the plane of its corners each band of a cell may lie.

    K/S, what is seen and S come as least and greatest at the corners.
    """
    least, most = seen[0].min(axis=1), seen[1].max(axis=1)
    ratio = np.sqrt(S[1].max(axis=1) / S[0].min(axis=1))
    # The most that weights between 1 and ratio^2 can move a mean, as a share of the range.
    shift = (ratio - 1) / (ratio + 1) * (most - least)
    ends = q[0].min(axis=1), q[1].max(axis=1), least, most
    sag = _sag(*(v[:, :-1] for v in ends))
    under = shift.copy()
    under[:, :-1] += sag
    return shift, under


def _sag(q_low: Floats, q_high: Floats, least: Floats, most: Floats) -> Floats:
    """Give how far the convex curve can lie below its chord; from a tangent near the lowest place.

    Any tangent bounds it; the place is where the reflectance without its surface runs as its chord.
    """
    R_most, R_least = 1 / (THROUGH / most + K2), 1 / (THROUGH / least + K2)
    fall = (R_most - R_least) / np.maximum(q_high - q_low, 1e-300)
    R = np.clip(np.sqrt(fall / (2 + fall)), R_least, np.minimum(R_most, 1 - 1e-9))
    q = (1 - R) ** 2 / (2 * R)
    seen = THROUGH / (1 / R - K2)
    slope = -THROUGH / (1 - K2 * R) ** 2 * 2 * R**2 / (1 - R**2)
    at_low, at_high = seen + slope * (q_low - q), seen + slope * (q_high - q)
    return np.asarray(np.clip(np.maximum(most - at_low, least - at_high), 0, most - least))


def outside(at: Corners, ball: Ball) -> NDArray[np.bool_]:
    """Tell which cells lie outside one of the half-spaces about the wanted colour."""
    views = ball.directions @ band_weights().T
    up, down = np.maximum(views, 0).T.copy(), np.maximum(-views, 0).T.copy()
    flat = at.seen_low @ up - at.seen_high @ down
    plane = flat.min(axis=1) - at.under @ up - at.over @ down
    apart = at.seen_low.min(axis=1) @ up - at.seen_high.max(axis=1) @ down
    return np.asarray((np.maximum(plane, apart) > ball.reach).any(axis=1))


def lab_boxes(at: Corners) -> tuple[Floats, Floats]:
    """Give the least and greatest CIELAB (m, 3) that the mixtures of each cell can have."""
    weights = band_weights() / np.array(D65_WHITE)
    up, down = np.maximum(weights, 0), np.maximum(-weights, 0)
    low = at.seen_low @ up - at.seen_high @ down - (at.under @ up + at.over @ down)[:, None]
    high = at.seen_high @ up - at.seen_low @ down + (at.over @ up + at.under @ down)[:, None]
    f_low, f_high = _root(low), _root(high)
    bulge = _bulge(low.min(axis=1), high.max(axis=1))
    tops = np.stack([116 * f_high[..., 1] - 16, *_steps(f_high, f_low)], axis=-1).max(axis=1)
    ends = np.stack([116 * f_low[..., 1] - 16, *_steps(f_low, f_high)], axis=-1).min(axis=1)
    tops += np.stack([116 * bulge[:, 1], 500 * bulge[:, 0], 200 * bulge[:, 1]], axis=-1)
    ends -= np.stack([0 * bulge[:, 1], 500 * bulge[:, 1], 200 * bulge[:, 2]], axis=-1)
    return ends, tops


def _steps(f: Floats, other: Floats) -> tuple[Floats, Floats]:
    """Give a* and b* with the first function in the place that raises them."""
    return 500 * (f[..., 0] - other[..., 1]), 200 * (f[..., 1] - other[..., 2])


def _root(t: Floats) -> Floats:
    """Give the f of CIELAB."""
    return np.asarray(np.where(t > _EPSILON, np.cbrt(t), (_KAPPA * t + 16) / 116))


def _bulge(low: Floats, high: Floats) -> Floats:
    """Give how far f, which is concave, can lie above its chord; from a tangent."""
    f_low, f_high = _root(low), _root(high)
    chord = (f_high - f_low) / np.maximum(high - low, 1e-12)
    x = np.clip((3 * np.maximum(chord, 1e-3)) ** -1.5, np.maximum(low, _EPSILON), None)
    x = np.minimum(x, np.maximum(high, _EPSILON))
    f, slope = np.cbrt(x), np.cbrt(x) / (3 * x)
    return np.asarray(
        np.clip(np.maximum(f + slope * (low - x) - f_low, f + slope * (high - x) - f_high), 0, None)
    )


def cut(cells: Cells, at: Corners, groups: Groups) -> tuple[Cells, Floats]:
    """Cut cells in two: the widest group, or the longest edge, whichever tells more.

    Returns
    -------
    Both halves of every cell, and the longest edge (m,) of the cells, in CIELAB units.
    """
    f = np.cbrt(np.maximum((at.seen_low + at.seen_high) / 2 @ band_weights(), 0))
    lab = np.stack(
        [116 * f[..., 1], 500 * (f[..., 0] - f[..., 1]), 200 * (f[..., 1] - f[..., 2])], -1
    )
    edges = np.linalg.norm(lab - lab[:, [1, 2, 0]], axis=2)
    edge = edges.argmax(axis=1)
    rows = np.arange(len(cells))
    longest = edges[rows, edge]
    unlike = groups.width[cells.groups] * np.sqrt(cells.corners.max(axis=1))
    group = unlike.argmax(axis=1)
    by_group = (unlike[rows, group] > longest) | ((unlike[rows, group] > 0) & (longest < _ALIKE))
    halves = []
    for side in (0, 1):
        chosen = cells.groups.copy()
        old = chosen[rows, group]
        chosen[rows, group] = np.where(by_group, groups.halves[old, side], old)
        halves.append(chosen)
    shares = [
        np.where(by_group[:, None, None], cells.corners, half)
        for half in _halved_edges(cells.corners, at, edge, longest, f[..., 1])
    ]
    parts = [
        Cells(chosen, corners, cells.weight / 2, cells.least)
        for chosen, corners in zip(halves, shares, strict=True)
    ]
    return Cells.joined(parts), longest


def _halved_edges(
    corners: Floats, at: Corners, edge: Indices, longest: Floats, light: Floats
) -> tuple[Floats, Floats]:
    """Cut an edge at half its step in lightness, or where it has none at half the scattering."""
    rows, end = np.arange(len(corners)), (edge + 1) % 3
    eye = eye_weights()
    K, S = at.K @ eye, at.S @ eye
    middle = np.clip((light[rows, edge] + light[rows, end]) / 2, 0.05, 1) ** 3
    R = 1 / (THROUGH / middle + K2)
    q = (1 - R) ** 2 / (2 * R)
    short, spare = (K[rows, i] - q * S[rows, i] for i in (edge, end))
    steep = np.abs(light[rows, edge] - light[rows, end]) * 116 > 0.15 * longest
    fine = steep & (short * spare < 0) & (np.abs(short) < 500 * np.abs(spare))
    ratio = np.where(fine, -short / np.where(fine, spare, 1), 1.0)
    share = np.where(fine, np.clip(ratio, 0.002, 500), 1.0)
    share = (share / (1 + share))[:, None]
    mean = (1 - share) * corners[rows, edge] + share * corners[rows, end]
    first, second = corners.copy(), corners.copy()
    first[rows, edge] = mean
    second[rows, end] = mean
    return first, second
