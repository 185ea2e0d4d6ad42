"""A shelf that is written reads back as it was, with how well its paints are known."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from tempfile import TemporaryDirectory

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from swatchwright.errors import MendableError
from swatchwright.language import ENGLISH, use_language
from swatchwright.paint.family import FAMILIES
from swatchwright.paint.paints import HowKnown, Paint, Tin
from swatchwright.shelf.csv_file import demo_shelf, read_shelf
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.spread_file import parse_spreads, spread_path, spread_text
from swatchwright.shelf.write import shelf_text, write_shelf
from unit.paint.made import paint, paints

TEXT = st.text(
    st.characters(exclude_categories=["C", "Z"], include_characters=" ,;\"'"), max_size=12
).map(str.strip)


@st.composite
def kept(draw: st.DrawFn, number: int) -> Paint:
    """Draw a paint with all that a shelf may say of it."""
    seed = draw(st.integers(0, 10_000))
    spread = draw(st.sampled_from([None, 0, 1, 4, 72]))
    one = draw(paints())
    tins = draw(st.lists(st.tuples(st.floats(1, 1e4), st.none() | st.floats(0, 1e3)), max_size=3))
    own = draw(st.none() | st.tuples(st.floats(0, 1), st.floats(0.1, 5), st.floats(0, 50)))
    finish = FAMILIES[one.family]
    if own is not None:
        finish = replace(finish, glare=own[0], wet_scattering=own[1], milk=own[2])
    return replace(
        one,
        id=f"p{number}",
        name=draw(TEXT) or "x",
        note=draw(TEXT),
        how_known=draw(st.sampled_from(HowKnown)),
        density=draw(st.none() | st.floats(0.6, 4)),
        tins=tuple(Tin(*tin) for tin in tins),
        own_finish=None if own is None else finish,
        spread=None
        if spread is None
        else 0.3 * np.random.default_rng(seed).normal(size=(spread, 72)),
    )


def same(one: Paint, other: Paint) -> bool:
    """Tell whether two paints are the same to the last digit."""
    plain = ("id", "name", "family", "how_known", "volume_solids", "density", "spreading_rate")
    if one.spread is None or other.spread is None:
        known = one.spread is other.spread
    else:
        known = np.array_equal(one.spread, other.spread)
    return (
        all(getattr(one, name) == getattr(other, name) for name in plain)
        and (one.tins, one.note, one.own_finish) == (other.tins, other.note, other.own_finish)
        and np.array_equal(one.K, other.K)
        and np.array_equal(one.S, other.S)
        and known
    )


@given(st.tuples(kept(1), kept(2)))
def test_what_is_written_is_read_back(drawn: tuple[Paint, Paint]) -> None:
    """Every paint comes back as it was: names, numbers, spectra, spread and finish."""
    # A paint that scatters nothing beside the others is read as one that scatters a little.
    top = max(float(p.S.mean()) for p in drawn)
    shelf = Shelf("x", tuple(replace(p, S=np.maximum(p.S, 1e-4 * top)) for p in drawn))
    with TemporaryDirectory() as folder:
        path = Path(folder) / "mine.csv"
        write_shelf(shelf, path)
        found = read_shelf(path)
    assert len(found.paints) == 2
    for one, other in zip(shelf.paints, found.paints, strict=True):
        assert same(one, other)


def test_a_shelf_of_weak_paints_is_not_scaled(tmp_path: Path) -> None:
    """K and S that were written per mm are read per mm, however little they scatter."""
    write_shelf(Shelf("x", (paint(S=0.5),)), tmp_path / "mine.csv")
    found = read_shelf(tmp_path / "mine.csv")
    assert_allclose(found.paints[0].S, 0.5)
    assert not any("relative" in note for note in found.notes)


def test_the_demonstration_shelf_survives(tmp_path: Path) -> None:
    """The demonstration shelf is the same after it was written and read."""
    (path,) = write_shelf(demo_shelf(), tmp_path / "mine.csv")
    for one, other in zip(demo_shelf().paints, read_shelf(path).paints, strict=True):
        assert same(one, other)


def spread_shelf() -> Shelf:
    """Give two paints, the first with a spread."""
    return Shelf("x", (paint("one", spread=np.full((2, 72), 0.1)), paint("two", 3.0)))


def test_a_spread_of_other_spectra_is_left_out(tmp_path: Path) -> None:
    """Where K was changed since by hand, how well it is known is not believed, and that is said."""
    path = tmp_path / "mine.csv"
    write_shelf(spread_shelf(), path)
    changed = replace(spread_shelf().paints[0], K=np.full(36, 1.1), spread=None)
    path.write_text(shelf_text(Shelf("x", (changed,))), encoding="utf-8")
    found = read_shelf(path)
    assert found.paints[0].spread is None
    assert any("How well one is known was not read" in note for note in found.notes)


def test_an_old_file_of_doubts_does_not_stay(tmp_path: Path) -> None:
    """A shelf without spreads takes away the file of those it had."""
    path = tmp_path / "mine.csv"
    assert write_shelf(spread_shelf(), path) == (path, spread_path(path))
    assert write_shelf(demo_shelf(), path) == (path,)
    assert not spread_path(path).exists()


def test_paints_that_have_gone_are_named() -> None:
    """Doubts about a paint that is not on the shelf are passed over, and said."""
    text = spread_text(spread_shelf().paints)
    assert text is not None
    found = parse_spreads(text, "mine.doubt.csv", Shelf("x", (paint("two", 3.0),)))
    assert "not on the shelf: one" in found.notes[0]


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ("k_380", "k_381", "no column k_380"),
        ("one,2,", "one,3,", "not numbered 1, 2, 3"),
        (",0.1\n", ",x\n", "“x” under s_730"),
        (",0.1\n", ",99\n", "has 99 under s_730"),
        (",0.1\n", ",nan\n", "“nan” under s_730"),
        (",0.1\n", ",\n", "“” under s_730"),
    ],
)
def test_a_broken_file_of_doubts_is_refused(old: str, new: str, words: str) -> None:
    """A file of doubts that cannot be is refused, and the message names the place."""
    text = spread_text(spread_shelf().paints)
    assert text is not None
    with pytest.raises(MendableError, match=words):
        parse_spreads(text.replace(old, new), "mine.doubt.csv", spread_shelf())


def test_a_shelf_of_nothing_is_not_written(tmp_path: Path) -> None:
    """An empty shelf, or a place that is none, is refused and nothing written."""
    with pytest.raises(MendableError, match="no paints"):
        write_shelf(Shelf("x", ()), tmp_path / "mine.csv")
    with pytest.raises(MendableError, match="could not be written"):
        write_shelf(demo_shelf(), tmp_path / "no" / "mine.csv")
    assert list(tmp_path.iterdir()) == []


def test_a_shelf_file_is_the_same_in_every_language(tmp_path: Path) -> None:
    """Words, keys and numbers of a file do not follow the language of the window."""
    shelf = demo_shelf()
    english = shelf_text(shelf)
    use_language("de")
    try:
        assert shelf_text(shelf) == english
        write_shelf(shelf, tmp_path / "shelf.csv")
        assert shelf_text(read_shelf(tmp_path / "shelf.csv")) == english
    finally:
        use_language(ENGLISH)


def test_whether_hiding_was_read_is_kept(tmp_path: Path) -> None:
    """It is read back as it was written: read, guessed, or nothing said."""
    there = [replace(paint("x"), id=f"p{n}", hiding_read=v) for n, v in enumerate((True, False))]
    write_shelf(Shelf("mine", (*there, paint("y"))), tmp_path / "mine.csv")
    back = read_shelf(tmp_path / "mine.csv")
    assert [one.hiding_read for one in back.paints] == [True, False, None]
