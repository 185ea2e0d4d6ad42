"""The left half of the bench: the photo, its marks, and the colours found in it."""

from __future__ import annotations

from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from PySide6.QtWidgets import (
    QButtonGroup,
    QCheckBox,
    QComboBox,
    QFrame,
    QHBoxLayout,
    QInputDialog,
    QLabel,
    QPushButton,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.samples import sample_photos
from swatchwright.desktop import words
from swatchwright.desktop.session import Marks, Session
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.widgets.colour_strip import ColourStrip
from swatchwright.desktop.widgets.photo_view import Mark, PhotoView
from swatchwright.photo.reference import GREY_CARD, WHITE_PAPER
from swatchwright.values import Rect

__all__ = ["PhotoSide"]

_PREVIEW = 1400


class PhotoSide(QWidget):
    """Shows the session's photo and lets its grey card and cloth be marked."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self.view = PhotoView()
        self.strip = ColourStrip()
        self.start = _Start(session)
        self._stack = QStackedWidget()
        self._stack.addWidget(self.start)
        self._stack.addWidget(self.view)
        self.tools = _MarkTools(session, self.view)
        self.tools.hide()
        self._light = _quiet()
        self._heading = QLabel(words.COLOURS)
        self._warnings = _quiet()
        self._warnings.setObjectName("warn")
        self._warnings.hide()
        self._notes = _quiet()
        self._notes.setObjectName("small")
        self._waiting = _quiet(words.WAIT_COLOURS)
        self._lay_out()
        self._connect()
        self._show_colours()

    def _lay_out(self) -> None:
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(10)
        rows.addWidget(self.tools)
        rows.addWidget(self._stack, 1)
        rows.addWidget(self._light)
        rows.addWidget(self._warnings)
        self._heading.setObjectName("heading")
        rows.addWidget(self._heading)
        rows.addWidget(self._waiting)
        rows.addWidget(self.strip)
        rows.addWidget(self._notes)

    def _connect(self) -> None:
        session = self._session
        session.photo_changed.connect(self._show_photo)
        session.marks_changed.connect(self._show_marks)
        session.colours_changed.connect(self._show_colours)
        session.pick_changed.connect(lambda: self.strip.show_pick(session.pick))
        self.strip.picked.connect(session.choose)
        self.view.marked.connect(self._marked)
        self.tools.put_right.toggled.connect(self._show_picture)

    def _marked(self, mark: Mark, rect: Rect | None) -> None:
        if mark is Mark.GREY:
            self._session.set_grey(rect)
        else:
            self._session.set_cloth(rect)

    def _show_photo(self) -> None:
        self._stack.setCurrentWidget(self.view)
        self.tools.show()
        self._show_picture()

    def _show_marks(self) -> None:
        marks = self._session.marks
        self.view.show_boxes(marks.grey, marks.cloth)
        self.view.show_spots(())

    def _show_colours(self) -> None:
        found = self._session.found
        self.strip.setVisible(found is not None)
        self._waiting.setVisible(found is None)
        self._light.setVisible(found is not None)
        self._notes.setVisible(found is not None)
        if found is None:
            self._warnings.hide()
            return
        self.strip.show_colours(found.colours, self._session.pick)
        self.view.show_spots(
            tuple(
                (number, *mark, screen_colour(colour.colour.lab))
                for number, colour in enumerate(found.colours, start=1)
                for mark in colour.marks
            )
        )
        self._light.setText(words.light_line(found.balance))
        self._notes.setText(" ".join(found.notes))
        self._warnings.setText("\n".join(found.warnings))
        self._warnings.setVisible(bool(found.warnings))
        self._heading.setText(words.COLOURS if found.area else words.COLOURS_ALL)
        self._show_picture()

    def _show_picture(self) -> None:
        """Draw the photo anew, in the light put right if that is wanted and known."""
        photo, found = self._session.photo, self._session.found
        if photo is None:
            return
        right = self.tools.put_right.isChecked() and found is not None
        gains = found.balance.gains if right and found is not None else (1.0, 1.0, 1.0)

        def done(pixels: NDArray[np.uint8]) -> None:
            if self._session.photo is photo:
                self.view.show_photo(_image(pixels), photo.width, photo.height)

        self._session.workshop.start(
            "picture", words.READING, lambda _: photo.preview(_PREVIEW, gains), done
        )


class _Start(QFrame):
    """What stands in place of the photo until there is one."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.setObjectName("sheet")
        rows = QVBoxLayout(self)
        rows.setContentsMargins(28, 28, 28, 28)
        rows.setSpacing(14)
        rows.addStretch(1)
        title = QLabel(words.DROP_TITLE)
        title.setObjectName("big")
        text = QLabel(words.DROP_TEXT)
        text.setWordWrap(True)
        for label in (title, text):
            label.setAlignment(Qt.AlignmentFlag.AlignCenter)
            rows.addWidget(label)
        self.try_sample = QPushButton(words.TRY_SAMPLE)
        self.try_sample.setObjectName("main")
        samples = sample_photos()
        self.try_sample.setVisible(bool(samples))
        if samples:
            first = samples[0]
            marks = Marks(first.grey, first.cloth, first.reflectance)
            self.try_sample.clicked.connect(lambda: session.open(Path(first.path), marks))
        rows.addWidget(self.try_sample, 0, Qt.AlignmentFlag.AlignCenter)
        rows.addStretch(1)


class _MarkTools(QWidget):
    """Which box a drag draws, and what the card reflects."""

    def __init__(self, session: Session, view: PhotoView) -> None:
        super().__init__()
        self._session, self._view = session, view
        self.buttons = {
            Mark.GREY: QPushButton(words.MARK_GREY),
            Mark.CLOTH: QPushButton(words.MARK_CLOTH),
        }
        group = QButtonGroup(self)
        for mark, button in self.buttons.items():
            button.setCheckable(True)
            button.setAccessibleName(f"{words.MARK} {button.text()}")
            group.addButton(button)
            button.clicked.connect(lambda _=False, mark=mark: self.set_mode(mark))
        self.card = QComboBox()
        self.card.addItem(words.CARD_GREY, GREY_CARD)
        self.card.addItem(words.CARD_WHITE, WHITE_PAPER)
        self.card.addItem(words.CARD_OTHER, None)
        self.card.activated.connect(self._card_chosen)
        self.put_right = QCheckBox(words.PUT_RIGHT)
        self.put_right.setChecked(True)
        self.hint = _quiet()
        self._lay_out()
        session.photo_changed.connect(self._first_mode)
        session.marks_changed.connect(self._show)
        self._show()
        self.set_mode(Mark.GREY)

    def _lay_out(self) -> None:
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(6)
        row = QHBoxLayout()
        row.setSpacing(8)
        row.addWidget(QLabel(words.MARK))
        for button in self.buttons.values():
            row.addWidget(button)
        told = QLabel(words.CARD_IS)
        told.setBuddy(self.card)
        self.card.setAccessibleName(words.CARD_IS)
        row.insertWidget(2, told)
        row.insertWidget(3, self.card)
        row.addStretch(1)
        rows.addLayout(row)
        below = QHBoxLayout()
        below.addWidget(self.hint, 1)
        below.addWidget(self.put_right)
        rows.addLayout(below)

    def set_mode(self, mark: Mark) -> None:
        """Say which box a drag draws."""
        self.buttons[mark].setChecked(True)
        self._view.set_mode(mark)
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
            self.card.insertItem(place, f"{marks.reflectance:.1%}", marks.reflectance)
        self.card.setCurrentIndex(place)
        if marks.grey is not None and marks.cloth is None:
            self.set_mode(Mark.CLOTH)
        self._show_hint()

    def _show_hint(self) -> None:
        marks = self._session.marks
        grey = self.buttons[Mark.GREY].isChecked()
        if (marks.grey if grey else marks.cloth) is not None:
            self.hint.setText(words.HINT_DONE)
        else:
            self.hint.setText(words.HINT_GREY if grey else words.HINT_CLOTH)

    def _card_chosen(self, place: int) -> None:
        reflectance = self.card.itemData(place)
        if reflectance is None:
            percent, given = QInputDialog.getDouble(
                self,
                words.CARD_IS,
                words.CARD_ASK,
                self._session.marks.reflectance * 100,
                2,
                100,
                1,
            )
            reflectance = percent / 100 if given else self._session.marks.reflectance
        self._session.set_reflectance(float(reflectance))
        self._show()


def _quiet(text: str = "") -> QLabel:
    label = QLabel(text)
    label.setObjectName("quiet")
    label.setWordWrap(True)
    return label


def _image(pixels: NDArray[np.uint8]) -> QImage:
    """Copy an array (rows, columns, 3) of sRGB bytes into an image."""
    solid = np.ascontiguousarray(pixels)
    rows, columns, _ = solid.shape
    kind = QImage.Format.Format_RGB888
    return QImage(solid.data, columns, rows, columns * 3, kind).copy()
