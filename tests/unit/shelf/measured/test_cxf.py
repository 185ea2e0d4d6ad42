"""CxF3: what is read of it, what is refused, what would do harm, and that it reads back equal."""

from __future__ import annotations

import sys
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from numpy.testing import assert_allclose

from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import Light, lab_of
from swatchwright.shelf.measured import parse_measurements
from swatchwright.shelf.measured.cxf import parse_cxf, to_cxf
from swatchwright.shelf.measured.values import Measurement, Measurements, on_grid
from swatchwright.values import Lab
from unit.shelf.measured.made import (
    WHEN,
    assert_same,
    edited,
    garbled,
    measured,
    measurement,
    refused,
    survived,
)

# The library does not admit to Python 3.14 yet; the program runs there without CxF.
colour_cxf = pytest.importorskip("colour_cxf")

SPECTRUM = " ".join(f"{0.1 + i / 50:.3f}" for i in range(31))
OBJECT = f"""<cc:Object ObjectType="Standard" Name="Clay red" Id="c1">
<cc:CreationDate>2025-03-01T09:30:00Z</cc:CreationDate>
<cc:ColorValues>
<cc:ReflectanceSpectrum ColorSpecification="S" StartWL="400">{SPECTRUM}</cc:ReflectanceSpectrum>
<cc:ColorCIELab ColorSpecification="S"><cc:L>46</cc:L>
<cc:A>34</cc:A><cc:B>24</cc:B></cc:ColorCIELab>
</cc:ColorValues></cc:Object>"""
EXAMPLE = f"""<?xml version="1.0" encoding="UTF-8"?>
<cc:CxF xmlns:cc="http://colorexchangeformat.com/CxF3-core"><cc:Resources>
<cc:ObjectCollection>{OBJECT}</cc:ObjectCollection>
<cc:ColorSpecificationCollection><cc:ColorSpecification Id="S">
<cc:TristimulusSpec><cc:Illuminant>D65</cc:Illuminant><cc:Observer>2_Degree</cc:Observer>
<cc:Method>E308_Table5</cc:Method></cc:TristimulusSpec>
<cc:MeasurementSpec><cc:MeasurementType>Spectrum_Reflectance</cc:MeasurementType>
<cc:GeometryChoice><cc:UnknownGeometry>unknown</cc:UnknownGeometry></cc:GeometryChoice>
<cc:WavelengthRange StartWL="400" Increment="10"/></cc:MeasurementSpec>
</cc:ColorSpecification></cc:ColorSpecificationCollection>
</cc:Resources></cc:CxF>"""


def changed(old: str, new: str) -> bytes:
    """Give the example with one thing changed."""
    assert old in EXAMPLE
    return EXAMPLE.replace(old, new).encode()


# --- what is read --------------------------------------------------------------------------------


def test_spectra_and_colours() -> None:
    """The spectrum and the colour of an object are read, with its name and id."""
    found = parse_cxf(EXAMPLE.encode(), "x.cxf")
    (sample,) = found.rows
    assert (sample.id, sample.name, sample.lab) == ("c1", "Clay red", Lab(46, 34, 24))
    assert_allclose(sample.nm, np.arange(400, 701, 10))
    assert sample.reflectance is not None
    assert_allclose(sample.reflectance, [float(v) for v in SPECTRUM.split()])
    assert sample.notes == ()


def test_a_file_of_the_library_agrees_with_itself() -> None:
    """The Lab values of the 144 samples that colour-cxf ships agree with their spectra.

    Source: the sample file of colour-cxf 0.1.1, Lab for D50 and 2 degrees by ASTM E308 table 5.
    Its spectra end at 680 nm, so that ours go on at the end value. Carrying D50 to D65 keeps the
    colour roughly: the Bradford transform does not know the spectrum.
    """
    path = Path(colour_cxf.__file__).parent / "tests" / "resources" / "sample.cxf"
    document = colour_cxf.read_cxf(path.read_bytes())
    given_labs = np.array(
        [
            (value.l, value.a, value.b)
            for thing in document.resources.object_collection.object_value
            for value in thing.color_values.choice
            if isinstance(value, colour_cxf.cxf3.ColorCielab)
        ]
    )
    found = parse_cxf(path.read_bytes(), "sample.cxf")
    assert len(found.rows) == len(given_labs) == 144
    spectra = np.array([on_grid(m) for m in found.rows])
    assert spectra.shape == (144, 36)
    assert np.max(delta_e_2000(lab_of(spectra, Light.D50), given_labs)) < 0.2
    carried = np.array([m.lab.triple for m in found.rows if m.lab])
    errors = delta_e_2000(lab_of(spectra), carried)
    assert np.median(errors) < 1
    assert np.max(errors) < 2
    assert any("Bradford" in note for note in found.notes)


