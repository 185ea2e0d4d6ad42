"""The command ``compare``."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

import pytest

from unit.commands.runs import ran, refused

if TYPE_CHECKING:
    from pathlib import Path

    Captured = pytest.CaptureFixture[str]

WANTED = ("compare", "--lab", "46,34,24", "--paints", "2")
LIGHTS = ["daylight", "warm lamp", "warm LED", "cool LED", "tube"]


def test_a_table_of_mixes_and_lights(capsys: Captured) -> None:
    """Each mix is told in each light of a room, dry, in words and figures, with what was taken."""
    done = ran(capsys, *WANTED, "--keep", "2")
    assert done.code in {0, 3}
    for light in LIGHTS:
        assert sum(line.strip().startswith(light) for line in done.out.splitlines()) == 2
    assert " off: " in done.out
    assert "a grey stays grey" in done.out
    assert "wet" not in done.out.split("Note")[0]
    assert "Brush a sample" in done.out


def test_states_and_lights_of_choice(capsys: Captured) -> None:
    """Wet, washed and waxed come when they are asked for, and only the lights that were named."""
    words = (*WANTED, "--keep", "1", "--light", "tube", "--light", "Warm-Lamp")
    found = ran(capsys, *words, "--wet", "--washed", "--waxed", "--json").json
    (mix,) = found["mixes"]
    assert [row["state"] for row in mix["seen"]] == [
        state for state in ("dry", "wet", "washed", "waxed") for _ in range(2)
    ]
    assert {row["light"] for row in mix["seen"]} == {"warm lamp", "tube"}
    assert set(mix["under"]) == {"washed", "waxed"}
    assert list(found["wanted_in"]) == ["warm lamp", "tube"]
    for row in mix["seen"]:
        assert row["least_delta_e_00"] <= row["most_delta_e_00"]
        assert row["near"]


def test_daylight_agrees_with_recipe(capsys: Captured) -> None:
    """In daylight the mixes are those of ``recipe``, as far off as it says."""
    ours = ran(capsys, *WANTED, "--keep", "2", "--light", "daylight", "--json").json
    theirs = ran(
        capsys, "recipe", "--lab", "46,34,24", "--paints", "2", "--keep", "2", "--json"
    ).json
    assert not any("grey stays" in note for note in ours["notes"])
    for mix, recipe in zip(ours["mixes"], theirs["recipes"], strict=True):
        assert [p["id"] for p in mix["paints"]] == [p["id"] for p in recipe["paints"]]
        assert mix["seen"][0]["delta_e_00"] == pytest.approx(recipe["delta_e_00"], abs=0.01)
        assert mix["seen"][0]["lab"] == pytest.approx(recipe["dry"]["lab"], abs=0.02)


def test_layers_of_ones_own(capsys: Captured, tmp_path: Path) -> None:
    """Layers come in words or from a file, and are told above what is seen under them."""
    words = (*WANTED, "--keep", "1", "--light", "daylight", "--waxed")
    said = ran(capsys, *words, "--layer", "wash stone-grey-warm", "--layer", "wax amber=1").out
    assert "under a wash of Stone grey, warm, 1 to 3 of water; then an amber wax" in said
    file = tmp_path / "layers.json"
    layers = [{"kind": "wash", "paints": [["stone-grey-warm", 1]]}, {"kind": "wax", "amber": 1}]
    file.write_text(json.dumps({"layers": layers}), encoding="utf-8")
    assert ran(capsys, *words, "--layers", file).out == said


def test_out_of_reach(capsys: Captured) -> None:
    """A colour that the shelf does not reach ends with 3 and is compared all the same."""
    done = ran(capsys, "compare", "--srgb", "#00ff40", "--paints", "2", "--keep", "1")
    assert done.code == 3
    assert "Nothing found reaches it" in done.out
    assert "stays another colour" in done.out


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("compare",), "No wanted colour"),
        (("compare", "--lab", "1,2"), "three numbers"),
        (("compare", "--lab", "146,34,24"), "No surface"),
        (("compare", "--srgb", "red"), "hexadecimal"),
        (("compare", "--srgb", "#aa5447", "--lab", "46,34,24"), "Two colours"),
        ((*WANTED, "--light", "moon"), "warm-lamp"),
        ((*WANTED, "--keep", "9"), "1 to 6"),
        ((*WANTED, "--keep", "0"), "1 to 6"),
        ((*WANTED, "--layer", "wax"), "--waxed"),
        ((*WANTED, "--waxed", "--layer", "jam"), "Begin it with"),
        ((*WANTED, "--waxed", "--layer", "wax", "--layers", "x.json"), "one way"),
        ((*WANTED, "--washed", "--layer", "wash no-such-paint"), "no-such-paint"),
        ((*WANTED, "--waxed", "--layers", "no-such-file.json"), "cannot be read"),
        ((*WANTED, "--shelf", "no-such-file.csv"), "no-such-file"),
    ],
)
def test_refusals(capsys: Captured, words: tuple[str, ...], told: str) -> None:
    """What cannot be is refused with what to do about it."""
    assert told in refused(capsys, *words)
