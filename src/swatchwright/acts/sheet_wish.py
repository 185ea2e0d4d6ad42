"""What a sheet says of what a client wants now in place of a colour."""

from __future__ import annotations

from collections.abc import Iterable
from contextlib import suppress

from swatchwright.acts.client_wish import CLIENT_PART, ClientWish, ClientWishes, Stands
from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.names import closeness, colour_name
from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.shelf.jobs import Job
from swatchwright.values import Lab

__all__ = ["wish_in", "wish_words"]

_STANDS = {
    Stands.UNMIXED: mark("Nothing is mixed yet."),
    Stands.PAINTED: mark("It is painted already."),
    Stands.POT: mark("The paint is still in the pot."),
}


def wish_in(job: Job, firsts: Iterable[Lab]) -> tuple[ClientWish, Stands | None] | None:
    """Give what a client wants in place of a colour, and how far that has come; None for nothing.

    Parameters
    ----------
    job
        Which job.
    firsts
        The colour that was wanted first, and others that it may be kept as.
    """
    document = job.document(CLIENT_PART)
    with suppress(MendableError):
        wishes = ClientWishes() if document is None else document.read(ClientWishes)
        for first in firsts:
            if wish := wishes.of(first):
                return wish, wishes.stands(first)
    return None


def wish_words(
    asked: tuple[ClientWish, Stands | None] | None,
    dry: Lab,
    finished: Lab | None,
    *,
    by_part: bool = False,
) -> tuple[str, ...]:
    """Say what a client wants in place of a colour, in sentences; none where she wants nothing.

    Parameters
    ----------
    asked
        As of `wish_in`.
    dry, finished
        The mix, and how it looks with all layers on; None where there are none.
    by_part
        Whether parts of the piece have other layers each, so that there is no one look.
    """
    if asked is None:
        return ()
    wish, stands = asked
    apart = float(delta_e_2000(wish.aim.triple, (finished or dry).triple))
    words = closeness(apart)
    bare = mark("The mix without layers is {apart:.1f} from that, as computed ({closeness}).")
    laid = mark("With all layers on it is {apart:.1f} from that, as computed ({closeness}).")
    return (
        _wanted(wish),
        *([] if stands is None else [say(_STANDS[stands])]),
        *([] if by_part else [say(laid if finished else bare, apart=apart, closeness=words)]),
    )


def _wanted(wish: ClientWish) -> str:
    """Say how a client wants it, and which colour that comes to."""
    asked, colour = wish.wanted.asked, colour_name(wish.aim)
    if asked is not None:
        how = say(asked[0].value)
        return say("The client wants it {how} now: {colour}.", how=how, colour=colour)
    if wish.wanted.grey_as is not None:
        return say("The client wants it as grey as another colour now: {colour}.", colour=colour)
    return say("The client wants another colour now: {colour}.", colour=colour)
