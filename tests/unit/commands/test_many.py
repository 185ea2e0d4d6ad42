"""Many colours at once by command: the same answers however spread, and taken up again."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from swatchwright.commands.run import ExitCode, run

LIST = "name,srgb\nclay,#a4503c\nsea,#5a7d6a\nink,#22344f\nsand,#d8c3a0\n"
ASK = ["--paints", "2", "--keep", "2"]


@pytest.fixture
def colours(tmp_path: Path) -> Path:
    """Give a list of four colours."""
    path = tmp_path / "colours.csv"
    path.write_text(LIST, encoding="utf-8")
    return path


def lines(path: Path) -> list[dict[str, object]]:
    """Read the answers."""
    return [json.loads(line) for line in path.read_text(encoding="utf-8").splitlines()]


def ask(colours: Path, out: Path, *more: str) -> int:
    """Run the command."""
    return run(["recipe", "--list", str(colours), "--out", str(out), *ASK, *more])


def test_answers_do_not_depend_on_the_workers(colours: Path, tmp_path: Path) -> None:
    """One worker and two write the same bytes, in the order of the list."""
    one, two = tmp_path / "one.jsonl", tmp_path / "two.jsonl"
    ask(colours, one)
    ask(colours, two, "--workers", "2", "--backend", "threading")
    assert one.read_bytes() == two.read_bytes()
    assert [row["name"] for row in lines(one)] == ["clay", "sea", "ink", "sand"]


def test_processes_give_the_same(colours: Path, tmp_path: Path) -> None:
    """Spread over processes the answers are the same too."""
    one, two = tmp_path / "one.jsonl", tmp_path / "two.jsonl"
    ask(colours, one)
    ask(colours, two, "--workers", "2")
    assert one.read_bytes() == two.read_bytes()


def test_each_line_is_what_one_colour_gets(
    colours: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A line of the list holds the recipes that asking for its colour alone gives."""
    out = tmp_path / "out.jsonl"
    ask(colours, out)
    capsys.readouterr()
    run(["recipe", "--srgb", "#5a7d6a", *ASK, "--json"])
    alone = json.loads(capsys.readouterr().out)
    assert lines(out)[1]["recipes"] == alone["recipes"]


def test_taken_up_where_it_stopped(
    colours: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A file cut off in the middle of a line is finished, without doing again what is there."""
    whole, cut = tmp_path / "whole.jsonl", tmp_path / "cut.jsonl"
    ask(colours, whole)
    data = whole.read_bytes()
    cut.write_bytes(data[: data.index(b"\n") + 40])
    capsys.readouterr()
    ask(colours, cut)
    assert cut.read_bytes() == data
    assert "1 of 4 were done before" in capsys.readouterr().err


def test_answers_to_another_question_are_left_alone(
    colours: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A file of answers made with other options is not mixed with new ones."""
    out = tmp_path / "out.jsonl"
    ask(colours, out)
    before = out.read_bytes()
    assert run(["recipe", "--list", str(colours), "--out", str(out)]) == ExitCode.INPUT
    assert "another shelf or other options" in capsys.readouterr().err
    assert out.read_bytes() == before


def test_out_of_reach_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The exit code tells that a colour of the list is out of reach; its nearest are written."""
    path, out = tmp_path / "list.csv", tmp_path / "out.jsonl"
    path.write_text("name,l,a,b\nfuchsia,60,98,-60\n", encoding="utf-8")
    assert ask(path, out) == ExitCode.OUT_OF_REACH
    assert lines(out)[0]["shortfall"]
    assert "out of reach" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("", "columns"),
        ("name,colour\nclay,red\n", "columns"),
        ("name,srgb\n", "0 colours"),
        ("name,srgb\nclay,red\n", "Line 2"),
        ("name,srgb\nclay,#a4503c\nclay,#a4503d\n", "more than once"),
        ("name,srgb\n,#a4503c\n", "no name"),
        ("name,l,a,b\nclay,46,34\n", "Line 2"),
        ("name,l,a,b\nclay,460,34,24\n", "Line 2"),
    ],
)
def test_bad_lists(
    text: str, told: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A list that cannot be used is refused with its line, and no file is made."""
    path, out = tmp_path / "list.csv", tmp_path / "out.jsonl"
    path.write_text(text, encoding="utf-8")
    assert ask(path, out) == ExitCode.INPUT
    assert told in capsys.readouterr().err
    assert not out.exists()


def test_unknown_backend(colours: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A backend that joblib does not know is named in the answer."""
    assert ask(colours, tmp_path / "o.jsonl", "--backend", "pigeons") == ExitCode.INPUT
    assert "pigeons" in capsys.readouterr().err


def test_list_and_colour_together(colours: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A list and a single colour are not both answered."""
    assert run(["recipe", "--list", str(colours), "--lab", "46,34,24"]) == ExitCode.INPUT
    assert "--list" in capsys.readouterr().err
