"""What is being done, how far it is, and a button that stops it; else what was just done."""

from __future__ import annotations

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtWidgets import QHBoxLayout, QProgressBar, QPushButton, QSizePolicy, QWidget

from swatchwright.desktop import words
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.elided_label import ElidedLabel

__all__ = ["BusyLine"]

_NOTED = 8_000
"""ms that it stands there what was just done."""


class BusyLine(QWidget):
    """Says what is being done, how far it is, and lets it be stopped.

    For a while it says in place of that what was just done, as soon as it is.

    Signals
    -------
    noting(bool)
        It says what was just done, and needs the room for it, or does no longer.
    """

    noting = Signal(bool)

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
        self._stop.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self._stop.clicked.connect(session.workshop.stop_all)
        self._doing, self._noted = "", ""
        self._forget = QTimer(self)
        self._forget.setSingleShot(True)
        self._forget.setInterval(_NOTED)
        self._forget.timeout.connect(lambda: self.note(""))
        row.setSpacing(8)
        row.addWidget(self._stop)
        row.addWidget(self._bar)
        row.addWidget(self._told, 1, Qt.AlignmentFlag.AlignLeft)
        session.workshop.busy.connect(self._say)
        session.workshop.moved.connect(lambda share: self._bar.setValue(round(share * 100)))
        self._say("")

    def note(self, text: str) -> None:
        """Say what was just done."""
        self._noted = text
        if text:
            self._forget.start()
        self._say(self._doing)

    def told(self) -> str:
        """Give what is said."""
        return self._told.whole()

    def _say(self, text: str) -> None:
        self._doing = text
        # Its room is the job's name while nothing is to be said.
        self.setVisible(bool(text or self._noted))
        self._told.say(self._noted or text)
        self.noting.emit(bool(self._noted))
        self._bar.setValue(0)
        self._bar.setVisible(text == words.FINDING_MIXES and not self._noted)
        self._stop.setVisible(bool(text))
