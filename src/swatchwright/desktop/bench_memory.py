"""Writing down what lies on the bench as it changes, so that no crash takes it away."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from PySide6.QtCore import QObject, QTimer

from swatchwright.acts.file_stamp import stamp_of
from swatchwright.acts.last_bench import LastBench, remember_bench
from swatchwright.acts.sample_lessons import Lesson
from swatchwright.acts.shelf_used import UsedShelf
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.session import Session

__all__ = ["BenchMemory"]

_REST = 300
"""ms after which a change on the bench is written down."""


class BenchMemory(QObject):
    """Follows the bench; the shelf in use and the page in view are told to it.

    Parameters
    ----------
    session, desk
        The bench, and the job that is on it.
    zone
        Gives the zone that mixes are kept for; whoever knows it says when it is another (`note`).
    taught
        Gives what the paints on the bench have learnt since their shelf was taken.
    parent
        Whose child it is.
    """

    def __init__(
        self,
        session: Session,
        desk: Desk,
        zone: Callable[[], str],
        taught: Callable[[], tuple[Lesson, ...]],
        parent: QObject,
    ) -> None:
        super().__init__(parent)
        self._session, self._desk, self._zone = session, desk, zone
        self._taught = taught
        self.shelf, self.page = UsedShelf(), ""
        self._written: LastBench | None = None
        self._begun = False
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.setInterval(_REST)
        self._soon.timeout.connect(self.remember)

    def begin(self, left: LastBench | None) -> None:
        """Write down what changes from now on; this is what was written down last."""
        self._written, self._begun = left, True
        session = self._session
        for signal in (
            *(session.photo_changed, session.marks_changed, session.pick_changed),
            *(session.recipes_changed, session.wishes_changed, self._desk.job_changed),
            session.shelf_changed,
        ):
            signal.connect(self.note)
        self.note()

    def note(self) -> None:
        """Write down a moment later what may have changed; never before the last is read."""
        if self._begun:
            self._soon.start()

    def note_now(self) -> None:
        """Write down at once what goes with what was just kept, so that no moment parts them."""
        if self._begun:
            self.remember()

    def set_page(self, page: str) -> None:
        """Note which page is in view, by its key."""
        if page != self.page:
            self.page = page
            self.note()

    def set_shelf(self, shelf: UsedShelf) -> None:
        """Note which shelf is in use."""
        if shelf != self.shelf:
            self.shelf = shelf
            self.note()

    def remember(self) -> None:
        """Write the bench down, if it is another than was written down last."""
        self._soon.stop()
        bench, last = self._bench(), self._written
        if bench is None or (last is not None and bench == replace(last, stamp=None)):
            return
        self._written = bench
        path = Path(bench.path) if bench.path else None
        self._desk.ask(
            lambda store: remember_bench(store, replace(bench, stamp=stamp_of(path))),
            lambda _: None,
        )

    def _bench(self) -> LastBench | None:
        """Give the bench as it is; None while it is only half laid."""
        session, photo, job, last = (
            self._session,
            self._session.photo,
            self._desk.job,
            self._written,
        )
        if session.workshop.doing("photo"):
            return None
        bench = LastBench(
            job=None if job is None else job.id,
            path="" if photo is None or session.path is None else str(session.path.absolute()),
            kept="" if photo is None or session.kept is None else session.kept.hash,
            size=(0, 0) if photo is None else (photo.width, photo.height),
            marks=session.marks.kept(),
            wanted=session.wanted,
            volume=session.volume,
            most_paints=session.most_paints,
            zone=self._zone(),
            wishes=session.wishes,
            shelf=self.shelf,
            page=self.page,
            taught=self._taught(),
        )
        if not session.workshop.doing("colours"):
            return bench
        # What is wanted is known once the colours are found, which tells itself.
        same = last is not None and (last.path, last.marks) == (bench.path, bench.marks)
        if same and session.coming is None:
            return None
        return replace(bench, wanted=session.coming)

    def close(self) -> None:
        """Write down at once what was still to be."""
        if self._soon.isActive():
            self.remember()
