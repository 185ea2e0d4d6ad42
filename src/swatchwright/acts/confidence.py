"""How far an untried mix will usually be from the cloth."""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot, sqrt

import numpy as np

from swatchwright.colour.doubt import give_or_take, usual_difference
from swatchwright.paint.fit.doubt import mix_covariances
from swatchwright.paint.fit.fitted import FORMULA_SPREAD
from swatchwright.paint.mixture import dry_lab, mix
from swatchwright.paint.paints import HowKnown, Paint, stack
from swatchwright.values import Covariance, KnownColour, Lab, isotropic

__all__ = ["EXACT", "Confidence", "confidence_in"]

EXACT: Covariance = isotropic(0.0)
"""Of a colour that is what it is said to be."""

# Median CIEDE2000 of predicted mixtures, found on open data of real oil paints before the project
# began: 3.4 where let-downs were in the fit, 9 to 12 from single drawdowns. Invented paints are
# what they are said to be.
_PAINT_DOUBT = {
    HowKnown.MEASURED: 3.4,
    HowKnown.FITTED: 3.4,
    HowKnown.GUESSED: 10.5,
    HowKnown.INVENTED: 0.0,
}


@dataclass(frozen=True, slots=True)
class Confidence:
    """How far the painted colour will usually be from the cloth, before any sample is brushed.

    Parameters
    ----------
    photo
        Usual CIEDE2000 between the photo's colour and the cloth; 0 for a typed colour.
    paints
        Usual CIEDE2000 between the mix as computed and as it dries.
    covariance
        Of the dry mix as computed, squared Lab units: what is not known of the paints, and what
        the theory of mixing gets wrong.
    by_spread
        Whether it was worked out from how well each paint is known, and not from the kind of
        knowledge alone.
    """

    photo: float
    paints: float
    covariance: Covariance = EXACT
    by_spread: bool = False

    @property
    def both(self) -> float:
        """The two together, as independent errors add."""
        return sqrt(self.photo**2 + self.paints**2)


def confidence_in(
    wanted: KnownColour, paints: tuple[Paint, ...], shares: tuple[float, ...] | None = None
) -> Confidence:
    """Say how far off the dried mix will usually be.

    Paints of which it is told how well K and S are known count by that; of the others the least
    known decides. What the theory of mixing gets wrong is part of what is usual for a kind, and is
    added where there is none such.

    Parameters
    ----------
    wanted
        The colour, with how sure it is.
    paints, shares
        The mix, by shares of the wet volume; equal ones if None.
    """
    photo = give_or_take(wanted)
    by_kind = max((_PAINT_DOUBT[p.how_known] for p in paints if p.spread is None), default=0.0)
    if all(paint.spread is None for paint in paints):
        return Confidence(photo, by_kind, isotropic(by_kind))
    parts = shares or (1.0 / len(paints),) * len(paints)
    formula = 0.0 if by_kind else FORMULA_SPREAD
    carried = mix_covariances(paints, [parts], formula=formula)[0]
    lab = dry_lab(mix(stack(paints), [range(len(paints))], [parts]))[0]
    whole = carried + np.array(isotropic(by_kind))
    covariance = tuple((float(row[0]), float(row[1]), float(row[2])) for row in whole)
    return Confidence(
        photo=photo,
        paints=hypot(by_kind, usual_difference(Lab.of(lab), carried)),
        covariance=(covariance[0], covariance[1], covariance[2]),
        by_spread=True,
    )
