"""Shelf files: plain CSV with a row a paint.

Columns (docs/files.md): ``id, name, family``, then any of ``how_known, hiding, volume_solids,
density_g_per_ml, spreading_m2_per_l, tins_ml, prices, note, unit, glare, wet_scattering, milk``,
then ``k_400 .. k_700`` and ``s_400 .. s_700`` (absorption and scattering per mm of dry film) on any
regular grid of wavelengths. Semicolon files with comma decimals, as some spreadsheets write them,
are read too. How well the paints are known may stand in a second file (`spread_file`).
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from importlib.resources import files
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.spectrum import WAVELENGTHS, to_grid
from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.paint.paints import Paint
from swatchwright.shelf.paint_cells import (
    PER_MM,
    family_cell,
    hiding_cell,
    how_known_cell,
    own_finish_cells,
    tins_cell,
    unit_cells,
)
from swatchwright.shelf.plain_text import read_text, write_text
from swatchwright.shelf.rows import FileKind, Row, neither, read_rows
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.spread_file import with_spreads

__all__ = ["demo_shelf", "parse_shelf", "read_shelf", "save_demo_shelf"]

Floats = NDArray[np.floating[Any]]

_KIND = FileKind(
    place="the shelf",
    things="paints",
    layout=mark("A shelf is a CSV file with a line of column names, then a line for each paint."),
    most=5000,
    also_called={
        "density": "density_g_per_ml",
        "finish": "family",
        "price": "prices",
        "solids": "volume_solids",
        "spreading_rate": "spreading_m2_per_l",
        "tin_sizes": "tins_ml",
        "tins": "tins_ml",
    },
)

# A white house paint scatters about 110 per mm. A shelf whose best scatterer is far below that
# is in units of its own, commonly of its white.
_WHITE_S = 110.0
_RELATIVE_BELOW = 10.0

# Far beyond any paint, in any unit.
_MOST = 1e6
_LEAST_MEAN_S = 1e-6

# Scattering of nothing would divide by zero; a ten-thousandth of the shelf's best is a clear film.
_LEAST_S = 1e-4


@dataclass(frozen=True, slots=True)
class _Bands:
    """Where the spectra stand in a row, and at which wavelengths."""

    nm: Floats
    k: tuple[str, ...]
    s: tuple[str, ...]


def demo_shelf() -> Shelf:
    """Give the shelf of the demonstration: 24 invented paints, named in the language in use."""
    text = files("swatchwright.shelf").joinpath("demo_shelf.csv").read_text(encoding="utf-8")
    shelf = parse_shelf(text, mark("the demonstration shelf"))
    named = tuple(
        replace(paint, name=say(paint.name), note=say(paint.note)) for paint in shelf.paints
    )
    return replace(shelf, paints=named)


def save_demo_shelf(path: Path) -> None:
    """Write the demonstration shelf's file, as an example to fill in.

    Raises
    ------
    MendableError
        If it cannot be written there.
    """
    text = files("swatchwright.shelf").joinpath("demo_shelf.csv").read_text(encoding="utf-8")
    write_text(path, text, "a shelf")


def read_shelf(path: Path) -> Shelf:
    """Read a shelf file.

    Raises
    ------
    MendableError
        If it cannot be opened, is not text, or is not a shelf; the message names the line.
    """
    mend = say("A shelf is a CSV file; save it from your spreadsheet as CSV (UTF-8).")
    text = read_text(path, "a shelf", mend)
    return with_spreads(parse_shelf(text, path.name), path)


def parse_shelf(text: str, name: str) -> Shelf:
    """Read a shelf from the text of a CSV file.

    Raises
    ------
    MendableError
        If it is empty, a column or a spectrum is missing or a value impossible.
    """
    rows, header = read_rows(text, name, _KIND)
    bands = _bands(header, name)
    notes: list[str] = []
    paints = [_paint(row, bands, notes) for row in rows]
    _check_ids(paints, rows)
    if bands.nm[0] > WAVELENGTHS[0] or bands.nm[-1] < WAVELENGTHS[-1]:
        notes.append(
            say(
                "Spectra from {first:g} to {last:g} nm; held at their end values beyond, "
                "to 380 and 730 nm.",
                first=bands.nm[0],
                last=bands.nm[-1],
            )
        )
    per_mm = unit_cells(rows) == PER_MM
    found = _off_zero(paints) if per_mm else _off_zero(_in_units(paints, notes))
    return Shelf(name, tuple(found), tuple(dict.fromkeys(notes)))


def _bands(header: list[str], name: str) -> _Bands:
    """Find the spectral columns and check that they are a regular grid, the same for K and S."""
    missing = [column for column in ("id", "name", "family") if column not in header]
    if missing:
        raise MendableError(
            say("{name} has no column {columns}.", name=name, columns=neither(missing)),
            say(
                "A shelf starts with the columns id, name, family, as the demonstration shelf does."
            ),
        )
    found = {letter: _wavelengths(header, letter) for letter in "ks"}
    if len(found["k"]) < 2 or set(found["k"]) != set(found["s"]):
        raise MendableError(
            say("{name} does not have K and S of its paints at the same wavelengths.", name=name),
            say("It needs columns such as k_400, k_410, ... k_700 and s_400, s_410, ... s_700."),
        )
    nm = np.array(sorted(found["k"]))
    steps = np.diff(nm)
    if np.ptp(steps) > 1e-6 or nm[0] > 420 or nm[-1] < 680 or steps[0] > 20:
        raise MendableError(
            say(
                "{name} has spectra at {first:g} to {last:g} nm that are not a regular grid over "
                "the visible range.",
                name=name,
                first=nm[0],
                last=nm[-1],
            ),
            say("Use even steps of at most 20 nm, from 400 nm or below to 700 nm or above."),
        )
    return _Bands(nm, *(tuple(found[letter][w] for w in nm.tolist()) for letter in "ks"))


def _wavelengths(header: list[str], letter: str) -> dict[float, str]:
    columns = [column for column in header if column.startswith(f"{letter}_")]
    return {
        float(column[2:]): column
        for column in columns
        if column[2:].replace(".", "", 1).isdecimal()
    }


def _paint(row: Row, bands: _Bands, notes: list[str]) -> Paint:
    id_ = row.text("id")
    if not id_ or any(c in id_ for c in " =\t"):
        raise MendableError(
            say("Line {line} of the shelf has “{id}” as its id.", line=row.line, id=id_),
            say("Give each paint a short id without spaces or equals signs, such as deep-blue."),
        )
    family = family_cell(row, notes)
    return Paint(
        id=id_,
        name=row.text("name") or id_,
        family=family,
        K=to_grid(bands.nm, _spectrum(row, bands.k)),
        S=_scattering(row, to_grid(bands.nm, _spectrum(row, bands.s))),
        how_known=how_known_cell(row),
        volume_solids=row.between("volume_solids", 0.38, 0, 1) or 0.0,
        density=row.between("density_g_per_ml", None, 0.5, 4),
        spreading_rate=row.between("spreading_m2_per_l", 12.0, 0, 100) or 0.0,
        tins=tins_cell(row),
        note=row.text("note"),
        own_finish=own_finish_cells(row, family),
        hiding_read=hiding_cell(row),
    )


def _spectrum(row: Row, columns: tuple[str, ...]) -> Floats:
    texts = [row.text(column) for column in columns]
    if "" in texts:
        raise MendableError(
            say(
                "Line {line} of the shelf lacks a value under {column}.",
                line=row.line,
                column=columns[texts.index("")],
            ),
            say("Every paint needs K and S at every wavelength."),
        )
    values = np.array([row.parsed(c, t) for c, t in zip(columns, texts, strict=True)])
    if np.any(values < 0):
        column = columns[int(np.argmax(values < 0))]
        raise MendableError(
            say(
                "Line {line} of the shelf has a negative value under {column}.",
                line=row.line,
                column=column,
            ),
            say("Absorption and scattering are never below zero; measure or fit that paint again."),
        )
    if np.any(values > _MOST):
        worst = int(np.argmax(values))
        raise MendableError(
            say(
                "Line {line} of the shelf has {value:g} under {column}.",
                line=row.line,
                value=values[worst],
                column=columns[worst],
            ),
            say(
                "Absorption and scattering per mm are at most {most:,.0f}; check the decimal "
                "point.",
                most=_MOST,
            ),
        )
    return values


def _scattering(row: Row, S: Floats) -> Floats:
    """Refuse a paint that scatters nothing."""
    if S.mean() < _LEAST_MEAN_S:
        raise MendableError(
            say("Line {line} of the shelf has a scattering of zero throughout.", line=row.line),
            say("A paint that hides needs some scattering."),
        )
    return S


def _check_ids(paints: list[Paint], rows: list[Row]) -> None:
    seen: dict[str, int] = {}
    for paint, row in zip(paints, rows, strict=True):
        if paint.id in seen:
            raise MendableError(
                say(
                    "Lines {first} and {second} of the shelf have the same id, {id}.",
                    first=seen[paint.id],
                    second=row.line,
                    id=paint.id,
                ),
                say("Give each paint an id of its own."),
            )
        seen[paint.id] = row.line


def _in_units(paints: list[Paint], notes: list[str]) -> list[Paint]:
    """Bring spectra that look like relative units to 1/mm."""
    best = max(float(paint.S.mean()) for paint in paints)
    if best >= _RELATIVE_BELOW:
        return paints
    notes.append(
        say(
            "K and S look like relative units (the best scatterer has a mean S of {best:.3g}); "
            "they were scaled so that it has {white:g} per mm, as white house paint does. Mixed "
            "colours do not depend on this; hiding and the wet look do.",
            best=best,
            white=_WHITE_S,
        )
    )
    scale = _WHITE_S / best
    return [
        # How strong the white is was taken, and with it how all of them hide.
        replace(p, K=p.K * scale, S=p.S * scale, hiding_read=p.hiding_read or False)
        for p in paints
    ]


def _off_zero(paints: list[Paint]) -> list[Paint]:
    """Keep S off zero."""
    least = _LEAST_S * max(float(paint.S.mean()) for paint in paints)
    return [replace(paint, S=np.maximum(paint.S, least)) for paint in paints]
