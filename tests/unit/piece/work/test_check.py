"""Plans that cannot be made are refused; lead is answered before anything else."""

from __future__ import annotations

from typing import Any

import pytest

from swatchwright.errors import MendableError
from swatchwright.piece.work.order import (
    Age,
    FinishKind,
    Lead,
    PaintTimes,
    Primer,
    Room,
    Surface,
    Week,
    Which,
)
from swatchwright.piece.work.plan import plan_of
from unit.piece.made import work


@pytest.mark.parametrize(
    ("changes", "told"),
    [
        ({"start": "2026-02-30"}, "is not a day"),
        ({"start": "tomorrow"}, "is not a day"),
        ({"start": "1066-10-14"}, "would begin in 1066"),
        ({"name": " "}, "no name"),
        ({"area": 0}, "0 m² are"),
        ({"area": float("nan")}, "nan m² are"),
        ({"coats": 0}, "0 coats of paint"),
        ({"coats": 11}, "11 coats of paint"),
        ({"washes": -1}, "−1 coats of wash"),
        ({"finish": FinishKind.OIL, "finish_coats": 0}, "0 coats of finish"),
        ({"primer": Primer.NONE, "primer_coats": 2}, "no primer"),
        ({"faces": ()}, "is not clear"),
        ({"faces": (Which.TOP, Which.TOP)}, "is not clear"),
        ({"paint_times": PaintTimes(60, 30, 90)}, "times of the paint"),
        ({"wash_times": PaintTimes(float("nan"), 30, 90)}, "times of the wash"),
        ({"finish_times": PaintTimes(1, 30, 1e6)}, "times of the finish"),
        ({"room": Room(5, 50)}, "does not dry"),
        ({"week": Week(days=())}, "No working days"),
        ({"week": Week(days=(0, 7))}, "No working days"),
        ({"week": Week(begin=600, end=620)}, "working hours"),
        ({"week": Week(begin=600, end=1500)}, "working hours"),
        ({"area": 60, "week": Week(begin=600, end=660)}, "longer than a working day"),
    ],
)
def test_what_cannot_be_planned(changes: dict[str, Any], told: str) -> None:
    """Each thing that is off is named, with what would do."""
    with pytest.raises(MendableError, match=told):
        plan_of(work(**changes))


COATED = [s for s in Surface if s not in {Surface.RAW, Surface.LAMINATE}]


@pytest.mark.parametrize("surface", COATED)
@pytest.mark.parametrize("age", [Age.OLD, Age.UNKNOWN])
def test_lead_is_asked_for(surface: Surface, age: Age) -> None:
    """An old or unknown coat is not planned until lead is answered, and then it is."""
    order = {"surface": surface, "age": age}
    with pytest.raises(MendableError, match="may hold lead"):
        plan_of(work(**order))
    for answer in (Lead.TESTED_NEGATIVE, Lead.TREAT_AS_LEAD):
        assert plan_of(work(**order, lead=answer)).steps


def test_the_unknown_is_never_recent() -> None:
    """What nobody can name nobody can date: lead is asked for all the same."""
    with pytest.raises(MendableError, match="may hold lead"):
        plan_of(work(surface=Surface.UNKNOWN, age=Age.RECENT))


def test_where_there_is_no_coat_lead_is_not_asked_for() -> None:
    """Bare wood, laminate and a recent coat are planned at once."""
    for surface, age in (
        (Surface.RAW, Age.UNKNOWN),
        (Surface.LAMINATE, Age.OLD),
        (Surface.PAINTED, Age.RECENT),
    ):
        assert plan_of(work(surface=surface, age=age)).steps
