"""Putting a pot right, neighbours and reach by command."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from swatchwright.acts.mix import look_of_mix
from swatchwright.colour.difference import delta_e_2000
from swatchwright.shelf.csv_file import demo_shelf
from unit.commands.runs import ran

if TYPE_CHECKING:
    from pathlib import Path

    Captured = pytest.CaptureFixture[str]

POT = ("strong-red-orange=361", "pale-blue-greyish=96", "strong-yellow-orange=43")
IDS = ("strong-red-orange", "pale-blue-greyish", "strong-yellow-orange")


def test_additions_bring_the_pot_where_they_say(capsys: Captured) -> None:
    """Mixed with what is to be added, the pot has the colour that was told, nearer than before."""
    found = ran(capsys, "correct", *POT, "--lab", "50,34,24", "--tub", "800", "--json").json
    assert found["add"]
    parts = {i: float(p.split("=")[1]) for i, p in zip(IDS, POT, strict=True)}
    for step in found["add"]:
        parts[step["id"]] = parts.get(step["id"], 0.0) + step["ml"]
    mixed = look_of_mix(demo_shelf(), list(parts.items())).dry
    told = found["add"][-1]["after"]["lab"]
    assert float(delta_e_2000(mixed.triple, told)) < 0.05
    assert found["delta_e_00"] < found["before_delta_e_00"] / 3
    assert found["volume_ml"] == pytest.approx(sum(parts.values()), abs=0.1)
    assert found["volume_ml"] <= 800


def test_a_client_asks_in_words(capsys: Captured) -> None:
    """A third less vivid lowers the chroma by about a third, in words a person can follow."""
    found = ran(capsys, "correct", *POT, "--ask", "less vivid", "--tub", "1000", "--json").json
    before, after = (
        (lab[1] ** 2 + lab[2] ** 2) ** 0.5
        for lab in (found["now"]["lab"], found["add"][-1]["after"]["lab"])
    )
    assert after / before == pytest.approx(2 / 3, abs=0.08)
    assert "Add" in ran(capsys, "correct", *POT, "--ask", "less vivid").out


def test_the_wax_and_the_room_are_reckoned_with(capsys: Captured) -> None:
    """Under a wax the colours told are those with it on; a pot with no room says what it takes."""
    asked = ("correct", *POT, "--ask", "less vivid", "--tub", "505")
    bare = ran(capsys, *asked, "--json").json
    waxed = ran(capsys, *asked, "--layer", "wax amber=1", "--json").json
    assert waxed["over"] == [{"kind": "wax", "passes": 1, "amber": 1.0}]
    assert waxed["now"]["lab"][2] > bare["now"]["lab"][2] + 1, "an amber wax yellows"
    assert bare["with_more_room"]["delta_e_00"] < bare["delta_e_00"]
    assert "With room for" in ran(capsys, *asked).out


def test_a_sample_that_dried_otherwise(capsys: Captured) -> None:
    """What a sample is off by moves the aim by as much the other way."""
    plain = ran(capsys, "correct", *POT, "--lab", "46,34,24", "--json").json
    seen = ran(capsys, "correct", *POT, "--lab", "46,34,24", "--seen", "44,34,24", "--json").json
    assert not plain["add"]
    assert seen["aim"]["lab"][0] == pytest.approx(plain["now"]["lab"][0] + 2, abs=0.05)


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ((*POT,), "where the pot should go"),
        ((*POT, "--lab", "46,34,24", "--ask", "lighter"), "where the pot should go"),
        ((*POT, "--ask", "nicer"), "nicer"),
        ((*POT, "--ask", "lighter", "--dial", "3"), "dial"),
        ((*POT, "--lab", "46,34,24", "--tub", "100"), "room for only 100 ml"),
        (("white-clean=0", "--lab", "90,0,0"), "above zero"),
        ((*POT, "--lab", "46,34"), "three numbers"),
    ],
)
def test_what_cannot_be_corrected(words: tuple[str, ...], told: str, capsys: Captured) -> None:
    """A pot or a wish that cannot be is refused with what is off."""
    done = ran(capsys, "correct", *words)
    assert done.code == 2
    assert told in done.err


def test_the_fan_is_evenly_spread(capsys: Captured) -> None:
    """Six to eight neighbours lie about 2 from the middle, each poured to 20 ml."""
    found = ran(capsys, "fan", *POT, "--json").json["neighbours"]
    assert 6 <= len(found) <= 8
    for neighbour in found:
        assert 1.2 < neighbour["delta_e_00"] < 2.8
        assert sum(p["ml"] for p in neighbour["paints"]) == pytest.approx(20, abs=0.05)
    assert len({n["word"] for n in found}) == len(found)


def test_reach_names_the_missing_paint(capsys: Captured, tmp_path: Path) -> None:
    """A shelf without its blue does not reach a blue, and is told which paint would."""
    lines = [
        line
        for line in _demo_lines()
        if not line.startswith(("deep-blue-red", "mid-blue-clear", "pale-blue-greyish"))
    ]
    path, whole = tmp_path / "shelf.csv", tmp_path / "whole.csv"
    path.write_text("\n".join(lines), encoding="utf-8")
    whole.write_text("\n".join(_demo_lines()), encoding="utf-8")
    asked = ("reach", "--lab", "61,5,-40", "--shelf", path, "--candidates", whole, "--json")
    done = ran(capsys, *asked)
    assert done.code == 3
    assert {m["id"] for m in done.json["one_more"]} <= {
        "deep-blue-red",
        "mid-blue-clear",
        "pale-blue-greyish",
    }
    assert done.json["one_more"]


def _demo_lines() -> list[str]:
    from importlib.resources import files

    text = files("swatchwright.shelf").joinpath("demo_shelf.csv").read_text(encoding="utf-8")
    return text.splitlines()


def test_wishes_are_kept(capsys: Captured) -> None:
    """What the painter asks besides the colour holds in every recipe."""
    asked = ("recipe", "--lab", "46,34,24", "--must", "clay-red-muted", "--coats", "2", "--json")
    found = ran(capsys, *asked, "--without", "soft-black", "--limit", "strong-red-orange=60%").json
    assert found["recipes"]
    for recipe in found["recipes"]:
        shares = {p["id"]: p["share"] for p in recipe["paints"]}
        assert "clay-red-muted" in shares
        assert "soft-black" not in shares
        assert shares.get("strong-red-orange", 0) <= 0.6005
        assert recipe["coats_to_hide"] <= 2


def test_measures_a_person_has(capsys: Captured) -> None:
    """A recipe is told by a scale's steps with its cost, and in a country's spoons."""
    asked = ("recipe", "--lab", "46,34,24", "--scale", "5", "--spoons", "Australia", "--json")
    for recipe in ran(capsys, *asked, "--keep", "3").json["recipes"]:
        assert all(g % 5 == pytest.approx(0, abs=1e-9) for g in recipe["measured"]["g"])
        assert recipe["measured"]["cost_delta_e_00"] < 1
        for paint, spoons in zip(recipe["paints"], recipe["spoons"], strict=True):
            # An Australian cup is 250 ml, its tablespoon 20 ml, its teaspoon 5 ml.
            told = 250 * spoons["cups"] + 20 * spoons["tablespoons"] + 5 * spoons["teaspoons"]
            assert told == pytest.approx(spoons["ml"])
            assert abs(told - paint["ml"]) <= 0.63
    text = ran(capsys, "recipe", "--lab", "46,34,24", "--syringe", "2", "--spoons", "metric").out
    assert "as you measure" in text
    assert "tbsp" in text


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("--syringe", "1", "--scale", "1"), "--scale"),
        (("--spoons", "Utopia"), "Utopia"),
        (("--syringe", "400"), "Mix at least"),
        (("--scale", "0"), "above 0"),
    ],
)
def test_measures_that_cannot_be(words: tuple[str, ...], told: str, capsys: Captured) -> None:
    """A measure that cannot be used is named, with what would do."""
    done = ran(capsys, "recipe", "--lab", "46,34,24", *words)
    assert done.code == 2
    assert told in done.err


def test_pouring_ends_with_the_strong_paint(capsys: Captured) -> None:
    """What is to be poured adds up to each paint's amount, the last of it held back."""
    recipe = ran(capsys, "recipe", "--lab", "46,34,24", "--json").json["recipes"][0]
    poured: dict[str, float] = {}
    for pour in recipe["pour"]:
        poured[pour["id"]] = poured.get(pour["id"], 0) + pour["ml"]
    for paint in recipe["paints"]:
        assert poured[paint["id"]] == pytest.approx(paint["ml"], abs=0.25)
    assert [pour["held_back"] for pour in recipe["pour"]][-1]
    assert not any(pour["held_back"] for pour in recipe["pour"][:-1])


