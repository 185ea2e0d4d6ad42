"""What to do after a sample: done, or what to add to the pot, or what to mix afresh."""

from __future__ import annotations

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtWidgets import QGridLayout, QPushButton, QVBoxLayout, QWidget

from swatchwright.acts.sample import Advice, expected_beside
from swatchwright.desktop.widgets.piece_fields import clear, label, number
from swatchwright.desktop.widgets.sample_field import SampleField
from swatchwright.desktop.widgets.shelf_bits import button
from swatchwright.desktop.words import sample as words
from swatchwright.desktop.words import sample_hoped as hoped
from swatchwright.errors import MendableError
from swatchwright.mixing.remix import Outlook
from swatchwright.shelf.shelf import Shelf

__all__ = ["SampleNext"]

_MOST = 20_000.0
_HEIGHT = 62


class SampleNext(QWidget):
    """The advice for a pot.

    Signals
    -------
    pot_changed(float, float)
        Another pot, or another room in it, is meant, ml.
    take(bool)
        The sample is right: its mix is that of the zone. True for the pot with what was added.
    """

    pot_changed = Signal(float, float)
    take = Signal(bool)

    def __init__(self) -> None:
        super().__init__()
        self.pot = number(1.0, _MOST, " ml", step=10.0)
        self.tub = number(1.0, _MOST, " ml", step=50.0)
        self._pots = QWidget()
        grid = QGridLayout(self._pots)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setSpacing(6)
        grid.setColumnStretch(2, 1)
        for row, (text, field) in enumerate(((words.POT, self.pot), (words.TUB, self.tub))):
            told = label(text, wraps=False)
            told.setBuddy(field)
            field.setAccessibleName(text)
            field.setKeyboardTracking(False)
            field.valueChanged.connect(self._changed)
            grid.addWidget(told, row, 0)
            grid.addWidget(field, row, 1)
        self.reckoned = label(words.RECKONING_ANEW, "quiet")
        self._first = QVBoxLayout()
        self._first.setSpacing(4)
        self._told = QVBoxLayout()
        self._told.setSpacing(4)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(8)
        rows.addWidget(self.reckoned)
        rows.addLayout(self._first)
        rows.addWidget(self._pots)
        rows.addLayout(self._told)
        self.lines: list[str] = []
        self.fields: list[SampleField] = []
        self.takes: dict[bool, QPushButton] = {}
        self.asks = ""
        self._zone = ""
        self._taken: bool | None = None

    def _changed(self) -> None:
        if self.tub.value() < self.pot.value():
            with QSignalBlocker(self.tub):
                self.tub.setValue(2 * self.pot.value())
        self.pot_changed.emit(self.pot.value(), self.tub.value())

    def show_advice(
        self,
        advice: Advice | None,
        trouble: MendableError | None,
        shelf: Shelf,
        *,
        zone: str,
        taken: bool | None = None,
        reckoning: bool = False,
        ask: str = "",
    ) -> None:
        """Show what to do.

        `zone` is what its mix may be taken for; `taken` whether it is: with what was added to the
        pot, as it is, or not at all (None). While it is reckoned anew, what was found before stays.
        `ask` is what the button says that asks for it, while that can be pressed.
        """
        clear(self._first)
        clear(self._told)
        self.lines, self.fields, self.takes = [], [], {}
        self._zone, self._taken, self.asks = zone, taken, ask
        self._pots.setVisible((advice is None and trouble is not None) or _going_on(advice))
        self.reckoned.setVisible(reckoning and advice is not None)
        if trouble is not None:
            self._say(f"{trouble.what} {trouble.mend}", "warn")
        elif advice is None:
            self._say(words.RECKONING if reckoning else words.no_advice(ask), "quiet")
        elif advice.stop is not None:
            done, more = words.done_lines(advice)
            self._say(done, "big")
            self._say(more, "quiet")
            self._offer("main")
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
        """Show both ways, the better one first."""
        if advice.last.misread:
            self._say(words.MISREAD_ADVICE, "warn")
        if advice.leave:
            # Above the pot: there is nothing to be done to it.
            self._say(words.LEAVE, "big", self._first)
            self._say(hoped.leave_line(advice), "", self._first, tip=words.FIGURES_TIP)
            self._offer("main", into=self._first)
            self._say(words.ALL_THE_SAME, "heading", self._first)
        elif advice.accepted:
            self._say(words.MOST_ACCEPT)
            self._offer("little")
            self._say(words.NEARER_STILL, "heading")
        if advice.unsure and not advice.leave:
            self._say(words.UNSURE)
        if advice.better_fresh:
            self._say(words.FRESH_BETTER, "heading")
        for line in words.why_lines(advice):
            self._say(line, tip=words.FIGURES_TIP)
        if advice.better_fresh:
            self._show_fresh(advice, shelf, "strong")
            if advice.additions.steps:
                self._say(words.OR_ADD, "heading")
                self._show_additions(advice, "")
        else:
            self._show_additions(advice, "strong")
            self._say(words.FRESH, "heading")
            self._show_fresh(advice, shelf, "")

    def _show_additions(self, advice: Advice, name: str) -> None:
        self._show_fields(advice, words.FIELD_ADDED, advice.after)
        for line in words.add_lines(advice):
            self._say(line, name)
        self._say(words.pot_after(advice), "quiet", tip=words.FIGURES_TIP)
        if advice.additions.steps:
            self._offer("little", added=True)

    def _show_fresh(self, advice: Advice, shelf: Shelf, name: str) -> None:
        self._show_fields(advice, words.FIELD_FRESH, advice.fresh.outlook)
        for line in words.fresh_lines(advice):
            self._say(line, name)
        self._say(hoped.fresh_after(advice), "quiet", tip=words.FIGURES_TIP)
        wider = words.wider_line(advice, shelf)
        if wider:
            self._say(wider, "quiet", tip=words.FIGURES_TIP)
        if advice.beside:
            self._say(words.BESIDE, "quiet")
            for mix in advice.beside:
                self._say(words.beside_line(mix, shelf), "small")

    def _show_fields(self, advice: Advice, word: str, then: Outlook) -> None:
        """Show the cloth, the sample as it is, and what may be expected then, touching."""
        last = advice.last
        fields = (
            (words.FIELD_CLOTH, last.cloth),
            (words.FIELD_NOW, last.sample),
            (word, expected_beside(then, advice.cloth, last.cloth)),
        )
        field = SampleField(_HEIGHT)
        field.show_colours(fields, words.fields_name(word, then.usual))
        self.fields.append(field)
        self._told.addWidget(field)

    def _offer(self, name: str, *, added: bool = False, into: QVBoxLayout | None = None) -> None:
        """Offer to take the sample's mix, or the pot with what was added, or say that it is."""
        if self._taken is added:
            self._say(words.is_mix_for(self._zone), "strong", into)
            return
        told = words.pot_for(self._zone) if added else words.take_for(self._zone)
        tip = words.POT_TIP if added else words.TAKE_TIP
        made = button(told, lambda: self.take.emit(added), name, tip=tip)
        self.takes[added] = made
        (self._told if into is None else into).addWidget(made, 0, Qt.AlignmentFlag.AlignLeft)

    def _say(
        self, text: str, name: str = "", into: QVBoxLayout | None = None, *, tip: str = ""
    ) -> None:
        self.lines.append(text)
        told = label(text, name)
        told.setToolTip(tip)
        (self._told if into is None else into).addWidget(told)


def _going_on(advice: Advice | None) -> bool:
    return advice is not None and advice.stop is None
