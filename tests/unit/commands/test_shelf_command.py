"""The shelf of the store by command."""

from __future__ import annotations

from pathlib import Path

import pytest

from unit.commands.test_job import Bench
from unit.shelf.files import csv_text, row


@pytest.fixture
def bench(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> Bench:
    """Give an empty store."""
    return Bench(capsys, tmp_path / "store.sqlite")


@pytest.fixture
def mine(tmp_path: Path) -> Path:
    """Give a shelf file of two paints."""
    path = tmp_path / "mine.csv"
    path.write_text(csv_text([row("white", 0.3), row("red", 9.0)]), encoding="utf-8")
    return path


def test_an_empty_shelf_offers_the_demonstration(bench: Bench) -> None:
    """On a first look the shelf is empty, and both ways to fill it are told."""
    told = bench("shelf", "list").out
    assert "shelf import" in told
    assert "shelf demo" in told
    assert bench("shelf", "list", "--json").json == {"kind": "empty", "paints": []}


def test_the_demonstration_says_that_it_is_one(bench: Bench) -> None:
    """The invented paints are called invented when they come and whenever they are listed."""
    assert "invented" in bench("shelf", "demo").out
    told = bench("shelf", "list").out
    assert len([line for line in told.splitlines() if "invented)" in line]) == 24
    assert "no such paint is sold" in told
    assert bench("shelf", "list", "--json").json["kind"] == "demonstration"
    bench.refused("shelf", "demo")


def test_a_shelf_file_comes_in_and_goes_out(bench: Bench, mine: Path, tmp_path: Path) -> None:
    """Paints come from a shelf file, in place of the demonstration, and go to another."""
    bench("shelf", "demo")
    assert "put away" in bench("shelf", "import", mine).out
    assert [p["id"] for p in bench("shelf", "list", "--json").json["paints"]] == ["white", "red"]
    out = tmp_path / "out.csv"
    assert bench("shelf", "export", out, "--json").json["files"][0] == str(out)
    assert "Written" in bench("shelf", "export", out).out
    assert "Nothing changed" in bench("shelf", "import", out).out
    bench.refused("shelf", "import", tmp_path / "none.csv")


def test_stock_by_command(bench: Bench, mine: Path) -> None:
    """Stock is set, added to and drawn; what is not known is shown as such."""
    bench("shelf", "import", mine)
    bench("shelf", "stock", "set", "red", "100")
    bench("shelf", "stock", "add", "red", "500")
    bench("shelf", "stock", "draw", "red", "50.5")
    paints = bench("shelf", "list", "--json").json["paints"]
    assert [p["ml_left"] for p in paints] == [None, 549.5]
    lines = bench("shelf", "list").out.splitlines()
    assert "?" in lines[0]
    assert "550 ml" in lines[1]
    bench("job", "undo")
    assert bench("shelf", "list", "--json").json["paints"][1]["ml_left"] == 600
    for words in (("draw", "red", "9999"), ("set", "red", "-1"), ("add", "none", "1")):
        bench.refused("shelf", "stock", *words)
    bench.refused("shelf", "stock", "steal", "red", "1")


def test_paints_are_taken_off_by_command(bench: Bench, mine: Path) -> None:
    """A paint is taken off, and a paint that is not there is refused."""
    bench("shelf", "import", mine)
    assert bench("shelf", "remove", "red", "--json").json["paints"] == ["red"]
    bench.refused("shelf", "remove", "red")
    assert bench("job", "undo", "--json").json["paints"] == ["red"]
