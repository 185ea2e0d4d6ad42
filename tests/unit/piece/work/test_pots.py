"""What the steps of several colours say: each pot, each coat, and where two colours meet."""

from __future__ import annotations

import pytest

from swatchwright.piece.work.order import PaintTimes, PlanOrder, Pot, Room, Which
from swatchwright.piece.work.plan import Step, plan_of
from swatchwright.piece.work.task import StepKind
from swatchwright.values import Lab
from unit.piece.made import work

RED, BLUE = Lab(46, 34, 24), Lab(28, 3, -24)
BODY, TOP = ("body", (Which.FRONT, Which.SIDES)), ("top", (Which.TOP,))
POTS = (Pot((BODY,), RED, 173.4), Pot((TOP,), BLUE, 55))


def steps(order: PlanOrder, kind: StepKind) -> list[Step]:
    """Give the steps of a kind in the plan of an order."""
    return [step for step in plan_of(order).steps if step.kind is kind]


def test_pots_and_places() -> None:
    """Each pot is named with its part and its ml, and each coat with what goes where."""
    order = work(pots=POTS)
    (mix,) = steps(order, StepKind.MIX)
    assert mix.title == (
        "Mix each colour whole, in one pot each: mid red for the body, 173 ml; dark muted blue "
        "for the top, 55 ml"
    )
    coats = steps(order, StepKind.COAT)
    assert [step.title for step in coats] == [
        f"Paint, coat {n}: mid red on the body, dark muted blue on the top" for n in (1, 2)
    ]


def test_one_colour_is_as_before() -> None:
    """Without pots mixing and coats have the words of one batch."""
    (mix,) = steps(work(), StepKind.MIX)
    assert (mix.title, mix.how.split(",")[0]) == (
        "Mix the whole batch",
        "Mix all the paint for all coats at once",
    )
    assert [step.title for step in steps(work(), StepKind.COAT)] == [
        "Paint, coat 1",
        "Paint, coat 2",
    ]


def test_a_pot_for_several_parts() -> None:
    """Parts of one colour are named together, and all that has none of its own is the rest."""
    order = work(pots=(Pot((TOP, ("doors", None)), BLUE), Pot((("", None),), RED)))
    (mix,) = steps(order, StepKind.MIX)
    assert mix.title.endswith("dark muted blue for the top and doors; mid red for the rest")


@pytest.mark.parametrize(
    ("changes", "told"),
    [
        ({}, "dry for 4 h before"),
        # Twice as long at 10 degrees: the rule of thumb of every wait (common practice).
        ({"room": Room(10, 50)}, "dry for 8 h before"),
        ({"paint_times": PaintTimes(60, 360, 6000)}, "dry for 6 h, by the time on its tin, before"),
    ],
)
def test_the_first_dries_as_for_its_next_coat(changes: dict[str, object], told: str) -> None:
    """Before it is masked, paint dries as the wait between coats says, by its tin where told."""
    order = work(pots=POTS, **changes)
    first = steps(order, StepKind.COAT)[0]
    assert told in first.how
    assert f"for {first.wait / 60:g} h" in first.how


def test_nothing_is_painted_of_a_part_that_is_not_seen() -> None:
    """A coat in which only parts without a mix are seen names no colour, and says that."""
    order = work(pots=(*POTS, Pot((("inside", (Which.INSIDE,)),))), faces=(Which.INSIDE,))
    first = steps(order, StepKind.COAT)[0]
    assert first.title == "Paint, coat 1"
    assert first.how.endswith("No mix is kept yet for this: inside.")
    assert "Where two colours meet" not in first.how
