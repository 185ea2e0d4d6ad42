"""How far a wash is wiped back, in words."""

from __future__ import annotations

from swatchwright.language import figure, mark, say

__all__ = ["SHARES_LEFT", "share_left"]

SHARES_LEFT = (
    (0.02, mark("next to nothing")),
    (0.1, mark("a tenth")),
    (0.2, mark("a fifth")),
    (1 / 3, mark("a third")),
    (0.5, mark("half")),
    (0.75, mark("three quarters")),
    (1.0, mark("all, not wiped")),
)
"""Shares of a wet wash that have words of their own."""

_SAME = 0.005


def share_left(left: float) -> str:
    """Say how much of a wet wash is left after wiping, as in “a fifth”."""
    told = next((words for share, words in SHARES_LEFT if abs(left - share) < _SAME), None)
    return figure(left, ".0%") if told is None else say(told)
