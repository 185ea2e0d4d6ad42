"""Drawings as an SVG file (SVG 1.1), with what each zone is beside them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from xml.sax.saxutils import escape, quoteattr

from swatchwright.language import say
from swatchwright.piece.drawing import Drawing, Outline, Side
from swatchwright.piece.names import piece_word, zone_word

__all__ = ["svg_of"]

_MARGIN = 60.0
_BARE = (236, 228, 212)
_GREYS = (190, 150, 215, 120, 170, 105)
_SHADES = {Side.FRONT: 1.0, Side.TOP: 1.12, Side.RIGHT: 0.84}
_LINE = "#33312e"


def svg_of(
    title: str, drawings: Sequence[Drawing], colours: Mapping[str, str] | None = None
) -> str:
    """Write drawings side by side, in mm.

    Parameters
    ----------
    title
        What is drawn: a piece, by its name.
    drawings
        At least one.
    colours
        sRGB colours of zones, as in ``#a15047``; zones without one are filled with greys, and
        each is named in the legend.
    """
    fills = _fills(drawings, colours or {})
    legend = 70.0 * (len(fills) + 1)
    width = sum(d.width for d in drawings) + _MARGIN * (len(drawings) + 1)
    height = max(d.height for d in drawings)
    lines = [
        _opening(width, height + legend + 3 * _MARGIN),
        f"<title>{escape(piece_word(title))}</title>",
        f'<g stroke="{_LINE}" stroke-width="2" stroke-linejoin="round">',
    ]
    left = _MARGIN
    for drawing in drawings:
        floor = _MARGIN + height
        lines += [_shape(outline, left, floor, fills) for outline in drawing.outlines]
        left += drawing.width + _MARGIN
    return "\n".join([*lines, "</g>", *_legend(title, drawings, fills, height), "</svg>", ""])


def _opening(width: float, height: float) -> str:
    size = f'width="{width:.0f}mm" height="{height:.0f}mm" viewBox="0 0 {width:.0f} {height:.0f}"'
    return f'<svg xmlns="http://www.w3.org/2000/svg" {size}>'


def _fills(
    drawings: Sequence[Drawing], colours: Mapping[str, str]
) -> dict[str, tuple[int, int, int]]:
    zones = dict.fromkeys(o.zone for d in drawings for o in d.outlines if o.zone)
    return {
        zone: _rgb(colours[zone]) if zone in colours else (_GREYS[i % len(_GREYS)],) * 3
        for i, zone in enumerate(zones)
    }


def _rgb(text: str) -> tuple[int, int, int]:
    r, g, b = bytes.fromhex(text.removeprefix("#"))
    return r, g, b


def _shape(
    outline: Outline, left: float, floor: float, fills: Mapping[str, tuple[int, int, int]]
) -> str:
    shade = _SHADES[outline.side]
    rgb = (min(255, round(v * shade)) for v in fills.get(outline.zone, _BARE))
    told = f'fill="rgb({",".join(map(str, rgb))})" data-part={quoteattr(outline.part)}'
    told += f" data-zone={quoteattr(outline.zone)}"
    if outline.ellipse:
        (x, y), (rx, ry) = outline.points
        middle = f'cx="{left + x:.1f}" cy="{floor - y:.1f}"'
        return f'<ellipse {middle} rx="{rx:.1f}" ry="{ry:.1f}" {told}/>'
    points = " ".join(f"{left + x:.1f},{floor - y:.1f}" for x, y in outline.points)
    return f'<polygon points="{points}" {told}/>'


def _legend(
    title: str,
    drawings: Sequence[Drawing],
    fills: Mapping[str, tuple[int, int, int]],
    height: float,
) -> list[str]:
    front = drawings[0]
    top = height + 2 * _MARGIN
    head = say(
        "{piece}: {width:.0f} mm wide, {height:.0f} mm high",
        piece=piece_word(title),
        width=front.width,
        height=front.height,
    )
    lines = ['<g font-family="sans-serif" font-size="40">', _text(0, top, head)]
    for i, (zone, rgb) in enumerate(fills.items(), 1):
        y = top + 70 * i
        fill = f'fill="rgb({",".join(map(str, rgb))})" stroke="{_LINE}"'
        box = f'x="{_MARGIN:.0f}" y="{y - 38:.0f}" width="60" height="44"'
        lines += [f"<rect {box} {fill}/>", _text(80, y, zone_word(zone))]
    return [*lines, "</g>"]


def _text(x: float, y: float, words: str) -> str:
    return f'<text x="{_MARGIN + x:.0f}" y="{y:.0f}">{escape(words)}</text>'
