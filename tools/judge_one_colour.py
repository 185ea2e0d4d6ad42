"""Judge what is made of a paint's one colour: mixes of such paints against the true ones.

    python tools/judge_one_colour.py [PAINTS]

Three kinds of paint. *Even* ones are those of tools/judge_sample_loop.py: any share of white, each
with about as much pigment as the next. *Tinted* ones are made as house paint is: whites, a white
base with a little colour, and deep ones with hardly any white, which hold a quarter to twice as
much. *Left out* are the measured pigments themselves [Geldof2018], each fitted without itself in
the basis. All are read to within 1 unit of CIELAB each way. Mixes of two are compared; in half of
them one is among the lightest fifth.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Any
from unittest.mock import patch

import numpy as np
from numpy.typing import NDArray

from judge_sample_loop import COLOUR_READ, UNIT, colour, guessed, invent
from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.paint.colorants import colorants
from swatchwright.paint.family import Family
from swatchwright.paint.fit import prior
from swatchwright.paint.mixture import dry_lab, mix
from swatchwright.paint.paints import Paint, stack

__all__ = ["Outcome", "even", "judge", "left_out", "tinted"]

Floats = NDArray[np.floating[Any]]
Pairs = tuple[list[Paint], list[Paint]]

MIXES = 1500
SOLIDS = 0.38
_SEEN = (WAVELENGTHS >= 430) & (WAVELENGTHS <= 700)


@dataclass(frozen=True)
class Outcome:
    """How mixes of paints known by one colour came out.

    Parameters
    ----------
    off
        (n,) CIEDE2000 of mixes as predicted from the true ones.
    lighter
        (n,) how much lighter the true ones are, L*.
    stronger
        (paints,) mean of ln S that is true less that assumed.
    """

    off: Floats
    lighter: Floats
    stronger: Floats


def even(count: int, seed: int = 77) -> Pairs:
    """Invent paints that hold about as much pigment as one another; a fifth of them are whites."""
    rng = np.random.default_rng([23, seed])
    whites = count // 5
    true = [invent(rng, i if i < whites else i + 100) for i in range(count)]
    return true, [guessed(paint, rng, strength_known=False) for paint in true]


def tinted(count: int, seed: int = 77) -> Pairs:
    """Invent paints as house paint is made: whites, tinted whites, and deep ones."""
    rng = np.random.default_rng([24, seed])
    true = [_tinted(rng, i) for i in range(count)]
    return true, [guessed(paint, rng, strength_known=False) for paint in true]


def _tinted(rng: np.random.Generator, number: int) -> Paint:
    _, K, S = prior.basis()
    amounts = np.zeros(len(K))
    kind = number % 5
    if kind == 0:
        amounts[0], others = rng.uniform(0.7, 1.2), rng.uniform(0.0, 0.004, 2)
    elif kind in {1, 2}:
        amounts[0] = rng.uniform(0.4, 1.0)
        others = 10 ** rng.uniform(-2.5, -0.9, rng.integers(2, 4))
    else:
        amounts[0] = rng.uniform(0.0, 0.15)
        others = rng.uniform(0.05, 0.6, rng.integers(1, 4))
    amounts[rng.choice(np.arange(1, len(K)), len(others), replace=False)] = others
    amounts *= UNIT * np.exp(rng.normal(0.0, 0.15))
    return _paint(f"h{number}", amounts @ K * _bumps(rng, 0.2), amounts @ S * _bumps(rng, 0.15))


def _bumps(rng: np.random.Generator, height: float) -> Floats:
    at, width = rng.uniform(380, 730, (4, 1)), rng.uniform(30, 120, (4, 1))
    bumps = rng.normal(0, height, (4, 1)) * np.exp(-(((WAVELENGTHS - at) / width) ** 2))
    return np.asarray(np.exp(bumps.sum(axis=0)))


def _paint(id_: str, K: Floats, S: Floats) -> Paint:
    return Paint(id_, id_, Family.EMULSION, K, S, volume_solids=SOLIDS)


def left_out(*, white_known: bool) -> Pairs:
    """Give the measured pigments, each as it is guessed by the others; the white may be known."""
    names, K, S = prior.basis()
    true = [_paint(n, UNIT * k, UNIT * s) for n, k, s in zip(names, K, S, strict=True)]
    rng = np.random.default_rng(29)
    known = []
    for paint in true:
        with _without(paint.id):
            known.append(guessed(paint, rng, strength_known=False))
    if white_known:
        known[names.index("white")] = true[names.index("white")]
    return true, known


@contextmanager
def _without(name: str) -> Iterator[None]:
    """Take a colorant out of the basis; the white stays, for nothing is like it."""
    full = colorants()
    less = {n: pair for n, pair in full.items() if n != name or n == "white"}
    prior.basis.cache_clear()
    with patch.object(prior, "colorants", lambda: less):
        yield
    prior.basis.cache_clear()


def judge(pairs: Pairs, mixes: int = MIXES, seed: int = 3) -> Outcome:
    """Compare mixes of two as they are with what is predicted."""
    true, known = pairs
    rng = np.random.default_rng(seed)
    light = np.argsort([-colour([paint], [1.0])[0] for paint in true])[: max(3, len(true) // 5)]
    which = np.array([rng.choice(len(true), 2, replace=False) for _ in range(mixes)])
    which[: mixes // 2, 0] = rng.choice(light, mixes // 2)
    which = which[which[:, 0] != which[:, 1]]
    share = rng.uniform(0.03, 0.97, len(which))
    shares = np.stack([share, 1 - share], axis=1)
    right, mine = (_labs(paints, which, shares) for paints in (true, known))
    levels = [np.log(t.S / k.S)[_SEEN].mean() for t, k in zip(true, known, strict=True)]
    return Outcome(delta_e_2000(right, mine), right[:, 0] - mine[:, 0], np.array(levels))


def _labs(paints: Sequence[Paint], which: NDArray[np.intp], shares: Floats) -> Floats:
    return np.asarray(dry_lab(mix(stack(paints), which, shares)))


def main() -> None:
    """Judge and print."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 40
    print(f"each colour read to within {COLOUR_READ:g}")
    for name, pairs in {
        "even": even(count),
        "tinted": tinted(count),
        "left out": left_out(white_known=False),
        "left out, white known": left_out(white_known=True),
    }.items():
        found = judge(pairs)
        print(
            f"{name}: off by a median of {np.median(found.off):.1f}, "
            f"root mean square {np.sqrt((found.off**2).mean()):.1f}; "
            f"the truth is {found.lighter.mean():+.1f} L* lighter; "
            f"ln S {found.stronger.mean():+.2f} give or take {found.stronger.std():.2f}"
        )


if __name__ == "__main__":
    main()
