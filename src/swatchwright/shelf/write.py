"""Writing a shelf: a CSV file that a spreadsheet opens, and beside it how well paints are known."""

from __future__ import annotations

import csv
from io import StringIO
from pathlib import Path

from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.paint.paints import Paint
from swatchwright.shelf.paint_cells import HIDING, NO_PRICE, PER_MM
from swatchwright.shelf.plain_text import write_text
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.spread_file import spread_path, spread_text

__all__ = ["shelf_text", "write_shelf"]

_HEAD = [
    *("id", "name", "family", "how_known", "hiding", "volume_solids", "density_g_per_ml"),
    *("spreading_m2_per_l", "tins_ml", "prices", "note", "unit"),
    *("glare", "wet_scattering", "milk"),
    *(f"{letter}_{nm:g}" for letter in "ks" for nm in WAVELENGTHS),
]


def shelf_text(shelf: Shelf) -> str:
    """Write a shelf as `read_shelf` reads it back, to the last digit."""
    out = StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(_HEAD)
    writer.writerows(_cells(paint) for paint in shelf.paints)
    return out.getvalue()


def write_shelf(shelf: Shelf, path: Path) -> tuple[Path, ...]:
    """Write a shelf to a file and, where it is told, how well its paints are known beside it.

    Returns
    -------
    The files that were written.

    Raises
    ------
    MendableError
        If the shelf is empty or a file cannot be written.
    """
    if not shelf.paints:
        raise MendableError(say("There are no paints to write."), say("Fit or choose some first."))
    write_text(path, shelf_text(shelf), "a shelf")
    beside, text = spread_path(path), spread_text(shelf.paints)
    if text is None:
        # One that is left from before would speak of other paints.
        beside.unlink(missing_ok=True)
        return (path,)
    write_text(beside, text, "a doubt")
    return path, beside


def _cells(paint: Paint) -> list[str]:
    own = paint.own_finish
    finish = ("", "", "") if own is None else (own.glare, own.wet_scattering, own.milk)
    priced = any(tin.price is not None for tin in paint.tins)
    prices = (NO_PRICE if tin.price is None else _number(tin.price) for tin in paint.tins)
    return [
        *(paint.id, paint.name, paint.family.value, paint.how_known.value),
        "" if paint.hiding_read is None else HIDING[paint.hiding_read],
        *(_number(v) for v in (paint.volume_solids, paint.density, paint.spreading_rate)),
        ";".join(_number(tin.ml) for tin in paint.tins),
        ";".join(prices) if priced else "",
        *(paint.note, PER_MM),
        *(v if isinstance(v, str) else _number(v) for v in finish),
        *(_number(v) for v in (*paint.K, *paint.S)),
    ]


def _number(value: float | None) -> str:
    return "" if value is None else repr(float(value))
