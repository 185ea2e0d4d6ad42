"""The left half of the bench: the photo, its marks, and the colours found in it."""

from __future__ import annotations

from functools import partial

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QEvent
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from swatchwright.acts.live import FollowedGrey
from swatchwright.desktop import words
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.widgets.colour_strip import ColourStrip
from swatchwright.desktop.widgets.kept_lines import OTHER_LETTERS
from swatchwright.desktop.widgets.photo_about import PhotoAbout
from swatchwright.desktop.widgets.photo_findings import PhotoFindings
from swatchwright.desktop.widgets.photo_live import SMALL_PREVIEW, LiveGrey
from swatchwright.desktop.widgets.photo_start import PhotoStart
from swatchwright.desktop.widgets.photo_tools import MarkTools
from swatchwright.desktop.widgets.photo_view import Mark, PhotoView, Which
from swatchwright.desktop.widgets.photo_weave import WeaveChoice
from swatchwright.desktop.widgets.photo_worth import PhotoWorth
from swatchwright.desktop.widgets.shelf_bits import image_of, label
from swatchwright.desktop.words import photo as photo_words
from swatchwright.photo.image import Photo
from swatchwright.values import Lab, Rect

__all__ = ["PhotoSide"]

_PREVIEW = 1400
_LEAST_PHOTO, _WHOLE_PHOTO = 200, 330
"""Pixels of height that a photo has: beside the mixes, and above them, where all is scrolled."""
_BESIDE = 6
"""Pixels between a text and the buttons beside it."""

Pixels = NDArray[np.uint8]


