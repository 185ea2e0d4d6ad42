"""Strokes and pictures in files, and the sample box."""

from __future__ import annotations

import json
from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from swatchwright.acts.colours import open_photo
from swatchwright.acts.repaint_file import (
    read_strokes,
    sample_box,
    save_picture,
    save_strokes,
    strokes_of_json,
)
from swatchwright.errors import MendableError
from swatchwright.values import Lab
from unit.photo.painted_scenes import STROKES, chest
from unit.photo.pictures import photo_of


def test_strokes_come_back_from_a_file(tmp_path: Path) -> None:
    """What is written is what is read, whatever photo it is read for."""
    path = save_strokes(STROKES, tmp_path / "strokes.json")
    assert read_strokes(path, photo_of(np.zeros((10, 20, 3)))) == STROKES


def test_without_a_size_they_are_on_the_photo(tmp_path: Path) -> None:
    """Strokes that say no size are in pixels of the photo."""
    path = tmp_path / "s.json"
    path.write_text('{"strokes": [{"zone": "body", "points": [[3, 4], [9, 4]]}]}', "utf-8")
    marked = read_strokes(path, photo_of(np.zeros((10, 20, 3))))
    assert marked.size == (20, 10)
    assert marked.strokes[0].points == ((3.0, 4.0), (9.0, 4.0))


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "does not hold strokes"),
        ("[]", "does not hold strokes"),
        ('{"strokes": 3}', "does not hold strokes"),
        ('{"strokes": [{"zone": 3, "points": []}]}', "does not hold strokes"),
        ('{"strokes": [{"zone": "body", "points": [[1]]}]}', "does not hold strokes"),
        ('{"strokes": [{"zone": "body", "dots": []}]}', "dots"),
        ('{"strokes": [], "colour": 1}', "colour"),
        ('{"strokes": []}', "No surface"),
        ("[" * 100_000, "does not hold strokes"),
        ('{"strokes": [{"zone": "body", "points": [[1e400, 1]]}]}', "."),
    ],
)
def test_other_files_are_refused(text: str, words: str) -> None:
    """What holds no strokes is refused in words, and a misspelt word is named."""
    with pytest.raises(MendableError, match=words):
        strokes_of_json(text.encode(), "s.json", (20, 10))


def test_a_missing_file_is_refused(tmp_path: Path) -> None:
    """A file that is not there is said to be so."""
    with pytest.raises(MendableError, match="cannot be read"):
        read_strokes(tmp_path / "none.json", photo_of(np.zeros((10, 20, 3))))


@pytest.mark.parametrize("name", ["a.png", "a.jpg", "a.JPEG"])
def test_pictures_are_what_their_names_say(tmp_path: Path, name: str) -> None:
    """A picture is written as PNG or JPEG by its ending, whole, with no file left beside it."""
    picture = chest().photo(dict.fromkeys(("body", "top"), Lab(50, 10, 10))).encoded
    path = save_picture(picture, tmp_path / name)
    with Image.open(path) as image:
        assert image.format == ("PNG" if name.endswith("png") else "JPEG")
        assert np.abs(np.asarray(image).astype(int) - picture).mean() < 3
    assert list(tmp_path.iterdir()) == [path]


def test_other_endings_and_folders_are_refused(tmp_path: Path) -> None:
    """A name of another ending, and a folder that is not there, are refused."""
    picture = np.zeros((4, 4, 3), dtype=np.uint8)
    with pytest.raises(MendableError, match="neither"):
        save_picture(picture, tmp_path / "a.gif")
    with pytest.raises(MendableError, match="could not be written"):
        save_picture(picture, tmp_path / "none" / "a.png")


def test_the_sample_box_is_there_with_its_strokes() -> None:
    """The sample is a photo of the size that its strokes are for, with a card inside it."""
    sample = sample_box()
    assert sample is not None
    photo = open_photo(sample.path)
    assert sample.strokes.size == (photo.width, photo.height)
    assert sample.strokes.zones == ("body", "top")
    assert sample.grey.inside(photo.width, photo.height)
    told = json.loads((sample.path.parent / "truth.json").read_text("utf-8"))["pieces"][0]
    assert told["file"] == sample.path.name
