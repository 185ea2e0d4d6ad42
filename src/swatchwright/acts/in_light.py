"""How a surface looks in a light of the room, to an eye that has got used to that light.

All that is shown of a colour in another light than daylight, on a page, by a command or on paper,
comes from `adapted`: the colour that looks alike in daylight. A grey stays grey.

References
----------
CIE 015:2018 (colour in a light); Lam 1985 (Bradford). See docs/bibliography.md.
"""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.convert import D65_WHITE, bradford, xyz_to_lab
from swatchwright.colour.spectrum import Light, light_white, xyz_of
from swatchwright.mixing.smooth import smoothest_reflectance
from swatchwright.values import Lab

__all__ = ["ROOM", "adapted", "cloth_in", "cloth_in_room"]

Floats = NDArray[np.floating[Any]]

ROOM = (Light.D65, Light.LAMP, Light.WARM_LED, Light.COOL_LED, Light.TUBE)
"""Daylight, a warm lamp, a warm and a cool LED, a tube."""


def adapted(reflectance: Floats, light: Light) -> Floats:
    """Give CIELAB (..., 3), D65, of what looks like reflectances (..., 36) under a light.

    To an eye that has got used to that light, by the linear Bradford transform.
    """
    matrix = bradford(light_white(light), D65_WHITE)
    return xyz_to_lab(xyz_of(reflectance, light) @ matrix.T)


def cloth_in(wanted: Lab, light: Light) -> Lab:
    """Give how a cloth of a colour looks under a light, its spectrum taken as the smoothest.

    What spectrum it has nobody knows. In daylight it has the colour that is wanted, even one that
    no surface can have.
    """
    if light is Light.D65:
        return wanted
    return Lab.of(adapted(smoothest_reflectance(wanted), light))


def cloth_in_room(wanted: Lab) -> tuple[tuple[Light, Lab], ...]:
    """Give the same under each light of a room."""
    return tuple((light, cloth_in(wanted, light)) for light in ROOM)
