"""The tree stays clean: nothing of one machine in it, nothing left for later, all of it said."""

from __future__ import annotations

import ast
import re
import tomllib
from typing import TYPE_CHECKING

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

from house.tree import PACKAGE, ROOT, make, modules, texts

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

MOST_LINES = 500

# A home or a work folder of somebody's machine, as a path from the root of the disk.
MACHINE_PATH = re.compile(r"(?<![\w./*-])(/(work|home|root|Users|farm)/\w|[A-Z]:\\\w)")
PIN = re.compile(r"[a-z0-9-]+==[0-9][0-9a-z.]*( ; [\w\s.'=<>!]+)?")
LATER = re.compile(r"\b(TODO|FIXME|XXX|raise NotImplementedError)\b")
REQUIREMENTS = ("requirements.txt", "requirements-dev.txt")


def found_in(pattern: re.Pattern[str], folder: Path) -> list[str]:
    """Give the places below a folder where the pattern is found."""
    return [
        f"{path.relative_to(ROOT)}:{number}: {line.strip()}"
        for path, text in texts()
        if path.is_relative_to(folder)
        for number, line in enumerate(text.splitlines(), 1)
        if pattern.search(line)
    ]


def test_no_path_of_one_machine() -> None:
    """No file names a folder that only one machine has."""
    assert not found_in(MACHINE_PATH, ROOT)


def test_a_path_of_one_machine_is_seen() -> None:
    """The pattern catches the homes of the three systems and lets other paths through."""
    parts = [("/home", "anna", "shelf"), ("/Users", "anna"), ("/work", "x")]
    assert all(MACHINE_PATH.search(f'open("{"/".join(p)}")') for p in parts)
    assert MACHINE_PATH.search("C:" + "\\photos")
    assert not MACHINE_PATH.search("tests/work/a, https://x.org/home/a, /usr/bin/env")


def test_nothing_is_left_for_later() -> None:
    """The program holds no note of work to do and no function that is not written."""
    assert not found_in(LATER, ROOT / "src")


def test_files_are_short() -> None:
    """No file that a person reads is over five hundred lines."""
    kinds = (".py", ".md", ".sh", ".toml", ".txt", "")
    assert not {
        str(path.relative_to(ROOT)): len(text.splitlines())
        for path, text in texts(*kinds)
        if len(text.splitlines()) > MOST_LINES
    }


# --- said ----------------------------------------------------------------------------------------


def test_every_module_says_what_it_is() -> None:
    """Each module of the program, the tools and the tests opens with a sentence about itself."""
    said = {
        path: ast.get_docstring(tree) or ""
        for folder in ("src", "tools", "tests")
        for path, tree in modules(ROOT / folder)
    }
    assert [p for p, words in said.items() if len(words.split()) < 2] == []
    assert PACKAGE / "__init__.py" in said


def undocumented_tests() -> Iterator[str]:
    """Give the tests that do not state the behaviour they check."""
    for path, tree in modules(ROOT / "tests"):
        for node in ast.walk(tree):
            if (
                isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef)
                and node.name.startswith("test_")
                and not ast.get_docstring(node)
            ):
                yield f"{path.relative_to(ROOT)}:{node.lineno} {node.name}"


def test_every_test_states_a_behaviour() -> None:
    """Each test function has a docstring."""
    assert not list(undocumented_tests())


# --- pinned --------------------------------------------------------------------------------------


def pins(name: str) -> dict[str, str]:
    """Give the lines of a requirements file by the package they pin."""
    lines = (ROOT / name).read_text(encoding="utf-8").splitlines()
    return {line.split("==")[0]: line for line in lines if line and not line.startswith("#")}


@pytest.mark.parametrize("name", REQUIREMENTS)
def test_requirements_hold_names_and_versions_only(name: str) -> None:
    """Each line pins one package to one version: no address, no hash, no option."""
    lines = pins(name).values()
    assert lines
    assert [line for line in lines if not PIN.fullmatch(line)] == []


def test_the_two_requirements_agree() -> None:
    """What the program runs with is pinned to the same version where it is checked."""
    runs, checks = (
        # On which Pythons a package is needed may differ: what only runs may need it on fewer.
        {name: line.partition(";")[0].strip() for name, line in pins(file).items()}
        for file in ("requirements.txt", "requirements-dev.txt")
    )
    assert runs.items() <= checks.items()


@pytest.mark.parametrize("name", REQUIREMENTS)
def test_pins_are_within_the_wanted_ranges(name: str) -> None:
    """Every package that the project asks for is pinned, to a version within its range."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    wanted = project["dependencies"]
    if name == "requirements-dev.txt":
        wanted = wanted + project["optional-dependencies"]["dev"]
    pinned = pins(name)
    for text in wanted:
        requirement = Requirement(text)
        line = pinned[canonicalize_name(requirement.name)]
        version = next(iter(Requirement(line).specifier)).version
        assert requirement.specifier.contains(version), text


# --- the way in ----------------------------------------------------------------------------------

MAKEFILE = (ROOT / "Makefile").read_text(encoding="utf-8")
TARGETS = re.findall(r"^([a-z][a-z-]*):", MAKEFILE, re.MULTILINE)


def test_make_help_names_every_target() -> None:
    """Make alone lists each thing that can be made, with what it does."""
    listed = re.findall(r"make ([a-z-]+) +\S", make().stdout)
    assert sorted(listed) == sorted(TARGETS)


@pytest.mark.parametrize("target", TARGETS)
def test_every_target_has_its_parts(target: str) -> None:
    """Each target can be planned, and every script that it would run is there."""
    plan = make("--dry-run", target)
    assert plan.returncode == 0, plan.stderr
    scripts = re.findall(r"tools/[\w./]+", plan.stdout)
    assert [s for s in scripts if not (ROOT / s).exists()] == []


def test_the_build_is_make_test() -> None:
    """What the build runs is what a contributor runs: all four kinds of check."""
    assert (ROOT / ".ci" / "run").read_text(encoding="utf-8").endswith("exec make test\n")
    plan = make("--dry-run", "test").stdout
    for check in ("ruff check", "ruff format --check", "mypy", "lint-imports", "pytest"):
        assert check in plan
