"""A colour zone on a recipe sheet: its colours, its code, its recipe, and how sure it is."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from swatchwright.colour.names import closeness
from swatchwright.language import mark, say, say_in
from swatchwright.measures.kitchen import Country
from swatchwright.piece.names import zone_word
from swatchwright.sheet.content import PaintLine, SheetContent, Units, Zone
from swatchwright.sheet.fields import bar_height, draw_bar, draw_fields, tag
from swatchwright.sheet.flow import Block, gap, paragraph
from swatchwright.sheet.hatch import hatched
from swatchwright.sheet.head import section
from swatchwright.sheet.ink import rgb_of
from swatchwright.sheet.lettering import GREY, Style
from swatchwright.sheet.pen import Box, Pen
from swatchwright.sheet.square_code import QUIET, code_side, draw_code
from swatchwright.sheet.table import Cell, Column, head_row, row
from swatchwright.sheet.told import amount_text, ml_text, parts_text, tins_text

__all__ = ["zone_blocks"]

_FIELDS = 44.0
_CODE_GAP = 5.0
_MODULE = 0.34
_LEAST_CODE, _MOST_CODE = 30.0, 40.0
_TEXT = Style(8.8)
_SMALL = Style(7.2, grey=GREY)
_LEAD = 23.0
_MOST_LETTERS = 400
_SWATCH = (11.0, 7.2)
_COMPUTED = mark(
    "By computing alone it would be {apart:.1f} from the wanted colour ({seen}); what the sample "
    "showed counts."
)
_COMPUTED_BARE = mark(
    "By computing alone the mix, before what goes over it, would be {apart:.1f} from the wanted "
    "colour ({seen}); what the sample showed counts."
)


def zone_blocks(zone: Zone, content: SheetContent, width: float) -> list[Block]:
    """Make all blocks of a zone."""
    name = zone_word(zone.name)
    heading = name[:1].upper() + name[1:] if name else say("The colour")
    bar, *recipe = _recipe(zone, content.units, width)
    going_on = section(say("{heading}, what it is mixed of", heading=heading), width)[1]
    return [
        *section(heading, width)[1:],
        _colours(zone, width),
        gap(2.5),
        *_wish(zone, width),
        replace(bar, again=going_on),
        *recipe,
        gap(2.0),
        *_words(zone, width),
    ]


def _wish(zone: Zone, width: float) -> list[Block]:
    """Say what the client wants in place of the colour, below it."""
    told = [paragraph(one, _TEXT, width) for one in _joined(zone.wish)]
    return [*(block for blocks in told for block in blocks), *([gap(2.0)] if told else [])]


def _colours(zone: Zone, width: float) -> Block:
    """Make the fields of colour, with the code beside them."""
    if not zone.code:
        return Block(
            _FIELDS,
            lambda pen, x, y: draw_fields(pen, Box(x, y, width, _FIELDS), zone),
        )
    modules = code_side(zone.code)
    side = min(max(_LEAST_CODE, modules * _MODULE), _MOST_CODE)
    # Its dark part lines up with the fields; what must stay white lies in the margins.
    white = QUIET * side / modules
    dark = side - 2 * white

    def draw(pen: Pen, x: float, y: float) -> None:
        draw_fields(pen, Box(x, y, width - dark - _CODE_GAP, _FIELDS), zone)
        left = x + width - dark
        draw_code(pen, left - white, y - white, side, text=zone.code)
        for i, line in enumerate(say("the recipe,\nto be scanned").split("\n")):
            pen.text(left, y + dark + white + i * _SMALL.leading, line, _SMALL)

    return Block(_FIELDS, draw)


# --- the recipe ----------------------------------------------------------------------------------


def _recipe(zone: Zone, units: Units, width: float) -> list[Block]:
    bar = Block(
        bar_height(),
        lambda pen, x, y: draw_bar(pen, x, y, width, zone.paints),
        with_next=True,
    )
    columns = _columns(zone, units, width)
    rows = [row(columns, _cells(i, p, zone, units)) for i, p in enumerate(zone.paints)]
    return [bar, gap(1.0), head_row(columns), *rows, row(columns, _sum(zone, units), last=True)]


def _columns(zone: Zone, units: Units, width: float) -> list[Column]:
    told = [
        *([Column(say_in("head of a column", "parts"), 20, number=True)] if zone.in_parts else []),
        *([Column("ml", 20, number=True)] if units.ml else []),
        *([Column("g", 20, number=True)] if units.grams else []),
    ]
    # The last numbers end at the margin, or well before the words that follow them.
    if told:
        told[-1] = replace(told[-1], free=5.0 if units.spoons else 0.0)
    if units.spoons:
        told.append(Column(_spoons_head(units.spoons), 38, free=0.0))
    fixed = [Column("", 7), Column("", 14)]
    used = sum(column.width for column in (*fixed, *told))
    return [*fixed, Column(say_in("head of a column", "paint"), width - used), *told]


def _spoons_head(country: Country) -> str:
    return say("spoons ({country})", country=say(country.value))


def _cells(index: int, paint: PaintLine, zone: Zone, units: Units) -> list[Cell]:
    said = (paint.kind, tins_text(paint.tins), paint.how_known, _short(paint.label), paint.note)
    # A painter has no use for the id, unless two paints have one name.
    about = ("" if paint.name_tells else _short(paint.id), *said)
    grams = say("not known") if paint.grams is None else amount_text(paint.grams)

    def number(pen: Pen, x: float, y: float) -> None:
        tag(pen, x + 2.4, y + 2.6, index + 1)

    def swatch(pen: Pen, x: float, y: float) -> None:
        box = Box(x, y, *_SWATCH)
        hatched(pen, box, fill=rgb_of(paint.own), pattern=index)
        pen.rect(box, line=(0, 0, 0), thick=0.2)

    return [
        Cell(draw=number),
        Cell(draw=swatch),
        Cell(_short(paint.name), " · ".join(text for text in about if text), bold=True),
        *([Cell(parts_text(paint.parts))] if zone.in_parts else []),
        *([Cell(amount_text(paint.ml))] if units.ml else []),
        *([Cell(grams)] if units.grams else []),
        *([Cell(paint.spoons)] if units.spoons else []),
    ]


def _short(text: str) -> str:
    """Cut a name that would fill the page."""
    return text if len(text) <= _MOST_LETTERS else f"{text[:_MOST_LETTERS]}…"


def _sum(zone: Zone, units: Units) -> list[Cell]:
    grams = [paint.grams for paint in zone.paints]
    whole = sum(g for g in grams if g is not None)
    parts = sum(paint.parts for paint in zone.paints)
    return [
        Cell(),
        Cell(),
        Cell(say("together"), zone.volume_from),
        *([Cell(parts_text(parts))] if zone.in_parts else []),
        *([Cell(amount_text(zone.volume), bold=True)] if units.ml else []),
        *([Cell("" if None in grams else amount_text(whole), bold=True)] if units.grams else []),
        *([Cell("" if units.ml else ml_text(zone.volume))] if units.spoons else []),
    ]


# --- words ---------------------------------------------------------------------------------------


def _words(zone: Zone, width: float) -> list[Block]:
    """Say how to pour, what goes over it, how a sample was, how sure it is and what to check.

    Each after a word in the margin.
    """
    blocks: list[Block] = []
    for lead, sentences in (
        (say_in("beside what to do", "Pour"), _joined(zone.pour)),
        (say("Over it"), (*_numbered(zone.finish), *_joined(zone.minding))),
        (say("The sample"), _joined(zone.sample)),
        (say("How sure"), _joined(_sure(zone))),
        (say_in("beside what to do", "Check first"), _joined(zone.check)),
    ):
        for i, sentence in enumerate(sentences):
            word = "" if i else lead
            blocks += paragraph(sentence, _TEXT, width, indent=_LEAD, lead=word)
        blocks += [gap(1.6)] if sentences else []
    return blocks


def _sure(zone: Zone) -> tuple[str, ...]:
    """Say how sure it is; what a sample of it showed counts before what is computed."""
    if zone.apart is None:
        return zone.trust
    if zone.tried:
        told = _COMPUTED_BARE if zone.finish else _COMPUTED
        return (say(told, apart=zone.apart, seen=closeness(zone.apart)), *zone.trust)
    near = _near_bare if zone.finish else _near
    return (near(zone.apart, zone.apart_in_parts), *zone.trust)


def _joined(sentences: Sequence[str]) -> tuple[str, ...]:
    """Make one paragraph of sentences; none of none."""
    return (" ".join(sentences),) if sentences else ()


def _near(apart: float, in_parts: float | None) -> str:
    """Say how near the mix comes, by the ml and by the parts where these come out otherwise."""
    words = closeness(apart)
    if in_parts is not None and f"{in_parts:.1f}" != f"{apart:.1f}":
        return say(
            "As computed it dries {apart:.1f} from the wanted colour by the ml ({closeness}), "
            "{in_parts:.1f} by the parts ({parts_closeness}).",
            apart=apart,
            in_parts=in_parts,
            closeness=words,
            parts_closeness=closeness(in_parts),
        )
    return say(
        "As computed it dries {apart:.1f} from the wanted colour ({closeness}).",
        apart=apart,
        closeness=words,
    )


def _near_bare(apart: float, in_parts: float | None) -> str:
    """Say the same of a mix that layers go over: they move its colour, often on purpose."""
    words = closeness(apart)
    if in_parts is not None and f"{in_parts:.1f}" != f"{apart:.1f}":
        return say(
            "As computed the mix alone, before what goes over it, dries {apart:.1f} from the "
            "wanted colour by the ml ({closeness}), {in_parts:.1f} by the parts "
            "({parts_closeness}).",
            apart=apart,
            in_parts=in_parts,
            closeness=words,
            parts_closeness=closeness(in_parts),
        )
    return say(
        "As computed the mix alone, before what goes over it, dries {apart:.1f} from the wanted "
        "colour ({closeness}).",
        apart=apart,
        closeness=words,
    )


def _numbered(layers: Sequence[str]) -> tuple[str, ...]:
    if len(layers) < 2:
        return tuple(layer[0].upper() + layer[1:] + "." for layer in layers)
    return tuple(f"{i}. {layer[0].upper()}{layer[1:]}." for i, layer in enumerate(layers, 1))
