"""Compose the demonstration shelf from the colorant basis and write its file.

    python tools/make_demo_shelf.py

Every paint on it is invented: its recipe of colorants below, its solids, density, spreading rate,
tins and prices are plausible for house paint and belong to no maker.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import numpy as np

from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.paint.colorants import compose

OUTPUT = Path(__file__).parents[1] / "src/swatchwright/shelf/demo_shelf.csv"
NOTE = "Invented for demonstration. No such paint is sold."

# S of a white dry film, per mm: two coats of 33 um dry then hide at 98 % on black and white.
WHITE_S = 110.0


@dataclass(frozen=True)
class Row:
    """One invented paint: amounts of colorants per unit of dry film, and what its tin says."""

    name: str
    family: str
    amounts: dict[str, float]
    density: float
    solids: float
    rate: float
    tins: str
    prices: str


def _chalky(name: str, density: float, **amounts: float) -> Row:
    return Row(name, "chalky matte", amounts, density, 0.40, 13, "120;500;1000", "7.50;19;32")


def _mineral(name: str, density: float, **amounts: float) -> Row:
    return Row(name, "mineral", amounts, density, 0.42, 12, "500;1000", "21;36")


def _emulsion(name: str, density: float, **amounts: float) -> Row:
    return Row(name, "emulsion matte", amounts, density, 0.36, 12, "250;1000;2500", "8;22;44")


def _eggshell(name: str, density: float, **amounts: float) -> Row:
    return Row(name, "eggshell", amounts, density, 0.38, 14, "250;750;2500", "11;26;62")


def _satin(name: str, density: float, **amounts: float) -> Row:
    return Row(name, "satin", amounts, density, 0.39, 14, "250;750;2500", "11;26;62")


def _gloss(name: str, density: float, **amounts: float) -> Row:
    return Row(name, "gloss", amounts, density, 0.42, 14, "250;750", "12;28")


SHELF = [
    _chalky("White, clean", 1.44, white=1.0, bone_black=0.0004),
    _eggshell("White, slightly yellow", 1.36, white=0.95, mid_yellow=0.0009, bone_black=0.0008),
    _chalky("Cream, pale yellow", 1.43, white=0.93, mid_yellow=0.006, warm_red=0.003, bone_black=0.001),
    _emulsion("Straw yellow, muted", 1.38, white=0.72, mid_yellow=0.04, bone_black=0.004, warm_red=0.01),
    _satin("Strong yellow, slightly orange", 1.18, white=0.05, mid_yellow=0.18, warm_red=0.006),
    _satin("Strong yellow, slightly green", 1.17, white=0.06, lemon_yellow=0.2),
    _emulsion("Strong orange", 1.16, white=0.04, mid_yellow=0.10, warm_red=0.18),
    _chalky("Clay red, muted", 1.37, white=0.22, warm_red=0.42, mid_yellow=0.02, bone_black=0.03),
    _satin("Strong red, slightly orange", 1.12, white=0.01, warm_red=0.55, mid_yellow=0.01),
    _eggshell("Deep red, slightly blue", 1.10, white=0.02, crimson=0.25, warm_red=0.12),
    _chalky("Pale pink, greyish", 1.42, white=0.9, warm_red=0.028, bone_black=0.002, mid_yellow=0.001),
    _eggshell("Dark plum", 1.14, white=0.03, crimson=0.2, violet_blue=0.22, bone_black=0.01),
    _satin("Deep blue, slightly red", 1.15, white=0.02, violet_blue=1.1),
    _emulsion("Mid blue, clear", 1.28, white=0.22, mid_blue=0.5),
    _chalky("Ink blue, dark", 1.33, white=0.05, violet_blue=0.5, green_blue=0.006, bone_black=0.03),
    _chalky("Pale blue, greyish", 1.42, white=0.85, mid_blue=0.06, bone_black=0.006),
    _emulsion("Green-blue, mid", 1.27, white=0.35, green_blue=0.004, bright_green=0.12, mid_blue=0.05),
    _gloss("Deep green, slightly blue", 1.14, white=0.01, blue_green=0.55, lemon_yellow=0.006),
    _emulsion("Leaf green, mid", 1.24, white=0.10, bright_green=0.45, lemon_yellow=0.05, bone_black=0.01),
    _chalky("Sage green, pale", 1.41, white=0.75, bright_green=0.10, mid_yellow=0.008, bone_black=0.012),
    _mineral("Olive, dark", 1.39, white=0.10, mid_yellow=0.06, bone_black=0.09, bright_green=0.06),
    _mineral("Earth brown, mid", 1.40, white=0.10, mid_yellow=0.05, warm_red=0.14, bone_black=0.07),
    _chalky("Stone grey, warm", 1.42, white=0.72, bone_black=0.045, mid_yellow=0.006, warm_red=0.004),
    _chalky("Soft black", 1.30, white=0.006, bone_black=0.55, violet_blue=0.02),
]  # fmt: skip


def main() -> None:
    """Write the shelf file."""
    grid = [f"{nm:g}" for nm in WAVELENGTHS if 400 <= nm <= 700]
    inside = (WAVELENGTHS >= 400) & (WAVELENGTHS <= 700)
    head = [
        "id", "name", "family", "how_known", "volume_solids", "density_g_per_ml",
        "spreading_m2_per_l", "tins_ml", "prices", "note",
    ]  # fmt: skip
    lines = [[*head, *(f"k_{nm}" for nm in grid), *(f"s_{nm}" for nm in grid)]]
    for row in SHELF:
        K, S = (WHITE_S * spectrum[inside] for spectrum in compose(row.amounts))
        made = row.name.lower().replace(", slightly ", "-").replace(", ", "-").replace(" ", "-")
        lines.append(
            [made, f'"{row.name}"', row.family, "invented", f"{row.solids}", f"{row.density}",
             f"{row.rate}", row.tins, row.prices, NOTE]
            + [f"{v:.5g}" for v in np.concatenate([K, S])]
        )  # fmt: skip
    text = "\n".join(",".join(cells) for cells in lines) + "\n"
    OUTPUT.write_text(text, encoding="utf-8", newline="\n")
    print(f"wrote {OUTPUT.name}: {len(SHELF)} invented paints")


if __name__ == "__main__":
    main()
