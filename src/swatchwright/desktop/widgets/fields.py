"""Fields for numbers, days and choices that the wheel leaves alone while a hand only scrolls by."""

from __future__ import annotations

import re
from collections.abc import Mapping

from PySide6.QtCore import QPoint, Qt, QTimer
from PySide6.QtGui import QFocusEvent, QValidator, QWheelEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QAbstractSpinBox,
    QComboBox,
    QDateEdit,
    QDoubleSpinBox,
    QSpinBox,
    QTimeEdit,
    QToolTip,
    QWidget,
)

from swatchwright.desktop.words import fields as words

__all__ = ["ChoiceField", "CountField", "DateField", "NumberField", "TimeField"]

_UNITS: Mapping[str, Mapping[str, float]] = {
    "mm": {"mm": 1, "cm": 10, "m": 1000},
    "ml": {"ml": 1, "cl": 10, "dl": 100, "l": 1000},
    "g": {"g": 1, "kg": 1000},
}
"""What may be typed in a field of each unit, and how much of it that is."""

_TYPED = re.compile(r"\s*(-?\d*(?:[.,]\d*)?)\s*([a-z]*)\s*")
_THOUSANDS = re.compile(r"\d{1,3}(?:[.,]\d{3})+")
_MARGIN = 5
"""Pixels before the text: a style rule's padding does not reach the line edit inside."""
_MOST_SHOWN = 16
"""Entries of a list that are shown at once at the most."""


class _Calm:
    """Takes the wheel only where it was gone to; else the page scrolls."""

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Turn only where it was gone to."""
        if isinstance(self, QWidget) and self.hasFocus():
            super().wheelEvent(event)  # type: ignore[misc]
        else:
            event.ignore()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Have words that stand for no number yet give way to what is typed."""
        super().focusInEvent(event)  # type: ignore[misc]
        if isinstance(self, QAbstractSpinBox) and self.text() == self.specialValueText():
            # Once the press is over, which puts the cursor between the letters.
            QTimer.singleShot(0, self, self.selectAll)


def _settle(field: QAbstractSpinBox) -> None:
    field.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
    field.lineEdit().setTextMargins(_MARGIN, 0, 0, 0)


class NumberField(_Calm, QDoubleSpinBox):
    """A number, typed with a point or a comma, and in any unit of its kind: 1.1 m for 1100 mm.

    One that is out of range is brought to the nearest that is in it, and the field says so.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        _settle(self)

    def validate(self, text: str, place: int) -> tuple[QValidator.State, str, int]:
        """Take a number as far as it is typed, with a unit after it."""
        number, unit = self._typed(text)
        if text == self.specialValueText() or text == self.textFromValue(self.value()):
            return QValidator.State.Acceptable, text, place
        if number is None or not any(known.startswith(unit) for known in self._units()):
            return QValidator.State.Invalid, text, place
        value = self._read(number, unit)
        whole = value is not None and self.minimum() <= value <= self.maximum()
        state = QValidator.State.Acceptable if whole else QValidator.State.Intermediate
        return state, text, place

    def valueFromText(self, text: str) -> float:
        """Read a number in the unit of the field."""
        number, unit = self._typed(text)
        value = None if number is None else self._read(number, unit)
        if text == self.specialValueText() or value is None:
            return self.minimum()
        return value

    def fixup(self, text: str) -> str:
        """Bring what was typed into range, and say so beside the field."""
        number, unit = self._typed(text)
        value = None if number is None else self._read(number, unit)
        if value is None:
            self._tell(words.no_number(text.removesuffix(self.suffix()).strip()))
            return self.prefix() + self.textFromValue(self.value()) + self.suffix()
        self._tell(words.between(self._told(self.minimum()), self._told(self.maximum())))
        nearest = min(max(value, self.minimum()), self.maximum())
        return self.prefix() + self.textFromValue(nearest) + self.suffix()

    def _units(self) -> Mapping[str, float]:
        unit = self.suffix().strip()
        return _UNITS.get(unit, {"": 1, unit: 1})

    def _typed(self, text: str) -> tuple[str | None, str]:
        """Take what was typed apart: the number, None if it is none, and the unit."""
        bare = text.removeprefix(self.prefix()).removesuffix(self.suffix())
        found = _TYPED.fullmatch(bare)
        return (None, "") if found is None else (found[1], found[2])

    def _read(self, number: str, unit: str) -> float | None:
        """Give the number in the unit of the field; None while it is not whole."""
        if unit and unit not in self._units():
            return None
        if self.decimals() == 0 and not unit and _THOUSANDS.fullmatch(number):
            number = re.sub("[.,]", "", number)
        try:
            value = float(number.replace(",", "."))
        except ValueError:
            return None
        return round(value * self._units().get(unit, 1.0), self.decimals())

    def _told(self, value: float) -> str:
        return f"{self.textFromValue(value)}{self.suffix()}"

    def _tell(self, text: str) -> None:
        QToolTip.showText(self.mapToGlobal(QPoint(0, self.height())), text, self)


class CountField(_Calm, QSpinBox):
    """A whole number."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        _settle(self)


class DateField(_Calm, QDateEdit):
    """A day, told once it is typed whole."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        _settle(self)
        self.setKeyboardTracking(False)


class TimeField(_Calm, QTimeEdit):
    """A time of day, told once it is typed whole."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        _settle(self)
        self.setKeyboardTracking(False)


class ChoiceField(_Calm, QComboBox):
    """One of several."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMaxVisibleItems(_MOST_SHOWN)

    def showPopup(self) -> None:
        """Open the list, as wide as its longest entry needs."""
        view = self.view()
        bar = view.verticalScrollBar().sizeHint().width() if self.count() > _MOST_SHOWN else 0
        view.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        view.setMinimumWidth(view.sizeHintForColumn(0) + bar + 2 * view.frameWidth())
        super().showPopup()
