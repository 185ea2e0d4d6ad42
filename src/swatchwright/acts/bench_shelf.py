"""Which paints lie on the bench: those that are kept, or those of the demonstration."""

from __future__ import annotations

from dataclasses import replace

from swatchwright.acts.stock import KeptShelf, ShelfKind, kept_shelf
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store.paint_rows import paint_bytes
from swatchwright.shelf.store.store import Store

__all__ = ["other_than", "shelf_of"]


def shelf_of(kept: KeptShelf) -> Shelf:
    """Give the paints that are kept, under the name of what they are; the invented ones if none."""
    if kept.kind is ShelfKind.EMPTY:
        return demo_shelf()
    return (
        replace(kept.shelf, name=demo_shelf().name) if kept.kind is ShelfKind.DEMO else kept.shelf
    )


def other_than(store: Store, used: Shelf) -> Shelf | None:
    """Give the paints to be used by what is kept; None where just these are in use."""
    shelf = shelf_of(kept_shelf(store))
    pairs = zip(shelf.paints, used.paints, strict=False)
    same = len(shelf.paints) == len(used.paints) and all(
        paint_bytes(kept) == paint_bytes(paint) for kept, paint in pairs
    )
    return None if same and shelf.name == used.name else shelf
