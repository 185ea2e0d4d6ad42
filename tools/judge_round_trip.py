"""Judge the fit of one paint on invented paints whose truth is known.

    python tools/judge_round_trip.py [CASES]

Each case invents a paint: one to three colorants with or without white, bent by four random bumps
(not by what the fit believes of bends). Its masstone and two let-downs with a known white are read
with 0.3 % noise, as spectra and as the colours of those spectra, and the paint is fitted. Then
let-downs it has not seen and crossings with another paint are predicted and compared with the
truth, and the region that is said to hold the truth in 90 % of cases is checked to do so.
"""

from __future__ import annotations

import sys
import time
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import WAVELENGTHS, lab_of
from swatchwright.paint.film import reflectance_of_ratio
from swatchwright.paint.fit.fitted import known_paint, predict, predict_draws, spread_of_lab
from swatchwright.paint.fit.model import colour_slope
from swatchwright.paint.fit.one import fit_paint
from swatchwright.paint.fit.prior import Errors, Surface, basis
from swatchwright.paint.fit.readings import BrushOut, Reading
from swatchwright.paint.surface import seen_reflectance

Floats = NDArray[np.floating[Any]]
Pair = tuple[Floats, Floats]

NOISE = 0.003
SURFACE = Surface(glare_spread=1e-3, paint_glare_spread=1e-3)
ERRORS = Errors(reading=NOISE, formula=1e-3, colour=0.05, share=1e-3, alike=1.0, doubt=30.0)

READ = (1.0, 0.5, 0.1)
UNSEEN = (0.75, 0.25, 0.03)
CROSSED = (0.5, 0.1)

INSIDE_90 = 6.251
"""The 90 % point of chi squared with three degrees of freedom."""

DRAWS = 200


@dataclass(frozen=True)
class Outcome:
    """Differences, whether regions held the truth, and seconds, over all cases."""

    let_downs: Floats
    crossings: Floats
    held: float
    seconds: Floats


def invent(rng: np.random.Generator) -> Pair:
    """Invent a paint's K and S (36,)."""
    _, K, S = basis()
    used = rng.choice(np.arange(1, len(K)), rng.integers(1, 4), replace=False)
    amounts = 10 ** rng.uniform(-1.5, 0, used.size)
    white = rng.choice([0.0, 10 ** rng.uniform(-1, 0)])
    k, s = (amounts @ table[used] + white * table[0] for table in (K, S))
    return k * _bumps(rng, 0.3), s * _bumps(rng, 0.15)


def _bumps(rng: np.random.Generator, height: float) -> Floats:
    at, width = rng.uniform(380, 730, (4, 1)), rng.uniform(30, 120, (4, 1))
    bumps = rng.normal(0, height, (4, 1)) * np.exp(-(((WAVELENGTHS - at) / width) ** 2))
    return np.asarray(np.exp(bumps.sum(axis=0)))


def opaque(one: Pair, share: float, other: Pair) -> Floats:
    """Give the true reflectance factor (36,) of a mixture that hides."""
    K, S = (share * a + (1 - share) * b for a, b in zip(one, other, strict=True))
    return seen_reflectance(reflectance_of_ratio(K / S), SURFACE.k1, SURFACE.k2)


def read(truth: Floats, rng: np.random.Generator, *, spectra: bool) -> Reading:
    """Read a film with noise, as a spectrum or as its colour."""
    noisy = np.maximum(truth + rng.normal(0, NOISE, truth.size), 1e-3)
    if spectra:
        return Reading(reflectance=noisy)
    slope = colour_slope(noisy)
    return Reading(lab=lab_of(noisy), covariance=NOISE**2 * slope @ slope.T)


def judge(cases: int, *, spectra: bool, seed: int = 1) -> Outcome:
    """Run that many cases."""
    rng = np.random.default_rng(seed)
    _, K, S = basis()
    white, other = (K[0], S[0]), (K[4], S[4])
    known = {"white": known_paint(*white), "other": known_paint(*other)}
    let_downs, crossings, held, seconds = [], [], [], []
    for _ in range(cases):
        truth = invent(rng)
        brush_outs = [
            BrushOut(
                {"paint": c, "white": 1 - c},
                (read(opaque(truth, c, white), rng, spectra=spectra),),
            )
            for c in READ
        ]
        began = time.perf_counter()
        paint = fit_paint(brush_outs, known, surface=SURFACE, errors=ERRORS)
        seconds.append(time.perf_counter() - began)
        paints = {**known, "paint": paint}
        for c in UNSEEN:
            shares = {"paint": c, "white": 1 - c}
            right = lab_of(opaque(truth, c, white))
            let_downs.append(delta_e_2000(right, lab_of(predict(paints, shares, surface=SURFACE))))
            drawn = predict_draws(paints, shares, DRAWS, rng, surface=SURFACE)
            middle, covariance = spread_of_lab(drawn)
            off = right - middle
            far = off @ np.linalg.solve(covariance + 1e-6 * np.eye(3), off)
            held.append(far < INSIDE_90)
        for c in CROSSED:
            right = lab_of(opaque(truth, c, other))
            mine = predict(paints, {"paint": c, "other": 1 - c}, surface=SURFACE)
            crossings.append(delta_e_2000(right, lab_of(mine)))
    return Outcome(
        np.array(let_downs), np.array(crossings), float(np.mean(held)), np.array(seconds)
    )


def main() -> None:
    """Judge and print."""
    cases = int(sys.argv[1]) if len(sys.argv) > 1 else 500
    for spectra in (True, False):
        found = judge(cases, spectra=spectra)
        print(f"from {'spectra' if spectra else 'colours'}, {cases} cases:")
        for name, values in (("let-downs", found.let_downs), ("crossings", found.crossings)):
            middle, far = np.median(values), np.percentile(values, 95)
            print(f"  unseen {name}: median {middle:.2f}, 95th percentile {far:.2f}")
        print(f"  the 90 % region held the truth in {100 * found.held:.1f} % of {3 * cases}")
        print(f"  a fit took {np.median(found.seconds):.2f} s, at most {found.seconds.max():.2f} s")


if __name__ == "__main__":
    main()
