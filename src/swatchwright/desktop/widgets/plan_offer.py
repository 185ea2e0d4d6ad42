"""Offers to begin a plan with the wash, where it was said that the piece is painted already."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.piece_fields import card, label
from swatchwright.desktop.words import plan as words

__all__ = ["PlanOffer"]

_BESIDE = 6
"""Pixels between the sentence and the button."""


class PlanOffer(QWidget):
    """A sentence with a button; in view only while there is something to offer.

    Signals
    -------
    taken()
        The plan is to begin with what goes over the paint.
    """

    taken = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.said = label(words.PAINTED_SAID)
        self.begin = QPushButton(words.BEGIN_WITH_WASH)
        self.begin.setObjectName("little")
        self.begin.setAccessibleDescription(words.PAINTED_SAID)
        self.begin.clicked.connect(self.taken)
        row = BreakingRow(_BESIDE)
        row.put(self.said, stretches=True)
        row.put(self.begin, pushed=True)
        sheet, inside = card("")
        inside.addWidget(row)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(sheet)
        self.hide()
