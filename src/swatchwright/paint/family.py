"""Finish families: how a paint's look changes from wet to dry.

Three things change as a film dries (see docs/optics.md): the wet surface is smooth, and seen away
from its glint; the pores of a chalky film fill with air, which scatters more than the water that
was there; an emulsion's polymer is milky while wet and clears. Each family is three numbers.

Where they come from
--------------------
``wet_scattering`` of a film with pores
    Full pores: 0.32, the fall in S that takes a dry albedo of 0.5 to the wet albedo of Lekner
    and Dorf 1988 (0.358 with the glint, n = 4/3), at volume solids of 0.40. A chalky matte is
    taken as half such a film and a mineral paint as three quarters: common practice, no source.
``wet_scattering`` of an emulsion
    1.2: pigment stands in water and polymer (mean index about 1.40) while wet and in polymer
    (1.50) when dry; titanium dioxide of 0.25 um scatters that much more, by Mie theory.
``milk``
    4 per mm of dry film at 550 nm, falling as the cube of the wavelength: polymer spheres of 0.10
    to 0.15 um (index 1.48) at 30 % by volume in water scatter 2.9 to 6.7, by Mie theory with the
    crowding of hard spheres (Percus-Yevick, at zero angle).
``glare``
    1 for a surface that scatters its own reflection everywhere and 0 for one seen away from its
    glint are exact; the steps between are common practice, no source.

All are to be replaced by what a painter's own wet and dry photos say.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import StrEnum

from swatchwright.language import mark

__all__ = ["FAMILIES", "Family", "Finish", "family_of"]


class Family(StrEnum):
    """A finish family, by the name a shelf file gives it."""

    CHALKY = mark("chalky matte")
    MINERAL = mark("mineral")
    EMULSION = mark("emulsion matte")
    EGGSHELL = mark("eggshell")
    SATIN = mark("satin")
    GLOSS = mark("gloss")
    OIL = mark("oil")


@dataclass(frozen=True, slots=True)
class Finish:
    """What a family does between wet and dry.

    Parameters
    ----------
    glare
        Share of the dry surface's own reflection that is seen, 0-1.
    wet_scattering
        Scattering of the pigment while wet, as a factor on that of the dry film, above 0.
    milk
        Scattering of the wet polymer at 550 nm, per mm of the dry film it becomes, 0 or more.
    waterborne
        Whether it is thinned with water. Water-borne and solvent-borne paint are never mixed.
    """

    glare: float
    wet_scattering: float
    milk: float
    waterborne: bool = True


_FULL_PORES = 0.32

FAMILIES: dict[Family, Finish] = {
    Family.CHALKY: Finish(1.0, 1.0 - 0.50 * (1.0 - _FULL_PORES), 0.0),
    Family.MINERAL: Finish(1.0, 1.0 - 0.75 * (1.0 - _FULL_PORES), 0.0),
    Family.EMULSION: Finish(0.75, 1.2, 4.0),
    Family.EGGSHELL: Finish(0.55, 1.2, 4.0),
    Family.SATIN: Finish(0.3, 1.2, 4.0),
    Family.GLOSS: Finish(0.0, 1.2, 4.0),
    Family.OIL: Finish(0.3, 1.0, 0.0, waterborne=False),
}

_OTHER_WORDS = {
    "chalk": Family.CHALKY,
    "chalky": Family.CHALKY,
    "lime": Family.MINERAL,
    "milk": Family.MINERAL,
    "emulsion": Family.EMULSION,
    "acrylic": Family.EMULSION,
    "matt": Family.EMULSION,
    "matte": Family.EMULSION,
    "flat": Family.EMULSION,
    "semigloss": Family.SATIN,
}

_SPIRIT = {"oil", "alkyd", "solvent"}
_WATER = {"water", "waterborne"}


def family_of(text: str) -> Family | None:
    """Read a family's name as a painter may write it; None for one we do not know.

    >>> family_of("Chalky Matt")
    <Family.CHALKY: 'chalky matte'>
    """
    plain = " ".join(re.findall(r"[^\W_]+", text.lower())).replace("semi gloss", "semigloss")
    words = ["matte" if word == "matt" else word for word in plain.split()]
    # What thins it counts before its sheen: an alkyd gloss must not meet water.
    if _SPIRIT & set(words) and not _WATER & set(words):
        return Family.OIL
    by_name = {family.value: family for family in Family} | _OTHER_WORDS
    return next((by_name[word] for word in (" ".join(words), *words) if word in by_name), None)
