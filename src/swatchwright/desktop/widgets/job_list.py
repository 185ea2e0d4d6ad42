"""The kept jobs: found by words or by colour, begun, copied, removed, brought in and given out."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QItemSelectionModel, QSignalBlocker, Qt, QTimer, Signal
from PySide6.QtGui import QKeySequence, QPainter, QPaintEvent, QPen, QResizeEvent, QShortcut
from PySide6.QtWidgets import (
    QCheckBox,
    QFrame,
    QGridLayout,
    QLabel,
    QLineEdit,
    QListView,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.job_files import export_job, import_job
from swatchwright.acts.jobs import FoundJob, copy_job, find_jobs, new_job, remove_job
from swatchwright.desktop import words as common
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.files import ask_open, ask_save
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.job_model import JobModel
from swatchwright.desktop.widgets.job_row import JobRow
from swatchwright.desktop.words import brief as words
from swatchwright.shelf.job_file import SUFFIX

__all__ = ["JobList"]

_PAUSE = 250
"""ms without a key until jobs are looked for."""


class JobList(QFrame):
    """A list of jobs; pressing one lays it on the bench.

    Signals
    -------
    begun()
        A job was begun: its first field is to be filled in.
    """

    begun = Signal()

    def __init__(self, session: Session, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("sheet")
        self._session, self._desk = session, desk
        self.sought = QLineEdit()
        self.like = QCheckBox(words.LIKE)
        self.view = _View()
        self.model = JobModel(self)
        self.told = QLabel()
        self.begin = _button(words.BEGIN, words.BEGIN_TIP, self._begin)
        self.copy = _button(words.COPY, words.COPY_TIP, self._copy)
        self.remove = _button(words.REMOVE, words.REMOVE_TIP, self._remove)
        self.take_in = _button(words.BRING_IN, words.BRING_IN_TIP, self._ask_in)
        self.give = _button(words.GIVE_OUT, words.GIVE_OUT_TIP, self._ask_out)
        self._timer = QTimer(self)
        self._lay_out()
        self._connect()
        self._show_like()

    def _lay_out(self) -> None:
        rows = QVBoxLayout(self)
        rows.setContentsMargins(12, 12, 12, 12)
        rows.setSpacing(8)
        self.sought.setObjectName("typed")
        self.sought.setPlaceholderText(words.FIND_HINT)
        self.sought.setAccessibleName(words.FIND)
        self.sought.setClearButtonEnabled(True)
        self.view.setAccessibleName(words.JOBS)
        self.view.setModel(self.model)
        self.view.setItemDelegate(JobRow(self.view))
        self.told.setObjectName("quiet")
        self.told.setWordWrap(True)
        for widget in (self.sought, self.like):
            rows.addWidget(widget)
        rows.addWidget(self.view, 1)
        rows.addWidget(self.told)
        grid = QGridLayout()
        grid.setSpacing(6)
        grid.addWidget(self.begin, 0, 0, 1, 2)
        for place, button in enumerate((self.copy, self.remove, self.take_in, self.give)):
            grid.addWidget(button, 1 + place // 2, place % 2)
        rows.addLayout(grid)

    def _connect(self) -> None:
        self._timer.setSingleShot(True)
        self._timer.setInterval(_PAUSE)
        self._timer.timeout.connect(self.look)
        self.sought.textChanged.connect(self._timer.start)
        self.like.toggled.connect(self.look)
        self.view.clicked.connect(lambda index: self._open(index.row()))
        self.view.activated.connect(lambda index: self._open(index.row()))
        self._desk.jobs_changed.connect(self.look)
        self._desk.job_changed.connect(self._show_here)
        for signal in (self._session.pick_changed, self._session.colours_changed):
            signal.connect(self._show_like)
        delete = QShortcut(QKeySequence(Qt.Key.Key_Delete), self.view)
        delete.setContext(Qt.ShortcutContext.WidgetShortcut)
        delete.activated.connect(self._remove)

    # --- finding ---------------------------------------------------------------------------------

    def look(self) -> None:
        """Look for the jobs anew."""
        text, wanted = self.sought.text().strip(), self._session.wanted
        like = wanted.lab if wanted is not None and self.like.isChecked() else None
        if not text and like is None:
            self._show(tuple(FoundJob(line) for line in self._desk.jobs))
            return
        self._desk.ask(lambda store: find_jobs(store, text=text, like=like), self._show)

    def _show(self, found: tuple[FoundJob, ...]) -> None:
        self.model.show_found(found)
        nothing = words.NONE_LIKE if self.like.isChecked() else words.NONE_FOUND
        self.told.setText("" if found or not self._desk.jobs else nothing)
        self.told.setVisible(bool(self.told.text()))
        self._show_here()

    def _show_here(self) -> None:
        """Show which job is on the bench, and pick its row."""
        job = self._desk.job
        here = None if job is None else job.id
        self.model.show_here(here)
        row = self.model.row_of(here)
        if row >= 0:
            with QSignalBlocker(self.view.selectionModel()):
                self.view.selectionModel().setCurrentIndex(
                    self.model.index(row), QItemSelectionModel.SelectionFlag.ClearAndSelect
                )
            self.view.viewport().update()
        for button in (self.copy, self.remove, self.give):
            button.setEnabled(self.model.rowCount() > 0)

    def _show_like(self) -> None:
        """Let jobs be sought by colour once a colour is wanted."""
        wanted = self._session.wanted is not None
        self.like.setEnabled(wanted)
        self.like.setToolTip(words.LIKE_TIP if wanted else words.LIKE_NOTHING)
        if self.like.isChecked():
            self.look()

    # --- acts ------------------------------------------------------------------------------------

    def _picked(self) -> str | None:
        """Give the job that is picked in the list, else the one on the bench."""
        picked = self.model.job_at(self.view.currentIndex().row())
        return self._desk.job.id if picked is None and self._desk.job is not None else picked

    def _open(self, row: int) -> None:
        id_ = self.model.job_at(row)
        if id_ is not None and (self._desk.job is None or self._desk.job.id != id_):
            self._desk.open_job(id_)

    def _begin(self) -> None:
        self.sought.clear()
        self._desk.begin(
            lambda store: new_job(store, title=common.UNTITLED), lambda _: self.begun.emit()
        )

    def _copy(self) -> None:
        id_ = self._picked()
        if id_ is not None:
            self._desk.begin(lambda store: copy_job(store, id_), lambda _: self.begun.emit())

    def _remove(self) -> None:
        id_ = self._picked()
        if id_ is not None:
            self._desk.edit(
                lambda store: remove_job(store, id_), lambda _: self._say(words.REMOVED)
            )

    def bring_in(self, path: Path) -> None:
        """Bring in a job from its file and lay it on the bench; what is to be minded is said."""
        self._desk.begin(
            lambda store: import_job(store, path), lambda changes: self._say(*changes.warnings)
        )

    def give_out(self, path: Path) -> None:
        """Write the picked job to one file."""
        id_ = self._picked()
        if id_ is not None:
            self._desk.ask(
                lambda store: export_job(store, id_, path),
                lambda written: self._say(words.written_file(written.name)),
            )

    def _say(self, *sentences: str) -> None:
        self.told.setText(" ".join(sentences))
        self.told.setVisible(bool(sentences))

    def _ask_in(self) -> None:
        name, _ = ask_open(self, words.BRING_IN_TIP, "", words.JOB_FILES)
        if name:
            self.bring_in(Path(name))

    def _ask_out(self) -> None:
        start = f"{self._picked()}{SUFFIX}"
        name, _ = ask_save(self, words.GIVE_OUT_TIP, start, words.JOB_FILES)
        if name:
            self.give_out(Path(name))


class _View(QListView):
    """A list whose rows are laid anew when their width changes, so that their text wraps."""

    def __init__(self) -> None:
        super().__init__()
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setSpacing(0)
        self.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setMinimumHeight(120)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lay the rows anew."""
        super().resizeEvent(event)
        self.scheduleDelayedItemsLayout()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the rows; without any, show the focus, which else is in one of them."""
        super().paintEvent(event)
        if self.hasFocus() and not self.model().rowCount():
            painter = QPainter(self.viewport())
            painter.setPen(QPen(self.palette().text().color(), 2))
            painter.drawRect(self.viewport().rect().adjusted(1, 1, -1, -1))
            painter.end()


def _button(text: str, tip: str, act: object) -> QPushButton:
    button = QPushButton(text)
    button.setAccessibleDescription(tip)
    button.setToolTip(tip)
    button.clicked.connect(act)
    return button
