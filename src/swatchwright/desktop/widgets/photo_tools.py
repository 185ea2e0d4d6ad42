"""Which box a drag draws, what the card reflects, and what else is of known colour."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QCheckBox,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.references import MOST_MARKED
from swatchwright.desktop import words as all_words
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.fields import ChoiceField, NumberField
from swatchwright.desktop.widgets.photo_adding import Adding
from swatchwright.desktop.widgets.photo_proposal import PhotoProposal
from swatchwright.desktop.widgets.photo_references import FurtherReferences
from swatchwright.desktop.widgets.photo_view import Mark, PhotoView, Which
from swatchwright.desktop.widgets.shelf_bits import label
from swatchwright.desktop.words import photo as words
from swatchwright.errors import MendableError
from swatchwright.language import figure
from swatchwright.photo.reference import GREY_CARD, WHITE_PAPER
from swatchwright.shelf.jobs import MarkedReference
from swatchwright.values import Rect

__all__ = ["MarkTools"]

_BESIDE = 6
"""Pixels between a hint and what stands beside it."""


class MarkTools(QWidget):
    """The buttons of the boxes, and a hint for the one that is meant.

    Signals
    -------
    asking()
        It is asked what a further reference is, or no more.
    """

    asking = Signal()

    def __init__(self, session: Session, view: PhotoView) -> None:
        super().__init__()
        self._session, self._view = session, view
        self._mode: Which = Mark.GREY
        self._live = ""
        self.buttons = {
            Mark.GREY: QPushButton(all_words.MARK_GREY),
            Mark.CLOTH: QPushButton(all_words.MARK_CLOTH),
        }
        for mark, button in self.buttons.items():
            button.setCheckable(True)
            button.setAccessibleName(f"{all_words.MARK} {button.text()}")
            button.clicked.connect(lambda _=False, mark=mark: self.set_mode(mark))
        self.card = ChoiceField()
        self.card.addItem(all_words.CARD_GREY, GREY_CARD)
        self.card.addItem(all_words.CARD_WHITE, WHITE_PAPER)
        self.card.addItem(all_words.CARD_OTHER, None)
        self.percent = NumberField()
        self.put_right = QCheckBox(all_words.PUT_RIGHT)
        self.put_right.setChecked(True)
        self.hint = label("", "quiet")
        self.proposal = PhotoProposal(session, view)
        self.adding = Adding(session)
        self.further = FurtherReferences()
        self._lay_out()
        self._connect()
        self._show()
        self.set_mode(Mark.GREY)

    def _lay_out(self) -> None:
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(6)
        row = BreakingRow()
        told = label(all_words.CARD_IS, wraps=False)
        told.setBuddy(self.card)
        self.card.setAccessibleName(all_words.CARD_IS)
        self.percent.setRange(2, 100)
        self.percent.setDecimals(1)
        self.percent.setSuffix(" %")
        self.percent.setAccessibleName(all_words.CARD_ASK)
        self.percent.setToolTip(all_words.CARD_ASK)
        self.percent.hide()
        grey, cloth = self.buttons.values()
        row.put(label(all_words.MARK, wraps=False), grey)
        row.put(told, self.card, self.percent)
        row.put(cloth)
        rows.addWidget(row)
        below = BreakingRow(_BESIDE)
        below.put(self.hint, stretches=True)
        below.put(self.proposal, stretches=True)
        below.put(self.put_right, pushed=True)
        rows.addWidget(below)
        rows.addWidget(self.adding)
        rows.addWidget(self.further)

    def _connect(self) -> None:
        self.card.activated.connect(self._card_chosen)
        self.percent.editingFinished.connect(self._percent_given)
        self.further.chosen.connect(self.set_mode)
        self.further.dropped.connect(self.drop)
        self.adding.closed.connect(self.end_adding)
        self.proposal.changed.connect(self._show_hint)
        self._session.photo_changed.connect(self._first_mode)
        self._session.marks_changed.connect(self._show)

    def keep_height(self) -> None:
        """Leave room for a hint of two lines, so that the photo below keeps its place."""
        lines = 2 * self.hint.fontMetrics().lineSpacing() + 2
        high = max(lines, self.proposal.yes.sizeHint().height())
        for one in (self.hint, self.proposal):
            one.setMinimumHeight(high)

    # --- which box -------------------------------------------------------------------------------

    def set_mode(self, mark: Which) -> None:
        """Say which box a drag draws."""
        if isinstance(mark, Mark) or mark in self.further.buttons:
            self._ask_no_more()
        self._mode = mark
        self._view.set_mode(mark)
        self._show_mode()

    def tell(self, live: str) -> None:
        """Tell what is wrong with the box while it is dragged; empty to give the hint again."""
        self._live = live
        self._show_hint()

    def _first_mode(self) -> None:
        """Begin with the card on a new photo."""
        marks = self._session.marks
        self.set_mode(Mark.GREY if marks.grey is None else Mark.CLOTH)

    def _show(self) -> None:
        marks = self._session.marks
        place = self.card.findData(marks.reflectance)
        if place < 0:
            place = self.card.count() - 1
            self.card.insertItem(place, figure(marks.reflectance, ".1%"), marks.reflectance)
        self.card.setCurrentIndex(place)
        self.further.show_references(marks.references)
        self._view.show_boxes(marks.grey, marks.cloth)
        self._view.show_more(
            {n: (marked.name, marked.rect) for n, marked in enumerate(marks.references, start=1)}
        )
        if not isinstance(self._mode, Mark) and self._mode > len(marks.references):
            self.set_mode(Mark.CLOTH if self.adding.isHidden() else self._mode)
        if marks.grey is not None and marks.cloth is None and isinstance(self._mode, Mark):
            self.set_mode(Mark.CLOTH)
        self._show_mode()

    def _show_mode(self) -> None:
        for mark, button in (*self.buttons.items(), *self.further.buttons.items()):
            button.setChecked(mark == self._mode)
        self._show_hint()

    def _show_hint(self) -> None:
        marks = self._session.marks
        self.hint.setVisible(not self.proposal.asked or bool(self._live))
        if self._live:
            self.hint.setText(self._live)
        elif not isinstance(self._mode, Mark):
            done = self._mode <= len(marks.references)
            self.hint.setText(words.HINT_FURTHER_DONE if done else words.HINT_FURTHER)
        elif (marks.grey if self._mode is Mark.GREY else marks.cloth) is not None:
            self.hint.setText(all_words.HINT_DONE)
        else:
            grey = self._mode is Mark.GREY
            self.hint.setText(all_words.HINT_GREY if grey else all_words.HINT_CLOTH)

    # --- what the card reflects ------------------------------------------------------------------

    def _card_chosen(self, place: int) -> None:
        reflectance = self.card.itemData(place)
        if reflectance is not None:
            self._session.set_reflectance(float(reflectance))
            return
        self.percent.setValue(self._session.marks.reflectance * 100)
        self.card.hide()
        self.percent.show()
        self.percent.setFocus()
        self.percent.selectAll()

    def _percent_given(self) -> None:
        if self.card.isHidden():
            self.percent.hide()
            self.card.show()
            self._session.set_reflectance(round(self.percent.value() / 100, 4))
            self._show()

    # --- further references ----------------------------------------------------------------------

    def add(self, kind: str) -> None:
        """Ask what is to be added, and draw its box next."""
        count = len(self._session.marks.references)
        if count >= MOST_MARKED:
            self._session.workshop.failed.emit(MendableError(*words.TOO_MANY))
            return
        self.adding.ask(kind)
        self.set_mode(count + 1)
        self.asking.emit()

    def end_adding(self) -> None:
        """Add nothing after all."""
        self._ask_no_more()
        self.set_mode(Mark.CLOTH)

    def _ask_no_more(self) -> None:
        if not self.adding.isHidden():
            self.adding.hide()
            self.asking.emit()

    def mark_further(self, number: int, rect: Rect | None) -> None:
        """Set, move or take away the box of a further reference."""
        references = self._session.marks.references
        if rect is None:
            self.drop(number)
            return
        if number <= len(references):
            moved = replace(references[number - 1], rect=rect)
            self._set((*references[: number - 1], moved, *references[number:]))
            return
        try:
            made = self.adding.made(rect)
        except MendableError as error:
            self._session.workshop.failed.emit(error)
            self._show()
            return
        self._ask_no_more()
        self._set((*references, made))

    def drop(self, number: int) -> None:
        """Take a further reference away."""
        references = self._session.marks.references
        if number <= len(references):
            self._set((*references[: number - 1], *references[number:]))
            self.set_mode(Mark.CLOTH)
            # The button that was pressed is gone.
            self._view.setFocus()

    def _set(self, references: tuple[MarkedReference, ...]) -> None:
        marks = replace(self._session.marks, references=references)
        self._session.set_marks(marks, words.DID_ADD)
