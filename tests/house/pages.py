"""What a page of documentation holds: links, headings, and commands with what they print.

The convention for commands: a fence marked ``console``. A line that starts with ``$ `` is typed, a
line that starts with ``> `` goes on with it, and the rest is what the command prints. Where output
is shown it is compared, ``...`` standing for anything, over several lines too; where none is
shown, anything may be printed. A command that ends with another exit code than 0 stands in a fence
marked ``console exit=2``. The commands of one page are run in their order, from the top of the
project, with a shelf of their own that starts empty.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from house.tree import ROOT, texts

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

_FENCE = re.compile(r"^( *)(`{3,}|~{3,})([^\n]*)\n(.*?)^\1\2 *$", re.MULTILINE | re.DOTALL)
_LINK = re.compile(r"!?\[[^\]]*\]\(<?([^)\s>]+)>?[^)]*\)|(?:src|href)=\"([^\"]+)\"")
_HEADING = re.compile(r"^#+ +(.+?) *#*$", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class Command:
    """One line to type, the exit code it promises, and what it is shown to print."""

    typed: str
    exit_code: int
    shown: str


@dataclass(frozen=True, slots=True)
class Page:
    """A page of documentation: where it is and what it says."""

    path: Path
    text: str

    def __str__(self) -> str:
        return str(self.path.relative_to(ROOT))

    @property
    def prose(self) -> str:
        """The page without its fences, in which nothing is a link or a heading."""
        return _FENCE.sub("", self.text)

    def links(self) -> Iterator[str]:
        """Give the target of each link and picture."""
        for found in _LINK.finditer(re.sub(r"`[^`\n]*`", "", self.prose)):
            yield found[1] or found[2]

    def anchors(self) -> set[str]:
        """Give the name of each heading, as a web page of it would have it."""
        named = set(re.findall(r"<a (?:id|name)=\"([^\"]+)\"", self.text))
        for heading in _HEADING.findall(self.prose):
            words = re.sub(r"[^\w\- ]", "", heading.lower())
            named.add(words.replace(" ", "-"))
        return named

    def commands(self) -> list[Command]:
        """Give the commands of the page in their order."""
        return [c for marks, code in self._fences() if marks for c in _read(marks, code)]

    def unchecked(self) -> Iterator[str]:
        """Give the code of the page whose commands nobody runs, but for fences about fences."""
        yield from (code for marks, code in self._fences() if not marks and "```" not in code)
        yield from re.findall(r"^ {4}.*", self.prose, re.MULTILINE)

    def _fences(self) -> Iterator[tuple[str, str]]:
        """Give the marks of each fence, if it is for commands, and what stands in it."""
        for fence in _FENCE.finditer(self.text):
            yield fence[3] if fence[3].split()[:1] == ["console"] else "", fence[4]


def _read(marks: str, block: str) -> Iterator[Command]:
    """Read the commands of one fence."""
    code = re.search(r"\bexit=(\d+)", marks)
    for part in re.split(r"^ *\$ ", block, flags=re.MULTILINE)[1:]:
        typed, *rest = part.splitlines()
        while rest and rest[0].lstrip().startswith("> "):
            typed = typed.removesuffix("\\") + rest.pop(0).lstrip()[2:]
        shown = "\n".join(line.strip() for line in rest).strip()
        yield Command(typed.strip(), int(code[1]) if code else 0, shown)


def pages() -> list[Page]:
    """Give every page of documentation."""
    return [Page(path, text) for path, text in texts(".md")]
