"""Where the client wants a colour to go, and how far it has come: mixed, in the pot, or painted."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QLabel,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.client_wish import Question, Stands, Wanted
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.client_wants import ClientWants
from swatchwright.desktop.widgets.layer_choices import CalmNumber, WordCombo
from swatchwright.desktop.words import finish
from swatchwright.desktop.words import finish_ways as words
from swatchwright.desktop.words import pot as pot_words
from swatchwright.values import Lab

__all__ = ["FinishAsk"]

_SETTLED = 200
_BESIDE, _APART = 7, 14
"""Pixels between words and what is set, and before a sentence."""
_POT, _LEFT = 250.0, 0.2


class FinishAsk(QWidget):
    """A sentence to fill in: the client wants it less vivid, by a third, and it is painted already.

    What belongs to the one state only is asked in that state.

    Signals
    -------
    asked()
        Something else is asked, and the hand rests.
    stood(Stands)
        It was said by hand how far it has come.
    """

    asked = Signal()
    stood = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.wants = ClientWants(chosen=True)
        self.word, self.dial = self.wants.word, self.wants.dial
        self.stands = {stands: QPushButton(told) for stands, told in words.STANDS.items()}
        self._group = QButtonGroup(self)
        self._of_state: dict[Stands, BreakingRow] = {}
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
        told = QLabel(words.CLIENT_SAYS)
        told.setBuddy(self.word)
        first = BreakingRow(_BESIDE)
        first.put(told)
        first.put(self.wants)
        rows.addWidget(first)
        row = BreakingRow(0)
        for place, (stands, button) in enumerate(self.stands.items()):
            button.setCheckable(True)
            button.setToolTip(f"<p>{words.STANDS_TIP[stands]}</p>")
            self._group.addButton(button, place)
        row.put(*self.stands.values())
        self._group.idClicked.connect(self._stand)
        wash = ((words.WIPE, self.left, self.left),)
        pot = (
            (pot_words.LEFT_IN_POT, self.pot, self.pot),
            (pot_words.HAS_ROOM, self.room, self.room),
        )
        self._of_state = {Stands.PAINTED: _sentence(*wash), Stands.POT: _sentence(*pot)}
        for asked in self._of_state.values():
            row.put(asked, gap=_APART, stretches=True)
        rows.addWidget(row)
        self.show_stands(None)

    def show_stands(self, stands: Stands | None) -> None:
        """Show how far it has come; None asks for it."""
        self._group.setExclusive(False)
        for one, button in self.stands.items():
            button.setChecked(one is stands)
        self._group.setExclusive(True)
        for one, asked in self._of_state.items():
            asked.setVisible(one is stands)

    def standing(self) -> Stands | None:
        """Give how far it has come; None while that was not said."""
        return next((one for one, button in self.stands.items() if button.isChecked()), None)

    def _stand(self, place: int) -> None:
        stands = tuple(self.stands)[place]
        self.show_stands(stands)
        self.stood.emit(stands)
        self._changed()

    def show_colours(
        self, wanted: Lab | None, cloth: Sequence[Lab], aim: Lab | None = None
    ) -> None:
        """Offer the wanted colour, those of the cloth, and what was asked before, to go by."""
        if self.wants.show_colours(wanted, cloth, aim):
            self._changed()

    def question(self) -> Question:
        """Give what is asked."""
        room = self.room.value() or None
        wanted = self.wants.wanted() or Wanted()
        return Question(wanted, self.left.value(), self.pot.value(), room, self.standing())

    def _changed(self) -> None:
        """Ask anew once the hand rests."""
        self._wait.start()


def _sentence(*asked: tuple[str, QWidget, QWidget]) -> BreakingRow:
    """Lay out what is asked in a row: words, what to set, and what the words give the focus to."""
    row = BreakingRow(_BESIDE)
    for before, widget, buddy in asked:
        label = QLabel(before)
        label.setBuddy(buddy)
        row.put(label, widget, gap=10)
    return row
