"""Put a pot right by adding: where the client wants it, in a word and on a dial."""

from __future__ import annotations

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import (
    QDialog,
    QDoubleSpinBox,
    QFormLayout,
    QLabel,
    QSlider,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.correct import Correction, correct_pot
from swatchwright.acts.recipes import MeasuredRecipe
from swatchwright.desktop import words
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.colour_field import ColourField
from swatchwright.desktop.widgets.fields import ChoiceField, NumberField
from swatchwright.desktop.workers import Job
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.mixing.asked import Asked

__all__ = ["CorrectWindow"]

_SETTLED = 150
_ROOM = 1.5


class CorrectWindow(QDialog):
    """What is in the pot, where it should go, and what to add for that."""

    def __init__(
        self, session: Session, measured: MeasuredRecipe, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._session = session
        self.setWindowTitle(words.PUT_POT_RIGHT)
        self.resize(540, 600)
        self.amounts = {
            paint.id: _millilitres(amount.ml, paint.name)
            for paint, amount in zip(measured.recipe.paints, measured.amounts, strict=True)
        }
        self.tub = _millilitres(sum(a.ml for a in measured.amounts) * _ROOM, words.TUB_HOLDS)
        self.word = ChoiceField()
        self.word.setAccessibleName(words.CLIENT_WANTS)
        for asked in Asked:
            self.word.addItem(say(asked.value), asked)
        self.word.setCurrentIndex(self.word.findData(Asked.LESS_VIVID))
        self.dial = QSlider(Qt.Orientation.Horizontal)
        self.dial.setRange(0, 100)
        self.dial.setValue(33)
        self.dial.setAccessibleName(words.HOW_FAR)
        self.told = QLabel()
        self.told.setWordWrap(True)
        self.told.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self._dial_told = QLabel()
        self._picture = QVBoxLayout()
        self._wait = QTimer(self)
        self._wait.setSingleShot(True)
        self._wait.setInterval(_SETTLED)
        self._wait.timeout.connect(self._start)
        self._lay_out(measured)
        self._changed()

    def _lay_out(self, measured: MeasuredRecipe) -> None:
        rows = QVBoxLayout(self)
        form = QFormLayout()
        for paint in measured.recipe.paints:
            form.addRow(paint.name, self.amounts[paint.id])
        form.addRow(words.TUB_HOLDS, self.tub)
        form.addRow(words.CLIENT_WANTS, self.word)
        form.addRow(words.HOW_FAR, self.dial)
        form.addRow("", self._dial_told)
        rows.addLayout(form)
        rows.addLayout(self._picture, 1)
        rows.addWidget(self.told)
        for box in (*self.amounts.values(), self.tub):
            box.valueChanged.connect(self._changed)
        self.word.currentIndexChanged.connect(self._changed)
        self.dial.valueChanged.connect(self._changed)

    def _changed(self) -> None:
        """Work anew once the hand rests."""
        self._dial_told.setText(words.dial_text(self.dial.value()))
        self._wait.start()

    def _start(self) -> None:
        shelf, tub = self._session.shelf, self.tub.value()
        pot = [(id_, box.value()) for id_, box in self.amounts.items()]
        asked = (Asked(self.word.currentData()), self.dial.value() / 100)

        def work(_: Job) -> Correction:
            return correct_pot(shelf, pot, asked=asked, tub=tub)

        start = self._session.workshop.start
        start("correct", words.FINDING_ADDITIONS, work, self._show, self._show_trouble)

    def _show_trouble(self, what: object) -> None:
        """Say here what cannot be, where it was entered; our own faults go to the bench."""
        self._clear()
        if isinstance(what, MendableError):
            self.told.setText(f"{what.what} {what.mend}")
        else:
            self._session.workshop.failed.emit(what)

    def _clear(self) -> None:
        """Take the picture away."""
        while self._picture.count():
            item = self._picture.takeAt(0)
            widget = None if item is None else item.widget()
            if widget is not None:
                widget.deleteLater()

    def _show(self, found: Correction) -> None:
        self._clear()
        after = found.additions.steps[-1].after if found.additions.steps else found.now
        names = (words.WHERE_IT_SHOULD_GO, words.AS_IT_IS, words.AFTER_ADDING)
        self._picture.addWidget(ColourField(found.aim, found.now, after, names=names))
        self.told.setText(words.correction_text(found, self.tub.value()))


def _millilitres(value: float, name: str) -> QDoubleSpinBox:
    box = NumberField()
    box.setRange(0.1, 100_000)
    box.setDecimals(1)
    box.setSuffix(" ml")
    box.setValue(value)
    box.setKeyboardTracking(False)
    box.setAccessibleName(name)
    return box
