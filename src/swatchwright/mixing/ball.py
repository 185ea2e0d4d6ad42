"""Half-spaces of XYZ that hold every colour within a difference of the wanted one.

A mixture whose XYZ lies outside one of them is certainly further off. The colours near enough are
first covered by boxes of CIELAB, halved until they are small; each half-space then holds all of
them.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.convert import D65_WHITE, lab_to_xyz
from swatchwright.colour.difference import delta_e_2000, far_difference
from swatchwright.mixing.bounds import least_difference

__all__ = ["Ball", "ball_about", "spread_directions"]

Floats = NDArray[np.floating[Any]]

# No surface is outside this; a little is added for paints that glow by rounding.
_WHOLE = np.array([[-1.0, -180.0, -180.0], [103.0, 180.0, 180.0]])
_MOST_BOXES = 4000
_FINEST = 24
_TURNS = 16
_HONED = 3


@dataclass(frozen=True, slots=True, eq=False)
class Ball:
    """Half-spaces whose meeting holds the colours within a difference.

    Parameters
    ----------
    directions
        (k, 3) in XYZ.
    reach
        (k,): ``directions @ XYZ`` is at most this for every colour near enough.
    """

    directions: Floats
    reach: Floats


def spread_directions(count: int) -> Floats:
    """Spread unit vectors (count, 3) evenly over the sphere, along a spiral.

    >>> bool(abs(spread_directions(200).mean(axis=0)).max() < 0.01)
    True
    """
    turns = np.arange(count) + 0.5
    height = 1 - 2 * turns / count
    around = np.pi * (1 + 5**0.5) * turns
    flat = np.sqrt(1 - height**2)
    return np.stack([flat * np.cos(around), flat * np.sin(around), height], axis=1)


def ball_about(wanted: Floats, radius: float, *, far: bool, directions: int = 100) -> Ball:
    """Build half-spaces about the colours within a difference of the wanted one.

    Parameters
    ----------
    wanted
        (3,) CIELAB, D65.
    radius
        CIEDE2000, or the difference for far colours; above 0.
    directions
        How many half-spaces.
    """
    parts = _cover(wanted, radius, far=far)
    centre, width = parts.pop()
    xyz = lab_to_xyz(centre)
    spread = np.cov(xyz.T) + 1e-4 * np.trace(np.cov(xyz.T)) * np.eye(3) + 1e-14 * np.eye(3)
    aims = spread_directions(directions) @ np.linalg.cholesky(np.linalg.inv(spread)).T
    coarse = [_reaches(aims, *part).max(axis=1) for part in parts]
    tops = _reaches(aims, centre, width)
    for _ in range(_HONED):
        told = _furthest(aims, centre, wanted, radius, far=far)
        # A box that reaches beyond what surely is reached in no direction tells nothing.
        centre = centre[(tops > told[:, None]).any(axis=0)]
        if not len(centre) or len(centre) > _MOST_BOXES:
            break
        centre, width = _halved(centre, width, wanted, radius, far=far)
        coarse.append(told)
        tops = _reaches(aims, centre, width)
    reach = np.max([*coarse, tops.max(axis=1)], axis=0)
    return Ball(aims, np.asarray(reach + 1e-9 * (1 + np.abs(reach))))


def _reaches(aims: Floats, centre: Floats, width: Floats) -> Floats:
    """Give how far boxes reach (k, m): by centre, slope, and what is left beside it."""
    xyz, slopes, rest = _about(centre, width)
    tilt = np.abs(np.einsum("kj,mji->kmi", aims, slopes))
    return np.asarray(aims @ xyz.T + tilt @ (width / 2) + np.abs(aims) @ rest.T)


def _furthest(aims: Floats, centre: Floats, wanted: Floats, radius: float, *, far: bool) -> Floats:
    """Give what surely is reached in each direction: by the centres that are near enough."""
    measure = far_difference if far else delta_e_2000
    near = measure(wanted, centre) <= radius
    points = np.concatenate([centre[near], wanted[None]])
    return np.asarray((aims @ lab_to_xyz(points).T).max(axis=1))


def _halved(
    centre: Floats, width: Floats, wanted: Floats, radius: float, *, far: bool
) -> tuple[Floats, Floats]:
    """Halve boxes along each axis, and drop those that are surely too far."""
    half = width / 2
    ends = (np.array(list(np.ndindex(2, 2, 2))) - 0.5) * half
    finer = (centre[:, None, :] + ends).reshape(-1, 3)
    kept = least_difference(finer - half / 2, finer + half / 2, wanted, far=far) <= radius
    return finer[kept], half


def _cover(wanted: Floats, radius: float, *, far: bool) -> list[tuple[Floats, Floats]]:
    """Cover the colours near enough by boxes: centres (m, 3) and a width (3,), finest last.

    Boxes that are surely within are not halved further: what is furthest in any direction is not
    in them.
    """
    width = _WHOLE[1] - _WHOLE[0]
    cells = np.zeros((1, 3), dtype=np.int64)
    halves = np.array(list(np.ndindex(2, 2, 2)))
    parts: list[tuple[Floats, Floats]] = []
    for turn in range(1, _TURNS + 1):
        size = width / 2**turn
        cells = (2 * cells[:, None, :] + halves).reshape(-1, 3)
        low = _WHOLE[0] + cells * size
        cells = cells[least_difference(low, low + size, wanted, far=far) <= radius]
        centre = _WHOLE[0] + (cells + 0.5) * size
        if np.all(np.ptp(cells, axis=0) >= _FINEST) or len(cells) > _MOST_BOXES or turn == _TURNS:
            return [*parts, (centre, size)]
        within = _enclosed(cells)
        within[within] = _surely_within(centre[within], size, wanted, radius, far=far)
        if within.any():
            parts.append((centre[within], size))
        cells = cells[~within]
    return parts


def _surely_within(
    centre: Floats, size: Floats, wanted: Floats, radius: float, *, far: bool
) -> NDArray[np.bool_]:
    """Tell which boxes lie between eight colours that are near enough, one box off each corner."""
    measure = far_difference if far else delta_e_2000
    ends = np.array(list(np.ndindex(2, 2, 2))) * 2.0 - 1.0
    around = centre[:, None, :] + ends * size
    return np.asarray((measure(wanted, around) <= radius).all(axis=1))


def _enclosed(cells: NDArray[np.int64]) -> NDArray[np.bool_]:
    """Tell which cells have all six neighbours."""
    step = 1 << 20
    key = (cells[:, 0] * step + cells[:, 1]) * step + cells[:, 2]
    inside = np.ones(len(cells), dtype=np.bool_)
    for move in (1, step, step * step):
        inside &= np.isin(key + move, key) & np.isin(key - move, key)
    return inside


def _about(centre: Floats, width: Floats) -> tuple[Floats, Floats, Floats]:
    """Give XYZ at the centres, its slopes (m, 3, 3), and how far a box may leave that plane.

    XYZ is the cube of f, or a line below f = 6/29: its second derivative is at most 6 f.
    """
    fy = (centre[:, 0] + 16) / 116
    f = np.stack([fy + centre[:, 1] / 500, fy, fy - centre[:, 2] / 200], axis=1)
    reach = np.array(
        [width[0] / 232 + width[1] / 1000, width[0] / 232, width[0] / 232 + width[2] / 400]
    )
    white = np.array(D65_WHITE)
    slope = np.where(f > 6 / 29, 3 * f**2, 3 * (6 / 29) ** 2) * white
    turn = np.array([[1 / 116, 1 / 500, 0], [1 / 116, 0, 0], [1 / 116, 0, -1 / 200]])
    rest = 3 * np.maximum(f + reach, 6 / 29) * reach**2 * white
    return lab_to_xyz(centre), slope[:, :, None] * turn, np.asarray(rest)
