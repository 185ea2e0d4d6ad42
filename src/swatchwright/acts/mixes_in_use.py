"""Which of the chosen mixes of a job its piece is painted with.

A mix is often kept for the whole piece before the piece is sized. Once every painted zone has a mix
of its own, that first one is on no part of it. Nor is a mix for a zone that the piece does not
have, or has no longer. Such mixes are kept with the job, and nothing is mixed or bought for them.
Sheet, amounts, plan, finish, batches and commands all ask here.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from contextlib import suppress

from swatchwright.acts.piece import sized
from swatchwright.errors import MendableError
from swatchwright.language import listed, say
from swatchwright.piece.names import zone_word
from swatchwright.piece.part import Piece
from swatchwright.shelf.jobs import Job, KeptRecipe

__all__ = [
    "WHOLE_PIECE",
    "check_in_use",
    "mixes_in_use",
    "of_no_zone",
    "painted_zones",
    "stood_down",
    "without_zone",
]

WHOLE_PIECE = "all"
"""The zone of a colour that is for the whole piece."""

_PIECE_PART = "piece"


def mixes_in_use(job: Job | None) -> tuple[KeptRecipe, ...]:
    """Give the chosen mix of each zone that is in use, in the order of the colours of the job.

    The mix for the whole piece is left out where every painted zone has one of its own, and so is
    one for a zone that the piece does not have.
    """
    if job is None:
        return ()
    unused = (stood_down(job), *of_no_zone(job))
    chosen = {r.zone: r for r in job.recipes if r.chosen and r not in unused}
    order = dict.fromkeys([*(wanted.zone for wanted in job.wanted), *chosen])
    return tuple(chosen[zone] for zone in order if zone in chosen)


def stood_down(job: Job) -> KeptRecipe | None:
    """Give the mix for the whole piece where nothing is painted with it; None where it is used."""
    whole = job.chosen(WHOLE_PIECE)
    zones = () if whole is None else painted_zones(job)
    own = {recipe.zone for recipe in job.recipes if recipe.chosen}
    return whole if zones and own.issuperset(zones) else None


def of_no_zone(job: Job) -> tuple[KeptRecipe, ...]:
    """Give the chosen mixes for zones that the piece does not have; none where it is not sized."""
    return without_zone(job.recipes, painted_zones(job))


def without_zone(recipes: Sequence[KeptRecipe], zones: Collection[str]) -> tuple[KeptRecipe, ...]:
    """Give the chosen ones among recipes whose zone is none of the painted ones.

    Parameters
    ----------
    recipes
        Those of a job.
    zones
        The painted zones of its piece; none where that is not known.
    """
    has = {WHOLE_PIECE, *zones}
    return tuple(r for r in recipes if r.chosen and zones and r.zone not in has)


def check_in_use(job: Job, zone: str | None) -> None:
    """Refuse a zone whose mix is kept, and is on no part of the piece.

    Raises
    ------
    MendableError
        If it is that of the whole piece and each zone has its own, or the piece has no such zone.
    """
    if zone == WHOLE_PIECE and stood_down(job) is not None:
        raise _stood_down(job)
    if zone in {recipe.zone for recipe in of_no_zone(job)} and zone is not None:
        painted = listed(zone_word(one) for one in painted_zones(job))
        raise MendableError(
            say(
                "The mix for {zone} of “{job}” is on no part of it: what is painted of its piece "
                "is {zones}.",
                zone=zone_word(zone),
                job=job.title,
                zones=painted,
            ),
            say("Give a part of the piece that colour, or keep the mix for one that it has."),
        )


def _stood_down(job: Job) -> MendableError:
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


def painted_zones(job: Job) -> tuple[str, ...]:
    """Name the painted zones of the piece; none where there is no piece, or it cannot be read."""
    document = job.document(_PIECE_PART)
    with suppress(MendableError):
        if document is not None:
            return tuple(zone.zone for zone in sized(document.read(Piece)).areas.zones)
    return ()
