"""The photo, with the boxes that mark the grey reference and the cloth.

A drag on the photo draws the box that is asked for; a drag on a box moves it, on its corner sizes
it; with Shift a new one is drawn, even inside the old. By keyboard: arrows move the box, Shift
with arrows sizes it, Return puts one in the middle, Delete takes it away; + and - enlarge and
reduce. The wheel does so about the pointer, and a drag with another button moves about the photo.
"""

from __future__ import annotations

from collections.abc import Mapping
from enum import Enum

from PySide6.QtCore import QPointF, QRectF, QSizeF, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFocusEvent,
    QImage,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QWheelEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from swatchwright.desktop import words
from swatchwright.desktop.look import write_on
from swatchwright.desktop.widgets.framing import ARROWS, Framing, zoom_key
from swatchwright.desktop.words import photo as photo_words
from swatchwright.desktop.words.seen import NOTHING_MARKED, mark_told
from swatchwright.values import Rect

__all__ = ["Mark", "PhotoView", "Spot", "Which"]

_REACH = 12.0
_SPOT = 11.0
_ROOM_FOR_SPOTS = 60.0
_SMALLEST_DRAG = 6.0

Spot = tuple[int, int, int, QColor]
"""Number, x and y in pixels of the photo, and colour of a place where a colour was found."""


class Mark(Enum):
    """What a box marks."""

    GREY = "grey"
    CLOTH = "cloth"
    SAMPLE = "sample"


Which = Mark | int
"""Which box: that of a mark, or of a further reference by its number from 1."""


