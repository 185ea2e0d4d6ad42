"""Text of a layer, as “wash white-clean water=3 passes=2”, to a layer."""

from __future__ import annotations

from collections.abc import Iterable

from swatchwright.acts.mixes_in_use import WHOLE_PIECE
from swatchwright.acts.stack_file import on_part
from swatchwright.commands.words import amount_of
from swatchwright.errors import MendableError
from swatchwright.paint.layers import Layer, LayerKind, Sheen, Stack, check_layer

__all__ = ["layer_of_text", "over_part", "paint_and_parts", "share_left"]

_NUMBERS = ("water", "left", "amber")
_COUNTS = ("passes", "coats")


def layer_of_text(text: str) -> Layer:
    """Read a layer: its kind, then paints and what is said of it, with spaces between.

    What comes after ``on=`` is the part of the piece it goes on, up to its end.

    Raises
    ------
    MendableError
        If it is no layer, or one that cannot be.

    Examples
    --------
    >>> layer_of_text("wax amber=1").amber
    1.0
    >>> layer_of_text("wash white-clean on=body").zone
    'body'
    """
    told, on, part = f" {text}".partition(" on=")
    words = told.split()
    if not words:
        raise MendableError("A layer was given with nothing in it.", "Say what it is, as in “wax”.")
    try:
        kind = LayerKind(words[0].lower())
    except ValueError as error:
        raise MendableError(
            f"A layer begins with “{words[0]}”.", f"Begin it with one of: {', '.join(LayerKind)}."
        ) from error
    paints: list[tuple[str, float]] = []
    said: dict[str, str] = {}
    for word in words[1:]:
        name, _, value = word.partition("=")
        if name in {*_NUMBERS, *_COUNTS, "sheen"}:
            said["passes" if name in _COUNTS else name] = value
        else:
            paints.append(paint_and_parts(word))
    layer = _layer(kind, paints, said)
    if on:
        layer = on_part(layer, _part(part))
    check_layer(layer)
    return layer


def _part(text: str) -> str:
    """Read the part of the piece that a layer goes on."""
    part = " ".join(text.split())
    if not part:
        raise MendableError(
            "A layer says “on=” and no part.", "Name it last, as in on=body; leave it out for all."
        )
    if "=" in part:
        raise MendableError(
            f"A layer goes on “{part}”.", "Say the part last, as in “wash white-clean on=body”."
        )
    return part


def over_part(stack: Stack, part: str | None) -> Stack:
    """Give what lies over the part of the piece that is asked of.

    Parameters
    ----------
    stack
        All layers.
    part
        Its name, or “all” for what goes on all of the piece; None where it was not said.

    Raises
    ------
    MendableError
        If a layer goes on one part alone, and it was not said which part is asked of.
    """
    if part is None and stack.zones:
        raise MendableError(
            f"A layer goes on one part alone ({', '.join(stack.zones)}), and it was not said which "
            "part is asked of.",
            f"Add --part {stack.zones[0]}, or --part {WHOLE_PIECE} for what goes on all.",
        )
    return stack.over("" if part is None else part.strip())


def paint_and_parts(text: str) -> tuple[str, float]:
    """Read ``ID`` or ``ID=PARTS``; one part where none are said.

    Raises
    ------
    MendableError
        If the parts are no number.
    """
    return amount_of(text) if "=" in text else (text.strip(), 1.0)


def share_left(percent: float) -> float:
    """Give the share of a wash that is left from how many per cent were said.

    Raises
    ------
    MendableError
        If it is not from 0 to 100.
    """
    if not 0 <= percent <= 100:
        raise MendableError(
            f"{percent:g} % of the wash would be left after wiping.", "Give from 0 to 100 %."
        )
    return percent / 100


def _layer(kind: LayerKind, paints: Iterable[tuple[str, float]], said: dict[str, str]) -> Layer:
    water, left, amber = (_number(name, said[name]) if name in said else None for name in _NUMBERS)
    return Layer(
        kind,
        tuple(paints),
        water=water,
        left=None if left is None else share_left(left),
        passes=_count(said.get("passes", "1")),
        amber=amber,
        sheen=_sheen(said["sheen"]) if "sheen" in said else None,
    )


def _number(name: str, text: str) -> float:
    try:
        return float(text.removesuffix("%"))
    except ValueError as error:
        raise MendableError(
            f"A layer has “{text}” for {name}.", f"Give a number, as in {name}=3."
        ) from error


def _count(text: str) -> int:
    try:
        return int(text)
    except ValueError as error:
        raise MendableError(
            f"A layer has “{text}” for its passes.", "Give a whole number, as in passes=2."
        ) from error


def _sheen(text: str) -> Sheen:
    try:
        return Sheen(text.lower())
    except ValueError as error:
        raise MendableError(
            f"A layer has “{text}” for its sheen.", f"Give one of: {', '.join(Sheen)}."
        ) from error
