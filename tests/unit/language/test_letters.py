"""Names of files in letters that every system takes."""

from __future__ import annotations

import re
from unicodedata import normalize

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.language.letters import plain_letters


@pytest.mark.parametrize(
    ("name", "told"),
    [
        # Umlauts spelt out as in DIN 5007-2.
        ("Stück ohne Namen", "stueck-ohne-namen"),
        ("Größe: Äußere Tür, GÖTTINGEN", "groesse-aeussere-tuer-goettingen"),
        (normalize("NFD", "Möbelstück"), "moebelstueck"),
        ("Écran, for the stove", "ecran-for-the-stove"),
        ("…", ""),
    ],
)
def test_a_name_is_spelt_in_plain_letters(name: str, told: str) -> None:
    """Umlauts become two letters, other accents go, and all between is a dash."""
    assert plain_letters(name) == told


@given(st.text(), st.integers(1, 60))
def test_whatever_is_typed_becomes_a_name_for_a_file(text: str, most: int) -> None:
    """Only a to z, digits and single dashes between them, and no more than asked for."""
    told = plain_letters(text, most)
    assert re.fullmatch(r"([a-z0-9]+(-[a-z0-9]+)*)?", told)
    assert len(told) <= most
    assert plain_letters(told, most) == told
