"""The words of layers over one part of the piece, and of what a client wants of it."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from swatchwright.colour.names import closeness, colour_name
from swatchwright.colour.spectrum import Light
from swatchwright.desktop.words.compare import UNDER
from swatchwright.desktop.words.finish import layer_head
from swatchwright.desktop.words.keeping import all_but, the_part
from swatchwright.desktop.words.pot import layers_named
from swatchwright.language import listed, say, say_count, say_in
from swatchwright.paint.layers import Layer, LayerKind
from swatchwright.piece.names import zone_word
from swatchwright.values import Lab

__all__ = [
    "ALL_OF_IT",
    "GOES_ON",
    "GOES_ON_TIP",
    "SEEN_FROM",
    "also_over",
    "ask_again",
    "chosen_for",
    "elsewhere",
    "layers_on_parts",
    "mix_for",
    "mix_of_colour",
    "off_client",
    "part_pressed",
    "piece_drawn",
    "place_word",
]

GOES_ON = say_in("of a layer", "goes on")
GOES_ON_TIP = say("The part of the piece that this layer is laid on, or all of it")
ALL_OF_IT = say_in("what a layer goes on", "all of it")
_FEW = 2
SEEN_FROM = 1.0
"""CIEDE2000 from which it is worth asking again; 1 is just seen."""


def place_word(zones: Sequence[str], besides: Collection[str] = ()) -> str:
    """Say what a layer goes on: all of it, all but some parts, or these parts."""
    if besides:
        return all_but(besides)
    return listed(map(the_part, zones)) if zones else ALL_OF_IT


def chosen_for(zones: Sequence[str], besides: Collection[str] = ()) -> str:
    """Name a mix that was chosen for some parts of the piece."""
    told = place_word(zones, besides) if besides else listed(map(zone_word, zones))
    return say("chosen, {zone}", zone=told)


def mix_for(number: int, zones: Sequence[str], besides: Collection[str] = ()) -> str:
    """Name a mix of the Colour page, found for the colour of some parts of the piece."""
    # There are many of these side by side: the shorter word serves.
    long = besides and len(zones) != 1
    told = place_word(zones, besides) if long else listed(map(zone_word, zones))
    return say("mix {number}, {zone}", number=number, zone=told)


def mix_of_colour(number: int, colour: str) -> str:
    """Name a mix of the Colour page, found for a colour that is on no part of the piece."""
    return say("mix {number}, {colour}", number=number, colour=colour)


def also_over(layers: Sequence[tuple[int, Layer]], mixed: Sequence[str]) -> str:
    """Say which layers go on parts with other mixes as well; empty where none does."""
    if not layers or not mixed:
        return ""
    told = listed(layer_head(number, layer.kind) for number, layer in layers)
    return say_count(
        "{layers} on all of it: also over {parts}, which is another mix.",
        "{layers} on all of it: also over {parts}, which are other mixes.",
        len(mixed),
        layers=told,
        parts=listed(map(the_part, mixed)),
    )


def elsewhere(layers: Sequence[Layer]) -> str:
    """Say what lies over parts that no mix is kept for; empty where nothing does."""
    if not layers:
        return ""
    parts = dict.fromkeys(the_part(layer.zone) for layer in layers)
    return say(
        "Not shown here: {layers} on {parts}, as no mix is kept for that.",
        layers=layers_named(layers),
        parts=listed(parts),
    )


def layers_on_parts(layers: Sequence[Layer]) -> str:
    """Name what lies over a piece, each kind once, and on which parts where that is not all."""
    found: dict[LayerKind, dict[str, None]] = {}
    for layer in layers:
        found.setdefault(layer.kind, {})[layer.zone] = None
    return listed(_on_parts(say(kind.value), tuple(zones)) for kind, zones in found.items())


def _on_parts(told: str, zones: Sequence[str]) -> str:
    # What lies on all of it lies on each part; many parts would be too long to be read.
    if "" in zones or len(zones) > _FEW:
        return told
    return say("{layer} on {parts}", layer=told, parts=listed(map(the_part, zones)))


def piece_drawn(light: Light) -> str:
    """Name the drawing of the piece, and say how it is seen."""
    return say("The piece, dry with its layers on, {under}", under=UNDER[light])


def part_pressed(zones: Sequence[str], seen: Lab, besides: Collection[str] = ()) -> str:
    """Tell parts of the drawing that have one mix, and how they look."""
    told = place_word(zones, besides)
    return say("{part}: {colour}", part=told, colour=colour_name(seen))


def off_client(off: float) -> str:
    """Say how far it is now from what the client wants, in a number and in words."""
    return say("Now {off:.1f} from what the client wants: {near}.", off=off, near=closeness(off))


def ask_again(over: Sequence[Layer]) -> str:
    """Offer to ask for the wash again, under what stays over it."""
    if not over:
        return say("Ask for the wash again")
    return say("Ask for the wash again, under the {layers}", layers=layers_named(over))
