"""The command ``repaint``."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import pytest
from PIL import Image

from swatchwright.acts.repaint_file import SampleBox, sample_box
from unit.commands.runs import ran, refused

if TYPE_CHECKING:
    from pathlib import Path

    Captured = pytest.CaptureFixture[str]


@pytest.fixture
def words(tmp_path: Path) -> list[str]:
    """Give the words that repaint the sample box, but for the colours."""
    sample = box()
    strokes = sample.path.parent / "blanket_box_strokes.json"
    grey = sample.grey
    where = f"{grey.x},{grey.y},{grey.width},{grey.height}"
    out = str(tmp_path / "after.png")
    first = ["repaint", str(sample.path), "--strokes", str(strokes), "--grey", where]
    return [*first, "--out", out]


def box() -> SampleBox:
    """Give the sample box, which must be there."""
    sample = sample_box()
    assert sample is not None
    return sample


def test_a_picture_in_the_size_of_the_photo(
    capsys: Captured, words: list[str], tmp_path: Path
) -> None:
    """The picture is written, its zones told with their colours, and it says what it is."""
    done = ran(capsys, *words, "--colour", "body=27,2,-24")
    assert done.code == 0
    assert "body, 25 % of the picture: #264164" in done.out
    assert "top, 9 % of the picture: as it is" in done.out
    assert "no measured colour" in done.out
    with Image.open(tmp_path / "after.png") as image, Image.open(box().path) as old:
        assert image.size == old.size
        blue, was = image.getpixel((1000, 600)), old.getpixel((1000, 600))
        assert isinstance(blue, tuple)
        assert isinstance(was, tuple)
        assert sum(blue) < 0.7 * sum(was)


def test_json_and_masks(capsys: Captured, words: list[str], tmp_path: Path) -> None:
    """As JSON come files, zones, shares, colours and notes; masks are white where a zone is."""
    folder = tmp_path / "masks"
    colour = ("--colour", "body=27,2,-24", "--colour", "top=#f2ece0")
    told = ran(capsys, *words, *colour, "--masks", folder, "--json").json
    assert set(told) == {"files", "zones", "grey", "notes"}
    assert [zone["zone"] for zone in told["zones"]] == ["body", "top"]
    assert told["zones"][1]["colour"]["srgb"] == "#f2ece0"
    assert told["grey"] is True
    for number, zone in enumerate(told["zones"], start=1):
        with Image.open(folder / f"{number}.png") as image:
            assert np.asarray(image).mean() / 255 == pytest.approx(zone["share"], abs=1e-3)
    assert len(told["files"]) == 3


@pytest.mark.parametrize(
    ("more", "told"),
    [
        ((), "No colour was given"),
        (("--colour", "body"), "“body”"),
        (("--colour", "body=#12"), "#12"),
        (("--colour", "body=1,2"), "1,2"),
        (("--colour", "body=300,0,0"), "300"),
        (("--colour", "drawers=40,0,0"), "drawers"),
        (("--colour", "body=40,0,0", "--out", "after.gif"), "after.gif"),
        (("--colour", "body=40,0,0", "--grey", "5000,0,9,9"), "does not lie in the photo"),
        (("--colour", "body=40,0,0", "--strokes", "none.json"), "none.json"),
    ],
)
def test_what_cannot_be_is_refused(
    capsys: Captured, words: list[str], more: tuple[str, ...], told: str
) -> None:
    """Each refusal names what was given and says how to mend it."""
    assert told in refused(capsys, *words, *more)
