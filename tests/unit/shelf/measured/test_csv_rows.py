"""Measurements as CSV: what is read, what is refused and how, and that they read back equal."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from swatchwright.shelf.measured.csv_rows import parse_csv, to_csv
from swatchwright.shelf.measured.values import Measurement, Measurements
from swatchwright.values import Lab
from unit.shelf.measured.made import (
    WRITINGS,
    assert_same,
    edited,
    garbled,
    measured,
    measurement,
    refused,
    survived,
)

if TYPE_CHECKING:
    from collections.abc import Iterable

NM = range(400, 701, 10)
VALUES = [f"{0.1 + (nm - 400) / 400:.4f}" for nm in NM]


def table(cells: Iterable[str] = VALUES, columns: str = "r_{}", between: str = ",") -> str:
    """Write one sample below a line of column names."""
    head = ["id", "name", *(columns.format(nm) for nm in NM)]
    return f"{between.join(head)}\n{between.join(['c1', 'Clay red', *cells])}\n"


# --- what is read --------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "columns", ["r_{}", "{}", "R{}", "nm{}", "NM_{}", "{} nm", "spectral_nm{}"]
)
def test_spectra_under_the_usual_column_names(columns: str) -> None:
    """Reflectance is read from columns called by their wavelength, with or without letters."""
    (sample,) = parse_csv(table(columns=columns), "x.csv").rows
    assert (sample.id, sample.name, sample.lab) == ("c1", "Clay red", None)
    assert_allclose(sample.nm, list(NM))
    assert sample.reflectance is not None
    assert_allclose(sample.reflectance, [float(v) for v in VALUES])


@pytest.mark.parametrize(("ends", "mark"), WRITINGS)
@pytest.mark.parametrize("between", [";", "\t", ","])
def test_files_as_spreadsheets_write_them(ends: str, mark: str, between: str) -> None:
    """Semicolons or tabs, decimal commas, quoted cells, either line end and a mark are read."""
    cells = ['"' + v.replace(".", ",") + '"' for v in VALUES]
    text = mark + table(cells, between=between).replace("\n", ends)
    (sample,) = parse_csv(text, "x.csv").rows
    assert sample.reflectance is not None
    assert_allclose(sample.reflectance, [float(v) for v in VALUES])


def test_columns_in_any_order_and_others_beside() -> None:
    """Wavelengths may stand in any order, and a column that is not known is passed over."""
    text = "note,r_700,name,r_680,id," + ",".join(f"r_{nm}" for nm in range(400, 680, 20))
    text += "\nx,0.9,Ink blue,0.8,b1," + ",".join(["0.5"] * 14)
    (sample,) = parse_csv(text, "x.csv").rows
    assert sample.nm.tolist() == list(range(400, 701, 20))
    assert sample.reflectance is not None
    assert sample.reflectance[-2:].tolist() == [0.8, 0.9]


def test_colours() -> None:
    """Lab values are read; where light and observer are not said, D65 and 2 degrees are noted."""
    found = parse_csv("id,lab_l,lab_a,lab_b\nred,45.5,36,-2.5\n", "x.csv")
    assert found.rows[0].lab == Lab(45.5, 36, -2.5)
    assert found.rows[0].reflectance is None
    assert "D65" in found.notes[0]
    told = "id,L*,a*,b*,illuminant,observer\nred,45.5,36,-2.5,D65,2°\n"
    assert parse_csv(told, "x.csv").rows[0].lab == Lab(45.5, 36, -2.5)
    assert parse_csv(told, "x.csv").notes == ()


def test_names_for_the_nameless() -> None:
    """A sample without a name is called by its id, and one without an id by its name or number."""
    head = "id,name,lab_l,lab_a,lab_b\n"
    text = head + "red,,50,0,0\n,Clay red,51,0,0\n,,52,0,0\n"
    found = parse_csv(text, "x.csv")
    assert [(m.id, m.name) for m in found.rows] == [
        ("red", "red"),
        ("Clay red", "Clay red"),
        ("3", "3"),
    ]
    assert any("without an id" in note for note in found.notes)


# --- what is refused -----------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "no samples"),
        ("id,name\nred,Red\n", "neither columns"),
        (table(["", *VALUES[1:]]), "c1"),
        (table([*VALUES[:-1], ""]), "r_700"),
        (table(["n/a", *VALUES[1:]]), "“n/a”"),
        (table(["nan", *VALUES[1:]]), "“nan”"),
        (table(["1e999", *VALUES[1:]]), "“1e999”"),
        (table(["1_0", *VALUES[1:]]), "“1_0”"),
        (table(VALUES, "r_{}").replace("r_410", "x"), "410 nm"),
        (table(VALUES, "r_{}").replace("r_410", "400"), "for 400 nm"),
        (table(VALUES, "r_{}").replace("name", "id"), "column id"),
        ("id,lab_l,lab_a,lab_b\nred,50,0,0\nblue,,,\n", "Line 3"),
        ("id,lab_l,lab_a,lab_b\nred,50,,0\n", "lab_a"),
        ("id,lab_l,lab_a,lab_b\nred,50,0,0,0\n", "more cells"),
        ("id,lab_l,lab_a,lab_b\nred,50,0,0\nred,40,0,0\n", "line 2 and line 3"),
    ],
)
def test_what_is_off_is_named(text: str, says: str) -> None:
    """The message names the line, sample or column that is off."""
    assert says in refused(lambda: parse_csv(text, "x.csv")).what


def test_spectra_of_two_instruments_do_not_fit_one_table() -> None:
    """Writing samples of different wavelengths as CSV is refused, with a format that can."""
    other = Measurement("b", "B", np.arange(400.0, 701, 20), np.full(16, 0.5), None)
    both = Measurements("x", (measurement("a"), other))
    assert "CGATS" in refused(lambda: to_csv(both)).mend


# --- laws ----------------------------------------------------------------------------------------


@given(measured(one_grid=True))
def test_what_is_written_reads_back_equal(wanted: Measurements) -> None:
    """Samples written as CSV are read back the same, to the last digit."""
    assert_same(parse_csv(to_csv(wanted), "x"), wanted)


@given(st.one_of(garbled(table().encode()), edited(table().replace(",", " , ")).map(str.encode)))
def test_a_garbled_table_is_survived(data: bytes) -> None:
    """A spoilt table gives measurements or a plain message, never anything else."""
    survived(data)
