"""Larger and smaller letters: chosen in the window, seen at once, kept for the next start."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QFontInfo
from PySide6.QtTest import QTest

from swatchwright.acts.habits import habits, keep_letters
from swatchwright.desktop import letters
from swatchwright.desktop.pages.page import Page
from swatchwright.desktop.widgets.bench_area import BenchArea
from swatchwright.desktop.window import Window
from swatchwright.desktop.words import bench as words

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from pathlib import Path

    from pytestqt.qtbot import QtBot


@pytest.fixture(autouse=True)
def usual_letters() -> Iterator[None]:
    """Give the usual letters back."""
    yield
    letters.set_letters(1.0)


def letters_are(wanted: object) -> bool:
    """Tell whether that is the size that was chosen."""
    return letters.letters() == wanted


def pixels(window: Window) -> int:
    """Give how large the letters of the page in view are."""
    return QFontInfo(window.mix_side.why.font()).pixelSize()


def test_larger_letters_are_seen_at_once_and_kept(
    with_cushion: Window, settle: Callable[[], None], qtbot: QtBot
) -> None:
    """Every part follows: text, the rail, the mixes in their columns; the next start too."""
    window, before = with_cushion, pixels(with_cushion)
    wide, rail = window.mix_side.columns()[0].width(), window.rail.width()
    for _ in range(3):
        window.bench.larger.trigger()
    settle()
    qtbot.waitUntil(lambda: pixels(window) == round(before * 1.3))
    assert window.rail.width() == pytest.approx(rail * 1.3, abs=1)
    qtbot.waitUntil(lambda: window.mix_side.columns()[0].width() == round(wide * 1.3))
    assert habits().letters == pytest.approx(1.3)
    window.show_page("plan")
    settle()
    plan = window.page("plan")
    assert isinstance(plan, Page)
    qtbot.waitUntil(lambda: QFontInfo(plan.hint.font()).pixelSize() == round(before * 1.3))
    window.bench.usual.trigger()
    window.show_page("colour")
    qtbot.waitUntil(lambda: pixels(window) == before)
    assert window.rail.width() == rail


def test_they_stay_within_bounds(window: Window) -> None:
    """However often it is pressed, letters are 0.9 to 2 times the usual size."""
    for _ in range(12):
        window.bench.larger.trigger()
    assert letters.growth() == pytest.approx(2.0)
    for _ in range(12):
        window.bench.smaller.trigger()
    assert letters.growth() == pytest.approx(0.9)


def test_by_keys(with_cushion: Window, qtbot: QtBot) -> None:
    """Alt with plus, minus and nought do so from any page."""
    with_cushion.activateWindow()
    for key, size in (("Alt++", 1.1), ("Alt+-", 1.0), ("Alt+-", 0.9), ("Alt+0", 1.0)):
        QTest.keySequence(with_cushion, key)
        wanted = pytest.approx(size)
        qtbot.waitUntil(partial(letters_are, wanted))


def test_where_there_is_no_room_the_bench_is_scrolled(window: Window, qtbot: QtBot) -> None:
    """Letters twice as large need more than the screen has: all of the bench is reached by a bar.

    WCAG 2.2, 1.4.4 and 1.4.10: text can be made twice as large without loss of content, and is
    scrolled in one direction only [WCAG22].
    """
    (area,) = window.findChildren(BenchArea)
    size, bar = window.size(), area.verticalScrollBar()
    assert bar.maximum() == 0
    assert area.focusPolicy() == Qt.FocusPolicy.NoFocus
    while letters.may_grow():
        window.bench.larger.trigger()
    assert letters.growth() == pytest.approx(2.0)
    qtbot.waitUntil(lambda: bar.maximum() > 0)
    assert window.size() == size, "a window grew by its letters"
    assert area.horizontalScrollBar().maximum() == 0
    # The bar above and the list of pages stay in view; the rest is brought into it by Tab.
    assert not window.guide.visibleRegion().isEmpty()
    assert not window.rail.buttons["colour"].visibleRegion().isEmpty()
    assert area.focusPolicy() == Qt.FocusPolicy.TabFocus
    window.activateWindow()
    window.mix_side.volume.setFocus(Qt.FocusReason.TabFocusReason)
    window.resize(1280, 560)
    bar.setValue(0)
    two = window.mix_side.counts[2]
    qtbot.waitUntil(lambda: two.visibleRegion().isEmpty())
    QTest.keyClick(window.mix_side.volume, Qt.Key.Key_Tab)
    qtbot.waitUntil(lambda: not two.visibleRegion().isEmpty())
    window.resize(size)
    window.bench.show_size()
    assert window.bench.larger.text() == words.LARGEST
    # Put back on another page: what is laid out large still, out of view, makes nothing wide.
    window.show_page("plan")
    window.bench.usual.trigger()
    qtbot.waitUntil(lambda: bar.maximum() == 0)
    assert window.needs().width() <= 1280
    window.show_page("colour")
    qtbot.waitUntil(lambda: bar.maximum() == 0)
    assert window.needs().width() <= 1280


def test_the_next_start_has_them(
    qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What was chosen last is there when the window is opened again."""
    monkeypatch.setenv("SWATCHWRIGHT_HOME", str(tmp_path))
    keep_letters(0.9)
    again = Window()
    qtbot.addWidget(again)
    assert letters.growth() == pytest.approx(0.9)
    again.session.close()
    again.desk.close()
