"""Sheets and labels read back by others: text, fonts, colours and legibility.

The PDF is read and rendered by PDFium, colours are reckoned by colour-science, contrast by the
formula of [WCAG22].
"""

from __future__ import annotations

import ctypes
from contextlib import closing
from dataclasses import replace
from io import BytesIO
from typing import TYPE_CHECKING, Any

import colour
import numpy as np
import pypdfium2
import pypdfium2.raw as pdfium
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from outside.printed_sheet import (
    EDGE,
    PARTS,
    Letter,
    box,
    box_now,
    crowded,
    letters,
    pages_text,
    printed,
    scanned,
)
from swatchwright.acts.recipes import typed_colour
from swatchwright.acts.sheet import (
    LABELS,
    LabelSize,
    Paper,
    content_of_mix,
    document_of,
    pictures_of,
    read_code,
)
from swatchwright.colour.names import colour_name, scale_told
from swatchwright.language import ENGLISH, say, say_in, use_language
from swatchwright.sheet.content import SheetContent
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.values import Lab

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from numpy.typing import NDArray


def test_all_that_was_said_is_printed() -> None:
    """Names, ml, g, spoons, dates, layers, trust, cautions: all can be read in the PDF."""
    content = box()
    told = pages_text(document_of(content))
    zone = content.zones[0]
    for paint in zone.paints:
        for text in (paint.name, f"{paint.ml:.1f}", paint.spoons):
            assert text in told
        assert f"{paint.grams:.1f}" in told
    sentences = (*zone.pour, *zone.trust, *zone.sample, *zone.check, *content.again)
    for text in ("Blanket box", "Harbour workshop", "1 March 2026", "512.3", *sentences):
        assert " ".join(text.split()) in told
    for text in (layer[2:] for layer in zone.finish):
        assert text in told
    for caution in content.cautions:
        assert caution.do in told
    for word in ("wanted", "mix, dry", "finished", "wet", "L* 40", "Demonstration", "page 1 of"):
        assert word in told


@pytest.mark.parametrize("label", [None, LABELS[0]], ids=["sheet", "label"])
@pytest.mark.parametrize(("times", "counted"), [(1, True), (100, False)])
def test_parts_are_printed_where_they_can_be_counted(
    times: int, label: LabelSize | None, *, counted: bool
) -> None:
    """Of 23 parts to 11 both and the ml are told; of 2300 to 1100 the ml alone, which are the same.

    It says which way it is mixed: nothing speaks of parts where there are none.
    """
    parts = [("strong-red-orange", 23.0 * times), ("pale-blue-greyish", 11.0 * times)]
    content = content_of_mix(demo_shelf(), parts, volume=100, day="2026-03-01")
    assert [paint.ml for paint in content.zones[0].paints] == [67.6, 32.4]
    told = pages_text(document_of(content, label=label))
    assert {"67.6", "32.4"} <= set(told.replace(",", " ").split())
    assert ({"23", "11"} <= set(told.split())) is counted
    assert "2300" not in told
    if label is None:
        assert ("parts" in told) is counted


def test_every_page_says_whose_it_is_and_what_its_figures_mean() -> None:
    """Its foot names piece and client, and explains a difference once, in a painter's words."""
    with closing(pypdfium2.PdfDocument(document_of(box()))) as document:
        for page in document:
            told = " ".join(page.get_textpage().get_text_range().split())
            assert "Blanket box, Harbour workshop" in told
            assert told.count(scale_told()) == 1


@pytest.mark.parametrize("label", [None, *LABELS], ids=lambda v: v.name if v else "sheet")
def test_nothing_is_typed_or_reckoned_by_the_reader(label: LabelSize | None) -> None:
    """Neither a command nor its options, an id of a job or the name of a formula is on paper."""
    told = pages_text(document_of(replace(box(), job="untitled-piece"), label=label))
    for word in ("swatchwright ", " --", "untitled-piece", "CIEDE2000", "ΔE"):
        assert word not in told


