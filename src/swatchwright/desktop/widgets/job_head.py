"""The head of a job: the piece, the client, what is asked, the light, and how far it is."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QLabel, QWidget

from swatchwright.acts.jobs import change_job
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.widgets.fields import ChoiceField
from swatchwright.desktop.widgets.job_field import LineField, PickField, TextField
from swatchwright.desktop.words import brief as words
from swatchwright.shelf.jobs import Job, Status

__all__ = ["JobHead"]

_BRIEF_LINES, _HIGH = 6, 32


class JobHead(QWidget):
    """Fields of the job on the bench; each is kept as she leaves it."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._id = ""
        self.piece = LineField(words.PIECE, words.PIECE_HINT)
        self.client = LineField(words.CLIENT, words.CLIENT_HINT)
        lights = [words.light_told(light) for light in words.LIGHTS]
        self.light = PickField(words.LIGHT_NAME, words.LIGHT_HINT, lights)
        self.status = ChoiceField()
        self.brief = TextField(words.BRIEF, words.BRIEF_HINT)
        self._lay_out()
        self.piece.left.connect(self._keep_piece)
        self.client.left.connect(lambda text: self._keep(client=text))
        self.light.left.connect(lambda text: self._keep(room_light=words.light_kept(text)))
        self.brief.left.connect(lambda text: self._keep(brief=text))
        self.status.activated.connect(self._keep_status)

    def _lay_out(self) -> None:
        for status, told in words.STATUSES.items():
            self.status.addItem(told, status)
        self.status.setAccessibleName(words.STATUS)
        for field in (self.light, self.status):
            field.setMinimumHeight(_HIGH)
        self.brief.setFixedHeight(_BRIEF_LINES * self.brief.fontMetrics().lineSpacing() + 22)
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(10)
        grid.setVerticalSpacing(8)
        grid.setColumnStretch(1, 1)
        rows = (
            (words.PIECE, self.piece),
            (words.CLIENT, self.client),
            (words.LIGHT, self.light),
            (words.STATUS, self.status),
            (words.BRIEF, self.brief),
        )
        for row, (told, widget) in enumerate(rows):
            label = QLabel(told)
            label.setBuddy(widget)
            label.setObjectName("quiet")
            top = widget is self.brief
            grid.addWidget(label, row, 0, Qt.AlignmentFlag.AlignTop if top else Qt.AlignmentFlag(0))
            grid.addWidget(widget, row, 1)

    def show_job(self, job: Job) -> None:
        """Show a job; of the same one, what she is writing stays."""
        anew = job.id != self._id
        self._id = job.id
        self.piece.show_text(job.title, anew=anew)
        self.client.show_text(job.client, anew=anew)
        self.light.show_text(words.light_told(job.room_light), anew=anew)
        self.brief.show_text(job.brief, anew=anew)
        self.status.setCurrentIndex(self.status.findData(job.status))

    def _keep_piece(self, text: str) -> None:
        """Keep the title; a job without one keeps the one it had."""
        job = self._desk.job
        if text or job is None:
            self._keep(title=text)
        else:
            self.piece.show_text(job.title, anew=True)

    def _keep_status(self, place: int) -> None:
        status = Status(self.status.itemData(place))
        id_ = self._id
        self._desk.edit(lambda store: change_job(store, id_, status=status))

    def _keep(
        self,
        *,
        title: str | None = None,
        client: str | None = None,
        brief: str | None = None,
        room_light: str | None = None,
    ) -> None:
        """Keep a field with the job that is shown, wherever the bench goes meanwhile."""
        id_ = self._id
        self._desk.edit(
            lambda store: change_job(
                store, id_, title=title, client=client, brief=brief, room_light=room_light
            )
        )
