"""The files of the project, and a way to run one of its programs as a person would."""

from __future__ import annotations

import ast
import os
import subprocess
import sys
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

ROOT = Path(__file__).parents[2]
SOURCE = ROOT / "src"
PACKAGE = SOURCE / "swatchwright"

QT = frozenset({"PySide6", "shiboken6", "qtpy"})
"""Every way by which Qt could come in."""

_OURS = ("src", "tests", "tools", "docs", "sample_images", ".ci")


def files(*suffixes: str) -> Iterator[Path]:
    """Give the project's own files, of these suffixes or of all, and none that tools made."""
    found = [p for p in ROOT.iterdir() if p.is_file() and p.name != "uv.lock"]
    found += [p for folder in _OURS for p in (ROOT / folder).rglob("*") if p.is_file()]
    for path in sorted(found):
        made = "__pycache__" in path.parts or path.name.startswith(".coverage")
        if not made and (not suffixes or path.suffix in suffixes):
            yield path


def texts(*suffixes: str) -> Iterator[tuple[Path, str]]:
    """Give each of those files that is text, with its text."""
    for path in files(*suffixes):
        try:
            yield path, path.read_text(encoding="utf-8")
        except UnicodeDecodeError:
            continue


def modules(folder: Path) -> Iterator[tuple[Path, ast.Module]]:
    """Give each Python file below a folder with its syntax tree."""
    for path in sorted(folder.rglob("*.py")):
        yield path, ast.parse(path.read_text(encoding="utf-8"), str(path))


def name_of(path: Path) -> str:
    """Give the dotted name of a module of the package."""
    parts = path.relative_to(SOURCE).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


def run(
    *command: str | Path, cwd: Path = ROOT, **variables: str
) -> subprocess.CompletedProcess[str]:
    """Run a program without a terminal and give its exit code and what it wrote."""
    return subprocess.run(
        [str(part) for part in command],
        cwd=cwd,
        env={**os.environ, **variables},
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        check=False,
        timeout=240,
    )


def python(*arguments: str | Path, cwd: Path = ROOT, **variables: str) -> str:
    """Run this Python, demand that it succeeds, and give what it wrote to either stream."""
    done = run(sys.executable, *arguments, cwd=cwd, **variables)
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout + done.stderr


def make(*arguments: str) -> subprocess.CompletedProcess[str]:
    """Run make as from a shell, though these tests may themselves run below a make."""
    return run("make", *arguments, MAKELEVEL="0", MAKEFLAGS="")
