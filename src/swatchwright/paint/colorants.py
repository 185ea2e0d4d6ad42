"""The colorant basis: K and S of measured pigments, from which paints can be composed.

The shapes are a fit (tools/fit_colorants.py) to the open spectra of 19 oil paints and 33 of their
two-paint mixtures over black and white: the Revigo project, CC0 1.0; Geldof et al. 2018, Heritage
Science 6:17, doi 10.1186/s40494-018-0181-6. They are in units of the white's mean S. No iron
oxides or phthalocyanines were in the set, so earths are composed of yellow, red and black.
"""

from __future__ import annotations

from functools import cache
from importlib.resources import files
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.spectrum import to_grid

__all__ = ["Colorant", "colorants", "compose"]

Floats = NDArray[np.floating[Any]]

Colorant = tuple[Floats, Floats]
"""K and S, each (36,), in units of the white's mean S."""


@cache
def colorants() -> dict[str, Colorant]:
    """Read the basis: K and S (36,) of each colorant by its plain name."""
    text = files("swatchwright.paint").joinpath("colorants.csv").read_text(encoding="utf-8")
    head, *rows = [line.split(",") for line in text.splitlines()]
    table = dict(zip(head, np.array(rows, dtype=np.float64).T, strict=True))
    names = [column.removeprefix("K_") for column in head if column.startswith("K_")]
    nm = table["nm"]
    return {n: (to_grid(nm, table[f"K_{n}"]), to_grid(nm, table[f"S_{n}"])) for n in names}


def compose(amounts: dict[str, float]) -> Colorant:
    """Sum colorants in the given amounts (0 or more, any unit) to a paint's K and S.

    Raises
    ------
    KeyError
        If a colorant is not in the basis.
    """
    basis = colorants()
    K = sum(amount * basis[name][0] for name, amount in amounts.items())
    S = sum(amount * basis[name][1] for name, amount in amounts.items())
    return np.asarray(K), np.asarray(S)
