"""See a photographed piece in other colours: surfaces found from a few strokes, then repainted.

The surfaces are found on a small copy, which is seconds quicker and loses nothing that a stroke
could tell; their edges are then fitted to the picture in the size that is asked for.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.convert import lab_to_linear_srgb, srgb_decode, srgb_encode
from swatchwright.photo.image import Photo
from swatchwright.photo.repaint_colours import likely
from swatchwright.photo.repaint_edges import Fitted, enlarged, fitted
from swatchwright.photo.repaint_shade import Coat, Looks, coats_of, looks, painted, surroundings
from swatchwright.photo.repaint_strokes import UNMARKED, Marked, check_marked, drawn
from swatchwright.photo.repaint_walk import walked
from swatchwright.values import Lab

__all__ = ["Surfaces", "View", "find_surfaces", "in_colours", "view_of", "whole_picture"]

Floats = NDArray[np.floating[Any]]
Bytes = NDArray[np.uint8]
Check = Callable[[], None]

_WORK = 840
"""Longest side in pixels of the copy on which surfaces are found."""

_CONTRAST, _STRENGTH = 350.0, 0.01
_SPECK = 60
_STRIP, _MARGIN = 256, 8
_ENCODE_STEPS = 16384
_DECODE = srgb_decode(np.arange(256) / 255).astype(np.float32)
_ENCODE = np.rint(
    srgb_encode(np.arange(_ENCODE_STEPS + 1, dtype=np.float64) / _ENCODE_STEPS) * 255
).astype(np.uint8)


def _go_on() -> None:
    """Never stop."""


@dataclass(frozen=True, slots=True, eq=False)
class Surfaces:
    """The surfaces of a piece in a photo.

    Parameters
    ----------
    photo
        The photo.
    gains
        Factors of linear red, green and blue that put its light right.
    zones
        Their names.
    coats
        The old paint of each.
    fitted
        The mask of each.
    around
        The usual luminance of each about each pixel of the copy, shape (zones, rows, columns).
    by_edge
        Whether the edge of the picture was taken as not part of the piece, for want of a stroke.
    clipped
        Share of each zone that is overexposed, 0-1.
    """

    photo: Photo
    gains: tuple[float, float, float]
    zones: tuple[str, ...]
    coats: tuple[Coat, ...]
    fitted: Fitted
    around: Floats
    by_edge: bool
    clipped: tuple[float, ...]


@dataclass(frozen=True, slots=True, eq=False)
class View:
    """The piece in a size to be shown, ready to be repainted in any colours.

    Parameters
    ----------
    before
        The photo, its light put right, sRGB bytes, shape (rows, columns, 3).
    zones
        Names of the zones.
    masks
        How much of each pixel is of each zone, 0-255, shape (zones, rows, columns).
    strips
        The picture taken apart, from top to bottom.
    coats
        The old paint of each zone.
    """

    before: Bytes
    zones: tuple[str, ...]
    masks: Bytes
    strips: tuple[Looks, ...]
    coats: tuple[Coat, ...]


def find_surfaces(
    photo: Photo,
    marked: Marked,
    gains: tuple[float, float, float] = (1.0, 1.0, 1.0),
    check: Check = _go_on,
) -> Surfaces:
    """Find the surfaces that strokes mark.

    Parameters
    ----------
    photo
        The photo.
    marked
        The strokes.
    gains
        Factors of linear red, green and blue that put its light right.
    check
        Called now and then; it may raise to stop.

    Raises
    ------
    MendableError
        If a stroke cannot be, or no surface is marked.
    """
    check_marked(marked)
    zones = marked.zones
    small = photo.preview(_WORK, gains)
    marks = drawn(marked, zones, small.shape[:2])
    by_edge = not np.any(marks == len(zones))
    if by_edge:
        marks = _edge_marked(marks, len(zones))
    check()
    light = _DECODE[small]
    prior = likely(light, marks, len(zones) + 1)
    check()
    picture = small.astype(np.float32) / 255
    chances = walked(picture, marks, prior, contrast=_CONTRAST, strength=_STRENGTH, check=check)
    hard = _without_specks(chances.argmax(axis=0).astype(np.uint8), marks)
    check()
    masks = np.stack([hard == place for place in range(len(zones))]).astype(np.float32)
    own = np.where(marks < len(zones), marks, UNMARKED)
    fit = fitted(picture, masks)
    soft = fit.masks(picture, slice(0, len(picture)), len(picture))
    coats = coats_of(light, soft, own)
    return Surfaces(
        photo,
        gains,
        zones,
        coats,
        fit,
        surroundings(light, soft),
        by_edge,
        tuple(_clipped(small, mask) for mask in masks),
    )


def _edge_marked(marks: Bytes, label: int) -> Bytes:
    """Mark the edge of the picture, where there is no stroke, as not part of the piece."""
    out = marks.copy()
    for side in (out[:2], out[-2:], out[:, :2], out[:, -2:]):
        side[side == UNMARKED] = label
    return out


def _without_specks(hard: Bytes, marks: Bytes) -> Bytes:
    """Give specks that no stroke lies on to what is about them: highlights, knots, dirt."""
    from scipy.ndimage import label, minimum_filter

    out = hard.copy()
    for value in np.unique(hard):
        parts, count = label(hard == value)
        sizes = np.bincount(parts.ravel(), minlength=count + 1)
        kept = np.zeros(count + 1, dtype=np.bool_)
        kept[np.unique(parts[marks == value])] = True
        small = (sizes < _SPECK) & ~kept
        small[0] = False
        if small.any():
            hole = small[parts]
            # What is about a speck is told by the first of its neighbours that is not in it.
            others = np.where(hole, UNMARKED, hard).astype(np.uint8)
            for _ in range(_SPECK):
                others = np.where(others == UNMARKED, minimum_filter(others, 3), others)
                if not np.any(others[hole] == UNMARKED):
                    break
            out[hole] = others[hole]
    return out


def _clipped(small: Bytes, mask: Floats) -> float:
    inside = mask > 0
    return float(np.mean(small[inside].min(axis=-1) >= 254)) if inside.any() else 0.0


# --- showing -------------------------------------------------------------------------------------


def view_of(found: Surfaces, longest: int, check: Check = _go_on) -> View:
    """Make ready a picture whose longer side has at most so many pixels."""
    before = found.photo.preview(longest, found.gains)
    strips, masks = [], np.empty((len(found.zones), *before.shape[:2]), dtype=np.uint8)
    for part, seen in _strips(found, before, check):
        strips.append(seen)
        masks[:, part] = np.rint(255 * seen.masks).astype(np.uint8)
    return View(before, found.zones, masks, tuple(strips), found.coats)


def in_colours(view: View, colours: Mapping[str, Lab], check: Check = _go_on) -> Bytes:
    """Repaint a picture that has been made ready; a zone without a colour stays as it is.

    Returns
    -------
    sRGB bytes, shape (rows, columns, 3).
    """
    new = _inks(view.zones, colours)
    out, top = view.before.copy(), 0
    for seen in view.strips:
        check()
        part = slice(top, top + len(seen.light))
        out[part] = _repainted(seen, view.coats, new, view.before[part])
        top = part.stop
    return out


def whole_picture(
    found: Surfaces, colours: Mapping[str, Lab], longest: int, check: Check = _go_on
) -> Bytes:
    """Repaint a picture of any size without keeping it taken apart, which would take much room."""
    before = found.photo.preview(longest, found.gains)
    new = _inks(found.zones, colours)
    out = before.copy()
    for part, seen in _strips(found, before, check):
        out[part] = _repainted(seen, found.coats, new, before[part])
    return out


def _strips(found: Surfaces, before: Bytes, check: Check) -> Iterator[tuple[slice, Looks]]:
    """Take a picture apart strip by strip, each with a margin for what looks at neighbours."""
    rows = len(before)
    for top in range(0, rows, _STRIP):
        check()
        part = slice(top, min(top + _STRIP, rows))
        wide = slice(max(0, part.start - _MARGIN), min(part.stop + _MARGIN, rows))
        picture = before[wide]
        masks = found.fitted.masks(picture.astype(np.float32) / 255, wide, rows)
        share = (wide.start / rows, wide.stop / rows)
        around = np.stack([enlarged(one, picture.shape[:2], share) for one in found.around])
        seen = looks(_DECODE[picture], masks, found.coats, around)
        yield part, seen.rows(slice(part.start - wide.start, part.stop - wide.start))


def _inks(zones: tuple[str, ...], colours: Mapping[str, Lab]) -> list[Floats | None]:
    return [
        np.asarray(lab_to_linear_srgb(colours[zone].triple)) if zone in colours else None
        for zone in zones
    ]


def _repainted(
    seen: Looks, coats: tuple[Coat, ...], new: list[Floats | None], before: Bytes
) -> Bytes:
    light = np.clip(painted(seen, coats, new), 0.0, 1.0)
    encoded = _ENCODE[(light * _ENCODE_STEPS + 0.5).astype(np.uint16)]
    touched = np.any(seen.masks > 0, axis=0)
    return np.asarray(np.where(touched[..., None], encoded, before))
