"""What stands in place of the photo until there is one."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QRect, Qt
from PySide6.QtWidgets import QFrame, QLabel, QPushButton, QVBoxLayout

from swatchwright.acts.samples import sample_photos
from swatchwright.desktop import words
from swatchwright.desktop.marks import Marks
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.first_look import PhotoToTake

__all__ = ["PhotoStart"]

_EDGE = 28
_ANY = QRect(0, 0, 9999, 999)


class PhotoStart(QFrame):
    """Says where a photo comes from, and opens a sample."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.setObjectName("sheet")
        rows = QVBoxLayout(self)
        rows.setContentsMargins(_EDGE, _EDGE, _EDGE, _EDGE)
        rows.setSpacing(14)
        rows.addStretch(1)
        rows.addWidget(PhotoToTake(), 3)
        title = self._title = QLabel(words.DROP_TITLE)
        title.setObjectName("big")
        text = QLabel(words.DROP_TEXT)
        for label in (title, text):
            label.setWordWrap(True)
            label.setAlignment(Qt.AlignmentFlag.AlignCenter)
            rows.addWidget(label)
        self.try_sample = QPushButton(words.TRY_SAMPLE)
        self.try_sample.setObjectName("main")
        samples = sample_photos()
        self.try_sample.setVisible(bool(samples))
        if samples:
            first = samples[0]
            marks = Marks(first.grey, first.cloth, first.reflectance)
            self.try_sample.clicked.connect(lambda: session.open(Path(first.path), marks))
        rows.addWidget(self.try_sample, 0, Qt.AlignmentFlag.AlignCenter)
        rows.addStretch(1)

    def unbroken(self) -> int:
        """Give the width, in pixels, at which its title stands in one line."""
        title = self._title
        line = title.fontMetrics().boundingRect(_ANY, 0, title.text())
        return line.width() + 2 * _EDGE
