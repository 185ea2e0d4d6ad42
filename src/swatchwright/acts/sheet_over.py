"""What a sheet says of the layers over a mix: what they are, how it looks then, what to mind."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from swatchwright.acts.finish import preview
from swatchwright.acts.finish_hand import hand_line
from swatchwright.acts.finish_values import Look
from swatchwright.acts.finish_words import laid_words
from swatchwright.acts.layering import Parts
from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.language import listed, say, say_count
from swatchwright.paint.family import Family
from swatchwright.paint.layers import Layer, Stack
from swatchwright.paint.paints import HowKnown, Paint
from swatchwright.shelf.shelf import Shelf

__all__ = ["Over", "over_mix"]


@dataclass(frozen=True, slots=True)
class Over:
    """What lies over a mix.

    Parameters
    ----------
    look
        Step by step; None where nothing lies there, or a paint of it is nowhere any more.
    words
        Each layer in words.
    minding
        What to mind.
    """

    look: Look | None = None
    words: tuple[str, ...] = ()
    minding: tuple[str, ...] = ()


def over_mix(shelf: Shelf, parts: Parts, layers: Stack) -> Over:
    """Say what lies over a mix, and what is left out where a paint of it is nowhere any more.

    Raises
    ------
    MendableError
        If the mix or a layer cannot be.
    """
    if not layers.layers:
        return Over()
    words = tuple(laid_words(layer, _paints(shelf, layer)) for layer in layers.layers)
    there = {paint.id for paint in shelf.paints}
    ids = dict.fromkeys(id_ for layer in layers.layers for id_, _ in layer.paints)
    if missing := [id_ for id_ in ids if id_ not in there]:
        return Over(None, words, (_left_out(missing),))
    look = preview(shelf, parts, layers)
    hand = hand_line(shelf, parts, layers)
    noted = (note for note in look.notes if note not in shelf.notes)
    return Over(look, words, (*([hand] if hand else []), *noted))


def _paints(shelf: Shelf, layer: Layer) -> list[Paint]:
    """Give the paints of a layer, each that is nowhere under its id."""
    known = {paint.id: paint for paint in shelf.paints}
    return [known.get(id_) or _unknown(id_) for id_, _ in layer.paints]


def _unknown(id_: str) -> Paint:
    nothing = np.ones(WAVELENGTHS.size)
    return Paint(id_, id_, Family.EMULSION, nothing, nothing, HowKnown.GUESSED)


def _left_out(missing: list[str]) -> str:
    named = [say("“{name}”", name=id_) for id_ in missing]
    return say_count(
        "{paints} is on no shelf any more, so how it looks finished is left out.",
        "{paints} are on no shelf any more, so how it looks finished is left out.",
        len(missing),
        paints=listed(named),
    )
