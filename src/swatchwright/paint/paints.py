"""A paint, and many of them stacked into arrays."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.language import mark
from swatchwright.paint.family import FAMILIES, Family, Finish

__all__ = ["HowKnown", "Paint", "PaintStack", "Tin", "stack"]

Floats = NDArray[np.floating[Any]]


class HowKnown(StrEnum):
    """Where a paint's K and S come from, from most to least trusted."""

    MEASURED = mark("measured")
    FITTED = mark("fitted")
    GUESSED = mark("guessed")
    INVENTED = mark("invented")


@dataclass(frozen=True, slots=True)
class Tin:
    """A size the paint is sold in, ml, and its price there (None where not given)."""

    ml: float
    price: float | None = None


@dataclass(frozen=True, slots=True, eq=False)
class Paint:
    """A paint as the shelf knows it.

    Parameters
    ----------
    id
        Short name used in commands and files, without spaces.
    name
        Plain descriptive name.
    family
        Finish family.
    K, S
        (36,) absorption and scattering on `colour.spectrum.WAVELENGTHS`, per mm of dry film.
    how_known
        Where K and S come from.
    volume_solids
        Share of the wet volume that stays when dry, 0-1.
    density
        g/ml, wet; None where it is not known, and then no grams can be given.
    spreading_rate
        m2 per litre and coat.
    tins
        Sizes sold.
    note
        Anything the shelf says about it.
    spread
        (n, 72) how well K and S are known: a root of the covariance of ln K (36) and ln S (36),
        each row a direction of one standard deviation, independent of the others; None where
        only `how_known` tells.
    own_finish
        What this paint does between wet and dry, where that was learnt; its family's if None.
    hiding_read
        Whether a coat of it over black was read, and so how it hides; None where nobody says.
    """

    id: str
    name: str
    family: Family
    K: Floats
    S: Floats
    how_known: HowKnown = HowKnown.GUESSED
    volume_solids: float = 0.38
    density: float | None = None
    spreading_rate: float = 12.0
    tins: tuple[Tin, ...] = ()
    note: str = ""
    spread: Floats | None = None
    own_finish: Finish | None = None
    hiding_read: bool | None = None

    @property
    def finish(self) -> Finish:
        """What it does between wet and dry: its own if that was learnt, else its family's."""
        return self.own_finish or FAMILIES[self.family]


@dataclass(frozen=True, slots=True, eq=False)
class PaintStack:
    """Paints as arrays: K, S (n, 36); one value a paint (n,) for the rest."""

    K: Floats
    S: Floats
    solids: Floats
    glare: Floats
    wet_scattering: Floats
    milk: Floats
    waterborne: NDArray[np.bool_]
    spreading_rate: Floats

    def __len__(self) -> int:
        return int(self.K.shape[0])


def stack(paints: Sequence[Paint]) -> PaintStack:
    """Stack paints into arrays, in their order."""

    def column(values: list[float]) -> Floats:
        return np.array(values, dtype=np.float64)

    return PaintStack(
        K=np.array([p.K for p in paints], dtype=np.float64),
        S=np.array([p.S for p in paints], dtype=np.float64),
        solids=column([p.volume_solids for p in paints]),
        glare=column([p.finish.glare for p in paints]),
        wet_scattering=column([p.finish.wet_scattering for p in paints]),
        milk=column([p.finish.milk for p in paints]),
        waterborne=np.array([p.finish.waterborne for p in paints], dtype=np.bool_),
        spreading_rate=column([p.spreading_rate for p in paints]),
    )
