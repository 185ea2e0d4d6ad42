"""Judge the fit of a shelf on measured mixtures of oil paints that it does not see.

    python tools/judge_oil_fit.py SAMPLES.csv [HELD_OUT.csv]

SAMPLES.csv holds reflectance factors of pure paints and of mixtures over black and white grounds
(columns sample, paints, shares, surface, r_400..r_700; four rows a sample: over black, over
white, bare black, bare white), such as the open spectra of the Revigo project (CC0 1.0; Geldof et
al. 2018, Heritage Science 6:17, doi 10.1186/s40494-018-0181-6).

With one file it prints how well each mixture is predicted from all other samples, and how well
mixtures are predicted from the pure paints and one let-down with white each. With two, it also
fits all of the first and predicts the mixtures of the second. Differences are CIEDE2000, D65, of
each sample over each ground.
"""

from __future__ import annotations

import csv
import sys
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import WAVELENGTHS, lab_of, to_grid
from swatchwright.paint.fit.fitted import FittedPaint, predict
from swatchwright.paint.fit.readings import BrushOut, Reading, on_grid
from swatchwright.paint.fit.shelf import OIL_SURFACE, OIL_THICKNESS_SPREAD, fit_shelf

Floats = NDArray[np.floating[Any]]

GROUNDS = ("black", "white")
WHITE = "ZincWhite"

# The strength of the let-down that a painter is asked for first.
ASKED_WHITE = 0.8


def read_samples(path: Path) -> list[BrushOut]:
    """Read measured samples as brush-outs by mass."""
    with path.open(encoding="utf-8-sig", newline="") as file:
        rows = list(csv.DictReader(file))
    bands = [c for c in rows[0] if c.startswith("r_")]
    nm = np.array([float(b[2:]) for b in bands])
    samples: dict[str, dict[str, Floats]] = {}
    shares: dict[str, dict[str, float]] = {}
    for row in rows:
        spectrum = np.array([float(row[b]) for b in bands])
        samples.setdefault(row["sample"], {})[row["surface"]] = on_grid(nm, spectrum)
        parts = [float(part) for part in row["shares"].split("+")]
        shares[row["sample"]] = dict(zip(row["paints"].split("+"), parts, strict=True))
    return [
        BrushOut(
            shares[name],
            tuple(Reading(read[f"over {g}"], ground=read[f"bare {g}"]) for g in GROUNDS),
            thickness_spread=OIL_THICKNESS_SPREAD,
            name=name,
        )
        for name, read in samples.items()
    ]


def is_mixture(sample: BrushOut) -> bool:
    """Tell a mixture from a pure paint."""
    return sum(part > 0 for part in sample.shares.values()) > 1


def error(paints: Mapping[str, FittedPaint], sample: BrushOut) -> list[float]:
    """Give the difference over each ground between a sample and what is predicted."""
    differences = []
    for reading in sample.readings:
        predicted = predict(paints, sample.shares, reading.ground, surface=OIL_SURFACE)
        read = np.asarray(reading.reflectance)
        there = np.isfinite(read)
        pair = [lab_of(to_grid(WAVELENGTHS[there], r[there])) for r in (predicted, read)]
        differences.append(float(delta_e_2000(*pair)))
    return differences


def one_out(samples: Sequence[BrushOut]) -> dict[str, list[float]]:
    """Predict each mixture from all other samples."""
    return {
        sample.name: error(fit_shelf([s for s in samples if s is not sample]), sample)
        for sample in samples
        if is_mixture(sample)
    }


def one_let_down(samples: Sequence[BrushOut]) -> dict[str, list[float]]:
    """Predict mixtures from the pure paints and one let-down with white of each."""
    chosen: dict[str, BrushOut] = {}
    for sample in filter(is_mixture, samples):
        if WHITE in sample.shares:
            (other,) = (name for name in sample.shares if name != WHITE)
            rivals = [sample, *([chosen[other]] if other in chosen else [])]
            chosen[other] = min(rivals, key=lambda s: abs(s.shares[WHITE] - ASKED_WHITE))
    seen = [s for s in samples if not is_mixture(s) or any(s is c for c in chosen.values())]
    paints = fit_shelf(seen)
    return {s.name: error(paints, s) for s in samples if not any(s is t for t in seen)}


def report(title: str, errors: Mapping[str, Sequence[float]]) -> None:
    """Print the errors' spread, and the worst samples."""
    values = np.array(list(errors.values()))
    middle, far = np.median(values), np.percentile(values, 95)
    print(f"{title}: {len(errors)} mixtures, median {middle:.2f}, 95th percentile {far:.2f}")
    worst = sorted(errors, key=lambda name: -max(errors[name]))[:6]
    print("  worst: " + ", ".join(f"{name} {max(errors[name]):.1f}" for name in worst))


def main() -> None:
    """Judge and print."""
    samples = read_samples(Path(sys.argv[1]))
    if len(sys.argv) > 2:
        paints = fit_shelf(samples)
        held = [s for s in read_samples(Path(sys.argv[2])) if is_mixture(s)]
        able = [s for s in held if set(s.shares) <= set(paints)]
        print(f"{len(held) - len(able)} of {len(held)} hold a paint that was not fitted")
        report("held out", {s.name: error(paints, s) for s in able})
    report("pure paints and one let-down with white each", one_let_down(samples))
    report("each from all others", one_out(samples))


if __name__ == "__main__":
    main()
