"""Keep the shelf in the store: its paints, and how much of each is left.

Paints that are invented for the demonstration and paints that are real never stand on it together
unless the painter has been told.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from math import isfinite
from pathlib import Path

from swatchwright.acts import labels
from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.paint.paints import HowKnown, Paint
from swatchwright.shelf.csv_file import demo_shelf, read_shelf
from swatchwright.shelf.jobs import Document
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store import paint_rows
from swatchwright.shelf.store.history import Changes
from swatchwright.shelf.store.paint_rows import StockedPaint
from swatchwright.shelf.store.store import Edit, Store
from swatchwright.shelf.write import write_shelf

__all__ = [
    "KeptShelf",
    "ShelfKind",
    "StockedPaint",
    "add_stock",
    "draw_stock",
    "export_shelf",
    "import_shelf",
    "keep_times",
    "kept_shelf",
    "put_paints",
    "remove_paints",
    "set_stock",
    "take_demo_shelf",
]

_MOST_ML = 1e6
_MOST_PAINTS = 5000
_NAME = mark("your shelf")


class ShelfKind(StrEnum):
    """What stands on the shelf."""

    EMPTY = "empty"
    DEMO = "demonstration"
    OWN = "own"


@dataclass(frozen=True, slots=True)
class KeptShelf:
    """The shelf as the store keeps it: its paints in their order, with what is left of each."""

    stocked: tuple[StockedPaint, ...]

    @property
    def shelf(self) -> Shelf:
        """The paints, to choose from."""
        return Shelf(_NAME, tuple(stocked.paint for stocked in self.stocked))

    @property
    def kind(self) -> ShelfKind:
        """Whether it is empty, that of the demonstration, or the painter's own."""
        if not self.stocked:
            return ShelfKind.EMPTY
        invented = all(stocked.paint.how_known is HowKnown.INVENTED for stocked in self.stocked)
        return ShelfKind.DEMO if invented else ShelfKind.OWN


def kept_shelf(store: Store) -> KeptShelf:
    """Give the shelf. Where it is empty, offer `take_demo_shelf` and `import_shelf`."""
    with store.reading() as connection:
        return KeptShelf(tuple(paint_rows.read_paints(connection)))


# --- paints --------------------------------------------------------------------------------------


def take_demo_shelf(store: Store) -> Changes:
    """Fill an empty shelf with the 24 invented paints of the demonstration.

    Raises
    ------
    MendableError
        If the shelf is not empty.
    """
    with store.editing(labels.TAKE_DEMO) as edit:
        if paint_rows.read_paints(edit.connection):
            raise MendableError(
                say(
                    "There are paints on your shelf already, and the invented ones of the "
                    "demonstration are not mixed among them."
                ),
                say("Use the demonstration with another --store, or remove your paints first."),
            )
        for paint in demo_shelf().paints:
            paint_rows.write_paint(edit, StockedPaint(paint, None))
        edit.warn(say("These paints are invented: no such paint is sold."))
        return edit.changes


def import_shelf(store: Store, path: Path, *, replace_all: bool = False) -> Changes:
    """Bring in the paints of a shelf file.

    A paint whose id is there already is replaced and keeps its stock; others are added. The
    paints of the demonstration are put away when real ones come, and that is said.

    Parameters
    ----------
    store
        Where the shelf is.
    path
        A shelf file.
    replace_all
        Whether paints that are not in the file go from the shelf.

    Raises
    ------
    MendableError
        If it is not a shelf file, or its paints are invented and yours are not.
    """
    shelf = read_shelf(path)
    return put_paints(
        store, shelf.paints, source=path.name, replace_all=replace_all, notes=shelf.notes
    )


def put_paints(
    store: Store,
    paints: tuple[Paint, ...],
    *,
    source: str = "",
    replace_all: bool = False,
    notes: tuple[str, ...] = (),
) -> Changes:
    """Put paints on the shelf, as `import_shelf` does.

    Raises
    ------
    MendableError
        If a paint is impossible, or some are invented and others are not.
    """
    for paint in paints:
        paint_rows.check_paint(paint)
    with store.editing(_put_label(len(paints), source)) as edit:
        old = {stocked.paint.id: stocked for stocked in paint_rows.read_paints(edit.connection)}
        gone = _put_away(edit, old, paints, replace_all=replace_all)
        if len({*old, *(paint.id for paint in paints)} - {*gone}) > _MOST_PAINTS:
            raise MendableError(
                say("That are too many paints."), say("A shelf holds {most:,}.", most=_MOST_PAINTS)
            )
        paint_rows.remove_paints(edit, gone)
        for paint in paints:
            _put(edit, paint, None if paint.id in gone else old.get(paint.id))
        for note in notes:
            edit.warn(note)
        return edit.changes


def _put_label(count: int, source: str) -> str:
    one, many = (
        (labels.PUT_ONE_FROM, labels.PUT_MANY_FROM) if source else (labels.PUT_ONE, labels.PUT_MANY)
    )
    return (one if count == 1 else many).format(number=count, file=source)


def _put(edit: Edit, paint: Paint, before: StockedPaint | None) -> None:
    """Write a paint unless it is there just so."""
    if before is None:
        paint_rows.write_paint(edit, StockedPaint(paint, None))
    elif paint_rows.paint_bytes(before.paint) != paint_rows.paint_bytes(paint):
        paint_rows.write_paint(edit, replace(before, paint=paint))


