"""What is believed of the paints of a shelf, as arrays, and what that says of any mix of them.

ln K and ln S of each paint are its own plus a sum of independent directions, its spread. A mix's
colour then has a slope along each direction, as in any propagation of errors.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cache, lru_cache
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.spectrum import WAVELENGTHS, lab_of
from swatchwright.paint.film import reflectance_of_ratio
from swatchwright.paint.fit.model import colour_slope
from swatchwright.paint.fit.prior import Bend
from swatchwright.paint.mixture import DRY_INDEX
from swatchwright.paint.paints import HowKnown, Paint
from swatchwright.paint.surface import internal_diffuse, normal_reflectance, seen_reflectance

__all__ = ["Believed", "Looked", "believed", "usual_spread"]

Floats = NDArray[np.floating[Any]]
Indices = NDArray[np.intp]

_K1 = float(normal_reflectance(DRY_INDEX))
_K2 = float(internal_diffuse(DRY_INDEX))
_BANDS = WAVELENGTHS.size

# Directions of a spread that are kept: those after them change no colour that could be seen.
_DIRECTIONS = 24

# How far ln K and ln S may be off where only the kind of knowledge is told: level and shape of
# both, and the error of the one colour that a guess went by, units of CIELAB. Set so that mixes of
# the demonstration shelf are off by what is usual for the kind (acts/confidence.py).
_FITTED = (Bend(0.16, 0.22, 50.0), Bend(0.16, 0.16, 50.0), 3.0)
_GUESSED = (Bend(1.2, 0.9, 50.0), Bend(1.2, 0.7, 50.0), 3.0)
_KINDS = {
    HowKnown.MEASURED: _FITTED,
    HowKnown.FITTED: _FITTED,
    HowKnown.GUESSED: _GUESSED,
    # An invented paint is what it is said to be, until a sample says otherwise.
    HowKnown.INVENTED: _FITTED,
}

_LEAST = 1e-9


@dataclass(frozen=True, slots=True, eq=False)
class Looked:
    """Mixes as they are believed to look.

    Parameters
    ----------
    lab
        (n, 3) dry colours.
    pushed
        (n, k, d, 3) what each direction of each paint's spread does to them.
    poured
        (n, k, 3) what more of each paint does to them, by the logarithm of its amount; that
        sheens differ is left out.
    """

    lab: Floats
    pushed: Floats
    poured: Floats


@dataclass(frozen=True, slots=True, eq=False)
class Believed:
    """Paints as arrays.

    Parameters
    ----------
    paints
        The paints.
    log_K, log_S
        (p, 36).
    spread
        (p, d, 72) independent directions of one standard deviation, of ln K and ln S.
    solids, glare
        (p,) as in `PaintStack`.
    """

    paints: tuple[Paint, ...]
    log_K: Floats
    log_S: Floats
    spread: Floats
    solids: Floats
    glare: Floats

    def moved(self, steps: Floats) -> Believed:
        """Give the paints that many standard deviations (p, d) along their directions."""
        off = np.einsum("pd,pdb->pb", steps, self.spread)
        return replace(self, log_K=self.log_K + off[:, :_BANDS], log_S=self.log_S + off[:, _BANDS:])

    def labs(self, which: Indices, shares: Floats) -> Floats:
        """Give the dry colours (n, 3) of mixes, as `look` does, and nothing else."""
        return np.asarray(lab_of(self._reflectance(which, shares)[0]))

    def look(self, which: Indices, shares: Floats) -> Looked:
        """Look at mixes: paints (n, k) and their shares of the wet volume (n, k), 0 or more."""
        R, K, S, dry, inside = self._reflectance(which, shares)
        of_K = dry[..., None] * np.exp(self.log_K[which]) / K[:, None]
        of_S = dry[..., None] * np.exp(self.log_S[which]) / S[:, None]
        slope = _by_log_ratio(K / S, inside)[:, None] * colour_slope(R)
        by = np.concatenate(
            [slope[:, None] * of_K[:, :, None], -slope[:, None] * of_S[:, :, None]], axis=-1
        )
        spread = np.swapaxes(self.spread[which], -1, -2)
        return Looked(
            lab=np.asarray(lab_of(R)),
            pushed=np.swapaxes(by @ spread, -1, -2),
            poured=np.einsum("ncb,nkb->nkc", slope, of_K - of_S),
        )

    def drawn(self, which: Indices, shares: Floats, steps: Floats) -> Floats:
        """Give dry colours (n, 3) of mixes, of paints (n, k, d) steps along their directions."""
        off = np.einsum("nkd,nkdb->nkb", steps, self.spread[which])
        return np.asarray(lab_of(self._reflectance(which, shares, off)[0]))

    def _reflectance(
        self, which: Indices, shares: Floats, off: Floats | None = None
    ) -> tuple[Floats, Floats, Floats, Floats, Floats]:
        """Give reflectance, K and S (n, 36), shares of the dry film (n, k), reflectance inside."""
        log_K, log_S = self.log_K[which], self.log_S[which]
        if off is not None:
            log_K, log_S = log_K + off[..., :_BANDS], log_S + off[..., _BANDS:]
        dry = shares * self.solids[which]
        dry = dry / dry.sum(axis=1, keepdims=True)
        K = np.maximum(np.einsum("nk,nkb->nb", dry, np.exp(log_K)), 1e-12)
        S = np.einsum("nk,nkb->nb", dry, np.exp(log_S))
        inside = reflectance_of_ratio(K / S)
        glare = (dry * self.glare[which]).sum(axis=1)
        R = seen_reflectance(inside, _K1, _K2, glare[:, None])
        return R, K, S, dry, inside

    def paint(self, index: int, spread: Floats) -> Paint:
        """Give a paint as it is believed to be, with what is left of its spread."""
        return replace(
            self.paints[index],
            K=np.exp(self.log_K[index]),
            S=np.exp(self.log_S[index]),
            spread=np.ascontiguousarray(spread),
        )


def _by_log_ratio(q: Floats, inside: Floats) -> Floats:
    """Give how the reflectance that is seen (n, 36) changes with the logarithm of K/S."""
    by_log = -(inside**2) * (q + (q + 1.0) * np.sqrt(q / (q + 2.0)))
    return np.asarray((1.0 - _K1) * (1.0 - _K2) / (1.0 - _K2 * inside) ** 2 * by_log)


def believed(paints: Sequence[Paint]) -> Believed:
    """Take paints as they are known: by their spread, or by what is usual for how they are."""
    return Believed(
        paints=tuple(paints),
        log_K=np.log(np.maximum([p.K for p in paints], _LEAST)),
        log_S=np.log(np.maximum([p.S for p in paints], _LEAST)),
        spread=np.array([_directions(paint) for paint in paints]),
        solids=np.array([p.volume_solids for p in paints]),
        glare=np.array([p.finish.glare for p in paints]),
    )


@lru_cache(maxsize=256)
def _directions(paint: Paint) -> Floats:
    """Give the foremost directions (d, 72) of a paint's spread, the widest first."""
    spread = usual_spread(paint) if paint.spread is None else np.asarray(paint.spread)
    kept = np.zeros((_DIRECTIONS, 2 * _BANDS))
    if len(spread):
        _, ways = np.linalg.eigh(spread @ spread.T)
        foremost = (ways[:, ::-1].T @ spread)[:_DIRECTIONS]
        kept[: len(foremost)] = foremost
    return kept


