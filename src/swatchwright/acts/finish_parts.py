"""Which part of the piece a mix is on, what lies over it there, and edits of that part's layers.

One list of layers is kept with a job. A layer goes on all of the piece, or on one part of it; a mix
that is on several parts has a layer of its own for each of them. What is changed over one mix
leaves the layers over the others alone.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from swatchwright.acts.layers_by_part import grouped, parts_of_mix
from swatchwright.acts.mixes_in_use import WHOLE_PIECE, mixes_in_use, painted_zones
from swatchwright.paint.layers import Layer, Stack
from swatchwright.shelf.jobs import Job, KeptRecipe
from swatchwright.values import Lab

__all__ = [
    "EVERYWHERE",
    "LaidOn",
    "MixOn",
    "besides_of",
    "laid",
    "laid_as_first_wash",
    "laid_otherwise",
    "mix_of_colour",
    "mixes_on",
    "moved",
    "on_colour",
    "on_nothing",
    "placed",
    "places_of",
    "taken_off",
]

Zones = tuple[str, ...]

EVERYWHERE: Zones = ()
"""Where a layer goes that goes on all of the piece."""


@dataclass(frozen=True, slots=True)
class LaidOn:
    """What of a piece layers are laid on.

    Parameters
    ----------
    zones
        The parts; none where the piece's parts are not known.
    whole
        Whether that is all that is painted of it, so that a layer goes on all of the piece.
    others
        The other parts, as far as they are known.
    mixed
        What of the piece has other mixes: parts, or the whole piece for the rest of it.
    """

    zones: Zones = EVERYWHERE
    whole: bool = True
    others: Zones = ()
    mixed: Zones = ()

    @property
    def target(self) -> Zones:
        """Give the parts that a new layer is laid on, one by one; none to lay it on all."""
        return EVERYWHERE if self.whole else self.zones

    @property
    def choices(self) -> tuple[Zones, ...]:
        """Give where a layer may go, the usual first; none where there is nothing to choose."""
        single = tuple((zone,) for zone in self.zones) if len(self.zones) > 1 else ()
        found = tuple(dict.fromkeys([self.target, *single, EVERYWHERE]))
        return found if len(found) > 1 else ()

    def over(self, stack: Stack) -> Stack:
        """Give what lies over it."""
        return stack.over(self.zones[0] if self.zones else "")

    def goes_on(self, layer: Layer) -> Zones:
        """Say where a layer that lies over it goes."""
        return self.target if layer.zone else EVERYWHERE


@dataclass(frozen=True, slots=True)
class MixOn:
    """A chosen mix of a job, and what of the piece it is on with the same layers over it.

    Parameters
    ----------
    recipe
        The mix.
    on
        What it is on.
    besides
        The parts with mixes of their own, where it is on all the others; else none.
    """

    recipe: KeptRecipe
    on: LaidOn
    besides: Zones = ()


# --- which mixes are on which parts --------------------------------------------------------------


def mixes_on(job: Job | None, stack: Stack) -> tuple[MixOn, ...]:
    """Give the chosen mixes that are in use, the one chosen last first, and what each is on.

    A mix on several parts is given once as long as the same lies over them all, else once for each
    such set of parts.
    """
    if job is None:
        return ()
    used = {recipe.zone: recipe for recipe in mixes_in_use(job)}
    painted = painted_zones(job) if used else ()
    return tuple(
        mix
        for recipe in reversed(job.recipes)
        if used.get(recipe.zone) == recipe and recipe.chosen
        for mix in _of_mix(recipe, tuple(used), painted, stack)
    )


def besides_of(job: Job | None) -> Zones:
    """Give the parts of a piece that a mix for the whole piece would not be on, if it is on any."""
    chosen = () if job is None else tuple(recipe.zone for recipe in mixes_in_use(job))
    own = tuple(zone for zone in chosen if zone != WHOLE_PIECE)
    if job is None or not own:
        return ()
    painted = painted_zones(job)
    return () if painted and {*own}.issuperset(painted) else own


def _of_mix(recipe: KeptRecipe, used: Zones, painted: Zones, stack: Stack) -> list[MixOn]:
    """Give a mix with each set of its parts that have the same layers over them."""
    own = tuple(zone for zone in used if zone != WHOLE_PIECE)
    known = tuple(dict.fromkeys([*painted, *own]))
    rest = recipe.zone == WHOLE_PIECE
    # Of a piece that is not sized, only the parts with layers of their own are known.
    zones = parts_of_mix(recipe.zone, own, painted or stack.zones)
    alone = used == (recipe.zone,) and (rest or len(known) == 1)
    mixed = tuple(z for z in known if z not in zones and (z in own or WHOLE_PIECE in used))
    if not rest and WHOLE_PIECE in used and not painted:
        mixed = (*mixed, WHOLE_PIECE)
    unnamed = [EVERYWHERE] if rest and not painted else []
    found = []
    for some in [*unnamed, *grouped(stack, zones, own_apart=True)]:
        all_of_it = not some or (some == zones and not unnamed)
        others = tuple(zone for zone in known if zone not in some)
        on = LaidOn(some, alone and all_of_it, others, mixed)
        found.append(MixOn(recipe, on, own if rest and all_of_it else ()))
    return found


def mix_of_colour(job: Job | None, wanted: Lab, mixes: Sequence[MixOn]) -> MixOn | None:
    """Give the first of the chosen mixes that is for the part a colour is wanted for, if any."""
    colours = () if job is None else job.wanted
    zone = next((one.zone for one in colours if one.colour.lab == wanted), None)
    own = (mix for mix in mixes if mix.recipe.zone == zone)
    return next(own, None) or next((mix for mix in mixes if mix.recipe.wanted == wanted), None)


def on_colour(job: Job | None, wanted: Lab, stack: Stack) -> LaidOn:
    """Give what of a job's piece a wanted colour is for, as far as the job says; else all of it."""
    mixes = mixes_on(job, stack)
    here = mix_of_colour(job, wanted, mixes)
    return on_nothing(mixes) if here is None else here.on


