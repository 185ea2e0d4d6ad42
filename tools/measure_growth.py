"""Measure how the search grows with the shelf, and draw it: docs/performance.md.

Run ``python tools/measure_growth.py`` from the root on a machine that does little else.
"""

from __future__ import annotations

import os
import resource
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from math import comb, log10
from pathlib import Path
from time import perf_counter, process_time
from typing import Any

import numpy as np
import scipy.optimize
from numpy.typing import NDArray

ROOT = Path(__file__).parents[1]
sys.path.insert(0, str(ROOT / "tests"))

from swatchwright.colour.difference import delta_e_2000  # noqa: E402
from swatchwright.mixing.search import find_recipes  # noqa: E402
from swatchwright.paint.mixture import quick_dry_lab  # noqa: E402
from swatchwright.paint.paints import PaintStack, stack  # noqa: E402
from swatchwright.values import Lab  # noqa: E402
from unit.mixing.composed import composed  # noqa: E402

SIZES = (20, 60, 120, 300)
WANTED = {
    "mid blue": Lab(45, 0, -30),
    "clay red": Lab(45, 32, 24),
    "out of reach": Lab(50, 80, 40),
}
SAMPLE = 40

_HEAD = (
    '<svg xmlns="http://www.w3.org/2000/svg" width="640" height="350" '
    'font-family="sans-serif" font-size="12">'
)

optimize: Any = scipy.optimize

Floats = NDArray[Any]


@dataclass(frozen=True, slots=True)
class Row:
    """One shelf and one colour: sets, seconds of search, with its proof, and of the plain way."""

    paints: int
    wanted: str
    sets: int
    search: float
    proven: float
    processor: float
    closest: float
    gap: float | None
    plain: float


def plain_seconds(each: PaintStack, wanted: Lab, sets: int) -> float:
    """Time SLSQP from equal shares on a sample of triples and scale it to all sets."""
    rng = np.random.default_rng(3)
    start = perf_counter()
    for _ in range(SAMPLE):
        which = rng.choice(len(each), 3, replace=False)[None]

        def apart(shares: Floats, which: Floats = which) -> float:
            inside = np.maximum(shares, 1e-9)[None]
            return float(delta_e_2000(wanted.triple, quick_dry_lab(each, which, inside))[0])

        optimize.minimize(
            apart,
            np.full(3, 1 / 3),
            method="SLSQP",
            bounds=[(0, 1)] * 3,
            constraints={"type": "eq", "fun": lambda shares: shares.sum() - 1},
        )
    return (perf_counter() - start) / SAMPLE * sets


def measured() -> Iterator[Row]:
    """Measure every size and colour."""
    for count in SIZES:
        shelf = composed(count)
        sets = count + comb(count, 2) + comb(count, 3)
        for name, wanted in WANTED.items():
            start = perf_counter()
            find_recipes(wanted, shelf)
            search = perf_counter() - start
            start, used = perf_counter(), process_time()
            found = find_recipes(wanted, shelf, proven=True)
            proven, used = perf_counter() - start, process_time() - used
            plain = plain_seconds(stack(shelf), wanted, sets)
            row = Row(
                count, name, sets, search, proven, used, found.closest, found.proven_gap, plain
            )
            print(table_row(row), f"load {os.getloadavg()[0]:.1f}", flush=True)
            yield row


def table_row(row: Row) -> str:
    """Give a row of the table in Markdown."""
    gap = "-" if row.gap is None else f"{row.gap:.3f}"
    return (
        f"| {row.paints} | {row.sets:,} | {row.wanted} | {row.search:.2f} | {row.proven:.2f} | "
        f"{row.processor:.1f} | {row.closest:.3f} | {gap} | {row.plain:,.0f} | "
        f"{row.plain / row.search:,.0f} |"
    )


def drawn(rows: list[Row]) -> str:
    """Draw seconds over paints, both in logarithms, as SVG."""

    def place(paints: float, seconds: float) -> str:
        x = 70 + 430 * log10(paints / 15) / log10(400 / 15)
        y = 300 - 270 * (log10(max(seconds, 0.01)) + 2) / 7
        return f"{x:.1f},{y:.1f}"

    lines = [
        _HEAD,
        '<rect width="640" height="350" fill="white"/>',
    ]
    for power in range(-2, 6):
        y = place(15, 10.0**power).split(",")[1]
        lines.append(f'<line x1="70" x2="500" y1="{y}" y2="{y}" stroke="#ddd"/>')
        lines.append(f'<text x="62" y="{y}" dy="4" text-anchor="end">{10.0**power:g} s</text>')
    for count in SIZES:
        x = place(count, 1).split(",")[0]
        lines.append(f'<text x="{x}" y="320" text-anchor="middle">{count}</text>')
    lines.append('<text x="285" y="340" text-anchor="middle">paints on the shelf</text>')
    for name, colour, dash in (
        ("mid blue", "#16b", ""),
        ("clay red", "#c60", "6 3"),
        ("out of reach", "#222", "2 3"),
    ):
        mine = [r for r in rows if r.wanted == name]
        points = " ".join(place(r.paints, r.proven) for r in mine)
        lines.append(
            f'<polyline points="{points}" fill="none" stroke="{colour}" stroke-width="2" '
            f'stroke-dasharray="{dash}"/>'
        )
        x, y = place(mine[-1].paints, mine[-1].proven).split(",")
        lines.append(f'<text x="{x}" y="{y}" dx="8" dy="4" fill="{colour}">{name}</text>')
    mine = [r for r in rows if r.wanted == "mid blue"]
    points = " ".join(place(r.paints, r.plain) for r in mine)
    lines.append(f'<polyline points="{points}" fill="none" stroke="#555" stroke-width="2"/>')
    x, y = place(mine[-1].paints, mine[-1].plain).split(",")
    lines.append(f'<text x="{x}" y="{y}" dx="8" dy="4" fill="#555">set by set, scipy</text>')
    return "\n".join([*lines, "</svg>", ""])


def main() -> None:
    """Measure, draw, and print the table."""
    rows = list(measured())
    (ROOT / "docs" / "pictures" / "growth.svg").write_text(drawn(rows), encoding="utf-8")
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(f"peak memory of the process {peak:.0f} MiB, load {os.getloadavg()}")


if __name__ == "__main__":
    main()
