"""Whether what was marked as the grey in a sample photo can be one, told before anything is read.

A box on the cloth in place of the card shifts all that is read by it, and what else is then found
wrong with the photo has no other cause.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from swatchwright.colour.convert import linear_srgb_to_xyz
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.photo.estimate import Correction, estimate
from swatchwright.photo.image import Photo
from swatchwright.photo.quality import Finding, findings
from swatchwright.photo.reference import GREY_CARD
from swatchwright.photo.references import Reference
from swatchwright.values import Rect

__all__ = ["doubts_of_grey", "grey_doubts", "overlaps", "plainly_wrong"]

_OF_GREY = frozenset(
    {"card not grey", "clipped reference", "dark reference", "odd light", "warm light"}
)
_WRONG = frozenset({"card not grey", "odd light"})

_WHITER_THAN_WHITE = 1.05
_MUCH_WHITER = 0.05
"""A white can be a little brighter by a doubtful grey, and a window may be in the photo: so much of
it must be brighter than any white before the mark is told to be wrong; common practice."""

_MOST_PIXELS = 40_000


def grey_doubts(photo: Photo, grey: Rect, reflectance: float = GREY_CARD) -> tuple[Finding, ...]:
    """Say what is wrong with a grey that was marked, the worst first; empty where it can serve.

    Parameters
    ----------
    photo
        The photo.
    grey
        Where the grey was marked.
    reflectance
        What it is said to reflect, 0.02 to 1.
    """
    try:
        correction = estimate(photo, (Reference.grey(grey, reflectance),))
    except MendableError as error:
        return (Finding("card not grey", "warning", error.what, error.mend),)
    return doubts_of_grey(correction)


def doubts_of_grey(correction: Correction) -> tuple[Finding, ...]:
    """Say what is wrong with the greys of a correction, the worst first; empty without one."""
    greys = [r for r in correction.references if r.neutral]
    if not greys:
        return ()
    found = [one for one in findings(correction) if one.kind in _OF_GREY]
    told = [*_too_dark(correction, greys[0]), *found]
    if not told:
        return tuple(_uneven(correction))
    if any(one.kind == "odd light" for one in told):
        told.insert(0, _not_the_card())
    return tuple(sorted(told, key=lambda one: one.kind not in _WRONG))


def plainly_wrong(found: Sequence[Finding]) -> bool:
    """Tell whether what is marked as grey is none, so that all that is read by it is wrong."""
    return any(one.kind in _WRONG and one.severity == "warning" for one in found)


def overlaps(one: Rect, other: Rect) -> bool:
    """Tell whether two boxes share a part."""
    across = min(one.right, other.right) > max(one.x, other.x)
    return across and min(one.bottom, other.bottom) > max(one.y, other.y)


def _not_the_card() -> Finding:
    return Finding(
        "card not grey",
        "warning",
        say("This is hardly the grey card: what is marked is strongly coloured."),
        say("Drag the box on the card, well inside it."),
    )


def _too_dark(correction: Correction, grey: Reference) -> list[Finding]:
    """Look for a photo that would be brighter than white paper: then what is marked is darker."""
    photo = correction.photo
    step = max(1, round((photo.width * photo.height / _MOST_PIXELS) ** 0.5))
    light = photo.linear(Rect(0, 0, photo.width, photo.height), step).astype(np.float64)
    bright = linear_srgb_to_xyz(light * np.asarray(correction.balance.gains))[..., 1]
    share = float(np.mean(bright > _WHITER_THAN_WHITE))
    if share < _MUCH_WHITER:
        return []
    return [
        Finding(
            "card not grey",
            "warning",
            say(
                "What is marked is darker than {reflects:.0%}: {share:.0%} of the photo would be "
                "brighter than white paper.",
                reflects=GREY_CARD if grey.reflectance is None else grey.reflectance,
                share=share,
            ),
            say("Drag the box on the card, and see that the right kind of card is chosen."),
        )
    ]


def _uneven(correction: Correction) -> list[Finding]:
    """Take over what was noticed of a grey in good light when it was read: that it is uneven."""
    mend = say("Draw it smaller, wholly inside the card and clear of shadows and print.")
    return [
        Finding("reference doubted", "note", text, mend) for text in correction.balance.warnings
    ]
