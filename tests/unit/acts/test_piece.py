"""Sizing a piece, keeping it in a file, and drawing it."""

from __future__ import annotations

from pathlib import Path
from xml.etree import ElementTree as ET

import pytest

from swatchwright.acts.piece import (
    draw_piece,
    kind_named,
    leg_named,
    read_piece,
    save_piece,
    sized,
    sized_piece,
    write_drawing,
)
from swatchwright.errors import MendableError
from swatchwright.piece.areas import areas_of
from swatchwright.piece.common import Kind, common_piece
from swatchwright.piece.drawing import View
from swatchwright.piece.part import Shape


def test_a_piece_is_sized_with_its_areas() -> None:
    """The act gives the common piece and what of it is painted."""
    found = sized_piece(Kind.CHAIR, width=480, leg=Shape.SQUARE_LEG)
    assert found.piece == common_piece(Kind.CHAIR, width=480, leg=Shape.SQUARE_LEG)
    assert found.areas == areas_of(found.piece) == sized(found.piece).areas


@pytest.mark.parametrize("kind", list(Kind))
def test_names_are_read_kindly(kind: Kind) -> None:
    """A kind is known by its name in capitals, with hyphens or with underscores."""
    for text in (kind.value, kind.value.upper(), kind.value.replace(" ", "-"), kind.name):
        assert kind_named(text) is kind
    assert leg_named("Turned") is Shape.TURNED_LEG


def test_unknown_names_are_refused() -> None:
    """An unknown kind or leg is answered with those that there are."""
    with pytest.raises(MendableError, match="blanket box"):
        kind_named("sofa")
    with pytest.raises(MendableError, match="tapered"):
        leg_named("cabriole")


@pytest.mark.parametrize("kind", list(Kind))
def test_a_file_comes_back(kind: Kind, tmp_path: Path) -> None:
    """A piece that was saved is read back the same."""
    save_piece(common_piece(kind), tmp_path / "piece.json")
    assert read_piece(tmp_path / "piece.json") == common_piece(kind)


def test_a_short_file_will_do(tmp_path: Path) -> None:
    """What is left out of a file has its usual value; whole numbers will do for sizes."""
    path = tmp_path / "shelf.json"
    path.write_text(
        '{"name": "shelf", "parts": [{"name": "board", "shape": "panel", "length": 1000, '
        '"width": 250, "depth": 20, "painted": ["outside", "inside"]}]}'
    )
    assert areas_of(read_piece(path)).total == pytest.approx(0.5)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("", "is not a piece"),
        ("{", "is not a piece"),
        ("[1]", "is not a piece"),
        ("[" * 100_000, "is not a piece"),
        ('{"name": "x", "parts": []}', "0 parts"),
        ('{"name": "x", "parts": [1]}', "is not a piece"),
        ('{"name": "x", "parts": [{"name": "a", "shape": "blob", "length": 1}]}', "blob"),
        ('{"name": "x", "parts": [{"name": "a", "shape": "panel"}]}', "length"),
        ('{"name": "x", "colour": 1, "parts": []}', "no “colour” in the piece"),
        (
            '{"name": "x", "parts": [{"name": "a", "shape": "panel", "widht": 3}]}',
            "no “widht” in the part “a”",
        ),
        ('{"name": "x", "parts": [{"name": "a", "shape": "sphere", "length": 1e9}]}', "1e\\+09 mm"),
    ],
)
def test_broken_files_are_refused(text: str, told: str, tmp_path: Path) -> None:
    """What is no piece is refused with what is off, whatever it is."""
    path = tmp_path / "broken.json"
    path.write_text(text)
    with pytest.raises(MendableError, match=told):
        read_piece(path)


def test_files_that_are_not_there(tmp_path: Path) -> None:
    """A file that is missing, too large or cannot be written is named."""
    with pytest.raises(MendableError, match="cannot be read"):
        read_piece(tmp_path / "none.json")
    (tmp_path / "large.json").write_bytes(b" " * 2_000_001)
    with pytest.raises(MendableError, match="too large"):
        read_piece(tmp_path / "large.json")
    with pytest.raises(MendableError, match="cannot be written"):
        save_piece(common_piece(Kind.CHAIR), tmp_path / "no" / "piece.json")


def test_a_drawing_is_written(tmp_path: Path) -> None:
    """The drawing is an SVG file that a parser of XML can read, with the zone's colour in it."""
    path = tmp_path / "chair.svg"
    write_drawing(common_piece(Kind.CHAIR), path, {"seat": "#123456"})
    assert ET.parse(path).getroot().tag == "{http://www.w3.org/2000/svg}svg"  # noqa: S314 - ours
    assert "rgb(18,52,86)" in path.read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("colours", "told"), [({"seat": "red"}, "no colour"), ({"lid": "#123456"}, "no zone “lid”")]
)
def test_colours_that_cannot_be(colours: dict[str, str], told: str, tmp_path: Path) -> None:
    """A colour that is none, or of a zone that is not there, is refused."""
    with pytest.raises(MendableError, match=told):
        write_drawing(common_piece(Kind.CHAIR), tmp_path / "x.svg", colours)


def test_a_piece_is_drawn_from_both_sides() -> None:
    """Areas and both drawings come together, and the front is as wide as the piece."""
    found = draw_piece(common_piece(Kind.CHAIR))
    assert found.sized == sized(common_piece(Kind.CHAIR))
    assert found.drawings.keys() == set(View)
    assert found.drawings[View.FRONT].width == pytest.approx(450)
