"""Judge what the program says of the next sample: how far from the cloth it will usually be.

    python tools/judge_sample_doubt.py [JOBS] [FIRST]

For each kind of shelf that many jobs are made (tools/sample_world.py), numbered from FIRST; the
constants in mixing/learn.py and mixing/readings.py were chosen on the jobs from 0 on, and
docs/accuracy.md tells those from 1000 on, of other paints, cloths and cameras' errors. Each job
photographs the cloth, brushes the first mix that is found, photographs it beside the cloth and asks
what next. Both ways are then brushed, the addition and the fresh mix, each against what was told of
it; the loop goes on with one of them.
"""

from __future__ import annotations

import sys
from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass

import numpy as np

from sample_world import KINDS, World, prepare, world
from swatchwright.acts.sample import Advice, advice_on
from swatchwright.acts.sample_rounds import new_loop, take_round
from swatchwright.colour.difference import delta_e_2000
from swatchwright.mixing.search import find_recipes

__all__ = ["Outcome", "judge", "ratio"]

Mixed = tuple[tuple[str, float], ...]

SAMPLE = 30.0
SITTINGS = 3
BINS = 6


@dataclass(frozen=True)
class Outcome:
    """What was told of a next sample, and what it came to, CIEDE2000 from the cloth.

    Parameters
    ----------
    kind, sitting
        Of which shelf, and after how many samples, counted from 0.
    way
        `add` or `fresh`.
    told, true
        The usual difference that was told, and the true one.
    """

    kind: str
    sitting: int
    way: str
    told: float
    true: float


def run(kind: str, seed: int) -> list[Outcome]:
    """Run a job."""
    at = world(kind, seed)
    cloth, wanted = at.lab(at.cloth), at.read()
    recipe = find_recipes(wanted.lab, at.shelf.paints, keep=1).recipes[0]
    mixed: Mixed = tuple(
        (paint.id, SAMPLE * share)
        for paint, share in zip(recipe.paints, recipe.shares, strict=True)
    )
    pot, loop = at.poured(mixed), new_loop(wanted)
    found: list[Outcome] = []
    for sitting in range(SITTINGS):
        judged = at.compared(at.brushed(pot))
        loop = take_round(at.shelf, loop, mixed, judged, day="2026-03-01")
        loop, advice = advice_on(at.shelf, loop)
        ways = _ways(at, advice, mixed, pot)
        for way, (_, poured, told) in ways.items():
            true = float(delta_e_2000(cloth, at.lab(at.brushed(poured))))
            found.append(Outcome(kind, sitting, way, told, true))
        # Every other job adds wherever something can be added, as a painter who is short of paint.
        adds = "add" in ways and (seed % 2 == 1 or not advice.better_fresh)
        mixed, pot, _ = ways["add" if adds else "fresh"]
    return found


def _ways(
    at: World, advice: Advice, mixed: Mixed, pot: dict[str, float]
) -> dict[str, tuple[Mixed, dict[str, float], float]]:
    """Give what is believed to be in the pot, what is, and how far off it was told to be."""
    fresh = advice.fresh
    ways = {"fresh": (fresh.mixed, at.poured(fresh.mixed), fresh.outlook.usual)}
    steps = tuple((step.paint.id, step.ml) for step in advice.additions.steps)
    if steps:
        amounts = dict(mixed)
        for id_, ml in steps:
            amounts[id_] = amounts.get(id_, 0.0) + ml
        ways["add"] = (tuple(amounts.items()), at.poured(steps, pot), advice.after.usual)
    return ways


def judge(
    jobs: int, first: int, *, kinds: Sequence[str] = KINDS, workers: int = 1
) -> list[Outcome]:
    """Run that many jobs of each kind."""
    prepare(kinds, first)
    work = [(kind, seed) for kind in kinds for seed in range(first, first + jobs)]
    if workers == 1:
        return [one for kind, seed in work for one in run(kind, seed)]
    with ProcessPoolExecutor(workers) as pool:
        done = pool.map(run, *zip(*work, strict=True), chunksize=4)
        return [one for found in done for one in found]


def ratio(found: Sequence[Outcome]) -> float:
    """Give the root mean square of the true differences over that of the told ones."""
    told, true = _both(found)
    return float(np.sqrt((true**2).mean() / (told**2).mean()))


def binned(found: Sequence[Outcome], bins: int = BINS) -> list[tuple[float, float, float]]:
    """Give told and true root mean square and the share within, of equal parts by the told."""
    told, true = _both(found)
    rows = []
    for part in np.array_split(np.argsort(told, kind="stable"), bins):
        t, w = told[part], true[part]
        rows.append((_rms(t), _rms(w), float((w <= t).mean())))
    return rows


def _both(found: Sequence[Outcome]) -> tuple[np.ndarray, np.ndarray]:
    return np.array([one.told for one in found]), np.array([one.true for one in found])


def _rms(values: np.ndarray) -> float:
    return float(np.sqrt((values**2).mean()))


def main() -> None:
    """Judge and print."""
    jobs = int(sys.argv[1]) if len(sys.argv) > 1 else 120
    first = int(sys.argv[2]) if len(sys.argv) > 2 else 1000
    found = judge(jobs, first, workers=2)
    groups = {"all": found}
    groups |= {way: [one for one in found if one.way == way] for way in ("add", "fresh")}
    groups |= {kind: [one for one in found if one.kind == kind] for kind in KINDS}
    groups |= {
        f"{kind}, {way}": [one for one in found if (one.kind, one.way) == (kind, way)]
        for kind in KINDS
        for way in ("add", "fresh")
    }
    for name, some in groups.items():
        told, true = _both(some)
        print(
            f"{name}: {len(some)} told {_rms(told):.2f}, true {_rms(true):.2f}, "
            f"ratio {ratio(some):.2f}, within {np.mean(true <= told):.0%}"
        )
        print("   " + "  ".join(f"{t:.1f} → {w:.1f} ({i:.0%})" for t, w, i in binned(some)))


if __name__ == "__main__":
    main()
