"""Compare our film, surface, wetting and wash formulas with adding-doubling radiative transfer.

    python tools/compare_with_adding_doubling.py [--coarse]

Prints a table in Markdown. Adding-doubling (iadpython 0.5.3, MIT; van de Hulst 1980; Prahl, van
Gemert, Welch 1993, Appl. Opt. 32:559) solves the equation of radiative transfer for a slab with
steps in refractive index, here on a Lambertian ground, lit by a beam straight down and read over
all angles. It knows nothing of our formulas.

Absorption and scattering of the theory become ours by K = alpha mu_a, S = beta mu_s (1 - g). For
diffuse light alpha = 2 and beta = 3/4 (Klier 1972, J. Opt. Soc. Am. 62:882). A beam starts deeper;
what it reads as K and S, and so what a fit finds, is larger and smaller by two constants, which
were fitted once for each index over plausible paints and are the same for all cases. Every film
is a spectrum: greys, and colours whose albedo rises or falls from the row's lower to its upper
one across the visible.
"""

from __future__ import annotations

import sys
from dataclasses import dataclass
from itertools import product
from typing import Any

import iadpython  # type: ignore[import-untyped]
import numpy as np
from iadpython import combine, start
from numpy.typing import NDArray

from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import WAVELENGTHS, lab_of
from swatchwright.paint.film import film_reflectance, ratio_of_reflectance
from swatchwright.paint.fit.fitted import known_paint, predict
from swatchwright.paint.fit.one import fit_paint
from swatchwright.paint.fit.prior import Errors, Surface
from swatchwright.paint.fit.readings import BrushOut, Reading
from swatchwright.paint.surface import (
    inner_reflectance,
    internal_diffuse,
    normal_reflectance,
    seen_reflectance,
)

Floats = NDArray[np.floating[Any]]

ALBEDOS = (0.3, 0.6, 0.9, 0.97, 0.99, 0.999, 0.9999)
DEPTHS = (0.1, 0.3, 1.0, 3.0, 10.0, 30.0, 100.0, 300.0, 1000.0)
GROUNDS = (0.05, 0.4, 0.8)
ANGLES = 16

PAINT_ALBEDO, PAINT_DEPTH = 0.9, 10.0

DIFFUSE = (2.0, 0.75)
BEAM = {1.0: (2.183, 0.575), 1.5: (2.321, 0.691)}
"""alpha and beta by index: least squares of CIEDE2000 over albedo 0.9-0.9999, depth 10-100."""


@dataclass(frozen=True)
class Case:
    """A film: its albedo (36,), optical depth of scattering, and the ground's reflectance."""

    albedo: Floats
    depth: float
    ground: float


def oracle(albedo: float, depth: float, ground: float, index: float) -> float:
    """Give the reflectance to a beam straight down, the glint of the surface included."""
    sample = iadpython.Sample(
        a=albedo, b=depth, g=0.0, n=index, n_above=1.0, n_below=index, quad_pts=ANGLES
    )
    sample.update_quadrature()
    R, T = iadpython.simple_layer_matrices(sample)
    lambert, none = np.full_like(R, ground), np.zeros_like(R)
    R02, R20, T02, T20 = combine.add_layers(sample, R, R, T, T, lambert, lambert, none, none)
    if index != 1.0:
        top = start.boundary_layer(sample, top=True)
        R02, _, T02, _ = combine.add_slide_above(sample, *top, R02, R20, T02, T20)
    return float(sample.UX1_and_UXU(R02, T02)[0])


def oracle_spectrum(case: Case, index: float) -> Floats:
    """Give the oracle's reflectance (36,) of a case; depth is that of scattering."""
    values: dict[float, float] = {}
    for a in case.albedo:
        key = float(a)
        if key not in values:
            values[key] = oracle(key, case.depth / key, case.ground, index)
    return np.array([values[float(a)] for a in case.albedo])


def ours(case: Case, index: float, factors: tuple[float, float]) -> Floats:
    """Give our reflectance (36,) of a case, the surface included."""
    alpha, beta = factors
    scattering = np.full(WAVELENGTHS.size, case.depth)
    absorption = scattering * (1.0 - case.albedo) / case.albedo
    inside = film_reflectance(alpha * absorption, beta * scattering, 1.0, case.ground)
    if index == 1.0:
        return inside
    return seen_reflectance(inside, normal_reflectance(index), internal_diffuse(index))


def spectra(low: float, high: float) -> list[Floats]:
    """Give albedos (36,): a grey, one that rises to the red and one that falls, in steps."""
    share = np.round(1.0 / (1.0 + np.exp((550.0 - WAVELENGTHS) / 25.0)), 2)
    fall, rise = (np.log10(1.0 - a) for a in (low, high))
    grey = np.full(WAVELENGTHS.size, low)
    return [grey, *(1.0 - 10 ** (fall + (rise - fall) * s) for s in (share, 1.0 - share))]


