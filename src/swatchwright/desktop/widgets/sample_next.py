"""What to do after a sample: done, or what to add to the pot, or what to mix afresh."""

from __future__ import annotations

from PySide6.QtCore import QSignalBlocker, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from swatchwright.acts.sample import Advice
from swatchwright.desktop.widgets.piece_fields import clear, label, number
from swatchwright.desktop.words import sample as words
from swatchwright.errors import MendableError
from swatchwright.shelf.shelf import Shelf

__all__ = ["SampleNext"]

_MOST = 20_000.0


class SampleNext(QWidget):
    """The advice for a pot.

    Signals
    -------
    pot_changed(float, float)
        Another pot or tub is meant, ml.
    """

    pot_changed = Signal(float, float)

    def __init__(self) -> None:
        super().__init__()
        self.pot = number(1.0, _MOST, " ml", step=10.0)
        self.tub = number(1.0, _MOST, " ml", step=50.0)
        self._pots = QWidget()
        row = QHBoxLayout(self._pots)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        for text, field in ((words.POT, self.pot), (words.TUB, self.tub)):
            told = label(text, wraps=False)
            told.setBuddy(field)
            field.setAccessibleName(text)
            field.setKeyboardTracking(False)
            field.valueChanged.connect(self._changed)
            row.addWidget(told)
            row.addWidget(field, 1)
        self._told = QVBoxLayout()
        self._told.setSpacing(4)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(8)
        rows.addWidget(self._pots)
        rows.addLayout(self._told)
        self.lines: list[str] = []

    def _changed(self) -> None:
        if self.tub.value() < self.pot.value():
            with QSignalBlocker(self.tub):
                self.tub.setValue(2 * self.pot.value())
        self.pot_changed.emit(self.pot.value(), self.tub.value())

    def show_advice(
        self, advice: Advice | None, trouble: MendableError | None, shelf: Shelf
    ) -> None:
        """Show what to do."""
        clear(self._told)
        self.lines = []
        self._pots.setVisible((advice is None and trouble is not None) or _going_on(advice))
        if trouble is not None:
            self._say(f"{trouble.what} {trouble.mend}", "warn")
        elif advice is None:
            self._say(words.NO_ADVICE, "quiet")
        elif advice.stop is not None:
            self._say(words.DONE[advice.stop], "big")
            self._say(words.DONE_MORE[advice.stop], "quiet")
        else:
            self._show_pot(advice)
            self._show_adding(advice, shelf)

    def _show_pot(self, advice: Advice) -> None:
        held = sum(ml for _, ml in advice.pot)
        with QSignalBlocker(self.pot), QSignalBlocker(self.tub):
            if not self.pot.hasFocus():
                self.pot.setValue(held)
            if not self.tub.hasFocus() and self.tub.value() < held:
                self.tub.setValue(2 * held)

    def _show_adding(self, advice: Advice, shelf: Shelf) -> None:
        if advice.accepted:
            self._say(words.MOST_ACCEPT)
        lines = words.add_lines(advice)
        for line in lines:
            self._say(line, "strong")
        self._say(words.pot_after(advice) if lines else words.NOTHING_TO_ADD, "quiet")
        better = advice.better_fresh or not lines
        self._say(words.FRESH_BETTER if better else words.FRESH, "heading")
        for line in words.fresh_lines(advice):
            self._say(line, "strong" if better else "")
        self._say(words.fresh_after(advice), "quiet")
        if advice.beside:
            self._say(words.BESIDE, "quiet")
            for mix in advice.beside:
                self._say(words.beside_line(mix, shelf), "small")

    def _say(self, text: str, name: str = "") -> None:
        self.lines.append(text)
        self._told.addWidget(label(text, name))


def _going_on(advice: Advice | None) -> bool:
    return advice is not None and advice.stop is None
