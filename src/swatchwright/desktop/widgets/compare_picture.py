"""The wanted colour and mixes edge to edge: a column a mix, a row a state, the wanted between."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from PySide6.QtCore import QEvent, QRect, QSize
from PySide6.QtGui import QHelpEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QToolTip, QWidget

from swatchwright.acts.compare import Compared, State
from swatchwright.colour.spectrum import Light
from swatchwright.desktop.widgets.finish_bands import Band, paint_bands
from swatchwright.desktop.words import compare as words
from swatchwright.values import Lab

__all__ = ["ComparePicture"]

_ROW = 62


@dataclass(frozen=True, slots=True)
class _Field:
    """A field: where, its colour, its word, what is told of it, and a shorter word."""

    area: QRect
    lab: Lab
    word: str
    told: str
    short: str = ""


class ComparePicture(QWidget):
    """Every mix touches the wanted colour above it, and its neighbours at its sides."""

    def __init__(self) -> None:
        super().__init__()
        self._told: Compared | None = None
        self._names: tuple[str, ...] = ()
        self._short: tuple[str, ...] = ()
        self._states: tuple[State, ...] = (State.DRY,)
        self._light = Light.D65
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def sizeHint(self) -> QSize:
        """Ask for a good size."""
        return QSize(900, self.minimumHeight())

    def show_compared(
        self,
        told: Compared,
        names: Sequence[str],
        states: Sequence[State],
        light: Light,
        *,
        short: Sequence[str],
    ) -> None:
        """Show mixes of these names in these states under a light.

        Where a name is too long for its field, the short one stands there.
        """
        self._told, self._names, self._light = told, tuple(names), light
        self._short = tuple(short)
        self._states = tuple(states)
        self.setMinimumHeight(_ROW * len(self._states) + 90)
        rows = [field.told for field in self.fields() if field.told]
        self.setAccessibleName(words.picture_told(told.wanted_under(light), rows))
        self.update()

    def fields(self) -> list[_Field]:
        """Give all fields as they are laid out now."""
        told = self._told
        if told is None:
            return []
        wanted = told.wanted_under(self._light)
        several, found = len(self._states) > 1, []
        for state, (band, row) in zip(self._states, self._rows(), strict=True):
            found.append(_Field(band, wanted.shown, words.WANTED, ""))
            columns = self._columns(row, len(told.candidates))
            names = zip(self._names, self._short, strict=True)
            for (name, less), one, area in zip(names, told.candidates, columns, strict=True):
                sight = one.sight(state, self._light)
                word, short = (
                    words.cell_word(each, state, with_state=several) for each in (name, less)
                )
                told_of = words.sight_told(name, sight)
                found.append(_Field(area, sight.shown, word, told_of, short))
        return found

    def _rows(self) -> list[tuple[QRect, QRect]]:
        """Give the band of the wanted colour and the row of mixes below it, for each state."""
        count = len(self._states)
        edges = [self.height() * n // count for n in range(count + 1)]
        found = []
        for top, bottom in pairwise(edges):
            split = top + (bottom - top) * 2 // 5
            band = QRect(0, top, self.width(), split - top)
            found.append((band, QRect(0, split, self.width(), bottom - split)))
        return found

    def _columns(self, row: QRect, count: int) -> list[QRect]:
        edges = [self.width() * n // count for n in range(count + 1)]
        return [QRect(a, row.top(), b - a, row.height()) for a, b in pairwise(edges)]

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the fields, nothing between them."""
        del event
        painter = QPainter(self)
        for field in self.fields():
            paint_bands(painter, field.area, (Band(field.lab, field.word, short=field.short),))
        painter.end()

    def event(self, event: QEvent) -> bool:
        """Tell a mix where it is pointed at."""
        if isinstance(event, QHelpEvent):
            for field in self.fields():
                if field.told and field.area.contains(event.pos()):
                    QToolTip.showText(event.globalPos(), f"<p>{field.told}</p>", self)
            return True
        return super().event(event)
