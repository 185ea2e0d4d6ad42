"""Dressing the window in its style by parts, so that no step holds the hand up."""

from __future__ import annotations

from collections.abc import Iterable
from functools import partial
from weakref import WeakKeyDictionary

from PySide6.QtCore import QObject, QTimer
from PySide6.QtWidgets import QApplication, QWidget

from swatchwright.desktop.look import LIGHT, Look, palette, style

__all__ = ["Dressing"]


class Dressing(QObject):
    """Knows the look of the bench, and which parts have it already.

    To style a page takes some 15 ms, and more with larger letters: those out of view are dressed
    when they are next shown.
    """

    def __init__(self, window: QWidget) -> None:
        super().__init__(window)
        self._window = window
        self.look = LIGHT
        self._dressed: WeakKeyDictionary[QWidget, Look] = WeakKeyDictionary()

    def take(self, look: Look) -> None:
        """Lay the bench in the greys of a look; its parts are still to be dressed."""
        self.look = look
        application = QApplication.instance()
        if isinstance(application, QApplication):
            application.setPalette(palette(look))
        self._window.setPalette(palette(look))

    def undress(self) -> None:
        """Have all parts dressed anew, in letters of another size."""
        self._dressed.clear()

    def dress(self, part: QWidget) -> None:
        """Give a part its style, if it has another, at once: it is about to be seen."""
        if self._dressed.get(part) is not self.look:
            self._dressed[part] = self.look
            part.setStyleSheet(style(self.look))

    def dress_in_turn(self, parts: Iterable[QWidget]) -> None:
        """Dress parts one after another, each in a step of its own."""
        for part in parts:
            QTimer.singleShot(0, self, partial(self.dress, part))
