"""The reverse side of a finish: what the client wants of the mix, and the ways to get there."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from swatchwright.acts.ways import Ways, ways_to
from swatchwright.acts.wish import wishes_on
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.finish_ask import FinishAsk
from swatchwright.desktop.widgets.finish_mixes import FinishMix
from swatchwright.desktop.widgets.finish_ways import FinishWays
from swatchwright.desktop.words import finish as words
from swatchwright.desktop.workers import Job
from swatchwright.errors import MendableError

__all__ = ["FinishReverse"]


class FinishReverse(QWidget):
    """The question above, the ways below; they are found whenever it is in view.

    Signals
    -------
    taken(Way)
        The wash of a way is to be laid over the mix.
    """

    taken = Signal(object)

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self._mix: FinishMix | None = None
        self._answered: object = None
        self.ask, self.ways = FinishAsk(), FinishWays()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(self.ask)
        column.addWidget(self.ways, 1)
        self.ask.asked.connect(self._find)
        self.ways.taken.connect(self.taken)
        session.shelf_changed.connect(self._find)
        session.wishes_changed.connect(self._find)
        session.colours_changed.connect(self._offer_colours)

    def show_mix(self, mix: FinishMix | None) -> None:
        """Ask of this mix from now on."""
        self._mix = mix
        self._offer_colours()
        self._find()

    def showEvent(self, event: QShowEvent) -> None:
        """Answer what has come about meanwhile."""
        super().showEvent(event)
        self._find()

    def _offer_colours(self) -> None:
        found, mix = self._session.found, self._mix
        cloth = () if found is None else tuple(c.colour.lab for c in found.colours)
        self.ask.show_colours(None if mix is None else mix.wanted, cloth)

    def _find(self) -> None:
        """Find the ways for what is asked, if they are in view and not found yet."""
        mix, shelf, question = self._mix, self._session.shelf, self.ask.question()
        only = self._may_use()
        asked = (mix, id(shelf), only, question)
        if mix is None or not self.isVisible() or asked == self._answered:
            return
        self._answered = asked

        def work(_: Job) -> Ways:
            return ways_to(
                shelf,
                mix.parts,
                question.wanted,
                left=question.left,
                pot=question.pot,
                tub=question.tub,
                only=only,
            )

        def done(found: Ways) -> None:
            self.ways.show_ways(found, shelf.notes)

        start = self._session.workshop.start
        start("finish-ways", words.FINDING_WAYS, work, done, self._show_trouble)

    def _may_use(self) -> tuple[str, ...]:
        """Give the ids of the paints that the painter wishes to use."""
        wishes = wishes_on(self._session.shelf, self._session.wishes)
        ids = (paint.id for paint in self._session.shelf.paints)
        return tuple(
            id_
            for id_ in ids
            if id_ not in wishes.without and (wishes.only is None or id_ in wishes.only)
        )

    def _show_trouble(self, what: object) -> None:
        """Say here what cannot be; our own faults go to the bench."""
        self._answered = None
        if isinstance(what, MendableError):
            self.ways.show_trouble(words.trouble(what))
        else:
            self._session.workshop.failed.emit(what)
