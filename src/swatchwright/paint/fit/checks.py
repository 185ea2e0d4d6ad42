"""Finding what is off in a painter's readings before they are fitted.

What can be put right without doubt is, and said; the rest is for the painter to mend.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

from swatchwright.colour.spectrum import WAVELENGTHS, lab_of
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.paint.fit.readings import BrushOut, Reading

__all__ = ["check_brush_outs", "check_reflectance", "check_shares"]

Floats = NDArray[np.floating[Any]]

# A white reads a little above the standard it is read against, a black a little below nothing.
_ABOVE, _BELOW = 1.05, -0.01

# Values above this cannot be fractions, and a whole spectrum of percents is never below it.
_PERCENT = 2.0

_FEWEST_BANDS = 12

# In L*: how much darker a let-down may be than one with less white in it.
_SLACK = 4.0


def check_reflectance(values: ArrayLike, name: str) -> tuple[Floats, tuple[str, ...]]:
    """Check a spectrum, which may have gaps (NaN), and give it as fractions 0-1, with notes.

    Parameters
    ----------
    values
        (36,) on `WAVELENGTHS`.
    name
        What to call the reading.

    Raises
    ------
    MendableError
        If too few bands were measured or values are neither fractions nor percents.
    """
    spectrum = np.array(values, dtype=np.float64)
    there = np.isfinite(spectrum)
    if there.sum() < _FEWEST_BANDS:
        raise MendableError(
            say(
                "The spectrum of {name} has only {count} of {all} bands.",
                name=name,
                count=int(there.sum()),
                all=WAVELENGTHS.size,
            ),
            say(
                "Give at least {fewest} between 400 and 700 nm, or its colour instead.",
                fewest=_FEWEST_BANDS,
            ),
        )
    notes: list[str] = []
    if spectrum[there].max() > _PERCENT:
        if spectrum[there].max() > 100 * _ABOVE or spectrum[there].min() < 100 * _BELOW:
            raise MendableError(
                say(
                    "The spectrum of {name} holds values that are neither 0 to 1 nor 0 to 100 %.",
                    name=name,
                ),
                say("Look for a wrong column or a misplaced decimal point."),
            )
        spectrum = spectrum / 100.0
        notes.append(say("The spectrum of {name} was taken as percent.", name=name))
    outside = there & ((spectrum < _BELOW) | (spectrum > _ABOVE))
    if outside.any():
        nm = WAVELENGTHS[np.argmax(outside)]
        raise MendableError(
            say(
                "The spectrum of {name} is {value:.3f} at {nm:.0f} nm.",
                name=name,
                value=float(spectrum[np.argmax(outside)]),
                nm=float(nm),
            ),
            say("A reflectance lies between 0 and 1; measure it again, with the white tile first."),
        )
    if np.any(there & ((spectrum < 0) | (spectrum > 1))):
        notes.append(say("Values of {name} just outside 0 to 1 were set to the limit.", name=name))
    inner = (WAVELENGTHS >= 400) & (WAVELENGTHS <= 700)
    if not there[inner].all():
        count = int((inner & ~there).sum())
        notes.append(
            say(
                "{name} lacks {count} bands between 400 and 700 nm, which are left open.",
                name=name,
                count=count,
            )
        )
    return np.where(there, np.clip(spectrum, 0.0, 1.0), np.nan), tuple(notes)


def check_shares(
    shares: Mapping[str, float], name: str
) -> tuple[dict[str, float], tuple[str, ...]]:
    """Check shares and give them summing to 1, with notes.

    Raises
    ------
    MendableError
        If a share is negative or not a number, or the sum is neither 1 nor 100 % nor that of
        whole parts.
    """
    if not shares or not all(np.isfinite(part) and part >= 0 for part in shares.values()):
        raise MendableError(
            say("The shares of {name} are not all numbers of 0 or more.", name=name),
            say("Give each paint's share as a fraction, in percent or in whole parts."),
        )
    total = sum(shares.values())
    scaled = {paint: part / total for paint, part in shares.items() if part > 0} if total else {}
    if not scaled:
        raise MendableError(
            say("The shares of {name} are all 0.", name=name), say("Say how much of each went in.")
        )
    if abs(total - 1) < 1e-6 or abs(total - 100) < 1e-4:
        return scaled, ()
    if abs(total - 1) < 0.02 or abs(total - 100) < 2:
        return scaled, (
            say("The shares of {name} sum to {total:g} and were scaled.", name=name, total=total),
        )
    if all(float(part).is_integer() for part in shares.values()):
        return scaled, (say("The shares of {name} were taken as parts.", name=name),)
    raise MendableError(
        say("The shares of {name} sum to {total:g}, not to 1 or to 100 %.", name=name, total=total),
        say("Correct the share that is wrong, or give whole parts."),
    )


def check_brush_outs(
    brush_outs: Sequence[BrushOut], white: str | None = None
) -> tuple[list[BrushOut], tuple[str, ...]]:
    """Check brush-outs for a fit and give them put right, with notes of what was changed.

    Parameters
    ----------
    brush_outs
        As the painter gave them.
    white
        The paint that let-downs are made with; they are compared with each other.

    Raises
    ------
    MendableError
        If something is off that only the painter can mend.
    """
    checked: list[BrushOut] = []
    notes: list[str] = []
    for number, brush_out in enumerate(brush_outs, 1):
        name = brush_out.name or say("brush-out {number}", number=number)
        shares, said = check_shares(brush_out.shares, name)
        notes += said
        readings = []
        for reading in brush_out.readings:
            new, said = _check_reading(reading, name)
            readings.append(new)
            notes += said
        if brush_out.thickness <= 0:
            raise MendableError(
                say("The film thickness of {name} is {mm:g}.", name=name, mm=brush_out.thickness),
                say("Give it in mm."),
            )
        checked.append(replace(brush_out, shares=shares, readings=tuple(readings), name=name))
    if white is not None:
        _check_let_downs(checked, white)
    return checked, tuple(notes)


def _check_reading(reading: Reading, name: str) -> tuple[Reading, tuple[str, ...]]:
    notes: tuple[str, ...] = ()
    if reading.reflectance is not None:
        spectrum, notes = check_reflectance(reading.reflectance, name)
        reading = replace(reading, reflectance=spectrum)
    elif reading.lab is None or not np.all(np.isfinite(reading.lab)):
        raise MendableError(
            say("{name} has neither a spectrum nor a colour.", name=name),
            say("Read it, or leave it out."),
        )
    elif not 0 <= float(reading.lab[0]) <= 101:
        raise MendableError(
            say(
                "The lightness of {name} is {L:g}, outside 0 to 100.",
                name=name,
                L=float(reading.lab[0]),
            ),
            say("Look for a wrong column or a misplaced decimal point."),
        )
    if reading.ground is not None:
        ground, said = check_reflectance(reading.ground, say("the ground of {name}", name=name))
        reading, notes = replace(reading, ground=ground), (*notes, *said)
    return reading, notes


def _lightness(reading: Reading) -> float:
    if reading.reflectance is None:
        return 0.0 if reading.lab is None else float(reading.lab[0])
    there = np.isfinite(reading.reflectance)
    filled = np.interp(WAVELENGTHS, WAVELENGTHS[there], reading.reflectance[there])
    return float(lab_of(filled)[0])


def _check_let_downs(brush_outs: Sequence[BrushOut], white: str) -> None:
    """Refuse let-downs of one paint that get darker with more white, where they hide."""
    series: dict[str, list[tuple[float, float, str]]] = {}
    for brush_out in brush_outs:
        others = [name for name in brush_out.shares if name != white]
        if len(others) != 1:
            continue
        for reading in brush_out.readings:
            if reading.ground is None:
                part = brush_out.shares.get(white, 0.0)
                row = (part, _lightness(reading), brush_out.name)
                series.setdefault(others[0], []).append(row)
    for rows in series.values():
        rows.sort()
        for less, more in pairwise(rows):
            if more[0] > less[0] and more[1] < less[1] - _SLACK:
                raise MendableError(
                    say(
                        "“{more}” holds more white than “{less}” but is darker.",
                        more=more[2],
                        less=less[2],
                    ),
                    say(
                        "See whether the two were swapped or a share is wrong, and give them again."
                    ),
                )
