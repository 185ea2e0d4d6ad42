"""The colours of a photo, from its file to its list."""

from __future__ import annotations

from pathlib import Path

import pytest

from swatchwright.acts.colours import PhotoColours, balance_photo, colours_of, open_photo
from swatchwright.colour.difference import delta_e_2000
from swatchwright.errors import MendableError
from swatchwright.values import Lab, Rect
from unit.acts.scenes import BLUE, CARD, CLOTH, GREY, RED, WARM, scene


def apart(found: PhotoColours, wanted: Lab) -> float:
    """Give how far the nearest of the colours is from the one that was painted."""
    labs = [c.colour.lab.triple for c in found.colours]
    return float(delta_e_2000(labs, wanted.triple).min())


def test_the_cloth_is_read_in_the_light_of_the_card(tmp_path: Path) -> None:
    """In a warm light, by its grey card, the cloth has the two colours that it was painted in."""
    photo = open_photo(scene(tmp_path / "cloth.png"))
    found = colours_of(photo, grey=GREY, reflectance=CARD, area=CLOTH)
    assert apart(found, RED) < 1
    assert apart(found, BLUE) < 1
    assert found.colours[0].share == pytest.approx(2 / 3, abs=0.05)
    assert [c.share for c in found.colours] == sorted(c.share for c in found.colours)[::-1]


def test_without_the_card_the_light_stays_in(tmp_path: Path) -> None:
    """Without a reference the warm light stays in the colours, and a note says so."""
    photo = open_photo(scene(tmp_path / "cloth.png"))
    found = colours_of(photo, area=CLOTH)
    assert apart(found, RED) > 4
    assert found.balance.reflectance is None
    assert found.notes
    plain = open_photo(scene(tmp_path / "plain.png", (1.0, 1.0, 1.0)))
    assert apart(colours_of(plain, area=CLOTH), RED) < 1


def test_the_card_is_no_colour_of_the_cloth(tmp_path: Path) -> None:
    """Over the whole photo the grey card itself is left out, and what surrounds it is not."""
    photo = open_photo(scene(tmp_path / "cloth.png"))
    found = colours_of(photo, grey=GREY, reflectance=CARD)
    card = Lab(49.5, 0, 0)
    assert apart(found, card) > 10
    assert apart(found, RED) < 1


def test_as_many_as_asked_for(tmp_path: Path) -> None:
    """One colour, or two, if that many are asked for."""
    photo = open_photo(scene(tmp_path / "cloth.png"))
    for count in (1, 2):
        found = colours_of(photo, grey=GREY, reflectance=CARD, area=CLOTH, count=count)
        assert len(found.colours) == count


def test_a_lighter_card_makes_all_lighter(tmp_path: Path) -> None:
    """Taken as a card of 36 % the same grey doubles all light."""
    photo = open_photo(scene(tmp_path / "cloth.png"))
    one = balance_photo(photo, GREY, 0.18)
    two = balance_photo(photo, GREY, 0.36)
    assert [b / a for a, b in zip(one.gains, two.gains, strict=True)] == pytest.approx([2] * 3)
    # The gains undo the light.
    undone = [gain * light for gain, light in zip(one.gains, WARM, strict=True)]
    assert undone == pytest.approx([1, 1, 1], rel=0.02)


@pytest.mark.parametrize("rect", [Rect(290, 190, 60, 60), Rect(-5, 0, 50, 50), Rect(10, 10, 0, 40)])
def test_a_rectangle_off_the_photo_is_refused(tmp_path: Path, rect: Rect) -> None:
    """A card or an area that is not inside the photo is refused."""
    photo = open_photo(scene(tmp_path / "cloth.png"))
    with pytest.raises(MendableError):
        colours_of(photo, grey=rect)
    with pytest.raises(MendableError):
        colours_of(photo, area=rect)


def test_what_is_no_photo_is_refused(tmp_path: Path) -> None:
    """A file that is not there or no picture is refused by its name."""
    with pytest.raises(MendableError, match=r"none\.png"):
        open_photo(tmp_path / "none.png")
    text = tmp_path / "text.png"
    text.write_text("id,name\n", encoding="utf-8")
    with pytest.raises(MendableError, match=r"text\.png"):
        open_photo(text)
