"""The command ``swatchwright piece``."""

from __future__ import annotations

import json
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest

from swatchwright.piece.areas import areas_of
from swatchwright.piece.common import Kind, common_piece
from unit.commands.runs import ran, refused

Captured = pytest.CaptureFixture[str]


@pytest.mark.parametrize("kind", list(Kind))
def test_json_is_as_documented(kind: Kind, capsys: Captured) -> None:
    """JSON has name, parts, zones and total, as docs/files.md says."""
    done = ran(capsys, "piece", kind.value.replace(" ", "-"), "--json")
    assert (done.code, done.err) == (0, "")
    total = areas_of(common_piece(kind)).total
    assert done.json["name"] == kind.value
    assert done.json["total_m2"] == pytest.approx(total, abs=1e-5)
    assert sum(z["area_m2"] for z in done.json["zones"]) == pytest.approx(total, abs=1e-4)
    assert done.json["parts"][0].keys() == {"name", "count", "zone", "area_m2"}


def test_saved_edited_and_read(capsys: Captured, tmp_path: Path) -> None:
    """A piece is saved, a part edited by hand, and read again with its new area."""
    path = tmp_path / "box.json"
    first = ran(capsys, "piece", "blanket-box", "--save", path, "--json").json
    raw = json.loads(path.read_text(encoding="utf-8"))
    raw["parts"][0]["zone"] = "lid"
    path.write_text(json.dumps(raw), encoding="utf-8")
    again = ran(capsys, "piece", "--parts", path, "--json").json
    assert again["total_m2"] == first["total_m2"]
    assert [z["zone"] for z in again["zones"]] == ["lid", "body"]


def test_a_table_and_a_drawing(capsys: Captured, tmp_path: Path) -> None:
    """The table names parts with their number; the drawing can be read and is told."""
    path = tmp_path / "chest.svg"
    asked = ("piece", "chest of drawers", "--drawers", "3", "--drawing", path)
    done = ran(capsys, *asked, "--colour", "drawers=#a15047")
    assert "3 × drawer fronts" in done.out
    assert f"Written: {path}" in done.out
    assert ET.parse(path).getroot() is not None  # noqa: S314 - our own file


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ((), "No piece was named"),
        (("sofa",), "no piece “sofa”"),
        (("chair", "--width", "5"), "width of 5 mm"),
        (("chair", "--width", "nan"), "width of nan"),
        (("chair", "--leg", "cabriole"), "no leg"),
        (("--width", "500"), "--width was given"),
        (("chair", "--parts", "x.json"), "one or the other"),
        (("--parts", "none.json"), "cannot be read"),
        (("chair", "--colour", "seat=#000000"), "no drawing"),
        (("chair", "--drawing", "x.svg", "--colour", "seat"), "--colour"),
        (("chair", "--drawing", "no/such/folder/x.svg"), "cannot be written"),
    ],
)
def test_what_cannot_be_sized(words: tuple[str, ...], told: str, capsys: Captured) -> None:
    """What is off is named, with what would do."""
    assert told in refused(capsys, "piece", *words)
