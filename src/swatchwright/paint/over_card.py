"""The colour of a film that does not hide yet, over the black and the white of a card.

References
----------
The card is that of ISO 6504: a perfect black, and a white of Y = 0.8. See docs/bibliography.md.
"""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.spectrum import lab_of
from swatchwright.paint.film import film_reflectance
from swatchwright.paint.mixture import DRY_INDEX, Mixtures
from swatchwright.paint.surface import internal_diffuse, normal_reflectance, seen_reflectance

__all__ = ["CARD_GROUNDS", "over_card_lab"]

Floats = NDArray[np.floating[Any]]

CARD_GROUNDS = (0.0, 0.8)
"""Reflectance of the black and of the white of the card, all over the spectrum."""


def over_card_lab(mixtures: Mixtures, coats: int) -> tuple[Floats, Floats]:
    """Give CIELAB (n, 3), D65, dry, over the black and over the white after some coats.

    Film thickness is the spreading rate's, laid even.

    Parameters
    ----------
    mixtures
        The mixtures.
    coats
        How many coats, 1 or more.
    """
    k1, k2 = float(normal_reflectance(DRY_INDEX)), float(internal_diffuse(DRY_INDEX))
    thickness = (coats * mixtures.wet_film * mixtures.solids)[:, None]
    black, white = (
        lab_of(
            seen_reflectance(
                film_reflectance(mixtures.K, mixtures.S, thickness, ground),
                k1,
                k2,
                mixtures.glare[:, None],
            )
        )
        for ground in CARD_GROUNDS
    )
    return black, white
