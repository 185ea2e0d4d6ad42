"""The colour of layers over a coat: films of paint and clear finishes stacked, wet or dry.

Every film of paint is a Kubelka-Munk film; clear finishes between films or on top are plane layers
that light crosses (see `paint.clear`). They are put together from the bottom up. A clear finish
fills the pores of the paint below it; so does the water of a wash while it is wet. Everything
broadcasts: K and S over (..., 36), the rest over (...).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any, TypeAlias

import numpy as np
from numpy.typing import ArrayLike, NDArray

from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.paint.clear import ClearFinish, clear_coats, soaked
from swatchwright.paint.film import film_reflectance, reflectance_of_ratio
from swatchwright.paint.mixture import DRY_INDEX, OIL_INDEX, WATER_INDEX, Mixtures
from swatchwright.paint.slabs import Slab, on_ground, step_slab
from swatchwright.paint.surface import inner_reflectance, internal_diffuse, normal_reflectance
from swatchwright.paint.wash import Wash, dry_film

__all__ = [
    "Base",
    "Clear",
    "Coat",
    "Film",
    "base_of",
    "film_of",
    "glare_of",
    "look_of",
    "primer_inside",
]

Floats = NDArray[np.floating[Any]]

# A film this thick has its own sheen by half and more: about the roughness of a matte surface, mm.
# Common practice, no source.
_OWN_SHEEN = 0.005

# As the milk of wet emulsion falls with the wavelength, see `paint.mixture`.
_MILK_SHAPE = (550.0 / WAVELENGTHS) ** 3

_WATER_FILLS = ClearFinish(WATER_INDEX, glare=0.0, fills=1.0)


@dataclass(frozen=True, slots=True, eq=False)
class Film:
    """A film of dry paint.

    Parameters
    ----------
    K, S
        (..., 36) per mm.
    thickness
        (...) of all passes, mm, on the mean; infinity only for a base.
    glare, wet_scattering, milk
        (...) of the paint, as `paint.family` has them.
    wet_index
        (...) refractive index of it while it is wet.
    last
        Share of the thickness that the last pass laid, 0-1: what is wet while it is wet.
    grain
        How far its thickness follows the grain, 0 not at all to 1 wholly.
    """

    K: Floats
    S: Floats
    thickness: ArrayLike
    glare: ArrayLike
    wet_scattering: ArrayLike
    milk: ArrayLike
    wet_index: ArrayLike
    last: float = 1.0
    grain: float = 1.0


@dataclass(frozen=True, slots=True, eq=False)
class Clear:
    """A clear finish and how many coats of it."""

    finish: ClearFinish
    coats: float = 1.0
    grain: float = 0.0


Coat: TypeAlias = "Film | Clear"
"""What may lie on a base."""


@dataclass(frozen=True, slots=True, eq=False)
class Base:
    """The coat below all layers.

    Parameters
    ----------
    film
        The coat; of infinite thickness where it hides.
    under
        (..., 36) reflectance inside what is below it; None where it hides.
    """

    film: Film
    under: Floats | None = None


def film_of(mixture: Mixtures, wash: Wash, *, wet_film: ArrayLike | None = None) -> Film:
    """Make the film that a wash of a mixture leaves.

    Parameters
    ----------
    mixture
        Of n paints or mixtures.
    wash
        How it is thinned, wiped and laid.
    wet_film
        Thickness of one wet pass as laid, mm; the spreading rate's if None.
    """
    laid = mixture.wet_film if wet_film is None else np.asarray(wet_film, dtype=np.float64)
    return Film(
        mixture.K,
        mixture.S,
        dry_film(wash, laid, mixture.solids),
        mixture.glare,
        mixture.wet_scattering,
        mixture.milk,
        _wet_index(mixture, wash.water),
        last=1.0 / max(wash.passes, 1),
    )


def _wet_index(mixture: Mixtures, water: float) -> Floats:
    """Give the index of the wet film: its liquid's and its solids' by volume."""
    liquid = np.where(mixture.waterborne >= 0.5, WATER_INDEX, OIL_INDEX)
    return np.asarray(liquid + (DRY_INDEX - liquid) * mixture.solids / (1.0 + water))


def base_of(
    mixture: Mixtures, *, primer: ArrayLike | None = None, coats: float | None = None
) -> Base:
    """Make the coat below all layers.

    Parameters
    ----------
    mixture
        What it is of.
    primer
        (36,) reflectance inside the primer, see `primer_inside`; None for a coat that hides.
    coats
        How many coats there are over the primer.
    """
    film = film_of(mixture, Wash(water=0.0))
    if primer is None or coats is None:
        return Base(replace(film, thickness=np.inf))
    thick = np.asarray(film.thickness) * coats
    return Base(replace(film, thickness=thick), np.asarray(primer, dtype=np.float64))


def primer_inside(seen: ArrayLike) -> Floats:
    """Give the reflectance (36,) inside a matte primer from the one that is seen."""
    k1, k2 = normal_reflectance(DRY_INDEX), internal_diffuse(DRY_INDEX)
    return np.clip(inner_reflectance(seen, k1, k2, 1.0), 0.0, 1.0)


def look_of(
    base: Base, coats: Sequence[Coat], *, factor: ArrayLike = 1.0, wet: bool = False
) -> Floats:
    """Give the reflectance factor (..., 36) of a coat under layers.

    Parameters
    ----------
    base
        The coat.
    coats
        What lies on it, the lowest first.
    factor
        (...) thickness of what follows the grain, as a factor on its mean: 0.3 on the flat, 1.7
        in the grain.
    wet
        As the uppermost looks while it is wet, seen away from the glint. Its water fills the pores
        of the paint below it, down to the next clear finish.
    """
    fills = _fills(coats, wet=wet)
    R = _of_base(base, fills[0], wet=wet and not coats)
    clear: list[Clear] = []
    for i, (coat, fill) in enumerate(zip(coats, fills[1:], strict=True), 1):
        if isinstance(coat, Clear):
            clear.append(coat)
            continue
        if clear:
            R = on_ground(_clear_slab(clear, factor, above=DRY_INDEX), R)
            clear = []
        thick = np.asarray(coat.thickness) * _by_grain(coat.grain, factor)
        R = _under_film(coat, thick, R, fill, wet=wet and i == len(coats))
    shown = np.zeros(1) if wet else glare_of(base, coats, factor=factor)[..., None]
    top = (
        _clear_slab(clear, factor, glare=shown) if clear else _surface(base, coats, shown, wet=wet)
    )
    # What does not follow the grain is alike at every thickness.
    return on_ground(top, R) + np.zeros_like(factor, dtype=np.float64)[..., None]


def glare_of(base: Base, coats: Sequence[Coat], *, factor: ArrayLike = 1.0) -> Floats:
    """Give the share (...) of the dry surface's own reflection that is seen: 1 matte, 0 gloss.

    A clear finish brings its own; a film of paint takes over as it grows.
    """
    glare = np.asarray(base.film.glare, dtype=np.float64)
    for coat in coats:
        if isinstance(coat, Clear):
            glare = np.asarray(coat.finish.glare, dtype=np.float64)
            continue
        thick = np.asarray(coat.thickness) * _by_grain(coat.grain, factor)
        own = 1.0 - np.exp(-thick / _OWN_SHEEN)
        glare = glare + own * (np.asarray(coat.glare) - glare)
    return glare


def _surface(base: Base, coats: Sequence[Coat], glare: Floats, *, wet: bool) -> Slab:
    """Make the step from air into paint, into its wet film if it is wet."""
    top = coats[-1] if coats else base.film
    index: ArrayLike = DRY_INDEX
    if wet and isinstance(top, Film):
        index = np.asarray(top.wet_index)[..., None]
    return step_slab(1.0, index, beam=True, glare=glare)


def _clear_slab(
    clear: Sequence[Clear], factor: ArrayLike, *, above: float = 1.0, glare: ArrayLike = 1.0
) -> Slab:
    """Make the slab of clear finishes on each other, given the lowest first."""
    down = clear[::-1]
    depths = [c.finish.depth(c.coats) * _by_grain(c.grain, factor)[..., None] for c in down]
    indices = [c.finish.index for c in down]
    return clear_coats(indices, depths, above=above, below=DRY_INDEX, glare=glare)


def _by_grain(follows: float, factor: ArrayLike) -> Floats:
    return np.asarray(1.0 + follows * (np.asarray(factor, dtype=np.float64) - 1.0))


def _fills(coats: Sequence[Coat], *, wet: bool) -> list[ClearFinish | None]:
    """Say what fills the pores of the base and of each coat: the next clear finish above it."""
    found: list[ClearFinish | None] = []
    filling = _WATER_FILLS if wet else None
    for coat in reversed(coats):
        found.append(filling)
        filling = coat.finish if isinstance(coat, Clear) and coat.coats > 0 else filling
    return [filling, *reversed(found)]


def _scattering(film: Film, fill: ClearFinish | None, *, wet: bool) -> Floats:
    """Give S of a film that is wet itself, or dry with its pores filled by something or by air."""
    if wet:
        milk = np.asarray(film.milk)[..., None] * _MILK_SHAPE
        return np.asarray(film.S * np.asarray(film.wet_scattering)[..., None] + milk)
    return film.S if fill is None else soaked(film.S, film.wet_scattering, fill)


def _of_base(base: Base, fill: ClearFinish | None, *, wet: bool) -> Floats:
    S = _scattering(base.film, fill, wet=wet)
    if base.under is None:
        return reflectance_of_ratio(base.film.K / S)
    thick = np.asarray(base.film.thickness)[..., None]
    return film_reflectance(base.film.K, S, thick, base.under)


def _under_film(
    film: Film, thick: Floats, R: Floats, fill: ClearFinish | None, *, wet: bool
) -> Floats:
    """Lay a film, its last pass wet if it is, on what has reflectance R."""
    parts = ((1.0 - film.last, False), (film.last, True)) if wet else ((1.0, False),)
    for share, is_wet in parts:
        if share > 0:
            S = _scattering(film, fill, wet=is_wet)
            R = film_reflectance(film.K, S, share * thick[..., None], R)
    return R
