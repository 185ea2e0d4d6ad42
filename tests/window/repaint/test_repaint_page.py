"""The piece on a photo, used as a painter does: open, draw, look, choose, take back, save."""

from __future__ import annotations

import json
import shutil
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
import pytest
from PIL import Image
from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QDropEvent
from PySide6.QtWidgets import QFileDialog

from swatchwright.acts.jobs import new_job
from swatchwright.acts.repaint import NOT_THIS
from swatchwright.acts.repaint_file import SampleBox
from swatchwright.acts.repaint_job import AS_IT_IS, REPAINT_PART, RepaintPlan
from swatchwright.acts.sample_grey import overlaps
from swatchwright.desktop.pages.repaint_page import RepaintPage
from swatchwright.desktop.words import repaint as words
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.piece.common import Kind, common_piece
from window.repaint_hands import LEFT, colour_at, drag, plan_of

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]


def test_a_likely_card_is_asked_about(
    bare: RepaintPage, sample: SampleBox, rest: Settle, qtbot: QtBot
) -> None:
    """On a photo without a grey the card is asked about; yes marks it, and that can be undone."""
    asked = bare.proposal.asked
    assert asked is not None
    assert sample.grey is not None
    assert overlaps(asked, sample.grey)
    assert bare.proposal.isVisible()
    qtbot.mouseClick(bare.proposal.yes, LEFT)
    rest()
    plan = bare.piece.plan
    assert plan is not None
    assert plan.grey == asked
    assert not bare.proposal.isVisible()


def test_a_marked_card_is_not_asked_about(on_sample: RepaintPage) -> None:
    """Where the grey is known, nothing is asked."""
    assert not on_sample.proposal.isVisible()


class TestOpening:
    """A photo of the piece."""

    def test_it_says_what_to_do_first(self, page: RepaintPage) -> None:
        """Without a photo the page asks for one, and offers a sample."""
        assert page.empty.isVisible()
        assert page.open_first.isVisible()
        assert page.sample.isVisible()
        assert not page.canvas.isVisible()

    def test_the_sample_is_painted_at_once(self, on_sample: RepaintPage) -> None:
        """One press shows the box in new colours, told in words, with honest notes."""
        page = on_sample
        assert page.canvas.isVisible()
        assert not page.after.image.isNull()
        assert list(page.zones.cells) == ["body", "top"]
        red, _, blue = colour_at(page.after.image, 0.6, 0.6)
        assert blue > red + 20
        assert "blue" in page.after.accessibleName()
        assert "no measured colour" in page.notes.text()
        assert page.notes.isVisible()

    def test_a_dropped_photo_is_the_piece(
        self, window: Window, page: RepaintPage, rest: Settle, sample: SampleBox
    ) -> None:
        """A photo dropped on this page is that of the piece and no cloth."""
        data = QMimeData()
        data.setUrls([QUrl.fromLocalFile(str(sample.path))])
        buttons, keys = LEFT, Qt.KeyboardModifier.NoModifier
        page.dropEvent(QDropEvent(QPointF(9, 9), Qt.DropAction.CopyAction, data, buttons, keys))
        rest()
        assert plan_of(page).marked.size == sample.strokes.size
        assert window.session.photo is None

    def test_a_file_that_is_no_photo(
        self, window: Window, page: RepaintPage, rest: Settle, tmp_path: Path
    ) -> None:
        """What is no photo is told of in the message strip, and the page still asks for one."""
        path = tmp_path / "notes.txt"
        path.write_text("no photo", "utf-8")
        page.open_file(path)
        rest()
        assert window.trouble.isVisible()
        assert page.empty.isVisible()


