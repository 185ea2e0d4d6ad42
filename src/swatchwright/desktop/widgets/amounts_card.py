"""How much to mix in one go, large, with why, and what it is poured from."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QPushButton, QVBoxLayout, QWidget

from swatchwright.desktop.letters import follow_letters, grown
from swatchwright.desktop.widgets.piece_fields import clear, label
from swatchwright.desktop.words import amounts as words
from swatchwright.piece.amounts import Amounts, Batch
from swatchwright.piece.order import ProductKind

__all__ = ["AmountsCard"]

_LARGE = "font-size: {}px; font-weight: 600;"


class AmountsCard(QWidget):
    """Each batch with its amount; those of paint first and large.

    Signals
    -------
    taken(float)
        An amount, ml, is to be mixed.
    """

    taken = Signal(float)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.take: list[QPushButton] = []
        self.trouble = label("", "warn")
        self.trouble.hide()
        self._column = QVBoxLayout()
        self._column.setSpacing(6)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(8)
        rows.addWidget(self.trouble)
        rows.addLayout(self._column)
        rows.addStretch(1)

    def say(self, text: str) -> None:
        """Say what is wrong in place of the amounts."""
        clear(self._column)
        self.take = []
        self.trouble.setText(text)
        self.trouble.show()

    def show_amounts(self, found: Amounts) -> None:
        """Show all batches."""
        self.trouble.hide()
        clear(self._column)
        self.take = []
        paints = [b for b in found.batches if b.kind is ProductKind.PAINT]
        zones: dict[str, list[str]] = {}
        for row in found.coatings:
            zones.setdefault(row.product, []).append(row.zone)
        names = words.names_of(found)
        for batch in paints:
            self._paint(batch, zones[batch.product], names, alone=len(paints) == 1)
        for batch in found.batches:
            if batch.kind is not ProductKind.PAINT:
                self._other(batch, zones[batch.product], names)
        if paints:
            self._column.addWidget(label(words.ONE_GO, "quiet"))

    def _paint(self, batch: Batch, zones: list[str], names: dict[str, str], *, alone: bool) -> None:
        if not alone:
            self._column.addWidget(label(words.batch_name(batch, zones), "strong"))
        number = label(words.big_amount(batch.mix_ml), "big")
        if alone:
            follow_letters(number, lambda: number.setStyleSheet(_LARGE.format(grown(38))))
        number.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self._column.addWidget(number)
        self._column.addWidget(label(words.why_line(batch), "quiet"))
        if len(batch.paints) > 1 or batch.thinner_ml:
            self._column.addLayout(_pour_rows(batch, names))
        button = QPushButton(words.USE_AMOUNT)
        button.setObjectName("" if alone else "little")
        button.setAccessibleName(words.use_amount_name(batch, zones))
        button.setToolTip(words.USE_AMOUNT_TIP)
        button.clicked.connect(lambda: self._take(button, batch.mix_ml))
        self.take.append(button)
        self._column.addWidget(button, 0, Qt.AlignmentFlag.AlignLeft)

    def _take(self, button: QPushButton, ml: float) -> None:
        self.taken.emit(ml)
        button.setText(words.TAKEN)

    def _other(self, batch: Batch, zones: list[str], names: dict[str, str]) -> None:
        self._column.addWidget(label(words.batch_line(batch, zones), "strong"))
        if batch.thinner_ml or len(batch.paints) > 1:
            self._column.addLayout(_pour_rows(batch, names))


def _pour_rows(batch: Batch, names: dict[str, str]) -> QGridLayout:
    grid = QGridLayout()
    grid.setHorizontalSpacing(10)
    grid.setVerticalSpacing(2)
    grid.setColumnStretch(1, 1)
    for row, (amount, name) in enumerate(words.pours(batch, names)):
        ml = label(amount, "strong", wraps=False)
        ml.setAlignment(Qt.AlignmentFlag.AlignRight)
        grid.addWidget(ml, row, 0, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(label(name), row, 1)
    return grid
