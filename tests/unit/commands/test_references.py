"""References on the command line."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from swatchwright.commands.references import references_of
from swatchwright.errors import MendableError
from swatchwright.values import Rect
from unit.acts.scenes import CLOTH, GREY, scene
from unit.commands.runs import ran, refused

if TYPE_CHECKING:
    from pathlib import Path


Captured = pytest.CaptureFixture[str]


def test_a_value_may_be_a_reflectance_a_lightness_or_a_colour() -> None:
    """0.18, 18% and L* 49.4961 are the same grey (ISO/CIE 11664-4); three numbers are a chip."""
    texts = ("1,2,30,40=0.18", "1,2,30,40=18%", "1,2,30,40=49.4961", "1,2,30,40=46,34,-24")
    *greys, chip = references_of(texts)
    for grey in greys:
        assert (grey.kind, grey.rect) == ("grey", Rect(1, 2, 30, 40))
        assert grey.reflectance == pytest.approx(0.18, abs=1e-5)
    assert (chip.kind, chip.lab.triple) == ("chip", (46, 34, -24))


@pytest.mark.parametrize(
    "text", ["", "1,2,30,40", "1,2,30=0.18", "1,2,30,40=", "1,2,30,40=grey", "1,2,30,40=1,2",
             "1,2,30,40=5", "1,2,30,40=0.001", "1,2,30,40=200,0,0", "=0.18"],
)  # fmt: skip
def test_what_is_not_a_reference_is_told(text: str) -> None:
    """Each slip is refused with what to write."""
    with pytest.raises(MendableError) as caught:
        references_of([text])
    assert caught.value.mend


def test_json_has_references_findings_and_advice(capsys: Captured, tmp_path: Path) -> None:
    """As docs/files.md says; several references make the first colour surer than one."""
    path = scene(tmp_path / "cloth.png")
    where = f"{GREY.x},{GREY.y},{GREY.width},{GREY.height // 2}"
    below = f"{GREY.x},{GREY.y + GREY.height // 2},{GREY.width},{GREY.height // 2}"
    area = ("--area", f"{CLOTH.x},{CLOTH.y},{CLOTH.width},{CLOTH.height}")
    one = ran(capsys, "colours", path, *area, "--ref", f"{where}=0.18", "--json").json
    two = ran(
        capsys, "colours", path, *area, "--ref", f"{where}=0.18", "--ref", f"{below}=18%", "--json"
    ).json
    assert [r["kind"] for r in two["references"]] == ["grey", "grey"]
    assert two["colours"][0]["give_or_take"] <= one["colours"][0]["give_or_take"]
    assert two["colours"][0]["from_a_metre"]["srgb"].startswith("#")
    for key in ("findings", "would_help", "likely_greys"):
        assert isinstance(two[key], list)
    told = [a["then"] for a in two["would_help"]]
    assert told == sorted(told)


def test_plus_or_minus_and_what_would_help_are_printed(capsys: Captured, tmp_path: Path) -> None:
    """In words, with the light told."""
    path = scene(tmp_path / "cloth.png")
    out = ran(capsys, "colours", path, "--light", "daylight").out
    assert "±" in out
    assert "Would help most" in out


def test_a_reference_off_the_photo_is_refused(capsys: Captured, tmp_path: Path) -> None:
    """By its place and the size of the photo."""
    path = scene(tmp_path / "cloth.png")
    assert "does not lie" in refused(capsys, "colours", path, "--ref", "9000,0,40,40=0.18")
