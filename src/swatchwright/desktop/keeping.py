"""Keeping what is on the bench with the job, and laying what is kept back on the bench."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QObject, Signal

from swatchwright.acts import job_bench
from swatchwright.acts.batches import WHOLE_PIECE
from swatchwright.acts.job_bench import BenchPhoto, Laid
from swatchwright.acts.jobs import Changes, Store
from swatchwright.acts.last_bench import LastBench, last_bench, photo_of_bench, remember_bench
from swatchwright.acts.last_job import last_job
from swatchwright.acts.sample_lessons import Lesson
from swatchwright.acts.sample_tried import lessons_in
from swatchwright.desktop.bench_memory import BenchMemory
from swatchwright.desktop.colour_again import ColourAgain, read_by
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.marks import Marks
from swatchwright.desktop.session import Session
from swatchwright.desktop.shelf_keeping import ShelfKeeping
from swatchwright.desktop.words import keeping as words
from swatchwright.errors import MendableError
from swatchwright.shelf import jobs
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import KnownColour

__all__ = ["Keeping"]


class Keeping(QObject):
    """Goes between the bench (the session) and the job (the desk).

    Signals
    -------
    changed()
        Another mix is the kept one, or mixes are kept for other zones.
    page_left(str)
        A bench is laid as it was left, with this page in view, by its key.
    """

    changed = Signal()
    page_left = Signal(str)

    def __init__(self, session: Session, desk: Desk) -> None:
        super().__init__(session)
        self.session, self.desk = session, desk
        self.zone = WHOLE_PIECE
        self._laid_colour: KnownColour | None = None
        self._left: LastBench | None = None
        self.memory = BenchMemory(session, desk, lambda: self.zone, self._taught, self)
        self.shelf = ShelfKeeping(session, desk, self.memory, self)
        self._again = ColourAgain(
            session,
            desk,
            zone=lambda: self.zone,
            stand_at=self._stand_at,
            lay=self._lay_photo,
        )
        desk.job_laid.connect(self._lay)
        desk.job_changed.connect(self._follow)
        desk.photo_wanted.connect(self._lay_again)
        desk.colour_wanted.connect(self._want_again)

    # --- a mix -----------------------------------------------------------------------------------

    def zones(self) -> tuple[str, ...]:
        """Give the zones of the piece that a mix can be kept for."""
        return job_bench.zones_of(self.desk.job)

    def set_zone(self, zone: str) -> None:
        """Say which zone mixes are kept for, and want the colour that is kept for it already.

        What is wanted now and kept for no zone stays: it may be what she is about to keep there.
        """
        kept = self._again.kept_for(zone)
        if kept is not None and zone != self.zone and self._again.nothing_new():
            self._again.want(kept)
        else:
            self._stand_at(zone)

    def stand_at(self, zone: str) -> None:
        """Say which zone mixes are kept for, whatever is kept for it already."""
        self._stand_at(zone)

    def _stand_at(self, zone: str) -> None:
        """Note which zone mixes are kept for."""
        if zone != self.zone:
            self.zone = zone
            self.memory.note()
            self.changed.emit()

    def kept_number(self) -> int | None:
        """Say which of the mixes on the bench is the kept one, 1 the first; None for none."""
        return job_bench.chosen_among(self.desk.job, self.session.recipes, self.zone)

    def kept_otherwise(self) -> bool:
        """Tell whether a mix is kept for the zone that is not among those on the bench."""
        job = self.desk.job
        return job is not None and job.chosen(self.zone) is not None and self.kept_number() is None

    def keep(self, number: int) -> None:
        """Keep the mixes on the bench with this one chosen, the photo and its marks."""
        session, zone, photo = self.session, self.zone, self.photo()
        found, most = session.recipes, session.most_paints
        if found is None:
            return
        read, shelf = read_by(session, found.wanted), self.shelf.worked_with()

        def act(store: Store, id_: str) -> Changes:
            return job_bench.keep_mix(
                *(store, id_, found),
                choose=number,
                zone=zone,
                photo=photo,
                read=read,
                most_paints=most,
                shelf=shelf,
            )

        self.desk.edit_job(act, lambda changes: self.kept_so(changes, photo))

    def photo(self) -> BenchPhoto | None:
        """Give the photo on the bench with its marks; None where there is none."""
        session = self.session
        if session.photo is None:
            return None
        return BenchPhoto(session.photo, session.marks.kept(), session.path, session.kept)

    def kept_so(self, changes: Changes, photo: BenchPhoto | None) -> None:
        """Note how the job keeps the photo, if it still is on the bench; say if it is not kept."""
        for sentence in changes.warnings:
            self.desk.failed.emit(MendableError(sentence, words.PHOTO_NOT_KEPT))
        job = self.desk.job
        if job is not None and photo is not None and self.session.photo is photo.photo:
            kept = {p.hash: p for p in job.photos}
            self.session.kept = kept.get(job_bench.settings_of(job).photo, self.session.kept)

    def _follow(self) -> None:
        """Keep to a zone that the job has."""
        zones = self.zones()
        if self.zone not in zones:
            self.zone = zones[0]
            self.memory.note()
        self.changed.emit()

    # --- a job -----------------------------------------------------------------------------------

    def _lay(self) -> None:
        """Lay the photo, the wanted colour and the amount of the job on the bench."""
        job = self.desk.job
        if job is None:
            return
        left, self._left = self._left, None
        if left is not None and left.job == job.id:
            self._lay_left(left)
            return
        laid = job_bench.settings_of(job)
        wanted = job_bench.wanted_to_lay(job)
        photo = job_bench.photo_of_colour(job, wanted) or job_bench.photo_to_lay(job)
        colour = None if wanted is None else wanted.colour
        self.shelf.take_again(laid.shelf, lessons_in(job))
        if job.recipes:
            self._set(laid)
        self._stand_at(laid.zone if laid.zone in self.zones() else self.zones()[0])
        if photo is not None:
            self.desk.ask(
                lambda store: job_bench.laid_photo(store, photo),
                lambda opened: self._lay_photo(opened, job, colour),
            )
        elif self.session.kept is not None or self.session.typed is self._laid_colour is not None:
            # What lies there belongs to another job.
            self.session.lay(None, Marks(), wanted=colour)
        elif colour is not None:
            self.session.want_known(colour)
        self._laid_colour = colour

    def _lay_again(self, photo: jobs.KeptPhoto) -> None:
        """Lay a photo of the job on the bench, with the colour that is wanted there now."""
        job, wanted = self.desk.job, self.session.wanted
        marked = self._again.marked(photo, wanted)
        if job is not None:
            self.desk.ask(
                lambda store: job_bench.laid_photo(store, marked),
                lambda opened: self._lay_photo(opened, job, wanted),
            )

    def _want_again(self, zone: str) -> None:
        """Want the colour of a zone of the job."""
        kept = self._again.kept_for(zone)
        if kept is not None:
            self._again.want(kept)

    def _set(self, laid: Laid) -> None:
        self.session.most_paints = laid.most_paints
        self.session.set_volume(laid.volume)

    def _lay_photo(
        self, opened: BenchPhoto, job: jobs.Job | None, colour: KnownColour | None
    ) -> None:
        if not self._here(job):
            return
        grey = opened.marks.grey[0] if opened.marks.grey else None
        kept = opened.marks
        marks = Marks(grey, kept.cloth, kept.reflectance, kept.references, kept.light, kept.metre)
        self.session.lay(opened.photo, marks, path=opened.path, kept=opened.kept, wanted=colour)

    def _here(self, job: jobs.Job | None) -> bool:
        """Tell whether this still is the job on the bench."""
        here = self.desk.job
        return (None if here is None else here.id) == (None if job is None else job.id)

    def begin(self) -> None:
        """Use the kept shelf, list the jobs, and lay the job that was on the bench last."""
        self.desk.refresh()
        self.use_kept()
        self.desk.ask(
            lambda store: (last_job(store), last_bench(store)), lambda last: self._reopen(*last)
        )

    def _reopen(self, job: str | None, left: LastBench | None) -> None:
        if self._untouched():
            self._left = left
            if job is not None:
                self.desk.open_job(job, self.desk.recall)
            elif left is not None:
                self._lay_left(left)
            if left is not None and left.page:
                left = self._turn_to(left)
        self.memory.begin(left)

    def _turn_to(self, left: LastBench) -> LastBench:
        """Have the page shown that was left; a page that ends the program is not opened again."""
        page, bare = left.page, replace(left, page="")

        def work(store: Store) -> bool:
            remember_bench(store, bare)
            return True

        self.desk.ask(work, lambda _: self.page_left.emit(page))
        return bare

    def _untouched(self) -> bool:
        """Tell whether nobody has begun anything since the window came up."""
        session = self.session
        empty = session.photo is None and session.wanted is None and self.desk.job is None
        return empty and not session.workshop.doing("photo")

    # --- the bench as it is left -----------------------------------------------------------------

    def _lay_left(self, left: LastBench) -> None:
        """Lay the bench as it was left, kept with the job or not."""
        session, job = self.session, self.desk.job
        session.most_paints = left.most_paints
        session.set_volume(left.volume)
        self.shelf.take_again(left.shelf, lessons_in(job) if left.taught is None else left.taught)
        self._stand_at(left.zone if left.zone in self.zones() else self.zones()[0])
        if job is None:
            session.take_wishes(left.wishes)
        self._laid_colour = left.wanted

        def work(store: Store) -> tuple[BenchPhoto | MendableError | None]:
            try:
                return (photo_of_bench(store, left, job),)
            except MendableError as error:
                return (error,)

        def done(answer: tuple[BenchPhoto | MendableError | None]) -> None:
            opened = answer[0]
            if isinstance(opened, BenchPhoto):
                self._lay_photo(opened, job, left.wanted)
                return
            if left.wanted is not None and self._here(job):
                session.want_known(left.wanted)
            # Last, as what is wanted anew takes a message away.
            if opened is not None:
                self.desk.failed.emit(opened)

        self.desk.ask(work, done)

    def _taught(self) -> tuple[Lesson, ...]:
        """Give what the paints on the bench have learnt."""
        return self.shelf.taught()

    # --- the shelf -------------------------------------------------------------------------------

    def use_kept(self) -> None:
        """Use the paints that are kept; those of the demonstration where none are."""
        self.shelf.use_kept()

    def use_for_now(self, shelf: Shelf) -> None:
        """Use the paints of the demonstration, without keeping them."""
        self.shelf.use_for_now(shelf)

    def keep_paints(self, source: str) -> None:
        """Keep the paints that are in use, which were read from a file of this name."""
        self.shelf.keep_paints(source)
