"""Any text at all, and any damage to a good shelf file, is a shelf or refused."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from swatchwright.errors import MendableError
from swatchwright.paint.mixture import dry_lab, mix
from swatchwright.paint.paints import stack
from swatchwright.shelf.csv_file import parse_shelf
from swatchwright.shelf.shelf import Shelf
from unit.shelf.files import columns, csv_text, row


def parsed(text: str) -> Shelf | None:
    """Parse any text: a shelf, or None where it is refused in plain words."""
    try:
        shelf = parse_shelf(text, "any.csv")
    except MendableError:
        return None
    for p in shelf.paints:
        assert np.all(np.isfinite(p.K) & (p.K >= 0))
        assert np.all(np.isfinite(p.S) & (p.S > 0))
    return shelf


@given(st.text(alphabet=st.characters(codec="utf-8")))
def test_any_text_is_a_shelf_or_refused(text: str) -> None:
    """No text at all makes the reader fail."""
    parsed(text)


@given(st.text(alphabet='id,name;family\t"\n\rk_40s.²٤-', max_size=120))
def test_any_text_like_a_shelf_is_one_or_refused(text: str) -> None:
    """Nor does a text made of the letters of a shelf file."""
    parsed(text)


odd = st.one_of(
    st.floats().map(repr),
    st.integers().map(str),
    st.sampled_from(
        ["", " ", "nan", "-inf", "1,5", "1e308", "5e-324", "²", "0x1", "1_0", '"', "٤"]
    ),
    st.text(max_size=6),
)


@settings(max_examples=200)
@given(
    st.lists(
        st.tuples(st.integers(0, 2), st.sampled_from([*columns(), "tins_ml", "prices"]), odd),
        max_size=4,
    ),
    st.sampled_from([",", ";", "\t"]),
)
def test_any_cells_are_a_shelf_or_refused(
    changes: list[tuple[int, str, str]], delimiter: str
) -> None:
    """A good shelf with any few cells changed is still one, with a colour, or refused."""
    rows = [row("white"), row("red"), row("blue")]
    for index, column, cell in changes:
        rows[index][column] = cell
    shelf = parsed(csv_text(rows, [*columns(), "tins_ml", "prices"], delimiter))
    if shelf is not None:
        labs = dry_lab(mix(stack(shelf.paints), [[i] for i in range(3)], np.ones((3, 1))))
        assert np.all(np.isfinite(labs))


@pytest.mark.parametrize("column", ["k_²", "k_", "k_4.5.0", "s_-400", "k_nan", "k_①", "notes"])
def test_other_columns_are_passed_over(column: str) -> None:
    """A column that only looks like a wavelength is none."""
    shelf = parse_shelf(csv_text([row("white") | {column: "7"}]), "x")
    assert_allclose(shelf.paints[0].K, 2)


@given(st.lists(st.sampled_from([*columns(), "k_", "s_²", "k_4.5.0", "k_-400", ""]), max_size=70))
def test_any_head_is_one_or_refused(head: list[str]) -> None:
    """Any columns, doubled or missing, with a row below, are a shelf or refused."""
    parsed(csv_text([row("white")], head))
