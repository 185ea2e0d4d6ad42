"""The words of the wishes for all mixes."""

from __future__ import annotations

from collections.abc import Mapping

from swatchwright.errors import MendableError
from swatchwright.language import figure, say, say_count, say_in
from swatchwright.language.money import priced
from swatchwright.mixing.wishes import Wishes
from swatchwright.paint.paints import Paint

OF_ALL = say("Every mix")
HIDES = say("hides in")
COSTS = say("costs a litre at most")
TO_BUY = say("has at most")
TO_BUY_AFTER = say("to buy")
ANY = say_in("any number will do", "any")
NONE = say("No wishes")
NONE_TIP = say("Drop all wishes")
OF_PAINT = say("In the mixes")
LEAVE_OUT = say("leave it out")
MUST = say("in every mix")
MOST = say("at most")
OPENED = say("this tin is open: use it first")
OWNED = say("I have it")
TO_SHELF = say("To the page Shelf")
NO_PAINT_USED = say(
    "No mix is possible: no paint of the shelf is in use. Tick on the page Shelf those that may "
    "be mixed."
)


def none_possible(why: MendableError) -> str:
    """Say why there are no mixes, and what brings them."""
    return say("No mix is possible. {why} {mend}", why=why.what, mend=why.mend)


def percent(share: float | None) -> str:
    """Say a share."""
    return ANY if share is None else figure(share, ".0%")


def count_line(count: int) -> str:
    """Say how many wishes there are; empty where there are none."""
    return say_count("with {count} wish", "with {count} wishes", count) if count else ""


def wishes_told(wishes: Wishes, paints: tuple[Paint, ...]) -> str:
    """Tell all wishes in a line."""
    names = {paint.id: paint.name for paint in paints}
    told = [*_of_paints(wishes, names), *_of_mixes(wishes)]
    if not told:
        return say("Nothing more is asked of the mixes.")
    return say("Asked: {wishes}.", wishes="; ".join(told))


def _of_paints(wishes: Wishes, names: Mapping[str, str]) -> list[str]:
    """Tell the wishes for single paints."""
    told = []
    if wishes.without:
        told.append(say("without {paints}", paints=_named(wishes.without, names)))
    if wishes.must:
        told.append(say("always with {paints}", paints=_named(wishes.must, names)))
    for id_, share in wishes.most_share:
        told.append(say("at most {share:.0%} {paint}", share=share, paint=names.get(id_, id_)))
    if wishes.opened:
        told.append(say("open tins first: {paints}", paints=_named(wishes.opened, names)))
    lacking = frozenset(names) - wishes.owned if wishes.owned is not None else frozenset()
    if lacking:
        told.append(say("not in the house: {paints}", paints=_named(lacking, names)))
    return told


def _of_mixes(wishes: Wishes) -> list[str]:
    """Tell the wishes for every mix."""
    told = []
    if wishes.most_coats is not None:
        told.append(say_count("hides in {count} coat", "hides in {count} coats", wishes.most_coats))
    if wishes.most_price is not None:
        told.append(say("a litre costs {price} at most", price=priced(wishes.most_price)))
    if wishes.most_to_buy is not None:
        told.append(say("at most {count} to buy", count=wishes.most_to_buy))
    return told


def _named(ids: frozenset[str], names: Mapping[str, str]) -> str:
    return ", ".join(names.get(id_, id_) for id_ in sorted(ids))
