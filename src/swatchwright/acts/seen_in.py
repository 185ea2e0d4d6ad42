"""In which light a page begins: that of the room, as the job names it, until another is chosen."""

from __future__ import annotations

import re
from dataclasses import dataclass

from swatchwright.colour.spectrum import Light
from swatchwright.shelf.jobs import Job

__all__ = ["SEEN_IN_PART", "SeenIn", "light_named", "room_of"]

SEEN_IN_PART = "seen-in"
"""The part of a job that the chosen lights are kept in."""

_NAMED = (
    (r"\b(?:cool|cold|kühl\w*|kalt\w*)[- ]?(?:white|weiß\w*)?[- ]?led", Light.COOL_LED),
    (r"\bleds?\b", Light.WARM_LED),
    (r"lamp|bulb|candle|filament|glüh|birne|kerze", Light.LAMP),
    (r"\btube|fluoresc|\bneon|leuchtstoff|röhre", Light.TUBE),
    (r"daylight|\bday\b|window|\bsun|\bnorth|tageslicht|\btag\b|fenster|\bsonn", Light.D65),
)
"""What a light is called, and what it is taken for: common practice, no source."""


@dataclass(frozen=True, slots=True)
class SeenIn:
    """The lights that were chosen on pages, as they are kept with a job.

    Parameters
    ----------
    finish, piece
        That of the page of the finish, and of the piece; None for that of the room.
    """

    finish: Light | None = None
    piece: Light | None = None


def light_named(room: str) -> Light | None:
    """Give the light that words for a room name first; None where they name none that is known.

    Examples
    --------
    >>> light_named("Warm lamp in the evening").value
    'A'
    >>> light_named("Daylight by day, warm lamp by night").value
    'D65'
    >>> light_named("the hall")
    """
    found = [
        (there.start(), light)
        for pattern, light in _NAMED
        if (there := re.search(pattern, room.lower()))
    ]
    return min(found, key=lambda one: one[0])[1] if found else None


def room_of(job: Job | None) -> Light | None:
    """Give the light of the room that a job names; None where it names none."""
    return None if job is None else light_named(job.room_light)
