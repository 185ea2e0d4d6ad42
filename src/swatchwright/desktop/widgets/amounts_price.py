"""A price for the client: hours, what she takes for one, and what goes on top."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QDoubleSpinBox, QGridLayout, QPushButton, QVBoxLayout, QWidget

from swatchwright.acts.piece_job import PieceForm
from swatchwright.desktop.money import follow_money, name_money, write_money
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.money_field import MoneyField
from swatchwright.desktop.widgets.piece_fields import add_row, clear, form, label, number
from swatchwright.desktop.words import amounts as words
from swatchwright.desktop.words import money
from swatchwright.language.money import money_in_use
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
        self._found: Amounts | None = None
        self._showing = False
        self.hours = number(0, 10_000, " h", step=0.5, decimals=1)
        self.rate = number(0, 1_000_000, step=1, decimals=2)
        self.margin = number(0, 1000, " %", step=5)
        self.currency = MoneyField()
        self.currency.setToolTip(f"<p>{money.TIP_OF_JOB}</p>")
        self.planned = label("", "quiet")
        self.take_hours = QPushButton(words.TAKE_HOURS)
        self.take_hours.setObjectName("little")
        self.take_hours.clicked.connect(self._take_hours)
        self._plan = BreakingRow()
        self._plan.put(self.planned, stretches=True)
        self._plan.put(self.take_hours, pushed=True)
        self._plan.hide()
        self._plan_hours: float | None = None
        self.total = label("", "big")
        self.materials = label("", "quiet")
        self.missing = label(words.NO_PRICE, "quiet")
        self._made_of = QGridLayout()
        self._made_of.setHorizontalSpacing(12)
        rows = form()
        add_row(rows, words.HOURS, self.hours)
        rows.addRow(self._plan)
        add_row(rows, words.RATE, self.rate)
        add_row(rows, words.MARGIN, self.margin)
        add_row(rows, money.NAME, self.currency)
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
        self.currency.named.connect(self._named)
        follow_money(self, self._money_changed)

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
        self.currency.show_name(self._money())
        write_money(self.rate, terms.currency)
        self._showing = False
        self._offer_hours()

    def show_plan_hours(self, hours: float | None) -> None:
        """Offer the hours of the plan where others are set; None where there is no plan."""
        self._plan_hours = hours
        self._offer_hours()

    def _offer_hours(self) -> None:
        hours = self._plan_hours
        self._plan.setVisible(hours is not None and abs(hours - self.hours.value()) > _SAME)
        if hours is not None:
            self.planned.setText(words.plan_hours_line(hours))
            self.take_hours.setAccessibleName(words.take_hours_name(hours))

    def _take_hours(self) -> None:
        """Take the hours of the plan, and go to them: the button is gone then."""
        if self._plan_hours is not None:
            self.hours.setFocus(Qt.FocusReason.OtherFocusReason)
            self.hours.setValue(self._plan_hours)
            self._offer_hours()

    def _money(self) -> str:
        """Give what the money of the form is called: as it says itself, or as all money is."""
        return self._terms().currency or money_in_use()

    def _terms(self) -> Terms:
        return Terms() if self._form is None else self._form.terms

    def _money_changed(self) -> None:
        """Tell all prices in what the money is called now."""
        if self._form is not None:
            self.show_form(self._form)
        if self._found is not None:
            self.show_amounts(self._found)

    def show_amounts(self, found: Amounts) -> None:
        """Show what the paint costs, and the price where it can be worked out."""
        self._found = found
        terms = self._terms()
        self.materials.setText(words.materials_line(found, terms.currency))
        clear(self._made_of)
        price = found.price
        self.missing.setVisible(price is None)
        asked = bool(terms.hours and terms.rate)
        self.missing.setText(words.NO_PRICE_PAINT if asked else words.NO_PRICE)
        self.total.setVisible(price is not None)
        if price is None:
            return
        self.total.setText(words.total_line(price, terms.currency))
        for row, (word, value) in enumerate(words.price_lines(price, terms.currency)):
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
            self._money(),
        )
        self._offer_hours()
        self.changed.emit(replace(self._form, terms=terms))

    def _named(self, name: str) -> None:
        """Name the money of the form, and that of all prices unless the form has one of its own."""
        if self._form is None:
            name_money(name)
            return
        terms, hers = self._form.terms, money_in_use()
        if terms.currency:
            self.changed.emit(replace(self._form, terms=replace(terms, currency=name)))
        if terms.currency in {"", hers} or not hers:
            name_money(name)


_SAME = 0.05
"""Hours; a plan tells tenths of them."""


def _show(field: QDoubleSpinBox, value: float) -> None:
    if abs(field.value() - value) > 1e-9:
        field.setValue(value)
