"""What goes on: coats of each kind, how far a litre goes, the tool, the surface."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QDoubleSpinBox,
    QGridLayout,
    QLabel,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.amounts import Coats
from swatchwright.acts.piece_job import PieceForm
from swatchwright.desktop.widgets.piece_fields import add_row, choice, form, label, number
from swatchwright.desktop.words import amounts as words
from swatchwright.piece.order import ProductKind
from swatchwright.piece.spreading import Ground, Tool

__all__ = ["AmountsCoats"]

_COATS = {
    ProductKind.PRIMER: "primer",
    ProductKind.PAINT: "paint",
    ProductKind.WASH: "wash",
    ProductKind.CLEAR: "clear",
}


class AmountsCoats(QWidget):
    """Fields for the coats of a form.

    Signals
    -------
    changed(PieceForm)
        One of them was changed; the form with it.
    """

    changed = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._form: PieceForm | None = None
        self._showing = False
        self.coats: dict[ProductKind, QDoubleSpinBox] = {}
        self.rates: dict[ProductKind, QDoubleSpinBox] = {}
        self.ground = choice([(words.ground_word(g), g) for g in Ground], words.SURFACE)
        self.tool = choice([(words.tool_word(t), t) for t in Tool], words.TOOL)
        self.thinned = number(0, 50, words.THINNED_UNIT, step=0.5, decimals=1)
        self.sample = number(0, 1000, " ml", step=10)
        self.touch_up = number(0, 100, " %", step=5)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(10)
        column.addLayout(self._grid())
        rows = form()
        add_row(rows, words.SURFACE, self.ground)
        add_row(rows, words.TOOL, self.tool)
        add_row(rows, words.THINNED, self.thinned)
        add_row(rows, words.SAMPLE, self.sample)
        add_row(rows, words.TOUCH_UP, self.touch_up)
        self._rows = rows
        column.addLayout(rows)
        for box in (self.ground, self.tool):
            box.activated.connect(self._changed)
        for field in (self.thinned, self.sample, self.touch_up):
            field.valueChanged.connect(self._changed)

    def _grid(self) -> QGridLayout:
        grid = QGridLayout()
        grid.setHorizontalSpacing(6)
        grid.setVerticalSpacing(4)
        grid.setColumnStretch(1, 1)
        grid.setColumnStretch(2, 1)
        for place, head in enumerate(words.COAT_HEADS, 1):
            grid.addWidget(label(head, "small", wraps=False), 0, place)
        for row, kind in enumerate(_COATS, 1):
            word = words.COAT_NAMES[kind]
            coats, rate = number(0, 10), number(0, 50, words.RATE_UNIT, decimals=1)
            coats.setSpecialValueText(words.NO_COATS)
            coats.setAccessibleName(words.coats_of(kind))
            rate.setSpecialValueText(words.AS_ON_TIN)
            rate.setAccessibleName(words.rate_of(kind))
            rate.setToolTip(f"<p>{words.RATE_TIP}</p>")
            told = QLabel(word)
            told.setBuddy(coats)
            for field in (coats, rate):
                # Rather the fields than the words give way where a language has long ones.
                field.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
            for place, widget in enumerate((told, coats, rate)):
                grid.addWidget(widget, row, place)
            coats.valueChanged.connect(self._changed)
            rate.valueChanged.connect(self._changed)
            self.coats[kind], self.rates[kind] = coats, rate
        return grid

    def show_form(self, shown: PieceForm) -> None:
        """Show what goes on by a form."""
        self._showing, self._form = True, shown
        on = shown.coats
        for kind, name in _COATS.items():
            count = int(getattr(on, name))
            self._show(self.coats[kind], count)
            self._show(self.rates[kind], on.rates.get(kind, 0.0))
            self.rates[kind].setEnabled(count > 0)
            self.coats[kind].setSuffix(words.coats_suffix(count))
        self.ground.setCurrentIndex(self.ground.findData(on.ground))
        self.tool.setCurrentIndex(self.tool.findData(on.tool))
        self._show(self.thinned, on.wash_thinned)
        self._rows.setRowVisible(self.thinned, on.wash > 0)
        self._show(self.sample, shown.sample_ml)
        self._show(self.touch_up, 100 * shown.touch_up)
        self._showing = False

    @staticmethod
    def _show(field: QDoubleSpinBox, value: float) -> None:
        # Not while it is being typed into and already says so: the cursor would jump.
        if abs(field.value() - value) > 1e-9:
            field.setValue(value)

    def _changed(self) -> None:
        if self._showing or self._form is None:
            return
        counts = {_COATS[kind]: round(field.value()) for kind, field in self.coats.items()}
        # Half a square metre for a litre is the least that can be.
        rates = {k: max(0.5, f.value()) for k, f in self.rates.items() if f.value()}
        coats = Coats(
            **counts,
            rates=rates,
            solids=self._form.coats.solids,
            wash_thinned=self.thinned.value(),
            ground=Ground(self.ground.currentData()),
            tool=Tool(self.tool.currentData()),
        )
        touch_up = round(self.touch_up.value()) / 100
        self.changed.emit(
            replace(self._form, coats=coats, sample_ml=self.sample.value(), touch_up=touch_up)
        )
