"""All that a fit is given, as arrays, and where each of its unknowns stands in one vector."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.paint.fit.fitted import FittedPaint
from swatchwright.paint.fit.prior import Errors, Prior, Surface, basis
from swatchwright.paint.fit.readings import BrushOut, Reading
from swatchwright.paint.surface import inner_reflectance

__all__ = ["Layout", "Problem", "build"]

Floats = NDArray[np.floating[Any]]
Ints = NDArray[np.intp]

BANDS = WAVELENGTHS.size

# A film that hides has this many units of thickness; the film formula is stable there.
_HIDING = 1e6


@dataclass(frozen=True, slots=True)
class Layout:
    """Where each unknown stands: logarithms of K and S band by band, then all others.

    Parameters
    ----------
    paints, films, colorants
        How many of each.
    """

    paints: int
    films: int
    colorants: int
    spectra: int = field(init=False)
    thickness: slice = field(init=False)
    share: slice = field(init=False)
    glare: slice = field(init=False)
    volume: slice = field(init=False)
    paint_glare: slice = field(init=False)
    amounts: slice = field(init=False)
    others: int = field(init=False)

    def __post_init__(self) -> None:
        put = object.__setattr__
        put(self, "spectra", BANDS * 2 * self.paints)
        start = 0
        for name, size in (
            ("thickness", self.films),
            ("share", self.films),
            ("glare", self.films),
            ("volume", self.paints),
            ("paint_glare", self.paints),
            ("amounts", self.paints * self.colorants),
        ):
            put(self, name, slice(start, start + size))
            start += size
        put(self, "others", start)

    @property
    def size(self) -> int:
        """How many unknowns there are."""
        return self.spectra + self.others

    def amounts_of(self, paint: int) -> Ints:
        """Give the places (colorants,) of the logarithms of a paint's amounts."""
        first = self.spectra + self.amounts.start + paint * self.colorants
        return np.arange(first, first + self.colorants)

    def index(self) -> Ints:
        """Give the places (36, 2 paints) of log K of each paint, then of log S."""
        return np.arange(self.spectra).reshape(BANDS, 2 * self.paints)


@dataclass(frozen=True, slots=True, eq=False)
class Problem:
    """A fit's input: n films of p paints (the unknown ones first), m readings.

    Parameters
    ----------
    names
        The paints, unknown ones first.
    layout
        Where the unknowns stand.
    log_K, log_S, log_volume, known_glare
        Of the known paints: (k, 36), (k, 36), (k,), (k,).
    shares, minor
        (n, p) shares, and which paint of each film is least.
    thickness, thickness_spread, share_spread
        (n,).
    film, ground
        (m,) which film was read, (m, 36) reflectance of what is under it, inside.
    cube_root, weight
        (m, 36) read spectra and what their errors are divided by; weight 0 where there is none.
    coloured, lab, whiten
        (c,) which readings are colours; (c, 3) they; (c, 3, 3) inverse root of their covariance.
    """

    names: tuple[str, ...]
    layout: Layout
    prior: Prior
    surface: Surface
    errors: Errors
    log_K: Floats
    log_S: Floats
    log_volume: Floats
    known_glare: Floats
    shares: Floats
    minor: Ints
    thickness: Floats
    thickness_spread: Floats
    share_spread: Floats
    film: Ints
    ground: Floats
    cube_root: Floats
    weight: Floats
    coloured: Ints
    lab: Floats
    whiten: Floats


def build(
    brush_outs: Sequence[BrushOut],
    known: Mapping[str, FittedPaint],
    *,
    prior: Prior,
    surface: Surface,
    errors: Errors,
) -> Problem:
    """Lay brush-outs out as arrays; paints that are not known are to be found."""
    met = dict.fromkeys(name for b in brush_outs for name, part in b.shares.items() if part > 0)
    unknown = [name for name in met if name not in known]
    names = (*unknown, *(name for name in met if name in known))
    shares = np.array([[b.shares.get(name, 0.0) for name in names] for b in brush_outs])
    shares = shares / shares.sum(axis=1, keepdims=True)
    mixed = (shares > 0).sum(axis=1) > 1
    hides = np.array([all(r.ground is None for r in b.readings) for b in brush_outs])
    readings = [(i, r) for i, b in enumerate(brush_outs) for r in b.readings]
    colours = [
        j for j, (_, r) in enumerate(readings) if r.reflectance is None and r.lab is not None
    ]
    target, weight = _spectra([r for _, r in readings], errors)
    own = [known[name] for name in names[len(unknown) :]]
    return Problem(
        names=names,
        layout=Layout(len(unknown), len(brush_outs), len(basis()[0]) if prior.colorants else 0),
        prior=prior,
        surface=surface,
        errors=errors,
        log_K=np.log([np.maximum(p.K, 1e-9) for p in own]).reshape(-1, BANDS),
        log_S=np.log([np.maximum(p.S, 1e-9) for p in own]).reshape(-1, BANDS),
        log_volume=np.log([p.volume for p in own]),
        known_glare=np.array([p.glare for p in own], dtype=np.float64),
        shares=shares,
        minor=np.argmin(np.where(shares > 0, shares, 2.0), axis=1),
        thickness=np.where(hides, _HIDING, [b.thickness for b in brush_outs]),
        thickness_spread=np.where(hides, 1e-3, [b.thickness_spread for b in brush_outs]),
        share_spread=np.where(mixed, errors.share, 1e-4),
        film=np.array([i for i, _ in readings], dtype=np.intp),
        ground=np.array([_inside(r, surface) for _, r in readings]).reshape(-1, BANDS),
        cube_root=target,
        weight=weight,
        coloured=np.array(colours, dtype=np.intp),
        lab=np.array([readings[j][1].lab for j in colours], dtype=np.float64).reshape(-1, 3),
        whiten=np.array([_whiten(readings[j][1], errors) for j in colours]).reshape(-1, 3, 3),
    )


def _inside(reading: Reading, surface: Surface) -> Floats:
    """Give the ground's reflectance as the film on it sees it."""
    if reading.ground is None:
        return np.full(BANDS, 0.5)
    seen = np.where(np.isfinite(reading.ground), reading.ground, 0.5)
    inside = inner_reflectance(seen, surface.ground_k1, surface.k2)
    return np.asarray(np.clip(inside, 1e-4, 0.999))


def _spectra(readings: Sequence[Reading], errors: Errors) -> tuple[Floats, Floats]:
    """Give the cube roots of spectra, and the inverse of their standard deviation.

    The eye judges about by the cube root, so darks count as they are seen.
    """
    none = np.full(BANDS, np.nan)
    read = np.array([none if r.reflectance is None else r.reflectance for r in readings])
    there = np.isfinite(read).reshape(-1, BANDS)
    root = np.cbrt(np.maximum(np.where(there, read.reshape(-1, BANDS), 1.0), 1e-4))
    # A reading of nearly nothing has an endless slope on the cube root: it is held.
    noise = errors.reading / (3.0 * np.maximum(root, 0.15) ** 2)
    return root, np.where(there, 1.0 / np.hypot(errors.formula, noise), 0.0)


def _whiten(reading: Reading, errors: Errors) -> Floats:
    """Give the matrix that turns a colour's error into three of unit variance."""
    own = np.zeros((3, 3)) if reading.covariance is None else np.asarray(reading.covariance)
    full = own + errors.colour**2 * np.eye(3)
    return np.asarray(np.linalg.inv(np.linalg.cholesky(full)))
