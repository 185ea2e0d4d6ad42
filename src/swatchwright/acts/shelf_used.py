"""Which shelf a bench or a job was worked with, and taking it again.

Her own paints are kept in the store. Those of the demonstration, or of a file, are taken for now;
that they were is remembered, so that a job finds its paints at the next start.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path

from swatchwright.acts.bench_shelf import shelf_of
from swatchwright.acts.file_stamp import Stamp, stamp_of
from swatchwright.acts.stock import ShelfKind, kept_shelf
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.shelf.csv_file import demo_shelf, read_shelf
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store.store import Store

__all__ = ["ShelfFrom", "TakenShelf", "UsedShelf", "taken_again", "worked_with"]


class ShelfFrom(StrEnum):
    """Where the paints of a shelf come from."""

    KEPT = "kept"
    DEMO = "demonstration"
    FILE = "file"


@dataclass(frozen=True, slots=True)
class UsedShelf:
    """A shelf as it is remembered.

    Parameters
    ----------
    source
        Where its paints come from.
    path, stamp
        Of a file: where it is, and its stamp when it was read.
    """

    source: ShelfFrom = ShelfFrom.KEPT
    path: str = ""
    stamp: Stamp | None = None


@dataclass(frozen=True, slots=True)
class TakenShelf:
    """A shelf that is used again.

    Parameters
    ----------
    shelf
        The paints.
    kept
        Whether they are those that are kept, also in place of those that cannot be had.
    trouble
        What is to be said of it; None for nothing.
    """

    shelf: Shelf
    kept: bool
    trouble: MendableError | None = None


def worked_with(store: Store, used: UsedShelf) -> UsedShelf:
    """Say which shelf is to be remembered with a job.

    Where no paints are kept, those in their place are the demonstration's: her own, kept later, are
    others.
    """
    bare = used.source is ShelfFrom.KEPT and not kept_shelf(store).stocked
    return UsedShelf(ShelfFrom.DEMO) if bare else used


def taken_again(store: Store, used: UsedShelf) -> TakenShelf:
    """Take a remembered shelf again; where it cannot be had, the kept one, and that is told."""
    kept = kept_shelf(store)
    if used.source is ShelfFrom.KEPT or not (kept.stocked or used.path):
        return TakenShelf(shelf_of(kept), kept=True)
    if used.source is ShelfFrom.DEMO:
        # Kept ones have their stock, and follow what is done to them.
        here = kept.kind is ShelfKind.DEMO
        return TakenShelf(shelf_of(kept) if here else demo_shelf(), kept=here)
    path = Path(used.path)
    try:
        # As long as it is not looked at, it may be any other kind of file by now.
        stamp, shelf = stamp_of(path), read_shelf(path)
    except MendableError as error:
        return TakenShelf(shelf_of(kept), kept=True, trouble=_not_there(path, error))
    same = used.stamp in {None, stamp}
    return TakenShelf(shelf, kept=False, trouble=None if same else _changed(path))


def _not_there(path: Path, why: MendableError) -> MendableError:
    return MendableError(
        say(
            "This was worked with the paints of {name}, which cannot be had: {why}",
            name=path.name,
            why=why.what,
        ),
        say("The shelf named at the top is used instead. Open the file again under Shelf."),
    )


def _changed(path: Path) -> MendableError:
    return MendableError(
        say("{name} has been changed since this was worked with its paints.", name=path.name),
        say("It is used as it is now; on the page Job is told which paints of a mix are others."),
    )
