"""The client wants another colour while nothing is mixed, or once the pot was put right."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from swatchwright.acts.batches import keep_recipes
from swatchwright.acts.client_wish import CLIENT_PART, ClientWishes, Stands
from swatchwright.acts.job_told import told_parts
from swatchwright.acts.piece_job import form_for, keep_piece, piece_of_form
from swatchwright.acts.plan_job import said_painted
from swatchwright.acts.ways import WayKind
from swatchwright.colour.difference import delta_e_2000
from swatchwright.desktop.pages.plan_page import PlanPage
from swatchwright.desktop.words import finish_ways as words
from swatchwright.language import say
from swatchwright.mixing.asked import Asked, asked_for
from swatchwright.piece.common import Kind
from window.finish_hands import LEFT, PATIENCE, ask

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.pages.finish_page import FinishPage
    from swatchwright.desktop.widgets.finish_afresh import AfreshColumn
    from swatchwright.desktop.window import Window
    from swatchwright.shelf.jobs import KeptRecipe
    from swatchwright.values import Lab

    Settle = Callable[[], None]


@pytest.fixture
def boxed(page: FinishPage, mixed: Window, settle: Settle) -> FinishPage:
    """Give the page with a blanket box whose body has the clay red."""
    found = mixed.session.recipes
    assert found is not None
    form = form_for(Kind.BLANKET_BOX)
    piece = piece_of_form(form)
    mixed.desk.edit_job(lambda store, id_: keep_piece(store, id_, form, piece, None))
    mixed.desk.edit_job(lambda store, id_: keep_recipes(store, id_, found, zone="body"))
    settle()
    return page


def say_unmixed(page: FinishPage, settle: Settle, qtbot: QtBot) -> AfreshColumn:
    """Say that nothing is mixed yet, and give what helps then."""
    ask(page, qtbot, settle, stands=Stands.UNMIXED)
    column = page.reverse.ways.from_start
    assert column is not None
    return column


def wanted_of(page: FinishPage) -> Lab:
    """Give the colour that the mix looked at was found for."""
    assert page.mix is not None
    return page.mix.wanted


def kept_for(page: FinishPage, zone: str) -> KeptRecipe:
    """Give the chosen mix of a zone."""
    assert page.desk.job is not None
    kept = page.desk.job.chosen(zone)
    assert kept is not None
    return kept


class TestNothingIsMixed:
    """Nothing is stirred together yet: the wanted colour itself moves."""

    def test_it_is_the_first_answer(self, page: FinishPage, settle: Settle, qtbot: QtBot) -> None:
        """It stands before the others; it asks about no pot and no wiping, and shows one card."""
        assert next(iter(page.reverse.ask.stands)) is Stands.UNMIXED
        column = say_unmixed(page, settle, qtbot)
        assert page.reverse.ways.columns == []
        assert not page.reverse.ask.pot.isVisible()
        assert not page.reverse.ask.left.isVisible()
        qtbot.waitUntil(column.take.isVisible, timeout=PATIENCE)
        assert column.first == wanted_of(page)

    def test_the_wanted_colour_moves_as_she_said(
        self, page: FinishPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """A third less vivid than what was wanted, whatever the mix that was found comes to."""
        column = say_unmixed(page, settle, qtbot)
        far = page.reverse.ask.dial.value() / 100
        assert column.aim == asked_for(wanted_of(page), Asked.LESS_VIVID, far)
        page.reverse.ask.dial.setValue(0)
        ask(page, qtbot, settle, stands=Stands.UNMIXED)
        assert page.reverse.ways.from_start is None
        assert "already" in page.reverse.ways.before.text()

    def test_it_leads_to_new_mixes_for_the_part(
        self, boxed: FinishPage, mixed: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """The page Colour finds them, says for what, and keeps one for the part it is meant for."""
        column = say_unmixed(boxed, settle, qtbot)
        aim = column.aim
        qtbot.mouseClick(column.take, LEFT)
        settle()
        assert not boxed.isVisible()
        side = mixed.mix_side
        assert mixed.session.wanted is not None
        assert mixed.session.wanted.lab == aim
        heading = side.heading.text()
        assert say("less vivid") in heading
        assert "client wants now" in heading
        assert side.keep_bar.zone.currentData() == "body"
        assert side.keep_bar.zone.isVisible()
        qtbot.waitUntil(lambda: not side.laying(), timeout=PATIENCE)
        qtbot.mouseClick(side.columns()[0].keep, LEFT)
        settle()
        assert kept_for(boxed, "body").wanted == aim

    def test_nobody_says_that_it_is_painted(
        self, boxed: FinishPage, mixed: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """What was said of a colour that is no longer wanted is said neither by Job nor by Plan."""
        ask(boxed, qtbot, settle)
        settle()
        mixed.show_page("plan")
        settle()
        plan = mixed.page("plan")
        assert isinstance(plan, PlanPage)
        assert plan.offer.isVisible()
        mixed.show_page("finish")
        settle()
        column = say_unmixed(boxed, settle, qtbot)
        assert not said_painted(boxed.desk.part(CLIENT_PART, ClientWishes))
        assert boxed.desk.job is not None
        assert "painted" not in told_parts(boxed.desk.job)[CLIENT_PART]
        qtbot.mouseClick(column.take, LEFT)
        settle()
        mixed.show_page("plan")
        settle()
        assert not plan.offer.isVisible()


class TestThePotIsKept:
    """What is in the pot once something was stirred in becomes the mix of the part."""

    def test_it_becomes_the_mix_of_the_part(
        self, boxed: FinishPage, mixed: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """Its shares are those of the pot with what was added, in one edit that can be undone."""
        before = kept_for(boxed, "body")
        columns = ask(boxed, qtbot, settle, stands=Stands.POT)
        way, pot = columns[0].way, boxed.reverse.ask.pot.value()
        assert way.kind is WayKind.STIR
        assert way.additions is not None
        qtbot.waitUntil(columns[0].take.isVisible, timeout=PATIENCE)
        held = {paint.paint: paint.share * pot for paint in before.paints}
        for step in way.additions.steps:
            held[step.paint.id] = held.get(step.paint.id, 0.0) + step.ml
        total = sum(held.values())
        qtbot.mouseClick(columns[0].take, LEFT)
        settle()
        kept = kept_for(boxed, "body")
        shares = {paint.paint: paint.share for paint in kept.paints}
        assert shares == pytest.approx({id_: ml / total for id_, ml in held.items()}, abs=1e-6)
        assert float(delta_e_2000(kept.dry.triple, way.dry.triple)) < 0.05
        assert mixed.session.wanted is not None
        assert mixed.session.wanted.lab == kept.wanted
        assert boxed.mix is not None
        assert boxed.mix.wanted == kept.wanted
        assert boxed.layered.isVisible()
        # Looked at again it is in the pot, and near where it should go.
        ask(boxed, qtbot, settle, stands=Stands.POT)
        assert boxed.reverse.ask.word.currentText() == words.THE_WANTED
        while mixed.session.history.last and kept_for(boxed, "body") != before:
            mixed.session.history.undo()
            settle()
        assert kept_for(boxed, "body") == before
