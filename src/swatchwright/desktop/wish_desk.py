"""Wishes for the mixes, kept with the job on the bench; without a job they hold until the end."""

from __future__ import annotations

from PySide6.QtCore import QObject

from swatchwright.acts.jobs import Changes, keep_document
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.session import Session
from swatchwright.mixing.wishes import Wishes

__all__ = ["PART", "WishDesk"]

PART = "wishes"
"""The part of a job that holds them."""


class WishDesk(QObject):
    """Goes between the wishes of the session and the job of the desk.

    What is wished is one step to undo: of the job's where there is one, of the bench where not.
    """

    def __init__(self, session: Session, desk: Desk) -> None:
        super().__init__(desk)
        self._session, self._desk = session, desk
        self._job = None if desk.job is None else desk.job.id
        self._on_the_way = 0
        desk.job_changed.connect(self._follow)
        desk.failed.connect(self._lost)

    @classmethod
    def of(cls, session: Session, desk: Desk) -> WishDesk:
        """Give the one of a desk."""
        found = desk.findChild(cls)
        return found if isinstance(found, cls) else cls(session, desk)

    def wish(self, wishes: Wishes) -> None:
        """Ask something else of all mixes."""
        if wishes == self._session.wishes:
            return
        if self._desk.job is None:
            self._session.wish(wishes)
        else:
            self._session.take_wishes(wishes)
            self._keep(self._desk.job.id, wishes)

    def _keep(self, job: str, wishes: Wishes) -> None:
        self._on_the_way += 1
        self._desk.edit(lambda store: keep_document(store, job, PART, wishes), self._arrived)

    def _arrived(self, changes: Changes) -> None:
        del changes
        self._on_the_way = max(0, self._on_the_way - 1)

    def _lost(self, what: object) -> None:
        del what
        self._on_the_way = 0

    def _follow(self) -> None:
        """Take up the wishes of the job, but for what is still on its way to it."""
        job = self._desk.job
        before, self._job = self._job, None if job is None else job.id
        if job is None or (self._on_the_way and before == job.id):
            return
        kept = self._desk.part(PART, Wishes)
        if kept is None and before is None and self._session.wishes != Wishes():
            # A job is begun with what was wished before it.
            self._keep(job.id, self._session.wishes)
            return
        self._session.take_wishes(kept or Wishes())