class TestDrawing:
    """Strokes."""

    def test_a_stroke_finds_the_surface(
        self, window: Window, bare: RepaintPage, rest: Settle, qtbot: QtBot
    ) -> None:
        """After strokes on the body and beside it the body is in the mix, and the wall is not."""
        page = bare
        assert page.after.image.isNull()
        assert not page.save.isEnabled()
        window.session.type_colour("46, 34, 24")
        qtbot.mouseClick(page.brushes.buttons["body"], LEFT)
        drag(page, qtbot, (500, 520), (800, 480))
        drag(page, qtbot, (470, 840), (1180, 660))
        qtbot.mouseClick(page.brushes.buttons[NOT_THIS], LEFT)
        drag(page, qtbot, (100, 560), (250, 120), (1300, 180))
        drag(page, qtbot, (320, 960), (1300, 800))
        drag(page, qtbot, (600, 330), (1000, 260))
        rest()
        strokes = plan_of(page).marked.strokes
        assert [s.zone for s in strokes] == ["body", "body", *[NOT_THIS] * 3]
        assert strokes[0].points[0] == pytest.approx((500, 520), abs=4)
        assert len(strokes[0].points) > 5
        assert strokes[0].points[-1] == pytest.approx((800, 480), abs=4)
        red, green, _ = colour_at(page.after.image, 0.6, 0.6)
        assert red > 1.5 * green
        wall = colour_at(page.after.image, 0.5, 0.05)
        assert max(wall) - min(wall) < 40
        assert page.save.isEnabled()

    def test_each_stroke_is_undone_by_itself(
        self, window: Window, bare: RepaintPage, rest: Settle, qtbot: QtBot
    ) -> None:
        """Undo takes the last stroke back and redo brings it again, with its words."""
        page = bare
        drag(page, qtbot, (500, 520), (800, 480))
        rest()
        qtbot.mouseClick(page.brushes.buttons["top"], LEFT)
        drag(page, qtbot, (600, 330), (1000, 260))
        rest()
        assert window.session.history.last == words.did_stroke("top")
        qtbot.mouseClick(window.undo, LEFT)
        rest()
        assert plan_of(page).marked.zones == ("body",)
        assert list(page.zones.cells) == ["body"]
        qtbot.mouseClick(window.redo, LEFT)
        rest()
        assert plan_of(page).marked.zones == ("body", "top")

    def test_clear_and_undo(
        self, window: Window, on_sample: RepaintPage, rest: Settle, qtbot: QtBot
    ) -> None:
        """Clear takes all strokes away, and one undo brings them back with the picture."""
        page = on_sample
        strokes = plan_of(page).marked.strokes
        qtbot.mouseClick(page.clear, LEFT)
        rest()
        assert plan_of(page).marked.strokes == ()
        assert page.after.image.isNull()
        assert not page.clear.isEnabled()
        qtbot.mouseClick(window.undo, LEFT)
        rest()
        assert plan_of(page).marked.strokes == strokes
        assert not page.after.image.isNull()

    def test_by_keyboard(self, bare: RepaintPage, rest: Settle, qtbot: QtBot) -> None:
        """A box is laid, moved, sized and made a stroke by keys alone, and dropped again."""
        page, canvas = bare, bare.canvas
        canvas.setFocus()
        qtbot.keyClick(canvas, Qt.Key.Key_Return)
        assert canvas.box is not None
        before = canvas.box
        for _ in range(3):
            qtbot.keyClick(canvas, Qt.Key.Key_Right)
        qtbot.keyClick(canvas, Qt.Key.Key_Down, Qt.KeyboardModifier.ShiftModifier)
        assert canvas.box.left() == pytest.approx(before.left() + 42)
        assert canvas.box.height() == pytest.approx(before.height() + 14)
        qtbot.keyClick(canvas, Qt.Key.Key_Return)
        rest()
        stroke = plan_of(page).marked.strokes[0]
        assert stroke.filled
        assert len(stroke.points) == 4
        qtbot.keyClick(canvas, Qt.Key.Key_Delete)
        assert "body" in canvas.accessibleName()
        assert canvas.box is None

    def test_the_grey_card_is_a_box(
        self, bare: RepaintPage, rest: Settle, qtbot: QtBot, sample: SampleBox
    ) -> None:
        """With the brush of the grey card a drag marks it, and the next drag draws again."""
        page = bare
        drag(page, qtbot, (500, 520), (800, 480))
        rest()
        assert "No grey card" in page.notes.text()
        qtbot.mouseClick(page.brushes.buttons[None], LEFT)
        grey = sample.grey
        drag(page, qtbot, (grey.x, grey.y), (grey.right, grey.bottom))
        rest()
        marked = plan_of(page).grey
        assert marked is not None
        assert marked.x == pytest.approx(grey.x, abs=4)
        assert "No grey card" not in page.notes.text()
        assert page.brushes.zone() == "body"

    def test_the_brush_has_a_width(self, bare: RepaintPage, rest: Settle, qtbot: QtBot) -> None:
        """The slider and the brackets make the brush wider and narrower."""
        page = bare
        drag(page, qtbot, (500, 520), (800, 480))
        page.brushes.width_slider.setFocus()
        qtbot.keyClick(page.brushes.width_slider, Qt.Key.Key_PageUp)
        qtbot.keyClick(page.canvas, Qt.Key.Key_BracketRight)
        drag(page, qtbot, (500, 700), (800, 660))
        rest()
        first, second = plan_of(page).marked.strokes
        assert second.width > first.width


