"""The piece beside the layers: a press on a part turns to what lies over that."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QApplication

from swatchwright.acts.batches import WHOLE_PIECE, keep_recipes
from swatchwright.acts.finish import preview
from swatchwright.acts.piece_job import form_for, keep_piece, piece_of_form
from swatchwright.acts.recipes import recipes_for, typed_colour
from swatchwright.colour.names import colour_name
from swatchwright.colour.spectrum import Light
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.words import finish_parts as words
from swatchwright.paint.layers import LayerKind
from swatchwright.piece.common import Kind
from swatchwright.shelf.csv_file import demo_shelf
from window.finish_hands import LEFT, finish_of, lay
from window.piece_hands import spot_of

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.pages.finish_page import FinishPage
    from swatchwright.desktop.widgets.finish_mixes import FinishMix
    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]


def size(window: Window, kind: Kind) -> None:
    """Size the piece."""
    form = form_for(kind)
    piece = piece_of_form(form)
    window.desk.edit_job(lambda store, id_: keep_piece(store, id_, form, piece, None))


@pytest.fixture
def box(mixed: Window, settle: Settle, shown: Callable[[], None]) -> FinishPage:
    """Give the page of a sized box: red, kept for the whole piece, with a lid of its own blue."""
    blue = recipes_for(typed_colour(28, 3, -24), demo_shelf(), keep=1)
    mixed.desk.edit_job(partial(keep_recipes, found=blue, zone="top"))
    red = mixed.session.recipes
    assert red is not None
    mixed.desk.edit_job(partial(keep_recipes, found=red, zone=WHOLE_PIECE))
    size(mixed, Kind.BLANKET_BOX)
    settle()
    shown()
    return finish_of(mixed)


def on(page: FinishPage, zone: str) -> tuple[int, FinishMix]:
    """Give the first mix that is on a part, and its place."""
    return next((n, mix) for n, mix in enumerate(page.mixes) if zone in mix.on.zones)


def checked(page: FinishPage) -> int:
    """Give the place of the field that is ticked."""
    return next(n for n, field in enumerate(page.strip.fields()) if field.isChecked())


def test_a_press_turns_to_a_part(
    box: FinishPage, qtbot: QtBot, settle: Settle, shown: Callable[[], None]
) -> None:
    """A press on lid or body is the press on its field above: its layers are below then."""
    drawing = box.layered.piece.drawing
    assert drawing.isVisible()
    for zone, kind in (("top", LayerKind.WAX), ("body", LayerKind.VARNISH)):
        place, mix = on(box, zone)
        qtbot.mouseClick(drawing, LEFT, pos=spot_of(drawing, place))
        settle()
        assert box.mix == mix
        assert checked(box) == place
        assert drawing.here() == place
        lay(box, kind, qtbot)
        settle()
    shown()
    laid = {layer.zone: layer.kind for layer in box.stack.layers}
    assert laid == {"top": LayerKind.WAX, "body": LayerKind.VARNISH}


def test_a_field_outlines_its_parts(box: FinishPage, qtbot: QtBot, settle: Settle) -> None:
    """Whichever mix is worked on, all that it is on is outlined, and nothing else."""
    drawing = box.layered.piece.drawing
    place, _ = on(box, "top")
    qtbot.mouseClick(box.strip.fields()[place], LEFT)
    settle()
    assert drawing.here() == place
    lid = drawing.marked()
    assert lid
    other, _ = on(box, "body")
    qtbot.mouseClick(box.strip.fields()[other], LEFT)
    settle()
    assert drawing.marked()
    assert not drawing.marked() & lid


def test_beside_all_nothing_changes(box: FinishPage, qtbot: QtBot, settle: Settle) -> None:
    """A press beside the piece leaves the part chosen that was."""
    drawing = box.layered.piece.drawing
    before = box.mix, drawing.here()
    qtbot.mouseClick(drawing, LEFT, pos=QPoint(2, 2))
    settle()
    assert (box.mix, drawing.here()) == before
    qtbot.keyClick(drawing, Qt.Key.Key_Escape)
    assert (box.mix, drawing.here()) == before


def test_another_mix_of_the_part_stays(box: FinishPage, qtbot: QtBot, settle: Settle) -> None:
    """Who tries another mix for a part and presses that part keeps the mix that is tried."""
    tried = [
        n for n, mix in enumerate(box.mixes) if n not in {on(box, "top")[0], on(box, "body")[0]}
    ]
    assert tried
    qtbot.mouseClick(box.strip.fields()[tried[0]], LEFT)
    settle()
    mix = box.mix
    assert mix is not None
    drawing = box.layered.piece.drawing
    assert mix.on.zones
    qtbot.mouseClick(drawing, LEFT, pos=spot_of(drawing, drawing.here()))
    settle()
    assert box.mix == mix


def test_by_keyboard(box: FinishPage, qtbot: QtBot, settle: Settle) -> None:
    """Arrows tell part after part, Enter turns to it; leaving without changes nothing."""
    drawing = box.layered.piece.drawing
    places = sorted({on(box, "top")[0], on(box, "body")[0]})
    drawing.setFocus()
    qtbot.keyClick(drawing, Qt.Key.Key_Left)
    assert drawing.here() == places[0]
    was = checked(box)
    qtbot.keyClick(drawing, Qt.Key.Key_Right)
    assert drawing.here() == places[1]
    assert drawing.told_of(places[1]) in drawing.accessibleName()
    assert checked(box) == was
    qtbot.keyClick(drawing, Qt.Key.Key_Return)
    settle()
    assert checked(box) == places[1]
    assert QApplication.focusWidget() is drawing
    qtbot.keyClick(drawing, Qt.Key.Key_Left)
    box.strip.fields()[0].setFocus()
    assert drawing.here() == checked(box) == places[1]


def test_it_is_drawn_as_it_will_look(
    box: FinishPage, window: Window, qtbot: QtBot, shown: Callable[[], None]
) -> None:
    """Each part has the colour of its last step, in the light that the page is seen in."""
    drawing = box.layered.piece.drawing
    place, mix = on(box, "top")
    qtbot.mouseClick(drawing, LEFT, pos=spot_of(drawing, place))
    lay(box, LayerKind.WASH, qtbot)
    shown()
    qtbot.mouseClick(box.layered.lights[Light.LAMP], LEFT)
    shown()
    over = mix.on.over(box.stack)
    last = preview(window.session.shelf, mix.parts, over).steps[-1].under(Light.LAMP)
    lid, body = drawing.fill("top"), drawing.fill("body")
    assert lid is not None
    assert body is not None
    assert lid.name() == screen_colour(last).name()
    red = on(box, "body")[1]
    bare = preview(window.session.shelf, red.parts, red.on.over(box.stack)).steps[-1]
    assert body.name() == screen_colour(bare.under(Light.LAMP)).name()
    assert colour_name(last) in drawing.told_of(on(box, "top")[0])
    assert words.piece_drawn(Light.LAMP) in drawing.accessibleName()


def test_no_piece_or_one_mix(mixed: Window, settle: Settle, shown: Callable[[], None]) -> None:
    """Before the piece is sized, and while one mix is on all of it, there is nothing to press."""
    page = finish_of(mixed)
    assert not page.layered.piece.isVisible()
    red = mixed.session.recipes
    assert red is not None
    mixed.desk.edit_job(partial(keep_recipes, found=red, zone=WHOLE_PIECE))
    size(mixed, Kind.BLANKET_BOX)
    settle()
    shown()
    assert not page.layered.piece.isVisible()
    blue = recipes_for(typed_colour(28, 3, -24), demo_shelf(), keep=1)
    mixed.desk.edit_job(partial(keep_recipes, found=blue, zone="top"))
    settle()
    shown()
    assert page.layered.piece.isVisible()
    mixed.session.history.undo()
    settle()
    shown()
    assert not page.layered.piece.isVisible()
