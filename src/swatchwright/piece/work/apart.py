"""Several clear finishes on the parts of a piece: which is laid when, and what waits for what.

Varnish holds neither on wax nor on oil, and hands and cloths carry both: so what is brushed comes
first on all parts, and what is rubbed in comes after it. Washes and varnish on different parts are
laid on the same days, and so are oil and wax. Common practice, no source.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator, Sequence
from dataclasses import replace

from swatchwright.language import listed, say
from swatchwright.piece.names import zone_word
from swatchwright.piece.work.order import FinishKind, Laid, PlanOrder
from swatchwright.piece.work.rounds import Pass, alike, passes_in
from swatchwright.piece.work.task import WET, Hold, StepKind, Task, meet
from swatchwright.piece.work.times import Until, Wait
from swatchwright.piece.work.waits import SLICK, bears_weight, times_of, wait_after

__all__ = ["apart_rounds", "coats_on_part", "until_turned", "waiting_apart"]

_TURN = (None, FinishKind.VARNISH, FinishKind.OIL, FinishKind.WAX)
"""What comes first on one day: what is wiped wet, what is brushed, then what is rubbed in."""


def apart_rounds(order: PlanOrder) -> tuple[tuple[Pass, ...], ...]:
    """Put washes and clear finishes into rounds, each of which is laid on different parts.

    On each part all is laid in its turn. As long as anything is left to be washed or varnished
    that may be laid, nothing is oiled or waxed.
    """
    singles = _singles(order)
    zones = ("", *dict.fromkeys(zone for one in singles if (zone := _zone(one))))
    on = {z: deque(n for n, one in enumerate(singles) if _zone(one) in {"", z}) for z in zones}
    laid: dict[tuple[str, FinishKind | None], int] = {}
    found = []
    while heads := dict.fromkeys(queue[0] for queue in on.values() if queue):
        here = {n: (zone,) if (zone := _zone(singles[n])) else zones for n in sorted(heads)}
        free = [n for n in here if all(on[zone][0] == n for zone in here[n])]
        late = min(_late(singles[n]) for n in free)
        level = []
        for n in (n for n in free if _late(singles[n]) == late):
            kind = _finish(singles[n])
            for zone in here[n]:
                on[zone].popleft()
                laid[zone, kind] = laid.get((zone, kind), 0) + 1
            level.append((max(laid[zone, kind] for zone in here[n]), singles[n]))
        found.append(tuple(sorted(alike(level), key=lambda one: _TURN.index(one.finish))))
    return tuple(found)


def _singles(order: PlanOrder) -> list[Laid | None]:
    """Give each wash and each coat of a finish in its turn; not for a part that is not there."""
    there = [one for one in order.tops if one.faces != ()]
    return [
        *passes_in(order.laid, order.washes),
        *(one for one in there for _ in range(one.passes)),
    ]


def _zone(laid: Laid | None) -> str:
    return "" if laid is None else laid.zone


def _finish(laid: Laid | None) -> FinishKind | None:
    return None if laid is None else laid.finish


def _late(laid: Laid | None) -> bool:
    return _finish(laid) in SLICK


def coats_on_part(tops: Sequence[Laid]) -> int:
    """Give how many coats of clear finish the part gets that gets the most of them."""
    zones = dict.fromkeys(["", *(one.zone for one in tops)])
    return max(sum(one.passes for one in tops if one.zone in {"", zone}) for zone in zones)


# --- waits ---------------------------------------------------------------------------------------


def waiting_apart(order: PlanOrder, tasks: Sequence[Task], *, turned_next: bool) -> Iterator[Task]:
    """Give tasks with their waits, where what follows may go on other parts.

    Parameters
    ----------
    order
        What is planned.
    tasks
        What is done while the piece stands so.
    turned_next
        Whether it is turned then, to stand on what is wet now.
    """
    for n, task in enumerate(tasks):
        following = tasks[n + 1] if n + 1 < len(tasks) else None
        if following is None:
            wait = wait_after(order, task, None, turned_next=turned_next)
        else:
            wait = _between(order, task, following)
        told = _left_alone(task, following)
        how = f"{task.how} {told}" if told else task.how
        yield replace(task, how=how, wait=wait, holds=tuple(_holds(order, tasks, n)))


def _between(order: PlanOrder, task: Task, following: Task) -> Wait:
    """Give how long one task waits for another that comes after it, somewhere."""
    if meet(task, following):
        return wait_after(order, task, following, turned_next=False)
    varnish = task.finish is FinishKind.VARNISH
    wiped = following.kind is StepKind.WASH and varnish
    # What is wiped or rubbed raises lint, which settles on what is wet beside it.
    if (task.kind is StepKind.WASH or varnish) and (wiped or following.finish in SLICK):
        dry, source = times_of(order, task.kind, task.finish)
        return Wait(dry.touch_dry, source, Until.DUST)
    return Wait(0.0)


def _holds(order: PlanOrder, tasks: Sequence[Task], n: int) -> Iterator[Hold]:
    """Give what a task has to wait for beside the one before it."""
    if tasks[n].kind not in WET:
        return
    for back in range(2, n + 1):
        if _over_all(tasks[n - back + 1]):
            return
        before = tasks[n - back]
        if before.kind in WET or before.kind is StepKind.BUFF:
            wait = _between(order, before, tasks[n])
            if wait.minutes:
                yield Hold(back, wait)


def until_turned(order: PlanOrder, tasks: Sequence[Task]) -> Iterator[Hold]:
    """Give what has to bear the piece's weight when it is turned, beside what was laid last."""
    for back in range(2, len(tasks) + 1):
        if _over_all(tasks[1 - back]):
            return
        if tasks[-back].kind in WET:
            yield Hold(back, bears_weight(order, tasks[-back]))


def _over_all(task: Task) -> bool:
    """Tell whether a task wets all, so that what lies below it is waited for with it."""
    return task.kind in WET and not task.parts


def _left_alone(task: Task, following: Task | None) -> str:
    """Say that what is wet is left alone while other parts go on; empty where none do."""
    wet = task.kind in WET or task.kind is StepKind.BUFF
    if following is None or not wet or meet(task, following):
        return ""
    return say(
        "Then leave this alone: other parts come next ({parts}).",
        parts=listed(zone_word(zone) for zone in following.parts),
    )
