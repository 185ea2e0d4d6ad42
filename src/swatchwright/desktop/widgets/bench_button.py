"""How the bench is set up: light or dark, and how large its letters are."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMenu, QToolButton

from swatchwright.desktop.letters import letters, may_grow
from swatchwright.desktop.words import bench as words

__all__ = ["BenchButton"]

_STEP, _USUAL = 0.1, 1.0


class BenchButton(QToolButton):
    """A menu of a few choices; their keys are heard in the whole window.

    Signals
    -------
    letters_wanted(float)
        Letters of so many times the usual size are wanted.
    """

    letters_wanted = Signal(float)

    def __init__(self) -> None:
        super().__init__()
        self.setText(words.BENCH)
        self.setToolTip(words.BENCH_TIP)
        menu = QMenu(self)
        self.dark = menu.addAction(words.DARK)
        self.dark.setCheckable(True)
        menu.addSeparator()
        self.larger = self._letters(menu, words.LARGER, ("Alt++", "Alt+="), _STEP)
        self.smaller = self._letters(menu, words.SMALLER, ("Alt+-",), -_STEP)
        self.usual = self._letters(menu, words.USUAL, ("Alt+0",), 0)
        menu.aboutToShow.connect(self.show_size)
        self.setMenu(menu)
        self.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)

    def show_size(self) -> None:
        """Show which sizes may still be chosen."""
        self.larger.setText(words.LARGER if may_grow() else words.LARGEST)

    def _letters(self, menu: QMenu, text: str, keys: tuple[str, ...], by: float) -> QAction:
        action = menu.addAction(text)
        action.setShortcuts([QKeySequence(key) for key in keys])
        action.triggered.connect(lambda: self._want(by))
        return action

    def _want(self, by: float) -> None:
        """Ask for a size one step from this one, or for the usual one."""
        if by > 0 and not may_grow():
            return
        self.letters_wanted.emit(round(letters() + by, 2) if by else _USUAL)
