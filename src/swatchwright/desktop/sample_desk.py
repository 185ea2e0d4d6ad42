"""The samples of the job on the bench: kept, learnt from, and what they ask for."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime

from PySide6.QtCore import QObject, Signal

from swatchwright.acts.jobs import Changes, Store, keep_document
from swatchwright.acts.sample import (
    SAMPLE_VOLUME,
    Advice,
    NextMix,
    advice_on,
    learnt_shelf,
    stripes_beside,
)
from swatchwright.acts.sample_judged import Judged
from swatchwright.acts.sample_marks import SampleShot
from swatchwright.acts.sample_rounds import (
    SAMPLES_PART,
    SampleLoop,
    learn_from_pick,
    new_loop,
    take_round,
)
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.piece_keeper import Keeper
from swatchwright.desktop.words import sample as words
from swatchwright.errors import MendableError
from swatchwright.mixing.fan import Neighbour
from swatchwright.values import KnownColour

__all__ = ["Mixed", "SampleDesk"]

Mixed = tuple[tuple[str, float], ...]

_ADVICE = "sample-advice"


class SampleDesk(QObject):
    """Goes between the bench, the samples that are kept with the job, and the page.

    Signals
    -------
    changed()
        A sample was kept or taken back, or another job is on the bench.
    advised()
        What to do after the last sample was found, or is no longer known.
    """

    changed = Signal()
    advised = Signal()

    def __init__(self, session: Session, desk: Desk) -> None:
        super().__init__(session)
        self._session = session
        self.advice: Advice | None = None
        self.trouble: MendableError | None = None
        self.stripes: tuple[NextMix, ...] = ()
        self.pot: float | None = None
        self.tub: float | None = None
        self._keeper: Keeper[SampleLoop] = Keeper(
            self,
            desk,
            read=lambda: desk.part(SAMPLES_PART, SampleLoop),
            act=_keeping,
            show=lambda _: self._advise(),
        )
        session.fan_picked.connect(self._picked)
        session.shelf_changed.connect(self._advise)
        self._keeper.begin()

    @classmethod
    def of(cls, session: Session, desk: Desk) -> SampleDesk:
        """Give the one of a session, made when it is first asked for."""
        there = session.findChild(cls)
        return cls(session, desk) if there is None else there

    @property
    def loop(self) -> SampleLoop | None:
        """The samples; None where there are none yet."""
        return self._keeper.value

    def wanted(self) -> KnownColour | None:
        """Give the colour that the samples are for: the loop's, or the one wanted on the bench."""
        loop = self.loop
        if loop is not None and loop.rounds:
            return KnownColour(loop.wanted, loop.covariance, "")
        return self._session.wanted

    def keep(self, mixed: Mixed, judged: Judged, shot: SampleShot | None = None) -> None:
        """Keep a sample with its photo, and find what to add.

        Stripes of one photo are one sitting: the best of them is put right.
        """
        beside = self.beside(shot)
        if not beside and self.advice is not None:
            # What was to be brushed beside this one may be looked at next.
            self.stripes = self.advice.beside
        self._try(
            lambda loop: take_round(
                self._session.shelf, loop, mixed, judged, day=_today(), beside=beside, shot=shot
            )
        )

    def beside(self, shot: SampleShot | None) -> bool:
        """Tell whether a photo is that of the last sample: then it is another stripe of it."""
        loop = self.loop
        last = None if loop is None or not loop.rounds else loop.rounds[-1].shot
        return shot is not None and last is not None and shot.photo == last.photo

    def _picked(self, picked: Neighbour) -> None:
        """Learn from a mix that was picked from a fan."""
        self._try(lambda loop: learn_from_pick(self._session.shelf, loop, picked, day=_today()))

    def _try(self, act: Callable[[SampleLoop], SampleLoop]) -> None:
        wanted = self.wanted()
        if wanted is None:
            return
        there = self.loop
        loop = there if there is not None and there.rounds else new_loop(wanted)
        try:
            self._set(act(loop))
        except MendableError as error:
            self._session.workshop.failed.emit(error)

    def find_stripes(self, mixed: Mixed) -> None:
        """Find what to brush out beside a mix."""
        wanted, shelf, there = self.wanted(), self._session.shelf, self.loop
        if wanted is None or not mixed:
            return
        loop = there if there is not None and there.rounds else new_loop(wanted)

        def done(found: tuple[NextMix, ...]) -> None:
            self.stripes = found
            self.advised.emit()

        self._session.workshop.start(
            "stripes",
            words.REASONING,
            lambda _: stripes_beside(shelf, loop, mixed, volume=SAMPLE_VOLUME),
            done,
        )

    def take_back(self) -> None:
        """Take the last sample back, and what was learnt from it."""
        loop = self.loop
        if loop is not None and loop.rounds:
            self._set(replace(loop, rounds=loop.rounds[:-1]))

    def begin_anew(self) -> None:
        """Forget all samples, as for another colour."""
        loop = self.loop
        if loop is not None:
            self._set(replace(loop, rounds=()))

    def teach(self) -> None:
        """Let the paints on the bench be what the samples showed them to be."""
        loop, shelf = self.loop, self._session.shelf
        if loop is None or not loop.rounds:
            return

        def done(found: tuple[object, SampleLoop]) -> None:
            learnt, kept = found
            self._keeper.set(kept)
            self._keeper.keep()
            self._session.use_shelf(learnt)  # type: ignore[arg-type]
            self.changed.emit()

        self._session.workshop.start(
            "teach", words.REASONING, lambda _: learnt_shelf(shelf, loop), done
        )

    def set_pot(self, pot: float | None, tub: float | None) -> None:
        """Say how much of the mix is to be put right, and in how large a tub, ml."""
        if (pot, tub) != (self.pot, self.tub):
            self.pot, self.tub = pot, tub
            self._advise()

    def _set(self, loop: SampleLoop) -> None:
        self._keeper.set(loop)
        self._keeper.keep()
        self.pot = self.tub = None
        self._advise()

    def _advise(self) -> None:
        """Find what the last sample asks for."""
        loop, shelf, pot, tub = self.loop, self._session.shelf, self.pot, self.tub
        self.advice = self.trouble = None
        self.changed.emit()
        self.advised.emit()
        if loop is None or not loop.rounds:
            self._session.workshop.stop(_ADVICE)
            return
        without = self._session.unused

        def done(found: tuple[SampleLoop, Advice]) -> None:
            self.advice = found[1]
            self.advised.emit()

        self._session.workshop.start(
            _ADVICE,
            words.REASONING,
            lambda _: advice_on(shelf, loop, pot=pot, tub=tub, without=without),
            done,
            self._failed,
        )

    def _failed(self, what: object) -> None:
        if isinstance(what, MendableError):
            self.trouble = what
            self.advised.emit()
        else:
            self._session.workshop.failed.emit(what)


def _today() -> str:
    return datetime.now().astimezone().date().isoformat()


def _keeping(loop: SampleLoop) -> Callable[[Store, str], Changes]:
    return lambda store, id_: keep_document(store, id_, SAMPLES_PART, loop)
