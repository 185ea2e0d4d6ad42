"""What is being done, how far it is, and a button that stops it."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QProgressBar, QPushButton, QWidget

from swatchwright.desktop import words
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.elided_label import ElidedLabel

__all__ = ["BusyLine"]


class BusyLine(QWidget):
    """Says what is being done, how far it is, and lets it be stopped."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        self._told = ElidedLabel(asks=True)
        self._told.setObjectName("quiet")
        self._bar = QProgressBar()
        self._bar.setRange(0, 100)
        self._bar.setTextVisible(False)
        self._bar.setFixedSize(72, 8)
        self._stop = QPushButton(words.STOP)
        self._stop.setObjectName("little")
        self._stop.clicked.connect(session.workshop.stop_all)
        row.setSpacing(8)
        row.addWidget(self._stop)
        row.addWidget(self._bar)
        row.addWidget(self._told, 1)
        session.workshop.busy.connect(self._say)
        session.workshop.moved.connect(lambda share: self._bar.setValue(round(share * 100)))
        self._say("")

    def _say(self, text: str) -> None:
        # Its room is the job's name while nothing is being done.
        self.setVisible(bool(text))
        self._told.say(text)
        self._bar.setValue(0)
        self._bar.setVisible(text == words.FINDING_MIXES)
        self._stop.setVisible(bool(text))
