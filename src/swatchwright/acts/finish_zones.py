"""How the zones of a piece look, bare and with the layers that lie over their mixes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

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
        The layers over them; none where nothing lies over them, or what lies there cannot be.
    why_bare
        Why the layers cannot be; None where they can.
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
        What lies over all of them.
    """
    try:
        return SeenZones(_looks(shelf, mixes, over), over.layers)
    except MendableError as error:
        return SeenZones(_looks(shelf, mixes, Stack()), (), error)


def _looks(shelf: Shelf, mixes: Mapping[str, Parts], over: Stack) -> dict[str, ZoneLook]:
    there = {paint.id for paint in shelf.paints}
    found: dict[tuple[tuple[str, float], ...], ZoneLook] = {}
    for parts in mixes.values():
        mix = tuple(parts)
        if mix not in found and all(id_ in there for id_, _ in mix):
            steps = preview(shelf, mix, over).steps
            found[mix] = ZoneLook(mix, steps[0].lights, steps[-1].lights)
    return {zone: found[tuple(parts)] for zone, parts in mixes.items() if tuple(parts) in found}