def test_every_font_is_inside_the_file() -> None:
    """Both fonts travel with the PDF, so that it looks the same on every machine."""
    names = set()
    with closing(pypdfium2.PdfDocument(document_of(box()))) as document:
        for page in document:
            for item in page.get_objects(filter=[pdfium.FPDF_PAGEOBJ_TEXT]):
                font = pdfium.FPDFTextObj_GetFont(item.raw)
                assert pdfium.FPDFFont_GetIsEmbedded(font) == 1
                buffer = ctypes.create_string_buffer(200)
                pdfium.FPDFFont_GetBaseFontName(font, buffer, 200)
                names.add(buffer.value.decode().rpartition("+")[2])
    assert names == {"DejaVuSans", "DejaVuSans-Bold"}


def test_special_letters_come_through() -> None:
    """Greek, minus, dashes and accents are printed as what they are."""
    content = replace(box(), title="Δ − – µ é ł", client="Ä")
    told = pages_text(document_of(content))
    for letter in "Δ−–µéłÄ":
        assert letter in told


# --- geometry ------------------------------------------------------------------------------------


@pytest.mark.parametrize("paper", list(Paper))
@pytest.mark.parametrize("made", [box, crowded], ids=["usual", "crowded"])
def test_no_letter_leaves_the_page(paper: Paper, made: Any) -> None:
    """However long the words and lists, every letter is within the printable page."""
    wide, high = paper.size
    found = letters(document_of(made(), paper=paper)) if paper is Paper.LETTER else printed(made)
    boxes = np.array([b for _, _, b in found])
    assert len(boxes) > 500
    assert boxes[:, :2].min() >= EDGE
    assert boxes[:, 2].max() <= wide - EDGE
    assert boxes[:, 3].max() <= high - EDGE


def inside_any(boxes: NDArray[np.float64], corners: Any, size: LabelSize) -> NDArray[np.bool_]:
    """Tell which boxes lie in a label, 1.5 mm from its edges or more."""
    found = np.zeros(len(boxes), dtype=bool)
    for x, y in corners:
        low, end = np.array([x, y]) + 1.5, np.array([x + size.width, y + size.height]) - 1.5
        found |= np.all(boxes[:, :2] >= low, axis=1) & np.all(boxes[:, 2:] <= end, axis=1)
    return found


@pytest.mark.parametrize("size", LABELS, ids=lambda size: size.name)
@pytest.mark.parametrize("made", [box, crowded], ids=["usual", "crowded"])
def test_no_letter_leaves_its_label(size: LabelSize, made: Any) -> None:
    """However long the words, every letter of a label is inside its edge of 1.5 mm."""
    boxes = np.array([b for _, _, b in printed(made, size)])
    assert len(boxes) > 50
    assert inside_any(boxes, [(0.0, 0.0)], size).all()


@pytest.mark.parametrize("size", LABELS, ids=lambda size: size.name)
def test_labels_fill_their_page(size: LabelSize) -> None:
    """On a full page there are letters in every label, and none between them."""
    boxes = np.array([b for _, _, b in letters(document_of(box(), label=size, fill=True))])
    assert inside_any(boxes, size.places(), size).all()
    assert all(inside_any(boxes, [corner], size).any() for corner in size.places())


@pytest.mark.parametrize("label", [None, *LABELS], ids=lambda v: v.name if v else "sheet")
@pytest.mark.parametrize("made", [box, crowded], ids=["usual", "crowded"])
def test_no_letter_covers_another(label: LabelSize | None, made: Any) -> None:
    """Lines, columns and fields keep apart: no two letters are printed over each other."""
    assert not covered_letters(printed(made, label))


def covered_letters(found: list[Letter]) -> list[str]:
    """Give the letters whose middle another covers."""
    covered_ = []
    for number in {page for page, _, _ in found}:
        here = [(letter, b) for page, letter, b in found if page == number]
        left, top, right, bottom = np.array([b for _, b in here]).T
        x, y = (left + right)[:, None] / 2, (top + bottom)[:, None] / 2
        inside = (x > left) & (x < right) & (y > top) & (y < bottom)
        np.fill_diagonal(inside, val=False)
        covered_ += [here[i][0] for i in np.flatnonzero(inside.any(axis=1))]
    return covered_


# --- colours -------------------------------------------------------------------------------------


def rendered(content: SheetContent, dpi: float, **how: Any) -> list[NDArray[np.uint8]]:
    """Give the pages as pixels."""
    return [
        np.asarray(Image.open(BytesIO(png)))
        for png in pictures_of(document_of(content, **how), dpi=dpi)
    ]


