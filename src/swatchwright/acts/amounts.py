"""Reckon how much paint a piece takes, what to mix at once, what to buy, and what to ask for it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from swatchwright.acts.amounts_products import (
    LaidOver,
    Over,
    mixed_product,
    over_products,
    over_tool,
    spread_over,
)
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.piece.amounts import Amounts, amounts_of
from swatchwright.piece.areas import ZoneArea
from swatchwright.piece.names import zone_word
from swatchwright.piece.order import (
    AmountsOrder,
    Coating,
    Ingredient,
    Product,
    ProductKind,
    Terms,
)
from swatchwright.piece.spreading import Ground, Tool
from swatchwright.piece.tins import TinSize
from swatchwright.shelf.shelf import Shelf

__all__ = ["Coats", "amounts_for", "mixed_product", "order_of"]


@dataclass(frozen=True, slots=True)
class Coats:
    """What goes on every zone: coats of each kind, and how far a litre of each goes.

    Parameters
    ----------
    primer, paint, wash, clear
        Coats of each, 0 for none.
    rates
        m2 per litre and coat of each kind; 12 where not named. For a mixture of shelf paints
        theirs is taken unless named.
    solids
        Volume solids of the paint, 0-1; for a mixture of shelf paints theirs is taken if None.
    wash_thinned
        Parts of water to one of paint in the wash.
    ground, tool
        What the first of all is put on, and with what.
    """

    primer: int = 0
    paint: int = 2
    wash: int = 0
    clear: int = 0
    rates: Mapping[ProductKind, float] = field(default_factory=dict)
    solids: float | None = None
    wash_thinned: float = 3.0
    ground: Ground = Ground.PAINTED
    tool: Tool = Tool.BRUSH


def amounts_for(order: AmountsOrder) -> Amounts:
    """Reckon all amounts of an order.

    Raises
    ------
    MendableError
        If the order cannot be.
    """
    return amounts_of(order)


def order_of(
    zones: Sequence[ZoneArea],
    coats: Coats,
    *,
    shelf: Shelf | None = None,
    recipes: Mapping[str, Sequence[tuple[str, float]]] | None = None,
    tins: Mapping[str, Sequence[TinSize]] | None = None,
    left: Mapping[str, float] | None = None,
    terms: Terms | None = None,
    sample_ml: float = 30.0,
    touch_up: float = 0.1,
    over: Sequence[Over] = (),
    primer: str = ProductKind.PRIMER.value,
) -> AmountsOrder:
    """Put an order together for zones that all get the same coats, each in its own colour.

    Parameters
    ----------
    zones
        Colour zones and areas, m2.
    coats
        What goes on each of them.
    shelf, recipes
        Mixtures of shelf paints by zone, ids and parts; the zone "" stands for all that have none
        of their own. A zone without a recipe gets a paint called by the zone's name.
    tins, left
        Sizes sold and ml left, by the id of a paint of the shelf, or of `primer`, `wash`,
        `clear finish` or a zone's paint.
    terms, sample_ml, touch_up
        As in `AmountsOrder`.
    over
        What washes and clear finishes are, in the order they are laid, where that is known; how
        often they are laid is as the coats say, at most on any part. What is for a part that is
        not among the zones is left out.
    primer
        What the primer is called.

    Raises
    ------
    MendableError
        If a recipe is for a zone that is not there, or cannot be mixed; or tins or a rest are
        given of something that is not used.
    """
    for kind, n in ((ProductKind.WASH, coats.wash), (ProductKind.CLEAR, coats.clear)):
        over = spread_over(over, kind, n)
    over = [one for one in over if one.zone in {"", *(zone.zone for zone in zones)}]
    recipes, tins, left = recipes or {}, tins or {}, left or {}
    for zone in recipes:
        if zone and zone not in [z.zone for z in zones]:
            raise MendableError(
                say("There is no zone “{zone}” for the recipe.", zone=zone_word(zone)),
                say("Use one of: {names}.", names=", ".join(zone_word(z.zone) for z in zones)),
            )
    paints = _paints(zones, coats, shelf, recipes, left) if coats.paint else {}
    above = list(_above(coats, over, shelf, left))
    below = [_primer(coats, primer)] if coats.primer else []
    tops = dict.fromkeys(laid.product for laid in above)
    products = [*dict.fromkeys(paints.values()), *below, *tops]
    known = {i.id for product in products for i in product.ingredients}
    for name in (*tins, *left):
        if name not in known:
            raise MendableError(
                say("Nothing called “{name}” is used here.", name=name),
                say("Use one of: {names}.", names=", ".join(known)),
            )
    return AmountsOrder(
        tuple(zones),
        tuple(_stocked(product, tins, left) for product in products),
        tuple(_coatings(zones, coats, {zone: p.id for zone, p in paints.items()}, above)),
        sample_ml,
        touch_up,
        terms or Terms(),
    )


def _paints(
    zones: Sequence[ZoneArea],
    coats: Coats,
    shelf: Shelf | None,
    recipes: Mapping[str, Sequence[tuple[str, float]]],
    left: Mapping[str, float],
) -> dict[str, Product]:
    """Give the paint of each zone; zones of one recipe share theirs, mixed in one batch."""
    found: dict[str, Product] = {}
    of_recipe: dict[tuple[tuple[str, float], ...], Product] = {}
    for zone in zones:
        recipe = tuple(recipes.get(zone.zone, recipes.get("", ())))
        if not recipe:
            paint = Ingredient(zone.zone, f"paint for {zone.zone}")
            found[zone.zone] = _own(coats, Product(zone.zone, ProductKind.PAINT, (paint,)))
        elif shelf is not None:
            name = f"mix {len(of_recipe) + 1}"
            if recipe not in of_recipe:
                of_recipe[recipe] = _own(coats, mixed_product(shelf, recipe, id_=name, left=left))
            found[zone.zone] = of_recipe[recipe]
        else:
            raise MendableError(
                say("A recipe was given, but no shelf."), say("Name the shelf of its paints.")
            )
    return found


def _own(coats: Coats, product: Product) -> Product:
    rate = coats.rates.get(product.kind, product.rate)
    solids = product.solids if coats.solids is None else coats.solids
    return replace(product, rate=rate, solids=solids)


def _primer(coats: Coats, name: str) -> Product:
    kind = ProductKind.PRIMER
    bought = Ingredient(kind.value, name)
    return Product(kind.value, kind, (bought,), coats.rates.get(kind, 12.0))


def _above(
    coats: Coats, over: Sequence[Over], shelf: Shelf | None, left: Mapping[str, float]
) -> Iterator[LaidOver]:
    """Give what goes over the paint, how often, and where."""
    for laid in over_products(over, shelf, rates=coats.rates, left=left):
        # A wash of which nothing is known is thinned as the coats say.
        product = laid.product
        unknown = product.id == ProductKind.WASH.value == product.ingredients[0].id
        thinned = replace(product, thinned=coats.wash_thinned)
        yield replace(laid, product=thinned) if unknown else laid


def _stocked(
    product: Product, tins: Mapping[str, Sequence[TinSize]], left: Mapping[str, float]
) -> Product:
    return replace(
        product,
        ingredients=tuple(
            replace(
                paint,
                tins=tuple(tins.get(paint.id, paint.tins)),
                left_ml=left.get(paint.id, paint.left_ml),
            )
            for paint in product.ingredients
        ),
    )


def _coatings(
    zones: Sequence[ZoneArea],
    coats: Coats,
    paints: Mapping[str, str],
    above: Sequence[LaidOver],
) -> Iterator[Coating]:
    """Give what goes on each zone in its order; only what comes first meets the ground."""
    for zone in zones:
        ground = coats.ground
        tops = _coats_on(zone.zone, above)
        for product, n, leaves in (
            (ProductKind.PRIMER.value, coats.primer, Ground.PRIMED),
            (paints.get(zone.zone, ""), coats.paint, Ground.PAINTED),
            *((product, n, Ground.PAINTED) for product, n in tops.items()),
        ):
            if n:
                yield Coating(zone.zone, product, n, ground, over_tool(product, coats.tool))
                ground = leaves


def _coats_on(zone: str, above: Sequence[LaidOver]) -> dict[str, int]:
    """Give how often each product goes on a zone: what goes on all, and what on it alone."""
    counts: dict[str, int] = {}
    for laid in above:
        if laid.zone in {"", zone}:
            counts[laid.product.id] = counts.get(laid.product.id, 0) + laid.coats
    return counts
