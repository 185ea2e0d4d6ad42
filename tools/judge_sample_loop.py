"""Judge the sample loop on simulated jobs whose truth is known.

    python tools/judge_sample_loop.py [JOBS]

Paints are composed of the measured colorants (white with one to three others, bent by random
bumps, each holding about as much pigment as the next), and the program knows each of them by
its one colour alone. A cloth within reach of twelve of them is wanted; its colour was read from a
first photo. The program finds mixes, and the surest of them is brushed, dried and compared with the
cloth; then its advice is followed. Hands err by 3 % in each amount, a photo by what photos of a
sample beside its cloth were found to be off by (docs/accuracy.md).
"""

from __future__ import annotations

import sys
from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, replace
from functools import cache, partial
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.acts.sample import Advice, advice_on, stripes_beside
from swatchwright.acts.sample_judged import How, Judged
from swatchwright.acts.sample_rounds import new_loop, take_round
from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.doubt import usual_difference
from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.mixing.learn import learn
from swatchwright.mixing.remix import outlook
from swatchwright.mixing.search import find_recipes
from swatchwright.paint.family import Family
from swatchwright.paint.fit.fitted import in_unit
from swatchwright.paint.fit.one import fit_paint
from swatchwright.paint.fit.prior import COLORANT_PAINT, basis
from swatchwright.paint.fit.readings import BrushOut, Reading
from swatchwright.paint.mixture import dry_lab, mix
from swatchwright.paint.paints import Paint, stack
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Covariance, KnownColour, Lab, isotropic

__all__ = ["Case", "Way", "judge", "within"]

Floats = NDArray[np.floating[Any]]
Mixed = tuple[tuple[str, float], ...]

MADE, WHITES, ON_SHELF = 80, 12, 12
UNIT = 110.0
STRENGTH = 0.4
"""Standard deviation of the logarithm of how much pigment a paint holds."""

COLOUR_READ = 1.0
"""Of a paint's one colour as the program knows it, each direction of CIELAB."""

CLOTH_READ = 2.3
"""Usual error of the cloth's colour in the first photo, CIEDE2000."""

PHOTO, PHOTO_GROWS = 0.5, 0.08
"""Of a difference within a photo, each direction of CIELAB: by itself, and for each unit of it."""

HANDS = 0.03
"""Standard deviation of the logarithm of an amount, as careful hands measure it."""

SAMPLE = 30.0
SITTINGS = 3


@dataclass(frozen=True)
class Way:
    """How the samples are brushed and what is known of the paints.

    Parameters
    ----------
    stripes
        1, or 3: with a mix to either side of where the program is least sure.
    strength_known
        Whether the program knows that paints hold about as much pigment as one another.
    """

    stripes: int
    strength_known: bool


@dataclass(frozen=True)
class Case:
    """CIEDE2000 of the best stripe of each sitting from the cloth, and how often a pot was kept."""

    off: tuple[float, ...]
    added: int


def invent(rng: np.random.Generator, number: int) -> Paint:
    """Invent a paint as it truly is; the first of them are whites."""
    _, K, S = basis()
    used = rng.choice(np.arange(1, len(K)), rng.integers(1, 4), replace=False)
    amounts = np.zeros(len(K))
    amounts[0] = 10 ** rng.uniform(-1.5, 0.3)
    amounts[used] = 10 ** rng.uniform(-3.0, 0.0, used.size)
    if number < WHITES:
        amounts[0], amounts[used] = 1.0, 10 ** rng.uniform(-4.5, -3.3, used.size)
    amounts *= UNIT * np.exp(rng.normal(0.0, STRENGTH)) / amounts.sum()
    k, s = amounts @ K * _bumps(rng, 0.3), amounts @ S * _bumps(rng, 0.15)
    solids = float(rng.uniform(0.33, 0.45))
    return Paint(f"p{number}", f"Paint {number}", Family.EMULSION, k, s, volume_solids=solids)


