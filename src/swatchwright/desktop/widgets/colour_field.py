"""A wanted colour with a mix touching it: dry on the left, wet on the right."""

from __future__ import annotations

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from swatchwright.colour.convert import in_srgb, lab_to_hex
from swatchwright.desktop import words
from swatchwright.desktop.look import write_on
from swatchwright.desktop.words.seen import fields_told
from swatchwright.values import Lab

__all__ = ["ColourField", "screen_colour"]


def screen_colour(lab: Lab) -> QColor:
    """Give the nearest colour that an sRGB screen can show."""
    return QColor(lab_to_hex(lab))


class ColourField(QWidget):
    """Three colours, edge to edge, with nothing between them."""

    def __init__(
        self,
        wanted: Lab,
        dry: Lab,
        wet: Lab,
        parent: QWidget | None = None,
        *,
        names: tuple[str, str, str] = (words.WANTED, words.DRY, words.WET),
    ) -> None:
        super().__init__(parent)
        self._fields = tuple(zip(names, (wanted, dry, wet), strict=True))
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(180, 90)
        self.setAccessibleName(fields_told(self._fields))
        if not all(in_srgb(lab) for _, lab in self._fields):
            self.setToolTip(words.NOT_ON_SCREEN)

    def sizeHint(self) -> QSize:
        """Ask for a good size."""
        return QSize(230, 210)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the fields; the word of each in its corner."""
        del event
        painter = QPainter(self)
        width, height = self.width(), self.height()
        half, middle = height // 2, width // 2
        areas = (
            QRect(0, 0, width, half),
            QRect(0, half, middle, height - half),
            QRect(middle, half, width - middle, height - half),
        )
        corners = (
            Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft,
            Qt.AlignmentFlag.AlignBottom | Qt.AlignmentFlag.AlignLeft,
            Qt.AlignmentFlag.AlignBottom | Qt.AlignmentFlag.AlignRight,
        )
        for (word, lab), area, corner in zip(self._fields, areas, corners, strict=True):
            colour = screen_colour(lab)
            painter.fillRect(area, colour)
            shown = word if in_srgb(lab) else words.about(word)
            write_on(painter, area.adjusted(9, 6, -9, -6), int(corner), shown, colour)
        painter.end()
