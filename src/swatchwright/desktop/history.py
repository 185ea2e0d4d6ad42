"""What was done, in its order, so that it can be taken back and done again."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import QObject, Signal

__all__ = ["History"]

_MOST = 500


@dataclass(frozen=True, slots=True)
class _Done:
    """Something that was done: its plain words, and how to take it back and do it again.

    What lasts does not depend on the photo on the bench.
    """

    label: str
    back: Callable[[], None]
    forth: Callable[[], None]
    lasting: bool


class History(QObject):
    """One line of all that was done on the bench, whoever did it.

    Signals
    -------
    changed()
        Something was done, taken back, done again or forgotten.
    """

    changed = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._past: list[_Done] = []
        self._future: list[_Done] = []

    def add(
        self,
        label: str,
        back: Callable[[], None],
        forth: Callable[[], None],
        *,
        lasting: bool = False,
    ) -> None:
        """Note something that was just done; what had been taken back can no longer be redone.

        Parameters
        ----------
        label
            Its plain words.
        back, forth
            Take it back, do it again.
        lasting
            Whether it is still to be taken back when another photo is on the bench.
        """
        self._past = [*self._past, _Done(label, back, forth, lasting)][-_MOST:]
        self._future.clear()
        self.changed.emit()

    def undo(self) -> None:
        """Take the last thing back."""
        if self._past:
            done = self._past.pop()
            self._future.append(done)
            done.back()
            self.changed.emit()

    def redo(self) -> None:
        """Do again what was taken back last."""
        if self._future:
            done = self._future.pop()
            self._past.append(done)
            done.forth()
            self.changed.emit()

    def forget(self) -> None:
        """Begin anew with another photo: only what lasts can still be undone and redone."""
        self._past = [done for done in self._past if done.lasting]
        self._future = [done for done in self._future if done.lasting]
        self.changed.emit()

    @property
    def last(self) -> str:
        """The words for what would be taken back; empty if nothing."""
        return self._past[-1].label if self._past else ""

    @property
    def next(self) -> str:
        """The words for what would be done again; empty if nothing."""
        return self._future[-1].label if self._future else ""
