"""Reading shelf files: what is read, what is assumed, and what is refused and how."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from numpy.testing import assert_allclose

from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.errors import MendableError
from swatchwright.paint.family import Family
from swatchwright.paint.mixture import dry_lab, mix
from swatchwright.paint.paints import HowKnown, Tin, stack
from swatchwright.shelf.csv_file import demo_shelf, parse_shelf, read_shelf, save_demo_shelf
from unit.shelf.files import csv_text, row

TWO = [row("white", 0.3, 120.0), row("red", np.linspace(200, 5, 31), 60.0)]


# --- what is read --------------------------------------------------------------------------------


def test_a_plain_shelf_is_read() -> None:
    """Paints come in the order of the file, with their spectra on the program's grid."""
    shelf = parse_shelf(csv_text(TWO), "my shelf.csv")
    assert shelf.name == "my shelf.csv"
    assert [p.id for p in shelf.paints] == ["white", "red"]
    inside = (WAVELENGTHS >= 400) & (WAVELENGTHS <= 700)
    assert_allclose(shelf.paints[1].K[inside], np.linspace(200, 5, 31), atol=1e-12)
    assert_allclose(shelf.paints[0].S, 120)


def test_what_is_not_said_has_its_usual_value() -> None:
    """Without the columns that may be left out, a paint is guessed, and has no weight or tins."""
    (white, _) = parse_shelf(csv_text(TWO), "x").paints
    assert white.how_known is HowKnown.GUESSED
    assert (white.volume_solids, white.density, white.spreading_rate) == (0.38, None, 12.0)
    assert (white.tins, white.note) == ((), "")


def test_every_column_is_read() -> None:
    """All columns that may be there are read, in any order, their names in any case."""
    cells = {
        "how_known": "Measured",
        "volume_solids": "0.42",
        "density_g_per_ml": "1.31",
        "spreading_m2_per_l": "14",
        "tins_ml": "250;1000",
        "prices": "8.50;22",
        "note": "From the harbour.",
    }
    made = row("white") | cells
    head = [name.upper() for name in reversed(made)]
    text = csv_text([{name.upper(): cell for name, cell in made.items()}], head)
    (white,) = parse_shelf(text, "x").paints
    assert white.how_known is HowKnown.MEASURED
    assert (white.volume_solids, white.density, white.spreading_rate) == (0.42, 1.31, 14)
    assert white.tins == (Tin(250, 8.5), Tin(1000, 22))
    assert white.note == "From the harbour."


def test_tins_without_prices() -> None:
    """Tin sizes alone are read, their prices unknown; a bar parts them as well."""
    (white,) = parse_shelf(csv_text([row("white", tins_ml="250|1000")]), "x").paints
    assert white.tins == (Tin(250), Tin(1000))


@pytest.mark.parametrize(
    "change",
    [
        lambda text: "\ufeff" + text,
        lambda text: text.replace("\n", "\r\n"),
        lambda text: "\ufeff" + text.replace("\n", "\r\n"),
        lambda text: text.rstrip("\n"),
        lambda text: text + "\n\n  \n,,,\n",
        lambda text: "\n\n" + text,
        lambda text: text.replace("white,", '"white",').replace("id,", '"id",', 1),
        lambda text: text.replace(",", "\t"),
        lambda text: text.replace(",", ";"),
        lambda text: text.replace(",", ";").replace(".", ","),
        lambda text: text.replace("id,name", " id , name ", 1),
    ],
    ids=[
        "byte order mark",
        "carriage returns",
        "both",
        "no last line end",
        "blank lines after",
        "blank lines before",
        "quoted",
        "tabs",
        "semicolons",
        "semicolons and decimal commas",
        "blanks in the head",
    ],
)
def test_other_ways_of_writing_are_read_alike(change: Any) -> None:
    """What spreadsheets make of the same shelf is read as the same paints."""
    plain = parse_shelf(csv_text(TWO), "x")
    other = parse_shelf(change(csv_text(TWO)), "x")
    assert [p.id for p in other.paints] == [p.id for p in plain.paints]
    for ours, theirs in zip(other.paints, plain.paints, strict=True):
        assert_allclose(ours.K, theirs.K)
        assert_allclose(ours.S, theirs.S)
        assert ours.family is theirs.family


