"""Fields that are kept when she leaves them, and never overwrite what she is writing."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFocusEvent
from PySide6.QtWidgets import QComboBox, QLineEdit, QPlainTextEdit, QWidget

__all__ = ["LineField", "PickField", "TextField"]


class LineField(QLineEdit):
    """A line of text.

    Signals
    -------
    left(str)
        She is done with it, and it is not what was shown.
    """

    left = Signal(str)

    def __init__(self, name: str, hint: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._shown = ""
        self.setObjectName("typed")
        self.setAccessibleName(name)
        self.setPlaceholderText(hint)
        self.setMaxLength(200)
        self.editingFinished.connect(self._done)

    def show_text(self, text: str, *, anew: bool) -> None:
        """Show what is kept; while she is writing only if it is of another job."""
        if anew or not self.hasFocus() or self.text() == self._shown:
            if self.text() != text:
                self.setText(text)
            self.setCursorPosition(0 if not self.hasFocus() else len(text))
        self._shown = text

    def _done(self) -> None:
        if self.text().strip() != self._shown:
            self._shown = self.text().strip()
            self.left.emit(self._shown)


class TextField(QPlainTextEdit):
    """Several lines of text.

    Parameters
    ----------
    name, hint
        Its name, and what stands in it while it is empty.
    waits
        Whether it is not kept yet when she only looks at another window.

    Signals
    -------
    left(str)
        She is done with it, and it is not what was shown.
    """

    left = Signal(str)

    def __init__(
        self, name: str, hint: str, *, waits: bool = False, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._shown = ""
        away = Qt.FocusReason.ActiveWindowFocusReason
        self._stays = {Qt.FocusReason.PopupFocusReason, *([away] if waits else [])}
        self.setObjectName("typed")
        self.setAccessibleName(name)
        self.setPlaceholderText(hint)
        self.setTabChangesFocus(True)

    def show_text(self, text: str, *, anew: bool) -> None:
        """Show what is kept; while she is writing only if it is of another job."""
        writing = self.hasFocus() and self.toPlainText() != self._shown
        if (anew or not writing) and self.toPlainText() != text:
            self.setPlainText(text)
        self._shown = text

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Keep the text, unless only a menu of its own opens."""
        super().focusOutEvent(event)
        if event.reason() not in self._stays:
            self.keep()

    def keep(self) -> None:
        """Keep the text now."""
        text = self.toPlainText().strip()
        if text != self._shown:
            self._shown = text
            self.left.emit(text)


class PickField(QComboBox):
    """A text to pick from a list, or to write.

    Signals
    -------
    left(str)
        She is done with it, and it is not what was shown.
    """

    left = Signal(str)

    def __init__(
        self, name: str, hint: str, texts: Sequence[str], parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.line = LineField(name, hint)
        self.setEditable(True)
        self.setLineEdit(self.line)
        self.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
        self.setAccessibleName(name)
        self.addItems(list(texts))
        self.setMinimumContentsLength(12)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.line.left.connect(self.left)
        self.activated.connect(lambda _: self.line.editingFinished.emit())

    def show_text(self, text: str, *, anew: bool) -> None:
        """Show what is kept."""
        self.line.show_text(text, anew=anew)
