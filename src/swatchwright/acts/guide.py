"""The guide: its pages in the order of the work."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import swatchwright
from swatchwright.acts.guide_text import inline, title_of
from swatchwright.errors import MendableError
from swatchwright.language import ENGLISH, say

__all__ = ["START", "GuidePage", "guide_page", "guide_pages"]

START = "index"
"""The page on which the guide begins; its links are the table of contents."""

_LINK = re.compile(r"\]\(([a-z_]+)\.md\)")


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
