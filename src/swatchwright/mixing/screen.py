"""A quick score of every set of paints, to choose those worth solving.

About a mixture that is near the wanted colour the colour of any other is nearly linear: a paint
pulls by J (K - q S), q being K/S of that mixture, and what a set of paints can reach is the
segment or triangle between its paints' pulls. Its distance from the wanted colour is a closed
formula of six dot products, so millions of sets are scored in a second.

References
----------
Allen 1974, J. Opt. Soc. Am. 64:991 (linear in K and S about a match); Ericson 2005, Real-Time
Collision Detection, ch. 5 (a point and a triangle). See docs/bibliography.md.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.convert import xyz_to_lab
from swatchwright.colour.difference import delta_e_terms
from swatchwright.mixing.allowed import Allowed
from swatchwright.mixing.groups import K1, K2, THROUGH, band_weights, seen_of_bands
from swatchwright.mixing.smooth import smoothest_reflectance
from swatchwright.paint.film import ratio_of_reflectance
from swatchwright.paint.paints import PaintStack
from swatchwright.paint.surface import inner_reflectance
from swatchwright.values import Lab

__all__ = ["Pulls", "best_sets", "pulls_about", "pulls_about_smoothest"]

Floats = NDArray[np.floating[Any]]
Indices = NDArray[np.intp]


@dataclass(frozen=True, slots=True, eq=False)
class Pulls:
    """Where each paint pulls from the wanted colour, (p, 3), in units of the difference."""

    vectors: Floats


def pulls_about(
    paints: PaintStack, wanted: Lab, which: Indices, shares: Floats, *, far: bool
) -> Pulls:
    """Take the pulls about a mixture: paints (k,) and shares (k,) of wet volume."""
    dry = shares * paints.solids[which]
    K, S = dry @ paints.K[which], dry @ paints.S[which]
    glare = float(dry @ paints.glare[which] / dry.sum())
    return _pulls(paints, wanted, np.append(K / S, glare), S / S.mean(), far=far)


def pulls_about_smoothest(paints: PaintStack, wanted: Lab, *, far: bool) -> Pulls:
    """Take the pulls about the smoothest reflectance of the wanted colour."""
    glare = float(paints.glare.mean())
    inside = inner_reflectance(smoothest_reflectance(wanted), K1, K2, glare)
    q = ratio_of_reflectance(np.clip(inside, 0.005, 0.97))
    S = (paints.S / paints.S.mean(axis=1, keepdims=True)).mean(axis=0)
    return _pulls(paints, wanted, np.append(q, glare), S, far=far)


def _terms(wanted: Lab, bands: Floats, *, far: bool) -> Floats:
    dL, dC, dH, rotation = delta_e_terms(wanted.triple, xyz_to_lab(bands @ band_weights()))
    if far:
        return np.stack([dL, dC, dH], axis=-1)
    upright = np.sqrt(np.maximum(1 - rotation**2 / 4, 0))
    return np.stack([dL, dC + rotation / 2 * dH, upright * dH], axis=-1)


def _pulls(paints: PaintStack, wanted: Lab, q: Floats, shape: Floats, *, far: bool) -> Pulls:
    """Take the pulls about a K/S in 37 bands, with the scattering's shape over the spectrum."""
    seen = seen_of_bands(q)
    here = _terms(wanted, seen, far=far)
    step = 1e-4 * (seen + 0.01)
    slope = (_terms(wanted, seen + np.diag(step), far=far) - here) / step[:, None]
    R = 1 / (THROUGH / seen[:-1] + K2)
    slope[:-1] *= (-THROUGH / (1 - K2 * R) ** 2 * 2 * R**2 / np.maximum(1 - R**2, 1e-3))[:, None]
    solids = paints.solids[:, None]
    K, S = paints.K * solids, paints.S * solids
    telling = np.abs(slope[:-1]).sum(axis=1)
    scattering = (S / shape) @ telling / telling.sum()
    off = (K - q[:-1] * S) / shape / scattering[:, None]
    glare = (paints.glare - q[-1]) * paints.solids / scattering
    # Glare is a mean by dry volume: by scattering where all paints scatter alike for their volume.
    glare *= float((scattering / paints.solids).mean())
    return Pulls(off @ slope[:-1] + glare[:, None] * slope[-1] + here)


def best_sets(
    pulls: Pulls, allowed: Allowed, size: int, count: int, tell: Callable[[float], None]
) -> Indices:
    """Score all sets of two or three paints and give the best, (m, size) with m up to `count`.

    Parameters
    ----------
    pulls
        From `pulls_about`.
    allowed
        Which sets may meet.
    size
        2 or 3.
    count
        How many to give.
    tell
        Told the share done, and raises to stop.
    """
    dots = pulls.vectors @ pulls.vectors.T
    own = np.diag(dots)
    edges = _segment(own[:, None], dots, own[None, :])
    kept_rows: list[Indices] = [np.empty((0, size), dtype=np.intp)]
    kept_scores: list[Floats] = [np.empty(0)]
    worst = np.inf
    draws = [d for d in allowed.draws if len(d) == size]
    steps = sum(len(allowed.pools[d[0]]) for d in draws)
    done = 0
    for draw in draws:
        for block in allowed.blocks(draw):
            done += 1
            score = _score(dots, edges, block)
            good = np.flatnonzero(score < worst)
            kept_rows.append(block[good])
            kept_scores.append(score[good])
            if sum(map(len, kept_scores)) > 8 * count:
                rows, scores = np.concatenate(kept_rows), np.concatenate(kept_scores)
                best = np.argpartition(scores, count)[:count]
                kept_rows, kept_scores = [rows[best]], [scores[best]]
                worst = float(scores[best].max())
            tell(done / steps)
    rows, scores = np.concatenate(kept_rows), np.concatenate(kept_scores)
    return np.sort(rows[np.argsort(scores, kind="stable")[:count]], axis=1)


def _segment(aa: Floats, ab: Floats, bb: Floats) -> Floats:
    """Give the squared distance of the origin from segments, by dot products of their ends."""
    long = aa - 2 * ab + bb
    at = np.clip((aa - ab) / np.where(long > 1e-12, long, 1.0), 0.0, 1.0)
    return np.asarray(np.maximum(aa + at * (at * long - 2 * (aa - ab)), 0.0))


def _score(dots: Floats, edges: Floats, rows: Indices) -> Floats:
    """Score sets of two or three paints."""
    if rows.shape[1] == 2:
        return np.asarray(edges[rows[:, 0], rows[:, 1]])
    return _triangle(dots, edges, rows)


def _triangle(dots: Floats, edges: Floats, rows: Indices) -> Floats:
    """Give the squared distance of the origin from triangles of pulls."""
    i, j, k = rows.T
    ii, ij, ik, jk = dots[i, i], dots[i, j], dots[i, k], dots[j, k]
    jj, kk = dots[j, j], dots[k, k]
    e11, e22, e12 = ii - 2 * ij + jj, ii - 2 * ik + kk, ii - ij - ik + jk
    p1, p2 = ii - ij, ii - ik
    area = e11 * e22 - e12 * e12
    safe = np.where(area > 1e-12, area, 1.0)
    s, t = (e22 * p1 - e12 * p2) / safe, (e11 * p2 - e12 * p1) / safe
    inside = (s >= 0) & (t >= 0) & (s + t <= 1) & (area > 1e-12)
    rim = np.minimum(np.minimum(edges[i, j], edges[i, k]), edges[j, k])
    return np.asarray(np.where(inside, np.maximum(ii - s * p1 - t * p2, 0.0), rim))
