"""Bringing what was asked for into view, while the lines around it still find their places."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QScrollArea

__all__ = ["Bringing"]

_LAID = 300
"""ms without a change after which lines that wrap have their places."""


class Bringing(QTimer):
    """Scrolls an area to what was asked for, and follows it until it lies still."""

    def __init__(self, area: QScrollArea) -> None:
        super().__init__(area)
        self._act: Callable[[], None] | None = None
        self.setSingleShot(True)
        self.setInterval(_LAID)
        self.timeout.connect(self._let_go)
        area.verticalScrollBar().rangeChanged.connect(self._follow)

    def ask(self, act: Callable[[], None]) -> None:
        """Remember what to scroll to once it is there, in place of what was asked for before."""
        self.stop()
        self._act = act

    def there(self) -> None:
        """Scroll to what was asked for, as it is there now."""
        if self._act is not None:
            self.start()
            # The lines have their places a moment later.
            QTimer.singleShot(0, self, self._bring)

    def _bring(self) -> None:
        if self._act is not None:
            self._act()

    def _follow(self) -> None:
        if self.isActive():
            self.start()
            self._bring()

    def _let_go(self) -> None:
        self._act = None
