"""A brushed and dried sample laid on the cushion beside its grey card, photographed."""

from dataclasses import dataclass, replace

import numpy as np

from studio.camera import camera, raw_response
from studio.curves import CURVES, GREY_CARD
from studio.cushion import Placed
from studio.field import Frame, noise, soft_step
from studio.glow import Glow, even_light
from studio.lights import Array, daylight
from studio.samples import HEIGHT, WIDTH, Sample
from studio.scene import Card, Painted, cushion_scene
from studio.surfaces import matt_paint
from studio.truth import lab_d65

__all__ = ["BRUSHED", "Brushed", "brushed_truth", "paint_brushed"]

Rect = tuple[int, int, int, int]


@dataclass(frozen=True, slots=True)
class Brushed:
    """A photo of a sample beside its cloth.

    Parameters
    ----------
    scene
        The cushion and the grey card, as they are photographed.
    cloth
        The yarn that the sample is for, and where in the picture it is alone: x, y, width, height.
    sample
        The card that the sample is brushed on.
    mark
        A rectangle well inside the paint.
    shift, tilt
        How the paint differs from the cloth, as in `matt_paint`.
    """

    scene: Sample
    cloth: tuple[str, Rect]
    sample: Card
    mark: Rect
    shift: tuple[float, float, float]
    tilt: float

    def paint(self) -> Array:
        """Give the reflectance of the paint, shape (81,)."""
        return matt_paint(CURVES[self.cloth[0]], self.shift, self.tilt)


BRUSHED = Brushed(
    scene=Sample(
        name="sample_beside_cloth",
        what="A first brushed sample on card, dried and laid on the cushion, with a grey card.",
        light_name="window daylight, CIE daylight of 5800 K",
        power=daylight(5800.0),
        balance=0.75,
        exposure=1.22,
        glow=Glow((-0.38, -0.62, 0.68), 0.34, 0.42, 0.32, (0.45, 0.9)),
        place=Placed(628.0, 592.0, 452.0, -0.06),
        card=Card(1338.0, 520.0, 270.0, 370.0, 0.05),
        area=(560, 440, 140, 120),
        grey=(1248, 400, 180, 240),
        colours=("clay red", "ink blue", "natural linen"),
        seed=104,
    ),
    cloth=("clay red", (560, 440, 140, 120)),
    sample=Card(880.0, 560.0, 280.0, 340.0, -0.09),
    mark=(800, 470, 160, 180),
    shift=(0.42, 0.22, -0.04),
    tilt=0.01,
)


def paint_brushed(brushed: Brushed, pitch: float) -> Painted:
    """Render the scene before the camera, one sample point every `pitch` pixels."""
    scene, cam = brushed.scene, camera(0)
    palette = {
        name: raw_response(cam, scene.power, curve).astype(np.float32)
        for name, curve in CURVES.items()
    }
    frame = Frame(WIDTH, HEIGHT, pitch)
    painted = cushion_scene(frame, palette, scene.glow, scene.place, scene.card)
    x, y = frame.places()
    away = brushed.sample.inside(x, y)
    # Streaks of the brush lie along the card and hardly differ in light; its edge is left bare.
    lean = brushed.sample.turn
    across = (x * np.cos(lean) + y * np.sin(lean)) / 7
    streaks = 1 + 0.012 * noise(across, (y - x * lean) / 160, 121)
    wet_edge = away + 22 + 4 * noise(x / 26, y / 26, 122)
    paint = raw_response(cam, scene.power, brushed.paint()).astype(np.float32)
    covered = soft_step(wet_edge, 1.2, -1.2)[..., None]
    card = palette["off-white"] * 1.1 * (1 - covered) + paint * streaks[..., None] * covered
    shadow = 1 - 0.35 * soft_step(brushed.sample.inside(x - 5, y - 7), 9.0, -4.0)[..., None]
    cover = soft_step(away, 0.6, -0.6)[..., None]
    laid = card * even_light(frame, scene.glow)[..., None]
    raw = painted.raw * shadow * (1 - cover) + laid * cover
    return replace(painted, raw=raw.astype(np.float32))


def brushed_truth(brushed: Brushed) -> dict[str, object]:
    """Say what is true of it, for `truth.json`."""
    yarn, cloth = brushed.cloth
    there, here = lab_d65(CURVES[yarn]), lab_d65(brushed.paint())
    return {
        "file": f"{brushed.scene.name}.jpg",
        "shows": brushed.scene.what,
        "light": brushed.scene.light_name,
        "size": [WIDTH, HEIGHT],
        "grey_card": list(brushed.scene.grey),
        "grey_reflectance": GREY_CARD,
        "cloth": list(cloth),
        "sample": list(brushed.mark),
        "cloth_lab_d65_2deg": [round(float(v), 2) + 0.0 for v in there],
        "sample_lab_d65_2deg": [round(float(v), 2) + 0.0 for v in here],
    }
