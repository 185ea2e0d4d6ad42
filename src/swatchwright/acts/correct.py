"""Put a pot right by adding, and mix the neighbours of a colour to choose from by eye."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from swatchwright.acts.mix import look_of_mix
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.mixing.asked import Asked, asked_for
from swatchwright.mixing.fan import BRUSH_OUT, Neighbour, fan
from swatchwright.mixing.mend import Additions, Pot, additions, aim_by_sample, pot_colour
from swatchwright.mixing.recipe import Parts, Recipe
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab

__all__ = ["Correction", "correct_pot", "neighbours"]

_ROOM = 1.25


@dataclass(frozen=True, slots=True)
class Correction:
    """What to add to a pot.

    Parameters
    ----------
    pot
        What is in it.
    now
        Its computed dry colour.
    aim
        The computed colour that the additions go for.
    additions
        What to add, the least first.
    """

    pot: Pot
    now: Lab
    aim: Lab
    additions: Additions


def correct_pot(
    shelf: Shelf,
    volumes: Sequence[tuple[str, float]],
    *,
    wanted: Lab | None = None,
    seen: Lab | None = None,
    asked: tuple[Asked, float] | None = None,
    tub: float | None = None,
    most_paints: int = 2,
) -> Correction:
    """Say what to add to a pot to bring it to a wanted colour, or to where a client wants it.

    Parameters
    ----------
    shelf
        Paints that are in the pot and that may be added.
    volumes
        Ids and ml of what is in the pot.
    wanted
        The colour to reach.
    seen
        The colour of a dried sample of the pot, where it was measured: what it is off by is then
        allowed for.
    asked
        Instead of `wanted`: a word and how far, 0-1.
    tub
        What the tub holds, ml; a quarter more than is in it if None.
    most_paints
        How many different paints to add at the most, 1 or 2.

    Raises
    ------
    MendableError
        If not just one of `wanted` and `asked` is given, or the pot or the tub cannot be.
    """
    if (wanted is None) == (asked is None):
        raise MendableError(
            say("It is not clear where the pot should go."),
            say("Give either the wanted colour, or a word such as “less vivid” and how far."),
        )
    look = look_of_mix(shelf, volumes)
    pot = Pot(look.paints, tuple(ml for _, ml in volumes))
    now = pot_colour(pot)
    if wanted is None and asked is not None:
        wanted = asked_for(now if seen is None else seen, *asked)
    assert wanted is not None  # noqa: S101 - one of the two was given
    aim = wanted if seen is None else aim_by_sample(pot, seen, wanted)
    room = pot.volume * _ROOM if tub is None else tub
    return Correction(
        pot, now, aim, additions(pot, aim, shelf.paints, room, most_paints=most_paints)
    )


def neighbours(
    shelf: Shelf, parts: Sequence[tuple[str, float]], *, volume: float = BRUSH_OUT
) -> tuple[Neighbour, ...]:
    """Mix six to eight neighbours around a mix, about 2 CIEDE2000 from it, to brush out.

    Parameters
    ----------
    shelf
        The paints.
    parts
        Ids and amounts of the mix at the middle; only their proportions count.
    volume
        ml of each brush-out.

    Raises
    ------
    MendableError
        As `look_of_mix` does.
    """
    look = look_of_mix(shelf, parts)
    counts = tuple(max(1, round(share * 100)) for share in look.shares)
    middle = Recipe(look.paints, look.shares, 0.0, look.dry, look.wet, Parts(counts, 0, 0), None)
    return fan(middle, shelf.paints, volume=volume)
