"""What all of the window follows: told once where it changes, and done wherever it shows."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QObject, Signal

__all__ = ["Followed"]


class Followed(QObject):
    """Something that all of the window follows.

    Signals
    -------
    changed()
        It is another now.
    """

    changed = Signal()

    def follow(self, follower: QObject, act: Callable[[], object]) -> None:
        """Do something now, and whenever it has changed as long as the follower is there."""
        _Follower(self, follower, act)
        act()


class _Follower(QObject):
    """Goes with what follows, and so does what it is told."""

    def __init__(self, followed: Followed, follower: QObject, act: Callable[[], object]) -> None:
        super().__init__(follower)
        self._act = act
        followed.changed.connect(self.follow)

    def follow(self) -> None:
        """Do it."""
        self._act()
