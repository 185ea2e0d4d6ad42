"""A photo opened over a job that has mixes: whose it is is asked, and said on every page."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt

from swatchwright.acts.jobs import change_job, job_of, open_jobs
from swatchwright.acts.samples import sample_photos
from swatchwright.desktop.window import Window

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton


class TestAnotherPhoto:
    """A photo opened over a job that has mixes."""

    def test_it_is_asked_whose_it_is(
        self, with_cushion: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """Another job may be begun with it: what is kept then leaves the first job as it was."""
        window = with_cushion
        window.keeping.keep(1)
        settle()
        first = window.desk.job
        assert first is not None
        window.open_sample(sample_photos()[2])
        settle()
        assert window.photo_offer.isVisible()
        qtbot.mouseClick(window.photo_offer.take, LEFT)
        settle()
        assert (window.desk.job, window.session.recipes is None) == (None, False)
        window.keeping.keep(1)
        settle()
        second = window.desk.job
        assert second is not None
        assert second.id != first.id
        assert len(window.desk.jobs) == 2
        with_store = open_jobs()
        assert job_of(with_store, first.id).recipes == first.recipes
        with_store.close()

    def test_it_may_belong_to_the_job(
        self, with_cushion: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """Where it belongs to the job, the offer goes and the job stays."""
        window = with_cushion
        window.keeping.keep(1)
        settle()
        window.open_sample(sample_photos()[2])
        settle()
        qtbot.mouseClick(window.photo_offer.leave, LEFT)
        assert not window.photo_offer.isVisible()
        assert window.desk.job is not None

    def test_nothing_is_asked_before_a_mix_is_kept(self, with_cushion: Window) -> None:
        """Without a job there is nothing to mistake."""
        with_cushion.open_sample(sample_photos()[2])
        assert not with_cushion.photo_offer.isVisible()

    def test_whose_job_it_is_stands_on_every_page(
        self, with_cushion: Window, settle: Settle
    ) -> None:
        """The piece and the client stand at the top and in the title of the window."""
        window = with_cushion
        window.keeping.keep(1)
        settle()
        window.desk.edit_job(
            lambda store, id_: change_job(
                store, id_, title="Blanket box", client="Harbour workshop"
            )
        )
        settle()
        assert window.job_told.whole() == "Blanket box, Harbour workshop"
        assert window.windowTitle().startswith("Blanket box, Harbour workshop")
