"""Where the client wants a mix to go: the ways are shown side by side, and one is taken over."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel

from swatchwright.acts.batches import keep_recipes
from swatchwright.acts.client_wish import CLIENT_PART, ClientWishes, Stands
from swatchwright.acts.piece_job import form_for, keep_piece, piece_of_form
from swatchwright.acts.ways import WayKind
from swatchwright.colour.difference import delta_e_2000
from swatchwright.desktop import words as common
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.words import finish
from swatchwright.desktop.words import finish_ways as words
from swatchwright.mixing.asked import Asked
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.piece.common import Kind
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
        assert {column.way.kind for column in columns} == {WayKind.WASH, WayKind.RECOAT}
        assert page.mix is not None
        for column in columns:
            assert chroma(column.way.dry) < chroma(page.mix.dry)
            assert "ml" in column.told.text()
            told = [label.text() for label in column.findChildren(QLabel)]
            assert any(risk.words in " ".join(told) for risk in column.way.risks)
            assert column.take.isVisibleTo(column)

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
        columns = ask(page, qtbot, settle, words.said(word))
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
        # The wash that was taken is kept a moment later, though its job was begun meanwhile.
        page.keep()
        settle()
        assert [layer.kind for layer in page.stack.layers] == [LayerKind.WASH]
        assert page.desk.part("finish", Stack) == page.stack
        qtbot.mouseClick(page.layered.clear_wish, LEFT)
        settle()
        shown()
        assert [word for word, _ in steps.strips()] == [finish.WANTED]
        left = page.desk.part(CLIENT_PART, ClientWishes)
        assert left is not None
        assert left.wishes == ()
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
            columns = ask(page, qtbot, settle, stands=Stands.POT)
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
        ask(page, qtbot, settle, stands=Stands.POT)
        page.reverse.ask.room.setValue(50)
        assert ask(page, qtbot, settle, stands=Stands.POT) == []
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


class TestHowFarItHasCome:
    """Painted already, or still in the pot: it is asked, kept, and decides what is offered."""

    def test_it_is_asked_first(self, page: FinishPage, settle: Settle, qtbot: QtBot) -> None:
        """Until it is said no way is shown, and no pot and no wiping is asked about."""
        qtbot.mouseClick(page.sides[1], LEFT)
        settle()
        reverse = page.reverse
        assert reverse.ways.before.text() == words.SAY_STANDS
        assert reverse.ways.columns == []
        assert not reverse.ask.pot.isVisible()
        assert not reverse.ask.left.isVisible()
        for button in reverse.ask.stands.values():
            assert button.isVisible()
            assert not button.isChecked()

    def test_what_helps_in_each_state(self, page: FinishPage, settle: Settle, qtbot: QtBot) -> None:
        """Over a painted piece go washes and a new coat; into the pot only what is stirred in."""
        kinds = [c.way.kind for c in ask(page, qtbot, settle)]
        assert kinds[-1] is WayKind.RECOAT
        assert set(kinds[:-1]) == {WayKind.WASH}
        assert page.reverse.ask.left.isVisible()
        assert not page.reverse.ask.pot.isVisible()
        columns = ask(page, qtbot, settle, stands=Stands.POT)
        assert [c.way.kind for c in columns] == [WayKind.STIR]
        assert not page.reverse.ask.left.isVisible()
        assert page.reverse.ask.pot.isVisible()

    def test_by_keyboard(self, page: FinishPage, settle: Settle, qtbot: QtBot) -> None:
        """It is said with the space bar, and the arrows go from one answer to the other."""
        qtbot.mouseClick(page.sides[1], LEFT)
        first, second, _ = page.reverse.ask.stands.values()
        first.setFocus()
        qtbot.keyClick(first, Qt.Key.Key_Space)
        assert page.reverse.ask.standing() is Stands.UNMIXED
        qtbot.keyClick(first, Qt.Key.Key_Right)
        assert second.hasFocus()
        settle()

    def test_it_is_kept_for_the_colour(
        self, page: FinishPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """It is kept with the job, shown again, asked anew for another colour, and undone."""
        window, mix = page.window(), page.mix
        assert mix is not None
        ask(page, qtbot, settle, stands=Stands.POT)
        settle()
        kept = page.desk.part(CLIENT_PART, ClientWishes)
        assert kept is not None
        assert kept.stands(mix.wanted) is Stands.POT
        job = page.desk.job
        assert job is not None
        page.session.type_colour("28, 3, -24")
        settle()
        assert page.mix is not None
        assert page.mix.wanted != mix.wanted
        assert page.reverse.ask.standing() is None
        page.desk.put_away()
        settle()
        page.session.type_colour("46, 34, 24")
        settle()
        assert page.reverse.ask.standing() is None
        page.desk.open_job(job.id)
        settle()
        page.session.type_colour("46, 34, 24")
        settle()
        assert page.reverse.ask.standing() is Stands.POT
        del window

    def test_it_is_undone(self, page: FinishPage, settle: Settle, qtbot: QtBot) -> None:
        """Undo takes back what was said last."""
        ask(page, qtbot, settle, stands=Stands.POT)
        settle()
        ask(page, qtbot, settle, stands=Stands.PAINTED)
        settle()
        page.session.history.undo()
        settle()
        assert page.reverse.ask.standing() is Stands.POT
        assert [c.way.kind for c in page.reverse.ways.columns] == [WayKind.STIR]

    def test_a_new_coat_tells_its_amount(
        self, page: FinishPage, mixed: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """Unsized it is told for a square metre; of a sized piece it is told for its area.

        A litre goes 12 m2 and a coat is a twelfth of a litre to the square metre: so say most
        tins, and so do those of the demonstration.
        """
        coat = ask(page, qtbot, settle)[-1]
        assert coat.way.recoat is not None
        assert "each m²" in coat.told.text()
        assert coat.way.recoat.volume == pytest.approx(2 * 1000 / 12, rel=0.15)
        found = mixed.session.recipes
        assert found is not None
        form = form_for(Kind.BLANKET_BOX)
        mixed.desk.edit_job(lambda store, id_: keep_recipes(store, id_, found, zone="body"))
        piece = piece_of_form(form)
        mixed.desk.edit_job(lambda store, id_: keep_piece(store, id_, form, piece, None))
        settle()
        coat = ask(page, qtbot, settle)[-1]
        assert coat.way.recoat is not None
        area = coat.way.recoat.over.area
        assert f"{area:.2f} m²" in coat.told.text()
        assert f"{coat.way.recoat.volume:.0f} ml" in coat.told.text()
        assert sum(coat.way.recoat.ml) == pytest.approx(coat.way.recoat.volume)

    def test_a_new_coat_is_taken_to_the_colour(
        self, page: FinishPage, mixed: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """A press wants its colour on the page of the colour, where mixes for it are found."""
        coat = ask(page, qtbot, settle)[-1]
        assert coat.way.recoat is not None
        qtbot.mouseClick(coat.take, LEFT)
        settle()
        assert mixed.session.wanted is not None
        assert mixed.session.wanted.lab == coat.way.recoat.recipe.dry
        assert common.WISHED in mixed.mix_side.heading.text()
        found = mixed.session.recipes
        assert found is not None
        assert min(m.recipe.delta_e for m in found.recipes) < 0.5
        assert not page.isVisible()
