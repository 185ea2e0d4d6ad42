"""What she works in stays under her hand, whatever comes and goes about it."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QApplication, QLabel, QLineEdit, QVBoxLayout, QWidget

from swatchwright.desktop.widgets.areas import ScrollArea
from swatchwright.desktop.widgets.kept_place import KeptPlace

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot


class Scrolled(QWidget):
    """A strip above an area with a field between two labels, larger than the window."""

    def __init__(self) -> None:
        super().__init__()
        self.strip, self.above, self.below = QLabel("strip"), QLabel(), QLabel()
        self.strip.setFixedHeight(40)
        self.strip.hide()
        self.field = QLineEdit()
        self.above.setFixedHeight(400)
        self.below.setFixedHeight(400)
        inside = QWidget()
        rows = QVBoxLayout(inside)
        for part in (self.above, self.field, self.below):
            rows.addWidget(part)
        rows.addStretch(1)
        self.area = ScrollArea()
        self.area.setWidget(inside)
        self.area.setWidgetResizable(True)
        self.kept = KeptPlace(self.area)
        column = QVBoxLayout(self)
        column.addWidget(self.strip)
        column.addWidget(self.area, 1)
        self.resize(300, 300)

    def place(self) -> int:
        """Give how far below the top of the window the field stands, in pixels."""
        return self.field.mapTo(self, QPoint(0, 0)).y()


@pytest.fixture
def scrolled(qtbot: QtBot) -> Scrolled:
    """Give such an area in view, scrolled to its field, which is typed into."""
    made = Scrolled()
    qtbot.addWidget(made)
    made.show()
    qtbot.waitExposed(made)
    made.activateWindow()
    made.field.setFocus(Qt.FocusReason.TabFocusReason)
    qtbot.waitUntil(made.field.hasFocus)
    made.area.verticalScrollBar().setValue(300)
    QApplication.processEvents()
    return made


def rested(qtbot: QtBot) -> None:
    """Let everything be laid."""
    qtbot.wait(30)


@pytest.mark.parametrize("high", [300, 430, 700])
def test_what_is_above_grows_or_shrinks(scrolled: Scrolled, qtbot: QtBot, high: int) -> None:
    """The field stays, and what is above it goes out of view or comes into it."""
    before = scrolled.place()
    scrolled.above.setFixedHeight(high)
    rested(qtbot)
    assert scrolled.place() == before


def test_a_message_above_the_area(scrolled: Scrolled, qtbot: QtBot) -> None:
    """A strip that comes above all of it, and goes, leaves the field where it is."""
    before = scrolled.place()
    scrolled.strip.show()
    rested(qtbot)
    assert scrolled.place() == before
    scrolled.strip.hide()
    rested(qtbot)
    assert scrolled.place() == before


def test_at_the_end_of_the_page(scrolled: Scrolled, qtbot: QtBot) -> None:
    """Where what is below goes, the field stays, with room below that goes once it is not seen."""
    bar = scrolled.area.verticalScrollBar()
    scrolled.below.setFixedHeight(150)
    rested(qtbot)
    bar.setValue(bar.maximum())
    rested(qtbot)
    before, most = scrolled.place(), bar.maximum()
    scrolled.below.setFixedHeight(100)
    rested(qtbot)
    assert scrolled.place() == before
    bar.setValue(bar.value() - 80)
    rested(qtbot)
    assert bar.maximum() == most - 50


def test_what_she_scrolls_is_scrolled(scrolled: Scrolled, qtbot: QtBot) -> None:
    """After scrolling, the place that the field has then is kept."""
    bar = scrolled.area.verticalScrollBar()
    before = scrolled.place()
    bar.setValue(bar.value() + 50)
    rested(qtbot)
    assert scrolled.place() == before - 50
    scrolled.above.setFixedHeight(420)
    rested(qtbot)
    assert scrolled.place() == before - 50


def test_without_the_keyboard_in_it(scrolled: Scrolled, qtbot: QtBot) -> None:
    """Where nothing is worked in, the page stays as it is scrolled."""
    bar = scrolled.area.verticalScrollBar()
    scrolled.field.clearFocus()
    before = bar.value()
    scrolled.above.setFixedHeight(500)
    rested(qtbot)
    assert bar.value() == before


def test_a_field_that_is_gone(scrolled: Scrolled, qtbot: QtBot) -> None:
    """A field that was taken away while it was typed into is forgotten."""
    bar = scrolled.area.verticalScrollBar()
    before = bar.value()
    scrolled.field.deleteLater()
    rested(qtbot)
    scrolled.above.setFixedHeight(500)
    rested(qtbot)
    assert bar.value() == before


def test_a_window_of_another_size(scrolled: Scrolled, qtbot: QtBot) -> None:
    """A larger window is laid as it comes, and the place is kept from then on."""
    scrolled.resize(300, 340)
    rested(qtbot)
    before = scrolled.place()
    scrolled.above.setFixedHeight(420)
    rested(qtbot)
    assert scrolled.place() == before
