"""See a photographed piece in the chosen colours, before it is painted."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from swatchwright.acts.colours import balance_photo
from swatchwright.colour.convert import in_srgb, lab_to_linear_srgb
from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.mixing.search import Stopped
from swatchwright.photo.image import Photo
from swatchwright.photo.reference import GREY_CARD
from swatchwright.photo.repaint import (
    Surfaces,
    View,
    find_surfaces,
    in_colours,
    view_of,
    whole_picture,
)
from swatchwright.photo.repaint_strokes import NOT_THIS, Marked, Stroke
from swatchwright.piece.names import zone_word
from swatchwright.values import Lab, Rect

__all__ = [
    "NOT_THIS",
    "SHOWN",
    "WHOLE",
    "Marked",
    "Ready",
    "Repainted",
    "Stroke",
    "ready_to_repaint",
    "recoloured",
    "repainted",
    "repainted_whole",
]

SHOWN = 1280
"""Longest side in pixels of a picture that is shown."""

WHOLE = 6000
"""Longest side in pixels of a picture that is saved."""

_PICTURE = mark(
    "This is a picture and no measured colour: it shows how the piece may look. A brushed and dried"
    " sample beside the cloth decides."
)
_FULLY_LIT = mark(
    "Each new colour is shown as it is where its surface is best lit; a photo cannot tell a pale"
    " paint in dim light from a dark one in bright light."
)
_NO_GREY = mark(
    "No grey card is marked, so the light is as the camera balanced it, and the new colours may"
    " stand out from the room."
)
_BY_EDGE = mark(
    "Nothing is marked as “not this”, so the edge of the picture was taken for what is not the"
    " piece. Where it is, draw a stroke of that part to the edge."
)
_DARK, _LIGHT = 0.06, 0.35
_CLIPPED = 0.05


@dataclass(frozen=True, slots=True, eq=False)
class Ready:
    """A piece whose surfaces are found: another colour is then shown at once.

    Parameters
    ----------
    surfaces
        The surfaces, for a picture of any size.
    view
        The picture that is shown, taken apart.
    graded
        Whether a grey card put the light right.
    notes
        What is worth knowing of photo and strokes.
    """

    surfaces: Surfaces
    view: View
    graded: bool
    notes: tuple[str, ...]

    @property
    def before(self) -> NDArray[np.uint8]:
        """The photo as it is, its light put right, sRGB bytes."""
        return self.view.before


@dataclass(frozen=True, slots=True, eq=False)
class Repainted:
    """A piece in new colours.

    Parameters
    ----------
    picture
        sRGB bytes, shape (rows, columns, 3).
    masks
        How much of each pixel is of each zone, 0-255, shape (rows, columns) each.
    notes
        What is worth knowing, in a painter's words.
    """

    picture: NDArray[np.uint8]
    masks: dict[str, NDArray[np.uint8]]
    notes: tuple[str, ...]


def _never() -> bool:
    return False


def _check(stopped: Callable[[], bool]) -> Callable[[], None]:
    def check() -> None:
        if stopped():
            raise Stopped

    return check


def ready_to_repaint(
    photo: Photo,
    strokes: Marked,
    *,
    grey: Rect | None = None,
    reflectance: float = GREY_CARD,
    longest: int = SHOWN,
    stopped: Callable[[], bool] = _never,
) -> Ready:
    """Find the surfaces that strokes mark, and make a picture ready to be repainted.

    Parameters
    ----------
    photo
        A photo of the piece.
    strokes
        A few strokes on each surface that is to be painted, and some on what is not.
    grey
        Where a grey card lies in it, in pixels; None where there is none.
    reflectance
        What the card reflects, 0.02 to 1.
    longest
        Longest side of the picture in pixels; a smaller photo is not enlarged.
    stopped
        Asked now and then whether to give up.

    Raises
    ------
    MendableError
        If a stroke cannot be, no surface is marked, or the grey cannot serve.
    Stopped
        If it was asked to.
    """
    check = _check(stopped)
    balance = balance_photo(photo, grey, reflectance)
    found = find_surfaces(photo, strokes, balance.gains, check)
    view = view_of(found, longest, check)
    first = () if grey is not None else (say(_NO_GREY),)
    edge = (say(_BY_EDGE),) if found.by_edge else ()
    notes = (*balance.warnings, *first, *edge, *_overexposed(found))
    return Ready(found, view, grey is not None, notes)


def _overexposed(found: Surfaces) -> tuple[str, ...]:
    return tuple(
        say(
            "{share:.0f} % of “{zone}” is overexposed; there is no shade left in it to keep.",
            share=100 * share,
            zone=zone_word(zone),
        )
        for zone, share in zip(found.zones, found.clipped, strict=True)
        if share > _CLIPPED
    )


def recoloured(
    ready: Ready, colours: Mapping[str, Lab], *, stopped: Callable[[], bool] = _never
) -> Repainted:
    """Show a piece whose surfaces are found in colours; a zone without one stays as it is.

    Raises
    ------
    MendableError
        If a colour is for a zone that no stroke marks.
    Stopped
        If it was asked to.
    """
    _check_zones(ready, colours)
    view = ready.view
    masks = dict(zip(view.zones, view.masks, strict=True))
    picture = in_colours(view, colours, _check(stopped))
    return Repainted(picture, masks, (*ready.notes, *_notes(ready, colours)))


def repainted(
    photo: Photo,
    strokes: Marked,
    colours: Mapping[str, Lab],
    *,
    grey: Rect | None = None,
    reflectance: float = GREY_CARD,
    longest: int = SHOWN,
    stopped: Callable[[], bool] = _never,
) -> Repainted:
    """Show a photographed piece in other colours.

    Parameters
    ----------
    photo, strokes, grey, reflectance, longest, stopped
        As for `ready_to_repaint`.
    colours
        The new colour of each zone; one without stays as it is.

    Raises
    ------
    MendableError
        As `ready_to_repaint` does, and if a colour is for a zone that no stroke marks.
    Stopped
        If it was asked to.
    """
    ready = ready_to_repaint(
        photo, strokes, grey=grey, reflectance=reflectance, longest=longest, stopped=stopped
    )
    return recoloured(ready, colours, stopped=stopped)


def repainted_whole(
    ready: Ready, colours: Mapping[str, Lab], *, stopped: Callable[[], bool] = _never
) -> NDArray[np.uint8]:
    """Give the picture in the size of the photo, up to `WHOLE` pixels, to be saved.

    Raises
    ------
    MendableError
        If a colour is for a zone that no stroke marks.
    Stopped
        If it was asked to.
    """
    _check_zones(ready, colours)
    return whole_picture(ready.surfaces, colours, WHOLE, _check(stopped))


def _check_zones(ready: Ready, colours: Mapping[str, Lab]) -> None:
    for zone in colours:
        if zone not in ready.view.zones:
            raise MendableError(
                say("No stroke marks “{zone}”.", zone=zone_word(zone)),
                say(
                    "Draw one on it, or colour one of: {zones}.",
                    zones=", ".join(map(zone_word, ready.view.zones)),
                ),
            )


def _notes(ready: Ready, colours: Mapping[str, Lab]) -> tuple[str, ...]:
    """Say what is doubtful of the colours on these surfaces, and of every such picture."""
    notes = []
    for zone, coat in zip(ready.view.zones, ready.view.coats, strict=True):
        if zone not in colours:
            continue
        lab = colours[zone]
        if coat.level < _DARK and float(lab_to_linear_srgb(lab.triple).max()) > _LIGHT:
            notes.append(
                say(
                    "The old paint of “{zone}” is very dark, so its grain and the camera's noise "
                    "show stronger in a light colour than they will.",
                    zone=zone_word(zone),
                )
            )
        if not in_srgb(lab):
            notes.append(
                say(
                    "The colour of “{zone}” is more vivid than a screen can show.",
                    zone=zone_word(zone),
                )
            )
    return (*notes, say(_FULLY_LIT), say(_PICTURE))
