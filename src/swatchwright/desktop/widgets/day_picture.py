"""The days of a plan as a picture: a row for each, work in full and waiting hatched.

The working hours take most of the width; the night before and after is drawn narrower. Days on
which it does nothing but harden share a row.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, QSizeF, Qt, Signal
from PySide6.QtGui import (
    QAccessible,
    QAccessibleEvent,
    QBrush,
    QFocusEvent,
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
)
from PySide6.QtWidgets import QSizePolicy, QToolTip, QWidget

from swatchwright.acts.plan import PlannedWork
from swatchwright.desktop.widgets.day_rows import DayRow, day_rows
from swatchwright.desktop.widgets.piece_fields import quiet_ink
from swatchwright.desktop.words import days as words
from swatchwright.desktop.words.plan import summary
from swatchwright.language.dates import clock
from swatchwright.piece.work.days import Block
from swatchwright.piece.work.order import Week
from swatchwright.piece.work.plan import Step

__all__ = ["DayPicture"]

_ROW, _HEAD, _SIDE = 26.0, 22.0, 112.0
_BEFORE, _AFTER = 0.07, 0.14
_DAY = 24 * 60
_NARROWEST = 4.0


@dataclass(slots=True)
class _Shown:
    """What is shown of a plan."""

    rows: list[DayRow] = field(default_factory=list)
    steps: dict[int, Step] = field(default_factory=dict)
    week: Week = field(default_factory=Week)


class DayPicture(QWidget):
    """Draws the days; a block is picked with the mouse or the arrow keys.

    Signals
    -------
    chosen(int)
        The number of the step whose block was picked.
    wanted(int)
        The number of a step that is to be shown in the list.
    """

    chosen = Signal(int)
    wanted = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._shown = _Shown()
        self._picked: tuple[int, int] | None = None
        self._name = words.PICTURE
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(words.PICTURE)
        self.setMinimumWidth(420)

    def show_days(self, made: PlannedWork, week: Week) -> None:
        """Show the days of a plan."""
        steps = {step.number: step for step in made.plan.steps}
        self._shown = _Shown(day_rows(made.days), steps, week)
        self._picked = None
        self._name = words.picture_name(summary(made))
        self.setAccessibleName(self._name)
        self.updateGeometry()
        self.update()

    def rows(self) -> list[DayRow]:
        """Give the rows that are drawn."""
        return list(self._shown.rows)

    def sizeHint(self) -> QSize:
        """Ask for the height of all rows."""
        return QSize(620, round(_HEAD + _ROW * len(self._shown.rows) + 4))

    def minimumSizeHint(self) -> QSize:
        """Need all rows."""
        return QSize(420, self.sizeHint().height())

    # --- where things are ------------------------------------------------------------------------

    def _x(self, minute: float) -> float:
        """Give where a minute of the day is, in pixels."""
        week, wide = self._shown.week, self.width() - _SIDE - 4
        begin, end = week.begin, week.end
        if minute <= begin:
            share = _BEFORE * minute / max(1, begin)
        elif minute <= end:
            share = _BEFORE + (1 - _BEFORE - _AFTER) * (minute - begin) / (end - begin)
        else:
            share = 1 - _AFTER + _AFTER * (minute - end) / max(1, _DAY - end)
        return _SIDE + wide * share

    def box(self, row: int, place: int) -> QRectF:
        """Give the box of a block."""
        block = self._shown.rows[row].blocks[place]
        left, right = self._x(block.begin), self._x(block.end)
        top = _HEAD + _ROW * row
        return QRectF(left, top + 3, max(_NARROWEST, right - left), _ROW - 6)

    def _at(self, point: QPointF) -> tuple[int, int] | None:
        """Find the block at a point; work lies over the waits beside it."""
        row = int((point.y() - _HEAD) // _ROW)
        if not 0 <= row < len(self._shown.rows):
            return None
        blocks = self._shown.rows[row].blocks
        ordered = sorted(range(len(blocks)), key=lambda i: blocks[i].drying)
        return next(((row, i) for i in ordered if self.box(row, i).contains(point)), None)

    def told(self, row: int, place: int) -> str:
        """Tell a block in words."""
        shown = self._shown.rows[row]
        block = shown.blocks[place]
        step = self._shown.steps[block.step]
        if len(shown.days) > 1:
            return words.hardening_told(shown.days, step)
        return words.block_told(shown.days[0], block, step)

    # --- painting --------------------------------------------------------------------------------

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the hours, then the rows."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._paint_hours(painter)
        for number in range(len(self._shown.rows)):
            self._paint_row(painter, number)
        if self._picked is not None:
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QPen(self.palette().windowText().color(), 2.5))
            painter.drawRect(self.box(*self._picked).adjusted(-2, -2, 2, 2))
        if self.hasFocus():
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QPen(self.palette().windowText().color(), 2))
            painter.drawRect(QRectF(self.rect()).adjusted(1, 1, -1, -1))
        painter.end()

    def _paint_hours(self, painter: QPainter) -> None:
        week, floor = self._shown.week, _HEAD + _ROW * len(self._shown.rows)
        painter.setPen(quiet_ink())
        hours = [week.begin, *range(60 * (week.begin // 60 + 1), week.end, 60), week.end]
        last = -100.0
        for minute in hours:
            x = self._x(minute)
            edge = minute in {week.begin, week.end}
            painter.setPen(QPen(quiet_ink(), 1.4 if edge else 0.5))
            painter.drawLine(QPointF(x, _HEAD - 4), QPointF(x, floor))
            room = minute == week.end or self._x(week.end) - x > 44
            if x - last > 44 and room:
                box = QRectF(x - 30, 0, 60, _HEAD - 4)
                painter.drawText(box, Qt.AlignmentFlag.AlignCenter, clock(minute))
                last = x
        night = QRectF(self._x(week.end) + 22, 0, self.width() - self._x(week.end) - 24, _HEAD - 4)
        if night.width() > painter.fontMetrics().horizontalAdvance(words.NIGHT):
            painter.drawText(night, Qt.AlignmentFlag.AlignCenter, words.NIGHT)

    def _paint_row(self, painter: QPainter, number: int) -> None:
        shown = self._shown.rows[number]
        top = _HEAD + _ROW * number
        quiet = quiet_ink()
        painter.setPen(QPen(quiet, 0.5))
        painter.drawLine(QPointF(0, top), QPointF(self.width(), top))
        works = any(not block.drying for block in shown.blocks)
        painter.setPen(self.palette().windowText().color() if works else quiet)
        name = QRectF(4, top, _SIDE - 8, _ROW)
        painter.drawText(name, Qt.AlignmentFlag.AlignVCenter, words.row_name(shown.days))
        if not shown.blocks and not shown.days[0].working:
            room = QRectF(self._x(self._shown.week.begin), top, 200, _ROW).adjusted(8, 0, 0, 0)
            painter.drawText(room, Qt.AlignmentFlag.AlignVCenter, words.DAY_OFF)
        for place, block in sorted(enumerate(shown.blocks), key=lambda row: not row[1].drying):
            self._paint_block(painter, self.box(number, place), block, len(shown.days))
        self._paint_beside(painter, number)

    def _paint_beside(self, painter: QPainter, number: int) -> None:
        """Write the numbers of narrow blocks beside them, over what waits there."""
        for place, spot in self.beside(number).items():
            painter.fillRect(spot, self.palette().base().color())
            painter.setPen(self.palette().windowText().color())
            step = self._shown.rows[number].blocks[place].step
            painter.drawText(spot, Qt.AlignmentFlag.AlignCenter, str(step))

    def beside(self, number: int) -> dict[int, QRectF]:
        """Give where the numbers of a row stand that have no room in their blocks of work.

        After the block, before it, or, between others, over its upper half; by place in the row.
        """
        blocks, metrics = self._shown.rows[number].blocks, self.fontMetrics()
        taken = [self.box(number, place) for place, one in enumerate(blocks) if not one.drying]
        found: dict[int, QRectF] = {}
        for place, block in enumerate(blocks):
            box, wide = self.box(number, place), metrics.horizontalAdvance(str(block.step)) + 3.0
            if block.drying or wide <= box.width() + 1:
                continue
            size = QSizeF(wide, box.height() - 4)
            after = QRectF(QPointF(box.right() + 1, box.top() + 2), size)
            before = QRectF(QPointF(box.left() - wide - 1, box.top() + 2), size)
            within = QRectF(_SIDE, 0, self.width() - _SIDE, self.height())
            free = (
                spot
                for spot in (after, before)
                if within.contains(spot) and not any(spot.intersects(one) for one in taken)
            )
            over = QRectF(box.center().x() - wide / 2, box.top() - 3, wide, box.height() / 2 + 3)
            found[place] = next(free, over)
            taken.append(found[place])
        return found

    def _paint_block(self, painter: QPainter, box: QRectF, block: Block, days: int) -> None:
        ink, sheet = self.palette().windowText().color(), self.palette().base().color()
        metrics = painter.fontMetrics()
        if not block.drying:
            painter.setBrush(ink)
            painter.setPen(QPen(sheet, 1))
            painter.drawRect(box)
            if metrics.horizontalAdvance(str(block.step)) + 2 <= box.width():
                painter.drawText(box, Qt.AlignmentFlag.AlignCenter, str(block.step))
            return
        quiet = quiet_ink()
        painter.setBrush(QBrush(quiet, Qt.BrushStyle.BDiagPattern))
        painter.setPen(QPen(quiet, 1))
        painter.drawRect(box)
        step = self._shown.steps[block.step]
        word = words.waiting_word(step) if days == 1 else words.hardening(days)
        wide = metrics.horizontalAdvance(word) + 12
        if wide + 6 <= box.width():
            patch = QRectF(box.center().x() - wide / 2, box.top() + 1, wide, box.height() - 2)
            painter.fillRect(patch, sheet)
            painter.setPen(ink)
            painter.drawText(patch, Qt.AlignmentFlag.AlignCenter, word)

    # --- picking ---------------------------------------------------------------------------------

    def pick(self, place: tuple[int, int]) -> None:
        """Pick a block, and tell of it."""
        self._picked = place
        row, number = place
        self.setAccessibleName(self.told(row, number))
        QAccessible.updateAccessibility(QAccessibleEvent(self, QAccessible.Event.NameChanged))
        self.update()
        self.chosen.emit(self._shown.rows[row].blocks[number].step)

    def picked(self) -> Block | None:
        """Give the block that is picked; None if none is."""
        if self._picked is None:
            return None
        row, place = self._picked
        return self._shown.rows[row].blocks[place]

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Pick the block that is pressed."""
        if (found := self._at(event.position())) is not None:
            self.pick(found)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Show the step of the block in the list."""
        if (found := self._at(event.position())) is not None:
            self.wanted.emit(self._shown.rows[found[0]].blocks[found[1]].step)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go from block to block with left and right, from row to row with up and down."""
        places = [(r, i) for r, row in enumerate(self._shown.rows) for i in range(len(row.blocks))]
        ways = {Qt.Key.Key_Right: 1, Qt.Key.Key_Left: -1}
        key = Qt.Key(event.key())
        if key in {Qt.Key.Key_Return, Qt.Key.Key_Enter} and (block := self.picked()) is not None:
            self.wanted.emit(block.step)
            return
        if not places or key not in {*ways, Qt.Key.Key_Up, Qt.Key.Key_Down}:
            super().keyPressEvent(event)
            return
        if self._picked not in places:
            self.pick(places[0])
        elif key in ways:
            now = places.index(self._picked) + ways[key]
            self.pick(places[min(max(now, 0), len(places) - 1)])
        else:
            self._to_row(places, down=key == Qt.Key.Key_Down)

    def _to_row(self, places: list[tuple[int, int]], *, down: bool) -> None:
        row = 0 if self._picked is None else self._picked[0]
        others = [place for place in places if (place[0] > row if down else place[0] < row)]
        if not others:
            return
        target = others[0][0] if down else others[-1][0]
        self.pick(next(place for place in others if place[0] == target))

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show that the keys go here."""
        super().focusInEvent(event)
        self.update()

    def event(self, event: QEvent) -> bool:
        """Tell the block under the pointer."""
        if isinstance(event, QHelpEvent) and event.type() == QEvent.Type.ToolTip:
            found = self._at(QPointF(event.pos()))
            QToolTip.showText(event.globalPos(), "" if found is None else self.told(*found), self)
            return True
        return super().event(event)
