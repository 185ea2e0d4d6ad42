"""Wishes for all mixes of a shelf: which of them hold on it, and whether they go together."""

from __future__ import annotations

import re
from dataclasses import replace

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.mixing.allowed import allowed
from swatchwright.mixing.wishes import Wishes
from swatchwright.paint.paints import Paint
from swatchwright.shelf.shelf import Shelf

__all__ = [
    "by_name",
    "check_together",
    "how_many_wishes",
    "may_use",
    "most_share_of",
    "wishes_on",
    "with_most_share",
]


def wishes_on(shelf: Shelf, wishes: Wishes) -> Wishes:
    """Leave out of wishes the paints that are not on a shelf; they may come back to it."""
    there = frozenset(paint.id for paint in shelf.paints)
    return replace(
        wishes,
        only=None if wishes.only is None else wishes.only & there,
        without=wishes.without & there,
        must=wishes.must & there,
        opened=wishes.opened & there,
        owned=None if wishes.owned is None else wishes.owned & there,
        most_share=tuple((id_, share) for id_, share in wishes.most_share if id_ in there),
    )


def may_use(shelf: Shelf, wishes: Wishes) -> tuple[str, ...]:
    """Give the ids of the paints of a shelf that the painter wishes to use."""
    here = wishes_on(shelf, wishes)
    return tuple(
        paint.id
        for paint in shelf.paints
        if paint.id not in here.without and (here.only is None or paint.id in here.only)
    )


def check_together(shelf: Shelf, wishes: Wishes, *, most_paints: int = 3) -> Wishes:
    """Refuse wishes that cannot be kept together on a shelf.

    Returns
    -------
    The wishes that hold on this shelf.

    Raises
    ------
    MendableError
        That names the wish.
    """
    here = wishes_on(shelf, wishes)
    allowed(shelf.paints, here, most_paints)
    return here


def how_many_wishes(shelf: Shelf, wishes: Wishes) -> int:
    """Count the wishes that hold on a shelf; each paint that is named counts."""
    here = wishes_on(shelf, wishes)
    lacking = 0 if here.owned is None else sum(not _has(p, here) for p in shelf.paints)
    numbers = (here.most_to_buy, here.most_coats, here.most_price, here.only)
    named = (here.without, here.must, here.opened, here.most_share)
    return lacking + sum(n is not None for n in numbers) + sum(len(ids) for ids in named)


def _has(paint: Paint, wishes: Wishes) -> bool:
    return wishes.owned is None or paint.id in wishes.owned


def most_share_of(wishes: Wishes, id_: str) -> float | None:
    """Give the greatest share of a paint that is allowed, 0-1; None where any is."""
    return dict(wishes.most_share).get(id_)


def with_most_share(wishes: Wishes, id_: str, share: float | None) -> Wishes:
    """Allow at most a share of a paint, above 0 and up to 1; None for any."""
    others = tuple((other, most) for other, most in wishes.most_share if other != id_)
    return replace(wishes, most_share=others if share is None else (*others, (id_, share)))


def by_name(error: MendableError, shelf: Shelf) -> MendableError:
    """Give what is wrong with a wish with the paints by their names in place of their ids."""
    what, mend = error.what, error.mend
    for paint in sorted(shelf.paints, key=lambda paint: len(paint.id), reverse=True):
        whole = re.compile(rf"(?<![\w-]){re.escape(paint.id)}(?![\w-])")
        quoted = say("“{name}”", name=paint.name).replace("\\", r"\\")
        what, mend = whole.sub(quoted, what), whole.sub(quoted, mend)
    return MendableError(what, mend)
