"""What is said of references that are marked in a photo, and the yarn and the cloth."""

from __future__ import annotations

import colour
import numpy as np
import pytest

from swatchwright.acts.colours import colours_of, open_photo
from swatchwright.acts.live_picture import relit
from swatchwright.acts.references import (
    BLACK_CARD,
    from_a_metre,
    marked_grey,
    marked_paint,
    marked_typed,
    name_of_grey,
    nearest_first,
    references_of,
    weave_shows,
)
from swatchwright.acts.samples import sample_photos
from swatchwright.errors import MendableError
from swatchwright.photo.reference import WHITE_PAPER
from swatchwright.photo.references import Reference
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.jobs import Document, Marks
from swatchwright.values import Lab, Rect

BOX = Rect(10, 20, 30, 40)


def test_a_grey_has_the_lightness_of_its_reflectance() -> None:
    """L* of a grey is that of CIE 015:2018, as colour-science has it, and a*, b* are nothing."""
    for reflectance in (0.04, 0.18, 0.9):
        marked = marked_grey(BOX, reflectance)
        truth = float(colour.colorimetry.lightness_CIE1976(100 * reflectance))
        assert abs(marked.lab.L - truth) < 0.02
        assert np.hypot(marked.lab.a, marked.lab.b) < 0.02
        assert references_of((marked,)) == (Reference.grey(BOX, reflectance),)


def test_common_greys_have_names() -> None:
    """Cards and paper are called what they are, and others by their figure."""
    names = [name_of_grey(reflectance) for reflectance in (0.18, WHITE_PAPER, BLACK_CARD, 0.295)]
    assert names == ["grey card", "white paper", "black card", "a grey of 29.5 %"]


@pytest.mark.parametrize("reflectance", [0.0, 1.2, float("nan")])
def test_no_such_grey(reflectance: float) -> None:
    """A grey that cannot be is refused in plain words."""
    with pytest.raises(MendableError, match="reflect"):
        marked_grey(BOX, reflectance)


def test_a_paint_is_marked_by_name() -> None:
    """A brushed-out paint of the shelf is a chip under its name, and itself the nearest to it."""
    for paint in demo_shelf().paints[:6]:
        marked = marked_paint(BOX, paint)
        assert (marked.name, marked.kind) == (paint.name, "chip")
        assert nearest_first(demo_shelf().paints, marked.lab)[0].id == paint.id


def test_nearest_first_by_another_library() -> None:
    """Paints come in the order of CIEDE2000 as colour-science computes it."""
    wanted, paints = Lab(46, 34, 24), demo_shelf().paints
    ordered = nearest_first(paints, wanted)
    labs = np.array([marked_paint(BOX, paint).lab.triple for paint in ordered])
    apart = colour.delta_E(labs, np.array(wanted.triple), method="CIE 2000")
    assert np.all(np.diff(apart) >= -1e-3)
    assert nearest_first(paints, None) is paints
    assert nearest_first((), wanted) == ()


def test_typed_numbers() -> None:
    """A chip can be given by its numbers; what is no colour is refused."""
    assert marked_typed(BOX, "46, 34, 24").lab == Lab(46, 34, 24)
    for text in ("", "red", "46, 34", "146, 0, 0"):
        with pytest.raises(MendableError):
            marked_typed(BOX, text)


def test_from_a_metre_and_back() -> None:
    """Seen from a metre the weave is darker than its yarn, and seen near to again the same."""
    sample = sample_photos()[0]
    found = colours_of(open_photo(sample.path), grey=sample.grey, area=sample.cloth)
    far = from_a_metre(found)
    assert weave_shows(found)
    assert weave_shows(far)
    for near, distant in zip(found.colours, far.colours, strict=True):
        assert distant.colour == near.from_a_metre
        assert distant.colour.lab.L < near.colour.lab.L
    assert from_a_metre(far).colours == found.colours


def test_relit_is_light_multiplied() -> None:
    """Bytes go through the curve of sRGB as colour-science has it, to a byte either way."""
    ramp = np.stack([np.arange(256)] * 3, axis=-1)[np.newaxis].astype(np.uint8)
    gains = (0.6, 1.0, 1.4)
    light = colour.eotf(ramp / 255, function="sRGB") * gains
    truth = colour.eotf_inverse(np.clip(light, 0, 1), function="sRGB") * 255
    assert np.abs(relit(ramp, gains).astype(float) - truth).max() <= 0.51
    assert np.array_equal(relit(ramp, (1.0, 1.0, 1.0)), ramp)


def test_marks_of_before_are_still_read() -> None:
    """Marks that were kept before there were further references mean what they meant."""
    old = '{"grey": [{"x": 1, "y": 2, "width": 3, "height": 4}], "cloth": null, "reflectance": 0.2}'
    read = Document(1, old).read(Marks)
    assert read == Marks((Rect(1, 2, 3, 4),), None, 0.2)
    more = Marks((), None, 0.18, (marked_grey(BOX, 0.9),), "lamp", metre=True)
    assert Document.of(more).read(Marks) == more
