"""The words for what went wrong in the program itself, now or in its last run."""

from __future__ import annotations

from swatchwright.desktop.words import OUR_FAULT
from swatchwright.language import say, say_count

__all__ = ["STOPPED", "fault_line"]

STOPPED = say("The program stopped without closing. Your job is as you left it.")


def fault_line(count: int) -> str:
    """Own up to a fault that has come so many times."""
    if count == 1:
        return OUR_FAULT
    again = say_count("It has happened {count} time.", "It has happened {count} times.", count)
    return f"{OUR_FAULT}\n{again}"
