"""The further references of a photo, each with its number and word, to choose or take away."""

from __future__ import annotations

from PySide6.QtCore import QSize, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QPushButton, QWidget

from swatchwright.desktop.widgets.shelf_bits import button
from swatchwright.desktop.words import photo as words
from swatchwright.shelf.jobs import MarkedReference

__all__ = ["FurtherReferences"]

_ABREAST, _GAP = 2, 6


class FurtherReferences(QWidget):
    """A list of buttons: pressing one means its box, as the buttons of card and cloth do.

    Signals
    -------
    chosen(int)
        The box of this number is meant.
    dropped(int)
        This one is to be taken away.
    """

    chosen = Signal(int)
    dropped = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.buttons: dict[int, QPushButton] = {}
        self.away: dict[int, QPushButton] = {}
        self._cells: list[QWidget] = []
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setSpacing(_GAP)
        self._abreast = _ABREAST
        self._stretch()
        self.hide()

    def show_references(self, references: tuple[MarkedReference, ...]) -> None:
        """List these."""
        for cell in self._cells:
            self._grid.removeWidget(cell)
            cell.hide()
            cell.deleteLater()
        self._cells.clear()
        self.buttons.clear()
        self.away.clear()
        for number, marked in enumerate(references, start=1):
            cell = self._cell(number, marked)
            self._cells.append(cell)
            self._place(number - 1, cell)
        self.setVisible(bool(references))
        self._turn()

    def unbroken(self) -> int:
        """Give the width, in pixels, at which they stand two by two."""
        wide = [cell.minimumSizeHint().width() for cell in self._cells]
        columns = [max(wide[n::_ABREAST], default=0) for n in range(_ABREAST)]
        return sum(columns) + _GAP * (_ABREAST - 1)

    def minimumSizeHint(self) -> QSize:
        """Need the width of the widest: they may stand one below the other."""
        wide = max((cell.minimumSizeHint().width() for cell in self._cells), default=0)
        return QSize(wide, super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Stand two by two, or one below the other where that is too wide."""
        super().resizeEvent(event)
        self._turn()

    def _turn(self) -> None:
        abreast = _ABREAST if self.width() >= self.unbroken() else 1
        if abreast != self._abreast:
            self._abreast = abreast
            self._stretch()
            for place, cell in enumerate(self._cells):
                self._place(place, cell)

    def _stretch(self) -> None:
        for column in range(_ABREAST):
            self._grid.setColumnStretch(column, 1 if column < self._abreast else 0)

    def _place(self, place: int, cell: QWidget) -> None:
        self._grid.addWidget(cell, place // self._abreast, place % self._abreast)

    def _cell(self, number: int, marked: MarkedReference) -> QWidget:
        cell = QWidget()
        row = QHBoxLayout(cell)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(3)
        word = words.reference_word(number, marked)
        choose = button(word, lambda: self.chosen.emit(number), "little", tip=word)
        choose.setCheckable(True)
        away = button(
            words.AWAY,
            lambda: self.dropped.emit(number),
            "little",
            told=words.take_away(number, marked),
            tip=words.take_away(number, marked),
        )
        row.addWidget(choose, 1)
        row.addWidget(away)
        self.buttons[number], self.away[number] = choose, away
        return cell
