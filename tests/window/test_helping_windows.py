"""The windows that stand beside the bench: neighbours by eye, and a pot put right."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QPolygonF

from swatchwright.colour.difference import delta_e_2000
from swatchwright.desktop import words
from swatchwright.desktop.correct_window import CorrectWindow
from swatchwright.desktop.neighbours_window import NeighboursWindow
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.mixing.asked import Asked
from swatchwright.shelf.csv_file import demo_shelf, save_demo_shelf
from swatchwright.values import Lab

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton
PATIENCE = 60_000


@pytest.fixture
def mixed(window: Window, settle: Settle) -> Window:
    """Give the window with mixes for a typed clay red."""
    window.session.set_most_paints(2)
    window.session.type_colour("46, 34, 24")
    settle()
    return window


def test_neighbours_are_shown_around_the_mix(mixed: Window, settle: Settle, qtbot: QtBot) -> None:
    """The button of a mix opens its neighbours; a pressed one tells how to mix 20 ml of it."""
    qtbot.mouseClick(mixed.mix_side.columns()[0].nearby, LEFT)
    opened = mixed.mix_side.opened
    assert isinstance(opened, NeighboursWindow)
    settle()
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
    qtbot.mouseClick(mixed.mix_side.columns()[0].nearby, LEFT)
    opened = mixed.mix_side.opened
    assert isinstance(opened, NeighboursWindow)
    settle()
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


def test_a_pot_is_put_right(mixed: Window, settle: Settle, qtbot: QtBot) -> None:
    """The word and the dial say where to go; what to add is told, and it goes there."""
    qtbot.mouseClick(mixed.mix_side.columns()[0].mend, LEFT)
    opened = mixed.mix_side.opened
    assert isinstance(opened, CorrectWindow)
    qtbot.waitUntil(lambda: "Add" in opened.told.text(), timeout=PATIENCE)
    first = opened.told.text()
    opened.word.setCurrentIndex(opened.word.findData(Asked.LIGHTER))
    opened.dial.setValue(20)
    qtbot.waitUntil(lambda: opened.told.text() != first, timeout=PATIENCE)
    settle()
    assert "Add" in opened.told.text()
    opened.close()


def test_a_full_tub_takes_nothing(mixed: Window, qtbot: QtBot) -> None:
    """A pot that fills its tub has no room for an addition, and that is said."""
    qtbot.mouseClick(mixed.mix_side.columns()[0].mend, LEFT)
    opened = mixed.mix_side.opened
    assert isinstance(opened, CorrectWindow)
    opened.tub.setValue(sum(box.value() for box in opened.amounts.values()))
    qtbot.waitUntil(lambda: "Nothing that may be added" in opened.told.text(), timeout=PATIENCE)
    opened.close()


def test_a_tub_too_small_is_said_in_place(mixed: Window, qtbot: QtBot) -> None:
    """A tub smaller than the pot is answered where it was entered, and nowhere else."""
    qtbot.mouseClick(mixed.mix_side.columns()[0].mend, LEFT)
    opened = mixed.mix_side.opened
    assert isinstance(opened, CorrectWindow)
    opened.tub.setValue(10)
    qtbot.waitUntil(lambda: "tub only" in opened.told.text(), timeout=PATIENCE)
    assert not mixed.trouble.isVisible()
    assert opened.isVisible()
    opened.close()


def test_the_neighbours_are_as_far_as_they_say(mixed: Window, settle: Settle, qtbot: QtBot) -> None:
    """Each colour that is painted lies about 2 from the middle one."""
    qtbot.mouseClick(mixed.mix_side.columns()[0].nearby, LEFT)
    opened = mixed.mix_side.opened
    assert isinstance(opened, NeighboursWindow)
    settle()
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
