"""The big picture of a finish: the bare mix and each layer after it, edge to edge."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from PySide6.QtCore import QEvent, QRect, QSize, Qt
from PySide6.QtGui import QColor, QHelpEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QToolTip, QWidget

from swatchwright.acts.finish_values import Look, StepLook
from swatchwright.colour.convert import in_srgb
from swatchwright.colour.spectrum import Light
from swatchwright.desktop.letters import follow_letters, grown
from swatchwright.desktop.look import write_on
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.widgets.finish_bands import Band, paint_bands
from swatchwright.desktop.words import about
from swatchwright.desktop.words import finish as words
from swatchwright.desktop.words import finish_seen as seen
from swatchwright.desktop.words import finish_ways as ways
from swatchwright.desktop.words.seen import colour_told
from swatchwright.values import Lab

__all__ = ["FinishSteps"]

_WANTED_HEIGHT, _LEAST, _WHOLE, _ROOM_FOR_WORDS = 34, 150, 170, 104


class FinishSteps(QWidget):
    """Steps side by side, each from flat to grain; above them, touching all, the wanted colour.

    Where the client wants another now, that touches them, and the wanted one lies above it.
    """

    def __init__(self) -> None:
        super().__init__()
        self._look: Look | None = None
        self._wanted: dict[Light, Lab] = {}
        self._client: dict[Light, Lab] = {}
        self._light: Light | None = Light.D65
        self._figures = False
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self._whole = False
        follow_letters(self, self._fit)

    def set_whole(self, *, whole: bool) -> None:
        """Have room for all words of a step, or give way to what is beside and below."""
        self._whole = whole
        self._fit()

    def _fit(self) -> None:
        self.setMinimumHeight(grown(_WHOLE) if self._whole else _LEAST)

    def sizeHint(self) -> QSize:
        """Ask for a good size."""
        return QSize(700, 150)

    def show_look(
        self,
        look: Look | None,
        wanted: Sequence[tuple[Light, Lab]],
        client: Sequence[tuple[Light, Lab]] = (),
    ) -> None:
        """Show these steps, or none, below the wanted colour as it looks in each light.

        Where the client wants another now, that is between them.
        """
        self._look, self._wanted, self._client = look, dict(wanted), dict(client)
        self._tell()

    def see(self, light: Light | None) -> None:
        """Show it dry under a light of the room, or, for None, wet in daylight."""
        self._light = light
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
        rows = [*(colour_told(word, lab) for word, lab in self.strips()), *rows]
        self.setAccessibleName("\n".join([seen.seen_word(self._light), *rows]))
        self.update()

    def _lab(self, step: StepLook) -> Lab:
        if self._light is Light.D65:
            return step.dry
        return step.wet if self._light is None else step.under(self._light)

    def areas(self) -> list[QRect]:
        """Give where each step is."""
        count = 0 if self._look is None else len(self._look.steps)
        top = _WANTED_HEIGHT * len(self.strips())
        edges = [self.width() * n // max(count, 1) for n in range(count + 1)]
        height = self.height() - top
        return [QRect(left, top, right - left, height) for left, right in pairwise(edges)]

    def wanted(self) -> Lab | None:
        """Give the wanted colour as it is shown, which is never wet."""
        return self._wanted.get(Light.D65 if self._light is None else self._light)

    def client(self) -> Lab | None:
        """Give what the client wants now as it is shown; None where that is the wanted colour."""
        return self._client.get(Light.D65 if self._light is None else self._light)

    def strips(self) -> list[tuple[str, Lab]]:
        """Give the words and the colours that lie across all steps, from above."""
        told = (
            (seen.wanted_word(self._light), self.wanted()),
            (ways.client_word(self._light), self.client()),
        )
        return [(word, lab) for word, lab in told if lab is not None]

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the wanted colour and the steps."""
        del event
        if self._look is None:
            return
        painter = QPainter(self)
        for place, (word, lab) in enumerate(self.strips()):
            strip = QRect(0, place * _WANTED_HEIGHT, self.width(), _WANTED_HEIGHT)
            paint_bands(painter, strip, (Band(lab, word),))
        for number, (step, area) in enumerate(zip(self._look.steps, self.areas(), strict=True)):
            self._paint_step(painter, number, step, area)
        painter.end()

    def _paint_step(self, painter: QPainter, number: int, step: StepLook, area: QRect) -> None:
        ranged = self._light is Light.D65 and step.in_grain
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
