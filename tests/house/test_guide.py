"""The guide is true of the window: its pages, its pictures, and the words that it names."""

from __future__ import annotations

import re

import pytest
from babel.messages import Catalog
from babel.messages.pofile import read_po
from PIL import Image

from catalogue import FOLDER, said, texts
from house.pages import Page
from house.tree import ROOT
from swatchwright.acts.guide import START, guide_pages
from swatchwright.desktop.pages import PAGES
from swatchwright.desktop.widgets.guide_button import FITTING
from swatchwright.language import ENGLISH, languages

GUIDE = ROOT / "docs" / "guide"
PAGES_OF_GUIDE = [
    Page(path, path.read_text(encoding="utf-8")) for path in sorted(GUIDE.glob("*/*.md"))
]
SECTIONS = {
    "en": (
        "What you need",
        "What you do",
        "What you see",
        "How far to trust it",
        "What may go wrong",
    ),
    "de": (
        "Was Sie brauchen",
        "So gehen Sie vor",
        "Was Sie sehen",
        "Wie verlässlich das ist",
        "Was schiefgehen kann",
    ),
}
WHOLE = {START, "everyone", "safety", "jobs"}
"""Pages of another build than one thing that is done."""
MOST_BYTES = 250_000
TRANSLATED = [page for page in PAGES_OF_GUIDE if page.path.parent.name != ENGLISH]


def english_of(page: Page) -> Page:
    """Give the English page that a page is the translation of."""
    path = GUIDE / ENGLISH / page.path.name
    return Page(path, path.read_text(encoding="utf-8"))


def written(page: Page) -> str:
    """Give the language of a page."""
    return page.path.parent.name


def control_names(page: Page) -> set[str]:
    """Give what a page sets in bold, which is what the window calls its controls."""
    return {_folded(name) for name in re.findall(r"\*\*([^*]+)\*\*", page.prose)}


def names_in(language: str) -> dict[str, set[str]]:
    """Give all that the window says in English, and how it says each in a language."""
    if language == ENGLISH:
        return _named(said(), translated=False)
    with (FOLDER / f"{language}.po").open("rb") as file:
        return _named(read_po(file, locale=language), translated=True)


def _named(catalogue: Catalog, *, translated: bool) -> dict[str, set[str]]:
    named: dict[str, set[str]] = {}
    for message in catalogue:
        told = texts(message.string if translated else message.id)
        for english, text in zip(texts(message.id), told, strict=False):
            if text:
                named.setdefault(_folded(english), set()).add(_folded(text))
    return named


def _folded(name: str) -> str:
    """Leave off what a sentence may do otherwise than the window: capitals and a last colon."""
    return name.casefold().removesuffix(":")


def targets(page: Page) -> list[str]:
    """Give where the links and the pictures of a page lead, in no order: sentences have theirs."""
    return sorted(page.links())


@pytest.fixture(scope="module")
def names() -> dict[str, dict[str, set[str]]]:
    """Give all that the window says in each language that the guide is written in."""
    return {language: names_in(language) for language in {written(p) for p in PAGES_OF_GUIDE}}


def unsaid(page: Page, names: dict[str, dict[str, set[str]]]) -> list[str]:
    """Give what a page sets in bold and the window does not say in its language."""
    return sorted(control_names(page).difference(*names[written(page)].values()))


def test_every_page_of_the_window_has_its_page() -> None:
    """F1 leads from each page of the window to a page of the guide that is there."""
    there = {page.name for page in guide_pages()}
    assert set(FITTING) == {kind.key for kind in PAGES}
    assert set(FITTING.values()) <= there


def test_the_start_lists_every_page() -> None:
    """The first page names all pages of the folder: none is left out of the list."""
    there = {path.stem for path in (GUIDE / ENGLISH).glob("*.md")}
    assert {page.name for page in guide_pages()} == there
    assert len(there) >= 14


@pytest.mark.parametrize("page", PAGES_OF_GUIDE, ids=str)
def test_what_is_bold_stands_in_the_window(
    page: Page, names: dict[str, dict[str, set[str]]]
) -> None:
    """What a page sets in bold is, but for capitals, a text that the window shows."""
    assert unsaid(page, names) == []


@pytest.mark.parametrize(
    ("language", "text", "caught"),
    [
        (ENGLISH, "Press **Keep**, then **Make it lovelier**.", "make it lovelier"),
        ("de", "Klicken Sie auf **Wählen**, dann auf **Keep**.", "keep"),
    ],
)
def test_a_control_that_is_not_there_is_seen(
    names: dict[str, dict[str, set[str]]], language: str, text: str, caught: str
) -> None:
    """A name that the window does not have in this language is caught; one that it has is not."""
    assert unsaid(Page(GUIDE / language / "x.md", text), names) == [caught]


