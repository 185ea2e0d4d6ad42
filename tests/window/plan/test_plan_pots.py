"""The plan of a piece with one colour on its body and another on its top."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from swatchwright.acts.batches import keep_recipes, take_off_mix
from swatchwright.acts.piece_job import form_for, keep_piece
from swatchwright.acts.recipes import Recipes, recipes_for, typed_colour
from swatchwright.desktop.pages.plan_page import PlanPage
from swatchwright.piece.common import Kind, common_piece
from swatchwright.piece.work.task import StepKind

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]


def mix(window: Window, zone: str, found: Recipes) -> None:
    """Keep the mixes for a part of the job."""
    window.desk.edit_job(lambda store, id_: keep_recipes(store, id_, found, zone=zone))


@pytest.fixture
def both(raw: PlanPage, window: Window, settle: Settle) -> PlanPage:
    """Give the page for a box with a red body and a blue top."""
    box, form = common_piece(Kind.BLANKET_BOX), form_for(Kind.BLANKET_BOX)
    window.desk.edit_job(lambda store, id_: keep_piece(store, id_, form, box, None))
    for zone, lab in (("body", (46, 34, 24)), ("top", (28, 3, -24))):
        mix(window, zone, recipes_for(typed_colour(*lab), window.session.shelf, keep=2))
    settle()
    return raw


def titles(page: PlanPage, kind: StepKind) -> list[str]:
    """Name the steps of a kind in the plan."""
    assert page.made is not None
    return [step.title for step in page.made.plan.steps if step.kind is kind]


def test_each_colour_has_its_pot_and_its_place(
    both: PlanPage, window: Window, settle: Settle, qtbot: QtBot, tmp_path: Path
) -> None:
    """List and calendar name each pot and each place; with one mix left it is one batch again."""
    (pots,) = titles(both, StepKind.MIX)
    assert pots.startswith("Mix each colour whole, in one pot each: ")
    assert pots.count(" ml") == 2
    first = titles(both, StepKind.COAT)[0]
    assert " on the body, " in first
    assert first.endswith(" on the top")
    for told in (pots, first, "Where two colours meet, cut in by hand"):
        assert told in both.steps.text()
    path = tmp_path / "box.ics"
    both.save_calendar(path)
    qtbot.waitUntil(both.saved.isVisible, timeout=10_000)
    assert "Mix each colour whole" in path.read_text(encoding="utf-8").replace("\r\n ", "")
    window.desk.edit_job(lambda store, id_: take_off_mix(store, id_, "top"))
    settle()
    assert titles(both, StepKind.MIX) == ["Mix the whole batch"]
    assert "Where two colours meet" not in both.steps.text()
