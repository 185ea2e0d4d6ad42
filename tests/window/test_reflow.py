"""Where there is no room side by side, what is read goes on below: it is scrolled one way only.

References
----------
[WCAG22], 1.4.10: what is read needs no scrolling in two directions.
"""

from __future__ import annotations

from dataclasses import replace
from functools import partial
from itertools import pairwise
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QPoint, QPointF, QRect, QSize, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication, QLabel, QWidget

from swatchwright.acts.references import marked_paint
from swatchwright.desktop import letters
from swatchwright.desktop.pages.compare_page import ComparePage
from swatchwright.desktop.widgets.bench_area import BenchArea
from swatchwright.desktop.window import Window
from swatchwright.values import Rect
from window.walk import is_cut, is_lost

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from pytestqt.qtbot import QtBot

    Settle = Callable[[], None]

NARROW = 900


@pytest.fixture(autouse=True)
def usual_letters() -> Iterator[None]:
    """Give the usual letters back."""
    yield
    letters.set_letters(1.0)


def area(window: Window) -> BenchArea:
    """Give what the pages are scrolled in."""
    (found,) = window.findChildren(BenchArea)
    return found


def place(widget: QWidget, window: Window) -> QRect:
    """Give where a widget stands on its page."""
    return QRect(widget.mapTo(window.colour_page, QPoint(0, 0)), widget.size())


def twice(window: Window) -> None:
    """Have letters twice as large."""
    window.set_letters(2.0)


def narrow(window: Window) -> None:
    """Make the window narrow."""
    window.resize(NARROW, 720)


@pytest.mark.parametrize("squeeze", [twice, narrow])
class TestColour:
    """Photo and mixes, with letters twice as large and in a narrow window."""

    @pytest.fixture
    def squeezed(
        self,
        with_cushion: Window,
        settle: Settle,
        qtbot: QtBot,
        squeeze: Callable[[Window], None],
    ) -> Window:
        """Give the window with the cushion on it, and too little room for both side by side."""
        assert with_cushion.colour_page.abreast
        squeeze(with_cushion)
        qtbot.waitUntil(lambda: not with_cushion.colour_page.abreast)
        settle()
        return with_cushion

    def test_one_below_the_other(self, squeezed: Window, qtbot: QtBot) -> None:
        """The mixes stand below the photo, and nothing is to be scrolled sideways."""
        page, bench = squeezed.colour_page, area(squeezed)
        qtbot.waitUntil(lambda: bench.horizontalScrollBar().maximum() == 0)
        assert bench.verticalScrollBar().maximum() > 0
        photo, mixes = place(page.photo_side, squeezed), place(page.mix_side, squeezed)
        assert photo.bottom() < mixes.top()
        assert photo.width() == mixes.width() == page.width()

    def test_nothing_is_cut(self, squeezed: Window, qtbot: QtBot) -> None:
        """All words have room, and each mix is as high as it is: only the page is scrolled."""
        page = squeezed.colour_page
        inner = squeezed.mix_side.area.verticalScrollBar()
        qtbot.waitUntil(lambda: inner.maximum() == 0)
        labels = [label for label in page.findChildren(QLabel) if label.isVisibleTo(page)]
        assert len(labels) > 30
        qtbot.waitUntil(lambda: not any(is_cut(label) for label in labels))
        qtbot.waitUntil(lambda: not any(is_lost(label, squeezed) for label in labels))
        assert squeezed.photo_side.view.height() >= 300

    def test_back_to_side_by_side(self, squeezed: Window, settle: Settle, qtbot: QtBot) -> None:
        """With room again they stand as before."""
        squeezed.set_letters(1.0)
        squeezed.resize(1280, 720)
        page = squeezed.colour_page
        qtbot.waitUntil(lambda: page.abreast)
        settle()
        bars = area(squeezed).bars()
        qtbot.waitUntil(lambda: all(bar.maximum() == 0 for bar in bars))
        photo, mixes = place(page.photo_side, squeezed), place(page.mix_side, squeezed)
        assert photo.right() < mixes.left()
        assert photo.top() == mixes.top()

    def test_the_wheel_goes_on_over_the_photo(self, squeezed: Window, qtbot: QtBot) -> None:
        """Scrolled past, the photo is not enlarged; gone to, it is."""
        view = squeezed.photo_side.view
        zoomed = partial(view.to_widget, 0, 0)
        before = zoomed()
        assert not takes_wheel(view), "the page is not scrolled by what a photo takes"
        assert zoomed() == before
        squeezed.activateWindow()
        view.setFocus(Qt.FocusReason.MouseFocusReason)
        qtbot.waitUntil(view.hasFocus)
        assert takes_wheel(view)
        assert zoomed() != before


