"""What she works in stays where it is on the screen, whatever comes, goes or grows above it."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QPoint, QTimer
from PySide6.QtWidgets import QApplication, QScrollArea, QWidget
from shiboken6 import isValid

__all__ = ["KeptPlace"]

_SETTLED = 300
"""ms after which what is too near the top to be put back is let be: it would slide once more."""

_MOVES = {QEvent.Type.Move, QEvent.Type.Resize}


class KeptPlace(QObject):
    """Scrolls an area by as much as what has the keyboard was moved, so that it stays in place.

    A press is aimed a moment before it lands: a row that slides meanwhile gets what was meant for
    another. Where the area ends too soon for that, it is given empty room below, which goes when it
    is scrolled out of view. What she scrolls herself is scrolled.

    Parameters
    ----------
    area
        What is scrolled.
    """

    def __init__(self, area: QScrollArea) -> None:
        super().__init__(area)
        self._area = area
        self._chain: list[QWidget] = []
        self._high = self._room = 0
        self._ours = self._bound = self._anew = False
        self._soon, self._late = QTimer(self), QTimer(self)
        for timer, ms, act in ((self._soon, 0, self._put_back), (self._late, _SETTLED, self._note)):
            timer.setSingleShot(True)
            timer.setInterval(ms)
            timer.timeout.connect(act)
        bar = area.verticalScrollBar()
        bar.rangeChanged.connect(self._range_changed)
        bar.valueChanged.connect(self._scrolled)
        application = QApplication.instance()
        if isinstance(application, QApplication):
            application.focusChanged.connect(self._focus_moved)

    def _focus_moved(self, _: QWidget | None, now: QWidget | None) -> None:
        inside = self._area.widget()
        if now is not None and inside is not None and inside.isAncestorOf(now):
            self._hold(now)
        else:
            self._release()

    def _hold(self, held: QWidget) -> None:
        """Watch a widget and all it stands in, up to the window."""
        self._release()
        around: QWidget | None = held
        while around is not None:
            self._chain.append(around)
            around.installEventFilter(self)
            around = None if around.isWindow() else around.parentWidget()
        self._note()

    def _release(self) -> None:
        for watched in self._chain:
            if isValid(watched):
                watched.removeEventFilter(self)
        self._chain = []
        self._soon.stop()
        self._late.stop()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Look once all has its place where something has moved."""
        if event.type() in _MOVES and self._chain and not self._ours:
            # A window of another size has everything elsewhere.
            self._anew |= watched is self._chain[-1]
            self._soon.start()
        return False

    def _place(self) -> int | None:
        """Give how far below the top of the window it stands, in pixels; None where it is gone."""
        held = self._chain[0] if self._chain else None
        if held is None or not isValid(held) or not held.isVisible():
            return None
        return held.mapTo(held.window(), QPoint(0, 0)).y()

    def _note(self) -> None:
        """Take the place that it has now for the one it is to have."""
        place = self._place()
        if place is not None:
            self._high = place

    def _put_back(self) -> None:
        place, anew = self._place(), self._anew
        self._anew = False
        if place is None or anew:
            self._note()
            return
        bar = self._area.verticalScrollBar()
        wanted = bar.value() + place - self._high
        if wanted > bar.maximum():
            self._give_room(self._room + wanted - bar.maximum())
        if wanted < 0:
            self._late.start()
        self._set(wanted)

    def _set(self, value: int) -> None:
        self._ours = True
        self._area.verticalScrollBar().setValue(value)
        self._ours = False

    def _range_changed(self, _: int, most: int) -> None:
        self._bound = self._area.verticalScrollBar().value() > most
        if self._chain and not self._ours:
            self._soon.start()

    def _scrolled(self) -> None:
        """Take what she scrolls for the place to have, and give up room that is out of view."""
        if self._bound:
            self._bound = False
            return
        if not self._ours:
            self._note()
            bar = self._area.verticalScrollBar()
            if self._room:
                self._give_room(max(0, self._room - (bar.maximum() - bar.value())))

    def _give_room(self, room: int) -> None:
        """Have so many pixels of empty room below all that is in the area."""
        inside = self._area.widget()
        layout = None if inside is None else inside.layout()
        if layout is None or inside is None or room == self._room:
            return
        edges = layout.contentsMargins()
        edges.setBottom(edges.bottom() + room - self._room)
        self._room = room
        layout.setContentsMargins(edges)
