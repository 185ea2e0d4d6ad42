"""Names of pieces, parts, zones and paints, as they are read.

With a job they are kept in English, as they were built; a name that the painter gave stays as she
wrote it. Whoever shows one says it here.
"""

from __future__ import annotations

import re

from swatchwright.language import mark, mark_in, say, say_in

__all__ = [
    "PARTS",
    "ZONES",
    "face_word",
    "paint_word",
    "part_word",
    "piece_word",
    "side_word",
    "size_word",
    "zone_named",
    "zone_word",
]

PARTS = (
    mark_in("part", "aprons"),
    mark_in("part", "back"),
    mark_in("part", "back apron"),
    mark_in("part", "back boards"),
    mark_in("part", "back legs"),
    mark_in("part", "back posts"),
    mark_in("part", "cap"),
    mark_in("part", "cornice"),
    mark_in("part", "door"),
    mark_in("part", "doors"),
    mark_in("part", "drawer fronts"),
    mark_in("part", "feet"),
    mark_in("part", "floor"),
    mark_in("part", "foot moulding"),
    mark_in("part", "front"),
    mark_in("part", "front legs"),
    mark_in("part", "front stretcher"),
    mark_in("part", "knobs"),
    mark_in("part", "legs"),
    mark_in("part", "level beads"),
    mark_in("part", "lid"),
    mark_in("part", "plinth"),
    mark_in("part", "plinth returns"),
    mark_in("part", "shelf sides"),
    mark_in("part", "shelves"),
    mark_in("part", "side aprons"),
    mark_in("part", "side mouldings"),
    mark_in("part", "side stretchers"),
    mark_in("part", "sides"),
    mark_in("part", "spindles"),
    mark_in("part", "top rail"),
    mark_in("part", "upright beads"),
)
"""What the parts of common pieces are called, beside the shapes, which name parts as well."""

ZONES = (
    mark("bead"),
    mark("body"),
    mark("doors"),
    mark("drawers"),
    mark("inside"),
    mark("seat"),
    mark("top"),
)
"""What the colour zones of common pieces are called."""

_SIZES = (
    mark_in("size", "length"),
    mark_in("size", "width"),
    mark_in("size", "height"),
    mark_in("size", "depth"),
    mark_in("size", "end"),
    mark_in("size", "member"),
    mark_in("size", "rail"),
)

_NO_KIND = mark("piece")
"""What a piece is called that nobody has named."""

_PRODUCTS = (
    *(mark("primer"), mark("adhesion primer"), mark("paint"), mark("wash"), mark("glaze")),
    *(mark("wax"), mark("oil"), mark("varnish"), mark("clear finish")),
)
_PAINT_FOR = "paint for "


def piece_word(name: str) -> str:
    """Say what a piece is called."""
    return say(name)


def part_word(name: str) -> str:
    """Say what a part or a shape is called; one of several may have a number after it.

    >>> part_word("panel 2")
    'panel 2'
    """
    plain, number = re.fullmatch(r"(.*?)( \d+)?", name, re.DOTALL).groups("")  # type: ignore[union-attr]
    return f"{say_in('part', plain)}{number}"


def zone_word(zone: str) -> str:
    """Say what a colour zone is called."""
    return say(zone)


def zone_named(word: str) -> str:
    """Give the zone that is meant by a word: a common one by its own key, another as it is."""
    return next((zone for zone in ZONES if zone_word(zone) == word), word)


def face_word(face: str) -> str:
    """Say what a face of a part is called."""
    return say_in("face", face)


def side_word(side: str) -> str:
    """Say what a side of a piece is called."""
    return say_in("side", side)


def size_word(name: str) -> str:
    """Say what a size of a part or a piece is called."""
    return say_in("size", name)


def paint_word(name: str) -> str:
    """Say what a paint of an order of amounts is called; one of the shelf has its own name.

    >>> paint_word("wash 2")
    'wash 2'
    """
    if name.startswith(_PAINT_FOR):
        return say("paint for {zone}", zone=zone_word(name.removeprefix(_PAINT_FOR)))
    plain, _, number = name.rpartition(" ")
    if plain in _PRODUCTS and number.isdecimal():
        return f"{say(plain)} {number}"
    return say(name) if name in _PRODUCTS else name