@pytest.mark.parametrize("page", PAGES_OF_GUIDE, ids=str)
def test_a_page_stands_alone(page: Page) -> None:
    """A page leads only to pages and pictures of its own folder, which is all that is installed."""
    for link in page.links():
        target = (page.path.parent / link.partition("#")[0]).resolve()
        assert target.is_relative_to(page.path.parent), link
        assert target.is_file(), link


@pytest.mark.parametrize("page", PAGES_OF_GUIDE, ids=str)
def test_pictures_are_told_in_words(page: Page) -> None:
    """Each picture says in words what it shows, for who cannot see it."""
    for shows, target in re.findall(r"!\[([^\]]*)\]\(([^)]+)\)", page.prose):
        assert len(shows.split()) >= 5, target


def test_every_picture_is_used_and_small() -> None:
    """No picture lies about unused, and each is a PNG of a size that loads at once."""
    used = {(p.path.parent / link).resolve() for p in PAGES_OF_GUIDE for link in p.links()}
    pictures = sorted(GUIDE.glob("*/pictures/*"))
    assert pictures
    for path in pictures:
        assert path in used, path.name
        assert path.stat().st_size <= MOST_BYTES, path.name
        with Image.open(path) as image:
            assert image.format == "PNG"
            assert image.width <= 1280
            assert image.height <= 760


@pytest.mark.parametrize(
    "page",
    [p for p in PAGES_OF_GUIDE if p.path.stem not in WHOLE],
    ids=str,
)
def test_a_page_has_its_five_parts(page: Page) -> None:
    """A page of one thing that is done says what is needed, done, seen, trusted and mended."""
    headings = re.findall(r"^## (.+)$", page.prose, re.MULTILINE)
    for section in SECTIONS[written(page)]:
        assert any(heading.startswith(section) for heading in headings), section


def test_the_guide_is_in_every_language_of_the_program() -> None:
    """Each language of the program has its guide: the same pages, with the same pictures."""
    folders = [path for path in sorted(GUIDE.iterdir()) if path.is_dir()]
    assert [path.name for path in folders] == sorted(languages())
    for kind in ("*.md", "pictures/*"):
        english = {path.name for path in (GUIDE / ENGLISH).glob(kind)}
        for folder in folders:
            assert {path.name for path in folder.glob(kind)} == english, (folder.name, kind)


@pytest.mark.parametrize("page", TRANSLATED, ids=str)
def test_pages_of_other_languages_are_built_alike(page: Page) -> None:
    """A page in another language has the headings, steps, links and pictures of the English one."""
    english = english_of(page)
    for mark in (r"^#+ ", r"^\d+\. ", r"^- ", r"^!\[", r"^\| ", r"^$"):
        counts = [len(re.findall(mark, p.prose, re.MULTILINE)) for p in (page, english)]
        assert counts[0] == counts[1], mark
    assert targets(page) == targets(english)
    assert list(page.commands()) == list(english.commands())


@pytest.mark.parametrize("page", TRANSLATED, ids=str)
def test_pages_of_other_languages_name_the_same_controls(
    page: Page, names: dict[str, dict[str, set[str]]]
) -> None:
    """What is bold in the English page is bold in the other, as the window says it there."""
    said_there, bold = names[written(page)], control_names(page)
    wanted = control_names(english_of(page))
    assert [name for name in sorted(wanted) if not said_there[name] & bold] == []
    assert sorted(bold.difference(*(said_there[name] for name in wanted))) == []


@pytest.mark.parametrize("page", PAGES_OF_GUIDE, ids=str)
def test_links_to_a_page_say_its_title(page: Page) -> None:
    """The list at the start and the last line of a page call a page by the title that it has."""
    for line in page.prose.splitlines():
        link = re.fullmatch(r"(?:\d+\. |\w+(?: \w+)?: )\[([^]]+)\]\(([a-z_]+\.md)\)", line)
        if link is not None:
            title = (page.path.parent / link[2]).read_text(encoding="utf-8").partition("\n")[0]
            assert title == f"# {link[1]}"


@pytest.mark.parametrize("page", PAGES_OF_GUIDE, ids=str)
def test_a_page_is_short(page: Page) -> None:
    """A page is read in a few minutes: 700 words at the most."""
    assert len(page.text.split()) <= 700


def test_the_guide_is_installed() -> None:
    """The built package carries the guide, which the program looks for beside itself."""
    project = (ROOT / "pyproject.toml").read_text(encoding="utf-8")
    assert '"docs/guide" = "swatchwright/guide"' in project
    assert (GUIDE / ENGLISH / f"{START}.md").is_file()
