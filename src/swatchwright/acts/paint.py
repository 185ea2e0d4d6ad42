"""Look at one paint of a shelf: how it is known and what it looks like; and how it dries."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from swatchwright.acts.known import Likely, likely_errors, white_of
from swatchwright.colour.difference import delta_e_2000
from swatchwright.paint.fit.drying import Drying, learn_drying
from swatchwright.paint.hiding import HIDDEN
from swatchwright.paint.mixture import contrast_ratio, dry_lab, mix, wet_lab
from swatchwright.paint.paints import Paint, stack
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab

__all__ = ["LetDown", "PaintLook", "dry_alike", "look_of_paint"]

# Parts of white to one of the paint.
_LET_DOWNS = (1, 4, 10)

_MOST_COATS = 6


@dataclass(frozen=True, slots=True)
class LetDown:
    """The dry colour of a paint with so many parts of white to one of it, by volume."""

    white: Paint
    parts: int
    dry: Lab


@dataclass(frozen=True, slots=True)
class PaintLook:
    """A paint, how it is known, and how it looks.

    Parameters
    ----------
    paint
        The paint.
    dry, wet
        Its colour by itself, laid until it hides.
    drying
        CIEDE2000 between the two.
    let_downs
        With the white of the shelf; none where there is no white that it may be mixed with.
    coats
        Coats that hide black and white alike; None if more than six.
    one_coat
        Luminance over black as a share of that over white after one coat, 0-1.
    likely
        How far its mixes will usually be off; None where nothing is told of it but a kind.
    """

    paint: Paint
    dry: Lab
    wet: Lab
    drying: float
    let_downs: tuple[LetDown, ...]
    coats: int | None
    one_coat: float
    likely: Likely | None


def look_of_paint(shelf: Shelf, id_: str) -> PaintLook:
    """Tell how a paint is known and how it looks.

    Raises
    ------
    MendableError
        If it is not on the shelf.
    """
    paint = shelf.paint(id_)
    alone = mix(stack([paint]), [[0]], [[1.0]])
    dry, wet = dry_lab(alone)[0], wet_lab(alone)[0]
    hidden = [float(contrast_ratio(alone, n)[0]) for n in range(1, _MOST_COATS + 1)]
    return PaintLook(
        paint=paint,
        dry=Lab.of(dry),
        wet=Lab.of(wet),
        drying=float(delta_e_2000(dry, wet)),
        let_downs=_let_downs(shelf, paint),
        coats=next((n for n, share in enumerate(hidden, 1) if share >= HIDDEN), None),
        one_coat=hidden[0],
        likely=None if paint.spread is None else likely_errors(shelf, paint),
    )


def _let_downs(shelf: Shelf, paint: Paint) -> tuple[LetDown, ...]:
    water = paint.finish.waterborne
    white = white_of([p for p in shelf.paints if p.finish.waterborne is water and p.id != paint.id])
    if white is None:
        return ()
    shares = np.array([(1 / (1 + n), n / (1 + n)) for n in _LET_DOWNS])
    labs = dry_lab(mix(stack([paint, white]), [[0, 1]] * len(_LET_DOWNS), shares))
    return tuple(LetDown(white, n, Lab.of(lab)) for n, lab in zip(_LET_DOWNS, labs, strict=True))


def dry_alike(shelf: Shelf, id_: str, *, wet: Lab, dry: Lab) -> tuple[Shelf, Drying]:
    """Learn how a paint of a shelf dries from the wet and the dry colour of one stroke.

    Parameters
    ----------
    shelf, id_
        The paint.
    wet, dry
        Read off one stroke under one light, laid until it hides.

    Returns
    -------
    The shelf with the paint that has learnt, and what it learnt.

    Raises
    ------
    MendableError
        If the paint is not on the shelf, or the two colours are not of it.
    """
    drying = learn_drying(wet.triple, dry.triple, shelf.paint(id_))
    paints = tuple(drying.paint if p.id == id_ else p for p in shelf.paints)
    return replace(shelf, paints=paints), drying
