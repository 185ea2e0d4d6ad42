"""Keeping a mix on the page of colours, and finding it again: undone, redone, and next time."""

from __future__ import annotations

import shutil
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QDropEvent
from PySide6.QtWidgets import QLabel

from swatchwright.acts.batches import WHOLE_PIECE
from swatchwright.acts.jobs import job_of, keep_document, list_jobs, open_jobs
from swatchwright.acts.piece import sized_piece
from swatchwright.colour.names import colour_name
from swatchwright.desktop import words as common
from swatchwright.desktop.pages.piece_page import PiecePage
from swatchwright.desktop.window import Window
from swatchwright.desktop.words import keeping as words
from swatchwright.piece.common import Kind
from swatchwright.shelf.csv_file import demo_shelf, save_demo_shelf
from swatchwright.values import Lab

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    from swatchwright.acts.samples import SamplePhoto

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton
PATIENCE = 60_000


@pytest.fixture
def again(window: Window, opened: Callable[[], Window]) -> Callable[[], Window]:
    """Give a function that closes the window and opens another on the same store."""

    def restart() -> Window:
        window.close()
        return opened()

    return restart


def drop(window: Window, path: Path) -> None:
    """Drop a file on the window."""
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(path))])
    copy, none = Qt.DropAction.CopyAction, Qt.KeyboardModifier.NoModifier
    window.dropEvent(QDropEvent(QPointF(50, 50), copy, data, LEFT, none))


