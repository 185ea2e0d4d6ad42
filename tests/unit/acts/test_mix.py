"""The look of a given mix."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.acts.mix import look_of_mix
from swatchwright.errors import MendableError
from swatchwright.paint.family import Family
from swatchwright.paint.mixture import dry_lab, mix, wet_lab
from swatchwright.paint.paints import stack
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.shelf import Shelf
from unit.paint.made import paint

DEMO = demo_shelf()
IDS = [p.id for p in DEMO.paints]


def test_a_mix_has_the_colours_of_its_shares() -> None:
    """Dry and wet are those of the paints mixed by the shares given, in the order given."""
    look = look_of_mix(DEMO, [("clay-red-muted", 0.3), ("white-clean", 0.7)])
    assert [p.id for p in look.paints] == ["clay-red-muted", "white-clean"]
    assert look.shares == (0.3, 0.7)
    mixture = mix(stack(look.paints), [[0, 1]], [[0.3, 0.7]])
    assert look.dry.triple == pytest.approx(tuple(dry_lab(mixture)[0]))
    assert look.wet.triple == pytest.approx(tuple(wet_lab(mixture)[0]))


@given(
    st.lists(st.sampled_from(IDS), min_size=1, max_size=8, unique=True),
    st.lists(st.floats(0.01, 1000), min_size=8, max_size=8),
    st.floats(0.01, 1000),
)
def test_only_proportions_count(ids: list[str], amounts: list[float], scale: float) -> None:
    """Amounts in any unit give the same shares, summing to one, and the same colours."""
    parts = list(zip(ids, amounts, strict=False))
    one = look_of_mix(DEMO, parts)
    two = look_of_mix(DEMO, [(id_, amount * scale) for id_, amount in parts])
    assert sum(round(s * 100_000) for s in one.shares) == 100_000
    assert one.shares == pytest.approx(two.shares, abs=1.5e-5)
    assert one.dry.triple == pytest.approx(two.dry.triple, abs=1e-7)
    assert one.wet.triple == pytest.approx(two.wet.triple, abs=1e-7)


@pytest.mark.parametrize(
    ("amounts", "said"),
    [
        ((0.7, 0.3), False),
        ((70, 30), False),
        ((7, 3), False),
        ((0.7, 0.2), True),
        ((66.6, 33.3), True),
    ],
)
def test_shares_that_do_not_add_up_are_noted(amounts: tuple[float, float], said: object) -> None:
    """Fractions, percentages and whole parts are taken as they are; other sums are noted."""
    look = look_of_mix(DEMO, list(zip(("white-clean", "soft-black"), amounts, strict=True)))
    assert any("add up to" in note for note in look.notes) is said


def test_the_notes_of_the_shelf_are_passed_on() -> None:
    """What was assumed in reading the shelf is said with the mix."""
    shelf = Shelf("mine", (paint("a"),), ("held at its ends",))
    assert look_of_mix(shelf, [("a", 1)]).notes == ("held at its ends",)


OILY = Shelf("mine", (paint("water"), paint("oil", family=Family.OIL)))


@pytest.mark.parametrize(
    ("shelf", "parts", "says"),
    [
        (DEMO, [], "0 paints were named"),
        (DEMO, [(id_, 1.0) for id_ in IDS[:9]], "9 paints were named"),
        (DEMO, [("white-clean", 0.0)], "The share of white-clean is 0."),
        (DEMO, [("white-clean", -1.0)], "The share of white-clean is \N{MINUS SIGN}1."),
        (DEMO, [("white-clean", float("nan"))], "The share of white-clean is nan."),
        (DEMO, [("white-clean", float("inf"))], "The share of white-clean is inf."),
        (DEMO, [("white-clean", 1e308), ("soft-black", 1e308)], "is 1e+308."),
        (DEMO, [("white-clean", 1.0), ("white-clean", 2.0)], "white-clean is named twice."),
        (DEMO, [("whiteclean", 1.0)], "no paint “whiteclean”"),
        (OILY, [("water", 1.0), ("oil", 1.0)], "“Water” is water-borne and “Oil” is solvent-borne"),
    ],
)
def test_what_cannot_be_mixed_is_refused(
    shelf: Shelf, parts: list[tuple[str, float]], says: str
) -> None:
    """Too few or many paints, shares that cannot be, and water with solvent are refused."""
    with pytest.raises(MendableError) as caught:
        look_of_mix(shelf, parts)
    assert says in caught.value.what
    assert caught.value.mend
