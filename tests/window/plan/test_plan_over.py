"""The plan of a piece that is painted already, and of what lies over parts of one."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from swatchwright.acts.amounts import Coats
from swatchwright.acts.client_wish import CLIENT_PART, ClientWishes, Stands
from swatchwright.acts.piece_job import form_for, keep_piece
from swatchwright.acts.plan_job import FINISH_PART, PLAN_PART
from swatchwright.desktop.pages.plan_page import PlanPage
from swatchwright.desktop.words import plan as words
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.piece.common import Kind, common_piece
from swatchwright.piece.work.cautions import CAUTIONS, Danger
from swatchwright.piece.work.order import Age, PlanOrder, Surface
from swatchwright.piece.work.task import StepKind
from swatchwright.values import Lab
from window.plan_hands import LEFT, TUESDAY, choose, keep, kinds, told

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

RED = Lab(40, 50, 30)


def lay(window: Window, settle: Settle, *layers: Layer) -> None:
    """Keep layers with the job, as the page of the finish does."""
    window.desk.keep_part(FINISH_PART, Stack(layers))
    settle()


def say_stands(window: Window, settle: Settle, stands: Stands) -> None:
    """Keep how far a colour has come, as the page of the finish does."""
    window.desk.keep_part(CLIENT_PART, ClientWishes().standing(RED, stands))
    settle()


class TestPaintedAlready:
    """A piece that is painted already in this job."""

    def test_it_offers_to_begin_with_the_wash(
        self, page: PlanPage, window: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """One press, and lead is asked no more, nothing is sanded, and the wash comes first."""
        lay(window, settle, Layer(LayerKind.WASH, (("white-clean", 1.0),)), Layer(LayerKind.WAX))
        assert not page.offer.isVisible()
        say_stands(window, settle, Stands.PAINTED)
        assert page.offer.isVisible()
        assert words.PAINTED_SAID in told(page)
        assert page.now.lead.isVisible()
        qtbot.mouseClick(page.offer.begin, LEFT)
        assert not page.offer.isVisible()
        assert not page.now.lead.isVisible()
        assert kinds(page)[:3] == [StepKind.CHECK_PAINT, StepKind.MIX_WASH, StepKind.WASH]
        assert page.on.coats.text() == words.PAINTED
        assert not page.on.primer.isVisible()
        assert not page.now.ticks["repairs"].isVisible()
        keep(page, settle)
        assert window.desk.part(PLAN_PART, PlanOrder) == page.order

    def test_in_the_pot_nothing_is_offered(
        self, raw: PlanPage, window: Window, settle: Settle
    ) -> None:
        """Paint that is still in the pot is planned as before."""
        keep(raw, settle)
        say_stands(window, settle, Stands.POT)
        assert not raw.offer.isVisible()
        assert StepKind.COAT in kinds(raw)

    def test_a_piece_without_paint(self, raw: PlanPage, window: Window, settle: Settle) -> None:
        """Where the piece gets no paint the plan follows; without a wash there is nothing to do."""
        form = replace(form_for(Kind.CONSOLE_TABLE), coats=Coats(paint=0))
        table = common_piece(Kind.CONSOLE_TABLE)
        window.desk.edit_job(lambda store, id_: keep_piece(store, id_, form, table, None))
        settle()
        assert raw.order.painted
        assert "0 coats" in raw.blocked.text()
        lay(window, settle, Layer(LayerKind.WAX))
        assert raw.picture.isVisible()
        assert kinds(raw)[0] is StepKind.CHECK_PAINT
        raw.on.coats.setValue(2)
        assert words.PAINTED in raw.differs.text()
        assert raw.take.isVisible()

    def test_lead_below_is_told_of(self, page: PlanPage, window: Window, settle: Settle) -> None:
        """Old paint below is told of without a test being asked for; bare wood holds none."""
        lay(window, settle, Layer(LayerKind.WAX))
        choose(page.now.surface, Surface.PAINTED)
        choose(page.now.age, Age.OLD)
        page.on.coats.setValue(0)
        assert not page.now.lead.isVisible()
        assert CAUTIONS[Danger.LEAD].do in page.steps.text()
        choose(page.now.surface, Surface.RAW)
        assert CAUTIONS[Danger.LEAD].do not in page.steps.text()


class TestParts:
    """Washes on parts of the piece."""

    def test_each_part_has_its_steps(self, raw: PlanPage, window: Window, settle: Settle) -> None:
        """A wash on the body and another on the top are two steps, with how much for each."""
        table, form = common_piece(Kind.CONSOLE_TABLE), form_for(Kind.CONSOLE_TABLE)
        window.desk.edit_job(lambda store, id_: keep_piece(store, id_, form, table, None))
        white = (("white-clean", 1.0),)
        lay(
            window,
            settle,
            Layer(LayerKind.WASH, white, zone="body"),
            Layer(LayerKind.WASH, white, water=6.0, zone="top"),
        )
        assert raw.order.washes == 1
        text = raw.steps.text()
        for part in ("Wash 1 on the body", "Wash 1 on the top", "Mix the wash for the top"):
            assert part in text
        assert "ml on the body." in text

    def test_why_one_waits(self, raw: PlanPage) -> None:
        """The grey hours are said to be the usual ones, and the night before a wet rag is told."""
        assert words.TIMES_GREY in told(raw)
        assert not raw.times.rag.isVisible()
        raw.on.washes.setValue(1)
        assert raw.times.rag.text() == words.rag_line(12 * 60)
        assert "12 h, until it bears a wet rag" in raw.steps.text()
        assert "4 h, until the next coat" in raw.steps.text()


def test_a_wash_taken_off_leaves_the_plan(page: PlanPage, window: Window, settle: Settle) -> None:
    """Once something else was set here by hand, a wash that goes from the finish goes from here."""
    window.desk.keep_part(FINISH_PART, Stack((Layer(LayerKind.WASH, (("white-clean", 1.0),)),)))
    settle()
    choose(page.now.surface, Surface.RAW)
    page.when.start.setDate(TUESDAY)
    assert page.order.washes == 1
    page._keeper.keep()
    settle()
    assert page._read() == page.order
    assert page.order.own == ("surface",)
    window.desk.keep_part(FINISH_PART, Stack())
    settle()
    assert page.order.washes == 0
    assert page.made is not None
    assert not {StepKind.MIX_WASH, StepKind.WASH} & {s.kind for s in page.made.plan.steps}
