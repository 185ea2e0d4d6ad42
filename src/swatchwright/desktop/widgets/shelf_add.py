"""Adding a paint to the shelf by hand: name, kind, colour, how that is known, and the tins."""

from __future__ import annotations

from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QFormLayout, QFrame, QLineEdit, QVBoxLayout, QWidget

from swatchwright.acts.card_photo import CardColour
from swatchwright.acts.last_sitting import SittingPhoto
from swatchwright.acts.own_paint import ColourFrom, moved_from, paint_by_hand
from swatchwright.acts.recipes import read_colour
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.brush_marker import BrushMarker
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.widgets.columns import Columns
from swatchwright.desktop.widgets.fields import ChoiceField
from swatchwright.desktop.widgets.shelf_bits import button, image_of, label, scrolled
from swatchwright.desktop.widgets.shelf_tins import ShelfTins
from swatchwright.desktop.words import own_paint as words
from swatchwright.desktop.words import shelf as shelf_words
from swatchwright.desktop.words import sitting as sitting_words
from swatchwright.desktop.workers import Job
from swatchwright.errors import MendableError
from swatchwright.paint.family import Family
from swatchwright.paint.paints import Paint
from swatchwright.values import Lab

__all__ = ["ShelfAdd"]

_KIND = "own-paint"
_PREVIEW = 1400
_FORM_WIDTH, _PHOTO_WIDTH, _HIGH = 440, 400, 380


