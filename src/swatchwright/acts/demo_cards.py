"""The cards of the demonstration: a sitting with a photo, to go through once without one's own.

The paints are invented ones of the demonstration shelf, as if they had just been bought; the photo
is rendered. Nothing of it has to do with the shelf in use.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from swatchwright.acts.samples import told_of_samples
from swatchwright.acts.sitting import NewTin, Sitting, with_cards
from swatchwright.language import mark
from swatchwright.paint.paints import Paint
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Rect

__all__ = ["NO_SHELF", "DemoCards", "demo_cards"]

NO_SHELF = Shelf(mark("the demonstration"), ())
"""The shelf that the demonstration begins with: none of its paints is known yet."""


@dataclass(frozen=True, slots=True)
class DemoCards:
    """A sitting whose cards are brushed out, and their photo.

    Parameters
    ----------
    path
        The photo.
    grey, reflectance
        Where the grey card is in it, and what it reflects, 0-1.
    sitting
        The paints and their cards; nothing is read yet.
    boxes
        Where each card is in the photo, by its key.
    """

    path: Path
    grey: Rect
    reflectance: float
    sitting: Sitting
    boxes: Mapping[str, Rect]


def demo_cards() -> DemoCards | None:
    """Give the cards of the demonstration; None where they were not installed."""
    folder, rows = told_of_samples("cards")
    if not rows:
        return None
    told = rows[0]
    ids = tuple(told["paints"])
    paints = {paint.id: paint for paint in demo_shelf().paints}
    new = tuple(_tin(paints[id_]) for id_ in ids)
    sitting = with_cards(Sitting(ids, new, white=ids[0], ground=True), NO_SHELF)
    there = {
        (tuple((id_, float(parts)) for id_, parts in row["mix"]), row["over"]): Rect(*row["box"])
        for row in told["cards"]
    }
    boxes = {card.key: there[card.mix, card.over] for card in sitting.cards}
    return DemoCards(
        path=folder / told["file"],
        grey=Rect(*told["grey_card"]),
        reflectance=told["grey_reflectance"],
        sitting=sitting,
        boxes=boxes,
    )


def _tin(paint: Paint) -> NewTin:
    return NewTin(paint.id, paint.name, paint.family, volume_solids=paint.volume_solids)
