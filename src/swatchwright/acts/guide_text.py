"""The guide's Markdown as plain text, for a terminal and for finding words in it."""

from __future__ import annotations

import re
import textwrap

from swatchwright.language import say

__all__ = ["inline", "plain_lines", "plain_text", "title_of"]

_PICTURE = re.compile(r"!\[([^\]]*)\]\([^)]*\)")
_LINK = re.compile(r"\[([^\]]*)\]\(([^)]*)\)")
_STRONG = re.compile(r"\*\*([^*]+)\*\*")
_SLANTED = re.compile(r"\*([^*]+)\*")
_ITEM = re.compile(r"(- |\d+\. )")
_RULE = re.compile(r"\|[-| :]+\|")


def title_of(text: str) -> str:
    """Give the heading of a page; empty where it has none."""
    found = re.search(r"^# +(.+)$", text, re.MULTILINE)
    return found[1].strip() if found else ""


def inline(text: str) -> str:
    """Give a line without its marks: what is bold as it is, links by their words."""
    told = _PICTURE.sub(lambda m: say("Picture: {shows}", shows=m[1]), text)
    told = _LINK.sub(_linked, told)
    told = _SLANTED.sub(r"\1", _STRONG.sub(r"\1", told))
    return told.replace("`", "").replace("\\", "")


def plain_lines(text: str) -> tuple[str, ...]:
    """Give each heading, paragraph, list item and table row as one line without marks."""
    found: list[str] = []
    for block in _blocks(text):
        lines = block.removeprefix("#").lstrip("#").strip() if block.startswith("#") else block
        if not _RULE.fullmatch(lines):
            found.append(inline(lines).strip("| "))
    return tuple(line for line in found if line)


def plain_text(text: str, width: int = 80) -> str:
    """Lay a page out as plain text.

    Parameters
    ----------
    text
        The page, as Markdown.
    width
        How many letters a line may have.
    """
    laid: list[str] = []
    before = ""
    for block in _blocks(text):
        in_list = all(_ITEM.match(b) or b.startswith("|") for b in (block, before) if b)
        if laid and not in_list:
            laid.append("")
        laid += _laid(block, width)
        before = block
    return "\n".join(laid) + "\n"


def _laid(block: str, width: int) -> list[str]:
    """Lay out one block."""
    if block.startswith("#"):
        words = inline(block.lstrip("#").strip())
        return [words, ("=" if block.startswith("# ") else "-") * len(words)]
    if block.startswith("$ "):
        return [f"    {block}"]
    if block.startswith("|"):
        cells = [inline(cell.strip()) for cell in block.strip("|").split("|")]
        return [] if _RULE.fullmatch(block) else textwrap.wrap(": ".join(cells), width)
    item = _ITEM.match(block)
    hang = " " * len(item[0]) if item else ""
    return textwrap.wrap(
        inline(block), width, subsequent_indent=hang, break_long_words=False, break_on_hyphens=False
    )


def _blocks(text: str) -> list[str]:
    """Part a page into headings, paragraphs, items, table rows and lines of code, one string each.

    Lines that go on with a paragraph or an item are joined to it.
    """
    blocks: list[str] = []
    fenced, goes_on = False, False
    for line in text.splitlines():
        told = line.strip()
        if told.startswith("```"):
            fenced, goes_on = not fenced, False
        elif not told:
            goes_on = False
        elif fenced or told.startswith(("#", "|")) or _ITEM.match(told) or not goes_on:
            blocks.append(told)
            goes_on = not (fenced or told.startswith(("#", "|")))
        else:
            blocks[-1] = f"{blocks[-1]} {told}"
    return blocks


def _linked(link: re.Match[str]) -> str:
    """Give the words of a link, and where it leads outside the guide."""
    words, target = link[1], link[2]
    return f"{words} ({target})" if re.match(r"https?:", target) else words
