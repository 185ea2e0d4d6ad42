"""One setting of each page that keeps what is set a moment after the hand rests."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any, cast

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from swatchwright.acts.piece_job import FORM_PART as PIECE_PART
from swatchwright.acts.plan_job import FINISH_PART, PLAN_PART
from swatchwright.acts.sheet_form import FORM_PART as SHEET_PART
from swatchwright.paint.layers import LayerKind
from swatchwright.piece.common import Kind
from swatchwright.sheet.paper import Paper
from window.shelf_hands import WHITE, tick

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.pages.brief_page import BriefPage
    from swatchwright.desktop.pages.compare_page import ComparePage
    from swatchwright.desktop.pages.finish_page import FinishPage
    from swatchwright.desktop.pages.piece_page import PiecePage
    from swatchwright.desktop.pages.plan_page import PlanPage
    from swatchwright.desktop.pages.sheet_page import SheetPage
    from swatchwright.desktop.pages.shelf_page import ShelfPage
    from swatchwright.desktop.window import Window
    from swatchwright.shelf.jobs import Job

__all__ = ["SET", "is_kept"]

LEFT = Qt.MouseButton.LeftButton
CLIENT = "Harbour workshop"
SATURDAY = 5
_HANDS = cast("QtBot", QTest)
"""Presses keys and buttons as the fixture of tests does."""


def _on_brief(window: Window) -> None:
    page = cast("BriefPage", window.page("brief"))
    page.head.client.setFocus()
    QTest.keyClicks(page.head.client, CLIENT)


def _on_compare(window: Window) -> None:
    QTest.mouseClick(cast("ComparePage", window.page("compare")).bar.figures, LEFT)


def _on_finish(window: Window) -> None:
    page = cast("FinishPage", window.page("finish"))
    QTest.mouseClick(page.layered.layers.add[LayerKind.WAX], LEFT)


def _on_piece(window: Window) -> None:
    page = cast("PiecePage", window.page("piece"))
    QTest.mouseClick(page.kinds.buttons[Kind.CHAIR], LEFT)


def _on_plan(window: Window) -> None:
    cast("PlanPage", window.page("plan")).when.days[SATURDAY].click()


def _on_sheet(window: Window) -> None:
    paper = cast("SheetPage", window.page("sheet")).choices.paper
    paper.setCurrentIndex(paper.findData(Paper.LETTER))
    paper.activated.emit(paper.currentIndex())


def _on_shelf(window: Window) -> None:
    page = cast("ShelfPage", window.page("shelf"))
    QTest.mouseClick(page.get_to_know, LEFT)
    tick(page, _HANDS, (WHITE,))


SET: dict[str, Callable[[Window], None]] = {
    "brief": _on_brief,
    "compare": _on_compare,
    "finish": _on_finish,
    "piece": _on_piece,
    "plan": _on_plan,
    "sheet": _on_sheet,
    "shelf": _on_shelf,
}
"""Sets something on a page that is in view, by its key."""


_LOOKED_AT: dict[str, tuple[str, Callable[[dict[str, Any]], bool]]] = {
    "compare": ("compare", lambda view: view["figures"] is True),
    "finish": (FINISH_PART, lambda stack: [one["kind"] for one in stack["layers"]] == ["wax"]),
    "piece": (PIECE_PART, lambda form: form["kind"] == Kind.CHAIR.value),
    "plan": (PLAN_PART, lambda order: SATURDAY in order["week"]["days"]),
    "sheet": (SHEET_PART, lambda form: form["paper"] == Paper.LETTER.value),
    "shelf": ("sitting", lambda sitting: sitting["ids"] == [WHITE]),
}


def is_kept(job: Job, key: str) -> bool:
    """Tell whether what is set on a page is kept with a job."""
    if key == "brief":
        return job.client == CLIENT
    part, looks_so = _LOOKED_AT[key]
    document = job.document(part)
    return document is not None and looks_so(json.loads(document.json))
