"""Which of the chosen mixes of a job its piece is painted with.

A mix is often kept for the whole piece before the piece is sized. Once every painted zone has a mix
of its own, that first one is on no part of it: it is kept with the job as its history, and nothing
is mixed or bought for it. Sheet, amounts, plan, finish, batches and commands all ask here.
"""

from __future__ import annotations

from contextlib import suppress

from swatchwright.acts.piece import sized
from swatchwright.errors import MendableError
from swatchwright.language import listed, say
from swatchwright.piece.names import zone_word
from swatchwright.piece.part import Piece
from swatchwright.shelf.jobs import Job, KeptRecipe

__all__ = ["WHOLE_PIECE", "mixes_in_use", "not_in_use", "stood_down"]

WHOLE_PIECE = "all"
"""The zone of a colour that is for the whole piece."""

_PIECE_PART = "piece"


def mixes_in_use(job: Job | None) -> tuple[KeptRecipe, ...]:
    """Give the chosen mix of each zone that is in use, in the order of the colours of the job.

    The mix for the whole piece is left out where every painted zone has one of its own.
    """
    if job is None:
        return ()
    unused = stood_down(job)
    chosen = {r.zone: r for r in job.recipes if r.chosen and r != unused}
    order = dict.fromkeys([*(wanted.zone for wanted in job.wanted), *chosen])
    return tuple(chosen[zone] for zone in order if zone in chosen)


def stood_down(job: Job) -> KeptRecipe | None:
    """Give the mix for the whole piece where nothing is painted with it; None where it is used."""
    whole = job.chosen(WHOLE_PIECE)
    zones = () if whole is None else _painted(job)
    own = {recipe.zone for recipe in job.recipes if recipe.chosen}
    return whole if zones and own.issuperset(zones) else None


def not_in_use(job: Job) -> MendableError:
    """Say that the mix for the whole piece is not mixed any more, as every zone has its own."""
    zones = listed(zone_word(recipe.zone) for recipe in mixes_in_use(job))
    return MendableError(
        say(
            "The mix for the whole piece of “{job}” is on no part of it any more: {zones} have "
            "mixes of their own.",
            job=job.title,
            zones=zones,
        ),
        say("Ask for one of them."),
    )


def _painted(job: Job) -> tuple[str, ...]:
    """Name the painted zones of the piece; none where there is no piece, or it cannot be read."""
    document = job.document(_PIECE_PART)
    with suppress(MendableError):
        if document is not None:
            return tuple(zone.zone for zone in sized(document.read(Piece)).areas.zones)
    return ()
