"""The photo of brushed cards: true to its paints, and what the script renders."""

import json
from pathlib import Path
from typing import Any

import colour
import numpy as np
import pytest
from numpy.testing import assert_allclose
from PIL import Image

from card_films import card_films
from studio.cards import CARDS, cards_truth, paint_cards
from studio.curves import GREY_CARD
from studio.samples import develop

FOLDER = Path(__file__).parents[2] / "sample_images"
FACTS: dict[str, Any] = json.loads((FOLDER / "truth.json").read_text("utf-8"))["cards"][0]
COARSE = 4.0


@pytest.fixture(scope="module")
def stored() -> np.ndarray[Any, np.dtype[np.float64]]:
    """Give the picture as linear light, decoded by colour-science."""
    with Image.open(FOLDER / FACTS["file"]) as image:
        assert (image.format, image.mode, list(image.size)) == ("JPEG", "RGB", FACTS["size"])
        light = colour.cctf_decoding(np.asarray(image) / 255.0, "sRGB")
    return np.asarray(light, dtype=np.float64)


def middle(picture: np.ndarray[Any, np.dtype[np.float64]], box: list[int]) -> Any:
    """Give the mean light of a rectangle."""
    x, y, width, height = box
    return picture[y : y + height, x : x + width].mean(axis=(0, 1))


def test_its_facts_are_those_of_the_script() -> None:
    """The file of facts holds what the script says of the cards, and each card once."""
    assert json.loads(json.dumps(cards_truth(card_films()))) == FACTS
    told = [(str(card["mix"]), card["over"]) for card in FACTS["cards"]]
    assert len(set(told)) == len(told) == 15


def test_each_card_is_near_its_true_colour(stored: np.ndarray[Any, np.dtype[np.float64]]) -> None:
    """Balanced by the grey card with three factors, each is within 7.5 CIEDE2000 of what is told.

    True colours and the way from light to CIELAB are colour-science's.
    """
    gains = GREY_CARD / middle(stored, FACTS["grey_card"])
    white = np.array([0.3127, 0.3290])
    for card in FACTS["cards"]:
        seen = np.clip(middle(stored, card["box"]) * gains, 0, None)
        lab = colour.XYZ_to_Lab(colour.RGB_to_XYZ(seen, "sRGB"), white)
        assert colour.delta_E(lab, np.array(card["lab_d65_2deg"])) < 7.5, card


def test_no_card_is_blown(stored: np.ndarray[Any, np.dtype[np.float64]]) -> None:
    """The white cards keep some room below the brightest that a photo can hold."""
    for card in FACTS["cards"]:
        x, y, width, height = card["box"]
        assert np.quantile(stored[y : y + height, x : x + width], 0.99) < 0.99


def test_the_committed_photo_is_what_the_script_renders(
    stored: np.ndarray[Any, np.dtype[np.float64]],
) -> None:
    """A fresh render at a quarter of the size has the light of the committed photo on each card."""
    rendered = develop(CARDS, paint_cards(COARSE, card_films()), COARSE) / 255.0
    fresh = np.asarray(colour.cctf_decoding(rendered, "sRGB"), dtype=np.float64)
    for card in FACTS["cards"]:
        small = [round(edge / COARSE) for edge in card["box"]]
        assert_allclose(middle(fresh, small), middle(stored, card["box"]), rtol=0.06, atol=0.006)
