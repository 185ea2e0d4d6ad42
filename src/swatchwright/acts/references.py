"""What a painter says of the references she marks in a photo."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from swatchwright.acts.colours import PhotoColours
from swatchwright.acts.kept_words import A_GREY
from swatchwright.acts.recipes import read_colour
from swatchwright.colour.difference import delta_e_2000
from swatchwright.language import mark
from swatchwright.paint.mixture import dry_lab, mix
from swatchwright.paint.paints import Paint, stack
from swatchwright.photo.reference import GREY_CARD, WHITE_PAPER
from swatchwright.photo.references import Reference
from swatchwright.shelf.jobs import MarkedReference
from swatchwright.values import Lab, Rect

__all__ = [
    "BLACK_CARD",
    "MOST_MARKED",
    "from_a_metre",
    "marked_grey",
    "marked_paint",
    "marked_typed",
    "name_of_grey",
    "nearest_first",
    "references_of",
    "weave_shows",
]

BLACK_CARD = 0.04
"""Reflectance of a black card (common practice, no source)."""

MOST_MARKED = 24
"""As many as the charts that lie beside a cloth have fields."""

_WEAVE_SHOWS = 1.0
"""CIEDE2000 from which the yarn and the cloth from a metre away are told apart."""


def marked_grey(rect: Rect, reflectance: float) -> MarkedReference:
    """Mark a grey of a reflectance, 0.02 to 1.

    Raises
    ------
    MendableError
        If no grey reflects so much or so little.
    """
    return _marked(name_of_grey(reflectance), Reference.grey(rect, reflectance))


def name_of_grey(reflectance: float) -> str:
    """Name a grey by what it commonly is, in English: `kept_words` says it where it is shown.

    >>> name_of_grey(0.9), name_of_grey(0.3)
    ('white paper', 'a grey of 30 %')
    """
    for common, name in ((GREY_CARD, mark("grey card")), (WHITE_PAPER, mark("white paper"))):
        if abs(reflectance - common) < 1e-6:
            return name
    if abs(reflectance - BLACK_CARD) < 1e-6:
        return mark("black card")
    return A_GREY.format(percent=f"{100 * reflectance:.3g}")


def marked_paint(rect: Rect, paint: Paint) -> MarkedReference:
    """Mark a brush-out of a paint of the shelf, of its dry colour, hidden and with no finish."""
    dry = Lab.of(dry_lab(mix(stack([paint]), [[0]], [[1.0]]))[0])
    return _marked(paint.name, Reference.chip(rect, dry))


def marked_typed(rect: Rect, text: str) -> MarkedReference:
    """Mark something whose colour was typed: ``L, a, b`` or ``#rrggbb``.

    Raises
    ------
    MendableError
        If that is no colour, or no surface can have it.
    """
    lab = read_colour(text).lab
    return _marked(f"L* {lab.L:.0f}, a* {lab.a:.0f}, b* {lab.b:.0f}", Reference.chip(rect, lab))


def references_of(marked: tuple[MarkedReference, ...]) -> tuple[Reference, ...]:
    """Give the references for reading a photo."""
    return tuple(Reference(m.rect, m.lab, m.kind, m.spread) for m in marked)


def from_a_metre(found: PhotoColours) -> PhotoColours:
    """Give the colours of a photo with that from a metre away in the place of the yarn's."""
    seen = tuple(
        replace(colour, colour=colour.from_a_metre, from_a_metre=colour.colour)
        for colour in found.colours
    )
    return replace(found, colours=seen)


def weave_shows(found: PhotoColours) -> bool:
    """Tell whether a colour of the cloth looks another from a metre away."""
    return any(colour.weave >= _WEAVE_SHOWS for colour in found.colours)


def nearest_first(paints: Sequence[Paint], lab: Lab | None) -> tuple[Paint, ...]:
    """Order paints by how near their dry colours are to a wanted one; as they are if None."""
    if lab is None or not paints:
        return tuple(paints)
    alone = [[place] for place in range(len(paints))]
    dry = dry_lab(mix(stack(paints), alone, [[1.0]] * len(paints)))
    apart = delta_e_2000(dry, lab.triple)
    return tuple(paints[place] for place in np.argsort(apart, kind="stable"))


def _marked(name: str, reference: Reference) -> MarkedReference:
    return MarkedReference(name, reference.rect, reference.lab, reference.kind, reference.spread)
