"""Reading the lines of CSV files, whatever they hold."""

from __future__ import annotations

import pytest

from swatchwright.errors import MendableError
from swatchwright.language import ENGLISH, use_language
from swatchwright.shelf.rows import FileKind, Row, neither, read_rows

KIND = FileKind("the list", "things", "A list has a line of names, then things.", 3)


def test_cells_are_found_by_their_column() -> None:
    """Columns are named in small letters; cells are stripped, missing ones empty."""
    rows, header = read_rows("\ufeff ID ;Price\n\na; 1,5 \nb\n", "x", KIND)
    assert header == ["id", "price"]
    assert [(r.line, r.text("id"), r.text("price")) for r in rows] == [
        (3, "a", "1,5"),
        (4, "b", ""),
    ]
    assert rows[0].number("price", None) == 1.5
    assert rows[1].number("price", 2.0) == 2.0
    assert rows[0].text("none") == ""


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "x has no things in it"),
        ("id\n", "x has no things in it"),
        ("id,a\n1,2,3\n", "Line 2 of the list has more cells"),
        ("id\n" + "1\n" * 4, "x has 4 things"),
        ("id,a\r1,2", "near line"),
    ],
)
def test_what_cannot_be_parted(text: str, says: str) -> None:
    """What is off is said in the words of the kind of file."""
    with pytest.raises(MendableError) as caught:
        read_rows(text, "x", KIND)
    assert says in caught.value.what


@pytest.mark.parametrize("cell", ["many", "nan", "inf", "1,5"])
def test_what_is_no_number(cell: str) -> None:
    """A cell that is no plain number is blamed by line and column, in the words of the file."""
    rows, _ = read_rows(f'id,a\n1,"{cell}"\n', "x", KIND)
    with pytest.raises(MendableError, match="Line 2 of the list") as caught:
        rows[0].number("a", None)
    assert "under a" in caught.value.what


def test_bounds() -> None:
    """A number must lie above the lower bound and at most at the upper."""
    (row,), _ = read_rows("id,a\n1,2\n", "x", KIND)
    assert row.between("a", None, 1, 2) == 2
    assert row.between("b", None, 1, 2) is None
    with pytest.raises(MendableError, match="at most 3"):
        row.between("a", None, 2, 3)


def test_what_is_said_of_a_number_has_the_mark_of_the_language() -> None:
    """In German a refused number is told with a comma, and is read as before."""
    row = Row(3, {"density": "9.5"}, comma=False, place="the shelf")
    use_language("de")
    try:
        with pytest.raises(MendableError, match="9,5"):
            row.between("density", None, 0.5, 4)
        assert row.number("density", None) == 9.5
    finally:
        use_language(ENGLISH)


def test_columns_that_are_not_there_are_listed() -> None:
    """One stands alone, several are parted by “nor”."""
    assert neither(["id"]) == "id"
    assert neither(["id", "name", "family"]) == "id nor name nor family"
