"""Shelves of any size, composed of the measured colorants: white with one to three others."""

from __future__ import annotations

from functools import cache

import numpy as np

from swatchwright.paint.colorants import colorants, compose
from swatchwright.paint.family import Family
from swatchwright.paint.paints import Paint, Tin

_FAMILIES = (Family.CHALKY, Family.EMULSION, Family.EGGSHELL)


@cache
def composed(count: int, seed: int = 1) -> tuple[Paint, ...]:
    """Compose a shelf of plausible paints, the first nearly white; the same for the same seed."""
    rng = np.random.default_rng(seed)
    names = [name for name in colorants() if name != "white"]
    return tuple(_paint(i, names, rng) for i in range(count))


def _paint(i: int, names: list[str], rng: np.random.Generator) -> Paint:
    picked = rng.choice(names, rng.integers(1, 4), replace=False)
    amounts = {"white": 10 ** rng.uniform(-1.5, 0.3)}
    amounts |= {str(name): 10 ** rng.uniform(-3, 0) for name in picked}
    if i == 0:
        amounts = {"white": 1.0, "bone_black": 1e-4}
    K, S = compose(amounts)
    scale = 60 / S.mean()
    return Paint(
        f"paint-{i}",
        f"Composed paint {i}",
        _FAMILIES[rng.integers(0, len(_FAMILIES))],
        K * scale,
        S * scale,
        volume_solids=float(rng.uniform(0.3, 0.5)),
        tins=(Tin(500.0, float(rng.uniform(8, 30))),),
    )
