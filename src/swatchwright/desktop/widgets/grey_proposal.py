"""Asking whether a likely grey is the grey card; nothing is used before she says so."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from swatchwright.acts.colours import propose_greys
from swatchwright.acts.sample_grey import overlaps
from swatchwright.desktop.widgets.shelf_bits import button, label
from swatchwright.desktop.words import photo as words
from swatchwright.desktop.workers import Workshop
from swatchwright.photo.image import Photo
from swatchwright.values import Rect

__all__ = ["GreyProposal"]


class GreyProposal(QWidget):
    """Looks for greys in a photo, and asks about one after the other.

    Parameters
    ----------
    workshop, kind
        Where they are looked for, and under which kind of work.
    show
        Shows on the photo what is asked about; None for nothing.

    Signals
    -------
    changed()
        Something is asked, or nothing more.
    agreed(Rect)
        That is the grey card.
    left()
        None of them is: the photo has the focus again.
    """

    changed = Signal()
    agreed = Signal(object)
    left = Signal()

    def __init__(self, workshop: Workshop, kind: str, show: Callable[[Rect | None], None]) -> None:
        super().__init__()
        self._workshop, self._kind, self._on_photo = workshop, kind, show
        self._photo: Photo | None = None
        self._likely: tuple[Rect, ...] = ()
        self._marked: Rect | None = None
        self.yes = button(words.YES, self._agree, "little", tip=words.YES_TIP)
        self.no = button(words.NO, self._next, "little", tip=words.NO_TIP)
        for one in (self.yes, self.no):
            one.setAccessibleName(f"{words.PROPOSED} {one.text()}")
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(6)
        row.addWidget(label(words.PROPOSED, "strong"), 1)
        row.addWidget(self.yes)
        row.addWidget(self.no)
        self.hide()

    @property
    def asked(self) -> Rect | None:
        """The place that is asked about; None if nothing is."""
        return self._likely[0] if self._likely else None

    def look(self, photo: Photo | None) -> None:
        """Look once for greys in a photo without marks; None stops asking."""
        if photo is not None and photo is self._photo:
            return
        self._photo, self._marked = photo, None
        self._ask(())
        if photo is None:
            self._workshop.stop(self._kind)
            return

        def done(found: tuple[Rect, ...]) -> None:
            if self._photo is photo:
                self._ask(found)
                self.mark(self._marked)

        self._workshop.start(
            self._kind, words.LOOKING_FOR_GREYS, lambda _: propose_greys(photo), done, _leave
        )

    def mark(self, rect: Rect | None) -> None:
        """Ask no more once a grey is marked where one is likely; elsewhere go on asking."""
        self._marked = rect
        if rect is not None and any(overlaps(rect, likely) for likely in self._likely):
            self._ask(())

    def _agree(self) -> None:
        rect = self.asked
        if rect is not None:
            self._ask(())
            self.agreed.emit(rect)

    def _next(self) -> None:
        self._ask(self._likely[1:])
        if self.asked is None:
            self.left.emit()

    def _ask(self, likely: tuple[Rect, ...]) -> None:
        self._likely = likely
        self._on_photo(self.asked)
        self.setVisible(self.asked is not None)
        self.changed.emit()


def _leave(_: object) -> None:
    """Ask nothing where no grey can be looked for."""
