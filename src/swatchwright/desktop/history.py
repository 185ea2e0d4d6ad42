"""What was done, in its order, so that it can be taken back and done again."""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QObject, Signal

__all__ = ["History", "kind_of"]

_MOST = 500
_KINDS = 20


@dataclass(frozen=True, slots=True)
class _Done:
    """Something that was done: its plain words, and how to take it back and do it again.

    What lasts does not depend on the photo on the bench. Its kind is the program's name for it.
    What is recalled was done before the window was opened.
    """

    label: str
    back: Callable[[], None]
    forth: Callable[[], None]
    lasting: bool
    kind: str
    recalled: bool = False


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
        self._kinds: deque[str] = deque(maxlen=_KINDS)

    def add(
        self,
        label: str,
        back: Callable[[], None],
        forth: Callable[[], None],
        *,
        lasting: bool = False,
        kind: str = "",
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
        kind
            The program's name for it, which holds nothing of hers; by default where it was done.
        """
        kind = kind or kind_of(forth)
        self._past = [*self._past, _Done(label, back, forth, lasting, kind)][-_MOST:]
        self._kinds.append(kind)
        self._future.clear()
        self.changed.emit()

    def recall(
        self,
        past: Sequence[str],
        future: Sequence[str],
        back: Callable[[], None],
        forth: Callable[[], None],
    ) -> None:
        """Note what was done before the window was opened, unless something was done since.

        Parameters
        ----------
        past, future
            Plain words of what can be undone, and redone, in the order of doing so.
        back, forth
            Take any of it back, do it again.
        """
        if self._past or self._future or self._kinds:
            return

        def done(label: str) -> _Done:
            return _Done(label, back, forth, lasting=True, kind=kind_of(forth), recalled=True)

        self._past = [done(label) for label in reversed(past)]
        self._future = [done(label) for label in reversed(future)]
        self.changed.emit()

    def undo(self) -> None:
        """Take the last thing back."""
        if self._past:
            done = self._past.pop()
            self._future.append(done)
            self._kinds.append(f"undo {done.kind}")
            done.back()
            self.changed.emit()

    def redo(self) -> None:
        """Do again what was taken back last."""
        if self._future:
            done = self._future.pop()
            self._past.append(done)
            self._kinds.append(f"redo {done.kind}")
            done.forth()
            self.changed.emit()

    def forget(self) -> None:
        """Begin anew with another photo: only what lasts can still be undone and redone."""
        self._past = [done for done in self._past if done.lasting]
        self._future = [done for done in self._future if done.lasting]
        self.changed.emit()

    def kinds(self) -> tuple[str, ...]:
        """Give the kinds of what was done last, the newest last, for a report of a fault."""
        return tuple(self._kinds)

    @property
    def by_hand(self) -> bool:
        """Whether something that can be undone was done since the window was opened."""
        return any(not done.recalled for done in self._past)

    @property
    def last(self) -> str:
        """The words for what would be taken back; empty if nothing."""
        return self._past[-1].label if self._past else ""

    @property
    def next(self) -> str:
        """The words for what would be done again; empty if nothing."""
        return self._future[-1].label if self._future else ""


def kind_of(act: Callable[..., object]) -> str:
    """Give the program's name for an act: where in it the act was written down."""
    name = getattr(act, "__qualname__", type(act).__qualname__)
    return name.partition(".<locals>")[0]
