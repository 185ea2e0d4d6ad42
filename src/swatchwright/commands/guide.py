"""``swatchwright guide``."""

from __future__ import annotations

import argparse
from shutil import get_terminal_size

from swatchwright.acts.guide import START, GuidePage, guide_page, guide_pages
from swatchwright.acts.guide_search import find_in_guide
from swatchwright.acts.guide_text import plain_text
from swatchwright.commands.codes import ExitCode
from swatchwright.commands.words import print_json
from swatchwright.errors import MendableError

__all__ = ["guide"]

_WIDEST = 88


def guide(arguments: argparse.Namespace) -> ExitCode:
    """Print a page of the guide, the list of its pages, or those that hold some words."""
    asked = [arguments.page is not None, arguments.list, arguments.find is not None]
    if sum(asked) > 1:
        raise MendableError(
            "More than one thing was asked for.", "Give a page, or --list, or --find WORDS."
        )
    # Asking for the first page also says so where there is no guide.
    page = guide_page(START if arguments.page is None else arguments.page)
    if arguments.list:
        _list(json=arguments.json)
    elif arguments.find is not None:
        _find(arguments.find, json=arguments.json)
    elif arguments.json:
        print_json({**_told(page), "text": page.text})
    else:
        print(plain_text(page.text, min(get_terminal_size().columns, _WIDEST)), end="")
    return ExitCode.DONE


def _told(page: GuidePage) -> dict[str, str]:
    return {"name": page.name, "title": page.title, "language": page.language}


def _list(*, json: bool) -> None:
    pages = guide_pages()
    if json:
        print_json({"pages": [_told(page) for page in pages]})
        return
    for page in pages:
        print(f"{page.name:<12}  {page.title}")


def _find(words: str, *, json: bool) -> None:
    found = find_in_guide(words)
    if json:
        rows = [{**_told(one.page), "count": one.count, "piece": one.piece} for one in found]
        print_json({"found": rows})
        return
    for one in found:
        print(f"{one.page.name:<12}  {one.page.title}\n              {one.piece}")
    if not found:
        print("No page of the guide holds any of these words.")
