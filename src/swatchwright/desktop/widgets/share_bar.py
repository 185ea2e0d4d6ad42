"""The shares of a recipe as a bar, each piece in its paint's own colour."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from swatchwright.desktop.look import write_on
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.words.seen import part_told, share_told
from swatchwright.values import Lab

__all__ = ["ShareBar"]

_NARROWEST = 14.0


class ShareBar(QWidget):
    """A bar of touching pieces, as wide as the shares; in each its number of parts, if told."""

    def __init__(
        self,
        shares: tuple[float, ...],
        counts: tuple[int, ...],
        colours: tuple[Lab, ...],
        names: tuple[str, ...],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._shares, self._counts, self._colours = shares, counts, colours
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        if counts:
            told = [part_told(*one) for one in zip(counts, names, strict=True)]
        else:
            told = [share_told(*one) for one in zip(shares, names, strict=True)]
        self.setAccessibleName("; ".join(told))

    def sizeHint(self) -> QSize:
        """Ask for a good size."""
        return QSize(200, 30)

    def widths(self) -> list[float]:
        """Give the width of each piece; a trace is drawn wide enough to be seen."""
        wide = [max(_NARROWEST, share * self.width()) for share in self._shares]
        over = sum(wide) - self.width()
        wide[wide.index(max(wide))] -= over
        return wide

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the pieces."""
        del event
        painter = QPainter(self)
        left = 0.0
        told = [str(count) for count in self._counts] or [""] * len(self._shares)
        for width, text, lab in zip(self.widths(), told, self._colours, strict=True):
            piece = QRectF(left, 0, width, self.height())
            colour = screen_colour(lab)
            painter.fillRect(piece, colour)
            if painter.fontMetrics().horizontalAdvance(text) + 4 <= width:
                write_on(painter, piece, int(Qt.AlignmentFlag.AlignCenter), text, colour)
            left += width
        # A piece as light or as dark as the sheet would else have no end.
        painter.setPen(self.palette().placeholderText().color())
        painter.drawRect(self.rect().adjusted(0, 0, -1, -1))
        painter.end()