def _put_away(
    edit: Edit, old: dict[str, StockedPaint], new: tuple[Paint, ...], *, replace_all: bool
) -> tuple[str, ...]:
    """Say which paints go from the shelf, so that invented and real ones do not mix."""
    coming = {paint.id for paint in new}
    left = [stocked.paint for id_, stocked in old.items() if id_ not in coming]
    if replace_all:
        return tuple(paint.id for paint in left)
    invented = [paint for paint in new if paint.how_known is HowKnown.INVENTED]
    if len(invented) < len(new):
        demo = tuple(id_ for id_, s in old.items() if s.paint.how_known is HowKnown.INVENTED)
        if demo and not invented:
            edit.warn(
                say(
                    "The {many} invented paints of the demonstration were put away; undo brings "
                    "them back.",
                    many=len(demo),
                )
            )
            return demo
    elif any(paint.how_known is not HowKnown.INVENTED for paint in left):
        raise MendableError(
            say("These paints are invented, and yours on the shelf are not."),
            say("Keep them apart: bring them into another --store, or replace the whole shelf."),
        )
    return ()


def remove_paints(store: Store, ids: tuple[str, ...]) -> Changes:
    """Take paints off the shelf; jobs keep what they need of them.

    Raises
    ------
    MendableError
        If one is not on the shelf.
    """
    with store.editing(labels.TAKE_ALL_OFF) as edit:
        names = [_stocked(edit, id_).paint.name for id_ in ids]
        if len(names) == 1:
            edit.call(labels.TAKE_OFF.format(paint=names[0]))
        paint_rows.remove_paints(edit, ids)
        return edit.changes


def keep_times(store: Store, id_: str, value: object | None, *, schema: int = 1) -> Changes:
    """Keep what the tin of a paint says of times, as whoever defines it lays it out.

    Raises
    ------
    MendableError
        If the paint is not on the shelf.
    """
    with store.editing("Times from the tin") as edit:
        edit.call(labels.TIMES.format(paint=_stocked(edit, id_).paint.name))
        times = None if value is None else Document.of(value, schema)
        paint_rows.set_times(edit, id_, times)
        return edit.changes


def export_shelf(store: Store, path: Path) -> tuple[Path, ...]:
    """Write the shelf to a shelf file, with a second one beside it where doubts are known.

    Returns
    -------
    The files that were written.

    Raises
    ------
    MendableError
        If the shelf is empty or cannot be written there.
    """
    return write_shelf(kept_shelf(store).shelf, path)


# --- what is left --------------------------------------------------------------------------------


def set_stock(store: Store, id_: str, ml: float | None) -> Changes:
    """Write down how much of a paint is left, ml; None if that is not known.

    Raises
    ------
    MendableError
        If the paint is not on the shelf or the amount is out of range.
    """
    with store.editing("Set the stock") as edit:
        paint = _stocked(edit, id_).paint
        edit.call(
            labels.FORGET_STOCK.format(paint=paint.name)
            if ml is None
            else labels.SET_STOCK.format(paint=paint.name, ml=f"{ml:g}")
        )
        _write_stock(edit, id_, ml)
        return edit.changes


def add_stock(store: Store, id_: str, ml: float) -> Changes:
    """Add to what is left of a paint, as when a tin is bought.

    Raises
    ------
    MendableError
        If the paint is not on the shelf or the amount is out of range.
    """
    _check_amount(ml)
    with store.editing("Add to the stock") as edit:
        stocked = _stocked(edit, id_)
        edit.call(labels.ADD_STOCK.format(paint=stocked.paint.name, ml=f"{ml:g}"))
        _write_stock(edit, id_, (stocked.ml_left or 0.0) + ml)
        return edit.changes


def draw_stock(store: Store, id_: str, ml: float) -> Changes:
    """Take from what is left of a paint.

    Raises
    ------
    MendableError
        If the paint is not on the shelf, nobody has said how much is left, or it is less than that.
    """
    _check_amount(ml)
    with store.editing("Draw from the stock") as edit:
        stocked = _stocked(edit, id_)
        edit.call(labels.DRAW_STOCK.format(paint=stocked.paint.name, ml=f"{ml:g}"))
        if stocked.ml_left is None:
            raise MendableError(
                say("It is not known how much of “{paint}” is left.", paint=stocked.paint.name),
                say("Set its stock first."),
            )
        if ml > stocked.ml_left:
            raise MendableError(
                say(
                    "Only {ml:g} ml of “{paint}” are left.",
                    ml=stocked.ml_left,
                    paint=stocked.paint.name,
                ),
                say("Draw less, or set the stock to what is really there."),
            )
        _write_stock(edit, id_, stocked.ml_left - ml)
        return edit.changes


def _stocked(edit: Edit, id_: str) -> StockedPaint:
    found = paint_rows.read_paints(edit.connection, (id_,))
    if found:
        return found[0]
    listed = tuple(stocked.paint for stocked in paint_rows.read_paints(edit.connection))
    if not listed:
        raise MendableError(
            say("There is no paint “{id}”: the shelf is empty.", id=id_),
            say("Bring in a shelf file, or take the demonstration shelf."),
        )
    Shelf(_NAME, listed).paint(id_)
    raise AssertionError(id_)


def _write_stock(edit: Edit, id_: str, ml: float | None) -> None:
    if ml is not None:
        ml = round(ml, 2)
        if not (isfinite(ml) and 0 <= ml <= _MOST_ML):
            raise MendableError(
                say("A stock of {ml:g} ml cannot be.", ml=ml),
                say("Give 0 to {most:,.0f} ml.", most=_MOST_ML),
            )
    paint_rows.set_stock(edit, id_, ml)


def _check_amount(ml: float) -> None:
    if not (isfinite(ml) and 0 < ml <= _MOST_ML):
        raise MendableError(
            say("An amount of {ml:g} ml cannot be.", ml=ml),
            say("Give more than 0 and up to {most:,.0f} ml.", most=_MOST_ML),
        )
