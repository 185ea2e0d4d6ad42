"""Undo and redo: two buttons that say what they would do, or why there is nothing to do."""

from __future__ import annotations

from html import escape

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QPushButton

from swatchwright.desktop import words
from swatchwright.desktop.desk import Desk

__all__ = ["UndoButtons"]


class UndoButtons(QObject):
    """Draws two buttons from the history, and turns it when they are pressed.

    Signals
    -------
    turned(str)
        This was just taken back or done again, in a sentence.
    """

    turned = Signal(str)

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        history = self._history = desk.history
        self.undo, self.redo = QPushButton(words.UNDO), QPushButton(words.REDO)
        # What she has just left a field with may still be on its way to the store.
        self.undo.clicked.connect(lambda: desk.settled(self._undo))
        self.redo.clicked.connect(lambda: desk.settled(self._redo))
        self.undo.setShortcut(QKeySequence(QKeySequence.StandardKey.Undo))
        self.redo.setShortcut(QKeySequence(QKeySequence.StandardKey.Redo))
        history.changed.connect(self._show)
        self._show()

    def _undo(self) -> None:
        what = self._history.last
        self._history.undo()
        if what:
            self.turned.emit(words.undone_told(what))

    def _redo(self) -> None:
        what = self._history.next
        self._history.redo()
        if what:
            self.turned.emit(words.redone_told(what))

    def _show(self) -> None:
        history = self._history
        for button, label, told in (
            (self.undo, history.last, words.undo_told(history.last) or words.NOTHING_TO_UNDO),
            (self.redo, history.next, words.redo_told(history.next) or words.NOTHING_TO_REDO),
        ):
            button.setEnabled(bool(label))
            # Of rich text a long tip breaks its lines.
            button.setToolTip(f"<p>{escape(told, quote=False)}</p>")
            button.setAccessibleDescription(told)
