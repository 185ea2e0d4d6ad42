"""Texts of shelf files, put together cell by cell."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from numpy.typing import ArrayLike

GRID = tuple(range(400, 701, 10))


def columns(grid: Iterable[float] = GRID, *more: str) -> list[str]:
    """Name the columns: the three that must be, any more, then the spectra."""
    spectra = [f"{letter}_{nm:g}" for letter in "ks" for nm in grid]
    return ["id", "name", "family", *more, *spectra]


def row(
    id_: str,
    K: ArrayLike = 2.0,
    S: ArrayLike = 100.0,
    grid: Iterable[float] = GRID,
    **cells: str,
) -> dict[str, str]:
    """Fill the cells of a paint; K and S may be single numbers."""
    nm = tuple(grid)
    made = {"id": id_, "name": id_.capitalize(), "family": "chalky matte"}
    for letter, values in (("k", K), ("s", S)):
        each = np.broadcast_to(np.asarray(values, dtype=np.float64), len(nm))
        made |= {f"{letter}_{w:g}": repr(float(v)) for w, v in zip(nm, each, strict=True)}
    return made | cells


def csv_text(
    rows: Iterable[Mapping[str, str]], head: Iterable[str] | None = None, delimiter: str = ","
) -> str:
    """Write rows below a head line; where none is given it names all cells of the rows."""
    listed = list(rows)
    names = list(head) if head is not None else list(dict.fromkeys(c for r in listed for c in r))
    lines = [delimiter.join(names)]
    lines += [delimiter.join(r.get(name, "") for name in names) for r in listed]
    return "\n".join(lines) + "\n"
