"""Fields with their words, alike on the pages of the piece and of the plan."""

from __future__ import annotations

from collections.abc import Iterable

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QGuiApplication, QPalette
from PySide6.QtWidgets import (
    QAbstractSpinBox,
    QComboBox,
    QDoubleSpinBox,
    QFormLayout,
    QFrame,
    QLabel,
    QLayout,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from swatchwright.desktop.widgets.columns import Columns
from swatchwright.desktop.widgets.fields import ChoiceField, NumberField

__all__ = ["add_row", "beside", "card", "choice", "clear", "form", "label", "number", "quiet_ink"]


def label(text: str = "", name: str = "", *, wraps: bool = True) -> QLabel:
    """Make a label, wrapped where it is long; `name` is its place in the look."""
    made = QLabel(text)
    made.setObjectName(name)
    made.setWordWrap(wraps)
    made.setTextFormat(Qt.TextFormat.PlainText)
    if wraps:
        made.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
    return made


def card(heading: str) -> tuple[QFrame, QVBoxLayout]:
    """Make a sheet with a heading if one is given, and the column that its contents go into."""
    sheet = QFrame()
    sheet.setObjectName("sheet")
    column = QVBoxLayout(sheet)
    column.setContentsMargins(16, 12, 16, 14)
    column.setSpacing(8)
    if heading:
        column.addWidget(label(heading, "heading"))
    return sheet, column


def beside(*sheets: tuple[str, QWidget, int, int], least: int = 0) -> Columns:
    """Lay sheets side by side: heading, contents, stretch, width beside others or 0.

    One without a width goes below where it has not the least of them, or rather than that a row of
    it breaks if there is none.
    """
    columns = Columns()
    for heading, contents, stretch, wide in sheets:
        sheet, column = card(heading)
        column.addWidget(contents, 1)
        columns.put(sheet, stretch=stretch, wide=wide, least=0 if wide else least)
    return columns


def form() -> QFormLayout:
    """Make a column of words and fields."""
    made = QFormLayout()
    made.setContentsMargins(0, 0, 0, 0)
    made.setHorizontalSpacing(12)
    made.setVerticalSpacing(6)
    made.setLabelAlignment(Qt.AlignmentFlag.AlignLeft)
    made.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
    return made


def add_row(rows: QFormLayout, text: str, field: QWidget) -> None:
    """Add a field under its words, which also name it to a screen reader."""
    told = QLabel(text)
    told.setBuddy(field)
    if not field.accessibleName():
        field.setAccessibleName(text)
    rows.addRow(told, field)


def number(
    low: float, high: float, suffix: str = "", *, step: float = 1.0, decimals: int = 0
) -> QDoubleSpinBox:
    """Make a field for a number, which the wheel only changes when it has the focus."""
    made = NumberField()
    made.setDecimals(decimals)
    made.setRange(low, high)
    made.setSingleStep(step)
    made.setSuffix(suffix)
    made.setMinimumHeight(26)
    made.setCorrectionMode(QAbstractSpinBox.CorrectionMode.CorrectToNearestValue)
    return made


def choice(items: Iterable[tuple[str, object]], name: str = "") -> QComboBox:
    """Make a field to choose from words, each with the value it stands for."""
    made = ChoiceField()
    made.setMinimumHeight(26)
    made.setAccessibleName(name)
    # On Linux Qt gives the value of a choice as its name; a label beside it, or this, names it.
    made.setAccessibleDescription(name)
    for text, value in items:
        made.addItem(text, value)
    return made


def quiet_ink() -> QColor:
    """Give the quiet ink of the bench; a widget's own palette holds it half transparent."""
    return QGuiApplication.palette().color(QPalette.ColorRole.PlaceholderText)


def clear(layout: QLayout) -> None:
    """Take everything out of a layout."""
    while layout.count():
        item = layout.takeAt(0)
        if item is None:
            return
        widget, inner = item.widget(), item.layout()
        if widget is not None:
            widget.hide()
            widget.deleteLater()
        elif inner is not None:
            clear(inner)
