"""What the cells of a sheet of brush-outs say of a film: its mix, its ground and what was read."""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.paint.fit.readings import on_grid
from swatchwright.shelf.rows import Row
from swatchwright.values import Lab

__all__ = ["BARE", "lab_cell", "mix_cell", "over_cell", "spectrum_cell"]

Floats = NDArray[np.floating[Any]]

BARE = "bare"
"""What stands under ``mix`` where the bare ground was read."""

_MOST_PAINTS = 8
_MOST_PARTS = 1e6


def mix_cell(row: Row) -> tuple[tuple[str, float], ...]:
    """Read ``ID=PARTS`` one after the other; an id alone is one part of it."""
    words = row.text("mix").replace(";", " ").split()
    if words == [BARE]:
        return ()
    found: dict[str, float] = {}
    for word in words:
        id_, equals, parts = word.rpartition("=")
        if not equals:
            id_, parts = parts, "1"
        amount = row.checked("mix", row.parsed("mix", parts.removesuffix("%")), 0, _MOST_PARTS)
        if not id_ or id_ in found:
            raise MendableError(
                say(
                    "Line {line} of the sheet has “{text}” under mix.",
                    line=row.line,
                    text=row.text("mix"),
                ),
                say("Name each paint once, as in deep-blue=1 white=4."),
            )
        found[id_] = amount
    if not 1 <= len(found) <= _MOST_PAINTS:
        raise _no_mix(row, len(found))
    return tuple(found.items())


def _no_mix(row: Row, count: int) -> MendableError:
    many = mark("Line {line} of the sheet has {count} paints under mix.")
    none = mark("Line {line} of the sheet has no paints under mix.")
    return MendableError(
        say(many, line=row.line, count=count) if count else say(none, line=row.line),
        say(
            "Write the paint's id, or ids with their parts, as in deep-blue=1 white=4; “{bare}” "
            "for bare card.",
            bare=BARE,
        ),
    )


def over_cell(row: Row) -> str:
    """Read what a film lies over; empty where it hides that."""
    text = row.text("over")
    hides = text.lower() in {"hides", "hidden", "nothing", "-"}
    return "" if hides else text


def lab_cell(row: Row) -> Lab | None:
    """Read a colour, CIELAB; None where there is none."""
    cells = [row.text(column) for column in "lab"]
    if not any(cells):
        return None
    if "" in cells:
        raise MendableError(
            say(
                "Line {line} of the sheet lacks its {column}.",
                line=row.line,
                column="lab"[cells.index("")],
            ),
            say("Give l, a and b, or leave all three empty."),
        )
    L, a, b = (row.parsed(c, text) for c, text in zip("lab", cells, strict=True))
    if not 0 <= L <= 101 or max(abs(a), abs(b)) > 150:
        raise MendableError(
            say(
                "Line {line} of the sheet has a colour that no surface has: {L:g}, {a:g}, {b:g}.",
                line=row.line,
                L=L,
                a=a,
                b=b,
            ),
            say(
                "L* goes from 0 to 100; a* and b* from about -128 to 128. Look for a wrong column."
            ),
        )
    return Lab(min(L, 100.0), a, b)


def spectrum_cell(row: Row, nm: Floats, columns: tuple[str, ...]) -> Floats | None:
    """Read a spectrum, (36,) reflectance on the program's grid; None where there is none."""
    texts = [row.text(column) for column in columns]
    if not any(texts):
        return None
    if "" in texts:
        raise MendableError(
            say(
                "Line {line} of the sheet lacks its reflectance under {column}.",
                line=row.line,
                column=columns[texts.index("")],
            ),
            say("Give the whole spectrum, or leave all of it empty."),
        )
    values = [row.parsed(c, text) for c, text in zip(columns, texts, strict=True)]
    return on_grid(nm, values)
