"""The sizes a paint is sold in, each with its price: a row for each, and one more on asking."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtWidgets import QDoubleSpinBox, QVBoxLayout, QWidget

from swatchwright.acts.own_paint import MOST_TINS
from swatchwright.desktop.money import in_her_money
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.shelf_bits import amount, button
from swatchwright.desktop.words import own_paint as words
from swatchwright.paint.paints import Tin

__all__ = ["ShelfTins"]

_MOST = 100_000


class ShelfTins(QWidget):
    """Rows of a size and a price; a row without a size is no tin."""

    def __init__(self) -> None:
        super().__init__()
        self.sizes: list[QDoubleSpinBox] = []
        self.prices: list[QDoubleSpinBox] = []
        self._lines: list[BreakingRow] = []
        self._rows = QVBoxLayout()
        self._rows.setSpacing(4)
        self.more = button(words.MORE_TINS, self._add_another, "little")
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(4)
        whole.addLayout(self._rows)
        foot = BreakingRow()
        foot.put(self.more)
        whole.addWidget(foot)
        self.show_tins(())

    def show_tins(self, tins: Sequence[Tin]) -> None:
        """Show these tins; an empty row where there are none."""
        for line in self._lines:
            line.hide()
            line.deleteLater()
        self.sizes, self.prices, self._lines = [], [], []
        for tin in tins or (None,):
            self._add_row(tin)

    def tins(self) -> tuple[Tin, ...]:
        """Give the tins as they stand there now."""
        told = []
        for size, price in zip(self.sizes, self.prices, strict=True):
            size.interpretText()
            price.interpretText()
            if size.value() > 0:
                told.append(Tin(size.value(), price.value() or None))
        return tuple(told)

    def _add_another(self) -> None:
        self._add_row(None)
        self.sizes[-1].setFocus()

    def _add_row(self, tin: Tin | None) -> None:
        number = len(self.sizes) + 1
        size = amount(words.size_name(number), _MOST, " ml", words.NO_SIZE)
        price = amount(words.price_name(number), _MOST, "", words.NO_PRICE, decimals=2)
        in_her_money(price)
        if tin is not None:
            size.setDecimals(0 if float(tin.ml).is_integer() else 2)
            size.setValue(tin.ml)
            price.setValue(tin.price or 0.0)
        line = BreakingRow()
        # In a form whose heads are wide the price goes below its size, and is never cut.
        line.put(size)
        line.put(price)
        self._rows.addWidget(line)
        # After the row before it, and before the button for another.
        before = self.prices[-1] if self.prices else None
        if before is not None:
            QWidget.setTabOrder(before, size)
        QWidget.setTabOrder(size, price)
        QWidget.setTabOrder(price, self.more)
        self.sizes.append(size)
        self.prices.append(price)
        self._lines.append(line)
        self.more.setEnabled(len(self.sizes) < MOST_TINS)
