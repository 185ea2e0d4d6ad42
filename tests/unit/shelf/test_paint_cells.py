"""The cells of a shelf file that are not spectra: unit, finish of its own, prices not known."""

from __future__ import annotations

from dataclasses import replace

import pytest

from swatchwright.errors import MendableError
from swatchwright.paint.family import FAMILIES, Family
from swatchwright.paint.paints import Tin
from swatchwright.shelf.csv_file import parse_shelf
from unit.shelf.files import csv_text, row


def test_a_finish_of_its_own_is_read() -> None:
    """Numbers that are given replace the family's, and the others stay."""
    (one, two) = parse_shelf(
        csv_text([row("one", wet_scattering="0.5"), row("two", wet_scattering="")]), "x"
    ).paints
    assert one.own_finish == replace(FAMILIES[Family.CHALKY], wet_scattering=0.5)
    assert two.own_finish is None


@pytest.mark.parametrize(
    ("cells", "words"),
    [
        ({"glare": "1.2"}, "1.2 under glare"),
        ({"milk": "-1"}, "\N{MINUS SIGN}1 under milk"),
        ({"wet_scattering": "0"}, "0 under wet_scattering"),
        ({"unit": "per inch"}, "“per inch” under unit"),
    ],
)
def test_what_no_paint_has_is_refused(cells: dict[str, str], words: str) -> None:
    """A finish or a unit that cannot be is refused by line and column."""
    with pytest.raises(MendableError, match=words) as caught:
        parse_shelf(csv_text([row("one") | cells]), "x")
    assert "Line 2" in caught.value.what


def test_a_tin_without_a_price_among_others() -> None:
    """A dash stands for a price that is not known."""
    (one,) = parse_shelf(csv_text([row("one", tins_ml="250;500", prices="-;9")]), "x").paints
    assert one.tins == (Tin(250), Tin(500, 9))
