"""The codes of sheets and labels, decoded by ZXing from their pictures."""

from __future__ import annotations

from dataclasses import replace
from io import BytesIO
from typing import TYPE_CHECKING

import pytest
from PIL import Image, ImageFilter

from outside.printed_sheet import PARTS, box, crowded, scanned
from swatchwright.acts.sheet import (
    LABELS,
    LabelSize,
    content_of_mix,
    document_of,
    pictures_of,
    read_code,
)
from swatchwright.sheet.square_code import code_side
from swatchwright.shelf.csv_file import demo_shelf

if TYPE_CHECKING:
    pass


def test_the_code_of_a_sheet_is_read_from_its_picture() -> None:
    """The rendered code gives the text that was put in, and that the recipe."""
    texts = scanned(pictures_of(document_of(box()), dpi=150)[0])
    assert texts == [box().zones[0].code]
    assert [(p.id, p.parts) for p in read_code(texts[0]).paints] == PARTS


@pytest.mark.parametrize("size", LABELS, ids=lambda size: size.name)
def test_the_code_of_a_label_is_read_from_its_picture(size: LabelSize) -> None:
    """The smaller code of a label gives paints, parts, volume and colours."""
    (text,) = scanned(pictures_of(document_of(box(), label=size), dpi=300)[0])
    recipe = read_code(text)
    assert [(p.id, p.parts) for p in recipe.paints] == PARTS
    assert recipe.ml == 512.3
    assert recipe.dry is not None


def test_all_codes_of_a_full_page_are_read() -> None:
    """On a full page of the smallest labels every code can be read."""
    pdf = document_of(box(), label=LABELS[1], fill=True)
    assert len(scanned(pictures_of(pdf, dpi=300)[0])) == 21


def test_a_tired_photo_of_the_code_is_still_read() -> None:
    """Tilted, blurred, grey and saved as a small JPEG, the code can still be read."""
    with Image.open(BytesIO(pictures_of(document_of(box()), dpi=200)[0])) as page:
        worse = page.convert("L").rotate(7, fillcolor=255).filter(ImageFilter.GaussianBlur(0.8))
        file = BytesIO()
        worse.save(file, "JPEG", quality=60)
    assert scanned(file.getvalue()) == [box().zones[0].code]


def test_letters_of_all_kinds_come_through_a_code() -> None:
    """A title with accents and Greek is read from the picture as it was written."""
    content = content_of_mix(demo_shelf(), PARTS, title="Żółta skrzynia δ é − 箱")
    (text,) = scanned(pictures_of(document_of(content), dpi=150)[0])
    assert read_code(text).title == "Żółta skrzynia δ é − 箱"


def test_the_largest_code_is_still_coarse_enough() -> None:
    """Eight paints with long names make a code whose modules are a third of a mm or more."""
    zone = crowded().zones[0]
    assert len(zone.code.encode()) <= 600
    assert 40.0 / code_side(zone.code) >= 0.33
    texts = scanned(pictures_of(document_of(replace(box(), zones=(zone,))), dpi=200)[0])
    assert texts == [zone.code]


# --- in German -----------------------------------------------------------------------------------