def test_further_references(with_cushion: Window, settle: Settle, qtbot: QtBot) -> None:
    """Two by two where there is room, and one below the other where there is not."""
    session, further = with_cushion.session, with_cushion.photo_side.tools.further
    paints = sorted(session.shelf.paints, key=lambda paint: -len(paint.name))[:3]
    marked = tuple(marked_paint(Rect(40 * n, 40, 30, 30), p) for n, p in enumerate(paints, 1))
    session.set_marks(replace(session.marks, references=marked))
    settle()

    def rows() -> int:
        tops = (b.mapTo(further, QPoint(0, 0)).y() for b in further.buttons.values())
        return len(set(tops))

    qtbot.waitUntil(lambda: rows() == 2)
    assert with_cushion.colour_page.abreast
    with_cushion.set_letters(2.0)
    with_cushion.resize(NARROW, 720)
    qtbot.waitUntil(lambda: rows() == 3)
    bar = area(with_cushion).horizontalScrollBar()
    qtbot.waitUntil(lambda: bar.maximum() == 0)


def takes_wheel(view: QWidget) -> bool:
    """Turn the wheel, the pointer on a widget; tell whether it took that."""
    middle = QPointF(view.rect().center())
    wheel = QWheelEvent(
        *(middle, view.mapToGlobal(middle), QPoint(), QPoint(0, 240)),
        *(Qt.MouseButton.NoButton, Qt.KeyboardModifier.NoModifier),
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(view, wheel)
    return wheel.isAccepted()


def test_before_any_photo(window: Window, qtbot: QtBot) -> None:
    """What the first page says is whole too."""
    twice(window)
    start = window.photo_side.start
    qtbot.waitUntil(lambda: not window.colour_page.abreast)
    labels = [label for label in start.findChildren(QLabel) if label.text()]
    assert len(labels) == 2
    qtbot.waitUntil(lambda: not any(is_cut(label) for label in labels))
    assert area(window).horizontalScrollBar().maximum() == 0


def test_it_turns_where_the_rows_would_break(with_cushion: Window, qtbot: QtBot) -> None:
    """Side by side to the last pixel at which each row of controls is whole."""
    page = with_cushion.colour_page
    spare = with_cushion.width() - page.width()
    with_cushion.resize(page.abreast_width() + spare, 720)
    qtbot.waitUntil(lambda: page.width() == page.abreast_width())
    assert page.abreast
    with_cushion.resize(page.abreast_width() + spare - 1, 720)
    qtbot.waitUntil(lambda: not page.abreast)


@pytest.mark.parametrize("squeeze", [twice, narrow])
def test_compare(
    with_cushion: Window, settle: Settle, qtbot: QtBot, squeeze: Callable[[Window], None]
) -> None:
    """The buttons above the colours break into rows, and the page is not scrolled sideways."""
    with_cushion.show_page("compare")
    settle()
    page = with_cushion.page("compare")
    assert isinstance(page, ComparePage)
    high = page.bar.height()
    squeeze(with_cushion)
    bar = area(with_cushion).horizontalScrollBar()
    qtbot.waitUntil(lambda: page.bar.height() > high and bar.maximum() == 0)
    buttons = [*page.bar.mixes, *page.bar.states.values(), *page.bar.lights.values()]
    buttons += [page.bar.figures, page.bar.every_light, page.bar.full]
    shown = [button for button in buttons if button.isVisible()]
    room = QRect(QPoint(0, 0), QSize(page.bar.width(), page.bar.height()))
    assert all(room.contains(QRect(b.mapTo(page.bar, QPoint()), b.size())) for b in shown)
    for one, other in pairwise(shown):
        assert not one.geometry().intersects(other.geometry()) or one.parent() != other.parent()
