"""What holds for every test: noise fails it, examples repeat, and no window needs a screen."""

from __future__ import annotations

import logging
import os
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

import hypothesis
import pytest
from babel.messages import Catalog
from babel.messages.mofile import write_mo

if TYPE_CHECKING:
    from collections.abc import Callable, Generator, Iterator, Mapping

    from window.watchdog import WatchedApplication

    Speak = Callable[[Mapping[str, str]], None]

TESTS = Path(__file__).parent
WINDOW = TESTS / "window"

# Before any test can make an application: offscreen, unless somebody wants to watch.
if not (os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY")):
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

# A build repeats exactly what ran before it; HYPOTHESIS_PROFILE=search looks for new trouble.
hypothesis.settings.register_profile(
    "ci", max_examples=50, derandomize=True, deadline=None, print_blob=True
)
hypothesis.settings.register_profile("search", max_examples=2000, deadline=None)
hypothesis.settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "ci"))


# --- silence -------------------------------------------------------------------------------------

EXPECTED_LOGGERS = frozenset(
    {
        # Says on a machine's first run, and only if that is slow, that it is looking for fonts.
        "matplotlib.font_manager",
    }
)


class _Collector(logging.Handler):
    """Keep each record of WARNING or above that nobody expects."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.records: list[logging.LogRecord] = []

    def emit(self, record: logging.LogRecord) -> None:
        if record.name not in EXPECTED_LOGGERS:
            self.records.append(record)


@pytest.fixture(autouse=True)
def stray_logs() -> Iterator[list[logging.LogRecord]]:
    """Fail a test that logs a warning or worse.

    A test that means to cause one takes this fixture, checks the records and clears the list.
    """
    collector = _Collector()
    logging.getLogger().addHandler(collector)
    yield collector.records
    logging.getLogger().removeHandler(collector)
    if collector.records:
        lines = [f"{r.levelname} {r.name}: {r.getMessage()}" for r in collector.records]
        pytest.fail("Nobody expected this in the log:\n" + "\n".join(lines), pytrace=False)


@pytest.fixture(autouse=True, scope="session")
def own_folders(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    """Keep the tests away from the shelf and the settings of whoever runs them."""
    home = tmp_path_factory.mktemp("home")
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_DATA_HOME", str(home / "data"))
        patch.setenv("XDG_CONFIG_HOME", str(home / "config"))
        patch.setenv("XDG_STATE_HOME", str(home / "state"))
        patch.setenv("SWATCHWRIGHT_HOME", str(home / "store"))
        yield home


@pytest.fixture
def speak(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Speak]:
    """Give a function that speaks a German of a few texts alone; English again after the test."""
    import swatchwright.language as spoken

    def german(texts: Mapping[str, str]) -> None:
        catalogue = Catalog(locale="de")
        for english, told in texts.items():
            catalogue.add(english, told)
        with (tmp_path / "de.mo").open("wb") as file:
            write_mo(file, catalogue)
        monkeypatch.setattr(spoken, "_FOLDER", tmp_path)
        spoken.use_language("de")

    yield german
    spoken.use_language(spoken.ENGLISH)


# --- the window is really tested -----------------------------------------------------------------


@pytest.fixture(scope="session")
def qapp_cls() -> type[WatchedApplication]:
    """Run every test of Qt in an application that notes what holds it up.

    There is one application to a process, made by whichever test asks for it first: were this known
    to the window's tests alone, another folder's test could come first and blind the watchdog.
    """
    from window.watchdog import WatchedApplication

    return WatchedApplication


@dataclass(frozen=True, slots=True)
class WindowTests:
    """How many tests of the window were collected, and whether all tests were asked for."""

    count: int
    whole_suite: bool


_WINDOW_TESTS = pytest.StashKey[WindowTests]()


def _whole_suite(config: pytest.Config) -> bool:
    """Tell whether this run collects everything: no folder, name or mark narrows it."""
    asked = {(config.invocation_params.dir / arg.split("::")[0]).resolve() for arg in config.args}
    narrowing: list[Any] = [
        config.getoption(name, default=None)
        for name in ("keyword", "markexpr", "deselect", "ignore", "ignore_glob", "lf", "stepwise")
    ]
    return bool(asked & {TESTS, TESTS.parent}) and not any(narrowing)


def pytest_collection_finish(session: pytest.Session) -> None:
    """Count the tests of the window; each worker of xdist collects all tests and so counts all."""
    count = sum(item.path.is_relative_to(WINDOW) for item in session.items)
    session.config.stash[_WINDOW_TESTS] = WindowTests(count, _whole_suite(session.config))


@pytest.fixture(scope="session")
def window_tests(pytestconfig: pytest.Config) -> WindowTests:
    """Give the number of window tests of this run."""
    return pytestconfig.stash[_WINDOW_TESTS]


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(
    item: pytest.Item, call: pytest.CallInfo[None]
) -> Generator[None, pytest.TestReport, pytest.TestReport]:
    """Make a skipped window test a failed one: without Qt they would all fall silent."""
    del call
    report = yield
    if report.skipped and not hasattr(report, "wasxfail") and item.path.is_relative_to(WINDOW):
        report.outcome = "failed"
        report.longrepr = f"A window test may not be skipped: {report.longreprtext}"
    return report
