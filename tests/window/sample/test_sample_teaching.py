"""What a sample teaches is taught once, taken back by one undo, and promised alike everywhere."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt

from swatchwright.acts.kept_words import kept_words
from swatchwright.acts.labels import TEACH
from swatchwright.acts.sample_tried import tried_line
from swatchwright.desktop.pages.sample_page import SamplePage
from swatchwright.desktop.words import sample as words
from swatchwright.desktop.words import sample_hoped as hoped
from swatchwright.desktop.words import sample_taught as taught_words
from swatchwright.shelf.store.paint_rows import paint_bytes
from window.sample_hands import page_of

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton


def sample_it(page: SamplePage, qtbot: QtBot, settle: Settle, amount: str, way: str) -> None:
    """Say by eye how a sample looks, and keep it."""
    page.eye.amount.setCurrentIndex(page.eye.amount.findData(amount))
    page.eye.first.setCurrentIndex(page.eye.first.findData(way))
    qtbot.mouseClick(page.eye.take, LEFT)
    qtbot.mouseClick(page.told.ask, LEFT)
    settle()


def shelf_of(window: Window) -> list[bytes]:
    """Give the paints on the bench to the last digit."""
    return [paint_bytes(paint) for paint in window.session.shelf.paints]


def teach(page: SamplePage, qtbot: QtBot, settle: Settle) -> None:
    """Press the button."""
    qtbot.mouseClick(page.teach, LEFT)
    settle()


def test_it_teaches_once(bench: Window, settle: Settle, qtbot: QtBot) -> None:
    """Taught, the button is grey and says why; asked again all the same, nothing changes."""
    page = page_of(bench)
    assert not page.teach.isEnabled()
    sample_it(page, qtbot, settle, "clearly", "light")
    before = shelf_of(bench)
    assert page.teach.isEnabled()
    teach(page, qtbot, settle)
    taught = shelf_of(bench)
    assert taught != before
    assert not page.teach.isEnabled()
    assert page.teach.toolTip() == taught_words.TEACH_KNOWN
    assert page.teach_told.text() == taught_words.TEACH_KNOWN
    for _ in range(3):
        page.samples.teach()
        settle()
    assert shelf_of(bench) == taught


def test_what_it_will_change_is_said_beforehand(
    bench: Window, settle: Settle, qtbot: QtBot
) -> None:
    """A line names the paints and the figures, and that is what then comes about."""
    page = page_of(bench)
    sample_it(page, qtbot, settle, "clearly", "light")
    would = page.samples.would
    assert would is not None
    assert page.teach_told.isVisibleTo(page)
    assert page.teach_told.text() == taught_words.teach_line(known=False, would=would, by_eye=True)
    assert taught_words.TEACH_VAGUE in page.teach_told.text()
    vague = taught_words.teach_line(known=False, would=replace(would, before=5.4, after=3.4))
    assert "within 3.4 (" in vague
    assert "now 5.4 (" in vague
    assert all(name in page.teach_told.text() for name in would.paints)
    teach(page, qtbot, settle)
    assert page.samples.taught == would


def test_one_undo_takes_it_back_from_any_page(bench: Window, settle: Settle, qtbot: QtBot) -> None:
    """The undo says what it takes back; the shelf is then what it was, and redo teaches again."""
    page = page_of(bench)
    sample_it(page, qtbot, settle, "clearly", "light")
    before = shelf_of(bench)
    teach(page, qtbot, settle)
    taught = shelf_of(bench)
    bench.show_page("shelf")
    job = bench.desk.job
    assert job is not None
    assert kept_words(TEACH.format(job=job.title)) in bench.undo.toolTip()
    qtbot.mouseClick(bench.undo, LEFT)
    settle()
    assert shelf_of(bench) == before
    qtbot.mouseClick(bench.redo, LEFT)
    settle()
    assert shelf_of(bench) == taught
    qtbot.mouseClick(bench.undo, LEFT)
    settle()
    assert shelf_of(bench) == before
    page = page_of(bench)
    assert page.teach.isEnabled()
    assert page.samples.loop is not None
    assert len(page.samples.loop.rounds) == 1


def test_taken_back_and_kept_again(bench: Window, settle: Settle, qtbot: QtBot) -> None:
    """The last sample goes with what it taught; kept and taught again, it is the same lesson."""
    page = page_of(bench)
    sample_it(page, qtbot, settle, "clearly", "light")
    before = shelf_of(bench)
    teach(page, qtbot, settle)
    taught = shelf_of(bench)
    qtbot.mouseClick(page.back, LEFT)
    settle()
    assert shelf_of(bench) == before
    assert page.samples.loop is not None
    assert page.samples.loop.rounds == ()
    qtbot.mouseClick(bench.undo, LEFT)
    settle()
    assert shelf_of(bench) == taught
    assert not page.teach.isEnabled()


def test_what_follows_is_the_same_once_it_is_taught(
    bench: Window, settle: Settle, qtbot: QtBot
) -> None:
    """The pot that was taken keeps its tick and its figure, here, on the job and on the sheet."""
    page = page_of(bench)
    sample_it(page, qtbot, settle, "clearly", "light")
    first = page.samples.advice
    assert first is not None
    assert first.additions.steps
    qtbot.mouseClick(page.next.takes[True], LEFT)
    settle()
    teach(page, qtbot, settle)
    again = page.samples.advice
    assert again is not None
    assert again is not first
    assert [s.ml for s in again.additions.steps] == [s.ml for s in first.additions.steps]
    assert words.is_mix_for("all") in page.next.lines
    assert words.pot_after(again) in page.next.lines
    job = bench.desk.job
    assert job is not None
    recipe = job.chosen("all")
    assert recipe is not None
    told = tried_line(job, [(paint.paint, paint.share) for paint in recipe.paints])
    figure = f"{again.after.usual:.1f}"
    assert f"within about {figure} of the cloth" in told
    assert f"within about {figure} of the cloth" in words.pot_after(again)


def test_the_tick_is_on_what_was_taken(bench: Window, settle: Settle, qtbot: QtBot) -> None:
    """With other advice on the same sample, the list tells what was added; no other is ticked."""
    page = page_of(bench)
    sample_it(page, qtbot, settle, "clearly", "light")
    first = page.samples.advice
    assert first is not None
    qtbot.mouseClick(page.next.takes[True], LEFT)
    settle()
    taken = page.samples.taken
    assert taken is not None
    told = words.is_mix_added("all", taken, bench.session.shelf)
    assert words.millilitres(first.additions.steps[0].ml) in told
    assert told in page.rounds.lines
    bench.session.use_paint(first.additions.steps[0].paint.id, use=False)
    settle()
    other = page.samples.advice
    assert other is not None
    assert other.additions.steps != first.additions.steps
    assert words.is_mix_for("all") not in page.next.lines
    assert words.is_mix_added("all", taken, bench.session.shelf) in page.rounds.lines


def test_a_good_sample_is_left_as_it_is(bench: Window, settle: Settle, qtbot: QtBot) -> None:
    """Where by its own figures nothing comes nearer, that stands first and large, with a button."""
    page = page_of(bench)
    sample_it(page, qtbot, settle, "a touch", "light")
    found = page.samples.advice
    assert found is not None
    assert found.accepted
    assert not found.leave
    assert words.LEAVE not in page.next.lines
    # Of paints that are less known nothing that follows is likely to be nearer.
    far = replace(found.after, usual=3.4)
    worse = replace(found, after=far, fresh=replace(found.fresh, outlook=far), unsure=True)
    advice = replace(worse, wider=None)
    assert advice.leave
    page.next.show_advice(advice, None, bench.session.shelf, zone="all")
    assert "about 1.5 off" in hoped.leave_line(advice)
    assert "within about 3.4" in hoped.leave_line(advice)
    assert page.next.lines[:2] == [words.LEAVE, hoped.leave_line(advice)]
    button = page.next.takes[False]
    assert button.objectName() == "main"
    # It stands above the pot, to which nothing is to be done.
    pot = page.next.pot
    qtbot.waitUntil(
        lambda: button.geometry().bottom() < pot.mapTo(page.next, pot.rect().topLeft()).y()
    )
    assert button.text() == words.take_for("all")
    assert words.UNSURE not in page.next.lines


def test_what_was_found_stays_until_it_is_found_anew(
    bench: Window, settle: Settle, qtbot: QtBot
) -> None:
    """Taking the pot blanks nothing; another pot leaves the lines with a word that it is reckoned.

    Before any sample no button is named, for there is none to press.
    """
    page = page_of(bench)
    assert page.next.lines == [words.NO_SAMPLE]
    assert words.KEEP not in words.NO_SAMPLE
    sample_it(page, qtbot, settle, "clearly", "light")
    lines = list(page.next.lines)
    seen: list[bool] = []
    page.samples.advised.connect(lambda: seen.append(page.samples.advice is not None))
    qtbot.mouseClick(page.next.takes[True], LEFT)
    settle()
    assert all(seen)
    page.next.pot.setValue(200.0)
    assert page.next.reckoned.isVisibleTo(page)
    assert page.next.lines[0] == lines[0]
    settle()
    assert not page.next.reckoned.isVisibleTo(page)
