"""The sample photo: opened, and the grey, the cloth and the sample marked in it."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from PySide6.QtCore import QStandardPaths, Qt, Signal
from PySide6.QtGui import QImage
from PySide6.QtWidgets import (
    QButtonGroup,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.sample_grey import grey_doubts
from swatchwright.acts.sample_in_photo import judged_by_photo
from swatchwright.acts.sample_judged import Judged
from swatchwright.acts.sample_marks import SampleShot
from swatchwright.acts.samples import SamplePhoto, sample_of_a_sample
from swatchwright.desktop import words as all_words
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.files import ask_open
from swatchwright.desktop.sample_shots import SampleShots
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.fields import ChoiceField
from swatchwright.desktop.widgets.grey_proposal import GreyProposal
from swatchwright.desktop.widgets.photo_findings import PhotoFindings
from swatchwright.desktop.widgets.photo_view import Mark, PhotoView
from swatchwright.desktop.widgets.shelf_bits import button, label
from swatchwright.desktop.words import sample as words
from swatchwright.photo.image import Photo
from swatchwright.photo.quality import Finding
from swatchwright.photo.reference import GREY_CARD, WHITE_PAPER
from swatchwright.photo.references import Reference
from swatchwright.values import Rect

__all__ = ["SamplePhotoSide"]

_ORDER = (Mark.GREY, Mark.CLOTH, Mark.SAMPLE)
_WORDS = {Mark.GREY: words.GREY, Mark.CLOTH: words.CLOTH, Mark.SAMPLE: words.SAMPLE}
_KEYS = {Mark.GREY: "grey", Mark.CLOTH: "cloth", Mark.SAMPLE: "sample"}


class SamplePhotoSide(QWidget):
    """The photo with its three boxes; the comparison follows them.

    Signals
    -------
    judged(object)
        Sample and cloth were compared (`Judged`), or can no longer be (None).
    """

    judged = Signal(object)

    def __init__(self, session: Session, desk: Desk) -> None:
        super().__init__()
        self._session = session
        self._shots = SampleShots(session, desk, self)
        self._grey: tuple[Photo, Rect, float] | None = None
        where = QStandardPaths.StandardLocation.PicturesLocation
        self._folder = QStandardPaths.writableLocation(where)
        self.view = PhotoView()
        self.view.setAccessibleName(words.PHOTO_NAME)
        self.view.tags[Mark.GREY] = words.GREY_TAG
        self.open = button(words.OPEN, self._ask_photo, "main")
        self.modes = {mark: QPushButton(_WORDS[mark]) for mark in _ORDER}
        self.card = ChoiceField()
        self.card.addItem(all_words.CARD_GREY, GREY_CARD)
        self.card.addItem(all_words.CARD_WHITE, WHITE_PAPER)
        self.hint = label("", "quiet")
        self.proposal = GreyProposal(session.workshop, "sample-greys", self.view.show_proposed)
        self.greys = PhotoFindings()
        self.try_it = button(words.TRY, self._try)
        self._stack = QStackedWidget()
        self._tools = BreakingRow(6)
        self._lay_out()
        self._listen()

    def _listen(self) -> None:
        self.view.marked.connect(self._shots.mark)
        self.card.activated.connect(
            lambda _: self._shots.set_reflectance(float(self.card.currentData()))
        )
        self.proposal.agreed.connect(lambda rect: self._shots.mark(Mark.GREY, rect))
        self.proposal.left.connect(self.view.setFocus)
        # One in the place of the other, so that the photo keeps its size.
        self.proposal.changed.connect(lambda: self.hint.setVisible(self.proposal.asked is None))
        self._shots.pictured.connect(self._show_photo)
        self._shots.changed.connect(self._show_marks)

    def begin(self) -> None:
        """Show what is kept with the job on the bench."""
        self._shots.begin()

    def keep(self) -> None:
        """Keep at once what is not kept yet."""
        self._shots.keep()

    def _lay_out(self) -> None:
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(8)
        group = QButtonGroup(self)
        before: tuple[QWidget, ...] = (QLabel(all_words.MARK),)
        for mark, one in self.modes.items():
            one.setCheckable(True)
            one.setAccessibleName(f"{all_words.MARK} {one.text()}")
            one.clicked.connect(lambda _=False, m=mark: self.set_mode(m))
            group.addButton(one)
            self._tools.put(*before, one)
            before = ()
        self.card.setAccessibleName(all_words.CARD_IS)
        self.card.setAccessibleDescription(all_words.CARD_IS)
        self._tools.put(self.card)
        first = QHBoxLayout()
        first.addWidget(self.open)
        first.addWidget(self.hint, 1)
        first.addWidget(self.proposal, 1)
        rows.addLayout(first)
        rows.addWidget(self._tools)
        rows.addWidget(self.greys)
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
        return self._shots.marks

    @property
    def photo(self) -> Photo | None:
        """The photo; None before one is open."""
        return self._shots.photo

    @property
    def shot(self) -> SampleShot | None:
        """The photo and its marks, as they are kept."""
        return self._shots.shot

    # --- acts ------------------------------------------------------------------------------------

    def _ask_photo(self) -> None:
        name, _ = ask_open(self, words.OPEN, self._folder, all_words.PHOTO_FILES)
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
        self._shots.open(found.path, marks, found.reflectance)

    def open_file(self, path: Path, marks: Mapping[Mark, Rect] | None = None) -> None:
        """Open a photo; its marks are to be drawn unless they are known."""
        self._shots.open(path, marks)

    def set_mode(self, mark: Mark) -> None:
        """Say which box a drag draws."""
        self.modes[mark].setChecked(True)
        self.view.set_mode(mark)
        self.hint.setText(words.HINTS["done" if mark in self.marks else _KEYS[mark]])

    def _show_photo(self, image: QImage) -> None:
        photo = self._shots.photo
        self._tools.setVisible(photo is not None)
        policy = self.greys.sizePolicy()
        policy.setRetainSizeWhenHidden(photo is not None)
        self.greys.setSizePolicy(policy)
        self._stack.setCurrentIndex(0 if photo is None else 1)
        # Once there is a photo, the main thing is what to add.
        self.open.setObjectName("main" if photo is None else "")
        self.open.style().polish(self.open)
        self._grey = None
        self._show_greys(())
        self.proposal.look(None)
        if photo is None:
            self.hint.setText("")
        else:
            self.view.show_photo(image, photo.width, photo.height)

    def _show_marks(self) -> None:
        marks, photo, shot = self.marks, self.photo, self.shot
        self.view.show_boxes(*(marks.get(mark) for mark in _ORDER))
        if photo is not None and shot is not None:
            self.card.setCurrentIndex(self.card.findData(shot.reflectance))
            left = [mark for mark in _ORDER if mark not in marks]
            self.set_mode(left[0] if left else Mark.SAMPLE)
            self._judge_grey(photo, marks.get(Mark.GREY), shot.reflectance)
        self._compare()

    # --- the grey --------------------------------------------------------------------------------

    def _judge_grey(self, photo: Photo, grey: Rect | None, reflectance: float) -> None:
        """Say at once whether a grey can serve; where none is marked, ask about a likely one."""
        asked = None if grey is None else (photo, grey, reflectance)
        if grey is None:
            self.proposal.look(photo)
        self.proposal.mark(grey)
        if asked == self._grey:
            return
        self._grey = asked
        if grey is None:
            self._session.workshop.stop("sample-grey")
            self._show_greys(())
            return
        self._session.workshop.start(
            "sample-grey",
            words.READING,
            lambda _: grey_doubts(photo, grey, reflectance),
            self._show_greys,
        )

    def _show_greys(self, found: tuple[Finding, ...]) -> None:
        self.greys.show_findings(tuple(f"{one.text} {one.mend}" for one in found))
        self.greys.setVisible(bool(found))

    # --- comparing -------------------------------------------------------------------------------

    def _compare(self) -> None:
        photo, marks, shot = self.photo, self.marks, self.shot
        if photo is None or shot is None or not {Mark.CLOTH, Mark.SAMPLE} <= set(marks):
            self._session.workshop.stop("sample-compared")
            self.judged.emit(None)
            return
        grey = marks.get(Mark.GREY)
        references = () if grey is None else (Reference.grey(grey, shot.reflectance),)
        cloth, brushed = marks[Mark.CLOTH], marks[Mark.SAMPLE]

        def work(_: object) -> Judged:
            return judged_by_photo(photo, references, cloth, brushed)

        self._session.workshop.start(
            "sample-compared", words.COMPARING, work, self.judged.emit, self._not_compared
        )

    def _not_compared(self, what: object) -> None:
        """Show no difference; a grey that cannot serve is told of beside the photo."""
        self.judged.emit(None)
        if not self.greys.any:
            self._session.workshop.failed.emit(what)
