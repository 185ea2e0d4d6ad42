"""Where the client wants a colour to go: a word and a dial, or a colour to go by; and the pot."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from swatchwright.acts.client_wish import Question, Wanted
from swatchwright.desktop.widgets.client_wants import ClientWants
from swatchwright.desktop.widgets.layer_choices import CalmNumber, WordCombo
from swatchwright.desktop.words import finish
from swatchwright.desktop.words import finish_ways as words
from swatchwright.desktop.words import pot as pot_words
from swatchwright.values import Lab

__all__ = ["FinishAsk"]

_SETTLED = 200
_POT, _LEFT = 250.0, 0.2


class FinishAsk(QWidget):
    """A sentence to fill in: the client wants it less vivid, by a third.

    Signals
    -------
    asked()
        Something else is asked, and the hand rests.
    """

    asked = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.wants = ClientWants(chosen=True)
        self.word, self.dial = self.wants.word, self.wants.dial
        self.left = WordCombo(finish.LEFT_WORDS)
        self.pot = CalmNumber(1.0, 20_000.0, 50.0, 0)
        self.room = CalmNumber(0.0, 25_000.0, 50.0, 0)
        self._wait = QTimer(self)
        self._wait.setSingleShot(True)
        self._wait.setInterval(_SETTLED)
        self._wait.timeout.connect(self.asked)
        self._set_up()
        self._lay_out()

    def _set_up(self) -> None:
        self.left.setAccessibleName(words.WIPE)
        self.left.show_value(_LEFT)
        pots = ((self.pot, pot_words.LEFT_IN_POT, _POT), (self.room, pot_words.HAS_ROOM, 0.0))
        for box, name, value in pots:
            box.setAccessibleName(name)
            box.setValue(value)
            box.setSuffix(" ml")
            box.valueChanged.connect(self._changed)
        self.room.setSpecialValueText(pot_words.ROOM_UNSAID)
        self.room.setToolTip(f"<p>{pot_words.ROOM_TIP}</p>")
        self.left.activated.connect(self._changed)
        self.wants.changed.connect(self._changed)

    def _lay_out(self) -> None:
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(6)
        asked = ((words.CLIENT_WANTS, self.wants),)
        pots = (
            (words.WIPE, self.left),
            (pot_words.LEFT_IN_POT, self.pot),
            (pot_words.HAS_ROOM, self.room),
        )
        for sentence in (asked, pots):
            row = QHBoxLayout()
            row.setSpacing(7)
            for before, widget in sentence:
                row.addSpacing(10 if row.count() else 0)
                label = QLabel(before)
                label.setBuddy(self.word if widget is self.wants else widget)
                row.addWidget(label)
                row.addWidget(widget)
            row.addStretch(1)
            rows.addLayout(row)

    def show_colours(self, wanted: Lab | None, cloth: Sequence[Lab]) -> None:
        """Offer the wanted colour and the colours of the cloth to go by."""
        if self.wants.show_colours(wanted, cloth):
            self._changed()

    def question(self) -> Question:
        """Give what is asked."""
        room = self.room.value() or None
        wanted = self.wants.wanted() or Wanted()
        return Question(wanted, self.left.value(), self.pot.value(), room)

    def _changed(self) -> None:
        """Ask anew once the hand rests."""
        self._wait.start()
