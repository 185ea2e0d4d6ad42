"""What stands in place of a job while none is on the bench."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QLabel, QPushButton, QVBoxLayout, QWidget

from swatchwright.desktop.words import brief as words

__all__ = ["JobWelcome"]


class JobWelcome(QFrame):
    """Says what a job is, and offers to begin one or to play with that of the demonstration.

    Signals
    -------
    begin_wanted(), demo_wanted()
        A job is to be begun; the demonstration is to be laid on the bench.
    """

    begin_wanted = Signal()
    demo_wanted = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("sheet")
        self.title, self.text = _centred("big"), _centred("")
        self.begin = QPushButton(words.BEGIN)
        self.begin.setObjectName("main")
        self.begin.clicked.connect(self.begin_wanted)
        self.demo = QPushButton(words.DEMO)
        self.demo.setAccessibleDescription(words.DEMO_TEXT)
        self.demo.clicked.connect(self.demo_wanted)
        demo_text = _centred("quiet")
        demo_text.setText(words.DEMO_TEXT)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(60, 28, 60, 28)
        rows.setSpacing(14)
        rows.addStretch(2)
        rows.addWidget(self.title)
        rows.addWidget(self.text)
        rows.addWidget(self.begin, 0, Qt.AlignmentFlag.AlignCenter)
        rows.addStretch(1)
        rows.addWidget(demo_text)
        rows.addWidget(self.demo, 0, Qt.AlignmentFlag.AlignCenter)
        rows.addStretch(2)
        self.show_first(first=True)

    def show_first(self, *, first: bool) -> None:
        """Say what a job is, the first time; later only that none is on the bench."""
        self.title.setText(words.WELCOME if first else words.NO_JOB)
        self.text.setText(words.WELCOME_TEXT if first else words.NO_JOB_TEXT)


def _centred(name: str) -> QLabel:
    label = QLabel()
    label.setObjectName(name)
    label.setWordWrap(True)
    label.setAlignment(Qt.AlignmentFlag.AlignCenter)
    return label
