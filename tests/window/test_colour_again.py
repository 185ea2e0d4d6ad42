"""Each kept colour brings its own box of the photo back: by its zone, undone, redone, next time."""

from __future__ import annotations

import shutil
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from hands import drag
from swatchwright.acts.batches import WHOLE_PIECE
from swatchwright.acts.demo_job import demo_findings
from swatchwright.acts.jobs import keep_document
from swatchwright.acts.piece import sized_piece
from swatchwright.colour.names import colour_name
from swatchwright.desktop.pages.brief_page import BriefPage
from swatchwright.desktop.window import Window
from swatchwright.desktop.words import keeping as words
from swatchwright.piece.common import Kind
from swatchwright.shelf.jobs import ReadFrom
from swatchwright.values import KnownColour, Rect
from window.known import known_findings

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    from swatchwright.acts.samples import SamplePhoto

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton
PATIENCE = 60_000
RED, TO_BLUE, TO_CREAM = (560, 490, 660, 600), 270, 60
"""A box on the red stripe of the sample, and how far to the right the blue stripe is."""


@pytest.fixture
def bench(window: Window, settle: Settle, cushion: SamplePhoto, tmp_path: Path) -> Window:
    """Give the window with a dresser of several zones, the card marked, and a box on the red."""
    with known_findings():
        path = tmp_path / "cushion.jpg"
        shutil.copy(cushion.path, path)
        window.session.set_most_paints(2)
        piece = sized_piece(Kind.DRESSER).piece
        window.desk.edit_job(lambda store, id_: keep_document(store, id_, "piece", piece))
        window.open(path)
        settle()
        view, grey = window.photo_side.view, cushion.grey
        drag(view, (grey.x, grey.y), (grey.right, grey.bottom))
        drag(view, RED[:2], RED[2:])
        settle()
    return window


def move(window: Window, way: int) -> None:
    """Take the box of the cloth and move it across the stripes."""
    cloth = window.session.marks.cloth
    assert cloth is not None
    x, y = cloth.x + cloth.width / 2, cloth.y + cloth.height / 2
    drag(window.photo_side.view, (x, y), (x + way, y))


def choose(window: Window, zone: str) -> None:
    """Choose a zone to keep for by the keyboard, past those between."""
    field = window.mix_side.keep_bar.zone
    field.setFocus()
    place = field.findData(zone)
    while field.currentIndex() != place:
        key = Qt.Key.Key_Down if field.currentIndex() < place else Qt.Key.Key_Up
        QTest.keyClick(field, key)


def keep(window: Window, settle: Settle, *, number: int = 1) -> None:
    """Press Keep at a mix."""
    QTest.mouseClick(window.mix_side.columns()[number - 1].keep, LEFT)
    settle()


def state(window: Window) -> tuple[Rect | None, bool, KnownColour | None]:
    """Give the box, how the cloth is seen, and the wanted colour to the figure."""
    session = window.session
    return session.marks.cloth, session.marks.metre, session.wanted


@pytest.fixture
def two(bench: Window, settle: Settle) -> Window:
    """Give the bench with the red kept for the body, and then the blue for the doors."""
    with known_findings():
        choose(bench, "body")
        keep(bench, settle)
        move(bench, TO_BLUE)
        settle()
        choose(bench, "doors")
        keep(bench, settle)
    return bench


