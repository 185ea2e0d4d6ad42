"""How a client wants a colour: a word and a dial, or another colour to go by."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSlider, QWidget

from swatchwright.acts.client_wish import Wanted
from swatchwright.colour.difference import delta_e_2000
from swatchwright.desktop import words as common
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.widgets.fields import ChoiceField
from swatchwright.desktop.widgets.layer_choices import colour_chip
from swatchwright.desktop.words import finish_ways as words
from swatchwright.desktop.words import pot
from swatchwright.mixing.asked import Asked
from swatchwright.values import Lab

__all__ = ["ClientWants"]

_SEEN = 1.0
"""CIEDE2000 from which two colours of a cloth are told apart here; 1 is just seen."""
_A_THIRD = 33
_Row = tuple[str, Wanted, Lab]


class ClientWants(QWidget):
    """The choice of a word with its dial, or of a colour.

    Signals
    -------
    changed()
        Something else was chosen by hand.
    """

    changed = Signal()

    def __init__(self, *, chosen: bool) -> None:
        super().__init__()
        self.word = ChoiceField()
        self.dial = QSlider(Qt.Orientation.Horizontal)
        self.dial_told = QLabel()
        self._colours: tuple[_Row, ...] = ()
        self.word.setIconSize(QSize(26, 16))
        self.word.setAccessibleName(words.CLIENT_SAYS)
        self.word.setPlaceholderText(pot.CHOOSE)
        self.dial.setRange(0, 100)
        self.dial.setValue(_A_THIRD)
        self.dial.setPageStep(10)
        self.dial.setAccessibleName(words.DIAL)
        self.dial.setMinimumWidth(160)
        self.dial.setMaximumWidth(240)
        self.dial_told.setMinimumWidth(72)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(7)
        row.addWidget(self.word)
        row.addWidget(self.dial, 1)
        row.addWidget(self.dial_told)
        row.addStretch(0)
        self._fill(0 if chosen else -1)
        self.word.activated.connect(self._changed)
        self.dial.valueChanged.connect(self._changed)

    def show_colours(
        self, wanted: Lab | None, cloth: Sequence[Lab], aim: Lab | None = None
    ) -> bool:
        """Offer the wanted colour, those of the cloth, and what was asked before.

        A colour that looks like one that is offered to be as grey as is not offered again. Tells
        whether others are offered now.
        """
        rows: list[_Row] = []
        if aim is not None:
            rows.append((words.AS_BEFORE, Wanted(colour=aim), aim))
        if wanted is not None:
            rows.append((words.THE_WANTED, Wanted(colour=wanted), wanted))
            rows.append((words.AS_GREY_AS_WANTED, Wanted(grey_as=wanted), wanted))
        for number, lab in enumerate(cloth, start=1):
            if not any(where.grey_as and _alike(lab, where.grey_as) for _, where, _ in rows):
                rows.append((words.as_grey_as(number, lab), Wanted(grey_as=lab), lab))
        if tuple(rows) == self._colours:
            return False
        was = self.word.currentText()
        self._colours = tuple(rows)
        place = self.word.currentIndex()
        self._fill(min(0, place))
        if was:
            self.word.setCurrentIndex(max(0, self.word.findText(was)))
        self._show_dial()
        return True

    def show_wanted(self, wanted: Wanted) -> None:
        """Choose what was asked elsewhere; a colour that is not offered here is passed over."""
        for place in range(self.word.count()):
            if wanted.asked is None and self.word.itemData(place) == wanted:
                self.word.setCurrentIndex(place)
        if wanted.asked is not None:
            word, far = wanted.asked
            self.word.setCurrentIndex(self.word.findText(words.said(word)))
            self.dial.setValue(round(100 * far))
        self._show_dial()

    def wanted(self) -> Wanted | None:
        """Give what is chosen; None while nothing is."""
        where = self.word.currentData()
        if where is None or isinstance(where, Wanted):
            return where
        return Wanted(asked=(Asked(where), self.dial.value() / 100))

    def _fill(self, chosen: int) -> None:
        self.word.clear()
        for asked in words.directions():
            self.word.addItem(words.said(asked), asked)
        if self._colours:
            self.word.insertSeparator(self.word.count())
        for told, wanted, lab in self._colours:
            self.word.addItem(colour_chip(screen_colour(lab)), told, wanted)
        self.word.setCurrentIndex(chosen)
        self._show_dial()

    def _show_dial(self) -> None:
        where = self.word.currentData()
        by_dial = where is not None and not isinstance(where, Wanted)
        self.dial.setVisible(by_dial)
        self.dial_told.setText(common.dial_text(self.dial.value()) if by_dial else "")

    def _changed(self) -> None:
        self._show_dial()
        self.changed.emit()


def _alike(one: Lab, other: Lab) -> bool:
    """Tell whether two colours look the same in a list."""
    return float(delta_e_2000(one.triple, other.triple)) < _SEEN
