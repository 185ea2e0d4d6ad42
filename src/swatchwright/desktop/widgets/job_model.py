"""The kept jobs as rows of a list."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from PySide6.QtCore import QAbstractListModel, QModelIndex, QObject, QPersistentModelIndex, Qt

from swatchwright.acts.jobs import FoundJob
from swatchwright.desktop.words import brief as words

__all__ = ["FOUND", "HERE", "JobModel"]

Index = QModelIndex | QPersistentModelIndex
_NOWHERE = QModelIndex()

FOUND = Qt.ItemDataRole.UserRole
"""The role of the job as it was found."""

HERE = FOUND + 1
"""The role of whether the job is on the bench."""


class JobModel(QAbstractListModel):
    """Jobs in the order in which they were found; one of them may be on the bench."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._found: tuple[FoundJob, ...] = ()
        self._here: str | None = None

    def show_found(self, found: Sequence[FoundJob]) -> None:
        """Show these jobs; where they are the same ones in the same order, the rows stay."""
        new = tuple(found)
        if [f.line.id for f in new] != [f.line.id for f in self._found]:
            self.beginResetModel()
            self._found = new
            self.endResetModel()
        elif new != self._found:
            self._found = new
            self._all_changed()

    def show_here(self, id_: str | None) -> None:
        """Say which job is on the bench."""
        if id_ != self._here:
            self._here = id_
            self._all_changed()

    def _all_changed(self) -> None:
        if self._found:
            self.dataChanged.emit(self.index(0), self.index(len(self._found) - 1))

    def rowCount(self, parent: Index = _NOWHERE) -> int:
        """Give the number of jobs."""
        return 0 if parent.isValid() else len(self._found)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:  # noqa: ANN401
        """Give the title of a job, all of it for a screen reader, or the job itself."""
        if not index.isValid():
            return None
        found = self._found[index.row()]
        here = found.line.id == self._here
        if role in {Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.ToolTipRole}:
            return found.line.title
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return words.line_name(found.line, found.near, on_bench=here)
        return {FOUND: found, HERE: here}.get(role)

    def row_of(self, id_: str | None) -> int:
        """Give the row of a job; -1 if it is not shown."""
        return next((i for i, found in enumerate(self._found) if found.line.id == id_), -1)

    def job_at(self, row: int) -> str | None:
        """Give the job of a row; None where there is none."""
        return self._found[row].line.id if 0 <= row < len(self._found) else None
