"""Sheets of brush-outs: plain CSV with a row for each reading of a film of paint.

Columns (docs/paints.md): ``id`` of the film, ``mix`` as on the command line (``deep-blue=1
white=4``, or ``bare`` for bare card), ``over`` what it lies, ``coats`` or ``thickness_mm``, and
what was read: ``l, a, b``, or a spectrum under ``r_400 .. r_700``, or ``reading``, the id of a
sample in a measurement file. Of a new paint, any row of it alone may give ``name, family,
volume_solids, density_g_per_ml, spreading_m2_per_l``.
"""

from __future__ import annotations

from collections.abc import Sequence
from csv import writer
from dataclasses import dataclass, replace
from io import StringIO
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.errors import MendableError
from swatchwright.language import mark, mark_in, say, say_in
from swatchwright.paint.family import Family
from swatchwright.shelf.brush_cells import BARE, lab_cell, mix_cell, over_cell, spectrum_cell
from swatchwright.shelf.measured.spectra import checked_grid
from swatchwright.shelf.paint_cells import family_cell
from swatchwright.shelf.plain_text import read_text
from swatchwright.shelf.rows import FileKind, Row, neither, read_rows
from swatchwright.values import Lab

__all__ = ["BARE", "NewPaint", "Sheet", "Strip", "parse_sheet", "read_sheet", "sheet_text"]

Floats = NDArray[np.floating[Any]]

_MOST_STRIPS = 2000

_OF_PAINT = "of a paint"
_SAID_OF_PAINT = {
    "name": mark_in("of a paint", "name"),
    "family": mark_in("of a paint", "family"),
    "volume_solids": mark_in("of a paint", "volume solids"),
    "density": mark_in("of a paint", "density"),
    "spreading_rate": mark_in("of a paint", "spreading rate"),
}
"""What a sheet may say of a paint itself, and what that is called."""

_KIND = FileKind(
    place="the sheet",
    things="brush-outs",
    layout=mark(
        "A sheet is a CSV file with a line of column names, then a line for each reading; "
        "“swatchwright paint brushouts” writes one to fill in."
    ),
    most=_MOST_STRIPS,
    also_called={
        "film": "id",
        "ground": "over",
        "l*": "l",
        "a*": "a",
        "b*": "b",
        "lab_l": "l",
        "lab_a": "a",
        "lab_b": "b",
        "density": "density_g_per_ml",
        "finish": "family",
        "solids": "volume_solids",
        "spreading_rate": "spreading_m2_per_l",
        "thickness": "thickness_mm",
    },
)


@dataclass(frozen=True, slots=True, eq=False)
class Strip:
    """One reading of a film of paint, or of bare ground.

    Parameters
    ----------
    line
        In the sheet.
    id
        Of the film: readings of one film over several grounds have the same.
    mix
        Paints by id, with their parts; empty for bare ground.
    over
        What it lies over: nothing where it hides, ``black``, ``white``, or the id of bare ground.
    coats, thickness
        How thick it is, in coats or mm of dry film; None where that was not noted.
    lab, reflectance
        What was read: CIELAB, D65, or (36,) reflectance, NaN where it was not measured.
    reading
        Id of the sample in a measurement file; empty where none is named.
    usually_off
        Median CIEDE2000 by which the colour is off; None where nothing is said.
    """

    line: int
    id: str
    mix: tuple[tuple[str, float], ...]
    over: str = ""
    coats: float | None = None
    thickness: float | None = None
    lab: Lab | None = None
    reflectance: Floats | None = None
    reading: str = ""
    usually_off: float | None = None


@dataclass(frozen=True, slots=True)
class NewPaint:
    """What a sheet says of a paint itself; None where it says nothing."""

    id: str
    name: str | None = None
    family: Family | None = None
    volume_solids: float | None = None
    density: float | None = None
    spreading_rate: float | None = None


@dataclass(frozen=True, slots=True)
class Sheet:
    """The strips of a sheet in its order, what it says of paints, and what was assumed."""

    name: str
    strips: tuple[Strip, ...]
    paints: dict[str, NewPaint]
    notes: tuple[str, ...] = ()


