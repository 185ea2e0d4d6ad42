"""Layers over one part of a piece, wherever they are seen: no other part is under them."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from swatchwright.acts.batches import WHOLE_PIECE, keep_recipes
from swatchwright.acts.compare import State, compared
from swatchwright.acts.finish import preview
from swatchwright.acts.piece_job import form_for, keep_piece, piece_of_form
from swatchwright.acts.recipes import Recipes, recipes_for, typed_colour
from swatchwright.colour.spectrum import Light
from swatchwright.desktop.correct_window import CorrectWindow
from swatchwright.desktop.pages.brief_page import BriefPage
from swatchwright.desktop.pages.compare_page import ComparePage
from swatchwright.desktop.pages.piece_page import PiecePage
from swatchwright.desktop.pages.repaint_page import RepaintPage
from swatchwright.desktop.words import keeping as words
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.piece.common import Kind
from swatchwright.shelf.csv_file import demo_shelf
from window.finish_hands import PATIENCE

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

WASH = Layer(LayerKind.WASH, (("white-clean", 1.0),), zone="body")
GLAZE = Layer(LayerKind.GLAZE, (("soft-black", 1.0),), zone="top")
WAX = Layer(LayerKind.WAX)
LAID = Stack((WASH, GLAZE, WAX))


@pytest.fixture(scope="module")
def blue() -> Recipes:
    """Give a mix for a blue."""
    return recipes_for(typed_colour(28, 3, -24), demo_shelf(), keep=1)


@pytest.fixture
def box(mixed: Window, blue: Recipes, settle: Settle) -> Window:
    """Give the window with a red box, its lid blue, and other layers over each."""
    red = mixed.session.recipes
    assert red is not None
    form = form_for(Kind.BLANKET_BOX)
    piece = piece_of_form(form)
    mixed.desk.edit_job(lambda store, id_: keep_recipes(store, id_, blue, zone="top"))
    mixed.desk.edit_job(lambda store, id_: keep_recipes(store, id_, red, zone=WHOLE_PIECE))
    mixed.desk.edit_job(lambda store, id_: keep_piece(store, id_, form, piece, None))
    mixed.desk.keep_part("finish", LAID)
    settle()
    return mixed


def test_the_comparison(box: Window, settle: Settle) -> None:
    """The mixes for the red are compared under what lies over the body, and nothing of the lid."""
    box.show_page("compare")
    settle()
    page = box.page("compare")
    assert isinstance(page, ComparePage)
    told, found = page.found, box.session.recipes
    assert told is not None
    assert found is not None
    first = compared(
        found.wanted,
        found.recipes[:1],
        states=tuple(State),
        stack=LAID.over("body"),
        shelf=box.session.shelf,
    )
    shown, right = told.candidates[0], first.candidates[0]
    for state in State:
        assert shown.sight(state, Light.D65).shown == right.sight(state, Light.D65).shown


def test_putting_right(box: Window) -> None:
    """The pot of the red is judged under what lies over the body."""
    found = box.session.recipes
    assert found is not None
    opened = CorrectWindow(box.session, box.desk, found.recipes[0], box)
    assert opened._over == LAID.over("body")
    opened.close()


def test_the_drawing(box: Window, blue: Recipes, settle: Settle) -> None:
    """Body and lid are drawn each under its own layers."""
    box.show_page("piece")
    settle()
    page = box.page("piece")
    assert isinstance(page, PiecePage)
    looks = page.bench._seen.looks
    red = box.session.recipes
    assert red is not None
    for zone, found in (("body", red), ("top", blue)):
        recipe = found.recipes[0].recipe
        parts = [(p.id, share) for p, share in zip(recipe.paints, recipe.shares, strict=True)]
        dry = preview(demo_shelf(), parts, LAID.over(zone)).steps[-1].dry
        seen = looks[zone].seen(Light.D65, finished=True)
        assert seen.triple == pytest.approx(dry.triple, abs=0.05)
    assert page.bench.seen.finished.text() == "With wash on the body, glaze on the top and wax"


def test_on_the_photo(box: Window, settle: Settle) -> None:
    """On its photo too, each zone is seen under its own layers."""
    page = box.page("repaint")
    assert isinstance(page, RepaintPage)
    assert page.piece.stack() == LAID
    del settle


def test_names_on_the_job(box: Window, settle: Settle, qtbot: QtBot) -> None:
    """Beside a lid with a mix of its own the red is not called that of the whole piece."""
    told = words.zone_heading(WHOLE_PIECE, ("top",))
    assert told == "All but the top"
    box.show_page("brief")
    settle()
    page = box.page("brief")
    assert isinstance(page, BriefPage)
    row = page.colours.zones[WHOLE_PIECE]
    qtbot.waitUntil(row.isVisible, timeout=PATIENCE)
    assert row.field.accessibleName().startswith(told)
    box.show_page("colour")
    settle()
    bar = box.mix_side.keep_bar
    items = [bar.zone.itemText(place) for place in range(bar.zone.count())]
    assert "all but the top" in items
    assert "whole piece" not in items
    bar._choose(bar.zone.findData(WHOLE_PIECE))
    settle()
    assert bar.told.text() == "✓ Mix 1 is kept for all but the top."
