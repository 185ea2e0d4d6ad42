"""For which zone of a piece a mix is likely meant, and what keeping it there would replace."""

from __future__ import annotations

from collections.abc import Sequence

from swatchwright.colour.difference import JUST_SEEN, delta_e_2000
from swatchwright.shelf.jobs import Job
from swatchwright.values import Lab

__all__ = ["free_zone", "replaced_in"]

_ANOTHER = 6.0
"""CIEDE2000 beyond which a colour is no new reading of a kept one but another; our own choice."""


def free_zone(job: Job | None, zones: Sequence[str], zone: str, wanted: Lab) -> str:
    """Give the zone that a colour is likely meant for.

    Parameters
    ----------
    job
        What is kept.
    zones
        The zones that a mix can be kept for.
    zone
        The one that is chosen.
    wanted
        The colour that is wanted now.

    Returns
    -------
    The chosen one; the next without a colour where the chosen one has plainly another.
    """
    kept = None if job is None else _kept_in(job, zone)
    if job is None or kept is None or _apart(kept, wanted) <= _ANOTHER or zone not in zones:
        return zone
    at = zones.index(zone)
    inturn = (*zones[at + 1 :], *zones[:at])
    return next((other for other in inturn if _kept_in(job, other) is None), zone)


def replaced_in(job: Job | None, zone: str, wanted: Lab) -> Lab | None:
    """Give the colour of a zone that keeping a mix for the wanted one replaces; None for none."""
    kept = None if job is None else _kept_in(job, zone)
    return None if kept is None or _apart(kept, wanted) <= JUST_SEEN else kept


def _kept_in(job: Job, zone: str) -> Lab | None:
    """Give the colour that is kept for a zone: as it was wanted, else as its mix dries."""
    wanted = next((w.colour.lab for w in job.wanted if w.zone == zone), None)
    chosen = job.chosen(zone)
    return wanted if wanted is not None or chosen is None else chosen.dry


def _apart(one: Lab, other: Lab) -> float:
    return float(delta_e_2000(one.triple, other.triple))
