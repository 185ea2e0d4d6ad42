"""The guide beside the bench: opened where the painter is, read, followed and searched."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QPoint, Qt, QUrl
from PySide6.QtGui import QAccessible, QDesktopServices, QTextCursor
from PySide6.QtWidgets import QAbstractButton, QLineEdit, QListWidget, QTextBrowser, QWidget

from swatchwright.acts.guide import START, GuidePage, guide_page, guide_pages
from swatchwright.desktop.guide_window import GuideWindow
from swatchwright.desktop.pages import PAGES
from swatchwright.desktop.widgets.guide_button import FITTING
from swatchwright.desktop.words import guide as words
from swatchwright.language import ENGLISH, language

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton
ALT = Qt.KeyboardModifier.AltModifier
CTRL = Qt.KeyboardModifier.ControlModifier
PATIENCE = 60_000
NAMES = [page.name for page in guide_pages()]
RAGS, ONCE = {
    ENGLISH: ("oily rags", "blowlamp"),
    "de": ("Lappen Haufen", "Quarzstaub"),
}[language()]
"""Words that the page on safety has, and one that no other page has."""


def title(name: str) -> str:
    """Give the title of a page in the language of the window."""
    return guide_page(name, language()).title


def opened(window: Window) -> GuideWindow:
    """Give the guide that was opened."""
    found = window.guide.opened
    assert found is not None
    assert found.isVisible()
    return found


def press_f1(window: Window, qtbot: QtBot) -> None:
    """Press F1 in the window; a key shows the button pressed for a moment before it acts."""
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow, timeout=PATIENCE)
    with qtbot.waitSignal(window.guide.clicked, timeout=PATIENCE):
        qtbot.keyClick(window, Qt.Key.Key_F1)


def ready(guide: GuideWindow, qtbot: QtBot) -> None:
    """Wait until the pictures of the page are there, and the words of all pages."""
    qtbot.waitUntil(guide.workshop.idle, timeout=PATIENCE)
    qtbot.waitUntil(guide.text.pictures.workshop.idle, timeout=PATIENCE)


@pytest.fixture
def guide(window: Window, qtbot: QtBot) -> GuideWindow:
    """Give the guide, opened by its button on the page Colour."""
    qtbot.mouseClick(window.guide, LEFT)
    found = opened(window)
    qtbot.waitExposed(found)
    ready(found, qtbot)
    return found


def place_of(text: QTextBrowser, words_: str) -> QPoint:
    """Bring words of a page into view, and give where they stand."""
    at = text.document().find(words_)
    assert not at.isNull(), words_
    at.setPosition(at.anchor())
    text.setTextCursor(at)
    text.ensureCursorVisible()
    inside = QTextCursor(at)
    inside.movePosition(QTextCursor.MoveOperation.Right, n=2)
    return text.cursorRect(inside).center()


@pytest.mark.parametrize("key", [kind.key for kind in PAGES])
def test_f1_opens_the_page_that_fits(
    window: Window, settle: Settle, qtbot: QtBot, key: str
) -> None:
    """From each page of the window F1 leads to its page of the guide."""
    window.show_page(key)
    settle()
    press_f1(window, qtbot)
    found = opened(window)
    assert found.name == FITTING[key]
    assert title(FITTING[key]) in found.windowTitle()
    assert not found.isModal()
    assert window.rail.shown == key


def test_the_same_guide_is_opened_again(window: Window, guide: GuideWindow, qtbot: QtBot) -> None:
    """A second press opens no second window, but the page that fits by now."""
    window.show_page("shelf")
    qtbot.mouseClick(window.guide, LEFT)
    assert window.guide.opened is guide
    assert guide.name == "shelf"
    guide.close()
    press_f1(window, qtbot)
    assert opened(window) is guide


def test_the_list_has_every_page(guide: GuideWindow, qtbot: QtBot) -> None:
    """All pages are listed in their order, and a pressed one is shown."""
    assert [guide._name_at(row) for row in range(guide.list.count())] == NAMES
    assert guide.list.currentRow() == NAMES.index("colour")
    last = guide.list.item(len(NAMES) - 1)
    guide.list.scrollToItem(last)
    at = guide.list.visualItemRect(last).center()
    qtbot.mouseClick(guide.list.viewport(), LEFT, pos=at)
    assert guide.name == NAMES[-1] == "safety"
    assert guide.text.toPlainText().startswith(f"{title(NAMES[-1])}\n")


def test_the_list_is_gone_through_by_keys(guide: GuideWindow, qtbot: QtBot) -> None:
    """The arrow keys in the list turn the pages."""
    guide.list.setFocus()
    qtbot.keyClick(guide.list, Qt.Key.Key_Down)
    assert guide.name == "mix"
    qtbot.keyClick(guide.list, Qt.Key.Key_Home)
    assert guide.name == START


def test_a_link_leads_to_its_page(guide: GuideWindow, qtbot: QtBot) -> None:
    """A pressed link shows the page that it names; back and forward go there and back."""
    target = title("mix")
    assert not guide.back.isEnabled()
    at = place_of(guide.text, target)
    qtbot.mouseClick(guide.text.viewport(), LEFT, pos=at)
    assert guide.name == "mix"
    qtbot.mouseClick(guide.back, LEFT)
    assert guide.name == "colour"
    assert not guide.back.isEnabled()
    qtbot.mouseClick(guide.forward, LEFT)
    assert guide.name == "mix"
    assert not guide.forward.isEnabled()


def test_back_and_forward_by_keys(guide: GuideWindow, qtbot: QtBot) -> None:
    """Alt and an arrow go back and forth; a page opened anew ends going forward."""
    guide.open_page("plan")
    guide.text.setFocus()
    qtbot.keyClick(guide.text, Qt.Key.Key_Left, ALT)
    assert guide.name == "colour"
    qtbot.keyClick(guide.text, Qt.Key.Key_Right, ALT)
    assert guide.name == "plan"
    qtbot.keyClick(guide.text, Qt.Key.Key_Left, ALT)
    guide.open_page("sheet")
    assert not guide.forward.isEnabled()
    qtbot.keyClick(guide.text, Qt.Key.Key_Left, ALT)
    assert guide.name == "colour"


def test_links_are_reached_by_keys(guide: GuideWindow, qtbot: QtBot) -> None:
    """The tab key goes to the first link of a page, and Return follows it."""
    guide.open_page(START)
    guide.text.setFocus()
    qtbot.keyClick(guide.text, Qt.Key.Key_Tab)
    qtbot.keyClick(guide.text, Qt.Key.Key_Return)
    assert guide.name == NAMES[1]


# --- finding -------------------------------------------------------------------------------------


def test_a_word_is_found_on_all_pages(guide: GuideWindow, qtbot: QtBot) -> None:
    """What is typed lists the pages that hold it, each with a piece of what it says."""
    qtbot.keyClick(guide, Qt.Key.Key_F, CTRL)
    assert guide.focusWidget() is guide.field
    qtbot.keyClicks(guide.field, RAGS)
    qtbot.waitUntil(lambda: guide.list.count() < len(NAMES), timeout=PATIENCE)
    found = [guide._name_at(row) for row in range(guide.list.count())]
    assert "safety" in found
    assert guide.told.text() == words.found_line(len(found))
    piece = guide.list.item(found.index("safety")).text().lower()
    assert any(word in piece for word in RAGS.lower().split())


def test_return_opens_the_first_found_and_marks_it(guide: GuideWindow, qtbot: QtBot) -> None:
    """Return opens the first page that was found, with the words marked and in view."""
    qtbot.keyClicks(guide.field, ONCE)
    qtbot.keyClick(guide.field, Qt.Key.Key_Return)
    assert guide.name == "safety"
    assert guide.isVisible()
    assert guide.text.marked == 1
    marks = guide.text.extraSelections()
    mark = marks[0].cursor
    assert mark.selectedText().lower() == ONCE.lower()
    assert guide.text.viewport().rect().contains(guide.text.cursorRect(mark).center())


def test_words_typed_before_the_guide_is_read(window: Window, qtbot: QtBot) -> None:
    """Who types and presses Return before all pages are read has the first found a moment later."""
    found = GuideWindow(window)
    qtbot.addWidget(found)
    found.show()
    found.field.setText(ONCE)
    qtbot.keyClick(found.field, Qt.Key.Key_Return)
    assert not found.name
    qtbot.waitUntil(lambda: found.name == "safety", timeout=PATIENCE)
    assert found.text.marked == 1
    ready(found, qtbot)


def test_nothing_found_is_said(guide: GuideWindow, qtbot: QtBot) -> None:
    """Where no page holds the words that is said; an empty field lists all pages again."""
    qtbot.keyClicks(guide.field, "zebra")
    qtbot.waitUntil(lambda: guide.list.count() == 0, timeout=PATIENCE)
    assert guide.told.text() == words.NOTHING_FOUND
    qtbot.keyClick(guide.field, Qt.Key.Key_Return)
    assert guide.name == "colour"
    guide.field.selectAll()
    qtbot.keyClick(guide.field, Qt.Key.Key_Delete)
    qtbot.waitUntil(lambda: guide.list.count() == len(NAMES), timeout=PATIENCE)
    assert not guide.told.isVisible()


# --- links that lead out -------------------------------------------------------------------------


def test_a_link_that_leads_out_is_opened_only_on_asking(
    guide: GuideWindow, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    """An address is told first; only a press on the button opens it."""
    asked: list[QUrl] = []
    monkeypatch.setattr(QDesktopServices, "openUrl", asked.append)
    address = QUrl("https://example.org/rules")
    guide.text.anchorClicked.emit(address)
    assert guide.outside.isVisible()
    assert "example.org/rules" in guide.outside.told.text()
    qtbot.mouseClick(guide.outside.stay, LEFT)
    assert not guide.outside.isVisible()
    assert asked == []
    guide.text.anchorClicked.emit(address)
    qtbot.mouseClick(guide.outside.open, LEFT)
    assert asked == [address]
    assert not guide.outside.isVisible()


@pytest.mark.parametrize(
    "target", ["file:///etc/passwd", "javascript:alert(1)", "nowhere.md", "", "../README.md"]
)
def test_other_links_lead_nowhere(guide: GuideWindow, target: str) -> None:
    """A link that is no page of the guide and no address does nothing."""
    guide.text.anchorClicked.emit(QUrl(target))
    assert guide.name == "colour"
    assert not guide.outside.isVisible()


# --- how it looks --------------------------------------------------------------------------------


@pytest.mark.parametrize("page", guide_pages(language()), ids=lambda page: page.name)
def test_pictures_are_as_wide_as_the_text(
    guide: GuideWindow, qtbot: QtBot, page: GuidePage
) -> None:
    """Each picture of a page is fetched, fits beside nothing, and is told in words below."""
    guide.open_page(page.name)
    ready(guide, qtbot)
    shown = guide.text._images()
    assert len(shown) == page.text.count("![")
    for _, image in shown:
        path = page.path.parent / image.name()
        fetched = guide.text.pictures.of(path)
        assert fetched is not None
        assert fetched.width() >= int(image.width())
        assert image.width() <= guide.text.viewport().width()
    assert guide.text.horizontalScrollBar().maximum() == 0


def test_pictures_follow_the_window(guide: GuideWindow, qtbot: QtBot) -> None:
    """In a narrow window the pictures are narrower, and still fit."""
    wide = guide.text._images()[0][1].width()
    guide.resize(700, 600)
    qtbot.waitUntil(lambda: guide.text._images()[0][1].width() < wide, timeout=PATIENCE)
    ready(guide, qtbot)
    assert guide.text._images()[0][1].width() <= guide.text.viewport().width()


def test_letters_are_made_larger_and_smaller(guide: GuideWindow, qtbot: QtBot) -> None:
    """Buttons and keys change the size of the letters, between bounds."""
    usual = guide.text.letters
    qtbot.mouseClick(guide.larger, LEFT)
    assert guide.text.letters > usual
    qtbot.mouseClick(guide.smaller, LEFT)
    assert guide.text.letters == usual
    qtbot.keyClick(guide.text, Qt.Key.Key_Plus, CTRL)
    assert guide.text.letters > usual
    for _ in range(30):
        guide.text.magnify(1)
    assert 30 <= guide.text.letters <= 40
    for _ in range(60):
        guide.text.magnify(-1)
    assert 10 <= guide.text.letters < usual
    assert guide.text.toPlainText().startswith(title("colour"))


def test_the_guide_follows_the_bench(window: Window, guide: GuideWindow, qtbot: QtBot) -> None:
    """On the dark bench the guide is dark, and its links are still grey."""

    def link() -> tuple[int, int, int]:
        at = guide.text.document().find(title("mix"))
        at.setPosition(at.anchor() + 2)
        colour = at.charFormat().foreground().color()
        return colour.red(), colour.green(), colour.blue()

    light = link()
    window.dark.trigger()
    qtbot.waitUntil(lambda: link() != light, timeout=PATIENCE)
    ready(guide, qtbot)
    assert len(set(light)) == len(set(link())) == 1
    edge = guide.text.viewport().grab().toImage().pixelColor(3, 3)
    assert edge.lightness() < 90
    assert guide.name == "colour"


def test_every_control_is_named_and_reached(guide: GuideWindow) -> None:
    """A screen reader gets a name for each control, and the tab key reaches all of them."""
    kinds = (QAbstractButton, QLineEdit, QListWidget, QTextBrowser)
    seen = 0
    for widget in guide.findChildren(QWidget):
        if not isinstance(widget, kinds) or not widget.isVisible():
            continue
        # The button that clears the field is part of the field.
        if isinstance(widget.parentWidget(), QLineEdit):
            continue
        seen += 1
        interface = QAccessible.queryAccessibleInterface(widget)
        assert interface.text(QAccessible.Text.Name).strip()
        assert widget.focusPolicy() & Qt.FocusPolicy.TabFocus
    assert seen >= 7


def test_escape_puts_the_guide_away(guide: GuideWindow, window: Window, qtbot: QtBot) -> None:
    """Escape closes the guide, and the bench is as it was."""
    qtbot.keyClick(guide, Qt.Key.Key_Escape)
    assert not guide.isVisible()
    assert window.isVisible()


def test_without_the_guide_it_is_said(
    window: Window, qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where the program was installed without its guide the window says so."""
    from swatchwright.acts import guide as act

    act.guide_pages.cache_clear()
    monkeypatch.setattr(act, "_folders", lambda: (tmp_path,))
    qtbot.mouseClick(window.guide, LEFT)
    found = opened(window)
    act.guide_pages.cache_clear()
    assert found.told.text() == words.NO_GUIDE
    assert found.told.isVisible()
    assert found.list.count() == 0
