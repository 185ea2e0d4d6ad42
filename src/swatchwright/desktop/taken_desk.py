"""The mix that was taken from a sample, followed for the pages that lay mixes side by side."""

from __future__ import annotations

from PySide6.QtCore import QObject, Signal

from swatchwright.acts.jobs import Store
from swatchwright.acts.mixes_in_use import WHOLE_PIECE
from swatchwright.acts.sample_rounds import SAMPLES_PART
from swatchwright.acts.taken_mix import TakenMix, taken_mix
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.keeping import Keeping
from swatchwright.desktop.session import Session

__all__ = ["TakenDesk"]


class TakenDesk(QObject):
    """Knows the mix that the job has taken from a sample for the colour that is wanted now.

    What was found for that colour does not matter to it: it stays through every search, comes back
    with its job and with its colour, and goes when another mix is kept in its place or its sample
    is taken back.

    Signals
    -------
    changed()
        Another one is there, or none, or it is for another amount.
    """

    changed = Signal()

    def __init__(self, session: Session, desk: Desk) -> None:
        super().__init__(session)
        self._session, self._desk = session, desk
        self.mix: TakenMix | None = None
        self._of: tuple[object, ...] = ()
        self._volume = session.volume
        self._asked: object = None
        for signal in (desk.job_changed, session.pick_changed, session.colours_changed):
            signal.connect(self._follow)
        session.recipes_changed.connect(self._follow_volume)
        keeping = session.findChild(Keeping)
        if isinstance(keeping, Keeping):
            keeping.changed.connect(self._follow)
        self._follow()

    @classmethod
    def of(cls, session: Session, desk: Desk) -> TakenDesk:
        """Give the one of a session, made when it is first asked for."""
        there = session.findChild(cls)
        return cls(session, desk) if there is None else there

    def _follow(self) -> None:
        """Ask anew where another mix may have been taken, or is meant."""
        job, wanted, zone = self._desk.job, self._session.wanted, self._zone()
        samples = None if job is None else job.document(SAMPLES_PART)
        if job is None or wanted is None or samples is None:
            self._asked = None
            self._show(None)
            return
        asked = (job.id, job.recipes, samples, wanted.lab, zone)
        if asked == self._asked:
            return
        self._asked = asked
        lab, volume = wanted.lab, self._session.volume
        if self._of != (job.id, lab):
            # That of another job or colour is not shown in place of what is on its way.
            self._show(None)
        self._of = job.id, lab

        def work(store: Store) -> tuple[TakenMix | None]:
            return (taken_mix(store, job, lab, zone=zone, volume=volume),)

        def done(answer: tuple[TakenMix | None]) -> None:
            if self._asked == asked:
                self._volume = volume
                self._show(answer[0])
                self._follow_volume()

        self._desk.ask(work, done)

    def _zone(self) -> str:
        keeping = self._session.findChild(Keeping)
        return keeping.zone if isinstance(keeping, Keeping) else WHOLE_PIECE

    def _follow_volume(self) -> None:
        """Give what to measure out for another amount."""
        mix, volume = self.mix, self._session.volume
        if mix is not None and volume != self._volume:
            self._volume = volume
            self._show(mix.for_volume(volume))

    def _show(self, mix: TakenMix | None) -> None:
        if mix is not self.mix:
            self.mix = mix
            self.changed.emit()
