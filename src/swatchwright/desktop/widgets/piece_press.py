"""A drawing of a piece whose parts are pressed, gone to by arrows, and told."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from html import escape

from PySide6.QtCore import QEvent, QPointF, Qt, Signal
from PySide6.QtGui import (
    QFocusEvent,
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
)
from PySide6.QtWidgets import QToolTip, QWidget

from swatchwright.desktop.widgets.piece_drawing import PieceDrawing
from swatchwright.desktop.words import piece as words
from swatchwright.piece.drawing import Drawing, Outline

__all__ = ["NONE", "PressedDrawing"]

NONE = -1
"""What is chosen, or outlined, while no part is."""
_FRAME, _ROUND = 2, 8
_STEPS: dict[int, int] = {
    Qt.Key.Key_Right: 1,
    Qt.Key.Key_Down: 1,
    Qt.Key.Key_Left: -1,
    Qt.Key.Key_Up: -1,
}
_CHOOSE: set[int] = {Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space}


class PressedDrawing(PieceDrawing):
    """Outlines the part that is chosen, or that the arrows have come to; beside all it is none.

    Parameters
    ----------
    belongs
        Gives the number of what a face belongs to: what has one number is outlined and chosen
        together. `NONE` for what cannot be chosen.
    small
        Whether it stands beside what matters more.

    Signals
    -------
    chosen(int)
        What has this number was pressed, or `NONE`.
    outlined(int)
        That is outlined now, or `NONE`.
    """

    chosen = Signal(int)
    outlined = Signal(int)

    def __init__(
        self,
        belongs: Callable[[Outline], int],
        parent: QWidget | None = None,
        *,
        small: bool = False,
    ) -> None:
        super().__init__(parent, small=small)
        self._belongs = belongs
        self._faces: list[int] = []
        self._words: Callable[[int], str] = lambda _: ""
        self._name = ""
        self._chosen = self._here = NONE
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def show_drawing(
        self, drawing: Drawing, zones: Sequence[str], told: tuple[str, str] = ("", "")
    ) -> None:
        """Show a drawing; what is outlined stays so, if it is there still."""
        super().show_drawing(drawing, zones, told)
        self._faces = [self._belongs(outline) for outline in drawing.outlines]
        self._outline(self._here)

    def tell(self, name: str, told: Callable[[int], str]) -> None:
        """Take what the whole drawing is called, and what tells of a part by its number."""
        self._name, self._words = name, told
        self._name_it()

    def choose(self, number: int) -> None:
        """Outline what has a number as the one that is chosen."""
        self._chosen = number
        self._outline(number)

    def here(self) -> int:
        """Give the number of what is outlined."""
        return self._here

    def number_at(self, pixel: QPointF) -> int:
        """Give the number of what is seen at a pixel."""
        place = self.face_at(pixel)
        return NONE if place is None else self._faces[place]

    def told_of(self, number: int) -> str:
        """Give what is told of a part; empty for none."""
        return "" if number == NONE else self._words(number)

    def _outline(self, number: int) -> None:
        here = number if number in self._faces else NONE
        self.mark([place for place, face in enumerate(self._faces) if face == here != NONE])
        if here != self._here:
            self._here = here
            self._name_it()
            self.outlined.emit(here)

    def _name_it(self) -> None:
        """Tell first what is outlined, for those who hear it."""
        told = self.told_of(self._here)
        self.setAccessibleName(words.outlined_told(told, self._name) if told else self._name)

    def _press(self, number: int) -> None:
        self.choose(number)
        self.chosen.emit(number)

    # --- the mouse -------------------------------------------------------------------------------

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Choose what is pressed."""
        if event.button() is Qt.MouseButton.LeftButton:
            self._press(self.number_at(event.position()))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Show a hand over what can be pressed."""
        if self.number_at(event.position()) == NONE:
            self.unsetCursor()
        else:
            self.setCursor(Qt.CursorShape.PointingHandCursor)

    def event(self, event: QEvent) -> bool:
        """Tell of the part that is pointed at, and take Escape while one is outlined."""
        if isinstance(event, QKeyEvent) and event.type() == QEvent.Type.ShortcutOverride:
            if event.key() == Qt.Key.Key_Escape and self._here != NONE:
                event.accept()
                return True
            return super().event(event)
        if not isinstance(event, QHelpEvent):
            return super().event(event)
        told = self.told_of(self.number_at(QPointF(event.pos())))
        QToolTip.showText(event.globalPos(), f"<p>{escape(told)}</p>" if told else "", self)
        return True

    # --- the keyboard ----------------------------------------------------------------------------

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go from part to part by arrows; Enter or the space bar chooses, Escape chooses none."""
        there = sorted({*self._faces} - {NONE})
        key = event.key()
        if key in _STEPS and there:
            self._outline(_beside(there, self._here, _STEPS[key]))
        elif key in _CHOOSE and self._here != NONE:
            self._press(self._here)
        elif key == Qt.Key.Key_Escape and self._here != NONE:
            self._press(NONE)
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show that the keyboard is here."""
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Outline what is chosen again, where the arrows had gone on from it."""
        super().focusOutEvent(event)
        self._outline(self._chosen)
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the drawing, and a frame if the keyboard is here."""
        super().paintEvent(event)
        if not self.hasFocus():
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(self.palette().windowText().color(), _FRAME))
        painter.drawRoundedRect(self.rect().adjusted(1, 1, -1, -1), _ROUND, _ROUND)
        painter.end()


def _beside(there: Sequence[int], here: int, step: int) -> int:
    """Give the next number of those that are there, and at either end the same."""
    if here not in there:
        return there[0] if step > 0 else there[-1]
    return there[max(0, min(there.index(here) + step, len(there) - 1))]
