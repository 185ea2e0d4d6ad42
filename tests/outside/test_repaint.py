"""Repainting the rendered box, judged by a render of the same box in the new colours.

The studio renders spectra through a camera; of the program only what is judged is used. The new
colour is given as that camera sees it beside the grey card, so that the camera's own errors of
colour, which test_photo_accuracy judges, do not count here.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import colour
import numpy as np
import pytest
from numpy.testing import assert_allclose
from numpy.typing import NDArray
from PIL import Image

from studio.box import (
    BOX_GREY,
    OLD,
    POWER,
    Seen,
    box_picture,
    box_strokes,
    box_truth,
    see_box,
)
from studio.camera import camera, finish, gains, raw_response
from studio.curves import CURVES
from swatchwright.acts.colours import open_photo
from swatchwright.acts.repaint import repainted
from swatchwright.acts.repaint_file import strokes_of_json
from swatchwright.values import Lab, Rect

FOLDER = Path(__file__).parents[2] / "sample_images"
TOLD: dict[str, Any] = json.loads((FOLDER / "truth.json").read_text("utf-8"))["pieces"][0]
PITCH = 2.0
WHITE = np.array([0.3127, 0.3290])
Floats = NDArray[np.floating[Any]]

PALETTES = (
    {"body": "clay red", "top": "off-white"},
    {"body": "straw yellow", "top": "ink blue"},
    {"body": "natural linen", "top": "sea green"},
)


@pytest.fixture(scope="module")
def seen() -> Seen:
    """Look at the box at half the size."""
    return see_box(PITCH)


def lab(picture: NDArray[np.uint8]) -> Floats:
    """Give CIELAB of sRGB bytes, by colour-science."""
    light = colour.cctf_decoding(picture / 255.0, "sRGB")
    return np.asarray(colour.XYZ_to_Lab(colour.RGB_to_XYZ(light, "sRGB"), WHITE))


def balanced(picture: NDArray[np.uint8]) -> Floats:
    """Put a render right by its own card, and give its CIELAB."""
    x, y, width, height = (round(edge / PITCH) for edge in BOX_GREY)
    light = colour.cctf_decoding(picture / 255.0, "sRGB")
    card = np.median(light[y : y + height, x : x + width], axis=(0, 1))
    right = np.clip(light * 0.18 / card, 0, 1)
    return np.asarray(colour.XYZ_to_Lab(colour.RGB_to_XYZ(right, "sRGB"), WHITE))


def by_camera(name: str) -> Lab:
    """Give a curve's colour as the camera sees it beside the card."""
    cam = camera(0)
    balance = gains(cam, POWER, 0.8)
    chip, card = (
        finish(cam, raw_response(cam, POWER, CURVES[key]), balance) for key in (name, "grey card")
    )
    xyz = colour.RGB_to_XYZ(chip * 0.18 / card, "sRGB")
    return Lab.of(np.asarray(colour.XYZ_to_Lab(xyz, WHITE)))


@pytest.mark.parametrize("palette", PALETTES, ids=lambda p: p["body"])
def test_repainted_it_looks_as_rendered(
    seen: Seen, palette: dict[str, str], tmp_path: Path
) -> None:
    """From a dozen strokes each zone is found, and half its pixels lie within 2 of the render.

    A dark paint where there was a pale one with a sheen all over it comes within 5.
    """
    path = tmp_path / "box.png"
    Image.fromarray(box_picture(seen, {z: CURVES[n] for z, n in OLD.items()})).save(path)
    truth = balanced(box_picture(seen, {z: CURVES[n] for z, n in palette.items()}, seed=9))
    strokes = strokes_of_json(json.dumps(box_strokes()).encode(), "box")
    grey = Rect(*(round(edge / PITCH) for edge in BOX_GREY))
    found = repainted(
        open_photo(path), strokes, {z: by_camera(n) for z, n in palette.items()}, grey=grey
    )
    ours = lab(found.picture)
    for zone, name in palette.items():
        where = seen.share(zone) > 0.5
        mask = found.masks[zone] > 127
        assert (mask & where).sum() / (mask | where).sum() > 0.95
        apart = colour.delta_E(ours[where], truth[where], method="CIE 2000")
        # The sheen of the lid lies all over it and is taken for light, which tells on a dark paint.
        dark = name == "ink blue"
        assert np.median(apart) < (5 if dark else 2), zone
        assert np.percentile(apart, 90) < (9 if dark else 6), zone


def test_the_committed_box_is_what_the_script_renders(seen: Seen) -> None:
    """A fresh render at half the size has the light of the committed picture in every block."""
    fresh = box_picture(seen, {z: CURVES[n] for z, n in OLD.items()})
    with Image.open(FOLDER / TOLD["file"]) as image:
        assert list(image.size) == TOLD["size"]
        stored = np.asarray(image)
    assert_allclose(_blocks(fresh, 25), _blocks(stored, 50), rtol=0.08, atol=0.008)
    again = box_truth(seen)
    assert again["grey_card"] == TOLD["grey_card"]
    for new, old in zip(again["zones"], TOLD["zones"], strict=True):  # type: ignore[call-overload]
        assert new["share"] == pytest.approx(old["share"], abs=0.01)
        assert_allclose(new["lab_d65_2deg"], old["lab_d65_2deg"], atol=0.011)
    assert json.loads((FOLDER / TOLD["strokes"]).read_text("utf-8")) == json.loads(
        json.dumps(box_strokes())
    )


def _blocks(picture: NDArray[np.uint8], side: int) -> Floats:
    light = colour.cctf_decoding(picture / 255.0, "sRGB")
    rows, columns = light.shape[0] // side, light.shape[1] // side
    cut = light[: rows * side, : columns * side]
    return np.asarray(cut.reshape(rows, side, columns, side, 3).mean(axis=(1, 3)))
