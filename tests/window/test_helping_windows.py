"""The windows that stand beside the bench: neighbours by eye, and a pot put right."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QPolygonF
from PySide6.QtTest import QTest

from swatchwright.acts.client_wish import Stands
from swatchwright.acts.ways import WayKind
from swatchwright.colour.difference import delta_e_2000
from swatchwright.desktop import words
from swatchwright.desktop.correct_window import CorrectWindow
from swatchwright.desktop.neighbours_window import NeighboursWindow
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.words import millilitres
from swatchwright.desktop.words import pot as pot_words
from swatchwright.desktop.words.finish_ways import said
from swatchwright.mixing.asked import Asked
from swatchwright.paint.layers import LayerKind
from swatchwright.shelf.csv_file import demo_shelf, save_demo_shelf
from swatchwright.values import Lab
from window.finish_hands import ask, choose, finish_of, lay

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton
PATIENCE = 60_000


def nearby(window: Window, settle: Settle) -> NeighboursWindow:
    """Open the neighbours of the first mix by its button, and wait until they are found."""
    QTest.mouseClick(window.mix_side.columns()[0].nearby, LEFT)
    opened = window.mix_side.opened
    assert isinstance(opened, NeighboursWindow)
    settle()
    return opened


def test_neighbours_are_shown_around_the_mix(mixed: Window, settle: Settle, qtbot: QtBot) -> None:
    """The button of a mix opens its neighbours; a pressed one tells how to mix 20 ml of it."""
    opened = nearby(mixed, settle)
    assert 6 <= len(opened.fields) - 1 <= 8
    assert not opened.want.isEnabled()
    qtbot.mouseClick(opened.fields["darker"], LEFT)
    assert "part" in opened.told.text()
    assert "ml" in opened.told.text()
    assert opened.chosen is not None
    assert sum(opened.chosen.ml) == pytest.approx(20, abs=0.05)
    opened.close()


def test_the_chosen_neighbour_becomes_the_wanted_colour(
    mixed: Window, settle: Settle, qtbot: QtBot
) -> None:
    """What was chosen by eye is wanted from then on, and has mixes of its own."""
    opened = nearby(mixed, settle)
    qtbot.mouseClick(opened.fields["lighter"], LEFT)
    chosen = opened.chosen
    assert chosen is not None
    qtbot.mouseClick(opened.want, LEFT)
    settle()
    assert not opened.isVisible()
    wanted, recipes = mixed.session.wanted, mixed.session.recipes
    assert wanted is not None
    assert recipes is not None
    assert wanted.lab == chosen.dry
    assert wanted.origin == words.PICKED_BY_EYE
    assert min(r.recipe.delta_e for r in recipes.recipes) < 0.5


def test_what_is_only_seen_is_no_sample(mixed: Window, settle: Settle, qtbot: QtBot) -> None:
    """A neighbour that was not brushed out is wanted, and nothing says that it was tried."""
    mixed.keeping.keep(1)
    settle()
    opened = nearby(mixed, settle)
    assert not opened.seen.isEnabled()
    qtbot.mouseClick(opened.fields["lighter"], LEFT)
    chosen = opened.chosen
    assert chosen is not None
    qtbot.mouseClick(opened.seen, LEFT)
    settle()
    wanted = mixed.session.wanted
    assert wanted is not None
    assert (wanted.lab, wanted.origin) == (chosen.dry, words.PICKED_HERE)
    mixed.keeping.keep(1)
    settle()
    loop = mixed.samples.loop
    assert loop is None or not loop.rounds


@pytest.fixture
def pot(mixed: Window, settle: Settle, qtbot: QtBot) -> CorrectWindow:
    """Give the window that puts a pot of the first mix right."""
    return put_right(mixed, settle, qtbot)


def put_right(window: Window, settle: Settle, qtbot: QtBot) -> CorrectWindow:
    """Press the button of the first mix that puts a pot right."""
    qtbot.mouseClick(window.mix_side.columns()[0].mend, LEFT)
    opened = window.mix_side.opened
    assert isinstance(opened, CorrectWindow)
    rest(opened, settle, qtbot)
    return opened


def rest(opened: CorrectWindow, settle: Settle, qtbot: QtBot) -> None:
    """Wait until the answer to what is asked stands there."""
    qtbot.waitUntil(lambda: not opened._wait.isActive(), timeout=PATIENCE)
    settle()


def test_a_pot_is_put_right(pot: CorrectWindow, settle: Settle, qtbot: QtBot) -> None:
    """It asks nothing by itself; the word and the dial say where to go, and what to add is told."""
    assert pot.wants.wanted() is None
    assert not pot.dial.isVisible()
    assert pot.told.text() == pot_words.FIRST_SAY
    choose(pot.word, said(Asked.LESS_VIVID))
    rest(pot, settle, qtbot)
    first = pot.told.text()
    assert "Add" in first
    choose(pot.word, said(Asked.LIGHTER))
    pot.dial.setValue(20)
    rest(pot, settle, qtbot)
    assert "Add" in pot.told.text()
    assert pot.told.text() != first
    qtbot.mouseClick(pot.close_button, LEFT)
    assert not pot.isVisible()


def test_one_field_says_what_is_left(mixed: Window, pot: CorrectWindow, qtbot: QtBot) -> None:
    """All of it is asked in one field and shared out by the mix; single paints only on asking."""
    assert mixed.session.recipes is not None
    recipe = mixed.session.recipes.recipes[0].recipe
    assert pot.amounts.pot.value() == pytest.approx(mixed.session.volume, abs=0.5)
    assert not any(box.isVisible() for box in pot.amounts.singles.values())
    pot.amounts.pot.setValue(200)
    told = dict(pot.amounts.volumes())
    for paint, share in zip(recipe.paints, recipe.shares, strict=True):
        assert told[paint.id] == pytest.approx(200 * share)
    qtbot.mouseClick(pot.amounts.each, LEFT)
    boxes = list(pot.amounts.singles.values())
    assert all(box.isVisible() for box in boxes)
    boxes[0].setValue(boxes[0].value() + 50)
    assert pot.amounts.pot.value() == pytest.approx(250, abs=0.3)
    assert not pot.amounts.pot.isEnabled()
    pot.close()


def test_a_full_pot_takes_nothing(pot: CorrectWindow, settle: Settle, qtbot: QtBot) -> None:
    """With no room in the pot nothing can be added; that the room stops it is said."""
    choose(pot.word, said(Asked.LESS_VIVID))
    pot.room.setValue(pot.amounts.pot.value())
    rest(pot, settle, qtbot)
    assert "Nothing that may be added" in pot.told.text()
    assert "With room for" in pot.told.text()
    pot.room.setValue(4 * pot.amounts.pot.value())
    rest(pot, settle, qtbot)
    assert "Add" in pot.told.text()
    assert "With room for" not in pot.told.text()
    pot.close()


def test_a_pot_too_small_is_said_in_place(
    mixed: Window, pot: CorrectWindow, settle: Settle, qtbot: QtBot
) -> None:
    """Room for less than is in the pot is answered where it was entered, and nowhere else."""
    choose(pot.word, said(Asked.LESS_VIVID))
    pot.room.setValue(10)
    rest(pot, settle, qtbot)
    assert "room for only 10 ml" in pot.told.text()
    assert not mixed.trouble.isVisible()
    assert pot.isVisible()
    pot.close()


def test_it_asks_what_was_asked_on_finish(mixed: Window, settle: Settle, qtbot: QtBot) -> None:
    """It opens with the question, the pot and the layers of the page, and answers the same."""
    mixed.show_page("finish")
    settle()
    page = finish_of(mixed)
    lay(page, LayerKind.WAX, qtbot)
    page.reverse.ask.pot.setValue(300)
    page.reverse.ask.room.setValue(330)
    page.reverse.ask.dial.setValue(40)
    columns = ask(page, qtbot, settle, said(Asked.LESS_VIVID), stands=Stands.POT)
    way = next(c.way for c in columns if c.way.kind is WayKind.STIR)
    assert way.additions is not None
    mixed.show_page("colour")
    settle()
    pot = put_right(mixed, settle, qtbot)
    assert pot.wants.wanted() == page.reverse.ask.wants.wanted()
    assert (pot.amounts.pot.value(), pot.room.value()) == (300, 330)
    for step in way.additions.steps:
        told = millilitres(step.ml)
        assert f"Add {told} {step.paint.name}: then {step.delta_e:.1f} off (" in pot.told.text()
    assert ("With room for" in pot.told.text()) is (way.roomier is not None)
    assert "with wax on" in pot.told.text()
    pot.close()


def test_the_neighbours_are_as_far_as_they_say(mixed: Window, settle: Settle, qtbot: QtBot) -> None:
    """Each colour that is painted lies about 2 from the middle one."""
    opened = nearby(mixed, settle)
    assert mixed.session.recipes is not None
    middle = mixed.session.recipes.recipes[0].recipe.dry.triple
    for word, field in opened.fields.items():
        if not word:
            continue
        qtbot.mouseClick(field, LEFT)
        assert opened.chosen is not None
        assert 1.2 < float(delta_e_2000(middle, opened.chosen.dry.triple)) < 2.8
    opened.close()


def test_reach_shows_where_the_wanted_colour_lies(mixed: Window, settle: Settle) -> None:
    """The body of the shelf is drawn from two sides, with the wanted colour inside its outline."""
    mixed.show_reach()
    opened = mixed.reach_window
    assert opened is not None
    settle()
    assert opened.verdict.text().startswith("Inside")
    assert not opened.buy.isEnabled()
    body = opened.above._body
    assert body is not None
    assert len(body.corners) > 8
    wanted = mixed.session.wanted
    assert wanted is not None
    for view in (opened.above, opened.beside):
        outline = QPolygonF(view._points(body.outline(view._seen)))
        assert outline.containsPoint(view.place(wanted.lab), Qt.FillRule.OddEvenFill)
        out = view.place(Lab(55, 75, -65))
        assert not outline.containsPoint(out, Qt.FillRule.OddEvenFill)
        assert view.grab().toImage().pixelColor(view.place(wanted.lab).toPoint()).name() == (
            screen_colour(wanted.lab).name()
        )
    opened.close()


def test_reach_names_a_paint_to_buy(mixed: Window, settle: Settle, tmp_path: Path) -> None:
    """From another shelf the one paint is named that brings the wanted colour within 1."""
    shelf = tmp_path / "shop.csv"
    save_demo_shelf(shelf)
    blues = {"deep-blue-red", "mid-blue-clear", "pale-blue-greyish"}
    few = tuple(p for p in demo_shelf().paints if p.id not in blues)
    mixed.session.use_shelf(replace(demo_shelf(), paints=few))
    mixed.session.type_colour("61, 5, -40")
    settle()
    mixed.show_reach()
    opened = mixed.reach_window
    assert opened is not None
    settle()
    opened.find_one_more(shelf)
    settle()
    assert "With" in opened.verdict.text()
    assert "blue" in opened.verdict.text().lower()
    opened.close()