class TestColours:
    """What each zone is seen in."""

    def test_another_colour_is_seen_at_once(
        self, window: Window, on_sample: RepaintPage, rest: Settle
    ) -> None:
        """From the list of a zone another paint, or none, is taken, and undo brings it back."""
        page = on_sample
        box = page.zones.cells["body"].list
        before = colour_at(page.after.image, 0.6, 0.6)
        place = box.findData("paint:white-clean")
        box.setCurrentIndex(place)
        box.activated.emit(place)
        rest()
        assert min(colour_at(page.after.image, 0.6, 0.6)) > max(before)
        box.setCurrentIndex(0)
        box.activated.emit(0)
        rest()
        assert dict(plan_of(page).colours)["body"] == AS_IT_IS
        assert page.zones.cells["body"].words.text() == words.zone_told(None, finished=False)
        window.session.history.undo()
        rest()
        assert box.currentData() == "paint:white-clean"

    def test_mixes_are_offered_when_they_are_found(
        self, window: Window, bare: RepaintPage, rest: Settle, qtbot: QtBot
    ) -> None:
        """Before a mix is found the page says where they come from; then it takes the first."""
        page = bare
        drag(page, qtbot, (500, 520), (800, 480))
        rest()
        assert page.told.text() == words.NO_COLOURS
        window.session.type_colour("46, 34, 24")
        rest()
        assert not page.told.isVisible()
        assert page.zones.cells["body"].list.currentData() == "mix:1"
        assert "red" in page.zones.cells["body"].words.text()

    def test_the_finish_is_seen(
        self, window: Window, on_sample: RepaintPage, rest: Settle, qtbot: QtBot
    ) -> None:
        """Once something lies over the mixes, the piece is seen with it, and bare on a press."""
        page = on_sample
        assert not page.finished.isEnabled()
        before = colour_at(page.after.image, 0.6, 0.6)
        wash = Layer(LayerKind.WASH, (("white-clean", 1.0),), passes=6)
        window.desk.keep_part("finish", Stack((wash,)))
        rest()
        assert page.finished.isChecked()
        assert sum(colour_at(page.after.image, 0.6, 0.6)) > sum(before)
        assert page.zones.cells["body"].words.text().endswith("finished")
        qtbot.mouseClick(page.finished, LEFT)
        rest()
        assert colour_at(page.after.image, 0.6, 0.6) == before
        assert page.zones.cells["body"].words.text().endswith("dry")

    def test_many_zones_leave_the_page_its_width(
        self, window: Window, on_sample: RepaintPage, rest: Settle
    ) -> None:
        """With the zones of a dresser the views go below the brushes, and nothing is cut off."""
        page = on_sample
        width = page.width()
        assert page.divider.y() < page.brushes.height()
        window.desk.keep_part("piece", common_piece(Kind.DRESSER))
        rest()
        assert {"drawers", "doors"} <= set(page.brushes.buttons)
        assert page.width() == width
        assert page.divider.y() >= page.brushes.y() + page.brushes.height()
        for one in (page.divider, page.large, page.open_other):
            assert one.width() >= one.sizeHint().width()


