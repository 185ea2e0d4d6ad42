"""A row of controls stands as a layout would lay it, and goes on below where that is too wide."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QRect
from PySide6.QtWidgets import QHBoxLayout, QLabel, QLineEdit, QPushButton, QWidget

from swatchwright.desktop.widgets.breaking_row import BreakingRow

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot

LONG = "What would help most is a brushed-out paint near the wanted colour, measured in daylight."


def parts() -> tuple[QLabel, QPushButton, QPushButton, QLineEdit]:
    """Give a word, two buttons and a field."""
    field = QLineEdit()
    field.setMinimumWidth(60)
    return QLabel("Seen"), QPushButton("Dry"), QPushButton("Finished"), field


@pytest.fixture
def row(qtbot: QtBot) -> BreakingRow:
    """Give a row of a word with a button, another button, and a field at the right end."""
    told, dry, finished, field = parts()
    made = BreakingRow()
    made.put(told, dry)
    made.put(finished, gap=16)
    made.put(field, pushed=True)
    qtbot.addWidget(made)
    made.show()
    return made


@pytest.fixture
def layout(qtbot: QtBot) -> QWidget:
    """Give the same, as a layout of Qt lays it."""
    told, dry, finished, field = parts()
    made = QWidget()
    across = QHBoxLayout(made)
    across.setContentsMargins(0, 0, 0, 0)
    across.setSpacing(8)
    across.addWidget(told)
    across.addWidget(dry)
    across.addSpacing(16)
    across.addWidget(finished)
    across.addStretch(1)
    across.addWidget(field)
    qtbot.addWidget(made)
    made.show()
    return made


def places(widget: QWidget) -> list[QRect]:
    """Give where the parts stand, from left to right."""
    kinds = (QLabel, QPushButton, QLineEdit)
    found = (child for kind in kinds for child in widget.findChildren(kind))
    return sorted((child.geometry() for child in found), key=lambda place: place.x())


def test_in_one_row_as_a_layout_lays_it(row: BreakingRow, layout: QWidget, qtbot: QtBot) -> None:
    """From its least width on, everything stands to the pixel where Qt's own layout puts it."""
    assert row.unbroken() == layout.minimumSizeHint().width()
    for more in (0, 7, 60, 300):
        for widget in (row, layout):
            widget.resize(row.unbroken() + more, 40)
        qtbot.waitUntil(lambda: places(row) == places(layout))
        assert row.rows() == 1


def test_it_breaks_and_stays_in_view(row: BreakingRow, qtbot: QtBot) -> None:
    """A pixel less than one row needs begins another; a word stays beside its button."""
    high = row.heightForWidth(row.unbroken())
    for width in (row.unbroken() - 1, row.minimumSizeHint().width()):
        row.resize(width, row.heightForWidth(width))
        qtbot.waitUntil(lambda: row.rows() > 1)
        assert row.height() > high
        assert all(row.rect().contains(place) for place in places(row))
        told, dry = row.findChildren(QLabel)[0], row.findChildren(QPushButton)[0]
        assert told.geometry().center().y() == pytest.approx(dry.geometry().center().y(), abs=1)
        assert told.geometry().right() < dry.x()


def test_what_is_hidden_takes_no_room(row: BreakingRow, qtbot: QtBot) -> None:
    """A button that goes makes the row need less, and one that comes back more."""
    needs, finished = row.unbroken(), row.findChildren(QPushButton)[1]
    finished.hide()
    assert row.unbroken() < needs
    row.resize(row.unbroken(), 40)
    qtbot.waitUntil(lambda: row.rows() == 1)
    finished.show()
    assert row.unbroken() == needs
    qtbot.waitUntil(lambda: row.rows() > 1)


@pytest.mark.parametrize("beside", [True, False])
def test_a_text_beside_buttons_is_no_column(qtbot: QtBot, *, beside: bool) -> None:
    """A text stands beside a button in up to three lines, and above it where it would take more."""
    label, button = QLabel(LONG), QPushButton("Add a reference")
    label.setWordWrap(True)
    row = BreakingRow()
    row.put(label, stretches=True)
    row.put(button, pushed=True)
    qtbot.addWidget(row)
    row.show()
    line = label.fontMetrics().horizontalAdvance(LONG)
    width = button.sizeHint().width() + 8 + (line // 2 if beside else line // 5)
    row.resize(width, row.heightForWidth(width))
    qtbot.waitUntil(lambda: row.rows() == (1 if beside else 2))
    assert label.height() >= label.heightForWidth(label.width())
    assert button.geometry().right() == row.width() - 1


def test_never_higher_where_it_is_wider(row: BreakingRow) -> None:
    """The wider the room, the fewer the rows."""
    heights = [row.heightForWidth(width) for width in range(row.minimumSizeHint().width(), 500, 10)]
    assert heights == sorted(heights, reverse=True)
    assert heights[0] > heights[-1]
