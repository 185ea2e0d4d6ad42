"""Finding twelve words in the guide against counting them in its bare texts in the same run."""

from __future__ import annotations

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from swatchwright.acts.guide import guide_pages
from swatchwright.acts.guide_search import find_in_guide, marks_in, read_guide

WORDS = {
    "en": "paint colour wet dry mix tin photo grey cloth white old lead",
    "de": "Bleifarbe Graukarte nass trocken Mischung Dose Foto Stoff Regal Farbton Wachs Lasur",
}


@pytest.mark.benchmark(group="find in the guide")
@pytest.mark.parametrize("language", WORDS)
@pytest.mark.parametrize("way", ["ours", "bare"])
def test_finding(benchmark: BenchmarkFixture, language: str, way: str) -> None:
    """Pages are found, ranked and cut from once the guide was read."""
    texts = [page.text for page in guide_pages(language)]
    words = WORDS[language].casefold().split()
    assert read_guide(language) == len(texts)

    def ours() -> int:
        return len(find_in_guide(WORDS[language], language))

    def bare() -> int:
        return sum(sum(text.casefold().count(word) for word in words) > 0 for text in texts)

    assert benchmark(ours if way == "ours" else bare) > 10


@pytest.mark.benchmark(group="mark on a page")
@pytest.mark.parametrize("way", ["ours", "bare"])
def test_marking(benchmark: BenchmarkFixture, way: str) -> None:
    """The words are marked in the longest page, against counting them in it."""
    text = max((page.text for page in guide_pages()), key=len)
    words = WORDS["en"].split()

    def ours() -> int:
        return len(marks_in(text, WORDS["en"]))

    def bare() -> int:
        return sum(text.casefold().count(word) for word in words)

    assert benchmark(ours if way == "ours" else bare) > 10
