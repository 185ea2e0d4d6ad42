"""Sheets of brush-outs of which the truth is known."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import WAVELENGTHS, lab_of
from swatchwright.paint.film import film_reflectance
from swatchwright.paint.mixture import DRY_INDEX, dry_lab, dry_reflectance, mix
from swatchwright.paint.paints import HowKnown, Paint, stack
from swatchwright.paint.surface import (
    inner_reflectance,
    internal_diffuse,
    normal_reflectance,
    seen_reflectance,
)
from swatchwright.shelf.brush_outs import Sheet, parse_sheet
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.shelf import Shelf

DEMO = demo_shelf()
TRUE = DEMO.paint("deep-blue-red")
WHITE = replace(DEMO.paint("white-clean"), how_known=HowKnown.MEASURED)
BLACK = replace(DEMO.paint("soft-black"), how_known=HowKnown.MEASURED)
RED = replace(DEMO.paint("clay-red-muted"), how_known=HowKnown.MEASURED)
SHELF = Shelf("mine", (WHITE, BLACK, RED))
BY_ID = {"blue": TRUE, "white-clean": WHITE, "soft-black": BLACK, "clay-red-muted": RED}

Mix = dict[str, float]

LET_DOWNS: tuple[Mix, ...] = (
    {"blue": 1},
    {"blue": 1, "white-clean": 1},
    {"blue": 1, "white-clean": 10},
)


def seen(parts: Mix, over: float | None = None) -> np.ndarray[tuple[int], np.dtype[np.float64]]:
    """Give the reflectance (36,) of a mix that hides, or of one coat over a ground."""
    paints = [BY_ID[id_] for id_ in parts]
    shares = np.array(list(parts.values()))
    mixture = mix(stack(paints), [range(len(paints))], [shares / shares.sum()])
    if over is None:
        return np.asarray(dry_reflectance(mixture)[0])
    k1, k2 = float(normal_reflectance(DRY_INDEX)), float(internal_diffuse(DRY_INDEX))
    ground = inner_reflectance(np.full(36, over), 0.0, k2)
    coat = (mixture.wet_film * mixture.solids)[:, None]
    film = film_reflectance(mixture.K, mixture.S, coat, ground)
    return np.asarray(seen_reflectance(film, k1, k2, mixture.glare[:, None])[0])


def sheet_of(
    mixes: tuple[Mix, ...] = LET_DOWNS, *, spectra: bool = False, grounds: bool = False
) -> Sheet:
    """Make a sheet of the blue, read without error."""
    bands = ",".join(f"r_{w:g}" for w in WAVELENGTHS) if spectra else "l,a,b"
    rows = [f"id,mix,over,coats,family,volume_solids,spreading_m2_per_l,{bands}"]
    films: list[tuple[int, Mix, str, float | None]] = [
        (n, parts, "", None) for n, parts in enumerate(mixes, 1)
    ]
    if grounds:
        films += [(9, {"blue": 1}, name, R) for name, R in (("black", 0.03), ("white", 0.8))]
    for number, parts, over, ground in films:
        read = seen(parts, ground)
        mixed = " ".join(f"{id_}={part:g}" for id_, part in parts.items())
        own = "satin,0.39,14" if parts == {"blue": 1} else ",,"
        cells = ",".join(f"{v:.6f}" for v in (read if spectra else lab_of(read)))
        rows.append(f"f{number},{mixed},{over},{'1' if over else ''},{own},{cells}")
    return parse_sheet("\n".join(rows), "sheet.csv")


def off(paint: Paint, share: float, other: Paint = WHITE) -> float:
    """Give CIEDE2000 between a mix of the fitted blue and of the true one."""
    labs = [
        dry_lab(mix(stack([one, other]), [[0, 1]], [[share, 1 - share]]))[0]
        for one in (paint, TRUE)
    ]
    return float(delta_e_2000(*labs))
