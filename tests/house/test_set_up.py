"""Setting up says what is lacking, in words, wherever it cannot go on."""

from __future__ import annotations

import shutil
import sys
from typing import TYPE_CHECKING

import pytest

from house.tree import ROOT, run

if TYPE_CHECKING:
    from pathlib import Path
    from subprocess import CompletedProcess

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="the scripts ask Linux its ways")

PLAIN = ("bash", "cat", "cut", "dirname", "find", "grep", "id", "sed", "tr", "uname")
QUIET = {"DISPLAY": "", "WAYLAND_DISPLAY": "", "QT_QPA_PLATFORM": "", "PYTHON": ""}


@pytest.fixture
def bare(tmp_path: Path) -> Path:
    """Give a copy of the set-up beside a system of few programs: no apt, no sudo, no libraries."""
    shutil.copytree(ROOT / "tools", tmp_path / "tools", ignore=shutil.ignore_patterns("*.py"))
    programs = tmp_path / "bin"
    programs.mkdir()
    for name in PLAIN:
        (programs / name).symlink_to(str(shutil.which(name)))
    program(tmp_path, "ldconfig", "exit 0")
    return tmp_path


def program(bare: Path, name: str, does: str) -> None:
    """Put a small program of this name into the bare system."""
    path = bare / "bin" / name
    path.unlink(missing_ok=True)
    path.write_text(f"#!{bare / 'bin' / 'bash'}\n{does}\n", encoding="utf-8")
    path.chmod(0o755)


def set_up(bare: Path, *arguments: str) -> CompletedProcess[str]:
    """Run the set-up in the bare system, where only its own programs are found."""
    paths = {"PATH": str(bare / "bin"), "HOME": str(bare)}
    return run(bare / "bin" / "bash", "tools/setup.sh", *arguments, cwd=bare, **{**QUIET, **paths})


def test_missing_libraries_are_named(bare: Path) -> None:
    """Without apt, each missing library is named with the package that Debian has it in."""
    program(bare, "python3", f'exec {sys.executable} "$@"')
    done = set_up(bare)
    assert done.returncode == 1
    assert "libxcb-cursor.so.0 libxcb-cursor0" in done.stderr
    assert "libEGL.so.1 libegl1" in done.stderr
    assert "Python-3.11" not in done.stderr
    assert "make setup" in done.stderr


def test_programs_are_asked_for_by_the_checks_alone(bare: Path) -> None:
    """What only the end-to-end tests work with is named for the checks, and not to run."""
    program(bare, "python3", f'exec {sys.executable} "$@"')
    for asked, named in (("checks", True), ("run", False)):
        done = set_up(bare, asked)
        assert done.returncode == 1
        for line in ("Xvfb xvfb", "xdotool xdotool", "dbus-daemon dbus-daemon|dbus"):
            assert (line in done.stderr) == named
    program(bare, "Xvfb", "exit 0")
    assert "Xvfb" not in set_up(bare, "checks").stderr


def test_a_python_that_is_too_old_is_named(bare: Path) -> None:
    """A Python that fails the test of its version counts as none."""
    program(bare, "python3", "exit 1")
    assert "Python-3.11-to-3.14" in set_up(bare).stderr


def test_a_python_that_has_no_venv_is_named(bare: Path) -> None:
    """Debian ships Python without the means to make an environment, which are asked for."""
    hidden = "import sys; sys.modules['ensurepip'] = None; exec(sys.argv.pop(1))"
    program(bare, "python3", f'exec {sys.executable} -c "{hidden}" "$2"')
    version = f"{sys.version_info.major}.{sys.version_info.minor}"
    assert f"python{version}-venv" in set_up(bare).stderr


def test_rights_are_asked_for_in_words(bare: Path) -> None:
    """A user who is not root and has no sudo is told what to ask for."""
    program(bare, "apt-get", "exit 1")
    program(bare, "id", "echo 1000")
    done = set_up(bare)
    assert done.returncode == 1
    assert "neither root nor sudo" in done.stderr
    assert "libGL.so.1 libgl1" in done.stderr


def test_a_refusal_of_apt_tells_what_to_type(bare: Path) -> None:
    """When apt fails, the whole command to type is shown, with names that this release knows."""
    program(bare, "python3", f'exec {sys.executable} "$@"')
    program(bare, "apt-get", "exit 100")
    program(bare, "env", 'shift; exec "$@"')
    program(bare, "id", "echo 0")
    program(bare, "apt-cache", '[ "$2" = libglib2.0-0t64 ] || echo "  Candidate: 1.0"')
    done = set_up(bare)
    assert done.returncode == 1
    assert "sudo apt-get install -y libgl1 libegl1" in done.stderr
    assert "libglib2.0-0 " in done.stderr


def test_an_unknown_word_is_refused(bare: Path) -> None:
    """The set-up knows two purposes and says which."""
    assert "'run' and 'checks'" in set_up(bare, "tea").stderr


def test_no_screen_is_said_in_words() -> None:
    """Opening the window where there is no screen points to the command line."""
    done = run("bash", "tools/run.sh", cwd=ROOT, **QUIET)
    assert done.returncode == 1
    assert "no screen here" in done.stderr
    assert "swatchwright --help" in done.stderr


def test_a_screen_that_does_not_answer_is_said_in_words(bare: Path) -> None:
    """When Qt gives up on the screen that is named, the same words follow."""
    (bare / ".venv" / "bin").mkdir(parents=True)
    program(bare, "../.venv/bin/swatchwright", "kill -ABRT $$")
    done = run("bash", "tools/run.sh", cwd=bare, **{**QUIET, "DISPLAY": ":77"})
    assert done.returncode == 1
    assert "no screen here" in done.stderr
