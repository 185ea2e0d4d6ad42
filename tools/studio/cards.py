"""Brushed cards of three invented paints beside a grey card, numbered, dried and photographed.

What each field of paint reflects is handed over; how the cards lie and look is made here.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from PIL import Image, ImageDraw, ImageFont

from studio.bench import bench
from studio.camera import camera, raw_response
from studio.curves import CURVES, GREY_CARD
from studio.cushion import Placed
from studio.field import Field, Frame, noise, soft_step
from studio.glow import COARSE, Glow, cast, even_light
from studio.lights import GRID, Array, daylight
from studio.samples import HEIGHT, WIDTH, Sample
from studio.scene import Card, Painted
from studio.truth import lab_d65

__all__ = ["BLACK", "CARDS", "PAINTS", "WHITE", "Brushed", "cards_truth", "paint_cards"]

Rect = tuple[int, int, int, int]

PAINTS = ("white-clean", "mid-blue-clear", "clay-red-muted")
"""Ids on the demonstration shelf, the white first."""

BLACK, WHITE = 0.03, 0.80
"""Reflectance of the two halves of a hiding card at every wavelength."""

MARGIN, FOOT, NUMBER = 20.0, 52.0, 34
"""Pixels that are left bare round the paint, at the foot for the number, and its height."""

CARDS = Sample(
    name="brushed_cards",
    what="Cards of three paints, brushed out, numbered and dry, beside a grey card, by a window.",
    light_name="window daylight, CIE daylight of 6000 K",
    power=daylight(6000.0),
    balance=0.8,
    exposure=0.98,
    glow=Glow((-0.36, -0.58, 0.72), 0.55, 0.45, 0.07, (0.5, 0.9)),
    place=Placed(0.0, 0.0, 1.0, 0.0),
    card=Card(1432.0, 596.0, 230.0, 330.0, 0.035),
    area=(0, 0, 0, 0),
    grey=(1352, 476, 160, 240),
    colours=PAINTS,
    seed=105,
)


@dataclass(frozen=True, slots=True, eq=False)
class Brushed:
    """A field of a card.

    Parameters
    ----------
    mix
        Paints and parts of them; none on a bare field.
    over
        "black" or "white" where it is on a hiding card, else empty.
    curve
        (81,) reflectance over the grid of lights.
    """

    mix: tuple[tuple[str, float], ...]
    over: str
    curve: Array


@dataclass(frozen=True, slots=True)
class Laid:
    """A card on the bench with one or two fields, each a number of the sitting from 0."""

    card: Card
    fields: tuple[int, ...]

    def box(self, at: int) -> Rect:
        """Give a rectangle well inside a field: x, y, width, height in pixels."""
        wide = self.card.width / len(self.fields)
        left = self.card.x - self.card.width / 2 + at * wide
        edge, top = 50.0, self.card.y - self.card.height / 2
        return (
            round(left + edge),
            round(top + edge),
            round(wide - 2 * edge),
            round(self.card.height - FOOT - edge - 36.0),
        )


def _number(fields: Sequence[Brushed], mixed: Sequence[str], share: float, over: str) -> int:
    """Give the number of a field by its paints, its parts of white and its ground."""
    for number, field in enumerate(fields):
        parts = dict(field.mix)
        if set(parts) == set(mixed) and field.over == over and parts.get(PAINTS[0], 0.0) == share:
            return number
    raise ValueError(f"no card of {mixed} with {share:g} of white over {over!r}")


def laid(fields: Sequence[Brushed]) -> tuple[Laid, ...]:
    """Lay the cards, a row for each paint; the bare card of black and white lies in the first."""
    white, *others = PAINTS

    def halves(mixed: Sequence[str], share: float) -> tuple[int, ...]:
        return tuple(_number(fields, mixed, share, over) for over in ("black", "white"))

    found = [
        Laid(Card(267.0, 216.0, 440.0, 330.0, 0.01), halves([], 0.0)),
        Laid(Card(670.0, 213.0, 238.0, 330.0, -0.014), (_number(fields, [white], 1.0, ""),)),
        Laid(Card(1070.0, 216.0, 440.0, 330.0, -0.008), halves([white], 1.0)),
    ]
    for row, paint in enumerate(others, 1):
        down, lean = 216.0 + 382.0 * row, 0.012 * (-1) ** row
        for n, share in enumerate((0.0, 1.0, 10.0)):
            mixed = [paint, white] if share else [paint]
            card = Card(166.0 + 268.0 * n, down + 5.0 * (n - 1), 238.0, 330.0, lean * (1 - n))
            found.append(Laid(card, (_number(fields, mixed, share, ""),)))
        found.append(Laid(Card(1070.0, down, 440.0, 330.0, -lean), halves([paint], 0.0)))
    return tuple(found)


# --- the picture ---------------------------------------------------------------------------------


def paint_cards(pitch: float, fields: Sequence[Brushed]) -> Painted:
    """Render the cards on the bench before the camera, one sample point every `pitch` pixels."""
    scene, cam, cards = CARDS, camera(0), laid(fields)
    frame = Frame(WIDTH, HEIGHT, pitch)

    def raw(curve: Array) -> Field:
        return np.asarray(raw_response(cam, scene.power, curve)).astype(np.float32)

    palette = {name: raw(curve) for name, curve in CURVES.items()}
    canvas = bench(frame, palette, (300.0, 820.0))
    grounds = {name: raw(np.full(GRID.size, level)) for name, level in _GROUNDS.items()}
    coarse = Frame(WIDTH, HEIGHT, COARSE)
    x, y = coarse.places()
    flat = np.minimum.reduce([c.inside(x, y) for c in (scene.card, *(one.card for one in cards))])
    canvas = canvas * cast(frame, scene.glow, 7 * soft_step(flat, 2.0, -2.0))[..., None]
    x, y = frame.places()
    cover = soft_step(scene.card.inside(x, y), 0.6, -0.6)[..., None]
    canvas = canvas * (1 - cover) + palette["grey card"] * cover
    colours = [raw(field.curve) for field in fields]
    for seed, one in enumerate(cards, 300):
        canvas = _lay(canvas, one, colours, grounds, places=(x, y), seed=seed)
    ink = _numbers(frame, cards)[..., None]
    canvas = canvas * (1 - ink) + grounds["pencil"] * ink
    light = even_light(frame, scene.glow)
    return Painted((canvas * light[..., None]).astype(np.float32), np.full_like(x, -1.0), light)


_GROUNDS = {"black": BLACK, "white": WHITE, "card": 0.84, "pencil": 0.09}


def _lay(
    canvas: Field,
    one: Laid,
    colours: Sequence[Field],
    grounds: dict[str, Field],
    *,
    places: tuple[Field, Field],
    seed: int,
) -> Field:
    """Lay a card: its ground, and over it the paint with the streaks of the brush."""
    x, y = places
    card = one.card
    away, cos, sin = card.inside(x, y), np.cos(card.turn), np.sin(card.turn)
    right = (x - card.x) * cos + (y - card.y) * sin
    down = (y - card.y) * cos - (x - card.x) * sin
    two = len(one.fields) == 2
    board = np.broadcast_to(grounds["card"], canvas.shape)
    paint = np.broadcast_to(colours[one.fields[0]], canvas.shape)
    if two:
        half = soft_step(right, -0.5, 0.5)[..., None]
        on_card = soft_step(down, card.height / 2 - FOOT + 1, card.height / 2 - FOOT)[..., None]
        halves = grounds["black"] * (1 - half) + grounds["white"] * half
        board = board * (1 - on_card) + halves * on_card
        paint = colours[one.fields[0]] * (1 - half) + colours[one.fields[1]] * half
    edge = away + MARGIN + 3.5 * noise(x / 26, y / 26, seed)
    foot = down - (card.height / 2 - FOOT - 8) + 3.5 * noise(x / 22, y / 30, seed + 40)
    streaks = 1 + 0.008 * noise(right / 7, down / 170, seed + 80)
    covered = soft_step(np.maximum(edge, foot), 1.2, -1.2)[..., None]
    top = board * (1 - covered) + paint * streaks[..., None] * covered
    cover = soft_step(away, 0.6, -0.6)[..., None]
    return np.asarray(canvas * (1 - cover) + top * cover)


def _numbers(frame: Frame, cards: Sequence[Laid]) -> Field:
    """Give where the cards are written on, 0-1."""
    scale = 1 / frame.pitch
    sheet = Image.new("L", (round(frame.width * scale), round(frame.height * scale)))
    draw = ImageDraw.Draw(sheet)
    font = ImageFont.load_default(NUMBER * scale)
    for one in cards:
        foot = one.card.y + one.card.height / 2 - FOOT / 2 - 2
        for at, number in enumerate(one.fields):
            x, _, width, _ = one.box(at)
            middle = ((x + width / 2) * scale, foot * scale)
            draw.text(middle, str(number + 1), fill=235, font=font, anchor="mm")
    return np.asarray(sheet, dtype=np.float32) / 255


def cards_truth(fields: Sequence[Brushed]) -> dict[str, object]:
    """Say what is true of the cards, for `truth.json`."""
    boxes = {n: one.box(at) for one in laid(fields) for at, n in enumerate(one.fields)}
    return {
        "file": f"{CARDS.name}.jpg",
        "shows": CARDS.what,
        "light": CARDS.light_name,
        "size": [WIDTH, HEIGHT],
        "grey_card": list(CARDS.grey),
        "grey_reflectance": GREY_CARD,
        "paints": list(PAINTS),
        "cards": [
            {
                "mix": [list(part) for part in field.mix],
                "over": field.over,
                "box": list(boxes[number]),
                "lab_d65_2deg": [round(float(v), 2) + 0.0 for v in lab_d65(field.curve)],
            }
            for number, field in enumerate(fields)
        ],
    }
