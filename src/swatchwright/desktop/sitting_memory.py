"""Writing down how a sitting is left, the photo of its cards above all, and laying it again.

It is remembered for each job by itself, so that a change of job takes nothing away either.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from PySide6.QtCore import QObject, QTimer, Signal
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QWidget

from swatchwright.acts.jobs import Store
from swatchwright.acts.last_sitting import (
    LastSitting,
    SittingPhoto,
    forget_sitting,
    last_sitting,
    photo_of_sitting,
    remember_sitting,
)
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.widgets.shelf_bits import image_of
from swatchwright.desktop.widgets.shelf_sitting import ShelfSitting
from swatchwright.errors import MendableError

__all__ = ["SittingMemory"]

_REST = 300
"""ms after which a change is written down."""
_PREVIEW = 1400


@dataclass(frozen=True, slots=True, eq=False)
class _Left:
    """How a sitting was left, None where that is not known; its photo, or why that is not there."""

    sitting: LastSitting | None
    photo: SittingPhoto | None = None
    image: QImage | None = None
    trouble: MendableError | None = None


class SittingMemory(QObject):
    """Goes between the sitting on the page, whose job is on the bench, and what is written down.

    It is to hear of another job before the sitting does: what is marked is written down first.

    Parameters
    ----------
    desk
        Whose job it is.
    sitting
        The sitting.
    in_view
        Tells whether the page shows it.
    page
        The page it is on.

    Signals
    -------
    came_back(LastSitting)
        What was written down is there again.
    """

    came_back = Signal(object)

    def __init__(
        self, desk: Desk, sitting: ShelfSitting, in_view: Callable[[], bool], page: QWidget
    ) -> None:
        super().__init__(page)
        self._desk, self._sitting, self._in_view, self._page = desk, sitting, in_view, page
        self._job = None if desk.job is None else desk.job.id
        self._written: LastSitting | None = None
        self._lost: LastSitting | None = None
        self._taken_over: object = None
        self._fetching, self._begun, self._opened = True, True, False
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.setInterval(_REST)
        self._soon.timeout.connect(self.remember)
        desk.job_changed.connect(self._job_changed)
        desk.job_laid.connect(self._job_laid)

    def begin(self) -> None:
        """Lay the photo of the job on the bench again, and write down what changes from now on."""
        marker, sitting = self._sitting.reading.marker, self._sitting
        for signal in (
            *(marker.changed, marker.passed, marker.read, marker.refused),
            *(sitting.changed, sitting.stepped),
        ):
            signal.connect(self.note)
        self._fetch()

    # --- writing ---------------------------------------------------------------------------------

    def note(self) -> None:
        """Write down a moment later what has changed; at once where nobody sees it."""
        if self._page.isVisible():
            self._soon.start()
        else:
            self.remember()

    def remember(self) -> None:
        """Write the sitting down, if it is another than was written down last."""
        self._soon.stop()
        if self._fetching:
            return
        now, job = self._now(), self._job
        # A job may have been begun for it that is not on the bench yet.
        if now == self._written and (job is not None or now is None):
            return
        self._written = now
        if now is None:
            self._desk.ask(lambda store: forget_sitting(store, job), lambda _: None)
        else:
            self._desk.ask(lambda store: remember_sitting(store, now), lambda _: None)

    def take_over(self) -> None:
        """Forget the sitting, whose paints are kept, until something of it is changed again."""
        self._taken_over, self._lost = self._told(), None
        self.remember()

    def _now(self) -> LastSitting | None:
        """Give the sitting as it is; None where there is nothing to come back to."""
        sitting, marker = self._sitting, self._sitting.reading.marker
        there, path, photo = sitting.sitting, marker.path, marker.photo
        if not there.ids or self._taken_over == self._told():
            return None
        place = LastSitting(self._job, step=sitting.step, in_view=self._in_view())
        if photo is None or path is None:
            if self._lost is not None:
                # It may lie on a card that is out for the moment.
                return replace(self._lost, step=place.step, in_view=place.in_view)
            return place if place.in_view else None
        return replace(
            place,
            path=str(path.absolute()),
            stamp=marker.stamp,
            size=(photo.width, photo.height),
            grey=marker.grey,
            reflectance=float(marker.card.currentData()),
            boxes=tuple(sorted(sitting.reading.marked().items())),
        )

    def _told(self) -> object:
        """Give what the paints are fitted from, and what is marked for it."""
        reading = self._sitting.reading
        read = [(card.key, card.colour) for card in self._sitting.sitting.cards if card.is_read]
        return read, reading.marker.path, reading.marker.grey, reading.marked()

    # --- another job -----------------------------------------------------------------------------

    def _job_changed(self) -> None:
        job = None if self._desk.job is None else self._desk.job.id
        if job == self._job:
            return
        self.remember()
        # What was begun without a job stays, if it is of the job that is begun now.
        self._begun, self._opened = self._job is None, False
        self._job, self._fetching = job, True
        if not self._begun:
            self._sitting.reading.marker.put_away()
        self._fetch()

    def _job_laid(self) -> None:
        self._opened = True

    # --- laying ----------------------------------------------------------------------------------

    def _fetch(self) -> None:
        job = self._job

        def done(left: _Left) -> None:
            if job == self._job:
                self._take_up(left)

        self._desk.ask(lambda store: _left(store, job), done)

    def _take_up(self, left: _Left) -> None:
        """Lay the photo of the job; where it has none, that of what was begun before it stays."""
        marker, begun = self._sitting.reading.marker, self._begun and not self._opened
        self._begun, self._taken_over, self._lost = False, None, None
        self._written = left.sitting
        if left.sitting is not None:
            self._lay(left, left.sitting)
        elif marker.photo is not None and not begun:
            marker.put_away()
        self._fetching = False
        if left.sitting is not None:
            self.came_back.emit(left.sitting)
        self.remember()

    def _lay(self, left: _Left, sitting: LastSitting) -> None:
        reading = self._sitting.reading
        if left.photo is not None and left.image is not None:
            reading.lay(left.photo, sitting.reflectance, left.image)
            return
        reading.marker.put_away()
        if left.trouble is not None:
            self._lost = sitting
            reading.refuse_photo(left.trouble)


def _left(store: Store, job: str | None) -> _Left:
    """Read how the sitting of a job was left, and open its photo."""
    sitting = last_sitting(store, job)
    try:
        photo = None if sitting is None else photo_of_sitting(sitting)
    except MendableError as error:
        return _Left(sitting, trouble=error)
    image = None if photo is None else image_of(photo.photo.preview(_PREVIEW))
    return _Left(sitting, photo, image)
