"""A plan as JSON and as lines to read."""

from __future__ import annotations

from datetime import datetime
from textwrap import fill
from typing import Any

from swatchwright.acts.plan import PlannedWork
from swatchwright.commands.words import print_notes
from swatchwright.piece.work.plan import Step
from swatchwright.piece.work.times import Source

__all__ = ["plan_json", "print_plan"]

_WIDTH = 96

# Once below the plan it is said in full.
_SHORT = {Source.TIN: "the tin", Source.PRACTICE: "common practice"}


def plan_json(made: PlannedWork) -> dict[str, Any]:
    """Give a plan as JSON, with its days."""
    plan = made.plan
    return {
        "name": plan.name,
        "ready": plan.ready,
        "gently_until": plan.gently,
        "weak": plan.weak,
        "painted_already": plan.painted,
        "hands_on_minutes": round(plan.hands_on),
        "wait_factor": round(plan.wait_factor, 3),
        "steps": [_step_json(step) for step in plan.steps],
        "days": [
            {
                "day": day.day,
                "working": day.working,
                "blocks": [
                    {"step": b.step, "begin": b.begin, "end": b.end, "drying": b.drying}
                    for b in day.blocks
                ],
            }
            for day in made.days
        ],
        "cautions": [{"danger": c.danger.value, "why": c.why, "do": c.do} for c in plan.cautions],
        "notes": list(plan.notes),
    }


def _step_json(step: Step) -> dict[str, Any]:
    return {
        "number": step.number,
        "kind": step.kind.value,
        "title": step.title,
        "how": step.how,
        "start": step.start,
        "end": step.end,
        "sessions": [{"start": s.start, "end": s.end} for s in step.sessions],
        "hands_on_minutes": round(step.hands_on),
        "wait_minutes": round(step.wait),
        "wait_from": step.wait_from.value,
        "wait_until": step.wait_until.value,
        "parts": list(step.parts),
        "rests_on": step.rests_on.value,
        "faces": [face.value for face in step.faces],
        "cautions": [danger.value for danger in step.cautions],
    }


def print_plan(made: PlannedWork) -> None:
    """Print a plan day by day, then what can hurt, then what was assumed."""
    plan = made.plan
    print(
        f"{plan.name}: {plan.hands_on / 60:.1f} hours of work; ready {_moment(plan.ready)}; "
        f"use it gently until {_day(plan.gently)}"
    )
    if plan.weak:
        print(fill(plan.weak, _WIDTH))
    day = ""
    for step in plan.steps:
        if step.start[:10] != day:
            day = step.start[:10]
            print(f"\n{_day(step.start)}")
        _print_step(step)
    if plan.cautions:
        print("\nTake care")
    for caution in plan.cautions:
        told = f"{str(caution.danger).capitalize()}. {caution.why} {caution.do}"
        print(fill(told, _WIDTH, initial_indent="  ", subsequent_indent="    "))
    print()
    print_notes(plan.notes)


def _print_step(step: Step) -> None:
    begin, end = step.start[11:], step.end[11:]
    if step.end[:10] != step.start[:10]:
        end = _moment(step.end)
    told = f"{step.number:3}. {begin}-{end}  {step.title}"
    if step.faces:
        told += f" ({', '.join(step.faces)})"
    if step.wait:
        wait = f"{_hours(step.wait)}, {step.wait_until} ({_SHORT[step.wait_from]})"
        told += f"; then wait {wait}"
    print(told)
    print(fill(step.how, _WIDTH, initial_indent=" " * 6, subsequent_indent=" " * 6))
    if step.cautions:
        print(f"      Take care: {', '.join(step.cautions)}.")


def _hours(minutes: float) -> str:
    if minutes < 60:
        return f"{minutes:.0f} min"
    return f"{round(minutes / 60, 2):g} h" if minutes <= 72 * 60 else f"{minutes / 1440:.3g} days"


_NAMES = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")


def _day(moment: str) -> str:
    return f"{_NAMES[datetime.fromisoformat(moment).weekday()]} {moment[:10]}"


def _moment(moment: str) -> str:
    return f"{_day(moment)} {moment[11:]}"