class TestZones:
    """A zone that is chosen again brings its colour and its box."""

    def test_back_and_forth(self, bench: Window, settle: Settle) -> None:
        """Red for the body, blue for the doors: each zone has its own box, and its mix kept."""
        choose(bench, "body")
        red = state(bench)
        keep(bench, settle)
        move(bench, TO_BLUE)
        settle()
        choose(bench, "doors")
        settle()
        blue = state(bench)
        assert blue[0] != red[0]
        assert blue[2] is not None
        assert red[2] is not None
        assert blue[2].lab.b < 0 < red[2].lab.b
        keep(bench, settle)
        for zone, kept in (("body", red), ("doors", blue)) * 2:
            choose(bench, zone)
            settle()
            assert bench.keeping.zone == zone
            assert state(bench) == kept
            assert bench.mix_side.columns()[0].keep.isChecked()
            box = bench.photo_side.view._boxes
            assert any(b.x() == pytest.approx(kept[0].x, abs=1) for b in box.values() if kept[0])

    def test_past_other_zones_without_waiting(self, two: Window, settle: Settle) -> None:
        """Keys that come faster than colours are read end at the zone they end at."""
        before = state(two)
        choose(two, "body")
        choose(two, "doors")
        choose(two, "body")
        choose(two, "doors")
        settle()
        assert two.keeping.zone == "doors"
        assert state(two) == before

    def test_a_zone_without_a_colour_leaves_the_bench(self, two: Window, settle: Settle) -> None:
        """Where nothing is kept yet, what is on the bench is what she is about to keep there."""
        before = state(two)
        choose(two, "drawers")
        settle()
        assert state(two) == before
        choose(two, "body")
        choose(two, "drawers")
        choose(two, "doors")
        settle()
        assert state(two) == before

    def test_what_is_not_kept_yet_stays(self, two: Window, settle: Settle) -> None:
        """A box moved for a new colour of the body is not taken away by choosing the body."""
        move(two, -TO_CREAM)
        choose(two, "body")
        settle()
        new = state(two)
        assert two.keeping.zone == "body"
        told = two.mix_side.keep_bar.told
        assert two.desk.job is not None
        red = next(w.colour.lab for w in two.desk.job.wanted if w.zone == "body")
        assert told.text() == words.replaces_line(colour_name(red), "body")
        keep(two, settle)
        assert two.desk.job is not None
        assert {w.zone: w.colour for w in two.desk.job.wanted}["body"] == new[2]
        choose(two, "doors")
        settle()
        choose(two, "body")
        settle()
        assert state(two) == new

    def test_another_block_of_the_strip_stays(self, two: Window, settle: Settle) -> None:
        """A colour pressed in the strip is kept for the zone that is chosen after it."""
        two.session.set_cloth(Rect(520, 470, 420, 240))
        settle()
        QTest.mouseClick(two.photo_side.strip.blocks()[1], LEFT)
        settle()
        before = state(two)
        choose(two, "body")
        settle()
        assert state(two) == before
        keep(two, settle)
        choose(two, "doors")
        settle()
        choose(two, "body")
        settle()
        assert state(two) == before
        assert two.photo_side.strip.blocks()[1].isChecked()

    def test_from_a_metre(self, two: Window, settle: Settle) -> None:
        """A colour wanted as seen from a metre is that again, beside one of the yarn."""
        yarn = state(two)
        two.session.set_metre(metre=True)
        settle()
        choose(two, "body")
        settle()
        far = state(two)
        keep(two, settle)
        choose(two, "doors")
        settle()
        assert state(two) == yarn
        choose(two, "body")
        settle()
        assert state(two) == far
        assert far[1]

    def test_a_typed_colour_has_no_box(self, two: Window, settle: Settle, qtbot: QtBot) -> None:
        """Choosing its zone wants the typed colour, and the photo stays as it is marked."""
        cloth = two.session.marks.cloth
        qtbot.keyClicks(two.mix_side.typed, "60, -20, 30")
        qtbot.keyClick(two.mix_side.typed, Qt.Key.Key_Return)
        settle()
        choose(two, "drawers")
        typed = two.session.wanted
        keep(two, settle)
        assert two.desk.job is not None
        where = {wanted.zone: wanted.read for wanted in two.desk.job.wanted}
        assert where["drawers"] is None
        assert where["doors"] == ReadFrom(two.desk.job.photos[0].hash, cloth)
        choose(two, "body")
        settle()
        red = two.session.marks.cloth
        choose(two, "drawers")
        settle()
        assert state(two) == (red, False, typed)
        assert red != cloth


