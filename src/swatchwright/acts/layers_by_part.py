"""What lies over each part of a piece that has one mix, where that is not the same for all."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace

from swatchwright.acts.mixes_in_use import WHOLE_PIECE, painted_zones
from swatchwright.errors import MendableError
from swatchwright.language import listed, say
from swatchwright.paint.layers import Layer, Stack
from swatchwright.piece.names import zone_word
from swatchwright.shelf.jobs import Job

__all__ = [
    "OnParts",
    "by_part",
    "check_parts",
    "grouped",
    "layers_on",
    "of_no_part",
    "painted_with",
    "parts_of_mix",
]

_REST = ""
"""All of a piece but the parts that have layers of their own."""


@dataclass(frozen=True, slots=True)
class OnParts:
    """Parts of a piece with the same layers; an empty name is the rest of it."""

    parts: tuple[str, ...]
    layers: Stack

    @property
    def words(self) -> str:
        """Say which parts they are."""
        return listed(say("the rest") if part == _REST else zone_word(part) for part in self.parts)


def by_part(stack: Stack, parts: Sequence[str] = ()) -> tuple[OnParts, ...]:
    """Give what lies over each of some parts; those under the same layers are told as one.

    Parameters
    ----------
    stack
        What goes over the piece.
    parts
        Their names; none where these are not known. Then they are those that have layers of their
        own, and the rest.
    """
    groups = grouped(stack, parts or (*stack.zones, _REST))
    return tuple(OnParts(names, stack.over(names[0])) for names in groups)


def grouped(
    stack: Stack, parts: Sequence[str], *, own_apart: bool = False
) -> tuple[tuple[str, ...], ...]:
    """Group parts by what lies over them.

    Parameters
    ----------
    stack
        What goes over the piece.
    parts
        Their names.
    own_apart
        Whether a layer that goes on a part alone is another than the same one on all of the piece.
    """
    found: dict[tuple[Layer, ...], list[str]] = {}
    for part in parts:
        over = stack.over(part).layers
        plain = tuple(replace(o, zone="*" if o.zone and own_apart else "") for o in over)
        found.setdefault(plain, []).append(part)
    return tuple(map(tuple, found.values()))


def layers_on(stack: Stack, parts: Sequence[str]) -> Stack:
    """Give all layers that lie on any of some parts; all there are where these are not known."""
    on = {"", *parts}
    return Stack(tuple(one for one in stack.layers if not parts or one.zone in on))


def painted_with(job: Job, zone: str, stack: Stack) -> tuple[str, ...]:
    """Name the parts of a job's piece that are painted with the mix for a zone.

    With the mix for the whole piece these are all that have none of their own. Where the piece was
    not sized, these are the parts that have layers of their own, and the rest, an empty name.
    """
    if zone not in {"", WHOLE_PIECE}:
        # What is on one part alone is told even where the piece cannot be read.
        return (zone,)
    own = {recipe.zone for recipe in job.recipes if recipe.chosen}
    return parts_of_mix(zone, own, painted_zones(job) or (*stack.zones, _REST))


def parts_of_mix(zone: str, own: Collection[str], named: Sequence[str]) -> tuple[str, ...]:
    """Name the parts that the mix for a zone is on.

    Parameters
    ----------
    zone
        The one part, or empty or `WHOLE_PIECE` for all that have no mix of their own.
    own
        The parts that have one.
    named
        All parts.
    """
    if zone not in {"", WHOLE_PIECE}:
        return (zone,)
    return tuple(part for part in named if part not in own)


def check_parts(job: Job, stack: Stack) -> None:
    """Refuse layers for a part that a job's piece does not have.

    Raises
    ------
    MendableError
        If there is one.
    """
    for part in of_no_part(job, stack):
        raise MendableError(
            say("The piece of “{job}” has no part “{part}”.", job=job.title, part=zone_word(part)),
            say("Use one of: {names}.", names=", ".join(map(zone_word, painted_zones(job)))),
        )


def of_no_part(job: Job, stack: Stack) -> tuple[str, ...]:
    """Name the parts that have layers and that the piece does not have; none if it is not sized."""
    has = painted_zones(job)
    return tuple(zone for zone in stack.zones if has and zone not in has)
