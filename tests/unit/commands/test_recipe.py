"""The command ``swatchwright recipe``."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest

from swatchwright.acts.habits import keep_money
from swatchwright.colour.difference import delta_e_2000
from swatchwright.language.money import use_money
from swatchwright.shelf.csv_file import demo_shelf
from unit.acts.scenes import BLUE, RED, scene
from unit.commands.runs import ran, refused
from unit.shelf.files import csv_text, row

Captured = pytest.CaptureFixture[str]

NUMBER = (int, float)
COLOUR = {"lab": list, "srgb": str, "in_srgb": bool}
WANTED = COLOUR | {"origin": str}
PAINT = {
    "id": str,
    "name": str,
    "share": float,
    "parts": int,
    "ml": float,
    "g": float,
    "how_known": str,
}
ERRORS = {"photo": NUMBER, "paints": NUMBER, "both": NUMBER}
RECIPE = {
    "paints": list,
    "delta_e_00": NUMBER,
    "parts_delta_e_00": NUMBER,
    "parts_cost_delta_e_00": NUMBER,
    "dry": dict,
    "wet": dict,
    "coats_to_hide": (int, type(None)),
    "usual_error_delta_e_00": dict,
}
WHOLE = {
    "wanted": dict,
    "volume_ml": NUMBER,
    "recipes": list,
    "shortfall": (dict, type(None)),
    "subsets_tried": int,
    "notes": list,
}


def shaped(value: dict[str, Any], shape: dict[str, Any]) -> None:
    """Check that an object has these keys, with values of these kinds; others may be added."""
    assert value.keys() >= shape.keys()
    for key, kind in shape.items():
        assert isinstance(value[key], kind), (key, value[key])


def checked(made: dict[str, Any]) -> None:
    """Check a whole document against docs/files.md, shapes and sums."""
    shaped(made, WHOLE)
    shaped(made["wanted"], WANTED)
    assert made["recipes"]
    for recipe in made["recipes"]:
        shaped(recipe, RECIPE)
        shaped(recipe["usual_error_delta_e_00"], ERRORS)
        for state in ("dry", "wet"):
            shaped(recipe[state], COLOUR)
            assert len(recipe[state]["lab"]) == 3
        for paint in recipe["paints"]:
            shaped(paint, PAINT)
        shares = [p["share"] for p in recipe["paints"]]
        assert sum(round(1000 * s) for s in shares) == 1000
        assert shares == sorted(shares, reverse=True)
        assert sum(p["ml"] for p in recipe["paints"]) == pytest.approx(made["volume_ml"])
        apart = float(delta_e_2000(made["wanted"]["lab"], recipe["dry"]["lab"]))
        # Both colours are told to 0.01.
        assert recipe["delta_e_00"] == pytest.approx(apart, abs=0.02)
        assert recipe["parts_delta_e_00"] >= recipe["parts_cost_delta_e_00"] >= 0


@pytest.mark.parametrize(
    "words",
    [
        ("--lab", "46,34,24"),
        ("--srgb", "#a4503c"),
        ("--lab", "90,1,6", "--volume", "1250", "--keep", "3"),
        ("--lab=46.4,23.9,16.8", "--paints", "2"),
    ],
)
def test_json_is_as_documented(capsys: Captured, words: tuple[str, ...]) -> None:
    """JSON has all that docs/files.md says; shares and amounts add up; exit code 0."""
    done = ran(capsys, "recipe", *words, "--json")
    assert (done.code, done.err) == (0, "")
    checked(done.json)
    assert done.json["shortfall"] is None


def test_what_was_asked_for_is_told_back(capsys: Captured) -> None:
    """The wanted colour and the volume stand in the answer, with where they came from."""
    made = ran(capsys, "recipe", "--lab", "46,34,24", "--volume", "250", "--json").json
    assert made["wanted"]["lab"] == [46, 34, 24]
    assert made["wanted"]["origin"] == "typed in"
    assert made["volume_ml"] == 250
    assert made["subsets_tried"] == 2324
    srgb = ran(capsys, "recipe", "--srgb", "A4503C", "--json").json
    assert srgb["wanted"]["srgb"] == "#a4503c"


def test_grams_are_by_density(capsys: Captured) -> None:
    """Grams are millilitres by the density of each paint, to 0.1 g."""
    shelf = demo_shelf()
    for recipe in ran(capsys, "recipe", "--lab", "46,34,24", "--json").json["recipes"]:
        for p in recipe["paints"]:
            density = shelf.paint(p["id"]).density
            assert density is not None
            assert p["g"] == pytest.approx(p["ml"] * density, abs=0.051)


def test_pairs_only_and_fewer(capsys: Captured) -> None:
    """--paints 2 gives pairs, --keep as many as asked for."""
    made = ran(capsys, "recipe", "--lab", "46,34,24", "--paints", 2, "--keep", 2, "--json").json
    assert len(made["recipes"]) <= 2
    assert max(len(r["paints"]) for r in made["recipes"]) <= 2
    assert made["subsets_tried"] == 300


def test_out_of_reach_ends_with_3(capsys: Captured) -> None:
    """A colour beyond the shelf ends with 3, the nearest shown and what is missing said."""
    done = ran(capsys, "recipe", "--lab", "50,95,60", "--json")
    assert (done.code, done.err) == (3, "")
    checked(done.json)
    short = done.json["shortfall"]
    assert short.keys() == {"delta_e_00", "towards"}
    assert short["delta_e_00"] > 1.8
    assert short["towards"][0] == "more vivid"
    text = ran(capsys, "recipe", "--lab", "50,95,60")
    assert text.code == 3
    assert "more vivid" in text.out


def test_the_text_tells_what_json_tells(capsys: Captured) -> None:
    """Without --json each recipe's paints, parts, shares and amounts are there in words."""
    words = ("recipe", "--lab", "46,34,24", "--keep", "3")
    text, made = ran(capsys, *words), ran(capsys, *words, "--json").json
    assert (text.code, text.err) == (0, "")
    for recipe in made["recipes"]:
        assert recipe["dry"]["srgb"] in text.out
        assert recipe["wet"]["srgb"] in text.out
        for p in recipe["paints"]:
            (line,) = {
                line for line in text.out.splitlines()
                if p["name"] in line and f"{p['ml']:.1f} ml" in line and f"{p['g']:.1f} g" in line
            }  # fmt: skip
            assert f"{p['share']:.1%}" in line
            assert f"{p['parts']} part" in line
    assert "L* 46.0, a* 34.0, b* 24.0" in text.out


