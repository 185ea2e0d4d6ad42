"""Neighbours of a mix around it, edge to edge, to brush out and choose from by eye."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import (
    QAbstractButton,
    QDialog,
    QGridLayout,
    QLabel,
    QPushButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.correct import neighbours
from swatchwright.acts.recipes import MeasuredRecipe
from swatchwright.desktop import words
from swatchwright.desktop.look import ink_on, write_on
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.words.seen import colour_told
from swatchwright.desktop.workers import Job
from swatchwright.mixing.fan import Neighbour
from swatchwright.values import Lab

__all__ = ["NeighboursWindow"]

# Where each direction stands around the middle: lighter above, yellower to the right, and so on.
_GRID = {
    "lighter": (0, 1),
    "darker": (2, 1),
    "bluer": (1, 0),
    "yellower": (1, 2),
    "greener": (0, 0),
    "redder": (2, 2),
    "more vivid": (0, 2),
    "greyer": (2, 0),
}


class _Field(QAbstractButton):
    """A colour with its direction, to be pressed."""

    def __init__(self, told: str, lab: Lab) -> None:
        super().__init__()
        self._told, self._colour = told, screen_colour(lab)
        self.setCheckable(True)
        self.setAccessibleName(colour_told(told, lab))
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(120, 90)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the colour, its word, and a frame if it is chosen or has the focus."""
        del event
        painter = QPainter(self)
        painter.fillRect(self.rect(), self._colour)
        ink = ink_on(self._colour)
        tick = "✓ " if self.isChecked() else ""
        corner = Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft
        room = self.rect().adjusted(9, 7, -9, -7)
        write_on(painter, room, int(corner), f"{tick}{self._told}", self._colour)
        if self.isChecked() or self.hasFocus():
            dashed = Qt.PenStyle.SolidLine if self.isChecked() else Qt.PenStyle.DashLine
            painter.setPen(QPen(ink, 2, dashed))
            painter.drawRect(self.rect().adjusted(3, 3, -4, -4))
        painter.end()


class NeighboursWindow(QDialog):
    """Up to eight neighbours about the mix; one that is chosen by eye becomes the wanted colour."""

    def __init__(
        self, session: Session, measured: MeasuredRecipe, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._session, self._measured = session, measured
        self.fields: dict[str, _Field] = {}
        self._found: dict[str, Neighbour] = {}
        self.chosen: Neighbour | None = None
        self.setWindowTitle(words.NEIGHBOURS)
        self.resize(620, 560)
        rows = QVBoxLayout(self)
        hint = QLabel(words.NEIGHBOURS_HINT)
        hint.setWordWrap(True)
        hint.setToolTip(words.SCALE_TIP)
        rows.addWidget(hint)
        self._grid = QGridLayout()
        self._grid.setSpacing(0)
        rows.addLayout(self._grid, 1)
        self.told = QLabel(words.FINDING_NEIGHBOURS)
        self.told.setWordWrap(True)
        self.told.setMinimumHeight(58)
        rows.addWidget(self.told)
        self.want, self.seen = QPushButton(words.WANT_THIS), QPushButton(words.WANT_SEEN)
        self.seen.setToolTip(f"<p>{words.WANT_SEEN_TIP}</p>")
        self.want.clicked.connect(lambda: self._want(brushed=True))
        self.seen.clicked.connect(lambda: self._want(brushed=False))
        for button in (self.want, self.seen):
            button.setEnabled(False)
            rows.addWidget(button)
        self._put("", measured.recipe.dry, words.THIS_MIX, (1, 1))
        self._start()

    def _start(self) -> None:
        shelf, recipe = self._session.shelf, self._measured.recipe
        parts = [(p.id, s) for p, s in zip(recipe.paints, recipe.shares, strict=True)]

        def work(_: Job) -> tuple[Neighbour, ...]:
            return neighbours(shelf, parts)

        self._session.workshop.start("fan", words.FINDING_NEIGHBOURS, work, self._show)

    def _show(self, found: tuple[Neighbour, ...]) -> None:
        self._found = {n.word: n for n in found}
        self.told.setText(words.NEIGHBOURS_PRESS)
        for n in found:
            told = words.neighbour_word(n)
            self._put(n.word, n.dry, told, _GRID[n.word])

    def _put(self, word: str, lab: Lab, told: str, place: tuple[int, int]) -> None:
        field = _Field(told, lab)
        field.clicked.connect(lambda: self._choose(word))
        self.fields[word] = field
        self._grid.addWidget(field, *place)

    def _choose(self, word: str) -> None:
        for other, field in self.fields.items():
            field.setChecked(other == word)
        self.chosen = self._found.get(word)
        for button in (self.want, self.seen):
            button.setEnabled(self.chosen is not None)
        self.told.setText(
            words.NEIGHBOURS_PRESS if self.chosen is None else words.neighbour_text(self.chosen)
        )

    def _want(self, *, brushed: bool) -> None:
        if self.chosen is None:
            return
        # Only what was brushed out and held up is a sample, from which paints are learnt.
        if brushed:
            self._session.fan_picked.emit(self.chosen)
        self._session.want(self.chosen.dry, words.PICKED_BY_EYE if brushed else words.PICKED_HERE)
        self.close()
