"""A mix of a shelf and the layers over it, as films and finishes to reckon with."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from swatchwright.acts.mix import look_of_mix
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.mixing.smooth import smoothest_reflectance
from swatchwright.paint.layered import Base, Clear, Coat, Film, base_of, film_of, primer_inside
from swatchwright.paint.layers import (
    WAX_FILM,
    Layer,
    LayerKind,
    Stack,
    check_stack,
    clear_of,
    follows_grain,
    wash_of,
)
from swatchwright.paint.mixture import mix
from swatchwright.paint.paints import Paint, stack
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab

__all__ = [
    "BARE",
    "Parts",
    "Primer",
    "base_coat",
    "coats_of_layer",
    "coats_of_stack",
    "film_of_layer",
    "paints_for",
    "without_washes",
]

Parts = Sequence[tuple[str, float]]
"""Ids and amounts of a mix; only their proportions count."""

BARE = Stack()
"""Nothing over a coat."""

_MOST_COATS = 20


@dataclass(frozen=True, slots=True)
class Primer:
    """What is below a coat that may not hide: its colour, and how many coats lie on it."""

    colour: Lab
    coats: int = 2


def base_coat(shelf: Shelf, parts: Parts, ground: Primer | None = None) -> Base:
    """Make the coat below all layers.

    Raises
    ------
    MendableError
        If the mix or the ground cannot be.
    """
    look = look_of_mix(shelf, parts)
    mixture = mix(stack(look.paints), [range(len(look.paints))], [look.shares])
    if ground is None:
        return base_of(mixture)
    if not 1 <= ground.coats <= _MOST_COATS:
        raise MendableError(
            say("{coats} coats over the primer were asked for.", coats=ground.coats),
            say("Give 1 to {most}.", most=_MOST_COATS),
        )
    colour = Lab.of_a_surface(*ground.colour.triple)
    inside = primer_inside(smoothest_reflectance(colour))
    return base_of(mixture, primer=inside, coats=ground.coats)


def film_of_layer(shelf: Shelf, layer: Layer) -> tuple[Film, tuple[Paint, ...]]:
    """Make the film of a layer that has paint in it."""
    look = look_of_mix(shelf, layer.paints)
    mixture = mix(stack(look.paints), [range(len(look.paints))], [look.shares])
    wax = layer.kind is LayerKind.WAX
    # Wax leaves all of itself; a paint leaves its solids.
    laid = WAX_FILM / mixture.solids if wax else None
    film = film_of(mixture, wash_of(layer), wet_film=laid)
    return replace(film, grain=follows_grain(layer)), look.paints


def coats_of_layer(shelf: Shelf, layer: Layer) -> tuple[tuple[Coat, ...], tuple[Paint, ...]]:
    """Give what a layer puts on, the lowest first, and the paints in it."""
    if layer.passes == 0:
        return (), ()
    film, paints = film_of_layer(shelf, layer) if layer.paints else (None, ())
    coats: tuple[Coat, ...] = () if film is None else (film,)
    if not layer.is_paint:
        coats = (*coats, Clear(clear_of(layer), layer.passes, follows_grain(layer)))
    return coats, paints


def coats_of_stack(shelf: Shelf, layers: Stack) -> tuple[Coat, ...]:
    """Give what all layers of a stack put on, the lowest first.

    Raises
    ------
    MendableError
        If a layer cannot be, or a paint of it is not on the shelf.
    """
    check_stack(layers)
    return tuple(coat for layer in layers.layers for coat in coats_of_layer(shelf, layer)[0])


def without_washes(layers: Stack) -> Stack:
    """Give what stays of a stack when another wash is laid: all but its washes and glazes."""
    return Stack(tuple(layer for layer in layers.layers if not layer.is_paint))


def paints_for(
    shelf: Shelf, paints: tuple[Paint, ...], only: Sequence[str] | None
) -> tuple[Paint, ...]:
    """Give the paints of a mix's own kind, water-borne or not, that may go over or into it.

    Parameters
    ----------
    shelf
        The paints.
    paints
        Those of the mix.
    only
        Ids of the paints that may be used; all of the shelf if None.

    Raises
    ------
    MendableError
        If none is of its kind.
    """
    waterborne = paints[0].finish.waterborne
    chosen = (
        shelf.paints if only is None else tuple(shelf.paint(id_) for id_ in dict.fromkeys(only))
    )
    may = tuple(p for p in chosen if p.finish.waterborne is waterborne)
    if not may:
        raise _none_of_its_kind(waterborne=waterborne)
    return may


def _none_of_its_kind(*, waterborne: bool) -> MendableError:
    if waterborne:
        return MendableError(
            say("The mix is water-borne, and none of the paints that may be used is."),
            say("Allow a water-borne paint."),
        )
    return MendableError(
        say("The mix is solvent-borne, and none of the paints that may be used is."),
        say("Allow a solvent-borne paint."),
    )
