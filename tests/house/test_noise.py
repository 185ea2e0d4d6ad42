"""The rules of tests/conftest.py hold: each is broken here in a small suite, and must fail it."""

from __future__ import annotations

import shutil
import sys
from typing import TYPE_CHECKING

import pytest

from house.tree import ROOT, run

if TYPE_CHECKING:
    from pathlib import Path

STRAY = "import logging\ndef test_it():\n    logging.getLogger('x').warning('cold')\n"
HANDLED = (
    "import logging\ndef test_it(stray_logs):\n    logging.getLogger('x').warning('cold')\n"
    "    assert stray_logs.pop().getMessage() == 'cold'\n"
)
SKIPPED = "import pytest\ndef test_it():\n    pytest.skip('no screen')\n"
COUNTED = """
def test_it(window_tests):
    assert (window_tests.count, window_tests.whole_suite) == (COUNT, WHOLE)
"""


@pytest.fixture
def suite(tmp_path: Path) -> Path:
    """Give a small project whose tests live under the same conftest as ours."""
    (tmp_path / "tests" / "window").mkdir(parents=True)
    shutil.copy(ROOT / "tests" / "conftest.py", tmp_path / "tests")
    (tmp_path / "pytest.ini").write_text("[pytest]\ntestpaths = tests\n", encoding="utf-8")
    window = tmp_path / "tests" / "window" / "test_window.py"
    window.write_text("def test_one():\n    pass\n", encoding="utf-8")
    return tmp_path


def outcome(suite: Path, file: str, code: str, *arguments: str) -> str:
    """Add a test file, run the small project and give the last line that pytest writes."""
    (suite / "tests" / file).write_text(code, encoding="utf-8")
    options = ("-q", "-p", "no:cacheprovider", "-p", "no:pytest-qt", *arguments)
    return run(sys.executable, "-m", "pytest", *options, cwd=suite).stdout.splitlines()[-1]


@pytest.mark.parametrize(
    ("file", "code", "expected"),
    [
        ("test_log.py", STRAY, "2 passed, 1 error"),
        ("test_log.py", HANDLED, "2 passed in"),
        ("window/test_other.py", SKIPPED, "1 failed, 1 passed"),
        ("test_elsewhere.py", SKIPPED, "1 passed, 1 skipped"),
    ],
    ids=["stray warning", "warning that was meant", "skipped window test", "skipped other test"],
)
def test_what_fails_a_suite(suite: Path, file: str, code: str, expected: str) -> None:
    """A stray warning and a skipped window test fail; what is meant passes."""
    assert expected in outcome(suite, file, code)


@pytest.mark.parametrize(
    ("arguments", "whole"),
    [((), True), (("-n", "2"), True), (("tests",), True), (("-k", "it or one"), False)],
    ids=["plain", "workers", "by folder", "narrowed"],
)
def test_window_tests_are_counted(suite: Path, arguments: tuple[str, ...], whole: object) -> None:
    """Window tests are counted in one process and in several, and a narrowed run is known."""
    code = COUNTED.replace("COUNT", "1").replace("WHOLE", str(whole))
    assert "2 passed" in outcome(suite, "test_count.py", code, *arguments)


def test_a_run_of_one_file_is_not_the_whole(suite: Path) -> None:
    """Naming one file is not asking for the whole suite."""
    code = COUNTED.replace("COUNT", "0").replace("WHOLE", "False")
    assert "1 passed" in outcome(suite, "test_count.py", code, "tests/test_count.py")