def differences(cases: list[Case], index: float, factors: tuple[float, float]) -> Floats:
    """Give CIEDE2000 between the oracle and us, a case each."""
    theirs = np.array([oracle_spectrum(case, index) for case in cases])
    mine = np.array([ours(case, index, factors) for case in cases])
    return delta_e_2000(lab_of(theirs), lab_of(mine))


def wetting(albedos: tuple[float, ...]) -> Floats:
    """Give CIEDE2000 of thick films wetted, ours reckoned from the oracle's dry film."""
    water = 4.0 / 3.0
    found = []
    for low, high in zip(albedos, [*albedos[1:], albedos[-1]], strict=True):
        for albedo in spectra(low, high):
            case = Case(albedo, 1e4, 0.0)
            dry = oracle_spectrum(case, 1.0)
            wet = oracle_spectrum(case, water)
            k1 = float(normal_reflectance(water))
            mine = seen_reflectance(dry, k1, internal_diffuse(water))
            found.append(float(delta_e_2000(lab_of(wet), lab_of(mine))))
    return np.array(found)


def grid(
    albedos: tuple[float, ...], depths: tuple[float, ...]
) -> dict[tuple[float, float], list[Case]]:
    """Give the cases of each albedo and depth."""
    pairs = list(zip(albedos, [*albedos[1:], 0.99995], strict=True))
    return {
        (low, depth): [Case(a, depth, ground) for a in spectra(low, high) for ground in GROUNDS]
        for (low, high), depth in product(pairs, depths)
    }


Cells = dict[tuple[float, float], Floats]


def compared(
    index: float,
    factors: tuple[float, float],
    albedos: tuple[float, ...] = ALBEDOS,
    depths: tuple[float, ...] = DEPTHS,
) -> Cells:
    """Give the differences of each albedo and depth."""
    cells = grid(albedos, depths)
    return {key: differences(cases, index, factors) for key, cases in cells.items()}


def table(cells: Cells) -> list[str]:
    """Give the lines of a table of medians and maxima over albedo and depth."""
    albedos, depths = (sorted({key[i] for key in cells}) for i in (0, 1))
    lines = ["| albedo from | " + " | ".join(f"depth {d:g}" for d in depths) + " |"]
    lines.append("| --- |" + " --- |" * len(depths))
    for low in albedos:
        row = [f"{np.median(cells[low, d]):.1f}, {cells[low, d].max():.1f}" for d in depths]
        lines.append(f"| {low:g} | " + " | ".join(row) + " |")
    return lines


def summary(cells: Cells) -> dict[str, Floats]:
    """Give all differences, and those of plausible paint."""
    paint = [values for key, values in cells.items() if is_paint(*key)]
    return {"all": np.concatenate(list(cells.values())), "paint": np.concatenate(paint)}


def spread(values: Floats) -> str:
    """Give median, 95th percentile and largest as text."""
    middle, far = np.median(values), np.percentile(values, 95)
    return f"median {middle:.2f}, 95th percentile {far:.2f}, largest {values.max():.2f}"


def mixtures(sets: int, seed: int = 1) -> Floats:
    """Give CIEDE2000 of opaque mixtures of virtual paints that were fitted from the oracle.

    Each set is a white and two paints, drawn at random. The white is fitted from its masstone and
    each paint from its masstone and two let-downs with it; then crossings of all three are
    predicted.
    """
    rng = np.random.default_rng(seed)
    found = []
    for _ in range(sets):
        white = (np.full(WAVELENGTHS.size, 2e-4), np.ones(WAVELENGTHS.size))
        pair = [_virtual_paint(rng) for _ in range(2)]
        seen = _opaque(white)
        k1, k2 = float(normal_reflectance(1.5)), float(internal_diffuse(1.5))
        ratio = ratio_of_reflectance(inner_reflectance(seen, k1, k2))
        known = {"white": known_paint(ratio, np.ones(WAVELENGTHS.size))}
        surface = Surface(k1=k1, k2=k2, glare_spread=1e-3, paint_glare_spread=1e-3)
        for name, paint in zip("ab", pair, strict=True):
            brush_outs = [
                BrushOut({name: c, "white": 1 - c}, (Reading(_opaque(paint, white, c)),))
                for c in (1.0, 0.5, 0.1)
            ]
            errors = Errors(reading=5e-4, formula=2e-3, share=1e-3, doubt=30.0)
            known[name] = fit_paint(brush_outs, known, surface=surface, errors=errors)
        for a, b in ((0.5, 0.5), (0.3, 0.3), (0.1, 0.05), (0.05, 0.3), (0.8, 0.2)):
            shares = {"a": a, "b": b, "white": 1 - a - b}
            blend = tuple(a * pair[0][i] + b * pair[1][i] + (1 - a - b) * white[i] for i in (0, 1))
            mine = predict(known, shares, surface=surface)
            found.append(float(delta_e_2000(lab_of(_opaque((blend[0], blend[1]))), lab_of(mine))))
    return np.array(found)