def test_a_shelf_without_density_has_no_grams(capsys: Captured, tmp_path: Path) -> None:
    """Paints of unknown density have null for grams, and the text leaves them out."""
    path = tmp_path / "mine.csv"
    path.write_text(csv_text([row("pale", 0.5), row("dark", 50.0)]), encoding="utf-8")
    words = ("recipe", "--lab", "60,0,0", "--shelf", path)
    made = ran(capsys, *words, "--json").json
    assert {p["g"] for r in made["recipes"] for p in r["paints"]} == {None}
    assert " g " not in ran(capsys, *words).out
    # Guessed paints are doubted, and that is said.
    assert made["recipes"][0]["usual_error_delta_e_00"]["paints"] > 5
    assert made["notes"]


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ((), "No wanted colour"),
        (("--lab", "46,34,24", "--srgb", "#a4503c"), "More than one colour"),
        (("photo.jpg", "--lab", "46,34,24"), "More than one colour"),
        (("--lab", "46,34"), "“46,34”"),
        (("--lab", "clay,red,muted"), "“clay,red,muted”"),
        (("--lab", "146,34,24"), "L* 146"),
        (("--lab", "nan,0,0"), "not a number"),
        (("--srgb", "red"), "“red”"),
        (("--srgb", "60,60,60"), "“60,60,60”"),
        (("--lab", "46,34,24", "--volume", "0"), "0 ml"),
        (("--lab", "46,34,24", "--volume", "nan"), "nan ml"),
        (("--lab", "46,34,24", "--keep", "0"), "0 recipes"),
        (("--lab", "46,34,24", "--grey", "1,2,3,4"), "--grey goes with a photo"),
        (("--lab", "46,34,24", "--grey-y", "0.18"), "--grey-y goes with a photo"),
        (("--lab", "46,34,24", "--grey-l", "50"), "--grey-l goes with a photo"),
        (("--lab", "46,34,24", "--area", "1,2,3,4"), "--area goes with a photo"),
        (("--lab", "46,34,24", "--count", "2"), "--count goes with a photo"),
        (("--srgb", "#a4503c", "--pick", "1"), "--pick goes with a photo"),
        (("no-such-photo.jpg",), "no-such-photo.jpg"),
        (("--lab", "46,34,24", "--shelf", "no-such-shelf.csv"), "no-such-shelf.csv"),
    ],
)
def test_what_is_off_is_refused(capsys: Captured, words: tuple[str, ...], says: str) -> None:
    """Wishes that are missing, doubled or impossible are refused, and the message names them."""
    assert says in refused(capsys, "recipe", *words)


