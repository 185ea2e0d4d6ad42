"""Paints to rows of the store and back.

K, S and spread are kept as float64, little-endian; everything else that a `Paint` knows is kept as
JSON by the names of its fields, so a field that is added to `Paint` is kept without a migration,
and a paint written before it has the field's usual value.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Mapping
from dataclasses import MISSING, dataclass, fields
from functools import cache
from typing import Any, get_type_hints

import msgspec
import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.paint.paints import Paint
from swatchwright.shelf.decoding import decoded
from swatchwright.shelf.demo_names import named_in_use
from swatchwright.shelf.jobs import Document
from swatchwright.shelf.store.kept import keep, take
from swatchwright.shelf.store.store import Edit

__all__ = [
    "ARRAYS",
    "StockedPaint",
    "check_paint",
    "freeze",
    "paint_bytes",
    "paint_from_bytes",
    "read_frozen",
    "read_paints",
    "remove_paints",
    "set_stock",
    "set_times",
    "write_paint",
]

Floats = NDArray[np.floating[Any]]

ARRAYS = ("K", "S", "spread")
"""The fields of a paint that are arrays."""

_DOUBLE = np.dtype("<f8")
_BANDS = WAVELENGTHS.size
_MOST_DIRECTIONS = 1000
_LONGEST = 20_000


@dataclass(frozen=True, slots=True)
class StockedPaint:
    """A paint of the store's shelf.

    Parameters
    ----------
    paint
        The paint.
    ml_left
        How much of it is left, ml; None where nobody has said.
    times
        What its tin says of times, as whoever defines it lays it out; None where nothing is.
    """

    paint: Paint
    ml_left: float | None
    times: Document | None = None


@cache
def _facts_type() -> type[Any]:
    """Make the type of all that a paint knows but its arrays, from the fields of `Paint`."""
    hints = get_type_hints(Paint)
    listed: list[tuple[str, Any] | tuple[str, Any, Any]] = []
    for field in fields(Paint):
        if field.name in ARRAYS:
            continue
        if field.default is MISSING:
            listed.append((field.name, hints[field.name]))
        else:
            listed.append((field.name, hints[field.name], field.default))
    return msgspec.defstruct("PaintFacts", listed, frozen=True)


def _facts(paint: Paint) -> dict[str, Any]:
    return {f.name: getattr(paint, f.name) for f in fields(Paint) if f.name not in ARRAYS}


def _paint(facts: msgspec.Struct, arrays: Mapping[str, Floats | None]) -> Paint:
    known: dict[str, Any] = {name: getattr(facts, name) for name in facts.__struct_fields__}
    return Paint(**known | dict(arrays))


# --- rows ----------------------------------------------------------------------------------------


def write_paint(edit: Edit, stocked: StockedPaint) -> None:
    """Write a paint, at the end of the shelf if its id is new, in place of the old one if not."""
    paint = stocked.paint
    spread = None if paint.spread is None else _bytes(paint.spread)
    facts = msgspec.json.encode(_facts(paint)).decode()
    values = (paint.name, facts, _bytes(paint.K), _bytes(paint.S), spread)
    edit.connection.execute(
        "INSERT INTO paints (id, place, name, facts, K, S, spread, ml_left, times) VALUES "
        "(?, (SELECT coalesce(max(place), 0) + 1 FROM paints), ?, ?, ?, ?, ?, ?, ?) "
        "ON CONFLICT (id) DO UPDATE SET name = excluded.name, facts = excluded.facts, "
        "K = excluded.K, S = excluded.S, spread = excluded.spread, "
        "ml_left = excluded.ml_left, times = excluded.times",
        (paint.id, *values, stocked.ml_left, _times_text(stocked.times)),
    )


def read_paints(connection: sqlite3.Connection, ids: tuple[str, ...] = ()) -> list[StockedPaint]:
    """Read the paints of the shelf in their order, all or those of some ids."""
    query = "SELECT facts, K, S, spread, ml_left, times FROM paints"
    if ids:
        query += f" WHERE id IN ({', '.join('?' * len(ids))})"
    kind = _facts_type()
    return [
        StockedPaint(
            named_in_use(
                _paint(
                    decoded(facts, kind),
                    {"K": _array(K), "S": _array(S), "spread": _spread(spread)},
                )
            ),
            ml_left,
            _times(times),
        )
        for facts, K, S, spread, ml_left, times in connection.execute(
            f"{query} ORDER BY place, row", ids
        )
    ]


def remove_paints(edit: Edit, ids: tuple[str, ...]) -> None:
    """Take paints off the shelf."""
    edit.connection.executemany("DELETE FROM paints WHERE id = ?", [(id_,) for id_ in ids])


def set_stock(edit: Edit, id_: str, ml_left: float | None) -> None:
    """Write how much of a paint is left."""
    edit.connection.execute("UPDATE paints SET ml_left = ? WHERE id = ?", (ml_left, id_))


def set_times(edit: Edit, id_: str, times: Document | None) -> None:
    """Write what the tin of a paint says of times."""
    edit.connection.execute("UPDATE paints SET times = ? WHERE id = ?", (_times_text(times), id_))


def _times_text(times: Document | None) -> str | None:
    return None if times is None else msgspec.json.encode(times).decode()


def _times(text: str | None) -> Document | None:
    return None if text is None else decoded(text, Document)


def _bytes(array: Floats) -> bytes:
    return np.ascontiguousarray(array, dtype=_DOUBLE).tobytes()


def _array(blob: bytes) -> Floats:
    return np.frombuffer(blob, dtype=_DOUBLE).astype(np.float64)


def _spread(blob: bytes | None) -> Floats | None:
    return None if blob is None else _array(blob).reshape(-1, 2 * _BANDS)


# --- paints as they were -------------------------------------------------------------------------


def paint_bytes(paint: Paint) -> bytes:
    """Write a paint, whole, as JSON: the same bytes for the same paint."""
    arrays = {
        name: None if (value := getattr(paint, name)) is None else np.asarray(value).tolist()
        for name in ARRAYS
    }
    return msgspec.json.encode({"facts": _facts(paint), **arrays}, order="deterministic")


class _Frozen(msgspec.Struct):
    """A paint as JSON."""

    facts: msgspec.Raw
    K: list[float]
    S: list[float]
    spread: list[list[float]] | None = None


def paint_from_bytes(data: bytes) -> Paint:
    """Read a paint back.

    Raises
    ------
    MendableError
        If it is not a paint, or one that cannot be.
    """
    try:
        read = decoded(data, _Frozen)
        facts = decoded(read.facts, _facts_type())
        arrays = {
            name: None if (value := getattr(read, name)) is None else np.array(value, np.float64)
            for name in ARRAYS
        }
    except (msgspec.DecodeError, ValueError, OverflowError) as error:
        raise _no_paint() from error
    K, S, spread = (arrays[name] for name in ARRAYS)
    curves = all(c is not None and c.shape == (_BANDS,) and np.all(c >= 0) for c in (K, S))
    known = spread is None or (
        spread.ndim == 2 and spread.shape[1] == 2 * _BANDS and len(spread) <= _MOST_DIRECTIONS
    )
    if not (curves and known and all(a is None or np.all(np.isfinite(a)) for a in (K, S, spread))):
        raise _no_paint()
    return named_in_use(_possible(_paint(facts, arrays)))


def _possible(paint: Paint) -> Paint:
    """Refuse a paint whose numbers no paint has."""
    texts = all(len(text) <= _LONGEST for text in (paint.id, paint.name, paint.note))
    solids = 0 < paint.volume_solids <= 1
    density = paint.density is None or 0.1 < paint.density <= 10
    tins = len(paint.tins) <= 100 and all(0 < tin.ml <= 1e6 for tin in paint.tins)
    scatters = float(np.mean(paint.S)) > 0
    if not (texts and solids and density and tins and scatters and 0 < paint.spreading_rate <= 100):
        raise _no_paint()
    return paint


def _no_paint() -> MendableError:
    return MendableError(
        say("A paint is damaged, or holds numbers that no paint has."),
        say("Look at its K, S, solids and tins, and bring it in again."),
    )


def check_paint(paint: Paint) -> None:
    """Refuse a paint that could not be read back.

    Raises
    ------
    MendableError
        If it is one that cannot be; it is named.
    """
    try:
        paint_from_bytes(paint_bytes(paint))
    except MendableError as error:
        raise MendableError(
            say(
                "“{name}” ({id}) holds numbers that no paint has.",
                name=paint.name[:60],
                id=paint.id[:60],
            ),
            error.mend,
        ) from error


def freeze(edit: Edit, paint: Paint) -> str:
    """Keep a paint as it is now, and give its fingerprint."""
    return keep(edit, "paint", paint_bytes(paint))


def read_frozen(connection: sqlite3.Connection, hash_: str) -> Paint:
    """Give a paint as it was.

    Raises
    ------
    MendableError
        If it is missing or damaged.
    """
    return paint_from_bytes(take(connection, hash_))
