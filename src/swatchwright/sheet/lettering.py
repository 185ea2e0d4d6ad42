"""Letters of a sheet: the two fonts, how wide a text is, and breaking it into lines.

The fonts are shipped with the program, so that a sheet looks the same wherever it is made; their
licence stands beside them. They are set a tenth narrower than drawn, which is their own condensed
width.
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

__all__ = [
    "GREY",
    "NARROW",
    "Style",
    "cut",
    "fitted",
    "font_name",
    "missing_letters",
    "one_line",
    "printed",
    "text_width",
    "wrapped",
]

NARROW = 0.9
"""How wide letters are set, of how wide they are drawn."""

GREY = 0.27
"""Of what is said by the way: dark enough for 9 to 1 on white."""

_MM = 72 / 25.4
_TIE = "\N{NO-BREAK SPACE}"
_UNITS = (
    *("ml", "g", "h", "min", "mm", "m²"),
    *("litres?", "cups?", "days", "tbsp", "tsp"),
    *("Liter", "Tassen?", "Tagen?", "EL", "TL", "Std", "Min"),
)
_UNIT = re.compile(rf"(?<=[\d¼½¾]) (?=(?:{'|'.join(_UNITS)})\b|%)")
_DAY = re.compile(r"(?:(?<=\d)|(?<=\d\.)) (?=[A-ZÄÖÜ]\w+ \d{4}\b)")
_FONTS = {False: "DejaVuSans", True: "DejaVuSans-Bold"}


@dataclass(frozen=True, slots=True)
class Style:
    """Letters of a size in points, bold or not, in a grey from 0 (black) to 1 (white)."""

    size: float
    bold: bool = False
    grey: float = 0.0

    @property
    def leading(self) -> float:
        """From one line to the next, mm."""
        return 1.32 * self.size / _MM

    @property
    def rise(self) -> float:
        """From the top of a line to where its letters stand, mm."""
        return 0.98 * self.size / _MM


@cache
def font_name(*, bold: bool) -> str:
    """Give the name of a font, making it known to the PDF library the first time."""
    from reportlab.pdfbase.pdfmetrics import registerFont
    from reportlab.pdfbase.ttfonts import TTFont

    name = _FONTS[bold]
    with files("swatchwright.sheet").joinpath("fonts", f"{name}.ttf").open("rb") as file:
        registerFont(TTFont(name, file))
    return name


def text_width(text: str, style: Style) -> float:
    """Give how wide a text is, mm."""
    from reportlab.pdfbase.pdfmetrics import stringWidth

    return float(stringWidth(text, font_name(bold=style.bold), style.size)) * NARROW / _MM


def missing_letters(text: str) -> str:
    """Give the letters of a text that the fonts do not have, each once."""
    from reportlab.pdfbase.pdfmetrics import getFont

    known = getFont(font_name(bold=False)).face.charToGlyph
    return "".join(dict.fromkeys(c for c in one_line(text) if ord(c) not in known))


def one_line(text: str) -> str:
    """Give a text on one line, without what cannot be printed.

    A number is tied to its unit, and a day to its month.
    """
    letters = (" " if unicodedata.category(c)[0] in "CZ" else c for c in text)
    return _DAY.sub(_TIE, _UNIT.sub(_TIE, " ".join("".join(letters).split())))


def printed(text: str) -> str:
    """Give a text on one line as it is printed."""
    return one_line(text).replace(_TIE, " ")


def wrapped(text: str, style: Style, width: float) -> list[str]:
    """Break a text into lines of a width, mm, between words, and within one that is too long."""
    lines: list[str] = []
    line = ""
    for word in one_line(text).split(" "):
        if not word:
            continue
        longer = f"{line} {word}" if line else word
        if text_width(longer, style) <= width:
            line = longer
            continue
        lines += [line] if line else []
        *whole, line = _broken(word, style, width)
        lines += whole
    return [*lines, line] if line else lines


def _broken(word: str, style: Style, width: float) -> list[str]:
    """Break a word that is wider than a line; after a hyphen or slash where there is one."""
    parts = []
    while text_width(word, style) > width and len(word) > 1:
        most = _letters_within(word, style, width)
        breaks = [i + 1 for i, c in enumerate(word[:most]) if c in "-/_.,=" and i]
        end = breaks[-1] if breaks and breaks[-1] > most // 2 else most
        parts.append(word[:end])
        word = word[end:]
    return [*parts, word]


def _letters_within(word: str, style: Style, width: float) -> int:
    """Give how many letters of a word fit, at least one."""
    low, high = 1, len(word)
    while low < high:
        middle = (low + high + 1) // 2
        fits = text_width(word[:middle], style) <= width
        low, high = (middle, high) if fits else (low, middle - 1)
    return low


def cut(text: str, style: Style, width: float) -> str:
    """Cut a text to a width, mm, with an ellipsis where something is left out."""
    text = one_line(text)
    if text_width(text, style) <= width:
        return text
    room = width - text_width("…", style)
    return f"{text[: _letters_within(text, style, room)].rstrip()}…"


def fitted(
    text: str, style: Style, width: float, lines: int, *, least: float
) -> tuple[Style, list[str]]:
    """Set a text in so many lines: smaller down to the least size, then cut.

    Gives the style it came to, and the lines; none where there is room for none.
    """
    if lines < 1:
        return style, []
    size = style.size
    while size > least and len(wrapped(text, Style(size, style.bold), width)) > lines:
        size -= 0.5
    small = Style(max(size, least), style.bold, style.grey)
    found = wrapped(text, small, width)
    if len(found) > lines:
        found = [*found[: lines - 1], cut(" ".join(found[lines - 1 :]), small, width)]
    return small, found
