"""The words of the page of the piece."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from decimal import Decimal

from swatchwright.colour.names import colour_name
from swatchwright.piece.amounts import Amounts, Batch, Purchase
from swatchwright.piece.faces import EDGES
from swatchwright.piece.order import ProductKind
from swatchwright.piece.part import Face, Part
from swatchwright.piece.price import Price
from swatchwright.values import Lab

HEADING = "How big it is, and how much paint that takes"
HINT = "Press what comes nearest, give its size, and change its parts where yours is different."
KINDS = "Common pieces"
VIEW_PICTURE = "Three sides"
VIEW_FRONT = "From the front"
SIZES = "Its size"
SIZE_NAMES = {"width": "Width", "height": "Height", "depth": "Depth"}
RAIL_NAMES = {"width": "Length", "height": "Face", "depth": "Thickness"}
DRAWERS = "Drawers"
LEGS = "Legs"
LEG_NAMES = {"square leg": "square", "tapered leg": "tapered", "turned leg": "turned"}
INSIDE = "Paint the inside too"
BY_HAND = "You changed its parts. Sizing it again builds them anew."
FROM_FILE = "Built from a file of parts."
ZONES = "Colour zones"
BARE = "left bare"
NO_MIX = "no mix yet"
MORE = "Save or open"
SAVE_DRAWING = "Save the drawing…"
SAVE_PIECE = "Save the piece…"
OPEN_PIECE = "Open a piece…"
DRAWING_FILES = "Drawings (*.svg)"
PIECE_FILES = "Pieces (*.json)"
WAIT = "Press a piece above: it is drawn here to scale, with what there is to paint."
OR_OPEN = "Or open one that you saved…"
DRAWING_IT = "Drawing…"
SAVING = "Saving…"
OPENING = "Opening…"
RECKONING = "Reckoning the paint…"

MIX_HEAD = "Mix in one go"
USE_AMOUNT = "Take it to the mix"
USE_AMOUNT_TIP = "The Colour page then tells how much of each paint to pour for it"
TAKEN = "Taken"
ONE_GO = "A second batch never comes out quite the same."

ON = "What goes on"
COAT_NAMES = {
    ProductKind.PRIMER: "Primer",
    ProductKind.PAINT: "Paint",
    ProductKind.WASH: "Wash",
    ProductKind.CLEAR: "Clear finish",
}
COATS_OF = "Coats of {}"
RATE_OF = "How far a litre goes, for each coat of {}"
COAT_HEADS = ("how often", "a litre goes")
NO_COATS = "none"
ONE_COAT, MANY_COATS = " coat", " coats"
RATE_UNIT = " m²/l"
RATE_TIP = "As the tin says. Usual is what the shelf knows of its paints, or 12 m² for a litre."
AS_ON_TIN = "usual"
TOOL = "Put on with"
SURFACE = "Put on"
THINNED = "Water in the wash"
THINNED_UNIT = " to 1"
SAMPLE = "For a sample"
TOUCH_UP = "To touch up"

PARTS = "Its parts"
PARTS_HINT = "Double-click or press F2 to change a cell. Sizes in mm; areas are worked out."
PART_COLUMNS = ("Part", "Shape", "How many", "Length", "Width", "Depth", "Zone", "Painted", "m²")
PAINTED_FACES = "Painted faces of {}"
PICK_PART = "Pick a part to choose which of its faces are painted."
ADD_PART = "Add"
ADD_WHAT = "Shape of the part to add"
REMOVE_PART = "Remove the part"

BUY = "What to buy"
BUY_HINT = "Write down what is left, and the tins that are sold as ml: price, 500: 19."
BUY_COLUMNS = ("Paint", "Needed", "Left, ml", "Tins sold", "Buy", "Cost")
PRICE = "A price for the client"
HOURS = "Hours of work"
RATE = "For an hour"
MARGIN = "On top"
CURRENCY = "Money is called"
CURRENCY_HINT = "crowns"
NO_PRICE = "Give hours and what you take for one, and the price is worked out."
NO_PRICE_PAINT = "Fill in the tins whose price is not known, and the price is worked out."
NOT_KNOWN = "not known"


def kind_word(kind: str) -> str:
    """Name a common piece on its button."""
    return kind[0].upper() + kind[1:]


def area(m2: float) -> str:
    """Say an area."""
    return f"{m2:.2f} m²"


def area_unseen(m2: float) -> str:
    """Say an area that the drawing does not show."""
    return f"{area(m2)}, unseen"


def millimetres(mm: float) -> str:
    """Say a length."""
    return f"{mm:.0f} mm"


def total_line(m2: float) -> str:
    """Say what there is to paint in all."""
    return f"{area(m2)} to paint"


def zone_line(number: int, zone: str, m2: float, dry: Lab | None) -> str:
    """Tell a zone with its number in the drawing, its area and the colour it gets."""
    return f"{number}  {zone}: {area(m2)}, {zone_colour(dry)}"


def zone_colour(dry: Lab | None) -> str:
    """Say which colour a zone gets."""
    return NO_MIX if dry is None else colour_name(dry)


def drawing_told(name: str, size: tuple[float, float], zones: Iterable[str]) -> str:
    """Tell a drawing for a screen reader."""
    wide, high = size
    return f"{name}, {wide:.0f} mm wide, {high:.0f} mm high. {'. '.join(zones)}"


def painted_told(part: Part, faces: Sequence[Face]) -> str:
    """Say which of the faces of a part are painted, its edges in one word."""
    if not part.painted:
        return BARE
    if len(faces) > 1 and len(part.painted) == len(faces):
        return "all over"
    edges = [face for face in part.painted if face in EDGES]
    all_edges = len(edges) == len(EDGES)
    told = [face.value for face in part.painted if not (all_edges and face in EDGES)]
    return ", ".join([*told, "edges"] if all_edges else told)


# --- amounts -------------------------------------------------------------------------------------


def batch_name(batch: Batch, zones: Sequence[str]) -> str:
    """Say what a batch is, and what it is for."""
    if batch.kind is not ProductKind.PAINT:
        return COAT_NAMES[batch.kind]
    return f"Paint for {' and '.join(zones)}" if len(zones) < 3 else "Paint for all of it"


def big_amount(ml: float) -> str:
    """Say how much to mix, large."""
    return f"{ml:.0f} ml"


def why_line(batch: Batch) -> str:
    """Say what a batch is made up of."""
    told = [f"{batch.need_ml:.0f} to put on"]
    if batch.sample_ml:
        told.append(f"{batch.sample_ml:.0f} for a sample")
    if batch.touch_up_ml:
        told.append(f"{batch.touch_up_ml:.0f} to touch up")
    if batch.rounding_ml >= 0.5:
        told.append(f"{batch.rounding_ml:.0f} to round up")
    return ", ".join(told)


def pours(batch: Batch, names: dict[str, str]) -> tuple[tuple[str, str], ...]:
    """Give amount and name of what a batch is poured from."""
    rows = [(f"{paint.ml:.0f} ml", names.get(paint.id, paint.id)) for paint in batch.paints]
    if batch.thinner_ml >= 0.5:
        rows.append((f"{batch.thinner_ml:.0f} ml", "water or thinner"))
    return tuple(rows)


def names_of(found: Amounts) -> dict[str, str]:
    """Give the names of paints by their ids."""
    return {purchase.id: purchase.name for purchase in found.purchases}


def tins_text(tins: Sequence[tuple[float, Decimal | None]]) -> str:
    """Write sizes sold as they are typed: ml, and the price after a colon."""
    return ", ".join(f"{ml:g}" if price is None else f"{ml:g}: {price:.2f}" for ml, price in tins)


def buy_line(purchase: Purchase) -> str:
    """Say what to buy of a paint."""
    if purchase.short_ml:
        return f"{purchase.short_ml:.0f} ml"
    if not purchase.tins:
        return "nothing"
    return " + ".join(f"{tin.count} × {tin.size.ml:g} ml" for tin in purchase.tins)


def cost_line(purchase: Purchase) -> str:
    """Say what it costs."""
    return NOT_KNOWN if purchase.cost is None else f"{purchase.cost}"


def money(value: Decimal, currency: str) -> str:
    """Say money, in the painter's own word for it."""
    return f"{value} {currency}".rstrip()


def materials_line(found: Amounts, currency: str) -> str:
    """Say what all of the paint to buy costs."""
    costs = [purchase.cost for purchase in found.purchases]
    known = sum((cost for cost in costs if cost is not None), Decimal(0))
    told = f"Paint to buy: {money(known, currency)}"
    missing = costs.count(None)
    return told if not missing else f"{told}, and {missing} whose price is not known"


def price_lines(price: Price) -> tuple[tuple[str, str], ...]:
    """Give what the price is made up of."""
    return (
        ("Work", f"{price.labour}"),
        ("Paint", f"{price.materials}"),
        ("On top", f"{price.margin}"),
    )


def size_range(least: float, most: float) -> str:
    """Say which sizes a field takes."""
    return f"From {least:.0f} to {most:.0f} mm"


def file_name(name: str, suffix: str) -> str:
    """Propose a name for a file."""
    plain = "".join(letter if letter.isalnum() else "-" for letter in name.strip().lower())
    return f"{plain.strip('-') or 'piece'}{suffix}"
