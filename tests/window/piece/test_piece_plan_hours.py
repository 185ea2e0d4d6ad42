"""The hours of the plan are offered for the price, and only taken when she says so."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt

from swatchwright.acts.plan_hours import plan_hours
from swatchwright.desktop.words import amounts as words
from window.piece_hands import LEFT
from window.scenes import PLAN

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.pages.piece_page import PiecePage
    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]


@pytest.fixture
def planned(table: PiecePage, window: Window, settle: Settle, qtbot: QtBot) -> PiecePage:
    """Give the page with a console table whose work is planned."""
    qtbot.waitUntil(lambda: window.desk.job is not None)
    window.desk.keep_part("plan", PLAN)
    settle()
    return table


def hours_of(window: Window) -> float:
    """Give the hours of the plan."""
    assert window.desk.job is not None
    hours = plan_hours(window.desk.job, window.session.shelf)
    assert hours is not None
    return hours


def test_offered_and_taken(
    planned: PiecePage, window: Window, settle: Settle, qtbot: QtBot
) -> None:
    """What the plan says stands beside the hours; taken, it is the hours and offered no more."""
    price, hours = planned.panel.price, hours_of(window)
    assert price.planned.isVisible()
    assert price.planned.text() == words.plan_hours_line(hours)
    assert price.hours.value() == 0
    qtbot.mouseClick(price.take_hours, LEFT)
    settle()
    assert planned.form is not None
    assert float(planned.form.terms.hours) == pytest.approx(hours)
    assert not price.planned.isVisible()
    assert price.hours.hasFocus()


def test_hours_of_hers_stay(
    planned: PiecePage, window: Window, settle: Settle, qtbot: QtBot
) -> None:
    """Hours that were typed are not overwritten; those of the plan are offered beside them."""
    price = planned.panel.price
    price.hours.selectAll()
    qtbot.keyClicks(price.hours, "12")
    qtbot.keyClick(price.hours, Qt.Key.Key_Return)
    settle()
    window.desk.keep_part("plan", None)
    qtbot.waitUntil(lambda: not price.planned.isVisible())
    window.desk.keep_part("plan", PLAN)
    qtbot.waitUntil(price.planned.isVisible)
    settle()
    assert price.hours.value() == 12


def test_none_without_a_plan(table: PiecePage, settle: Settle) -> None:
    """A job without a plan offers none."""
    settle()
    assert not table.panel.price.planned.isVisible()
