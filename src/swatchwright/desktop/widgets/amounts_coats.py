"""What goes on: coats of each kind, how far a litre goes, the tool, the surface."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QDoubleSpinBox,
    QGridLayout,
    QLabel,
    QPushButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.amounts import Coats
from swatchwright.acts.piece_follow import Painted
from swatchwright.acts.piece_form import PieceForm, own_coats
from swatchwright.desktop.widgets.piece_fields import add_row, choice, form, label, number
from swatchwright.desktop.words import amounts as words
from swatchwright.piece.order import ProductKind
from swatchwright.piece.spreading import Ground, Tool
from swatchwright.piece.work.order import Surface

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
    follow()
        All of it is to follow what the other pages say.
    """

    changed = Signal(object)
    follow = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._form: PieceForm | None = None
        self._showing = False
        self.coats: dict[ProductKind, QDoubleSpinBox] = {}
        self.rates: dict[ProductKind, QDoubleSpinBox] = {}
        self.names: dict[ProductKind, QLabel] = {}
        self.ground = choice(
            [(words.surface_word(*on), _key(*on)) for on in words.ON_IT], words.SURFACE
        )
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
        self.plan = label("")
        self.plan.hide()
        column.addWidget(self.plan)
        self.follows = label("", "small")
        self.again = QPushButton(words.FOLLOW)
        self.again.setObjectName("little")
        self.again.setToolTip(f"<p>{words.FOLLOW_TIP}</p>")
        self.again.clicked.connect(self.follow)
        column.addWidget(self.follows)
        column.addWidget(self.again, 0, Qt.AlignmentFlag.AlignLeft)
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
            self.coats[kind], self.rates[kind], self.names[kind] = coats, rate, told
        return grid

    def show_painted(self, painted: Painted) -> None:
        """Show what goes on, and what of it follows the other pages."""
        shown = painted.form
        self._showing, self._form = True, shown
        on = shown.coats
        for kind, name in _COATS.items():
            count = int(getattr(on, name))
            self._show(self.coats[kind], count)
            self._show(self.rates[kind], on.rates.get(kind, 0.0))
            self.rates[kind].setEnabled(count > 0)
            self.coats[kind].setSuffix(words.coats_suffix(count))
        for kind in (ProductKind.WASH, ProductKind.CLEAR):
            self.names[kind].setText(words.over_name(painted.over, kind))
        self.ground.setCurrentIndex(self.ground.findData(_key(shown.surface, on.ground)))
        self.follows.setText(words.follows_line(own_coats(shown)))
        self.follows.setVisible(bool(self.follows.text()))
        self.again.setVisible(bool(own_coats(shown)))
        self.tool.setCurrentIndex(self.tool.findData(on.tool))
        self._show(self.thinned, on.wash_thinned)
        self._rows.setRowVisible(self.thinned, on.wash > 0)
        self._show(self.sample, shown.sample_ml)
        self._show(self.touch_up, 100 * shown.touch_up)
        self._showing = False

    def show_plan(self, coats: int | None) -> None:
        """Tell of the coats of paint that were set with the plan; None where they are these."""
        told = words.plan_coats(coats)
        self.plan.setText(told)
        self.plan.setVisible(bool(told))

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
        surface, ground = words.ON_IT[max(0, self.ground.currentIndex())]
        coats = Coats(
            **counts,
            rates=rates,
            solids=self._form.coats.solids,
            wash_thinned=self.thinned.value(),
            ground=ground,
            tool=Tool(self.tool.currentData()),
        )
        touch_up = round(self.touch_up.value()) / 100
        self.changed.emit(
            replace(
                self._form,
                coats=coats,
                sample_ml=self.sample.value(),
                touch_up=touch_up,
                surface=surface,
            )
        )


def _key(surface: Surface, ground: Ground) -> str:
    """Give what Qt finds a choice by: a word for both."""
    return f"{surface.value}, {ground.value}"
