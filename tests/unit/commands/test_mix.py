"""The command ``swatchwright mix``."""

from __future__ import annotations

from pathlib import Path

import pytest

from swatchwright.acts.mix import look_of_mix
from swatchwright.commands.words import colour_json
from swatchwright.shelf.csv_file import demo_shelf
from unit.commands.runs import ran, refused
from unit.shelf.files import csv_text, row

Captured = pytest.CaptureFixture[str]


def test_json_is_as_documented(capsys: Captured) -> None:
    """JSON has the paints with their shares, dry, wet and notes, as docs/files.md says."""
    done = ran(capsys, "mix", "white-clean=0.7", "clay-red-muted=0.3", "--json")
    assert (done.code, done.err) == (0, "")
    made = done.json
    assert made.keys() >= {"paints", "dry", "wet", "notes"}
    assert made["paints"] == [
        {"id": "white-clean", "name": "White, clean", "share": 0.7, "how_known": "invented"},
        {"id": "clay-red-muted", "name": "Clay red, muted", "share": 0.3, "how_known": "invented"},
    ]
    look = look_of_mix(demo_shelf(), [("white-clean", 0.7), ("clay-red-muted", 0.3)])
    assert made["dry"] == colour_json(look.dry)
    assert made["wet"] == colour_json(look.wet)
    assert made["notes"] == list(look.notes)


@pytest.mark.parametrize("words", [("=7", "=3"), ("=70%", "=30%"), ("=0.7", "=0.3"), ("=14", "=6")])
def test_parts_and_percentages_are_the_same(capsys: Captured, words: tuple[str, str]) -> None:
    """Parts, percentages and fractions of one proportion are one mix."""
    a, b = words
    done = ran(capsys, "mix", f"white-clean{a}", f"soft-black{b}", "--json")
    assert [p["share"] for p in done.json["paints"]] == [0.7, 0.3]


def test_the_text_tells_what_json_tells(capsys: Captured) -> None:
    """Without --json the paints, shares and both colours are there in words."""
    words = ("mix", "white-clean=0.75", "soft-black=0.25")
    text, made = ran(capsys, *words), ran(capsys, *words, "--json").json
    assert text.code == 0
    for said in ("75.0%", "25.0%", "White, clean", "soft-black", "invented"):
        assert said in text.out
    for state in ("dry", "wet"):
        assert f"{state}  {made[state]['srgb']}" in text.out
    assert all(f"Note: {note}" in text.out for note in made["notes"])


def test_a_shelf_of_ones_own(capsys: Captured, tmp_path: Path) -> None:
    """Paints come from the file named by --shelf."""
    path = tmp_path / "mine.csv"
    path.write_text(csv_text([row("one"), row("two", 50.0)]), encoding="utf-8")
    done = ran(capsys, "mix", "one=1", "two=1", "--shelf", path, "--json")
    assert [p["id"] for p in done.json["paints"]] == ["one", "two"]
    assert {p["how_known"] for p in done.json["paints"]} == {"guessed"}


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("white-clean",), "“white-clean” is not a paint and its share"),
        (("white-clean=",), "“white-clean=” is not a paint and its share"),
        (("white-clean=half",), "white-clean=half"),
        (("=1",), "no paint “”"),
        (("white-clen=1",), "white-clean"),
        (("white-clean=0",), "share of white-clean is 0"),
        (("white-clean=-1",), "share of white-clean is \N{MINUS SIGN}1"),
        (("white-clean=nan",), "share of white-clean is nan"),
        (("white-clean=1", "white-clean=1"), "named twice"),
        (("white-clean=1", "--shelf", "no-such-file.csv"), "no-such-file.csv"),
    ],
)
def test_what_is_off_is_refused(capsys: Captured, words: tuple[str, ...], says: str) -> None:
    """Paints and shares that cannot be are refused, and the message names them."""
    assert says in refused(capsys, "mix", *words)
