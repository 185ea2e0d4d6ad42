"""The big picture of a finish: the bare mix and each layer after it, edge to edge."""

from __future__ import annotations

from itertools import pairwise

from PySide6.QtCore import QEvent, QRect, QSize, Qt
from PySide6.QtGui import QColor, QHelpEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QToolTip, QWidget

from swatchwright.acts.finish import Look, StepLook
from swatchwright.colour.convert import in_srgb
from swatchwright.desktop.look import write_on
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.widgets.finish_bands import Band, paint_bands
from swatchwright.desktop.words import about
from swatchwright.desktop.words import finish as words
from swatchwright.values import Lab

__all__ = ["DRY", "WET", "FinishSteps"]

DRY, WET = 0, 1
"""How a look is seen: dry or wet in daylight; from 2 on, dry under the other lights of the room."""

_WANTED_HEIGHT, _LEAST, _ROOM_FOR_WORDS = 34, 150, 104


class FinishSteps(QWidget):
    """Steps side by side, each from flat to grain; above them, touching all, the wanted colour."""

    def __init__(self) -> None:
        super().__init__()
        self._look: Look | None = None
        self._wanted: Lab | None = None
        self._seen, self._figures = DRY, False
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumHeight(_LEAST)

    def sizeHint(self) -> QSize:
        """Ask for a good size."""
        return QSize(700, 220)

    def show_look(self, look: Look | None, wanted: Lab | None) -> None:
        """Show these steps, or none."""
        self._look, self._wanted = look, wanted
        self._tell()

    def see(self, seen: int) -> None:
        """Show it dry, wet, or under another light of the room."""
        self._seen = seen
        self._tell()

    def show_figures(self, *, shown: bool) -> None:
        """Write the figures into the fields, or not."""
        self._figures = shown
        self.update()

    def colours(self) -> list[Lab]:
        """Give the colour of each step on the whole, as it is seen now."""
        return [] if self._look is None else [self._lab(step) for step in self._look.steps]

    def _tell(self) -> None:
        steps = () if self._look is None else self._look.steps
        rows = [words.step_told(n, step, self._lab(step)) for n, step in enumerate(steps)]
        self.setAccessibleName("\n".join([words.SEEN[self._seen], *rows]))
        self.update()

    def _lab(self, step: StepLook) -> Lab:
        if self._seen == DRY:
            return step.dry
        return step.wet if self._seen == WET else step.lights[self._seen - 1][1]

    def areas(self) -> list[QRect]:
        """Give where each step is."""
        count = 0 if self._look is None else len(self._look.steps)
        top = _WANTED_HEIGHT if self._shows_wanted() else 0
        edges = [self.width() * n // max(count, 1) for n in range(count + 1)]
        height = self.height() - top
        return [QRect(left, top, right - left, height) for left, right in pairwise(edges)]

    def _shows_wanted(self) -> bool:
        # What the cloth looks like under a lamp is not known from its colour in daylight.
        return self._wanted is not None and self._seen in {DRY, WET}

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the wanted colour and the steps."""
        del event
        if self._look is None:
            return
        painter = QPainter(self)
        if self._wanted is not None and self._shows_wanted():
            strip = QRect(0, 0, self.width(), _WANTED_HEIGHT)
            paint_bands(painter, strip, (Band(self._wanted, words.WANTED),))
        for number, (step, area) in enumerate(zip(self._look.steps, self.areas(), strict=True)):
            self._paint_step(painter, number, step, area)
        painter.end()

    def _paint_step(self, painter: QPainter, number: int, step: StepLook, area: QRect) -> None:
        ranged = self._seen == DRY and step.layer is not None
        named = ranged and area.width() >= _ROOM_FOR_WORDS
        lab = self._lab(step)
        bands = (
            Band(step.flat if ranged else lab, words.FLATS if named else ""),
            Band(lab, "", 2),
            Band(step.grain if ranged else lab, words.GRAIN if named else ""),
        )
        paint_bands(painter, area, bands)
        head = words.step_head(number, step)
        told = [head if in_srgb(lab) else about(head)]
        told += words.step_figures(step) if self._figures else ()
        quarter = area.height() // 4 if ranged else 0
        self._write(painter, area.adjusted(9, quarter, -6, -quarter), told, screen_colour(lab))

    def _write(self, painter: QPainter, area: QRect, told: list[str], colour: QColor) -> None:
        """Write what fits, the last left out first; all of it is told on pointing."""
        flags = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        flags |= int(Qt.TextFlag.TextWordWrap)
        while len(told) > 1 and painter.boundingRect(area, flags, "\n".join(told)).height() > (
            area.height()
        ):
            told = told[:-1]
        write_on(painter, area, flags, "\n".join(told), colour)

    def event(self, event: QEvent) -> bool:
        """Tell the whole of a step where it is pointed at."""
        if isinstance(event, QHelpEvent) and self._look is not None:
            for number, area in enumerate(self.areas()):
                if area.contains(event.pos()):
                    step = self._look.steps[number]
                    told = words.step_told(number, step, self._lab(step))
                    QToolTip.showText(event.globalPos(), f"<p>{told}</p>", self)
            return True
        return super().event(event)
