"""The documentation is true: its links lead somewhere and its commands do what it says."""

from __future__ import annotations

import doctest
import os
import re
import shutil
import sys
from pathlib import Path

import pytest

from house.pages import Command, Page, pages
from house.tree import ROOT, make, run, texts

PAGES = pages()
PAGES_WITH_COMMANDS = [page for page in PAGES if page.commands()]

# Lines that get a machine or a copy of the project ready, which no test may do to this machine.
GETTING_READY = (
    "cd ",
    "git clone ",
    "sudo apt-get install ",
    "uv ",
    "powershell ",
    "pip install uv",
    "winget install ",
    "brew install ",
    "source ",
)


def test_the_pages_are_there() -> None:
    """The project has the pages that a reader looks for."""
    names = {str(page) for page in PAGES}
    assert {"README.md", "DEVELOPERS.md", "CHANGELOG.md"} <= names
    assert {f"docs/{n}.md" for n in ("architecture", "bibliography", "glossary")} <= names


def test_the_readme_opens_with_what_it_is() -> None:
    """After its title, before any picture or list, the readme says what the program does."""
    assert "README.md" in map(str, PAGES_WITH_COMMANDS)
    title, first = PAGES[[str(p) for p in PAGES].index("README.md")].text.split("\n\n")[:2]
    assert title == "# Swatchwright"
    assert re.match(r"[A-Z]", first)
    assert len(first.split()) >= 12


@pytest.mark.parametrize("page", PAGES, ids=str)
def test_links_lead_somewhere(page: Page) -> None:
    """Each relative link and picture of a page is a file, and each anchor a heading in it."""
    lost = []
    for link in page.links():
        target, _, anchor = link.partition("#")
        if re.match(r"[a-z]+:", target):
            continue
        path = (page.path.parent / target).resolve() if target else page.path
        anchored = not anchor or anchor in Page(path, path.read_text("utf-8")).anchors()
        if not path.exists() or not path.is_relative_to(ROOT) or not anchored:
            lost.append(link)
    assert not lost


def test_cited_keys_are_in_the_bibliography() -> None:
    """Each source that a page cites by its key is listed in the bibliography."""
    listed = (ROOT / "docs" / "bibliography.md").read_text("utf-8")
    keys = {key for page in PAGES for key in re.findall(r"\[([A-Z]\w+\d{4})\]", page.prose)}
    assert "KubelkaMunk1931" in keys
    assert [key for key in sorted(keys) if f"**[{key}]**" not in listed] == []


def test_pages_that_the_code_names_are_there() -> None:
    """Where code sends its reader to a page of the documentation, that page exists."""
    named = {n for _, text in texts(".py") for n in re.findall(r"docs/[\w-]+\.md", text)}
    assert "docs/bibliography.md" in named
    assert [name for name in sorted(named) if not (ROOT / name).exists()] == []


# --- commands ------------------------------------------------------------------------------------


@pytest.fixture
def reader(tmp_path: Path) -> Path:
    """Give a folder that looks like the top of the project, in which a command may write."""
    top = tmp_path / "top"
    top.mkdir()
    for entry in ROOT.iterdir():
        if entry.name == "sample_images":
            shutil.copytree(entry, top / entry.name)
        elif not entry.name.startswith("."):
            (top / entry.name).symlink_to(entry)
    return top


