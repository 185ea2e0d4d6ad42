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

from swatchwright.acts.client_wish import Stands
from swatchwright.acts.references import marked_paint
from swatchwright.desktop import letters
from swatchwright.desktop.pages.compare_page import ComparePage
from swatchwright.desktop.pages.finish_page import FinishPage
from swatchwright.desktop.pages.page import Page
from swatchwright.desktop.pages.plan_page import PlanPage
from swatchwright.desktop.pages.shelf_page import ShelfPage
from swatchwright.desktop.widgets.areas import ScrollArea
from swatchwright.desktop.widgets.bench_area import BenchArea
from swatchwright.desktop.widgets.columns import Columns
from swatchwright.desktop.widgets.even_rows import EvenRows
from swatchwright.desktop.window import Window
from swatchwright.values import Rect
from window.conftest import PATIENCE
from window.walk import is_cut, is_lost, scrolls_sideways

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


def columns_on(page: QWidget) -> list[Columns]:
    """Give what stands in columns on a page, as far as it is in view."""
    return [one for one in page.findChildren(Columns) if one.isVisible()]


def in_columns(columns: Columns) -> list[QRect]:
    """Give where the parts of columns stand."""
    return [QRect(p.widget.mapTo(columns, QPoint(0, 0)), p.widget.size()) for p in columns._shown()]


def across(columns: Columns) -> list[tuple[int, int]]:
    """Give where the parts of columns stand from left to right, and how wide they are."""
    return [(part.x(), part.width()) for part in in_columns(columns)]


def below_each_other(columns: Columns) -> bool:
    """Tell whether each part stands below the one before it."""
    return all(one.bottom() < other.top() for one, other in pairwise(in_columns(columns)))


@pytest.mark.parametrize("squeeze", [twice, narrow])
@pytest.mark.parametrize("key", ["brief", "shelf", "sample", "finish", "piece", "plan", "sheet"])
def test_pages_in_columns(
    with_job: Window, settle: Settle, qtbot: QtBot, squeeze: Callable[[Window], None], key: str
) -> None:
    """Side by side with room, else one below the other: scrolled one way, each part whole."""
    with_job.show_page(key)
    settle()
    page = with_job.page(key)
    columns = columns_on(page)
    assert columns
    assert all(one.abreast for one in columns)
    wanted = [[pytest.approx(place, abs=30) for place in across(one)] for one in columns]
    squeeze(with_job)
    qtbot.waitUntil(lambda: not columns[0].abreast)
    settle()
    qtbot.waitUntil(lambda: not scrolls_sideways(area(with_job)))
    qtbot.waitUntil(lambda: all(below_each_other(c) for c in columns if not c.abreast))
    # Only the page is scrolled: what is in a part lies there in all its height.
    inner = [a for one in columns for a in one.findChildren(ScrollArea) if a.widgetResizable()]
    seen = [one for one in inner if one.isVisible()]
    qtbot.waitUntil(lambda: all(one.verticalScrollBar().maximum() == 0 for one in seen))
    labels = [label for label in page.findChildren(QLabel) if label.isVisible()]
    assert len(labels) > 5
    qtbot.waitUntil(lambda: not any(is_cut(one) or is_lost(one, with_job) for one in labels))
    with_job.set_letters(1.0)
    with_job.resize(1280, 720)
    qtbot.waitUntil(lambda: all(one.abreast for one in columns))
    settle()
    # Fields that are dressed anew may ask for a little more than they did at first.
    qtbot.waitUntil(lambda: [across(one) for one in columns] == wanted)


def test_long_headings_wrap(window: Window, settle: Settle, qtbot: QtBot) -> None:
    """A heading that is longer than the page goes on in a second line."""
    window.show_page("piece")
    settle()
    page = window.page("piece")
    assert isinstance(page, Page)
    high = page.heading.height()
    twice(window)
    window.resize(NARROW, 720)
    qtbot.waitUntil(lambda: page.heading.height() > 3 * high)
    qtbot.waitUntil(lambda: page.heading.width() <= area(window).viewport().width())


def test_the_pieces_stand_in_rows(with_job: Window, settle: Settle, qtbot: QtBot) -> None:
    """The common pieces break into rows with as many in each, and all of them are seen."""
    with_job.show_page("piece")
    settle()
    strip = with_job.page("piece").findChild(EvenRows)
    assert isinstance(strip, EvenRows)
    buttons = strip.findChildren(QWidget)
    tops = [button.y() for button in buttons]
    assert len(set(tops)) == 1
    twice(with_job)
    qtbot.waitUntil(
        lambda: [len({b.y() for b in buttons}), strip.unbroken() > strip.width()] == [2, 1]
    )
    assert all(strip.rect().contains(button.geometry()) for button in buttons)


def test_the_ways_stand_in_rows(with_job: Window, settle: Settle, qtbot: QtBot) -> None:
    """Where a client wants another colour, the ways go on below, scrolled in one direction."""
    with_job.show_page("finish")
    settle()
    page = with_job.page("finish")
    assert isinstance(page, FinishPage)
    page.sides[1].click()
    page.reverse.ask.stands[Stands.PAINTED].click()
    qtbot.waitUntil(lambda: len(page.reverse.ways.columns) > 2, timeout=PATIENCE)
    twice(with_job)
    settle()
    columns = page.reverse.ways.columns
    qtbot.waitUntil(lambda: columns[-1].y() > columns[0].y())
    qtbot.waitUntil(lambda: not scrolls_sideways(area(with_job)))


@pytest.mark.parametrize("step", range(5))
def test_getting_to_know(with_job: Window, settle: Settle, qtbot: QtBot, step: int) -> None:
    """Each step of a sitting, and the stroke wet and dry, is scrolled in one direction."""
    with_job.show_page("shelf")
    settle()
    page = with_job.page("shelf")
    assert isinstance(page, ShelfPage)
    page.show_sitting()
    if step < 4:
        page.sitting.show_step(step)
    else:
        page.show_drying()
    twice(with_job)
    settle()
    qtbot.waitUntil(lambda: not scrolls_sideways(area(with_job)))


def test_what_is_asked_for_is_brought_in(with_job: Window, settle: Settle, qtbot: QtBot) -> None:
    """Where parts stand below each other, the page is scrolled to what was asked for."""
    with_job.show_page("plan")
    settle()
    page = with_job.page("plan")
    assert isinstance(page, PlanPage)
    twice(with_job)
    qtbot.waitUntil(lambda: not columns_on(page)[0].abreast)
    settle()
    bar = area(with_job).verticalScrollBar()
    qtbot.waitUntil(lambda: bar.maximum() > 0)
    bar.setValue(0)
    page.picture.wanted.emit(1)
    sheet = page.steps.sheet_of(1)
    assert sheet is not None
    qtbot.waitUntil(lambda: bar.value() > 0 and not sheet.visibleRegion().isEmpty())
