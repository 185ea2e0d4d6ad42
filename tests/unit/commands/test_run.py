"""The command line as a whole: help, version, refusals, and our own faults."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

import swatchwright
from swatchwright.acts import mix as act
from swatchwright.commands import mix as mix_command
from swatchwright.commands import run as front
from swatchwright.commands.run import ExitCode
from unit.commands.runs import ran, refused
from unit.shelf.files import csv_text, row

Captured = pytest.CaptureFixture[str]


def test_the_exit_codes_are_as_documented() -> None:
    """0 done, 2 input, 3 out of reach, 70 our fault, 130 stopped."""
    assert {code.name: int(code) for code in ExitCode} == {
        "DONE": 0,
        "INPUT": 2,
        "OUT_OF_REACH": 3,
        "OUR_FAULT": 70,
        "STOPPED": 130,
    }


def test_the_version_is_told(capsys: Captured) -> None:
    """--version prints the version."""
    done = ran(capsys, "--version")
    assert (done.code, done.out) == (0, f"swatchwright {swatchwright.__version__}\n")


@pytest.mark.parametrize("words", [(), ("colours",), ("recipe",), ("mix",)])
def test_every_command_has_help(capsys: Captured, words: tuple[str, ...]) -> None:
    """--help prints how each command is used, every option with a word of its own."""
    done = ran(capsys, *words, "--help")
    assert done.code == 0
    assert done.out.startswith("usage: swatchwright")
    options = re.findall(r"^  (--[a-z-]+)(?:[ =]\S+)?(.*)\n(.*)", done.out, re.MULTILINE)
    assert all(same.strip() or following.strip() for _, same, following in options)


def test_the_help_names_the_exit_codes(capsys: Captured) -> None:
    """The help tells what each exit code means."""
    told = " ".join(ran(capsys, "--help").out.split())
    for code in ExitCode:
        assert re.search(rf"\b{int(code)} [a-z]", told)


@pytest.mark.parametrize(
    "words",
    [
        (),
        ("paint",),
        ("recipe", "--colour", "red"),
        ("recipe", "--lab", "46,34,24", "--paints", "4"),
        ("recipe", "--lab", "46,34,24", "--paints", "two"),
        ("recipe", "--lab", "46,34,24", "--volume", "a tin"),
        ("mix",),
        ("colours",),
    ],
)
def test_words_it_does_not_know_are_refused(capsys: Captured, words: tuple[str, ...]) -> None:
    """Unknown commands, options and values are refused, with the way to the help."""
    assert "--help" in refused(capsys, *words)


def explode(*_: object) -> None:
    """Fail as a bug would."""
    raise ZeroDivisionError("a bug")


def test_our_own_fault_is_a_report(capsys: Captured, monkeypatch: pytest.MonkeyPatch) -> None:
    """A bug ends with 70 and a report that can be passed on: version, system, traceback."""
    monkeypatch.setattr(mix_command, "look_of_mix", explode)
    done = ran(capsys, "mix", "white-clean=1")
    assert done.code == 70
    assert done.out == ""
    assert "not your doing" in done.err
    assert f"swatchwright {swatchwright.__version__}, Python" in done.err
    assert sys.platform in done.err
    assert "ZeroDivisionError: a bug" in done.err
    assert "Traceback" in done.err


def test_a_bug_in_an_act_is_our_fault_too(
    capsys: Captured, monkeypatch: pytest.MonkeyPatch
) -> None:
    """So does a bug below the act."""
    monkeypatch.setattr(act, "mix", explode)
    assert ran(capsys, "mix", "white-clean=1").code == 70


@pytest.mark.parametrize("unbuffered", ["", "1"])
def test_a_reader_that_leaves_is_no_fault(unbuffered: str) -> None:
    """If what reads the output stops, as head does, the program ends quietly with 0."""
    reading, writing = os.pipe()
    os.close(reading)
    done = subprocess.run(
        [sys.executable, "-m", "swatchwright", "mix", "white-clean=1"],
        stdout=writing,
        stderr=subprocess.PIPE,
        env={**os.environ, "PYTHONUNBUFFERED": unbuffered},
        check=False,
        timeout=120,
    )
    os.close(writing)
    assert (done.returncode, done.stderr) == (0, b"")


@pytest.mark.parametrize("command", ["colours", "recipe", "mix"])
def test_every_command_is_found(command: str) -> None:
    """Every command is a function that the front finds by its name."""
    assert getattr(front._command(command), "__name__", "") == command


def test_a_letter_that_the_terminal_lacks_is_no_fault(tmp_path: Path) -> None:
    """On a terminal of plain ASCII a name with other letters is printed with a mark instead."""
    shelf = tmp_path / "mine.csv"
    shelf.write_text(csv_text([row("one", name="Weiß")]), encoding="utf-8")
    done = subprocess.run(
        [sys.executable, "-m", "swatchwright", "mix", "one=1", "--shelf", shelf],
        capture_output=True,
        env={**os.environ, "PYTHONIOENCODING": "ascii"},
        check=False,
        timeout=120,
    )
    assert (done.returncode, done.stderr) == (0, b"")
    assert b"Wei? (one" in done.stdout


def test_stopped_by_the_keyboard(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Ctrl-C ends a command with a word and the usual code, not with a traceback."""

    def interrupted(*_: object, **__: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("swatchwright.acts.mix.stack", interrupted)
    done = ran(capsys, "mix", "white-clean=1")
    assert done.code == 130
    assert done.err.strip() == "swatchwright: stopped"
