"""The grey mark followed while it is dragged."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from swatchwright.acts.colours import colours_of, open_photo
from swatchwright.acts.live import follow_grey
from swatchwright.colour.difference import delta_e_2000
from swatchwright.errors import MendableError
from swatchwright.values import Rect
from unit.acts.scenes import CARD, CLOTH, GREY, scene

if TYPE_CHECKING:
    from pathlib import Path


def test_it_shows_what_reading_anew_would_give(tmp_path: Path) -> None:
    """From colours read without a grey, the followed ones are those read with it, within 0.5."""
    photo = open_photo(scene(tmp_path / "cloth.png"))
    before = colours_of(photo, area=CLOTH)
    followed = follow_grey(before, GREY, reflectance=CARD)
    anew = colours_of(photo, grey=GREY, reflectance=CARD, area=CLOTH)
    assert followed.gains == pytest.approx(anew.balance.gains, rel=0.01)
    for lab, colour in zip(followed.labs, anew.colours, strict=True):
        assert float(delta_e_2000(lab.triple, colour.colour.lab.triple)) < 0.5


def test_a_mark_that_stays_changes_nothing(tmp_path: Path) -> None:
    """At the place where the grey was read, the colours are those that were found."""
    photo = open_photo(scene(tmp_path / "cloth.png"))
    found = colours_of(photo, grey=GREY, reflectance=CARD, area=CLOTH)
    followed = follow_grey(found, GREY, reflectance=CARD)
    for lab, colour in zip(followed.labs, found.colours, strict=True):
        assert lab.triple == pytest.approx(colour.colour.lab.triple, abs=0.1)


def test_a_place_without_a_grey_is_refused_as_when_read(tmp_path: Path) -> None:
    """Outside the photo, or too small, the mark is refused in the usual words."""
    found = colours_of(open_photo(scene(tmp_path / "cloth.png")), area=CLOTH)
    with pytest.raises(MendableError, match="does not lie in the photo"):
        follow_grey(found, Rect(-5, 0, 20, 20))
    with pytest.raises(MendableError, match="pixels"):
        follow_grey(found, Rect(0, 0, 2, 2))
