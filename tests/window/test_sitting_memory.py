"""A sitting that was left, by closing, by another job or by a power cut, is there again."""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING, cast

import pytest
from PySide6.QtCore import Qt

from hands import drag
from house.tree import run
from swatchwright.acts.jobs import new_job, open_jobs
from swatchwright.acts.last_sitting import last_sitting
from swatchwright.colour.difference import delta_e_2000
from swatchwright.desktop.pages.shelf_page import ShelfPage
from swatchwright.desktop.widgets.photo_view import Mark
from swatchwright.desktop.window import Window
from swatchwright.photo.reference import WHITE_PAPER
from swatchwright.values import Rect
from window.killed_sitting import GREY, HASTY, PAINTS, RESTED, box_of
from window.shelf_hands import colour_of, enter, photo_of, tick, to_reading

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    Settle = Callable[[], None]
    Open = Callable[[], Window]

SCRIPT = Path(__file__).with_name("killed_sitting.py")
PATIENCE = 60_000
LEFT = Qt.MouseButton.LeftButton
READ = 2
MIXES = (
    *((("white-clean", 1.0),), (("clay-red-muted", 1.0),)),
    *((("clay-red-muted", 1.0), ("white-clean", 1.0)), (("clay-red-muted", 1.0),)),
)


@pytest.fixture
def photo(tmp_path: Path) -> Path:
    """Give a photo of a grey and of four cards; what is on the last two is of no matter here."""
    return photo_of(tmp_path, [colour_of(mix) for mix in MIXES])


def shelf_of(window: Window, qtbot: QtBot) -> ShelfPage:
    """Give the page of the shelf, in view and at rest."""
    window.show_page("shelf")
    qtbot.waitUntil(window.at_rest, timeout=PATIENCE)
    return cast("ShelfPage", window.page("shelf"))


def mark_cards(window: Window, qtbot: QtBot, photo: Path) -> ShelfPage:
    """Choose paints, open the photo of their cards, mark the grey and two cards."""
    page = shelf_of(window, qtbot)
    to_reading(page, qtbot, PAINTS)
    page.sitting.reading.open_file(photo)
    qtbot.waitUntil(window.at_rest, timeout=PATIENCE)
    drag(page.sitting.reading.view, *GREY)
    qtbot.waitUntil(window.at_rest, timeout=PATIENCE)
    for number in range(2):
        drag(page.sitting.reading.view, *box_of(number))
    qtbot.waitUntil(window.at_rest, timeout=PATIENCE)
    qtbot.waitUntil(lambda: page.sitting.sitting.cards[1].is_read, timeout=PATIENCE)
    return page


def rest(window: Window, qtbot: QtBot) -> None:
    """Let all that waits for a hand to rest be kept."""
    qtbot.wait(1000)
    qtbot.waitUntil(window.at_rest, timeout=PATIENCE)


def told(page: ShelfPage) -> tuple[Rect | None, dict[int, Rect], float]:
    """Give what is marked."""
    marker = page.sitting.reading.marker
    return marker.grey, dict(marker.boxes), float(marker.card.currentData())


def is_marked(page: ShelfPage, photo: Path) -> None:
    """Hold the page against what was marked: the photo, the grey, two boxes, two readings."""
    reading = page.sitting.reading
    assert reading.marker.path == photo
    grey, boxes, _ = told(page)
    assert grey is not None
    for rect, corners in ((grey, GREY), *((boxes[n], box_of(n)) for n in range(2))):
        (left, top), (right, bottom) = corners
        for found, drawn in zip(
            (rect.x, rect.y, rect.right, rect.bottom), (left, top, right, bottom), strict=True
        ):
            assert abs(found - drawn) <= 3
    assert set(boxes) == {0, 1}
    for card in page.sitting.sitting.cards[:2]:
        assert card.lab is not None
        assert delta_e_2000(card.lab.triple, colour_of(card.mix).triple) < 2.5
    assert page.sitting.step == READ
    assert reading.turn == 2
    assert reading.modes[Mark.CLOTH].isChecked()


@pytest.mark.parametrize("what", [RESTED, HASTY])
def test_killed(what: str, opened: Open, photo: Path, tmp_path: Path, qtbot: QtBot) -> None:
    """After a power cut the sitting is in view with photo and marks; what lacked is read anew.

    Killed before the last readings are kept, the boxes are there and are read again.
    """
    done = run(
        *(sys.executable, SCRIPT, what, photo),
        QT_QPA_PLATFORM="offscreen",
        SWATCHWRIGHT_HOME=str(tmp_path / "store"),
        PYTHONPATH=os.pathsep.join(path for path in sys.path if path),
    )
    assert done.stdout == "killed now", done.stderr
    assert done.returncode != 0
    page = shelf_of(opened(), qtbot)
    qtbot.waitUntil(lambda: page.sitting.sitting.cards[1].is_read, timeout=PATIENCE)
    assert page.sitting.isVisible()
    assert page.sitting.reading.view.isVisible()
    is_marked(page, photo)


