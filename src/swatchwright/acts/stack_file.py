"""Layers as JSON: to keep them, and to read them from a file."""

from __future__ import annotations

from dataclasses import fields, replace
from pathlib import Path
from typing import Any

from swatchwright.acts.mixes_in_use import WHOLE_PIECE
from swatchwright.acts.whole_file import read_whole
from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.paint.layers import Layer, Stack, check_stack
from swatchwright.shelf.decoding import converted

__all__ = ["layer_json", "on_part", "read_stack", "stack_of_json"]

_MOST_BYTES = 1_000_000


def layer_json(layer: Layer) -> dict[str, Any]:
    """Give a layer as plain values, leaving out what it does not say."""
    import msgspec

    plain: dict[str, Any] = msgspec.to_builtins(layer)
    return {name: value for name, value in plain.items() if value not in (None, [], (), "")}


def stack_of_json(text: bytes, name: str) -> Stack:
    """Read ``{"layers": [{"kind": "wash", "paints": [["ID", 1]], ...}, ...]}``.

    A layer for the zone `all` is one with none: it goes on all of the piece.

    Raises
    ------
    MendableError
        If it is no such thing, says something we do not know, or a layer cannot be.
    """
    import msgspec

    try:
        plain = msgspec.json.decode(text)
        _refuse_unknown(plain, name)
        stack = converted(plain, Stack)
    except (msgspec.DecodeError, UnicodeDecodeError, RecursionError) as error:
        raise MendableError(
            say("{file} does not hold layers: {why}.", file=name, why=error),
            say("docs/files.md tells how it is laid out."),
        ) from error
    check_stack(stack)
    return Stack(tuple(on_part(layer, layer.zone) for layer in stack.layers))


def on_part(layer: Layer, part: str) -> Layer:
    """Lay a layer on one part of the piece; on all of it where that is empty, or `all`."""
    named = part.strip()
    return replace(layer, zone="" if named == WHOLE_PIECE else named)


def read_stack(path: Path) -> Stack:
    """Read the layers in a file, of up to 1 MB.

    Raises
    ------
    MendableError
        As `stack_of_json` does, and if the file cannot be read.
    """
    too_large = mark("{file} has more than 1 MB."), mark("A file of layers is far smaller.")
    text = read_whole(path, _MOST_BYTES, too_large)
    return stack_of_json(text, path.name)


def _refuse_unknown(plain: object, name: str) -> None:
    """Refuse what would be passed over: a misspelt word is not to go unseen."""
    layers = plain.get("layers") if isinstance(plain, dict) else None
    if not isinstance(layers, list):
        raise MendableError(
            say("{file} does not hold layers.", file=name),
            say("It should be {example}.", example="{“layers”: [{“kind”: “wax”}, …]}"),
        )
    known = {field.name for field in fields(Layer)}
    for layer in layers:
        for word in set(layer) - known if isinstance(layer, dict) else ():
            raise MendableError(
                say("{file} says “{word}” of a layer.", file=name, word=word),
                say("A layer has: {names}.", names=", ".join(sorted(known))),
            )
