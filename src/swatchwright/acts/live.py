"""Follow the grey mark while it is dragged, as fast as the hand moves.

Which pixels are one colour hardly depends on the light, so that a moved grey only multiplies the
colours that were found. What is shown meanwhile is worked out from that, and read anew once the
mark stays where it is.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, sqrt

import numpy as np

from swatchwright.acts.colours import PhotoColours
from swatchwright.colour.convert import lab_to_linear_srgb, linear_srgb_to_lab
from swatchwright.language import say
from swatchwright.photo.image import require_inside
from swatchwright.photo.reference import GREY_CARD, balance_from_grey
from swatchwright.values import Lab, Rect

__all__ = ["FollowedGrey", "follow_grey"]

_ENOUGH = 4096
"""Pixels of a grey that say what all of them would."""


@dataclass(frozen=True, slots=True)
class FollowedGrey:
    """What a grey mark would make of the colours.

    Parameters
    ----------
    gains
        Factors of linear red, green and blue, to show the photo in that light.
    labs
        The colours, in the order in which they were found.
    warnings
        Signs that the mark is not on an even grey, in plain words.
    """

    gains: tuple[float, float, float]
    labs: tuple[Lab, ...]
    warnings: tuple[str, ...]


def follow_grey(found: PhotoColours, grey: Rect, *, reflectance: float = GREY_CARD) -> FollowedGrey:
    """Work out quickly what another place of the grey card would make of colours found before.

    Parameters
    ----------
    found
        The colours, with any balance or none.
    grey
        Where the card would be.
    reflectance
        What it reflects, 0-1.

    Raises
    ------
    MendableError
        If there is no usable grey at that place.
    """
    require_inside(found.photo, grey, say("The mark of the grey reference"))
    # Every so-manieth row and column, so that a large mark on a large photo takes no longer.
    step = max(1, ceil(sqrt(grey.width * grey.height / _ENOUGH)))
    part = found.photo.part(grey, step)
    balance = balance_from_grey(part, Rect(0, 0, part.width, part.height), reflectance)
    ratio = np.divide(balance.gains, found.balance.gains)
    light = lab_to_linear_srgb([colour.colour.lab.triple for colour in found.colours]) * ratio
    labs = tuple(Lab.of(lab) for lab in linear_srgb_to_lab(light))
    return FollowedGrey(balance.gains, labs, balance.warnings)
