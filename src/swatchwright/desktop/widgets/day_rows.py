"""The rows of the picture of the days."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from swatchwright.piece.work.days import Block, Day

__all__ = ["DayRow", "day_rows"]

_DAY = 24 * 60
_ALIKE = 3
"""Days of mere hardening that share a row, at the least."""


@dataclass(frozen=True, slots=True)
class DayRow:
    """A row of the picture: a day, or days on which it only hardens."""

    days: tuple[Day, ...]
    blocks: tuple[Block, ...]


def day_rows(days: Sequence[Day]) -> list[DayRow]:
    """Give a row for each day, and one for days in a row on which it does nothing but harden."""
    rows: list[DayRow] = []
    run: list[Day] = []
    for day in [*days, None]:
        if day is not None and _only_hardens(day):
            run.append(day)
            continue
        if len(run) >= _ALIKE:
            rows.append(DayRow(tuple(run), run[0].blocks))
        else:
            rows += [DayRow((one,), one.blocks) for one in run]
        run = []
        if day is not None:
            rows.append(DayRow((day,), day.blocks))
    return rows


def _only_hardens(day: Day) -> bool:
    return len(day.blocks) == 1 and day.blocks[0].drying and _whole(day.blocks[0])


def _whole(block: Block) -> bool:
    return block.begin == 0 and block.end == _DAY
