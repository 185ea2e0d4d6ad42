"""How a sample looks beside the cloth, said in words where there is no camera."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QWidget

from swatchwright.acts.sample_judged import LIKE_THE_CLOTH
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.piece_fields import choice, label
from swatchwright.desktop.widgets.shelf_bits import button
from swatchwright.desktop.words import sample as words

__all__ = ["SampleEye"]


class SampleEye(QWidget):
    """A touch, clearly or much; too light, too red …; or like the cloth.

    Signals
    -------
    said(str)
        How it looks, in the words that are understood.
    """

    said = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.amount = choice(words.amounts(), words.EYE_AMOUNT)
        self.first = choice(words.ways(), words.EYE_FIRST)
        second = ((words.EYE_NOTHING_ELSE, ""), *words.ways())
        self.second = choice(second, words.EYE_SECOND)
        self.take = button(words.EYE_TAKE, self._take)
        self.like = button(words.EYE_LIKE, lambda: self.said.emit(LIKE_THE_CLOTH))
        rows = QGridLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setVerticalSpacing(4)
        rows.addWidget(label(words.BY_EYE, "quiet"), 0, 0)
        row = BreakingRow(6)
        row.put(self.amount, self.first)
        row.put(label(words.EYE_AND, wraps=False), self.second)
        row.put(self.take)
        row.put(self.like)
        rows.addWidget(row, 1, 0)

    def _take(self) -> None:
        second = self.second.currentData()
        told = words.said(self.amount.currentData(), self.first.currentData(), second)
        self.said.emit(told)
