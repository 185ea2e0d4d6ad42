"""What is asked of every mix of the shelf, in a strip, and what cannot be kept of it."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QComboBox, QFrame, QLabel, QSizePolicy, QVBoxLayout, QWidget

from swatchwright.acts.wish import wishes_on
from swatchwright.desktop.letters import follow_letters, grown
from swatchwright.desktop.money import follow_money, in_her_money
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.fields import ChoiceField
from swatchwright.desktop.widgets.shelf_bits import amount, button, label
from swatchwright.desktop.words import shelf as shelf_words
from swatchwright.desktop.words import wishes as words
from swatchwright.mixing.wishes import Wishes

__all__ = ["WishStrip"]

_MOST_COATS, _MOST_TO_BUY, _MOST_PRICE = 6, 3, 100_000.0
_PRICE_WIDTH = 132
"""Pixels below which what the money is called does not widen the field."""


class WishStrip(QFrame):
    """Hiding, price and what is to be bought, for all mixes; and all wishes in words.

    Signals
    -------
    wished(object)
        Something else is asked (`Wishes`).
    """

    wished = Signal(object)

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self.setObjectName("sheet")
        self.coats = _choice(words.HIDES, [words.ANY, *map(shelf_words.coats_word, range(1, 7))])
        self.buy = _choice(words.TO_BUY, [words.ANY, *map(str, range(_MOST_TO_BUY + 1))])
        self.price = amount(words.COSTS, _MOST_PRICE, "", words.ANY, decimals=2)
        in_her_money(self.price)
        self.price.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        follow_letters(self.price, lambda: self.price.setMinimumWidth(grown(_PRICE_WIDTH)))
        self.none = button(words.NONE, lambda: self.wished.emit(Wishes()), "little")
        self.none.setToolTip(words.NONE_TIP)
        self.told = label(name="quiet")
        self.trouble = label(name="warn")
        self._lay_out()
        self.coats.activated.connect(self._wish)
        self.buy.activated.connect(self._wish)
        self.price.valueChanged.connect(self._wish)
        session.wishes_changed.connect(self._show)
        follow_money(self, self._show)

    def _lay_out(self) -> None:
        rows = QVBoxLayout(self)
        rows.setContentsMargins(14, 8, 14, 8)
        rows.setSpacing(5)
        row = BreakingRow()
        before: list[QWidget] = [label(words.OF_ALL, "strong", wraps=False)]
        for word, box, after in (
            (words.HIDES, self.coats, ""),
            (words.COSTS, self.price, ""),
            (words.TO_BUY, self.buy, words.TO_BUY_AFTER),
        ):
            told = QLabel(word)
            told.setBuddy(box)
            behind = [QLabel(after)] if after else []
            row.put(*before, told, box, *behind, gap=8)
            before = []
        row.put(self.none, gap=8, pushed=True)
        rows.addWidget(row)
        rows.addWidget(self.told)
        rows.addWidget(self.trouble)

    def _show(self) -> None:
        session, wishes = self._session, self._session.wishes
        self.coats.setCurrentIndex(wishes.most_coats or 0)
        self.buy.setCurrentIndex(0 if wishes.most_to_buy is None else wishes.most_to_buy + 1)
        self.price.blockSignals(True)
        self.price.setValue(wishes.most_price or 0.0)
        self.price.blockSignals(False)
        here = wishes_on(session.shelf, wishes)
        self.told.setText(words.wishes_told(here, session.shelf.paints))
        self.none.setEnabled(wishes != Wishes())
        trouble = session.wish_trouble
        self.trouble.setText("" if trouble is None else shelf_words.trouble(trouble))
        self.trouble.setVisible(trouble is not None)

    def _wish(self) -> None:
        self.wished.emit(
            replace(
                self._session.wishes,
                most_coats=self.coats.currentIndex() or None,
                most_to_buy=self.buy.currentIndex() - 1 if self.buy.currentIndex() else None,
                most_price=self.price.value() or None,
            )
        )


def _choice(told: str, entries: list[str]) -> QComboBox:
    box = ChoiceField()
    box.setAccessibleName(told)
    box.addItems(entries)
    return box
