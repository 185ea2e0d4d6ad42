"""The piece beside its layers, small: a press on a part of it turns to the layers over that."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from swatchwright.acts.finish_zones import SeenZones, looks_of_zones
from swatchwright.acts.piece_job import PIECE_PART
from swatchwright.colour.spectrum import Light
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.widgets.finish_mixes import FinishMix
from swatchwright.desktop.widgets.piece_press import NONE, PressedDrawing
from swatchwright.desktop.words import finish_parts as words
from swatchwright.paint.layers import Stack
from swatchwright.piece.drawing import Drawing, Outline, View, drawn
from swatchwright.piece.part import Piece
from swatchwright.shelf.jobs import Document
from swatchwright.values import Lab

__all__ = ["FinishPiece"]

_WIDE = 230
"""Pixels; there are no letters in it that would need more."""


class FinishPiece(QWidget):
    """In view while the piece of the job is sized and several mixes are on it.

    It is drawn dry, with the layers on, the parts outlined that the page works on.

    Signals
    -------
    picked(int)
        The mix at this place is on a part that was pressed.
    """

    picked = Signal(int)

    def __init__(self, session: Session, desk: Desk) -> None:
        super().__init__()
        self._session, self._desk = session, desk
        self._document: Document | None = None
        self._drawing: Drawing | None = None
        self._mixes: tuple[FinishMix, ...] = ()
        self._first: dict[str, int] = {}
        self._here = NONE
        self._looked: tuple[object, ...] = ()
        self._seen = SeenZones()
        self._light = Light.D65
        self.drawing = PressedDrawing(self._place_of, small=True)
        self.drawing.chosen.connect(self._press)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.drawing)
        self.setFixedWidth(_WIDE)
        self._tell()
        self.hide()

    def show_mixes(self, mixes: Sequence[FinishMix], mix: FinishMix | None) -> None:
        """Show which mixes are on the piece, the parts of one of them outlined."""
        self._mixes = tuple(mixes)
        self._first = {}
        for place, one in enumerate(mixes):
            self._first = {**dict.fromkeys(one.on.zones, place), **self._first}
        self._here = NONE
        if mix is not None and mix.on.zones:
            self._here = self._first.get(mix.on.zones[0], NONE)
        self._draw()
        self._show()

    def look(self, stack: Stack) -> None:
        """Reckon how the parts look under layers, where that is not known."""
        if self.isHidden():
            return
        shelf = self._session.shelf
        mixes = {zone: self._mixes[place].parts for zone, place in self._first.items()}
        looked = (mixes, stack, id(shelf))
        if looked != self._looked:
            self._looked = looked
            self._session.workshop.start(
                "finish-piece", "", lambda _: looks_of_zones(shelf, mixes, stack), self._found
            )

    def see(self, light: Light | None) -> None:
        """Show it in a light; what is seen wet is one mix, so the piece stays dry in daylight."""
        self._light = Light.D65 if light is None else light
        self._fill()

    def _found(self, seen: SeenZones) -> None:
        self._seen = seen
        self._fill()

    def _draw(self) -> None:
        """Have the piece drawn that the job has now."""
        job, several = self._desk.job, len({*self._first.values()}) > 1
        document = None if job is None or not several else job.document(PIECE_PART)
        if document == self._document:
            return
        self._document, self._drawing = document, None
        piece = self._desk.part(PIECE_PART, Piece) if document is not None else None
        if piece is None:
            self._session.workshop.stop("finish-drawn")
            return
        # What cannot be drawn is told on the page Piece; here it is done without.
        self._session.workshop.start(
            "finish-drawn", "", lambda _: drawn(piece, View.PICTURE), self._drawn, lambda _: None
        )

    def _drawn(self, drawing: Drawing) -> None:
        self._drawing = drawing
        self._show()

    def _show(self) -> None:
        self.setVisible(self._drawing is not None)
        if self._drawing is not None:
            painted = (outline.zone for outline in self._drawing.outlines if outline.zone)
            self.drawing.show_drawing(self._drawing, tuple(dict.fromkeys(painted)))
            self._fill()
        self.drawing.choose(self._here)

    def _fill(self) -> None:
        labs = {zone: self._lab(zone, self._mixes[place]) for zone, place in self._first.items()}
        self.drawing.show_colours({zone: screen_colour(lab) for zone, lab in labs.items()})
        self._tell()

    def _lab(self, zone: str, mix: FinishMix) -> Lab:
        look = self._seen.looks.get(zone)
        known = look is not None and look.parts == mix.parts
        return look.seen(self._light, finished=True) if look and known else mix.dry

    def _tell(self) -> None:
        self.drawing.tell(words.piece_drawn(self._light), self._told)

    def _told(self, place: int) -> str:
        mix = self._mixes[place]
        zones = mix.on.zones
        return words.part_pressed(zones, self._lab(zones[0], mix), mix.besides)

    def _place_of(self, outline: Outline) -> int:
        return self._first.get(outline.zone, NONE)

    def _press(self, place: int) -> None:
        """Turn to the mix of a part; a press beside all, or on the same again, changes nothing."""
        if place in {NONE, self._here}:
            self.drawing.choose(self._here)
        else:
            self.picked.emit(place)
