"""Wet and dry of one stroke: a paint learns how it dries, and that is kept."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from swatchwright.acts.card_photo import CardColour
from swatchwright.acts.drying import StrokeLook, learn_stroke
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.brush_reading import BrushReading, ReadField
from swatchwright.desktop.widgets.colour_field import ColourField
from swatchwright.desktop.widgets.fields import ChoiceField
from swatchwright.desktop.widgets.shelf_bits import button, label
from swatchwright.desktop.words import shelf as words
from swatchwright.desktop.words import sitting as sitting_words
from swatchwright.errors import MendableError
from swatchwright.values import Lab

__all__ = ["PaintDrying"]

_BESIDE = 10
"""Pixels between what is set in a row."""


class PaintDrying(QWidget):
    """Two fields to read, wet and dry, and what comes of them.

    Signals
    -------
    kept(object)
        The paint that has learnt is to be kept (`Shelf`).
    left()
        Back to the shelf.
    """

    kept = Signal(object)
    left = Signal()

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self._labs: list[Lab | None] = [None, None]
        self.found: StrokeLook | None = None
        self.paint = ChoiceField()
        self.paint.setAccessibleName(words.WHICH_PAINT)
        self.paint.setMinimumWidth(260)
        self.reading = BrushReading(session, "stroke", sitting_words.OF_STROKE)
        self.learn = button(words.LEARN, self._learn, "main")
        self.keep = button(words.KEEP_DRYING, self._keep, "main")
        self.told = label()
        self.trouble = label(name="warn")
        self._field = QHBoxLayout()
        self.field: ColourField | None = None
        self._lay_out()
        self.reading.read.connect(self._read)
        self.paint.activated.connect(self._forget)
        session.shelf_changed.connect(self.show_paints)
        self._show()

    def _lay_out(self) -> None:
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(10)
        top = BreakingRow(_BESIDE)
        told = label(words.WHICH_PAINT, "strong", wraps=False)
        told.setBuddy(self.paint)
        top.put(told, self.paint)
        top.put(self.learn)
        top.put(button(words.BACK_TO_SHELF, self.left.emit), pushed=True)
        rows.addWidget(top)
        rows.addWidget(self.trouble)
        rows.addWidget(self.reading, 1)
        foot = QHBoxLayout()
        foot.setSpacing(14)
        foot.addLayout(self._field)
        foot.addWidget(self.told, 1)
        foot.addWidget(self.keep)
        rows.addLayout(foot)

    def show_paints(self, chosen: str = "") -> None:
        """Offer the paints of the shelf, and one of them first."""
        before = str(self.paint.currentData() or "")
        self.paint.clear()
        for paint in self._session.shelf.paints:
            self.paint.addItem(paint.name, paint.id)
        self.paint.setCurrentIndex(max(0, self.paint.findData(chosen or before)))
        if str(self.paint.currentData() or "") != before:
            self._forget()
        self._show()

    def say(self, text: str) -> None:
        """Say what came of keeping it."""
        self.told.setText(text)

    def _forget(self) -> None:
        """Begin anew with another paint."""
        self._labs, self.found = [None, None], None
        self.trouble.setText("")
        self.reading.take_turn(0)
        self._show()

    def _read(self, number: int, colour: CardColour | None, by: str) -> None:
        del by
        self._labs[number] = None if colour is None else colour.lab
        self.found = None
        self.trouble.setText("")
        self._show()

    def _learn(self) -> None:
        wet, dry = self._labs
        if wet is None or dry is None:
            return
        shelf, id_ = self._session.shelf, str(self.paint.currentData())
        self._session.workshop.start(
            "stroke-learn",
            words.LEARNING,
            lambda _: learn_stroke(shelf, id_, wet=wet, dry=dry),
            self._learnt,
            self._failed,
        )

    def _learnt(self, found: StrokeLook) -> None:
        self.found = found
        self._show()

    def _failed(self, what: object) -> None:
        if isinstance(what, MendableError):
            self.trouble.setText(words.trouble(what))
            self._show()
        else:
            self._session.workshop.failed.emit(what)

    def _show(self) -> None:
        both = all(lab is not None for lab in self._labs)
        self.learn.setEnabled(both)
        self.learn.setToolTip("" if both else words.BOTH_FIRST)
        self.trouble.setVisible(bool(self.trouble.text()))
        self.reading.show_fields(
            [ReadField(word, lab) for word, lab in zip(words.STROKE, self._labs, strict=True)]
        )
        if self.field is not None:
            self.field.hide()
            self.field.deleteLater()
            self.field = None
        found = self.found
        self.keep.setVisible(found is not None)
        self.told.setText("" if found is None else words.drying_line(found.drying))
        if found is None:
            return
        names = (words.WET_SEEN, words.WET_TYPICAL, words.WET_OWN)
        self.field = ColourField(found.seen, found.by_kind, found.own, names=names)
        self.field.setFixedSize(380, 120)
        self._field.addWidget(self.field)

    def _keep(self) -> None:
        if self.found is not None:
            self.kept.emit(self.found.shelf)
