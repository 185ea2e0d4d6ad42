"""Measurements as CxF3, the XML exchange format of ISO 17972, by way of the library colour-cxf.

References
----------
ISO 17972-1:2015, Graphic technology: colour data exchange format using XML (CxF/X), part 1.
Cited; the schema of CxF3 as colour-cxf 0.1.1 has it.
"""

from __future__ import annotations

import logging
import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime
from typing import Any

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.shelf.measured.harmless import EXPORT_AGAIN, lacking, walk_through
from swatchwright.shelf.measured.reading import Reading, Viewing
from swatchwright.shelf.measured.rules import measurements
from swatchwright.shelf.measured.told import clean, no_number
from swatchwright.shelf.measured.values import Measurement, Measurements

__all__ = ["parse_cxf", "to_cxf"]

_USUAL_STEP = 10


def parse_cxf(data: bytes, name: str) -> Measurements:
    """Read measurements from a CxF3 document: reflectance spectra and CIELAB values.

    Raises
    ------
    MendableError
        If the libraries for it are not installed; it is not CxF3, is damaged, or holds
        declarations that such a file has no need of; or a sample is not as `rules` wants it.
    """
    notes: list[str] = []
    resources = _document(data, name).resources
    objects = resources and resources.object_collection and resources.object_collection.object_value
    found = list(_readings(objects or [], _specifications(resources), name, notes))
    if len(found) < len(objects or []):
        notes.append(
            say(
                "{count} objects without a reflectance spectrum or CIELAB values were passed over.",
                count=len(objects or []) - len(found),
            )
        )
    return measurements(name, found, "D50", notes)


# --- the document --------------------------------------------------------------------------------


def _document(data: bytes, name: str) -> Any:  # noqa: ANN401 # colour_cxf is not typed
    """Read the document, once it is known to be harmless."""
    walk_through(data, name)
    try:
        from colour_cxf.cxf3 import CxF
        from xsdata.exceptions import ConverterWarning
        from xsdata.formats.dataclass.parsers import XmlParser
        from xsdata.formats.dataclass.parsers.config import ParserConfig
        from xsdata.formats.dataclass.parsers.handlers import XmlEventHandler
    except ImportError as error:
        raise lacking(error) from error
    # Elements that later editions or makers of instruments add are passed over, and a value that
    # cannot be read stays a text, which is blamed where it is needed.
    parser = XmlParser(
        config=ParserConfig(fail_on_unknown_properties=False), handler=XmlEventHandler
    )
    try:
        with _hushed(ConverterWarning):
            return parser.from_bytes(data, CxF)
    except (ValueError, TypeError, LookupError, AttributeError, ArithmeticError) as error:
        raise MendableError(
            say("{name} is XML and not laid out as CxF3 asks.", name=name), say(EXPORT_AGAIN)
        ) from error


@contextmanager
def _hushed(kind: type[Warning]) -> Iterator[None]:
    """Keep the library's remarks on what it passes over from the screen."""

    def nothing(record: logging.LogRecord) -> bool:
        del record
        return False

    logger = logging.getLogger("xsdata.logger")
    logger.addFilter(nothing)
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore", kind)
            yield
    finally:
        logger.removeFilter(nothing)


# --- samples -------------------------------------------------------------------------------------


def _specifications(resources: Any) -> dict[str, Any]:  # noqa: ANN401
    collection = resources and resources.color_specification_collection
    return {s.id: s for s in (collection.color_specification if collection else []) if s.id}


def _readings(
    objects: list[Any], specifications: dict[str, Any], name: str, notes: list[str]
) -> Iterator[Reading]:
    from colour_cxf.cxf3 import ColorCielab, ReflectanceSpectrum

    for i, thing in enumerate(objects, 1):
        values = thing.color_values.choice if thing.color_values else []
        spectra = [v for v in values if isinstance(v, ReflectanceSpectrum)]
        colours = [v for v in values if isinstance(v, ColorCielab)]
        if not spectra and not colours:
            continue
        known = clean(thing.id or thing.name or str(i))
        where = say("Sample “{id}” (object {number} of {file})", id=known, number=i, file=name)
        yield Reading(
            place=say("object {number}", number=i),
            id=thing.id or "",
            name=thing.name or "",
            spectrum=_spectrum(spectra[0], specifications, where, notes) if spectra else (),
            lab=_lab(colours[0], where) if colours else None,
            viewing=_viewing(specifications.get(colours[0].color_specification))
            if colours
            else Viewing(),
            notes=_first_taken(len(spectra), len(colours)),
        )


def _first_taken(spectra: int, colours: int) -> tuple[str, ...]:
    """Say where a sample has more than one of a kind."""
    said = []
    if spectra > 1:
        said.append(say("It has {count} reflectance spectra; the first was taken.", count=spectra))
    if colours > 1:
        said.append(say("It has {count} Lab values; the first was taken.", count=colours))
    return tuple(said)


