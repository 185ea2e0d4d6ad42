"""How far paint goes: by what it is put on, by what tool, and how thick a film that leaves.

Sources
-------
Wet film thickness is volume over area, so 1000 divided by m2 per litre is micrometres, exactly;
the dry film is the wet film's share of volume solids ([ISO3233]).

How much more a thirsty ground takes and how much a tool lays and loses is common practice, no
source; the tin and the painter's own trial come before it.
"""

from __future__ import annotations

from enum import StrEnum
from math import isfinite

from swatchwright.errors import MendableError
from swatchwright.language import mark, say

__all__ = ["CLEAR_RATES", "Ground", "Tool", "coat_rate", "dry_film", "loss", "wet_film"]


class Ground(StrEnum):
    """What the first coat is put on."""

    BARE = mark("bare wood")
    ROUGH = mark("rough wood")
    PRIMED = mark("primed")
    PAINTED = mark("painted")
    SHINY = mark("shiny")
    UNKNOWN = mark("unknown")


class Tool(StrEnum):
    """What the paint is put on with."""

    BRUSH = mark("brush")
    FLOCK_ROLLER = mark("flock roller")
    FOAM_ROLLER = mark("foam roller")
    SPRAY = mark("spray")


# How far a litre goes on the first coat, as a factor on what the tin says. Common practice, no
# source. Later coats go on paint, and so as far as the tin says.
_FIRST_COAT = {
    Ground.BARE: 0.8,
    Ground.ROUGH: 0.65,
    Ground.PRIMED: 1.0,
    Ground.PAINTED: 1.0,
    Ground.SHINY: 1.0,
    Ground.UNKNOWN: 1.0,
}

CLEAR_RATES = {"wax": 40.0, "oil": 20.0, "varnish": 12.0}
"""m2 per litre and coat of what goes over the paint, where its tin is not asked.

Common practice, no source. Wax is worked out to well under a third of a varnish film, and oil is
wiped off again: over paint little of it goes in.
"""

# A factor on how far it goes, and the share of what leaves the tin that never reaches the piece:
# what stays in the tool, and of a spray what misses. Common practice, no source.
_TOOLS = {
    Tool.BRUSH: (1.0, 0.05),
    Tool.FLOCK_ROLLER: (1.0, 0.1),
    Tool.FOAM_ROLLER: (1.1, 0.08),
    Tool.SPRAY: (1.0, 0.35),
}


def coat_rate(rate: float, ground: Ground, tool: Tool, coat: int) -> float:
    """Give how far a litre goes on one coat, m2 per litre laid.

    Parameters
    ----------
    rate
        What the tin says, m2 per litre.
    ground, tool
        What it is put on, and with what.
    coat
        Which coat it is, from 1; only the first meets the ground.
    """
    return rate * _TOOLS[tool][0] * (_FIRST_COAT[ground] if coat == 1 else 1.0)


def loss(tool: Tool) -> float:
    """Give the share of the paint used that does not end on the piece, 0-1."""
    return _TOOLS[tool][1]


def wet_film(rate: float) -> float:
    """Give the thickness of a wet film, um, from its spreading rate, m2 per litre.

    Raises
    ------
    MendableError
        If the rate is not from 0.5 to 50 m2 per litre.

    Examples
    --------
    >>> wet_film(10)
    100.0
    """
    if not (isfinite(rate) and 0.5 <= rate <= 50):
        raise MendableError(
            say("A litre is said to cover {rate:g} m².", rate=rate),
            say("Give what the tin says, from 0.5 to 50 m² per litre; most paints cover 8 to 14."),
        )
    return 1000.0 / rate


def dry_film(wet: float, solids: float, thinned: float = 0.0) -> float:
    """Give the thickness of the film that stays, um.

    Parameters
    ----------
    wet
        Thickness of the wet film as it was laid, um.
    solids
        Volume solids of the paint as it comes, 0-1.
    thinned
        Volume of thinner added to one volume of paint, 0 or more.

    Examples
    --------
    >>> round(dry_film(100, 0.38, 0.1), 3)
    34.545
    """
    return wet * solids / (1.0 + thinned)
