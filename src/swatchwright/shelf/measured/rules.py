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
from swatchwright.shelf.measured.spectra import (
    MOST_REFLECTED,
    checked_grid,
    checked_values,
    held_note,
)
from swatchwright.shelf.measured.values import Measurement, Measurements
from swatchwright.values import Lab

__all__ = [
    "MOST_SAMPLES",
    "Reading",
    "Viewing",
    "clean",
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


@dataclass(frozen=True, slots=True)
class Viewing:
    """The light and the observer that a file gives for its colours; None where it says nothing."""

    illuminant: str | None = None
    observer: str | None = None


@dataclass(frozen=True, slots=True)
class Reading:
    """A sample as it stands in the file.

    Parameters
    ----------
    place
        Where it stands, such as “line 7”.
    id, name
        Either or both may be empty.
    spectrum
        Pairs of wavelength, nm, and value, in any order; empty without a spectrum.
    percent
        Whether the file says that the values are percent.
    lab
        L*, a*, b* for the light and observer of `viewing`; None without a colour.
    """

    place: str
    id: str = ""
    name: str = ""
    spectrum: tuple[tuple[float, float], ...] = ()
    percent: bool = False
    lab: tuple[float, float, float] | None = None
    viewing: Viewing = Viewing()
    notes: tuple[str, ...] = ()


@dataclass(slots=True)
class _Whole:
    """What holds for the whole file, and what is gathered of it."""

    name: str
    assumed_light: str
    percent: bool = False
    notes: list[str] = field(default_factory=list)
    grids: dict[tuple[float, ...], Floats] = field(default_factory=dict)


def clean(text: str) -> str:
    """Put single spaces for whatever a line of a file cannot hold: breaks, tabs, control signs."""
    return " ".join("".join(c if c.isprintable() else " " for c in text).split())


def number(text: str, where: str) -> float:
    """Read a plain number, with a decimal point or a decimal comma."""
    value = float(text.replace(",", ".")) if _NUMBER.fullmatch(text) else float("nan")
    if not isfinite(value):
        raise MendableError(
            f"{where} has “{clean(text)[:40]}” where a number is expected."
            if text
            else f"{where} lacks a number.",
            "Put a plain number there, such as 0.38.",
        )
    return value


def is_band(nm: float) -> bool:
    """Tell whether a number may be a wavelength that an instrument for colour reads."""
    return _SHORTEST <= nm <= _LONGEST


def refuse_many(samples: int, name: str) -> None:
    """Refuse a file of more samples than are read."""
    if samples > MOST_SAMPLES:
        raise MendableError(
            f"{name} has more than {MOST_SAMPLES} samples.", "Export the samples you need."
        )


def refuse_repeated(columns: Iterable[str], name: str) -> None:
    """Refuse a file that has a column twice."""
    seen: set[str] = set()
    for column in columns:
        if column in seen:
            raise MendableError(
                f"{name} has the column {clean(column)} more than once.",
                "Keep one of them and export it again.",
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
            f"{name} has no measurements in it: no spectra and no Lab values.",
            "Export them with spectral reflectance or Lab values.",
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
            notes.append("Samples without an id are known by their name, or else by their number.")
        if id_ in seen:
            raise MendableError(
                f"{name} has two samples called “{id_}”: {seen[id_]} and {reading.place}.",
                "Give each sample an id of its own.",
            )
        seen[id_] = reading.place
        named.append(replace(reading, id=id_, name=clean(reading.name) or id_))
    return named


def _blame(reading: Reading, name: str) -> str:
    return f"Sample “{reading.id}” ({reading.place} of {name})"


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
            f"Sample “{worst}” of {name} has a reflectance of {tops[worst]:g}, which is too much "
            "for a fraction and little for percent.",
            f"Give reflectance as a fraction of at most {MOST_REFLECTED:g}; measure it again if "
            "that is what the instrument says.",
        )
    dark = [id_ for id_, top in tops.items() if top <= MOST_REFLECTED]
    if 2 * len(dark) >= len(tops):
        raise MendableError(
            f"Sample “{worst}” of {name} has a reflectance of {tops[worst]:g}, as if in percent, "
            f"and {len(dark)} of {len(tops)} samples look like fractions.",
            "Check its decimal point, or give all of them in the same unit.",
        )
    notes.append("Reflectance is given in percent; it was divided by 100.")
    if dark:
        notes.append(
            f"Taken as percent too, and so as nearly black: {', '.join(dark[:5])}"
            f"{' and others' if len(dark) > 5 else ''}."
        )
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
            f"{where} has the Lab values {L:g}, {a:g}, {b:g}, which no surface has.",
            "L* goes from 0 to 100; a* and b* from about -128 to 128.",
        )
    light = (reading.viewing.illuminant or whole.assumed_light).upper()
    observer = reading.viewing.observer or "2"
    if light not in {"D50", "D65"} or observer != "2":
        seen = f"for {light} and the {observer} degree observer"
        if not reading.spectrum:
            raise MendableError(
                f"{where} has Lab values {seen}, which cannot be carried to ours.",
                "Export Lab for D65 or D50 and the 2 degree observer, or spectra.",
            )
        said.append(f"Lab values {seen} were passed over; the spectrum counts.")
        return None
    if None in {reading.viewing.illuminant, reading.viewing.observer}:
        whole.notes.append(
            "The file does not say all of the light and the observer of its Lab values; "
            f"taken as {light} and 2 degrees."
        )
    return Lab(L, a, b) if light == "D65" else _from_d50((L, a, b), whole.notes)


def _from_d50(lab: tuple[float, float, float], notes: list[str]) -> Lab:
    notes.append(
        "Lab values for D50 were carried to D65 by the Bradford transform; colours worked out "
        "of spectra may differ a little."
    )
    xyz = bradford(D50_WHITE, D65_WHITE) @ lab_to_xyz(lab, D50_WHITE)
    L, a, b = (float(v) for v in xyz_to_lab(xyz))
    return Lab(min(max(L, 0.0), 100.0), a, b)
