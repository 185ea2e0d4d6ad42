"""Wanting a kept colour once more, with the box it was read from and how much was mixed."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from swatchwright.acts import job_bench
from swatchwright.acts.job_bench import BenchPhoto
from swatchwright.desktop import words
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.marks import Marks
from swatchwright.desktop.session import Session
from swatchwright.shelf.jobs import Job, KeptPhoto, WantedColour
from swatchwright.shelf.jobs import Marks as KeptMarks
from swatchwright.values import KnownColour

__all__ = ["ColourAgain", "read_by"]

Lay = Callable[[BenchPhoto, Job | None, KnownColour | None], None]


class ColourAgain:
    """Brings a kept colour back to the bench.

    Parameters
    ----------
    session, desk
        The bench and the job.
    zone, stand_at
        Tells which zone mixes are kept for, and notes that it is another.
    lay
        Lays a photo of a job on the bench, with a colour that is wanted.
    """

    def __init__(
        self,
        session: Session,
        desk: Desk,
        *,
        zone: Callable[[], str],
        stand_at: Callable[[str], None],
        lay: Lay,
    ) -> None:
        self._session, self._desk = session, desk
        self._zone, self._stand_at, self._lay = zone, stand_at, lay

    def kept_for(self, zone: str) -> WantedColour | None:
        """Give the colour that is kept for a zone; None if none is."""
        return next((wanted for wanted in self._colours() if wanted.zone == zone), None)

    def nothing_new(self) -> bool:
        """Tell whether all that is wanted on the bench is kept for some zone."""
        coming = self._session.coming
        if coming is None:
            return self._session.photo is None
        return any(wanted.colour == coming for wanted in self._colours())

    def want(self, wanted: WantedColour) -> None:
        """Want a colour of the job as it was read and as much of it, for its zone: one undo."""
        session, job = self._session, self._desk.job
        photo = None if job is None else job_bench.photo_of_colour(job, wanted)
        here = self._kept_here()
        marks = session.marks
        if photo is not None and here == photo.hash:
            marks = self._as_read(photo)
        before = (self._zone(), session.marks, session.coming, session.volume)
        # A colour that was kept before amounts were kept with it leaves that of the bench.
        after = (wanted.zone, marks, wanted.colour, wanted.volume or session.volume)
        self._take(*after)
        if before[2] is not None and before[1:] != after[1:]:
            session.history.add(
                words.DID_WANT, lambda: self._take(*before), lambda: self._take(*after)
            )
        # A photo that the job does not have is not taken off the bench for another.
        free = session.photo is None or bool(here)
        if photo is not None and here != photo.hash and free:
            self._lay_photo(photo, wanted.colour)

    def marked(self, photo: KeptPhoto, colour: KnownColour | None) -> KeptPhoto:
        """Give a photo of the job, marked as a colour was read where it was read from this one."""
        job = self._desk.job
        for wanted in self._colours():
            there = None if job is None else job_bench.photo_of_colour(job, wanted)
            if wanted.colour == colour and there is not None and there.hash == photo.hash:
                return there
        return photo

    def _colours(self) -> tuple[WantedColour, ...]:
        job = self._desk.job
        return () if job is None else job.wanted

    def _take(self, zone: str, marks: Marks, colour: KnownColour | None, volume: float) -> None:
        self._stand_at(zone)
        self._session.take(marks, colour, volume)

    def _kept_here(self) -> str:
        """Give the SHA-256 of the photo on the bench; empty where the job does not have it."""
        session, job = self._session, self._desk.job
        photos = () if session.photo is None or job is None else job.photos
        kept = session.kept
        return next((p.hash for p in photos if kept is not None and p.hash == kept.hash), "")

    def _as_read(self, photo: KeptPhoto) -> Marks:
        """Give the marks on the bench, with the cloth and the distance of a kept photo."""
        laid, marks = self._session.photo, self._session.marks
        if laid is None:
            return marks
        sizes = (photo.width, photo.height), (laid.width, laid.height)
        kept = job_bench.scaled(photo.marks, *sizes)
        return replace(marks, cloth=kept.cloth, metre=kept.metre)

    def _lay_photo(self, photo: KeptPhoto, colour: KnownColour) -> None:
        """Lay the photo that a colour was read from, unless another is wanted by then."""
        job = self._desk.job

        def done(opened: BenchPhoto) -> None:
            if self._session.coming == colour:
                self._lay(opened, job, colour)

        self._desk.ask(lambda store: job_bench.laid_photo(store, photo), done)


def read_by(session: Session, colour: KnownColour) -> KeptMarks | None:
    """Give the marks by which a colour was read from the photo on the bench; None if it was not."""
    found, marks = session.found, session.read_with
    if found is None or marks is None or all(c.colour != colour for c in found.colours):
        return None
    return marks.kept()
