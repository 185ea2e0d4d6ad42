"""Which paints lie on the bench: those that are kept, or those of the demonstration."""

from __future__ import annotations

from dataclasses import replace

from swatchwright.acts.stock import KeptShelf, ShelfKind, kept_shelf
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store.paint_rows import paint_bytes
from swatchwright.shelf.store.store import Store

__all__ = ["alike", "other_than", "shelf_in_use", "shelf_of"]


def shelf_of(kept: KeptShelf) -> Shelf:
    """Give the paints that are kept, under the name of what they are; the invented ones if none."""
    if kept.kind is ShelfKind.EMPTY:
        return demo_shelf()
    return (
        replace(kept.shelf, name=demo_shelf().name) if kept.kind is ShelfKind.DEMO else kept.shelf
    )


def shelf_in_use(store: Store, in_use: Shelf | None = None) -> Shelf:
    """Give the paints that are worked with: what is told of a shelf is told of these.

    Parameters
    ----------
    store
        Where the kept shelf is.
    in_use
        The paints on the bench, which may be others than are kept; None where there is no bench,
        for those that are kept, or the invented ones if none are.
    """
    return shelf_of(kept_shelf(store)) if in_use is None else in_use


def other_than(store: Store, used: Shelf) -> Shelf | None:
    """Give the paints to be used by what is kept; None where just these are in use."""
    shelf = shelf_of(kept_shelf(store))
    return None if alike(shelf, used) else shelf


def alike(one: Shelf, other: Shelf) -> bool:
    """Tell whether two shelves have one name and just the same paints."""
    pairs = zip(one.paints, other.paints, strict=False)
    same = len(one.paints) == len(other.paints) and all(
        paint_bytes(first) == paint_bytes(second) for first, second in pairs
    )
    return same and one.name == other.name
