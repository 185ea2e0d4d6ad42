"""What a hand does on the page of the plan, for its tests."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QDate, Qt
from PySide6.QtWidgets import QLabel

from swatchwright.desktop.pages.plan_page import PlanPage
from swatchwright.piece.work.task import StepKind

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtWidgets import QComboBox

    Settle = Callable[[], None]

__all__ = ["LEFT", "TUESDAY", "choose", "keep", "kinds", "told"]

LEFT = Qt.MouseButton.LeftButton
TUESDAY = QDate(2026, 12, 1)


def choose(box: QComboBox, value: object) -> None:
    """Choose from a list as a hand does."""
    place = box.findData(value)
    assert place >= 0
    box.setCurrentIndex(place)
    box.activated.emit(place)


def told(page: PlanPage) -> str:
    """Give all the text in view on the page."""
    return "\n".join(label.text() for label in page.findChildren(QLabel) if label.isVisible())


def kinds(page: PlanPage) -> list[StepKind]:
    """Give the kinds of the steps of the plan."""
    assert page.made is not None
    return [step.kind for step in page.made.plan.steps]


def keep(page: PlanPage, settle: Settle) -> None:
    """Let what is set be kept at once."""
    page._keeper.keep()
    settle()
