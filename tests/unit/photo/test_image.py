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
    with pytest.raises(MendableError, match="\N{MINUS SIGN}1, 0"):
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


def test_a_part_is_a_photo_of_its_own() -> None:
    """Its pixels, mask and all its bits are those of the whole at that place."""
    deep = np.random.default_rng(5).integers(0, 65536, (20, 30, 3), dtype=np.uint16)
    opaque = deep[..., 0] > 20000
    encoded = ((deep.astype(int) + 128) // 257).astype(np.uint8)
    whole = Photo(encoded, opaque, srgb_decoding(65536), photo_of(encoded).facts, deep)
    rect = Rect(4, 3, 12, 8)
    part = whole.part(rect, step=2)
    assert (part.width, part.height) == (6, 4)
    assert np.array_equal(part.linear(), whole.linear(rect, step=2))
    assert np.array_equal(part.cut_opaque(), whole.cut_opaque(rect, step=2))


class TestDeep:
    """Photos of more than 8 bits a channel."""

    def test_light_comes_from_all_bits_and_bytes_are_understood_too(self) -> None:
        """A curve of 65536 levels decodes 16 bits exactly and bytes at every 257th place."""
        import colour

        deep = np.arange(0, 65536, 64, dtype=np.uint16).reshape(32, 32, 1).repeat(3, axis=2)
        encoded = (deep >> 8).astype(np.uint8)
        facts = photo_of(encoded).facts
        photo = Photo(encoded, None, srgb_decoding(65536), facts, deep)
        expected = colour.models.eotf_sRGB(deep / 65535)
        assert photo.linear() == pytest.approx(expected, abs=1e-6)
        assert photo.light_at(np.array([5, 6]), np.array([7, 8])) == pytest.approx(
            expected[[7, 8], [5, 6]], abs=1e-6
        )
        assert photo.light_of(encoded) == pytest.approx(
            colour.models.eotf_sRGB(encoded / 255), abs=1e-6
        )

    def test_a_preview_is_made_of_all_bits(self) -> None:
        """A ramp within one byte is seen in the preview as its mean."""
        deep = np.full((16, 16, 3), 128 * 257 + 100, dtype=np.uint16)
        encoded = np.full((16, 16, 3), 128, dtype=np.uint8)
        facts = photo_of(encoded).facts
        shown = Photo(encoded, None, srgb_decoding(65536), facts, deep).preview(4, (1.0, 1.0, 1.0))
        assert np.all(shown == 128)
        deep = np.full((16, 16, 3), 128 * 257 + 200, dtype=np.uint16)
        shown = Photo(encoded, None, srgb_decoding(65536), facts, deep).preview(4, (1.0, 1.0, 1.0))
        assert np.all(shown == 129)


def test_a_large_preview_is_made_in_strips_without_a_seam() -> None:
    """A smooth ramp over many strips stays smooth, down to its last row."""
    ramp = np.linspace(0, 255, 3000).astype(np.uint8)[:, None, None]
    shown = photo_of(np.broadcast_to(ramp, (3000, 24, 3))).preview(700)[:, 2, 1].astype(int)
    assert shown.shape == (700,)
    assert shown[0] == 0
    assert shown[-1] >= 254
    assert np.all(np.abs(np.diff(shown)) <= 1)


def test_linear_decodings_are_told() -> None:
    """A straight curve is linear light, that of sRGB is not."""
    straight = np.linspace(0, 1, 256, dtype=np.float32)
    assert Decoding(np.stack([straight] * 3), np.eye(3)).linear
    assert not srgb_decoding().linear
