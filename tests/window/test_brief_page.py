"""The page of the job: the list on the left, the job on the bench on the right."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QModelIndex, QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel

from swatchwright.acts.batches import keep_recipes
from swatchwright.acts.jobs import FoundJob, JobLine, change_job, new_job
from swatchwright.acts.recipes import recipes_for, typed_colour
from swatchwright.desktop import words as common
from swatchwright.desktop.pages.brief_page import BriefPage
from swatchwright.desktop.widgets.job_model import FOUND, HERE, JobModel
from swatchwright.desktop.words import brief as words
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.jobs import Status
from swatchwright.shelf.store.search import Near
from swatchwright.values import Lab

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from pytestqt.modeltest import ModelTester
    from pytestqt.qtbot import QtBot

    from swatchwright.acts.jobs import Store
    from swatchwright.acts.recipes import Recipes
    from swatchwright.desktop.window import Window
    from swatchwright.shelf.store.history import Changes

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton
RED = Lab(45, 33, 24)
PATIENCE = 60_000


@pytest.fixture(scope="module")
def found() -> Recipes:
    """Give recipes of two paints for a clay red."""
    return recipes_for(typed_colour(46, 34, 24), demo_shelf(), most_paints=2)


@pytest.fixture
def page(window: Window, settle: Settle) -> BriefPage:
    """Give the page of an empty store."""
    window.show_page("brief")
    settle()
    made = window.page("brief")
    assert isinstance(made, BriefPage)
    return made


@pytest.fixture
def three(window: Window, page: BriefPage, settle: Settle, found: Recipes) -> BriefPage:
    """Give the page with three jobs, the middle one with mixes in clay red."""

    def chest(store: Store) -> Changes:
        changes = new_job(store, title="Chest of drawers", client="Harbour workshop")
        keep_recipes(store, changes.jobs[0], found, zone="drawers")
        return changes

    window.desk.edit(lambda store: new_job(store, title="Chair", client="A neighbour"))
    window.desk.edit(chest)
    window.desk.edit(lambda store: new_job(store, title="Écran, for the stove"))
    settle()
    return page


def titles(page: BriefPage) -> list[str]:
    """Give the jobs that the list shows."""
    model = page.jobs.model
    return [model.index(row).data() for row in range(model.rowCount())]


def press(page: BriefPage, qtbot: QtBot, title: str) -> None:
    """Press a job of the list."""
    view = page.jobs.view
    at = view.visualRect(page.jobs.model.index(titles(page).index(title))).center()
    qtbot.mouseClick(view.viewport(), LEFT, pos=at)


def write(page: BriefPage, qtbot: QtBot, text: str) -> None:
    """Write into the field for words to find jobs by."""
    page.jobs.sought.setFocus()
    qtbot.keyClicks(page.jobs.sought, text)


class TestTheFirstTime:
    """An empty page says what a job is, and offers a beginning."""

    def test_what_a_job_is(self, page: BriefPage) -> None:
        """In place of a job stands what one is, and the offer to play."""
        assert page.welcome.isVisible()
        assert page.welcome.text.text() == words.WELCOME_TEXT
        assert page.welcome.demo.isVisible()

    def test_beginning_one(self, page: BriefPage, settle: Settle, qtbot: QtBot) -> None:
        """Begun by one press, the job is there with its name to be written over."""
        qtbot.mouseClick(page.welcome.begin, LEFT)
        settle()
        assert page.desk.job is not None
        assert page.desk.job.title == common.UNTITLED
        assert page.head.piece.hasFocus()
        assert page.head.piece.selectedText() == common.UNTITLED
        qtbot.keyClicks(page.head.piece, "Blanket box")
        qtbot.keyClick(page.head.piece, Qt.Key.Key_Tab)
        settle()
        assert page.desk.job.title == "Blanket box"
        assert titles(page) == ["Blanket box"]

    def test_the_demonstration(
        self, window: Window, page: BriefPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """One press makes the invented job and lays photo, colour and kept mix on the bench."""
        qtbot.mouseClick(page.welcome.demo, LEFT)
        settle()
        settle()
        job = page.desk.job
        assert job is not None
        assert "invented" in job.client
        assert list(page.colours.zones) == ["body", "top"]
        assert page.photo.picture.filled()
        assert window.session.photo is not None
        assert window.mix_side.columns()[0].keep.isChecked()
        qtbot.mouseClick(page.colours.zones["top"].mixes, LEFT)
        settle()
        assert window.colour_page.isVisible()
        assert window.keeping.zone == "top"
        assert window.mix_side.columns()[0].keep.isChecked()


class TestTheList:
    """Jobs are found, opened, copied and removed."""

    def test_model_keeps_the_rules(self, qtmodeltester: ModelTester) -> None:
        """The model of the jobs keeps every rule Qt has for models, also as jobs change."""
        model = JobModel()
        line = JobLine("box", "Box", "", Status.ASKED, "2026-03-01T09:30:00Z", RED)
        other = JobLine("chair", "Chair", "", Status.DONE, "2026-03-02T09:30:00Z", None)
        model.show_found([FoundJob(line), FoundJob(other)])
        qtmodeltester.check(model)
        model.show_here("box")
        model.show_found([FoundJob(other)])
        model.show_found([FoundJob(other, Near("chair", "all", True, RED, 1.2))])
        assert model.index(0).data(FOUND).near is not None
        assert model.index(0).data(HERE) is False
        assert model.data(QModelIndex()) is None
        assert model.job_at(7) is None

    def test_pressing_opens(self, three: BriefPage, settle: Settle, qtbot: QtBot) -> None:
        """A pressed job is on the bench, and told to be there in words."""
        press(three, qtbot, "Chair")
        settle()
        assert three.desk.job is not None
        assert three.desk.job.title == "Chair"
        row = three.jobs.model.row_of(three.desk.job.id)
        told = three.jobs.model.index(row).data(Qt.ItemDataRole.AccessibleTextRole)
        assert words.ON_BENCH in told
        assert "A neighbour" in told

    def test_by_keyboard(self, three: BriefPage, settle: Settle, qtbot: QtBot) -> None:
        """Arrows go through the list without opening; Return opens."""
        view = three.jobs.view
        view.setFocus()
        view.setCurrentIndex(three.jobs.model.index(0))
        qtbot.keyClick(view, Qt.Key.Key_Down)
        settle()
        assert not three.area.isVisible()
        qtbot.keyClick(view, Qt.Key.Key_Return)
        settle()
        assert three.desk.job is not None
        assert three.desk.job.title == titles(three)[1]

    def test_found_by_words(self, three: BriefPage, qtbot: QtBot) -> None:
        """Words of the piece, the client or a paint find a job, accents or not; none is said."""
        write(three, qtbot, "ecran")
        qtbot.waitUntil(lambda: titles(three) == ["Écran, for the stove"])
        three.jobs.sought.clear()
        write(three, qtbot, "harbour drawers")
        qtbot.waitUntil(lambda: titles(three) == ["Chest of drawers"])
        qtbot.keyClicks(three.jobs.sought, " wardrobe")
        qtbot.waitUntil(lambda: not titles(three))
        assert three.jobs.told.text() == words.NONE_FOUND
        three.jobs.sought.clear()
        qtbot.waitUntil(lambda: len(titles(three)) == 3)

    def test_found_by_colour(
        self, window: Window, three: BriefPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """Jobs of a like colour are found once a colour is wanted, with how far off they are."""
        assert not three.jobs.like.isEnabled()
        window.session.set_most_paints(2)
        window.session.type_colour("45, 33, 25")
        settle()
        three.jobs.like.setFocus()
        qtbot.keyClick(three.jobs.like, Qt.Key.Key_Space)
        settle()
        assert titles(three) == ["Chest of drawers"]
        told = three.jobs.model.index(0).data(Qt.ItemDataRole.AccessibleTextRole)
        assert " off" in told
        window.session.type_colour("60, -30, 20")
        settle()
        assert not titles(three)
        assert three.jobs.told.text() == words.NONE_LIKE

    def test_removed_and_brought_back(
        self, window: Window, three: BriefPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """A job is removed without asking, and undo lays it on the bench again."""
        press(three, qtbot, "Chest of drawers")
        settle()
        qtbot.mouseClick(three.jobs.remove, LEFT)
        settle()
        assert "Chest of drawers" not in titles(three)
        assert three.jobs.told.text() == words.REMOVED
        assert three.welcome.isVisible()
        assert three.welcome.title.text() == words.NO_JOB
        assert "Remove" in window.undo.toolTip()
        qtbot.mouseClick(window.undo, LEFT)
        settle()
        assert "Chest of drawers" in titles(three)
        assert three.desk.job is not None
        assert three.head.piece.text() == "Chest of drawers"

    def test_copied(self, three: BriefPage, settle: Settle, qtbot: QtBot) -> None:
        """A copy has the colours and mixes, and is on the bench to be renamed."""
        press(three, qtbot, "Chest of drawers")
        settle()
        qtbot.mouseClick(three.jobs.copy, LEFT)
        settle()
        assert titles(three).count("Chest of drawers") == 2
        assert three.desk.job is not None
        assert list(three.colours.zones) == ["drawers"]
        assert three.head.piece.hasFocus()

    def test_out_and_in_as_one_file(
        self, three: BriefPage, settle: Settle, qtbot: QtBot, tmp_path: Path
    ) -> None:
        """What was given out comes in as a job of its own, and what to mind is said."""
        press(three, qtbot, "Chest of drawers")
        settle()
        three.jobs.give_out(tmp_path / "chest.swatchjob")
        settle()
        assert three.jobs.told.text() == words.written_file("chest.swatchjob")
        three.bring_in(tmp_path / "chest.swatchjob")
        settle()
        assert titles(three).count("Chest of drawers") == 2
        assert three.desk.job is not None
        assert three.desk.job.id in three.jobs.told.text()


class TestTheHead:
    """Fields are kept as she leaves them."""

    def test_every_field(self, three: BriefPage, settle: Settle, qtbot: QtBot) -> None:
        """Client, light, brief and how far it is are in the store once the field is left."""
        press(three, qtbot, "Chair")
        settle()
        head = three.head
        head.client.setFocus()
        head.client.selectAll()
        qtbot.keyClicks(head.client, "Ferry house")
        qtbot.keyClick(head.client, Qt.Key.Key_Tab)
        head.light.setFocus()
        for _ in range(2):
            qtbot.keyClick(head.light, Qt.Key.Key_Down)
        qtbot.keyClick(head.light.line, Qt.Key.Key_Return)
        head.status.setFocus()
        qtbot.keyClick(head.status, Qt.Key.Key_Down)
        head.brief.setFocus()
        qtbot.keyClicks(head.brief, "Matt, and quiet.")
        qtbot.keyClick(head.brief, Qt.Key.Key_Tab)
        settle()
        job = three.desk.job
        assert job is not None
        assert (job.client, job.room_light) == ("Ferry house", words.LIGHTS[2])
        assert (job.status, job.brief) == (Status.SAMPLING, "Matt, and quiet.")

    def test_a_piece_without_a_name(self, three: BriefPage, settle: Settle, qtbot: QtBot) -> None:
        """A name that is wiped out comes back: every job has one."""
        press(three, qtbot, "Chair")
        settle()
        three.head.piece.setFocus()
        three.head.piece.selectAll()
        qtbot.keyClick(three.head.piece, Qt.Key.Key_Delete)
        qtbot.keyClick(three.head.piece, Qt.Key.Key_Tab)
        settle()
        assert three.head.piece.text() == "Chair"

    def test_undo_right_after_writing(
        self, window: Window, three: BriefPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """Undo pressed from within a field takes back what was just written there."""
        press(three, qtbot, "Chair")
        settle()
        three.head.client.setFocus()
        three.head.client.selectAll()
        qtbot.keyClicks(three.head.client, "Somebody else")
        three.head.client.clearFocus()
        qtbot.mouseClick(window.undo, LEFT)
        settle()
        assert three.desk.job is not None
        assert three.desk.job.client == "A neighbour"
        assert three.head.client.text() == "A neighbour"
        qtbot.mouseClick(window.redo, LEFT)
        settle()
        assert three.head.client.text() == "Somebody else"

    def test_what_she_is_writing_is_not_overwritten(
        self, three: BriefPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """A change that comes from elsewhere meanwhile leaves the field she is in alone."""
        press(three, qtbot, "Chair")
        settle()
        three.head.brief.setFocus()
        qtbot.keyClicks(three.head.brief, "In the middle of")
        job = three.desk.job
        assert job is not None
        three.desk.edit(lambda store: change_job(store, job.id, status=Status.DONE))
        settle()
        assert three.head.brief.toPlainText() == "In the middle of"

    def test_closing_keeps_the_field(
        self, window: Window, three: BriefPage, settle: Settle, qtbot: QtBot, tmp_path: Path
    ) -> None:
        """A window closed from within a field keeps what was written there."""
        from swatchwright.acts.jobs import job_of, open_jobs

        press(three, qtbot, "Chair")
        settle()
        three.head.brief.setFocus()
        qtbot.keyClicks(three.head.brief, "Before closing time")
        window.close()
        with open_jobs(tmp_path / "store" / "swatchwright.sqlite") as store:
            assert job_of(store, "chair").brief == "Before closing time"


class TestNotesAndParts:
    """Notes are added, and what other pages keep is listed."""

    def test_a_note(self, three: BriefPage, settle: Settle, qtbot: QtBot) -> None:
        """A note is kept with its time, and its field is empty for the next."""
        press(three, qtbot, "Chair")
        settle()
        three.notes.new.setFocus()
        qtbot.keyClicks(three.notes.new, "She likes it matt")
        qtbot.mouseClick(three.notes.add, LEFT)
        settle()
        assert three.desk.job is not None
        assert [note.text for note in three.desk.job.notes] == ["She likes it matt"]
        assert "She likes it matt" in three.notes.told.text()
        assert not three.notes.new.toPlainText()

    def test_parts_of_other_pages(
        self, window: Window, three: BriefPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """A part that is kept has a line and the way to its page; others have none."""
        press(three, qtbot, "Chair")
        settle()
        assert three.parts.none.isVisibleTo(three.parts)
        three.desk.keep_part("plan", {"days": 3})
        settle()
        label, go = three.parts.rows["plan"]
        assert label.isVisibleTo(three.parts)
        assert not three.parts.rows["piece"][0].isVisibleTo(three.parts)
        wanted: list[str] = []
        three.desk.page_wanted.connect(wanted.append)
        go.click()
        assert wanted == ["plan"]
        assert window.page("plan").isVisible()


class TestTheLook:
    """The page holds in a small window, in touching colours, with names for all of it."""

    def test_colours_touch(self, three: BriefPage, settle: Settle, qtbot: QtBot) -> None:
        """The wanted colour and the kept mix share an edge, with nothing between."""
        press(three, qtbot, "Chest of drawers")
        settle()
        field = three.colours.zones["drawers"].field
        picture = field.grab().toImage()
        half, quarter = picture.height() // 2, picture.width() // 4
        seen = {picture.pixelColor(quarter, y).name() for y in range(half - 4, half + 4)}
        assert len(seen) <= 2

    def test_fits_a_small_laptop(
        self, window: Window, three: BriefPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """With a job shown the window still fits 1280 by 720, nothing wider than its room."""
        press(three, qtbot, "Chest of drawers")
        settle()
        assert window.needs().width() <= 1280
        assert window.needs().height() <= 720
        inside = three.area.widget()
        assert inside is not None
        assert inside.minimumSizeHint().width() <= three.area.viewport().width()

    def test_everything_has_a_name(self, three: BriefPage, settle: Settle, qtbot: QtBot) -> None:
        """Whatever can be focused tells a screen reader its name."""
        from PySide6.QtGui import QAccessible
        from PySide6.QtWidgets import QWidget

        press(three, qtbot, "Chest of drawers")
        settle()
        for widget in three.findChildren(QWidget):
            takes_focus = widget.focusPolicy() & Qt.FocusPolicy.TabFocus and widget.isVisible()
            if not takes_focus or isinstance(widget, QLabel):
                continue
            if widget.focusProxy() is not None or widget.objectName().startswith("qt_"):
                continue
            seen = QAccessible.queryAccessibleInterface(widget)
            assert seen.text(QAccessible.Text.Name), widget


def test_a_long_name_is_never_cut(page: BriefPage, settle: Settle) -> None:
    """A row of the list is as high as its name needs."""
    long = "Chest of five drawers with turned feet, " * 4
    page.desk.edit(lambda store: new_job(store, title="Chair"))
    page.desk.edit(lambda store: new_job(store, title=long))
    settle()
    view = page.jobs.view
    QTest.qWait(50)
    tall, short = (view.visualRect(page.jobs.model.index(row)) for row in range(2))
    assert tall.height() > short.height() + 50
    assert view.indexAt(QPoint(20, tall.bottom() - 2)).row() == 0
