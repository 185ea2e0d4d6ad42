"""The three sample images: what is in each, how it is lit and photographed, and what is true."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage

from studio.camera import camera, encode, expose, finish, gains, raw_response, vignette
from studio.curves import CURVES, GREY_CARD
from studio.cushion import Placed
from studio.field import Field, Frame, shrunk
from studio.glow import Glow
from studio.lights import Array, daylight, light
from studio.scene import Card, Painted, cushion_scene, print_scene
from studio.truth import lab_d65

__all__ = ["SAMPLES", "Sample", "develop", "paint", "truth"]

WIDTH, HEIGHT = 1600, 1200
Rect = tuple[int, int, int, int]


@dataclass(frozen=True, slots=True)
class Sample:
    """One sample image.

    Parameters
    ----------
    name
        Of the file, without suffix.
    what
        One line on what it shows.
    light_name
        The light in words.
    power
        Its spectral power, shape (81,).
    balance
        How far the camera's white balance goes: 0 daylight preset, 1 full.
    exposure
        Raw value of a perfect white in the brightest light.
    glow
        How the light falls.
    place, card
        Where cloth and card lie.
    area, grey
        Rectangles x, y, width, height in pixels: on the cloth, and well inside the card.
    colours
        Names of the curves of the cloth, in the order of the scene's indices.
    seed
        Of the noise.
    """

    name: str
    what: str
    light_name: str
    power: Array
    balance: float
    exposure: float
    glow: Glow
    place: Placed
    card: Card
    area: Rect
    grey: Rect
    colours: tuple[str, ...]
    seed: int


CUSHION = ("clay red", "ink blue", "natural linen")
PRINT = ("off-white", "sea green", "straw yellow", "ink blue")

SAMPLES = (
    Sample(
        name="cushion_window",
        what="A striped cushion beside a grey card on a workbench, by a window.",
        light_name="window daylight, CIE daylight of 5800 K",
        power=daylight(5800.0),
        balance=0.75,
        exposure=1.22,
        glow=Glow((-0.38, -0.62, 0.68), 0.34, 0.42, 0.32, (0.45, 0.9)),
        place=Placed(628.0, 592.0, 452.0, -0.06),
        card=Card(1338.0, 520.0, 270.0, 370.0, 0.05),
        area=(520, 470, 420, 240),
        grey=(1248, 400, 180, 240),
        colours=CUSHION,
        seed=101,
    ),
    Sample(
        name="cushion_lamp",
        what="The same under a warm lamp that the camera's white balance only partly makes up for.",
        light_name="warm white LED lamp, CIE LED-B1",
        power=light("LED-B1"),
        balance=0.68,
        exposure=1.2,
        glow=Glow((0.50, -0.46, 0.66), 0.25, 0.26, 0.0, (1.0, 1.0), 1500.0, (1060.0, 330.0)),
        place=Placed(628.0, 592.0, 452.0, -0.06),
        card=Card(1338.0, 520.0, 270.0, 370.0, 0.05),
        area=(520, 470, 420, 240),
        grey=(1248, 400, 180, 240),
        colours=CUSHION,
        seed=102,
    ),
    Sample(
        name="printed_cloth",
        what="A printed cotton of four colours beside a grey card on a workbench, by a window.",
        light_name="window daylight, CIE daylight of 6200 K",
        power=daylight(6200.0),
        balance=0.7,
        exposure=1.16,
        glow=Glow((0.36, -0.60, 0.70), 0.45, 0.45, 0.3, (-0.35, 0.9)),
        place=Placed(600.0, 600.0, 520.0, 0.035),
        card=Card(1372.0, 540.0, 260.0, 360.0, -0.045),
        area=(560, 380, 480, 440),
        grey=(1287, 425, 170, 230),
        colours=PRINT,
        seed=103,
    ),
)


def paint(sample: Sample, pitch: float) -> Painted:
    """Render a sample before the camera, one sample point every `pitch` pixels."""
    cam = camera(0)
    palette = {
        name: raw_response(cam, sample.power, curve).astype(np.float32)
        for name, curve in CURVES.items()
    }
    scene = print_scene if sample.colours == PRINT else cushion_scene
    frame = Frame(WIDTH, HEIGHT, pitch)
    return scene(frame, palette, sample.glow, sample.place, sample.card)


def develop(sample: Sample, painted: Painted, pitch: float) -> NDArray[np.uint8]:
    """Photograph a rendered sample.

    Returns
    -------
    NDArray[numpy.uint8]
        sRGB, 1200 by 1600 by 3 for a pitch of one or less.
    """
    cam = camera(0)
    lens = ndimage.gaussian_filter(painted.raw, (0.45 / pitch, 0.45 / pitch, 0.0))
    raw: Field = shrunk(lens, max(1, round(1 / pitch)))
    raw = raw * vignette(raw.shape[0], raw.shape[1], 0.10).astype(np.float32)[..., None]
    exposed = expose(raw, sample.exposure, 40000.0, sample.seed).astype(np.float32)
    linear = finish(cam, exposed, gains(cam, sample.power, sample.balance))
    return encode(linear)


def truth(sample: Sample, painted: Painted, pitch: float) -> dict[str, object]:
    """Say what is true of a sample, for `truth.json`."""
    area, grey = (_part(rect, pitch) for rect in (sample.area, sample.grey))
    yarn = painted.yarn[area]
    ratio = float(painted.light[area].mean() / painted.light[grey].mean())
    return {
        "file": f"{sample.name}.jpg",
        "shows": sample.what,
        "light": sample.light_name,
        "size": [WIDTH, HEIGHT],
        "grey_card": list(sample.grey),
        "grey_reflectance": GREY_CARD,
        "area": list(sample.area),
        "light_on_area_to_light_on_card": round(ratio, 3),
        "colours": [
            {
                "name": name,
                "lab_d65_2deg": [round(float(part), 2) + 0.0 for part in lab_d65(CURVES[name])],
                "share": round(float(np.mean(yarn == index)), 3),
            }
            for index, name in enumerate(sample.colours)
        ],
    }


def _part(rect: Rect, pitch: float) -> tuple[slice, slice]:
    x, y, width, height = (round(edge / pitch) for edge in rect)
    return slice(y, y + height), slice(x, x + width)
