"""Shelf files that are off: refused by line and column, in words that say what to mend."""

from __future__ import annotations

import numpy as np
import pytest

from swatchwright.errors import MendableError
from swatchwright.mixing.search import find_recipes
from swatchwright.shelf.csv_file import parse_shelf
from swatchwright.values import Lab
from unit.shelf.files import columns, csv_text, row

TWO = [row("white", 0.3, 120.0), row("red", np.linspace(200, 5, 31), 60.0)]


def refused(text: str) -> str:
    """Parse a text that is off, check the message, and give what it says is wrong."""
    with pytest.raises(MendableError) as caught:
        parse_shelf(text, "my shelf.csv")
    assert caught.value.what.endswith(".")
    assert caught.value.mend.endswith(".")
    assert "Error" not in str(caught.value)
    return caught.value.what


@pytest.mark.parametrize(
    "text",
    ["", "\n", "  \n \n", "\ufeff", csv_text([], columns()), csv_text([], columns()) + ",,\n\n"],
    ids=["nothing", "a line end", "blanks", "a byte order mark", "a head", "a head and blanks"],
)
def test_a_shelf_without_paints_is_refused(text: str) -> None:
    """Nothing, and a head with nothing below, are refused by the name of the file."""
    assert refused(text) == "my shelf.csv has no paints in it."


@pytest.mark.parametrize("missing", ["id", "name", "family"])
def test_a_missing_column_is_named(missing: str) -> None:
    """Each of the three columns that must be there is missed by its name."""
    head = [name for name in columns() if name != missing]
    assert f"no column {missing}" in refused(csv_text(TWO, head))


@pytest.mark.parametrize("column", ["k_550", "s_550", "k_400", "s_700"])
def test_a_missing_wavelength_is_refused(column: str) -> None:
    """K and S at different wavelengths are refused."""
    head = [name for name in columns() if name != column]
    assert "same wavelengths" in refused(csv_text(TWO, head))


def test_no_spectra_at_all_are_refused() -> None:
    """A list of names without spectra is not a shelf."""
    assert "K and S" in refused("id,name,family\nwhite,White,matt\n")


@pytest.mark.parametrize(
    "grid",
    [
        (*range(400, 551, 10), *range(570, 701, 10)),
        (*range(400, 691, 10), 700.5),
        tuple(range(400, 651, 10)),
        tuple(range(450, 701, 10)),
        tuple(range(400, 701, 50)),
        (550, 560),
    ],
    ids=["a gap", "a shift", "no red end", "no blue end", "too coarse", "two"],
)
def test_an_irregular_grid_is_refused(grid: tuple[float, ...]) -> None:
    """A grid with a gap, a shift, too coarse or short of the visible is refused."""
    assert "not a regular grid" in refused(csv_text([row("white", grid=grid)]))


@pytest.mark.parametrize(
    ("column", "cell", "says"),
    [
        ("k_550", "", "lacks a value under k_550"),
        ("s_550", " ", "lacks a value under s_550"),
        ("k_550", "-0.1", "negative value under k_550"),
        ("s_420", "-3", "negative value under s_420"),
        ("k_550", "dark", "“dark” under k_550"),
        ("k_550", "nan", "“nan” under k_550"),
        ("s_550", "inf", "“inf” under s_550"),
        ("s_550", "1e999", "“1e999” under s_550"),
        ("k_550", "1e30", "1e+30 under k_550"),
        ("s_550", "2000000", "2e+06 under s_550"),
        ("volume_solids", "0", "0 under volume_solids"),
        ("volume_solids", "38", "38 under volume_solids"),
        ("volume_solids", "-0.3", "\N{MINUS SIGN}0.3 under volume_solids"),
        ("volume_solids", "much", "“much” under volume_solids"),
        ("density_g_per_ml", "0.1", "0.1 under density_g_per_ml"),
        ("density_g_per_ml", "1300", "1300 under density_g_per_ml"),
        ("spreading_m2_per_l", "0", "0 under spreading_m2_per_l"),
        ("spreading_m2_per_l", "-12", "\N{MINUS SIGN}12 under spreading_m2_per_l"),
        ("tins_ml", "500;big", "“big” under tins_ml"),
        ("tins_ml", "500;-1", "\N{MINUS SIGN}1 under tins_ml"),
        ("tins_ml", "0", "0 under tins_ml"),
        ("how_known", "by heart", "“by heart” under how_known"),
        ("hiding", "well", "“well” under hiding"),
        ("id", "", "“” as its id"),
        ("id", "deep blue", "“deep blue” as its id"),
        ("id", "a=b", "“a=b” as its id"),
    ],
)
def test_a_cell_that_is_off_is_named_by_line_and_column(column: str, cell: str, says: str) -> None:
    """A cell that cannot be is refused by its line, its column and what it holds."""
    what = refused(csv_text([TWO[0], {**row("second"), column: cell}]))
    assert what.startswith("Line 3 of the shelf has" if "lacks" not in says else "Line 3 of")
    assert says in what


