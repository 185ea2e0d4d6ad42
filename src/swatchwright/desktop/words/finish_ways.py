"""The words of the ways to where a client wants a mix: washes, and something in the pot."""

from __future__ import annotations

from collections.abc import Sequence
from functools import reduce

from swatchwright.acts.client_wish import Stands
from swatchwright.acts.correct import room_words
from swatchwright.acts.recoat import Recoat
from swatchwright.acts.ways import Way, WayKind, Ways
from swatchwright.colour.names import closeness, colour_name, off_words
from swatchwright.colour.spectrum import Light
from swatchwright.desktop.words.bits import SCALE_TIP
from swatchwright.desktop.words.compare import UNDER
from swatchwright.desktop.words.finish import left_word
from swatchwright.desktop.words.pot import already_there, layers_named, seen_with
from swatchwright.language import bound, figure, say, say_count, say_in
from swatchwright.measures.shares import rounded_amounts
from swatchwright.mixing.asked import Asked
from swatchwright.mixing.knock_back import WORTH
from swatchwright.mixing.wash_risks import RiskKind
from swatchwright.paint.layers import Layer, wash_of
from swatchwright.paint.paints import Paint
from swatchwright.values import Lab

CLIENT_SAYS = say("The client says")
DIAL = say_in("a colour should go", "How far")
STANDS = {
    Stands.UNMIXED: say("Nothing is mixed yet"),
    Stands.PAINTED: say("It is painted already"),
    Stands.POT: say("It is still in the pot"),
}
STANDS_TIP = {
    Stands.UNMIXED: say(
        "No paint is stirred together yet: mixes for the colour she wants are found"
    ),
    Stands.PAINTED: say("The piece has this colour: a wash helps over it, or a full new coat"),
    Stands.POT: say(
        "Paint is mixed, none is on the piece: the pot is put right by stirring something in"
    ),
}
WIPE = say("A wash is wiped back to")
AS_GREY_AS_WANTED = say("as grey as the wanted colour")
THE_WANTED = say("to be the wanted colour")
AS_BEFORE = say("to be as asked before")
LAY_THIS = say("Lay this over the mix")
LAY_THIS_TIP = say("In place of the washes and glazes there; wax, oil and varnish stay over it")
TO_COLOUR = say("Take it to the page Colour")
TO_COLOUR_TIP = say(
    "Want this colour there, in this amount: choose among its mixes, and keep one for the piece"
)
CLIENT_NOW = say("client now wants")
CLEAR_WISH = say("Clear the client's wish")
CLEAR_WISH_TIP = say("Go by the colour again that was wanted first")
WAIT_WAYS = say("The ways to get there appear here, side by side.")
SAY_STANDS = say(
    "Say whether nothing is mixed yet, it is painted already or still in the pot: what helps then "
    "appears here, side by side."
)
AFRESH = say("Mix it so from the start")
AFRESH_TOLD = say(
    "Nothing is mixed, so nothing has to be put right: the wanted colour itself moves, and mixes "
    "for it are found on the page Colour. Keep one there as usual."
)
WANTED_SO_FAR = say("wanted so far")
FIND_ITS_MIXES = say("Find its mixes")
FIND_ITS_MIXES_TIP = say("Want this colour on the page Colour; Undo wants the one before again")
KEEP_POT = say("It is stirred in: keep this mix")
KEEP_POT_TIP = say(
    "What is then in the pot becomes the kept mix of this part, for the colour the client wants: "
    "amounts, jars and sheet follow it"
)

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


_SAID = {
    Asked.LESS_VIVID: say("too bright: less vivid"),
    Asked.MORE_VIVID: say("too dull: more vivid"),
    Asked.LIGHTER: say("too dark: lighter"),
    Asked.DARKER: say("too pale: darker"),
    Asked.WARMER: say("too cold: warmer"),
    Asked.COOLER: say("too warm: cooler"),
    Asked.REDDER: say("I want it redder"),
    Asked.YELLOWER: say("I want it yellower"),
    Asked.GREENER: say("I want it greener"),
    Asked.BLUER: say("I want it bluer"),
}
_HEADS = {
    WayKind.WASH: say("A wash over it"),
    WayKind.STIR: say("Into the pot"),
    WayKind.RECOAT: say("A full new coat"),
}


def directions() -> tuple[Asked, ...]:
    """Give the words for where to go, the one that is asked most first."""
    return _DIRECTIONS


def said(asked: Asked) -> str:
    """Say a direction as a client says it, and where it goes."""
    return _SAID[asked]


def client_word(light: Light | None) -> str:
    """Name what the client wants now, as it is shown."""
    if light is None or light is Light.D65:
        return CLIENT_NOW
    return say("client now wants, as it may look {under}", under=UNDER[light])


def as_grey_as(number: int, lab: Lab) -> str:
    """Offer a colour of the cloth to be as grey as."""
    return say("as grey as colour {number}, {colour}", number=number, colour=colour_name(lab))


def before_line(found: Ways) -> str:
    """Say how far it is to go, and what is on that stays on."""
    return " ".join(text for text in (_before(found), seen_with(found.over)) if text)


def _before(found: Ways) -> str:
    if found.before < WORTH:
        return already_there(found.before)
    now, aim = colour_name(found.now), colour_name(found.aim)
    if len(found.ways) < 2:
        return say(
            "Now: {now}. Wanted: {aim}. {apart:.1f} apart ({seen}).",
            now=now,
            aim=aim,
            apart=found.before,
            seen=closeness(found.before),
        )
    if any(way.kind is WayKind.RECOAT for way in found.ways):
        return say(
            "Now: {now}. Wanted: {aim}. {apart:.1f} apart ({seen}). Washes first, the nearest "
            "first, flats and grain counted in; a full new coat is the most work.",
            now=now,
            aim=aim,
            apart=found.before,
            seen=closeness(found.before),
        )
    return say(
        "Now: {now}. Wanted: {aim}. {apart:.1f} apart ({seen}). The nearest way first, flats and "
        "grain counted in.",
        now=now,
        aim=aim,
        apart=found.before,
        seen=closeness(found.before),
    )


