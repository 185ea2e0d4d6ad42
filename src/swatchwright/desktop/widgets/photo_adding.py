"""Saying what a further reference is before its box is drawn."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QComboBox,
    QLineEdit,
    QSizePolicy,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.references import (
    BLACK_CARD,
    marked_grey,
    marked_paint,
    marked_typed,
    nearest_first,
)
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.fields import ChoiceField, NumberField
from swatchwright.desktop.widgets.shelf_bits import button, label
from swatchwright.desktop.words import photo as words
from swatchwright.photo.reference import GREY_CARD, WHITE_PAPER
from swatchwright.shelf.jobs import MarkedReference
from swatchwright.values import Rect

__all__ = ["Adding"]

_GREYS = {words.A_GREY: GREY_CARD, words.WHITE: WHITE_PAPER, words.BLACK: BLACK_CARD}


class Adding(QWidget):
    """A row that asks what it is; the box is drawn on the photo.

    Signals
    -------
    closed()
        Nothing is to be added after all.
    """

    closed = Signal()

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self.kind = ChoiceField()
        self.kind.setAccessibleName(words.ADDING)
        self.kind.addItems([*_GREYS, words.A_PAINT, words.BY_NUMBERS])
        self.percent = NumberField()
        self.percent.setRange(2, 100)
        self.percent.setDecimals(1)
        self.percent.setSuffix(" %")
        self.percent.setAccessibleName(words.PERCENT_TOLD)
        self.percent.setToolTip(words.PERCENT_TOLD)
        self.paint = ChoiceField()
        self.paint.setAccessibleName(words.PAINT_TOLD)
        self.paint.setToolTip(words.PAINT_TOLD)
        self.paint.setSizeAdjustPolicy(
            QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        )
        self.paint.setMinimumContentsLength(14)
        self.numbers = QLineEdit()
        self.numbers.setAccessibleName(words.NUMBERS_TOLD)
        self.numbers.setToolTip(words.NUMBERS_TOLD)
        self.numbers.setPlaceholderText(words.NUMBERS_SHOWN)
        self.cancel = button(words.CANCEL, self.closed.emit, "little")
        self._fields = QStackedWidget()
        for field in (self.percent, self.paint, self.numbers):
            self._fields.addWidget(field)
        self._fields.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        row = BreakingRow()
        told = label(words.ADDING, wraps=False)
        told.setBuddy(self.kind)
        row.put(told, self.kind)
        row.put(self._fields, stretches=True)
        row.put(self.cancel)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.addWidget(row)
        self.kind.currentTextChanged.connect(self._show_field)
        self._show_field(self.kind.currentText())
        self.hide()

    def ask(self, kind: str) -> None:
        """Begin, with a kind that was advised or the last one."""
        self.paint.clear()
        wanted = self._session.wanted
        lab = None if wanted is None else wanted.lab
        for paint in nearest_first(self._session.shelf.paints, lab):
            self.paint.addItem(paint.name, paint)
        if kind:
            self.kind.setCurrentText(kind)
        self.show()
        self.kind.setFocus()

    def made(self, rect: Rect) -> MarkedReference:
        """Give the reference for a box.

        Raises
        ------
        MendableError
            If what was typed is no colour.
        """
        if self._fields.currentWidget() is self.percent:
            return marked_grey(rect, self.percent.value() / 100)
        paint = self.paint.currentData()
        if self._fields.currentWidget() is self.paint and paint is not None:
            return marked_paint(rect, paint)
        return marked_typed(rect, self.numbers.text())

    def _show_field(self, kind: str) -> None:
        if kind in _GREYS:
            self.percent.setValue(100 * _GREYS[kind])
            self._fields.setCurrentWidget(self.percent)
        else:
            self._fields.setCurrentWidget(self.paint if kind == words.A_PAINT else self.numbers)
