"""Keeping the mix of a sample with the job, with the bench as it is."""

from __future__ import annotations

from collections.abc import Sequence

from swatchwright.acts.jobs import Changes, Store
from swatchwright.acts.sample_rounds import SampleLoop
from swatchwright.acts.sample_take import keep_sample
from swatchwright.desktop.colour_again import read_by
from swatchwright.desktop.keeping import Keeping

__all__ = ["keep_sample_for"]


def keep_sample_for(
    keeping: Keeping,
    loop: SampleLoop,
    number: int,
    *,
    zone: str,
    added: Sequence[tuple[str, float]] = (),
    pot: float | None = None,
) -> None:
    """Keep the mix of a sample for a zone; the photo goes with it if the colour was read there."""
    session = keeping.session
    shelf, found, most = session.shelf, session.recipes, session.most_paints
    wanted, volume, used = session.wanted, session.volume, keeping.shelf.worked_with()
    here = wanted is not None and wanted.lab == loop.wanted
    photo = keeping.photo() if here else None
    read = read_by(session, wanted) if here and wanted is not None else None

    def act(store: Store, id_: str) -> Changes:
        return keep_sample(
            *(store, id_, loop, number),
            shelf=shelf,
            zone=zone,
            added=added,
            pot=pot,
            others=found,
            volume=volume,
            photo=photo,
            read=read,
            most_paints=most,
            used=used,
        )

    keeping.desk.edit_job(act, lambda changes: keeping.kept_so(changes, photo))
