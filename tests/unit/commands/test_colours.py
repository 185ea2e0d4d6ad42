"""The command ``swatchwright colours``."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from swatchwright.colour.difference import delta_e_2000
from swatchwright.values import Lab
from unit.acts.scenes import BLUE, CLOTH, RED, scene
from unit.commands.runs import ran, refused

Captured = pytest.CaptureFixture[str]
GREY = ("--grey", "10,10,60,60")
AREA = ("--area", "90,20,200,160")


def apart(made: dict[str, Any], wanted: Lab) -> float:
    """Give how far the nearest colour of the answer is from the one that was painted."""
    return float(delta_e_2000([c["lab"] for c in made["colours"]], wanted.triple).min())


def test_json_is_as_documented(capsys: Captured, tmp_path: Path) -> None:
    """JSON has the light, the colours and notes, as docs/files.md says."""
    done = ran(capsys, "colours", scene(tmp_path / "cloth.png"), *GREY, *AREA, "--json")
    assert (done.code, done.err) == (0, "")
    made = done.json
    assert made.keys() >= {"light", "colours", "notes"}
    assert made["light"].keys() >= {"reference", "reflectance", "gains", "xy", "cct"}
    assert made["light"]["reference"] == "grey"
    assert made["light"]["reflectance"] == 0.18
    assert len(made["light"]["gains"]) == 3
    for colour in made["colours"]:
        assert colour.keys() >= {"lab", "srgb", "in_srgb", "share", "name", "marks"}
        assert colour["marks"]
        for x, y in colour["marks"]:
            assert CLOTH.x <= x < CLOTH.right
            assert CLOTH.y <= y < CLOTH.bottom
    assert sum(c["share"] for c in made["colours"]) <= 1.001
    assert apart(made, RED) < 1
    assert apart(made, BLUE) < 1


def test_without_a_grey_the_light_is_not_known(capsys: Captured, tmp_path: Path) -> None:
    """Without a reference its fields are null, and a note says what that means."""
    made = ran(capsys, "colours", scene(tmp_path / "cloth.png"), *AREA, "--json").json
    light = made["light"]
    assert [light[key] for key in ("reference", "reflectance", "xy", "cct")] == [None] * 4
    assert made["notes"]
    assert apart(made, RED) > 4


def test_the_text_tells_what_json_tells(capsys: Captured, tmp_path: Path) -> None:
    """Without --json each colour stands on a line with its share, digits and name."""
    words = ("colours", scene(tmp_path / "cloth.png"), *GREY, *AREA)
    text, made = ran(capsys, *words), ran(capsys, *words, "--json").json
    assert text.code == 0
    assert "cloth.png" in text.out
    for colour in made["colours"]:
        (line,) = [line for line in text.out.splitlines() if colour["srgb"] in line]
        assert colour["name"] in line
        assert f"{colour['share']:.0%}" in line
    assert all(f"Note: {note}" in text.out for note in made["notes"])


def test_the_card_may_be_told_by_its_lightness(capsys: Captured, tmp_path: Path) -> None:
    """L* 49.496 is a reflectance of 0.18 (ISO/CIE 11664-4)."""
    path = scene(tmp_path / "cloth.png")
    by_y = ran(capsys, "colours", path, *GREY, *AREA, "--grey-y", "0.18", "--json").json
    by_l = ran(capsys, "colours", path, *GREY, *AREA, "--grey-l", "49.4961", "--json").json
    assert by_l["light"]["reflectance"] == pytest.approx(0.18, abs=1e-5)
    for one, two in zip(by_y["colours"], by_l["colours"], strict=True):
        assert one["lab"] == pytest.approx(two["lab"], abs=0.011)


def test_as_many_as_asked_for(capsys: Captured, tmp_path: Path) -> None:
    """--count gives that many colours."""
    path = scene(tmp_path / "cloth.png")
    assert len(ran(capsys, "colours", path, *GREY, "--count", 1, "--json").json["colours"]) == 1


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("--grey", "1,2,3"), "--grey was given “1,2,3”"),
        (("--area", "a,b,c,d"), "--area was given “a,b,c,d”"),
        (("--area", "280,20,200,160"), "The part to look at"),
        (("--grey", "280,20,200,160"), ""),
        ((*GREY, "--grey-y", "0.18", "--grey-l", "50"), "--grey-y and --grey-l"),
        (("--grey-y", "0.18"), "not where the card is"),
        (("--grey-l", "50"), "not where the card is"),
        ((*GREY, "--grey-y", "18"), "18"),
        ((*GREY, "--grey-l", "200"), "200"),
        (("--count", "0"), "0 colours"),
        (("--count", "13"), "13 colours"),
    ],
)
def test_what_is_off_is_refused(
    capsys: Captured, tmp_path: Path, words: tuple[str, ...], says: str
) -> None:
    """Rectangles, cards and counts that cannot be are refused, and the message names them."""
    assert says in refused(capsys, "colours", scene(tmp_path / "cloth.png"), *words)


def test_what_is_no_photo_is_refused(capsys: Captured, tmp_path: Path) -> None:
    """A file that is not there, and one that is no picture, are refused by name."""
    assert "none.jpg" in refused(capsys, "colours", tmp_path / "none.jpg")
    text = tmp_path / "text.jpg"
    text.write_text("not a photo", encoding="utf-8")
    assert "text.jpg" in refused(capsys, "colours", text)
