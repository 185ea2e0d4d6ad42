"""What is said of measurement files: where a sample stands, and what was taken for what."""

from __future__ import annotations

from collections.abc import Sequence

from swatchwright.errors import MendableError
from swatchwright.language import say

__all__ = [
    "band_told",
    "clean",
    "line_told",
    "miscounted",
    "nameless",
    "no_number",
    "not_carried",
    "taken_as_dark",
    "under",
    "uneven",
]


def clean(text: str) -> str:
    """Put single spaces for whatever a line of a file cannot hold: breaks, tabs, control signs."""
    return " ".join("".join(c if c.isprintable() else " " for c in text).split())


def line_told(line: int, name: str, sample: str) -> str:
    """Say where a sample stands: in which line of which file."""
    return say(
        "Line {line} of {file} (sample “{sample}”)", line=line, file=name, sample=clean(sample)
    )


def under(where: str, column: str) -> str:
    """Say under which column of what was said a number stands."""
    return say("{where}, under {column},", where=where, column=column)


def band_told(nm: float) -> str:
    """Say which column a wavelength has."""
    return say("for {nm:g} nm", nm=nm)


def miscounted(line: int, name: str, said: str, there: float) -> MendableError:
    """Say that a table says another count, after its keyword, than it has."""
    return MendableError(
        say(
            "The table at line {line} of {file} says {said} and has {there:g}.",
            line=line,
            file=name,
            said=said,
            there=there,
        ),
        say("It seems cut short or edited; export it again."),
    )


def uneven(line: int, name: str, values: int, fields: int) -> MendableError:
    """Say that a sample has other values than its table has fields."""
    return MendableError(
        say(
            "The sample at line {line} of {file} has {values} values where the table has "
            "{fields} fields.",
            line=line,
            file=name,
            values=values,
            fields=fields,
        ),
        say("Put names with spaces in quotation marks, and fill in what is missing."),
    )


def nameless(line: int, name: str) -> MendableError:
    """Say that a table does not name its fields."""
    return MendableError(
        say("The table at line {line} of {file} does not name its fields.", line=line, file=name),
        say("It needs BEGIN_DATA_FORMAT, the names and END_DATA_FORMAT before BEGIN_DATA."),
    )


def no_number(where: str, text: str) -> str:
    """Say that something stands where a number is expected."""
    told = clean(text)[:40]
    return say("{where} has “{text}” where a number is expected.", where=where, text=told)


def taken_as_dark(dark: Sequence[str]) -> str:
    """Say which samples were taken as percent with the others, though they look like fractions."""
    ids = ", ".join(dark[:5])
    if len(dark) > 5:
        return say("Taken as percent too, and so as nearly black: {ids} and others.", ids=ids)
    return say("Taken as percent too, and so as nearly black: {ids}.", ids=ids)


def not_carried(where: str, light: str, observer: str) -> MendableError:
    """Say that the colour of a sample is for another light or observer."""
    return MendableError(
        say(
            "{where} has Lab values for {light} and the {observer} degree observer, which cannot "
            "be carried to ours.",
            where=where,
            light=light,
            observer=observer,
        ),
        say("Export Lab for D65 or D50 and the 2 degree observer, or spectra."),
    )
