"""Works out which mix each zone gets and how much of it, as bench, shelf and job change."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QObject, Signal

from swatchwright.acts.amounts import amounts_for
from swatchwright.acts.finish_zones import SeenZones, looks_of_zones
from swatchwright.acts.mixes_in_use import without_zone
from swatchwright.acts.piece import sized
from swatchwright.acts.piece_job import (
    AtHand,
    Beside,
    PieceForm,
    ZoneMix,
    at_hand,
    beside_in,
    mixes_by_zone,
    order_for_job,
)
from swatchwright.acts.plan_hours import plan_hours, plan_said_by
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.session import Session
from swatchwright.desktop.words import amounts as words
from swatchwright.errors import MendableError
from swatchwright.paint.layers import Stack
from swatchwright.piece.amounts import Amounts
from swatchwright.piece.order import AmountsOrder
from swatchwright.piece.part import Piece
from swatchwright.shelf.jobs import KeptRecipe
from swatchwright.shelf.shelf import Shelf

__all__ = ["PieceReckoner"]


class PieceReckoner(QObject):
    """Follows session and desk for the page of the piece.

    Parameters
    ----------
    session, desk
        What is on the bench, and the job it is for.
    what
        Gives the form and the piece as they are set; None before one is.
    parent
        The page.

    Signals
    -------
    mixes_changed(dict)
        Zones get other mixes, by their names.
    seen(SeenZones)
        It was reckoned how the zones look.
    gone(tuple)
        Mixes are kept for zones which the piece does not have, by their names.
    told()
        Other parts of the job say something else of what goes on.
    planned(object)
        So many hours of work the plan of the job comes to; None where it has none.
    reckoned(AmountsOrder, Amounts)
        The amounts were worked out.
    failed(MendableError)
        They cannot be.
    """

    mixes_changed = Signal(object)
    seen = Signal(object)
    gone = Signal(object)
    told = Signal()
    planned = Signal(object)
    reckoned = Signal(object, object)
    failed = Signal(object)

    def __init__(
        self,
        session: Session,
        desk: Desk,
        what: Callable[[], tuple[PieceForm | None, Piece | None]],
        parent: QObject,
    ) -> None:
        super().__init__(parent)
        self._session, self._desk, self._what = session, desk, what
        self._mixes: dict[str, ZoneMix] = {}
        self._known = AtHand()
        self.beside = Beside()
        self._asked: tuple[KeptRecipe, ...] | None = None
        self._looked: tuple[object, ...] = ()
        self._plan_by: tuple[object, ...] = ()
        session.recipes_changed.connect(self._look)
        session.shelf_changed.connect(self.reckon)
        desk.job_changed.connect(self._look)

    def at_hand(self) -> tuple[dict[str, ZoneMix], Shelf, AtHand]:
        """Give the mixes of zones, the shelf, and what the store knows of paints."""
        return dict(self._mixes), self._session.shelf, self._known

    def find_mixes(self) -> dict[str, ZoneMix]:
        """Find the mix of each zone of the piece as it is set now."""
        piece = self._what()[1]
        found = self._session.recipes
        first = found.recipes[0].recipe if found is not None and found.recipes else None
        self._mixes = {} if piece is None else mixes_by_zone(piece, self._kept(), first)
        self.gone.emit(self._gone(piece))
        self._see()
        return self._mixes

    def _gone(self, piece: Piece | None) -> tuple[str, ...]:
        """Name the zones of chosen mixes that the piece does not have."""
        likely = without_zone(self._kept(), self._mixes) if self._mixes else self._kept()
        if piece is None or not likely:
            return ()
        zones = [zone.zone for zone in sized(piece).areas.zones]
        return tuple(recipe.zone for recipe in without_zone(likely, zones))

    def _see(self) -> None:
        """Reckon how the zones look with what lies over them, once for each set of mixes."""
        mixes, shelf, known = self.at_hand()
        over = self.beside.stack or Stack()
        looked = (mixes, over, known.paints, id(shelf))
        if looked == self._looked:
            return
        self._looked = looked
        paints = {paint.id: paint for paint in (*known.paints, *shelf.paints)}
        all_paints = Shelf(shelf.name, tuple(paints.values()))

        def work(_: object) -> SeenZones:
            return looks_of_zones(all_paints, {z: mix.parts for z, mix in mixes.items()}, over)

        self._session.workshop.start("piece-seen", "", work, self.seen.emit)

    def _kept(self) -> tuple[KeptRecipe, ...]:
        return () if self._desk.job is None else self._desk.job.recipes

    def _look(self) -> None:
        self.ask_store()
        before = self._mixes
        if mixed := self.find_mixes() != before:
            self.mixes_changed.emit(self._mixes)
        if self.look_beside() or mixed:
            self.reckon()

    def look_beside(self) -> bool:
        """Look what other parts of the job say of what goes on, and tell whether that is new."""
        job, before = self._desk.job, self.beside
        self._ask_plan()
        self.beside = Beside() if job is None else beside_in(job)
        if self.beside == before:
            return False
        self.told.emit()
        return True

    def _ask_plan(self) -> None:
        """Work out how many hours of work the plan comes to, once for all that it goes by."""
        job, shelf = self._desk.job, self._session.shelf
        if job is None:
            self._plan_by = ()
            self._session.workshop.stop("piece-plan")
            self.planned.emit(None)
            return
        by = (*plan_said_by(job), id(shelf))
        if by == self._plan_by:
            return
        self._plan_by = by
        # What returns nothing is not told at all.
        self._session.workshop.start(
            "piece-plan",
            "",
            lambda _: plan_hours(job, shelf) or 0.0,
            lambda hours: self.planned.emit(hours or None),
        )

    def ask_store(self, *, anew: bool = False) -> None:
        """Ask for paints and stock, once for each set of recipes, or anew."""
        kept = self._kept()
        if kept != self._asked or anew:
            self._asked = kept
            self._desk.ask(lambda store: at_hand(store, kept), self._told)

    def _told(self, known: AtHand) -> None:
        self._known = known
        self.reckon()

    def reckon(self) -> None:
        """Work out the amounts, off the interface thread: tins are chosen among many."""
        self._see()
        form, piece = self._what()
        if form is None or piece is None:
            return
        mixes, shelf, known = self.at_hand()
        beside = self.beside

        def work(_: object) -> tuple[AmountsOrder, Amounts]:
            order = order_for_job(form, piece, mixes, shelf, known, beside=beside)
            return order, amounts_for(order)

        self._session.workshop.start(
            "amounts", words.RECKONING, work, lambda both: self.reckoned.emit(*both), self._trouble
        )

    def _trouble(self, what: object) -> None:
        if isinstance(what, MendableError):
            self.failed.emit(what)
        else:
            self._session.workshop.failed.emit(what)
