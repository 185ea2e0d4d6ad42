"""Take the old paint off a photo, and put a new one into the same light and shade.

What a surface sends to the camera is its colour times the light that falls on it, and over that
some light that it throws back unchanged, from its gloss [Shafer1985]. The colour of the old paint
is that of the marks; what a pixel has of it is the light there; what it has beside it, whitish and
lighter than its surroundings, is gloss. A new paint takes the place of the old in the first part
only, so shades stay shades, gaps stay dark, and highlights stay where they were.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.photo.repaint_colours import LUMINANCE
from swatchwright.photo.repaint_worn import lighter_where_worn, worn

__all__ = ["Coat", "Looks", "coats_of", "looks", "painted"]

Floats = NDArray[np.floating[Any]]

_DARKEST = 1e-3
_BRIGHT = 90
"""Percentile of the light of a zone that counts as the paint fully lit: what is lit less is
shaded, and what is above are highlights and noise."""

_SAME_HUE, _SAME_LEVEL = 0.12, 1.6
_SURE, _HARDLY = 0.06, 0.015
_SPREADS = 2.5
_LIGHTER = (1.02, 1.30)
_GREY_LIGHTER = 1.35
_MOST_LIGHT = 4.0
_WINDOW = 41


@dataclass(frozen=True, slots=True, eq=False)
class Coat:
    """The old paint of a zone.

    Parameters
    ----------
    hue
        Its linear sRGB, shape (3,), at a luminance of 1.
    level
        Its luminance where it is fully lit.
    whitish
        Share of its light that looks whitish without gloss: the usual, and beyond which it counts.
    worn
        How much lighter what shows through worn patches is than the paint.
    """

    hue: Floats
    level: float
    whitish: tuple[float, float]
    worn: float = 1.0

    @property
    def telling(self) -> float:
        """How far gloss can be told by its colour, 0 for a grey paint, to 1."""
        share = 1 - 1 / float(self.hue @ self.hue) * float(self.hue.sum()) ** 2 / 3
        return float(np.clip((share - _HARDLY) / (_SURE - _HARDLY), 0.0, 1.0))


@dataclass(frozen=True, slots=True, eq=False)
class Looks:
    """A part of a picture taken apart.

    Parameters
    ----------
    light
        The picture, linear sRGB, shape (rows, columns, 3).
    masks
        How much of each pixel is of each zone, shape (zones, rows, columns).
    shade
        The light that falls on each zone, 1 where it is fully lit, shape of the masks.
    gloss
        The light thrown back unchanged, shape of the masks.
    """

    light: Floats
    masks: Floats
    shade: Floats
    gloss: Floats

    def rows(self, part: slice) -> Looks:
        """Give some of its rows."""
        return Looks(
            self.light[part], self.masks[:, part], self.shade[:, part], self.gloss[:, part]
        )


# --- the old paint -------------------------------------------------------------------------------


def coats_of(light: Floats, masks: Floats, marks: NDArray[np.uint8]) -> tuple[Coat, ...]:
    """Find the old paint of each zone.

    Parameters
    ----------
    light
        Linear sRGB, shape (rows, columns, 3).
    masks
        How much of each pixel is of each zone, shape (zones, rows, columns).
    marks
        The strokes as labels, shape (rows, columns).

    Returns
    -------
    One for each zone. Zones of one hue and nearly one lightness are taken to be of one paint, and
    what is the darker of them to be in less light.
    """
    around = surroundings(light, masks)
    found = [_coat(light, mask, marks == label, around[label]) for label, mask in enumerate(masks)]
    return tuple(_as_one(coat, found) for coat in found)


def _coat(light: Floats, mask: Floats, marked: NDArray[np.bool_], around: Floats) -> Coat:
    hue = np.median(light[marked], axis=0) if marked.any() else np.full(3, 0.2)
    hue = np.maximum(hue, _DARKEST)
    hue = (hue / float(hue @ LUMINANCE)).astype(np.float32)
    patch, inside = worn(light, hue), (mask > 0.99) | marked
    sound = inside & (patch < 0.5)
    core = light[sound]
    Y = core @ LUMINANCE
    seen = max(_DARKEST, 0.1 * float(np.median(Y))) < Y
    shares = _whitish(core[seen], Y[seen], hue)
    # Gloss only ever adds to it, so the lower half of the shares tells what is noise.
    lower, usual = np.percentile(shares, (16, 50)) if shares.size else (0.0, 0.0)
    spread = float(usual - lower)
    plain = Coat(hue, 1.0, (float(usual), float(usual) + _SPREADS * spread + 0.01))
    gloss = _gloss(light, plain, around)
    diffuse = (light @ LUMINANCE - gloss)[sound]
    level = float(np.percentile(diffuse, _BRIGHT)) if diffuse.size else 0.2
    lighter = lighter_where_worn(light, inside, patch)
    return Coat(hue, max(level, _DARKEST), plain.whitish, lighter)


def _as_one(coat: Coat, others: Sequence[Coat]) -> Coat:
    """Give a coat the level of the best lit zone of the same paint."""
    levels = [coat.level]
    for other in others:
        apart = np.abs(np.log(coat.hue / other.hue)).max()
        ratio = max(coat.level, other.level) / min(coat.level, other.level)
        if apart < _SAME_HUE and ratio < _SAME_LEVEL:
            levels.append(other.level)
    return replace(coat, level=max(levels))


# --- light and gloss -----------------------------------------------------------------------------


def surroundings(light: Floats, masks: Floats) -> Floats:
    """Give the usual luminance of each zone about each pixel, shape of the masks."""
    from scipy.ndimage import uniform_filter

    Y = np.log(np.maximum(light @ LUMINANCE, _DARKEST))
    around = np.empty_like(masks)
    for place, mask in enumerate(masks):
        weight = uniform_filter(mask, _WINDOW, mode="nearest")
        total = uniform_filter(mask * Y, _WINDOW, mode="nearest")
        whole = float(np.sum(mask * Y)) / max(float(mask.sum()), 1.0)
        around[place] = np.exp(np.where(weight > 1e-3, total / np.maximum(weight, 1e-3), whole))
    return around


def _whitish(light: Floats, Y: Floats, hue: Floats) -> Floats:
    """Give the share of the light that is white when it is split into the hue and white."""
    hue_hue, hue_white = float(hue @ hue), float(hue.sum())
    det = max(3 * hue_hue - hue_white**2, 1e-6)
    white = (hue_hue * light.sum(axis=-1) - hue_white * (light @ hue)) / det
    return np.asarray(np.clip(white / np.maximum(Y, _DARKEST), -1.0, 1.0))


def _gloss(light: Floats, coat: Coat, around: Floats) -> Floats:
    """Give the luminance that is gloss: whitish beyond the usual, and lighter than about it."""
    Y = light @ LUMINANCE
    lighter = Y / np.maximum(around, _DARKEST)
    low, high = _LIGHTER
    gate = np.clip((lighter - low) / (high - low), 0.0, 1.0)
    usual, beyond = coat.whitish
    share = _whitish(light, Y, coat.hue)
    coloured = Y * np.clip(share - usual, 0.0, 1.0) * np.clip((share - beyond) / 0.05, 0.0, 1.0)
    # Of a grey paint the colour tells nothing, and only what is much lighter can be gloss.
    grey = np.maximum(Y - _GREY_LIGHTER * around, 0.0)
    told = coat.telling
    return np.asarray(told * gate * coloured + (1 - told) * grey, dtype=np.float32)


def looks(light: Floats, masks: Floats, coats: Sequence[Coat], around: Floats) -> Looks:
    """Take a part of a picture apart.

    Parameters
    ----------
    light
        Linear sRGB, shape (rows, columns, 3).
    masks, around
        Of each zone, shape (zones, rows, columns), as from `Fitted.masks` and `surroundings`.
    coats
        The old paint of each zone.
    """
    shade, gloss = np.empty_like(masks), np.empty_like(masks)
    Y = light @ LUMINANCE
    for place, coat in enumerate(coats):
        patch = worn(light, coat.hue)
        own = (1 - patch) * _gloss(light, coat, around[place])
        gloss[place] = own
        lit = np.clip((Y - own) / coat.level * coat.worn**-patch, 0.0, _MOST_LIGHT)
        shade[place] = _from_inside(lit, masks[place])
    return Looks(light, masks, shade, gloss)


def _from_inside(lit: Floats, mask: Floats) -> Floats:
    """Take the light of pixels that lie half outside from those inside beside them."""
    from scipy.ndimage import uniform_filter

    inside = (mask > 0.98).astype(np.float32)
    near = uniform_filter(inside, 9, mode="nearest")
    mean = uniform_filter(inside * lit, 9, mode="nearest") / np.maximum(near, 1e-3)
    return np.asarray(np.where((mask < 0.98) & (near > 0.01), mean, lit))


# --- the new paint -------------------------------------------------------------------------------


def painted(seen: Looks, coats: Sequence[Coat], colours: Sequence[Floats | None]) -> Floats:
    """Give the light of a picture with its zones in new colours.

    Parameters
    ----------
    seen
        The picture taken apart.
    coats
        The old paint of each zone.
    colours
        Linear sRGB of the new paint of each zone, shape (3,); None leaves the zone as it is.

    Returns
    -------
    Linear sRGB, shape of the light, not clipped.
    """
    out = seen.light.copy()
    for mask, shade, gloss, coat, colour in zip(
        seen.masks, seen.shade, seen.gloss, coats, colours, strict=True
    ):
        if colour is None:
            continue
        new = shade[..., None] * np.maximum(colour, 0.0).astype(np.float32)
        whole = new + gloss[..., None]
        # At an edge only the share of the old paint is exchanged, and what lies behind stays.
        old = shade[..., None] * (coat.level * coat.hue)
        part = mask[..., None]
        exchanged = seen.light + part * (new - old)
        out = np.where(part > 0.98, whole, np.where(part > 0, out + exchanged - seen.light, out))
    return np.maximum(out, 0.0)
