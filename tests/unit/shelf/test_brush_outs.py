"""Sheets of brush-outs: what is read, and what is refused and how."""

from __future__ import annotations

from contextlib import suppress
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.errors import MendableError
from swatchwright.paint.family import Family
from swatchwright.shelf.brush_outs import NewPaint, Strip, parse_sheet, read_sheet, sheet_text
from swatchwright.values import Lab

PLAIN = "id,mix,over,coats,l,a,b\nblue-1,blue=1 white=4,black,2,40,5,-30\nblack,bare,,,8,0,0\n"


@pytest.mark.parametrize(
    "change",
    [
        lambda text: text,
        lambda text: "\ufeff" + text.replace("\n", "\r\n"),
        lambda text: text.replace(",", ";").replace("40", "40,0"),
        lambda text: text.replace(",", "\t"),
        lambda text: text.replace("id,", "Film,").replace("over", "Ground"),
        lambda text: text.replace("l,a,b", "L*,a*,b*"),
        lambda text: text.replace("blue=1 white=4", "blue=20% white=80%"),
        lambda text: text.replace("blue=1 white=4", "blue white=4"),
    ],
    ids=["plain", "spreadsheet", "decimal commas", "tabs", "names", "stars", "percent", "one part"],
)
def test_what_spreadsheets_make_of_it(change: object) -> None:
    """The same sheet in the ways it may be written is read alike."""
    sheet = parse_sheet(change(PLAIN), "x")  # type: ignore[operator]
    strip, ground = sheet.strips
    parts = dict(strip.mix)
    assert parts["white"] / parts["blue"] == 4
    assert (strip.over, strip.coats, strip.lab) == ("black", 2.0, Lab(40, 5, -30))
    assert ground.mix == ()
    assert set(sheet.paints) == {"blue", "white"}


@pytest.mark.parametrize("name", ["r_{}", "{}", "{}nm"])
def test_spectra_are_carried_to_the_grid(name: str) -> None:
    """A spectrum of its own steps is carried to the program's, and open beyond its ends."""
    nm = range(400, 701, 20)
    head = ",".join(name.format(w) for w in nm)
    text = f"id,mix,{head}\nx,blue," + ",".join(f"{w / 1000}" for w in nm)
    (strip,) = parse_sheet(text, "x").strips
    assert strip.reflectance is not None
    inside = (WAVELENGTHS >= 400) & (WAVELENGTHS <= 700)
    assert_allclose(strip.reflectance[inside], WAVELENGTHS[inside] / 1000)
    assert np.isnan(strip.reflectance[~inside]).all()


def test_a_new_paint_is_told_in_a_line_of_its_own() -> None:
    """Name, family and solids are read from a line of that paint alone, and of no mixture."""
    text = (
        "id,mix,name,family,volume_solids,density_g_per_ml,l,a,b\n"
        "1,blue,Blue,satin,0.4,1.2,20,5,-30\n2,blue=1 white=1,Tint,gloss,,,40,5,-30\n"
    )
    sheet = parse_sheet(text, "x")
    assert sheet.paints["blue"] == NewPaint("blue", "Blue", Family.SATIN, 0.4, 1.2)
    assert sheet.paints["white"] == NewPaint("white")


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("id,l,a,b\nx,1,2,3", "no column mix"),
        ("mix,l,a,b\nblue,1,2,3", "no column id"),
        ("id,mix\n,blue", "Line 2 of the sheet has no id"),
        ("id,mix\nx,", "no paints under mix"),
        ("id,mix\nx,blue=1 blue=2", "Name each paint once"),
        ("id,mix\nx,=2", "Name each paint once"),
        ("id,mix\nx,blue=0", "has 0 under mix"),
        ("id,mix\nx,blue=half", "“half” under mix"),
        ("id,mix\nx,a b c d e f g h i", "9 paints under mix"),
        ("id,mix,coats\nx,blue,0", "has 0 under coats"),
        ("id,mix,thickness_mm\nx,blue,80", "has 80 under thickness_mm"),
        ("id,mix,l,a,b\nx,blue,20,,3", "lacks its a"),
        ("id,mix,l,a,b\nx,blue,200,0,3", "no surface has"),
        ("id,mix,l,a,b\nx,blue,nan,0,3", "“nan” under l"),
        ("id,mix,r_400,r_700\nx,blue,0.1,0.2", "visible range"),
        ("id,mix,usually_off\nx,blue,-1", "has \N{MINUS SIGN}1 under usually_off"),
        (
            "id,mix,volume_solids\n1,blue,0.4\n2,blue,0.5",
            "Line 3 of the sheet gives blue another volume solids",
        ),
    ],
)
def test_what_cannot_be_is_refused(text: str, words: str) -> None:
    """A column that is missing or a cell that cannot be is named."""
    with pytest.raises(MendableError, match=words):
        parse_sheet(text, "mine.csv")


def test_half_a_spectrum_is_refused() -> None:
    """A spectrum with a gap is refused by the wavelength."""
    head = ",".join(f"r_{w}" for w in range(400, 701, 10))
    cells = ["0.2"] * 31
    cells[3] = ""
    with pytest.raises(MendableError, match="r_430"):
        parse_sheet(f"id,mix,{head}\nx,blue,{','.join(cells)}", "x")


def test_files_that_are_no_sheets(tmp_path: Path) -> None:
    """A file that is not there, is not text or is empty is refused in plain words."""
    for data, words in ((None, "could not be opened"), (b"\xff\xfe\x00", "not plain text")):
        path = tmp_path / "sheet.csv"
        if data is not None:
            path.write_bytes(data)
        with pytest.raises(MendableError, match=words):
            read_sheet(path)


def test_a_sheet_to_fill_in_reads_back() -> None:
    """The sheet that is written to be filled in is read as it was meant."""
    strips = [
        Strip(0, "black", ()),
        Strip(0, "blue-1", (("blue", 1.0),)),
        Strip(0, "blue-2", (("blue", 1.0), ("white", 10.0)), over="black", coats=1.0),
    ]
    found = parse_sheet(sheet_text(strips, ["one", "two, with a comma", "three"]), "x").strips
    for made, read in zip(strips, found, strict=True):
        assert (read.id, read.mix, read.over, read.coats) == (
            made.id,
            made.mix,
            made.over,
            made.coats,
        )


@given(st.text(max_size=200))
def test_no_text_is_too_odd(text: str) -> None:
    """Any text at all is a sheet or is refused in plain words."""
    with suppress(MendableError):
        assert parse_sheet("id,mix,over,l,a,b\n" + text, "x").strips
