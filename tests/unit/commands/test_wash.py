"""The commands ``wash`` and ``finish``."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

import pytest

from swatchwright.acts.compare_words import LIGHT_WORDS
from unit.commands.runs import ran, refused

if TYPE_CHECKING:
    from pathlib import Path

    Captured = pytest.CaptureFixture[str]

MIX = ("strong-red-orange=361", "pale-blue-greyish=96", "strong-yellow-orange=43")


def chroma(colour: dict[str, Any]) -> float:
    """Give the chroma of a colour in JSON."""
    _, a, b = colour["lab"]
    return float((a**2 + b**2) ** 0.5)


def test_a_wash_pass_by_pass(capsys: Captured) -> None:
    """A pale greyish wash over a vivid mix lowers the chroma pass by pass; text tells it too."""
    words = ("wash", *MIX, "--wash", "stone-grey-warm", "--water", "3", "--left", "20")
    found = ran(capsys, *words, "--passes", "4", "--json").json
    told = [chroma(p["dry"]) for p in found["passes"]]
    assert len(told) == 5
    assert told == sorted(told, reverse=True)
    assert found["layer"]["kind"] == "wash"
    out = ran(capsys, *words).out
    assert "A wash of Stone grey, warm, 1 to 3 of water" in out
    assert "tends to" in out


def test_a_glaze_is_not_wiped(capsys: Captured) -> None:
    """A glaze leaves five times what a wash wiped to a fifth does."""
    words = ("wash", *MIX, "--wash", "soft-black", "--passes", "1", "--json")
    wash, glaze = (ran(capsys, *words, *more).json for more in ((), ("--glaze",)))
    assert glaze["passes"][1]["film_um"] == pytest.approx(5 * wash["passes"][1]["film_um"], abs=0.1)


def test_what_helps_a_painted_piece(capsys: Captured) -> None:
    """Painted, it takes a wash or a new coat, with its amount; in the pot only stirring in."""
    words = ("wash", *MIX, "--ask", "less vivid", "--stands")
    found = ran(capsys, *words, "painted", "--area", "1.5", "--new-coats", "3", "--json").json
    assert found["stands"] == "painted"
    assert {way["kind"] for way in found["ways"]} == {"wash", "recoat"}
    coat = found["ways"][-1]["new_coat"]
    assert (coat["area_m2"], coat["coats"]) == (1.5, 3)
    assert sum(paint["ml"] for paint in coat["paints"]) == pytest.approx(coat["mix_ml"])
    assert "A full new coat: mix afresh" in ran(capsys, *words, "painted").out
    pot = ran(capsys, *words, "pot", "--json").json
    assert [way["kind"] for way in pot["ways"]] == ["stir"]
    assert pot["ways"][0]["new_coat"] is None


@pytest.mark.parametrize(
    ("more", "told"),
    [
        (("--ask", "less vivid", "--stands", "tub"), "Use one of: painted, pot."),
        (("--ask", "less vivid", "--stands", "pot", "--area", "2"), "--stands painted"),
        (("--ask", "less vivid", "--new-coats", "2"), "--stands painted"),
        (("--wash", "soft-black", "--stands", "pot"), "Leave it out"),
        (("--ask", "less vivid", "--stands", "painted", "--area", "0"), "above 0"),
    ],
)
def test_it_cannot_stand_so(more: tuple[str, ...], told: str, capsys: Captured) -> None:
    """What does not go together is refused, and how to mend it is said."""
    assert told in refused(capsys, "wash", *MIX, *more)


@pytest.mark.parametrize(
    "where", [("--ask", "less vivid"), ("--as", "50,12,9"), ("--lab", "46,24,16")]
)
def test_which_wash_takes_it_there(where: tuple[str, str], capsys: Captured) -> None:
    """However it is asked, washes and the pot come side by side with what to weigh."""
    done = ran(capsys, "wash", *MIX, *where, "--json")
    assert done.code == 0
    kinds = [way["kind"] for way in done.json["ways"]]
    assert {"wash", "stir"} == set(kinds)
    for way in done.json["ways"]:
        assert way["delta_e_00"] < done.json["before_delta_e_00"]
        assert {"grain", "hue", "hiding", "undoing"} <= {risk["of"] for risk in way["risks"]}
    text = ran(capsys, "wash", *MIX, *where).out
    assert "Stir into the pot" in text
    assert "wipe back to 20 %" in text


def test_the_wax_above_is_reckoned_with(capsys: Captured) -> None:
    """With a wax given, the wash told is right with the wax on, as `finish` shows it."""
    asked = ("wash", *MIX, "--ask", "less vivid", "--layer", "wax")
    found = ran(capsys, *asked, "--json").json
    assert [layer["kind"] for layer in found["over"]] == ["wax"]
    way = next(way for way in found["ways"] if way["kind"] == "wash")
    layer = way["layer"]
    told = " ".join(f"{id_}={parts}" for id_, parts in layer["paints"])
    water, left, passes = layer["water"], 100 * layer["left"], layer["passes"]
    wash = f"wash {told} water={water} left={left} passes={passes}"
    laid = ran(capsys, "finish", *MIX, "--layer", wash, "--layer", "wax", "--json").json
    assert laid["steps"][-1]["dry"]["lab"] == pytest.approx(way["dry"]["lab"], abs=0.02)
    assert "seen and judged with this on top: a wax" in ran(capsys, *asked).out


def test_what_no_wash_reaches_ends_with_three(capsys: Captured) -> None:
    """A dark coat is not washed to a vivid yellow; the nearest is still shown."""
    done = ran(capsys, "wash", "soft-black=1", "--lab", "80,0,85", "--json")
    assert done.code == 3
    assert done.json["ways"]


def test_a_finish_by_part(capsys: Captured) -> None:
    """Where a layer goes on one part alone, each is shown; a part that is named by itself."""
    wash, wax = "wash white-clean on=body", "wax"
    words = ("finish", "ink-blue-dark=1", "--layer", wash, "--layer", wax)
    found = ran(capsys, *words, "--json").json
    assert [part["parts"] for part in found["by_part"]] == [["body"], [""]]
    assert found["steps"] == found["by_part"][1]["steps"]
    body = ran(capsys, *words, "--part", "body", "--json").json
    assert body["steps"] == found["by_part"][0]["steps"]
    assert "by_part" not in body
    assert body["steps"][1]["layer"] == {
        "kind": "wash",
        "paints": [["white-clean", 1.0]],
        "passes": 1,
        "zone": "body",
    }
    text = ran(capsys, *words).out
    assert text.startswith("Body:\n")
    assert "\nThe rest:\n" in text


def test_a_wish_of_one_part(capsys: Captured) -> None:
    """The part that is asked of has to be said where layers differ, and its wash goes on it."""
    words = ("wash", *MIX, "--ask", "less vivid", "--layer", "wax amber=2 on=body")
    assert "--part body" in refused(capsys, *words)
    body, rest = (ran(capsys, *words, "--part", p, "--json").json for p in ("body", "all"))
    assert (body["over"][0]["zone"], rest["over"]) == ("body", [])
    assert body["now"] != rest["now"]
    layers = [way["layer"] for way in body["ways"] if way["kind"] == "wash"]
    assert layers
    assert {layer["zone"] for layer in layers} == {"body"}


def test_a_finish_layer_by_layer(capsys: Captured, tmp_path: Path) -> None:
    """Layers from options and the same from a file come to the same, step by step."""
    layers = ("--layer", "wash white-clean water=3 left=20 passes=2", "--layer", "wax amber=1")
    one = ran(capsys, "finish", "ink-blue-dark=1", *layers, "--json").json
    file = tmp_path / "layers.json"
    file.write_text(json.dumps({"layers": [s["layer"] for s in one["steps"] if s["layer"]]}))
    two = ran(capsys, "finish", "ink-blue-dark=1", "--layers", file, "--json").json
    assert one == two
    assert one["steps"][0]["words"] == "the bare coat"
    assert set(one["steps"][0]["lights"]) == set(LIGHT_WORDS.values())
    text = ran(capsys, "finish", "ink-blue-dark=1", *layers, "--primer", "90,0,5").out
    assert "flats and grain are" in text
    assert "give or take" in text


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("wash", *MIX), "No wash was given"),
        (("wash", *MIX, "--wash", "soft-black", "--ask", "darker"), "Both a wash and where to go"),
        (("wash", *MIX, "--wash", "nowhere"), "nowhere"),
        (("wash", *MIX, "--wash", "soft-black", "--left", "300"), "300 %"),
        (("wash", *MIX, "--wash", "soft-black", "--glaze", "--left", "20"), "A glaze is not wiped"),
        (("wash", *MIX, "--wash", "soft-black", "--water", "-1"), "“water” at \N{MINUS SIGN}1"),
        (("wash", *MIX, "--ask", "nicer"), "nicer"),
        (("wash", *MIX, "--wash", "soft-black", "--layer", "wax"), "Layers over a wash"),
        (("wash", *MIX, "--as", "1,2"), "--as"),
        (("wash", *MIX, "--ask", "darker", "--primer", "x"), "--primer"),
        (("finish", *MIX), "No layer was given"),
        (("finish", *MIX, "--layer", "wax", "--layers", "x.json"), "both by --layer"),
        (("finish", *MIX, "--layers", "none.json"), "cannot be read"),
    ],
)
def test_what_cannot_be_is_refused(words: tuple[str, ...], says: str, capsys: Captured) -> None:
    """What is off is named, with what to do."""
    assert says in refused(capsys, *words)