def test_what_is_not_asked_for_is_passed_over() -> None:
    """Objects without a spectrum or Lab, and elements that are not known, are passed over."""
    other = (
        '<cc:Object ObjectType="T" Name="n" Id="i"><cc:New x="1"><cc:Deep/></cc:New></cc:Object>'
    )
    found = parse_cxf(changed(OBJECT, OBJECT + other), "x.cxf")
    assert len(found.rows) == 1
    assert "1 objects" in " ".join(found.notes)


def test_the_first_of_several_spectra() -> None:
    """Of several spectra of an object the first is taken, and said so."""
    more = '<cc:ReflectanceSpectrum ColorSpecification="S">0.5 0.5</cc:ReflectanceSpectrum>'
    (sample,) = parse_cxf(changed("<cc:ColorCIELab", more + "<cc:ColorCIELab"), "x.cxf").rows
    assert sample.nm.size == 31
    assert "2 reflectance spectra" in sample.notes[0]


def test_without_a_step_ten_is_taken() -> None:
    """Where the file does not say the step of a spectrum, 10 nm is taken and noted."""
    data = changed('<cc:WavelengthRange StartWL="400" Increment="10"/>', "")
    found = parse_cxf(data, "x.cxf")
    assert found.rows[0].nm[-1] == 700
    assert "10 nm" in found.notes[0]


def test_colours_for_another_observer_are_passed_over() -> None:
    """Lab for 10 degrees is passed over where a spectrum is there, and refused where none is."""
    data = changed("2_Degree", "10_Degree")
    (sample,) = parse_cxf(data, "x.cxf").rows
    assert sample.lab is None
    assert "10 degree" in sample.notes[0]
    spectrum = EXAMPLE[EXAMPLE.index("<cc:Refl") : EXAMPLE.index("<cc:ColorCIELab")]
    alone = data.decode().replace(spectrum, "").encode()
    assert "10 degree" in refused(lambda: parse_cxf(alone, "x.cxf")).what


@pytest.mark.parametrize(
    ("before", "encoding"), [("", "utf-16"), ("\n\t ", "utf-8"), ("\ufeff\n", "utf-8")]
)
def test_known_by_its_first_sign(before: str, encoding: str) -> None:
    """XML is known by its first sign, whatever marks and spaces come before it."""
    text = before + EXAMPLE.partition("?>\n")[2]
    assert parse_measurements(text.encode(encoding), "x").rows[0].id == "c1"


# --- what is refused -----------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("0.100", "many", "“c1”"),
        ("0.100", "-0.1", "below zero"),
        ("0.100", "1.3", "1.3"),
        ("<cc:L>46</cc:L>", "", "“c1”"),
        ("<cc:L>46</cc:L>", "<cc:L>light</cc:L>", "“light”"),
        ('StartWL="400"', "", "does not say at which wavelength"),
        ('Increment="10"', 'Increment="0"', "does not say at which wavelength"),
        ('Increment="10"', 'Increment="5"', "visible range"),
        ("D65<", "F11<", "passed over"),
        ("</cc:CxF>", "", "not well-formed"),
        ("CxF3-core", "another", "not CxF3"),
        (OBJECT, OBJECT + OBJECT, "object 1 and object 2"),
        (OBJECT, "", "no measurements"),
        ('encoding="UTF-8"', 'encoding="x-none"', "not well-formed"),
    ],
)
def test_what_is_off_is_named(old: str, new: str, says: str) -> None:
    """The message names the sample that is off; what does not matter is let through with a note."""
    data = changed(old, new)
    if says == "passed over":
        assert says in parse_cxf(data, "x.cxf").rows[0].notes[0]
    else:
        assert says in refused(lambda: parse_cxf(data, "x.cxf")).what


ROOT = '<CxF xmlns="http://colorexchangeformat.com/CxF3-core">'
LAUGHS = "".join(f'<!ENTITY l{i} "{f"&l{i - 1};" * 10}">' for i in range(1, 10))


