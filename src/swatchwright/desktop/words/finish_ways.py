"""The words of the ways to where a client wants a mix: washes, and something in the pot."""

from __future__ import annotations

from collections.abc import Sequence

from swatchwright.acts.ways import Way, WayKind, Ways
from swatchwright.colour.names import closeness, colour_name
from swatchwright.desktop.words.finish import first_up, left_word
from swatchwright.measures.shares import rounded_amounts
from swatchwright.mixing.asked import Asked
from swatchwright.mixing.knock_back import WORTH
from swatchwright.paint.layers import Layer, wash_of
from swatchwright.paint.paints import Paint
from swatchwright.values import Lab

CLIENT_WANTS = "The client wants it"
DIAL = "How far"
WIPE = "A wash is wiped back to"
POT = "left in the pot"
TUB = "its tub holds"
TUB_UNSAID = "a quarter more"
AS_GREY_AS_WANTED = "as grey as the wanted colour"
THE_WANTED = "to be the wanted colour"
LAY_THIS = "Lay this over the mix"
LAY_THIS_TIP = "In place of the washes and glazes there; wax, oil and varnish stay over it"
OF_EVERY_WASH = "Of every wash"
WAIT_WAYS = "The ways to get there appear here, side by side."

_WASH_BATCH = 100.0
_DIRECTIONS = (
    Asked.LESS_VIVID,
    Asked.LIGHTER,
    Asked.DARKER,
    Asked.WARMER,
    Asked.COOLER,
    Asked.MORE_VIVID,
    Asked.REDDER,
    Asked.YELLOWER,
    Asked.GREENER,
    Asked.BLUER,
)


def directions() -> tuple[Asked, ...]:
    """Give the words for where to go, the one that is asked most first."""
    return _DIRECTIONS


def as_grey_as(number: int, lab: Lab) -> str:
    """Offer a colour of the cloth to be as grey as."""
    return f"as grey as colour {number}, {colour_name(lab)}"


def before_line(found: Ways) -> str:
    """Say how far it is to go."""
    if found.before < WORTH:
        return f"It is there already: {found.before:.1f} off."
    if not found.ways:
        return (
            f"From {colour_name(found.now)} to {colour_name(found.aim)}: {found.before:.1f} apart."
        )
    return (
        f"From {colour_name(found.now)} to {colour_name(found.aim)}: {found.before:.1f} apart "
        "(1 is just seen). The nearest way first."
    )


def way_head(number: int, way: Way) -> str:
    """Head a way."""
    return f"{number}. " + ("A wash over it" if way.kind is WayKind.WASH else "Into the pot")


def way_near(way: Way) -> str:
    """Say how near a way comes."""
    return f"{first_up(closeness(way.delta_e))}: {way.delta_e:.1f} off"


def way_told(number: int, way: Way) -> str:
    """Tell a way and its colour, for a screen reader."""
    return f"{way_head(number, way)}: {colour_name(way.dry)}, {way_near(way)}"


def what_to_do(way: Way) -> str:
    """Say what to do, in measures."""
    if way.layer is not None and way.washing is not None:
        return wash_recipe(way.layer, way.washing.paints)
    steps = () if way.additions is None else way.additions.steps
    rows = [f"{step.ml:.1f} ml {step.paint.name}" for step in steps]
    volume = 0.0 if way.additions is None else way.additions.volume
    return (
        f"Stir in {', then '.join(rows)}; {volume:.0f} ml in the end. Begin with a third of it, "
        "and let a sample dry."
    )


def wash_recipe(layer: Layer, paints: Sequence[Paint]) -> str:
    """Say how to stir a wash and how to lay it."""
    parts = [part for _, part in layer.paints]
    water = wash_of(layer).water * sum(parts)
    thinner = "water" if all(p.finish.waterborne for p in paints) else "its own thinner"
    names = [*(paint.name for paint in paints), thinner]
    amounts = rounded_amounts([*parts, water], _WASH_BATCH)
    rows = zip([*parts, water], names, amounts, strict=True)
    told = "\n".join(f"{_parts(part)} {name}, {ml:.1f} ml" for part, name, ml in rows)
    times = {1: "once", 2: "twice"}.get(layer.passes, f"{layer.passes} times")
    dry, each = ("", "") if layer.passes == 1 else (", each on the dry last one", " each time")
    left = left_word(wash_of(layer).left)
    return f"For 100 ml of wash:\n{told}\nLay it {times}{dry}; wipe back to {left}{each}."


def _parts(part: float) -> str:
    return "1 part" if part == 1 else f"{part:g} parts"


def of_every_wash(found: Ways) -> tuple[str, ...]:
    """Give what is to be said of all washes alike, so that it is said once."""
    said = [[r.words for r in way.risks] for way in found.ways if way.kind is WayKind.WASH]
    first, *others = said or [[]]
    return tuple(words for words in first if others and all(words in rest for rest in others))