class TestTheAmount:
    """A colour comes back with the amount that it was kept for."""

    def test_by_zone_by_page_and_undone(self, bench: Window, settle: Settle) -> None:
        """Red for 300 ml and blue for 120: each zone, its mixes and undo bring its own."""
        volume = bench.mix_side.volume
        for zone, ml in (("body", 300), ("doors", 120)):
            volume.setValue(ml)
            choose(bench, zone)
            keep(bench, settle)
            move(bench, TO_BLUE)
            settle()
        QTest.mouseClick(bench.undo, LEFT)
        settle()
        assert volume.value() == 120
        choose(bench, "body")
        settle()
        assert (bench.session.volume, volume.value()) == (300, 300)
        assert bench.session.recipes is not None
        assert bench.session.recipes.volume == 300
        QTest.mouseClick(bench.undo, LEFT)
        settle()
        assert volume.value() == 120
        QTest.mouseClick(bench.redo, LEFT)
        settle()
        assert volume.value() == 300
        bench.show_page("brief")
        page = bench.page("brief")
        assert isinstance(page, BriefPage)
        QTest.mouseClick(page.colours.zones["doors"].mixes, LEFT)
        settle()
        assert volume.value() == 120


class TestUndo:
    """Undo and redo go back and forth over all of it, box and colour together."""

    def test_to_the_first_and_back(self, two: Window, settle: Settle) -> None:
        """Every step of the way is met again, to the figure."""
        with known_findings():
            self._there_and_back(two, settle)

    @staticmethod
    def _there_and_back(two: Window, settle: Settle) -> None:
        choose(two, "body")
        settle()
        two.session.set_metre(metre=True)
        settle()
        move(two, TO_CREAM)
        settle()
        two.session.type_colour("60, -20, 30")
        settle()
        two.session.set_cloth(Rect(520, 470, 420, 240))
        settle()
        QTest.mouseClick(two.photo_side.strip.blocks()[-1], LEFT)
        settle()
        steps = []
        while two.session.history.last:
            steps.append((state(two), two.keeping.zone, two.session.history.last))
            QTest.mouseClick(two.undo, LEFT)
            settle()
        # Marking began with no cloth.
        assert state(two)[0] is None
        for before, zone, label in reversed(steps):
            assert two.session.history.next == label
            QTest.mouseClick(two.redo, LEFT)
            settle()
            assert state(two) == before
            # Where it only is the place that is kept for, no step tells of it.
            assert two.keeping.zone == zone or zone not in {"body", "doors"}

    def test_one_step_brings_the_zone_back(self, two: Window, settle: Settle) -> None:
        """What choosing a zone brought goes with one press, and the zone too."""
        before = state(two)
        two.keeping.set_zone("body")
        settle()
        after = state(two)
        assert after != before
        QTest.mouseClick(two.undo, LEFT)
        settle()
        assert (state(two), two.keeping.zone) == (before, "doors")
        QTest.mouseClick(two.redo, LEFT)
        settle()
        assert (state(two), two.keeping.zone) == (after, "body")

    def test_steps_that_do_not_wait_for_one_another(self, two: Window, settle: Settle) -> None:
        """Undone and redone faster than colours are read, the bench ends where it was."""
        two.session.set_cloth(Rect(520, 470, 420, 240))
        settle()
        two.session.choose(2)
        settle()
        before, history = state(two), two.session.history
        history.undo()
        history.undo()
        history.redo()
        history.redo()
        settle()
        assert state(two) == before

    def test_a_typed_colour_comes_back(self, two: Window, settle: Settle) -> None:
        """A mark set while a typed colour was wanted is undone to that colour."""
        two.session.type_colour("60, -20, 30")
        settle()
        before = state(two)
        move(two, -TO_CREAM)
        settle()
        assert state(two)[2] != before[2]
        QTest.mouseClick(two.undo, LEFT)
        settle()
        assert state(two) == before


