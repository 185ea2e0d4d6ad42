"""How fast a sheet is made, against a bare page of the same fonts in the same run.

The bare page embeds both fonts and writes forty lines, by the same PDF library, and the same
renderer makes a picture of it. In an ordinary test run each is made once and only what comes out is
judged.
"""

from __future__ import annotations

from io import BytesIO
from time import perf_counter
from typing import TYPE_CHECKING

from reportlab.pdfgen.canvas import Canvas

from swatchwright.acts.recipes import typed_colour
from swatchwright.acts.sheet import content_of_mix, document_of, pictures_of
from swatchwright.sheet.lettering import font_name
from swatchwright.shelf.csv_file import demo_shelf

if TYPE_CHECKING:
    from pytest_benchmark.fixture import BenchmarkFixture

PARTS = [("strong-red-orange", 361.0), ("pale-blue-greyish", 96.0), ("strong-yellow-orange", 43.0)]
SHELF = demo_shelf()

MOST = 6.0
"""Times a bare page that a whole sheet of two pages may take, from the recipe to its pictures."""


def whole_sheet() -> tuple[bytes, tuple[bytes, ...]]:
    """Put a sheet together, lay it out, and make pictures of it."""
    content = content_of_mix(SHELF, PARTS, title="Blanket box", wanted=typed_colour(46, 34, 24))
    pdf = document_of(content)
    return pdf, pictures_of(pdf, dpi=100)


def bare_page() -> tuple[bytes, tuple[bytes, ...]]:
    """Write forty lines in both fonts on a page, and make a picture of it."""
    file = BytesIO()
    canvas = Canvas(file, invariant=1)
    for line in range(40):
        canvas.setFont(font_name(bold=line % 2 == 0), 9)
        canvas.drawString(50, 800 - 12 * line, f"Strong red, slightly orange: line {line}")
    canvas.save()
    pdf = file.getvalue()
    return pdf, pictures_of(pdf, dpi=100)


def test_a_sheet_takes_a_few_bare_pages(benchmark: BenchmarkFixture) -> None:
    """A whole sheet is made in the time of a few bare pages."""
    pdf, pictures = benchmark(whole_sheet)
    assert pdf.startswith(b"%PDF")
    assert pictures[0].startswith(b"\x89PNG")
    assert bare_page()[0].startswith(b"%PDF")
    if benchmark.disabled:
        return
    times = []
    for _ in range(5):
        start = perf_counter()
        bare_page()
        times.append(perf_counter() - start)
    assert benchmark.stats is not None
    ratio = benchmark.stats.stats.median / min(times)
    benchmark.extra_info["times a bare page"] = round(ratio, 1)
    assert ratio < MOST
