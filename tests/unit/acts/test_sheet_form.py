"""The form of a sheet: what of it can be used, the sheet made of it, and its pages on a screen."""

from __future__ import annotations

from dataclasses import replace
from io import BytesIO

import numpy as np
import pypdfium2
import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from swatchwright.acts.recipes import Recipes, recipes_for, typed_colour
from swatchwright.acts.sheet import LABELS, Paper, Units, pictures_of
from swatchwright.acts.sheet_form import (
    FORM_PART,
    BenchMix,
    SheetForm,
    laid_out,
    page_size,
    sheet_of_mix,
    shown_pages,
    sound_form,
    told_of,
    zones_told,
)
from swatchwright.errors import MendableError
from swatchwright.measures.kitchen import Country
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.jobs import Document, Job, KeptRecipe
from swatchwright.values import Lab

RED = Lab(46, 34, 24)


@pytest.fixture(scope="module")
def found() -> Recipes:
    """Give a recipe for a clay red."""
    return recipes_for(typed_colour(46, 34, 24), demo_shelf(), most_paints=2, keep=1)


@pytest.fixture(scope="module")
def document(found: Recipes) -> bytes:
    """Give the PDF of its sheet."""
    return laid_out(sheet_of_mix(BenchMix(found, demo_shelf()), SheetForm()), SheetForm())


def kept(zone: str, *, chosen: bool) -> KeptRecipe:
    """Give a kept recipe with no paints."""
    return KeptRecipe(zone, RED, (), RED, RED, 0.0, chosen)


class TestForm:
    """What is set."""

    @given(
        st.builds(
            SheetForm,
            label=st.text(max_size=8) | st.sampled_from([size.name for size in LABELS]),
            units=st.builds(
                Units, st.booleans(), st.booleans(), st.none() | st.sampled_from(Country)
            ),
            volume=st.none() | st.floats(),
            zone=st.none() | st.sampled_from(["body", "top", "attic"]),
            day=st.none() | st.text(max_size=10) | st.dates().map(str),
        )
    )
    def test_whatever_is_kept_becomes_sound(self, form: SheetForm) -> None:
        """A sound form has a label, a unit, a volume, a zone and a day that there are."""
        sound = sound_form(form, ("body", "top"))
        assert sound.label in {size.name for size in LABELS}
        assert sound.units.ml or sound.units.grams or sound.units.spoons
        assert sound.volume is None or 1 <= sound.volume <= 100_000
        assert sound.zone in {None, "body", "top"}
        assert sound_form(sound, ("body", "top")) == sound

    def test_a_sound_form_stays(self) -> None:
        """What can be used is left as it is."""
        form = SheetForm(volume=250.0, zone="top", day="2026-03-01", paper=Paper.LETTER)
        assert sound_form(form, ("top",)) == form

    def test_it_is_kept_as_it_is(self) -> None:
        """A form read back from a job is the same."""
        form = SheetForm(
            as_label=True, units=Units(spoons=Country.UNITED_STATES), paper=Paper.LETTER
        )
        assert Document.of(form).read(SheetForm) == form

    def test_zones_with_a_chosen_recipe(self) -> None:
        """Only zones with a chosen recipe are told, each once."""
        recipes = (kept("body", chosen=True), kept("top", chosen=False), kept("body", chosen=True))
        assert zones_told(Job("box", "Box", recipes=recipes)) == ("body",)
        assert zones_told(None) == ()

    def test_what_no_sheet_tells(self) -> None:
        """A job is told the same where only its form or its time changed, not with a piece."""
        job = Job("box", "Box", changed="2026-03-01T09:30:00Z")
        form = replace(
            job, changed="2026-03-02T09:30:00Z", documents=((FORM_PART, Document.of(SheetForm())),)
        )
        piece = replace(job, documents=(("piece", Document.of(1)),))
        assert told_of(form) == told_of(job)
        assert told_of(piece) != told_of(job)


class TestMix:
    """The first mix on the bench."""

    def test_a_layer_that_cannot_be_is_left_out(self, found: Recipes) -> None:
        """A wash of a paint that is nowhere is told by its name, and that its look is left out."""
        gone = Stack((Layer(LayerKind.WASH, (("gone", 1.0),)),))
        content = sheet_of_mix(BenchMix(found, demo_shelf(), layers=gone), SheetForm())
        assert content.zones[0].finished is None
        assert any("gone" in told for told in content.zones[0].finish)
        assert any("left out" in told and "gone" in told for told in content.zones[0].minding)

    def test_what_is_wrong_besides_is_told(self, found: Recipes) -> None:
        """A volume that nobody mixes is refused."""
        with pytest.raises(MendableError):
            sheet_of_mix(BenchMix(found, demo_shelf()), SheetForm(volume=-1))

    @pytest.mark.parametrize("size", LABELS, ids=lambda size: size.name)
    @pytest.mark.parametrize("fill", [False, True], ids=["one", "full"])
    def test_pages_are_as_large_as_said(self, found: Recipes, size: object, fill: object) -> None:
        """The PDF has pages of the size that is told, in points of 1/72 inch (ISO 32000-1)."""
        form = SheetForm(as_label=True, label=getattr(size, "name", ""), fill=bool(fill))
        content = sheet_of_mix(BenchMix(found, demo_shelf()), form)
        with pypdfium2.PdfDocument(laid_out(content, form)) as opened:
            points = tuple(side / 25.4 * 72 for side in page_size(form))
            assert opened[0].get_size() == pytest.approx(points, abs=0.5)


class TestPages:
    """Pages on a screen."""

    def test_as_they_print(self, document: bytes) -> None:
        """From 50 dots to the inch on they are the pictures that are written to files."""
        assert shown_pages(document, dpi=72) == pictures_of(document, dpi=72)

    def test_small_ones_are_averaged(self, document: bytes) -> None:
        """A page of 40 dots is one of 80, each four dots averaged."""
        with Image.open(BytesIO(shown_pages(document, dpi=40)[0])) as small:
            shown = np.asarray(small, dtype=float)
        with Image.open(BytesIO(pictures_of(document, dpi=80)[0])) as large:
            dots = np.asarray(large, dtype=float)
        rows, columns = (side // 2 for side in dots.shape[:2])
        means = dots[: 2 * rows, : 2 * columns].reshape(rows, 2, columns, 2, 3).mean(axis=(1, 3))
        assert np.abs(shown[:rows, :columns] - means).max() <= 0.5

    @pytest.mark.parametrize("dpi", [-1.0, 0.0, 601.0, float("nan")])
    def test_dots_that_cannot_be(self, document: bytes, dpi: float) -> None:
        """Less than some dots and more than 600 are refused."""
        with pytest.raises(MendableError):
            shown_pages(document, dpi=dpi)
