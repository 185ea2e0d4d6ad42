"""What lay on the bench when the program was killed lies there again at the next start."""

from __future__ import annotations

import os
import shutil
import sys
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt

from house.tree import run
from swatchwright.acts.batches import WHOLE_PIECE
from swatchwright.acts.compare import CompareView
from swatchwright.acts.jobs import job_of, list_jobs, open_jobs
from swatchwright.acts.samples import sample_of_a_sample
from swatchwright.desktop.pages.compare_page import ComparePage
from swatchwright.desktop.pages.sample_page import SamplePage
from swatchwright.desktop.widgets.photo_view import Mark
from swatchwright.desktop.window import Window
from swatchwright.desktop.words import sample as sample_words
from swatchwright.mixing.wishes import Wishes
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.store.paint_rows import paint_bytes
from window.killed_bench import CLIENT, HALF, KEPT, MARKED, SAMPLED, TAUGHT, VOLUME

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.acts.samples import SamplePhoto

    Settle = Callable[[], None]

SCRIPT = Path(__file__).with_name("killed_bench.py")
PATIENCE = 60_000


@pytest.fixture
def photo(tmp_path: Path, cushion: SamplePhoto) -> Path:
    """Give a photo of her own."""
    return Path(shutil.copy(cushion.path, tmp_path / "settee.jpg"))


@pytest.fixture
def killed(photo: Path, tmp_path: Path) -> Callable[[str], None]:
    """Give a function that works at a window of its own, which is killed."""

    def work(what: str) -> None:
        folders = os.pathsep.join(path for path in sys.path if path)
        done = run(
            *(sys.executable, SCRIPT, what, photo),
            QT_QPA_PLATFORM="offscreen",
            SWATCHWRIGHT_HOME=str(tmp_path / "store"),
            PYTHONPATH=folders,
        )
        assert done.stdout == "killed now", done.stderr
        assert done.returncode != 0

    return work


class TestKilled:
    """With no chance to say good-bye."""

    def test_before_anything_is_kept(
        self,
        killed: Callable[[str], None],
        opened: Callable[[], Window],
        photo: Path,
        cushion: SamplePhoto,
    ) -> None:
        """The photo, its marks, the wanted colour, the amount and how many paints are there."""
        killed(MARKED)
        window = opened()
        assert window.desk.job is None
        assert window.session.path == photo
        assert window.session.marks.grey == cushion.grey
        assert window.session.marks.cloth == cushion.cloth
        assert window.photo_side.strip.blocks()[1].isChecked()
        assert window.session.volume == window.mix_side.volume.value() == VOLUME
        assert window.session.most_paints == 2
        assert window.mix_side.columns()

    def test_with_a_mix_kept_and_a_field_left(
        self, killed: Callable[[str], None], opened: Callable[[], Window], photo: Path
    ) -> None:
        """The job with its mix is on the bench, and the field that was left last is in it."""
        killed(KEPT)
        window = opened()
        job = window.desk.job
        assert job is not None
        assert job.client == CLIENT
        assert job.chosen(WHOLE_PIECE) is not None
        assert window.session.path == photo
        assert window.mix_side.columns()[1].keep.isChecked()
        assert window.session.volume == VOLUME

    def test_with_a_sample_in_its_photo(
        self, killed: Callable[[str], None], opened: Callable[[], Window], qtbot: QtBot
    ) -> None:
        """The photo of the sample, its marks, the difference and what to add are there again."""
        killed(SAMPLED)
        window = opened()
        window.show_page("sample")
        page = window.page("sample")
        assert isinstance(page, SamplePage)
        qtbot.waitUntil(
            lambda: bool(page.photo_side.marks) and page.samples.advice is not None,
            timeout=PATIENCE,
        )
        qtbot.waitUntil(
            window.at_rest,
            timeout=PATIENCE,
        )
        found, side, advice = sample_of_a_sample(), page.photo_side, page.samples.advice
        assert found is not None
        assert advice is not None
        marks = {Mark.GREY: found.grey, Mark.CLOTH: found.cloth, Mark.SAMPLE: found.sample}
        assert side.marks == marks
        assert side.view.isVisible()
        assert page.judged is not None
        assert page.told.field.colours() == (page.judged.cloth, page.judged.sample)
        assert not page.told.ask.isEnabled()
        assert set(sample_words.fresh_lines(advice)) <= set(page.next.lines)
        assert page.mixed.mixed() == advice.last.mixed

    def test_as_soon_as_the_paints_were_taught(
        self,
        killed: Callable[[str], None],
        opened: Callable[[], Window],
        photo: Path,
        qtbot: QtBot,
    ) -> None:
        """The paints are taught to the last digit, and what was taken stands first on Colour."""
        killed(TAUGHT)
        window = opened()
        paints = [paint_bytes(paint) for paint in window.session.shelf.paints]
        assert b"\n".join(paints) == photo.with_suffix(".paints").read_bytes()
        assert paints != [paint_bytes(paint) for paint in demo_shelf().paints]
        window.show_page("sample")
        page = window.page("sample")
        assert isinstance(page, SamplePage)
        qtbot.waitUntil(lambda: page.samples.advice is not None, timeout=PATIENCE)
        qtbot.waitUntil(window.at_rest, timeout=PATIENCE)
        assert page.samples.known
        assert not page.teach.isEnabled()
        hers = window.mix_side.hers
        assert hers is not None
        assert hers.taken is not None
        assert hers.taken.taken.added
        assert hers.keep.isChecked()

    def test_while_colours_are_found(
        self, killed: Callable[[str], None], opened: Callable[[], Window], cushion: SamplePhoto
    ) -> None:
        """A mark whose colours were not found yet is there, and they are found now."""
        killed(HALF)
        window = opened()
        assert window.session.marks.grey == cushion.grey
        assert window.session.marks.cloth is None
        assert window.session.found is not None
        # Before the cloth is marked no colour is wanted.
        assert window.session.wanted is None


