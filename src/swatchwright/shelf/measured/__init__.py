"""Measurement files in and out: CSV, CGATS.17 text (ISO 28178) and CxF3 (ISO 17972).

A file is known by what is in it when it is read, whatever it is called.
"""

from __future__ import annotations

import codecs
from datetime import UTC, datetime
from enum import StrEnum
from pathlib import Path

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.shelf.measured.cgats import looks_like_cgats, parse_cgats, to_cgats
from swatchwright.shelf.measured.csv_rows import parse_csv, to_csv
from swatchwright.shelf.measured.cxf import parse_cxf, to_cxf
from swatchwright.shelf.measured.values import Measurement, Measurements, on_grid

__all__ = [
    "FileFormat",
    "Measurement",
    "Measurements",
    "on_grid",
    "parse_measurements",
    "read_measurements",
    "write_measurements",
]

LARGEST_FILE = 20_000_000

_BINARY = set(map(chr, [*range(9), *range(14, 28)]))


class FileFormat(StrEnum):
    """The formats that measurements are written in."""

    CSV = "csv"
    CGATS = "cgats"
    CXF = "cxf"


_SUFFIXES = {
    ".csv": FileFormat.CSV,
    ".txt": FileFormat.CGATS,
    ".cgats": FileFormat.CGATS,
    ".it8": FileFormat.CGATS,
    ".cxf": FileFormat.CXF,
    ".xml": FileFormat.CXF,
}


def read_measurements(path: Path) -> Measurements:
    """Read a file of measurements, of whichever format it is.

    Raises
    ------
    MendableError
        If it cannot be opened, is larger than 20 MB, or is not a measurement file; the message
        names the line or the sample.
    """
    try:
        with path.open("rb") as file:
            data = file.read(LARGEST_FILE + 1)
    except OSError as error:
        raise MendableError(
            say("The measurement file {path} could not be opened.", path=path),
            say("Check its name and place."),
        ) from error
    return parse_measurements(data, path.name)


def parse_measurements(data: bytes, name: str) -> Measurements:
    """Read measurements from the bytes of a file that is called `name`.

    Raises
    ------
    MendableError
        As `read_measurements`.
    """
    if len(data) > LARGEST_FILE:
        raise MendableError(
            say("{name} is larger than 20 MB, too large for measurements.", name=name),
            say("Export the samples you need."),
        )
    text, note = _decoded(data, name)
    if text.lstrip("\ufeff \t\r\n").startswith("<"):
        return parse_cxf(data, name)
    found = parse_cgats(text, name) if looks_like_cgats(text) else parse_csv(text, name)
    return Measurements(found.name, found.rows, (*note, *found.notes))


def _decoded(data: bytes, name: str) -> tuple[str, tuple[str, ...]]:
    """Decode UTF-8 or UTF-16 with its mark, or else the western encoding of older programs."""
    note: tuple[str, ...] = ()
    try:
        if data.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
            text = data.decode("utf-16")
        else:
            text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        text = data.decode("cp1252", errors="replace")
        told = say("The text is not UTF-8; it was read as western European, so check the names.")
        note = (told,)
    if not _BINARY.isdisjoint(text[:100_000]) or not text.strip():
        raise MendableError(
            say("{name} is not a measurement file: it is empty or not plain text.", name=name),
            say("Export the measurements as CSV, CGATS text or CxF."),
        )
    return text, note


def write_measurements(
    measured: Measurements,
    path: Path,
    file_format: FileFormat | None = None,
    *,
    made: datetime | None = None,
) -> None:
    """Write measurements to a file, in a format that is given or else told by the suffix.

    Parameters
    ----------
    measured
        What to write; its notes are about how it was read, and are not written.
    path
        Where to.
    file_format
        CSV, CGATS text or CxF.
    made
        The time to write into CGATS text and CxF; now, where none is given.

    Raises
    ------
    MendableError
        If the suffix tells no format, the format cannot hold the measurements, or the file cannot
        be written.
    """
    chosen = file_format or _SUFFIXES.get(path.suffix.lower())
    if chosen is None:
        raise MendableError(
            say("“{name}” does not tell in which format to write.", name=path.name),
            say("End its name in .csv, .txt (CGATS text) or .cxf."),
        )
    if not measured.rows:
        raise MendableError(say("There are no measurements to write."), say("Choose some first."))
    now = made or datetime.now(UTC).replace(microsecond=0)
    match chosen:
        case FileFormat.CSV:
            data = to_csv(measured).encode()
        case FileFormat.CGATS:
            data = to_cgats(measured, now).encode()
        case FileFormat.CXF:
            data = to_cxf(measured, now)
    try:
        path.write_bytes(data)
    except OSError as error:
        raise MendableError(
            say("The measurement file {path} could not be written.", path=path),
            say("Choose another place for it."),
        ) from error
