"""The sample photo: opened, and the grey, the cloth and the sample marked in it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from PySide6.QtCore import QStandardPaths, Qt, Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QFileDialog,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.colours import open_photo
from swatchwright.acts.sample_in_photo import judged_by_photo
from swatchwright.acts.sample_judged import Judged
from swatchwright.acts.samples import SamplePhoto, sample_of_a_sample
from swatchwright.desktop import words as all_words
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.fields import ChoiceField
from swatchwright.desktop.widgets.photo_view import Mark, PhotoView
from swatchwright.desktop.widgets.shelf_bits import button, image_of, label
from swatchwright.desktop.words import sample as words
from swatchwright.photo.image import Photo
from swatchwright.photo.reference import GREY_CARD, WHITE_PAPER
from swatchwright.photo.references import Reference
from swatchwright.values import Rect

__all__ = ["SamplePhotoSide"]

_PREVIEW = 1400
_ORDER = (Mark.GREY, Mark.CLOTH, Mark.SAMPLE)
_WORDS = {Mark.GREY: words.GREY, Mark.CLOTH: words.CLOTH, Mark.SAMPLE: words.SAMPLE}
_KEYS = {Mark.GREY: "grey", Mark.CLOTH: "cloth", Mark.SAMPLE: "sample"}


@dataclass(frozen=True, slots=True)
class _Marked:
    """A photo with its marks."""

    photo: Photo
    marks: Mapping[Mark, Rect] = field(default_factory=dict)


class SamplePhotoSide(QWidget):
    """The photo with its three boxes; the comparison follows them.

    Signals
    -------
    judged(object)
        Sample and cloth were compared (`Judged`), or can no longer be (None).
    """

    judged = Signal(object)

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self._marked: _Marked | None = None
        where = QStandardPaths.StandardLocation.PicturesLocation
        self._folder = QStandardPaths.writableLocation(where)
        self.view = PhotoView()
        self.view.setAccessibleName(words.PHOTO_NAME)
        self.view.tags[Mark.GREY] = words.GREY_TAG
        self.open = button(words.OPEN, self._ask_photo)
        self.modes = {mark: QPushButton(_WORDS[mark]) for mark in _ORDER}
        self.card = ChoiceField()
        self.card.addItem(all_words.CARD_GREY, GREY_CARD)
        self.card.addItem(all_words.CARD_WHITE, WHITE_PAPER)
        self.card.activated.connect(lambda _: self._compare())
        self.hint = label("", "quiet")
        self.try_it = button(words.TRY, self._try, "main")
        self._stack = QStackedWidget()
        self._tools = QWidget()
        self._lay_out()
        self.view.marked.connect(self._mark)

    def _lay_out(self) -> None:
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(8)
        tools = QHBoxLayout(self._tools)
        tools.setContentsMargins(0, 0, 0, 0)
        tools.setSpacing(6)
        group = QButtonGroup(self)
        tools.addWidget(QLabel(all_words.MARK))
        for mark, one in self.modes.items():
            one.setCheckable(True)
            one.setAccessibleName(f"{all_words.MARK} {one.text()}")
            one.clicked.connect(lambda _=False, m=mark: self.set_mode(m))
            group.addButton(one)
            tools.addWidget(one)
        self.card.setAccessibleName(all_words.CARD_IS)
        self.card.setAccessibleDescription(all_words.CARD_IS)
        tools.addWidget(self.card)
        tools.addStretch(1)
        first = QHBoxLayout()
        first.addWidget(self.open)
        first.addWidget(self.hint, 1)
        rows.addLayout(first)
        rows.addWidget(self._tools)
        self._stack.addWidget(self._empty())
        self._stack.addWidget(self.view)
        rows.addWidget(self._stack, 1)
        self._tools.hide()

    def _empty(self) -> QWidget:
        sheet = QWidget()
        sheet.setObjectName("sheet")
        sheet.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        rows = QVBoxLayout(sheet)
        rows.setContentsMargins(28, 20, 28, 20)
        rows.addStretch(1)
        for text, name in ((words.DROP, "heading"), (words.WITHOUT, "quiet")):
            told = label(text, name)
            told.setAlignment(Qt.AlignmentFlag.AlignCenter)
            rows.addWidget(told)
        self.try_it.setVisible(sample_of_a_sample() is not None)
        rows.addWidget(self.try_it, 0, Qt.AlignmentFlag.AlignCenter)
        rows.addStretch(1)
        return sheet

    @property
    def marks(self) -> Mapping[Mark, Rect]:
        """What is marked."""
        return {} if self._marked is None else self._marked.marks

    @property
    def photo(self) -> Photo | None:
        """The photo; None before one is open."""
        return None if self._marked is None else self._marked.photo

    # --- acts ------------------------------------------------------------------------------------

    def _ask_photo(self) -> None:
        name, _ = QFileDialog.getOpenFileName(self, words.OPEN, self._folder, all_words.PHOTO_FILES)
        if name:
            self._folder = str(Path(name).parent)
            self.open_file(Path(name))

    def _try(self) -> None:
        found = sample_of_a_sample()
        if found is not None:
            self.open_sample(found)

    def open_sample(self, found: SamplePhoto) -> None:
        """Open a rendered sample photo with its marks."""
        marks = {Mark.GREY: found.grey, Mark.CLOTH: found.cloth}
        if found.sample is not None:
            marks[Mark.SAMPLE] = found.sample
        self.card.setCurrentIndex(0)
        self.open_file(found.path, marks)

    def open_file(self, path: Path, marks: Mapping[Mark, Rect] | None = None) -> None:
        """Open a photo; its marks are to be drawn unless they are known."""

        def work(_: object) -> tuple[Photo, object]:
            photo = open_photo(path)
            return photo, photo.preview(_PREVIEW, (1.0, 1.0, 1.0))

        def done(found: tuple[Photo, object]) -> None:
            photo, pixels = found
            self._marked = _Marked(photo, dict(marks or {}))
            self.view.show_photo(image_of(pixels), photo.width, photo.height)  # type: ignore[arg-type]
            self._stack.setCurrentWidget(self.view)
            self._tools.show()
            self._show_marks()
            self._compare()

        self._session.workshop.start("sample-photo", words.READING, work, done)

    def _mark(self, mark: Mark, rect: Rect | None) -> None:
        if self._marked is None:
            return
        marks = {m: r for m, r in self._marked.marks.items() if m is not mark}
        if rect is not None:
            marks[mark] = rect
        self._marked = _Marked(self._marked.photo, marks)
        self._show_marks()
        self._compare()

    def set_mode(self, mark: Mark) -> None:
        """Say which box a drag draws."""
        self.modes[mark].setChecked(True)
        self.view.set_mode(mark)
        self.hint.setText(words.HINTS["done" if mark in self.marks else _KEYS[mark]])

    def _show_marks(self) -> None:
        marks = self.marks
        self.view.show_boxes(*(marks.get(mark) for mark in _ORDER))
        left = [mark for mark in _ORDER if mark not in marks]
        self.set_mode(left[0] if left else Mark.SAMPLE)

    # --- comparing -------------------------------------------------------------------------------

    def _compare(self) -> None:
        marked = self._marked
        if marked is None or not {Mark.CLOTH, Mark.SAMPLE} <= set(marked.marks):
            self._session.workshop.stop("sample-compared")
            self.judged.emit(None)
            return
        reflectance = float(self.card.currentData())
        grey = marked.marks.get(Mark.GREY)
        references = () if grey is None else (Reference.grey(grey, reflectance),)
        cloth, brushed = marked.marks[Mark.CLOTH], marked.marks[Mark.SAMPLE]

        def work(_: object) -> Judged:
            return judged_by_photo(marked.photo, references, cloth, brushed)

        self._session.workshop.start("sample-compared", words.COMPARING, work, self.judged.emit)
