"""A label for a jar: the colour, what it is, what is in it, and the code that brings it back."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from swatchwright.language import mark, say, say_count, say_in
from swatchwright.piece.names import zone_word
from swatchwright.sheet.code import read_code, write_code
from swatchwright.sheet.content import PaintLine, SheetContent, Units, Zone
from swatchwright.sheet.fields import EDGE, Field, draw_field, finished_fields
from swatchwright.sheet.lettering import GREY, Style, fitted, text_width, wrapped
from swatchwright.sheet.paper import LabelSize
from swatchwright.sheet.pen import Box, Pen
from swatchwright.sheet.square_code import code_side, draw_code
from swatchwright.sheet.told import amount_text, date_text, ml_text, parts_text

__all__ = ["label_pdf"]

_LEAST, _GOOD = 5.0, 5.5
_MODULE = 0.32
_LARGE = 1.2
"""Heights of a small label, from which on there is room for more than the recipe."""

_INVENTED = mark("Demonstration: invented paints.")
_CARE = mark("Keep shut, and away from children.")


def label_pdf(content: SheetContent, size: LabelSize, *, fill: bool) -> bytes:
    """Lay labels out and give them as a PDF.

    Parameters
    ----------
    content
        What they say; each zone and the jar of each wash have a label of their own.
    size
        Their size.
    fill
        Whether they fill a page of labels, zone after zone, or each is a page of its own.
    """
    told = (*content.zones, *content.jars)
    if not fill:
        title = say("Label: {title}", title=content.title)
        pen = Pen(size.width, size.height, title, say("A label for a jar"))
        for i, zone in enumerate(told):
            if i:
                pen.next_page()
            _label(pen, Box(0, 0, size.width, size.height), content, zone)
        return pen.done()
    title = say("Labels: {title}", title=content.title)
    pen = Pen(*size.paper.size, title, say("Labels for jars"))
    places = size.places()
    for first in range(0, len(told), len(places)):
        if first:
            pen.next_page()
        zones = told[first : first + len(places)]
        for (x, y), zone in zip(places, _shared(zones, len(places)), strict=True):
            _label(pen, Box(x, y, size.width, size.height), content, zone)
    return pen.done()


def _shared(zones: Sequence[Zone], places: int) -> list[Zone]:
    """Give each zone about as many places, those of one beside each other."""
    return [zones[i * len(zones) // places] for i in range(places)]


def _label(pen: Pen, box: Box, content: SheetContent, zone: Zone) -> None:
    """Draw a label: colours on the left, words beside them, the code at the lower right."""
    pad = max(2.5, 0.045 * box.width)
    unit = box.height / 38.0
    colour = Box(box.x + pad, box.y + pad, 0.22 * box.width, box.height - 2 * pad)
    _colours(pen, colour, zone, named=unit > _LARGE)
    left = colour.x + colour.width + 0.8 * pad
    words = Box(left, box.y + pad, box.x + box.width - pad - left, box.height - 2 * pad)
    top = _head(pen, words, content, zone, unit)
    code = _code(zone)
    side = _side(code, words) if code else 0.0
    if code:
        # What stays white around the code may reach into the label's own white edge.
        at = (words.x + words.width - side + 0.5 * pad, words.y + words.height - side + 0.5 * pad)
        draw_code(pen, *at, side, text=code)
    foot = _foot(pen, words, words.width - side, content, unit)
    free = words.y + words.height - side - top
    # Above the code there may be room for all paints over the whole width.
    wide = Box(words.x, top, words.width, free)
    beside = Box(words.x, top, words.width - side + 0.5 * pad, foot - top)
    y = _paints(pen, (wide, beside), zone, content.units, unit)
    if unit > _LARGE:
        _more(pen, Box(beside.x, y + unit, beside.width, foot - y - 2 * unit), zone, unit)


def _side(code: str, words: Box) -> float:
    """Give how large the code is, mm: as large as a phone likes, as far as there is room."""
    wanted = code_side(code) * _MODULE
    return min(max(wanted, 0.5 * words.height), 0.64 * words.height, 0.48 * words.width)


def _colours(pen: Pen, box: Box, zone: Zone, *, named: bool) -> None:
    """Draw the colour as it dries, above it as it ends where it is finished otherwise.

    Where parts of the piece end otherwise, these are named; `named` says of each that it is so.
    """
    size = max(6.0, min(11.0, 0.46 * box.width))
    ends = [Field(end.parts, end.lab) for end in zone.ends]
    above = finished_fields(zone) if named or not ends else ends
    fields = [*above, Field(say_in("on a field of colour", "dry"), zone.dry)]
    each = box.height / len(fields)
    for i, field in enumerate(fields):
        draw_field(pen, Box(box.x, box.y + i * each, box.width, each), field, size=size)
    pen.rect(box, line=EDGE)


def _head(pen: Pen, box: Box, content: SheetContent, zone: Zone, unit: float) -> float:
    """Write what it is and for whom, when and how much, and give where that ends."""
    size = 6.0 + 3.0 * unit
    title = content.title or say("Recipe")
    most = 2 if unit > _LARGE else 1
    bold, lines = fitted(title, Style(size, bold=True), box.width, most, least=6)
    y = pen.lines(box.x, box.y, lines, bold)
    batch = next((b for b in reversed(content.batches) if b.zone == zone.name), None)
    number = "" if batch is None else say("batch {number}", number=batch.number)
    day = date_text(content.day if batch is None else batch.day)
    told = ", ".join(text for text in (zone_word(zone.name), content.client) if text)
    small = Style(max(_LEAST, 0.66 * size))
    for text in (told, ", ".join(t for t in (number, day, ml_text(zone.volume)) if t)):
        style, lines = fitted(text, small, box.width, 1, least=_LEAST)
        y = pen.lines(box.x, y, lines, style)
    return y + 1.2 * unit


def _foot(pen: Pen, box: Box, width: float, content: SheetContent, unit: float) -> float:
    """Write what to mind at the foot, and give where that begins."""
    text = f"{say(_INVENTED)} {say(_CARE)}" if content.invented else say(_CARE)
    wanted = Style(max(_LEAST, 3.8 + 1.2 * unit), grey=GREY)
    # What to mind is never cut: where three lines do not hold it there are more.
    most = max(3, len(wrapped(text, Style(_LEAST), width - 0.5)))
    style, lines = fitted(text, wanted, width - 0.5, most, least=_LEAST)
    top = box.y + box.height - len(lines) * style.leading
    pen.lines(box.x, top, lines, style)
    return top - 0.6


@dataclass(frozen=True, slots=True)
class _Lines:
    """Paints set in lines: a number, if a line begins one, and a text; whether some are left out.

    The numbers end at `column`, mm.
    """

    style: Style
    rows: tuple[tuple[str, str], ...]
    column: float
    cut: bool


def _more(pen: Pen, box: Box, zone: Zone, unit: float) -> None:
    """Write what goes over it and how its sample was, as far as there is room for all of each."""
    style = Style(3.8 + 1.6 * unit)
    over = say("Over it: {layers}", layers=", ".join(zone.finish)) if zone.finish else ""
    y = box.y
    for text in (over, zone.tried):
        lines = wrapped(text, style, box.width)
        if lines and y + len(lines) * style.leading <= box.bottom:
            y = pen.lines(box.x, y, lines, style) + 0.5 * unit


def _paints(pen: Pen, boxes: tuple[Box, Box], zone: Zone, units: Units, unit: float) -> float:
    """Write parts and names of the paints as large as they go, with amounts if there is room.

    And give where that ends.

    Where the parts cannot be counted, the ml stand in place of them. Of ml and grams both are
    written where both are asked for and there is room for them, else the ml.

    Parameters
    ----------
    pen
        Draws them.
    boxes
        Above the code over the whole width, or beside it.
    zone
        Whose paints.
    units
        In what amounts are asked for.
    unit
        How high the label is, in heights of a small one.
    """
    largest = 4.2 + 2.4 * unit
    tried = [
        _set(box, zone, largest, amounts=amounts, called=unit > _LARGE)
        for amounts in _amounts(zone, units)
        for box in boxes
    ]
    whole = [found for found in tried if not found.cut]
    good = [found for found in whole if found.style.size >= _GOOD]
    best = good[0] if good else max(whole or tried, key=lambda f: (f.style.size, len(f.rows)))
    x, y = boxes[0].x, boxes[0].y
    for number, text in best.rows:
        pen.text(x + best.column, y, number, best.style, end=1)
        pen.text(x + best.column + 1.0, y, text, best.style)
        y += best.style.leading
    return y


def _amounts(zone: Zone, units: Units) -> tuple[Units, ...]:
    """Give in what amounts may be told, what is asked for first, and at last in none."""
    weighed = units.grams and all(paint.grams is not None for paint in zone.paints)
    grams, ml = Units(ml=False, grams=True), Units(ml=True, grams=False)
    both, none = Units(ml=True, grams=True), Units(ml=False, grams=False)
    if not weighed:
        return ml, none
    return (both, ml, none) if units.ml else (grams, none)


def _set(box: Box, zone: Zone, largest: float, *, amounts: Units, called: bool) -> _Lines:
    """Set the paints as large as they go into a box; `called` for parts that are named so."""
    size = largest
    while True:
        style = Style(max(_LEAST, size))
        rows, column = _rows(box.width, zone, style, amounts=amounts, called=called)
        most = int(box.height / style.leading + 1e-6)
        if len(rows) <= most:
            return _Lines(style, tuple(rows), column, cut=False)
        if style.size <= _LEAST:
            return _Lines(style, _within(rows, most), column, cut=True)
        size -= 0.25


def _rows(
    width: float, zone: Zone, style: Style, *, amounts: Units, called: bool
) -> tuple[list[tuple[str, str]], float]:
    """Set the paints in lines: in front their parts, or their ml where these are not counted."""
    if zone.in_parts:
        numbers = [parts_text(paint.parts) for paint in zone.paints]
    else:
        amounts, first = _split(amounts)
        numbers = [_amount(paint, first) for paint in zone.paints]
    column = max(text_width(number, style) for number in numbers)
    rows = []
    for number, paint in zip(numbers, zone.paints, strict=True):
        name = _parts_of(paint) if called and zone.in_parts else paint.name
        told = ", ".join(text for text in (name, _amount(paint, amounts)) if text)
        lines = wrapped(told, style, width - column - 1.0)
        rows += [(number, lines[0]), *(("", line) for line in lines[1:])]
    return rows, column


def _split(amounts: Units) -> tuple[Units, Units]:
    """Give what is told after the name, and what before it in place of parts."""
    if not amounts.ml and amounts.grams:
        return Units(ml=False, grams=False), amounts
    return replace(amounts, ml=False), Units(ml=True, grams=False)


def _amount(paint: PaintLine, amounts: Units) -> str:
    """Tell how much there is of a paint, as “12 ml / 15 g”."""
    grams = "" if paint.grams is None else f"{amount_text(paint.grams)} g"
    told = ((amounts.ml, f"{amount_text(paint.ml)} ml"), (amounts.grams, grams))
    return " / ".join(text for asked, text in told if asked and text)


def _parts_of(paint: PaintLine) -> str:
    """Name a paint after the number of its parts."""
    return say_count("part {paint}", "parts {paint}", int(paint.parts), paint=paint.name)


def _within(rows: Sequence[tuple[str, str]], most: int) -> tuple[tuple[str, str], ...]:
    """Keep as many lines as there is room for, the last saying that there is more."""
    return (*rows[: most - 1], ("", say("… the rest: see the code")))[: max(most, 0)]


def _code(zone: Zone) -> str:
    """Give the code without the names of its paints, as a label has little room."""
    if not zone.code:
        return ""
    recipe = read_code(zone.code)
    bare = tuple(replace(paint, name="") for paint in recipe.paints)
    return write_code(replace(recipe, paints=bare), len(zone.code.encode()))
