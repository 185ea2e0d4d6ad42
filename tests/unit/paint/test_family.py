"""Finish families, and reading them from what a painter writes."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.paint.family import FAMILIES, Family, family_of


def test_every_family_has_its_numbers() -> None:
    """Each family has a glare of 0 to 1, some scattering when wet, and no negative milk."""
    assert set(FAMILIES) == set(Family)
    for finish in FAMILIES.values():
        assert 0 <= finish.glare <= 1
        assert finish.wet_scattering > 0
        assert finish.milk >= 0


def test_the_glossier_the_less_glare() -> None:
    """From chalky matte to gloss less of the surface's own reflection is seen."""
    order = (Family.CHALKY, Family.EMULSION, Family.EGGSHELL, Family.SATIN, Family.GLOSS)
    glare = [FAMILIES[family].glare for family in order]
    assert glare == sorted(set(glare), reverse=True)
    assert (glare[0], glare[-1]) == (1, 0)


def test_only_oil_is_thinned_with_spirit() -> None:
    """Oil is solvent-borne and all others are water-borne."""
    assert [family for family in Family if not FAMILIES[family].waterborne] == [Family.OIL]


@pytest.mark.parametrize("family", Family)
def test_its_own_name_is_read(family: Family) -> None:
    """Each family is read from its own name, in any case and with any blanks."""
    assert family_of(family.value) is family
    assert family_of(f"  {family.value.upper()} ") is family
    assert family_of(family.value.replace(" ", "_")) is family


@pytest.mark.parametrize(
    ("text", "family"),
    [
        ("Chalky Matt", Family.CHALKY),
        ("chalk paint", Family.CHALKY),
        ("chalk", Family.CHALKY),
        ("lime wash", Family.MINERAL),
        ("Milk", Family.MINERAL),
        ("matt emulsion", Family.EMULSION),
        ("acrylic", Family.EMULSION),
        ("flat", Family.EMULSION),
        ("Eggshell, water-based", Family.EGGSHELL),
        ("eggshell finish", Family.EGGSHELL),
        ("semi-gloss", Family.SATIN),
        ("semi gloss", Family.SATIN),
        ("semigloss", Family.SATIN),
        ("full gloss", Family.GLOSS),
        ("alkyd", Family.OIL),
        ("linseed oil", Family.OIL),
        ("alkyd gloss", Family.OIL),
        ("oil eggshell", Family.OIL),
        ("oil-based satin", Family.OIL),
        ("gloss (alkyd)", Family.OIL),
        ("Gloss, solvent-based", Family.OIL),
        ("semi-gloss enamel", Family.SATIN),
        ("water-based gloss", Family.GLOSS),
        ("waterborne alkyd, satin", Family.SATIN),
    ],
)
def test_other_words_are_read(text: str, family: Family) -> None:
    """What is written on tins is read as the family that it means (common practice, no source)."""
    assert family_of(text) is family


@pytest.mark.parametrize("text", ["", "   ", "shiny", "primer", "42"])
def test_an_unknown_word_is_none(text: str) -> None:
    """A word that names no family gives none, for the caller to say so."""
    assert family_of(text) is None


@given(st.text())
def test_no_text_is_too_odd(text: str) -> None:
    """Any text at all gives a family or none."""
    found = family_of(text)
    assert found is None or isinstance(found, Family)
