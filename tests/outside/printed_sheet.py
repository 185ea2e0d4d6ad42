"""The sheets that are read back, and what PDFium reads of them: every letter with its place."""

from __future__ import annotations

from contextlib import closing
from dataclasses import replace
from functools import cache
from io import BytesIO
from typing import Any

import numpy as np
import pypdfium2
import zxingcpp
from numpy.typing import NDArray
from PIL import Image

from swatchwright.acts.recipes import typed_colour
from swatchwright.acts.sheet import (
    LabelSize,
    Units,
    content_of_mix,
    document_of,
)
from swatchwright.measures.kitchen import Country
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.sheet.content import BatchLine, NoteLine, PieceLine, PlanLine, SheetContent
from swatchwright.shelf.csv_file import demo_shelf

Letter = tuple[int, str, NDArray[np.float64]]

PARTS = [("strong-red-orange", 361.0), ("pale-blue-greyish", 96.0), ("strong-yellow-orange", 43.0)]
WASHED = Stack((Layer(LayerKind.WASH, (("stone-grey-warm", 1.0),), passes=2),))
POINTS = 72 / 25.4
EDGE = 8.0
"""mm that most printers cannot print at the edges of a page: common practice, no source."""


@cache
def box() -> SheetContent:
    """Give the sheet of a blanket box in clay red, under a wash."""
    return box_now()


def box_now() -> SheetContent:
    """Give the same in the language that is in use."""
    return content_of_mix(
        demo_shelf(),
        PARTS,
        title="Blanket box",
        client="Harbour workshop",
        wanted=typed_colour(40, 40, 20),
        layers=WASHED,
        volume=512.3,
        units=Units(spoons=Country.UNITED_KINGDOM),
        day="2026-03-01",
    )


def crowded() -> SheetContent:
    """Give a sheet with long words without a gap, many zones, many paints, and long lists."""
    long, many = "Unbroken" * 22, [(p.id, float(i + 1)) for i, p in enumerate(_matte()[:8])]
    content = content_of_mix(demo_shelf(), many, wanted=typed_colour(50, 0, 0), layers=WASHED)
    paints = tuple(replace(p, name=f"{long} {p.name}", note=long) for p in content.zones[0].paints)
    zone = replace(content.zones[0], paints=paints, trust=(long, *content.zones[0].trust))
    return replace(
        content,
        title=f"{long} {long}",
        client=long,
        room_light=long,
        job="a-very-long-id-of-a-job-" * 2,
        brief="word " * 400,
        zones=tuple(replace(zone, name=f"{long}{i}") for i in range(3)),
        batches=tuple(BatchLine(i, "2026-03-01", 750.0, long, long) for i in range(12)),
        piece=tuple(PieceLine(long, long, 123.45, 12, 12345.6, 12346) for _ in range(6)),
        plan=tuple(PlanLine("Tue 2026-12-01", "09:00", long, long) for _ in range(12)),
        notes=(NoteLine("2026-03-01", long * 8),),
    )


def _matte() -> list[Any]:
    return [p for p in demo_shelf().paints if p.finish.waterborne]


def pages_text(pdf: bytes) -> str:
    """Give all text of a document, spaces made single."""
    with closing(pypdfium2.PdfDocument(pdf)) as document:
        texts = [page.get_textpage().get_text_range() for page in document]
    return " ".join(" ".join(texts).replace("\ufffe", "").split())


@cache
def printed(made: Any, label: LabelSize | None = None) -> list[Letter]:
    """Give the letters of a sheet, or of its labels."""
    return letters(document_of(made(), label=label))


def letters(pdf: bytes) -> list[Letter]:
    """Give each printed letter: its page, itself, and its box (left, top, right, bottom), mm."""
    found = []
    with closing(pypdfium2.PdfDocument(pdf)) as document:
        for number, page in enumerate(document):
            high, text = page.get_height(), page.get_textpage()
            for i in range(text.count_chars()):
                left, bottom, right, top = text.get_charbox(i)
                box_ = np.array([left, high - top, right, high - bottom]) / POINTS
                letter = text.get_text_range(i, 1)
                if letter.strip() and right > left and top > bottom:
                    found.append((number, letter, box_))
    return found


# --- text ----------------------------------------------------------------------------------------


def scanned(png: bytes) -> list[str]:
    """Give the texts of all codes in a picture."""
    with Image.open(BytesIO(png)) as picture:
        return [code.text for code in zxingcpp.read_barcodes(picture)]
