"""The batches of a job: made again for any volume, and taken back."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.batch_offer import offered_volume
from swatchwright.acts.batches import make_batch, take_back_batch
from swatchwright.acts.jobs import Changes
from swatchwright.acts.mixes_in_use import mixes_in_use
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.fields import ChoiceField, NumberField
from swatchwright.desktop.widgets.job_field import LineField
from swatchwright.desktop.words import brief as words
from swatchwright.desktop.words.keeping import zone_item
from swatchwright.shelf.jobs import Batch, Job

__all__ = ["JobBatches"]

_SHOWN, _HIGH = 12, 32


class JobBatches(QWidget):
    """Notes a batch by the kept mix of a zone, and lists those that were made, the newest first."""

    def __init__(self, session: Session, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session, self._desk = session, desk
        self._job: Job | None = None
        self._typed = self._offering = False
        self.volume = NumberField()
        self.zone = ChoiceField()
        self._for = QLabel(words.BATCH_FOR)
        self.note = LineField(words.BATCH_NOTE, words.BATCH_NOTE)
        self.make = QPushButton(words.MAKE_BATCH)
        self.warned = QLabel()
        self.warned.setObjectName("warn")
        self.warned.setWordWrap(True)
        self.warned.hide()
        self.none = QLabel(words.NO_BATCHES)
        self.none.setObjectName("quiet")
        self.backs: dict[int, QPushButton] = {}
        self._list = QGridLayout()
        self._tools = QWidget()
        self._lay_out()

    def _lay_out(self) -> None:
        self.volume.setRange(1, 100_000)
        self.volume.setDecimals(0)
        self.volume.setSingleStep(50)
        self.volume.setSuffix(" ml")
        self.volume.valueChanged.connect(self._changed_by_hand)
        self.zone.activated.connect(self._another_zone)
        self.volume.setAccessibleName(words.BATCH_OF)
        self.zone.setAccessibleName(words.BATCH_FOR)
        self.zone.setAccessibleDescription(words.BATCH_FOR)
        for box in (self.volume, self.zone):
            box.setMinimumHeight(_HIGH)
        self.make.setToolTip(f"<p>{words.MAKE_BATCH_TIP}</p>")
        self.make.setAccessibleDescription(words.MAKE_BATCH_TIP)
        self.make.clicked.connect(self._make)
        row = QHBoxLayout(self._tools)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        told = QLabel(words.BATCH_OF)
        told.setBuddy(self.volume)
        for widget in (told, self.volume, self._for, self.zone):
            row.addWidget(widget)
        row.addWidget(self.note, 1)
        row.addWidget(self.make)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(8)
        for below in (self._tools, self.warned, self.none):
            rows.addWidget(below)
        self._list.setHorizontalSpacing(10)
        self._list.setVerticalSpacing(6)
        self._list.setColumnStretch(0, 1)
        rows.addLayout(self._list)

    def show_job(self, job: Job) -> None:
        """Show the batches of a job; the amount is offered until she gives another."""
        before, self._job = self._job, job
        if before is None or before.id != job.id:
            self.warned.hide()
            self.note.clear()
            self._typed = False
        zones = [recipe.zone for recipe in mixes_in_use(job)]
        self._show_zones(zones)
        self._tools.setVisible(bool(zones))
        if before is None or before.id != job.id or before.batches != job.batches:
            self._show_batches(job.batches)
        if before != job:
            self._offer()

    def _offer(self) -> None:
        """Offer what the piece takes, or was mixed last, unless she has given an amount."""
        job, zone = self._job, self.zone.currentData()
        if job is None or zone is None or self._typed:
            return
        shelf = self._session.shelf
        self._desk.ask(
            lambda store: offered_volume(store, job.id, zone, shelf),
            lambda ml: self._offered(job.id, zone, ml),
        )

    def _offered(self, job: str, zone: str, ml: float) -> None:
        here = self._job is not None and self._job.id == job and self.zone.currentData() == zone
        if here and not self._typed:
            self._offering = True
            self.volume.setValue(ml)
            self._offering = False

    def _changed_by_hand(self) -> None:
        if not self._offering:
            self._typed = True

    def _another_zone(self) -> None:
        self._typed = False
        self._offer()

    def _show_zones(self, zones: list[str]) -> None:
        if [self.zone.itemData(i) for i in range(self.zone.count())] != zones:
            self.zone.clear()
            for zone in zones:
                self.zone.addItem(zone_item(zone), zone)
        for widget in (self._for, self.zone):
            widget.setVisible(len(zones) > 1)

    def _show_batches(self, batches: tuple[Batch, ...]) -> None:
        while self._list.count():
            item = self._list.takeAt(0)
            widget = None if item is None else item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        self.backs = {}
        self.none.setVisible(not batches)
        for row, batch in enumerate(batches[: -_SHOWN - 1 : -1]):
            self._add(row, batch)
        earlier = words.earlier_batches(max(0, len(batches) - _SHOWN))
        if earlier:
            self._list.addWidget(QLabel(earlier), _SHOWN, 0)

    def _add(self, row: int, batch: Batch) -> None:
        told = QLabel(f"{words.batch_head(batch)}\n{words.batch_poured(batch)}")
        told.setWordWrap(True)
        told.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        back = QPushButton(words.TAKE_BACK)
        back.setObjectName("little")
        back.setAccessibleName(words.take_back_name(batch))
        back.clicked.connect(lambda: self._take_back(batch.number))
        self.backs[batch.number] = back
        self._list.addWidget(told, row, 0)
        self._list.addWidget(back, row, 1, Qt.AlignmentFlag.AlignTop)

    def _make(self) -> None:
        job = self._job
        if job is None:
            return
        self.volume.interpretText()
        volume, zone = self.volume.value(), self.zone.currentData()
        note, shelf = self.note.text(), self._session.shelf

        def done(changes: Changes) -> None:
            self._typed = False
            self.note.clear()
            self._warn(changes)

        self._desk.edit(
            lambda store: make_batch(
                store, job.id, volume=volume, zone=zone, note=note, in_use=shelf
            ),
            done,
        )

    def _take_back(self, number: int) -> None:
        job = self._job
        if job is not None:
            self._desk.edit(lambda store: take_back_batch(store, job.id, number), self._warn)

    def _warn(self, changes: Changes) -> None:
        """Say what is to be minded of what was just done."""
        self.warned.setText(" ".join(changes.warnings))
        self.warned.setVisible(bool(changes.warnings))
