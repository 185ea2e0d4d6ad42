"""Why there are no mixes, where they would stand, and buttons to where that is mended."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from swatchwright.acts.wish import may_use
from swatchwright.desktop import words
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.shelf_bits import button, label
from swatchwright.desktop.words import wishes as wish_words
from swatchwright.mixing.wishes import Wishes

__all__ = ["MixesLacking"]

_GAP = 8


class MixesLacking(QWidget):
    """Says what the mixes wait for, or what makes them impossible.

    Signals
    -------
    shelf_wanted()
        The page of the shelf is to be shown.
    """

    shelf_wanted = Signal()

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self.told = label(name="quiet")
        self.to_shelf = button(wish_words.TO_SHELF, self.shelf_wanted.emit)
        self.no_wishes = button(wish_words.NONE, self._drop, tip=wish_words.NONE_TIP)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(_GAP)
        rows.addWidget(self.told)
        self._row = BreakingRow()
        self._row.put(self.to_shelf, self.no_wishes, gap=_GAP)
        rows.addWidget(self._row)
        session.workshop.busy.connect(self._show)
        session.recipes_changed.connect(self._show)
        session.wishes_changed.connect(self._show)
        session.pick_changed.connect(self._show)
        self._show()

    def _drop(self) -> None:
        self._session.wish(Wishes())

    def _show(self) -> None:
        told = self._why()
        impossible = bool(told)
        self.told.setText(told or self._waits())
        self._row.setVisible(impossible)
        self.no_wishes.setVisible(self._session.wishes != Wishes())

    def _waits(self) -> str:
        """Say what the mixes wait for."""
        looking = self._session.workshop.doing("mixes")
        return words.FINDING_MIXES if looking else words.WAIT_MIXES

    def _why(self) -> str:
        """Say why no mix is possible; empty where one may be."""
        session = self._session
        if session.wish_trouble is None:
            return ""
        if not may_use(session.shelf, session.wishes):
            return wish_words.NO_PAINT_USED
        return wish_words.none_possible(session.wish_trouble)
