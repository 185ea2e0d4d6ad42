"""The words of the wishes for all mixes."""

from __future__ import annotations

from collections.abc import Mapping

from swatchwright.mixing.wishes import Wishes
from swatchwright.paint.paints import Paint

OF_ALL = "Every mix"
HIDES = "hides in"
COSTS = "costs a litre at most"
TO_BUY = "has at most"
TO_BUY_AFTER = "to buy"
ANY = "any"
NONE = "No wishes"
NONE_TIP = "Drop all wishes"
OF_PAINT = "In the mixes"
LEAVE_OUT = "leave it out"
MUST = "in every mix"
MOST = "at most"
OPENED = "this tin is open: use it first"
OWNED = "I have it"


def percent(share: float | None) -> str:
    """Say a share."""
    return ANY if share is None else f"{share:.0%}"


def count_line(count: int) -> str:
    """Say how many wishes there are; empty where there are none."""
    return "" if not count else "with 1 wish" if count == 1 else f"with {count} wishes"


def wishes_told(wishes: Wishes, paints: tuple[Paint, ...]) -> str:
    """Tell all wishes in a line."""
    names = {paint.id: paint.name for paint in paints}
    told = [
        *_named("without", wishes.without, names),
        *_named("always with", wishes.must, names),
        *(f"at most {share:.0%} {names.get(id_, id_)}" for id_, share in wishes.most_share),
        *_named("open tins first:", wishes.opened, names),
    ]
    if wishes.owned is not None:
        lacking = frozenset(names) - wishes.owned
        told += _named("not in the house:", lacking, names)
    if wishes.most_coats is not None:
        coats = "1 coat" if wishes.most_coats == 1 else f"{wishes.most_coats} coats"
        told.append(f"hides in {coats}")
    if wishes.most_price is not None:
        told.append(f"a litre costs {wishes.most_price:.2f} at most")
    if wishes.most_to_buy is not None:
        told.append(f"at most {wishes.most_to_buy} to buy")
    return "Nothing more is asked of the mixes." if not told else f"Asked: {'; '.join(told)}."


def _named(word: str, ids: frozenset[str], names: Mapping[str, str]) -> list[str]:
    return [f"{word} {', '.join(names.get(id_, id_) for id_ in sorted(ids))}"] if ids else []
