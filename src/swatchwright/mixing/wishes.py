"""What the painter asks of her recipes, as a value, and whether the wishes can stand together."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import isfinite

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.language.money import priced
from swatchwright.paint.paints import Paint

__all__ = ["A_GOOD_PART", "Wishes", "check_ids", "check_wishes", "is_owned", "price_per_ml"]

_MOST_COATS = 6

A_GOOD_PART = 0.05
"""A paint that must be in a mix is at least this much of it. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class Wishes:
    """What the painter asks; nothing, where all is left as it is.

    Parameters
    ----------
    only
        Ids of the only paints to use; None for the whole shelf.
    without
        Ids of paints not to use.
    must
        Ids of paints that every recipe holds, a twentieth of it or more.
    owned
        Ids of paints she has; None for all of them.
    most_to_buy
        How many paints of a recipe she may have to buy; None for any number.
    most_share
        Id and greatest share, 0-1, of paints to go easy on.
    opened
        Ids of tins that are open and should be used first, among recipes that do as well.
    most_coats
        Coats within which the mix must hide, 1 to 6; None where it need not.
    most_price
        Greatest price of a litre of the mix, in the currency of the shelf; None for any. A paint
        without a price is left out.
    """

    only: frozenset[str] | None = None
    without: frozenset[str] = frozenset()
    must: frozenset[str] = frozenset()
    owned: frozenset[str] | None = None
    most_to_buy: int | None = None
    most_share: tuple[tuple[str, float], ...] = ()
    opened: frozenset[str] = frozenset()
    most_coats: int | None = None
    most_price: float | None = None


def check_wishes(
    shelf: Sequence[Paint], must: Sequence[int], wishes: Wishes, most_paints: int
) -> None:
    """Refuse wishes that are wrong by themselves, or that contradict each other.

    Parameters
    ----------
    shelf
        The paints.
    must
        Indices of those that must be in and may be used.
    wishes
        The wishes.
    most_paints
        Paints in a recipe at the most.

    Raises
    ------
    MendableError
        That names the wish which cannot be kept.
    """
    _check_numbers(wishes)
    _check_musts(shelf, must, wishes, most_paints)


def is_owned(paint: Paint, wishes: Wishes) -> bool:
    """Tell whether the painter has a paint; all, where she does not say."""
    return wishes.owned is None or paint.id in wishes.owned


def price_per_ml(paint: Paint) -> float | None:
    """Give the price of a ml in the tin that is cheapest by volume; None where none is priced."""
    prices = [tin.price / tin.ml for tin in paint.tins if tin.price is not None]
    return min(prices, default=None)


def check_ids(ids: Sequence[str], wishes: Wishes) -> None:
    """Refuse a shelf with an id twice, and wishes that name a paint which is not there.

    Raises
    ------
    MendableError
        That names the id.
    """
    twice = next((i for i in ids if ids.count(i) > 1), None) if len(set(ids)) < len(ids) else None
    if twice is not None:
        raise MendableError(
            say("Two paints have the id {id}.", id=twice), say("Give one of them another id.")
        )
    named = wishes.must | wishes.without | (wishes.only or frozenset())
    named |= {id_ for id_, _ in wishes.most_share} | wishes.opened
    unknown = sorted(named - set(ids))
    if unknown:
        raise MendableError(
            say("A wish names {paint}, which is not on the shelf.", paint=unknown[0]),
            say("Use the id of a paint that is there."),
        )


def _check_numbers(wishes: Wishes) -> None:
    for id_, share in wishes.most_share:
        if not (isfinite(share) and 0 < share <= 1):
            raise MendableError(
                say("At most {share:g} of {paint} was asked for.", share=share, paint=id_),
                say("Give a share above 0, up to 1."),
            )
        if id_ in wishes.must and share < A_GOOD_PART:
            raise MendableError(
                say(
                    "{paint} must be in every recipe, yet at most {share:g} of it was asked for.",
                    paint=id_,
                    share=share,
                ),
                say("Allow {share:g} of it or more, or do without it.", share=A_GOOD_PART),
            )
    if wishes.most_price is not None and not (
        isfinite(wishes.most_price) and wishes.most_price > 0
    ):
        raise MendableError(
            say(
                "A litre at {price} at the most was asked for.",
                price=priced(wishes.most_price, spec="g"),
            ),
            say("Give a price above 0, for a litre."),
        )
    if wishes.most_coats is not None and not 1 <= wishes.most_coats <= _MOST_COATS:
        raise MendableError(
            say("Hiding within {coats} coats was asked for.", coats=wishes.most_coats),
            say("Ask for 1 to {most} coats.", most=_MOST_COATS),
        )
    if wishes.most_to_buy is not None and wishes.most_to_buy < 0:
        raise MendableError(
            say("At most {most} paints to buy were asked for.", most=wishes.most_to_buy),
            say("Ask for 0 or more."),
        )


def _check_musts(
    shelf: Sequence[Paint], must: Sequence[int], wishes: Wishes, most_paints: int
) -> None:
    lost = sorted(wishes.must - {shelf[i].id for i in must})
    if lost:
        raise MendableError(
            say("{paint} must be in every recipe, and another wish leaves it out.", paint=lost[0]),
            say("Drop one of the two wishes."),
        )
    if len(must) > most_paints:
        raise MendableError(
            say(
                "{many} paints must be in every recipe of at most {most}.",
                many=len(must),
                most=most_paints,
            ),
            say("Ask for fewer of them, or for more paints in a recipe."),
        )
    if len({shelf[i].finish.waterborne for i in must}) > 1:
        raise MendableError(
            say("Of the paints that must be in, one is water-borne and one solvent-borne."),
            say("The two do not mix: keep to one kind."),
        )
    bought = [shelf[i].id for i in must if not is_owned(shelf[i], wishes)]
    if wishes.most_to_buy is not None and len(bought) > wishes.most_to_buy:
        raise MendableError(
            say(
                "{paint} must be in every recipe and would have to be bought, but at most "
                "{most} may be.",
                paint=bought[0],
                most=wishes.most_to_buy,
            ),
            say("Allow one paint more to be bought, or do without it."),
        )