def test_closed_at_once(window: Window, opened: Open, photo: Path, qtbot: QtBot) -> None:
    """Closed the moment the last mark is made, all is there; the next card is marked with it."""
    page = mark_cards(window, qtbot, photo)
    drag(page.sitting.reading.view, *box_of(2))
    before = told(page)
    window.close()
    again = opened()
    back = shelf_of(again, qtbot)
    assert told(back) == before
    qtbot.waitUntil(lambda: back.sitting.sitting.cards[2].is_read, timeout=PATIENCE)
    drag(back.sitting.reading.view, *box_of(3))
    qtbot.waitUntil(lambda: back.sitting.sitting.cards[3].is_read, timeout=PATIENCE)


def test_what_the_grey_reflects(window: Window, opened: Open, photo: Path, qtbot: QtBot) -> None:
    """That a white paper is marked in place of a grey card is known again."""
    page = shelf_of(window, qtbot)
    to_reading(page, qtbot, PAINTS)
    page.sitting.reading.open_file(photo)
    qtbot.waitUntil(window.at_rest, timeout=PATIENCE)
    drag(page.sitting.reading.view, *GREY)
    card = page.sitting.reading.marker.card
    card.setCurrentIndex(card.findData(WHITE_PAPER))
    card.activated.emit(card.currentIndex())
    rest(window, qtbot)
    before = told(page)
    assert before[2] == WHITE_PAPER
    window.close()
    assert told(shelf_of(opened(), qtbot)) == before


def test_closed_from_another_page(window: Window, opened: Open, photo: Path, qtbot: QtBot) -> None:
    """With another page in view when it is closed, the sitting is left as it was."""
    mark_cards(window, qtbot, photo)
    window.show_page("colour")
    window.close()
    is_marked(shelf_of(opened(), qtbot), photo)


def test_left_for_the_shelf(window: Window, opened: Open, photo: Path, qtbot: QtBot) -> None:
    """With the paints in view when it was left, these are; the sitting is where it was behind."""
    page = mark_cards(window, qtbot, photo)
    qtbot.mouseClick(page.sitting.leave, LEFT)
    window.close()
    back = shelf_of(opened(), qtbot)
    assert back.table.isVisible()
    qtbot.mouseClick(back.get_to_know, LEFT)
    qtbot.mouseClick(back.sitting.steps[READ], LEFT)
    is_marked(back, photo)


def test_another_job(window: Window, photo: Path, qtbot: QtBot) -> None:
    """Another job has no photo of these cards; with the first again on the bench it is there."""
    page = mark_cards(window, qtbot, photo)
    rest(window, qtbot)
    job = window.desk.job
    assert job is not None
    window.desk.begin(lambda store: new_job(store, title="Chair"))
    qtbot.waitUntil(window.at_rest, timeout=PATIENCE)
    assert page.sitting.reading.marker.photo is None
    assert not page.sitting.sitting.ids
    window.desk.open_job(job.id)
    qtbot.waitUntil(window.at_rest, timeout=PATIENCE)
    is_marked(page, photo)
    window.desk.put_away()
    qtbot.waitUntil(window.at_rest, timeout=PATIENCE)
    assert page.sitting.reading.marker.photo is None


def test_begun_before_the_job(window: Window, photo: Path, qtbot: QtBot) -> None:
    """A photo that was marked before a job is begun for it stays, and is of that job then."""
    page = mark_cards(window, qtbot, photo)
    rest(window, qtbot)
    is_marked(page, photo)
    job = window.desk.job
    assert job is not None
    qtbot.waitUntil(lambda: remembered(window, job.id), timeout=PATIENCE)
    assert not remembered(window, None)


def remembered(window: Window, job: str | None) -> bool:
    """Tell whether a sitting of a job is written down."""
    store = window.desk._store
    assert store is not None
    return last_sitting(store, job) is not None


def test_taken_over(
    window: Window, opened: Open, photo: Path, qtbot: QtBot, tmp_path: Path
) -> None:
    """Once its paints are kept on the shelf a sitting is forgotten, until it is gone on with."""
    page = mark_cards(window, qtbot, photo)
    rest(window, qtbot)
    job = window.desk.job
    assert job is not None
    page.sitting.steps[3].click()
    qtbot.mouseClick(page.sitting.result.fit, LEFT)
    qtbot.waitUntil(lambda: page.sitting.result.found is not None, timeout=PATIENCE)
    qtbot.mouseClick(page.sitting.result.keep, LEFT)
    rest(window, qtbot)
    page.sitting.steps[READ].click()
    rest(window, qtbot)
    assert not remembered(window, job.id)
    drag(page.sitting.reading.view, *box_of(2))
    rest(window, qtbot)
    assert remembered(window, job.id)
    page.sitting.steps[3].click()
    qtbot.mouseClick(page.sitting.result.fit, LEFT)
    qtbot.waitUntil(lambda: page.sitting.result.found is not None, timeout=PATIENCE)
    qtbot.mouseClick(page.sitting.result.keep, LEFT)
    rest(window, qtbot)
    window.close()
    back = shelf_of(opened(), qtbot)
    assert back.table.isVisible()
    assert back.sitting.reading.marker.photo is None
    with open_jobs(tmp_path / "store" / "swatchwright.sqlite") as store:
        assert last_sitting(store, job.id) is None


