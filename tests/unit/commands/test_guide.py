"""``swatchwright guide``, as the shell sees it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from swatchwright.acts.guide import guide_pages
from unit.commands.runs import ran, refused

if TYPE_CHECKING:
    import pytest


def test_the_first_page_is_printed(capsys: pytest.CaptureFixture[str]) -> None:
    """Without a name the guide begins at its beginning."""
    done = ran(capsys, "guide")
    assert done.code == 0
    assert done.out.startswith("Start here\n==========\n")


def test_a_page_is_printed_plainly(capsys: pytest.CaptureFixture[str]) -> None:
    """A page is printed without marks, in lines that a terminal has room for."""
    done = ran(capsys, "guide", "safety")
    assert done.code == 0
    assert "Oily rags\n---------" in done.out
    assert "**" not in done.out
    assert max(map(len, done.out.splitlines())) <= 88


def test_the_pages_are_listed(capsys: pytest.CaptureFixture[str]) -> None:
    """Each page is listed by its name and title, as text and as JSON."""
    names = [page.name for page in guide_pages()]
    lines = ran(capsys, "guide", "--list").out.splitlines()
    assert [line.split()[0] for line in lines] == names
    told = ran(capsys, "guide", "--list", "--json").json["pages"]
    assert [one["name"] for one in told] == names
    assert {one["language"] for one in told} == {"en"}


def test_a_page_is_json(capsys: pytest.CaptureFixture[str]) -> None:
    """As JSON a page is told with its text as it was written."""
    told = ran(capsys, "guide", "sheet", "--json").json
    page = next(page for page in guide_pages() if page.name == "sheet")
    assert told == {
        "name": "sheet",
        "title": page.title,
        "language": "en",
        "text": page.text,
    }


def test_words_are_found(capsys: pytest.CaptureFixture[str]) -> None:
    """Pages that hold the words are listed; where none does that is said."""
    assert "safety " in ran(capsys, "guide", "--find", "lead sanding").out
    found = ran(capsys, "guide", "--find", "lead sanding", "--json").json["found"]
    assert "safety" in [one["name"] for one in found]
    nothing = ran(capsys, "guide", "--find", "zebra")
    assert nothing.code == 0
    assert "No page" in nothing.out


def test_what_is_not_there_is_refused(capsys: pytest.CaptureFixture[str]) -> None:
    """A name that no page has is refused with those that there are; so are two questions."""
    assert "too_bright" in refused(capsys, "guide", "zebra")
    assert "--list" in refused(capsys, "guide", "safety", "--list")
