"""Layers as JSON: to keep them, and to read them from a file."""

from __future__ import annotations

from dataclasses import fields
from pathlib import Path
from typing import Any

from swatchwright.errors import MendableError
from swatchwright.paint.layers import Layer, Stack, check_stack

__all__ = ["layer_json", "read_stack", "stack_of_json"]

_MOST_BYTES = 1_000_000


def layer_json(layer: Layer) -> dict[str, Any]:
    """Give a layer as plain values, leaving out what it does not say."""
    import msgspec

    plain: dict[str, Any] = msgspec.to_builtins(layer)
    return {name: value for name, value in plain.items() if value not in (None, [], ())}


def stack_of_json(text: bytes, name: str) -> Stack:
    """Read ``{"layers": [{"kind": "wash", "paints": [["ID", 1]], ...}, ...]}``.

    Raises
    ------
    MendableError
        If it is no such thing, says something we do not know, or a layer cannot be.
    """
    import msgspec

    try:
        plain = msgspec.json.decode(text)
        _refuse_unknown(plain, name)
        stack = msgspec.convert(plain, Stack)
    except (msgspec.DecodeError, UnicodeDecodeError, RecursionError) as error:
        raise MendableError(
            f"{name} does not hold layers: {error}.", "docs/files.md tells how it is laid out."
        ) from error
    check_stack(stack)
    return stack


def read_stack(path: Path) -> Stack:
    """Read the layers in a file, of up to 1 MB.

    Raises
    ------
    MendableError
        As `stack_of_json` does, and if the file cannot be read.
    """
    try:
        with path.open("rb") as file:
            text = file.read(_MOST_BYTES + 1)
    except OSError as error:
        raise MendableError(
            f"{path} cannot be read: {error.strerror}.", "Check its name and where it is."
        ) from error
    if len(text) > _MOST_BYTES:
        raise MendableError(f"{path.name} has more than 1 MB.", "A file of layers is far smaller.")
    return stack_of_json(text, path.name)


def _refuse_unknown(plain: object, name: str) -> None:
    """Refuse what would be passed over: a misspelt word is not to go unseen."""
    layers = plain.get("layers") if isinstance(plain, dict) else None
    if not isinstance(layers, list):
        raise MendableError(
            f"{name} does not hold layers.", "It should be {“layers”: [{“kind”: “wax”}, …]}."
        )
    known = {field.name for field in fields(Layer)}
    for layer in layers:
        for word in set(layer) - known if isinstance(layer, dict) else ():
            raise MendableError(
                f"{name} says “{word}” of a layer.", f"A layer has: {', '.join(sorted(known))}."
            )