def read_sheet(path: Path) -> Sheet:
    """Read a sheet of brush-outs.

    Raises
    ------
    MendableError
        If it cannot be opened, is not text or not a sheet; the message names the line.
    """
    text = read_text(path, "a sheet", say(_KIND.layout))
    return parse_sheet(text, path.name)


def parse_sheet(text: str, name: str) -> Sheet:
    """Read a sheet of brush-outs from the text of a CSV file.

    Raises
    ------
    MendableError
        If a column is missing or a cell impossible.
    """
    rows, header = read_rows(text, name, _KIND)
    missing = [column for column in ("id", "mix") if column not in header]
    if missing:
        raise MendableError(
            say("{name} has no column {columns}.", name=name, columns=neither(missing)),
            say("A sheet needs the columns id and mix, and what was read of each."),
        )
    nm, columns = _bands(header, name)
    notes: list[str] = []
    strips = tuple(_strip(row, nm, columns) for row in rows)
    paints: dict[str, NewPaint] = {}
    for row, strip in zip(rows, strips, strict=True):
        _add_paint(row, strip, paints, notes)
    return Sheet(name, strips, paints, tuple(dict.fromkeys(notes)))


def _bands(header: list[str], name: str) -> tuple[Floats, tuple[str, ...]]:
    """Find the spectral columns, ``r_400`` or plain ``400``."""
    found: dict[float, str] = {}
    for column in header:
        number = column.removeprefix("r_").removesuffix("nm")
        if number.replace(".", "", 1).isdecimal():
            found[float(number)] = column
    nm = np.array(sorted(found))
    return (checked_grid(nm, name) if found else nm), tuple(found[w] for w in sorted(found))


def _strip(row: Row, nm: Floats, columns: tuple[str, ...]) -> Strip:
    id_ = row.text("id")
    if not id_:
        raise MendableError(
            say("Line {line} of the sheet has no id.", line=row.line),
            say(
                "Give each film an id of its own, such as blue-1; the same for one film over "
                "several grounds."
            ),
        )
    return Strip(
        line=row.line,
        id=id_,
        mix=mix_cell(row),
        over=over_cell(row),
        coats=row.between("coats", None, 0, 20),
        thickness=row.between("thickness_mm", None, 0, 5),
        lab=lab_cell(row),
        reflectance=spectrum_cell(row, nm, columns),
        reading=row.text("reading"),
        usually_off=row.between("usually_off", None, 0, 30),
    )


def _add_paint(row: Row, strip: Strip, paints: dict[str, NewPaint], notes: list[str]) -> None:
    """Keep what a row says of the paint that it is of."""
    for id_, _ in strip.mix:
        paints.setdefault(id_, NewPaint(id_))
    said = {
        "name": row.text("name") or None,
        "family": family_cell(row, notes) if row.text("family") else None,
        "volume_solids": row.between("volume_solids", None, 0, 1),
        "density": row.between("density_g_per_ml", None, 0.5, 4),
        "spreading_rate": row.between("spreading_m2_per_l", None, 0, 100),
    }
    given = {key: value for key, value in said.items() if value is not None}
    if not given or len(strip.mix) != 1:
        return
    paint = paints[strip.mix[0][0]]
    for key, value in given.items():
        if getattr(paint, key) not in {None, value}:
            raise MendableError(
                say(
                    "Line {line} of the sheet gives {id} another {what} than a line before.",
                    line=row.line,
                    id=paint.id,
                    what=say_in(_OF_PAINT, _SAID_OF_PAINT[key]),
                ),
                say("Say it once, or the same each time."),
            )
    paints[paint.id] = replace(paint, **given)  # type: ignore[arg-type]


def sheet_text(strips: Sequence[Strip], words: Sequence[str]) -> str:
    """Write a sheet to fill in, with what is to be done in words beside each strip."""
    out = StringIO()
    rows = writer(out, lineterminator="\n")
    rows.writerow(["id", "mix", "over", "coats", "l", "a", "b", "reading", "what_to_do"])
    for strip, text in zip(strips, words, strict=True):
        mix = " ".join(f"{id_}={parts:g}" for id_, parts in strip.mix) or BARE
        coats = "" if strip.coats is None else f"{strip.coats:g}"
        over = strip.over or ("hides" if strip.mix else "")
        rows.writerow([strip.id, mix, over, coats, "", "", "", "", text])
    return out.getvalue()
