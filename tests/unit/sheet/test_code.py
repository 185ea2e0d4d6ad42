"""The open text of a code: written, read back, and refused where it is none."""

from __future__ import annotations

import string
from dataclasses import replace

import pytest
import segno
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.errors import MendableError
from swatchwright.sheet.code import (
    MOST_BYTES,
    MOST_PAINTS,
    CodePaint,
    CodeRecipe,
    read_code,
    write_code,
)
from swatchwright.values import Lab

CLAY = CodeRecipe(
    paints=(CodePaint("red", 361, "Strong red"), CodePaint("blue", 96), CodePaint("gold", 4.25)),
    title="Blanket box",
    zone="body",
    wanted=Lab(46.0, 34.0, 24.0),
    dry=Lab(46.2, -33.9, 0.0),
    day="2026-03-01",
    batch=3,
    ml=512.5,
)

IDS = st.text(string.ascii_lowercase + string.digits + "-=é", min_size=1, max_size=24)
TEXTS = st.text(st.characters(exclude_categories=["C", "Z"]), max_size=30)
TENTHS = st.integers(-1280, 1280).map(lambda v: v / 10)
LABS = st.builds(Lab, st.integers(0, 1000).map(lambda v: v / 10), TENTHS, TENTHS)
PARTS = st.one_of(
    st.integers(1, 999_999).map(float),
    st.floats(1e-3, 1e6).map(lambda v: float(f"{v:.6g}")),
)
PAINTS = st.lists(
    st.builds(CodePaint, IDS, PARTS, TEXTS), min_size=1, max_size=8, unique_by=lambda p: p.id
)
RECIPES = st.builds(
    CodeRecipe,
    PAINTS.map(tuple),
    title=TEXTS,
    zone=TEXTS,
    wanted=st.none() | LABS,
    dry=st.none() | LABS,
    day=st.sampled_from(["", "2026-03-01", "1999-12-31"]),
    batch=st.none() | st.integers(0, 999_999),
    ml=st.none() | st.integers(0, 1_000_000).map(lambda v: v / 10),
)


@given(recipe=RECIPES)
def test_what_is_written_is_read_back(recipe: CodeRecipe) -> None:
    """A recipe comes back from its text as it was, to the digits that a code has."""
    assert read_code(write_code(recipe, most=5000)) == recipe


@given(recipe=RECIPES)
def test_a_short_code_keeps_what_makes_the_colour(recipe: CodeRecipe) -> None:
    """Where room is scarce names and title go, and paints, parts and colours stay."""
    text = write_code(recipe)
    assert len(text.encode()) <= MOST_BYTES
    found = read_code(text)
    assert [(p.id, p.parts) for p in found.paints] == [(p.id, p.parts) for p in recipe.paints]
    assert (found.wanted, found.dry, found.ml) == (recipe.wanted, recipe.dry, recipe.ml)


@given(text=st.text(max_size=300) | st.text(max_size=300).map(lambda t: f"SWATCHWRIGHT 1\n{t}"))
def test_any_other_text_is_refused_in_plain_words(text: str) -> None:
    """Whatever was scanned, it is a recipe or it is refused with what to do."""
    try:
        found = read_code(text)
    except MendableError as error:
        words = [error.what, error.mend]
    else:
        words = [paint.id for paint in found.paints]
    assert words
    assert all(words)


def test_the_longest_code_is_one_that_exists() -> None:
    """A code of the most bytes fits into a square of ISO/IEC 18004 at its level M."""
    code = segno.make_qr("x" * MOST_BYTES, error="m", boost_error=False)
    assert int(code.version) <= 19


def test_the_text_is_as_documented() -> None:
    """The lines are those that docs/sheet.md tells."""
    assert write_code(CLAY).splitlines() == [
        "SWATCHWRIGHT 1",
        "title Blanket box",
        "zone body",
        "day 2026-03-01",
        "batch 3",
        "ml 512.5",
        "lab 46.0 34.0 24.0",
        "dry 46.2 -33.9 0.0",
        "mix red=361 Strong red",
        "mix blue=96",
        "mix gold=4.25",
    ]


def test_other_line_ends_and_unknown_words_do_no_harm() -> None:
    """Scanners that change line ends, and words of a later version, are borne."""
    text = write_code(CLAY).replace("\n", "\r\n") + "\r\n\r\nsheen matte\r\n"
    assert read_code(text) == CLAY


def test_a_title_over_several_lines_becomes_one() -> None:
    """A line break in a title cannot pass for a line of the code."""
    told = replace(CLAY, title="Box\nmix green=1000")
    assert read_code(write_code(told)).paints == CLAY.paints


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("SWATCHWRIGHT 2", "version 2"),
        ("SOMETHING 1", "first line"),
        ("SWATCHWRIGHT", "first line"),
        ("SWATCHWRIGHT ²", "first line"),
        ("SWATCHWRIGHT 1\nmix red=0", "parts"),
        ("SWATCHWRIGHT 1\nmix red=-1", "parts"),
        ("SWATCHWRIGHT 1\nmix red=nan", "cannot be"),
        ("SWATCHWRIGHT 1\nmix red=1e9", "cannot be"),
        ("SWATCHWRIGHT 1\nmix red", "not a paint"),
        ("SWATCHWRIGHT 1\nmix red=two", "not a number"),
        ("SWATCHWRIGHT 1\nmix red=1\nmix red=2", "red"),
        ("SWATCHWRIGHT 1\nmix red=1\nlab 1 2", "three numbers"),
        ("SWATCHWRIGHT 1\nmix red=1\nlab 101 2 3", "L*"),
        ("SWATCHWRIGHT 1\nmix red=1\nday tomorrow", "not a day"),
        ("SWATCHWRIGHT 1\nmix red=1\nbatch -3", "batch"),
        ("SWATCHWRIGHT 1\ntitle Box", "0 paints"),
        ("x" * 30_000, "too long"),
    ],
)
def test_what_is_off_is_named(line: str, said: str) -> None:
    """A text that is almost a code is refused with what is off in it."""
    with pytest.raises(MendableError) as refusal:
        read_code(line)
    assert said in str(refusal.value)


@pytest.mark.parametrize("id_", ["", "two words", "line\nbreak", "x" * 61])
def test_an_id_that_could_not_be_read_back_is_not_written(id_: str) -> None:
    """Ids with spaces, without a letter or too long are refused when writing."""
    with pytest.raises(MendableError):
        write_code(CodeRecipe((CodePaint(id_, 1),)))


def test_too_many_paints_are_refused() -> None:
    """Nine paints do not go into a code."""
    paints = tuple(CodePaint(f"paint-{i}", 1) for i in range(MOST_PAINTS + 1))
    with pytest.raises(MendableError, match="9 paints"):
        write_code(CodeRecipe(paints))


def test_a_recipe_that_cannot_be_short_enough_is_refused() -> None:
    """Eight long ids need more than a small code has, and that is said."""
    paints = tuple(CodePaint(f"{i}{'x' * 59}", 1) for i in range(8))
    with pytest.raises(MendableError, match="does not fit"):
        write_code(CodeRecipe(paints), most=200)
