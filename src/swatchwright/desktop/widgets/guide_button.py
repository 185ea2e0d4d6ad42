"""The button that opens the guide where the painter is."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QPushButton

from swatchwright.acts.guide import START
from swatchwright.desktop.words import guide as words

if TYPE_CHECKING:
    from swatchwright.desktop.guide_window import GuideWindow

__all__ = ["FITTING", "GuideButton"]

FITTING = {
    "brief": "jobs",
    "colour": "colour",
    "compare": "compare",
    "shelf": "shelf",
    "sample": "sample",
    "finish": "finish",
    "piece": "amounts",
    "repaint": "on_photo",
    "plan": "plan",
    "sheet": "sheet",
}
"""The page of the guide that fits each page of the window."""


class GuideButton(QPushButton):
    """Opens the guide at the page that fits the page of the window that is in view.

    Parameters
    ----------
    in_view
        Gives the key of that page.
    """

    def __init__(self, in_view: Callable[[], str]) -> None:
        super().__init__(words.GUIDE)
        self.setToolTip(words.GUIDE_TIP)
        self.setShortcut(QKeySequence(Qt.Key.Key_F1))
        self._in_view = in_view
        self.opened: GuideWindow | None = None
        self.clicked.connect(self.open_guide)

    def open_guide(self) -> None:
        """Open the guide, or bring it to the front, at the fitting page."""
        # Nobody waits for it at the start of the program.
        from swatchwright.desktop.guide_window import GuideWindow

        if self.opened is None:
            # In the style of the bar that it is opened from.
            self.opened = GuideWindow(self)
        self.opened.show()
        self.opened.open_page(FITTING.get(self._in_view(), START))
        self.opened.activateWindow()
