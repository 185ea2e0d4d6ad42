"""How long each product dries, as its tin says, where she has it at hand."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QDoubleSpinBox, QGridLayout, QVBoxLayout, QWidget

from swatchwright.acts.plan_times import (
    products_in,
    rag_wait,
    tin_times,
    usual_times,
    with_tin_times,
)
from swatchwright.desktop.widgets.fields import NumberField
from swatchwright.desktop.widgets.piece_fields import label
from swatchwright.desktop.words import plan as words
from swatchwright.piece.work.order import PaintTimes, PlanOrder

__all__ = ["PlanTimes"]

_MOST_HOURS = 1440.0
_HOUR = 60.0


class _Hours(NumberField):
    """Hours with a tenth only where there is one: 168 is read whole in a narrow field."""

    def __init__(self) -> None:
        super().__init__()
        self.setDecimals(1)
        self.setRange(0, _MOST_HOURS)
        self.setMinimumHeight(26)
        self.setMinimumWidth(58)
        self.setCorrectionMode(_Hours.CorrectionMode.CorrectToNearestValue)

    def textFromValue(self, value: float) -> str:
        """Write 168 for 168.0."""
        return self.locale().toString(value, "g", 6)


class PlanTimes(QWidget):
    """A row for each product: whether its tin tells, and its three times.

    Signals
    -------
    changed(PlanOrder)
        One of them was changed; the order with it.
    """

    changed = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._order: PlanOrder | None = None
        self._showing = False
        self.ticks: dict[str, QCheckBox] = {}
        self.fields: dict[str, tuple[QDoubleSpinBox, ...]] = {}
        grid = QGridLayout()
        grid.setHorizontalSpacing(6)
        grid.setVerticalSpacing(4)
        for place, head in enumerate(words.TIME_HEADS, 1):
            grid.addWidget(label(head, "small"), 0, place)
            grid.setColumnStretch(place, 1)
        for row, (product, word) in enumerate(words.PRODUCTS.items(), 1):
            tick = QCheckBox(word)
            tick.toggled.connect(self._changed)
            grid.addWidget(tick, row, 0)
            made = []
            for place, head in enumerate(words.TIME_HEADS, 1):
                field = _Hours()
                field.setAccessibleName(words.time_field(product, head))
                field.valueChanged.connect(self._changed)
                grid.addWidget(field, row, place)
                made.append(field)
            self.ticks[product], self.fields[product] = tick, tuple(made)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addWidget(label(words.TIMES_HINT, "quiet"))
        column.addLayout(grid)
        self.grey, self.rag = label(words.TIMES_GREY, "quiet"), label("", "quiet")
        column.addWidget(self.grey)
        column.addWidget(self.rag)

    def show_order(self, order: PlanOrder) -> None:
        """Show the times of an order; where it has none, the usual ones, fixed."""
        self._showing, self._order = True, order
        used = products_in(order)
        told = words.rag_line(rag_wait(order))
        self.rag.setText(told)
        self.rag.setVisible(bool(told))
        self.grey.setVisible(any(tin_times(order, product) is None for product in used))
        for product, tick in self.ticks.items():
            own = tin_times(order, product)
            times = own or usual_times(order, product)
            tick.setChecked(own is not None)
            tick.setVisible(product in used)
            for field, minutes in zip(
                self.fields[product], (times.touch_dry, times.recoat, times.hard), strict=True
            ):
                if abs(field.value() - minutes / _HOUR) > 1e-6:
                    field.setValue(minutes / _HOUR)
                field.setEnabled(own is not None)
                field.setVisible(product in used)
        self._showing = False

    def _changed(self) -> None:
        if self._showing or self._order is None:
            return
        times: dict[str, PaintTimes | None] = {}
        for product in products_in(self._order):
            touch, recoat, hard = (_HOUR * field.value() for field in self.fields[product])
            told = self.ticks[product].isChecked()
            times[product] = PaintTimes(touch, recoat, hard) if told else None
        self.changed.emit(with_tin_times(self._order, times))
