"""How much of a mix a batch is offered for: the last one, what the piece takes, or the bench."""

from __future__ import annotations

from contextlib import suppress

from swatchwright.acts.amounts import amounts_for
from swatchwright.acts.job_bench import volume_kept
from swatchwright.acts.jobs import job_of
from swatchwright.acts.mixes_in_use import mixes_in_use
from swatchwright.acts.piece_job import amounts_order_of
from swatchwright.acts.sheet_amounts import batch_of_zone
from swatchwright.errors import MendableError
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store.store import Store

__all__ = ["offered_volume"]


def offered_volume(store: Store, id_: str, zone: str, shelf: Shelf) -> float:
    """Give the volume to offer for a batch, ml.

    As the last batch of that zone; before there is one, what its piece takes; without a piece, as
    much as was on the bench when its colour was kept.

    Parameters
    ----------
    store, id_
        Which job.
    zone
        The zone whose recipe is mixed.
    shelf
        The paints that are in use.

    Raises
    ------
    MendableError
        If there is no such job.
    """
    job = job_of(store, id_)
    last = next((batch for batch in reversed(job.batches) if batch.zone == zone), None)
    if last is not None:
        return last.volume
    with suppress(MendableError):
        order = amounts_order_of(store, job, shelf)
        found = None if order is None else amounts_for(order)
        taken = batch_of_zone(found, zone, [r.zone for r in mixes_in_use(job)])
        if taken is not None:
            return taken.mix_ml
    return volume_kept(job, zone)
