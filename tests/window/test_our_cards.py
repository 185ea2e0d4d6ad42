"""Going through a sitting once with the cards of the demonstration."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

import pytest
from PySide6.QtCore import QPoint, QRect, Qt

from hands import drag
from swatchwright.acts.demo_cards import DemoCards, demo_cards
from swatchwright.acts.sitting import read_now
from swatchwright.desktop.pages.shelf_page import ShelfPage
from swatchwright.desktop.words import our_cards as words
from swatchwright.desktop.words import sitting as sitting_words
from window.shelf_hands import WHITE, tick

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.widgets.our_sitting import OurSitting
    from swatchwright.desktop.widgets.shelf_sitting import ShelfSitting
    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def page(window: Window, settle: Settle, qtbot: QtBot) -> ShelfPage:
    """Give the page with a sitting of her own begun: a white is ticked."""
    window.show_page("shelf")
    settle()
    shown = cast(ShelfPage, window.page("shelf"))
    qtbot.mouseClick(shown.get_to_know, LEFT)
    tick(shown, qtbot, (WHITE,))
    # What she ticked begins a job a moment later.
    qtbot.waitUntil(lambda: window.desk.job is not None, timeout=10_000)
    settle()
    return shown


@pytest.fixture
def cards() -> DemoCards:
    """Give the cards."""
    found = demo_cards()
    assert found is not None
    return found


def laid(page: ShelfPage, qtbot: QtBot) -> OurSitting:
    """Press the button that offers the cards, and wait until they lie there."""
    qtbot.mouseClick(page.sitting.ours, LEFT)
    qtbot.waitUntil(lambda: page.ours.sitting is not None)
    assert page.ours.sitting is not None
    return page.ours.sitting


def begun(page: ShelfPage, qtbot: QtBot, settle: Settle) -> OurSitting:
    """Go on to reading our cards."""
    ours = laid(page, qtbot)
    settle()
    assert ours.about.text() == words.OURS_HINT
    assert ours.about.isVisible()
    for _ in range(2):
        qtbot.mouseClick(ours.next, LEFT)
    settle()
    return ours


def test_a_newcomer_goes_through_it(
    window: Window, page: ShelfPage, settle: Settle, qtbot: QtBot, cards: DemoCards
) -> None:
    """By a few drags and a button the cards are read and fitted; shelf and job stay as they are.

    The paints come out better than hardly known, as cards with let-downs make them.
    """
    own, shelf, job = page.sitting.sitting, window.session.shelf, window.desk.job
    ours = begun(page, qtbot, settle)
    assert ours.reading.now.text() == sitting_words.FIRST_GREY
    view, grey = ours.reading.view, cards.grey
    photo = (grey.x, grey.y), (grey.x + grey.width, grey.y + grey.height)
    drag(view, *photo)
    settle()
    box = cards.boxes[ours.sitting.cards[0].key]
    drag(view, (box.x, box.y), (box.x + box.width, box.y + box.height))
    settle()
    assert read_now(ours.sitting) == 1
    mine = ours.reading.marker.boxes[0]
    qtbot.mouseClick(ours.mark_rest, LEFT)
    settle()
    assert read_now(ours.sitting) == len(ours.sitting.cards)
    assert ours.reading.marker.boxes[0] == mine
    qtbot.mouseClick(ours.next, LEFT)
    qtbot.mouseClick(ours.result.fit, LEFT)
    settle()
    assert ours.result.found is not None
    assert len(ours.result.bars) == len(ours.sitting.ids)
    assert all("hardly" not in bar.accessibleName() for bar in ours.result.bars)
    assert ours.result.told.text() == words.OURS_DONE
    assert not ours.result.keep.isVisible()
    qtbot.mouseClick(ours.leave, LEFT)
    settle()
    assert page.ours.sitting is None
    assert page.sitting.isVisible()
    assert page.sitting.sitting == own
    assert window.session.shelf is shelf
    assert window.desk.job == job


def test_what_is_for_her_own_cards_is_left_out(
    page: ShelfPage, settle: Settle, qtbot: QtBot
) -> None:
    """There is no other photo to open, no paint to add and no file to read, and no way to keep."""
    ours = begun(page, qtbot, settle)
    for part in (ours.file, ours.reading.marker.open, ours.reading.away, ours.ours):
        assert not part.isVisible()
    ours.show_step(0)
    assert not ours.choose.form.isVisible()


def test_no_step_leads_nowhere(page: ShelfPage, settle: Settle, qtbot: QtBot) -> None:
    """No card is asked for that is in no photo, and marking what is marked says that it is."""
    ours = begun(page, qtbot, settle)
    qtbot.mouseClick(ours.mark_rest, LEFT)
    settle()
    assert not ours.reading.trouble.isVisible()
    qtbot.mouseClick(ours.mark_rest, LEFT)
    assert ours.reading.trouble.text() == words.ALL_MARKED
    assert ours.reading.trouble.isVisible()
    qtbot.mouseClick(ours.next, LEFT)
    qtbot.mouseClick(ours.result.fit, LEFT)
    settle()
    assert ours.result.helps.isVisible()
    assert not ours.result.more.isVisible()


def test_put_away_by_mistake_they_come_back(page: ShelfPage, settle: Settle, qtbot: QtBot) -> None:
    """Put away before they are done and taken out again, all is as it was."""
    ours = begun(page, qtbot, settle)
    qtbot.mouseClick(ours.mark_rest, LEFT)
    settle()
    read, step = read_now(ours.sitting), ours.step
    assert read > 0
    qtbot.mouseClick(ours.leave, LEFT)
    assert not ours.isVisible()
    assert laid(page, qtbot) is ours
    settle()
    assert ours.isVisible()
    assert (read_now(ours.sitting), ours.step) == (read, step)


def test_a_quick_second_press_meets_no_other_button(
    page: ShelfPage, settle: Settle, qtbot: QtBot
) -> None:
    """From her own sitting to that with our cards, and from step to step, buttons stay in place."""

    def places(sitting: ShelfSitting) -> dict[str, QRect]:
        buttons = {"back": sitting.back, "next": sitting.next, "leave": sitting.leave}
        return {name: QRect(one.mapTo(page, QPoint()), one.size()) for name, one in buttons.items()}

    where = page.sitting.ours.mapTo(page, page.sitting.ours.rect().center())
    before = places(page.sitting)
    ours = laid(page, qtbot)
    settle()
    seen = [before]
    for step in range(4):
        ours.show_step(step)
        settle()
        seen.append(places(ours))
    assert all(one == before for one in seen)
    for name in ("back", "next", "leave"):
        assert not before[name].contains(where)


def test_it_begins_anew_once_it_was_done(page: ShelfPage, settle: Settle, qtbot: QtBot) -> None:
    """Put away when the fit was seen and taken out again, it is all there to do."""
    ours = begun(page, qtbot, settle)
    qtbot.mouseClick(ours.mark_rest, LEFT)
    settle()
    qtbot.mouseClick(ours.next, LEFT)
    qtbot.mouseClick(ours.result.fit, LEFT)
    settle()
    qtbot.mouseClick(ours.leave, LEFT)
    again = laid(page, qtbot)
    settle()
    assert again is not ours
    assert (read_now(again.sitting), again.step) == (0, 0)


def test_offered_where_she_may_want_it(page: ShelfPage, qtbot: QtBot) -> None:
    """The button stands where paints are chosen and where there is no photo to read yet."""
    sitting = page.sitting
    seen = []
    for step in range(4):
        sitting.show_step(step)
        seen.append(sitting.ours.isVisible())
    assert seen == [True, False, True, False]
    assert sitting.ours.accessibleName() == words.TRY_OURS
    assert sitting.ours.toolTip()
    sitting.show_step(0)
    qtbot.keyClick(sitting.ours, Qt.Key.Key_Space)
    qtbot.waitUntil(lambda: page.ours.sitting is not None)
