"""A painter who hears the window read out: she knows its controls by their names alone."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible, QAccessibleActionInterface, QAccessibleInterface
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget

__all__ = ["Heard", "Listener", "spoken_name", "tree"]

NAME, DESCRIPTION, VALUE = (
    QAccessible.Text.Name,
    QAccessible.Text.Description,
    QAccessible.Text.Value,
)


@dataclass(frozen=True, slots=True)
class Heard:
    """A thing of the accessible tree as it is read out."""

    name: str
    description: str
    value: str
    role: QAccessible.Role
    disabled: bool
    interface: QAccessibleInterface


def tree(root: QWidget) -> Iterator[Heard]:
    """Read out a window: all that is in view, from the top."""
    first = QAccessible.queryAccessibleInterface(root)
    waiting = [first]
    while waiting:
        one = waiting.pop()
        if one is None or not one.isValid() or (one is not first and one.state().invisible):
            continue
        yield Heard(
            spoken_name(one),
            one.text(DESCRIPTION),
            one.text(VALUE),
            one.role(),
            bool(one.state().disabled),
            one,
        )
        # A table or list is asked for its cells elsewhere: there may be thousands.
        if one.tableCellInterface() is None and one.role() not in _MANY:
            waiting.extend(one.child(n) for n in reversed(range(one.childCount())))


_NO_CONTROL = (QAccessible.Role.StaticText, QAccessible.Role.ButtonMenu)
_MANY = (QAccessible.Role.Table, QAccessible.Role.List, QAccessible.Role.ComboBox)


def spoken_name(one: QAccessibleInterface) -> str:
    """Give the name by which assistive programs call a thing.

    A choice is called by the label that is tied to it, or its description: on Linux Qt gives its
    value as its name.
    """
    if one.role() is not QAccessible.Role.ComboBox:
        return one.text(NAME)
    labels = [
        other.text(NAME)
        for other, relation in one.relations(QAccessible.RelationFlag.Label)
        if relation == QAccessible.RelationFlag.Label and other is not None
    ]
    return " ".join(labels) or one.text(DESCRIPTION)


class Listener:
    """Finds by a name, presses, chooses and types; she never looks.

    Parameters
    ----------
    window
        The window that is read out.
    rest
        Waits until the window is at rest.
    """

    def __init__(self, window: QWidget, rest: Callable[[], None]) -> None:
        self._window, self._rest = window, rest

    def hears(self, pattern: str) -> list[Heard]:
        """Give all that is told in the words of a pattern: by name, description or value."""
        sought = re.compile(pattern)
        return [
            heard
            for heard in tree(self._window)
            if any(sought.search(text) for text in (heard.name, heard.description, heard.value))
        ]

    def named(self, pattern: str) -> Heard:
        """Give the one control in view, not disabled, whose whole name fits a pattern."""
        sought = re.compile(pattern)
        found = [
            heard
            for heard in tree(self._window)
            if not heard.disabled and heard.role not in _NO_CONTROL and sought.fullmatch(heard.name)
        ]
        assert len(found) == 1, (pattern, [heard.name for heard in found])
        return found[0]

    def press(self, pattern: str) -> Heard:
        """Press what has this name, by what it offers to assistive programs."""
        heard = self.named(pattern)
        acts = heard.interface.actionInterface()
        assert acts is not None, heard.name
        press, toggle = QAccessibleActionInterface.pressAction(), _toggle()
        offered = acts.actionNames()
        acts.doAction(press if press in offered else toggle)
        self._rest()
        return heard

    def keys(self, pattern: str, *keys: Qt.Key) -> None:
        """Go to what has this name, and press keys there."""
        found = self.named(pattern).interface.object()
        assert isinstance(found, QWidget)
        found.setFocus(Qt.FocusReason.TabFocusReason)
        for key in keys:
            QTest.keyClick(found, key)
        self._rest()

    def choose(self, pattern: str, value: str) -> None:
        """Go through a list by the arrow key until it tells the value that is sought."""
        self.keys(pattern, Qt.Key.Key_Home)
        for _ in range(60):
            if self.named(pattern).value == value:
                return
            self.keys(pattern, Qt.Key.Key_Down)
        raise AssertionError((pattern, value))


def _toggle() -> str:
    return QAccessibleActionInterface.toggleAction()
