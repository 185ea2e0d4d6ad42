"""What the spectrum of a measured sample has to be: even steps, nothing missing, 0 to 1."""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.errors import MendableError
from swatchwright.language import say

__all__ = ["MOST_REFLECTED", "checked_grid", "checked_values", "held_note"]

Floats = NDArray[np.floating[Any]]

MOST_REFLECTED = 1.1
"""A brightener or a fluorescent pigment gives back more than it gets at some wavelengths."""

_LONGEST_STEP = 20.0
_EVEN = 0.05  # nm; instruments that step by 10/3 nm print their wavelengths rounded


def checked_grid(nm: Floats, where: str) -> Floats:
    """Refuse wavelengths that are not even steps over the visible range."""
    steps = np.diff(nm) if nm.size else np.zeros(0)
    step = float(steps.min()) if steps.size else 0.0
    if steps.size and step < 1 - _EVEN:
        raise MendableError(
            say(
                "{where} has {nm:g} nm twice, or steps below 1 nm.",
                where=where,
                nm=nm[int(np.argmin(steps))],
            ),
            say("Export the spectra in even steps, such as 10 nm."),
        )
    if steps.size and np.ptp(steps) > _EVEN:
        gap = float(nm[int(np.argmax(steps))]) + step
        raise MendableError(
            say(
                "{where} lacks its reflectance at {nm:g} nm; the others are {step:g} nm apart.",
                where=where,
                nm=gap,
                step=step,
            ),
            say("Export the spectra with every wavelength, in even steps."),
        )
    if nm.size < 2 or nm[0] > 420 or nm[-1] < 680 or step > _LONGEST_STEP + _EVEN:
        raise MendableError(
            _left_out(nm, where),
            say("Export even steps of at most 20 nm, from 420 nm or below to 680 nm or above."),
        )
    nm.setflags(write=False)
    return nm


def _left_out(nm: Floats, where: str) -> str:
    if not nm.size:
        return say(
            "{where} has 0 wavelengths, which leaves part of the visible range out.", where=where
        )
    return say(
        "{where} has {count} wavelengths, from {first:g} to {last:g} nm, which leaves part of the "
        "visible range out.",
        where=where,
        count=nm.size,
        first=nm[0],
        last=nm[-1],
    )


def checked_values(values: Floats, nm: Floats, where: str, notes: list[str]) -> Floats:
    """Refuse reflectance that no surface has, and clip what a fluorescent one has."""
    low, high = int(np.argmin(values)), int(np.argmax(values))
    if values[low] < 0:
        raise MendableError(
            say(
                "{where} has a reflectance below zero, {value:g} at {nm:g} nm.",
                where=where,
                value=values[low],
                nm=nm[low],
            ),
            say("Calibrate the instrument on its black and white and measure the sample again."),
        )
    if values[high] > MOST_REFLECTED:
        raise MendableError(
            say(
                "{where} has a reflectance of {value:g} at {nm:g} nm; no paint gives back that "
                "much.",
                where=where,
                value=values[high],
                nm=nm[high],
            ),
            say("Check the decimal point, or calibrate the instrument and measure it again."),
        )
    if values[high] > 1:
        notes.append(
            say(
                "Reflectance up to {value:.3f} at {nm:g} nm, as of something that fluoresces, was "
                "cut to 1.",
                value=values[high],
                nm=nm[high],
            )
        )
    clipped = np.minimum(values, 1.0)
    clipped.setflags(write=False)
    return clipped


def held_note(nm: Floats) -> str:
    """Say how far spectra reach, where that is less than the program's grid; else empty."""
    if nm[0] <= WAVELENGTHS[0] and nm[-1] >= WAVELENGTHS[-1]:
        return ""
    return say(
        "Spectra from {first:g} to {last:g} nm; where they are used they are held at their end "
        "values beyond, to {low:g} and {high:g} nm.",
        first=nm[0],
        last=nm[-1],
        low=WAVELENGTHS[0],
        high=WAVELENGTHS[-1],
    )
