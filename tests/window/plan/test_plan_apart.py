"""The plan of a piece with another clear finish on its lid than on its body."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from swatchwright.acts.piece_job import form_for, keep_piece
from swatchwright.acts.plan_job import FINISH_PART, PLAN_PART
from swatchwright.desktop.pages.plan_page import PlanPage
from swatchwright.desktop.words import plan as words
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.piece.common import Kind, common_piece
from swatchwright.piece.work.order import FinishKind, PaintTimes, PlanOrder
from swatchwright.piece.work.task import StepKind
from window.plan_hands import LEFT, choose, keep

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

WAX = Layer(LayerKind.WAX, passes=2, zone="body")
VARNISH = Layer(LayerKind.VARNISH, passes=3, zone="top")


def lay(window: Window, settle: Settle, *layers: Layer) -> None:
    """Keep layers with the job, as the page of the finish does."""
    window.desk.keep_part(FINISH_PART, Stack(layers))
    settle()


@pytest.fixture
def both(raw: PlanPage, window: Window, settle: Settle) -> PlanPage:
    """Give the page for a box with wax on its body and varnish on its lid."""
    box, form = common_piece(Kind.BLANKET_BOX), form_for(Kind.BLANKET_BOX)
    window.desk.edit_job(lambda store, id_: keep_piece(store, id_, form, box, None))
    lay(window, settle, WAX, VARNISH)
    return raw


def clear(page: PlanPage) -> list[str]:
    """Name the coats of clear finish of the plan."""
    assert page.made is not None
    return [s.title for s in page.made.plan.steps if s.kind is StepKind.CLEAR]


def test_each_part_has_its_finish(both: PlanPage) -> None:
    """What goes where is told beside what goes on, and each coat stands in the list of steps."""
    assert both.on.finish.currentText() == words.BY_PART
    assert both.on.on_parts.isVisible()
    assert "varnish on the top, 3 coats" in both.on.on_parts.text()
    assert not both.on.finish_coats.isVisible()
    assert not both.differs.text()
    for title in ("Varnish, coat 3 on the top", "Wax, coat 2 on the body"):
        assert title in clear(both)
        assert title in both.steps.text()
    assert "leave this alone: other parts come next (body)" in both.steps.text()


def test_each_tin_is_asked_for(both: PlanPage, window: Window, settle: Settle) -> None:
    """Varnish and wax have rows of their own; what one tin says is kept, and holds for it alone."""
    ticks = {name for name, tick in both.times.ticks.items() if tick.isVisible()}
    assert {"varnish", "wax"} <= ticks
    assert not {"finish", "oil", "wash"} & ticks
    both.times.ticks["varnish"].setChecked(True)
    both.times.fields["varnish"][1].setValue(6.0)
    assert both.order.varnish_times == PaintTimes(60, 360, 7 * 24 * 60)
    assert both.order.wax_times is None
    assert "6 h, until the next coat (as the tin says)" in both.steps.text()
    keep(both, settle)
    assert window.desk.part(PLAN_PART, PlanOrder) == both.order


def test_one_finish_chosen_here_goes_on_all(
    both: PlanPage, qtbot: QtBot, window: Window, settle: Settle
) -> None:
    """Another finish chosen here is the only one; what the other pages say is a press away."""
    choose(both.on.finish, FinishKind.VARNISH)
    assert clear(both) == [f"Varnish, coat {n}" for n in (1, 2, 3)]
    assert not both.on.on_parts.isVisible()
    assert both.on.finish.findText(words.BY_PART) < 0
    assert both.on.finish_coats.isVisible()
    assert "wax and varnish on top, by part" in both.differs.text()
    qtbot.mouseClick(both.take, LEFT)
    assert both.on.finish.currentText() == words.BY_PART
    assert "Wax, coat 1 on the body" in clear(both)
    keep(both, settle)
    lay(window, settle, Layer(LayerKind.WAX))
    assert clear(both) == ["Wax, coat 1"]
    assert not both.on.on_parts.isVisible()


def test_another_answer_leaves_the_finishes(both: PlanPage) -> None:
    """Coats of paint set here by hand change nothing of what goes on top."""
    both.on.coats.setValue(3)
    assert both.order.own is not None
    assert "finish" not in both.order.own
    assert both.on.finish.currentText() == words.BY_PART
    assert len(clear(both)) == 5


def test_what_does_not_hold_is_in_view(both: PlanPage, window: Window, settle: Settle) -> None:
    """Varnish over wax is told above the days, in plain words; the other way round is not."""
    assert not both.weak.isVisible()
    lay(window, settle, Layer(LayerKind.WAX), VARNISH)
    assert both.weak.isVisible()
    assert "Varnish does not hold on wax" in both.weak.text()
    lay(window, settle, VARNISH, Layer(LayerKind.WAX))
    assert not both.weak.isVisible()
