"""The piece on its photo: opened, marked, found, repainted, and kept with the job."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path

from PySide6.QtCore import QObject, QTimer, Signal
from PySide6.QtGui import QImage

from swatchwright.acts.colours import open_photo
from swatchwright.acts.job_bench import laid_photo
from swatchwright.acts.job_photos import hash_of
from swatchwright.acts.jobs import Changes, Store
from swatchwright.acts.repaint import (
    SHOWN,
    Marked,
    Ready,
    Stroke,
    ready_to_repaint,
    recoloured,
    repainted_whole,
)
from swatchwright.acts.repaint_file import SampleBox, save_picture
from swatchwright.acts.repaint_job import (
    REPAINT_PART,
    Choice,
    RepaintPlan,
    choice_for,
    choices_of,
    colours_of_zones,
    keep_repaint,
    piece_photo,
    sample_colours,
)
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.piece_keeper import Keeper
from swatchwright.desktop.widgets.shelf_bits import image_of
from swatchwright.desktop.words import repaint as words
from swatchwright.desktop.workers import Job
from swatchwright.paint.layers import Stack
from swatchwright.photo.image import Photo
from swatchwright.shelf.jobs import KeptPhoto
from swatchwright.values import Lab, Rect

__all__ = ["RepaintDesk", "Shown"]

_FINISH = "finish"
_Opened = tuple[Photo, str, QImage]


@dataclass(frozen=True, slots=True, eq=False)
class Shown:
    """The piece in its new colours: the picture, the colour of each zone, and what to mind."""

    image: QImage
    colours: dict[str, Lab]
    finished: bool
    notes: tuple[str, ...]


class RepaintDesk(QObject):
    """Goes between the job, the workshop and the page of the piece on a photo.

    Signals
    -------
    changed()
        Another photo, other strokes or other choices.
    pictured(QImage)
        There is a picture of the photo to draw on; a null one where there is no photo.
    shown(object)
        The piece was repainted (`Shown`), or there is nothing to repaint (None).
    saved(Path)
        The picture was saved.
    """

    changed = Signal()
    pictured = Signal(QImage)
    shown = Signal(object)
    saved = Signal(object)

    def __init__(self, session: Session, desk: Desk) -> None:
        super().__init__(session)
        self._session, self._desk = session, desk
        self.photo: Photo | None = None
        self._tried: RepaintPlan | None = None
        self.ready: Ready | None = None
        self.choices: tuple[Choice, ...] = ()
        self._path: Path | None = None
        self._hash, self._image = "", QImage()
        self._found: tuple[Marked, Rect | None] | None = None
        self._what = words.DID_OPEN
        self.in_view = False
        self._keeper: Keeper[RepaintPlan] = Keeper(
            self,
            desk,
            read=lambda: desk.part(REPAINT_PART, RepaintPlan),
            act=self._keeping,
            show=self._take_up,
        )
        # Mixes and marks change in bursts, and whoever tells of it has enough to do.
        self.soon = QTimer(self)
        self.soon.setSingleShot(True)
        self.soon.setInterval(0)
        self.soon.timeout.connect(self.refresh)
        for signal in (session.recipes_changed, session.pick_changed, session.shelf_changed):
            signal.connect(self._refresh_soon)
        desk.job_changed.connect(self._refresh_soon)

    def begin(self) -> None:
        """Show what is kept with the job on the bench."""
        self._keeper.begin()
        self.refresh()

    @property
    def plan(self) -> RepaintPlan | None:
        """The photo, strokes and choices; None while there is no photo."""
        return self._tried or self._keeper.value

    @property
    def tried_beside(self) -> str:
        """The title of the client's job that a sample is only tried beside; empty for none."""
        job = self._desk.job
        return job.title if self._tried is not None and job is not None else ""

    # --- the photo -------------------------------------------------------------------------------

    def open(self, path: Path, sample: SampleBox | None = None) -> None:
        """Open a photo of the piece, with strokes already on it where they are known."""

        def work(_: Job) -> _Opened:
            photo = open_photo(path)
            return photo, hash_of(path), image_of(photo.preview(SHOWN))

        def done(opened: _Opened) -> None:
            photo = opened[0]
            plan = RepaintPlan(opened[1], Marked((photo.width, photo.height)))
            if sample is not None:
                plan = replace(plan, marked=sample.strokes, grey=sample.grey)
                plan = replace(plan, reflectance=sample.reflectance, colours=self._for_sample())
            self._lay(opened, path)
            job = self._desk.job
            if sample is not None and job is not None and job.client:
                # A picture of ours is no part of a client's job.
                self._try(plan, words.DID_OPEN)
                return
            self._tried = None
            self._set(plan, words.DID_OPEN)

        self._session.workshop.start("repaint-photo", words.READING, work, done)

    def _for_sample(self) -> tuple[tuple[str, str], ...]:
        """Give colours for the sample box: the kept mixes, or what there is to see it in."""
        self.choices = self._choices()
        return sample_colours(self.choices)

    def _lay(self, opened: _Opened, path: Path | None) -> None:
        self.photo, self._hash, self._image = opened
        self._path, self.ready, self._found = path, None, None
        self.pictured.emit(self._image)

    def _take_up(self, plan: RepaintPlan | None) -> None:
        """Show what is kept, or brought back by undo."""
        self._tried = None
        if plan is None:
            self._session.workshop.stop("repaint-find")
            self.photo, self._hash, self.ready, self._found = None, "", None, None
            self.pictured.emit(QImage())
        elif plan.photo != self._hash:
            kept = piece_photo(self._desk.job, plan)
            if kept is not None:
                self._fetch(kept)
        self._follow()

    def _fetch(self, kept: KeptPhoto) -> None:
        def act(store: Store) -> tuple[_Opened, Path | None]:
            laid = laid_photo(store, kept)
            return (laid.photo, kept.hash, image_of(laid.photo.preview(SHOWN))), laid.path

        def done(answer: tuple[_Opened, Path | None]) -> None:
            if self.plan is not None and self.plan.photo == kept.hash:
                self._lay(*answer)
                self._follow()

        self._desk.ask(act, done)

    # --- what is set -----------------------------------------------------------------------------

    def _set(self, plan: RepaintPlan, what: str) -> None:
        """Take what was set, and keep it at once: each stroke can be undone by itself."""
        if self._tried is not None:
            self._try(plan, what)
            return
        self._what = what
        self._keeper.set(plan)
        self._keeper.keep()
        self._follow()

    def _try(self, plan: RepaintPlan, what: str) -> None:
        """Take what was set on a sample that is only tried: it can be undone, and is not kept."""
        desk, before, photo, path = self._desk, self._tried, self.photo, self._path
        # Made off the interface thread when it was opened: to make it again would hold the hand up.
        image = self._image
        job = None if desk.job is None else desk.job.id
        if photo is None:
            return

        def show(tried: RepaintPlan | None) -> None:
            # Another job, or a photo of her own, has ended the trying.
            there = None if desk.job is None else desk.job.id
            if there != job or self._keeper.value is not None:
                return
            if tried is None:
                self._take_up(None)
                return
            if self._hash != tried.photo:
                self._lay((photo, tried.photo, image), path)
            self._tried = tried
            self._follow()

        show(plan)
        self._session.history.add(what, lambda: show(before), lambda: show(plan), lasting=True)

    def _keeping(self, plan: RepaintPlan) -> Callable[[Store, str], Changes]:
        what = self._what
        same = plan.photo == self._hash
        path, photo = (self._path, self.photo) if same else (None, None)
        return lambda store, id_: keep_repaint(store, id_, plan, what, path=path, photo=photo)

    def add(self, stroke: Stroke) -> None:
        """Add a stroke."""
        plan = self.plan
        if plan is not None:
            marked = replace(plan.marked, strokes=(*plan.marked.strokes, stroke))
            self._set(replace(plan, marked=marked), words.did_stroke(stroke.zone))

    def clear(self) -> None:
        """Take all strokes away."""
        plan = self.plan
        if plan is not None and plan.marked.strokes:
            self._set(replace(plan, marked=replace(plan.marked, strokes=())), words.DID_CLEAR)

    def mark_grey(self, rect: Rect) -> None:
        """Mark the grey card."""
        if self.plan is not None:
            self._set(replace(self.plan, grey=rect), words.DID_GREY)

    def on_marks(self, rect: Rect) -> Rect:
        """Give a box of the photo in pixels of the size that the marks are for."""
        plan, photo = self.plan, self.photo
        if plan is None or photo is None:
            return rect
        across = plan.marked.size[0] / photo.width
        down = plan.marked.size[1] / photo.height
        x, y = round(rect.x * across), round(rect.y * down)
        return Rect(x, y, max(1, round(rect.width * across)), max(1, round(rect.height * down)))

    def choose(self, zone: str, key: str) -> None:
        """See a zone in another colour."""
        if self.plan is not None:
            colours = tuple((dict(self.plan.colours) | {zone: key}).items())
            self._set(replace(self.plan, colours=colours), words.did_colour(zone))

    def set_finished(self, *, finished: bool) -> None:
        """See the piece with its finish or without."""
        if self.plan is not None and self.plan.finished != finished:
            self._set(replace(self.plan, finished=finished), words.DID_FINISH)

    # --- finding and painting --------------------------------------------------------------------

    def _refresh_soon(self) -> None:
        if self.in_view:
            self.soon.start()

    def refresh(self) -> None:
        """Offer the mixes that there are now, and repaint."""
        self.soon.stop()
        self.choices = self._choices()
        self.changed.emit()
        self._recolour()

    def _choices(self) -> tuple[Choice, ...]:
        session = self._session
        return choices_of(self._desk.job, session.recipes, session.wanted, session.shelf)

    def chosen(self) -> dict[str, Choice]:
        """Give the choice of each zone that is marked and not left as it is."""
        zones = () if self.plan is None else self.plan.marked.zones
        found = {zone: choice_for(zone, self.choices, self.plan) for zone in zones}
        return {zone: choice for zone, choice in found.items() if choice is not None}

    def stack(self) -> Stack | None:
        """Give what lies over the mixes of the job; None for nothing."""
        stack = self._desk.part(_FINISH, Stack)
        return stack if stack is not None and stack.layers else None

    def _follow(self) -> None:
        """Find the surfaces anew where strokes or grey are others, and repaint."""
        self.changed.emit()
        plan, photo = self.plan, self.photo
        if plan is None or photo is None or plan.photo != self._hash:
            self.shown.emit(None)
            return
        asked = (plan.marked, plan.grey)
        if not plan.marked.zones:
            self._session.workshop.stop("repaint-find")
            self.ready, self._found = None, asked
            self.shown.emit(None)
        elif asked == self._found and self.ready is not None:
            self._recolour()
        else:
            self._find(plan, photo)

    def _find(self, plan: RepaintPlan, photo: Photo) -> None:
        def work(job: Job) -> tuple[Ready, QImage]:
            ready = ready_to_repaint(
                photo,
                plan.marked,
                grey=plan.grey_on(photo),
                reflectance=plan.reflectance,
                stopped=job.stopped,
            )
            return ready, image_of(ready.before)

        def done(answer: tuple[Ready, QImage]) -> None:
            self.ready, self._found = answer[0], (plan.marked, plan.grey)
            self.pictured.emit(answer[1])
            self._recolour()

        self._session.workshop.stop("repaint-colour")
        self._session.workshop.start("repaint-find", words.FINDING, work, done)

    def _recolour(self) -> None:
        ready, plan = self.ready, self.plan
        if ready is None or plan is None or self._session.workshop.doing("repaint-find"):
            return
        colours_now = self._colours(plan)
        finished = plan.finished and self.stack() is not None

        def work(job: Job) -> Shown:
            colours = colours_now()
            done = recoloured(ready, colours, stopped=job.stopped)
            return Shown(image_of(done.picture), colours, finished, done.notes)

        self._session.workshop.start("repaint-colour", words.PAINTING, work, self.shown.emit)

    def _colours(self, plan: RepaintPlan) -> Callable[[], dict[str, Lab]]:
        """Give what reckons the colours of the zones as they are chosen now."""
        chosen, shelf = self.chosen(), self._session.shelf
        stack = self.stack() if plan.finished else None
        return lambda: colours_of_zones(chosen, shelf, stack)

    def save(self, path: Path) -> None:
        """Save the picture in the size of the photo."""
        ready, plan = self.ready, self.plan
        if ready is None or plan is None:
            return
        colours_now = self._colours(plan)

        def work(job: Job) -> Path:
            return save_picture(repainted_whole(ready, colours_now(), stopped=job.stopped), path)

        self._session.workshop.start("repaint-save", words.SAVING, work, self.saved.emit)
