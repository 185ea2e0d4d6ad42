"""Take what is in a pot, once something was stirred in, as the mix of a part of the piece.

It is kept by the act that keeps any mix, with its shares as they are in the pot, for the colour
that the client wants now.
"""

from __future__ import annotations

from collections.abc import Sequence

from swatchwright.acts.client_wish import CLIENT_PART, ClientWishes, Stands
from swatchwright.acts.job_bench import keep_mix
from swatchwright.acts.jobs import keep_document
from swatchwright.acts.labels import KEEP_POT, KEEP_POT_FOR_ZONE
from swatchwright.acts.layering import Parts
from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.mixes_in_use import WHOLE_PIECE
from swatchwright.acts.poured import poured_recipe
from swatchwright.acts.recipes import (
    MeasuredRecipe,
    Recipes,
    check_volume,
)
from swatchwright.acts.shelf_used import UsedShelf
from swatchwright.acts.ways_values import Way
from swatchwright.mixing.mend import Additions
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store import job_rows
from swatchwright.shelf.store.history import Changes
from swatchwright.shelf.store.store import Store
from swatchwright.values import KnownColour, Lab

__all__ = ["added_in", "bare_aim", "keep_pot", "pot_after", "recipe_of_pot"]


def pot_after(
    parts: Parts, pot: float, added: Sequence[tuple[str, float]]
) -> tuple[tuple[str, float], ...]:
    """Give what is in a pot of a mix once something was stirred in, ml of each paint.

    Parameters
    ----------
    parts
        Ids and amounts of the mix; only their proportions count.
    pot
        ml of it in the pot.
    added
        Ids and ml of what is stirred in.

    Examples
    --------
    >>> pot_after([("red", 3.0), ("white", 1.0)], 200.0, [("blue", 5.0), ("white", 10.0)])
    (('red', 150.0), ('white', 60.0), ('blue', 5.0))
    """
    whole = sum(amount for _, amount in parts)
    held: dict[str, float] = {}
    for id_, amount in parts:
        held[id_] = held.get(id_, 0.0) + amount / whole * pot
    for id_, ml in added:
        held[id_] = held.get(id_, 0.0) + ml
    return tuple(held.items())


def bare_aim(shelf: Shelf, mixed: Parts, way: Way, aim: Lab) -> Lab:
    """Give the colour that the bare coat is to have, so that it is where the client wants it.

    What lies over the coat changes both alike, as near as that matters here: the bare coat is as
    far from this as the finished one is from the aim.

    Parameters
    ----------
    shelf, mixed
        The paints, and what is in the pot in the end.
    way
        The way of stirring something in, with its colour under what stays over it.
    aim
        Where the client wants it, with that on.
    """
    return aim.moved(way.dry, look_of_mix(shelf, mixed).dry)


def recipe_of_pot(
    shelf: Shelf, mixed: Parts, wanted: KnownColour, *, volume: float
) -> MeasuredRecipe:
    """Make the recipe of what is in a pot.

    Parameters
    ----------
    shelf, mixed
        The paints, and ids and ml of what is in the pot.
    wanted
        The colour that it is for.
    volume
        ml to measure out.

    Raises
    ------
    MendableError
        If a paint is not on the shelf, or the mix or the volume cannot be.
    """
    check_volume(volume)
    shares = sorted(mixed, key=lambda row: -row[1])
    look = look_of_mix(shelf, shares)
    return poured_recipe(
        look.paints, look.shares, dry=look.dry, wet=look.wet, wanted=wanted, volume=volume
    )


def keep_pot(
    store: Store,
    id_: str,
    *,
    shelf: Shelf,
    mixed: Parts,
    wanted: KnownColour,
    first: Lab,
    wishes: ClientWishes,
    zone: str = WHOLE_PIECE,
    volume: float,
    most_paints: int = 3,
    used: UsedShelf | None = None,
) -> Changes:
    """Keep what is in a pot as the mix of a zone, for what the client wants now, in one edit.

    Parameters
    ----------
    store, id_
        Which job.
    shelf, mixed
        The paints, and ids and ml of what is in the pot.
    wanted
        What the client wants now: it becomes the colour of the zone.
    first
        The colour that was wanted before it.
    wishes
        What was said of all colours: nothing is wished in place of `first` any more, and what has
        the new colour is in the pot.
    zone
        The zone of the piece.
    volume
        ml to measure out from now on.
    most_paints, used
        The bench, and which shelf is in use, as for `keep_mix`.

    Raises
    ------
    MendableError
        If there is no such job, or the mix cannot be.
    """
    measured = recipe_of_pot(shelf, mixed, wanted, volume=volume)
    found = Recipes(
        wanted=wanted,
        recipes=(measured,),
        shortfall=None,
        volume=volume,
        subsets_tried=0,
        proven_gap=None,
        why_first="",
        possible=True,
        notes=(),
    )
    said = wishes.but(first, None).standing(wanted.lab, Stands.POT)
    with store.editing("Keep what is in the pot") as edit:
        keep_mix(store, id_, found, choose=1, zone=zone, most_paints=most_paints, shelf=used)
        keep_document(store, id_, CLIENT_PART, said)
        job = job_rows.read_job(edit.connection, id_)
        label = KEEP_POT if zone == WHOLE_PIECE else KEEP_POT_FOR_ZONE
        edit.call(label.format(job=job.title, zone=zone))
        return edit.changes


def added_in(additions: Additions | None) -> tuple[tuple[str, float], ...]:
    """Give ids and ml of what is stirred in."""
    steps = () if additions is None else additions.steps
    return tuple((step.paint.id, step.ml) for step in steps)
