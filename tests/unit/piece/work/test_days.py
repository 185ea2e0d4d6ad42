"""The days of a plan as a picture needs them."""

from __future__ import annotations

from swatchwright.piece.work.days import Block, days_of
from swatchwright.piece.work.order import PaintTimes, Primer, Week
from swatchwright.piece.work.plan import plan_of
from unit.piece.made import work


def test_a_night_is_parted_at_midnight() -> None:
    """Drying from evening to morning is a block up to 24:00 and one from 0:00."""
    order = work(fittings=False, primer=Primer.NONE, coats=1, paint_times=PaintTimes(60, 240, 1440))
    plan = plan_of(order)
    cure = plan.steps[-1]
    days = days_of(plan, order.week)
    assert [day.day for day in days] == ["2026-12-01", "2026-12-02"]
    end = 60 * int(cure.end[11:13]) + int(cure.end[14:])
    assert Block(cure.number, end, 1440, drying=True) == days[0].blocks[-1]
    assert Block(cure.number, 0, end, drying=True) == days[1].blocks[0]


def test_days_off_are_shown() -> None:
    """A weekend within the plan is there, marked as no working day."""
    order = work(start="2026-12-04", week=Week())
    off = [day.day for day in days_of(plan_of(order), order.week) if not day.working]
    assert off[:2] == ["2026-12-05", "2026-12-06"]
