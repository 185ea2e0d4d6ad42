"""What the painter asks besides the colour, from the words of the command line."""

from __future__ import annotations

import argparse

from swatchwright.errors import MendableError
from swatchwright.mixing.wishes import Wishes

__all__ = ["wishes_of"]


def wishes_of(arguments: argparse.Namespace) -> Wishes:
    """Read the wishes.

    Raises
    ------
    MendableError
        If a limit is not a paint and a share.
    """
    return Wishes(
        only=None if arguments.only is None else _ids(arguments.only),
        without=_ids(arguments.without),
        must=_ids(arguments.must),
        owned=None if arguments.owned is None else _ids(arguments.owned),
        most_to_buy=arguments.buy,
        most_share=tuple(_limit(text) for text in arguments.limit),
        opened=_ids(arguments.open),
        most_coats=arguments.coats,
        most_price=arguments.price,
    )


def _ids(text: str | None) -> frozenset[str]:
    return frozenset(part.strip() for part in (text or "").split(",") if part.strip())


def _limit(text: str) -> tuple[str, float]:
    id_, _, share = text.rpartition("=")
    try:
        percent = share.endswith("%")
        value = float(share.removesuffix("%")) / (100 if percent else 1)
    except ValueError:
        value = float("nan")
    if not id_ or not 0 < value <= 1:
        raise MendableError(
            f"--limit was given “{text}”.",
            "Write a paint's id, an equals sign and its greatest share, as in soft-black=5%.",
        )
    return id_.strip(), value
