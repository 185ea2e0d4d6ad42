"""Tell what a given mix will look like."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import isfinite

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.measures.shares import rounded_shares
from swatchwright.paint.mixture import dry_lab, mix, wet_lab
from swatchwright.paint.paints import Paint, stack
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab

__all__ = ["MixLook", "look_of_mix", "own_colours"]

_MOST_PAINTS = 8
_MOST_PARTS = 1e6


@dataclass(frozen=True, slots=True)
class MixLook:
    """A mix of given shares: how it looks dry and wet.

    Parameters
    ----------
    paints, shares
        The paints, and their shares of the wet volume, summing to 1.
    dry, wet
        Its colour as an opaque film.
    notes
        What was assumed, in plain words.
    """

    paints: tuple[Paint, ...]
    shares: tuple[float, ...]
    dry: Lab
    wet: Lab
    notes: tuple[str, ...]


def own_colours(paints: tuple[Paint, ...]) -> tuple[Lab, ...]:
    """Give the dry colour of each paint by itself."""
    alone = [[i] for i in range(len(paints))]
    labs = dry_lab(mix(stack(paints), alone, [[1.0]] * len(paints)))
    return tuple(Lab.of(lab) for lab in labs)


def look_of_mix(shelf: Shelf, parts: Sequence[tuple[str, float]]) -> MixLook:
    """Mix paints of a shelf in the given proportions.

    Parameters
    ----------
    shelf
        Where the paints are.
    parts
        Ids and amounts: shares, percentages or parts; only their proportions count.

    Raises
    ------
    MendableError
        If a paint is not on the shelf or named twice, an amount is not above zero, or
        water-borne and solvent-borne paints would meet.
    """
    _check(parts)
    paints = tuple(shelf.paint(id_) for id_, _ in parts)
    _check_carriers(paints)
    total = sum(amount for _, amount in parts)
    shares = tuple(amount / total for _, amount in parts)
    mixture = mix(stack(paints), [tuple(range(len(paints)))], [shares])
    dry, wet = (Lab.of(labs[0]) for labs in (dry_lab(mixture), wet_lab(mixture)))
    notes = list(shelf.notes)
    if not any(abs(total - whole) < 1e-6 * whole for whole in (1, 100)) and total != round(total):
        notes.append(
            say(
                "The shares add up to {total:g}, not to 1 or 100; only their proportions were "
                "used.",
                total=total,
            )
        )
    return MixLook(paints, rounded_shares(shares, 100_000), dry, wet, tuple(notes))


def _check(parts: Sequence[tuple[str, float]]) -> None:
    if not 1 <= len(parts) <= _MOST_PAINTS:
        raise MendableError(
            say("{many} paints were named.", many=len(parts)),
            say("Name from 1 to {most} of them.", most=_MOST_PAINTS),
        )
    ids = [id_ for id_, _ in parts]
    for id_, amount in parts:
        if not (isfinite(amount) and 0 < amount <= _MOST_PARTS):
            raise MendableError(
                say("The share of {paint} is {share:g}.", paint=id_, share=amount),
                say("Give each paint a share above zero, and no more than a million."),
            )
        if ids.count(id_) > 1:
            raise MendableError(
                say("{paint} is named twice.", paint=id_), say("Name each paint once.")
            )


def _check_carriers(paints: tuple[Paint, ...]) -> None:
    water = [p.name for p in paints if p.finish.waterborne]
    solvent = [p.name for p in paints if not p.finish.waterborne]
    if water and solvent:
        raise MendableError(
            say(
                "“{water}” is water-borne and “{solvent}” is solvent-borne.",
                water=water[0],
                solvent=solvent[0],
            ),
            say("The two do not mix: they separate and may not dry. Keep to one kind."),
        )
