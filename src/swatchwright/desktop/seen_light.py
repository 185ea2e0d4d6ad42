"""The light that pages are seen in: the room's until another is chosen; kept with the job."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QObject, QTimer, Signal

from swatchwright.acts.jobs import keep_document
from swatchwright.acts.seen_in import SEEN_IN_PART, SeenIn, room_of
from swatchwright.colour.spectrum import Light
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.widgets.piece_keeper import keep_behind

__all__ = ["SeenLight"]

_SETTLED = 800


class SeenLight(QObject):
    """Knows in which light the pages of the finish and of the piece are seen.

    Without a job a choice holds until there is one, and is kept with it then.

    Signals
    -------
    changed()
        Another light is chosen, kept or named.
    """

    changed = Signal()

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self._desk = desk
        self._job = None if desk.job is None else desk.job.id
        self._seen = desk.part(SEEN_IN_PART, SeenIn) or SeenIn()
        self._kept, self._sent = self._seen, 0
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.setInterval(_SETTLED)
        self._soon.timeout.connect(self.keep)
        desk.job_changed.connect(self._follow)
        desk.failed.connect(self._lost)

    @classmethod
    def of(cls, desk: Desk) -> SeenLight:
        """Give the one of a desk, made when it is first asked for."""
        found = desk.findChild(cls)
        return found if isinstance(found, cls) else cls(desk)

    @property
    def room(self) -> Light | None:
        """The light of the room, where the job names one."""
        return room_of(self._desk.job)

    @property
    def finish(self) -> Light:
        """The light of the page of the finish."""
        return self._seen.finish or self.room or Light.D65

    @property
    def piece(self) -> Light:
        """The light of the page of the piece."""
        return self._seen.piece or self.room or Light.D65

    def choose(self, *, finish: Light | None = None, piece: Light | None = None) -> None:
        """Choose a light by hand for one of the pages; it is kept once the hand rests."""
        seen = self._seen
        if finish is not None:
            seen = replace(seen, finish=self._apart(finish))
        if piece is not None:
            seen = replace(seen, piece=self._apart(piece))
        if seen != self._seen:
            self._seen = seen
            self._soon.start()

    def _apart(self, light: Light) -> Light | None:
        """Give a light that was chosen; None for that of the room, which goes by the job."""
        return None if light is (self.room or Light.D65) else light

    def keep(self) -> None:
        """Keep with the job what was chosen, if that is not kept yet."""
        self._soon.stop()
        job, seen = self._desk.job, self._seen
        if job is None or seen == self._kept:
            return
        self._kept, self._sent = seen, self._sent + 1
        id_ = job.id
        self._desk.edit(
            lambda store: keep_document(store, id_, SEEN_IN_PART, seen),
            lambda _: self._arrived(),
            kind=f"Desk.keep_part {SEEN_IN_PART}",
        )

    def _arrived(self) -> None:
        self._sent = max(0, self._sent - 1)

    def _lost(self) -> None:
        self._sent = 0

    def _follow(self) -> None:
        """Take up what is kept, unless something newer is on its way to be."""
        here = None if self._desk.job is None else self._desk.job.id
        before, self._job = self._job, here
        kept = self._desk.part(SEEN_IN_PART, SeenIn)
        if before is not None and here != before and self._seen != self._kept:
            seen = self._seen
            keep_behind(
                self._desk, before, lambda store, id_: keep_document(store, id_, SEEN_IN_PART, seen)
            )
        if before is None and here is not None and kept is None and self._seen != SeenIn():
            # A job is begun with what was chosen before it.
            self._kept = SeenIn()
            self.keep()
        elif here != before or not (self._sent or self._soon.isActive()):
            self._soon.stop()
            self._seen = self._kept = kept or SeenIn()
        self.changed.emit()
