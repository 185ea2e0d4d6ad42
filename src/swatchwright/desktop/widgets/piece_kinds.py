"""The common pieces to choose from, each a small line drawing and a word."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QPointF, QRect, QRectF, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QEnterEvent, QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QSizePolicy, QWidget

from swatchwright.desktop.widgets.even_rows import EvenRows
from swatchwright.desktop.widgets.piece_paths import path_of
from swatchwright.desktop.words import piece as words
from swatchwright.piece.common import Kind, common_piece
from swatchwright.piece.drawing import View, drawn

__all__ = ["KindButton", "KindStrip"]

_SHORT_RAIL = 240.0
"""mm; a whole rail would be drawn as a hair."""

_DRAWING, _FOOT = 71, 8
"""Pixels for the drawing with the space about it, and below the word."""


class KindButton(QAbstractButton):
    """A common piece in lines, and its word below it."""

    def __init__(self, kind: Kind, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.kind = kind
        self.setText(words.kind_word(kind))
        self.setAccessibleName(self.text())
        self.setCheckable(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self._size = (1.0, 1.0)
        self._paths: list[QPainterPath] = []
        # Each in an event of its own: all eight at once would hold the window up.
        QTimer.singleShot(0, self, self._draw)

    def _draw(self) -> None:
        """Work the lines out."""
        width = _SHORT_RAIL if self.kind is Kind.PICTURE_RAIL else None
        drawing = drawn(common_piece(self.kind, width=width), View.PICTURE)
        self._size = drawing.width, drawing.height
        self._paths = [path_of(outline) for outline in drawing.outlines]
        self.update()

    def sizeHint(self) -> QSize:
        """Ask for room for the drawing and the word."""
        letters = self.fontMetrics()
        wide = max(100, letters.horizontalAdvance(self.text()) + 14)
        return QSize(wide, _DRAWING + letters.height() + _FOOT)

    def minimumSizeHint(self) -> QSize:
        """Need as much."""
        return self.sizeHint()

    def enterEvent(self, event: QEnterEvent) -> None:
        """Show that it can be pressed."""
        super().enterEvent(event)
        self.update()

    def leaveEvent(self, event: QEvent) -> None:
        """Show it as it was."""
        super().leaveEvent(event)
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the sheet, the lines and the word."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        look = self.palette()
        ground = look.highlight() if self.isChecked() else look.base()
        ink = (look.highlightedText() if self.isChecked() else look.windowText()).color()
        edge = 2.0 if self.hasFocus() else 1.0 if self.underMouse() else 0.0
        painter.setBrush(ground)
        painter.setPen(QPen(look.windowText().color(), edge) if edge else Qt.PenStyle.NoPen)
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 1, -1, -1), 8, 8)
        if self.hasFocus() and self.isChecked():
            painter.setPen(QPen(ink, 1.5))
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(4, 4, -4, -4), 6, 6)
        painter.setPen(ink)
        high = self.fontMetrics().height()
        word = QRect(0, self.height() - high - _FOOT, self.width(), high)
        painter.drawText(word, Qt.AlignmentFlag.AlignCenter, self.text())
        room = QRectF(12, 9, self.width() - 24, word.top() - 14)
        scale = min(room.width() / self._size[0], room.height() / self._size[1])
        left = room.center().x() - scale * self._size[0] / 2
        painter.translate(QPointF(left, room.center().y() + scale * self._size[1] / 2))
        painter.scale(scale, scale)
        pen = QPen(ink, 1.0)
        pen.setCosmetic(True)
        painter.setPen(pen)
        painter.setBrush(ground)
        for path in self._paths:
            painter.drawPath(path)
        painter.end()


class KindStrip(EvenRows):
    """All common pieces in as few rows as there is room for; the one that is sized is pressed.

    Signals
    -------
    chosen(Kind)
        One of them was pressed.
    """

    chosen = Signal(object)

    def __init__(self) -> None:
        super().__init__(stretch=1)
        self.setAccessibleName(words.KINDS)
        self.buttons: dict[Kind, KindButton] = {}
        self._group = QButtonGroup(self)
        for kind in Kind:
            button = KindButton(kind)
            button.clicked.connect(lambda _=False, k=kind: self.chosen.emit(k))
            self._group.addButton(button)
            self.buttons[kind] = button

        self.put(*self.buttons.values())

    def show_kind(self, kind: Kind | None) -> None:
        """Press the button of a kind, or none."""
        if kind is not None:
            self.buttons[kind].setChecked(True)
            return
        self._group.setExclusive(False)
        for button in self.buttons.values():
            button.setChecked(False)
        self._group.setExclusive(True)
