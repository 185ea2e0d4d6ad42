"""Measurements made up for tests, how to compare them, and texts that a reader must survive."""

from __future__ import annotations

from datetime import UTC, datetime
from itertools import product
from typing import TYPE_CHECKING

import numpy as np
import pytest
from hypothesis import strategies as st

from swatchwright.errors import MendableError
from swatchwright.shelf.measured import Measurement, Measurements, parse_measurements
from swatchwright.shelf.measured.told import clean
from swatchwright.values import Lab

if TYPE_CHECKING:
    from collections.abc import Callable

    from hypothesis.strategies import DrawFn

WHEN = datetime(2025, 3, 1, 9, 30, tzinfo=UTC)

# First and last wavelength and step of instruments in use; common practice, no source.
GRIDS = (
    (380, 730, 10),
    (400, 700, 10),
    (400, 700, 20),
    (360, 740, 5),
    (380, 780, 5),
    (400, 700, 5),
)

TEXTS = st.text(max_size=12).map(clean)


def wavelengths(first: float, last: float, step: float) -> np.ndarray[tuple[int], np.dtype]:
    """Give the wavelengths of an instrument, both ends among them."""
    return np.arange(first, last + step / 2, step, dtype=np.float64)


def measurement(id_: str, values: object = 0.5, lab: Lab | None = None) -> Measurement:
    """Make a sample whose reflectance at 400 to 700 nm by 10 is given, as one number or many."""
    nm = wavelengths(400, 700, 10)
    spectrum = np.broadcast_to(np.asarray(values, dtype=np.float64), nm.shape)
    return Measurement(id_, f"Sample {id_}", nm, spectrum, lab)


@st.composite
def labs(draw: DrawFn) -> Lab:
    """Draw a colour."""
    a, b = (draw(st.floats(-150, 150)) for _ in "ab")
    return Lab(draw(st.floats(0, 100)), a, b)


@st.composite
def measured(draw: DrawFn, *, one_grid: bool = False) -> Measurements:
    """Draw a file of samples: spectra, colours or both, on one instrument's grid or on several."""
    ids = draw(st.lists(TEXTS.filter(bool), min_size=1, max_size=5, unique=True))
    grids = st.just(draw(st.sampled_from(GRIDS))) if one_grid else st.sampled_from(GRIDS)
    rows = []
    for id_ in ids:
        nm = wavelengths(*draw(grids))
        seed, top = draw(st.integers(0, 2**32 - 1)), draw(st.sampled_from([1.0, 0.5, 1e-3, 0.0]))
        spectrum = np.random.default_rng(seed).uniform(0, top, nm.size)
        kind = draw(st.sampled_from(["spectrum", "colour", "both"]))
        rows.append(
            Measurement(
                id_,
                draw(TEXTS) or id_,
                np.empty(0) if kind == "colour" else nm,
                None if kind == "colour" else spectrum,
                None if kind == "spectrum" else draw(labs()),
            )
        )
    return Measurements(draw(TEXTS) or "x", tuple(rows))


def assert_same(found: Measurements, wanted: Measurements) -> None:
    """Demand that samples are equal to the last digit, in the same order, none corrected."""
    assert [(m.id, m.name, m.lab) for m in found.rows] == [
        (m.id, m.name, m.lab) for m in wanted.rows
    ]
    for one, other in zip(found.rows, wanted.rows, strict=True):
        assert one.nm.tolist() == other.nm.tolist()
        assert (one.reflectance is None) == (other.reflectance is None)
        if one.reflectance is not None and other.reflectance is not None:
            assert one.reflectance.tolist() == other.reflectance.tolist()
        assert one.notes == ()
    assert all(note.startswith("Spectra from 4") for note in found.notes), found.notes


def refused(read: Callable[[], object]) -> MendableError:
    """Demand an error that a painter can mend, in whole sentences, and give it."""
    with pytest.raises(MendableError) as caught:
        read()
    assert caught.value.what.endswith(".")
    assert caught.value.mend.endswith(".")
    assert not any(word in str(caught.value) for word in ("Error", "Traceback", "None"))
    return caught.value


def survived(data: bytes) -> None:
    """Demand of any bytes that they are read into sound measurements or refused in plain words."""
    try:
        found = parse_measurements(data, "x")
    except MendableError as error:
        said = error.what, error.mend
        found = None
    if found is None:
        assert all(sentence.endswith(".") for sentence in said)
        return
    assert found.rows
    assert len({m.id for m in found.rows}) == len(found.rows)
    for m in found.rows:
        assert m.reflectance is not None or m.lab is not None
        if m.reflectance is not None:
            assert m.nm.shape == m.reflectance.shape
            assert 0 <= m.reflectance.min() <= m.reflectance.max() <= 1


def garbled(data: bytes) -> st.SearchStrategy[bytes]:
    """Give versions of a file in which a piece is cut out, overwritten or comes twice."""
    spots = st.integers(0, len(data))
    junk = st.one_of(st.binary(max_size=8), st.sampled_from([b'"', b"<", b"-", b"\n", b"1e999"]))
    return st.builds(lambda a, b, new: data[:a] + new + data[b:], spots, spots, junk)


def edited(text: str) -> st.SearchStrategy[str]:
    """Give versions of a text in which a few words are swapped for others of it or for numbers."""
    words = text.split(" ")
    new = st.sampled_from([*words[:60], "-1", "45", "1e308", "0,5", "", '"', "nan", "#", "\t"])
    changes = st.lists(st.tuples(st.integers(0, len(words) - 1), new), min_size=1, max_size=4)

    def change(these: list[tuple[int, str]]) -> str:
        changed = list(words)
        for i, word in these:
            changed[i] = word
        return " ".join(changed)

    return changes.map(change)


WRITINGS = list(product(("\n", "\r\n"), ("", "\ufeff")))
"""Line ends and marks that files come with."""
