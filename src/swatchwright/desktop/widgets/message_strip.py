"""A strip that says in place what went wrong and what to do, and can be put away."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QWidget

from swatchwright.acts.report import Scene, report_of
from swatchwright.desktop import words
from swatchwright.errors import MendableError

__all__ = ["MessageStrip"]


class MessageStrip(QFrame):
    """Hidden until there is something to say.

    `report` makes a report of what is told of a fault; whoever knows more of where the program is
    may put another in its place.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("trouble")
        self.report: Callable[[str], str] = lambda told: report_of(Scene(), [told])
        self._report = ""
        row = QHBoxLayout(self)
        row.setContentsMargins(16, 10, 10, 10)
        self._text = QLabel()
        self._text.setWordWrap(True)
        self._text.setTextFormat(Qt.TextFormat.PlainText)
        row.addWidget(self._text, 1)
        self.copy = QPushButton(words.COPY_REPORT)
        self.copy.clicked.connect(self._copy_report)
        row.addWidget(self.copy)
        self.put_away = QPushButton(words.PUT_AWAY)
        self.put_away.clicked.connect(self.hide)
        row.addWidget(self.put_away)
        self.hide()

    def text(self) -> str:
        """Give what it says."""
        return self._text.text()

    def say(self, what: object) -> None:
        """Show what the user can mend, or our own fault with a report to copy."""
        if isinstance(what, MendableError):
            self.tell(f"{what.what}\n{what.mend}")
        else:
            self.tell(words.OUR_FAULT, self.report(str(what)))

    def tell(self, text: str, report: str = "") -> None:
        """Show a text, with a report to copy if there is one."""
        self._report = report
        self._text.setText(text)
        self.copy.setVisible(bool(report))
        self.show()

    def tell_anew(self, text: str, report: str) -> None:
        """Put a text and a report in place of others, without bringing back what was put away."""
        self._report = report
        self._text.setText(text)

    def _copy_report(self) -> None:
        QGuiApplication.clipboard().setText(self._report)
