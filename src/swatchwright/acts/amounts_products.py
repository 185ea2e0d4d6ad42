"""The products of an order of amounts: mixtures of shelf paints, and what goes over the paint."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from swatchwright.acts.mix import look_of_mix
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.paint.layers import LayerKind, Stack, wash_of
from swatchwright.paint.paints import Paint
from swatchwright.piece.order import Ingredient, Product, ProductKind
from swatchwright.piece.spreading import CLEAR_RATES, Tool
from swatchwright.piece.tins import TinSize
from swatchwright.shelf.shelf import Shelf

__all__ = [
    "LaidOver",
    "Over",
    "coats_over",
    "mixed_product",
    "over_layers",
    "over_products",
    "over_tool",
    "spread_over",
]

Share = tuple[str, float]

_USUAL_RATE = 12.0


@dataclass(frozen=True, slots=True)
class Over:
    """Something that goes over the paint, on all of the piece or on one part of it.

    Parameters
    ----------
    name
        `wash`, `glaze`, `wax`, `oil` or `varnish`; or that of its kind, where no more is known.
    kind
        A wash or a clear finish.
    coats
        How often it is laid.
    paints
        Ids and parts of the paints in it; none where it is bought as it is, or not known.
    thinned
        Volumes of water, of glaze medium or of clear wax to one of paint.
    zone
        The part of the piece that it goes on; empty for all of it.
    """

    name: str
    kind: ProductKind
    coats: int
    paints: tuple[Share, ...] = ()
    thinned: float = 0.0
    zone: str = ""

    @property
    def stuff(self) -> tuple[object, ...]:
        """What it is made of: that of two parts is mixed in one go where this is the same."""
        return self.name, self.kind, self.paints, self.thinned


@dataclass(frozen=True, slots=True)
class LaidOver:
    """A product that goes over the paint, how often, and on which part; empty for all of it."""

    product: Product
    coats: int
    zone: str


def over_layers(stack: Stack | None) -> tuple[Over, ...]:
    """Give what goes over the paint by the layers of a finish, the lowest first.

    Layers of the same stuff on the same part are one, laid as often as all of them.
    """
    found: dict[Over, int] = {}
    for layer in () if stack is None else stack.layers:
        kind = ProductKind.WASH if layer.is_paint else ProductKind.CLEAR
        thinned = float(wash_of(layer).water) if layer.paints else 0.0
        over = Over(layer.kind.value, kind, 0, layer.paints, thinned, layer.zone)
        found[over] = found.get(over, 0) + layer.passes
    return tuple(replace(over, coats=n) for over, n in found.items() if n)


def coats_over(over: Iterable[Over], kind: ProductKind) -> int:
    """Give how often what is of one kind is laid, on the part that gets the most of it."""
    mine = [one for one in over if one.kind is kind]
    return max(sum(one.coats for one in _on(mine, zone)) for zone in _zones(mine))


def spread_over(over: Sequence[Over], kind: ProductKind, coats: int) -> tuple[Over, ...]:
    """Let what is of one kind be laid so many times in all, in its turn; the last one goes on.

    What is not told is laid under the name of its kind. Of parts that get other layers, the one
    that gets the most of the kind is told; on none it is laid more often, and a part that gets
    fewer gets no more.
    """
    mine = [one for one in over if one.kind is kind] or [Over(kind.value, kind, 0)]
    most = coats_over(mine, kind)
    full = [on for zone in _zones(mine) if _laid(on := _on(mine, zone)) == most]
    last = [on[-1] for on in full if on]
    left, counts = dict.fromkeys(_zones(mine), coats), {}
    for one in mine:
        here = [zone for zone in left if one.zone in {"", zone}]
        free = min(left[zone] for zone in here)
        counts[one] = free if one in last else min(one.coats, free)
        left.update({zone: left[zone] - counts[one] for zone in here})
    # Each stays in its place among the others, and what is new comes last.
    laid = [counts.pop(one) if one in counts else one.coats for one in over]
    told = [replace(one, coats=n) for one, n in zip(over, laid, strict=True)]
    told += [replace(one, coats=n) for one, n in counts.items()]
    return tuple(one for one in told if one.coats)


def _zones(over: Iterable[Over]) -> tuple[str, ...]:
    """Name the parts that get layers of their own, after the rest of the piece, which is empty."""
    return tuple(dict.fromkeys(["", *(one.zone for one in over)]))


def _on(over: Iterable[Over], zone: str) -> list[Over]:
    """Give what goes on a part."""
    return [one for one in over if one.zone in {"", zone}]


def _laid(over: Iterable[Over]) -> int:
    return sum(one.coats for one in over)


def over_products(
    over: Iterable[Over],
    shelf: Shelf | None,
    *,
    rates: Mapping[ProductKind, float],
    left: Mapping[str, float],
) -> Iterator[LaidOver]:
    """Give the product of each, under a name of its own, how often it is laid, and where.

    The same stuff for two parts is one product.
    """
    used: dict[str, int] = {}
    made: dict[tuple[object, ...], tuple[Product, set[str]]] = {}
    for one in over:
        if one.stuff not in made or one.zone in made[one.stuff][1]:
            used[one.name] = used.get(one.name, 0) + 1
            name = one.name if used[one.name] == 1 else f"{one.name} {used[one.name]}"
            product = _over_product(one, name, shelf, left)
            product = replace(product, rate=rates.get(one.kind, product.rate))
            made[one.stuff] = product, set()
        product, zones = made[one.stuff]
        zones.add(one.zone)
        yield LaidOver(product, one.coats, one.zone)


def _over_product(one: Over, name: str, shelf: Shelf | None, left: Mapping[str, float]) -> Product:
    rate = CLEAR_RATES.get(one.name, _USUAL_RATE)
    bought = Ingredient(name, name)
    if not one.paints:
        return Product(name, one.kind, (bought,), rate, thinned=one.thinned)
    if shelf is None:
        raise MendableError(
            say("A recipe was given, but no shelf."), say("Name the shelf of its paints.")
        )
    mixed = mixed_product(shelf, one.paints, id_=name, left=left)
    if one.kind is ProductKind.WASH:
        return replace(mixed, kind=one.kind, thinned=one.thinned)
    # A wax that is tinted is bought clear, and a little paint is stirred into it.
    total = sum(paint.share for paint in mixed.ingredients)
    stirred = tuple(replace(p, share=p.share / total) for p in mixed.ingredients)
    clear = (replace(bought, share=one.thinned),) if one.thinned else ()
    return Product(name, one.kind, (*clear, *stirred), rate)


def over_tool(product: str, tool: Tool) -> Tool:
    """Give what it is put on with: wax and oil are brushed or wiped on, whatever the paint is."""
    worked_in = (LayerKind.WAX.value, LayerKind.OIL.value)
    return Tool.BRUSH if product.startswith(worked_in) else tool


def mixed_product(
    shelf: Shelf, parts: Sequence[Share], *, id_: str, left: Mapping[str, float]
) -> Product:
    """Make a product of paints of a shelf, with its own spreading rate and solids.

    A litre of a mixture goes as far as its shares say: one over the sum of share over rate.

    Parameters
    ----------
    shelf
        Where the paints are.
    parts
        Ids and amounts; only their proportions count.
    id_
        What to call it.
    left
        What is left of each paint, ml, by its id.

    Raises
    ------
    MendableError
        If the paints cannot be mixed: see `look_of_mix`.
    """
    look = look_of_mix(shelf, parts)
    each = list(zip(look.paints, look.shares, strict=True))
    return Product(
        id_,
        ProductKind.PAINT,
        tuple(_ingredient(paint, share, left) for paint, share in each),
        rate=1.0 / sum(share / paint.spreading_rate for paint, share in each),
        solids=sum(share * paint.volume_solids for paint, share in each),
    )


def _ingredient(paint: Paint, share: float, left: Mapping[str, float]) -> Ingredient:
    tins = tuple(
        TinSize(tin.ml, None if tin.price is None else Decimal(str(tin.price)))
        for tin in paint.tins
    )
    return Ingredient(paint.id, paint.name, share, tins, left.get(paint.id, 0.0))