def test_prices_must_go_with_sizes() -> None:
    """Two sizes and one price are refused with both counts; so is a price below nothing."""
    what = refused(csv_text([row("white", tins_ml="500;1000", prices="9.50")]))
    assert "Line 2 of the shelf has 2 tin sizes and 1 prices" in what
    assert "Line 2" in refused(csv_text([row("white", tins_ml="500", prices="-9")]))


def test_no_scattering_is_refused() -> None:
    """A paint without any scattering is refused by its line."""
    assert "Line 3 of the shelf has a scattering of zero" in refused(
        csv_text([TWO[0], row("clear", 1.0, 0.0)])
    )
    # Scattering at odd wavelengths of a fine grid only, which the program's grid does not see.
    grid = np.arange(400, 701, 5)
    S = np.where(grid % 10 == 5, 50.0, 0.0)
    assert "scattering of zero" in refused(csv_text([row("odd", 1.0, S, grid.tolist())]))


def test_two_paints_of_one_id_are_refused() -> None:
    """Two paints of one id are refused by both of their lines."""
    what = refused(csv_text([TWO[0], TWO[1], row("white")]))
    assert "Lines 2 and 4" in what
    assert "white" in what


def test_a_comma_out_of_quotes_is_refused() -> None:
    """A name with a comma out of quotes pushes its row on, and is refused by its line."""
    assert "Line 3 of the shelf" in refused(csv_text([TWO[0], row("b", name="Deep blue, red")]))


def test_a_short_row_is_refused() -> None:
    """A row that ends early is refused at the first column it lacks."""
    text = csv_text(TWO)
    short = ",".join(text.splitlines()[2].split(",")[:-1])
    what = refused("\n".join([*text.splitlines()[:2], short]))
    assert "Line 3 of the shelf lacks a value under s_700" in what


def test_lines_are_counted_as_an_editor_shows_them() -> None:
    """Blank lines count."""
    lines = csv_text([TWO[0], row("second", k_550="x")]).splitlines()
    assert refused("\n".join([lines[0], "", lines[1], "", "", lines[2]])).startswith("Line 6 ")


def test_a_stray_quotation_mark_is_refused() -> None:
    """A quotation mark that is never closed swallows the rest, and is refused."""
    text = csv_text([row("white", name='"White'), row("red")])
    assert refused(text)


def test_too_many_paints_are_refused() -> None:
    """A file of more paints than anybody owns is refused with the count."""
    line = csv_text([row("white")]).splitlines()
    assert "5001 paints" in refused("\n".join([line[0], *[line[1]] * 5001]))


def test_one_paint_is_a_shelf_but_no_recipe() -> None:
    """A shelf of one paint is read; a recipe from it is refused."""
    shelf = parse_shelf(csv_text(TWO[:1]), "x")
    assert len(shelf.paints) == 1
    with pytest.raises(MendableError, match="1 paint:"):
        find_recipes(Lab(50, 0, 0), shelf.paints)