class PhotoSide(QWidget):
    """Shows the session's photo, what is marked in it and what it says of the cloth."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session, self._made = session, False
        self.view = PhotoView()
        self.strip = ColourStrip()
        self.start = PhotoStart(session)
        self.view.hide()
        self._place = QWidget()
        # The page to start from asks for more than a photo must have.
        self._place.setMinimumHeight(_LEAST_PHOTO)
        self.tools = MarkTools(session, self.view)
        self.tools.hide()
        self.live = LiveGrey(session, self)
        self.worth = PhotoWorth(session)
        self.findings = PhotoFindings()
        self._heading = QLabel(words.COLOURS)
        self._heading.setObjectName("heading")
        self._heading.setWordWrap(True)
        self.weave = WeaveChoice(session)
        self._sentence = label(photo_words.WEAVE_SENTENCE, "small")
        self.about = PhotoAbout(session)
        self._waiting = label(words.WAIT_COLOURS, "quiet")
        self._told, self._found_here = QWidget(), QWidget()
        self._lay_out()
        self._connect()
        self._show_colours()
        self._made = True

    def _lay_out(self) -> None:
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(8)
        rows.addWidget(self.tools)
        place = _rows(self._place, 0)
        place.addWidget(self.start)
        place.addWidget(self.view)
        rows.addWidget(self._place, 1)
        told = _rows(self._told, 4)
        told.addWidget(self.findings)
        told.addStretch(1)
        told.addWidget(self.worth)
        rows.addWidget(self._told)
        for one in (self._sentence, self.about.toggle):
            policy = one.sizePolicy()
            policy.setRetainSizeWhenHidden(True)
            one.setSizePolicy(policy)
        head = BreakingRow(_BESIDE)
        head.put(self._heading, stretches=True)
        head.put(self.weave, pushed=True)
        rows.addWidget(head)
        here = _rows(self._found_here, 0)
        here.addWidget(self._waiting)
        here.addWidget(self.strip)
        rows.addWidget(self._found_here)
        foot = BreakingRow(_BESIDE)
        foot.put(self._sentence, stretches=True)
        foot.put(self.about.toggle, pushed=True)
        rows.addWidget(foot)
        rows.addWidget(self.about)

    def _connect(self) -> None:
        session = self._session
        session.photo_changed.connect(self._show_photo)
        session.colours_changed.connect(self._show_colours)
        session.pick_changed.connect(self._show_pick)
        self.strip.picked.connect(session.choose)
        self.view.marked.connect(self._marked)
        self.view.dragged.connect(self.live.drag)
        self.live.followed.connect(self._follow)
        self.live.told.connect(self.tools.tell)
        self.worth.add.connect(self.tools.add)
        self.tools.asking.connect(self._make_room)
        self.about.changed.connect(self._make_room)
        self.tools.put_right.toggled.connect(self._show_picture)

    def _marked(self, mark: Which, rect: Rect | None) -> None:
        session = self._session
        if mark is Mark.GREY:
            same = rect == session.marks.grey
            self.live.let_go(rect)
            session.set_grey(rect)
            if same:
                self.live.put_back()
        elif mark is Mark.CLOTH:
            session.set_cloth(rect)
        elif not isinstance(mark, Mark):
            self.tools.mark_further(mark, rect)

    # --- the picture -----------------------------------------------------------------------------

    def _show_photo(self) -> None:
        there = self._session.photo is not None
        # The one hides before the other shows: with both, all below would jump for a moment.
        shown = (self.start, self.view) if there else (self.view, self.start)
        shown[0].hide()
        shown[1].show()
        self.tools.setVisible(there)
        self.live.small = None
        self._make_room()
        self._show_picture()

    def _show_picture(self) -> None:
        """Draw the photo anew, in the light put right if that is wanted and known."""
        photo, found = self._session.photo, self._session.found
        self.live.shows_picture = self.tools.put_right.isChecked()
        if photo is None:
            return
        right = self.live.shows_picture and found is not None
        gains = found.balance.gains if right and found is not None else (1.0, 1.0, 1.0)
        small = self.live.small

        def work(_: object) -> tuple[Pixels, Pixels]:
            kept = photo.preview(SMALL_PREVIEW) if small is None else small
            return photo.preview(_PREVIEW, gains), kept

        self._session.workshop.start("picture", words.READING, work, partial(self._drawn, photo))

    def _drawn(self, photo: Photo, pictures: tuple[Pixels, Pixels]) -> None:
        if self._session.photo is not photo:
            return
        whole, self.live.small = pictures
        if not self.live.moving:
            self.view.show_photo(image_of(whole), photo.width, photo.height)

    def _follow(self, seen: FollowedGrey, picture: Pixels | None) -> None:
        """Show at once what a dragged grey card makes of colours and picture."""
        photo = self._session.photo
        self.strip.follow(seen.labs)
        self._show_spots(seen.labs)
        if picture is not None and photo is not None:
            self.view.show_photo(image_of(picture), photo.width, photo.height)

    # --- the colours -----------------------------------------------------------------------------

    def _show_colours(self) -> None:
        found = self._session.found
        # The one hides before the other shows: with both, the photo would be pressed for a moment.
        here = (self._waiting, self.strip) if found is not None else (self.strip, self._waiting)
        here[0].hide()
        here[1].show()
        if found is None:
            self.view.show_spots(())
            self._tell(())
            return
        self.strip.show_colours(found.colours, self._session.pick)
        self._show_spots(tuple(colour.colour.lab for colour in found.colours))
        marked = self._session.marks.references
        if len(marked) > len(found.correction.references):
            marked = ()
        self._tell(photo_words.findings_told(found, marked))
        self._heading.setText(words.COLOURS if found.area else words.COLOURS_ALL)
        self._show_picture()

    def _show_pick(self) -> None:
        self.strip.show_pick(self._session.pick)
        if not self.view.dragging:
            self.worth.show_worth()

    def _tell(self, findings: tuple[str, ...]) -> None:
        """Tell what the photo is worth; with a box in the hand later, lest the photo jump."""
        if not self.view.dragging:
            self.findings.show_findings(findings)
            self.worth.show_worth()
            self._make_room()

    def _make_room(self) -> None:
        """Leave the photo its room: what is asked for takes the place of what can wait.

        What is found is told where room was left for it, so that the photo keeps its place: a
        hand may be on its way to it. What is wrong comes before how sure the colour is, which
        its field tells too.
        """
        there = self._session.found is not None
        facts, adding = self.about.asked, not self.tools.adding.isHidden()
        self._told.setVisible(self._session.photo is not None and not facts and not adding)
        self.worth.setVisible(there)
        if self.findings.any:
            self.worth.line.hide()
        self.findings.setVisible(self.findings.any)
        self.worth.line.setVisible(not self.findings.any)
        self._sentence.setVisible(self.weave.needed() and not adding)
        self._keep_heights()

    def _keep_heights(self) -> None:
        """Leave room for what may come to be told below the photo."""
        self._told.setMinimumHeight(self.findings.room() + 4 + self.worth.room())
        self._found_here.setMinimumHeight(self.strip.sizeHint().height())
        self._heading.setMinimumHeight(self.weave.sizeHint().height())
        self.tools.keep_height()

    def changeEvent(self, event: QEvent) -> None:
        """Leave room for letters of another size."""
        super().changeEvent(event)
        if event.type() in OTHER_LETTERS and self._made:
            self._keep_heights()

    def set_abreast(self, *, abreast: bool) -> None:
        """Stand beside the mixes, or above them, where the page is scrolled."""
        self._place.setMinimumHeight(_LEAST_PHOTO if abreast else _WHOLE_PHOTO)
        self.view.set_calm(calm=not abreast)

    def _show_spots(self, labs: tuple[Lab, ...]) -> None:
        """Show where the colours are in the photo, filled with these."""
        found = self._session.found
        self.view.show_spots(
            tuple(
                (number, *mark, screen_colour(lab))
                for number, (colour, lab) in enumerate(
                    zip(() if found is None else found.colours, labs, strict=False), start=1
                )
                for mark in colour.marks
            )
        )


def _rows(holder: QWidget, spacing: int) -> QVBoxLayout:
    rows = QVBoxLayout(holder)
    rows.setContentsMargins(0, 0, 0, 0)
    rows.setSpacing(spacing)
    return rows
