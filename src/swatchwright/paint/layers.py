"""What goes over a dry coat, layer by layer: washes, glazes, waxes, oils and varnishes.

A stack is a list of such layers, each of plain numbers and words, so that it can be kept with a
job and read again. What it does to a colour is reckoned in `paint.layered`.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from math import isfinite

from swatchwright.errors import MendableError
from swatchwright.language import mark, mark_in, say, say_in
from swatchwright.paint.clear import AMBER_WAX, CLEAR_VARNISH, CLEAR_WAX, OIL, ClearFinish
from swatchwright.paint.wash import Wash

__all__ = [
    "MOST_LAYERS",
    "MOST_PASSES",
    "WAX_FILM",
    "Layer",
    "LayerKind",
    "Sheen",
    "Stack",
    "check_layer",
    "check_stack",
    "clear_of",
    "follows_grain",
    "wash_of",
]

MOST_LAYERS = 12
MOST_PASSES = 20

_MOST_PAINTS = 4
_MOST_WATER = 50.0
_MOST_AMBER = 5.0
_MOST_ZONE = 60

WAX_FILM = 0.01
"""Wax that stays on a buffed surface, mm; common practice, no source."""


class LayerKind(StrEnum):
    """What a layer is."""

    WASH = mark("wash")
    GLAZE = mark("glaze")
    WAX = mark("wax")
    OIL = mark("oil")
    VARNISH = mark("varnish")


class Sheen(StrEnum):
    """How much of a surface's own reflection goes off in one direction."""

    MATTE = mark("matte")
    EGGSHELL = mark("eggshell")
    SATIN = mark("satin")
    GLOSS = mark("gloss")


# The same steps as the families of paint have: common practice, no source; gloss is exact.
_GLARE = {Sheen.MATTE: 0.75, Sheen.EGGSHELL: 0.55, Sheen.SATIN: 0.3, Sheen.GLOSS: 0.0}

# What is usual of each kind where a layer does not say; common practice, no source.
_WATER = {LayerKind.WASH: 3.0, LayerKind.GLAZE: 3.0, LayerKind.WAX: 9.0}
_LEFT = {LayerKind.WASH: 0.2}
_FOLLOWS = {LayerKind.WASH: 1.0, LayerKind.WAX: 1.0, LayerKind.GLAZE: 0.4}
_CLEAR = {LayerKind.WAX: CLEAR_WAX, LayerKind.OIL: OIL, LayerKind.VARNISH: CLEAR_VARNISH}


@dataclass(frozen=True, slots=True)
class Layer:
    """One layer over a dry coat.

    Parameters
    ----------
    kind
        What it is. A wash is thinned paint, mostly wiped back; a glaze is one that is left.
    paints
        Ids and parts of the paints in it: one or more for a wash or a glaze; for a wax the colour
        that is stirred into it, if any; none for an oil or a varnish.
    water
        Volumes of what thins it to one of paint: water, for a glaze its medium, for a wax clear
        wax; 0-50. None for what is usual: 3, 3 and 9.
    left
        Share of the wet film of a wash that is left after wiping, 0-1; None for a fifth.
    passes
        How often it is laid, each time on the dry last one, 0-20.
    amber
        How yellow a clear layer is: 0 colourless, 1 as an amber wax, up to 5. None for what is
        usual: 0 for a wax, about two thirds for an oil, next to nothing for a varnish.
    sheen
        Of a clear layer; None for what is usual: a soft sheen for a wax, satin for the others.
    zone
        The part of the piece that it goes on, such as "body"; empty for all of it.
    """

    kind: LayerKind
    paints: tuple[tuple[str, float], ...] = ()
    water: float | None = None
    left: float | None = None
    passes: int = 1
    amber: float | None = None
    sheen: Sheen | None = None
    zone: str = ""

    @property
    def is_paint(self) -> bool:
        """Whether it is thinned paint, and not a clear finish."""
        return self.kind in {LayerKind.WASH, LayerKind.GLAZE}


@dataclass(frozen=True, slots=True)
class Stack:
    """Layers over a dry coat, in the order they are laid; none for the bare coat."""

    layers: tuple[Layer, ...] = ()

    def over(self, zone: str) -> Stack:
        """Give what lies over a part of the piece: what goes on all of it, and what on it alone.

        The layers keep their order; of the whole piece, with an empty name, the first are given.
        """
        return Stack(tuple(layer for layer in self.layers if layer.zone in {"", zone}))

    @property
    def zones(self) -> tuple[str, ...]:
        """Name the parts of the piece that have layers of their own, each once."""
        return tuple(dict.fromkeys(layer.zone for layer in self.layers if layer.zone))


