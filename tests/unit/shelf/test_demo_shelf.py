"""The demonstration shelf: invented, said to be, and made by the tool that says how."""

from __future__ import annotations

import csv
from collections.abc import Iterator
from importlib.resources import files
from pathlib import Path

import numpy as np
import pytest

import make_demo_shelf
from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.paint.family import Family
from swatchwright.paint.mixture import contrast_ratio, dry_lab, dry_reflectance, mix
from swatchwright.paint.paints import HowKnown, Paint, stack
from swatchwright.shelf.csv_file import demo_shelf

DEMO = demo_shelf()


def text() -> str:
    """Read the shelf's file."""
    return files("swatchwright.shelf").joinpath("demo_shelf.csv").read_text(encoding="utf-8")


def rows() -> Iterator[dict[str, str]]:
    """Give its rows as a plain CSV reader sees them."""
    yield from csv.DictReader(text().splitlines())


def test_it_has_24_paints_with_ids_of_their_own() -> None:
    """24 paints, no two of one id or name."""
    assert len(DEMO.paints) == 24
    assert len({p.id for p in DEMO.paints}) == 24
    assert len({p.name for p in DEMO.paints}) == 24


def test_every_row_says_that_it_is_invented() -> None:
    """Each row says so twice: in how it is known and in its note."""
    assert {row["how_known"] for row in rows()} == {"invented"}
    assert all("Invented for demonstration" in row["note"] for row in rows())
    assert {p.how_known for p in DEMO.paints} == {HowKnown.INVENTED}


def test_it_is_what_the_tool_makes(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Run again, the tool writes the same file to the last letter."""
    made = tmp_path / "demo_shelf.csv"
    monkeypatch.setattr(make_demo_shelf, "OUTPUT", made)
    make_demo_shelf.main()
    assert made.read_bytes() == text().encode()


@pytest.mark.parametrize("of", DEMO.paints, ids=lambda p: p.id)
def test_a_paint_is_within_the_visible_and_possible(of: Paint) -> None:
    """Its spectra are finite and positive, its reflectance and colour possible."""
    assert of.K.shape == of.S.shape == WAVELENGTHS.shape
    assert np.all(np.isfinite(of.K) & (of.K >= 0))
    assert np.all(np.isfinite(of.S) & (of.S > 0))
    mixture = mix(stack([of]), [[0]], [[1.0]])
    R = dry_reflectance(mixture)
    assert 0 < R.min() <= R.max() < 1
    L, a, b = dry_lab(mixture)[0]
    assert 10 < L < 97
    assert np.hypot(a, b) < 100


@pytest.mark.parametrize("of", DEMO.paints, ids=lambda p: p.id)
def test_what_the_tin_says_is_plausible(of: Paint) -> None:
    """Solids, density, spreading rate and tins are those of house paint (no source)."""
    assert 0.3 <= of.volume_solids <= 0.5
    assert of.density is not None
    assert 1.0 <= of.density <= 1.5
    assert 10 <= of.spreading_rate <= 16
    assert of.tins
    prices = [tin.price for tin in of.tins if tin.price is not None]
    assert len(prices) == len(of.tins)
    assert prices == sorted(prices)
    per_ml = [tin.price / tin.ml for tin in of.tins if tin.price is not None]
    assert per_ml == sorted(per_ml, reverse=True), "a larger tin is cheaper by the litre"


def test_the_whites_hide_in_a_few_coats() -> None:
    """The clean white hides black and white alike in two to six coats."""
    white = mix(stack([DEMO.paint("white-clean")]), [[0]], [[1.0]])
    assert contrast_ratio(white, 1)[0] < 0.98 < contrast_ratio(white, 6)[0]


def test_it_spans_the_families_and_the_circle() -> None:
    """It has paints of six families, from near-white to near-black, and of every hue."""
    assert {p.family for p in DEMO.paints} == set(Family) - {Family.OIL}
    each = [[i] for i in range(24)]
    labs = dry_lab(mix(stack(DEMO.paints), each, np.ones((24, 1))))
    assert labs[:, 0].max() > 90
    assert labs[:, 0].min() < 20
    vivid = labs[np.hypot(labs[:, 1], labs[:, 2]) > 20]
    hues = np.sort(np.degrees(np.arctan2(vivid[:, 2], vivid[:, 1])) % 360)
    assert np.diff([*hues, hues[0] + 360]).max() < 100
