"""Papers, labels, and what amounts look like in print."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from swatchwright.errors import MendableError
from swatchwright.language import ENGLISH, use_language
from swatchwright.measures.kitchen import Country, in_spoons
from swatchwright.sheet.paper import LABELS, LabelSize, Paper, label_named, paper_named
from swatchwright.sheet.told import (
    amount_text,
    date_text,
    ml_text,
    parts_text,
    spoons_text,
    tins_text,
)


def test_papers_have_their_standard_sizes() -> None:
    """A4 is 210 by 297 mm (ISO 216), Letter 8.5 by 11 inches (ASME Y14.1)."""
    sizes = {paper.value: paper.size for paper in Paper}
    assert sizes["A4"] == pytest.approx((210, 297))
    assert sizes["Letter"] == pytest.approx((215.9, 279.4))


@pytest.mark.parametrize("size", LABELS, ids=lambda size: size.name)
def test_labels_lie_on_their_page_without_meeting(size: LabelSize) -> None:
    """All labels of a page are inside it, and no two cover each other."""
    places = size.places()
    wide, high = size.paper.size
    assert len(set(places)) == size.across * size.down
    for x, y in places:
        assert -1e-9 <= x <= wide - size.width + 1e-9
        assert -1e-9 <= y <= high - size.height + 1e-9
        for u, v in places:
            apart = abs(x - u) >= size.width - 1e-9 or abs(y - v) >= size.height - 1e-9
            assert apart or (x, y) == (u, v)


def test_the_common_a4_sheet_of_eight_has_its_common_edges() -> None:
    """The first of eight begins 4.65 and 13.1 mm from the edges: common practice, no source."""
    assert label_named("99.1x67.7").places()[0] == pytest.approx((4.65, 13.1), abs=0.01)


def test_names_are_read_as_people_write_them() -> None:
    """Case, spaces, mm and a multiplication sign make no difference."""
    assert label_named("63.5 × 38.1 mm").width == 63.5
    assert label_named("4x2IN").paper is Paper.LETTER
    assert paper_named(" Letter ") is Paper.LETTER
    with pytest.raises(MendableError, match="no paper “A5”"):
        paper_named("A5")
    with pytest.raises(MendableError, match="no label"):
        label_named("1x1")


def test_amounts_are_told_shortly() -> None:
    """Whole parts have no decimals, litres no noughts, and sizes their “and”."""
    assert [parts_text(v) for v in (361.0, 0.25)] == ["361", "0.25"]
    assert [ml_text(v) for v in (500, 12.5, 1000, 2500)] == [
        "500 ml",
        "12.5 ml",
        "1 litre",
        "2.5 litres",
    ]
    assert tins_text((120, 1000)) == "tins of 120 ml and 1 litre"
    assert tins_text(()) == ""


@pytest.fixture
def in_german() -> Iterator[None]:
    """Say everything in German meanwhile."""
    use_language("de")
    yield
    use_language(ENGLISH)


@pytest.mark.usefixtures("in_german")
def test_amounts_have_the_mark_of_the_language() -> None:
    """In German a comma stands where English has a point, and whole litres stay whole."""
    assert [amount_text(12.5), parts_text(0.25)] == ["12,5", "0,25"]
    assert [ml_text(ml).split()[0] for ml in (500, 12.5, 1000, 2500)] == ["500", "12,5", "1", "2,5"]
    assert spoons_text(in_spoons(361.25, Country.METRIC)).split()[-2] == "0,75"


def test_a_day_that_is_none_stays_as_it_is() -> None:
    """A day of a kept batch is written as a day only where it is one."""
    assert date_text("2026-03-01") == "1 March 2026"
    assert date_text("the first of March") == "the first of March"


def test_spoons_are_told_in_words() -> None:
    """Cups, tablespoons and teaspoons are named, and too little for a spoon is said."""
    assert spoons_text(in_spoons(361.25, Country.METRIC)) == "1¼ cups 3 tbsp 0.75 tsp"
    assert spoons_text(in_spoons(516.25, Country.METRIC)) == "2 cups 1 tbsp 0.25 tsp"
    assert spoons_text(in_spoons(0.3, Country.METRIC)) == "less than a quarter tsp"
