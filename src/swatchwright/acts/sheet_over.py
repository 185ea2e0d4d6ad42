"""What a sheet says of the layers over a mix: what they are, how it looks then, what to mind."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from swatchwright.acts.finish import preview
from swatchwright.acts.finish_hand import hand_line
from swatchwright.acts.finish_values import Look
from swatchwright.acts.finish_words import laid_words
from swatchwright.acts.layering import Parts
from swatchwright.acts.layers_by_part import OnParts, by_part
from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.language import listed, say, say_count
from swatchwright.paint.family import Family
from swatchwright.paint.layers import Layer, Stack
from swatchwright.paint.paints import HowKnown, Paint
from swatchwright.piece.names import zone_word
from swatchwright.shelf.shelf import Shelf

__all__ = ["Over", "over_mix"]


@dataclass(frozen=True, slots=True)
class Over:
    """What lies over a mix.

    Parameters
    ----------
    look
        Step by step; None where nothing lies there, a paint of it is nowhere any more, or parts
        of the piece have other layers.
    words
        Each layer in words; one for a part of the piece after that, where other parts have not it.
    minding
        What to mind.
    ends
        Where parts of the piece have other layers, which have any, in words, and how these look.
    """

    look: Look | None = None
    words: tuple[str, ...] = ()
    minding: tuple[str, ...] = ()
    ends: tuple[tuple[str, Look], ...] = ()

    @property
    def looks(self) -> tuple[Look, ...]:
        """All looks, whether of the whole or by part."""
        return tuple(look for _, look in self.ends) if self.look is None else (self.look,)


def over_mix(shelf: Shelf, parts: Parts, layers: Stack, on: Sequence[str] = ()) -> Over:
    """Say what lies over a mix, and what is left out where a paint of it is nowhere any more.

    Parameters
    ----------
    shelf, parts
        The mix, and where its paints and those of the layers are.
    layers
        What lies over it, or over any part of the piece that has it.
    on
        These parts; none where they are not known.

    Raises
    ------
    MendableError
        If the mix or a layer cannot be.
    """
    if not layers.layers:
        return Over()
    groups = by_part(layers, on)
    if len(groups) > 1:
        return _by_part(shelf, parts, layers, groups)
    layers = groups[0].layers
    words = tuple(laid_words(layer, _paints(shelf, layer)) for layer in layers.layers)
    there = {paint.id for paint in shelf.paints}
    ids = dict.fromkeys(id_ for layer in layers.layers for id_, _ in layer.paints)
    if missing := [id_ for id_ in ids if id_ not in there]:
        return Over(None, words, (_left_out(missing),))
    look = preview(shelf, parts, layers)
    hand = hand_line(shelf, parts, layers)
    noted = (note for note in look.notes if note not in shelf.notes)
    return Over(look, words, (*([hand] if hand else []), *noted))


def _by_part(shelf: Shelf, mix: Parts, layers: Stack, groups: Sequence[OnParts]) -> Over:
    """Say what lies over the parts of a piece that have one mix and other layers each."""
    laid = [on for on in groups if on.layers.layers]
    each = [(on.words, over_mix(shelf, mix, on.layers, on.parts)) for on in laid]
    words = [(layer.zone, laid_words(layer, _paints(shelf, layer))) for layer in layers.layers]
    return Over(
        None,
        tuple(
            say("{part}: {layer}", part=zone_word(zone), layer=told) if zone else told
            for zone, told in words
        ),
        tuple(dict.fromkeys(note for _, over in each for note in over.minding)),
        tuple((parts, over.look) for parts, over in each if over.look is not None),
    )


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