def usual_spread(paint: Paint) -> Floats:
    """Give the spread (d, 72) of a paint of which only the kind of knowledge is told.

    Its own colour is known far better than how it mixes: what would change it is taken out.
    """
    of_K, of_S, error = _KINDS[paint.how_known]
    before = _blocks(of_K, of_S)
    slope = _own_slope(paint)
    told = slope @ before @ slope.T + error**2 * np.eye(3)
    after = before - before @ slope.T @ np.linalg.solve(told, slope @ before)
    sizes, ways = np.linalg.eigh((after + after.T) / 2)
    return np.asarray((ways * np.sqrt(np.maximum(sizes, 0.0))).T[: -_DIRECTIONS - 1 : -1])


@cache
def _blocks(of_K: Bend, of_S: Bend) -> Floats:
    none = np.zeros((_BANDS, _BANDS))
    return np.block([[of_K.covariance(), none], [none, of_S.covariance()]])


def _own_slope(paint: Paint) -> Floats:
    """Give how a paint's own colour (3, 72) changes with its ln K and ln S."""
    q = np.maximum(paint.K, _LEAST) / np.maximum(paint.S, _LEAST)
    inside = reflectance_of_ratio(q)
    seen = seen_reflectance(inside, _K1, _K2, paint.finish.glare)
    slope = _by_log_ratio(q, inside) * colour_slope(seen)
    return np.concatenate([slope, -slope], axis=-1)
