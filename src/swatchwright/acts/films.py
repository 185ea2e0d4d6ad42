"""From a sheet of brush-outs to films that a fit takes: shares, thicknesses, grounds, readings."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.acts.film_told import check_same, dry_shares, thickness
from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.errors import MendableError
from swatchwright.language import mark, say, say_in
from swatchwright.mixing.smooth import smoothest_reflectance
from swatchwright.paint.family import Family
from swatchwright.paint.fit.readings import BrushOut, Reading, on_grid
from swatchwright.paint.paints import HowKnown, Paint
from swatchwright.shelf.brush_outs import NewPaint, Sheet, Strip
from swatchwright.shelf.measured.values import Measurement, Measurements
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab, isotropic

__all__ = ["CARD_BLACK", "CARD_WHITE", "PHOTO_OFF", "Films", "films_of"]

Floats = NDArray[np.floating[Any]]

PHOTO_OFF = 5.5
"""Median CIEDE2000 of a colour read from a photo with one grey card (docs/accuracy.md)."""

CARD_BLACK, CARD_WHITE = 0.03, 0.8
"""Reflectance of the black and the white of a card for hiding, all over the spectrum."""

_NOT_READ = {
    "black": (
        mark("The black of the card was not read; it was taken to reflect {level:.0%}."),
        CARD_BLACK,
    ),
    "white": (
        mark("The white of the card was not read; it was taken to reflect {level:.0%}."),
        CARD_WHITE,
    ),
}

# An instrument's colour is as good as its spectrum; what the formulas get wrong is added by them.
_INSTRUMENT_OFF = 0.5


@dataclass(frozen=True, slots=True)
class Films:
    """What a sheet comes to.

    Parameters
    ----------
    brush_outs
        Films with all that was read off each; shares by dry volume.
    paints
        All paints that are met, by id: those of the shelf, and new ones with no K and S yet.
    new
        Ids of those that are not on the shelf.
    notes
        What was assumed.
    """

    brush_outs: tuple[BrushOut, ...]
    paints: dict[str, Paint]
    new: tuple[str, ...]
    notes: tuple[str, ...]


def films_of(
    sheet: Sheet,
    shelf: Shelf | None,
    *,
    measured: Measurements | None = None,
    by_weight: bool = False,
    usually_off: float | None = None,
    unit: float,
) -> Films:
    """Make films of the strips of a sheet.

    Parameters
    ----------
    sheet, shelf
        The sheet, and the paints that are there already.
    measured
        Readings that the sheet names.
    by_weight
        Whether parts are grams, not volumes.
    usually_off
        Median CIEDE2000 by which colours are off where the sheet does not say; that of a photo
        with one grey card if None.
    unit
        What thicknesses in mm are multiplied by.

    Raises
    ------
    MendableError
        If a ground or a reading that is named is not there, or strips of one film disagree.
    """
    notes = list(sheet.notes)
    paints, new = _paints(sheet, shelf, notes)
    work = _Work(sheet, measured, usually_off, notes)
    grounds = work.grounds()
    by_film: dict[str, list[Strip]] = {}
    for strip in sheet.strips:
        if strip.mix:
            by_film.setdefault(strip.id, []).append(strip)
    films, unread = [], []
    for id_, strips in by_film.items():
        check_same(id_, strips)
        readings = [work.reading(strip, grounds) for strip in strips]
        there = tuple(reading for reading in readings if reading is not None)
        if not there:
            unread.append(id_)
            continue
        first = strips[0]
        thick, spread = thickness(first, paints, unit)
        shares = dry_shares(first, paints, by_weight=by_weight)
        films.append(BrushOut(shares, there, thick, spread, id_))
    if unread:
        notes.append(say("Not read yet, and left out: {films}.", films=", ".join(unread)))
    if not films:
        raise MendableError(
            say("{sheet} holds no reading.", sheet=say(sheet.name)),
            say("Fill in l, a, b or a spectrum, or name the measurement file that holds them."),
        )
    return Films(tuple(films), paints, new, tuple(dict.fromkeys(notes)))


def _paints(
    sheet: Sheet, shelf: Shelf | None, notes: list[str]
) -> tuple[dict[str, Paint], tuple[str, ...]]:
    """Find the paints of the sheet on the shelf, and make those that are new."""
    there = {} if shelf is None else {paint.id: paint for paint in shelf.paints}
    found, new = dict(there), []
    for id_, said in sheet.paints.items():
        if id_ in there:
            found[id_] = _as_said(there[id_], said)
            continue
        new.append(id_)
        if said.family is None:
            notes.append(
                say(
                    "No finish family is given for {paint}; it was taken as emulsion matte.",
                    paint=id_,
                )
            )
        nothing = np.ones(WAVELENGTHS.size)
        blank = Paint(id_, id_, Family.EMULSION, nothing, nothing, HowKnown.GUESSED)
        found[id_] = _as_said(blank, said)
    return found, tuple(new)


def _as_said(paint: Paint, said: NewPaint) -> Paint:
    given = {
        key: value
        for key in ("name", "family", "volume_solids", "density", "spreading_rate")
        if (value := getattr(said, key)) is not None
    }
    return replace(paint, **given)


@dataclass(frozen=True, slots=True)
class _Work:
    sheet: Sheet
    measured: Measurements | None
    usually_off: float | None
    notes: list[str]

    def grounds(self) -> dict[str, Floats]:
        """Give the reflectance (36,) of each ground by its name."""
        found = {
            "black": np.full(WAVELENGTHS.size, CARD_BLACK),
            "white": np.full(WAVELENGTHS.size, CARD_WHITE),
        }
        named = {strip.over.lower() for strip in self.sheet.strips if strip.mix}
        for strip in self.sheet.strips:
            reading = None if strip.mix else self.reading(strip, {})
            if reading is None:
                continue
            if reading.reflectance is not None:
                found[strip.id.lower()] = reading.reflectance
            elif reading.lab is not None:
                found[strip.id.lower()] = smoothest_reflectance(Lab.of(reading.lab))
        read = {strip.id.lower() for strip in self.sheet.strips if not strip.mix}
        for name, (words, level) in _NOT_READ.items():
            if name in named and name not in read:
                self.notes.append(say(words, level=level))
        return found

    def reading(self, strip: Strip, grounds: Mapping[str, Floats]) -> Reading | None:
        """Give what was read off a strip; None if it has not been read yet."""
        ground = self._ground(strip, grounds)
        if strip.reflectance is not None:
            return Reading(reflectance=strip.reflectance, ground=ground)
        if strip.lab is not None:
            return self._colour(strip, strip.lab, ground, self.usually_off)
        sample = self._sample(strip)
        if sample is None:
            return None
        if sample.reflectance is not None:
            return Reading(reflectance=on_grid(sample.nm, sample.reflectance), ground=ground)
        if sample.lab is None:
            raise MendableError(
                say(
                    "Sample “{sample}” of the measurement file has neither a spectrum nor a "
                    "colour for D65 and the 2 degree observer.",
                    sample=sample.id,
                ),
                say("Export it with its spectrum, or read it again."),
            )
        return self._colour(strip, sample.lab, ground, _INSTRUMENT_OFF)

    def _ground(self, strip: Strip, grounds: Mapping[str, Floats]) -> Floats | None:
        if not strip.over or not strip.mix:
            return None
        if strip.over.lower() not in grounds:
            raise MendableError(
                say(
                    "Line {line} of the sheet lies over “{over}”, which is not known.",
                    line=strip.line,
                    over=strip.over,
                ),
                say(
                    "Write black or white for a card, nothing where the paint hides, or the id of "
                    "a line whose mix is “bare”."
                ),
            )
        return grounds[strip.over.lower()]

    def _colour(
        self, strip: Strip, lab: Lab, ground: Floats | None, usual: float | None
    ) -> Reading:
        off = strip.usually_off or usual
        if off is None:
            off = PHOTO_OFF
            self.notes.append(
                say(
                    "Colours were taken to be usually within {off:g} of the truth, as those of "
                    "photos with a grey card are; say so if yours are better.",
                    off=PHOTO_OFF,
                )
            )
        return Reading(lab=np.array(lab.triple), covariance=np.array(isotropic(off)), ground=ground)

    def _sample(self, strip: Strip) -> Measurement | None:
        wanted = strip.reading or strip.id
        if self.measured is None:
            if strip.reading:
                raise MendableError(
                    say(
                        "Line {line} of the sheet names the reading “{reading}”, and no "
                        "measurement file was given.",
                        line=strip.line,
                        reading=strip.reading,
                    ),
                    say("Name the file that holds it."),
                )
            return None
        found = [row for row in self.measured.rows if wanted in {row.id, row.name}]
        if strip.reading and len(found) != 1:
            raise MendableError(
                say(
                    "Line {line} of the sheet names the reading “{reading}”, of which {file} "
                    "holds {many}.",
                    line=strip.line,
                    reading=strip.reading,
                    file=self.measured.name,
                    many=len(found) or say_in("how many samples", "none"),
                ),
                say("Use the id of a sample that is there once."),
            )
        return found[0] if len(found) == 1 else None
