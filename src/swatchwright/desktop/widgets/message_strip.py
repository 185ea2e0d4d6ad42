"""A strip that says in place what went wrong and what to do, and can be put away."""

from __future__ import annotations

import sys

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QWidget

from swatchwright import __version__
from swatchwright.desktop import words
from swatchwright.errors import MendableError

__all__ = ["MessageStrip"]


class MessageStrip(QFrame):
    """Hidden until there is something to say."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("trouble")
        self._report = ""
        row = QHBoxLayout(self)
        row.setContentsMargins(16, 10, 10, 10)
        self._text = QLabel()
        self._text.setWordWrap(True)
        self._text.setTextFormat(Qt.TextFormat.PlainText)
        row.addWidget(self._text, 1)
        self._copy = QPushButton(words.COPY_REPORT)
        self._copy.clicked.connect(self._copy_report)
        row.addWidget(self._copy)
        close = QPushButton(words.PUT_AWAY)
        close.clicked.connect(self.hide)
        row.addWidget(close)
        self.hide()

    def text(self) -> str:
        """Give what it says."""
        return self._text.text()

    def say(self, what: object) -> None:
        """Show what the user can mend, or our own fault with a report to copy."""
        if isinstance(what, MendableError):
            self._report = ""
            self._text.setText(f"{what.what}\n{what.mend}")
        else:
            self._report = f"Swatchwright {__version__}, {sys.platform}\n{what}"
            self._text.setText(words.OUR_FAULT)
        self._copy.setVisible(bool(self._report))
        self.show()

    def _copy_report(self) -> None:
        QGuiApplication.clipboard().setText(self._report)
