"""Compare, Finish and Piece begin in the light of the room; what is chosen there is kept."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt

from swatchwright.acts.jobs import change_job
from swatchwright.acts.piece_job import form_for, keep_piece, piece_of_form
from swatchwright.colour.spectrum import Light
from swatchwright.desktop.pages.compare_page import ComparePage
from swatchwright.desktop.pages.finish_page import FinishPage
from swatchwright.desktop.pages.piece_page import PiecePage
from swatchwright.desktop.pages.repaint_page import RepaintPage
from swatchwright.desktop.words import finish_seen, repaint
from swatchwright.piece.common import Kind

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def boxed(mixed: Window, settle: Settle) -> Window:
    """Give the window with a blanket box, and its first mix kept."""
    form = form_for(Kind.BLANKET_BOX)
    piece = piece_of_form(form)
    mixed.desk.edit_job(lambda store, id_: keep_piece(store, id_, form, piece, None))
    settle()
    return mixed


def name_room(window: Window, settle: Settle, room: str) -> None:
    """Name the light of the room on the job."""
    window.desk.edit_job(lambda store, id_: change_job(store, id_, room_light=room))
    settle()


def compare_of(window: Window, settle: Settle) -> ComparePage:
    """Show the page where mixes are compared."""
    window.show_page("compare")
    settle()
    page = window.page("compare")
    assert isinstance(page, ComparePage)
    return page


def finish_of(window: Window, settle: Settle) -> FinishPage:
    """Show the page of the finish."""
    window.show_page("finish")
    settle()
    page = window.page("finish")
    assert isinstance(page, FinishPage)
    return page


def piece_of(window: Window, settle: Settle) -> PiecePage:
    """Show the page of the piece."""
    window.show_page("piece")
    settle()
    page = window.page("piece")
    assert isinstance(page, PiecePage)
    return page


def lights_of(window: Window, settle: Settle) -> tuple[Light, Light, Light]:
    """Give the light that each of the three pages is seen in, by what is pressed there."""
    compare, finish = compare_of(window, settle), finish_of(window, settle)
    piece = piece_of(window, settle)
    (one,) = (light for light, button in compare.bar.lights.items() if button.isChecked())
    (two,) = (light for light, button in finish.layered.lights.items() if button.isChecked())
    return one, two, piece.bench.seen.light()


def test_without_a_named_light_it_is_daylight(boxed: Window, settle: Settle) -> None:
    """A job that names no light begins in daylight, and nothing says that it is the room's."""
    assert lights_of(boxed, settle) == (Light.D65,) * 3
    assert compare_of(boxed, settle).bar.of_room.isHidden()
    assert finish_of(boxed, settle).layered.of_room.isHidden()
    assert piece_of(boxed, settle).bench.seen.of_room.isHidden()


def test_they_begin_in_the_light_of_the_room(boxed: Window, settle: Settle) -> None:
    """With a warm lamp named all three are seen under it, shown so, and say whose light it is."""
    assert lights_of(boxed, settle) == (Light.D65,) * 3
    name_room(boxed, settle, "Warm lamp in the evening")
    assert lights_of(boxed, settle) == (Light.LAMP,) * 3
    compare = compare_of(boxed, settle)
    assert compare.light is Light.LAMP
    assert "lamp" in compare.picture.accessibleName()
    assert compare.bar.of_room.isVisible()
    assert compare.bar.of_room.text() == finish_seen.of_room(Light.LAMP)
    finish = finish_of(boxed, settle)
    assert finish.layered.of_room.isVisible()
    assert finish.layered.steps._light is Light.LAMP
    piece = piece_of(boxed, settle)
    assert piece.bench.seen.of_room.isVisible()
    assert "lamp" in piece.bench.drawing.accessibleName()
    name_room(boxed, settle, "Cool LED light")
    assert lights_of(boxed, settle) == (Light.COOL_LED,) * 3


def test_what_is_chosen_is_kept_after_a_new_start(
    boxed: Window, settle: Settle, qtbot: QtBot, opened: Callable[[], Window]
) -> None:
    """A choice on each page counts in place of the room's, also after a restart; Undo ends it."""
    name_room(boxed, settle, "Warm lamp in the evening")
    qtbot.mouseClick(compare_of(boxed, settle).bar.lights[Light.TUBE], LEFT)
    qtbot.mouseClick(finish_of(boxed, settle).layered.lights[Light.D65], LEFT)
    seen = piece_of(boxed, settle).bench.seen
    place = seen.lights.findData(Light.COOL_LED)
    seen.lights.setCurrentIndex(place)
    seen.lights.activated.emit(place)
    assert seen.of_room.isHidden()
    boxed.show_page("colour")
    settle()
    chosen = (Light.TUBE, Light.D65, Light.COOL_LED)
    assert lights_of(boxed, settle) == chosen
    boxed.close()
    again = opened()

    def rest() -> None:
        qtbot.waitUntil(again.at_rest, timeout=60_000)

    assert lights_of(again, rest) == chosen
    qtbot.mouseClick(again.undo, LEFT)
    rest()
    assert piece_of(again, rest).bench.seen.light() is Light.LAMP
    again.close()


def test_wet_stays_wet(boxed: Window, settle: Settle, qtbot: QtBot) -> None:
    """Looked at wet, it stays so when another light is named; dry again it is in that."""
    finish = finish_of(boxed, settle)
    qtbot.mouseClick(finish.layered.wet, LEFT)
    name_room(boxed, settle, "Warm lamp in the evening")
    assert finish.layered.wet.isChecked()
    assert finish.layered.steps._light is None


def test_it_is_not_read_as_letting_it_dry() -> None:
    """Before the lights stands how it is seen."""
    assert finish_seen.DRY_IN.startswith("Seen")


def test_the_photo_says_its_light(boxed: Window, settle: Settle, qtbot: QtBot) -> None:
    """The page On photo says plainly that the photo is seen in the light it was taken in."""
    name_room(boxed, settle, "Warm lamp in the evening")
    boxed.show_page("repaint")
    settle()
    page = boxed.page("repaint")
    assert isinstance(page, RepaintPage)
    qtbot.mouseClick(page.sample, LEFT)
    settle()
    qtbot.waitUntil(page.notes.isVisible, timeout=60_000)
    assert repaint.SEEN_IN in page.notes.text()
