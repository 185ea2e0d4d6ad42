"""In which order the paints of a sheet are fitted, each by those that are known by then."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import reduce

import numpy as np

from swatchwright.acts.fit_told import ERRORS, FitWork
from swatchwright.acts.known import white_of
from swatchwright.colour.spectrum import lab_of
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.paint.fit.fitted import FittedPaint, at_its_level, in_unit
from swatchwright.paint.fit.one import paint_of, solve_one
from swatchwright.paint.fit.prior import COLORANT_PAINT
from swatchwright.paint.fit.readings import BrushOut, Reading
from swatchwright.paint.paints import Paint
from swatchwright.shelf.brush_outs import Sheet

__all__ = ["fit_in_turn", "white_among"]

_WHITE_ABOVE = 85.0


def white_among(
    sheet: Sheet,
    paints: Mapping[str, Paint],
    brush_outs: Sequence[BrushOut],
    wanted: Sequence[str],
) -> str | None:
    """Give the white that let-downs were made with: a known one, a new one, or the shelf's."""
    known = [paint for id_, paint in paints.items() if id_ not in wanted]
    used = white_of([paint for paint in known if paint.id in sheet.paints])
    if used is not None:
        return used.id
    met = {id_: sum(id_ in b.shares and len(b.shares) > 1 for b in brush_outs) for id_ in wanted}
    alone = {
        next(iter(b.shares)): max(_lightness(r) for r in b.readings)
        for b in brush_outs
        if len(b.shares) == 1
    }
    new = [id_ for id_ in wanted if alone.get(id_, 0.0) > _WHITE_ABOVE and met[id_]]
    if new:
        return max(new, key=lambda id_: met[id_])
    there = white_of(known)
    return None if there is None else there.id


def _lightness(reading: Reading) -> float:
    if reading.reflectance is not None:
        return float(lab_of(np.nan_to_num(reading.reflectance, nan=0.5))[0])
    return 0.0 if reading.lab is None else float(reading.lab[0])


def fit_in_turn(
    work: FitWork,
    brush_outs: Sequence[BrushOut],
    wanted: Sequence[str],
    white: str | None,
    tell: Callable[[float], None],
) -> dict[str, list[BrushOut]]:
    """Fit paint after paint, each from its films with paints that are known by then.

    One whose films are all with known paints goes first; else the one that the others were mixed
    with most, from its films alone.
    """
    left = list(wanted)
    found: dict[str, list[BrushOut]] = {}
    while left:
        tell(0.5 * len(found) / len(wanted))
        usable = {id_: _usable(id_, brush_outs, work.known) for id_ in left}
        ready = [id_ for id_ in left if usable[id_]]
        if not ready:
            raise _not_apart(left)
        all_of = {id_: sum(id_ in b.shares for b in brush_outs) for id_ in ready}
        whole = [id_ for id_ in ready if len(usable[id_]) == all_of[id_]]
        chosen = whole[0] if whole else max(ready, key=lambda id_: all_of[id_])
        used = usable[chosen]
        solved = solve_one(used, work.known, COLORANT_PAINT, work.surface(chosen), ERRORS)
        work.known[chosen], work.solved[chosen] = paint_of(used, *solved), solved
        if chosen == white and _strength_untold(used):
            # White house paint scatters about alike; the others' strength is counted by it.
            work.known[chosen] = in_unit(
                work.known[chosen], 1.0 / float(work.known[chosen].S.mean())
            )
        found[chosen] = used
        left.remove(chosen)
    for id_ in found:
        # What the others were measured by has, for them, just the strength it was given.
        if any(id_ in b.shares for other in found if other != id_ for b in found[other]):
            work.known[id_] = at_its_level(work.known[id_])
    return found


def _not_apart(paints: Sequence[str]) -> MendableError:
    return MendableError(
        say(
            "Nothing tells {paints} apart: each was only brushed out mixed with another that is "
            "not known.",
            paints=reduce(lambda a, b: say("{first} and {last}", first=a, last=b), paints),
        ),
        say("Brush each out on its own as well, or name the shelf that holds the others."),
    )


def _strength_untold(used: Sequence[BrushOut]) -> bool:
    """Tell whether films all hide and hold one paint, so that K and S may be any together."""
    return all(len(b.shares) == 1 and all(r.ground is None for r in b.readings) for b in used)


def _usable(
    id_: str, brush_outs: Sequence[BrushOut], known: Mapping[str, FittedPaint]
) -> list[BrushOut]:
    return [b for b in brush_outs if id_ in b.shares and not b.shares.keys() - {id_} - known.keys()]
