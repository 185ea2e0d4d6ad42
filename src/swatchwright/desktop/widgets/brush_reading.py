"""Reading colours one after another: off a photo beside the grey, typed, or both in turn."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtCore import QSize, QTimer, Signal
from PySide6.QtGui import QImage
from PySide6.QtWidgets import (
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.card_photo import CardColour
from swatchwright.acts.last_sitting import SittingPhoto
from swatchwright.acts.own_paint import ColourFrom
from swatchwright.acts.recipes import read_colour
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.brush_marker import BrushMarker
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.widgets.columns import Columns
from swatchwright.desktop.widgets.fields import ChoiceField
from swatchwright.desktop.widgets.photo_view import Mark
from swatchwright.desktop.widgets.shelf_bits import button, label, swatch
from swatchwright.desktop.words import shelf as shelf_words
from swatchwright.desktop.words import sitting as words
from swatchwright.errors import MendableError
from swatchwright.values import Lab, Rect

__all__ = ["BrushReading", "ReadField"]

_SWATCH = QSize(44, 26)
_BESIDE = 8
"""Pixels between what is in a row."""
_PHOTO_WIDTH, _HIGH = 380, 380
"""Pixels without which the fields go below the photo, and the height of each there."""


@dataclass(frozen=True, slots=True)
class ReadField:
    """A field that is to be read: what is on it, what was read so far, and its own key."""

    label: str
    lab: Lab | None = None
    key: str = ""


class BrushReading(QWidget):
    """A photo on the left, the fields in their order on the right, one of them in turn.

    Signals
    -------
    read(int, object, str)
        A field was read: its place from 0, its `CardColour`, or None to forget it, and by what.
    """

    read = Signal(int, object, str)

    def __init__(self, session: Session, kind: str, told: words.ReadWords) -> None:
        """Take a kind of work of its own, as two of these may stand on one page."""
        super().__init__()
        self._session, self._told = session, told
        self._fields: tuple[ReadField, ...] = ()
        self._turn = 0
        self._moving_on = False
        self.one_photo = False
        self.marker = BrushMarker(session, kind, told)
        self.view, self.modes = self.marker.view, self.marker.modes
        self.now = label(name="heading")
        self.list = QListWidget()
        self.typed = QLineEdit()
        self.means = ChoiceField()
        self.forget = button(words.FORGET, self._forget, "little")
        self.away = button(words.PUT_AWAY, self._put_away, "little", tip=words.PUT_AWAY_TIP)
        self.away.hide()
        self.trouble = label(name="warn")
        self.trouble.hide()
        self._extra = QWidget()
        self._lay_out()
        self._connect()

    def put_before(self, widget: QWidget) -> None:
        """Put something before the buttons below the fields."""
        layout = self._extra.layout()
        if layout is not None:
            layout.addWidget(widget)
            self._extra.show()

    def _lay_out(self) -> None:
        around = QVBoxLayout(self)
        around.setContentsMargins(0, 0, 0, 0)
        columns = Columns(14)
        around.addWidget(columns)
        photo = QWidget()
        left = QVBoxLayout(photo)
        left.setContentsMargins(0, 0, 0, 0)
        left.setSpacing(8)
        left.addWidget(self.now)
        left.addWidget(self.marker, 1)
        left.addWidget(self.trouble)
        columns.put(photo, stretch=3, least=_PHOTO_WIDTH, high=_HIGH)
        columns.put(self._right(), stretch=2, high=_HIGH)

    def _right(self) -> QWidget:
        side = QWidget()
        right = QVBoxLayout(side)
        right.setContentsMargins(0, 0, 0, 0)
        right.setSpacing(8)
        self.list.setAccessibleName(words.FIELDS_NAME)
        self.list.setIconSize(_SWATCH)
        self.list.setWordWrap(True)
        right.addWidget(self.list, 1)
        self.typed.setObjectName("typed")
        self.typed.setPlaceholderText(words.TYPE_LAB)
        self.typed.setAccessibleName(words.TYPE_LAB)
        self.typed.setToolTip(words.TYPE_LAB_TIP)
        for how in ColourFrom:
            self.means.addItem(words.how_read(how), how.usually_off)
        self.means.setAccessibleName(words.READ_WITH)
        row = BreakingRow(_BESIDE)
        row.put(self.typed, stretches=True)
        told = label(words.READ_WITH, wraps=False)
        told.setBuddy(self.means)
        row.put(told, self.means)
        right.addWidget(row)
        foot = BreakingRow(_BESIDE)
        self._extra.hide()
        extra = QVBoxLayout(self._extra)
        extra.setContentsMargins(0, 0, 0, 0)
        foot.put(self._extra)
        foot.put(self.forget)
        foot.put(self.away)
        right.addWidget(foot)
        return side

    def _connect(self) -> None:
        self.marker.read.connect(self._box_read)
        self.marker.refused.connect(self._refused)
        self.marker.passed.connect(lambda: self.take_turn(self._next_after(self._turn)))
        self.marker.changed.connect(self._photo_changed)
        self.list.currentRowChanged.connect(self._row_chosen)
        self.typed.returnPressed.connect(self._typed)

    # --- the fields ------------------------------------------------------------------------------

    def show_fields(self, fields: Sequence[ReadField]) -> None:
        """Show what is to be read and what was; the turn stays, or goes on after a reading."""
        self._follow(fields)
        self._fields = tuple(fields)
        self.list.blockSignals(True)
        if self.list.count() != len(fields):
            self.list.clear()
            self.list.addItems([""] * len(fields))
        for n, field in enumerate(self._fields):
            _show_field(self.list.item(n), n, field)
        self.list.blockSignals(False)
        if self._moving_on:
            self._moving_on = False
            self._turn = self._next_after(self._turn)
        self.take_turn(min(self._turn, max(0, len(self._fields) - 1)))

    def _follow(self, fields: Sequence[ReadField]) -> None:
        """Let the boxes in the photo follow their fields."""
        if [field.key for field in fields] != [field.key for field in self._fields]:
            places = {field.key: n for n, field in enumerate(fields)}
            before = {n: places.get(field.key) for n, field in enumerate(self._fields)}
            self.marker.renumber({n: to for n, to in before.items() if to is not None})

    def take_turn(self, turn: int) -> None:
        """Let it be the turn of a field."""
        self._turn = turn
        self.list.blockSignals(True)
        self.list.setCurrentRow(turn)
        self.list.blockSignals(False)
        labs = [field.lab for field in self._fields]
        self.marker.show_turn(turn, [None if lab is None else screen_colour(lab) for lab in labs])
        field = self._fields[turn] if turn < len(self._fields) else None
        self.forget.setEnabled(field is not None and field.lab is not None)
        self.now.setText(self._say_now(field))

    @property
    def turn(self) -> int:
        """The place of the field that is read next, from 0."""
        return self._turn

    def open_file(self, path: Path) -> None:
        """Open a photo of the fields."""
        self.trouble.hide()
        self.marker.open_file(path)

    def marked(self) -> dict[str, Rect]:
        """Give the boxes in the photo by the keys of their fields."""
        boxes, fields = self.marker.boxes, enumerate(self._fields)
        return {field.key: boxes[n] for n, field in fields if n in boxes}

    def lay(self, laid: SittingPhoto, reflectance: float, image: QImage) -> None:
        """Lay a photo that was marked before, and read what was not read when it was left."""
        keys = {n: field.key for n, field in enumerate(self._fields)}
        boxes = {n: laid.boxes[key] for n, key in keys.items() if key in laid.boxes}
        self.marker.lay(laid, boxes, reflectance, image)
        for number in boxes:
            if self._fields[number].lab is None:
                self.marker.read_again(number)
        if self._fields:
            self.take_turn(max(0, self._next_after(-1)))

    def mark_rest(self, grey: Rect, boxes: Mapping[str, Rect]) -> None:
        """Mark the grey and the fields that have no box yet, by their keys, and read these."""
        keys = {n: field.key for n, field in enumerate(self._fields)}
        self.marker.mark_rest(grey, {n: boxes[key] for n, key in keys.items() if key in boxes})

    def all_marked(self) -> bool:
        """Tell whether the grey and every field have their box."""
        boxes = self.marker.boxes
        return self.marker.grey is not None and all(n in boxes for n in range(len(self._fields)))

    def say(self, text: str) -> None:
        """Say something in place, until something else is done."""
        self.trouble.setText(text)
        self.trouble.show()

    def refuse_photo(self, what: object) -> None:
        """Say why the photo is not there."""
        self._fail(what)

    def _next_after(self, turn: int) -> int:
        count, boxes = len(self._fields), self.marker.boxes
        order = [(turn + 1 + n) % count for n in range(count)] if count else []
        open_ones = (n for n in order if self._fields[n].lab is None and n not in boxes)
        return next(open_ones, turn)

    def _say_now(self, field: ReadField | None) -> str:
        if field is None:
            return ""
        if all(one.lab is not None for one in self._fields):
            return self._told.done
        photo = self.marker.photo is not None
        if photo and self.marker.grey is None:
            return words.FIRST_GREY
        return words.next_line(self._turn + 1, field.label, read=field.lab is not None, photo=photo)

    def _row_chosen(self, row: int) -> None:
        if row >= 0:
            self.take_turn(row)
            if self.marker.grey is not None:
                self.marker.set_mode(Mark.CLOTH)

    # --- readings --------------------------------------------------------------------------------

    def _photo_changed(self) -> None:
        self.trouble.setVisible(not self.trouble.isHidden() and self.marker.grey is None)
        self.away.setVisible(self.marker.photo is not None and not self.one_photo)
        self.take_turn(self._turn)

    def _put_away(self) -> None:
        self.trouble.hide()
        self.marker.put_away()
        self.marker.open.setFocus()

    def _box_read(self, number: int, colour: CardColour, by: str) -> None:
        self.trouble.hide()
        self.read.emit(number, colour, by)

    def _refused(self, number: int, what: object) -> None:
        """Say why a box could not be read; it is its turn again."""
        self._fail(what)
        if number >= 0:
            # After what else the mark has brought about.
            QTimer.singleShot(0, self, lambda: self.take_turn(number))

    def _forget(self) -> None:
        self.marker.forget(self._turn)
        self.trouble.hide()
        self.read.emit(self._turn, None, "")

    def _typed(self) -> None:
        """Take three numbers for the field whose turn it is."""
        if not self._fields or not self.typed.text().strip():
            return
        try:
            lab = read_colour(self.typed.text()).lab
        except MendableError as error:
            self._fail(error)
            return
        self.typed.clear()
        self.trouble.hide()
        self.marker.forget(self._turn)
        self._moving_on = True
        off = float(self.means.currentData())
        self.read.emit(self._turn, CardColour(lab, off), words.BY_HAND)
        self._moving_on = False

    def _fail(self, what: object) -> None:
        """Say in place what is wrong; our own faults go where they are reported."""
        if isinstance(what, MendableError):
            self.trouble.setText(shelf_words.trouble(what))
            self.trouble.show()
        else:
            self._session.workshop.failed.emit(what)


def _show_field(entry: QListWidgetItem, n: int, field: ReadField) -> None:
    colour = "" if field.lab is None else screen_colour(field.lab).name()
    entry.setText(words.field_told(n + 1, field.label, read=bool(colour)))
    entry.setIcon(swatch(colour, _SWATCH))