class PhotoView(QWidget):
    """The photo fitted into the space there is, with its boxes and colour spots.

    Signals
    -------
    marked(Which, object)
        A box was drawn, moved, sized (`Rect`) or taken away (None).
    dragged(Which, object)
        A box is being dragged and is here now (`Rect`), or was let go as it was before (None).
    """

    marked = Signal(object, object)
    dragged = Signal(object, object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._image: QImage | None = None
        self._framing = Framing(self)
        self._framing.changed.connect(self.update)
        self._boxes: dict[Which, QRectF] = {}
        self._proposed: QRectF | None = None
        self._spots: tuple[Spot, ...] = ()
        self.tags: dict[Which, str] = {
            Mark.GREY: words.GREY_SHORT,
            Mark.CLOTH: words.CLOTH_SHORT,
            Mark.SAMPLE: words.SAMPLE_SHORT,
        }
        self._mode: Which = Mark.GREY
        self._panning: QPointF | None = None
        self._drag: _Drag | None = None
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(260, 160)
        self._calm = False
        self.setAccessibleName(words.PHOTO_NAME)

    # --- what is shown ---------------------------------------------------------------------------

    def show_photo(self, image: QImage, width: int, height: int) -> None:
        """Show a picture of a photo of this size in pixels."""
        self._image = image
        self._framing.fit(QSizeF(width, height))
        self._tell_marks()
        self.update()

    def show_boxes(self, grey: Rect | None, cloth: Rect | None, sample: Rect | None = None) -> None:
        """Show the boxes, in pixels of the photo."""
        self._boxes = {
            mark: QRectF(rect.x, rect.y, rect.width, rect.height)
            for mark, rect in ((Mark.GREY, grey), (Mark.CLOTH, cloth), (Mark.SAMPLE, sample))
            if rect is not None
        }
        self._tell_marks()
        self.update()

    def show_spots(self, spots: tuple[Spot, ...]) -> None:
        """Show where the colours were found."""
        self._spots = spots
        self.update()

    def show_more(self, boxes: Mapping[int, tuple[str, Rect]]) -> None:
        """Show the boxes of further references by their numbers, each with its word."""
        for number in [mark for mark in self._boxes if not isinstance(mark, Mark)]:
            del self._boxes[number]
        self._boxes |= {number: _box_of(rect) for number, (_, rect) in boxes.items()}
        self.tags |= {number: f"{number} {word}" for number, (word, _) in boxes.items()}
        self._tell_marks()
        self.update()

    def _tell_marks(self) -> None:
        """Tell where the boxes lie to whoever does not see them."""
        across, down = self._framing.size.toTuple()
        told = [
            mark_told(
                self.tags[mark],
                box.left() / across,
                box.top() / down,
                box.width() / across,
                box.height() / down,
            )
            for mark, box in self._boxes.items()
            if across and down
        ]
        self.setAccessibleDescription("; ".join(told) or NOTHING_MARKED)

    def show_proposed(self, rect: Rect | None) -> None:
        """Show where something may be, which is asked about elsewhere; None to ask no more."""
        self._proposed = None if rect is None else _box_of(rect)
        self.update()

    @property
    def dragging(self) -> bool:
        """Whether a box is in the hand."""
        return self._drag is not None

    def set_mode(self, mark: Which) -> None:
        """Say which box a drag draws."""
        self._mode = mark
        self.update()

    # --- between the photo and the screen --------------------------------------------------------

    def frame(self) -> QRectF:
        """Give where the photo stands in the widget."""
        return self._framing.frame(QSizeF(self.size()))

    def zoom_at(self, at: QPointF, factor: float) -> None:
        """Enlarge or reduce, keeping what is at a point of the widget there."""
        self._framing.zoom_at(QSizeF(self.size()), at, factor)

    def set_calm(self, *, calm: bool) -> None:
        """Leave the wheel to the page while a hand only scrolls by, or take it at once."""
        self._calm = calm

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Enlarge or reduce about the pointer; on a page that is scrolled where it was gone to."""
        if self._calm and not self.hasFocus():
            event.ignore()
            return
        self._framing.turn_wheel(QSizeF(self.size()), event)

    def to_widget(self, x: float, y: float) -> QPointF:
        """Give where a pixel of the photo is in the widget."""
        return self._framing.to_widget(QSizeF(self.size()), x, y)

    def _to_photo(self, point: QPointF) -> QPointF:
        """Give the place in the photo of a point, kept inside it."""
        return self._framing.to_picture(QSizeF(self.size()), point)

    def _box_in_widget(self, mark: Which) -> QRectF:
        return self._in_widget(self._boxes[mark])

    def _in_widget(self, box: QRectF) -> QRectF:
        return self._framing.box_to_widget(QSizeF(self.size()), box)

    # --- painting --------------------------------------------------------------------------------

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint photo, boxes and spots."""
        del event
        if self._image is None:
            return
        painter = QPainter(self)
        painter.setRenderHints(
            QPainter.RenderHint.SmoothPixmapTransform | QPainter.RenderHint.Antialiasing
        )
        painter.drawImage(self.frame(), self._image)
        for mark in self._boxes:
            self._paint_box(painter, mark)
        if self._proposed is not None:
            box = self._in_widget(self._proposed)
            _double_line(painter, box, Qt.PenStyle.DotLine)
            self._paint_tag(painter, box, photo_words.PROPOSED_TAG, asked=True)
        if self._room_for_spots():
            for spot in self._spots_apart():
                self._paint_spot(painter, spot)
        if self.hasFocus():
            _double_line(painter, self.frame().adjusted(2, 2, -2, -2), Qt.PenStyle.DotLine)
        painter.end()

    def _paint_box(self, painter: QPainter, mark: Which) -> None:
        box = self._box_in_widget(mark)
        dashed = mark is Mark.GREY or not isinstance(mark, Mark)
        _double_line(painter, box, Qt.PenStyle.DashLine if dashed else Qt.PenStyle.SolidLine)
        for corner in _corners(box):
            painter.fillRect(
                QRectF(corner - QPointF(4, 4), corner + QPointF(4, 4)), Qt.GlobalColor.white
            )
            painter.setPen(QPen(Qt.GlobalColor.black, 1))
            painter.drawRect(QRectF(corner - QPointF(4, 4), corner + QPointF(4, 4)))
        text = self.tags.get(mark, str(mark))
        self._paint_tag(painter, box, text, asked=mark == self._mode)

    def _paint_tag(self, painter: QPainter, box: QRectF, text: str, *, asked: bool) -> None:
        """Paint a word above a box; darker where it is the one that is asked for."""
        width = painter.fontMetrics().horizontalAdvance(text) + 16.0
        height = painter.fontMetrics().height() + 6.0
        above = box.top() - height if box.top() - height >= 0 else box.top()
        tag = QRectF(min(box.left(), self.width() - width), above, width, height)
        painter.fillRect(tag, QColor("#1c1c1c" if asked else "#6a6a6a"))
        painter.setPen(Qt.GlobalColor.white)
        painter.drawText(tag, Qt.AlignmentFlag.AlignCenter, text)

    def _room_for_spots(self) -> bool:
        """Tell whether spots would leave anything of the cloth to be seen."""
        if Mark.CLOTH not in self._boxes:
            return True
        box = self._box_in_widget(Mark.CLOTH)
        return min(box.width(), box.height()) >= _ROOM_FOR_SPOTS

    def _spots_apart(self) -> list[Spot]:
        """Leave out spots that would cover others; the first of each colour goes first."""
        firsts = {spot[0]: spot for spot in reversed(self._spots)}.values()
        kept: list[Spot] = []
        for spot in (*firsts, *self._spots):
            centre = self.to_widget(spot[1], spot[2])
            apart = [centre - self.to_widget(other[1], other[2]) for other in kept]
            if all(QPointF.dotProduct(way, way) > (2 * _SPOT) ** 2 for way in apart):
                kept.append(spot)
        return kept

    def _paint_spot(self, painter: QPainter, spot: Spot) -> None:
        number, x, y, colour = spot
        centre = self.to_widget(x, y)
        painter.setBrush(colour)
        painter.setPen(QPen(Qt.GlobalColor.black, 3.5))
        painter.drawEllipse(centre, _SPOT, _SPOT)
        painter.setPen(QPen(Qt.GlobalColor.white, 1.5))
        painter.drawEllipse(centre, _SPOT, _SPOT)
        room = QRectF(centre - QPointF(_SPOT, _SPOT), centre + QPointF(_SPOT, _SPOT))
        write_on(painter, room, int(Qt.AlignmentFlag.AlignCenter), str(number), colour)

    # --- mouse -----------------------------------------------------------------------------------

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Begin to draw, move or size a box; with another button, to move about the photo."""
        if self._image is not None and event.button() is not Qt.MouseButton.LeftButton:
            self._panning = event.position()
            return
        if self._image is None or event.button() is not Qt.MouseButton.LeftButton:
            return
        at = event.position()
        # A further reference may lie on the cloth: its box is drawn there, and moves no other.
        further = not isinstance(self._mode, Mark) and self._mode not in self._boxes
        anew = further or bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
        mark, corner = (None, None) if anew else self._under(at)
        start = self._to_photo(at)
        if mark is None:
            self._drag = _Drag(self._mode, start, fixed=start)
        elif corner is None:
            self._drag = _Drag(mark, start, moving=QRectF(self._boxes[mark]))
        else:
            opposite = _corners(self._boxes[mark])[(corner + 2) % 4]
            self._drag = _Drag(mark, start, fixed=opposite)
        self._drag.before = dict(self._boxes)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Go on with it, or show what a press would do."""
        if self._panning is not None:
            way, self._panning = event.position() - self._panning, event.position()
            self._framing.move(QSizeF(self.size()), way)
            return
        if self._drag is None:
            self._show_cursor(event.position())
            return
        box = self._drag.box(self._to_photo(event.position()), self._framing.size)
        self._boxes[self._drag.mark] = box
        self.dragged.emit(self._drag.mark, self._framing.whole(box))
        self.update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """End it; a mere click changes nothing."""
        if event.button() is not Qt.MouseButton.LeftButton:
            self._panning = None
            return
        if self._drag is None:
            return
        drag, self._drag = self._drag, None
        box = self._boxes.get(drag.mark, QRectF())
        drawn = min(box.width(), box.height()) * self._framing.scale(QSizeF(self.size()))
        unchanged = box == drag.before.get(drag.mark)
        if drawn < _SMALLEST_DRAG or unchanged:
            self._boxes = drag.before
            self.dragged.emit(drag.mark, None)
            self.update()
            return
        self._tell(drag.mark, box)

    def _under(self, at: QPointF) -> tuple[Which | None, int | None]:
        """Tell which box is under a point, and which of its corners, if any."""
        for mark in (self._mode, *self._boxes):
            if mark not in self._boxes:
                continue
            box = self._box_in_widget(mark)
            for i, corner in enumerate(_corners(box)):
                if (corner - at).manhattanLength() <= _REACH:
                    return mark, i
            if box.contains(at):
                return mark, None
        return None, None

    def _show_cursor(self, at: QPointF) -> None:
        mark, corner = (None, None) if self._image is None else self._under(at)
        if mark is None:
            self.setCursor(Qt.CursorShape.CrossCursor)
        elif corner is None:
            self.setCursor(Qt.CursorShape.SizeAllCursor)
        else:
            leaning = (Qt.CursorShape.SizeFDiagCursor, Qt.CursorShape.SizeBDiagCursor)
            self.setCursor(leaning[corner % 2])

    # --- keyboard --------------------------------------------------------------------------------

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move, size, make or take away the box of the mode."""
        if self._image is None:
            super().keyPressEvent(event)
            return
        key, box = event.key(), self._boxes.get(self._mode)
        if key in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace) and box is not None:
            self.marked.emit(self._mode, None)
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and box is None:
            self._tell(self._mode, self._middle())
        elif (factor := zoom_key(event)) is not None:
            self.zoom_at(QRectF(self.rect()).center(), factor)
        elif key in ARROWS and box is not None:
            sizing = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
            way = ARROWS[Qt.Key(key)]
            self._tell(self._mode, self._framing.nudged(box, way, sizing=sizing, least=5))
        else:
            super().keyPressEvent(event)

    def _middle(self) -> QRectF:
        width, height = self._framing.size.toTuple()
        return QRectF(width * 0.4, height * 0.4, width * 0.2, height * 0.2)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the focus."""
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Show that it is gone."""
        super().focusOutEvent(event)
        self.update()

    def _tell(self, mark: Which, box: QRectF) -> None:
        """Tell where a box is now."""
        self.marked.emit(mark, self._framing.whole(box))


class _Drag:
    """A drag under way: from a fixed corner, or moving a whole box."""

    def __init__(
        self,
        mark: Which,
        start: QPointF,
        *,
        fixed: QPointF | None = None,
        moving: QRectF | None = None,
    ) -> None:
        self.mark = mark
        self.before: dict[Which, QRectF] = {}
        self._start, self._fixed, self._moving = start, fixed, moving

    def box(self, at: QPointF, size: QSizeF) -> QRectF:
        """Give the box for where the drag is now, inside a photo of this size."""
        if self._fixed is not None:
            return QRectF(self._fixed, at).normalized()
        assert self._moving is not None  # noqa: S101 - a drag has one or the other
        way = at - self._start
        left = min(max(self._moving.left() + way.x(), 0.0), size.width() - self._moving.width())
        top = min(max(self._moving.top() + way.y(), 0.0), size.height() - self._moving.height())
        return QRectF(QPointF(left, top), self._moving.size())


def _box_of(rect: Rect) -> QRectF:
    return QRectF(rect.x, rect.y, rect.width, rect.height)


def _corners(box: QRectF) -> list[QPointF]:
    """Give the corners in turn, so that the one opposite is two further on."""
    return [box.topLeft(), box.topRight(), box.bottomRight(), box.bottomLeft()]


def _double_line(painter: QPainter, box: QRectF, line: Qt.PenStyle) -> None:
    """Draw a white line on a black one: seen on any photo."""
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(QPen(Qt.GlobalColor.black, 4))
    painter.drawRect(box)
    painter.setPen(QPen(Qt.GlobalColor.white, 2, line))
    painter.drawRect(box)
