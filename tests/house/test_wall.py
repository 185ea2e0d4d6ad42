"""The wall between the layers stands, and would be seen to fall."""

from __future__ import annotations

import ast
import shutil
import sys
from typing import TYPE_CHECKING

import pytest

from house.tree import PACKAGE, QT, ROOT, modules, run

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path
    from subprocess import CompletedProcess

CONTRACTS = ("Imports point down only", "Only the desktop knows Qt")


def lint_imports(folder: Path) -> CompletedProcess[str]:
    """Check the contracts of the package that stands below a folder."""
    check = "import sys; from importlinter.cli import lint_imports; sys.exit(lint_imports())"
    return run(
        sys.executable, "-c", check, cwd=folder, PYTHONPATH=str(folder / "src"), NO_COLOR="1"
    )


def test_the_contracts_hold() -> None:
    """No import of the package breaks a contract, and both contracts are checked."""
    done = lint_imports(ROOT)
    assert done.returncode == 0, done.stdout + done.stderr
    for name in CONTRACTS:
        assert f"{name} KEPT" in done.stdout


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    """Give a copy of the package with its contracts, to break."""
    shutil.copy(ROOT / "pyproject.toml", tmp_path)
    unwanted = shutil.ignore_patterns("__pycache__")
    shutil.copytree(PACKAGE, tmp_path / "src" / "swatchwright", ignore=unwanted)
    return tmp_path


@pytest.mark.parametrize(
    ("file", "code", "broken"),
    [
        ("colour/convert.py", "def later():\n    import PySide6\n", CONTRACTS[1]),
        ("photo/image.py", "def later():\n    from qtpy import QtGui\n", CONTRACTS[1]),
        ("colour/convert.py", "import swatchwright.paint\n", CONTRACTS[0]),
        ("commands/stray.py", "from swatchwright import desktop\n", CONTRACTS[0]),
        ("unplaced.py", "", CONTRACTS[0]),
    ],
    ids=["lazy Qt", "Qt by another name", "upward", "between the faces", "module with no layer"],
)
def test_a_breach_is_seen(copy: Path, file: str, code: str, broken: str) -> None:
    """One forbidden import in a copy of the package fails the contract that forbids it."""
    with (copy / "src" / "swatchwright" / file).open("a", encoding="utf-8") as module:
        module.write("\n\n" + code)
    done = lint_imports(copy)
    assert done.returncode == 1
    assert f"{broken} BROKEN" in done.stdout


def _is_qt(name: object) -> bool:
    return isinstance(name, str) and name.split(".")[0] in QT


def _import_by_call(node: ast.Call) -> bool:
    """Tell whether a call imports Qt, or something that only running it would tell."""
    called = node.func.attr if isinstance(node.func, ast.Attribute) else ""
    called = node.func.id if isinstance(node.func, ast.Name) else called
    if called not in {"import_module", "__import__", "find_spec"}:
        return False
    first = node.args[0] if node.args else None
    return not isinstance(first, ast.Constant) or _is_qt(first.value)


def ways_to_qt(tree: ast.AST) -> Iterator[int]:
    """Give the lines that import Qt, by statement or by a call that a graph does not see."""
    for node in ast.walk(tree):
        match node:
            case ast.Import(names=names):
                found = any(_is_qt(alias.name) for alias in names)
            case ast.ImportFrom(module=module):
                found = _is_qt(module)
            case ast.Call():
                found = _import_by_call(node)
            case _:
                found = False
        if found:
            yield getattr(node, "lineno", 0)


def test_no_import_hides_in_a_call() -> None:
    """Outside the desktop, nothing imports Qt by name, nor any module whose name is computed."""
    desktop = PACKAGE / "desktop"
    found = [
        f"{path.relative_to(ROOT)}:{line}"
        for path, tree in modules(PACKAGE)
        if not path.is_relative_to(desktop)
        for line in ways_to_qt(tree)
    ]
    assert not found


@pytest.mark.parametrize(
    "code",
    [
        "import importlib\nimportlib.import_module('PySide6.QtGui')",
        "__import__('shiboken6')",
        "from importlib import import_module\nimport_module('Py' + 'Side6')",
        "def f():\n    from PySide6 import QtGui",
        "import importlib.util\nimportlib.util.find_spec('qtpy')",
    ],
)
def test_a_hidden_import_is_seen(code: str) -> None:
    """Each way of bringing Qt in is caught by the scan."""
    assert list(ways_to_qt(ast.parse(code)))


def test_an_honest_import_is_let_through() -> None:
    """An import of something else, by statement or by name, is no breach."""
    code = "import numpy\nfrom importlib import import_module\nimport_module('colour')\n"
    assert not list(ways_to_qt(ast.parse(code)))
