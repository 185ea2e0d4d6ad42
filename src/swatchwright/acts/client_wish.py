"""What a client wants of a colour, and what she wants now, as it is kept with a job."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, replace
from enum import StrEnum

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.mixing.asked import Asked, asked_for
from swatchwright.mixing.knock_back import as_grey_as
from swatchwright.values import Lab

__all__ = [
    "CLIENT_PART",
    "ClientWish",
    "ClientWishes",
    "ColourStands",
    "Question",
    "Stands",
    "Wanted",
]

CLIENT_PART = "client"
"""The part of a job that its client's wishes are kept in."""


class Stands(StrEnum):
    """How far a colour has come when the client is not content with it."""

    UNMIXED = "unmixed"
    PAINTED = "painted"
    POT = "pot"


@dataclass(frozen=True, slots=True)
class Wanted:
    """Where a client wants a coat to go; just one of the three.

    Parameters
    ----------
    asked
        A word and how far, 0-1, as `mixing.asked` has them.
    grey_as
        A colour to be as grey as: its chroma, at the coat's own hue and lightness.
    colour
        A colour to become.
    """

    asked: tuple[Asked, float] | None = None
    grey_as: Lab | None = None
    colour: Lab | None = None

    def aim(self, now: Lab) -> Lab:
        """Give the colour to go for.

        Raises
        ------
        MendableError
            If not just one of the three is given, or it cannot be.
        """
        if sum(v is not None for v in (self.asked, self.grey_as, self.colour)) != 1:
            raise MendableError(
                say("It is not clear where the colour should go."),
                say(
                    "Give one of: a word such as “less vivid” and how far, a colour to be as grey "
                    "as, or the wanted colour."
                ),
            )
        if self.asked is not None:
            return asked_for(now, *self.asked)
        return as_grey_as(now, self.grey_as) if self.grey_as else self.colour or now


@dataclass(frozen=True, slots=True)
class Question:
    """What is asked of a mix for a client.

    Parameters
    ----------
    wanted
        Where it should go.
    left
        Share of a wet wash that is left after wiping.
    pot
        ml of the mix that are left in the pot.
    tub
        How full the pot may get, ml; None where that was not said.
    stands
        Whether nothing is mixed yet, the piece is painted already or the paint is in the pot; None
        where that was not said.
    """

    wanted: Wanted
    left: float
    pot: float
    tub: float | None
    stands: Stands | None = None


@dataclass(frozen=True, slots=True)
class ClientWish:
    """What a client wants now in place of the colour that was wanted first.

    Parameters
    ----------
    first
        The colour that was wanted first: the wish is of the mixes that were found for it.
    wanted
        How it was asked.
    aim
        The colour that it comes to, with all finishes on.
    """

    first: Lab
    wanted: Wanted
    aim: Lab


@dataclass(frozen=True, slots=True)
class ColourStands:
    """How far the colour that was wanted first has come on the piece."""

    first: Lab
    stands: Stands


@dataclass(frozen=True, slots=True)
class ClientWishes:
    """What a client wants now, one wish for each colour that was wanted first, and where it stands.

    Parameters
    ----------
    wishes
        What is wanted in place of a colour.
    stand
        Whether of that colour nothing is mixed yet, or it is painted already or still in the pot,
        where it was said.
    """

    wishes: tuple[ClientWish, ...] = ()
    stand: tuple[ColourStands, ...] = ()

    def of(self, first: Lab) -> ClientWish | None:
        """Give the wish in place of a colour; None where that is still wanted."""
        return next((wish for wish in self.wishes if wish.first == first), None)

    def but(self, first: Lab, wish: ClientWish | None) -> ClientWishes:
        """Give them with another wish in place of a colour, or with none."""
        others = tuple(one for one in self.wishes if one.first != first)
        return replace(self, wishes=others if wish is None else (*others, wish))

    def stands(self, first: Lab) -> Stands | None:
        """Give how far a colour has come; None where that was not said."""
        return next((one.stands for one in self.stand if one.first == first), None)

    def standing(self, first: Lab, stands: Stands) -> ClientWishes:
        """Give them with a colour come so far."""
        others = tuple(one for one in self.stand if one.first != first)
        return replace(self, stand=(*others, ColourStands(first, stands)))

    def among(self, colours: Collection[Lab]) -> ClientWishes:
        """Give what was said of these colours; all of it where there are none yet.

        What was said of a colour that nobody wants any more is said of nothing.
        """
        if not colours:
            return self
        wishes = tuple(wish for wish in self.wishes if wish.first in colours)
        return ClientWishes(wishes, tuple(one for one in self.stand if one.first in colours))