def carried_out(command: Command, top: Path) -> str | None:
    """Run one command of ours as a reader would, and give what is wrong with it, if anything."""
    home = {
        name: str(top.parent / name.lower())
        for name in (
            *("HOME", "XDG_DATA_HOME", "XDG_CONFIG_HOME", "XDG_STATE_HOME"),
            "SWATCHWRIGHT_HOME",
        )
    }
    beside = f"{Path(sys.executable).parent}{os.pathsep}{os.environ['PATH']}"
    typed = command.typed.replace(".venv/bin/swatchwright", "swatchwright")
    shell = ("bash", "-o", "pipefail", "-c", typed)
    done = run(*shell, cwd=top, PATH=beside, QT_QPA_PLATFORM="offscreen", COLUMNS="80", **home)
    written = (done.stdout + done.stderr).strip()
    if done.returncode != command.exit_code:
        return f"exit code {done.returncode}:\n{written}"
    lines = "\n".join(line.strip() for line in written.splitlines())
    flags = doctest.ELLIPSIS | doctest.NORMALIZE_WHITESPACE
    if command.shown and not doctest.OutputChecker().check_output(command.shown, lines, flags):
        return f"shown:\n{command.shown}\nwritten:\n{written}"
    return None


def what_is_wrong(command: Command, top: Path) -> str | None:
    """Check one command of a page by what kind of command it is."""
    first, *rest = command.typed.removeprefix("sudo ").split()
    if first == "make":
        targets = [word for word in rest if "=" not in word]
        return make("--dry-run", *targets).stderr or None
    if first.removeprefix(".venv/bin/") == "swatchwright":
        # Alone it opens the window and waits: tests/window opens it, and closes it again.
        return carried_out(command, top) if rest and rest[0] != "window" else None
    known = command.typed.startswith(GETTING_READY)
    return None if known else "nobody checks a command of this kind"


@pytest.mark.parametrize("page", PAGES_WITH_COMMANDS, ids=str)
def test_commands_do_what_the_page_says(page: Page, reader: Path) -> None:
    """Each command of a page, run in order, ends as it should and prints what is shown."""
    for command in page.commands():
        wrong = what_is_wrong(command, reader)
        assert wrong is None, f"$ {command.typed}\n{wrong}"


def test_commands_hide_in_no_other_fence() -> None:
    """A line that runs the program stands in a console fence, where it is checked."""
    line = re.compile(r"^ *(\$ )?(\.venv/bin/)?swatchwright +[a-z-]", re.MULTILINE)
    hidden = {str(page) for page in PAGES if any(line.search(code) for code in page.unchecked())}
    assert not hidden


@pytest.mark.parametrize(
    ("command", "wrong"),
    [
        (Command("swatchwright --version", 0, ""), ""),
        (Command("swatchwright --version", 0, "swatchwright ..."), ""),
        (Command("swatchwright --version", 0, "another program"), "shown"),
        (Command("swatchwright --version", 3, ""), "exit code 0"),
        (Command("swatchwright no-such-command", 0, ""), "exit code 2"),
        (Command("make test", 0, ""), ""),
        (Command("make tea", 0, ""), "No rule"),
        (Command("rm notes", 0, ""), "nobody checks"),
    ],
    ids=lambda value: value.typed if isinstance(value, Command) else "",
)
def test_an_untrue_command_is_seen(command: Command, wrong: str, reader: Path) -> None:
    """A command with another exit code, output or kind than its page says is caught."""
    found = what_is_wrong(command, reader)
    assert (wrong in found) if wrong and found else (found is None and not wrong)


def test_a_page_is_read_as_its_reader_reads_it() -> None:
    """Commands, continued lines, promised exit codes and output are told apart."""
    text = "# One two\n```console exit=2\n$ swatchwright a \\\n> --b\nout\n$ c\n```\n[x](y.md#z)\n"
    page = Page(ROOT / "x.md", text)
    assert page.commands() == [Command("swatchwright a --b", 2, "out"), Command("c", 2, "")]
    assert list(page.links()) == ["y.md#z"]
    assert page.anchors() == {"one-two"}


def test_code_that_nobody_runs_is_told_apart() -> None:
    """Code in another fence or indented is found, and a fence about fences is let be."""
    text = "```sh\na\n```\n\n    b\n\n```console\n$ c\n```\n````\n```console\n$ d\n```\n````\n"
    assert list(Page(ROOT / "x.md", text).unchecked()) == ["a\n", "    b"]