class TestKeeping:
    """With the job."""

    def test_kept_and_shown_again(
        self, window: Window, on_sample: RepaintPage, rest: Settle
    ) -> None:
        """Another job has its own; opened again, the first shows photo, strokes and picture."""
        page = on_sample
        first, plan = window.desk.job, plan_of(page)
        assert first is not None
        assert any(photo.hash == plan.photo for photo in first.photos)
        window.desk.begin(lambda store: new_job(store, title="Stool"))
        rest()
        assert page.empty.isVisible()
        window.desk.open_job(first.id)
        rest()
        assert plan_of(page) == plan
        assert not page.after.image.isNull()
        assert window.desk.part(REPAINT_PART, RepaintPlan) == plan

    def test_a_sample_is_only_tried_beside_a_clients_job(
        self, window: Window, page: RepaintPage, rest: Settle, qtbot: QtBot
    ) -> None:
        """The client's job keeps no photo and no stroke of it, which is told; undo takes it off."""
        window.desk.begin(lambda store: new_job(store, title="Chest", client="Harbour workshop"))
        rest()
        qtbot.mouseClick(page.sample, LEFT)
        rest()
        job = window.desk.job
        assert job is not None
        assert not page.after.image.isNull()
        assert page.told.isVisible()
        assert page.told.text() == words.tried_line("Chest")
        qtbot.mouseClick(page.clear, LEFT)
        rest()
        assert plan_of(page).marked.strokes == ()
        qtbot.mouseClick(window.undo, LEFT)
        rest()
        assert plan_of(page).marked.strokes
        assert window.desk.job is not None
        assert window.desk.job.photos == ()
        assert window.desk.job.document(REPAINT_PART) is None
        qtbot.mouseClick(window.undo, LEFT)
        rest()
        assert page.empty.isVisible()
        assert window.desk.job is not None
        qtbot.mouseClick(window.redo, LEFT)
        rest()
        assert page.told.text() == words.tried_line("Chest")

    def test_her_own_photo_ends_the_trying(
        self,
        window: Window,
        page: RepaintPage,
        rest: Settle,
        sample: SampleBox,
        tmp_path: Path,
        qtbot: QtBot,
    ) -> None:
        """A photo of the piece itself is kept with the client's job, and another job has no try."""
        window.desk.begin(lambda store: new_job(store, title="Chest", client="Harbour workshop"))
        rest()
        qtbot.mouseClick(page.sample, LEFT)
        rest()
        page.open_file(Path(shutil.copy(sample.path, tmp_path / "own.jpg")))
        rest()
        job = window.desk.job
        assert job is not None
        assert [photo.name for photo in job.photos] == ["own.jpg"]
        assert page.told.text() != words.tried_line("Chest")
        window.desk.begin(lambda store: new_job(store, title="Stool", client="Harbour workshop"))
        rest()
        qtbot.mouseClick(page.sample, LEFT)
        rest()
        window.desk.open_job(job.id)
        rest()
        assert plan_of(page).marked.strokes == ()
        assert page.told.text() != words.tried_line("Stool")

    def test_opening_is_undone(
        self, window: Window, on_sample: RepaintPage, rest: Settle, qtbot: QtBot
    ) -> None:
        """Undo takes the photo away again, and redo brings it back from the job's copy."""
        qtbot.mouseClick(window.undo, LEFT)
        rest()
        assert on_sample.empty.isVisible()
        qtbot.mouseClick(window.redo, LEFT)
        rest()
        assert not on_sample.after.image.isNull()

    def test_the_picture_is_saved(
        self,
        on_sample: RepaintPage,
        rest: Settle,
        qtbot: QtBot,
        tmp_path: Path,
        monkeypatch: pytest.MonkeyPatch,
    ) -> None:
        """The picture that is saved has the size of the photo and the colours of the page."""
        page, path = on_sample, tmp_path / "after.jpg"
        monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(path), ""))
        qtbot.mouseClick(page.save, LEFT)
        rest()
        with Image.open(path) as image:
            assert image.size == plan_of(page).marked.size
            saved = np.asarray(image)[630, 840]
        assert saved.astype(int) == pytest.approx(colour_at(page.after.image, 0.6, 0.6), abs=12)
        assert page.told.text() == words.saved_line(path)
        assert page.told.isVisible()


def test_only_the_new_colours(on_sample: RepaintPage, qtbot: QtBot) -> None:
    """The piece in its new colours can have all the room, and the photo comes back."""
    page = on_sample
    narrow = page.after.width()
    qtbot.mouseClick(page.large, LEFT)
    qtbot.waitUntil(lambda: page.after.width() > 1.5 * narrow, timeout=5000)
    assert not page.canvas.isVisible()
    qtbot.mouseClick(page.large, LEFT)
    assert page.canvas.isVisible()


def test_what_is_kept_is_plain(window: Window, on_sample: RepaintPage) -> None:
    """The part of the job is JSON of strokes in pixels of the photo, as a file of strokes is."""
    assert on_sample.piece.plan is not None
    job = window.desk.job
    assert job is not None
    document = job.document(REPAINT_PART)
    assert document is not None
    plain = json.loads(document.json)
    assert plain["marked"]["size"] == [1400, 1050]
    assert {stroke["zone"] for stroke in plain["marked"]["strokes"]} == {"body", "top", NOT_THIS}
