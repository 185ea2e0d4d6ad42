"""How a job is drawn in the list: its colour as a field, the piece, the client, how far, when."""

from __future__ import annotations

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRect, QSize, Qt
from PySide6.QtGui import QFont, QFontMetrics, QPainter, QPalette, QPen
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from swatchwright.acts.jobs import FoundJob
from swatchwright.desktop.letters import grown
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.widgets.job_model import FOUND, HERE
from swatchwright.desktop.words import brief as words

__all__ = ["JobRow"]

_FIELD, _EDGE, _LINE = 64, 10, 3
_WRAP = Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop
Index = QModelIndex | QPersistentModelIndex


class JobRow(QStyledItemDelegate):
    """Draws a job; long texts are wrapped, never cut."""

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """Ask for the height of all the text in the width there is."""
        wide = _width(option.widget)
        heights = [area.height() for area, _, _ in _texts(option, index, QRect(0, 0, wide, 0))]
        return QSize(wide, sum(heights) + (len(heights) - 1) * _LINE + 2 * _EDGE)

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Draw the row."""
        picked = bool(option.state & QStyle.StateFlag.State_Selected)
        role, ink = QPalette.ColorRole, option.palette
        painter.save()
        if picked:
            painter.fillRect(option.rect, ink.color(role.Highlight))
        found: FoundJob = index.data(FOUND)
        self._field(painter, option, found)
        for area, text, font in _texts(option, index, option.rect):
            painter.setFont(font)
            painter.setPen(ink.color(role.HighlightedText if picked else role.Text))
            painter.drawText(area, int(_WRAP), text)
        if option.state & QStyle.StateFlag.State_HasFocus:
            pen = QPen(ink.color(role.HighlightedText if picked else role.Text), 1)
            pen.setStyle(Qt.PenStyle.DashLine)
            painter.setPen(pen)
            painter.drawRect(option.rect.adjusted(1, 1, -2, -2))
        painter.restore()

    def _field(self, painter: QPainter, option: QStyleOptionViewItem, found: FoundJob) -> None:
        """Fill the field with the job's colour; an empty one is struck through."""
        area = QRect(option.rect.left(), option.rect.top(), _FIELD, option.rect.height())
        colour = found.line.colour if found.near is None else found.near.lab
        if colour is not None:
            painter.fillRect(area, screen_colour(colour))
            return
        painter.setPen(option.palette.color(QPalette.ColorRole.PlaceholderText))
        painter.drawRect(area.adjusted(4, 4, -5, -5))
        painter.drawLine(area.left() + 4, area.bottom() - 4, area.right() - 4, area.top() + 4)


def _width(view: QWidget | None) -> int:
    """Give the width of the list without its scroll bar."""
    viewport = getattr(view, "viewport", None)
    return 240 if viewport is None else max(160, viewport().width())


def _texts(
    option: QStyleOptionViewItem, index: Index, row: QRect
) -> list[tuple[QRect, str, QFont]]:
    """Lay the lines of a row below one another."""
    found: FoundJob = index.data(FOUND)
    strong, small = QFont(option.font), QFont(option.font)
    strong.setWeight(QFont.Weight.DemiBold)
    small.setPixelSize(grown(12))
    third = words.line_third(found.line, found.near, on_bench=bool(index.data(HERE)))
    lines = ((found.line.title, strong), (words.line_second(found.line), small), (third, small))
    left, top = row.left() + _FIELD + _EDGE, row.top() + _EDGE
    laid = []
    for text, font in (line for line in lines if line[0]):
        room = QRect(left, top, row.width() - _FIELD - 2 * _EDGE, 10_000)
        area = QFontMetrics(font).boundingRect(room, int(_WRAP), text)
        laid.append((QRect(left, top, room.width(), area.height()), text, font))
        top += area.height() + _LINE
    return laid