def _bumps(rng: np.random.Generator, height: float) -> Floats:
    at, width = rng.uniform(380, 730, (4, 1)), rng.uniform(30, 120, (4, 1))
    bumps = rng.normal(0, height, (4, 1)) * np.exp(-(((WAVELENGTHS - at) / width) ** 2))
    return np.asarray(np.exp(bumps.sum(axis=0)))


def colour(paints: Sequence[Paint], amounts: Sequence[float]) -> Floats:
    """Give the dry CIELAB of a mix."""
    shares = np.asarray(amounts) / np.sum(amounts)
    return np.asarray(dry_lab(mix(stack(paints), [range(len(paints))], [shares]))[0])


def guessed(paint: Paint, rng: np.random.Generator, *, strength_known: bool) -> Paint:
    """Give a paint as the program knows it from its one colour."""
    lab = colour([paint], [1.0]) + rng.normal(0.0, COLOUR_READ, 3)
    reading = Reading(lab=lab, covariance=COLOUR_READ**2 * np.eye(3))
    prior = replace(COLORANT_PAINT, total_spread=STRENGTH) if strength_known else COLORANT_PAINT
    fit = in_unit(fit_paint([BrushOut({"p": 1.0}, (reading,))], prior=prior), UNIT)
    spread = np.ascontiguousarray(fit.factor.T)
    return replace(
        paint, K=fit.K, S=fit.S, how_known=fit.how_known, spread=spread, volume_solids=0.38
    )


@cache
def store(made: int, *, strength_known: bool) -> tuple[tuple[Paint, ...], tuple[Paint, ...]]:
    """Give paints as they are, and as the program knows them."""
    rng = np.random.default_rng(7)
    true = tuple(invent(rng, i) for i in range(made))
    return true, tuple(guessed(p, rng, strength_known=strength_known) for p in true)


class _Job:
    """One job: a shelf, a cloth, and hands and photos that err."""

    def __init__(self, seed: int, made: int, way: Way) -> None:
        self.rng, self.way = np.random.default_rng([11, seed]), way
        true, known = store(made, strength_known=way.strength_known)
        others = WHITES + self.rng.choice(made - WHITES, ON_SHELF - 1, replace=False)
        ids = [int(self.rng.integers(0, WHITES)), *map(int, others)]
        self.true = {true[i].id: true[i] for i in ids}
        self.shelf = Shelf("simulated", tuple(known[i] for i in ids))
        self.cloth = self._cloth()
        read = np.clip(
            self.cloth + self.rng.normal(0.0, CLOTH_READ / 1.538, 3),
            (1, -120, -120), (99, 120, 120),
        )  # fmt: skip
        self.wanted = KnownColour(Lab.of(read), isotropic(CLOTH_READ), "a photo")

    def _cloth(self) -> Floats:
        count = int(self.rng.integers(2, 4))
        picked = self.rng.choice(list(self.true), count, replace=False)
        shares = self.rng.dirichlet(np.full(count, 0.8)) + 0.02
        return colour([self.true[str(id_)] for id_ in picked], shares.tolist())

    def first(self) -> list[Mixed]:
        """Give what is brushed at the first sitting: the surest of the mixes that were found."""
        nothing = learn(self.shelf.paints, self.wanted, [])
        recipes = find_recipes(self.wanted.lab, self.shelf.paints, keep=6).recipes
        named = [
            {p.id: s for p, s in zip(r.paints, r.shares, strict=True)}
            for r in recipes
        ]  # fmt: skip
        surest = min(named, key=lambda shares: outlook(nothing, shares).later)
        mixed = tuple((i, SAMPLE * s) for i, s in surest.items())
        if self.way.stripes == 1:
            return [mixed]
        beside = stripes_beside(self.shelf, new_loop(self.wanted), mixed, volume=SAMPLE)
        return [mixed, *(other.mixed for other in beside)]

    def brushed(self, mixed: Mixed) -> Floats:
        """Measure by hand, brush and dry: the true colour."""
        amounts = [ml * float(np.exp(self.rng.normal(0.0, HANDS))) for _, ml in mixed]
        return colour([self.true[id_] for id_, _ in mixed], amounts)

    def photographed(self, brushed: Floats) -> Judged:
        """Compare it with the cloth in a photo."""
        off = brushed - self.cloth
        sizes = PHOTO**2 + (PHOTO_GROWS * off) ** 2
        seen = off + self.rng.normal(0.0, np.sqrt(sizes))
        covariance = _diagonal(sizes)
        cloth = Lab.of(np.clip(self.cloth, (0, -128, -128), (100, 128, 128)))
        sample = Lab.of(np.clip(self.cloth + seen, (0, -128, -128), (100, 128, 128)))
        return Judged(
            How.PHOTO,
            (float(seen[0]), float(seen[1]), float(seen[2])),
            covariance,
            float(delta_e_2000(self.cloth, self.cloth + seen)),
            usual_difference(cloth, covariance),
            cloth,
            sample,
        )

    def run(self) -> Case:
        """Brush, compare, follow the advice, and again."""
        loop, mixes = new_loop(self.wanted), self.first()
        off, added = [], 0
        for _ in range(SITTINGS):
            found = []
            for at, mixed in enumerate(mixes):
                brushed = self.brushed(mixed)
                judged = self.photographed(brushed)
                found.append((judged.delta_e, float(delta_e_2000(self.cloth, brushed)), mixed))
                loop = take_round(self.shelf, loop, mixed, judged, day="2026-03-01", beside=at > 0)
            loop, advice = advice_on(self.shelf, loop)
            best = min(range(len(found)), key=lambda i: found[i][0])
            off.append(found[best][1])
            if self.way.stripes > 1:
                mixes = [advice.fresh.mixed, *(other.mixed for other in advice.beside)]
            elif advice.better_fresh or not advice.additions.steps:
                mixes = [advice.fresh.mixed]
            else:
                mixes, added = [_with_added(found[best][2], advice)], added + 1
        return Case(tuple(off), added)


