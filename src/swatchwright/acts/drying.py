"""One stroke read wet and dry: what the paint learns of it, and how it looks by that."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from swatchwright.acts.paint import dry_alike, look_of_paint
from swatchwright.paint.fit.drying import Drying
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab

__all__ = ["StrokeLook", "learn_stroke"]


@dataclass(frozen=True, slots=True)
class StrokeLook:
    """What a stroke taught.

    Parameters
    ----------
    shelf
        With the paint that has learnt.
    drying
        What it learnt.
    seen
        The wet colour that was read.
    by_kind, own
        The wet colour as it follows from the dry one that was read, by the paint's family and by
        what it learnt.
    """

    shelf: Shelf
    drying: Drying
    seen: Lab
    by_kind: Lab
    own: Lab


def learn_stroke(shelf: Shelf, id_: str, *, wet: Lab, dry: Lab) -> StrokeLook:
    """Learn how a paint dries, and show the wet colour by its kind and by what it learnt.

    Raises
    ------
    MendableError
        As `dry_alike`.
    """
    learnt, drying = dry_alike(shelf, id_, wet=wet, dry=dry)
    usual = tuple(replace(p, own_finish=None) if p.id == id_ else p for p in shelf.paints)
    by_kind = _wet(replace(shelf, paints=usual), id_, dry)
    return StrokeLook(learnt, drying, wet, by_kind, _wet(learnt, id_, dry))


def _wet(shelf: Shelf, id_: str, dry: Lab) -> Lab:
    look = look_of_paint(shelf, id_)
    step = np.array(look.wet.triple) - np.array(look.dry.triple)
    L, a, b = np.array(dry.triple) + step
    return Lab(float(np.clip(L, 0.0, 100.0)), float(a), float(b))