def afresh_line(first: Lab, aim: Lab) -> str:
    """Say from where to where the wanted colour moves."""
    return say("Before: {now}. Wanted now: {aim}.", now=colour_name(first), aim=colour_name(aim))


def way_head(number: int, way: Way) -> str:
    """Head a way."""
    return f"{number}. {_HEADS[way.kind]}"


def way_near(way: Way, over: Sequence[Layer] = ()) -> str:
    """Say how near a way comes, with what stays over it."""
    near = off_words(way.delta_e)
    return say("{near}, with {layers} on", near=near, layers=layers_named(over)) if over else near


def risk_tip(kind: RiskKind) -> str:
    """Explain the figure in what is to be weighed; empty where it tells of no difference."""
    untold = {RiskKind.HUE, RiskKind.HIDING, RiskKind.UNDOING}
    return "" if kind in untold else SCALE_TIP


def way_told(number: int, way: Way, over: Sequence[Layer] = ()) -> str:
    """Tell a way and its colour, for a screen reader."""
    return f"{way_head(number, way)}: {colour_name(way.dry)}, {way_near(way, over)}"


def what_to_do(way: Way) -> str:
    """Say what to do, in measures."""
    if way.layer is not None and way.washing is not None:
        return wash_recipe(way.layer, way.washing.paints)
    if way.recoat is not None:
        return recoat_recipe(way.recoat)
    steps = () if way.additions is None else way.additions.steps
    rows = [bound(f"{figure(step.ml, '.1f')} ml {step.paint.name}") for step in steps]
    volume = 0.0 if way.additions is None else way.additions.volume
    stir = say(
        "Stir in {paints}; {volume:.0f} ml in the end. Begin with a third of it, and let a sample "
        "dry.",
        paints=_one_by_one(rows),
        volume=volume,
    )
    return "\n".join(text for text in (stir, room_words(way.roomier)) if text)


def recoat_recipe(found: Recoat) -> str:
    """Say what to mix for a full new coat, and how much of it."""
    over, recipe = found.over, found.recipe
    coats = say_count("{count} coat", "{count} coats", over.coats.paint)
    if over.known:
        head = say(
            "Mix {ml:.0f} ml afresh, for {coats} on {area:.2f} m²:",
            ml=found.volume,
            coats=coats,
            area=over.area,
        )
    else:
        head = say("Mix afresh, {ml:.0f} ml for {coats} on each m²:", ml=found.volume, coats=coats)
    rows = zip(recipe.paints, recipe.parts.counts, found.ml, strict=True)
    told = [_row(_parts(count), paint.name, ml) for paint, count, ml in rows]
    last = [] if over.known else [say("Size it on the page Piece: then all of it stands here.")]
    return "\n".join([head, *told, *last])


def _row(parts: str, name: str, ml: float) -> str:
    """Tell how much of a paint; a number stays with its unit."""
    return f"{parts} {name}, {figure(ml, '.1f')}\N{NO-BREAK SPACE}ml"


def _one_by_one(rows: Sequence[str]) -> str:
    if not rows:
        return ""
    return reduce(lambda before, row: say("{before}, then {next}", before=before, next=row), rows)


def wash_recipe(layer: Layer, paints: Sequence[Paint]) -> str:
    """Say how to stir a wash and how to lay it."""
    parts = [part for _, part in layer.paints]
    water = wash_of(layer).water * sum(parts)
    waterborne = all(p.finish.waterborne for p in paints)
    thinner = say("water") if waterborne else say("its own thinner")
    names = [*(paint.name for paint in paints), thinner]
    amounts = rounded_amounts([*parts, water], _WASH_BATCH)
    rows = zip([*parts, water], names, amounts, strict=True)
    told = "\n".join(_row(_parts(part), name, ml) for part, name, ml in rows)
    head = say("For 100 ml of wash:")
    return f"{head}\n{told}\n{_laying(layer.passes, left_word(wash_of(layer).left))}"


def _laying(passes: int, left: str) -> str:
    """Say how often to lay a wash, and how far to wipe it back."""
    if passes == 1:
        return say("Lay it once; wipe back to {left}.", left=left)
    if passes == 2:
        return say(
            "Lay it twice, each on the dry last one; wipe back to {left} each time.", left=left
        )
    return say(
        "Lay it {count} times, each on the dry last one; wipe back to {left} each time.",
        count=passes,
        left=left,
    )


def _parts(part: float) -> str:
    return say("1 part") if part == 1 else say("{parts:g} parts", parts=part)


def of_every_wash_line(text: str) -> str:
    """Tell what is to be said of all washes alike."""
    return say("Of every wash: {text}", text=text)


def to_colour_name(number: int) -> str:
    """Name the button that wants the colour of a new coat, for a screen reader."""
    return f"{TO_COLOUR}, {number}"


def from_wanted(apart: float) -> str:
    """Say how far what is wanted now is from what was wanted so far."""
    return say(
        "{apart:.1f} from the colour wanted so far ({seen})", apart=apart, seen=closeness(apart)
    )


def keep_pot_name(number: int) -> str:
    """Name the button that keeps what is in the pot, for a screen reader."""
    return f"{KEEP_POT}, {number}"


def lay_this_name(number: int) -> str:
    """Name the button that lays a wash over the mix, for a screen reader."""
    return f"{LAY_THIS}, {number}"
