"""Paints gathered into groups of similar ones, as a tree, so that many are bounded at once.

Each paint is told by its K and S in 37 bands: the 36 wavelengths, and a last band whose K/S is
the glare of the surface and whose S is the volume solids, as glare is a mean by dry volume. K and
S are divided by the paint's scattering, seen as the eye weighs it; that changes the names of its
shares but no mixture.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.spectrum import light_weights, light_white
from swatchwright.paint.mixture import DRY_INDEX
from swatchwright.paint.paints import PaintStack
from swatchwright.paint.surface import internal_diffuse, normal_reflectance

__all__ = [
    "K1",
    "K2",
    "THROUGH",
    "Groups",
    "band_weights",
    "eye_weights",
    "gathered",
    "seen_of_bands",
]

Floats = NDArray[np.floating[Any]]
Indices = NDArray[np.intp]

K1 = float(normal_reflectance(DRY_INDEX))
K2 = float(internal_diffuse(DRY_INDEX))

THROUGH = (1.0 - K1) * (1.0 - K2)
"""Share of light that crosses the surface twice."""


@dataclass(frozen=True, slots=True, eq=False)
class Groups:
    """A tree of groups of paints.

    Parameters
    ----------
    K_low, K_high, S_low, S_high
        (g, 37) least and greatest of the group's paints.
    halves
        (g, 2) the two groups that a group falls into; -1 for a single paint.
    paint
        (g,) the paint of a group of one; -1 for others.
    width
        (g,) how far the group's paints differ, roughly in CIELAB units of lightness.
    scattering
        (p,) what each paint of the shelf was divided by, for a share of wet volume.
    """

    K_low: Floats
    K_high: Floats
    S_low: Floats
    S_high: Floats
    halves: Indices
    paint: Indices
    width: Floats
    scattering: Floats


def band_weights() -> Floats:
    """Give the (37, 3) weights that sum what is seen in each band to XYZ."""
    return np.concatenate([light_weights(), K1 * np.array([light_white()])])


def eye_weights() -> Floats:
    """Give the (37,) weights of lightness, which sum to one; the band of glare has none."""
    return np.append(light_weights()[:, 1], 0.0)


def seen_of_bands(ratio: Floats) -> Floats:
    """Give what is seen (..., 37) from K/S: light out of the film, and the glare as it is."""
    q = ratio[..., :-1]
    out = np.empty_like(ratio)
    out[..., :-1] = THROUGH / (1.0 - K2 + q + np.sqrt(q * (q + 2.0)))
    out[..., -1] = ratio[..., -1]
    return out


def gathered(paints: PaintStack, pools: Sequence[Indices]) -> tuple[Groups, list[int]]:
    """Gather each pool of paints into a tree of groups.

    Returns
    -------
    All groups, and the index of each pool's root; the pools must not be empty.
    """
    solids = paints.solids[:, None]
    K = np.concatenate([paints.K * solids, (paints.glare * paints.solids)[:, None]], axis=1)
    S = np.concatenate([paints.S * solids, solids], axis=1)
    scattering = S @ eye_weights()
    K, S = K / scattering[:, None], S / scattering[:, None]
    features = _features(K, S)
    halves: list[tuple[int, int]] = []
    members: list[Indices] = []
    roots = [_grow(features, pool, halves, members) for pool in pools]
    ends = [
        np.stack([end(v[m], axis=0) for m in members]) for v in (K, S) for end in (np.min, np.max)
    ]
    alone = np.array([m[0] if len(m) == 1 else -1 for m in members], dtype=np.intp)
    light, dark = seen_of_bands(ends[0] / ends[3]), seen_of_bands(ends[1] / ends[2])
    # The band of glare is seen as its ratio itself: the greatest ratio is the most seen.
    light[:, -1], dark[:, -1] = ends[1][:, -1] / ends[2][:, -1], ends[0][:, -1] / ends[3][:, -1]
    reach = [np.cbrt(np.maximum(v @ band_weights(), 0)) for v in (light, dark)]
    # Two paints may look alike and still be two: then a hair, or they would never be told apart.
    width = 116 * np.maximum((reach[0] - reach[1]).max(axis=1), np.where(alone < 0, 1e-6, 0.0))
    tree = np.array(halves, dtype=np.intp)
    groups = Groups(ends[0], ends[1], ends[2], ends[3], tree, alone, width, scattering)
    return groups, roots


def _features(K: Floats, S: Floats) -> Floats:
    """Give numbers by which similar paints lie close: their colour, and their K in logarithms."""
    colour = np.cbrt(np.maximum(seen_of_bands(K / S) @ band_weights(), 0))
    return np.concatenate([0.15 * np.log(K[:, :-1:4] + 1e-3), 2 * colour], axis=1)


def _grow(
    features: Floats, members: Indices, halves: list[tuple[int, int]], out: list[Indices]
) -> int:
    """Add a group and, until they are single paints, its halves; give its index."""
    here = len(out)
    out.append(members)
    halves.append((-1, -1))
    if len(members) > 1:
        first, second = _halved(features[members])
        halves[here] = (
            _grow(features, members[first], halves, out),
            _grow(features, members[second], halves, out),
        )
    return here


def _halved(features: Floats) -> tuple[Indices, Indices]:
    """Cut along the direction in which they differ most, at the widest gap near the middle."""
    off = features - features.mean(axis=0)
    along = off @ np.linalg.svd(off, full_matrices=False)[2][0]
    order = np.argsort(along, kind="stable")
    n = len(order)
    cuts = np.arange(max(1, n // 4), max(2, n - n // 4))
    cut = int(cuts[np.argmax(np.diff(along[order])[cuts - 1])])
    return order[:cut], order[cut:]