def test_it_can_be_proven(capsys: Captured) -> None:
    """With --prove the answer says how near the best found is to the best there is."""
    asked = ("recipe", "--lab", "46,34,24", "--paints", "2", "--prove", "--json")
    assert ran(capsys, *asked).json["proven_gap"] <= 0.02


def test_a_painter_order_gives_its_reason(capsys: Captured) -> None:
    """In a painter's order the first of those as close as can be told is given with its reason."""
    found = ran(capsys, "recipe", "--lab", "46,34,24", "--order", "painter", "--json").json
    assert found["why_first"].endswith(".")
    closest = min(r["delta_e_00"] for r in found["recipes"])
    assert found["recipes"][0]["delta_e_00"] <= closest + 0.4


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("--must", "nowhere"), "nowhere"),
        (("--limit", "soft-black"), "--limit"),
        (("--limit", "soft-black=0"), "--limit"),
        (("--only", "white-clean", "--must", "soft-black"), "soft-black"),
        (("--coats", "0"), "coat"),
    ],
)
def test_wishes_that_cannot_be_kept(words: tuple[str, ...], told: str, capsys: Captured) -> None:
    """A wish that cannot be kept is named."""
    done = ran(capsys, "recipe", "--lab", "46,34,24", *words)
    assert done.code == 2
    assert told in done.err


def test_a_colour_no_surface_can_have_is_said_to_be_none(capsys: Captured) -> None:
    """A colour past the optimal ones gets the nearest mix, and is said to be impossible."""
    done = ran(capsys, "recipe", "--lab", "95,80,0", "--json")
    assert done.code == 3
    assert not done.json["possible"]
    assert "No surface" in " ".join(done.json["notes"])
    assert ran(capsys, "recipe", "--lab", "46,34,24", "--json").json["possible"]