def check_stack(stack: Stack) -> None:
    """Refuse a stack that cannot be.

    Raises
    ------
    MendableError
        If it has more than 12 layers, or one of them cannot be.
    """
    if len(stack.layers) > MOST_LAYERS:
        raise MendableError(
            say("There are {count} layers.", count=len(stack.layers)),
            say("Up to {most} can be reckoned.", most=MOST_LAYERS),
        )
    for layer in stack.layers:
        check_layer(layer)


def check_layer(layer: Layer) -> None:
    """Refuse a layer that cannot be.

    Raises
    ------
    MendableError
        If a number is out of its range, a paint is missing or one too many, or something is said
        that has no meaning for this kind.
    """
    _check_paints(layer)
    if len(layer.zone) > _MOST_ZONE:
        raise MendableError(
            say("The name of the part that a layer goes on is too long."),
            say("Use up to {most} letters.", most=_MOST_ZONE),
        )
    _between(layer, mark_in("a number of a layer", "water"), layer.water, _MOST_WATER)
    _between(layer, mark_in("a number of a layer", "left"), layer.left, 1.0)
    _between(layer, mark_in("a number of a layer", "amber"), layer.amber, _MOST_AMBER)
    _between(layer, mark_in("a number of a layer", "passes"), float(layer.passes), MOST_PASSES)
    clear = {"amber": layer.amber, mark_in("a number of a layer", "sheen"): layer.sheen}
    wiped = {} if layer.kind is LayerKind.WASH else {"left": layer.left}
    thinned = {} if layer.paints else {"water": layer.water}
    for name, value in ((clear if layer.is_paint else {}) | wiped | thinned).items():
        if value is not None:
            raise MendableError(
                say(
                    "A layer of {kind} was given “{name}”, which it has not.",
                    kind=say(layer.kind.value),
                    name=_said(name),
                ),
                say("Leave “{name}” out there.", name=_said(name)),
            )


def _check_paints(layer: Layer) -> None:
    least, most = {
        LayerKind.WASH: (1, _MOST_PAINTS),
        LayerKind.GLAZE: (1, _MOST_PAINTS),
        LayerKind.WAX: (0, _MOST_PAINTS),
    }.get(layer.kind, (0, 0))
    if not least <= len(layer.paints) <= most:
        raise MendableError(
            say(
                "The {kind} has {count} paints in it.",
                kind=say(layer.kind.value),
                count=len(layer.paints),
            ),
            say("It takes from {least} to {most} paints.", least=least, most=most)
            if most
            else say("It takes no paint."),
        )


def _between(layer: Layer, name: str, value: float | None, most: float) -> None:
    if value is not None and not (isfinite(value) and 0 <= value <= most):
        raise MendableError(
            say(
                "The {kind} has “{name}” at {value:g}.",
                kind=say(layer.kind.value),
                name=_said(name),
                value=value,
            ),
            say("Give from 0 to {most:g}.", most=most),
        )


def _said(name: str) -> str:
    """Say the name of a number of a layer."""
    return say_in("a number of a layer", name)


def wash_of(layer: Layer) -> Wash:
    """Give how a layer of paint is thinned, wiped and laid; a tinted wax likewise."""
    water = _WATER.get(layer.kind, 0.0) if layer.water is None else layer.water
    left = _LEFT.get(layer.kind, 1.0) if layer.left is None else layer.left
    return Wash(water=water, left=left, passes=layer.passes)


def follows_grain(layer: Layer) -> float:
    """Say how far the thickness of a layer follows the grain, 0 not at all to 1 wholly.

    What is wiped stays in the grain; a glaze that is left levels better; oil and varnish are even.
    """
    return _FOLLOWS.get(layer.kind, 0.0)


def clear_of(layer: Layer) -> ClearFinish:
    """Give the finish that a wax, an oil or a varnish is."""
    finish = _CLEAR[layer.kind]
    if layer.amber is not None:
        finish = replace(finish, tint=layer.amber * AMBER_WAX.tint)
    return finish if layer.sheen is None else replace(finish, glare=_GLARE[layer.sheen])
