"""Marking a photo of painted cards: the grey first, then the box of each card in its turn."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QStandardPaths, Qt, Signal
from PySide6.QtGui import QColor, QImage
from PySide6.QtWidgets import (
    QButtonGroup,
    QPushButton,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.card_photo import CardColour, read_card
from swatchwright.acts.colours import balance_photo, open_photo
from swatchwright.acts.file_stamp import Stamp, stamp_of
from swatchwright.acts.last_sitting import SittingPhoto
from swatchwright.desktop import words as all_words
from swatchwright.desktop.files import ask_open
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.brush_photo import BrushPhoto
from swatchwright.desktop.widgets.fields import ChoiceField
from swatchwright.desktop.widgets.photo_view import Mark
from swatchwright.desktop.widgets.shelf_bits import button, image_of, label
from swatchwright.desktop.words import sitting as words
from swatchwright.errors import MendableError
from swatchwright.photo.image import Photo
from swatchwright.photo.reference import GREY_CARD, WHITE_PAPER
from swatchwright.values import Rect

__all__ = ["BrushMarker"]

_PREVIEW = 1400
_MIDDLE_GREY = QColor("#777777")


class BrushMarker(QWidget):
    """A photo with its tools; each box that is drawn is read in the light of the grey.

    Signals
    -------
    read(int, object, str)
        A card was read: its number from 0, its `CardColour`, and the name of the photo.
    refused(int, object)
        A card, or with -1 the photo, could not be read, and why.
    passed()
        The card whose turn it is has its box: the next one.
    changed()
        A photo was opened, or its grey marked.
    """

    read = Signal(int, object, str)
    refused = Signal(int, object)
    passed = Signal()
    changed = Signal()

    def __init__(self, session: Session, kind: str, told: words.ReadWords) -> None:
        super().__init__()
        self._session, self._kind, self._told = session, kind, told
        self.photo: Photo | None = None
        self.path: Path | None = None
        self.stamp: Stamp | None = None
        self.grey: Rect | None = None
        self.boxes: dict[int, Rect] = {}
        self._turn = 0
        where = QStandardPaths.StandardLocation.PicturesLocation
        self._folder = QStandardPaths.writableLocation(where)
        self.view = BrushPhoto()
        self.open = button(told.open, self._ask_photo)
        self.modes = {Mark.GREY: QPushButton(words.GREY), Mark.CLOTH: QPushButton(told.fields)}
        self.card = ChoiceField()
        self.card.addItem(all_words.CARD_GREY, GREY_CARD)
        self.card.addItem(all_words.CARD_WHITE, WHITE_PAPER)
        self._stack = QStackedWidget()
        self._lay_out()
        self.view.marked.connect(self._marked)
        self.view.agreed.connect(self._agreed)
        self.card.activated.connect(self._light_changed)

    def _lay_out(self) -> None:
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(8)
        row = BreakingRow()
        row.put(self.open)
        group = QButtonGroup(self)
        for mark, one in self.modes.items():
            one.setCheckable(True)
            one.setAccessibleName(f"{all_words.MARK} {one.text()}")
            one.clicked.connect(lambda _=False, m=mark: self.set_mode(m))
            group.addButton(one)
        told = label(all_words.CARD_IS, wraps=False)
        told.setBuddy(self.card)
        self.card.setAccessibleName(all_words.CARD_IS)
        row.put(self.modes[Mark.GREY])
        row.put(told, self.card)
        row.put(self.modes[Mark.CLOTH])
        rows.addWidget(row)
        self._empty = label(self._told.where, "waiting")
        self._empty.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self._stack.addWidget(self._empty)
        self._stack.addWidget(self.view)
        rows.addWidget(self._stack, 1)

    def show_turn(self, turn: int, colours: Sequence[QColor | None]) -> None:
        """Show the box of the card whose turn it is, and a spot of its colour in all others."""
        self._turn = turn
        self.view.name_card(turn + 1)
        self.view.show_boxes(self.grey, self.boxes.get(turn))
        self.view.show_spots(
            tuple(
                (n + 1, box.x + box.width // 2, box.y + box.height // 2, colour or _MIDDLE_GREY)
                for n, box in self.boxes.items()
                if n != turn and n < len(colours)
                for colour in (colours[n],)
            )
        )

    def set_mode(self, mark: Mark) -> None:
        """Say whether a drag draws the grey or a card."""
        self.modes[mark].setChecked(True)
        self.view.set_mode(mark)

    def forget(self, number: int) -> None:
        """Take the box of a card away."""
        self.boxes.pop(number, None)

    def renumber(self, moved: Mapping[int, int]) -> None:
        """Let boxes follow their cards to other numbers; those of cards that have gone go too."""
        under_way = [n for n in self.boxes if self._session.workshop.doing(self._kind_of(n))]
        for number in under_way:
            self._session.workshop.stop(self._kind_of(number))
        self.boxes = {moved[n]: box for n, box in self.boxes.items() if n in moved}
        for number in under_way:
            if number in moved:
                self._read_box(moved[number])

    def _kind_of(self, number: int) -> str:
        return f"{self._kind}-{number}"

    # --- the photo -------------------------------------------------------------------------------

    def _ask_photo(self) -> None:
        name, _ = ask_open(self, self._told.open, self._folder, all_words.PHOTO_FILES)
        if name:
            self._folder = str(Path(name).parent)
            self.open_file(Path(name))

    def open_file(self, path: Path) -> None:
        """Open a photo; what was read off another stays."""

        def work(_: object) -> tuple[SittingPhoto, NDArray[np.uint8]]:
            stamp, photo = stamp_of(path), open_photo(path)
            return SittingPhoto(photo, path, stamp, None, {}), photo.preview(_PREVIEW)

        def done(answer: tuple[SittingPhoto, NDArray[np.uint8]]) -> None:
            self._show_new(answer[0], {}, image_of(answer[1]))
            self.changed.emit()
            self.view.setFocus()

        self._session.workshop.start(
            f"{self._kind}-photo",
            all_words.READING,
            work,
            done,
            lambda what: self.refused.emit(-1, what),
        )

    def _show_new(self, laid: SittingPhoto, boxes: Mapping[int, Rect], image: QImage) -> None:
        self._clear()
        self.photo, self.path, self.stamp, self.grey = laid.photo, laid.path, laid.stamp, laid.grey
        self.boxes = dict(boxes)
        self.view.show_photo(image, laid.photo.width, laid.photo.height)
        self._stack.setCurrentWidget(self.view)
        self.set_mode(Mark.GREY if self.grey is None else Mark.CLOTH)

    def lay(
        self, laid: SittingPhoto, boxes: Mapping[int, Rect], reflectance: float, image: QImage
    ) -> None:
        """Lay a photo that was marked before, with its marks; nothing is read anew."""
        self.card.setCurrentIndex(max(0, self.card.findData(reflectance)))
        self._show_new(laid, boxes, image)
        self._put_right()
        self.changed.emit()

    def put_away(self) -> None:
        """Put the photo away with its marks; what was read off it stays."""
        self._clear()
        self.changed.emit()

    def _clear(self) -> None:
        for kind in (f"{self._kind}-photo", *map(self._kind_of, self.boxes)):
            self._session.workshop.stop(kind)
        self.photo, self.path, self.stamp, self.grey, self.boxes = None, None, None, None, {}
        self._stack.setCurrentWidget(self._empty)

    def read_again(self, number: int) -> None:
        """Read a card whose box is there."""
        self._read_box(number)

    def mark_rest(self, grey: Rect, boxes: Mapping[int, Rect]) -> None:
        """Mark the grey and the cards that have no box yet, and read these."""
        if self.photo is None:
            return
        if self.grey is None:
            self.grey = grey
            self._put_right()
        self.set_mode(Mark.CLOTH)
        for number in boxes.keys() - self.boxes.keys():
            self.boxes[number] = boxes[number]
            self._read_box(number)
        self.changed.emit()

    def _put_right(self) -> None:
        """Show the photo in the light that the grey tells."""
        photo, grey, reflectance = self.photo, self.grey, float(self.card.currentData())
        if photo is None or grey is None:
            return

        def done(pixels: NDArray[np.uint8]) -> None:
            if self.photo is photo:
                self.view.show_photo(image_of(pixels), photo.width, photo.height)

        self._session.workshop.start(
            f"{self._kind}-photo",
            all_words.READING,
            lambda _: photo.preview(_PREVIEW, balance_photo(photo, grey, reflectance).gains),
            done,
            lambda what: self.refused.emit(-1, what),
        )

    # --- marks -----------------------------------------------------------------------------------

    def _marked(self, mark: Mark, rect: Rect | None) -> None:
        by_mouse = self.view.by_mouse
        if mark is Mark.GREY:
            self.grey = rect
            if rect is not None and by_mouse:
                self.set_mode(Mark.CLOTH)
            self._light_changed()
        elif rect is None:
            self.forget(self._turn)
            self.changed.emit()
        else:
            self.boxes[self._turn] = rect
            self._read_box(self._turn)
            # The reading may come a moment later than the next drag.
            (self.passed if by_mouse else self.changed).emit()

    def _agreed(self) -> None:
        """Go on from the grey to the cards, or from one card to the next."""
        if self.modes[Mark.GREY].isChecked():
            self.set_mode(Mark.CLOTH)
        else:
            self.passed.emit()

    def _light_changed(self) -> None:
        """Read all boxes of this photo in the light of another grey."""
        self._put_right()
        for number in list(self.boxes):
            self._read_box(number)
        self.changed.emit()

    def _read_box(self, number: int) -> None:
        photo, grey, box = self.photo, self.grey, self.boxes[number]
        if photo is None:
            return
        if grey is None:
            self.set_mode(Mark.GREY)
            self._not_read(number, MendableError(*words.NO_GREY))
            return
        reflectance = float(self.card.currentData())

        def done(colour: CardColour) -> None:
            if self.photo is photo and self.boxes.get(number) == box:
                self.read.emit(number, colour, photo.facts.name)

        self._session.workshop.start(
            self._kind_of(number),
            words.READING,
            lambda _: read_card(photo, box, grey=grey, reflectance=reflectance),
            done,
            lambda what: self._not_read(number, what),
        )

    def _not_read(self, number: int, what: object) -> None:
        self.forget(number)
        self.refused.emit(number, what)
