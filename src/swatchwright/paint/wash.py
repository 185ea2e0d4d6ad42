"""Washes and glazes: paint thinned, laid and mostly wiped back, pass over pass.

What stays is a film of thickness (wet film left) x volume solids / (1 + water per paint). Wiping
leaves more in the grain and the mouldings, so a wash has a range of colours: by common practice
(no source) over 0.3 to 1.7 of its mean thickness. What such a film does to a colour is reckoned in
`paint.layered`.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

__all__ = ["GRAIN", "Wash", "dry_film"]

Floats = NDArray[np.floating[Any]]

GRAIN = (0.3, 1.0, 1.7)
"""Thickness of a wiped film as a factor on its mean: on the flat, on the whole, in the grain."""


@dataclass(frozen=True, slots=True)
class Wash:
    """How a wash is made and laid.

    Parameters
    ----------
    water
        Volumes of water, or of glaze medium that leaves nothing, to one of paint; 0 or more.
    left
        Share of the wet film that is left after wiping, 0-1.
    passes
        How often it is laid, each on the dry last one, 0 or more.
    """

    water: float = 1.0
    left: float = 1.0
    passes: int = 1


def dry_film(wash: Wash, wet_film: ArrayLike, solids: ArrayLike) -> Floats:
    """Give the dry thickness of all passes, in the unit of the wet film.

    Parameters
    ----------
    wet_film
        Of one pass as laid, before wiping, 0 or more.
    solids
        Volume solids of the paint, 0-1.

    Raises
    ------
    ValueError
        If the wash has a negative amount of anything, or leaves more than was laid.
    """
    if wash.water < 0 or wash.passes < 0 or not 0 <= wash.left <= 1:
        raise ValueError("a wash has 0 or more water and passes, and leaves 0 to 1 of its film")
    wet, share = (np.asarray(v, dtype=np.float64) for v in (wet_film, solids))
    return np.asarray(wash.passes * wash.left * wet * share / (1.0 + wash.water))
