"""Adding paints to the shelf by hand, changing them there, and taking them off."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import cached_property

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QWidget

from swatchwright.acts.jobs import Changes, Store
from swatchwright.acts.own_paint import add_paint, change_paint
from swatchwright.acts.stock import kept_shelf, remove_paints
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.keeping import Keeping
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.shelf_add import ShelfAdd
from swatchwright.desktop.widgets.shelf_change import ShelfChange
from swatchwright.desktop.words import own_paint as words
from swatchwright.paint.paints import Paint, Tin

__all__ = ["OwnPaints"]


class OwnPaints(QObject):
    """The two forms, laid over what the page of the shelf shows, and what is done with them.

    Parameters
    ----------
    session, desk
        The bench, and what is kept.
    show
        Brings a form into view, after the others that the page shows.

    Signals
    -------
    shown(str, str)
        A form is to be seen, with a heading and a hint.
    done(str, str)
        Something was done that the shelf shows: the id of the paint to show, empty for any, and
        what is to be said of it.
    left()
        A form was left with nothing done.
    """

    shown = Signal(str, str)
    done = Signal(str, str)
    left = Signal()

    def __init__(
        self, session: Session, desk: Desk, show: Callable[[QWidget], None], parent: QObject
    ) -> None:
        super().__init__(parent)
        self._session, self._desk, self._show = session, desk, show

    @cached_property
    def form(self) -> ShelfAdd:
        """The form for a paint that is not there yet, made when it is first asked for."""
        made = ShelfAdd(self._session)
        made.left.connect(self.left)
        made.made.connect(self._add)
        return made

    @cached_property
    def change(self) -> ShelfChange:
        """The form for a paint that is there, made when it is first asked for."""
        made = ShelfChange()
        made.left.connect(self.left)
        made.changed.connect(self._change)
        return made

    def show_form(self) -> None:
        """Show the form for a paint that is not there yet."""

        def begun(taken: tuple[str, ...]) -> None:
            self.form.begin(taken)
            self._show(self.form)
            self.shown.emit(words.HEADING, words.HINT)
            self.form.name.setFocus()

        self._desk.ask(_kept_ids, begun)

    def show_change(self, id_: str) -> None:
        """Show the form for a paint of the shelf in use."""
        paint = next((one for one in self._session.shelf.paints if one.id == id_), None)
        if paint is not None:
            self.change.show_paint(paint)
            self._show(self.change)
            self.shown.emit(words.CHANGE_HEADING, words.CHANGE_HINT)
            self.change.name.setFocus()

    def take_off(self, id_: str) -> None:
        """Take a paint off the shelf."""
        paint = next((one for one in self._session.shelf.paints if one.id == id_), None)
        if paint is not None:
            name = paint.name
            self._desk.edit(
                lambda store: remove_paints(store, (id_,)),
                lambda _: self.done.emit("", words.taken_off_line(name)),
            )

    def _add(self, paint: Paint, moved: float) -> None:
        beside = self._session.shelf.paints

        def added(changes: Changes) -> None:
            keeping = self._session.findChild(Keeping)
            if isinstance(keeping, Keeping):
                keeping.use_kept()
            self.done.emit(paint.id, words.added_line(paint.name, changes.warnings, moved))

        self._desk.edit(lambda store: add_paint(store, paint, beside=beside), added)

    def _change(self, id_: str, name: str, tins: Sequence[Tin]) -> None:
        self._desk.edit(
            lambda store: change_paint(store, id_, name=name, tins=tins),
            lambda _: self.done.emit(id_, words.changed_line(name)),
        )


def _kept_ids(store: Store) -> tuple[str, ...]:
    return tuple(stocked.paint.id for stocked in kept_shelf(store).stocked)
