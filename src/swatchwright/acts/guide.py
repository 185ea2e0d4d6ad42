"""The guide: its pages in the order of the work, and finding words in them."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import swatchwright
from swatchwright.acts.guide_text import inline, plain_lines, title_of
from swatchwright.errors import MendableError
from swatchwright.language import ENGLISH, say

__all__ = ["START", "GuideFound", "GuidePage", "find_in_guide", "guide_page", "guide_pages"]

START = "index"
"""The page on which the guide begins; its links are the table of contents."""

_LINK = re.compile(r"\]\(([a-z_]+)\.md\)")
_HEADING = 5
"""Words that a heading has at the most, as a rule."""
_BEFORE, _AFTER = 40, 90
"""Letters of a line that are shown before and after what was found in it."""


@dataclass(frozen=True, slots=True)
class GuidePage:
    """A page of the guide.

    Parameters
    ----------
    name
        The name of its file, without the ending: the same in every language.
    title
        Its heading.
    path
        Its file; its pictures are named from the folder of that.
    text
        What it says, as Markdown.
    language
        The ISO 639-1 code of the language that it is in.
    """

    name: str
    title: str
    path: Path
    text: str
    language: str


@dataclass(frozen=True, slots=True)
class GuideFound:
    """A page on which words were found: how often, and a piece of the first line with them."""

    page: GuidePage
    count: int
    piece: str


@cache
def guide_pages(language: str = ENGLISH) -> tuple[GuidePage, ...]:
    """List the pages in the order of the work, the beginning first.

    Parameters
    ----------
    language
        An ISO 639-1 code. A page that is not there in this language is given in English.

    Returns
    -------
    The pages; none where the program was installed without its guide.
    """
    for folder in _folders():
        start = folder / ENGLISH / f"{START}.md"
        if start.is_file():
            listed = _LINK.findall(start.read_text(encoding="utf-8"))
            return tuple(_read(folder, name, language) for name in dict.fromkeys([START, *listed]))
    return ()


def guide_page(name: str = START, language: str = ENGLISH) -> GuidePage:
    """Give a page by its name, or by the beginning of it.

    Raises
    ------
    MendableError
        If there is no such page, or if the guide is not there.
    """
    pages = guide_pages(language)
    if not pages:
        raise MendableError(
            say("The guide was not installed with this copy of the program."),
            say("Install the program anew, as its readme tells."),
        )
    wanted = name.strip().lower().removesuffix(".md").replace("-", "_").replace(" ", "_")
    alike = [page for page in pages if wanted and page.name.startswith(wanted)]
    exact = [page for page in alike if page.name == wanted]
    if len(exact or alike) != 1:
        names = ", ".join(page.name for page in alike or pages)
        raise MendableError(
            say("There is no page “{name}” in the guide.", name=name)
            if not alike
            else say("“{name}” begins the names of several pages.", name=name),
            say("Ask for one of: {names}.", names=names),
        )
    return (exact or alike)[0]


def find_in_guide(words: str, language: str = ENGLISH) -> tuple[GuideFound, ...]:
    """Find the pages that hold all of these words, those with one in their title first.

    Parameters
    ----------
    words
        Words or the beginnings of words, in any order, large or small.
    language
        An ISO 639-1 code.
    """
    wanted = tuple(dict.fromkeys(words.casefold().split()))[:20]
    if not wanted:
        return ()
    found = [one for page in guide_pages(language) if (one := _found(page, wanted)) is not None]
    return tuple(sorted(found, key=lambda one: (not _titled(one.page, wanted), -one.count)))


def _found(page: GuidePage, wanted: tuple[str, ...]) -> GuideFound | None:
    lines = plain_lines(page.text)
    patterns = [_beginning(word) for word in wanted]
    hits = [(line, sum(len(p.findall(line.casefold())) for p in patterns)) for line in lines]
    whole = " ".join(lines).casefold()
    if not all(pattern.search(whole) for pattern in patterns):
        return None
    # The line below the title that holds most of the words tells best what is said of them.
    line = max(lines[1:] or lines, key=lambda one: _tells(one, patterns))
    return GuideFound(page, sum(count for _, count in hits), _piece(line, patterns))


def _tells(line: str, patterns: list[re.Pattern[str]]) -> tuple[int, bool]:
    """Say how much a line tells of words: how many it holds, and whether it is a sentence."""
    return sum(bool(p.search(line.casefold())) for p in patterns), len(line.split()) > _HEADING


def _beginning(word: str) -> re.Pattern[str]:
    """Find a word where it begins one; what does not begin with a letter is found anywhere."""
    return re.compile((r"\b" if word[:1].isalnum() else "") + re.escape(word))


def _piece(line: str, patterns: list[re.Pattern[str]]) -> str:
    """Cut out of a line what stands around the first of the words in it."""
    at = min((m.start() for p in patterns if (m := p.search(line.casefold()))), default=0)
    first = line.rfind(" ", 0, max(at - _BEFORE, 0) + 1) + 1 if at > _BEFORE else 0
    last = line.find(" ", at + _AFTER)
    end = len(line) if last < 0 else last
    return f"{'…' if first else ''}{line[first:end]}{'…' if end < len(line) else ''}"


def _titled(page: GuidePage, wanted: tuple[str, ...]) -> bool:
    return any(_beginning(word).search(page.title.casefold()) for word in wanted)


def _read(folder: Path, name: str, language: str) -> GuidePage:
    for code in (language, ENGLISH):
        path = folder / code / f"{name}.md"
        if path.is_file():
            break
    text = path.read_text(encoding="utf-8")
    return GuidePage(name, inline(title_of(text)), path, text, code)


def _folders() -> tuple[Path, ...]:
    """Give where it may be: beside the package in an installed copy, in the tree in a clone."""
    package = Path(swatchwright.__file__).parent
    return package / "guide", package.parents[1] / "docs" / "guide"