def expected(lab: Lab) -> NDArray[np.float64]:
    """Give the 8-bit sRGB of a colour, by another library."""
    white = colour.CCS_ILLUMINANTS["CIE 1931 2 Degree Standard Observer"]["D65"]
    rgb = colour.XYZ_to_sRGB(colour.Lab_to_XYZ(np.array(lab.triple), white))
    return np.asarray(np.clip(rgb, 0, 1) * 255)


def covered(pixels: NDArray[np.uint8], lab: Lab) -> NDArray[np.bool_]:
    """Tell which pixels are a colour within 2 of 255 in each channel."""
    return np.asarray(np.all(np.abs(pixels - expected(lab)) <= 2, axis=2))


def test_fields_have_their_colours() -> None:
    """Wanted, dry, finished and wet each cover square centimetres of the sheet in their sRGB."""
    page = rendered(box(), 100)[0]
    zone = box().zones[0]
    assert zone.wanted is not None
    assert zone.finished is not None
    square_cm = (100 / 2.54) ** 2
    for lab in (zone.wanted, zone.dry, zone.finished, zone.wet):
        assert covered(page, lab).sum() > 4 * square_cm


def test_fields_touch() -> None:
    """Between wanted and mix, and between mix and finished, there is no gap."""
    page = rendered(box(), 100)[0]
    zone = box().zones[0]
    assert zone.wanted is not None
    assert zone.finished is not None
    wanted, dry, finished = (
        np.where(covered(page, lab).sum(axis=0) > 60)[0]
        for lab in (zone.wanted, zone.dry, zone.finished)
    )
    assert 1 <= dry.min() - wanted.max() <= 2
    assert 1 <= finished.min() - dry.max() <= 2


@settings(max_examples=12)
@given(L=st.integers(2, 98), a=st.integers(-60, 60), b=st.integers(-60, 60))
def test_any_wanted_colour_is_printed_as_near_as_can_be(L: int, a: int, b: int) -> None:
    """A wanted colour covers its field in its sRGB, clipped and said to be about where outside."""
    content = content_of_mix(demo_shelf(), PARTS, wanted=typed_colour(L, a, b))
    page = rendered(content, 50)[0]
    assert covered(page, Lab(L, a, b)).sum() > 5 * (50 / 2.54) ** 2
    outside = bool(np.any(np.abs(expected_unclipped(Lab(L, a, b)) - 0.5) > 0.51))
    if outside:
        assert "about #" in pages_text(document_of(content))


def expected_unclipped(lab: Lab) -> NDArray[np.float64]:
    """Give the sRGB of a colour, 0-1 where a screen can show it."""
    white = colour.CCS_ILLUMINANTS["CIE 1931 2 Degree Standard Observer"]["D65"]
    return np.asarray(colour.XYZ_to_sRGB(colour.Lab_to_XYZ(np.array(lab.triple), white)))


# --- legibility ----------------------------------------------------------------------------------


STEPS = np.arange(256) / 255
LINEAR = np.where(STEPS <= 0.04045, STEPS / 12.92, ((STEPS + 0.055) / 1.055) ** 2.4)
"""Linear light of 8-bit sRGB, as WCAG 2.2 has it."""


def luminance(pixels: NDArray[np.uint8]) -> NDArray[np.float64]:
    """Give relative luminance by the formula of WCAG 2.2."""
    return np.asarray(LINEAR[pixels] @ np.array([0.2126, 0.7152, 0.0722]))


def worst_contrast(
    pixels: NDArray[np.uint8], boxes: list[NDArray[np.float64]], dpi: float
) -> float:
    """Give the least contrast of any letter with what is around it."""
    worst = 21.0
    for box_ in boxes:
        x1, y1, x2, y2 = (box_ / 25.4 * dpi).round().astype(int)
        part = luminance(pixels[y1 - 2 : y2 + 2, x1 - 2 : x2 + 2])
        around = float(np.median([*part[0], *part[-1]]))
        ink = part.flat[np.abs(part - around).argmax()]
        low, high = sorted((float(ink), around))
        worst = min(worst, (high + 0.05) / (low + 0.05))
    return worst


