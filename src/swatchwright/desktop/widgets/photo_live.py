"""Following the grey card while its box is dragged: colours and picture at once, the rest later."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QObject, QTimer, Signal

from swatchwright.acts.live import follow_grey
from swatchwright.acts.live_picture import relit
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.photo_view import Mark, Which
from swatchwright.desktop.words import photo as words
from swatchwright.errors import MendableError
from swatchwright.values import Rect

__all__ = ["SMALL_PREVIEW", "LiveGrey"]

SMALL_PREVIEW = 900
"""Pixels of the longer side of the picture that is put right anew with every move."""

_NEXT = 15
_RESTED = 200
"""ms from a move to its showing, and from the last one to the full reading."""


class LiveGrey(QObject):
    """Between the dragged box and what is shown of it.

    Signals
    -------
    followed(object, object)
        The `FollowedGrey` and the small picture in its light, bytes (rows, columns, 3) or None.
    told(str)
        What is wrong with where the box is now; empty where nothing is.
    """

    followed = Signal(object, object)
    told = Signal(str)

    def __init__(self, session: Session, parent: QObject) -> None:
        super().__init__(parent)
        self._session = session
        self.small: NDArray[np.uint8] | None = None
        self.shows_picture = True
        self._rect: Rect | None = None
        self._next = _timer(self, _NEXT, self._follow)
        self._rest = _timer(self, _RESTED, self._read)

    @property
    def moving(self) -> bool:
        """Whether the box is on the move, so that what is read for where it was is late."""
        return self._rest.isActive()

    def drag(self, mark: Which, rect: Rect | None) -> None:
        """Take where a box is now; None where it was let go as it had been."""
        if mark is not Mark.GREY:
            return
        if rect is None:
            moved, self._rect = self._rect is not None, None
            self._stand()
            if moved:
                self.put_back()
            return
        # What is being read for another place is of no use any more.
        self._session.workshop.stop("colours")
        self._rect = rect
        self._rest.start()
        if not self._next.isActive():
            self._next.start()

    def let_go(self, rect: Rect | None) -> None:
        """End a drag whose box has been set: it is read by the session."""
        self._rect = rect
        if rect is not None:
            self._follow()
        self._rect = None
        self._stand()

    def put_back(self) -> None:
        """Read the colours for the mark that is set."""
        if self._session.found is not None:
            self._session.read_meanwhile(self._session.marks.grey)

    def _stand(self) -> None:
        self._next.stop()
        self._rest.stop()
        self.told.emit("")

    def _follow(self) -> None:
        found, rect = self._session.found, self._rect
        if found is None or rect is None:
            return
        try:
            seen = follow_grey(found, rect, reflectance=self._session.marks.reflectance)
        except MendableError:
            self.told.emit(words.NOT_THERE)
            return
        self.told.emit(words.NOT_EVEN if seen.warnings else "")
        shows = self.shows_picture and self.small is not None
        picture = relit(self.small, seen.gains) if shows and self.small is not None else None
        self.followed.emit(seen, picture)

    def _read(self) -> None:
        """Read the colours in full, now that the hand rests."""
        if self._rect is not None and self._session.found is not None:
            self._session.read_meanwhile(self._rect)


def _timer(parent: QObject, ms: int, act: object) -> QTimer:
    made = QTimer(parent)
    made.setSingleShot(True)
    made.setInterval(ms)
    made.timeout.connect(act)
    return made