def test_given_up(window: Window, photo: Path, qtbot: QtBot) -> None:
    """A photo that is put away goes with its marks, and what was read stays; no paint, no trace."""
    page = mark_cards(window, qtbot, photo)
    rest(window, qtbot)
    job = window.desk.job
    assert job is not None
    assert page.sitting.reading.away.isVisible()
    qtbot.mouseClick(page.sitting.reading.away, LEFT)
    rest(window, qtbot)
    store = window.desk._store
    assert store is not None
    left = last_sitting(store, job.id)
    assert left is not None
    assert left.path == ""
    assert left.boxes == ()
    assert page.sitting.sitting.cards[1].is_read
    assert not page.sitting.reading.away.isVisible()
    page.sitting.steps[0].click()
    tick(page, qtbot, PAINTS)
    assert not page.sitting.sitting.ids
    rest(window, qtbot)
    assert not remembered(window, job.id)


@pytest.mark.parametrize("gone", [True, False])
def test_the_photo_has_gone(
    window: Window, opened: Open, photo: Path, qtbot: QtBot, *, gone: bool
) -> None:
    """What became of the photo is said in place and no mark is laid on another; it may come back.

    A card that is put in again has the photo with its marks on it, as it was.
    """
    mark_cards(window, qtbot, photo)
    window.close()
    aside = photo.rename(photo.with_name("aside.png"))
    if not gone:
        photo.write_bytes(aside.read_bytes() + b"\0")
    second = opened()
    page = shelf_of(second, qtbot)
    assert page.sitting.reading.marker.photo is None
    assert page.sitting.reading.trouble.isVisible()
    assert photo.name in page.sitting.reading.trouble.text()
    assert page.sitting.sitting.cards[1].is_read
    qtbot.mouseClick(page.sitting.steps[0], LEFT)
    qtbot.mouseClick(page.sitting.steps[READ], LEFT)
    rest(second, qtbot)
    second.close()
    aside.replace(photo)
    is_marked(shelf_of(opened(), qtbot), photo)


def test_boxes_follow_their_cards(window: Window, photo: Path, qtbot: QtBot) -> None:
    """With another paint chosen the cards have other numbers, and each keeps its own box."""
    page = mark_cards(window, qtbot, photo)
    before = page.sitting.reading.marked()
    lab = page.sitting.sitting.cards[1].lab
    page.sitting.steps[0].click()
    tick(page, qtbot, ("deep-blue-red", PAINTS[1]))
    page.sitting.steps[READ].click()
    qtbot.waitUntil(window.at_rest, timeout=PATIENCE)
    cards = page.sitting.sitting.cards
    kept = [card.key for card in cards if card.key in before]
    assert kept
    marked = page.sitting.reading.marked()
    assert marked == {key: before[key] for key in kept}
    reading = page.sitting.reading
    page.sitting.reading.marker.card.activated.emit(0)
    qtbot.waitUntil(window.at_rest, timeout=PATIENCE)
    read = {card.key: card.lab for card in page.sitting.sitting.cards if card.is_read}
    assert lab is not None
    assert set(read) >= set(kept)
    for number, card in enumerate(page.sitting.sitting.cards):
        assert (number in reading.marker.boxes) == (card.key in kept)


def test_typed_readings_alone(window: Window, opened: Open, qtbot: QtBot) -> None:
    """Without a photo the sitting is in view again at its step, with what was typed."""
    page = shelf_of(window, qtbot)
    to_reading(page, qtbot, PAINTS)
    enter(page, qtbot, colour_of(MIXES[0]))
    rest(window, qtbot)
    window.close()
    back = shelf_of(opened(), qtbot)
    assert back.sitting.isVisible()
    assert back.sitting.step == READ
    assert back.sitting.sitting.cards[0].is_read
    assert back.sitting.reading.turn == 1


@pytest.mark.parametrize(
    "text", ["", "{", "[1]", '{"all": 3}', '{"all": [{"path": "x", "size": [0, 0]}]}']
)
def test_a_spoilt_memory(opened: Open, qtbot: QtBot, tmp_path: Path, text: str) -> None:
    """A memory that cannot be read is no sitting, and nothing fails for it."""
    (tmp_path / "store").mkdir()
    (tmp_path / "store" / "last-sittings.json").write_text(text, encoding="utf-8")
    page = shelf_of(opened(), qtbot)
    assert page.table.isVisible()
    assert page.sitting.reading.marker.photo is None
    assert not page.sitting.reading.trouble.isVisible()
