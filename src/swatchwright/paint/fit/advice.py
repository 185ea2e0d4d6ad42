"""Which brush-out would teach most about a paint.

Every brush-out that could be made is added to the fit as if it had come out just as predicted;
what it would leave of the spread of the paint's mixtures can be told without making it, for that
depends on how readings change with the unknowns and not on what they turn out to be.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.spectrum import WAVELENGTHS, lab_of
from swatchwright.language import say
from swatchwright.paint.fit.fitted import FittedPaint
from swatchwright.paint.fit.model import colour_slope, slopes, state
from swatchwright.paint.fit.one import ORDINARY, solve_one
from swatchwright.paint.fit.prior import COLORANT_PAINT, Errors, Prior, Surface
from swatchwright.paint.fit.problem import Problem, build
from swatchwright.paint.fit.readings import BrushOut, Reading
from swatchwright.paint.fit.solve import Solution, posterior, start

__all__ = ["Advice", "brush_outs_to_try", "next_brush_out"]

Floats = NDArray[np.floating[Any]]

# Parts of the paint, to one part in all: what is asked of a painter.
_WITH_WHITE = {"1 : 1": 1 / 2, "1 : 4": 1 / 5, "1 : 10": 1 / 11}
_WITH_BLACK = {"10 : 1": 10 / 11, "3 : 1": 3 / 4}

# Mixtures whose spread is to shrink, parts of the paint to one part in all.
_USED = (0.9, 0.5, 0.2, 0.07, 0.02)

_CHART_BLACK = 0.03


@dataclass(frozen=True, slots=True, eq=False)
class Advice:
    """A brush-out to make, and what it would do.

    Parameters
    ----------
    brush_out
        What to mix and lay.
    words
        The same in plain words.
    spread_now, spread_then
        Root-mean-square spread of the paint's mixtures in units of CIELAB, now and after it.
    """

    brush_out: BrushOut
    words: str
    spread_now: float
    spread_then: float


def brush_outs_to_try(
    paint: str, white: str | None, black: str | None = None, *, over_black: bool = False
) -> dict[str, BrushOut]:
    """List the brush-outs that may be asked for, by their words.

    Parameters
    ----------
    paint, white, black
        Names; None where there is no such paint.
    over_black
        Whether there is a black ground to lay one coat over.
    """
    tries = {say("on its own, laid until it hides"): {paint: 1.0}}
    if white is not None:
        tries |= {_with(white, w): {paint: c, white: 1 - c} for w, c in _WITH_WHITE.items()}
    if black is not None:
        tries |= {_with(black, w): {paint: c, black: 1 - c} for w, c in _WITH_BLACK.items()}
    found = {words: BrushOut(shares, (Reading(),)) for words, shares in tries.items()}
    if over_black:
        ground = np.full(WAVELENGTHS.size, _CHART_BLACK)
        found[say("one coat over black")] = BrushOut({paint: 1.0}, (Reading(ground=ground),))
    return found


def _with(other: str, parts: str) -> str:
    return say("with {paint}, {parts}", paint=other, parts=parts)


def next_brush_out(
    brush_outs: Sequence[BrushOut],
    known: Mapping[str, FittedPaint],
    candidates: Mapping[str, BrushOut],
    *,
    spectra: bool = False,
    prior: Prior = COLORANT_PAINT,
    surface: Surface = ORDINARY,
    errors: Errors | None = None,
    solved: tuple[Problem, Solution] | None = None,
) -> list[Advice]:
    """Order the candidates, the one that shrinks the spread of mixtures most first.

    Parameters
    ----------
    brush_outs, known, prior, surface, errors
        As for `fit_paint`.
    candidates
        Brush-outs to choose from, by their words, with one reading each whose ground says over
        what it would be laid.
    spectra
        Whether they would be read as spectra; else as colours.
    solved
        What `solve_one` made of the same brush-outs; worked out if None.

    Raises
    ------
    ValueError
        If the brush-outs hold no paint or more than one that is not known.
    """
    trust = errors or Errors()
    problem, solution = solved or solve_one(brush_outs, known, prior, surface, trust)
    targets = build(
        [
            BrushOut({problem.names[0]: c, other: 1 - c}, (Reading(),))
            for other in known
            for c in _USED
        ]
        or [BrushOut({problem.names[0]: 1.0}, (Reading(),))],
        known,
        prior=prior,
        surface=surface,
        errors=trust,
    )
    x = _carried(problem, solution.x, targets)
    by_spectra = slopes(targets, state(targets, x)).spectra
    push = np.einsum("cib,cbp->cibp", colour_slope(state(targets, x).seen), by_spectra)
    push = push.reshape(-1, problem.layout.spectra)
    now = _spread(solution.information, push)
    advice = []
    for words, candidate in candidates.items():
        more = _imagined(candidate, problem, solution.x, known, spectra=spectra)
        larger = build([*brush_outs, more], known, prior=prior, surface=surface, errors=trust)
        then = posterior(larger, _carried(problem, solution.x, larger))
        advice.append(Advice(candidate, words, now, _spread(then, push)))
    return sorted(advice, key=lambda one: one.spread_then)


def _imagined(
    candidate: BrushOut,
    problem: Problem,
    x: Floats,
    known: Mapping[str, FittedPaint],
    *,
    spectra: bool,
) -> BrushOut:
    """Give the candidate as if it had been read, and just as predicted."""
    alone = build(
        [candidate], known, prior=problem.prior, surface=problem.surface, errors=problem.errors
    )
    seen = state(alone, _carried(problem, x, alone)).seen
    readings = tuple(
        replace(r, reflectance=row) if spectra else replace(r, lab=lab_of(row))
        for r, row in zip(candidate.readings, seen, strict=True)
    )
    return replace(candidate, readings=readings)


def _carried(source: Problem, x: Floats, target: Problem) -> Floats:
    """Carry what was found of the paint to another set of films of it."""
    y = start(target)
    here, there = source.layout, target.layout
    y[: there.spectra] = x[: here.spectra]
    old, new = x[here.spectra :], y[there.spectra :]
    for part in ("volume", "paint_glare", "amounts"):
        new[getattr(there, part)] = old[getattr(here, part)]
    shared = min(here.films, there.films) if there.films > here.films else 0
    for part in ("thickness", "share", "glare"):
        new[getattr(there, part)][:shared] = old[getattr(here, part)][:shared]
    return y


def _spread(matrix: Floats, push: Floats) -> float:
    """Give the root-mean-square spread that is left in the pushed colours."""
    from scipy.linalg import cho_factor, cho_solve

    whole = np.zeros((push.shape[0], matrix.shape[0]))
    whole[:, : push.shape[1]] = push
    variance = np.sum(whole * cho_solve(cho_factor(matrix, check_finite=False), whole.T).T)
    return float(np.sqrt(variance / (push.shape[0] / 3)))
