"""The colours of the cloth as big touching blocks, to pick one from."""

from __future__ import annotations

from PySide6.QtCore import QRect, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFont, QFontMetrics, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QHBoxLayout, QSizePolicy, QWidget

from swatchwright.colour.names import colour_name
from swatchwright.desktop import words
from swatchwright.desktop.letters import follow_letters, grown
from swatchwright.desktop.look import ink_on, write_on
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.words import photo as photo_words
from swatchwright.language import figure
from swatchwright.photo.dominant import DominantColour
from swatchwright.values import Lab

__all__ = ["ColourBlock", "ColourStrip"]

_HEIGHT = 92
_NARROWEST = 84
_SMALL, _LEAST = 12, 9
_SPARE = 6
"""Pixels of the margins left and right that a long word may take."""


class ColourBlock(QAbstractButton):
    """One colour: its number, share and name; ticked and framed when it is the wanted one."""

    def __init__(self, number: int, colour: DominantColour, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        lab = colour.colour.lab
        self._number, self._share = number, colour.share
        self._name, self._colour = colour_name(lab), screen_colour(lab)
        self._sure = photo_words.give_or_take(colour), photo_words.short_give_or_take(colour)
        self.setCheckable(True)
        follow_letters(self, self._take_size)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        told = words.name_of_colour(number, colour, self._name)
        self.setAccessibleName(f"{told}, {self._sure[0]}")
        self.setToolTip(self.accessibleName())
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def _take_size(self) -> None:
        self.setFixedHeight(grown(_HEIGHT))
        self.setMinimumWidth(grown(_NARROWEST))

    def sizeHint(self) -> QSize:
        """Ask for a good size."""
        return QSize(grown(_NARROWEST), grown(_HEIGHT))

    def follow(self, lab: Lab) -> None:
        """Show what the colour would be in another light, for now."""
        self._name, self._colour = colour_name(lab), screen_colour(lab)
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the block."""
        del event
        painter = QPainter(self)
        painter.fillRect(self.rect(), self._colour)
        ink = ink_on(self._colour)
        inside = self.rect().adjusted(11, 7, -9, -7)
        tick = "✓ " if self.isChecked() else ""
        top = Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft
        told = f"{tick}{self._number}   {figure(self._share, '.0%')}"
        write_on(painter, inside, int(top), told, self._colour)
        self._paint_name(painter, inside)
        if self.isChecked():
            self._frame(painter, ink, 3, 2)
        if self.hasFocus():
            self._frame(painter, ink, 1, 6, Qt.PenStyle.DashLine)
        painter.end()

    def _paint_name(self, painter: QPainter, inside: QRect) -> None:
        """Paint the name, and below it how sure the colour is: shortly where there is no room."""
        corner = Qt.AlignmentFlag.AlignBottom | Qt.AlignmentFlag.AlignLeft
        wraps = int(corner) | int(Qt.TextFlag.TextWordWrap)
        usual, small = self.font(), self.font()
        small.setPixelSize(grown(_SMALL))
        painter.setFont(small)
        row = painter.fontMetrics().height()
        long = painter.fontMetrics().horizontalAdvance(self._sure[0])
        sure = self._sure[0 if long <= inside.width() else 1]
        above = inside.adjusted(0, row, 0, -row)

        def fits() -> bool:
            return above.contains(painter.fontMetrics().boundingRect(above, wraps, self._name))

        painter.setFont(usual)
        if not fits():
            painter.setFont(small)
        if not fits():
            # A long name in a narrow block takes all of it; the rest is told by the tip.
            most = inside.adjusted(-_SPARE, 0, _SPARE, 0)
            painter.setFont(self.word_font(most.width()))
            write_on(painter, most, wraps, self._name, self._colour)
            return
        write_on(painter, above, wraps, self._name, self._colour)
        painter.setFont(small)
        write_on(painter, inside, wraps, sure, self._colour)

    def word_font(self, wide: int) -> QFont:
        """Give the small letters, or smaller ones in which no word of the name is cut.

        A line is broken between words only, and a word may be wider than its block.
        """
        font = self.font()
        for size in range(grown(_SMALL), grown(_LEAST) - 1, -1):
            font.setPixelSize(size)
            letters = QFontMetrics(font)
            if all(letters.horizontalAdvance(word) <= wide for word in self._name.split()):
                break
        return font

    def _frame(
        self,
        painter: QPainter,
        ink: QColor,
        width: int,
        inset: int,
        line: Qt.PenStyle = Qt.PenStyle.SolidLine,
    ) -> None:
        painter.setPen(QPen(ink, width, line))
        painter.drawRect(self.rect().adjusted(inset, inset, -inset - 1, -inset - 1))


class ColourStrip(QWidget):
    """Blocks as wide as the shares of the colours.

    Signals
    -------
    picked(int)
        A block was pressed.
    """

    picked = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(0)
        self._group = QButtonGroup(self)
        self._group.idClicked.connect(self.picked)
        follow_letters(self, lambda: self.setFixedHeight(grown(_HEIGHT)))

    def blocks(self) -> list[ColourBlock]:
        """Give the blocks, in order."""
        return [b for b in self._group.buttons() if isinstance(b, ColourBlock)]

    def show_colours(self, colours: tuple[DominantColour, ...], pick: int | None) -> None:
        """Show these colours, one of them picked."""
        for block in self.blocks():
            self._group.removeButton(block)
            self._row.removeWidget(block)
            block.deleteLater()
        for place, colour in enumerate(colours):
            block = ColourBlock(place + 1, colour, self)
            self._group.addButton(block, place)
            self._row.addWidget(block, max(1, round(colour.share * 1000)))
        self.show_pick(pick)

    def follow(self, labs: tuple[Lab, ...]) -> None:
        """Show what the colours would be in another light, for now."""
        for block, lab in zip(self.blocks(), labs, strict=False):
            block.follow(lab)

    def show_pick(self, pick: int | None) -> None:
        """Tick the picked block, or none."""
        # An exclusive group does not let its last tick be taken away.
        self._group.setExclusive(False)
        for place, block in enumerate(self.blocks()):
            block.setChecked(place == pick)
        self._group.setExclusive(True)