def on_nothing(mixes: Sequence[MixOn]) -> LaidOn:
    """Give all of a piece, for a mix that is on no part of it beside these that are."""
    used = tuple(dict.fromkeys(mix.recipe.zone for mix in mixes))
    return LaidOn(mixed=used if used != (WHOLE_PIECE,) else ())


# --- editing what lies over a part ---------------------------------------------------------------


def places_of(stack: Stack, on: LaidOn, place: int) -> tuple[int, ...]:
    """Give the places in a stack of a layer that is so many over a part: one for each part."""
    layer = on.over(stack).layers[place]
    if not layer.zone:
        return (_nth(stack, "", _before(stack, on, place, own=False)),)
    number = _before(stack, on, place, own=True)
    return tuple(_nth(stack, zone, number) for zone in on.zones)


def _before(stack: Stack, on: LaidOn, place: int, *, own: bool) -> int:
    """Count the layers before one that go on the part alone, or on all."""
    return sum(bool(layer.zone) is own for layer in on.over(stack).layers[:place])


def _nth(stack: Stack, zone: str, number: int) -> int:
    return [n for n, layer in enumerate(stack.layers) if layer.zone == zone][number]


def laid(stack: Stack, on: LaidOn, layer: Layer) -> Stack:
    """Lay another layer over a part."""
    return Stack((*stack.layers, *_for(layer, on.target)))


def laid_otherwise(stack: Stack, on: LaidOn, place: int, layer: Layer) -> Stack:
    """Lay a layer over a part otherwise; it stays on what it is on."""
    layers = list(stack.layers)
    for at in places_of(stack, on, place):
        layers[at] = replace(layer, zone=layers[at].zone)
    return Stack(tuple(layers))


def taken_off(stack: Stack, on: LaidOn, place: int) -> Stack:
    """Take a layer off."""
    gone = places_of(stack, on, place)
    return Stack(tuple(layer for n, layer in enumerate(stack.layers) if n not in gone))


def placed(stack: Stack, on: LaidOn, place: int, zones: Zones) -> Stack:
    """Let a layer over a part go on these parts, or with none on all of the piece."""
    at = places_of(stack, on, place)
    layers = list(stack.layers)
    new = _for(layers[at[0]], zones)
    kept = [layer for n, layer in enumerate(layers) if n not in at[1:]]
    return Stack((*kept[: at[0]], *new, *kept[at[0] + 1 :]))


def moved(stack: Stack, on: LaidOn, place: int, by: int) -> Stack:
    """Lay a layer one earlier (-1) or later (1) among those over a part.

    Between a layer that goes on all and one that does not, it is the latter that is laid at another
    time, so that the other parts keep their order.
    """
    first, second = min(place, place + by), max(place, place + by)
    a, b = places_of(stack, on, first), places_of(stack, on, second)
    layers = list(stack.layers)
    if bool(layers[a[0]].zone) is bool(layers[b[0]].zone):
        for one, other in zip(a, b, strict=True):
            layers[one], layers[other] = layers[other], layers[one]
        return Stack(tuple(layers))
    if layers[a[0]].zone:
        return _put(layers, a, b[0] + 1)
    return _put(layers, b, a[0])


def _put(layers: list[Layer], which: tuple[int, ...], to: int) -> Stack:
    """Lay some layers at another place."""
    chosen = [layers[n] for n in which]
    rest = [[layer for n, layer in some if n not in which] for some in _halves(layers, to)]
    return Stack((*rest[0], *chosen, *rest[1]))


def _halves(
    layers: list[Layer], at: int
) -> tuple[list[tuple[int, Layer]], list[tuple[int, Layer]]]:
    counted = list(enumerate(layers))
    return counted[:at], counted[at:]


def laid_as_first_wash(stack: Stack, on: LaidOn, wash: Layer) -> Stack:
    """Lay a wash straight over the mix of a part, in place of all washes and glazes there.

    Those that go on all of the piece stay on the other parts.
    """
    stays: list[Layer] = []
    for layer in stack.layers:
        if not layer.is_paint or (layer.zone and layer.zone not in on.zones):
            stays.append(layer)
        elif not layer.zone and on.target and on.others:
            stays += _for(layer, on.others)
    return Stack((*_for(wash, on.target), *stays))


def _for(layer: Layer, zones: Zones) -> list[Layer]:
    """Give a layer for each of some parts; for all of the piece where there are none."""
    return [replace(layer, zone=zone) for zone in zones or ("",)]
