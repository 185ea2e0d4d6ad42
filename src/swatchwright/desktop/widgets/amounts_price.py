"""A price for the client: hours, what she takes for one, and what goes on top."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QDoubleSpinBox, QGridLayout, QLineEdit, QVBoxLayout, QWidget

from swatchwright.acts.piece_job import PieceForm
from swatchwright.desktop.widgets.piece_fields import add_row, clear, form, label, number
from swatchwright.desktop.words import amounts as words
from swatchwright.piece.amounts import Amounts
from swatchwright.piece.order import Terms

__all__ = ["AmountsPrice"]


class AmountsPrice(QWidget):
    """Fields for the terms of a form, and the price.

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
        self.hours = number(0, 10_000, " h", step=0.5, decimals=1)
        self.rate = number(0, 1_000_000, step=1, decimals=2)
        self.margin = number(0, 1000, " %", step=5)
        self.currency = QLineEdit()
        self.currency.setMaxLength(12)
        self.currency.setPlaceholderText(words.CURRENCY_HINT)
        self.total = label("", "big")
        self.materials = label("", "quiet")
        self.missing = label(words.NO_PRICE, "quiet")
        self._made_of = QGridLayout()
        self._made_of.setHorizontalSpacing(12)
        rows = form()
        add_row(rows, words.HOURS, self.hours)
        add_row(rows, words.RATE, self.rate)
        add_row(rows, words.MARGIN, self.margin)
        add_row(rows, words.CURRENCY, self.currency)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addLayout(rows)
        for shown in (self.materials, self.missing, self.total):
            column.addWidget(shown)
        column.addLayout(self._made_of)
        column.addStretch(1)
        for field in (self.hours, self.rate, self.margin):
            field.valueChanged.connect(self._changed)
        self.currency.textEdited.connect(self._changed)

    def show_form(self, shown: PieceForm) -> None:
        """Show the terms of a form."""
        self._showing, self._form = True, shown
        terms = shown.terms
        for field, value in (
            (self.hours, terms.hours),
            (self.rate, terms.rate),
            (self.margin, 100 * terms.margin),
        ):
            _show(field, float(value))
        if self.currency.text() != terms.currency:
            self.currency.setText(terms.currency)
        self._showing = False

    def show_amounts(self, found: Amounts) -> None:
        """Show what the paint costs, and the price where it can be worked out."""
        currency = "" if self._form is None else self._form.terms.currency
        self.materials.setText(words.materials_line(found, currency))
        clear(self._made_of)
        price = found.price
        terms = Terms() if self._form is None else self._form.terms
        self.missing.setVisible(price is None)
        asked = bool(terms.hours and terms.rate)
        self.missing.setText(words.NO_PRICE_PAINT if asked else words.NO_PRICE)
        self.total.setVisible(price is not None)
        if price is None:
            return
        self.total.setText(words.money(price.total, price.currency))
        for row, (word, value) in enumerate(words.price_lines(price)):
            self._made_of.addWidget(label(word, "quiet"), row, 0)
            self._made_of.addWidget(label(value), row, 1)
        self._made_of.setColumnStretch(2, 1)

    def _changed(self) -> None:
        if self._showing or self._form is None:
            return
        terms = Terms(
            Decimal(f"{self.hours.value():.1f}"),
            Decimal(f"{self.rate.value():.2f}"),
            Decimal(f"{self.margin.value():.0f}") / 100,
            self.currency.text().strip(),
        )
        self.changed.emit(replace(self._form, terms=terms))


def _show(field: QDoubleSpinBox, value: float) -> None:
    if abs(field.value() - value) > 1e-9:
        field.setValue(value)
