"""Want a colour of the photo that a job keeps."""

from __future__ import annotations

from swatchwright.acts.colours import colours_of
from swatchwright.acts.job_bench import laid_photo, photo_to_lay
from swatchwright.acts.jobs import job_of
from swatchwright.acts.references import from_a_metre, references_of
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.shelf.jobs import ReadFrom
from swatchwright.shelf.store.store import Store
from swatchwright.values import KnownColour

__all__ = ["picked_colour"]


def picked_colour(store: Store, id_: str, pick: int) -> tuple[KnownColour, ReadFrom]:
    """Read a colour of a job's photo, by its marks, and say where it was read.

    Parameters
    ----------
    store, id_
        Which job.
    pick
        Which of the photo's colours, 1 the largest.

    Raises
    ------
    MendableError
        If the job has no photo, it cannot be read, or has no colour of that number.
    """
    kept = photo_to_lay(job_of(store, id_))
    if kept is None:
        raise MendableError(
            say("The job has no photo to pick a colour from."),
            say(
                "Keep one first: swatchwright job photo {id} PHOTO --grey X,Y,W,H --area X,Y,W,H",
                id=id_,
            ),
        )
    laid = laid_photo(store, kept)
    grey = laid.marks.grey[0] if laid.marks.grey else None
    found = colours_of(
        laid.photo,
        grey=grey,
        reflectance=laid.marks.reflectance,
        references=references_of(laid.marks.references),
        light=laid.marks.light,
        area=laid.marks.cloth,
    )
    if laid.marks.metre:
        found = from_a_metre(found)
    if not 1 <= pick <= len(found.colours):
        raise MendableError(
            say(
                "Colour {number} was picked, and the photo has {many}.",
                number=pick,
                many=len(found.colours),
            ),
            say("Pick one of 1 to {most}.", most=len(found.colours)),
        )
    where = ReadFrom(kept.hash, kept.marks.cloth, kept.marks.metre)
    return found.colours[pick - 1].colour, where
