"""Measurements as plain CSV, a row a sample.

Columns (docs/files.md): ``id`` and ``name``, one of which may be left out; then spectra under
``r_400``, ``r_410`` … or plain ``400``, ``410`` …, or colours under ``lab_l, lab_a, lab_b`` with
``illuminant`` and ``observer``, or both. Other columns are passed over.
"""

from __future__ import annotations

import csv
import re
from io import StringIO

from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.shelf.measured.reading import Reading, Viewing
from swatchwright.shelf.measured.rules import (
    MOST_SAMPLES,
    is_band,
    measurements,
    number,
    refuse_repeated,
)
from swatchwright.shelf.measured.told import band_told, clean, line_told, under
from swatchwright.shelf.measured.values import Measurements
from swatchwright.shelf.rows import FileKind, Row, read_rows

__all__ = ["parse_csv", "to_csv"]

_BAND = re.compile(r"(?:r_?|nm_?|spectral_(?:nm_?)?)?(\d{3,4}(?:[.,]\d+)?) ?(?:nm)?", re.ASCII)
_LAB = (("lab_l", "lab_a", "lab_b"), ("l*", "a*", "b*"))
_LAYOUT = mark(
    "Such a file has a line of column names, id, name and r_400, r_410 … r_700 or lab_l, lab_a, "
    "lab_b, then a line for each sample."
)


def parse_csv(text: str, name: str) -> Measurements:
    """Read measurements from the text of a CSV file.

    Raises
    ------
    MendableError
        If there are no such columns or no rows, or a sample is not as `rules` wants it.
    """
    rows, header = read_rows(text, name, FileKind(name, "samples", _LAYOUT, MOST_SAMPLES))
    bands = _bands(header, name)
    lab = next((names for names in _LAB if set(names) <= set(header)), None)
    if not bands and lab is None:
        raise MendableError(
            say("{name} has neither columns of reflectance nor of Lab values.", name=name),
            say(_LAYOUT),
        )
    refuse_repeated((column for column in header if column), name)
    return measurements(name, [_reading(row, bands, lab) for row in rows], "D65")


def _bands(header: list[str], name: str) -> dict[str, float]:
    """Give the spectral columns with their wavelengths."""
    named = {
        column: float(band[1].replace(",", "."))
        for column in header
        if (band := _BAND.fullmatch(column))
    }
    found = {column: nm for column, nm in named.items() if is_band(nm)}
    refuse_repeated((band_told(nm) for nm in found.values()), name)
    return found


def _reading(row: Row, bands: dict[str, float], lab: tuple[str, ...] | None) -> Reading:
    where = _where(row)
    values = _filled(row, tuple(bands), where)
    colour = _filled(row, lab or (), where)
    if not values and not colour:
        raise MendableError(
            say("{where} has no reflectance and no Lab values.", where=where),
            say("Fill them in, or delete the line."),
        )
    observer = re.match(r"\d+", row.text("observer"))
    return Reading(
        place=say("line {line}", line=row.line),
        id=row.text("id"),
        name=row.text("name"),
        spectrum=tuple(zip(bands.values(), values, strict=True)) if values else (),
        lab=(colour[0], colour[1], colour[2]) if colour else None,
        viewing=Viewing(
            row.text("illuminant") or None,
            observer[0] if observer else row.text("observer") or None,
        ),
    )


def _where(row: Row) -> str:
    known = clean(row.text("id") or row.text("name"))
    if known:
        return line_told(row.line, row.place, known)
    return say("Line {line} of {file}", line=row.line, file=row.place)


def _filled(row: Row, columns: tuple[str, ...], where: str) -> list[float]:
    """Read the numbers under these columns, all of which are needed; none if all are empty."""
    texts = {column: row.text(column) for column in columns}
    if not any(texts.values()):
        return []
    return [number(text, under(where, column)) for column, text in texts.items()]


def to_csv(measured: Measurements) -> str:
    """Write measurements as CSV, so that they read back equal.

    Raises
    ------
    MendableError
        If the spectra stand on different wavelengths, which one table cannot hold.
    """
    grids = {tuple(m.nm.tolist()): None for m in measured.rows if m.reflectance is not None}
    if len(grids) > 1:
        raise MendableError(
            say(
                "The samples of {name} were measured at different wavelengths, which one CSV "
                "table cannot hold.",
                name=measured.name,
            ),
            say("Write them as CGATS text or CxF."),
        )
    nm = next(iter(grids), ())
    coloured = any(m.lab is not None for m in measured.rows)
    head = ["id", "name", *(f"r_{w!r}".removesuffix(".0") for w in nm)]
    head += ["lab_l", "lab_a", "lab_b", "illuminant", "observer"] if coloured else []
    out = StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(head)
    for m in measured.rows:
        cells = [clean(m.id), clean(m.name)]
        cells += [""] * len(nm) if m.reflectance is None else map(repr, m.reflectance.tolist())
        if coloured:
            cells += [""] * 5 if m.lab is None else [*map(repr, m.lab.triple), "D65", "2"]
        writer.writerow(cells)
    return out.getvalue()
