"""How the zones of a piece look, bare and with the layers that lie over their mixes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from swatchwright.acts.finish import preview
from swatchwright.acts.layering import Parts
from swatchwright.colour.spectrum import Light
from swatchwright.errors import MendableError
from swatchwright.paint.layers import Layer, Stack
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab

__all__ = ["SeenZones", "ZoneLook", "looks_of_zones"]

_InRoom = tuple[tuple[Light, Lab], ...]


@dataclass(frozen=True, slots=True)
class ZoneLook:
    """How a zone looks dry, in each light of the room.

    Parameters
    ----------
    parts
        Ids and shares of its mix.
    bare, finished
        The mix alone, and with all layers over it.
    """

    parts: tuple[tuple[str, float], ...]
    bare: _InRoom
    finished: _InRoom

    def seen(self, light: Light, *, finished: bool) -> Lab:
        """Give how it looks in a light, with its finish or bare."""
        return dict(self.finished if finished else self.bare)[light]


@dataclass(frozen=True, slots=True)
class SeenZones:
    """How all zones of a piece look.

    Parameters
    ----------
    looks
        Of each zone whose mix can be reckoned.
    over
        The layers over any of them; none where nothing lies over them, or what lies there cannot
        be.
    why_bare
        Why the layers over one of them cannot be; None where all can.
    """

    looks: Mapping[str, ZoneLook] = field(default_factory=dict)
    over: tuple[Layer, ...] = ()
    why_bare: MendableError | None = None


def looks_of_zones(shelf: Shelf, mixes: Mapping[str, Parts], over: Stack) -> SeenZones:
    """Reckon how the zones of a piece look; what cannot be laid over them is told, and left off.

    Parameters
    ----------
    shelf
        Where the paints of the mixes and of the layers are.
    mixes
        Ids and shares of the paints of each zone; one that cannot be mixed is passed over.
    over
        What lies over them: each has what goes on all of the piece, and what on it alone.
    """
    there = {paint.id for paint in shelf.paints}
    looks = _Looks(shelf)
    found, why = {}, None
    laid: list[Layer] = []
    for zone, parts in mixes.items():
        if any(id_ not in there for id_, _ in parts):
            continue
        mine = over.over(zone)
        try:
            found[zone] = looks.of(tuple(parts), mine)
            laid += mine.layers
        except MendableError as error:
            found[zone] = looks.of(tuple(parts), Stack())
            why = why or error
    seen = tuple(layer for layer in over.layers if layer in laid)
    return SeenZones(found, seen, why)


class _Looks:
    """Looks of mixes under layers, each reckoned once."""

    def __init__(self, shelf: Shelf) -> None:
        self._shelf = shelf
        self._found: dict[tuple[tuple[tuple[str, float], ...], Stack], ZoneLook] = {}

    def of(self, mix: tuple[tuple[str, float], ...], over: Stack) -> ZoneLook:
        """Give how a mix looks under layers.

        Two parts of one mix under the same layers look alike, whichever part these are for.
        """
        plain = Stack(tuple(replace(layer, zone="") for layer in over.layers))
        key = mix, plain
        if key not in self._found:
            steps = preview(self._shelf, mix, plain).steps
            self._found[key] = ZoneLook(mix, steps[0].lights, steps[-1].lights)
        return self._found[key]