class ShelfAdd(QWidget):
    """The form on the left, a photo to take the colour from on the right.

    Signals
    -------
    made(object, object)
        A paint is to go on the shelf (`Paint`), and how far its colour is from what was given for
        it, CIEDE2000.
    left()
        Back to the shelf.
    """

    made = Signal(object, float)
    left = Signal()

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self._taken: tuple[str, ...] = ()
        self._picked: tuple[str, CardColour] | None = None
        self.name = QLineEdit()
        self.name.setPlaceholderText(words.NAME_EXAMPLE)
        self.family = ChoiceField()
        for family in Family:
            self.family.addItem(sitting_words.family_item(family), family)
        self.colour = QLineEdit()
        self.colour.setPlaceholderText(words.COLOUR_EXAMPLE)
        self.colour.setToolTip(words.COLOUR_TIP)
        self.seen = _Seen()
        self.known = ChoiceField()
        for how in ColourFrom:
            self.known.addItem(words.how_item(how), how)
        self.tins = ShelfTins()
        self.trouble = label(name="warn")
        self.trouble.hide()
        self.add = button(words.PUT_ON, self._add, "main")
        self.back = button(shelf_words.BACK_TO_SHELF, self.left.emit)
        self.now = label(name="strong")
        self.marker = BrushMarker(session, _KIND, words.OF_PAINT)
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        around = QVBoxLayout(self)
        around.setContentsMargins(0, 0, 0, 0)
        columns = Columns(14)
        around.addWidget(columns)
        holder, photo = QWidget(), QWidget()
        rows = QVBoxLayout(holder)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.addWidget(self._form())
        rows.addStretch(1)
        columns.put(scrolled(holder, words.HEADING), wide=_FORM_WIDTH)
        right = QVBoxLayout(photo)
        right.setContentsMargins(0, 0, 0, 0)
        right.addWidget(self.now)
        right.addWidget(self.marker, 1)
        columns.put(photo, stretch=3, least=_PHOTO_WIDTH, high=_HIGH)

    def _form(self) -> QFrame:
        sheet = QFrame()
        sheet.setObjectName("sheet")
        form = QFormLayout(sheet)
        form.setContentsMargins(16, 12, 16, 12)
        form.setVerticalSpacing(10)
        form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapLongRows)
        for box in (self.name, self.colour):
            box.setObjectName("typed")
        colour = BreakingRow()
        colour.put(self.colour, stretches=True)
        colour.put(self.seen)
        rows: tuple[tuple[str, QWidget, QWidget], ...] = (
            (words.NAME, self.name, self.name),
            (words.KIND, self.family, self.family),
            (words.COLOUR, colour, self.colour),
            (words.KNOWN, self.known, self.known),
            (words.TINS, self.tins, self.tins),
        )
        for told, row, field in rows:
            field.setAccessibleName(told)
            form.addRow(told, row)
        form.addRow(self.trouble)
        foot = BreakingRow()
        foot.put(self.add)
        foot.put(self.back)
        form.addRow(foot)
        return sheet

    def _connect(self) -> None:
        self.colour.textChanged.connect(self._show_seen)
        for box in (self.name, self.colour):
            box.returnPressed.connect(self._add)
        self.marker.read.connect(self._read)
        self.marker.refused.connect(lambda _, what: self._fail(what))
        self.marker.changed.connect(self._show_turn)
        self.marker.passed.connect(self._show_turn)

    # --- showing ---------------------------------------------------------------------------------

    def begin(self, taken: tuple[str, ...]) -> None:
        """Begin with an empty form, and with the photo that lies on the bench.

        Parameters
        ----------
        taken
            Ids of kept paints, which may be others than are in use.
        """
        self._taken, self._picked = taken, None
        self.name.clear()
        self.colour.clear()
        self.known.setCurrentIndex(0)
        self.tins.show_tins(())
        self.trouble.hide()
        self._lay_photo()
        self._show_turn()

    def _lay_photo(self) -> None:
        session, photo = self._session, self._session.photo
        if photo is None or photo is self.marker.photo:
            return
        marks, path = session.marks, session.path or Path(photo.facts.name)
        laid = SittingPhoto(photo, path, None, marks.grey, {})

        def done(pixels: NDArray[np.uint8]) -> None:
            if session.photo is photo:
                self.marker.lay(laid, {}, marks.reflectance, image_of(pixels))

        session.workshop.start(
            f"{_KIND}-bench", words.WORKING, lambda _: photo.preview(_PREVIEW), done
        )

    def _show_turn(self) -> None:
        marker, picked = self.marker, self._picked
        marker.show_turn(0, [None if picked is None else screen_colour(picked[1].lab)])
        told = "" if marker.photo is None else words.THEN_PAINT
        if marker.photo is not None and marker.grey is None:
            told = words.FIRST_GREY
        elif picked is not None and picked[0] == self.colour.text():
            told = words.TAKEN
        self.now.setText(told)
        self.now.setVisible(bool(told))

    def _show_seen(self) -> None:
        try:
            lab = read_colour(self.colour.text()).lab
        except MendableError:
            lab = None
        self.seen.show_colour(lab)

    # --- the paint -------------------------------------------------------------------------------

    def _read(self, number: int, colour: CardColour, by: str) -> None:
        """Take a colour from the photo, and how far it may be off with it."""
        del number, by
        text = ", ".join(f"{value:.1f}" for value in colour.lab.triple)
        self._picked = text, colour
        self.trouble.hide()
        self.colour.setText(text)
        self.known.setCurrentIndex(self.known.findData(ColourFrom.PHOTO))
        self._show_turn()

    def _given(self) -> CardColour:
        """Give the colour and how far it may be off, as it stands there."""
        text, how = self.colour.text(), ColourFrom(self.known.currentData())
        if not text.strip():
            raise MendableError(*words.NO_COLOUR)
        if self._picked is not None and self._picked[0] == text and how is ColourFrom.PHOTO:
            return self._picked[1]
        return CardColour(read_colour(text).lab, how.usually_off)

    def _add(self) -> None:
        """Work out the paint, or say what is wrong with what was entered."""
        try:
            given = self._given()
        except MendableError as error:
            self._fail(error)
            return
        self.trouble.hide()
        name, family = self.name.text(), Family(self.family.currentData())
        shelf, taken, tins = self._session.shelf, self._taken, self.tins.tins()

        def work(job: Job) -> tuple[Paint, float]:
            paint = paint_by_hand(
                name,
                family,
                given.lab,
                shelf=shelf,
                usually_off=given.usually_off,
                tins=tins,
                taken=taken,
                stopped=job.stopped,
            )
            return paint, moved_from(paint, given.lab)

        self._session.workshop.start(
            f"{_KIND}-fit",
            words.WORKING,
            work,
            lambda made: self.made.emit(*made),
            self._fail,
        )

    def _fail(self, what: object) -> None:
        """Say in place what is wrong; our own faults go where they are reported."""
        if isinstance(what, MendableError):
            self.trouble.setText(shelf_words.trouble(what))
            self.trouble.show()
        else:
            self._session.workshop.failed.emit(what)


class _Seen(QWidget):
    """A field of the colour that is typed; empty while it is none."""

    def __init__(self) -> None:
        super().__init__()
        self.colour: QColor | None = None
        self.setMinimumSize(64, 30)
        self.setAccessibleName(words.SEEN)

    def show_colour(self, lab: Lab | None) -> None:
        """Show a colour, or none."""
        self.colour = None if lab is None else screen_colour(lab)
        self.setAccessibleDescription("" if self.colour is None else self.colour.name())
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint it; a frame where there is none yet."""
        del event
        painter = QPainter(self)
        if self.colour is not None:
            painter.fillRect(self.rect(), self.colour)
        else:
            painter.setPen(self.palette().placeholderText().color())
            painter.drawRect(self.rect().adjusted(0, 0, -1, -1))
        painter.end()
