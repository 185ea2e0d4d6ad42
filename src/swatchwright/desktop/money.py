"""What she calls her money: named in one place, and every price in view follows at once."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QDoubleSpinBox

from swatchwright.acts.habits import habits, keep_money
from swatchwright.desktop.followed import Followed
from swatchwright.language.money import beside_figure, money_in_use, use_money

__all__ = ["follow_money", "in_her_money", "name_money", "recall_money", "write_money"]


def recall_money() -> None:
    """Call the money as she called it last, which is done once before any page is made."""
    _call(habits().money)


def name_money(name: str) -> None:
    """Call the money so in all prices, now and from the next start on; empty for nothing.

    Raises
    ------
    MendableError
        If it can be no name of money.
    """
    keep_money(name)
    _call(name)


def follow_money(follower: QObject, act: Callable[[], object]) -> None:
    """Do something now, and whenever the money is named anew as long as a follower is there."""
    _hers.follow(follower, act)


def in_her_money(field: QDoubleSpinBox) -> None:
    """Have the figure of a field told as a price, in what the money is called at any time."""
    follow_money(field, lambda: write_money(field))


def write_money(field: QDoubleSpinBox, own: str = "") -> None:
    """Write what the money is called beside the figure of a field, or its own name of it."""
    before, after = beside_figure(own)
    if (field.prefix(), field.suffix()) != (before, after):
        field.setPrefix(before)
        field.setSuffix(after)


_hers = Followed()


def _call(name: str) -> None:
    if name != money_in_use():
        use_money(name)
        _hers.changed.emit()
