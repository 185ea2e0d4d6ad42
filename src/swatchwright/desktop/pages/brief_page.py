"""The page of the job: the kept jobs on the left, the one on the bench on the right."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.demo_job import DemoFindings, begin_demo_job, demo_findings
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.pages.page import Page
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.areas import ScrollArea, bring_into_view
from swatchwright.desktop.widgets.bench_area import PageStack
from swatchwright.desktop.widgets.columns import Columns
from swatchwright.desktop.widgets.job_batches import JobBatches
from swatchwright.desktop.widgets.job_colours import JobColours
from swatchwright.desktop.widgets.job_head import JobHead
from swatchwright.desktop.widgets.job_list import JobList
from swatchwright.desktop.widgets.job_notes import JobNotes
from swatchwright.desktop.widgets.job_parts import JobParts
from swatchwright.desktop.widgets.job_photo import JobPhoto
from swatchwright.desktop.widgets.job_welcome import JobWelcome
from swatchwright.desktop.words import brief as words

__all__ = ["BriefPage"]

_JOBS_WIDE = 310


class BriefPage(Page):
    """Jobs are begun, found and opened here, and the one on the bench is filled in."""

    def __init__(self, session: Session, desk: Desk) -> None:
        super().__init__(session, desk, words.HEADING, words.HINT, scrolls=False)
        self.jobs = JobList(session, desk)
        self.welcome = JobWelcome()
        self.head = JobHead(desk)
        self.photo = JobPhoto(desk)
        self.colours = JobColours(session, desk)
        self.batches = JobBatches(session, desk)
        self.notes = JobNotes(desk)
        self.parts = JobParts(desk)
        self.area = ScrollArea()
        self._sides = PageStack()
        self._lay_out()
        self.jobs.begun.connect(self._fill_in)
        self.welcome.begin_wanted.connect(self.jobs.begin.click)
        self.welcome.demo_wanted.connect(self.play)
        desk.job_changed.connect(self._show)
        desk.jobs_changed.connect(self._show_welcome)
        self.jobs.look()
        self._show_welcome()
        self._show()

    def _lay_out(self) -> None:
        sheets = QWidget()
        sheets.setObjectName("bench")
        rows = QVBoxLayout(sheets)
        rows.setContentsMargins(0, 0, 6, 0)
        rows.setSpacing(12)
        head = QHBoxLayout()
        head.setSpacing(20)
        head.addWidget(self.head, 1)
        head.addWidget(self.photo)
        rows.addWidget(_sheet("", head))
        rows.addWidget(_sheet(words.COLOURS, self.colours))
        rows.addWidget(_sheet(words.BATCHES, self.batches))
        below = QGridLayout()
        below.setSpacing(12)
        below.addWidget(_sheet(words.NOTES, self.notes), 0, 0)
        below.addWidget(_sheet(words.ALSO_KEPT, self.parts), 0, 1)
        below.setColumnStretch(0, 3)
        below.setColumnStretch(1, 2)
        rows.addLayout(below)
        rows.addStretch(1)
        self.area.setWidget(sheets)
        self.area.setWidgetResizable(True)
        self.area.setFrameShape(QFrame.Shape.NoFrame)
        self.area.setAccessibleName(words.HEADING)
        self.area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._sides.addWidget(self.welcome)
        self._sides.addWidget(self.area)
        page = QVBoxLayout(self.body)
        page.setContentsMargins(0, 0, 0, 0)
        columns = Columns(14)
        columns.put(self.jobs, wide=_JOBS_WIDE)
        columns.put(self._sides, stretch=1)
        page.addWidget(columns)

    def arrive(self) -> None:
        """Read the list anew: a command may have kept or removed a job meanwhile."""
        self.desk.refresh()

    def _show(self) -> None:
        job = self.desk.job
        self._sides.setCurrentWidget(self.welcome if job is None else self.area)
        if job is None:
            return
        for part in (self.head, self.photo, self.colours, self.batches, self.notes, self.parts):
            part.show_job(job)

    def _show_welcome(self) -> None:
        self.welcome.show_first(first=not self.desk.jobs)

    def _fill_in(self) -> None:
        """Let her name a job that was just begun."""
        self.area.verticalScrollBar().setValue(0)
        bring_into_view(self.head)
        self.head.piece.setFocus(Qt.FocusReason.OtherFocusReason)
        self.head.piece.selectAll()

    def bring_in(self, path: Path) -> None:
        """Bring in a job from its file."""
        self.jobs.bring_in(path)

    def play(self) -> None:
        """Make the job of the demonstration and lay it on the bench."""

        def done(found: DemoFindings) -> None:
            self.desk.begin(lambda store: begin_demo_job(store, found))

        self.session.workshop.start(
            "demo job",
            words.PREPARING_DEMO,
            lambda job: demo_findings(progress=job.progress, stopped=job.stopped),
            done,
        )


def _sheet(heading: str, inside: QWidget | QHBoxLayout) -> QFrame:
    """Put something on a sheet of its own, below its heading."""
    sheet = QFrame()
    sheet.setObjectName("sheet")
    rows = QVBoxLayout(sheet)
    rows.setContentsMargins(16, 14, 16, 16)
    rows.setSpacing(10)
    if heading:
        told = QLabel(heading)
        told.setObjectName("heading")
        rows.addWidget(told)
    if isinstance(inside, QWidget):
        rows.addWidget(inside, 1)
    else:
        rows.addLayout(inside)
    return sheet
