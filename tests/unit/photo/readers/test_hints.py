"""What the camera wrote beside the picture, by the tags of Exif 2.32."""

from __future__ import annotations

import pytest
from PIL import Image

from swatchwright.photo.readers.hints import Hints, read_hints


def exif(inner: dict[int, object] | None = None, **outer: object) -> Image.Exif:
    """Write camera data: tags of the inner block by number, make and model by name."""
    block = Image.Exif()
    for name, tag in (("make", 0x010F), ("model", 0x0110), ("orientation", 0x0112)):
        if name in outer:
            block[tag] = outer[name]
    block.get_ifd(0x8769).update(inner or {})
    return block


def test_nothing_written_hints_at_nothing() -> None:
    """Without camera data a picture is as it lies, and nobody knows where it is from."""
    assert read_hints(exif()) == Hints()
    assert Hints().notes(tone_mapped=None) == ()


@pytest.mark.parametrize(
    "block", [exif({0x829A: (1, 60)}), exif({0x829D: (2, 1)}), exif(make="a", model="b")]
)
def test_a_camera_is_told_by_exposure_or_name(block: Image.Exif) -> None:
    """An exposure time, an aperture, or a make with a model tells of a camera."""
    assert read_hints(block).from_camera
    assert not read_hints(exif(make="a scanning program")).from_camera


@pytest.mark.parametrize(
    ("tag", "value", "field"),
    [
        (0xA406, 2, "portrait"),  # SceneCaptureType: portrait
        (0xA406, 3, "night"),  # SceneCaptureType: night scene
        (0xA460, 3, "merged"),  # CompositeImage: composite while shooting
        (0xA401, 8, "portrait"),  # CustomRendered as phones use it, from memory
        (0xA001, 0xFFFF, "is_wide"),  # ColorSpace: uncalibrated
    ],
)
def test_modes_are_told_by_their_tags(tag: int, value: int, field: str) -> None:
    """Each tag sets its hint and no other."""
    hints = read_hints(exif({tag: value}))
    assert [name for name in Hints.__slots__ if getattr(hints, name) is True] == [field]
    for plain in (0, 1):
        assert read_hints(exif({0xA406: plain, 0xA401: plain, 0xA460: plain})) == Hints()


def test_each_hint_has_its_words() -> None:
    """What a painter should know is said once for each, what is false is not."""
    hints = Hints(portrait=True, night=True, merged=True, damaged=True)
    assert len(hints.notes(tone_mapped=True)) == 4
    assert "DNG" in Hints().notes(tone_mapped=True)[0]
    assert Hints().notes(tone_mapped=False) == ()


def test_what_a_decoder_turned_stays_upright() -> None:
    """The orientation is dropped, the other hints are kept."""
    turned = read_hints(exif({0xA406: 3}, orientation=6)).turned_upright(portrait=True)
    assert turned == Hints(portrait=True, night=True)


def test_odd_values_hint_at_nothing() -> None:
    """A text where a number belongs is passed over."""
    assert not read_hints(exif({0xA406: "night", 0xA460: b"\x03"})).night
