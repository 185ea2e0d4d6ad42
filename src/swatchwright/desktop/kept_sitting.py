"""The sitting on the page of the shelf, kept with the job and laid again as it was left."""

from __future__ import annotations

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QStackedWidget, QWidget

from swatchwright.acts.jobs import keep_document
from swatchwright.acts.sitting import Sitting
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.session import Session
from swatchwright.desktop.sitting_memory import SittingMemory
from swatchwright.desktop.widgets.piece_keeper import Keeper
from swatchwright.desktop.widgets.shelf_sitting import ShelfSitting

__all__ = ["KeptSitting"]

_PART = "sitting"


class KeptSitting(QObject):
    """Holds the sitting, what keeps it with its job, and what remembers how it was left.

    Parameters
    ----------
    session, desk
        The bench, and the jobs.
    stack
        Where the sitting is shown.
    page
        The page that is on.
    """

    def __init__(self, session: Session, desk: Desk, stack: QStackedWidget, page: QWidget) -> None:
        super().__init__(page)
        self._stack, self._page = stack, page
        self.sitting = ShelfSitting(session)
        # It hears of another job before what keeps the sitting does, which shows that job's.
        self.memory = SittingMemory(desk, self.sitting, self.in_view, page)
        self._keeper: Keeper[Sitting] = Keeper(
            page,
            desk,
            read=lambda: desk.part(_PART, Sitting),
            act=lambda value: lambda store, id_: keep_document(store, id_, _PART, value),
            show=lambda value: self.sitting.show_sitting(value or Sitting()),
        )
        self.sitting.changed.connect(self._set)
        self._keeper.begin()
        self.memory.begin()

    def in_view(self) -> bool:
        """Tell whether the page shows the sitting."""
        return self._stack.currentWidget() is self.sitting

    def keep(self) -> None:
        """Keep at once what has been set."""
        self._keeper.keep()

    def _set(self, sitting: Sitting) -> None:
        self._keeper.set(sitting)
        # A reading may come when the page is out of view already.
        if not self._page.isVisible():
            self._keeper.keep()
