"""One colour as it lies on a piece: flats, the whole, and grain as touching bands, with words."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QPainter

from swatchwright.colour.convert import in_srgb
from swatchwright.desktop.look import write_on
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.words import about
from swatchwright.values import Lab

__all__ = ["Band", "paint_bands"]

_IN_X = 9


@dataclass(frozen=True, slots=True)
class Band:
    """A band: its colour, its word, how high it is beside the others, and a shorter word."""

    lab: Lab
    word: str = ""
    weight: int = 1
    short: str = ""


def paint_bands(painter: QPainter, area: QRect, bands: tuple[Band, ...]) -> None:
    """Paint bands below each other, with nothing between; the longest word that fits, if any."""
    whole, top = sum(band.weight for band in bands), 0
    for band in bands:
        bottom = top + band.weight
        y, end = (area.top() + area.height() * at // whole for at in (top, bottom))
        piece = QRect(area.left(), y, area.width(), end - y)
        colour = screen_colour(band.lab)
        painter.fillRect(piece, colour)
        inside = piece.adjusted(_IN_X, 0, -_IN_X, 0)
        where = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        flags = int(where) | int(Qt.TextFlag.TextWordWrap)
        for told in filter(None, (band.word, band.short)):
            word = told if in_srgb(band.lab) else about(told)
            needed = painter.boundingRect(inside, flags, word)
            if needed.width() <= inside.width() and needed.height() <= inside.height():
                write_on(painter, inside, flags, word, colour)
                break
        top = bottom
