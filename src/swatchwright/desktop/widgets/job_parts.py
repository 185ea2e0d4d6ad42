"""What other pages keep with a job, a line each, with the way there."""

from __future__ import annotations

from PySide6.QtWidgets import QGridLayout, QLabel, QPushButton, QWidget

from swatchwright.acts.job_told import told_parts
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.words import brief as words
from swatchwright.shelf.jobs import Document, Job

__all__ = ["JobParts"]


class JobParts(QWidget):
    """A line for the piece, the plan, the finish and the samples, each where it is kept."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._shown: tuple[tuple[str, Document], ...] | None = None
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setVerticalSpacing(4)
        grid.setColumnStretch(0, 1)
        self.rows: dict[str, tuple[QLabel, QPushButton]] = {}
        for row, (part, (told, page)) in enumerate(words.PARTS.items()):
            label, go = QLabel(told), QPushButton(words.GO_THERE)
            label.setWordWrap(True)
            go.setObjectName("little")
            go.setAccessibleName(words.go_name(told))
            go.clicked.connect(lambda _=False, key=page: desk.page_wanted.emit(key))
            grid.addWidget(label, row, 0)
            grid.addWidget(go, row, 1)
            self.rows[part] = (label, go)
        self.none = QLabel(words.NO_PARTS)
        self.none.setObjectName("quiet")
        self.none.setWordWrap(True)
        grid.addWidget(self.none, len(words.PARTS), 0, 1, 2)
        grid.setRowStretch(len(words.PARTS) + 1, 1)

    def show_job(self, job: Job) -> None:
        """Show which parts a job has."""
        if job.documents == self._shown:
            return
        self._shown = job.documents
        told = told_parts(job)
        for part, (label, go) in self.rows.items():
            label.setText(words.part_line(words.PARTS[part][0], told.get(part, "")))
            label.setVisible(part in told)
            go.setVisible(part in told)
        self.none.setVisible(not told.keys() & self.rows.keys())
