"""The samples of the job on the bench: kept, learnt from, and what they ask for."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime

from PySide6.QtCore import QObject, Signal

from swatchwright.acts.jobs import Changes, Store
from swatchwright.acts.mixes_in_use import WHOLE_PIECE
from swatchwright.acts.sample import (
    SAMPLE_VOLUME,
    Advice,
    NextMix,
    advice_on,
    learnt_shelf,
    stripes_beside,
)
from swatchwright.acts.sample_judged import Judged
from swatchwright.acts.sample_learnt import (
    Taught,
    begun_anew,
    knows,
    taken_back,
    taught_by,
    would_teach,
)
from swatchwright.acts.sample_lessons import put_as_taught
from swatchwright.acts.sample_marks import SampleShot
from swatchwright.acts.sample_rounds import (
    SAMPLES_PART,
    SampleLoop,
    learn_from_pick,
    new_loop,
    take_round,
)
from swatchwright.acts.sample_take import zone_of_samples
from swatchwright.acts.sample_taken import Taken
from swatchwright.acts.sample_teach import keep_samples
from swatchwright.acts.sample_tried import taken_for
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.keeping import Keeping
from swatchwright.desktop.sample_keeping import keep_sample_for
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.piece_keeper import Keeper
from swatchwright.desktop.words import sample as words
from swatchwright.errors import MendableError
from swatchwright.mixing.fan import Neighbour
from swatchwright.shelf.shelf import Shelf
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
        self._session, self._desk = session, desk
        self.advice: Advice | None = None
        self.trouble: MendableError | None = None
        self.reckoning = False
        self.would: Taught | None = None
        self.stripes: tuple[NextMix, ...] = ()
        self.taught: Taught | None = None
        self.pot: float | None = None
        self.tub: float | None = None
        self._asked: tuple[object, ...] | None = None
        self._known: tuple[SampleLoop, Shelf, bool] | None = None
        self._job: str | None = None
        self._laid: SampleLoop | None = None
        self._keeper: Keeper[SampleLoop] = Keeper(
            self,
            desk,
            read=lambda: desk.part(SAMPLES_PART, SampleLoop),
            act=_keeping,
            show=lambda _: self._from_job(),
        )
        session.fan_picked.connect(self._picked)
        session.shelf_changed.connect(self._advise)
        session.recipes_changed.connect(self._advise_otherwise)
        self._keeper.begin()

    @classmethod
    def of(cls, session: Session, desk: Desk) -> SampleDesk:
        """Give the one of a session, made when it is first asked for."""
        there = session.findChild(cls)
        return cls(session, desk) if there is None else there

    def _from_job(self) -> None:
        """Take up what an undo or another job brought.

        What an undo takes back is taken from the paints as well. To another job they are taught
        when its shelf is taken, by whoever knows which that is.
        """
        job = None if self._desk.job is None else self._desk.job.id
        same, self._job = job == self._job, job
        before, self._laid = self._laid, self.loop
        here, there = (() if one is None else one.lessons for one in (before, self.loop))
        if not same or here == there:
            self._advise()
            return
        self.taught = None
        self._use(put_as_taught(self._session.shelf, here, there))
        self._advise()

    def _use(self, shelf: Shelf) -> None:
        if shelf is not self._session.shelf:
            self._session.use_shelf(shelf)
            keeping = self._session.findChild(Keeping)
            if isinstance(keeping, Keeping):
                keeping.memory.note_now()

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
        try:
            self._set(act(self._loop_for(wanted)))
        except MendableError as error:
            self._session.workshop.failed.emit(error)

    def _loop_for(self, wanted: KnownColour) -> SampleLoop:
        """Give the samples so far; before any a new loop, which knows what others taught."""
        there = self.loop
        if there is not None and there.rounds:
            return there
        if there is None:
            return new_loop(wanted)
        return replace(new_loop(wanted), taught=there.taught, settled=there.settled)

    # --- the mix of a zone -----------------------------------------------------------------------

    @property
    def zone(self) -> str:
        """The zone of the piece that the samples are for."""
        keeping = self._session.findChild(Keeping)
        at = keeping.zone if isinstance(keeping, Keeping) else WHOLE_PIECE
        return at if self.loop is None else zone_of_samples(self._desk.job, self.loop, at)

    @property
    def taken(self) -> Taken | None:
        """From which sample the mix of the zone is; None where it is another."""
        return taken_for(self._desk.job, self.zone)

    def take(self, number: int, *, added: bool = False) -> None:
        """Make the mix of a sample, by its number from 1, the mix of the zone.

        `added` for the pot of the last one as it is after what it was said to need.
        """
        loop, keeping, advice = self.loop, self._session.findChild(Keeping), self.advice
        if loop is None or not isinstance(keeping, Keeping) or (added and advice is None):
            return
        self._keeper.keep()
        steps: Mixed = ()
        if added and advice is not None:
            steps = tuple((step.paint.id, step.ml) for step in advice.additions.steps)
        pot = None if advice is None else sum(ml for _, ml in advice.pot)
        keep_sample_for(keeping, loop, number, zone=self.zone, added=steps, pot=pot)

    def find_stripes(self, mixed: Mixed) -> None:
        """Find what to brush out beside a mix."""
        wanted, shelf = self.wanted(), self._session.shelf
        if wanted is None or not mixed:
            return
        loop = self._loop_for(wanted)

        def done(found: tuple[NextMix, ...]) -> None:
            self.stripes = found
            self.advised.emit()

        self._session.workshop.start(
            "stripes",
            words.REASONING,
            lambda _: stripes_beside(shelf, loop, mixed, volume=SAMPLE_VOLUME),
            done,
        )

    @property
    def known(self) -> bool:
        """Whether the paints on the bench know all that the samples say."""
        loop, shelf = self.loop, self._session.shelf
        if loop is None or not loop.rounds:
            return False
        # Asked many times over while a page is laid, and all paints are compared for it.
        if self._known is None or self._known[0] is not loop or self._known[1] is not shelf:
            self._known = loop, shelf, knows(shelf, loop)
        return self._known[2]

    def take_back(self) -> None:
        """Take the last sample back, and what was learnt from it."""
        loop, shelf = self.loop, self._session.shelf
        if loop is None or not loop.rounds:
            return
        if not loop.lessons:
            self._set(taken_back(shelf, loop)[1])
            return
        self._learn(loop, lambda: taken_back(shelf, loop))

    def begin_anew(self) -> None:
        """Forget all samples, as for another colour."""
        loop = self.loop
        if loop is not None:
            self._set(begun_anew(loop))

    def teach(self) -> None:
        """Let the paints on the bench be what the samples showed them to be; once."""
        loop, shelf = self.loop, self._session.shelf
        if loop is None or not loop.rounds or self.known:
            return
        self._learn(loop, lambda: learnt_shelf(shelf, loop))

    def _learn(self, loop: SampleLoop, act: Callable[[], tuple[Shelf, SampleLoop]]) -> None:
        """Keep what an act makes of the samples, and use the shelf that goes with it."""
        shelf = self._session.shelf

        def work(_: object) -> tuple[Shelf, SampleLoop, Taught | None]:
            learnt, kept = act()
            many = len(kept.rounds) == len(loop.rounds)
            return learnt, kept, taught_by(shelf, learnt, kept) if many else None

        def done(found: tuple[Shelf, SampleLoop, Taught | None]) -> None:
            if self.loop is not loop or self._session.shelf is not shelf:
                # Something else was done meanwhile.
                return
            self._set(found[1])
            self.taught = found[2]
            self._use(found[0])
            self.changed.emit()

        self._session.workshop.start("teach", words.REASONING, work, done)

    def set_pot(self, pot: float | None, tub: float | None) -> None:
        """Say how much of the mix is to be put right, and in how large a tub, ml."""
        if (pot, tub) != (self.pot, self.tub):
            self.pot, self.tub = pot, tub
            self._advise()

    def _set(self, loop: SampleLoop) -> None:
        self.taught = None
        self._keeper.set(loop)
        self._laid = loop
        self._keeper.keep()
        self.pot = self.tub = None
        self._advise()

    def _advise(self) -> None:
        """Find what the last sample asks for; what was found before stays until then."""
        loop, shelf, pot, tub = self.loop, self._session.shelf, self.pot, self.tub
        self._job = None if self._desk.job is None else self._desk.job.id
        without, most = self._session.unused, self._session.most_paints
        if loop is None or not loop.rounds:
            self.advice = self.trouble = self.would = self._asked = None
            self.reckoning = False
            self._session.workshop.stop(_ADVICE)
            self._tell()
            return
        asked = (loop.wanted, loop.rounds, loop.lessons, shelf, pot, tub, without, most)
        if self._asked is not None and _as_asked(asked, self._asked):
            self._tell()
            return
        self._asked, self.reckoning, self.trouble = asked, True, None
        last = None if self.advice is None else self.advice.last
        if last is not None and not any(one.same_as(last) for one in loop.rounds):
            self.advice = None
        self._tell()

        def work(_: object) -> tuple[Advice, Taught | None]:
            told = advice_on(*(shelf, loop), pot=pot, tub=tub, without=without, most_paints=most)[1]
            return told, would_teach(shelf, loop)

        def done(found: tuple[Advice, Taught | None]) -> None:
            self.advice, self.would = found
            self.reckoning = False
            self.advised.emit()

        self._session.workshop.start(_ADVICE, words.REASONING, work, done, self._failed)

    def _advise_otherwise(self) -> None:
        """Advise anew where mixes are found of another number of paints."""
        asked = self._asked
        if asked is not None and asked[-1] != self._session.most_paints:
            self._advise()

    def _tell(self) -> None:
        self.changed.emit()
        self.advised.emit()

    def _failed(self, what: object) -> None:
        self.reckoning, self._asked = False, None
        if isinstance(what, MendableError):
            self.advice, self.would, self.trouble = None, None, what
            self.advised.emit()
        else:
            self._session.workshop.failed.emit(what)


def _today() -> str:
    return datetime.now().astimezone().date().isoformat()


def _keeping(loop: SampleLoop) -> Callable[[Store, str], Changes]:
    return lambda store, id_: keep_samples(store, id_, loop)


def _as_asked(asked: tuple[object, ...], before: tuple[object, ...]) -> bool:
    """Tell whether just the same is asked; of shelves only the very same one counts."""
    return all(
        new is old if isinstance(new, Shelf) else new == old
        for new, old in zip(asked, before, strict=True)
    )
