"""Measurements as CGATS.17 text, the exchange format of ISO 28178.

Read from memory of the standard: a header of keywords with values, then for each table the field
names between ``BEGIN_DATA_FORMAT`` and ``END_DATA_FORMAT`` and the samples between ``BEGIN_DATA``
and ``END_DATA``. Signs are parted by spaces, tabs or line ends; strings with spaces stand in
quotation marks, a quotation mark within one is doubled; ``#`` begins a comment.

Spectra stand either as pairs, ``SPECTRAL_NM`` followed by ``SPECTRAL_PCT`` or ``SPECTRAL_DEC``, or
under a field for each wavelength, as most programs write them: ``SPECTRAL_NM400``,
``SPECTRAL_NM_400``, ``SPECTRAL_PCT_400``, ``NM400``, ``SPEC_400`` or ``R_400``.

References
----------
ISO 28178:2009, Graphic technology: exchange format for colour and process control data. Cited;
keywords and layout from memory.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime
from itertools import groupby, pairwise

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.shelf.measured import rules, told
from swatchwright.shelf.measured.reading import Reading, Viewing
from swatchwright.shelf.measured.rules import is_band, number
from swatchwright.shelf.measured.values import Measurement, Measurements

__all__ = ["looks_like_cgats", "parse_cgats", "to_cgats"]

_BEGINS = re.compile(r"^[ \t]*BEGIN_DATA(_FORMAT)?\b", re.IGNORECASE | re.MULTILINE)
_SIGN = re.compile(r'"(?:[^"]++|"")*+"|#.*|[^\s"#][^\s"]*|"')
_BAND = re.compile(
    r"(?:SPECTRAL_(?:NM|PCT|DEC)?_?|NM_?|SPEC_|R_)(\d{3,4}(?:\.\d+)?)", re.ASCII | re.IGNORECASE
)
_LIGHT = re.compile(r"ILLUMIN\w*\W+(?:CIE\W+)?(D\d\d|[A-F]\d{0,2})\b", re.IGNORECASE)
_ABOUT_COLOURS = ("WEIGHTING_FUNCTION", "ILLUMIN", "OBSERVER", "COMPUTATIONAL_PARAMETER")
_OBSERVER = re.compile(r"OBSERVER\w*\W+(\d+)", re.IGNORECASE)
_LINES_A_SAMPLE = 20
_LAB = ("LAB_L", "LAB_A", "LAB_B")


@dataclass(slots=True)
class _Table:
    """A table while it is read: its header, its field names and its lines of signs."""

    header: list[str] = field(default_factory=list)
    fields: list[str] = field(default_factory=list)
    lines: list[tuple[int, list[str]]] = field(default_factory=list)
    viewing: Viewing = field(default_factory=Viewing)


@dataclass(frozen=True, slots=True)
class _Columns:
    """Where in a sample its parts stand; a band gives its wavelength or the place of that."""

    id: int | None
    name: int | None
    lab: tuple[int, ...]
    bands: tuple[tuple[float, int], ...]
    pairs: tuple[tuple[int, int], ...]
    percent: bool


def looks_like_cgats(text: str) -> bool:
    """Tell whether a text has a line that begins a table of such a file."""
    return _BEGINS.search(text) is not None


def parse_cgats(text: str, name: str) -> Measurements:
    """Read measurements from CGATS.17 text, all tables that have spectra or Lab values.

    Raises
    ------
    MendableError
        If the text is cut short or its parts do not go together, or a sample is not as `rules`
        wants it.
    """
    notes: list[str] = []
    found: dict[str, Reading] = {}
    for table in _tables(text.lstrip("\ufeff"), name):
        columns = _columns(table.fields, name)
        if not (columns.lab or columns.bands or columns.pairs):
            notes.append(say("A table without spectra and Lab values was passed over."))
            continue
        for line, signs in _samples(table, name):
            _add(_reading(line, signs, columns, table, name), found)
            rules.refuse_many(len(found), name)
    return rules.measurements(name, list(found.values()), "D50", notes)


# --- the text ------------------------------------------------------------------------------------


def _tables(text: str, name: str) -> Iterator[_Table]:
    """Give the tables of the text, each with the fields and the viewing that hold for it."""
    table, part, begun = _Table(), "", 0
    for n, line in enumerate(text.splitlines(), 1):
        signs = _signs(line, n, name)
        word = signs[0].upper() if signs else ""
        if part == "" and word == "BEGIN_DATA_FORMAT":
            table.fields, part, begun, signs = [], "END_DATA_FORMAT", n, signs[1:]
        elif part == "" and word == "BEGIN_DATA":
            part, begun = "END_DATA", n
        elif part == "END_DATA" and word == "END_DATA":
            yield _closed(table, name, begun)
            table, part = _Table(fields=table.fields, viewing=table.viewing), ""
        elif part == "END_DATA" and signs:
            rules.refuse_many(len(table.lines) // _LINES_A_SAMPLE, name)
            table.lines.append((n, _cells(line, signs, len(table.fields))))
        elif part == "":
            table.header.append(" ".join(signs))
        if part == "END_DATA_FORMAT":
            upper = [*map(str.upper, signs), part]
            table.fields += upper[: upper.index(part)]
            part = part if upper.index(part) == len(signs) else ""
    if part:
        raise MendableError(
            say(
                "{name} ends before the {keyword} of line {line}: it seems cut short.",
                name=name,
                keyword=part,
                line=begun,
            ),
            say("Export or copy the file again."),
        )


def _signs(line: str, number: int, name: str) -> list[str]:
    """Part a line into its signs, without comments; strings keep their quotation marks."""
    signs = [s for s in _SIGN.findall(line) if not s.startswith("#")]
    if '"' in signs:
        raise MendableError(
            say(
                "Line {line} of {file} has a quotation mark without its other half.",
                line=number,
                file=name,
            ),
            say("Put the text in quotation marks, or take the mark out."),
        )
    return signs


def _cells(line: str, signs: list[str], wanted: int) -> list[str]:
    """Part a line of data; names with spaces may stand unquoted where tabs part the cells."""
    cells = [cell.strip() for cell in line.split("\t")]
    return cells if len(signs) != wanted == len(cells) else signs


def _closed(table: _Table, name: str, begun: int) -> _Table:
    """Check that a table is whole, and find what it says of the light and the observer."""
    counted = {
        word: found
        for word in ("NUMBER_OF_FIELDS", "NUMBER_OF_SETS")
        for entry in table.header
        if (found := re.fullmatch(rf'{word}\s+"?(\d+)"?', entry, re.IGNORECASE | re.ASCII))
    }
    signs = sum(len(signs) for _, signs in table.lines)
    sets = signs / max(len(table.fields), 1)
    for word, there in (("NUMBER_OF_FIELDS", len(table.fields)), ("NUMBER_OF_SETS", sets)):
        cut_in_a_sample = there != int(there)  # which is blamed by its line
        if word in counted and not cut_in_a_sample and int(counted[word][1][:9]) != there:
            raise told.miscounted(begun, name, f"{word} {counted[word][1][:9]}", there)
    if not table.fields:
        raise told.nameless(begun, name)
    said = "\n".join(h for h in table.header if h.upper().startswith(_ABOUT_COLOURS))
    light, observer = _LIGHT.search(said), _OBSERVER.search(said)
    table.viewing = Viewing(
        light[1].upper() if light else table.viewing.illuminant,
        observer[1] if observer else table.viewing.observer,
    )
    return table


def _samples(table: _Table, name: str) -> Iterator[tuple[int, list[str]]]:
    """Give the samples with their lines; one may go on over several lines, as the format allows."""
    wanted = len(table.fields)
    begun, sample = 0, list[str]()
    for n, signs in table.lines:
        begun = begun if sample else n
        sample += signs
        if len(sample) > wanted:
            break
        if len(sample) == wanted:
            yield begun, sample
            sample = []
    if sample:
        raise told.uneven(begun, name, len(sample), wanted)


# --- samples -------------------------------------------------------------------------------------


def _columns(fields: Sequence[str], name: str) -> _Columns:
    places = {f: i for i, f in enumerate(fields)}
    named = [(f, float(m[1]), i) for i, f in enumerate(fields) if (m := _BAND.fullmatch(f))]
    bands = [band for band in named if is_band(band[1])]
    rules.refuse_repeated((told.band_told(nm) for _, nm, _ in bands), name)
    after = list(pairwise(fields))
    pairs = [
        i for i, f in enumerate(after) if f[0] == "SPECTRAL_NM" and f[1].startswith("SPECTRAL_")
    ]
    values = [f for f, _, _ in bands] + [fields[i + 1] for i in pairs]
    return _Columns(
        id=next((places[f] for f in ("SAMPLE_ID", "SAMPLEID") if f in places), None),
        name=next((places[f] for f in ("SAMPLE_NAME", "NAME") if f in places), None),
        lab=tuple(places[f] for f in _LAB) if set(_LAB) <= set(places) else (),
        bands=tuple((nm, i) for _, nm, i in bands),
        pairs=tuple((i, i + 1) for i in pairs),
        percent=bool(values) and all(f.startswith("SPECTRAL_PCT") for f in values),
    )


def _reading(line: int, signs: list[str], columns: _Columns, table: _Table, name: str) -> Reading:
    texts = [s[1:-1].replace('""', '"') if s[:1] == '"' == s[-1:] else s for s in signs]
    id_ = texts[columns.id] if columns.id is not None else ""
    name_ = texts[columns.name] if columns.name is not None else ""
    where = told.line_told(line, name, id_ or name_)

    def at(i: int) -> float:
        return number(texts[i].strip(), told.under(where, table.fields[i]))

    spectrum = [(nm, at(i)) for nm, i in columns.bands] + [(at(i), at(j)) for i, j in columns.pairs]
    lab = [at(i) for i in columns.lab]
    return Reading(
        place=say("line {line}", line=line),
        id=id_,
        name=name_,
        spectrum=tuple(spectrum),
        percent=columns.percent,
        lab=(lab[0], lab[1], lab[2]) if lab else None,
        viewing=table.viewing,
    )


def _add(new: Reading, found: dict[str, Reading]) -> None:
    """Add a sample, or put it to what an earlier table gives of it: a colour to its spectrum."""
    old = found.get(new.id)
    if old and _complete(old, new):
        found[new.id] = replace(
            old if old.spectrum else new,
            lab=old.lab or new.lab,
            viewing=(old if old.lab else new).viewing,
            name=old.name or new.name,
        )
    else:
        # A sample without an id, or one that is there already, is kept apart to be judged later.
        free = bool(new.id) and new.id not in found
        found[new.id if free else f"\n{len(found)}"] = new


def _complete(one: Reading, other: Reading) -> bool:
    named_apart = one.name and other.name and one.name != other.name
    spectra = bool(one.spectrum) + bool(other.spectrum)
    return not named_apart and spectra == 1 and (one.lab is None) != (other.lab is None)


# --- writing -------------------------------------------------------------------------------------


def to_cgats(measured: Measurements, made: datetime) -> str:
    """Write measurements as CGATS.17 text, so that they read back equal.

    There is a table for each run of samples with the same wavelengths and parts; reflectance is
    written as fractions.
    """
    lines = ["CGATS.17", "", f"ORIGINATOR {_quoted('Swatchwright')}"]
    lines += [f"DESCRIPTOR {_quoted(measured.name)}", f"CREATED {_quoted(f'{made:%Y-%m-%d}')}"]
    lines += [f"WEIGHTING_FUNCTION {_quoted(w)}" for w in ("ILLUMINANT, D65", "OBSERVER, 2 degree")]
    for (nm, coloured), rows in groupby(measured.rows, _layout):
        fields = ["SAMPLE_ID", "SAMPLE_NAME"]
        fields += [f"SPECTRAL_NM{w!r}".removesuffix(".0") for w in nm]
        fields += _LAB if coloured else ()
        samples = [_line(m) for m in rows]
        lines += ["", f"NUMBER_OF_FIELDS {len(fields)}", "BEGIN_DATA_FORMAT", "\t".join(fields)]
        lines += ["END_DATA_FORMAT", f"NUMBER_OF_SETS {len(samples)}", "BEGIN_DATA"]
        lines += [*samples, "END_DATA"]
    return "\n".join(lines) + "\n"


def _layout(m: Measurement) -> tuple[tuple[float, ...], bool]:
    return tuple(m.nm.tolist()), m.lab is not None


def _line(m: Measurement) -> str:
    values: list[float] = [] if m.reflectance is None else m.reflectance.tolist()
    values += () if m.lab is None else m.lab.triple
    return "\t".join([_quoted(m.id), _quoted(m.name), *map(repr, values)])


def _quoted(text: str) -> str:
    return '"' + told.clean(text).replace('"', '""') + '"'
