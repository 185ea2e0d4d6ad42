"""Look at one paint of a shelf: how it is known and what it looks like; and how it dries."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from swatchwright.acts.known import Known, Likely, known_of, likely_errors, white_of
from swatchwright.colour.difference import delta_e_2000
from swatchwright.paint.fit.drying import Drying, learn_drying
from swatchwright.paint.hiding import HIDDEN
from swatchwright.paint.mixture import contrast_ratio, dry_lab, mix, wet_lab
from swatchwright.paint.paints import HowKnown, Paint, stack
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab

__all__ = ["LetDown", "PaintLook", "dry_alike", "look_of_paint"]

# Parts of white to one of the paint.
_LET_DOWNS = (1, 4, 10)

_MOST_COATS = 6

# Paints that are drawn as it may be, and between which quantiles two of three lie.
_DRAWS, _SEED = 60, 7
_TWO_THIRDS = (1 / 6, 5 / 6)

# Standard deviation of the logarithm of a brushed coat's thickness, as where films are read.
_COAT_SPREAD = 0.3


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
        Coats that hide black and white alike; None if more than six. See `known` for whether
        that is a guess.
    one_coat
        Luminance over black as a share of that over white after one coat, 0-1.
    coats_span
        The least and the most coats that hide, in two cases of three, by what is known of it and by
        how coats are laid; those of an invented paint are as stated. None for more than six.
    likely
        How far its mixes will usually be off; None where nothing is told of it but a kind.
    known
        How well it is known.
    """

    paint: Paint
    dry: Lab
    wet: Lab
    drying: float
    let_downs: tuple[LetDown, ...]
    coats: int | None
    one_coat: float
    coats_span: tuple[int | None, int | None]
    likely: Likely | None
    known: Known


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
    one_coat, coats = float(contrast_ratio(alone, 1)[0]), _coats([paint])[0]
    return PaintLook(
        paint=paint,
        dry=Lab.of(dry),
        wet=Lab.of(wet),
        drying=float(delta_e_2000(dry, wet)),
        let_downs=_let_downs(shelf, paint),
        coats=_told(coats),
        one_coat=one_coat,
        coats_span=_coats_span(paint),
        likely=None if paint.spread is None else likely_errors(shelf, paint),
        known=known_of(shelf, paint),
    )


def _coats(paints: Sequence[Paint]) -> NDArray[np.intp]:
    """Give how many coats hide black and white alike, one more than is told where none do."""
    alone = mix(stack(paints), [[i] for i in range(len(paints))], [[1.0]] * len(paints))
    shares = np.array([contrast_ratio(alone, n) for n in range(1, _MOST_COATS + 1)])
    return np.asarray((shares < HIDDEN).sum(axis=0) + 1)


def _told(coats: float) -> int | None:
    return None if coats > _MOST_COATS else int(coats)


def _coats_span(paint: Paint) -> tuple[int | None, int | None]:
    """Give between how many coats it hides in two cases of three.

    By what is known of K and S, and by how far coats are from the spreading rate's.
    """
    if paint.how_known is HowKnown.INVENTED and paint.spread is None:
        exactly = _told(_coats([paint])[0])
        return exactly, exactly
    rng = np.random.default_rng(_SEED)
    spread = np.zeros((0, 2 * paint.K.size)) if paint.spread is None else paint.spread
    steps = rng.standard_normal((_DRAWS, len(spread))) @ spread
    # A thicker coat is one of more K and S.
    steps += _COAT_SPREAD * rng.standard_normal((_DRAWS, 1))
    of_K, of_S = np.split(np.exp(steps), 2, axis=1)
    drawn = [replace(paint, K=paint.K * k, S=paint.S * s) for k, s in zip(of_K, of_S, strict=True)]
    least, most = np.quantile(_coats(drawn), _TWO_THIRDS, method="nearest")
    return _told(least), _told(most)


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