def test_decimal_commas_in_every_number() -> None:
    """In a semicolon file solids, density, tins and prices may have decimal commas too."""
    made = row("white", volume_solids="0.41", density_g_per_ml="1.32", tins_ml="250|1000")
    made["prices"] = "7.50|19.25"
    text = csv_text([made], delimiter=";").replace(".", ",")
    (white,) = parse_shelf(text, "x").paints
    assert (white.volume_solids, white.density) == (0.41, 1.32)
    assert white.tins == (Tin(250, 7.5), Tin(1000, 19.25))


def test_a_name_may_hold_commas_in_quotes() -> None:
    """A quoted name keeps its comma and its quotation marks."""
    made = row("deep-blue", name='"Deep blue, ""slightly"" red"')
    assert parse_shelf(csv_text([made]), "x").paints[0].name == 'Deep blue, "slightly" red'


def test_a_paint_without_a_name_has_its_id() -> None:
    """A missing name is the id."""
    assert parse_shelf(csv_text([row("plain", name="")]), "x").paints[0].name == "plain"


def smooth(nm: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Give K and S of a made-up red at any wavelengths."""
    return 2 + 200 / (1 + np.exp((nm - 590) / 15)), 40 + 0.05 * (nm - 400)


@pytest.mark.parametrize("step", [5, 20])
def test_other_grids_agree(step: int) -> None:
    """The same paint given by 5 or by 20 nm has the colour it has by 10 nm, within 0.3 and 0.01.

    At 20 nm the steep edge of a red is between its points.
    """
    labs = []
    for grid in (np.arange(400, 701, 10), np.arange(400, 701, step)):
        K, S = smooth(grid.astype(float))
        (red,) = parse_shelf(csv_text([row("red", K, S, grid.tolist())]), "x").paints
        labs.append(dry_lab(mix(stack([red]), [[0]], [[1.0]]))[0])
    assert float(delta_e_2000(*labs)) < {5: 0.01, 20: 0.3}[step]


def test_a_grid_beyond_the_visible_is_cut() -> None:
    """Data of 360 to 780 nm is read, and nothing need be said of its ends."""
    grid = np.arange(360, 781, 10)
    K, S = smooth(grid.astype(float))
    shelf = parse_shelf(csv_text([row("red", K, S, grid.tolist())]), "x")
    assert_allclose(shelf.paints[0].K, K[2:-5], atol=1e-12)
    assert shelf.notes == ()


# --- what is assumed and said --------------------------------------------------------------------


def test_held_ends_are_said() -> None:
    """Data of 400 to 700 nm is held at its ends, and a note says so."""
    (note,) = parse_shelf(csv_text(TWO), "x").notes
    assert "400 to 700" in note


def test_relative_units_are_scaled_and_said() -> None:
    """K and S in units of the white's S are brought to house paint's, and colours stay."""
    plain = parse_shelf(csv_text(TWO), "x")
    small = [row("white", 0.3 / 150, 0.8), row("red", np.linspace(200, 5, 31) / 150, 0.4)]
    scaled = parse_shelf(csv_text(small), "x")
    assert any("relative units" in note for note in scaled.notes)
    assert not any("relative units" in note for note in plain.notes)
    assert float(scaled.paints[0].S.mean()) == pytest.approx(110)
    for ours, theirs in zip(scaled.paints, plain.paints, strict=True):
        assert_allclose(ours.K / ours.S, theirs.K / theirs.S, rtol=1e-9)


def test_an_unknown_family_is_said() -> None:
    """A family that is not known is taken as emulsion, and a note names it and those known."""
    shelf = parse_shelf(csv_text([row("x", family="glitter")]), "x")
    assert shelf.paints[0].family is Family.EMULSION
    (note,) = [n for n in shelf.notes if "glitter" in n]
    assert all(family.value in note for family in Family)


def test_the_same_note_is_said_once() -> None:
    """Ten paints of one unknown family make one note."""
    shelf = parse_shelf(csv_text([row(f"p{i}", family="glitter") for i in range(10)]), "x")
    assert len([n for n in shelf.notes if "glitter" in n]) == 1


def test_scattering_is_kept_off_zero() -> None:
    """A paint that scatters nothing at some wavelengths still has a colour."""
    holes = np.where(np.arange(31) < 10, 0.0, 50.0)
    shelf = parse_shelf(csv_text([TWO[0], row("clear", 20.0, holes)]), "x")
    assert np.all(shelf.paints[1].S > 0)
    assert np.all(np.isfinite(dry_lab(mix(stack(shelf.paints), [[1]], [[1.0]]))))


# --- files ---------------------------------------------------------------------------------------


def test_a_file_is_read_by_its_name(tmp_path: Path) -> None:
    """A file is read, with or without a byte order mark, and the shelf has its name."""
    path = tmp_path / "harbour.csv"
    for coding in ("utf-8", "utf-8-sig"):
        path.write_text(csv_text([row("white", name="Weiß")]), encoding=coding)
        shelf = read_shelf(path)
        assert (shelf.name, shelf.paints[0].name) == ("harbour.csv", "Weiß")


def test_a_file_in_another_coding_is_refused(tmp_path: Path) -> None:
    """UTF-16 and old western files are refused, and the message says how to save them."""
    path = tmp_path / "old.csv"
    for coding in ("utf-16", "cp1252"):
        path.write_text(csv_text([row("white", name="Weiß")]), encoding=coding)
        with pytest.raises(MendableError, match="UTF-8") as caught:
            read_shelf(path)
        assert "old.csv" in caught.value.what


def test_what_is_no_file_is_refused(tmp_path: Path) -> None:
    """A file that is not there and a folder are refused by their place."""
    for path in (tmp_path / "none.csv", tmp_path):
        with pytest.raises(MendableError, match="could not be opened") as caught:
            read_shelf(path)
        assert str(path) in caught.value.what


def test_a_picture_is_refused(tmp_path: Path) -> None:
    """A file that is not text at all is refused."""
    path = tmp_path / "photo.csv"
    path.write_bytes(b"\x89PNG\r\n\x1a\n" + bytes(range(256)) * 9)
    with pytest.raises(MendableError):
        read_shelf(path)


def test_a_huge_file_is_refused_unread(tmp_path: Path) -> None:
    """A file of over 20 MB is refused by its size."""
    path = tmp_path / "huge.csv"
    with path.open("wb") as file:
        file.truncate(20_000_001)
    with pytest.raises(MendableError, match="20 MB"):
        read_shelf(path)


def test_the_demonstration_can_be_saved_as_an_example(tmp_path: Path) -> None:
    """The demonstration shelf written to a file is read from it as the same paints."""
    path = tmp_path / "example.csv"
    save_demo_shelf(path)
    assert b"\r" not in path.read_bytes()
    saved, demo = read_shelf(path), demo_shelf()
    assert saved.notes == demo.notes
    for ours, theirs in zip(saved.paints, demo.paints, strict=True):
        assert (ours.id, ours.name, ours.tins) == (theirs.id, theirs.name, theirs.tins)
        assert_allclose(ours.K, theirs.K)
    with pytest.raises(MendableError, match="could not be written"):
        save_demo_shelf(tmp_path)


def test_shorter_names_of_columns() -> None:
    """A file that calls its columns density, solids, tins and so on is read the same."""
    text = files("swatchwright.shelf").joinpath("demo_shelf.csv").read_text(encoding="utf-8")
    lines = text.splitlines()
    long = ("density_g_per_ml", "volume_solids", "spreading_m2_per_l", "tins_ml", "prices")
    short = ("density", "solids", "spreading_rate", "tins", "price")
    head = lines[0]
    for one, other in zip(long, short, strict=True):
        head = head.replace(one, other)
    assert head != lines[0]
    read = parse_shelf("\n".join([head, *lines[1:]]), "x")
    for paint, same in zip(read.paints, demo_shelf().paints, strict=True):
        assert (paint.density, paint.volume_solids) == (same.density, same.volume_solids)
        assert (paint.spreading_rate, paint.tins) == (same.spreading_rate, same.tins)
