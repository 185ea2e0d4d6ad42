"""Fields for numbers, used as a hand uses them: typed, left, scrolled past."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QLocale, QPoint, QPointF, Qt, QTime
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication, QToolTip

from swatchwright.desktop.widgets.fields import NumberField, TimeField
from swatchwright.desktop.words import fields as words

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot


@pytest.fixture(params=["en_GB", "de_DE"])
def width(request: pytest.FixtureRequest, qtbot: QtBot) -> NumberField:
    """Give a field for a width in mm, in a locale with a point and in one with a comma."""
    field = NumberField()
    field.setLocale(QLocale(request.param))
    field.setRange(250, 3000)
    field.setDecimals(0)
    field.setSuffix(" mm")
    field.setValue(900)
    qtbot.addWidget(field)
    field.show()
    field.setFocus()
    return field


def type_in(qtbot: QtBot, field: NumberField, text: str) -> None:
    """Type over what stands in a field, and leave it with Return."""
    field.selectAll()
    qtbot.keyClicks(field, text)
    qtbot.keyClick(field, Qt.Key.Key_Return)


@pytest.mark.parametrize(
    ("typed", "value"),
    [
        ("1100", 1100),
        ("1.1 m", 1100),
        ("1,1m", 1100),
        ("55 cm", 550),
        ("110,5 cm", 1105),
        ("800mm", 800),
        ("1.100", 1100),
        ("1,100", 1100),
    ],
)
def test_a_length_is_typed_in_any_unit(
    qtbot: QtBot, width: NumberField, typed: str, value: float
) -> None:
    """Metres and centimetres are understood, with a point or a comma; SI 9th edition, units."""
    type_in(qtbot, width, typed)
    assert width.value() == value
    assert width.text() == f"{width.textFromValue(value)} mm"


@pytest.mark.parametrize(("typed", "value"), [("5 m", 3000), ("12", 250)])
def test_out_of_range_it_says_so(
    qtbot: QtBot, width: NumberField, typed: str, value: float
) -> None:
    """A number out of range becomes the nearest in it, and the field tells the range."""
    type_in(qtbot, width, typed)
    assert width.value() == value
    said = words.between(f"{width.textFromValue(250)} mm", f"{width.textFromValue(3000)} mm")
    assert QToolTip.text() == said


def test_half_a_number_leaves_what_was(qtbot: QtBot, width: NumberField) -> None:
    """What is no number leaves the field as it was, and says so."""
    type_in(qtbot, width, "c")
    assert width.value() == 900
    assert width.text() == "900 mm"
    assert QToolTip.text() == words.no_number("c")


def test_letters_of_no_unit_are_not_taken(qtbot: QtBot, width: NumberField) -> None:
    """A letter that begins no unit cannot be typed."""
    type_in(qtbot, width, "8x00")
    assert width.value() == 800


def test_litres_for_millilitres(qtbot: QtBot) -> None:
    """Half a litre is 500 ml."""
    field = NumberField()
    field.setRange(10, 20_000)
    field.setSuffix(" ml")
    qtbot.addWidget(field)
    type_in(qtbot, field, "0.5 l")
    assert field.value() == 500


def test_a_word_for_nothing(qtbot: QtBot) -> None:
    """A field whose lowest stand is told by a word keeps it, and takes a number instead."""
    field = NumberField()
    field.setRange(0, 100)
    field.setSpecialValueText("usual")
    qtbot.addWidget(field)
    assert field.text() == "usual"
    type_in(qtbot, field, "7.5")
    assert field.value() == 7.5
    field.setValue(0)
    assert field.text() == "usual"
    qtbot.keyClick(field, Qt.Key.Key_Return)
    assert field.value() == 0


def test_the_wheel_scrolls_past(qtbot: QtBot, width: NumberField) -> None:
    """Without the focus the wheel leaves the number alone; with it, it turns it."""
    width.clearFocus()
    turn = QWheelEvent(
        QPointF(5, 5),
        width.mapToGlobal(QPointF(5, 5)),
        QPoint(0, 0),
        QPoint(0, 120),
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(width, turn)
    assert width.value() == 900
    assert not turn.isAccepted()
    width.setFocus()
    qtbot.waitUntil(width.hasFocus)
    QApplication.sendEvent(width, turn)
    assert width.value() == 901


def test_a_time_is_told_once_it_is_typed(qtbot: QtBot) -> None:
    """A time that is typed is told when it is whole, not for every figure of it."""
    field, told = TimeField(), list[QTime]()
    field.setDisplayFormat("H:mm")
    field.setTime(QTime(17, 0))
    field.timeChanged.connect(told.append)
    qtbot.addWidget(field)
    field.show()
    field.setFocus()
    field.setSelectedSection(TimeField.Section.HourSection)
    qtbot.keyClicks(field, "12")
    qtbot.keyClick(field, Qt.Key.Key_Return)
    assert told == [QTime(12, 0)]


def test_words_for_no_number_give_way(qtbot: QtBot) -> None:
    """A click into a field that says which number it is for, and what is typed is its number."""
    field = NumberField()
    field.setRange(0, 5000)
    field.setSpecialValueText("which size")
    field.resize(160, 30)
    qtbot.addWidget(field)
    field.show()
    qtbot.waitExposed(field)
    line = field.lineEdit()
    line.clearFocus()
    QApplication.processEvents()
    qtbot.mouseClick(line, Qt.MouseButton.LeftButton, pos=QPoint(40, line.height() // 2))
    QApplication.processEvents()
    qtbot.keyClicks(line, "750")
    qtbot.keyClick(line, Qt.Key.Key_Return)
    assert field.value() == 750