class TestTheJob:
    """The job brings the boxes: on its page, opened again, and at the next start."""

    def test_its_page(self, two: Window, settle: Settle) -> None:
        """The button for a zone's mixes lays its box, whatever is on the bench."""
        blue = state(two)
        move(two, -TO_CREAM)
        settle()
        two.show_page("brief")
        page = two.page("brief")
        assert isinstance(page, BriefPage)
        QTest.mouseClick(page.colours.zones["doors"].mixes, LEFT)
        settle()
        assert two.colour_page.isVisible()
        assert state(two) == blue

    def test_opened_again_without_its_original(
        self, two: Window, settle: Settle, qtbot: QtBot, tmp_path: Path
    ) -> None:
        """At the next start the last box is there, and each of the others when it is asked for."""
        blue = state(two)
        choose(two, "body")
        settle()
        red, job = state(two), two.desk.job
        choose(two, "doors")
        settle()
        two.close()
        (tmp_path / "cushion.jpg").unlink()
        made = Window()
        made.resize(1280, 720)
        qtbot.addWidget(made)
        made.show()
        qtbot.waitUntil(lambda: made.session.found is not None and made.at_rest(), timeout=PATIENCE)
        assert made.session.path is None
        assert made.desk.job == job
        assert state(made) == blue
        made.keeping.set_zone("body")
        qtbot.waitUntil(made.at_rest, timeout=PATIENCE)
        assert state(made) == red
        assert made.mix_side.columns()[0].keep.isChecked()

    def test_closed_before_it_is_read(self, two: Window, settle: Settle, qtbot: QtBot) -> None:
        """Closed in the moment when a zone was chosen, its box and its colour are there again."""
        choose(two, "body")
        settle()
        red = state(two)
        choose(two, "doors")
        settle()
        two.keeping.set_zone("body")
        assert two.session.workshop.doing("colours")
        two.close()
        made = Window()
        qtbot.addWidget(made)
        made.show()
        qtbot.waitUntil(lambda: made.session.found is not None and made.at_rest(), timeout=PATIENCE)
        assert (state(made), made.keeping.zone) == (red, "body")

    def test_another_photo_of_the_job(
        self, two: Window, settle: Settle, cushion: SamplePhoto, tmp_path: Path
    ) -> None:
        """A colour of another photo of the job brings that photo with its box."""
        from PIL import Image

        blue, path = state(two), tmp_path / "other.png"
        with Image.open(cushion.path) as picture:
            picture.transpose(Image.Transpose.FLIP_LEFT_RIGHT).save(path)
        two.open(path)
        settle()
        QTest.mouseClick(two.photo_offer.leave, LEFT)
        two.session.set_cloth(Rect(700, 500, 80, 80))
        settle()
        choose(two, "drawers")
        keep(two, settle)
        other = state(two)
        choose(two, "doors")
        settle()
        assert two.session.path == tmp_path / "cushion.jpg"
        assert state(two) == blue
        choose(two, "drawers")
        settle()
        assert two.session.path == path
        assert state(two) == other

    def test_a_photo_just_opened_stays(
        self, two: Window, settle: Settle, cushion: SamplePhoto
    ) -> None:
        """A photo that no mix is kept of is not taken away; the kept colour is wanted on it."""
        blue = state(two)
        two.open(cushion.path)
        settle()
        two.desk.colour_wanted.emit("doors")
        settle()
        assert two.session.path == cushion.path
        assert state(two) == (None, False, blue[2])

    def test_the_demonstration(self, window: Window, settle: Settle) -> None:
        """Both colours of the demonstration know that they are of the whole cushion."""
        from swatchwright.acts.demo_job import begin_demo_job

        found = demo_findings()
        window.desk.begin(lambda store: begin_demo_job(store, found))
        settle()
        job = window.desk.job
        assert job is not None
        cloth = found.photo.marks.cloth
        assert [w.read for w in job.wanted] == [ReadFrom(job.photos[0].hash, cloth)] * 2
        assert WHOLE_PIECE not in window.keeping.zones()
        choose(window, "top")
        settle()
        assert window.session.wanted == job.wanted[1].colour
        assert window.photo_side.strip.blocks()[1].isChecked()