@pytest.mark.parametrize("lab", [(46, 34, 24), (97, 0, 5), (18, 2, -25), (60, 55, 50), (53, 0, 0)])
@pytest.mark.parametrize("label", [None, LABELS[1]], ids=["sheet", "label"])
def test_words_can_be_read_in_colour_and_in_grey(
    lab: tuple[float, float, float], label: LabelSize | None
) -> None:
    """Every letter has a contrast of 4.5 or more, printed in colour or in black and white."""
    content = replace(box(), zones=(replace(box().zones[0], wanted=Lab(*lab), dry=Lab(*lab)),))
    dpi = 300.0 if label is None else 400.0  # thin strokes must hold a whole dot
    page = rendered(content, dpi, label=label)[0]
    grey = np.asarray(Image.fromarray(page).convert("L").convert("RGB"))
    boxes = [
        b
        for number, letter, b in letters(document_of(content, label=label))
        # A full stop or a comma is too small to hold a whole dot of ink.
        if number == 0 and letter.isalnum()
    ]
    assert len(boxes) > 60
    assert worst_contrast(page, boxes, dpi) >= 4.5
    assert worst_contrast(grey, boxes, dpi) >= 4.5


# --- codes ---------------------------------------------------------------------------------------


@pytest.fixture
def in_german() -> Iterator[None]:
    """Say everything in German meanwhile."""
    use_language("de")
    yield
    use_language(ENGLISH)


@pytest.mark.usefixtures("in_german")
def test_a_german_sheet_is_german() -> None:
    """Words, decimal commas and days are those of the language, and the file says which it is."""
    pdf = document_of(box_now())
    told = pages_text(pdf)
    for word in ("wanted", "mix, dry", "finished", "wet"):
        assert say_in("on a field of colour", word) in told
    for text in (say("in the pot"), say("together"), say("How sure"), "369,9", "512,3", "72,2 %"):
        assert text in told
    assert say("{day} {month} {year}", day=1, month=say("March"), year=2026) in told
    assert "512.3" not in told
    buffer = (ctypes.c_ushort * 20)()
    with closing(pypdfium2.PdfDocument(pdf)) as document:
        pdfium.FPDFCatalog_GetLanguage(document.raw, buffer, 40)
    assert bytes(buffer).decode("utf-16-le").rstrip("\0") == "de"


@pytest.mark.usefixtures("in_german")
@pytest.mark.parametrize("label", [None, *LABELS], ids=lambda v: v.name if v else "sheet")
@pytest.mark.parametrize("made", [box_now, crowded], ids=["usual", "crowded"])
def test_german_keeps_to_its_room(
    label: LabelSize | None, made: Callable[[], SheetContent]
) -> None:
    """The longer words leave neither page nor label, and cover nothing."""
    found = letters(document_of(made(), label=label))
    wide, high = Paper.A4.size if label is None else (label.width, label.height)
    edge = EDGE if label is None else 1.5
    boxes = np.array([b for _, _, b in found])
    assert boxes[:, :2].min() >= edge
    assert (boxes[:, 2:] <= np.array([wide, high]) - edge).all()
    assert not covered_letters(found)


@pytest.mark.usefixtures("in_german")
@pytest.mark.parametrize("size", LABELS, ids=lambda size: size.name)
@pytest.mark.parametrize("lab", [(27, 2, -24), (46, 34, 24), (60, -40, 0), (75, -8, -12)])
def test_a_german_label_cuts_no_name_and_no_caution(
    size: LabelSize, lab: tuple[float, float, float]
) -> None:
    """The name of the colour and what to mind stand whole on every label."""
    zone = replace(box_now().zones[0], dry=Lab(*lab), finished=Lab(*lab))
    content = replace(box_now(), zones=(zone,))
    told = pages_text(document_of(content, label=size))
    assert colour_name(Lab(*lab)) in told
    assert say("Keep shut, and away from children.") in told


@pytest.mark.usefixtures("in_german")
def test_a_german_code_is_the_english_one() -> None:
    """What a machine reads is the same in every language, and is read back as it was."""
    content = box_now()
    use_language(ENGLISH)
    plain = box_now()
    use_language("de")
    ours, english = (read_code(zone.code) for zone in (*content.zones, *plain.zones))
    # The invented paints have names in every language; what makes the colour has not.
    assert [p.name for p in ours.paints] != [p.name for p in english.paints]
    named = zip(ours.paints, english.paints, strict=True)
    assert replace(ours, paints=tuple(replace(p, name=q.name) for p, q in named)) == english
    assert scanned(pictures_of(document_of(content), dpi=150)[0]) == [content.zones[0].code]