class TestLeft:
    """Closed in the usual way."""

    def test_a_typed_colour_and_a_wish(
        self, window: Window, settle: Settle, opened: Callable[[], Window]
    ) -> None:
        """Without a photo, the wanted colour and what is asked of all mixes come back."""
        settle()
        window.session.type_colour("46, 34, 24")
        window.wishes.wish(Wishes(without=frozenset({"soft-black"})))
        settle()
        window.close()
        again = opened()
        assert again.session.wanted == window.session.wanted
        assert again.session.wishes == window.session.wishes
        assert again.session.photo is None
        assert again.mix_side.columns()

    def test_a_photo_that_has_gone(
        self,
        window: Window,
        settle: Settle,
        opened: Callable[[], Window],
        photo: Path,
        cushion: SamplePhoto,
    ) -> None:
        """That it has gone is said, and the colour it gave is still wanted."""
        settle()
        window.open(photo)
        settle()
        window.session.set_cloth(cushion.cloth)
        settle()
        wanted = window.session.wanted
        window.close()
        photo.unlink()
        again = opened()
        assert again.trouble.isVisible()
        assert photo.name in again.trouble.text()
        assert again.session.photo is None
        assert again.session.wanted == wanted

    def test_another_photo_in_its_place(
        self,
        window: Window,
        settle: Settle,
        opened: Callable[[], Window],
        photo: Path,
    ) -> None:
        """Marks of one photo are not laid on another that has its name."""
        settle()
        window.open(photo)
        settle()
        window.close()
        photo.write_bytes(photo.read_bytes() + b"\0")
        again = opened()
        assert again.session.photo is None
        assert photo.name in again.trouble.text()

    def test_a_job_put_away_stays_away(
        self, window: Window, settle: Settle, opened: Callable[[], Window], qtbot: QtBot
    ) -> None:
        """With the job off the bench, the colour stays wanted and the job is not laid again."""
        settle()
        window.session.type_colour("46, 34, 24")
        settle()
        qtbot.mouseClick(window.mix_side.columns()[0].keep, Qt.MouseButton.LeftButton)
        settle()
        window.desk.put_away()
        settle()
        window.close()
        again = opened()
        assert again.desk.job is None
        assert again.session.wanted is not None

    @pytest.mark.parametrize("text", ["", "{", '{"volume": -1}', '{"marks": 3}', "[1]"])
    def test_a_spoilt_memory(self, opened: Callable[[], Window], tmp_path: Path, text: str) -> None:
        """A memory that cannot be read is an empty bench."""
        (tmp_path / "store").mkdir()
        (tmp_path / "store" / "last-bench.json").write_text(text, encoding="utf-8")
        window = opened()
        assert window.session.photo is None
        assert window.session.wanted is None
        assert not window.trouble.isVisible()

    def test_what_rests_on_a_page_is_kept(
        self, with_cushion: Window, settle: Settle, tmp_path: Path, qtbot: QtBot
    ) -> None:
        """Closed before a page has kept what was just set on it, that is kept all the same."""
        qtbot.mouseClick(with_cushion.mix_side.columns()[0].keep, Qt.MouseButton.LeftButton)
        settle()
        with_cushion.show_page("compare")
        settle()
        page = with_cushion.page("compare")
        assert isinstance(page, ComparePage)
        qtbot.mouseClick(page.bar.figures, Qt.MouseButton.LeftButton)
        shown = page.view
        with_cushion.close()
        with open_jobs(tmp_path / "store" / "swatchwright.sqlite") as store:
            document = job_of(store, list_jobs(store)[0].id).document("compare")
        assert document is not None
        assert document.read(CompareView) == shown
