"""Where and when the work is done: first day, working days and hours, the room."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QDate, Qt, QTime, Signal
from PySide6.QtWidgets import (
    QCheckBox,
    QHBoxLayout,
    QLabel,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from swatchwright.desktop.widgets.fields import DateField, TimeField
from swatchwright.desktop.widgets.piece_fields import add_row, form, number
from swatchwright.desktop.words import WEEKDAY_FORMAT
from swatchwright.desktop.words import days as day_words
from swatchwright.desktop.words import plan as words
from swatchwright.piece.work.order import PlanOrder, Room, Week

__all__ = ["PlanWhen"]

_LAST = 24 * 60 - 1


class PlanWhen(QWidget):
    """Fields for the days, the hours and the room.

    Signals
    -------
    changed(PlanOrder)
        One of them was changed; the order with it.
    """

    changed = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._order: PlanOrder | None = None
        self._showing = False
        self.start = DateField()
        self.start.setCalendarPopup(True)
        self.start.setDisplayFormat(WEEKDAY_FORMAT)
        self.start.setDateRange(QDate(1970, 1, 1), QDate(2100, 12, 31))
        self.begin, self.end = TimeField(), TimeField()
        self.days = [QToolButton() for _ in day_words.DAY_NAMES]
        self.temperature = number(0, 45, " °C")
        self.humidity = number(0, 100, " %", step=5)
        self.tin_allows = QCheckBox(words.TIN_ALLOWS)
        rows = form()
        add_row(rows, words.START, self.start)
        hours = QHBoxLayout()
        hours.setSpacing(8)
        for field, name in ((self.begin, words.FROM), (self.end, words.UNTIL)):
            field.setDisplayFormat("H:mm")
            field.setAccessibleName(name)
            field.setMinimumHeight(26)
            field.setMinimumWidth(72)
            field.timeChanged.connect(self._changed)
        hours.addWidget(self.begin, 1)
        hours.addWidget(QLabel(words.UNTIL))
        hours.addWidget(self.end, 1)
        told = QLabel(words.FROM)
        told.setBuddy(self.begin)
        rows.addRow(told, hours)
        add_row(rows, words.WARMTH, self.temperature)
        add_row(rows, words.DAMP, self.humidity)
        self.start.setMinimumHeight(26)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(QLabel(words.DAYS))
        column.addLayout(self._day_row())
        column.addLayout(rows)
        column.addWidget(self.tin_allows)
        self.start.dateChanged.connect(self._changed)
        for spin in (self.temperature, self.humidity):
            spin.valueChanged.connect(self._changed)
        self.tin_allows.toggled.connect(self._changed)

    def _day_row(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(0)
        for place, button in enumerate(self.days):
            # Two letters tell all days apart, and seven of them fit.
            button.setText(day_words.DAY_NAMES[place][:2])
            button.setAccessibleName(day_words.day_button(place))
            button.setToolTip(day_words.LONG_DAYS[place])
            button.setCheckable(True)
            button.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
            button.setStyleSheet("padding: 5px 0; border-radius: 0;")
            button.setMinimumWidth(32)
            button.clicked.connect(self._changed)
            row.addWidget(button, 1)
        return row

    def show_order(self, order: PlanOrder) -> None:
        """Show what an order says."""
        self._showing, self._order = True, order
        self.start.setDate(QDate.fromString(order.start, Qt.DateFormat.ISODate))
        for place, button in enumerate(self.days):
            button.setChecked(place in order.week.days)
        self.begin.setTime(_time(order.week.begin))
        self.end.setTime(_time(order.week.end))
        self.temperature.setValue(order.room.temperature)
        self.humidity.setValue(order.room.humidity)
        self.tin_allows.setChecked(order.room.tin_allows)
        self._showing = False

    def _changed(self) -> None:
        if self._showing or self._order is None:
            return
        days = tuple(place for place, button in enumerate(self.days) if button.isChecked())
        week = Week(days, _minutes(self.begin.time()), _minutes(self.end.time()))
        room = Room(
            self.temperature.value(), self.humidity.value(), tin_allows=self.tin_allows.isChecked()
        )
        start = self.start.date().toString(Qt.DateFormat.ISODate)
        self.changed.emit(replace(self._order, start=start, week=week, room=room))


def _time(minutes: int) -> QTime:
    minutes = min(minutes, _LAST)
    return QTime(minutes // 60, minutes % 60)


def _minutes(time: QTime) -> int:
    return time.hour() * 60 + time.minute()
