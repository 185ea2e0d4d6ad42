"""The notes of a job, and a field for another."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QPushButton, QVBoxLayout, QWidget

from swatchwright.acts.jobs import note_job
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.widgets.job_field import TextField
from swatchwright.desktop.words import brief as words
from swatchwright.shelf.jobs import Job

__all__ = ["JobNotes"]

_LINES = 2


class JobNotes(QWidget):
    """Notes with their times, the newest first; a new one is kept as she leaves its field."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._id = ""
        self.new = TextField(words.NOTE_NAME, words.NOTE_HINT, waits=True)
        self.new.setFixedHeight(_LINES * self.new.fontMetrics().lineSpacing() + 26)
        self.new.left.connect(self._keep)
        self.add = QPushButton(words.ADD_NOTE)
        self.add.setObjectName("little")
        self.add.clicked.connect(self.new.keep)
        self.told = QLabel()
        self.told.setWordWrap(True)
        self.told.setTextFormat(Qt.TextFormat.PlainText)
        self.told.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.told.setAccessibleName(words.NOTES)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(8)
        rows.addWidget(self.new)
        rows.addWidget(self.add, 0, Qt.AlignmentFlag.AlignLeft)
        rows.addWidget(self.told)
        rows.addStretch(1)

    def show_job(self, job: Job) -> None:
        """Show the notes of a job."""
        if job.id != self._id:
            self.new.show_text("", anew=True)
        self._id = job.id
        self.told.setText("\n\n".join(words.note_line(note) for note in reversed(job.notes)))
        self.told.setVisible(bool(job.notes))

    def _keep(self, text: str) -> None:
        id_ = self._id
        if text:
            self.new.show_text("", anew=True)
            self._desk.edit(lambda store: note_job(store, id_, text))
