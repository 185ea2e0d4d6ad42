"""Where the client wants a colour to go: a word and a dial, or a colour to go by; and the pot."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QSize, Qt, QTimer, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSlider, QVBoxLayout, QWidget

from swatchwright.acts.ways import Wanted
from swatchwright.desktop import words as common
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.widgets.fields import ChoiceField
from swatchwright.desktop.widgets.layer_choices import (
    CalmNumber,
    WordCombo,
    colour_chip,
)
from swatchwright.desktop.words import finish
from swatchwright.desktop.words import finish_ways as words
from swatchwright.language import say
from swatchwright.mixing.asked import Asked
from swatchwright.values import Lab

__all__ = ["FinishAsk", "Question"]

_SETTLED = 200
_A_THIRD, _POT, _LEFT = 33, 250.0, 0.2


@dataclass(frozen=True, slots=True)
class Question:
    """What is asked: where to go, how far a wash is wiped, what is in the pot and its tub, ml."""

    wanted: Wanted
    left: float
    pot: float
    tub: float | None


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
        self.word = ChoiceField()
        self.dial = QSlider(Qt.Orientation.Horizontal)
        self.dial_told = QLabel()
        self.left = WordCombo(finish.LEFT_WORDS)
        self.pot = CalmNumber(1.0, 20_000.0, 50.0, 0)
        self.tub = CalmNumber(0.0, 25_000.0, 50.0, 0)
        self._colours: tuple[tuple[str, Wanted, Lab], ...] = ()
        self._wait = QTimer(self)
        self._wait.setSingleShot(True)
        self._wait.setInterval(_SETTLED)
        self._wait.timeout.connect(self.asked)
        self._set_up()
        self._lay_out()
        self._changed()
        self._wait.stop()

    def _set_up(self) -> None:
        self.word.setIconSize(QSize(26, 16))
        self.word.setAccessibleName(words.CLIENT_WANTS)
        self._fill()
        self.dial.setRange(0, 100)
        self.dial.setValue(_A_THIRD)
        self.dial.setPageStep(10)
        self.dial.setAccessibleName(words.DIAL)
        self.dial.setFixedWidth(240)
        self.dial_told.setMinimumWidth(72)
        self.left.setAccessibleName(words.WIPE)
        self.left.show_value(_LEFT)
        for box, name, value in ((self.pot, words.POT, _POT), (self.tub, words.TUB, 0.0)):
            box.setAccessibleName(name)
            box.setValue(value)
            box.setSuffix(" ml")
            box.valueChanged.connect(self._changed)
        self.tub.setSpecialValueText(words.TUB_UNSAID)
        self.word.activated.connect(self._changed)
        self.left.activated.connect(self._changed)
        self.dial.valueChanged.connect(self._changed)

    def _lay_out(self) -> None:
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(6)
        asked = ((words.CLIENT_WANTS, self.word), ("", self.dial), ("", self.dial_told))
        pots = ((words.WIPE, self.left), (words.POT, self.pot), (words.TUB, self.tub))
        for sentence in (asked, pots):
            row = QHBoxLayout()
            row.setSpacing(7)
            for before, widget in sentence:
                row.addSpacing(10 if row.count() and before else 0)
                if before:
                    label = QLabel(before)
                    label.setBuddy(widget)
                    row.addWidget(label)
                row.addWidget(widget)
            row.addStretch(1)
            rows.addLayout(row)

    def show_colours(self, wanted: Lab | None, cloth: Sequence[Lab]) -> None:
        """Offer the wanted colour and the colours of the cloth to go by."""
        rows: list[tuple[str, Wanted, Lab]] = []
        if wanted is not None:
            rows.append((words.AS_GREY_AS_WANTED, Wanted(grey_as=wanted), wanted))
            rows.append((words.THE_WANTED, Wanted(colour=wanted), wanted))
        for number, lab in enumerate(cloth, start=1):
            rows.append((words.as_grey_as(number, lab), Wanted(grey_as=lab), lab))
        if tuple(rows) == self._colours:
            return
        was = self.word.currentText()
        self._colours = tuple(rows)
        self._fill()
        self.word.setCurrentIndex(max(0, self.word.findText(was)))
        self._changed()

    def _fill(self) -> None:
        self.word.clear()
        for asked in words.directions():
            self.word.addItem(say(asked.value), asked)
        if self._colours:
            self.word.insertSeparator(self.word.count())
        for told, wanted, lab in self._colours:
            self.word.addItem(colour_chip(screen_colour(lab)), told, wanted)

    def question(self) -> Question:
        """Give what is asked."""
        where = self.word.currentData()
        if not isinstance(where, Wanted):
            where = Wanted(asked=(Asked(where), self.dial.value() / 100))
        tub = self.tub.value() or None
        return Question(where, self.left.value(), self.pot.value(), tub)

    def _changed(self) -> None:
        """Ask anew once the hand rests."""
        by_dial = not isinstance(self.word.currentData(), Wanted)
        self.dial.setVisible(by_dial)
        self.dial_told.setText(common.dial_text(self.dial.value()) if by_dial else "")
        self._wait.start()