def _virtual_paint(rng: np.random.Generator) -> tuple[Floats, Floats]:
    """Draw absorption and scattering (36,) of a paint, in units of the white's scattering."""
    at, width = rng.uniform(420, 680), rng.uniform(30, 80)
    band = np.exp(-(((WAVELENGTHS - at) / width) ** 2))
    edge = 1.0 / (1.0 + np.exp((WAVELENGTHS - rng.uniform(480, 620)) / rng.uniform(8, 25)))
    absorption = 0.005 + rng.uniform(0.1, 2.0) * band + rng.uniform(0.0, 1.5) * edge
    return absorption, rng.uniform(0.2, 0.9) * (550.0 / WAVELENGTHS) ** rng.uniform(0.0, 1.0)


def _opaque(
    paint: tuple[Floats, Floats], white: tuple[Floats, Floats] | None = None, share: float = 1.0
) -> Floats:
    """Give the oracle's reflectance (36,) of a thick film of a paint, let down with white."""
    absorption, scattering = (
        share * own + ((1 - share) * white[i] if white else 0.0) for i, own in enumerate(paint)
    )
    albedo = scattering / (absorption + scattering)
    return np.array([oracle(float(a), 1e5, 0.5, 1.5) for a in albedo])


def from_one_film(
    index: float, read_at: float, albedos: tuple[float, ...], depths: tuple[float, ...]
) -> Cells:
    """Give the differences of films predicted from a fit, as the program does it.

    A plausible paint is fitted from one film of it that the oracle reads over black and over
    white; then films of other depths and over other grounds are predicted. Nothing is told of the
    oracle's coefficients.
    """
    bare = index == 1.0
    k1, k2 = (0.0 if bare else float(f(index)) for f in (normal_reflectance, internal_diffuse))
    surface = Surface(k1=k1, k2=k2, glare_spread=1e-3, paint_glare_spread=1e-3)
    errors = Errors(reading=5e-4, formula=2e-3, share=1e-3, doubt=30.0)
    black, grey, white = GROUNDS
    seen = {g: np.full(WAVELENGTHS.size, float(seen_reflectance(g, 0.0, k2))) for g in GROUNDS}
    cells: dict[tuple[float, float], list[float]] = {}
    for low, high in zip(albedos, [*albedos[1:], 0.99995], strict=True):
        for albedo in spectra(low, high) if low >= PAINT_ALBEDO else ():
            readings = tuple(
                Reading(oracle_spectrum(Case(albedo, read_at, g), index), ground=seen[g])
                for g in (black, white)
            )
            film = BrushOut({"a": 1.0}, readings, thickness=read_at, thickness_spread=1e-3)
            paint = {"a": fit_paint([film], {}, surface=surface, errors=errors)}
            for depth in depths:
                for ground in (grey,) if depth == read_at else GROUNDS:
                    theirs = oracle_spectrum(Case(albedo, depth, ground), index)
                    mine = predict(paint, {"a": 1.0}, seen[ground], depth, surface)
                    off = float(delta_e_2000(lab_of(theirs), lab_of(mine)))
                    cells.setdefault((low, depth), []).append(off)
    return {key: np.array(values) for key, values in cells.items()}


def is_paint(albedo: float, depth: float) -> bool:
    """Tell a plausible film of paint: it scatters at least ten times over, not mostly absorbing."""
    return albedo >= PAINT_ALBEDO and depth >= PAINT_DEPTH


def main() -> None:
    """Print the tables."""
    coarse = "--coarse" in sys.argv
    albedos = ALBEDOS[::2] if coarse else ALBEDOS
    depths = DEPTHS[::2] if coarse else DEPTHS
    for index, name in ((1.0, "film without a surface"), (1.5, "film with a surface, n = 1.5")):
        cells = compared(index, BEAM[index], albedos, depths)
        print(f"\n{name}: CIEDE2000, median and largest of a cell\n")
        print("\n".join(table(cells)) + "\n")
        for what, values in summary(cells).items():
            print(f"{what}: {spread(values)}")
        for what, values in summary(compared(index, DIFFUSE, albedos, depths)).items():
            print(f"{what}, factors of diffuse light: {spread(values)}")
        for read_at in (3.0, 10.0):
            fitted = from_one_film(index, read_at, albedos, depths)
            print(f"\nfitted over black and white at depth {read_at:g}, {name}\n")
            print("\n".join(table(fitted)) + "\n")
            for what, values in summary(fitted).items():
                print(f"{what}: {spread(values)}")
    wet = wetting(albedos)
    print(f"\nwetting: {spread(wet)}")
    print(f"opaque mixtures of fitted virtual paints: {spread(mixtures(4 if coarse else 20))}")


if __name__ == "__main__":
    main()