def _with_added(mixed: Mixed, advice: Advice) -> Mixed:
    """Give all that is in the jar after what was proposed was added."""
    amounts = dict(mixed)
    for step in advice.additions.steps:
        amounts[step.paint.id] = amounts.get(step.paint.id, 0.0) + step.ml
    return tuple(amounts.items())


def _diagonal(sizes: Floats) -> Covariance:
    L, a, b = (float(v) for v in sizes)
    return ((L, 0.0, 0.0), (0.0, a, 0.0), (0.0, 0.0, b))


def _case(seed: int, *, made: int, way: Way) -> Case:
    return _Job(seed, made, way).run()


def judge(jobs: int, way: Way, *, made: int = MADE, workers: int = 1) -> list[Case]:
    """Run that many jobs."""
    store(made, strength_known=way.strength_known)
    work = partial(_case, made=made, way=way)
    if workers == 1:
        return [work(seed) for seed in range(jobs)]
    with ProcessPoolExecutor(workers) as pool:
        return list(pool.map(work, range(jobs), chunksize=4))


def within(cases: Sequence[Case], sitting: int, bound: float) -> float:
    """Give the share of jobs that are within a difference at a sitting, the first being 0."""
    return float(np.mean([case.off[sitting] < bound for case in cases]))


def main() -> None:
    """Judge and print."""
    jobs = int(sys.argv[1]) if len(sys.argv) > 1 else 500
    for strength_known in (True, False):
        for stripes in (1, 3):
            cases = judge(jobs, Way(stripes, strength_known), workers=2)
            print(f"{stripes} stripes, strength {'known' if strength_known else 'unknown'}:")
            for sitting in range(SITTINGS):
                off = [case.off[sitting] for case in cases]
                print(
                    f"  after {sitting} corrections: median {np.median(off):.2f}, "
                    f"80 % {np.percentile(off, 80):.2f}, 90 % {np.percentile(off, 90):.2f}; "
                    f"within 2.0 {within(cases, sitting, 2.0):.0%}, "
                    f"within 1.5 {within(cases, sitting, 1.5):.0%}"
                )
            print(f"  kept its pot: {sum(c.added for c in cases) / len(cases) / SITTINGS:.0%}")


if __name__ == "__main__":
    main()
