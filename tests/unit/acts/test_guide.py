"""The pages of the guide, in their order, and what is found in them."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.acts import guide
from swatchwright.acts.guide import (
    START,
    GuidePage,
    guide_page,
    guide_pages,
)
from swatchwright.acts.guide_search import find_in_guide
from swatchwright.acts.guide_text import inline, plain_lines, plain_text, title_of
from swatchwright.errors import MendableError


def test_the_pages_come_in_the_order_of_the_first_one() -> None:
    """The beginning is first, and the others follow as it lists them."""
    names = [page.name for page in guide_pages()]
    assert names[0] == START
    text = guide_pages()[0].text
    places = [text.index(f"({name}.md)") for name in names[1:]]
    assert places == sorted(places)
    assert len(names) == len(set(names))


def test_a_page_knows_what_it_is() -> None:
    """A page has its heading as its title, and its own file."""
    page = guide_page("safety")
    assert (page.name, page.title, page.language) == ("safety", "Safety", "en")
    assert page.path.read_text(encoding="utf-8") == page.text


def test_a_page_is_given_by_the_beginning_of_its_name() -> None:
    """Any beginning will do that only one page has, however it is written."""
    assert guide_page("photo").name == "photograph"
    assert guide_page("Too bright").name == "too_bright"
    assert guide_page("too-bright.md").name == "too_bright"
    assert guide_page().name == START


@pytest.mark.parametrize(
    ("name", "what"), [("zebra", "no page"), ("s", "several"), ("", "no page")]
)
def test_a_page_that_is_not_one_is_refused(name: str, what: str) -> None:
    """What names no page, or several, is refused with the names to choose from."""
    with pytest.raises(MendableError) as raised:
        guide_page(name)
    assert what in raised.value.what
    assert "safety" in raised.value.mend


@pytest.fixture
def written(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    """Give a small guide of two pages, of which one is in another language too."""
    folder = tmp_path / "guide"
    for place, text in {
        "en/index.md": "# Begin\n\nSee [the brush](brush.md) and [its care](care.md).\n",
        "en/brush.md": "# The brush\n\nDip **Brush** once; *never* twice. A brush is a brush.\n",
        "en/care.md": "# Care\n\n1. Wash the brush.\n2. Hang it up\n   to dry.\n",
        "fr/brush.md": "# Le pinceau\n\nUn pinceau.\n",
    }.items():
        (folder / place).parent.mkdir(parents=True, exist_ok=True)
        (folder / place).write_text(text, encoding="utf-8")
    guide_pages.cache_clear()
    monkeypatch.setattr(guide, "_folders", lambda: (tmp_path / "nowhere", folder))
    yield folder
    guide_pages.cache_clear()


def test_what_a_language_lacks_is_english(written: Path) -> None:
    """A page of another language is taken where it is there, and the English one where not."""
    told = [(page.name, page.language) for page in guide_pages("fr")]
    assert told == [("index", "en"), ("brush", "fr"), ("care", "en")]
    assert guide_page("brush", "fr").path == written / "fr" / "brush.md"
    assert [page.language for page in guide_pages("xx")] == ["en"] * 3


def test_no_guide_is_said(written: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where the program was installed without its guide there are no pages, and that is said."""
    monkeypatch.setattr(guide, "_folders", lambda: (written / "nowhere",))
    assert guide_pages() == ()
    assert find_in_guide("brush") == ()
    with pytest.raises(MendableError, match="not installed"):
        guide_page()


# --- plain text ----------------------------------------------------------------------------------


def test_marks_are_left_out() -> None:
    """Bold, slanted and code lose their marks, links keep their words, pictures say themselves."""
    assert inline("Press **Keep**, *then* `F1`: [safety](safety.md).") == (
        "Press Keep, then F1: safety."
    )
    assert inline("![A red field](pictures/x.png)") == "Picture: A red field"
    assert inline("[The rules](https://example.org/a)") == "The rules (https://example.org/a)"


def test_lines_that_go_on_are_joined() -> None:
    """A paragraph and an item that go on over lines are one line each; rules are left out."""
    text = "# A\n\none\ntwo\n\n1. three\n   four\n- five\n\n| a | b |\n| --- | --- |\n| c | d |\n"
    assert plain_lines(text) == ("A", "one two", "1. three four", "- five", "a | b", "c | d")


def test_a_page_is_laid_out_for_a_terminal() -> None:
    """Headings are underlined, items hang, commands stand apart, and no line is too long."""
    text = "# A\n\n" + "word " * 20 + "\n\n1. " + "item " * 12 + "\n\n```console\n$ make\n```\n"
    laid = plain_text(text, 40).splitlines()
    assert laid[:3] == ["A", "=", ""]
    assert max(map(len, laid)) <= 40
    assert any(line.startswith("1. item") for line in laid)
    assert any(line.startswith("   item") for line in laid)
    assert "    $ make" in laid


@pytest.mark.parametrize("page", guide_pages(), ids=lambda page: page.name)
def test_every_page_reads_plainly(page: GuidePage) -> None:
    """No mark of Markdown is left in any page as it is printed."""
    told = plain_text(page.text)
    assert told.startswith(f"{page.title}\n=")
    for left in ("**", "](", "```", "![", "| ---"):
        assert left not in told


def test_the_title_is_the_first_heading() -> None:
    """The title is the heading of the first level; a page without one has none."""
    assert title_of("before\n# One\n# Two\n") == "One"
    assert title_of("## One\n") == ""


@given(st.text(max_size=300))
def test_any_text_is_laid_out(text: str) -> None:
    """Whatever a page holds, it is laid out, and no letter of a plain word is lost."""
    plain = "".join(letter if letter.isalnum() else " " for letter in text)
    assert plain_text(plain).split() == plain.split()
    assert plain_text(text).endswith("\n")
