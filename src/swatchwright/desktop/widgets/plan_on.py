"""What goes on the piece: carrier, primer, coats, washes and what comes on top."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from swatchwright.desktop.widgets.piece_fields import add_row, choice, form, label, number
from swatchwright.desktop.words import plan as words
from swatchwright.piece.work.order import Carrier, FinishKind, PlanOrder, Primer

__all__ = ["PlanOn"]

_NO_CHOICE = ""
"""Stands for the primer that is usual: Qt finds no item by None."""

_BY_PART = "apart"
"""Stands for several finishes, each on its parts, as they are told elsewhere."""


class PlanOn(QWidget):
    """Fields for what goes on.

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
        self.piece = label("", "quiet")
        self.carrier = choice([(words.carrier_word(c), c) for c in Carrier], words.CARRIER)
        self.primer = choice(
            [(text, primer or _NO_CHOICE) for text, primer in words.PRIMER_WORDS], words.PRIMER
        )
        self.primer_coats = number(0, 10)
        self.primer_coats.setSpecialValueText(words.AS_USUAL)
        self.coats = number(0, 10)
        self.coats.setSpecialValueText(words.PAINTED)
        self.washes = number(0, 10)
        self.finish = choice([(words.FINISH_WORDS[f], f) for f in FinishKind], words.FINISH)
        self.finish_coats = number(1, 10)
        self.on_parts = label("", "quiet")
        self.on_parts.hide()
        self._rows = form()
        for text, field in (
            (words.CARRIER, self.carrier),
            (words.PRIMER, self.primer),
            (words.PRIMER_COATS, self.primer_coats),
            (words.COATS, self.coats),
            (words.WASHES, self.washes),
            (words.FINISH, self.finish),
            (words.FINISH_COATS, self.finish_coats),
        ):
            add_row(self._rows, text, field)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addWidget(self.piece)
        column.addLayout(self._rows)
        column.addWidget(self.on_parts)
        for box in (self.carrier, self.primer, self.finish):
            box.activated.connect(self._changed)
        for spin in (self.primer_coats, self.coats, self.washes, self.finish_coats):
            spin.valueChanged.connect(self._changed)

    def show_order(self, order: PlanOrder, *, sized: bool) -> None:
        """Show an order."""
        self._showing, self._order = True, order
        self.piece.setText(words.piece_line(order, known=sized))
        self.carrier.setCurrentIndex(self.carrier.findData(order.carrier))
        self.primer.setCurrentIndex(self.primer.findData(order.primer or _NO_CHOICE))
        self.primer_coats.setValue(order.primer_coats)
        primed = not order.painted
        self._rows.setRowVisible(self.primer, primed)
        self._rows.setRowVisible(self.primer_coats, primed and order.primer is not Primer.NONE)
        self.coats.setValue(order.coats)
        self.washes.setValue(order.washes)
        self._show_finish(order)
        self._showing = False

    def _show_finish(self, order: PlanOrder) -> None:
        """Show what goes on top; several finishes by part only where they are told."""
        several = bool(order.tops)
        place = self.finish.findData(_BY_PART)
        if several and place < 0:
            self.finish.addItem(words.BY_PART, _BY_PART)
        if not several and place >= 0:
            self.finish.removeItem(place)
        self.finish.setCurrentIndex(self.finish.findData(_BY_PART if several else order.finish))
        self.finish_coats.setValue(order.finish_coats)
        one = order.finish is not FinishKind.NONE and not several
        self._rows.setRowVisible(self.finish_coats, one)
        self.on_parts.setText(words.tops_told(order))
        self.on_parts.setVisible(several)

    def _changed(self) -> None:
        if self._showing or self._order is None:
            return
        named, top = self.primer.currentData(), self.finish.currentData()
        primer = Primer(named) if named else None
        apart = top == _BY_PART
        self.changed.emit(
            replace(
                self._order,
                carrier=Carrier(self.carrier.currentData()),
                primer=primer,
                primer_coats=0 if primer is Primer.NONE else round(self.primer_coats.value()),
                coats=round(self.coats.value()),
                washes=round(self.washes.value()),
                finish=self._order.finish if apart else FinishKind(top),
                finish_coats=round(self.finish_coats.value()),
                topped=() if self._order.tops and not apart else self._order.topped,
            )
        )
