"""The colour of a card in the light of the grey beside it."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import pytest
from PIL import Image

from swatchwright.acts.card_photo import read_card
from swatchwright.acts.colours import open_photo
from swatchwright.colour.convert import lab_to_hex
from swatchwright.colour.difference import delta_e_2000
from swatchwright.errors import MendableError
from swatchwright.values import Lab, Rect

if TYPE_CHECKING:
    from pathlib import Path

    from swatchwright.photo.image import Photo

CARD = Lab(46, 34, 24)
GREY, PAINT = Rect(10, 10, 80, 80), Rect(110, 10, 80, 80)


def photo_in(folder: Path, light: tuple[float, float, float]) -> Photo:
    """Paint a photo of a grey of 18 % and a card in a light; sRGB of IEC 61966-2-1."""
    code = lab_to_hex(CARD)
    patches = np.array([(118,) * 3, [int(code[i : i + 2], 16) for i in (1, 3, 5)]]) / 255
    linear = np.where(patches <= 0.04045, patches / 12.92, ((patches + 0.055) / 1.055) ** 2.4)
    linear = linear * light
    seen = np.where(linear <= 0.0031308, 12.92 * linear, 1.055 * linear ** (1 / 2.4) - 0.055)
    row = np.round(255 * seen).astype(np.uint8)
    path = folder / "card.png"
    Image.fromarray(np.repeat(np.repeat(row[None], 100, axis=0), 100, axis=1)).save(path)
    return open_photo(path)


@pytest.mark.parametrize("light", [(1.0, 1.0, 1.0), (0.9, 0.75, 0.5)], ids=["white", "yellow"])
def test_read_in_any_light(tmp_path: Path, light: tuple[float, float, float]) -> None:
    """The card comes out as it is in white and in yellow light, with the doubt of a photo."""
    read = read_card(photo_in(tmp_path, light), PAINT, grey=GREY)
    assert delta_e_2000(read.lab.triple, CARD.triple) < 2
    assert 2 < read.usually_off < 8


def test_a_card_outside_the_photo(tmp_path: Path) -> None:
    """A box that does not lie in the photo is refused."""
    with pytest.raises(MendableError):
        read_card(photo_in(tmp_path, (1.0, 1.0, 1.0)), Rect(190, 10, 80, 80), grey=GREY)
