"""How much the hand that wipes a wash decides."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from swatchwright.acts.layering import Parts, base_coat, coats_of_layer
from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import lab_of
from swatchwright.mixing.wash_risks import HEAVY, hand_words
from swatchwright.paint.layered import Coat, Film, look_of
from swatchwright.paint.layers import Layer, LayerKind, Stack, wash_of
from swatchwright.shelf.shelf import Shelf

__all__ = ["hand_line"]


def hand_line(shelf: Shelf, parts: Parts, layers: Stack) -> str:
    """Say how far off a finish is where half as much again is left of its washes.

    Parameters
    ----------
    shelf
        Where the paints of the mix and of the layers are.
    parts
        Ids and amounts of the mix.
    layers
        What goes over it.

    Returns
    -------
    A sentence; empty where nothing is wiped back. Of several washes that which decides most is
    told.

    Raises
    ------
    MendableError
        If the mix or a layer cannot be.
    """
    wiped = [n for n, layer in enumerate(layers.layers) if _is_wiped(layer)]
    if not wiped:
        return ""
    base = base_coat(shelf, parts)
    coats = [coats_of_layer(shelf, layer)[0] for layer in layers.layers]
    meant = [coat for laid in coats for coat in laid]
    looks = [lab_of(look_of(base, meant))[0]]
    for heavy in wiped:
        more = [_heavier(c) if n == heavy else c for n, laid in enumerate(coats) for c in laid]
        looks.append(lab_of(look_of(base, more))[0])
    return hand_words(max(float(delta_e_2000(looks[0], look)) for look in looks[1:]))


def _is_wiped(layer: Layer) -> bool:
    return layer.kind is LayerKind.WASH and layer.passes > 0 and float(wash_of(layer).left) < 1


def _heavier(coat: Coat) -> Coat:
    if not isinstance(coat, Film):
        return coat
    return replace(coat, thickness=HEAVY * np.asarray(coat.thickness))
