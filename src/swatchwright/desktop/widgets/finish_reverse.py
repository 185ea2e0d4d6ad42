"""The reverse side of a finish: what the client wants of the mix, and the ways to get there."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from swatchwright.acts.client_wish import (
    CLIENT_PART,
    ClientWish,
    ClientWishes,
    Question,
    Stands,
    Wanted,
)
from swatchwright.acts.jobs import Changes, Store
from swatchwright.acts.mixes_in_use import WHOLE_PIECE
from swatchwright.acts.pot_take import added_in, bare_aim, keep_pot, pot_after
from swatchwright.acts.recipes import colour_by_eye
from swatchwright.acts.recoat import PER_M2, to_paint_in
from swatchwright.acts.ways import Way, Ways, ways_to
from swatchwright.acts.wish import may_use
from swatchwright.colour.difference import delta_e_2000
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.keeping import Keeping
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.finish_ask import FinishAsk
from swatchwright.desktop.widgets.finish_mixes import FinishMix
from swatchwright.desktop.widgets.finish_ways import FinishWays
from swatchwright.desktop.words import finish as words
from swatchwright.desktop.words import finish_ways as way_words
from swatchwright.desktop.words import wished
from swatchwright.desktop.words.pot import already_there
from swatchwright.desktop.workers import Job
from swatchwright.errors import MendableError
from swatchwright.mixing.knock_back import WORTH
from swatchwright.paint.layers import Stack
from swatchwright.values import Lab

__all__ = ["FinishReverse"]


class FinishReverse(QWidget):
    """The question above, the ways below; they are found whenever it is in view.

    How far the colour has come is kept with the job, and where a way is taken, what the client
    wants.

    Signals
    -------
    taken(Way)
        The wash of a way is to be laid over the mix, or what it makes of the pot was kept.
    """

    taken = Signal(object)

    def __init__(self, session: Session, desk: Desk) -> None:
        super().__init__()
        self._session, self._desk = session, desk
        self._mix: FinishMix | None = None
        self._stack = Stack()
        self._asked: object = None
        self._answer: tuple[FinishMix, Question, Ways] | None = None
        self._kept_for: Lab | None = None
        self._shown: ClientWish | None = None
        self.ask, self.ways = FinishAsk(), FinishWays()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(self.ask)
        column.addWidget(self.ways, 1)
        self.ask.asked.connect(self._find)
        self.ask.stood.connect(self._stand)
        self.ways.taken.connect(self._take)
        self.ways.afresh.connect(self._find_afresh)
        session.shelf_changed.connect(self._find)
        session.wishes_changed.connect(self._find)
        session.colours_changed.connect(self._offer_colours)

    def show_mix(self, mix: FinishMix | None) -> None:
        """Ask of this mix from now on."""
        self._mix = mix
        wish = self.wish()
        self._offer_colours()
        if wish is not None and wish != self._shown:
            self.ask.wants.show_wanted(wish.wanted)
        if mix is not None and mix.wanted == self._kept_for:
            # The pot was kept for what the client wants: that is where it is to be from now on.
            self.ask.wants.show_wanted(Wanted(colour=mix.wanted))
            self._kept_for = None
        self._shown = wish
        self.ask.show_stands(None if mix is None else self._wishes().stands(mix.wanted))
        self._find()

    def show_stack(self, stack: Stack) -> None:
        """Reckon with these layers over the mix from now on."""
        self._stack = stack
        self._find()

    def showEvent(self, event: QShowEvent) -> None:
        """Answer what has come about meanwhile."""
        super().showEvent(event)
        self._find()

    def _offer_colours(self) -> None:
        found, mix = self._session.found, self._mix
        cloth = () if found is None else tuple(c.colour.lab for c in found.colours)
        wish = self.wish()
        aim = None if wish is None else wish.aim
        self.ask.show_colours(None if mix is None else mix.wanted, cloth, aim)

    # --- what the client wants now ---------------------------------------------------------------

    def _wishes(self) -> ClientWishes:
        return self._desk.part(CLIENT_PART, ClientWishes) or ClientWishes()

    def wish(self) -> ClientWish | None:
        """Give what the client wants now in place of what the mix was found for."""
        return None if self._mix is None else self._wishes().of(self._mix.wanted)

    def forget_wish(self) -> None:
        """Go by the colour again that was wanted first."""
        if self._mix is not None:
            self._keep(self._mix.wanted, None)

    def ask_again(self) -> None:
        """Ask for the colour that the client wants now, whatever word it was asked by."""
        wish = self.wish()
        if wish is not None:
            self.ask.wants.show_wanted(Wanted(colour=wish.aim))
            self._find()

    def _keep(self, first: Lab, wish: ClientWish | None) -> None:
        self._keep_all(self._wishes().but(first, wish))

    def _keep_all(self, wishes: ClientWishes) -> None:
        if wishes != self._wishes():
            self._desk.keep_part(CLIENT_PART, wishes if wishes != ClientWishes() else None)

    def _stand(self, stands: Stands) -> None:
        """Keep how far the colour has come."""
        if self._mix is not None:
            self._keep_all(self._wishes().standing(self._mix.wanted, stands))

    def _take(self, way: Way) -> None:
        if way.recoat is not None:
            if way.recoat.over.known:
                self._session.set_volume(way.recoat.volume)
            self._want(way.recoat.recipe.dry, wished.WISHED)
            return
        if way.additions is not None:
            self._keep_pot(way)
        elif self._answer is not None:
            mix, question, found = self._answer
            self._keep(mix.wanted, ClientWish(mix.wanted, question.wanted, found.aim))
        self.taken.emit(way)

    def _want(self, lab: Lab, origin: str) -> None:
        """Want another colour for the part that the mix is for, and show its mixes."""
        keeping = self._keeping()
        if keeping is not None:
            keeping.stand_at(self._zone())
        self._session.want(lab, origin)
        self._desk.page_wanted.emit("colour")

    def _find_afresh(self) -> None:
        """Have mixes found for what the client wants: nothing is mixed yet."""
        mix, wanted = self._mix, self.ask.question().wanted
        if mix is not None:
            aim = wanted.aim(mix.wanted)
            self._keep(mix.wanted, ClientWish(mix.wanted, wanted, aim))
            self._want(aim, wished.wished(wanted))

    def _keep_pot(self, way: Way) -> None:
        """Keep what is then in the pot as the mix of the part, for what the client wants."""
        if self._answer is None:
            return
        mix, question, found = self._answer
        shelf, volume, most = self._session.shelf, self._session.volume, self._session.most_paints
        mixed = pot_after(mix.parts, question.pot, added_in(way.additions))
        aim = bare_aim(shelf, mixed, way, found.aim)
        wanted = colour_by_eye(aim, wished.wished(question.wanted))
        wishes, zone, keeping = self._wishes(), self._zone(), self._keeping()
        used = None if keeping is None else keeping.shelf.worked_with()

        def act(store: Store, id_: str) -> Changes:
            return keep_pot(
                *(store, id_),
                shelf=shelf,
                mixed=mixed,
                wanted=wanted,
                first=mix.wanted,
                wishes=wishes,
                zone=zone,
                volume=volume,
                most_paints=most,
                used=used,
            )

        self._kept_for = aim
        self._desk.edit_job(act, lambda _: self._session.want_known(wanted))

    def _keeping(self) -> Keeping | None:
        """Give what keeps mixes with the job."""
        found = self._session.findChild(Keeping)
        return found if isinstance(found, Keeping) else None

    def _zone(self) -> str:
        """Give the zone that a mix for another colour is kept for: that of the mix looked at."""
        keeping, mix = self._keeping(), self._mix
        if keeping is None:
            return WHOLE_PIECE
        return mix.zone if mix is not None and mix.zone in keeping.zones() else keeping.zone

    # --- finding ---------------------------------------------------------------------------------

    def _find(self) -> None:
        """Find the ways for what is asked, if they are in view and not found yet."""
        mix, shelf, question = self._mix, self._session.shelf, self.ask.question()
        only, stack, job = may_use(shelf, self._session.wishes), self._stack, self._desk.job
        asked = (mix, id(shelf), only, question, stack, self._sized())
        if mix is None or not self.isVisible() or asked == self._asked:
            return
        self._asked = asked
        self._session.asked = (mix.wanted, question)
        if question.stands is None:
            self._session.workshop.stop("finish-ways")
            self._answer = None
            self.ways.show_trouble(way_words.SAY_STANDS)
            return
        if question.stands is Stands.UNMIXED:
            self._session.workshop.stop("finish-ways")
            self._show_afresh(mix, question.wanted)
            return

        def work(_: Job) -> Ways:
            return ways_to(
                shelf,
                mix.parts,
                question.wanted,
                left=question.left,
                pot=question.pot,
                tub=question.tub,
                only=only,
                over=stack,
                stands=question.stands,
                surface=to_paint_in(job, mix.zone) if question.stands is Stands.PAINTED else PER_M2,
            )

        def done(found: Ways) -> None:
            self._answer = (mix, question, found)
            self.ways.show_ways(found, shelf.notes)

        start = self._session.workshop.start
        start("finish-ways", words.FINDING_WAYS, work, done, self._show_trouble)

    def _show_afresh(self, mix: FinishMix, wanted: Wanted) -> None:
        """Show the colour that is to be mixed in place of the one wanted so far."""
        self._answer = None
        try:
            aim = wanted.aim(mix.wanted)
        except MendableError as error:
            self.ways.show_trouble(words.trouble(error))
            return
        off = float(delta_e_2000(mix.wanted.triple, aim.triple))
        if off < WORTH:
            self.ways.show_trouble(already_there(off))
        else:
            self.ways.show_afresh(mix.wanted, aim)

    def _sized(self) -> tuple[object, ...]:
        """Give all that tells what a full new coat would go on."""
        job = self._desk.job
        if job is None or self.ask.standing() is not Stands.PAINTED:
            return ()
        return (job.document("piece"), job.document("piece-form"), job.recipes)

    def _show_trouble(self, what: object) -> None:
        """Say here what cannot be; our own faults go to the bench."""
        self._asked = None
        if isinstance(what, MendableError):
            self.ways.show_trouble(words.trouble(what))
        else:
            self._session.workshop.failed.emit(what)