@pytest.mark.parametrize(
    "declared",
    [
        f'<!DOCTYPE x [<!ENTITY l0 "ha">{LAUGHS}]>',
        '<!DOCTYPE x [<!ENTITY f SYSTEM "file:///etc/hostname">]>',
        '<!DOCTYPE x SYSTEM "http://localhost/x.dtd">',
        '<!DOCTYPE x [<!ENTITY % p SYSTEM "file:///etc/hostname"> %p;]>',
        "<!DOCTYPE x>",
    ],
    ids=["billion laughs", "a file", "a net address", "a parameter", "a bare type"],
)
def test_declarations_that_may_do_harm_are_refused(declared: str) -> None:
    """Entities, outside files and document types are refused before anything is unfolded."""
    entity = "l9" if "l9" in declared else "f"
    text = EXAMPLE.replace("?>", f"?>{declared}").replace("Clay red", f"&{entity};")
    assert "may do harm" in refused(lambda: parse_cxf(text.encode(), "x.cxf")).what


@pytest.mark.parametrize(
    "text",
    [
        ROOT + "<a>" * 1_000_000,
        ROOT + "<a>" * 500_000 + "</a>" * 500_000 + "</CxF>",
        ROOT + "<a/>" * 500_000 + "</CxF>",
        "<svg/>",
        ROOT[:-1] + "".join(f' a{i}="1"' for i in range(100_000)) + "/>",
        ROOT + "1 " * 100_000 + "</CxF>",
        "<",
    ],
    ids=["deep, open", "deep", "many", "another kind", "attributes", "long text", "a sign"],
)
def test_monsters_are_refused(text: str) -> None:
    """Documents that are too deep, too large or of another kind are refused."""
    refused(lambda: parse_cxf(text.encode(), "x.cxf"))


@pytest.mark.parametrize("library", ["colour_cxf.cxf3", "defusedxml.common", "colour_cxf"])
def test_without_the_library(monkeypatch: pytest.MonkeyPatch, library: str) -> None:
    """Where the libraries are not installed, the message says how to get them."""
    monkeypatch.setitem(sys.modules, library, None)
    if library == "colour_cxf":
        error = refused(lambda: to_cxf(Measurements("x", (measurement("a"),)), WHEN))
    else:
        error = refused(lambda: parse_cxf(EXAMPLE.encode(), "x.cxf"))
    assert "pip install colour-cxf defusedxml" in error.mend


def test_grids_that_cxf_does_not_have() -> None:
    """Writing a spectrum that begins elsewhere than CxF allows is refused, with a way out."""
    late = Measurement("a", "a", np.arange(410.0, 701, 10), np.full(30, 0.5), None)
    assert "CSV" in refused(lambda: to_cxf(Measurements("x", (late,)), WHEN)).mend


# --- writing -------------------------------------------------------------------------------------


def test_the_library_reads_what_is_written() -> None:
    """By colour-cxf itself, strict about elements, all values are where the schema has them."""
    wanted = Measurements("brush-outs", (measurement("a", 0.25, Lab(50.0, 1.0, -2.5)),))
    document = colour_cxf.read_cxf(to_cxf(wanted, WHEN))
    assert document.file_information.description == "brush-outs"
    (thing,) = document.resources.object_collection.object_value
    assert (thing.id, thing.name, thing.object_type) == ("a", "Sample a", "Standard")
    assert thing.creation_date.value.to_datetime() == WHEN
    spectrum, colour = thing.color_values.choice
    assert (spectrum.start_wl, spectrum.value) == (400, [0.25] * 31)
    assert (colour.l, colour.a, colour.b) == (50, 1, -2.5)
    (told,) = document.resources.color_specification_collection.color_specification
    assert told.id == spectrum.color_specification == colour.color_specification
    assert told.tristimulus_spec.illuminant_or_custom_illuminant.value.value == "D65"
    assert told.tristimulus_spec.observer.value.value == "2_Degree"
    assert told.measurement_spec.wavelength_range.increment == 10


@settings(max_examples=50)
@given(measured())
def test_what_is_written_reads_back_equal(wanted: Measurements) -> None:
    """Samples written as CxF are read back the same, to the last digit."""
    assert_same(parse_cxf(to_cxf(wanted, WHEN), "x"), wanted)


@settings(max_examples=60)
@given(garbled(EXAMPLE.encode()))
def test_a_garbled_document_is_survived(data: bytes) -> None:
    """A spoilt document gives measurements or a plain message, never anything else."""
    survived(data)


@settings(max_examples=60)
@given(edited(EXAMPLE.replace(">", "> ").replace("</", " </")))
def test_an_edited_document_is_survived(text: str) -> None:
    """A document with words swapped gives measurements or a plain message."""
    survived(text.encode())
