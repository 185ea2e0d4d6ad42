"""Which shelf is in use on the bench: her kept paints, or others for now, which are remembered.

What samples taught its paints is not part of a shelf, and stays with them: where a shelf is taken
again, or is renewed because something of it was changed, its paints are taught again.
"""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QObject, QTimer

from swatchwright.acts.bench_shelf import alike, other_than
from swatchwright.acts.jobs import Store
from swatchwright.acts.sample_lessons import Lesson, learnt_since, taught_again
from swatchwright.acts.shelf_used import ShelfFrom, TakenShelf, UsedShelf, taken_again
from swatchwright.acts.stock import put_paints
from swatchwright.desktop.bench_memory import BenchMemory
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.session import Session
from swatchwright.errors import MendableError
from swatchwright.shelf.shelf import Shelf

__all__ = ["ShelfKeeping"]

_BUSY = ("photo", "colours", "mixes")
_PATIENCE = 60


class ShelfKeeping(QObject):
    """Takes shelves in use, and remembers which one with the bench."""

    def __init__(
        self, session: Session, desk: Desk, memory: BenchMemory, parent: QObject | None = None
    ) -> None:
        super().__init__(parent)
        self.session, self.desk, self._memory = session, desk, memory
        self._used = UsedShelf()
        self._kept_in_use = True
        self._by_job = False
        self._bare = session.shelf
        self._known: tuple[Shelf, Shelf, tuple[Lesson, ...]] | None = None
        self._to_teach: tuple[Lesson, ...] = ()
        self._trouble: MendableError | None = None
        self._say_soon = QTimer(self)
        self._say_soon.setSingleShot(True)
        self._say_soon.setInterval(_PATIENCE)
        self._say_soon.timeout.connect(self._say_trouble)
        desk.paints_changed.connect(self._renew)
        session.shelf_opened.connect(self._opened_file)

    def worked_with(self) -> UsedShelf:
        """Say which shelf the mixes on the bench are of."""
        return UsedShelf() if self._kept_in_use else self._used

    def taught(self) -> tuple[Lesson, ...]:
        """Say what the paints on the bench have learnt since their shelf was taken."""
        bare, here = self._bare, self.session.shelf
        # Asked at each change of the bench, and paints are packed for it.
        if self._known is None or self._known[0] is not bare or self._known[1] is not here:
            self._known = bare, here, learnt_since(bare, here)
        return self._known[2]

    def _lay(self, shelf: Shelf, lessons: tuple[Lesson, ...] = ()) -> None:
        """Use a shelf as it was taken, with what its paints had learnt."""
        self._bare = shelf
        self.session.use_shelf(taught_again(shelf, lessons))

    def _teach(self, lessons: tuple[Lesson, ...]) -> None:
        """Let paints that are on the bench already hold what they are to have learnt."""
        here = self.session.shelf
        taught = taught_again(here, lessons)
        if taught is not here:
            self.session.use_shelf(taught)

    # --- by hand ---------------------------------------------------------------------------------

    def use_kept(self) -> None:
        """Use the paints that are kept; those of the demonstration where none are."""
        self._to_teach = ()
        self._use_kept(self.session.shelf, lambda: self._to_teach)

    def _use_kept(self, used: Shelf, lessons: Callable[[], tuple[Lesson, ...]]) -> None:
        """Use the paints that are kept, where they are others than these, and teach them."""
        self._remember(UsedShelf())

        def done(answer: tuple[Shelf | None]) -> None:
            if self._used.source is not ShelfFrom.KEPT:
                # Another shelf was taken meanwhile.
                return
            self._kept_in_use = True
            if answer[0] is None:
                self._bare = used
                self._teach(lessons())
            else:
                self._lay(answer[0], lessons())

        self.desk.ask(lambda store: (other_than(store, used),), done)

    def use_for_now(self, shelf: Shelf) -> None:
        """Use the paints of the demonstration, without keeping them."""
        self._remember(UsedShelf(ShelfFrom.DEMO))
        self._kept_in_use, self._to_teach = False, ()
        self._lay(shelf)

    def keep_paints(self, source: str) -> None:
        """Keep the paints that are in use, which were read from a file of this name."""
        shelf = self.session.shelf
        self.desk.edit(
            lambda store: put_paints(store, shelf.paints, source=source, notes=shelf.notes),
            lambda _: self.use_kept(),
        )

    def _opened_file(self) -> None:
        """Note that the paints in use are those of a file."""
        self._remember(self.session.shelf_file)
        self._kept_in_use, self._to_teach = False, ()
        self._bare = self.session.shelf

    def _renew(self) -> None:
        """Follow what was done to the kept shelf, while it is the one in use."""
        if self._kept_in_use:
            self._use_kept(self._bare, self.taught)

    def _remember(self, used: UsedShelf) -> None:
        self._used, self._by_job, self._trouble = used, False, None
        self._memory.set_shelf(used)

    # --- with a job ------------------------------------------------------------------------------

    def take_again(self, used: UsedShelf | None, lessons: tuple[Lesson, ...] = ()) -> None:
        """Use the shelf that a job or a bench was worked with; None where that was not kept.

        A shelf that came with another job goes with it. `lessons` are what its paints had learnt.
        """
        if used == self._used or (used is None and not self._by_job):
            self._teach(lessons)
            return
        self._to_teach = lessons
        if used is None or used.source is ShelfFrom.KEPT:
            self._use_kept(self._bare, lambda: self._to_teach)
            return
        self._remember(used)
        self._by_job = True

        here = self._bare

        def work(store: Store) -> tuple[TakenShelf, bool]:
            taken = taken_again(store, used)
            return taken, alike(taken.shelf, here)

        def done(answer: tuple[TakenShelf, bool]) -> None:
            if self._used == used:
                self._taken(*answer)

        self.desk.ask(work, done)

    def _taken(self, taken: TakenShelf, there: bool) -> None:  # noqa: FBT001 - as it is answered
        self._kept_in_use, self._trouble = taken.kept, taken.trouble
        if there:
            self._teach(self._to_teach)
        else:
            self._lay(taken.shelf, self._to_teach)
        self._say_trouble()

    def _say_trouble(self) -> None:
        """Say what is to be said of the shelf last: what is wanted anew takes a message away."""
        doing = self.session.workshop.doing
        if self._trouble is None:
            return
        if not self.desk.idle() or any(doing(kind) for kind in _BUSY):
            self._say_soon.start()
            return
        told, self._trouble = self._trouble, None
        self.desk.failed.emit(told)
