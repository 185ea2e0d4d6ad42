"""The words for a paint that is put on the shelf by hand, changed, or taken off."""

from __future__ import annotations

from collections.abc import Sequence
from math import floor

from swatchwright.acts.own_paint import ColourFrom
from swatchwright.desktop.words.sitting import ReadWords
from swatchwright.language import say

ADD_A_PAINT = say("Add a paint…")
ADD_TIP = say("Put a paint of yours on the shelf: its name, its colour, and the tins it comes in")
HEADING = say("Add a paint")
HINT = say(
    "Its name, its dry colour, and how that is known. The surer the colour, the surer the mixes."
)
NAME, KIND = say("Name"), say("Kind and finish")
NAME_EXAMPLE = say("as the tin calls it")
COLOUR, COLOUR_EXAMPLE = say("Its dry colour"), say("L*, a*, b* or #rrggbb")
COLOUR_TIP = say(
    "<p>Three CIELAB numbers such as 46, 34, 24, or a screen colour such as #a4503c; or mark it in "
    "the photo</p>"
)
SEEN = say("What is typed, as a colour")
KNOWN = say("The colour is")
PUT_ON = say("Put it on the shelf")
WORKING = say("Working out the paint…")
NO_SIZE, NO_PRICE = say("which size"), say("its price")
TINS, MORE_TINS = say("Tins"), say("Another size")
NO_COLOUR = (
    say("The paint has no colour yet."),
    say("Type it, or mark it in the photo; by eye will do to begin with."),
)
FIRST_GREY = say("First drag a box on the grey card, well inside it.")
THEN_PAINT = say("Drag a box on the dry paint, well inside it.")
TAKEN = say("The colour is taken from the photo. Drag anew for another.")

OF_PAINT = ReadWords(
    say("Open a photo of the paint…"),
    say("Paint"),
    say(
        "Or take the colour from a photo: the paint brushed out and dry, beside the grey card. A "
        "photo that lies on the bench is here already."
    ),
    TAKEN,
)

_HOW = {
    ColourFrom.EYE: say(
        "guessed by eye or off the maker's card: off by {off}",
        off=floor(ColourFrom.EYE.usually_off),
    ),
    ColourFrom.PHOTO: say(
        "from a photo beside a grey card: off by {off}", off=floor(ColourFrom.PHOTO.usually_off)
    ),
    ColourFrom.MEASURED: say("measured with an instrument: hardly off"),
}

CHANGE, CHANGE_TIP = say("Change…"), say("Its name, its tins and what they cost")
CHANGE_HEADING = say("Change a paint")
CHANGE_HINT = say("Its name, its tins and what they cost. What is known of its colour stays.")
KEEP_CHANGES = say("Keep the changes")
TAKE_OFF, TAKE_OFF_TIP = (
    say("Take off the shelf"),
    say("It is in no mix from now on; jobs keep what they need of it, and undo brings it back"),
)


def how_item(how: ColourFrom) -> str:
    """Say in a list how a colour is known, and how far it may be off."""
    return _HOW[how]


def size_name(number: int) -> str:
    """Name the field for the size of a tin, 1 the first."""
    return say("Size of tin {number}", number=number)


def price_name(number: int) -> str:
    """Name the field for the price of a tin, 1 the first."""
    return say("Price of tin {number}", number=number)


def added_line(name: str, warnings: Sequence[str], moved: float) -> str:
    """Say that a paint is on the shelf, and that it is taken for another colour where it is so."""
    told = [say("“{name}” is on your shelf.", name=name), *warnings]
    if moved > 2.5:
        told.append(
            say(
                "Going by what paints are made of, its colour is likely a little different from "
                "what you gave; a card of it, read off a photo, settles that."
            )
        )
    return " ".join(told)


def changed_line(name: str) -> str:
    """Say that a paint was changed."""
    return say("“{name}” is kept as you changed it.", name=name)


def taken_off_line(name: str) -> str:
    """Say that a paint was taken off the shelf."""
    return say("“{name}” is off the shelf. Undo brings it back.", name=name)