def test_a_shelf_of_one_paint_is_refused(capsys: Captured, tmp_path: Path) -> None:
    """Nothing is mixed from one paint."""
    path = tmp_path / "mine.csv"
    path.write_text(csv_text([row("only")]), encoding="utf-8")
    assert "1 paint:" in refused(capsys, "recipe", "--lab", "60,0,0", "--shelf", path)


def test_a_shelf_that_is_off_is_refused_by_its_line(capsys: Captured, tmp_path: Path) -> None:
    """A bad cell of the shelf is named by line and column."""
    path = tmp_path / "mine.csv"
    path.write_text(csv_text([row("a"), row("b", k_550="x")]), encoding="utf-8")
    said = refused(capsys, "recipe", "--lab", "60,0,0", "--shelf", path)
    assert "Line 3" in said
    assert "k_550" in said


# --- from a photo --------------------------------------------------------------------------------

PHOTO = ("--grey", "10,10,60,60", "--area", "90,20,200,160")


@pytest.mark.parametrize(("pick", "painted"), [(1, RED), (2, BLUE)])
def test_a_colour_is_picked_from_a_photo(
    capsys: Captured, tmp_path: Path, pick: int, painted: Any
) -> None:
    """The recipes are for the picked colour of the cloth, in the light of the card."""
    path = scene(tmp_path / "cloth.png")
    done = ran(capsys, "recipe", path, *PHOTO, "--pick", pick, "--json")
    assert (done.code, done.err) == (0, "")
    checked(done.json)
    assert float(delta_e_2000(done.json["wanted"]["lab"], painted.triple)) < 1
    assert done.json["wanted"]["origin"] != "typed in"
    assert done.json["recipes"][0]["usual_error_delta_e_00"]["photo"] > 0


def test_the_largest_is_picked_unless_said(capsys: Captured, tmp_path: Path) -> None:
    """Without --pick it is the largest colour."""
    path = scene(tmp_path / "cloth.png")
    one = ran(capsys, "recipe", path, *PHOTO, "--json").json
    assert one == ran(capsys, "recipe", path, *PHOTO, "--pick", 1, "--json").json


@pytest.mark.parametrize("pick", [0, -1, 13])
def test_a_pick_beyond_the_colours_is_refused(capsys: Captured, tmp_path: Path, pick: int) -> None:
    """A number that no colour has is refused with how many there are."""
    path = scene(tmp_path / "cloth.png")
    said = refused(capsys, "recipe", path, *PHOTO, "--pick", pick)
    assert f"--pick {pick}" in said
    assert "Pick from 1 to" in said


def test_prices_are_in_the_money_named_in_the_window(
    capsys: Captured, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What a mix costs, and what a wish for its price breaks on, is told in her money."""
    monkeypatch.setenv("SWATCHWRIGHT_HOME", str(tmp_path))
    asked = ("recipe", "--lab", "45,32,24", "--keep", "1", "--paints", "2")
    bare = ran(capsys, *asked)
    keep_money("kr")
    try:
        named = ran(capsys, *asked)
        (line,) = set(named.out.splitlines()) - set(bare.out.splitlines())
        assert re.search(r"; costs \d+\.\d\d kr$", line)
        assert line.removesuffix(" kr") in bare.out.splitlines()
        told = refused(capsys, *asked, "--price", "0.5")
        assert "A litre at 0.5 kr at the most" in told.replace("\xa0", " ")
        assert isinstance(ran(capsys, *asked, "--json").json["recipes"][0]["price"], NUMBER)
    finally:
        use_money("")
