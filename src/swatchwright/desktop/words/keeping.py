"""The words of keeping a mix with a job, for a zone of its piece, and paints on the shelf."""

from __future__ import annotations

from collections.abc import Collection, Iterable

from swatchwright.acts.batches import WHOLE_PIECE
from swatchwright.language import listed, say, say_count, say_in
from swatchwright.piece.names import zone_word

KEEP, KEPT = say("Keep"), say("✓ Kept")
KEEP_TIP = say(
    "Choose this mix for the job; the others are kept beside it, and the photo. The page Job takes "
    "it off again."
)
PHOTO_NOT_KEPT = say(
    "The mix is kept. Open the photo again and press Keep to have it with the job."
)
KEEP_FOR = say("Keep for the")
EARLIER, LATER = "◀", "▶"
EARLIER_NAME, LATER_NAME = say("Show the mixes before"), say("Show the mixes after")
IN_YOUR_MONEY = say(
    "The price is in your money, by the sizes of tin that are on your shelf. It is reckoned by the "
    "tin that is cheapest for its size, mostly the biggest; small tins cost more than that. What "
    "your money is called is named on the page Shelf."
)
YOUR_PAINTS = say("Your kept paints")
KEEP_PAINTS = say("Keep these paints")
KEEP_PAINTS_TIP = say("Put them on your shelf, where they are found again at the next start")
ONLY_NOW = say("Only for now")
ANOTHER_JOB, THIS_JOB = say("Begin another job"), say("It belongs to this one")
ANOTHER_JOB_TIP = say("Take the job off the bench; it stays kept, and this photo begins another")


def job_line(title: str, client: str) -> str:
    """Name a job in one line: the piece, and whose it is."""
    return say("{piece}, {client}", piece=title, client=client) if client else title


def other_photo(title: str, client: str) -> str:
    """Ask whether another photo belongs to the job on the bench."""
    return say(
        "Another photo, and the job on the bench is “{job}”. A mix that is kept now is kept there.",
        job=job_line(title, client),
    )


def the_part(zone: str) -> str:
    """Name a part of the piece, or what is left of it."""
    if zone == WHOLE_PIECE:
        return say_in("of a piece", "the rest of it")
    return say_in("a part", "the {zone}", zone=zone_word(zone))


def all_but(besides: Iterable[str]) -> str:
    """Name what is left of a piece beside some parts."""
    return say("all but {parts}", parts=listed(map(the_part, besides)))


def zone_name(zone: str, besides: Collection[str] = ()) -> str:
    """Name a zone in a sentence, after “for”: “the whole piece” or “the drawers”.

    The whole piece is all but the parts with mixes of their own, which are told where there are
    any.
    """
    if zone == WHOLE_PIECE and besides:
        return all_but(besides)
    if zone == WHOLE_PIECE:
        return say_in("after “for”", "the whole piece")
    return say_in("after “for”", "the {zone}", zone=zone_word(zone))


def zone_item(zone: str, besides: Collection[str] = ()) -> str:
    """Name a zone in a list."""
    if zone == WHOLE_PIECE and besides:
        return all_but(besides)
    return say("whole piece") if zone == WHOLE_PIECE else zone_word(zone)


def zone_heading(zone: str, besides: Collection[str] = ()) -> str:
    """Head what belongs to a zone."""
    if zone == WHOLE_PIECE and not besides:
        return say("The whole piece")
    told = zone_item(zone, besides)
    return told[:1].upper() + told[1:]


def keep_name(number: int, zone: str, *, kept: bool) -> str:
    """Tell what the button of a mix does, or that it is done, for a screen reader."""
    if kept:
        return say("Mix {number} is kept for {zone}", number=number, zone=zone_name(zone))
    return say("Keep mix {number} for {zone}", number=number, zone=zone_name(zone))


NOTHING_KEPT = say("Keep the mix you choose: the rest follows it.")


def kept_line(
    number: int | None, zone: str, *, otherwise: bool, besides: Collection[str] = ()
) -> str:
    """Say which mix is kept for a zone; empty where none is."""
    told = zone_name(zone, besides)
    if number is not None:
        return say("✓ Mix {number} is kept for {zone}.", number=number, zone=told)
    if not otherwise:
        return ""
    return say("The mix kept for {zone} is not among these: see the Job page.", zone=told)


def kept_from_sample(number: int, zone: str, *, added: bool) -> str:
    """Say that the mix of a zone was found by a sample, or by one and what was added then."""
    told = zone_name(zone)
    if added:
        return say(
            "✓ The mix for {zone} is kept from sample {number} and what was added to it.",
            zone=told,
            number=number,
        )
    return say("✓ The mix for {zone} is kept from sample {number}.", zone=told, number=number)


PIECE_FIRST = say("Choose the piece first, then each part can have its colour.")
PART_FIRST = say("Set a part of the piece apart first, then it can have this colour.")
TO_PIECE = say("To the page Piece")
TO_PIECE_TIP = say("This colour stays wanted: a button there brings you back to its mixes")
BACK_TOLD = say("Choose the piece here, then go back: each part can have a colour of its own.")
BACK_TAKE, BACK_LEAVE = say("Back to the mixes"), say("Not now")


def replaces_line(colour: str, zone: str) -> str:
    """Say which colour of a zone goes when a mix is kept for it now."""
    if zone == WHOLE_PIECE:
        return say(
            "Keep replaces the {colour} of the whole piece (see the Job page).", colour=colour
        )
    return say(
        "Keep replaces the {colour} of the {zone} (see the Job page).",
        colour=colour,
        zone=zone_word(zone),
    )


def shown_line(first: int, last: int, count: int) -> str:
    """Say which of the mixes are in view."""
    if first == 1 and last == count:
        return say_count("One mix", "All {count} mixes", count)
    if first == last:
        return say("Mix {number} of {count}", number=first, count=count)
    return say("Mixes {first} to {last} of {count}", first=first, last=last, count=count)


def opened_shelf(count: int, name: str) -> str:
    """Say that the paints of a file are used, and are not kept yet."""
    return say(
        "The {count} paints of {name} are in use for now. Keep them on your shelf?",
        count=count,
        name=name,
    )
