"""The sample images: sound files, true to their curves, and what the script renders."""

import json
from pathlib import Path
from typing import Any

import colour
import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal
from numpy.typing import NDArray
from PIL import Image

from studio.curves import CURVES, GREY_CARD
from studio.samples import SAMPLES, Sample, develop, paint, truth
from studio.truth import lab_d65

FOLDER = Path(__file__).parents[2] / "sample_images"
TRUTH = json.loads((FOLDER / "truth.json").read_text("utf-8"))
IMAGES: list[dict[str, Any]] = TRUTH["images"]
COARSE = 2.0

each_image = pytest.mark.parametrize("facts", IMAGES, ids=[facts["file"] for facts in IMAGES])
each_sample = pytest.mark.parametrize("sample", SAMPLES, ids=[sample.name for sample in SAMPLES])


def linear(picture: NDArray[np.uint8]) -> NDArray[np.float64]:
    """Decode sRGB bytes by colour-science."""
    return np.asarray(colour.cctf_decoding(picture / 255.0, "sRGB"), dtype=np.float64)


def part_of(facts: dict[str, Any], key: str) -> NDArray[np.float64]:
    """Read one of the rectangles of an image as linear light."""
    with Image.open(FOLDER / facts["file"]) as image:
        picture = np.asarray(image)
    x, y, width, height = facts[key]
    return linear(picture[y : y + height, x : x + width])


def test_every_sample_has_its_facts() -> None:
    """The file of facts names the three images and the script that made them."""
    assert [facts["file"] for facts in IMAGES] == [f"{sample.name}.jpg" for sample in SAMPLES]
    assert TRUTH["rendered_by"] == "tools/render_samples.py"


def test_the_readme_says_they_are_rendered_and_invented() -> None:
    """Nobody can take the samples for photographs."""
    text = (FOLDER / "README.md").read_text("utf-8")
    assert "rendered, not photographed" in text
    assert "invented" in text
    assert all(facts["file"] in text for facts in IMAGES)


@each_image
def test_a_sample_is_a_sound_small_jpeg(facts: dict[str, Any]) -> None:
    """It opens as a colour JPEG of the size told, and is under 700 KB."""
    path = FOLDER / facts["file"]
    assert path.stat().st_size < 700_000
    with Image.open(path) as image:
        image.load()
        assert (image.format, image.mode, list(image.size)) == ("JPEG", "RGB", facts["size"])


@each_image
def test_the_grey_card_is_flat_and_well_exposed(facts: dict[str, Any]) -> None:
    """The card's rectangle holds one grey: little spread, nothing near black or white."""
    card = part_of(facts, "grey_card").reshape(-1, 3)
    middle = np.median(card, axis=0)
    assert 0.05 < middle.min() < middle.max() < 0.5
    low, high = np.percentile(card, (10, 90), axis=0)
    assert ((high - low) / middle).max() < 0.2


def test_the_card_is_near_neutral_by_the_window_and_warm_by_the_lamp() -> None:
    """The camera's white balance does its work in daylight and only a part of it by the lamp."""
    ratio = {
        facts["file"]: float(np.divide(*np.median(part_of(facts, "grey_card"), (0, 1))[[0, 2]]))
        for facts in IMAGES
    }
    assert ratio["cushion_window.jpg"] == pytest.approx(1.0, abs=0.08)
    assert ratio["printed_cloth.jpg"] == pytest.approx(1.0, abs=0.08)
    assert ratio["cushion_lamp.jpg"] > 1.5


@each_image
def test_the_true_colours_are_those_of_the_curves(facts: dict[str, Any]) -> None:
    """Each CIELAB told is what colour-science makes of the curve of that name."""
    assert facts["grey_reflectance"] == GREY_CARD
    assert sum(entry["share"] for entry in facts["colours"]) == pytest.approx(1.0, abs=0.01)
    for entry in facts["colours"]:
        assert_allclose(entry["lab_d65_2deg"], lab_d65(CURVES[entry["name"]]), atol=0.0051)


@each_image
def test_every_true_colour_can_be_found_on_the_cloth(facts: dict[str, Any]) -> None:
    """Balanced by the card, a quarter of each colour's pixels are within 7.5 CIEDE2000 of it.

    The balance here is three factors and nothing else; lamps and threads in shade take the rest.
    """
    gains = GREY_CARD / np.median(part_of(facts, "grey_card"), axis=(0, 1))
    area = part_of(facts, "area") * gains / facts["light_on_area_to_light_on_card"]
    white = np.array([0.3127, 0.3290])
    lab = colour.XYZ_to_Lab(colour.RGB_to_XYZ(area.reshape(-1, 3), "sRGB"), white)
    for entry in facts["colours"]:
        near = colour.delta_E(lab, np.array(entry["lab_d65_2deg"])) < 7.5
        assert near.mean() > 0.25 * entry["share"], entry["name"]


@each_sample
def test_the_committed_image_is_what_the_script_renders(sample: Sample) -> None:
    """A fresh render at half size has the light of the committed image in every block of it."""
    painted = paint(sample, COARSE)
    fresh = develop(sample, painted, COARSE)
    with Image.open(FOLDER / f"{sample.name}.jpg") as image:
        stored = np.asarray(image)
    assert_allclose(_blocks(fresh, 40), _blocks(stored, 80), rtol=0.06, atol=0.006)
    told = next(facts for facts in IMAGES if facts["file"] == f"{sample.name}.jpg")
    again = truth(sample, painted, COARSE)
    for new, old in zip(again["colours"], told["colours"], strict=True):  # type: ignore[call-overload]
        assert new["share"] == pytest.approx(old["share"], abs=0.02)
    assert again["grey_card"] == told["grey_card"]
    assert again["area"] == told["area"]


def test_rendering_again_gives_the_same_pixels() -> None:
    """Two renders of one sample are equal in every byte before JPEG."""
    sample = SAMPLES[0]
    once, twice = (develop(sample, paint(sample, 4.0), 4.0) for _ in range(2))
    assert_array_equal(once, twice)


def _blocks(picture: NDArray[np.uint8], side: int) -> NDArray[np.float64]:
    light = linear(picture)
    rows, columns = light.shape[0] // side, light.shape[1] // side
    blocks = light.reshape(rows, side, columns, side, 3)
    return np.asarray(blocks.mean(axis=(1, 3)), dtype=np.float64)
