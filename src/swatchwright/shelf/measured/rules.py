"""From what a file says to measurements: what is corrected, what is refused, and in which words.

The readers of the three formats hand over readings as they stand in the file; what holds for all
of them is decided here: even wavelengths over the visible range, percent or fraction, no sample
twice, colours carried to D65.

References
----------
ISO 13655:2017, from memory: measurements of prints are computed for D50 and the 2 degree observer.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace
from math import isfinite
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.convert import D50_WHITE, D65_WHITE, bradford, lab_to_xyz, xyz_to_lab
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.shelf.measured.reading import Reading
from swatchwright.shelf.measured.spectra import (
    MOST_REFLECTED,
    checked_grid,
    checked_values,
    held_note,
)
from swatchwright.shelf.measured.told import clean, no_number, not_carried, taken_as_dark
from swatchwright.shelf.measured.values import Measurement, Measurements
from swatchwright.values import Lab

__all__ = [
    "MOST_SAMPLES",
    "is_band",
    "measurements",
    "number",
    "refuse_many",
    "refuse_repeated",
]

Floats = NDArray[np.floating[Any]]

MOST_SAMPLES = 20_000
"""How many samples a file may have."""

# What instruments for colour read at most, nm; what lies beyond is passed over.
_SHORTEST, _LONGEST = 300.0, 1100.0

_NUMBER = re.compile(r"[-+]?(\d+[.,]?\d*|[.,]\d+)([eE][-+]?\d{1,3})?", re.ASCII)

# The greatest reflectance factor that the schema of CxF3 takes for a fraction.
_MOST_FRACTION = 3.0


@dataclass(slots=True)
class _Whole:
    """What holds for the whole file, and what is gathered of it."""

    name: str
    assumed_light: str
    percent: bool = False
    notes: list[str] = field(default_factory=list)
    grids: dict[tuple[float, ...], Floats] = field(default_factory=dict)


def number(text: str, where: str) -> float:
    """Read a plain number, with a decimal point or a decimal comma."""
    value = float(text.replace(",", ".")) if _NUMBER.fullmatch(text) else float("nan")
    if not isfinite(value):
        raise MendableError(
            no_number(where, text) if text else say("{where} lacks a number.", where=where),
            say("Put a plain number there, such as 0.38."),
        )
    return value


def is_band(nm: float) -> bool:
    """Tell whether a number may be a wavelength that an instrument for colour reads."""
    return _SHORTEST <= nm <= _LONGEST


def refuse_many(samples: int, name: str) -> None:
    """Refuse a file of more samples than are read."""
    if samples > MOST_SAMPLES:
        raise MendableError(
            say("{name} has more than {most} samples.", name=name, most=MOST_SAMPLES),
            say("Export the samples you need."),
        )


def refuse_repeated(columns: Iterable[str], name: str) -> None:
    """Refuse a file that has a column twice."""
    seen: set[str] = set()
    for column in columns:
        if column in seen:
            told = clean(column)
            raise MendableError(
                say("{name} has the column {column} more than once.", name=name, column=told),
                say("Keep one of them and export it again."),
            )
        seen.add(column)


def measurements(
    name: str, readings: Sequence[Reading], assumed_light: str, notes: Sequence[str] = ()
) -> Measurements:
    """Make measurements of what a file says.

    Parameters
    ----------
    name
        What to call the file.
    readings
        Its samples in their order.
    assumed_light
        ``D50`` or ``D65``: for which light its colours are where it does not say.
    notes
        What the reader of the format has to say already.

    Raises
    ------
    MendableError
        If there is no sample or a sample twice; wavelengths are missing; a value is below zero or
        beyond what a surface can give back; or a colour is for another observer or light.
    """
    refuse_many(len(readings), name)
    if not readings:
        raise MendableError(
            say("{name} has no measurements in it: no spectra and no Lab values.", name=name),
            say("Export them with spectral reflectance or Lab values."),
        )
    whole = _Whole(name, assumed_light, notes=list(notes))
    named = _named(readings, name, whole.notes)
    whole.percent = _in_percent(named, name, whole.notes)
    rows = tuple(_measurement(r, whole) for r in named)
    held = [note for nm in whole.grids.values() if (note := held_note(nm))]
    return Measurements(name, rows, tuple(dict.fromkeys([*whole.notes, *held])))


def _named(readings: Sequence[Reading], name: str, notes: list[str]) -> list[Reading]:
    """Give each sample an id and a name, and refuse an id that comes twice."""
    seen: dict[str, str] = {}
    named = []
    for i, reading in enumerate(readings, 1):
        id_ = clean(reading.id) or clean(reading.name) or str(i)
        if not clean(reading.id):
            notes.append(
                say("Samples without an id are known by their name, or else by their number.")
            )
        if id_ in seen:
            raise MendableError(
                say(
                    "{name} has two samples called “{id}”: {first} and {second}.",
                    name=name,
                    id=id_,
                    first=seen[id_],
                    second=reading.place,
                ),
                say("Give each sample an id of its own."),
            )
        seen[id_] = reading.place
        named.append(replace(reading, id=id_, name=clean(reading.name) or id_))
    return named


def _blame(reading: Reading, name: str) -> str:
    return say("Sample “{id}” ({place} of {file})", id=reading.id, place=reading.place, file=name)


def _in_percent(readings: Sequence[Reading], name: str, notes: list[str]) -> bool:
    """Find out whether values of which the file does not say so are percent.

    The whole file is in one unit: a black in percent may look like a white in fractions.
    """
    tops = {r.id: max(v for _, v in r.spectrum) for r in readings if r.spectrum and not r.percent}
    worst = max(tops, key=lambda id_: tops[id_], default="")
    if not worst or tops[worst] <= MOST_REFLECTED:
        return False
    if tops[worst] <= _MOST_FRACTION:
        raise MendableError(
            say(
                "Sample “{id}” of {file} has a reflectance of {value:g}, which is too much for a "
                "fraction and little for percent.",
                id=worst,
                file=name,
                value=tops[worst],
            ),
            say(
                "Give reflectance as a fraction of at most {most:g}; measure it again if that is "
                "what the instrument says.",
                most=MOST_REFLECTED,
            ),
        )
    dark = [id_ for id_, top in tops.items() if top <= MOST_REFLECTED]
    if 2 * len(dark) >= len(tops):
        raise MendableError(
            say(
                "Sample “{id}” of {file} has a reflectance of {value:g}, as if in percent, and "
                "{dark} of {count} samples look like fractions.",
                id=worst,
                file=name,
                value=tops[worst],
                dark=len(dark),
                count=len(tops),
            ),
            say("Check its decimal point, or give all of them in the same unit."),
        )
    notes.append(say("Reflectance is given in percent; it was divided by 100."))
    if dark:
        notes.append(taken_as_dark(dark))
    return True


def _measurement(reading: Reading, whole: _Whole) -> Measurement:
    where = _blame(reading, whole.name)
    said = list(reading.notes)
    nm: Floats = np.empty(0)
    reflectance = None
    if reading.spectrum:
        points = sorted((w, v) for w, v in reading.spectrum if is_band(w))
        given = tuple(w for w, _ in points)
        if given not in whole.grids:
            whole.grids[given] = checked_grid(np.array(given), where)
        nm = whole.grids[given]
        scale = 100.0 if reading.percent or whole.percent else 1.0
        reflectance = checked_values(np.array([v for _, v in points]) / scale, nm, where, said)
    lab = _lab(reading, where, whole, said)
    return Measurement(reading.id, reading.name, nm, reflectance, lab, tuple(said))


# --- colours -------------------------------------------------------------------------------------


def _lab(reading: Reading, where: str, whole: _Whole, said: list[str]) -> Lab | None:
    """Carry a colour to D65, or pass it over where that cannot be done and a spectrum is there."""
    if reading.lab is None:
        return None
    L, a, b = reading.lab
    if not 0 <= L <= 100 or max(abs(a), abs(b)) > 150:
        raise MendableError(
            say(
                "{where} has the Lab values {L:g}, {a:g}, {b:g}, which no surface has.",
                where=where,
                L=L,
                a=a,
                b=b,
            ),
            say("L* goes from 0 to 100; a* and b* from about -128 to 128."),
        )
    light = (reading.viewing.illuminant or whole.assumed_light).upper()
    observer = reading.viewing.observer or "2"
    if light not in {"D50", "D65"} or observer != "2":
        if not reading.spectrum:
            raise not_carried(where, light, observer)
        said.append(
            say(
                "Lab values for {light} and the {observer} degree observer were passed over; the "
                "spectrum counts.",
                light=light,
                observer=observer,
            )
        )
        return None
    if None in {reading.viewing.illuminant, reading.viewing.observer}:
        whole.notes.append(
            say(
                "The file does not say all of the light and the observer of its Lab values; "
                "taken as {light} and 2 degrees.",
                light=light,
            )
        )
    return Lab(L, a, b) if light == "D65" else _from_d50((L, a, b), whole.notes)


def _from_d50(lab: tuple[float, float, float], notes: list[str]) -> Lab:
    notes.append(
        say(
            "Lab values for D50 were carried to D65 by the Bradford transform; colours worked out "
            "of spectra may differ a little."
        )
    )
    xyz = bradford(D50_WHITE, D65_WHITE) @ lab_to_xyz(lab, D50_WHITE)
    L, a, b = (float(v) for v in xyz_to_lab(xyz))
    return Lab(min(max(L, 0.0), 100.0), a, b)
