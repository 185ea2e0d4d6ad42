"""Laying the cards of the demonstration on the page of the shelf, and putting them away."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QObject, QTimer, Signal
from PySide6.QtWidgets import QWidget

from swatchwright.acts.demo_cards import DemoCards, demo_cards
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.our_sitting import OurSitting
from swatchwright.desktop.words import our_cards as words

__all__ = ["OurCards"]


class OurCards(QObject):
    """Makes a sitting with these cards when it is asked for, and drops it when it is done.

    One that is left before that comes back as it was: the button that leaves it is pressed by
    mistake as well.

    Parameters
    ----------
    session
        The bench.
    show
        Brings it into view over what the page shows.

    Signals
    -------
    put_away()
        It has been left.
    """

    put_away = Signal()

    def __init__(self, session: Session, show: Callable[[QWidget], None], parent: QObject) -> None:
        super().__init__(parent)
        self._session, self._show = session, show
        self.sitting: OurSitting | None = None
        self._left: OurSitting | None = None

    def show(self, still: Callable[[], bool]) -> None:
        """Show them, where they were installed, if they are still wanted when they are there."""

        def done(cards: DemoCards | None) -> None:
            if cards is not None and self.sitting is None and still():
                self._lay(cards)

        self._session.workshop.start("our-cards", words.LOOKING, lambda _: demo_cards(), done)

    def _lay(self, cards: DemoCards) -> None:
        sitting, self._left = self._left or self._made(cards), None

        def seen() -> None:
            if self.sitting is None:
                self.sitting = sitting
                self._show(sitting)
                sitting.choose.paints.setFocus()

        # To make it and to show it are steps of their own: each takes its time.
        QTimer.singleShot(0, self, seen)

    def _made(self, cards: DemoCards) -> OurSitting:
        made = OurSitting(self._session, cards)
        made.left.connect(self._leave)
        return made

    def _leave(self) -> None:
        sitting, self.sitting = self.sitting, None
        self.put_away.emit()
        if sitting is None:
            return
        if sitting.result.found is None:
            self._left = sitting
        else:
            sitting.reading.marker.put_away()
            sitting.deleteLater()
