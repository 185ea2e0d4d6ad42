"""The note of a run: gone after a close, told of after a crash, and never mistaken."""

from __future__ import annotations

import faulthandler
import os
import stat
import sys
from typing import TYPE_CHECKING

import pytest

from house.tree import python
from swatchwright.acts.last_run import MOST_FILES, REPORTS, Run, begin_run

if TYPE_CHECKING:
    from pathlib import Path

LEFT_OPEN = """
import os, sys
from pathlib import Path
from swatchwright.acts.last_run import begin_run
run, left = begin_run(Path(sys.argv[1]))
run.set_scene("Swatchwright, page: " + sys.argv[2])
run.add_fault("a fault")
sys.stdout.write(repr(left))
sys.stdout.flush()
os._exit(0)
"""
"""Ends without closing, as a killed process does."""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Give the folder of reports of a home that is not there yet."""
    return tmp_path / "home" / REPORTS


def left_open(folder: Path, page: str = "colour") -> str:
    """Run a process that does not close; give what it was told of the run before it."""
    return python("-c", LEFT_OPEN, folder, page)


def notes(folder: Path) -> list[str]:
    """Name the kinds of notes there are."""
    return sorted(path.name.partition("-")[0] for path in folder.glob("*.txt"))


def test_a_run_that_closes_leaves_nothing(folder: Path) -> None:
    """The first start and one after a close are told nothing."""
    for _ in range(2):
        run, left = begin_run(folder)
        assert left == ""
        run.set_scene("a page")
        assert notes(folder) == ["running"]
        run.close()
        assert notes(folder) == []


def test_a_run_that_did_not_close_is_told_once(folder: Path) -> None:
    """The next start is told where that run was and what went wrong in it; the one after, not."""
    assert left_open(folder) == "''"
    run, left = begin_run(folder)
    assert left.startswith("Swatchwright, page: colour")
    assert left.endswith("a fault")
    assert notes(folder) == ["running", "stopped"]
    run.close()
    run, left = begin_run(folder)
    assert left == ""
    run.close()


def test_a_second_copy_is_no_crash(folder: Path) -> None:
    """A run that still goes on is not told of, and its note stays."""
    first, _ = begin_run(folder)
    assert left_open(folder) == "''"
    assert notes(folder) == ["running", "running"]
    third, left = begin_run(folder)
    assert left, "the second one was left open"
    assert notes(folder) == ["running", "running", "stopped"]
    first.close()
    third.close()
    assert notes(folder) == ["stopped"]


def test_a_number_that_another_process_has_now(folder: Path) -> None:
    """A note with the number of a process that lives, but does not hold it, is one left behind."""
    folder.mkdir(parents=True)
    note = folder / f"running-20260301-090000-{os.getpid()}.txt"
    note.write_text("the power went", encoding="utf-8")
    run, left = begin_run(folder)
    assert left == "the power went"
    run.close()


@pytest.mark.parametrize("text", ["", "\0" * 5000], ids=["nothing", "zeros"])
def test_a_note_that_was_never_written_tells_of_a_crash(folder: Path, text: str) -> None:
    """A computer that lost its power may leave an empty note, or zeros: that run stopped too."""
    folder.mkdir(parents=True)
    (folder / "running-20260301-090000-1.txt").write_text(text, encoding="utf-8")
    run, left = begin_run(folder)
    assert left
    assert "\0" not in left
    run.close()


def test_a_fault_is_kept_after_a_close(folder: Path) -> None:
    """A run in which something went wrong, and that closed, leaves its note, and no alarm."""
    run, _ = begin_run(folder)
    run.set_scene("the scene")
    run.add_fault("a loose screw")
    run.set_scene("the scene, later")
    run.close()
    assert notes(folder) == ["faults"]
    text = next(folder.glob("faults-*.txt")).read_text(encoding="utf-8")
    assert text == "the scene, later\n\na loose screw\n"
    run, left = begin_run(folder)
    assert left == ""
    run.close()


def test_notes_stay_few_and_small(folder: Path) -> None:
    """Only the newest reports are kept, and none grows without end."""
    folder.mkdir(parents=True)
    for day in range(1, 10):
        (folder / f"running-202603{day:02}-090000-7.txt").write_text("x" * 10**6, encoding="utf-8")
    run, _ = begin_run(folder)
    for _ in range(100):
        run.add_fault("y" * 10_000)
    run.set_scene("z" * 10_000)
    files = sorted(folder.glob("stopped-*.txt"))
    assert [file.name[:16] for file in files] == [f"stopped-202603{d:02}" for d in range(5, 10)]
    assert len(files) == MOST_FILES
    assert max(file.stat().st_size for file in folder.glob("*.txt")) < 2**17
    run.close()
    assert len(list(folder.glob("*.txt"))) == MOST_FILES
    assert notes(folder).count("faults") == 1


@pytest.mark.skipif(sys.platform == "win32", reason="folders of Windows have other rights")
def test_a_folder_that_cannot_be_written(
    folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where nothing can be written no note is kept, and nothing fails for it."""

    def refuse(*_: object, **__: object) -> None:
        raise PermissionError(13, "Permission denied")

    # Whoever is root may write everywhere, so both are tried.
    tmp_path.chmod(stat.S_IRUSR | stat.S_IXUSR)
    monkeypatch.setattr(os, "open", refuse)
    try:
        run, left = begin_run(folder)
        run.watch()
        run.set_scene("a page")
        run.add_fault("a fault")
        run.close()
    finally:
        tmp_path.chmod(stat.S_IRWXU)
    assert left == ""


def test_a_file_where_the_folder_should_be(tmp_path: Path) -> None:
    """A file of that name is left as it is."""
    (tmp_path / REPORTS).write_text("mine", encoding="utf-8")
    run, left = begin_run(tmp_path / REPORTS)
    run.close()
    assert left == ""
    assert (tmp_path / REPORTS).read_text(encoding="utf-8") == "mine"


def test_the_fault_handler_writes_into_the_note(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Python's handler is given the note, standing behind what was written of the scene."""
    given: list[int] = []
    monkeypatch.setattr(faulthandler, "enable", given.append)
    monkeypatch.setattr(faulthandler, "disable", lambda: None)
    run, _ = begin_run(folder)
    run.watch()
    run.set_scene("the scene")
    os.write(given[0], b"Fatal Python error\n")
    text = next(folder.glob("running-*.txt")).read_bytes()
    assert text.startswith(b"the scene ")
    assert text.endswith(b" \nFatal Python error\n")
    run.close()


def test_a_run_without_a_note() -> None:
    """Each act of it does nothing."""
    run = Run()
    run.watch()
    run.set_scene("a page")
    run.add_fault("a fault")
    run.close()
