"""Judge the fit of paints from colours on measured watercolours and their mixtures.

    python tools/judge_watercolours.py FOLDER

FOLDER holds films.csv (13 pigments in 12 amounts on white paper) and mixtures_1_1.csv (256
mixtures of two in equal amounts), as 8-bit sRGB converted from spectra: Chen, Huang, Chang,
Ouhyoung, arXiv:1904.00275. The data carry no licence and are not part of this project.

Each pigment is fitted from the colours of its own films and the paper's; the mixtures are then
predicted. No mixture is seen by the fit. Differences are CIEDE2000.
"""

from __future__ import annotations

import csv
import sys
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.convert import linear_srgb_to_lab, srgb_decode
from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import WAVELENGTHS, lab_of
from swatchwright.paint.fit.fitted import FittedPaint, predict
from swatchwright.paint.fit.one import fit_paint
from swatchwright.paint.fit.prior import Bend, Errors, Prior, Surface
from swatchwright.paint.fit.readings import BrushOut, Reading

Floats = NDArray[np.floating[Any]]

# Linear RGB 0.83, 0.86, 0.88, as the smoothest spectrum.
PAPER = np.interp(WAVELENGTHS, [450.0, 540.0, 610.0], [0.88, 0.86, 0.83])

UNIT = 0.04
"""The amount, ml, whose film is the unit of thickness."""

SURFACE = Surface(glare=0.26, glare_spread=0.1, paint_glare_spread=0.1)
ERRORS = Errors(colour=1.6)
READING = 0.25 * np.eye(3)
THICKNESS_SPREAD = 0.4

# One watercolour holds about as much pigment as another: that fixes the strength of those whose
# thinnest film hides already.
PRIOR = Prior(
    K=Bend(0.2, 0.65, 140.0),
    S=Bend(0.2, 0.45, 140.0),
    colorants=True,
    white_amount=0.14,
    amount_spread=1.7,
    total_spread=0.25,
)


def _lab(row: dict[str, str]) -> Floats:
    return linear_srgb_to_lab(srgb_decode([float(row[c]) / 255 for c in "RGB"]))


def read_films(folder: Path) -> dict[str, list[tuple[float, Floats]]]:
    """Read amounts, ml, and colours of each pigment's films."""
    films: dict[str, list[tuple[float, Floats]]] = {}
    with (folder / "films.csv").open(encoding="utf-8-sig", newline="") as file:
        for row in csv.DictReader(file):
            amount = float(row[""].rsplit("_", 1)[-1].removesuffix("ml"))
            films.setdefault(row["Pigment index"], []).append((amount, _lab(row)))
    return films


def fit_all(films: dict[str, list[tuple[float, Floats]]]) -> dict[str, FittedPaint]:
    """Fit each pigment from its films."""
    return {
        name: fit_paint(
            [
                BrushOut(
                    {name: 1.0},
                    (Reading(lab=lab, covariance=READING, ground=PAPER),),
                    thickness=amount / UNIT,
                    thickness_spread=THICKNESS_SPREAD,
                )
                for amount, lab in rows
            ],
            prior=PRIOR,
            surface=SURFACE,
            errors=ERRORS,
        )
        for name, rows in films.items()
    }


def mixture_errors(folder: Path, paints: dict[str, FittedPaint]) -> Floats:
    """Give CIEDE2000 of each mixture against what is predicted."""
    found = []
    with (folder / "mixtures_1_1.csv").open(encoding="utf-8-sig", newline="") as file:
        for row in csv.DictReader(file):
            parts = {row[f"Pigment{i}"]: float(row[f"Quantity{i}"]) for i in "AB"}
            thickness = sum(parts.values()) / UNIT
            seen = predict(paints, parts, PAPER, thickness, SURFACE)
            found.append(float(delta_e_2000(lab_of(seen), _lab(row))))
    return np.array(found)


def main() -> None:
    """Judge and print."""
    folder = Path(sys.argv[1])
    errors = mixture_errors(folder, fit_all(read_films(folder)))
    middle, far = np.median(errors), np.percentile(errors, 95)
    print(f"{errors.size} mixtures: median {middle:.2f}, 95th percentile {far:.2f}")


if __name__ == "__main__":
    main()
