"""Reading JSON as values of our types, from any thread.

msgspec learns a type when it is first asked for it. Two threads that have it learn the same type,
or types that share a part, at the same moment end the process: so it learns under one lock, once.
"""

from __future__ import annotations

from threading import Lock
from typing import Any, TypeVar

import msgspec

__all__ = ["converted", "decoded"]

T = TypeVar("T")

_learning = Lock()
_learnt: dict[type[Any], msgspec.json.Decoder[Any]] = {}


def decoded(data: bytes | str | msgspec.Raw, kind: type[T]) -> T:
    """Read JSON as a value of a type.

    Raises
    ------
    msgspec.DecodeError
        If it is no JSON, or not laid out as that type is.
    """
    with _learning:
        if kind not in _learnt:
            _learnt[kind] = msgspec.json.Decoder(kind)
        decoder = _learnt[kind]
    value: T = decoder.decode(data)
    return value


def converted(plain: object, kind: type[T]) -> T:
    """Read plain lists, dicts and numbers as a value of a type.

    Raises
    ------
    msgspec.ValidationError
        If they are not laid out as that type is.
    """
    with _learning:
        return msgspec.convert(plain, type=kind)
