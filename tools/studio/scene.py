"""Scenes put together: bench, cushion or printed cloth, grey card, and the light on them."""

from dataclasses import dataclass

import numpy as np

from studio.bench import bench
from studio.cloth import printed, striped
from studio.cushion import Cushion, Placed, plump, read
from studio.field import Field, Frame, noise, soft_step
from studio.glow import COARSE, Glow, cast, even_light, facing
from studio.rope import Rope, lay_rope

__all__ = ["Card", "Painted", "cushion_scene", "print_scene"]

ROPE = Rope(
    ((1660, 835), (1500, 880), (1390, 975), (1270, 1010), (1205, 1085), (1265, 1150), (1400, 1130),
     (1520, 1060), (1680, 1075)), 13.0,
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Card:
    """A grey card on the bench: centre, size in pixels and turn in radians."""

    x: float
    y: float
    width: float
    height: float
    turn: float

    def inside(self, x: Field, y: Field) -> Field:
        """Give the distance to its edge, in pixels, negative inside."""
        cos, sin = np.float32(np.cos(self.turn)), np.float32(np.sin(self.turn))
        right, down = x - self.x, y - self.y
        over_a = np.abs(right * cos + down * sin) - self.width / 2 + 5
        over_b = np.abs(down * cos - right * sin) - self.height / 2 + 5
        outside = np.hypot(np.maximum(over_a, 0), np.maximum(over_b, 0))
        away: Field = outside + np.minimum(np.maximum(over_a, over_b), 0) - 5
        return away


@dataclass(frozen=True, slots=True)
class Painted:
    """A scene before the camera.

    Parameters
    ----------
    raw
        Noiseless raw values, shape (rows, columns, 3).
    yarn
        Which colour of the cloth is seen: an index, or -1 where there is no cloth; for a print the
        index of the greatest share.
    light
        Light on the cloth as it lies, threads left out, and on a level surface beside it, shape
        (rows, columns).
    """

    raw: Field
    yarn: Field
    light: Field


def cushion_scene(
    frame: Frame, palette: dict[str, Field], glow: Glow, place: Placed, card: Card
) -> Painted:
    """Lay a striped cushion and a grey card on the bench.

    Parameters
    ----------
    frame
        The picture plane.
    palette
        Raw colour of each material under the light, shape (3,), by its name.
    glow
        The light.
    place
        Where the cushion lies.
    card
        Where the card lies.
    """
    x, y = frame.places()
    stuffed = plump(70)
    canvas = _bench_and_card(
        frame,
        palette,
        glow,
        card=card,
        height=_cushion_height(frame, stuffed, place),
        at=(0.0, 0.0),
    )
    a, b = place.local(x, y)
    outline = read(stuffed.outline, a, b)
    yarn, shade = striped(
        read(stuffed.cloth_a, a, b) * place.half, read(stuffed.cloth_b, a, b) * place.half
    )
    colours = np.stack([palette[name] for name in ("clay red", "ink blue", "natural linen")])
    lit = _cushion_light(stuffed, place, glow, a, b)
    tuck = 1 - 0.45 * np.exp(-np.clip(1 - outline, 0, 1) / 0.016)
    cover = soft_step(outline, 1.002, 0.998)[..., None]
    _piping(canvas, palette["ink blue"], place, glow, where=(a, b, outline))
    cloth = colours[yarn.astype(np.int32)] * (shade * lit * tuck)[..., None]
    canvas = canvas * (1 - cover) + cloth * cover
    level = even_light(frame, glow)
    inside = outline < 1
    raw = canvas * level[..., None]
    return Painted(raw, np.where(inside, yarn, -1.0), level * np.where(inside, lit, 1.0))


def print_scene(
    frame: Frame, palette: dict[str, Field], glow: Glow, place: Placed, card: Card
) -> Painted:
    """Lay a folded printed cotton and a grey card on the bench; as for `cushion_scene`."""
    x, y = frame.places()
    coarse = Frame(frame.width, frame.height, COARSE)
    under = _fold_edge(place, *coarse.places())
    height = 30 * soft_step(under, 3.0, -9.0)
    canvas = _bench_and_card(frame, palette, glow, card=card, height=height, at=(900.0, 480.0))
    a, b = place.local(x, y)
    u, v = a * place.half, b * place.half
    ink, shade = printed(u + 7 * noise(u / 230, v / 190, 95), v + 7 * noise(u / 190, v / 230, 96))
    names = ("off-white", "sea green", "straw yellow", "ink blue")
    colours = np.stack([palette[name] for name in names])
    away = _fold_edge(place, x, y)
    _lower_layers(canvas, palette["off-white"], place, x, y)
    lit = _fold_light(place, glow, x, y, away)
    cloth = (ink @ colours) * (shade * lit)[..., None]
    cover = soft_step(away, 0.7, -0.7)[..., None]
    canvas = canvas * (1 - cover) + cloth * cover
    level = even_light(frame, glow)
    main = np.where(away < 0, np.argmax(ink, axis=-1), -1.0)
    light = level * np.where(away < 0, lit, 1.0)
    return Painted(canvas * level[..., None], main, light)


def _bench_and_card(
    frame: Frame,
    palette: dict[str, Field],
    glow: Glow,
    *,
    card: Card,
    height: Field,
    at: tuple[float, float],
) -> Field:
    """Paint the bench with the shadows on it, and the card, in light of one."""
    x, y = frame.places()
    coarse = Frame(frame.width, frame.height, COARSE)
    flat = card.inside(*coarse.places())
    card_shadow = cast(frame, glow, 7 * soft_step(flat, 2.0, -2.0))
    rope_shadow = cast(frame, glow, ROPE.height(*coarse.places()))
    canvas: Field = bench(frame, palette, at) * (card_shadow * rope_shadow)[..., None]
    canvas = _lay_card(canvas, palette, card, x, y)
    hemp = 0.55 * palette["natural linen"] + 0.45 * palette["pale wood"]
    lay_rope(canvas, hemp, ROPE, glow, x=x, y=y)
    shaded: Field = canvas * cast(frame, glow, height)[..., None]
    return shaded


def _lay_card(canvas: Field, palette: dict[str, Field], card: Card, x: Field, y: Field) -> Field:
    """Lay the card with the pale cut edge of its board to the lower right."""
    for shift, colour in ((2.2, palette["natural linen"] * 0.75), (0.0, palette["grey card"])):
        cover = soft_step(card.inside(x - 0.6 * shift, y - shift), 0.6, -0.6)[..., None]
        canvas = canvas * (1 - cover) + colour * cover
    return canvas


def _cushion_height(frame: Frame, stuffed: Cushion, place: Placed) -> Field:
    """Give the height of the cushion's top over the bench, every 4 pixels."""
    a, b = place.local(*Frame(frame.width, frame.height, COARSE).places())
    seam = 0.16 * place.half * (1 - 0.35 * np.clip(np.abs(a * b), 0, 1))  # corners droop
    stands = read(stuffed.outline, a, b) < 1.015
    height: Field = np.where(stands, seam + read(stuffed.height, a, b) * place.half, 0)
    return height


def _cushion_light(stuffed: Cushion, place: Placed, glow: Glow, a: Field, b: Field) -> Field:
    slope_a, slope_b = read(stuffed.slope_a, a, b), read(stuffed.slope_b, a, b)
    cos, sin = np.float32(np.cos(place.turn)), np.float32(np.sin(place.turn))
    return facing(glow, slope_a * cos - slope_b * sin, slope_a * sin + slope_b * cos)


def _piping(
    canvas: Field,
    colour: Field,
    place: Placed,
    glow: Glow,
    *,
    where: tuple[Field, Field, Field],
) -> None:
    """Lay a corded piping round the seam, in place."""
    a, b, outline = where
    thick = 6.5
    side = ((outline - 1) * place.half - 0.45 * thick) / thick
    near = np.abs(side) < 1.3
    p, q, across = a[near], b[near], side[near]
    rise = np.sqrt(np.clip(1 - across**2, 0.06, 1))
    out_a, out_b = np.abs(p) ** 9 * np.sign(p), np.abs(q) ** 9 * np.sign(q)
    out = np.hypot(out_a, out_b) + 1e-6
    cos, sin = np.float32(np.cos(place.turn)), np.float32(np.sin(place.turn))
    fall = -np.clip(across / rise, -2, 2)
    slope_a, slope_b = fall * out_a / out, fall * out_b / out
    lit = facing(glow, slope_a * cos - slope_b * sin, slope_a * sin + slope_b * cos)
    ahead = np.where(np.abs(p) > np.abs(q), q, p) * place.half
    cord = 0.80 + 0.20 * np.cos(2 * np.pi * (ahead / 9.0 + 0.35 * across))
    cover = soft_step(np.abs(across), 1.06, 0.92)[:, None]
    laid = colour * (lit * cord)[:, None]
    canvas[near] = canvas[near] * (1 - cover) + laid * cover


def _fold_edge(place: Placed, x: Field, y: Field) -> Field:
    """Give the distance to the edge of the folded cloth, in pixels, negative inside."""
    a, b = place.local(x, y)
    p, q = a * place.half, b * place.half
    wide, tall, corner = place.half * 1.06, place.half * 0.92, 16.0
    wave_p = 5 * noise(q / 190, 0 * q, 81) + 1.2 * noise(q / 30, 0 * q, 82)
    wave_q = 6 * noise(p / 220, 0 * p, 83) + 1.2 * noise(p / 30, 0 * p, 84)
    over_a = np.abs(p) - wide + wave_p + corner
    over_b = np.abs(q) - tall + wave_q + corner
    outside = np.hypot(np.maximum(over_a, 0), np.maximum(over_b, 0))
    away: Field = outside + np.minimum(np.maximum(over_a, over_b), 0) - corner
    return away


def _fold_height(place: Placed, x: Field, y: Field, away: Field) -> Field:
    """Give the height of the folded cloth in pixels: a rolled edge, press folds, soft waves."""
    a, b = place.local(x, y)
    p, q = a * place.half, b * place.half
    rolled = 15 * np.sqrt(np.clip(1 - np.clip(1 + away / 26, 0, 1) ** 2, 0, 1))
    pressed = 5.0 * np.exp(-np.abs(p + 4 * noise(q / 120, 0 * q, 91) - 60) / 15)
    pressed += 4.2 * np.exp(-np.abs(q + 4 * noise(p / 120, 0 * p, 92) + 40) / 15)
    waves = 38 * noise((p + 0.5 * q) / 210, (q - 0.5 * p) / 520, 93)
    waves += 11 * noise((p - 0.6 * q) / 120, (q + 0.6 * p) / 260, 94)
    height: Field = rolled + pressed + waves
    return height


def _fold_light(place: Placed, glow: Glow, x: Field, y: Field, away: Field) -> Field:
    height = _fold_height(place, x, y, away)
    height += 2.2 * soft_step(np.abs(away + 24), 1.0, 4.0)  # the hem's row of stitches
    step = float(x[0, 1] - x[0, 0])
    slopes = [np.clip(np.gradient(height, step, axis=axis), -2, 2) for axis in (1, 0)]
    return facing(glow, slopes[0], slopes[1])


def _lower_layers(canvas: Field, colour: Field, place: Placed, x: Field, y: Field) -> None:
    """Show the edges of the layers below, to the lower right, in place."""
    for shift, tone in ((9.0, 0.50), (5.0, 0.72)):
        away = _fold_edge(place, x - 0.5 * shift, y - shift)
        cover = soft_step(away, 0.8, -0.8)[..., None]
        turned = tone * (0.75 + 0.25 * soft_step(np.abs(away + 2.0), 2.5, 0.0))[..., None]
        canvas[:] = canvas * (1 - cover) + colour * turned * cover
