"""Fit K and S spectra of pigments to measured oil paints, and write them as the colorant basis.

    python tools/fit_colorants.py SAMPLES.csv

SAMPLES.csv holds reflectance factors of pure paints and of two-paint mixtures over black and
white grounds (columns sample, paints, shares, surface, r_400..r_700; four rows a sample: over
black, over white, bare black, bare white). The basis in the repository was made from the open
spectra of the Revigo project (CC0 1.0; Geldof et al. 2018, Heritage Science 6:17,
doi 10.1186/s40494-018-0181-6).

The model is a Kubelka-Munk film of unit thickness over the measured ground, two-constant mixing
(Duncan 1940) and the Saunderson correction with k1 = 0.02, k2 = 0.6 (the darkest reading is 0.021,
so the usual 0.04 is too much for this set). Wavelengths are fitted one by one, each held near the
mean of its neighbours by a weak penalty on log K and log S, in a few sweeps.
"""

from __future__ import annotations

import csv
import sys
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import least_squares

K1, K2 = 0.02, 0.6
SWEEPS = 6
SMOOTHNESS = 0.04
OUTPUT = Path(__file__).parents[1] / "src/swatchwright/paint/colorants.csv"

# What the basis keeps, by the plain name of the pigment. Two of the measured whites are near
# enough alike; waxed and second-maker versions of one pigment are used in the fit and left out.
KEPT = {
    "LeadWhite": "white",
    "BoneBlack": "bone_black",
    "ChromeYellow": "mid_yellow",
    "ChromeYellowOtero": "lemon_yellow",
    "Minium": "orange_red",
    "Vermillion": "warm_red",
    "Cochineal": "crimson",
    "Eosin": "pink_red",
    "UltramarineBlue": "violet_blue",
    "CobaltBlue": "mid_blue",
    "PrussianBlue": "green_blue",
    "ViridianGreen": "blue_green",
    "EmeraldGreen": "bright_green",
}

Floats = NDArray[np.float64]


@dataclass(frozen=True)
class Samples:
    """Measured samples: shares (n, paints); reflectances and grounds (n, 2, wavelengths)."""

    paints: list[str]
    nm: Floats
    shares: Floats
    measured: Floats
    grounds: Floats


def read(path: Path) -> Samples:
    """Read the measured samples."""
    with path.open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    bands = [c for c in rows[0] if c.startswith("r_")]
    paints = sorted({p for r in rows for p in r["paints"].split("+")})
    names = sorted({r["sample"] for r in rows})
    shares = np.zeros((len(names), len(paints)))
    spectra: dict[tuple[str, str], Floats] = {}
    for row in rows:
        spectra[row["sample"], row["surface"]] = np.array([float(row[b]) for b in bands])
        for paint, share in zip(row["paints"].split("+"), row["shares"].split("+"), strict=True):
            shares[names.index(row["sample"]), paints.index(paint)] = float(share)
    return Samples(
        paints,
        np.array([float(b[2:]) for b in bands]),
        shares,
        np.array([[spectra[n, f"over {g}"] for g in ("black", "white")] for n in names]),
        np.array([[spectra[n, f"bare {g}"] for g in ("black", "white")] for n in names]),
    )


def predict(K: Floats, S: Floats, shares: Floats, grounds: Floats) -> Floats:
    """Give measured reflectance (n, 2) of unit films over their grounds at one wavelength."""
    k, s = (shares @ K)[:, None], (shares @ S)[:, None]
    inner = (grounds - K1) / (1 - K1 - K2 + K2 * grounds)
    ground = np.clip(inner, 1e-4, 0.999)
    a = 1 + k / s
    b = np.sqrt(a * a - 1)
    coth = 1 / np.tanh(np.clip(b * s, 1e-9, 300))
    film = (1 - ground * (a - b * coth)) / (a - ground + b * coth)
    return np.asarray(K1 + (1 - K1) * (1 - K2) * film / (1 - K2 * film))


def fit(data: Samples) -> tuple[Floats, Floats]:
    """Fit K and S, both (wavelengths, paints)."""
    count = len(data.paints)
    logs = np.zeros((data.nm.size, 2 * count))
    for sweep in range(SWEEPS):
        for i in range(data.nm.size):
            near = [j for j in (i - 1, i + 1) if 0 <= j < data.nm.size]
            near = near if sweep else near[:1]
            centre = logs[near].mean(axis=0) if near else logs[i]
            weight = SMOOTHNESS if near and (sweep or i) else 0.01
            start = logs[i] if sweep else centre
            logs[i] = least_squares(
                _residuals,
                np.clip(start, -9, 6),
                bounds=(-9.5, 6.5),
                args=(data, i, centre, weight),
            ).x
        print(f"sweep {sweep + 1} of {SWEEPS}: rms {_rms(logs, data):.4f}")
    return np.exp(logs[:, :count]), np.exp(logs[:, count:])


def _residuals(x: Floats, data: Samples, i: int, centre: Floats, weight: float) -> Floats:
    """Compare on the cube root, as lightness does, so that darks count as the eye counts them."""
    half = x.size // 2
    model = predict(np.exp(x[:half]), np.exp(x[half:]), data.shares, data.grounds[:, :, i])
    error = np.cbrt(model) - np.cbrt(data.measured[:, :, i])
    return np.concatenate([error.ravel(), weight * (x - centre)])


def _rms(logs: Floats, data: Samples) -> float:
    half = logs.shape[1] // 2
    errors = [
        predict(np.exp(logs[i, :half]), np.exp(logs[i, half:]), data.shares, data.grounds[:, :, i])
        - data.measured[:, :, i]
        for i in range(data.nm.size)
    ]
    return float(np.sqrt(np.mean(np.square(errors))))


def write(data: Samples, K: Floats, S: Floats, path: Path) -> None:
    """Write K and S of the kept pigments, in units of the white's mean S."""
    unit = S[:, data.paints.index("LeadWhite")].mean()
    columns = {f"K_{new}": K[:, data.paints.index(old)] / unit for old, new in KEPT.items()}
    columns |= {f"S_{new}": S[:, data.paints.index(old)] / unit for old, new in KEPT.items()}
    with path.open("w", encoding="utf-8", newline="\n") as file:
        file.write(",".join(["nm", *columns]) + "\n")
        for i, nm in enumerate(data.nm):
            file.write(",".join([f"{nm:g}", *(f"{c[i]:.5g}" for c in columns.values())]) + "\n")


def main() -> None:
    """Fit and write."""
    data = read(Path(sys.argv[1]))
    K, S = fit(data)
    write(data, K, S, OUTPUT)
    print(f"wrote {OUTPUT.name}: {len(KEPT)} colorants")


if __name__ == "__main__":
    main()
