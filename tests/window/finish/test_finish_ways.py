"""Where the client wants a mix to go: the ways are shown side by side, and one is taken over."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtWidgets import QLabel

from swatchwright.acts.client_wish import CLIENT_PART, ClientWishes
from swatchwright.acts.ways import WayKind
from swatchwright.colour.difference import delta_e_2000
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.words import finish
from swatchwright.desktop.words import finish_ways as words
from swatchwright.mixing.asked import Asked
from swatchwright.paint.layers import Layer, LayerKind, Stack
from window.finish_hands import LEFT, ask, chroma, finish_of, lay

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.pages.finish_page import FinishPage
    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]


class TestClient:
    """Where the client wants it."""

    def test_ways_come_nearer(self, page: FinishPage, settle: Settle, qtbot: QtBot) -> None:
        """By a third less vivid: each way is less vivid and told in measures, with its risks."""
        columns = ask(page, qtbot, settle)
        assert {column.way.kind for column in columns} == {WayKind.WASH, WayKind.STIR}
        assert page.mix is not None
        for column in columns:
            assert chroma(column.way.dry) < chroma(page.mix.dry)
            assert "ml" in column.told.text()
            told = [label.text() for label in column.findChildren(QLabel)]
            assert any(risk.words in " ".join(told) for risk in column.way.risks)
            assert column.take.isVisibleTo(column) == (column.way.kind is WayKind.WASH)

    def test_now_and_goal_touch_the_way(
        self, page: FinishPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """In the field of a way its colour lies between the goal and the present one."""
        column = ask(page, qtbot, settle)[0]
        picture = column.field.grab().toImage()
        third, right = column.field.height() // 3, column.field.width() - 2
        assert picture.pixelColor(right, third - 1) == screen_colour(column.field._aim)
        assert picture.pixelColor(right, third) == screen_colour(column.way.grain)
        assert picture.pixelColor(right, 2 * third - 1) == screen_colour(column.way.grain)
        assert picture.pixelColor(right, 2 * third) == screen_colour(column.field._now)

    def test_the_dial_goes_by_its_share(
        self, page: FinishPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """At half, the goal has half the chroma of the mix."""
        qtbot.mouseClick(page.sides[1], LEFT)
        page.reverse.ask.dial.setValue(50)
        columns = ask(page, qtbot, settle)
        now, aim = columns[0].field._now, columns[0].field._aim
        assert chroma(aim) == pytest.approx(chroma(now) / 2)

    @pytest.mark.parametrize("word", [Asked.LIGHTER, Asked.DARKER, Asked.WARMER, Asked.COOLER])
    def test_other_words(self, page: FinishPage, settle: Settle, qtbot: QtBot, word: Asked) -> None:
        """Whatever way the client wants it, the nearest way goes there."""
        columns = ask(page, qtbot, settle, word.value)
        field, way = columns[0].field, columns[0].way
        left = float(delta_e_2000(field._aim.triple, way.dry.triple))
        assert left < float(delta_e_2000(field._aim.triple, field._now.triple))

    def test_a_wash_is_taken_over(
        self,
        page: FinishPage,
        settle: Settle,
        shown: Callable[[], None],
        qtbot: QtBot,
    ) -> None:
        """A press lays the wash of a way over the mix; the wax stays on top, its wash goes."""
        for kind in (LayerKind.WASH, LayerKind.WAX):
            lay(page, kind, qtbot)
        columns = ask(page, qtbot, settle)
        column = next(c for c in columns if c.way.kind is WayKind.WASH)
        way = column.way
        assert way.layer is not None
        qtbot.mouseClick(column.take, LEFT)
        shown()
        assert page.stack == Stack((way.layer, Layer(LayerKind.WAX)))
        assert page.layered.isVisible()
        # What was told is what it looks like in the end: with the wax on.
        seen = page.layered.steps.colours()[2]
        assert float(delta_e_2000(seen.triple, way.dry.triple)) < 0.05

    def test_the_wax_is_told_of(
        self, page: FinishPage, settle: Settle, shown: Callable[[], None], qtbot: QtBot
    ) -> None:
        """With a wax over the mix, the head and every card say that it is on; else none does."""
        columns = ask(page, qtbot, settle)
        cards = [" ".join(label.text() for label in c.findChildren(QLabel)) for c in columns]
        assert not any("wax on" in text for text in cards)
        page.sides[0].click()
        lay(page, LayerKind.WAX, qtbot)
        shown()
        columns = ask(page, qtbot, settle)
        cards = [" ".join(label.text() for label in c.findChildren(QLabel)) for c in columns]
        assert cards
        assert all("wax on" in text for text in cards)
        assert "with wax on" in page.reverse.ways.before.text()

    def test_what_the_client_wants_now_is_kept_and_shown(
        self, page: FinishPage, settle: Settle, shown: Callable[[], None], qtbot: QtBot
    ) -> None:
        """Once a way is taken, what the client wants now lies beside what was wanted first.

        It is kept with the job until it is cleared, and clearing can be undone.
        """
        columns = ask(page, qtbot, settle)
        aim = columns[0].field._aim
        assert page.layered.steps.client() is None
        qtbot.mouseClick(next(c for c in columns if c.way.layer is not None).take, LEFT)
        shown()
        steps = page.layered.steps
        assert page.mix is not None
        assert steps.strips() == [(finish.WANTED, page.mix.wanted), (words.CLIENT_NOW, aim)]
        picture = steps.grab().toImage()
        first = steps.areas()[0].top()
        assert picture.pixelColor(steps.width() - 3, first - 3) == screen_colour(aim)
        kept = page.desk.part(CLIENT_PART, ClientWishes)
        assert kept is not None
        wish = kept.of(page.mix.wanted)
        assert wish is not None
        assert wish.aim == aim
        qtbot.mouseClick(page.layered.clear_wish, LEFT)
        settle()
        shown()
        assert [word for word, _ in steps.strips()] == [finish.WANTED]
        assert page.desk.part(CLIENT_PART, ClientWishes) is None
        assert not page.layered.clear_wish.isVisible()
        page.session.history.undo()
        settle()
        shown()
        assert steps.client() == aim

    def test_of_every_wash_never_contradicts_a_card(
        self, page: FinishPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """Where a wash ends and how its hue turns stands on its card, not below all of them."""
        for far in (20, 40, 60):
            page.reverse.ask.dial.setValue(far)
            columns = ask(page, qtbot, settle)
            assert columns
            assert "hue" not in page.reverse.ways.notes.text()
            for column in columns:
                told = " ".join(label.text() for label in column.findChildren(QLabel))
                hue_words = ("redder", "yellower", "greener", "bluer")
                if any(f"{word} " in told for word in hue_words):
                    assert "The hue keeps." not in told

    def test_twice_the_pot_takes_twice_as_much(
        self, page: FinishPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """What is stirred in is in proportion to what is left in the pot."""

        def stirred() -> list[float]:
            columns = ask(page, qtbot, settle)
            way = next(c.way for c in columns if c.way.kind is WayKind.STIR)
            assert way.additions is not None
            return [step.ml for step in way.additions.steps]

        first = stirred()
        page.reverse.ask.pot.setValue(500)
        assert stirred() == pytest.approx([2 * ml for ml in first], rel=0.05)

    def test_a_pot_too_small_is_said_in_place(
        self, page: FinishPage, mixed: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """Room for less than is in the pot is answered above the ways, and nowhere else."""
        ask(page, qtbot, settle)
        page.reverse.ask.room.setValue(50)
        assert ask(page, qtbot, settle) == []
        assert "room for only 50 ml" in page.reverse.ways.before.text()
        assert not mixed.trouble.isVisible()

    def test_as_grey_as_the_cloth(self, with_cushion: Window, settle: Settle, qtbot: QtBot) -> None:
        """Every colour of the cloth is offered to be as grey as; the goal has its chroma."""
        with_cushion.show_page("finish")
        page = finish_of(with_cushion)
        found = with_cushion.session.found
        assert found is not None
        labs = [c.colour.lab for c in found.colours]
        greyest = min(range(len(labs)), key=lambda i: chroma(labs[i]))
        text = words.as_grey_as(greyest + 1, labs[greyest])
        columns = ask(page, qtbot, settle, text)
        assert columns
        assert chroma(columns[0].field._aim) == pytest.approx(chroma(labs[greyest]))
        assert not page.reverse.ask.dial.isVisible()

    def test_what_is_there_already_is_said(
        self, page: FinishPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """With the dial at nothing no way is shown, and it is said that it is there already."""
        page.reverse.ask.dial.setValue(0)
        assert ask(page, qtbot, settle) == []
        assert "already" in page.reverse.ways.before.text()

    def test_the_wanted_colour_itself(self, page: FinishPage, settle: Settle, qtbot: QtBot) -> None:
        """Asked for the wanted colour, that is the goal, and the dial has nothing to say."""
        columns = ask(page, qtbot, settle, words.THE_WANTED)
        assert page.mix is not None
        assert not page.reverse.ask.dial.isVisible()
        assert all(column.field._aim == page.mix.wanted for column in columns)
        assert columns or "already" in page.reverse.ways.before.text()
