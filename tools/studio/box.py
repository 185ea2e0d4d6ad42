"""A blanket box by a window, beside a grey card: solids met by rays, soft shadows, and a sheen."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage

from studio.camera import camera, encode, expose, finish, gains, raw_response, vignette
from studio.curves import CURVES, GREY_CARD
from studio.field import Field, Frame, layered_noise, shrunk
from studio.lights import Array, daylight
from studio.truth import lab_d65

__all__ = [
    "BOX_FILE",
    "BOX_GREY",
    "BOX_STROKES",
    "BOX_STROKES_FILE",
    "OLD",
    "Seen",
    "box_light",
    "box_picture",
    "box_strokes",
    "box_truth",
    "see_box",
]

BOX_FILE = "blanket_box.jpg"
BOX_STROKES_FILE = "blanket_box_strokes.json"
WIDTH, HEIGHT = 1400, 1050
BOX_GREY = (96, 830, 130, 110)
"""Rectangle x, y, width, height in pixels, well inside the card."""

BOX_STROKES: tuple[tuple[str, float, tuple[tuple[float, float], ...]], ...] = (
    ("body", 16, ((500, 520), (800, 480))),
    ("body", 16, ((930, 560), (1150, 500))),
    ("body", 14, ((350, 480), (380, 640))),
    ("body", 16, ((470, 840), (1180, 660))),
    ("body", 14, ((480, 520), (480, 740))),
    ("top", 16, ((420, 360), (1000, 260))),
    ("top", 10, ((440, 436), (1240, 316))),
    ("not this", 20, ((100, 560), (250, 120), (1300, 180), (1330, 380))),
    ("not this", 20, ((320, 960), (1300, 800))),
    ("not this", 14, ((858, 400), (872, 428))),
    ("not this", 20, ((150, 800), (170, 980))),
)
"""Zone, width of the brush and points of each stroke, in pixels."""

POWER = daylight(5600.0)
ZONES = ("body", "top")
OLD = {"body": "old sea paint", "top": "pale wood"}
"""The curve that each zone is of before it is painted."""

_EYE, _AT = np.array([-128.0, -226.0, 122.0]), np.array([-7.0, 2.0, 25.0])
_ZOOM = 1.60
_TO_LIGHT = np.array([-0.34, -0.60, 0.56])
_KEY, _SKY = 1.0, 0.30
_SHINES_FROM = (np.array([0.44, 0.77, 0.40]), np.array([0.50, -0.80, -0.12]))
"""Where a window, and a bright floor, are mirrored from."""
_FAR = np.float32(1e9)

Solid = tuple[str, tuple[float, float, float], tuple[float, float, float]]


def _front(x: float, wide: float) -> list[Solid]:
    """Give the stile, or rail, boards that stand out around a panel of the front."""
    return [("body", (x, -24.2, 8.0), (x + wide, -22.0, 49.5))]


_SOLIDS: tuple[Solid, ...] = (
    ("body", (-50.0, -22.5, 8.0), (50.0, 22.5, 49.5)),
    ("body", (-52.0, -25.6, 0.0), (52.0, 24.5, 8.0)),
    ("body", (-51.0, -24.9, 8.0), (51.0, 23.5, 9.4)),
    *_front(-50.0, 8.0),
    *_front(-4.0, 8.0),
    *_front(42.0, 8.0),
    ("body", (-50.0, -24.2, 9.4), (50.0, -22.0, 16.0)),
    ("body", (-50.0, -24.2, 42.5), (50.0, -22.0, 49.5)),
    ("body", (-51.7, -22.5, 9.4), (-49.0, -15.5, 49.5)),
    ("body", (-51.7, 15.5, 9.4), (-49.0, 22.5, 49.5)),
    ("body", (-51.7, -22.5, 42.5), (-49.0, 22.5, 49.5)),
    ("body", (-51.7, -22.5, 9.4), (-49.0, 22.5, 16.0)),
    ("top", (-53.0, -27.0, 50.2), (53.0, 25.0, 53.4)),
    ("iron", (-3.2, -25.4, 43.6), (3.2, -24.0, 48.4)),
    ("grey card", (-94.0, -33.5, 0.0), (-76.0, -33.0, 24.0)),
    ("pale wood", (-86.0, -33.0, 0.0), (-84.0, -28.0, 3.0)),
)
_WALL, _FLOOR = 58.0, 0.0


@dataclass(frozen=True, slots=True)
class Seen:
    """What each sample of the picture plane sees.

    Parameters
    ----------
    thing
        Index into `NAMES`, shape (rows, columns).
    light
        Diffuse light on it, 1 on a level card in the open facing the front, its own grain included.
    shine
        Share of the light that its surface throws back as it is.
    pitch
        Distance between samples in pixels of the full picture.
    """

    thing: NDArray[np.intp]
    light: Field
    shine: Field
    pitch: float

    def share(self, zone: str) -> Field:
        """Give how much of each pixel is of a zone, 0-1."""
        times = max(1, round(1 / self.pitch))
        return shrunk((self.thing == NAMES.index(zone)).astype(np.float32), times)


NAMES = ("wall", "floor", "body", "top", "iron", "grey card", "pale wood")
_CURVE = {
    "wall": CURVES["off-white"] * 0.86,
    "floor": CURVES["dark wood"] * 2.0,
    "iron": np.full_like(CURVES["grey card"], 0.035),
    "grey card": CURVES["grey card"],
    "pale wood": CURVES["pale wood"],
}
_SHINY = {"body": 0.10, "top": 0.07, "iron": 0.04}


def see_box(pitch: float) -> Seen:
    """Look at the box, one sample every `pitch` pixels."""
    frame = Frame(WIDTH, HEIGHT, pitch)
    rows = round(HEIGHT / pitch)
    x, y = frame.places()
    bands = [_see(x[top : top + 64], y[top : top + 64]) for top in range(0, rows, 64)]
    thing, light, shine = (np.concatenate(part) for part in zip(*bands, strict=True))
    return Seen(thing, light, shine, pitch)


def box_picture(seen: Seen, coats: dict[str, Array], *, seed: int = 104) -> NDArray[np.uint8]:
    """Photograph the box with its zones of these reflectances, each of shape (81,)."""
    return encode(box_light(seen, coats, seed=seed))


def box_light(seen: Seen, coats: dict[str, Array], *, seed: int = 104) -> Field:
    """Give the linear sRGB that the camera makes of the box."""
    cam = camera(0)
    curves = _CURVE | coats
    palette = np.stack(
        [raw_response(cam, POWER, curves[name]).astype(np.float32) for name in NAMES]
    )
    white = raw_response(cam, POWER, CURVES["light"]).astype(np.float32)
    raw = palette[seen.thing] * seen.light[..., None] + white * seen.shine[..., None]
    lens = ndimage.gaussian_filter(raw, (0.5 / seen.pitch, 0.5 / seen.pitch, 0.0))
    small = shrunk(lens, max(1, round(1 / seen.pitch)))
    small = small * vignette(small.shape[0], small.shape[1], 0.08).astype(np.float32)[..., None]
    exposed = expose(small, 0.93, 40000.0, seed).astype(np.float32)
    return finish(cam, exposed, gains(cam, POWER, 0.8))


def box_strokes() -> dict[str, object]:
    """Give the strokes as the program reads them."""
    rows = [
        {"zone": zone, "width": width, "points": [list(p) for p in points]}
        for zone, width, points in BOX_STROKES
    ]
    return {"size": [WIDTH, HEIGHT], "strokes": rows}


def box_truth(seen: Seen) -> dict[str, object]:
    """Say what is true of the picture, for `truth.json`."""
    return {
        "file": BOX_FILE,
        "shows": "A blanket box of old paint with a wooden lid, beside a grey card, by a window.",
        "light": "window daylight, CIE daylight of 5600 K",
        "size": [WIDTH, HEIGHT],
        "grey_card": list(BOX_GREY),
        "grey_reflectance": GREY_CARD,
        "strokes": BOX_STROKES_FILE,
        "zones": [
            {
                "name": zone,
                "curve": OLD[zone],
                "lab_d65_2deg": [round(float(v), 2) + 0.0 for v in lab_d65(CURVES[OLD[zone]])],
                "share": round(float(seen.share(zone).mean()), 3),
            }
            for zone in ZONES
        ],
    }


# --- rays ----------------------------------------------------------------------------------------


def _see(x: Field, y: Field) -> tuple[NDArray[np.intp], Field, Field]:
    way = _ways(x, y)
    far, solid, axis = _nearest(way)
    thing = np.full(far.shape, NAMES.index("wall"))
    wall = np.float32(_WALL - _EYE[1]) / way[1]
    floor = np.where(way[2] < 0, np.float32(-_EYE[2]) / np.minimum(way[2], -1e-6), _FAR)
    behind = np.minimum(wall, floor)
    thing[floor < wall] = NAMES.index("floor")
    names = np.array([NAMES.index(name) for name, _, _ in _SOLIDS])
    hit = far < behind
    thing[hit] = names[solid[hit]]
    away = np.where(hit, far, behind)
    face = np.where(hit, axis, np.where(floor < wall, 2, 1))
    at = _EYE.astype(np.float32)[:, None, None] + way * away
    normal = _normals(face, way)
    return thing, _lit(at, normal, thing), _shine(way, normal, at, thing)


def _ways(x: Field, y: Field) -> Field:
    """Give the direction of sight of each sample, shape (3, rows, columns)."""
    ahead = (_AT - _EYE) / np.linalg.norm(_AT - _EYE)
    right = np.cross(ahead, (0.0, 0.0, 1.0))
    right /= np.linalg.norm(right)
    up = np.cross(right, ahead)
    a, b = (x - WIDTH / 2) / WIDTH, (HEIGHT / 2 - y) / WIDTH
    way = np.stack([_ZOOM * ahead[i] + a * right[i] + b * up[i] for i in range(3)])
    unit: Field = (way / np.linalg.norm(way, axis=0)).astype(np.float32)
    return unit


def _nearest(way: Field) -> tuple[Field, NDArray[np.intp], NDArray[np.intp]]:
    """Give how far the first solid is, which it is, and the axis of the face that is met."""
    far = np.full(way.shape[1:], _FAR)
    solid = np.zeros(way.shape[1:], dtype=np.intp)
    axis = np.zeros(way.shape[1:], dtype=np.intp)
    for number, (_, low, high) in enumerate(_SOLIDS):
        near, out, entered = _met(_EYE, way, low, high)
        closer = (near < out) & (near > 0) & (near < far)
        far[closer], solid[closer], axis[closer] = near[closer], number, entered[closer]
    return far, solid, axis


def _met(
    start: Field | Array, way: Field, low: tuple[float, ...], high: tuple[float, ...]
) -> tuple[Field, Field, NDArray[np.intp]]:
    """Give where rays enter and leave a solid, and the axis of the face they enter by."""
    enters, leaves = [], []
    for i in range(3):
        safe = np.where(np.abs(way[i]) < 1e-7, np.float32(1e-7), way[i])
        one, two = (low[i] - start[i]) / safe, (high[i] - start[i]) / safe
        enters.append(np.minimum(one, two))
        leaves.append(np.maximum(one, two))
    stacked = np.stack(enters)
    return stacked.max(axis=0), np.minimum.reduce(leaves), stacked.argmax(axis=0)


def _normals(face: NDArray[np.intp], way: Field) -> Field:
    """Give the normal of each face, towards the eye."""
    normal = np.zeros_like(way)
    for i in range(3):
        normal[i] = np.where(face == i, -np.sign(way[i]), 0)
    return normal


def _blocked(at: Field, normal: Field, way: Array, reach: float) -> NDArray[np.bool_]:
    """Tell from where a solid is in the way within a reach."""
    start = at + np.float32(0.05) * normal
    steady = np.broadcast_to(way.astype(np.float32)[:, None, None], at.shape)
    blocked = np.zeros(at.shape[1:], dtype=np.bool_)
    for _, low, high in _SOLIDS:
        near, out, _ = _met(start, steady, low, high)
        blocked |= (near < out) & (out > 0) & (near < reach)
    return blocked


def _directions(count: int, centre: Array, spread: float) -> Array:
    """Give directions about one, the same at every call; a spread of 2 fills a half of space."""
    draw = np.random.default_rng(7).normal(size=(count, 3))
    draw /= np.linalg.norm(draw, axis=1, keepdims=True)
    ways = centre / np.linalg.norm(centre) + 0.5 * spread * draw
    return np.asarray(ways / np.linalg.norm(ways, axis=1, keepdims=True))


def _lit(at: Field, normal: Field, thing: NDArray[np.intp]) -> Field:
    """Give the diffuse light: the window's, soft at the edges of shadows, and the room's."""
    to_light = _TO_LIGHT / np.linalg.norm(_TO_LIGHT)
    key = np.zeros(at.shape[1:], dtype=np.float32)
    ways = _directions(20, to_light, 0.30)
    for way in ways:
        facing = np.maximum(np.tensordot(way.astype(np.float32), normal, 1), 0)
        key += facing * ~_blocked(at, normal, way, 500.0) / len(ways)
    room = np.zeros_like(key)
    around = _directions(14, np.array([-0.15, -0.35, 0.55]), 2.2)
    for way in around:
        facing = np.maximum(np.tensordot(way.astype(np.float32), normal, 1), 0)
        room += facing * ~_blocked(at, normal, way, 60.0) / len(around)
    grain = layered_noise(at[0] / 14, (at[1] + at[2]) * 1.6, 41)
    own = np.where(thing == NAMES.index("top"), 1 + 0.05 * grain, 1)
    boards = np.where(thing == NAMES.index("floor"), 1 + 0.10 * grain, 1)
    front = float(np.maximum(-to_light[1], 0) * _KEY + 0.45 * _SKY)
    falls = 1 - 0.0006 * (at[0] + 90)
    lit: Field = (_KEY * key + _SKY * room * 2) / front * own * boards * falls
    return lit.astype(np.float32)


def _shine(way: Field, normal: Field, at: Field, thing: NDArray[np.intp]) -> Field:
    """Give what a satin surface throws back of the window."""
    back = (way - 2 * (way * normal).sum(axis=0) * normal).astype(np.float32)
    lobe = np.zeros(at.shape[1:], dtype=np.float32)
    for bright in _SHINES_FROM:
        unit = (bright / np.linalg.norm(bright)).astype(np.float32)
        lobe += np.maximum(np.tensordot(unit, back, 1), 0) ** 70
    streak = 1 + 0.35 * layered_noise(at[0] / 9, at[2] / 9 + at[1] / 7, 43)
    strength = np.zeros_like(lobe)
    for name, much in _SHINY.items():
        strength[thing == NAMES.index(name)] = much
    shine: Field = strength * lobe * streak
    return shine.astype(np.float32)
