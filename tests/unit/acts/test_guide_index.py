"""Pieces of words are found in all words at once, as they are one by one."""

from __future__ import annotations

from collections import Counter

from hypothesis import given
from hypothesis import strategies as st

from swatchwright.acts.guide import guide_pages
from swatchwright.acts.guide_index import WORD, Tokens, fold, page_words, tokens_of

FEW = st.text(alphabet="abß", min_size=1, max_size=4)


@given(st.lists(FEW), FEW)
def test_as_one_by_one(words: list[str], piece: str) -> None:
    """What holds a piece, begins with it or is it, is what Python's own strings say of each."""
    tokens = Tokens(words)
    inside, begun = list(tokens.with_inside(piece)), list(tokens.with_beginning(piece))
    assert sorted(inside) == sorted({word for word in words if piece in word})
    assert sorted(begun) == sorted({word for word in words if word.startswith(piece)})
    assert (piece in tokens) == (piece in words)


@given(st.text(max_size=60))
def test_folding_keeps_words_whole(text: str) -> None:
    """No word holds what stands between words; folded again, a word is the same."""
    for word in WORD.findall(text):
        assert "\n" not in fold(word)
        assert fold(fold(word)) == fold(word)


def test_each_word_of_a_page_is_where_it_stands() -> None:
    """Words are counted and placed as a walk through the lines finds them."""
    for page in guide_pages():
        read = page_words(page)
        told = [[fold(word) for word in WORD.findall(line)] for line in read.lines]
        assert dict(read.counted) == dict(Counter(word for line in told for word in line))
        for word, numbers in read.places.items():
            assert list(numbers) == [n for n, line in enumerate(told) if word in line]
        for line, words in zip(read.lines, read.words, strict=True):
            for word, start in words:
                assert fold(line[start:]).startswith(word)
        assert all(word in tokens_of(guide_pages()) for word in read.counted)
