"""What the program ends with."""

from __future__ import annotations

from enum import IntEnum

__all__ = ["ExitCode"]


class ExitCode(IntEnum):
    """What the program ends with."""

    DONE = 0
    INPUT = 2
    OUT_OF_REACH = 3
    OUR_FAULT = 70
    STOPPED = 130
