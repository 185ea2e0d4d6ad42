"""A pot of mixed paint: what is in it, whether that can be, and what may be added to it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import isfinite

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.paint.paints import Paint

__all__ = ["Pot", "check_pot", "check_room", "may_be_added"]


@dataclass(frozen=True, slots=True)
class Pot:
    """What is in a pot: paints and how much of each, ml, all above 0."""

    paints: tuple[Paint, ...]
    volumes: tuple[float, ...]

    @property
    def volume(self) -> float:
        """All of it, ml."""
        return sum(self.volumes)


def check_pot(pot: Pot) -> None:
    """See that a pot can be.

    Raises
    ------
    MendableError
        If it is empty, an amount is not above 0, or what is in it does not mix.
    """
    if not pot.paints or len(pot.paints) != len(pot.volumes):
        raise MendableError(
            say("The pot is empty."), say("Say which paints are in it, and how much.")
        )
    for paint, ml in zip(pot.paints, pot.volumes, strict=True):
        if not (isfinite(ml) and ml > 0):
            raise MendableError(
                say("The pot holds {ml:g} ml of {paint}.", ml=ml, paint=paint.name),
                say("Give an amount above 0 ml."),
            )
    if len({p.finish.waterborne for p in pot.paints}) > 1:
        raise MendableError(
            say("The pot holds water-borne and solvent-borne paint."), say("The two do not mix.")
        )


def check_room(pot: Pot, room: float) -> None:
    """See that what is in a pot has room in it, ml.

    Raises
    ------
    MendableError
        If it has not.
    """
    if not isfinite(room) or room < pot.volume:
        raise MendableError(
            say(
                "There are {pot:g} ml in the pot, and it has room for only {room:g} ml.",
                pot=pot.volume,
                room=room,
            ),
            say("Give the size of the pot, or put some of the paint aside."),
        )


def may_be_added(pot: Pot, shelf: Sequence[Paint]) -> tuple[Paint, ...]:
    """Give the paints of a shelf that mix with what is in a pot.

    Raises
    ------
    MendableError
        If there is none.
    """
    water = pot.paints[0].finish.waterborne
    may = tuple(p for p in shelf if p.finish.waterborne is water)
    if not may:
        raise _none_of_its_kind(water=water)
    return may


def _none_of_its_kind(*, water: bool) -> MendableError:
    if water:
        return MendableError(
            say("The pot is water-borne and no paint of the shelf is."),
            say("Add a water-borne paint to the shelf."),
        )
    return MendableError(
        say("The pot is solvent-borne and no paint of the shelf is."),
        say("Add a solvent-borne paint to the shelf."),
    )
