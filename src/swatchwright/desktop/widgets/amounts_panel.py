"""What to buy and what to ask for it, side by side."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from swatchwright.acts.piece_job import PieceForm
from swatchwright.desktop.letters import follow_letters, grown
from swatchwright.desktop.widgets.amounts_buying import BuyingModel
from swatchwright.desktop.widgets.amounts_price import AmountsPrice
from swatchwright.desktop.widgets.columns import Columns
from swatchwright.desktop.widgets.fitted_table import FittedTable
from swatchwright.desktop.widgets.piece_fields import card, label
from swatchwright.desktop.words import amounts as words
from swatchwright.errors import MendableError
from swatchwright.piece.amounts import Amounts
from swatchwright.piece.order import AmountsOrder
from swatchwright.piece.tins import TinSize

__all__ = ["AmountsPanel"]

_ROW_HEIGHT = 32
_TINS = 3
_LEAST = 420
"""Pixels without which what is asked for it goes below what to buy."""


class AmountsPanel(QWidget):
    """The table of paints to buy, and the price.

    Signals
    -------
    changed(PieceForm)
        What is left, sold or asked for was changed; the form with it.
    """

    changed = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._form: PieceForm | None = None
        self.model = BuyingModel(self)
        self.table = FittedTable(_TINS)
        self.trouble = label("", "warn")
        # It has room of its own, so that nothing moves when it comes or goes.
        policy = self.trouble.sizePolicy()
        policy.setRetainSizeWhenHidden(True)
        self.trouble.setSizePolicy(policy)
        self.trouble.hide()
        self.notes = label("", "small")
        self.price = AmountsPrice()
        row = Columns()
        around = QVBoxLayout(self)
        around.setContentsMargins(0, 0, 0, 0)
        around.addWidget(row)
        buying, column = card(words.BUY)
        column.addWidget(label(words.BUY_HINT, "quiet"))
        column.addWidget(self._table())
        column.addWidget(self.trouble)
        column.addWidget(self.notes)
        column.addStretch(1)
        row.put(buying, stretch=4, least=_LEAST)
        asking, column = card(words.PRICE)
        column.addWidget(self.price)
        row.put(asking, stretch=1)
        self.model.left_changed.connect(self._left)
        self.model.tins_changed.connect(self._tins)
        self.model.failed.connect(self._say)
        self.price.changed.connect(self.changed)

    def _table(self) -> FittedTable:
        table = self.table
        table.setAccessibleName(words.BUY)
        table.setModel(self.model)
        # Where all columns have no room, tins go on in a second line: nothing is scrolled sideways.
        table.let_wrap(wraps=True)
        follow_letters(table, self._grow_rows)
        table.fitted.connect(self._fit_rows)
        return table

    def show_form(self, shown: PieceForm) -> None:
        """Show what was set of stock and terms."""
        self._form = shown
        self.price.show_form(shown)

    def show_amounts(self, order: AmountsOrder, found: Amounts) -> None:
        """Show what to buy, and the price."""
        self.model.show_amounts(order, found)
        self.trouble.setVisible(self.model.holds_refused())
        self._fit_rows()
        self.notes.setText(" ".join(found.notes))
        self.price.show_amounts(found)

    def _fit_rows(self) -> None:
        """Show all rows whole, above the bar if there is one."""
        head, bar = (
            self.table.horizontalHeader().sizeHint().height(),
            self.table.horizontalScrollBar(),
        )
        below = bar.sizeHint().height() if bar.maximum() > 0 else 0
        self.table.resizeRowsToContents()
        self.table.setFixedHeight(head + self.table.verticalHeader().length() + below + 6)

    def _grow_rows(self) -> None:
        """Have rows for the letters that are chosen."""
        rows = self.table.verticalHeader()
        rows.setMinimumSectionSize(grown(_ROW_HEIGHT))
        rows.setDefaultSectionSize(grown(_ROW_HEIGHT))

    def _left(self, id_: str, ml: float) -> None:
        if self._form is not None:
            self.changed.emit(replace(self._form, left={**self._form.left, id_: ml}))

    def _tins(self, id_: str, tins: tuple[TinSize, ...]) -> None:
        if self._form is None:
            return
        kept = {name: sizes for name, sizes in self._form.tins.items() if name != id_}
        self.changed.emit(replace(self._form, tins={**kept, id_: tins} if tins else kept))

    def forget_refused(self) -> None:
        """Leave what could not be read: another job is on the bench."""
        self.model.forget_refused()
        self.trouble.hide()

    def _say(self, error: MendableError | None) -> None:
        if error is not None:
            self.trouble.setText(f"{error.what} {error.mend}")
        self.trouble.setVisible(self.model.holds_refused())
