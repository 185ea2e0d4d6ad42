"""A photo as a value: light of a part, small pictures for the screen."""

from __future__ import annotations

import numpy as np
import pytest

from swatchwright.errors import MendableError
from swatchwright.photo.image import Decoding, Photo, require_inside, srgb_decoding
from swatchwright.values import Rect
from unit.photo.pictures import photo_of, photo_of_light


def test_srgb_light_follows_the_standard() -> None:
    """An sRGB photo decodes by the curve of IEC 61966-2-1, as colour-science has it."""
    import colour

    bytes_ = np.arange(256)
    photo = photo_of(np.repeat(bytes_[None, :, None], 3, axis=2))
    expected = colour.models.eotf_sRGB(bytes_ / 255)
    assert photo.linear()[0, :, 1] == pytest.approx(expected, abs=1e-6)


def test_a_part_is_cut_where_it_lies() -> None:
    """A rectangle gives its own pixels, columns by x and rows by y, every step-th."""
    pixels = np.zeros((20, 30, 3), dtype=np.uint8)
    pixels[5:9, 10:16] = 255
    photo = photo_of(pixels)
    part = photo.linear(Rect(10, 5, 6, 4))
    assert part.shape == (4, 6, 3)
    assert part.dtype == np.float32
    assert np.all(part == 1)
    assert photo.linear(Rect(9, 4, 8, 6), step=2).shape == (3, 4, 3)
    assert float(photo.linear().sum()) == pytest.approx(4 * 6 * 3)


def test_a_part_outside_the_photo_is_refused_with_both_sizes() -> None:
    """The refusal names where the rectangle is and how large the photo is."""
    photo = photo_of(np.zeros((20, 30, 3)))
    with pytest.raises(MendableError, match="30 × 20"):
        photo.linear(Rect(25, 0, 6, 4))
    with pytest.raises(MendableError, match="-1, 0"):
        require_inside(photo, Rect(-1, 0, 6, 4), "The mark")


def test_colours_outside_srgb_survive() -> None:
    """Light is not clipped on its way through the matrix."""
    matrix = np.array([[1.2, -0.2, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]])
    plain = photo_of([[[255, 0, 0], [0, 255, 0]]])
    photo = Photo(plain.encoded, None, Decoding(srgb_decoding().curves, matrix), plain.facts)
    assert photo.linear()[0, :, 0] == pytest.approx([1.2, -0.2])


def test_opacity_is_cut_like_the_bytes() -> None:
    """The mask of a part lines up with its bytes, and is all true for a photo without one."""
    opaque = np.zeros((20, 30), dtype=np.bool_)
    opaque[5:9, 10:16] = True
    photo = photo_of(np.zeros((20, 30, 3)), opaque)
    assert photo.cut_opaque(Rect(10, 5, 6, 4)).all()
    assert photo.cut_opaque(None, 2).sum() == 2 * 3
    assert photo_of(np.zeros((20, 30, 3))).cut_opaque(Rect(1, 1, 3, 2)).shape == (2, 3)
    with pytest.raises(MendableError):
        photo.cut_opaque(Rect(0, 0, 31, 4))


class TestPreview:
    """Small pictures for the screen."""

    def test_the_longer_side_fits_and_nothing_is_enlarged(self) -> None:
        """The longer side gets the length asked for, the other follows, small photos stay."""
        photo = photo_of(np.zeros((300, 400, 3)))
        assert photo.preview(100).shape == (75, 100, 3)
        assert photo.preview(1000).shape == (300, 400, 3)
        assert photo_of(np.zeros((400, 9, 3))).preview(20).shape == (20, 1, 3)

    def test_an_unreduced_preview_is_the_file(self) -> None:
        """At full size an sRGB photo comes back byte for byte."""
        pixels = np.random.default_rng(1).integers(0, 256, (64, 48, 3))
        assert np.array_equal(photo_of(pixels).preview(64), pixels)

    def test_a_weave_is_averaged_as_light(self) -> None:
        """Black and white threads seen from afar are half the light: byte 188, not 128.

        Source: IEC 61966-2-1 encodes a linear 0.5 as 187.5.
        """
        pixels = np.zeros((80, 80, 3))
        pixels[:, ::2] = 255
        assert np.all(np.abs(photo_of(pixels).preview(20).astype(int) - 188) <= 1)

    def test_gains_balance_what_is_shown(self) -> None:
        """Gains multiply the light, and what becomes too light is clipped."""
        photo = photo_of_light(np.full((8, 8, 3), (0.4, 0.2, 0.1)))
        shown = photo.preview(8, gains=(0.5, 1.0, 20.0))
        assert shown[0, 0, 0] == shown[0, 0, 1]
        assert shown[0, 0, 2] == 255

    def test_transparent_parts_show_a_neutral_grey(self) -> None:
        """What is not there pleads for no colour."""
        opaque = np.ones((8, 8), dtype=np.bool_)
        opaque[:, :4] = False
        shown = photo_of(np.full((8, 8, 3), (250, 0, 0)), opaque).preview(8)
        assert len(set(shown[0, 0].tolist())) == 1
        assert shown[0, 7].tolist() == [250, 0, 0]
