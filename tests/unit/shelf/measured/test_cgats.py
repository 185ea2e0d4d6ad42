"""CGATS.17 text: the layout of the standard, its liberties, what is refused, and writing."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from swatchwright.shelf.measured.cgats import looks_like_cgats, parse_cgats, to_cgats
from swatchwright.shelf.measured.values import Measurements
from swatchwright.values import Lab
from unit.shelf.measured.made import (
    WHEN,
    WRITINGS,
    assert_same,
    edited,
    garbled,
    measured,
    measurement,
    refused,
    survived,
)

NM = range(400, 701, 20)

# Put together by hand after the layout that ISO 28178:2009 (CGATS.17) prints, from memory: keywords
# with quoted values, a keyword of one's own declared by KEYWORD, counts before each block.
EXAMPLE = """CGATS.17
ORIGINATOR "Harbour workshop"
FILE_DESCRIPTOR "Brush-outs, invented"
CREATED "2025-03-01"
KEYWORD "BRUSH"
BRUSH "flat, 50 mm"   # a keyword of our own
MEASUREMENT_SOURCE "Illumination=D50 ObserverAngle=10"
WEIGHTING_FUNCTION "ILLUMINANT, D65"
WEIGHTING_FUNCTION "OBSERVER, 2 degree"

NUMBER_OF_FIELDS 5
BEGIN_DATA_FORMAT
SAMPLE_ID SAMPLE_NAME LAB_L LAB_A LAB_B
END_DATA_FORMAT
NUMBER_OF_SETS 2
BEGIN_DATA
# the cushion
A1 "Clay red" 46.0 34.0 24.0
A2 "Ink blue, ""night"" #2" 28.5 2.0 -27.0
END_DATA
"""


def spectral(fields: str, values: list[str] | None = None, **parts: str) -> str:
    """Write a table of one sample with a field for each wavelength."""
    names = " ".join(fields.format(nm) for nm in NM)
    cells = " ".join(values or [f"{0.2 + (nm - 400) / 500:.3f}" for nm in NM])
    return (
        f"CGATS.17\n{parts.get('header', '')}\nBEGIN_DATA_FORMAT\nSAMPLE_ID {names}\n"
        f"END_DATA_FORMAT\nBEGIN_DATA\n{parts.get('id', '7')} {cells}\nEND_DATA\n"
    )


# --- what is read --------------------------------------------------------------------------------


@pytest.mark.parametrize(("ends", "mark"), WRITINGS)
def test_the_layout_of_the_standard(ends: str, mark: str) -> None:
    """Keywords, comments, quoted strings and both blocks are read, with either line end."""
    found = parse_cgats(mark + EXAMPLE.replace("\n", ends), "x.txt")
    assert [(m.id, m.name) for m in found.rows] == [
        ("A1", "Clay red"),
        ("A2", 'Ink blue, "night" #2'),
    ]
    assert [m.lab for m in found.rows] == [Lab(46, 34, 24), Lab(28.5, 2, -27)]
    assert found.notes == ()


@pytest.mark.parametrize(
    "fields",
    [
        "SPECTRAL_NM{}",
        "SPECTRAL_NM_{}",
        "SPECTRAL_DEC_{}",
        "SPECTRAL_{}",
        "NM{}",
        "SPEC_{}",
        "R_{}",
    ],
)
def test_a_field_for_each_wavelength(fields: str) -> None:
    """Spectra are read under the field names that programs write."""
    (sample,) = parse_cgats(spectral(fields), "x.txt").rows
    assert sample.nm.tolist() == list(NM)
    assert sample.reflectance is not None
    assert_allclose(sample.reflectance, [0.2 + (nm - 400) / 500 for nm in NM])


@pytest.mark.parametrize(("unit", "factor"), [("DEC", 1), ("PCT", 100)])
def test_pairs_of_wavelength_and_value(unit: str, factor: float) -> None:
    """Spectra as pairs of SPECTRAL_NM and a value, in fractions or percent, are read."""
    fields = f"SPECTRAL_NM SPECTRAL_{unit} " * len(NM)
    cells = " ".join(f"{nm} {0.008 * factor:g}" for nm in reversed(NM))
    text = f"BEGIN_DATA_FORMAT SAMPLE_ID {fields} END_DATA_FORMAT\nBEGIN_DATA\n1 {cells}\nEND_DATA"
    (sample,) = parse_cgats(text, "x.txt").rows
    assert sample.nm.tolist() == list(NM)
    assert sample.reflectance is not None
    assert_allclose(sample.reflectance, 0.008)


def test_percent_is_believed_where_the_file_says_so() -> None:
    """Under SPECTRAL_PCT a value below one is a dark percent, and nothing has to be guessed."""
    (sample,) = parse_cgats(spectral("SPECTRAL_PCT{}", ["0.9"] * 16), "x.txt").rows
    assert sample.reflectance is not None
    assert_allclose(sample.reflectance, 0.009)


def test_tabs_commas_and_samples_over_several_lines() -> None:
    """Decimal commas, names with spaces between tabs, and a sample on two lines are read."""
    text = spectral("NM{}").replace(".", ",").replace(" 0,52 ", "\n0,52 ")
    assert len(parse_cgats(text, "x.txt").rows) == 1
    tabs = EXAMPLE.replace('"Clay red"', "Clay red").replace("A1 Clay red 46.0 34.0 24.0", "{}")
    tabs = tabs.format("A1\tClay red\t46,0\t34,0\t24,0")
    assert parse_cgats(tabs, "x.txt").rows[0].name == "Clay red"
    assert parse_cgats(tabs, "x.txt").rows[0].lab == Lab(46, 34, 24)


def test_several_tables() -> None:
    """Tables follow one another; one without spectra and Lab is passed over, and said so."""
    inks = "BEGIN_DATA_FORMAT\nSAMPLE_ID CMYK_C\nEND_DATA_FORMAT\nBEGIN_DATA\nA1 40\nEND_DATA\n"
    found = parse_cgats(EXAMPLE + inks + spectral("NM{}"), "x.txt")
    assert [m.id for m in found.rows] == ["A1", "A2", "7"]
    assert any("passed over" in note for note in found.notes)


def test_a_table_may_use_the_fields_of_the_one_before() -> None:
    """Fields and light hold for later tables that do not name their own."""
    more = "NUMBER_OF_SETS 1\nBEGIN_DATA\nA3 Chalk 93 0 3\nEND_DATA\n"
    found = parse_cgats(EXAMPLE + more, "x.txt")
    assert found.rows[2].lab == Lab(93, 0, 3)
    assert found.notes == ()


def test_a_colour_and_a_spectrum_from_two_tables_are_put_together() -> None:
    """One table gives the colour of a sample, another its spectrum: it is one sample."""
    found = parse_cgats(EXAMPLE + spectral("NM{}", id="A2"), "x.txt")
    assert [m.id for m in found.rows] == ["A1", "A2"]
    assert found.rows[1].name == 'Ink blue, "night" #2'
    assert found.rows[1].lab == Lab(28.5, 2, -27)
    assert found.rows[1].reflectance is not None
    assert parse_cgats(spectral("NM{}", id="A2") + EXAMPLE, "x.txt").rows[0].lab is not None


@pytest.mark.parametrize(
    "entry",
    ['ILLUMINANT "D50"', 'WEIGHTING_FUNCTION "ILLUMINANT, D50"', 'ILLUMINATION_NAME "CIE D50"', ""],
)
def test_colours_for_print_light(entry: str) -> None:
    """Lab for D50, said or (as in the standard) meant, is carried to D65 and noted."""
    text = EXAMPLE.replace('WEIGHTING_FUNCTION "ILLUMINANT, D65"', entry)
    found = parse_cgats(text, "x.txt")
    assert found.rows[0].lab not in {None, Lab(46, 34, 24)}
    assert any("Bradford" in note for note in found.notes)
    assert any("does not say" in note for note in found.notes) == (not entry)


def test_what_it_is_known_by() -> None:
    """A text with a line that begins a block is CGATS; one that only speaks of it is not."""
    assert looks_like_cgats(EXAMPLE)
    assert looks_like_cgats("x\r\n  begin_data\r\n")
    assert not looks_like_cgats("id,name\nred,It says BEGIN_DATA\n")


# --- what is refused -----------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "says"),
    [
        (EXAMPLE.replace("END_DATA\n", ""), "cut short"),
        (EXAMPLE.replace("END_DATA_FORMAT", ""), "cut short"),
        (EXAMPLE.replace("NUMBER_OF_SETS 2", "NUMBER_OF_SETS 3"), "NUMBER_OF_SETS 3 and has 2"),
        (EXAMPLE.replace("NUMBER_OF_FIELDS 5", "NUMBER_OF_FIELDS 6"), "NUMBER_OF_FIELDS 6"),
        (EXAMPLE.replace("34.0 24.0", "34.0"), "line 18"),
        (EXAMPLE.replace('"Clay red"', "Clay red"), "line 18"),
        (EXAMPLE.replace('"Clay red"', '"Clay red'), "Line 18"),
        (EXAMPLE.replace("34.0 24.0", "34.0 many"), "“A1”"),
        (EXAMPLE.replace("A2", "A1"), "line 18 and line 19"),
        (EXAMPLE.replace("LAB_L", "XYZ_X"), "no measurements"),
        (EXAMPLE + EXAMPLE, "two samples"),
        (spectral("NM{}").replace("NM420", "NM400"), "for 400 nm"),
        (spectral("NM{}", ["-0.01"] + ["0.2"] * 15), "below zero"),
        (spectral("NM{}").replace(" NM420", "").replace(" 0.240", ""), "420 nm"),
        (EXAMPLE.replace("OBSERVER, 2", "OBSERVER, 10"), "10 degree"),
        (EXAMPLE.replace("ILLUMINANT, D65", "ILLUMINANT, A"), "for A"),
        ("BEGIN_DATA\n1 2\nEND_DATA\n", "does not name its fields"),
    ],
)
def test_what_is_off_is_named(text: str, says: str) -> None:
    """The message names the line or the sample that is off."""
    assert says in refused(lambda: parse_cgats(text, "x.txt")).what


# --- writing -------------------------------------------------------------------------------------


def test_the_written_layout() -> None:
    """The text written begins with its identifier and has its counts, names and values in place."""
    wanted = Measurements("brush-outs", (measurement("a", 0.25, Lab(50, 1, -2.5)),))
    lines = to_cgats(wanted, WHEN).splitlines()
    assert lines[0] == "CGATS.17"
    assert 'DESCRIPTOR "brush-outs"' in lines
    assert 'CREATED "2025-03-01"' in lines
    fields = lines[lines.index("BEGIN_DATA_FORMAT") + 1].split("\t")
    assert f"NUMBER_OF_FIELDS {len(fields)}" in lines
    assert "NUMBER_OF_SETS 1" in lines
    values = dict(zip(fields, lines[lines.index("BEGIN_DATA") + 1].split("\t"), strict=True))
    assert values["SAMPLE_NAME"] == '"Sample a"'
    assert (values["SPECTRAL_NM400"], values["SPECTRAL_NM700"]) == ("0.25", "0.25")
    assert (values["LAB_L"], values["LAB_A"], values["LAB_B"]) == ("50", "1", "-2.5")


# --- laws ----------------------------------------------------------------------------------------


@given(measured())
def test_what_is_written_reads_back_equal(wanted: Measurements) -> None:
    """Samples written as CGATS text are read back the same, to the last digit."""
    assert_same(parse_cgats(to_cgats(wanted, WHEN), "x"), wanted)


@given(st.sampled_from([EXAMPLE, EXAMPLE + spectral("NM{}", id="A2")]).flatmap(edited))
def test_an_edited_text_is_survived(text: str) -> None:
    """A text with words swapped gives measurements or a plain message, never anything else."""
    survived(text.encode())


@given(garbled((EXAMPLE + spectral("SPECTRAL_NM{}")).encode()))
def test_a_garbled_text_is_survived(data: bytes) -> None:
    """A spoilt text gives measurements or a plain message, never anything else."""
    survived(data)


@pytest.mark.parametrize("piece", ['"', '""', '"a', "# ", "BEGIN_DATA\n", "NM400 ", '" "'])
def test_a_long_text_of_one_piece_is_survived(piece: str) -> None:
    """Repeating one piece over a megabyte neither hangs nor breaks the reader."""
    survived(f"BEGIN_DATA_FORMAT\n{piece * (1_000_000 // len(piece))}".encode())
    survived(np.random.default_rng(1).bytes(100_000))


@pytest.mark.parametrize(
    "text",
    [
        "BEGIN_DATA_FORMAT LAB_L LAB_A LAB_B END_DATA_FORMAT\n"
        + "BEGIN_DATA\n50 0 0\nEND_DATA\n" * 20_001,
        "BEGIN_DATA_FORMAT X END_DATA_FORMAT\nBEGIN_DATA\n" + "1\n" * 500_000,
    ],
    ids=["tables", "lines"],
)
def test_too_many(text: str) -> None:
    """A text of more samples than can be read is refused before it is read to its end."""
    assert "more than 20000" in refused(lambda: parse_cgats(text, "x.txt")).what
