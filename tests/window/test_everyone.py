"""The window for everyone: names for a screen reader, keys for all of it, and text that fits.

References
----------
WCAG 2.2, success criteria 4.1.2 (name, role, value), 2.1.1 (keyboard), 1.4.3 and 1.4.11 (contrast).
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from string import ascii_uppercase
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible, QColor
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QAbstractSpinBox,
    QComboBox,
    QHeaderView,
    QLabel,
    QLineEdit,
    QPlainTextEdit,
    QSlider,
    QWidget,
)

from house.tree import ROOT
from swatchwright.desktop.look import DARK, LIGHT, Look
from swatchwright.desktop.pages import PAGES
from swatchwright.desktop.words import compare

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

KEYS = [kind.key for kind in PAGES]

CONTROLS = (
    QAbstractButton,
    QAbstractItemView,
    QAbstractSpinBox,
    QComboBox,
    QLineEdit,
    QPlainTextEdit,
    QSlider,
)


def shown(window: QWidget, kind: type[QWidget] | tuple[type[QWidget], ...]) -> Iterator[QWidget]:
    """Give the widgets of a kind that are in view, but not the insides of others."""
    for widget in window.findChildren(QWidget):
        inside = widget.parentWidget()
        if isinstance(inside, QAbstractSpinBox | QComboBox) or widget.objectName().startswith(
            "qt_"
        ):
            continue
        if isinstance(widget, kind) and widget.isVisible():
            yield widget


def told(widget: QWidget) -> str:
    """Name a widget so that it can be found."""
    text = getattr(widget, "text", lambda: "")()
    return f"{type(widget).__name__} {text!r} in {type(widget.parent()).__name__}"


@pytest.fixture(params=KEYS)
def page(
    request: pytest.FixtureRequest, with_cushion: Window, settle: Callable[[], None], qtbot: QtBot
) -> Window:
    """Give the window with the sample cushion, one page after another in view."""
    with_cushion.show_page(request.param)
    settle()
    # What was found last may still be on its way through the layouts.
    qtbot.wait(50)
    return with_cushion


def test_every_control_has_a_name(page: Window) -> None:
    """A screen reader gets a name for all that can be pressed, typed into or chosen from."""
    nameless = []
    for widget in shown(page, CONTROLS):
        interface = QAccessible.queryAccessibleInterface(widget)
        if interface is None or not interface.text(QAccessible.Text.Name).strip():
            nameless.append(told(widget))
    assert not nameless


def test_every_control_is_reached_by_keyboard(page: Window) -> None:
    """Whatever can be pressed or typed into takes the focus by the tab key."""
    unreached = [
        told(widget)
        for widget in shown(page, CONTROLS)
        if widget.isEnabled()
        and not widget.focusPolicy() & Qt.FocusPolicy.TabFocus
        # The head of a table that cannot be pressed.
        and not (isinstance(widget, QHeaderView) and not widget.sectionsClickable())
    ]
    assert not unreached


def test_the_window_holds_in_a_small_screen(page: Window) -> None:
    """No page asks for more than 1280 x 720."""
    least = page.minimumSizeHint()
    assert least.width() <= 1280
    assert least.height() <= 720


def test_no_text_is_cut(page: Window) -> None:
    """At 1280 x 720 every label and button has room for its words."""
    cut = []
    for widget in shown(page, (QLabel, QAbstractButton)):
        if isinstance(widget, QLabel):
            if widget.wordWrap() or not widget.text() or widget.text().startswith("<"):
                continue
            needs = max(
                widget.fontMetrics().horizontalAdvance(line) for line in widget.text().split("\n")
            )
            if needs > widget.contentsRect().width() + 1 and not widget.toolTip():
                cut.append(told(widget))
        elif widget.width() + 1 < widget.minimumSizeHint().width():
            cut.append(told(widget))
    assert not cut


def test_every_key_of_the_whole_screen_is_another() -> None:
    """No two letters that stand for something there are the same, in any language."""
    letters = [*compare.STATE_KEYS.values(), "L", "M", "I"]
    assert all(len(letter) == 1 and letter in ascii_uppercase for letter in letters)
    assert len(set(letters)) == len(letters)
    for letter in letters:
        assert f" {letter} " in compare.KEYS


def luminance(colour: str) -> float:
    """Give the relative luminance of WCAG 2.2."""
    parts = [QColor(colour).redF(), QColor(colour).greenF(), QColor(colour).blueF()]
    light = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts]
    return 0.2126 * light[0] + 0.7152 * light[1] + 0.0722 * light[2]


def contrast(one: str, other: str) -> float:
    """Give the contrast ratio of WCAG 2.2."""
    high, low = sorted((luminance(one), luminance(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


@pytest.mark.parametrize("look", [LIGHT, DARK], ids=["light", "dark"])
def test_the_greys_stand_out(look: Look) -> None:
    """Text has a contrast of 4.5 or more on its ground, and edges of controls 3 or more."""
    for ink in (look.ink, look.quiet):
        for ground in (look.bench, look.sheet):
            assert contrast(ink, ground) >= 4.5
    assert contrast(look.press_ink, look.press) >= 4.5
    assert contrast(look.ink, look.pick) >= 4.5
    assert contrast(look.press, look.bench) >= 3


@pytest.mark.parametrize("look", [LIGHT, DARK], ids=["light", "dark"])
def test_the_bench_tints_nothing(look: Look) -> None:
    """Every colour of the bench is a grey: its red, green and blue are the same."""
    for name in look.__slots__:
        colour = QColor(getattr(look, name))
        assert colour.red() == colour.green() == colour.blue(), name


def test_the_style_guide_tells_the_greys_as_they_are() -> None:
    """The table of docs/look.md holds the greys of both benches, and no other."""
    text = (ROOT / "docs" / "look.md").read_text(encoding="utf-8")
    rows = re.findall(r"^\| (\w+) \| (#\w{6}) \| (#\w{6}) \|", text, re.MULTILINE)
    assert rows == [(n, getattr(LIGHT, n), getattr(DARK, n)) for n in LIGHT.__slots__]
