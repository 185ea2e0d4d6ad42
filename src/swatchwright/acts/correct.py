"""Put a pot right by adding, and mix the neighbours of a colour to choose from by eye."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from swatchwright.acts.client_wish import Wanted
from swatchwright.acts.layering import BARE, coats_of_stack, paints_for, without_washes
from swatchwright.acts.mix import look_of_mix
from swatchwright.colour.difference import JUST_SEEN
from swatchwright.colour.names import closeness
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.mixing.asked import Asked, asked_for
from swatchwright.mixing.fan import BRUSH_OUT, Neighbour, fan
from swatchwright.mixing.mend import Additions, Pot, additions, aim_by_sample, pot_colour
from swatchwright.mixing.recipe import Parts, Recipe
from swatchwright.paint.layered import Coat
from swatchwright.paint.layers import Layer, Stack
from swatchwright.paint.paints import Paint
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab

__all__ = ["ROOM", "Correction", "correct_pot", "neighbours", "put_right", "room_words"]

ROOM = 1.25
"""How full a pot may get where that is not said, as a factor on what is in it."""

# How far above what is there another pot is looked for where the room falls short, and what it must
# bring, CIEDE2000, to be told of.
_ROOMY, _TELLS = 4.0, 0.4


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
    over
        What lies over the paint: all colours are those seen with it on.
    roomier
        What could be added with more room in the pot, where that comes nearer; None where the
        room is enough.
    """

    pot: Pot
    now: Lab
    aim: Lab
    additions: Additions
    over: tuple[Layer, ...] = ()
    roomier: Additions | None = None


def correct_pot(
    shelf: Shelf,
    volumes: Sequence[tuple[str, float]],
    *,
    wanted: Lab | None = None,
    seen: Lab | None = None,
    asked: tuple[Asked, float] | None = None,
    tub: float | None = None,
    most_paints: int = 2,
    over: Stack = BARE,
    only: Sequence[str] | None = None,
) -> Correction:
    """Say what to add to a pot to bring it to a wanted colour, or to where a client wants it.

    What lies over the paint in the end is reckoned with: a wax deepens, so that more must be added
    below it than the bare paint would ask for.

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
        How full the pot may get, ml, with what is in it now; a quarter more than that if None.
    most_paints
        How many different paints to add at the most, 1 or 2.
    over
        What lies over the paint; its washes and glazes do not count, since what is stirred in is
        in their place.
    only
        Ids of the paints that may be added; all of the shelf if None.

    Raises
    ------
    MendableError
        If not just one of `wanted` and `asked` is given, or the pot or its room cannot be.
    """
    if (wanted is None) == (asked is None):
        raise MendableError(
            say("It is not clear where the pot should go."),
            say("Give either the wanted colour, or a word such as “less vivid” and how far."),
        )
    look = look_of_mix(shelf, volumes)
    pot = Pot(look.paints, tuple(ml for _, ml in volumes))
    stays = without_washes(over)
    coats = coats_of_stack(shelf, stays)
    now = pot_colour(pot, coats)
    if wanted is None and asked is not None:
        wanted = asked_for(now if seen is None else seen, *asked)
    assert wanted is not None  # noqa: S101 - one of the two was given
    aim = wanted if seen is None else aim_by_sample(pot, seen, wanted, coats)
    search = _Search(pot, aim, paints_for(shelf, look.paints, only), most_paints, coats)
    room = pot.volume * ROOM if tub is None else tub
    found = search.within(room)
    return Correction(pot, now, aim, found, stays.layers, search.roomier(found, room))


@dataclass(frozen=True, slots=True)
class _Search:
    """What is the same whatever the room."""

    pot: Pot
    aim: Lab
    may: tuple[Paint, ...]
    most: int
    over: tuple[Coat, ...]

    def within(self, room: float) -> Additions:
        """Find what to add to the pot."""
        return additions(self.pot, self.aim, self.may, room, most_paints=self.most, over=self.over)

    def roomier(self, found: Additions, room: float) -> Additions | None:
        """Find what could be added with more room, where that comes clearly nearer."""
        more = _ROOMY * self.pot.volume
        if found.delta_e < JUST_SEEN or room >= more:
            return None
        roomy = self.within(more)
        return roomy if roomy.delta_e < found.delta_e - _TELLS else None


def room_words(roomier: Additions | None) -> str:
    """Say that the room in the pot stops it, and how much it would take; empty where it does not.

    Parameters
    ----------
    roomier
        Of a `Correction`.
    """
    if roomier is None:
        return ""
    return say(
        "The room in the pot stops it there. With room for {ml:.0f} ml it could come to {off:.1f} "
        "off ({seen}): take some of the paint out first, or use a larger pot.",
        ml=roomier.volume,
        off=roomier.delta_e,
        seen=closeness(roomier.delta_e),
    )


def put_right(
    shelf: Shelf,
    volumes: Sequence[tuple[str, float]],
    wanted: Wanted,
    *,
    tub: float | None = None,
    over: Stack = BARE,
    only: Sequence[str] | None = None,
) -> Correction:
    """Say what to add to a pot to take it where a client wants it.

    Parameters
    ----------
    shelf, volumes, tub, over, only
        As for `correct_pot`.
    wanted
        Where it should go, from its colour with all on that stays over it.

    Raises
    ------
    MendableError
        As `correct_pot` does, or if it is not clear what is wanted.
    """
    coats = coats_of_stack(shelf, without_washes(over))
    look = look_of_mix(shelf, volumes)
    pot = Pot(look.paints, tuple(ml for _, ml in volumes))
    aim = wanted.aim(pot_colour(pot, coats))
    return correct_pot(shelf, volumes, wanted=aim, tub=tub, over=over, only=only)


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
