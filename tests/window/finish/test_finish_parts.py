"""A red box with a blue lid: what is laid on the one leaves the other alone, and it is told."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from swatchwright.acts.batches import WHOLE_PIECE, keep_recipes
from swatchwright.acts.client_wish import CLIENT_PART, ClientWishes
from swatchwright.acts.finish import preview
from swatchwright.acts.piece_job import form_for, keep_piece, piece_of_form
from swatchwright.acts.recipes import Recipes, recipes_for, typed_colour
from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.names import closeness
from swatchwright.desktop.words import finish_parts as words
from swatchwright.desktop.words import finish_ways as ways
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.piece.common import Kind
from swatchwright.shelf.csv_file import demo_shelf
from window.finish_hands import LEFT, ask, choose, finish_of, lay

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.pages.finish_page import FinishPage
    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]


@pytest.fixture(scope="module")
def blue() -> Recipes:
    """Give a mix for a blue."""
    return recipes_for(typed_colour(28, 3, -24), demo_shelf(), keep=1)


def size(window: Window, kind: Kind = Kind.BLANKET_BOX) -> None:
    """Size the piece."""
    form = form_for(kind)
    piece = piece_of_form(form)
    window.desk.edit_job(lambda store, id_: keep_piece(store, id_, form, piece, None))


def keep(window: Window, found: Recipes, zone: str) -> None:
    """Keep a mix for a part."""
    window.desk.edit_job(lambda store, id_: keep_recipes(store, id_, found, zone=zone))


@pytest.fixture
def box(mixed: Window, blue: Recipes, settle: Settle, shown: Callable[[], None]) -> FinishPage:
    """Give the page of a sized box: red, kept for the whole piece, with a lid of its own blue."""
    red = mixed.session.recipes
    assert red is not None
    keep(mixed, blue, "top")
    keep(mixed, red, WHOLE_PIECE)
    settle()
    size(mixed)
    settle()
    shown()
    return finish_of(mixed)


def words_of(page: FinishPage) -> list[str]:
    """Give what the mixes are called."""
    return [mix.word for mix in page.mixes]


def look_at(page: FinishPage, word: str, qtbot: QtBot) -> None:
    """Press a mix by its name."""
    qtbot.mouseClick(page.strip.fields()[words_of(page).index(word)], LEFT)


ALL_BUT = words.chosen_for(("body",), ("top",))
LID = words.chosen_for(("top",))


class TestNames:
    """Each mix says which part it is on."""

    def test_all_but_the_lid(self, box: FinishPage) -> None:
        """The red is not called that of all; mixes beside it say which colour they are of."""
        assert ALL_BUT == "chosen, all but the top"
        assert words_of(box)[:2] == [ALL_BUT, LID]
        beside = words_of(box)[2:]
        assert beside
        assert all(word.startswith("mix ") and word.endswith(", body") for word in beside)

    def test_no_name_is_cut(self, box: FinishPage) -> None:
        """A name takes two lines at the most, and stands in its field whole."""
        for field, word in zip(box.strip.fields(), words_of(box), strict=True):
            room = field.rect().adjusted(11, 0, -9, 0)
            flags = int(Qt.TextFlag.TextWordWrap)
            needs = field.fontMetrics().boundingRect(0, 0, room.width(), 1000, flags, f"✓ {word}")
            assert needs.height() <= field.height()
            assert needs.width() <= room.width()

    def test_of_a_strange_colour(self, box: FinishPage, mixed: Window, settle: Settle) -> None:
        """Mixes for a colour that is on no part of the piece are left out."""
        mixed.session.type_colour("85, 2, 14")
        settle()
        assert words_of(box) == [ALL_BUT, LID]

    def test_of_another_colour_than_the_only_one(
        self, page: FinishPage, mixed: Window, settle: Settle
    ) -> None:
        """Beside a single chosen mix, those of another colour name it; of its own they do not."""
        mixed.keeping.keep(1)
        settle()
        assert words_of(page)[1] == "mix 2"
        mixed.session.type_colour("28, 3, -24")
        settle()
        assert "blue" in words_of(page)[1]
        assert words_of(page)[1].startswith("mix 1, ")


class TestLaying:
    """What is laid on goes on what is looked at."""

    def test_a_wash_goes_on_the_part(
        self, box: FinishPage, shown: Callable[[], None], qtbot: QtBot
    ) -> None:
        """Laid over the red it is not over the lid, which shows no layer."""
        lay(box, LayerKind.WASH, qtbot)
        shown()
        assert box.stack.zones == ("body",)
        assert len(box.layered.steps.colours()) == 2
        assert not box.layered.told.also.isVisible()
        look_at(box, LID, qtbot)
        shown()
        assert box.layered.layers.rows == []
        assert len(box.layered.steps.colours()) == 1
        assert box.layered.layers.empty.isVisible()

    def test_on_all_of_it_by_keyboard(
        self, box: FinishPage, shown: Callable[[], None], qtbot: QtBot
    ) -> None:
        """Where it goes is chosen by keyboard; on all of it, it is told that it is on the lid."""
        lay(box, LayerKind.WAX, qtbot)
        place = box.layered.layers.rows[0].goes_on
        assert place.accessibleName() == f"{words.GOES_ON}, 1. wax"
        assert place.currentText() == "all but the top"
        place.setFocus()
        qtbot.keyClick(place, Qt.Key.Key_Down)
        shown()
        assert box.stack == Stack((Layer(LayerKind.WAX),))
        assert QApplication.focusWidget() is box.layered.layers.rows[0].goes_on
        told = box.layered.told.also
        assert told.isVisible()
        assert told.text() == "1. Wax on all of it: also over the top, which is another mix."
        look_at(box, LID, qtbot)
        shown()
        assert len(box.layered.layers.rows) == 1
        assert "also over the body, which is another mix" in told.text()
        place = box.layered.layers.rows[0].goes_on
        choose(place, "the top")
        shown()
        assert box.stack == Stack((Layer(LayerKind.WAX, zone="top"),))
        assert not told.isVisible()

    def test_edits_leave_the_other_part_alone(
        self, box: FinishPage, shown: Callable[[], None], qtbot: QtBot
    ) -> None:
        """Moving, passes and removing over the lid change nothing over the body."""
        for kind in (LayerKind.WASH, LayerKind.WAX):
            lay(box, kind, qtbot)
        look_at(box, LID, qtbot)
        for kind in (LayerKind.GLAZE, LayerKind.OIL, LayerKind.VARNISH):
            lay(box, kind, qtbot)
        body = box.stack.over("body")
        rows = box.layered.layers
        assert len(rows.rows) == 3
        rows.rows[0].passes.setValue(2)
        qtbot.mouseClick(rows.rows[0].later, LEFT)
        qtbot.mouseClick(rows.rows[2].remove, LEFT)
        shown()
        kinds = [(layer.kind, layer.passes) for layer in box.over.layers]
        assert kinds == [(LayerKind.OIL, 1), (LayerKind.GLAZE, 2)]
        assert box.stack.over("body") == body
        fields = box.layered.build_up.fields()
        qtbot.mouseClick(fields[3], LEFT)
        shown()
        assert box.over.layers[1].passes == 3
        assert box.stack.over("body") == body

    def test_undo_takes_back_where_it_goes(
        self,
        box: FinishPage,
        mixed: Window,
        settle: Settle,
        shown: Callable[[], None],
        qtbot: QtBot,
    ) -> None:
        """Where a layer goes is kept, and one undo brings it back to its part."""
        lay(box, LayerKind.WAX, qtbot)
        box.keep()
        settle()
        before = box.stack
        choose(box.layered.layers.rows[0].goes_on, words.ALL_OF_IT)
        box.keep()
        settle()
        assert mixed.desk.part("finish", Stack) == Stack((Layer(LayerKind.WAX),))
        qtbot.mouseClick(mixed.undo, LEFT)
        settle()
        shown()
        assert box.stack == before
        assert box.layered.layers.rows[0].goes_on.currentText() == "all but the top"
        assert words_of(box)[0] == ALL_BUT

    def test_one_mix_of_a_piece_not_sized_shows_no_choice(
        self, page: FinishPage, mixed: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """With one colour and no parts known there is nothing to choose, and nothing to tell."""
        mixed.keeping.keep(1)
        settle()
        lay(page, LayerKind.WASH, qtbot)
        row = page.layered.layers.rows[0]
        assert not row.goes_on.isVisible()
        assert not page.layered.told.isVisible()
        assert page.stack.zones == ()

    def test_one_mix_of_two_parts(
        self,
        page: FinishPage,
        mixed: Window,
        settle: Settle,
        shown: Callable[[], None],
        qtbot: QtBot,
    ) -> None:
        """A layer goes on all; put on the lid alone, lid and body are looked at apart."""
        mixed.keeping.keep(1)
        settle()
        size(mixed)
        settle()
        lay(page, LayerKind.WAX, qtbot)
        place = page.layered.layers.rows[0].goes_on
        assert place.currentText() == words.ALL_OF_IT
        choose(place, "the top")
        shown()
        assert page.stack == Stack((Layer(LayerKind.WAX, zone="top"),))
        assert set(words_of(page)[:2]) == {words.chosen_for(("body",)), LID}
        assert page.mix is not None
        assert page.mix.on.zones == ("top",)
        choose(page.layered.layers.rows[0].goes_on, words.ALL_OF_IT)
        shown()
        assert page.stack == Stack((Layer(LayerKind.WAX),))
        assert words_of(page)[0] == "chosen, all"

    def test_a_layer_of_a_part_without_a_mix_is_told(
        self, page: FinishPage, mixed: Window, settle: Settle
    ) -> None:
        """What lies on a part that no mix is kept for is not shown as if it lay on another."""
        mixed.keeping.keep(1)
        size(mixed)
        mixed.desk.keep_part("finish", Stack((Layer(LayerKind.WAX, zone="seat"),)))
        settle()
        assert page.layered.layers.rows == []
        assert page.layered.told.elsewhere.isVisible()
        assert "wax on the seat" in page.layered.told.elsewhere.text()


class TestClient:
    """What the client wants of one part."""

    def test_her_wash_is_laid_on_that_part(
        self, box: FinishPage, settle: Settle, shown: Callable[[], None], qtbot: QtBot
    ) -> None:
        """The wash for a red that is too bright is not over the lid; the wax on all stays."""
        lay(box, LayerKind.WASH, qtbot)
        lay(box, LayerKind.WAX, qtbot)
        for row in (0, 1):
            choose(box.layered.layers.rows[row].goes_on, words.ALL_OF_IT)
        lid = preview(demo_shelf(), box.mixes[1].parts, box.stack.over("top")).steps[-1].dry
        columns = ask(box, qtbot, settle)
        column = next(c for c in columns if c.way.layer is not None)
        qtbot.mouseClick(column.take, LEFT)
        shown()
        assert [layer.kind for layer in box.over.layers] == [LayerKind.WASH, LayerKind.WAX]
        assert box.over.layers[0].zone == "body"
        assert box.over.layers[0].paints == column.way.layer.paints  # type: ignore[union-attr]
        after = preview(demo_shelf(), box.mixes[1].parts, box.stack.over("top")).steps[-1].dry
        assert after == lid

    def test_a_wax_over_it_is_told(
        self, page: FinishPage, settle: Settle, shown: Callable[[], None], qtbot: QtBot
    ) -> None:
        """A wax that takes the wash away from the wish is told, in words, with a way out.

        The scale of the words is that of CIEDE2000 [Paravina2015]; 1 is just seen.
        """
        told = page.layered.told
        assert not told.off.isVisible()
        columns = ask(page, qtbot, settle)
        qtbot.mouseClick(next(c for c in columns if c.way.layer is not None).take, LEFT)
        shown()
        settle()
        shown()
        near = told.off.text()
        lay(page, LayerKind.WAX, qtbot)
        choose(page.layered.layers.rows[1].amber, "deep amber")
        shown()
        kept = page.desk.part(CLIENT_PART, ClientWishes)
        assert kept is not None
        assert page.mix is not None
        wish = kept.of(page.mix.wanted)
        assert wish is not None
        off = float(delta_e_2000(page.layered.steps.colours()[-1].triple, wish.aim.triple))
        assert told.off.isVisible()
        assert told.off.text() == words.off_client(off)
        assert told.off.text() != near
        assert closeness(off) in told.off.text()
        assert told.again.isVisible()
        assert "wax" in told.again.text()
        qtbot.mouseClick(told.again, LEFT)
        settle()
        assert page.reverse.isVisible()
        assert page.reverse.ask.word.currentText() == ways.AS_BEFORE
        column = next(c for c in page.reverse.ways.columns if c.way.layer is not None)
        assert column.field._aim == wish.aim
        assert column.way.delta_e < off
        qtbot.mouseClick(column.take, LEFT)
        shown()
        settle()
        shown()
        assert told.off.text() == words.off_client(column.way.delta_e)

    def test_as_she_says_it(self, page: FinishPage) -> None:
        """What a client says stands first in the list, and where it goes behind it."""
        word = page.reverse.ask.word
        assert word.itemText(0).startswith("too bright")
        told = [word.itemText(place) for place in range(word.count())]
        for said in ("too dark", "too pale", "too cold", "too warm", "too dull"):
            assert any(text.startswith(said) for text in told)

    def test_no_colour_is_offered_twice(self, with_cushion: Window, settle: Settle) -> None:
        """Of the colours to be as grey as, no two look the same."""
        with_cushion.show_page("finish")
        settle()
        word = finish_of(with_cushion).reverse.ask.word
        greys = [
            word.itemData(n) for n in range(word.count()) if not isinstance(word.itemData(n), str)
        ]
        labs = [where.grey_as for where in greys if where is not None and where.grey_as is not None]
        assert len(labs) >= 2
        for place, lab in enumerate(labs):
            for other in labs[:place]:
                assert float(delta_e_2000(lab.triple, other.triple)) >= 1
