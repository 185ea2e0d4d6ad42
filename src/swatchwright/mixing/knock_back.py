"""Which wash takes a dry coat to where a client wants it: the reverse of reckoning a wash.

The forward reckoning is cheap, so it is simply tried: every paint alone, and every white or grey
with every other paint, thinned 1:1 to 1:5, in one to three passes. The most promising are then
tried again in all the parts that can be poured. What will lie over the wash, such as a wax, is
reckoned with: the colours are those that are seen with it on.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import product
from math import gcd, hypot
from typing import Any, TypeAlias

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import lab_of
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.mixing.under import lab_under
from swatchwright.paint.layered import Base, Coat, Film, film_of, look_of
from swatchwright.paint.mixture import Mixtures, dry_lab, mix
from swatchwright.paint.paints import Paint, PaintStack, stack
from swatchwright.paint.wash import GRAIN, Wash
from swatchwright.values import Lab

__all__ = [
    "FELT",
    "WORTH",
    "Washing",
    "as_grey_as",
    "best_washes",
    "felt_difference",
    "film_of_washing",
]

Floats = NDArray[np.floating[Any]]
Mix: TypeAlias = tuple[tuple[int, ...], tuple[int, ...]]

FELT = (0.25, 0.5, 0.25)
"""How much the flat, the whole and the grain count in how far off a wash is felt to be."""

_PASSES = (1, 2, 3)
_WATER = (1.0, 2.0, 3.0, 4.0, 5.0)
_FINE_WATER = tuple(1.0 + 0.5 * i for i in range(9))
_RATIOS = ((1, 3), (1, 1), (3, 1))
_FINE_RATIOS = tuple(
    (a, b)
    for a, b in product(range(1, 10), repeat=2)
    if gcd(a, b) == 1 and (a + b <= 8 or a + b == 10)
)

# Paints whose own chroma is below this are whites and greys, to tone others down with.
_NEUTRAL = 10.0
_MOST_NEUTRALS = 8
_POLISHED = 12

# What a painter gives for one paint, one pass or one part less, in CIEDE2000: to break near ties.
_PER_PAINT, _PER_PASS, _PER_PART = 0.4, 0.15, 0.03

# And for each unit that the wash's own colour lies away from the aim: it cannot overshoot what it
# tends to.
_PER_FAR = 0.01

WORTH = 0.4
"""What brings less than this, CIEDE2000, is not worth the work."""


@dataclass(frozen=True, slots=True)
class Washing:
    """A wash over a coat, and how near it comes.

    Parameters
    ----------
    paints, parts
        What it is mixed from, in whole parts; the largest first.
    water
        Volumes of water to one of paint.
    passes
        How often it is laid.
    left
        Share of the wet film that is left after wiping.
    own
        The colour of the wash's own paint, thick enough to hide: what it tends to.
    flat, dry, grain
        The dry colour on the flats, on the whole, and in grain and mouldings. As `own`, with all
        on that lies over the wash.
    delta_e
        CIEDE2000 of the whole from the aim.
    felt
        The same over flat, whole and grain, by the weights of `FELT`.
    """

    paints: tuple[Paint, ...]
    parts: tuple[int, ...]
    water: float
    passes: int
    left: float
    own: Lab
    flat: Lab
    dry: Lab
    grain: Lab
    delta_e: float
    felt: float


def as_grey_as(colour: Lab, cloth: Lab) -> Lab:
    """Give a colour the chroma of another, at its own hue and lightness.

    >>> as_grey_as(Lab(50, 30, 0), Lab(60, 0, 10))
    Lab(L=50, a=10.0, b=0.0)
    """
    own = hypot(colour.a, colour.b)
    scale = 0.0 if own == 0 else hypot(cloth.a, cloth.b) / own
    return Lab(colour.L, colour.a * scale, colour.b * scale)


def felt_difference(labs: Floats, aim: Lab) -> Floats:
    """Give how far off (...) washes are felt to be, from their colours (..., 3 of grain, 3)."""
    return np.asarray(delta_e_2000(np.array(aim.triple), labs) @ np.array(FELT))


def film_of_washing(
    paints: Sequence[Paint], parts: Sequence[float], water: float, passes: int, left: float
) -> Film:
    """Make the film that a wash of some paints leaves."""
    shares = np.array(parts, dtype=np.float64) / sum(parts)
    mixture = mix(stack(paints), [range(len(paints))], [shares])
    return film_of(mixture, Wash(water, left, passes))


def best_washes(
    base: Base,
    aim: Lab,
    shelf: Sequence[Paint],
    *,
    left: float = 0.2,
    keep: int = 3,
    over: Sequence[Coat] = (),
) -> tuple[Washing, ...]:
    """Find the washes that bring a coat nearest to a colour.

    Parameters
    ----------
    base
        The dry coat.
    aim
        The colour to go for, with all on that lies over the wash.
    shelf
        Paints to wash with: all water-borne or all not, at least one.
    left
        Share of the wet film that is left after wiping, above 0 to 1.
    keep
        How many at the most, each with another paint as its chief one.
    over
        What lies over the wash in the end, the lowest first.

    Returns
    -------
    Nearest first, counting what a painter gives for a simpler wash; each nearer to the aim than the
    bare coat is, on the whole and over the grain. Empty if there is none.

    Raises
    ------
    MendableError
        If there is nothing to wash with, or nothing is left of it.
    """
    _check(shelf, left)
    search = _Search(base, aim, tuple(shelf), stack(shelf), left, tuple(over))
    sets: list[tuple[int, ...]] = []
    for (which, _), _ in search.tried(_mixes(search.stack), _WATER):
        if which not in sets:
            sets.append(which)
        if len(sets) == _POLISHED:
            break
    before = float(delta_e_2000(aim.triple, lab_of(look_of(base, over))[0]))
    found = [search.polished(which) for which in sets]
    better = [w for w in found if w.delta_e < before and w.felt < before - WORTH]
    return tuple(_unlike(sorted(better, key=lambda w: _cost(w, aim)), keep))


def _check(shelf: Sequence[Paint], left: float) -> None:
    if not shelf:
        raise MendableError(
            say("There is no paint to wash with."), say("Leave at least one to choose from.")
        )
    if not 0 < left <= 1:
        raise MendableError(
            say("{left:g} % of the wash would be left after wiping.", left=100 * left),
            say("Give more than 0 and up to 100 %."),
        )


def _mixes(paints: PaintStack) -> list[Mix]:
    """List every paint alone, and the whites and greys with every other paint."""
    count = len(paints)
    _, a, b = dry_lab(mix(paints, np.arange(count)[:, None], np.ones((count, 1)))).T
    chroma = np.hypot(a, b)
    neutral = [i for i in np.argsort(chroma, kind="stable").tolist() if chroma[i] < _NEUTRAL]
    alone: list[Mix] = [((i,), (1,)) for i in range(count)]
    pairs = dict.fromkeys(
        (min(i, j), max(i, j)) for i in neutral[:_MOST_NEUTRALS] for j in range(count) if i != j
    )
    return alone + [(pair, ratio) for pair in pairs for ratio in _RATIOS]


@dataclass(frozen=True, slots=True, eq=False)
class _Search:
    """What every try has in common."""

    base: Base
    aim: Lab
    shelf: tuple[Paint, ...]
    stack: PaintStack
    left: float
    over: tuple[Coat, ...]

    def tried(
        self, mixes: Sequence[Mix], waters: Sequence[float]
    ) -> Iterator[tuple[Mix, tuple[float, int]]]:
        """Reckon every mix at every thinning and number of passes; give them by cost."""
        ways = list(product(waters, _PASSES))
        mixture = self.mixed(mixes)
        far = delta_e_2000(np.array(self.aim.triple), lab_under(mixture, self.over))
        simple = np.array(
            [_PER_PAINT * (len(w) - 1) + _PER_PART * sum(parts) for w, parts in mixes]
        )
        cost = felt_difference(self.labs(mixture, ways), self.aim)
        cost = cost + (simple + _PER_FAR * far)[:, None]
        cost = cost + _PER_PASS * np.array([passes - 1 for _, passes in ways])
        for row in np.argsort(cost, axis=None, kind="stable").tolist():
            i, j = divmod(row, len(ways))
            yield mixes[i], ways[j]

    def mixed(self, mixes: Sequence[Mix]) -> Mixtures:
        """Mix them all; a paint alone is itself and none of itself."""
        size = max(len(which) for which, _ in mixes)
        which = np.array([(*w, *[w[0]] * (size - len(w))) for w, _ in mixes])
        parts = np.array([(*p, *[0] * (size - len(p))) for _, p in mixes], dtype=np.float64)
        return mix(self.stack, which, parts / parts.sum(axis=1, keepdims=True))

    def labs(self, mixture: Mixtures, ways: Sequence[tuple[float, int]]) -> Floats:
        """Give the dry colours (mixes, ways, grain, 3)."""
        once = film_of(mixture, Wash(0.0, self.left, 1))
        times = np.array([passes / (1.0 + water) for water, passes in ways])
        # Of each mix, over thinnings and passes, over the grain.
        each = {
            name: np.asarray(getattr(once, name))[:, None, None]
            for name in ("K", "S", "glare", "wet_scattering", "milk", "wet_index", "thickness")
        }
        film = replace(once, **each | {"thickness": each["thickness"] * times[:, None]})
        return lab_of(look_of(self.base, [film, *self.over], factor=np.array(GRAIN)))

    def polished(self, which: tuple[int, ...]) -> Washing:
        """Try a set of paints in all parts that can be poured, and take the best."""
        ratios = ((1,),) if len(which) == 1 else _FINE_RATIOS
        chosen, way = next(self.tried([(which, ratio) for ratio in ratios], _FINE_WATER))
        mixture = self.mixed([chosen])
        labs = self.labs(mixture, [way])[0, 0]
        chief_first = sorted(zip(chosen[1], chosen[0], strict=True), key=lambda row: -row[0])
        flat, dry, grain = (Lab.of(lab) for lab in labs)
        return Washing(
            paints=tuple(self.shelf[i] for _, i in chief_first),
            parts=tuple(count for count, _ in chief_first),
            water=way[0],
            passes=way[1],
            left=self.left,
            own=Lab.of(lab_under(mixture, self.over)[0]),
            flat=flat,
            dry=dry,
            grain=grain,
            delta_e=float(delta_e_2000(self.aim.triple, dry.triple)),
            felt=float(felt_difference(labs, self.aim)),
        )


def _cost(washing: Washing, aim: Lab) -> float:
    """Give how far off a wash is felt to be, and what a simpler and a safer one is worth."""
    far = float(delta_e_2000(aim.triple, washing.own.triple))
    simple = _PER_PAINT * (len(washing.paints) - 1) + _PER_PASS * (washing.passes - 1)
    return washing.felt + simple + _PER_PART * sum(washing.parts) + _PER_FAR * far


def _unlike(found: Iterable[Washing], keep: int) -> list[Washing]:
    """Keep the first, and then those whose chief paint is another."""
    kept: dict[str, Washing] = {}
    for washing in found:
        kept.setdefault(washing.paints[0].id, washing)
    return list(kept.values())[:keep]
