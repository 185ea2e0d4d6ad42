"""What samples taught the paints is on the bench again at the next start, to the last digit."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu

from swatchwright.acts.jobs import new_job
from swatchwright.acts.stock import put_paints
from swatchwright.desktop import words as common
from swatchwright.desktop.words import sample as words
from swatchwright.desktop.words import sample_hoped as hoped
from swatchwright.desktop.words import sample_taught as taught_words
from swatchwright.shelf.csv_file import save_demo_shelf
from swatchwright.shelf.store.paint_rows import paint_bytes
from window.sample_hands import page_of

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.pages.sample_page import SamplePage
    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]
    Again = Callable[[Window], Window]

LEFT = Qt.MouseButton.LeftButton


def shelf_of(window: Window) -> list[bytes]:
    """Give the paints on the bench to the last digit."""
    return [paint_bytes(paint) for paint in window.session.shelf.paints]


def promises(page: SamplePage) -> tuple[object, ...]:
    """Give what is promised of the pot and of a fresh mix, and the lines that say so."""
    advice = page.samples.advice
    assert advice is not None
    return (
        *([s.ml for s in advice.additions.steps], advice.after.usual, advice.fresh.mixed),
        *(words.pot_after(advice), hoped.fresh_after(advice), page.teach_told.text()),
    )


def sample_it(page: SamplePage, qtbot: QtBot, settle: Settle, amount: str, way: str) -> None:
    """Say by eye how a sample looks, and keep it."""
    page.eye.amount.setCurrentIndex(page.eye.amount.findData(amount))
    page.eye.first.setCurrentIndex(page.eye.first.findData(way))
    qtbot.mouseClick(page.eye.take, LEFT)
    qtbot.mouseClick(page.told.ask, LEFT)
    settle()


def teach(window: Window, qtbot: QtBot, settle: Settle) -> SamplePage:
    """Keep a sample by eye, and let it teach the paints."""
    page = page_of(window)
    sample_it(page, qtbot, settle, "clearly", "light")
    before = shelf_of(window)
    qtbot.mouseClick(page.teach, LEFT)
    settle()
    assert shelf_of(window) != before
    return page


def action(window: Window, text: str) -> QAction:
    """Find an entry of the menus at the top."""
    menus = window.findChildren(QMenu)
    return next(a for menu in menus for a in menu.actions() if a.text() == text)


@pytest.fixture
def again(opened: Callable[[], Window]) -> Again:
    """Give a function that closes the window and opens it on the same store."""

    def make(before: Window) -> Window:
        before.close()
        return opened()

    return make


def left_and_found(window: Window, page: SamplePage, again: Again, qtbot: QtBot) -> Window:
    """Close the window, and see that all is there again as it was left."""
    taught, told = shelf_of(window), promises(page)
    made = again(window)
    assert shelf_of(made) == taught
    page = page_of(made)
    qtbot.waitUntil(lambda: page.samples.advice is not None and made.at_rest(), timeout=60_000)
    assert shelf_of(made) == taught
    assert promises(page) == told
    assert not page.teach.isEnabled()
    assert page.teach_told.text() == taught_words.TEACH_KNOWN
    return made


class TestNextStart:
    """Closed and opened again, whichever shelf was taught."""

    def test_paints_of_the_demonstration_in_place_of_kept_ones(
        self, bench: Window, settle: Settle, qtbot: QtBot, again: Again
    ) -> None:
        """Where none of her own are kept; and undo still takes back what was taught."""
        before = shelf_of(bench)
        page = teach(bench, qtbot, settle)
        made = left_and_found(bench, page, again, qtbot)
        qtbot.mouseClick(made.undo, LEFT)
        qtbot.waitUntil(made.at_rest, timeout=60_000)
        assert shelf_of(made) == before

    def test_the_demonstration_taken_for_now(
        self, bench: Window, settle: Settle, qtbot: QtBot, again: Again
    ) -> None:
        """Taken by its name in the menu."""
        action(bench, common.DEMO_SHELF).trigger()
        settle()
        left_and_found(bench, teach(bench, qtbot, settle), again, qtbot)

    def test_her_own_kept_paints(
        self, window: Window, settle: Settle, qtbot: QtBot, again: Again, tmp_path: Path
    ) -> None:
        """Kept in the store, which keeps them as they were before."""
        hers(window, settle, qtbot, tmp_path, keep=True)
        left_and_found(window, teach(window, qtbot, settle), again, qtbot)

    def test_paints_of_a_file(
        self, window: Window, settle: Settle, qtbot: QtBot, again: Again, tmp_path: Path
    ) -> None:
        """Read from the file again, and taught again."""
        hers(window, settle, qtbot, tmp_path, keep=False)
        left_and_found(window, teach(window, qtbot, settle), again, qtbot)


class TestOnTheBench:
    """While the program runs, too, paints stay taught unless she takes others."""

    def test_a_change_of_the_stock(
        self, window: Window, settle: Settle, qtbot: QtBot, tmp_path: Path
    ) -> None:
        """A tin that is bought, or another price, leaves what the paints have learnt."""
        hers(window, settle, qtbot, tmp_path, keep=True)
        teach(window, qtbot, settle)
        before = window.session.shelf
        id_ = before.paints[0].id
        new = replace(before.paints[0], name="Another name")
        window.desk.edit(lambda store: put_paints(store, (new,), source="her"))
        settle()
        after = window.session.shelf
        assert after.paint(id_).name == "Another name"
        assert shelf_of(window)[1:] == [paint_bytes(paint) for paint in before.paints[1:]]
        assert page_of(window).samples.known

    def test_another_shelf_is_taken_as_it_is(
        self, bench: Window, settle: Settle, qtbot: QtBot, again: Again
    ) -> None:
        """Taken anew by hand, the paints are the untaught ones, and so they are at the next start.

        What the samples said is kept, and the button offers to teach it again.
        """
        before = shelf_of(bench)
        page = teach(bench, qtbot, settle)
        action(bench, common.DEMO_SHELF).trigger()
        settle()
        assert shelf_of(bench) == before
        assert page.teach.isEnabled()
        made = again(bench)
        assert shelf_of(made) == before
        page = page_of(made)
        qtbot.waitUntil(page.teach.isEnabled, timeout=60_000)

    def test_with_another_job(
        self, bench: Window, settle: Settle, qtbot: QtBot, again: Again
    ) -> None:
        """The tins stay what they are with another job on the bench, also at the next start."""
        teach(bench, qtbot, settle)
        taught = shelf_of(bench)
        bench.desk.begin(lambda store: new_job(store, title="A stool"))
        settle()
        assert shelf_of(bench) == taught
        made = again(bench)
        assert made.desk.job is not None
        assert made.desk.job.title == "A stool"
        assert shelf_of(made) == taught

    def test_a_job_brings_what_it_taught(
        self, bench: Window, settle: Settle, qtbot: QtBot, again: Again
    ) -> None:
        """Opened upon paints that have not learnt it, a job teaches them what it had taught."""
        teach(bench, qtbot, settle)
        taught, job = shelf_of(bench), bench.desk.job
        assert job is not None
        bench.desk.put_away()
        action(bench, common.DEMO_SHELF).trigger()
        settle()
        assert shelf_of(bench) != taught
        made = again(bench)
        assert shelf_of(made) != taught
        made.desk.open_job(job.id)
        qtbot.waitUntil(made.at_rest, timeout=60_000)
        assert shelf_of(made) == taught


def hers(window: Window, settle: Settle, qtbot: QtBot, folder: Path, *, keep: bool) -> None:
    """Use paints of her own, from a file or kept, and keep a mix of them."""
    settle()
    path = folder / "mine.csv"
    save_demo_shelf(path)
    path.write_text(path.read_text(encoding="utf-8").replace("invented", "guessed"), "utf-8")
    window.session.open_shelf(path)
    settle()
    if keep:
        qtbot.mouseClick(window.offer.take, LEFT)
        settle()
    window.session.set_most_paints(2)
    window.session.type_colour("46, 34, 24")
    settle()
    window.keeping.keep(1)
    settle()