def _spectrum(
    spectrum: Any,  # noqa: ANN401
    specifications: dict[str, Any],
    where: str,
    notes: list[str],
) -> tuple[tuple[float, float], ...]:
    specification = specifications.get(spectrum.color_specification)
    measured = specification and specification.measurement_spec
    extent = measured and measured.wavelength_range
    first = spectrum.start_wl if spectrum.start_wl is not None else extent and extent.start_wl
    step = extent.increment if extent else None
    if step is None:
        step = _USUAL_STEP
        notes.append(
            say("The file does not say the step of its spectra; taken as {step} nm.", step=step)
        )
    if not isinstance(first, int) or not isinstance(step, int) or not 1 <= step <= 100:
        raise MendableError(
            say(
                "{where} does not say at which wavelength its spectrum begins, or in which steps "
                "it goes on.",
                where=where,
            ),
            say("Export it with StartWL and Increment in whole nm."),
        )
    values = spectrum.value if isinstance(spectrum.value, list) else [spectrum.value]
    return tuple((first + step * i, _plain(v, where)) for i, v in enumerate(values))


def _plain(value: object, where: str) -> float:
    if not isinstance(value, float) or not abs(value) < 1e9:
        raise MendableError(_no_number(value, where), say("Put a plain number there."))
    return value


def _no_number(value: object, where: str) -> str:
    if value is None:
        return say("{where} has an empty place where a number is expected.", where=where)
    return no_number(where, str(value))


def _lab(colour: Any, where: str) -> tuple[float, float, float]:  # noqa: ANN401
    return (_plain(colour.l, where), _plain(colour.a, where), _plain(colour.b, where))


def _viewing(specification: Any) -> Viewing:  # noqa: ANN401
    computed = specification and specification.tristimulus_spec
    if not computed:
        return Viewing()
    given = computed.illuminant_or_custom_illuminant
    kind = getattr(given, "value", None) or say("a light of its own")
    light = None if given is None else str(getattr(kind, "value", kind))
    observer = computed.observer and getattr(computed.observer.value, "value", None)
    return Viewing(light, observer and observer.partition("_")[0])


# --- writing -------------------------------------------------------------------------------------


def to_cxf(measured: Measurements, made: datetime) -> bytes:
    """Write measurements as CxF3, so that they read back equal.

    Raises
    ------
    MendableError
        If the libraries for it are not installed, or the wavelengths are not as CxF3 has them:
        whole nm, beginning at 360 to 400.
    """
    try:
        from colour_cxf import cxf3, write_cxf
        from xsdata.models.datatype import XmlDateTime
    except ImportError as error:
        raise lacking(error) from error
    grids = list(dict.fromkeys(tuple(m.nm.tolist()) for m in measured.rows))
    date = cxf3.CreationDate(XmlDateTime.from_datetime(made))
    return bytes(
        write_cxf(
            cxf3.CxF(
                file_information=cxf3.FileInformation(
                    creator="Swatchwright", creation_date=date, description=clean(measured.name)
                ),
                resources=cxf3.Resources(
                    object_collection=cxf3.ObjectCollection(
                        [
                            _object(m, f"grid-{grids.index(tuple(m.nm))}", date)
                            for m in measured.rows
                        ]
                    ),
                    color_specification_collection=cxf3.ColorSpecificationCollection(
                        [
                            _specification(f"grid-{i}", nm, measured.name)
                            for i, nm in enumerate(grids)
                        ]
                    ),
                ),
            )
        )
    )


def _object(m: Measurement, specification: str, date: Any) -> Any:  # noqa: ANN401
    from colour_cxf import cxf3

    values: list[Any] = []
    if m.reflectance is not None:
        spectrum = cxf3.ReflectanceSpectrum(
            m.reflectance.tolist(), start_wl=round(m.nm[0]), color_specification=specification
        )
        values.append(spectrum)
    if m.lab is not None:
        values.append(cxf3.ColorCielab(*m.lab.triple, color_specification=specification))
    return cxf3.Object(
        creation_date=date,
        color_values=cxf3.ColorValues(values),
        object_type="Standard",
        name=clean(m.name),
        id=clean(m.id),
    )


def _specification(id_: str, nm: tuple[float, ...], name: str) -> Any:  # noqa: ANN401
    """Say at which wavelengths, if any, and for which light and observer the values are."""
    from colour_cxf import cxf3

    kind = "SPECTRUM" if nm else "COLORIMETRIC"
    extent = None
    if nm:
        step = nm[1] - nm[0]
        if step != round(step) or nm[0] != round(nm[0]) or not 360 <= nm[0] <= 400:
            raise MendableError(
                say(
                    "{name} has spectra from {first:g} nm in steps of {step:g} nm, and CxF keeps "
                    "whole nm from 360 to 400 on.",
                    name=name,
                    first=nm[0],
                    step=step,
                ),
                say("Write them as CSV or CGATS text."),
            )
        extent = cxf3.WavelengthRange(round(nm[0]), round(step))
    return cxf3.ColorSpecification(
        id=id_,
        tristimulus_spec=cxf3.TristimulusSpec(
            cxf3.Illuminant(cxf3.EilluminantType.D65),
            cxf3.Observer(cxf3.EobserverType.VALUE_2_DEGREE),
            cxf3.Method(cxf3.EastmTableType.UNKNOWN),
        ),
        measurement_spec=cxf3.MeasurementSpec(
            cxf3.MeasurementType(cxf3.EspectrumType[f"{kind}_REFLECTANCE"]),
            cxf3.GeometryChoice("unknown"),
            extent,
        ),
    )
