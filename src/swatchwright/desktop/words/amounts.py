"""The words of how much paint a piece takes: what goes on, what to mix, what to buy and ask."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from decimal import Decimal

from swatchwright.acts.amounts_products import Over
from swatchwright.acts.amounts_whole import made_up, poured
from swatchwright.acts.piece_follow import ground_on
from swatchwright.acts.sheet_amounts import bought_line
from swatchwright.acts.tins_typed import tins_written
from swatchwright.language import bound, figure, listed, say, say_count, say_in
from swatchwright.language.money import money_in_use, priced
from swatchwright.piece.amounts import Amounts, Batch, Purchase
from swatchwright.piece.names import paint_word, zone_word
from swatchwright.piece.order import ProductKind
from swatchwright.piece.price import Price
from swatchwright.piece.spreading import Ground, Tool
from swatchwright.piece.tins import TinSize
from swatchwright.piece.work.order import Surface

RECKONING = say("Reckoning the paint…")

MIX_HEAD = say("Mix in one go")
USE_AMOUNT = say("Take it to the mix")
USE_AMOUNT_TIP = say("The Colour page then tells how much of each paint to pour for it")
TAKEN = say("Taken")
ONE_GO = say("A second batch never comes out quite the same.")

ON = say("What goes on")
COAT_NAMES = {
    ProductKind.PRIMER: say("Primer"),
    ProductKind.PAINT: say("Paint"),
    ProductKind.WASH: say("Wash"),
    ProductKind.CLEAR: say("Clear finish"),
}
COAT_HEADS = (say("how often"), say("a litre goes"))
NO_COATS = say_in("coats", "none")
RATE_UNIT = " m²/l"
RATE_TIP = say(
    "As the tin says. Usual is what the shelf knows of its paints, or 12 m² for a litre."
)
AS_ON_TIN = say("usual")
TOOL = say("Put on with")
SURFACE = say("On it now")
ON_IT = (
    (Surface.RAW, Ground.BARE),
    (Surface.RAW, Ground.ROUGH),
    (Surface.RAW, Ground.PRIMED),
    *((surface, ground_on(surface)) for surface in Surface if surface is not Surface.RAW),
)
"""What may be on a piece, and how that takes paint."""
FOLLOW = say("Let all of it follow")
FOLLOW_TIP = say("What you set here by hand is as the pages Finish and Plan say again")
FOLLOWED = {
    "primer": say("primer"),
    "wash": say("wash"),
    "clear": say("clear finish"),
    "ground": say("what is on it now"),
}
THINNED = say("Water in the wash")
THINNED_UNIT = say(" to 1")
SAMPLE = say("For a sample")
TOUCH_UP = say("To touch up")

BUY = say("What to buy")
BUY_HINT = say(
    "Write down what is left, and the tins that are sold: size and price, as {example}.",
    example=f"{tins_written([TinSize(500, Decimal('19.50'))])}; 1 l: 32",
)
BUY_COLUMNS = (
    say("Paint"),
    say("Needed"),
    say("Left, ml"),
    say("Tins sold"),
    say("Buy"),
    say("Cost"),
)
TINS_COLUMN = 3
PRICE = say("A price for the client")
HOURS = say("Hours of work")
TAKE_HOURS = say("Take that over")
RATE = say("For an hour")
MARGIN = say_in("of a price", "On top")
NO_PRICE = say("Give hours and what you take for one, and the price is worked out.")
NO_PRICE_PAINT = say("Fill in the tins whose price is not known, and the price is worked out.")
NOT_KNOWN = say("not known")


def surface_word(surface: Surface, ground: Ground) -> str:
    """Name what is on a piece; of raw wood how it takes paint."""
    finer = ground in {Ground.ROUGH, Ground.PRIMED}
    return say(ground.value if finer else surface.value)


def over_name(over: Sequence[Over], kind: ProductKind) -> str:
    """Name what goes over the paint of a kind: one thing by its own name, more by their kind."""
    names = {one.name for one in over if one.kind is kind}
    return _upper(say(names.pop())) if len(names) == 1 else COAT_NAMES[kind]


def follows_line(own: Collection[str]) -> str:
    """Say which coats are as the other pages say."""
    names = [word for name, word in FOLLOWED.items() if name not in own]
    return say("As on the pages Finish and Plan: {what}.", what=listed(names)) if names else ""


def plan_coats(coats: int | None) -> str:
    """Say how many coats of paint were set on the page of the plan, where these are others."""
    if coats is None:
        return ""
    if not coats:
        return say("On the page Plan it is painted already: no paint goes on.")
    return say_count(
        "On the page Plan it is {count} coat of paint.",
        "On the page Plan it is {count} coats of paint.",
        coats,
    )


def _upper(word: str) -> str:
    return word[:1].upper() + word[1:]


def tool_word(tool: Tool) -> str:
    """Name what paint is put on with."""
    return say(tool.value)


def coats_of(kind: ProductKind) -> str:
    """Name the field of the coats of a product."""
    return say("Coats of {product}", product=say(kind.value))


def rate_of(kind: ProductKind) -> str:
    """Name the field of how far a litre of a product goes."""
    return say("How far a litre goes, for each coat of {product}", product=say(kind.value))


def coats_suffix(count: int) -> str:
    """Follow a number of coats."""
    return say_count(" coat", " coats", count)


def batch_name(batch: Batch, zones: Sequence[str]) -> str:
    """Say what a batch is, and what it is for."""
    if batch.kind is not ProductKind.PAINT:
        return _upper(paint_word(batch.product))
    if len(zones) < 3:
        return say("Paint for {zones}", zones=listed(zone_word(zone) for zone in zones))
    return say("Paint for all of it")


def batch_line(batch: Batch, zones: Sequence[str]) -> str:
    """Say what a batch is, and how much of it to mix."""
    return f"{batch_name(batch, zones)}: {big_amount(batch.mix_ml)}"


def use_amount_name(batch: Batch, zones: Sequence[str]) -> str:
    """Name the button that takes an amount to the mix, for a screen reader."""
    return f"{USE_AMOUNT}, {big_amount(batch.mix_ml)}, {batch_name(batch, zones)}"


def big_amount(ml: float) -> str:
    """Say how much to mix, large."""
    return bound(f"{ml:.0f} ml")


def why_line(batch: Batch) -> str:
    """Say what a batch is made up of."""
    parts = made_up(batch)
    told = [say("{ml:.0f} to put on", ml=parts.need)]
    if batch.sample_ml:
        told.append(say("{ml:.0f} for a sample", ml=parts.sample))
    if batch.touch_up_ml:
        told.append(say("{ml:.0f} to touch up", ml=parts.touch_up))
    if parts.rounding:
        told.append(say("{ml:.0f} to round up", ml=parts.rounding))
    return ", ".join(told)


def pours(batch: Batch, names: dict[str, str]) -> tuple[tuple[str, str], ...]:
    """Give amount and name of what a batch is poured from."""
    *amounts, thinner = poured(batch)
    rows = [
        (f"{ml:.0f} ml", names.get(paint.id, paint.id))
        for paint, ml in zip(batch.paints, amounts, strict=True)
    ]
    if thinner:
        rows.append((f"{thinner:.0f} ml", say("water or thinner")))
    return tuple(rows)


def paint_name(purchase: Purchase) -> str:
    """Name a paint that is to be bought."""
    return paint_word(purchase.name)


def names_of(found: Amounts) -> dict[str, str]:
    """Give the names of paints by their ids."""
    return {purchase.id: paint_name(purchase) for purchase in found.purchases}


def buy_head(column: int, own: str) -> str:
    """Head a column of what to buy.

    Prices of tins stand in their cells as they are typed; the head says in what money, the job's
    own word for it or hers.
    """
    money = own or money_in_use()
    if column == TINS_COLUMN and money:
        return say("Tins sold, in {money}", money=money)
    return BUY_COLUMNS[column]


def unparted(tins: str) -> str:
    """Let a size and its price stand on one line."""
    return tins.replace(": ", ":\N{NO-BREAK SPACE}").replace(" ml", "\N{NO-BREAK SPACE}ml")


def buy_line(purchase: Purchase, need: float) -> str:
    """Say what to buy of a paint, of which so many ml are told to be needed."""
    if purchase.short_ml:
        return big_amount(max(1.0, need - purchase.left_ml))
    if not purchase.tins:
        return say_in("to buy", "nothing")
    return " + ".join(f"{tin.count} × {figure(tin.size.ml, 'g')} ml" for tin in purchase.tins)


def cost_line(purchase: Purchase, own: str) -> str:
    """Say what it costs, in the job's own word for money or hers."""
    return NOT_KNOWN if purchase.cost is None else priced(purchase.cost, own)


def materials_line(found: Amounts, own: str) -> str:
    """Say what all of the paint to buy costs, as the sheet says it."""
    return bought_line(found.purchases, own)


def plan_hours_line(hours: float) -> str:
    """Say how many hours of work the plan comes to."""
    return say("The plan says {hours:.1f} h.", hours=hours)


def take_hours_name(hours: float) -> str:
    """Name the button that takes the hours of the plan for the price."""
    return say("Take the {hours:.1f} h of the plan for the price", hours=hours)


def total_line(price: Price, own: str) -> str:
    """Say what to ask of the client, in the job's own word for money or hers."""
    return priced(price.total, own)


def price_lines(price: Price, own: str) -> tuple[tuple[str, str], ...]:
    """Give what the price is made up of, in the job's own word for money or hers."""
    return (
        (say_in("of a price", "Work"), priced(price.labour, own)),
        (say_in("of a price", "Paint"), priced(price.materials, own)),
        (MARGIN, priced(price.margin, own)),
    )
