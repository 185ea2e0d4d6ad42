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
    "Over",
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
    """Something that goes over the paint.

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
    """

    name: str
    kind: ProductKind
    coats: int
    paints: tuple[Share, ...] = ()
    thinned: float = 0.0


def over_layers(stack: Stack | None) -> tuple[Over, ...]:
    """Give what goes over the paint by the layers of a finish, the lowest first.

    Layers of the same stuff are one product, laid as often as all of them.
    """
    found: dict[Over, int] = {}
    for layer in () if stack is None else stack.layers:
        kind = ProductKind.WASH if layer.is_paint else ProductKind.CLEAR
        thinned = float(wash_of(layer).water) if layer.paints else 0.0
        over = Over(layer.kind.value, kind, 0, layer.paints, thinned)
        found[over] = found.get(over, 0) + layer.passes
    return tuple(replace(over, coats=n) for over, n in found.items() if n)


def spread_over(over: Sequence[Over], kind: ProductKind, coats: int) -> tuple[Over, ...]:
    """Let what is of one kind be laid so many times in all, in its turn; the last one goes on.

    What is not told is laid under the name of its kind.
    """
    mine = [one for one in over if one.kind is kind] or [Over(kind.value, kind, 0)]
    left, counts = coats, {}
    for one in mine:
        counts[one] = left if one is mine[-1] else min(one.coats, left)
        left -= counts[one]
    # Each stays in its place among the others, and what is new comes last.
    laid = [counts.pop(one) if one in counts else one.coats for one in over]
    told = [replace(one, coats=n) for one, n in zip(over, laid, strict=True)]
    told += [replace(one, coats=n) for one, n in counts.items()]
    return tuple(one for one in told if one.coats)


def over_products(
    over: Iterable[Over],
    shelf: Shelf | None,
    *,
    rates: Mapping[ProductKind, float],
    left: Mapping[str, float],
) -> Iterator[tuple[Product, int]]:
    """Give the product of each, under a name of its own, and how often it is laid."""
    used: dict[str, int] = {}
    for one in over:
        used[one.name] = used.get(one.name, 0) + 1
        name = one.name if used[one.name] == 1 else f"{one.name} {used[one.name]}"
        product = _over_product(one, name, shelf, left)
        yield replace(product, rate=rates.get(one.kind, product.rate)), one.coats


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
