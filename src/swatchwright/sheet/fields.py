"""The colours of a zone, large and touching: wanted, mix, finished; and the bar of parts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from swatchwright.colour.convert import in_srgb
from swatchwright.colour.names import colour_name
from swatchwright.language import figure, say, say_in
from swatchwright.sheet.content import PaintLine, Zone
from swatchwright.sheet.hatch import hatched
from swatchwright.sheet.ink import RGB, hex_text, ink_on, rgb_of
from swatchwright.sheet.lettering import GREY, Style, cut, fitted, text_width, wrapped
from swatchwright.sheet.pen import Box, Pen
from swatchwright.values import Lab

__all__ = [
    "EDGE",
    "Field",
    "bar_height",
    "draw_bar",
    "draw_field",
    "draw_fields",
    "fields_of",
    "finished_fields",
    "tag",
]

_WHITE: RGB = (1.0, 1.0, 1.0)
_BLACK: RGB = (0.0, 0.0, 0.0)
EDGE: RGB = (0.6, 0.6, 0.6)
"""A hairline around fields, so that an off-white one is seen on paper."""

_PAD = 2.4
_WET_WIDTH = 17.0
_WET_GAP = 3.0
_LEAST = 5.0
"""Points, of what stands in or below a field."""

_CAPTION = Style(6.8, grey=GREY)
_BAR = 9.0
_TAG_STEP = 15.5


@dataclass(frozen=True, slots=True)
class Field:
    """A field of colour and what it is in a word or two."""

    word: str
    lab: Lab


def fields_of(zone: Zone) -> tuple[Field, ...]:
    """Give the fields that touch: what is wanted, the dry mix, and how it looks finished."""
    alone = not finished_fields(zone) and zone.wanted is None
    dry, mix = say_in("on a field of colour", "dry"), say_in("on a field of colour", "mix, dry")
    found = [
        None if zone.wanted is None else Field(_wanted(), zone.wanted),
        Field(dry if alone else mix, zone.dry),
        *finished_fields(zone),
    ]
    return tuple(field for field in found if field is not None)


def finished_fields(zone: Zone) -> tuple[Field, ...]:
    """Give how it looks finished, or how each part does where these have other layers."""
    if zone.finished is not None:
        return (Field(finished_word(), zone.finished),)
    return tuple(
        Field(say_in("on a field of colour", "{part}, finished", part=end.parts), end.lab)
        for end in zone.ends
    )


def _wanted() -> str:
    return say_in("on a field of colour", "wanted")


def finished_word() -> str:
    """Say that a colour is that under all layers."""
    return say_in("on a field of colour", "finished")


def draw_fields(pen: Pen, box: Box, zone: Zone) -> None:
    """Draw them side by side, and the wet mix a little apart; the figures stand below."""
    shown = fields_of(zone)
    tall = box.height - 2 * _CAPTION.leading - 1.2
    below = box.y + tall + 1.2
    each = (box.width - _WET_WIDTH - _WET_GAP) / len(shown)
    for i, field in enumerate(shown):
        draw_field(pen, Box(box.x + i * each, box.y, each, tall), field)
        _caption(pen, box.x + i * each, below, each, field)
    pen.rect(Box(box.x, box.y, each * len(shown), tall), line=EDGE)
    for i in range(1, len(shown)):
        # Where two of the same lightness meet, black and white shows no edge.
        at = box.x + i * each
        pen.stroke(at, box.y + tall, at, box.y + tall + 1.0, ink=_BLACK)
    wet = Box(box.x + box.width - _WET_WIDTH, box.y, _WET_WIDTH, tall)
    draw_field(pen, wet, Field(say_in("on a field of colour", "wet"), zone.wet))
    pen.rect(wet, line=EDGE)
    pen.lines(wet.x, below, [say("in the pot"), hex_text(zone.wet)[-7:]], _CAPTION)


def _caption(pen: Pen, x: float, y: float, width: float, field: Field) -> None:
    lab = field.lab
    told = f"L* {figure(lab.L, '.1f')}  a* {figure(lab.a, '.1f')}  b* {figure(lab.b, '.1f')}"
    for line in (told, hex_text(lab)):
        style, lines = fitted(line, _CAPTION, width - 1, 1, least=_LEAST)
        pen.text(x, y, lines[0], style)
        y += _CAPTION.leading


def draw_field(pen: Pen, box: Box, field: Field, *, size: float = 10.5) -> None:
    """Draw a field of colour, its word and name at its top; the rest of it is left clear."""
    rgb = rgb_of(field.lab)
    ink, plated = ink_on(rgb)
    pen.rect(box, fill=rgb)
    words = _set_in(field, box, size)
    left, top = box.x + words.left, box.y + words.pad
    for at, (style, texts) in (
        (top, words.head),
        (top + words.head[0].leading * len(words.head[1]), words.name),
    ):
        if plated and texts:
            _plate(pen, left, at, texts, style)
        pen.lines(left, at, texts, style, ink=ink)


def _set_in(field: Field, box: Box, size: float) -> _Words:
    """Set the words of a field as large as they are whole, with less and less free about them."""
    tried = []
    for letters, share in ((size, 0.12), (1.2 * _LEAST, 0.07), (_LEAST, 0.04)):
        tried.append(_words(field, box, min(size, letters), share))
        if tried[-1].whole:
            return tried[-1]
    return next((words for words in tried if _whole(field.word, words.head[1])), tried[0])


@dataclass(frozen=True, slots=True)
class _Words:
    """What stands in a field: lines in their styles, and what is free left of and above them, mm.

    And whether all of it is whole: neither cut nor broken within a word.
    """

    left: float
    pad: float
    head: tuple[Style, list[str]]
    name: tuple[Style, list[str]]
    whole: bool


def _words(field: Field, box: Box, size: float, share: float) -> _Words:
    """Set the words of a field.

    Parameters
    ----------
    field, box
        The field and where it is.
    size
        Of the letters of its head at most, points.
    share
        How much of the box stays free at each edge at most, 0-0.5.
    """
    left, pad = min(_PAD, share * box.width), min(_PAD, share * box.height)
    room = box.width - 2 * left
    head = _head(field.word, size, room, box.height - 2 * pad)
    told = colour_name(field.lab)
    if not in_srgb(field.lab):
        told = say("about {colour}", colour=told)
    free = box.height - 2 * pad - head[0].leading * len(head[1])
    name = _name(told, max(0.72 * size, _LEAST), room, free)
    whole = _whole(field.word, head[1]) and _whole(told, name[1])
    return _Words(left, pad, head, name, whole)


def _head(word: str, size: float, width: float, height: float) -> tuple[Style, list[str]]:
    """Set what a field is in one line; in smaller letters and more where that cuts it."""
    bold = Style(size, bold=True)
    found = fitted(word, bold, width, 1, least=_LEAST)
    if _whole(word, found[1]):
        return found
    for quarter in range(int(4 * (size - _LEAST)) + 1):
        style = Style(size - quarter / 4, bold=True)
        lines = wrapped(word, style, width)
        if len(lines) <= min(3, int(0.6 * height / style.leading)) and _whole(word, lines):
            return style, lines
    return found


def _name(told: str, size: float, width: float, height: float) -> tuple[Style, list[str]]:
    """Set the name of a colour in two lines; in smaller letters and more where those cut it."""
    usual = Style(size)
    found = fitted(told, usual, width, min(2, int(height / usual.leading)), least=_LEAST)
    if _whole(told, found[1]):
        return found
    for quarter in range(int(4 * (size - _LEAST)) + 1):
        style = Style(size - quarter / 4)
        lines = wrapped(told, style, width)
        if len(lines) <= min(4, int(height / style.leading)) and _whole(told, lines):
            return style, lines
    return found


def _whole(told: str, lines: Sequence[str]) -> bool:
    """Tell whether lines hold a text with no word of it cut or broken, save after its hyphens."""
    return told.replace("-", "- ").split() == " ".join(lines).replace("-", "- ").split()


def _plate(pen: Pen, x: float, y: float, texts: Sequence[str], style: Style) -> None:
    """Put white behind texts that could not be read on a colour."""
    wide = max(text_width(text, style) for text in texts)
    pen.rect(Box(x - 0.8, y, wide + 1.6, len(texts) * style.leading), fill=_WHITE)


# --- the bar -------------------------------------------------------------------------------------


def bar_height() -> float:
    """Give how high a bar is with the numbers below it, mm."""
    return _BAR + 8.0


def tag(pen: Pen, x: float, y: float, number: int, *, radius: float = 2.3) -> None:
    """Draw the number of a paint in a ring about a point."""
    style = Style(2.9 * radius, bold=True)
    pen.disc(x, y, radius, fill=_WHITE, line=_BLACK)
    pen.text(x, y - 0.66 * style.leading + 0.25 * radius, str(number), style, end=0.5)


def draw_bar(pen: Pen, x: float, y: float, width: float, paints: Sequence[PaintLine]) -> None:
    """Draw the shares of the paints as a bar, each with its pattern, number and share below it."""
    centres, at = [], x
    for i, paint in enumerate(paints):
        wide = paint.share * width
        hatched(pen, Box(at, y, wide, _BAR), fill=rgb_of(paint.own), pattern=i)
        centres.append(at + wide / 2)
        at += wide
        if i < len(paints) - 1:
            pen.stroke(at, y, at, y + _BAR, ink=_WHITE, thick=0.5)
    pen.rect(Box(x, y, width, _BAR), line=_BLACK, thick=0.25)
    places = _apart(centres, x + 2.3, x + width - _TAG_STEP + 2.3)
    for i, (paint, centre, place) in enumerate(zip(paints, centres, places, strict=True)):
        pen.stroke(centre, y + _BAR, place, y + _BAR + 2.2, ink=_BLACK)
        tag(pen, place, y + _BAR + 4.4, i + 1)
        style = Style(8)
        told = cut(f"{figure(100 * paint.share, '.1f')} %", style, _TAG_STEP - 3)
        pen.text(place + 3.1, y + _BAR + 4.4 - 0.58 * style.leading, told, style)


def _apart(centres: Sequence[float], low: float, high: float) -> list[float]:
    """Move places apart until their words do not meet, keeping them within bounds."""
    places = []
    at = low
    for centre in centres:
        at = max(at, centre)
        places.append(at)
        at += _TAG_STEP
    limit = high
    for i in reversed(range(len(places))):
        places[i] = min(places[i], limit)
        limit = places[i] - _TAG_STEP
    return places
