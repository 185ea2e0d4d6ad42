"""Giving memory back: a photo and a search take much for a moment, and the system may have it."""

from __future__ import annotations

import ctypes
import sys
from contextlib import suppress

__all__ = ["give_back", "keep_few_arenas"]

_ARENA_MAX = -8
"""glibc's M_ARENA_MAX, malloc.h."""

_ARENAS = 2


def keep_few_arenas() -> None:
    """Let the threads share their memory, where the C library keeps some for each of them.

    glibc gives each thread an arena of its own and seldom gives it back; two are enough for two
    workers. Elsewhere nothing is done.
    """
    with suppress(OSError, AttributeError):
        if sys.platform.startswith("linux"):
            ctypes.CDLL(None).mallopt(_ARENA_MAX, _ARENAS)


def give_back() -> None:
    """Give the system what is free, where the C library can be asked to."""
    with suppress(OSError, AttributeError):
        if sys.platform.startswith("linux"):
            ctypes.CDLL(None).malloc_trim(0)
