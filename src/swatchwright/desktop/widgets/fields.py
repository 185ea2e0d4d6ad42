"""Fields for numbers, days and choices that the wheel leaves alone while a hand only scrolls by."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import (
    QAbstractSpinBox,
    QComboBox,
    QDateEdit,
    QDoubleSpinBox,
    QSpinBox,
    QTimeEdit,
    QWidget,
)

__all__ = ["ChoiceField", "CountField", "DateField", "NumberField", "TimeField"]

_MARGIN = 5
"""Pixels before the text: a style rule's padding does not reach the line edit inside."""


class _Calm:
    """Takes the wheel only where it was gone to; else the page scrolls."""

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Turn only where it was gone to."""
        if isinstance(self, QWidget) and self.hasFocus():
            super().wheelEvent(event)  # type: ignore[misc]
        else:
            event.ignore()


def _settle(field: QAbstractSpinBox) -> None:
    field.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
    field.lineEdit().setTextMargins(_MARGIN, 0, 0, 0)


class NumberField(_Calm, QDoubleSpinBox):
    """A number."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        _settle(self)


class CountField(_Calm, QSpinBox):
    """A whole number."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        _settle(self)


class DateField(_Calm, QDateEdit):
    """A day."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        _settle(self)


class TimeField(_Calm, QTimeEdit):
    """A time of day."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        _settle(self)


class ChoiceField(_Calm, QComboBox):
    """One of several."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
