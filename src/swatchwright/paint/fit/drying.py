"""What a paint does between wet and dry, learnt from the two colours of one stroke.

The family says which numbers may differ from paint to paint, and what they usually are; the two
colours say how far this paint departs from that. Only the step from wet to dry is used: the two
photos share their light and camera, so that much of what is off in one is off in the other too.

How far paints of one family lie apart is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.names import closeness
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.paint.family import FAMILIES, Family, Finish
from swatchwright.paint.mixture import Mixtures, dry_lab, mix, wet_lab
from swatchwright.paint.paints import Paint, stack

__all__ = ["Drying", "Learnt", "learn_drying", "may_differ"]

Floats = NDArray[np.floating[Any]]

# Standard deviations of how far one paint of a family is from another: of the share of glare, and
# of the logarithms of wet scattering and milk. That of glare is small, for K and S were fitted by
# the family's glare and would have to be fitted again by another.
_GLARE_SPREAD, _SCATTERING_SPREAD, _MILK_SPREAD = 0.08, 0.25, 0.5

# Of a step between two colours of one stroke under one light, in each direction of CIELAB.
_STEP_SPREAD = 1.0

# A dry colour that far from the paint's own is of another paint, or of another light.
_ANOTHER_PAINT = 15.0

# A step as long as this is not drying.
_LONGEST_STEP = 40.0

_ENDS = (-3.0, 3.0)

_TURNS = 25
_TINY = 1e-4


@dataclass(frozen=True, slots=True)
class Learnt:
    """One number of a finish: what it is for the family, and for this paint, give or take."""

    name: str
    usual: float
    own: float
    spread: float


@dataclass(frozen=True, slots=True, eq=False)
class Drying:
    """A paint that has learnt how it dries.

    Parameters
    ----------
    paint
        The paint with a finish of its own.
    learnt
        What was learnt of each number that may differ within its family.
    off_before, off_after
        CIEDE2000 between the wet colour that was seen and the one predicted from the dry one
        that was seen: by the family's numbers, and by the paint's own.
    dry_moved
        CIEDE2000 by which the paint's own dry colour is another, for its other glare.
    """

    paint: Paint
    learnt: tuple[Learnt, ...]
    off_before: float
    off_after: float
    dry_moved: float


def may_differ(family: Family) -> tuple[str, ...]:
    """Name the numbers that may differ from paint to paint within a family.

    A chalky or mineral film differs in its pores, an emulsion in its pigment's room and its milk,
    and each whose surface is neither wholly matte nor a gloss in its glare.
    """
    usual = FAMILIES[family]
    names = [] if usual.glare in {0.0, 1.0} else ["glare"]
    if usual.waterborne:
        names.append("wet_scattering")
    return (*names, "milk") if usual.milk else tuple(names)


def learn_drying(wet: ArrayLike, dry: ArrayLike, paint: Paint) -> Drying:
    """Learn a paint's finish from the colours of one stroke, wet and dry.

    Parameters
    ----------
    wet, dry
        (3,) CIELAB, read under one light with one camera.
    paint
        The paint as it is known; its K and S stay as they are.

    Raises
    ------
    MendableError
        If the dry colour is far from the paint's own, or the two lie too far apart for drying.
    """
    seen_wet, seen_dry = _checked(wet, dry, paint)
    own = dry_lab(_alone(paint))[0]
    names = may_differ(paint.family)

    def off(x: Floats) -> Floats:
        """Give what is off in the step, and by how much the dry colour moves."""
        look = _look(_with(paint, names, x))
        return np.concatenate([look[1] - look[0] - (seen_wet - seen_dry), look[0] - own])

    x, matrix = _least(off, len(names))
    learnt = _with(paint, names, x)
    spreads = np.sqrt(np.diag(np.linalg.inv(matrix)))
    return Drying(
        paint=learnt,
        learnt=tuple(_told(learnt, *one) for one in zip(names, x, spreads, strict=True)),
        off_before=_off(seen_wet, seen_dry, replace(paint, own_finish=None)),
        off_after=_off(seen_wet, seen_dry, learnt),
        dry_moved=float(delta_e_2000(own, dry_lab(_alone(learnt))[0])),
    )


def _least(off: Callable[[Floats], Floats], count: int) -> tuple[Floats, Floats]:
    """Find the unknowns that make errors least, beside their own unlikeliness (Gauss-Newton).

    Returns
    -------
    The unknowns (count,) in standard deviations, and the inverse of their covariance.
    """
    x, matrix = np.zeros(count), np.eye(count)
    for _ in range(_TURNS):
        now = off(x)
        slopes = np.array([(off(x + h) - now) / _TINY for h in _TINY * np.eye(count)]).T
        matrix = np.eye(count) + slopes.T @ slopes / _STEP_SPREAD**2
        gradient = x + slopes.T @ now / _STEP_SPREAD**2
        move = np.clip(np.linalg.solve(matrix, -gradient), -0.5, 0.5)
        x = np.clip(x + move, *_ENDS)
        if np.abs(move).max() < 1e-6:
            break
    return x, matrix


def _checked(wet: ArrayLike, dry: ArrayLike, paint: Paint) -> tuple[Floats, Floats]:
    """Refuse colours that are none, or not of one stroke of this paint."""
    seen_wet, seen_dry = (np.asarray(v, dtype=np.float64) for v in (wet, dry))
    if not all(np.isfinite(v).all() and 0 <= v[0] <= 100 for v in (seen_wet, seen_dry)):
        raise MendableError(
            say("One of the two colours is not a colour."),
            say("Give L*, a*, b* with L* from 0 to 100."),
        )
    own = dry_lab(_alone(paint))[0]
    apart = float(delta_e_2000(own, seen_dry))
    if apart > _ANOTHER_PAINT:
        raise MendableError(
            say(
                "The dry stroke is {apart:.0f} CIEDE2000 from the colour of {paint} on the shelf: "
                "{seen}.",
                apart=apart,
                seen=closeness(round(apart)),
                paint=paint.id,
            ),
            say(
                "See that it is the same paint, laid until it hides and put right by the grey card;"
                " or fit the paint anew first."
            ),
        )
    step = seen_wet - seen_dry
    if float(np.linalg.norm(step)) > _LONGEST_STEP:
        raise MendableError(
            say(
                "Wet and dry lie {apart:.0f} apart, further than paint dries.",
                apart=float(np.linalg.norm(step)),
            ),
            say("Read both off the same stroke under the same light."),
        )
    return seen_wet, seen_dry


def _alone(paint: Paint) -> Mixtures:
    return mix(stack([paint]), [[0]], [[1.0]])


def _look(paint: Paint) -> tuple[Floats, Floats]:
    """Give CIELAB (3,) dry and wet."""
    alone = _alone(paint)
    return dry_lab(alone)[0], wet_lab(alone)[0]


def _off(seen_wet: Floats, seen_dry: Floats, paint: Paint) -> float:
    """Give how far the wet colour is from the one predicted from the dry one that was seen."""
    dry, wet = _look(paint)
    return float(delta_e_2000(seen_wet, seen_dry + wet - dry))


def _with(paint: Paint, names: tuple[str, ...], x: Floats) -> Paint:
    """Give the paint with numbers that are so many standard deviations from the family's."""
    usual = FAMILIES[paint.family]
    own = {name: _value(usual, name, float(z)) for name, z in zip(names, x, strict=True)}
    return replace(paint, own_finish=replace(usual, **own))  # type: ignore[arg-type]


def _value(usual: Finish, name: str, z: float) -> float:
    if name == "glare":
        return float(np.clip(usual.glare + _GLARE_SPREAD * z, 0.0, 1.0))
    spread = _MILK_SPREAD if name == "milk" else _SCATTERING_SPREAD
    return float(getattr(usual, name) * np.exp(spread * z))


def _told(paint: Paint, name: str, z: float, spread: float) -> Learnt:
    usual = FAMILIES[paint.family]
    low, high = (_value(usual, name, z + side * spread) for side in (-1, 1))
    return Learnt(name, float(getattr(usual, name)), _value(usual, name, z), (high - low) / 2)