class TestAMix:
    """A mix is kept by one press."""

    def test_keeping_begins_a_job(self, mixed: Window, settle: Settle, qtbot: QtBot) -> None:
        """With no job on the bench one is begun; the kept mix is told by a word and a mark."""
        columns = mixed.mix_side.columns()
        qtbot.mouseClick(columns[1].keep, LEFT)
        settle()
        job = mixed.desk.job
        assert job is not None
        assert job.title == common.UNTITLED
        chosen = job.chosen(WHOLE_PIECE)
        assert chosen is not None
        assert mixed.session.recipes is not None
        kept = mixed.session.recipes.recipes[1].recipe
        assert [p.paint for p in chosen.paints] == [p.id for p in kept.paints]
        assert [c.keep.text() for c in columns[:2]] == [words.KEEP, words.KEPT]
        assert columns[1].keep.accessibleName() == words.keep_name(2, WHOLE_PIECE, kept=True)
        told = mixed.mix_side.keep_bar.told
        assert told.isVisible()
        assert told.text() == words.kept_line(2, WHOLE_PIECE, otherwise=False)

    def test_another_takes_its_place(self, mixed: Window, settle: Settle, qtbot: QtBot) -> None:
        """One mix is kept for a zone; a key will do instead of the mouse."""
        columns = mixed.mix_side.columns()
        qtbot.mouseClick(columns[0].keep, LEFT)
        settle()
        columns[1].keep.setFocus()
        qtbot.keyClick(columns[1].keep, Qt.Key.Key_Space)
        settle()
        assert [c.keep.isChecked() for c in columns[:2]] == [False, True]
        assert mixed.desk.job is not None
        assert sum(recipe.chosen for recipe in mixed.desk.job.recipes) == 1
        assert len(mixed.desk.jobs) == 1

    def test_undo_and_redo_say_what(self, mixed: Window, settle: Settle, qtbot: QtBot) -> None:
        """The window's buttons take keeping back, with the job begun for it, and bring it again."""
        qtbot.mouseClick(mixed.mix_side.columns()[0].keep, LEFT)
        settle()
        assert "Keep mix 1" in mixed.undo.toolTip()
        qtbot.mouseClick(mixed.undo, LEFT)
        settle()
        assert not mixed.desk.jobs
        assert mixed.mix_side.columns()[0].keep.text() == words.KEEP
        assert "Keep mix 1" in mixed.redo.toolTip()
        qtbot.mouseClick(mixed.redo, LEFT)
        settle()
        assert mixed.desk.job is not None
        assert mixed.mix_side.columns()[0].keep.text() == words.KEPT

    def test_a_zone_of_the_piece(self, mixed: Window, settle: Settle, qtbot: QtBot) -> None:
        """Zones are asked for only where the piece has several, and each has a mix of its own."""
        bar = mixed.mix_side.keep_bar
        assert not bar.zone.isVisible()
        piece = sized_piece(Kind.DRESSER).piece
        mixed.desk.edit_job(lambda store, id_: keep_document(store, id_, "piece", piece))
        settle()
        assert bar.zone.isVisible()
        place = bar.zone.findData("doors")
        assert place > 0
        bar.zone.setFocus()
        for _ in range(place):
            qtbot.keyClick(bar.zone, Qt.Key.Key_Down)
        assert mixed.keeping.zone == "doors"
        qtbot.mouseClick(mixed.mix_side.columns()[0].keep, LEFT)
        settle()
        assert mixed.desk.job is not None
        assert mixed.desk.job.chosen("doors") is not None
        assert mixed.desk.job.chosen("body") is None
        assert bar.told.text() == words.kept_line(1, "doors", otherwise=False)

    def test_a_mix_that_is_not_shown_is_told_of(
        self, mixed: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """Once another colour is wanted no mix is marked, and where the kept one is is said."""
        qtbot.mouseClick(mixed.mix_side.columns()[0].keep, LEFT)
        settle()
        mixed.session.type_colour("27, 2, -24")
        settle()
        assert not any(c.keep.isChecked() for c in mixed.mix_side.columns())
        told = mixed.mix_side.keep_bar.told.text()
        assert words.replaces_line(colour_name(Lab(46, 34, 24)), WHOLE_PIECE) in told

    def test_the_piece_comes_first_and_the_same_colour_after_it(
        self, mixed: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """Of two colours without a piece it is said what to do; a button goes there and back.

        The colour is the same then, it stands at a part that has none, and the row is whole.
        """
        mixed.resize(1366, 732)
        bar = mixed.mix_side.keep_bar
        assert not bar.to_piece.isVisible()
        qtbot.mouseClick(mixed.mix_side.columns()[0].keep, LEFT)
        settle()
        mixed.session.type_colour("27, 2, -24")
        settle()
        wanted = mixed.session.wanted
        assert words.PIECE_FIRST in bar.told.text()
        qtbot.mouseClick(bar.to_piece, LEFT)
        settle()
        page = mixed.page("piece")
        assert isinstance(page, PiecePage)
        assert page.isVisible()
        assert mixed.back_offer.isVisible()
        page.kinds.buttons[Kind.BLANKET_BOX].click()
        settle()
        qtbot.mouseClick(mixed.back_offer.take, LEFT)
        settle()
        assert mixed.session.wanted == wanted
        assert not mixed.back_offer.isVisible()
        assert bar.zone.isVisible()
        assert not bar.to_piece.isVisible()
        assert bar.zone.currentData() in set(mixed.keeping.zones()) - {WHOLE_PIECE}
        assert bar.told.text() == words.NOTHING_KEPT
        row = bar.zone.parentWidget()
        assert row is not None
        qtbot.waitUntil(lambda: row.height() >= row.heightForWidth(row.width()), timeout=2000)
        assert bar.zone.height() >= bar.zone.sizeHint().height()
        assert row.rect().contains(bar.zone.geometry())

    def test_another_colour_is_offered_a_zone_that_has_none(
        self, mixed: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """With the red kept for the body, a blue stands at the lid; undo, and it is the body."""
        piece = sized_piece(Kind.BLANKET_BOX).piece
        mixed.desk.edit_job(lambda store, id_: keep_document(store, id_, "piece", piece))
        settle()
        zones = mixed.keeping.zones()
        bar, body = mixed.mix_side.keep_bar, mixed.keeping.zone
        qtbot.mouseClick(mixed.mix_side.columns()[0].keep, LEFT)
        settle()
        assert mixed.keeping.zone == body
        mixed.session.type_colour("27, 2, -24")
        settle()
        other = mixed.keeping.zone
        assert other in set(zones) - {body}
        assert bar.zone.currentData() == other
        assert bar.told.text() == words.NOTHING_KEPT
        qtbot.mouseClick(mixed.undo, LEFT)
        settle()
        assert mixed.keeping.zone == body
        assert bar.told.text() == words.kept_line(1, body, otherwise=False)

    def test_what_she_chooses_stays_and_what_goes_is_told(
        self, mixed: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """Sent back to the body by her own hand, the blue stays there, and the red is named."""
        piece = sized_piece(Kind.BLANKET_BOX).piece
        mixed.desk.edit_job(lambda store, id_: keep_document(store, id_, "piece", piece))
        settle()
        bar, body = mixed.mix_side.keep_bar, mixed.keeping.zone
        qtbot.mouseClick(mixed.mix_side.columns()[0].keep, LEFT)
        settle()
        mixed.session.type_colour("27, 2, -24")
        settle()
        bar.zone.setFocus()
        steps = bar.zone.findData(body) - bar.zone.currentIndex()
        for _ in range(abs(steps)):
            qtbot.keyClick(bar.zone, Qt.Key.Key_Down if steps > 0 else Qt.Key.Key_Up)
        mixed.session.set_volume(mixed.session.volume + 100)
        settle()
        assert mixed.keeping.zone == body
        red = colour_name(Lab(46, 34, 24))
        assert bar.told.text() == words.replaces_line(red, body)
        assert red in bar.told.text()

    def test_the_photo_is_kept_with_its_marks(
        self, with_cushion: Window, settle: Settle, qtbot: QtBot, cushion: SamplePhoto
    ) -> None:
        """What is open and marked on the left is kept with the mix on the right."""
        qtbot.mouseClick(with_cushion.mix_side.columns()[0].keep, LEFT)
        settle()
        job = with_cushion.desk.job
        assert job is not None
        assert job.photos[0].name == cushion.path.name
        assert job.photos[0].marks.grey == (cushion.grey,)
        assert job.photos[0].marks.cloth == cushion.cloth

    def test_a_photo_that_has_gone_is_said(
        self,
        window: Window,
        settle: Settle,
        qtbot: QtBot,
        cushion: SamplePhoto,
        tmp_path: Path,
    ) -> None:
        """A photo whose file has gone does not keep the mix from being kept; that is said."""
        path = tmp_path / "card.jpg"
        shutil.copy(cushion.path, path)
        window.session.set_most_paints(2)
        window.open(path)
        settle()
        window.session.choose(0)
        settle()
        path.unlink()
        qtbot.mouseClick(window.mix_side.columns()[0].keep, LEFT)
        settle()
        assert words.PHOTO_NOT_KEPT in window.trouble.text()
        assert window.trouble.isVisible()
        assert window.mix_side.columns()[0].keep.text() == words.KEPT

    def test_prices_say_whose_money(self, mixed: Window) -> None:
        """A price carries the word on whose money it is in, for eyes and for screen readers."""
        labels = mixed.mix_side.columns()[0].findChildren(QLabel)
        priced = [label for label in labels if "costs" in label.text()]
        assert len(priced) == 1
        assert priced[0].accessibleDescription() == words.IN_YOUR_MONEY
        assert words.IN_YOUR_MONEY in priced[0].toolTip()


class TestMoreMixes:
    """That there are more mixes than fit is said, and they are reached by keyboard."""

    def test_how_many_and_where(self, window: Window, settle: Settle, qtbot: QtBot) -> None:
        """The line tells which are in view; the arrow brings the next, to the last."""
        window.session.type_colour("46, 34, 24")
        settle()
        pager = window.mix_side.pager
        # Once the mixes are laid out: before that they all stand at the left edge.
        qtbot.waitUntil(pager.later.isEnabled)
        assert pager.told.text().endswith(" of 6")
        assert pager.told.text().startswith("Mixes 1 to ")
        assert not pager.earlier.isEnabled()
        pager.later.setFocus()
        for _ in range(6):
            qtbot.keyClick(pager.later, Qt.Key.Key_Space)
        qtbot.waitUntil(lambda: pager.told.text().endswith("to 6 of 6"))
        assert not pager.later.isEnabled()
        assert pager.earlier.isEnabled()
        for _ in range(6):
            qtbot.mouseClick(pager.earlier, LEFT)
        assert pager.told.text().startswith("Mixes 1 to ")


class TestNextTime:
    """What was kept is there when the window is opened again."""

    def test_the_job_is_back(
        self,
        with_cushion: Window,
        settle: Settle,
        qtbot: QtBot,
        again: Callable[[], Window],
        cushion: SamplePhoto,
    ) -> None:
        """Kept, undone, redone and started anew, the bench is as it was."""
        blocks = with_cushion.photo_side.strip.blocks()
        qtbot.mouseClick(blocks[1], LEFT)
        settle()
        with_cushion.mix_side.volume.setValue(750)
        qtbot.mouseClick(with_cushion.mix_side.columns()[1].keep, LEFT)
        settle()
        qtbot.mouseClick(with_cushion.undo, LEFT)
        settle()
        qtbot.mouseClick(with_cushion.redo, LEFT)
        settle()
        job = with_cushion.desk.job
        next_time = again()
        assert next_time.desk.job == job
        assert next_time.session.path == cushion.path
        assert next_time.session.marks.cloth == cushion.cloth
        assert next_time.session.volume == next_time.mix_side.volume.value() == 750
        assert next_time.photo_side.strip.blocks()[1].isChecked()
        assert next_time.mix_side.columns()[1].keep.isChecked()

    def test_without_the_original(
        self,
        window: Window,
        settle: Settle,
        qtbot: QtBot,
        again: Callable[[], Window],
        cushion: SamplePhoto,
        tmp_path: Path,
    ) -> None:
        """Where the photo has gone its reduced copy is shown, the wanted colour being the same."""
        path = tmp_path / "holiday.jpg"
        shutil.copy(cushion.path, path)
        window.open(path)
        settle()
        window.session.set_grey(cushion.grey)
        window.session.set_cloth(cushion.cloth)
        settle()
        wanted = window.session.wanted
        qtbot.mouseClick(window.mix_side.columns()[0].keep, LEFT)
        settle()
        path.unlink()
        next_time = again()
        assert next_time.session.photo is not None
        assert next_time.session.photo.facts.name == "holiday.jpg"
        assert next_time.session.path is None
        assert next_time.session.wanted == wanted
        assert next_time.mix_side.columns()[0].keep.isChecked()

    def test_a_photo_being_opened_is_not_replaced(
        self, mixed: Window, settle: Settle, qtbot: QtBot, cushion: SamplePhoto
    ) -> None:
        """A window that is opened with a photo shows that photo, and no job from before."""
        qtbot.mouseClick(mixed.mix_side.columns()[0].keep, LEFT)
        settle()
        mixed.close()
        made = Window()
        qtbot.addWidget(made)
        made.show()
        made.open(cushion.path)
        qtbot.waitUntil(
            lambda: made.session.found is not None and made.at_rest(),
            timeout=PATIENCE,
        )
        assert made.session.path == cushion.path
        assert made.desk.job is None
        assert len(made.desk.jobs) == 1

    def test_opening_another_job_clears_the_bench(
        self, with_cushion: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """A photo that is kept with one job does not stay for a job that has none."""
        qtbot.mouseClick(with_cushion.mix_side.columns()[0].keep, LEFT)
        settle()
        from swatchwright.acts.jobs import new_job

        with_cushion.desk.begin(lambda store: new_job(store, title="Chair"))
        settle()
        assert not with_cushion.mix_side.columns()
        assert with_cushion.photo_side.start.isVisible()
        first = with_cushion.desk.jobs[-1]
        with_cushion.desk.open_job(first.id)
        settle()
        assert with_cushion.photo_side.view.isVisible()
        assert with_cushion.mix_side.columns()[0].keep.isChecked()

    def test_it_is_in_the_store_at_once(
        self, mixed: Window, settle: Settle, qtbot: QtBot, tmp_path: Path
    ) -> None:
        """Another program sees the kept mix while the window is still open: a crash loses none."""
        qtbot.mouseClick(mixed.mix_side.columns()[0].keep, LEFT)
        settle()
        with open_jobs(tmp_path / "store" / "swatchwright.sqlite") as store:
            job = job_of(store, list_jobs(store)[0].id)
        assert job == mixed.desk.job


class TestPaints:
    """Paints of a file can be kept, and are used from then on."""

    def test_paints_of_a_file(
        self,
        window: Window,
        settle: Settle,
        qtbot: QtBot,
        again: Callable[[], Window],
        tmp_path: Path,
    ) -> None:
        """The offer stands where the file was opened; kept paints are there the next time."""
        path = tmp_path / "mine.csv"
        save_demo_shelf(path)
        lines = path.read_text(encoding="utf-8").replace("invented", "guessed").splitlines()
        path.write_text("\n".join(lines[:9]) + "\n", encoding="utf-8")
        assert not window.offer.isVisible()
        window.session.open_shelf(path)
        settle()
        assert window.offer.told.text() == words.opened_shelf(8, "mine.csv")
        qtbot.mouseClick(window.offer.take, LEFT)
        settle()
        assert not window.offer.isVisible()
        next_time = again()
        assert len(next_time.session.shelf.paints) == 8
        assert next_time.shelf_told.whole().startswith("8 paints of your shelf")

    def test_only_for_now(
        self, window: Window, settle: Settle, qtbot: QtBot, tmp_path: Path
    ) -> None:
        """Declined, the paints are in use until the kept ones are asked for again."""
        path = tmp_path / "mine.csv"
        save_demo_shelf(path)
        lines = path.read_text(encoding="utf-8").splitlines()
        path.write_text("\n".join(lines[:9]) + "\n", encoding="utf-8")
        window.session.open_shelf(path)
        settle()
        qtbot.mouseClick(window.offer.leave, LEFT)
        assert not window.offer.isVisible()
        assert len(window.session.shelf.paints) == 8
        window.keeping.use_kept()
        settle()
        assert window.session.shelf.name == demo_shelf().name

    def test_the_demonstration_is_said(self, window: Window, settle: Settle) -> None:
        """With an empty store the invented paints are used, and named as what they are."""
        settle()
        assert window.shelf_told.whole().endswith(demo_shelf().name)


class TestDropping:
    """Files dropped on the window are taken for what they are."""

    def test_a_job(self, mixed: Window, settle: Settle, qtbot: QtBot, tmp_path: Path) -> None:
        """A dropped job is brought in and laid on the bench."""
        from swatchwright.acts.job_files import export_job

        qtbot.mouseClick(mixed.mix_side.columns()[0].keep, LEFT)
        settle()
        job = mixed.desk.job
        assert job is not None
        path = tmp_path / "box.swatchjob"
        mixed.desk.ask(lambda store: export_job(store, job.id, path), lambda _: None)
        settle()
        drop(mixed, path)
        settle()
        assert len(mixed.desk.jobs) == 2
        assert mixed.desk.job is not None
        assert mixed.desk.job.id != job.id
        assert mixed.page("brief").isVisible()

    def test_not_a_job(self, window: Window, settle: Settle, tmp_path: Path) -> None:
        """A file that only has the name of one is refused in plain words."""
        path = tmp_path / "box.swatchjob"
        path.write_bytes(b"PK\x03\x04 not really")
        drop(window, path)
        settle()
        assert window.trouble.isVisible()
        assert "box.swatchjob" in window.trouble.text()
        assert window.desk.job is None
