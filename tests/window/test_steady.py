"""What stays where it is: photos while messages come, lists, the frame of the keyboard, files."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QEvent, QObject, QPoint, Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QApplication,
    QFileDialog,
    QLabel,
    QScrollArea,
    QToolButton,
    QTreeView,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.repaint_file import sample_box
from swatchwright.acts.samples import SamplePhoto, sample_photos
from swatchwright.desktop.files import ask_open, ask_save
from swatchwright.desktop.look import DARK, LIGHT, Look, style
from swatchwright.desktop.pages import PAGES
from swatchwright.desktop.pages.repaint_page import RepaintPage
from swatchwright.desktop.widgets.areas import ScrollArea
from swatchwright.desktop.widgets.fields import ChoiceField, NumberField
from swatchwright.desktop.window import Window
from swatchwright.desktop.words import photo as photo_words
from swatchwright.values import Rect

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

LEFT = Qt.MouseButton.LeftButton
Place = tuple[int, int, int, int]


class Places(QObject):
    """Notes every place and size that a widget takes in its window."""

    def __init__(self, widget: QWidget) -> None:
        super().__init__(widget)
        self._widget = widget
        self.seen = {self.now()}
        widget.installEventFilter(self)

    def now(self) -> Place:
        """Give where it is now: left, top, width and height."""
        corner = self._widget.mapTo(self._widget.window(), QPoint(0, 0))
        return corner.x(), corner.y(), self._widget.width(), self._widget.height()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 - Qt's name
        """Note a new one."""
        if event.type() in (QEvent.Type.Resize, QEvent.Type.Move):
            self.seen.add(self.now())
        return super().eventFilter(watched, event)


# --- the photo of the cloth ----------------------------------------------------------------------


def test_the_photo_stays_while_it_is_marked(
    window: Window, settle: Callable[[], None], cushion: SamplePhoto
) -> None:
    """From the open photo to marks, colours and warnings it keeps its place to the pixel."""
    window.open(cushion.path)
    settle()
    places = Places(window.photo_side.view)
    window.session.set_grey(cushion.grey)
    settle()
    window.session.set_cloth(cushion.cloth)
    settle()
    window.session.set_grey(Rect(10, 10, 100, 100))
    settle()
    assert window.photo_side.findings.isVisible()
    assert places.seen == {places.now()}


@pytest.mark.parametrize("sample", sample_photos(), ids=lambda sample: sample.path.stem)
def test_every_colour_leaves_the_photo_its_place(
    window: Window, settle: Callable[[], None], sample: SamplePhoto
) -> None:
    """Whichever colour is wanted, what is said of it takes no room from the photo."""
    window.open_sample(sample)
    settle()
    places = Places(window.photo_side.view)
    found = window.session.found
    assert found is not None
    for number in range(len(found.colours)):
        window.session.choose(number)
        settle()
    assert places.seen == {places.now()}
    assert window.height() == 720


def test_a_long_warning_is_read_on_asking(
    with_cushion: Window, settle: Callable[[], None], qtbot: QtBot
) -> None:
    """Two lines of it have room; the rest is scrolled to, or shown by the button beside it."""
    findings = with_cushion.photo_side.findings
    with_cushion.session.set_grey(Rect(10, 10, 100, 100))
    settle()
    long = " ".join(["A finding of many words."] * 12)
    findings.show_findings((long,))
    qtbot.waitUntil(lambda: findings.area.verticalScrollBar().maximum() > 0)
    assert findings.area.height() == findings.room()
    assert findings.more.text() == photo_words.READ_ON
    qtbot.mouseClick(findings.more, LEFT)
    assert findings.area.height() > findings.room()
    assert findings.more.text() == photo_words.FEWER
    findings.show_findings(("Short.",))
    assert not findings.more.isVisible()


# --- the photo of the piece ----------------------------------------------------------------------


def test_the_first_stroke_leaves_the_picture_where_it_is(
    with_cushion: Window, settle: Callable[[], None]
) -> None:
    """A second stroke lands where it was meant to: zones, notes and a saving move nothing."""
    sample = sample_box()
    assert sample is not None
    with_cushion.show_page("repaint")
    page = with_cushion.page("repaint")
    assert isinstance(page, RepaintPage)
    page.open_file(sample.path)
    settle()
    places = [Places(page.canvas), Places(page.after)]
    page.canvas.stroked.emit(((400.0, 500.0), (500.0, 500.0)), False)
    settle()
    assert page.zones.isVisible()
    assert page.notes.isVisible()
    page.piece.saved.emit(Path("a_picture.png"))
    settle()
    assert page.told.isVisible()
    assert [one.seen for one in places] == [{one.now()} for one in places]


# --- lists ---------------------------------------------------------------------------------------


@pytest.mark.qt_log_ignore("This plugin does not support", extend=True)
@pytest.mark.parametrize("look", [LIGHT, DARK], ids=["light", "dark"])
@pytest.mark.parametrize("count", [2, 3, 12])
def test_an_open_list_shows_all_its_entries(qtbot: QtBot, look: Look, count: int) -> None:
    """The first entry and the last are whole, and no strip or empty row is beside them."""
    holder = QWidget()
    qtbot.addWidget(holder)
    holder.setStyleSheet(style(look))
    rows, box = QVBoxLayout(holder), ChoiceField()
    box.addItems([f"entry {number}" for number in range(count - 1)] + ["one that is far longer"])
    rows.addWidget(box)
    holder.resize(120, 80)
    with qtbot.waitExposed(holder):
        holder.show()
    for place in (0, count - 1):
        box.setCurrentIndex(place)
        box.showPopup()
        # A list that is gone to by keyboard had a frame, which pressed its entries.
        box.view().setFocus()
        QTest.qWait(50)
        inside, view = box.view().viewport().rect(), box.view()
        rects = [view.visualRect(box.model().index(row, 0)) for row in range(count)]
        assert all(inside.contains(rect) for rect in rects)
        assert inside.height() == sum(rect.height() for rect in rects)
        assert inside.width() >= view.fontMetrics().horizontalAdvance("one that is far longer")
        strips = [one for one in view.window().children() if isinstance(one, QWidget)]
        assert [one for one in strips if one.isVisible()] == [view]
        box.hidePopup()


# --- what is scrolled ----------------------------------------------------------------------------


def test_pages_take_the_keyboard_by_tab_alone(
    with_cushion: Window, settle: Callable[[], None]
) -> None:
    """A click into a page draws no frame about it; the Tab key still goes there."""
    for kind in PAGES:
        with_cushion.show_page(kind.key)
        settle()
        for area in with_cushion.page(kind.key).findChildren(QScrollArea):
            policies = (Qt.FocusPolicy.TabFocus, Qt.FocusPolicy.NoFocus)
            assert area.focusPolicy() in policies, area.accessibleName()


@pytest.mark.qt_log_ignore("not accepted by receiving widget", extend=True)
def test_a_click_beside_a_field_ends_typing(qtbot: QtBot) -> None:
    """Who clicks beside the field she typed into is done with it, though nothing else is chosen."""
    area, inside, field = ScrollArea(), QWidget(), NumberField()
    qtbot.addWidget(area)
    rows = QVBoxLayout(inside)
    rows.addWidget(field)
    rows.addWidget(QLabel("beside"), 1)
    area.setWidget(inside)
    area.setWidgetResizable(True)
    area.resize(200, 200)
    with qtbot.waitActive(area):
        area.show()
        area.activateWindow()
    field.setFocus()
    qtbot.waitUntil(field.hasFocus)
    with qtbot.waitSignal(field.editingFinished):
        qtbot.mouseClick(inside, LEFT, pos=QPoint(100, 150))
    assert QApplication.focusWidget() is None


# --- asking for a file ---------------------------------------------------------------------------


@pytest.mark.parametrize("ask", [ask_open, ask_save])
def test_the_own_dialog_of_qt_is_wide_and_has_its_buttons(
    window: Window, qtbot: QtBot, tmp_path: Path, ask: Callable[..., tuple[str, str]]
) -> None:
    """Its columns have room for what is in them, and no style of ours blanks its buttons."""
    told: list[tuple[int, int, bool]] = []
    (tmp_path / "a_photo_with_a_rather_long_name.jpg").write_bytes(b"0" * 500_000)

    def look() -> None:
        for dialog in QApplication.topLevelWidgets():
            if isinstance(dialog, QFileDialog) and dialog.isVisible():
                tree = dialog.findChild(QTreeView)
                assert tree is not None
                header = tree.header()
                buttons = dialog.findChildren(QToolButton)
                roomy = all(one.iconSize().width() + 2 <= one.width() for one in buttons)
                needs = dialog.fontMetrics().horizontalAdvance("488.28 KiB")
                told.append((dialog.width(), header.sectionSize(1) - needs, roomy))
                dialog.reject()

    QTimer.singleShot(400, look)
    asker = window.page("sheet")
    window.show_page("sheet")
    assert ask(asker, "A photo", str(tmp_path), "All files (*)") == ("", "")
    qtbot.waitUntil(lambda: bool(told))
    (width, spare, roomy) = told[0]
    assert width >= min(900, window.screen().availableSize().width())
    assert spare > 0
    assert roomy
