"""Colour profiles: matrix kinds read exactly, damage refused, everything bounded."""

from __future__ import annotations

import io
import struct
from collections.abc import Callable

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray
from PIL import Image, ImageCms

from swatchwright.colour.convert import srgb_encode
from swatchwright.photo.image import Decoding, srgb_decoding
from swatchwright.photo.readers.icc import read_icc
from unit.photo.pictures import (
    P3_COLORANTS,
    SRGB_COLORANTS,
    SRGB_CURVE,
    curv,
    desc,
    icc,
    matrix_tags,
    mluc,
    p3_profile,
    para,
    srgb_profile,
    xyz,
)

X = np.arange(256) / 255

Formula = Callable[[NDArray[np.float64]], NDArray[np.float64]]


def decoding_of(data: bytes) -> Decoding:
    """Read a profile that has to have curves and a matrix."""
    decoding = read_icc(data).decoding
    assert decoding is not None
    return decoding


def curve_of(curve: bytes) -> NDArray[np.float32]:
    """Read one curve by way of a whole profile."""
    curves = decoding_of(icc(matrix_tags(SRGB_COLORANTS, curve))).curves
    return np.asarray(curves[1])


def test_an_srgb_profile_is_srgb() -> None:
    """Its curve is that of IEC 61966-2-1 and its matrix changes nothing, within 1e-3."""
    decoding = decoding_of(srgb_profile())
    assert decoding.curves == pytest.approx(srgb_decoding().curves, abs=1e-4)
    assert decoding.matrix == pytest.approx(np.eye(3), abs=1e-3)


def test_the_srgb_profile_of_littlecms_is_srgb() -> None:
    """A profile that LittleCMS wrote itself decodes as sRGB too."""
    made = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    decoding = decoding_of(made)
    assert decoding.curves == pytest.approx(srgb_decoding().curves, abs=1e-3)
    assert decoding.matrix == pytest.approx(np.eye(3), abs=1e-3)
    assert "sRGB" in read_icc(made).description


def test_display_p3_agrees_with_its_definition() -> None:
    """Colours go where colour-science's Display P3 (its primaries and white) sends them."""
    import colour

    p3 = colour.models.RGB_COLOURSPACE_DISPLAY_P3
    expected = colour.matrix_RGB_to_RGB(
        p3, colour.models.RGB_COLOURSPACE_sRGB, chromatic_adaptation_transform=None
    )
    decoding = decoding_of(p3_profile())
    assert decoding.matrix == pytest.approx(expected, abs=1e-3)
    assert decoding.curves[0] == pytest.approx(
        colour.RGB_to_RGB(np.stack([X] * 3, -1), p3, p3, apply_cctf_decoding=True)[:, 0], abs=1e-4
    )
    red = decoding.matrix @ [1, 0, 0]
    assert red[0] > 1.2
    assert red[1] < 0


def test_white_stays_white() -> None:
    """Equal bytes of a profile with D50 primaries give equal linear sRGB."""
    for data in (p3_profile(), srgb_profile()):
        assert decoding_of(data).matrix.sum(axis=1) == pytest.approx([1, 1, 1], abs=4e-4)


@pytest.mark.parametrize("colorants", [P3_COLORANTS, SRGB_COLORANTS])
@pytest.mark.parametrize(
    "curve",
    [para(3, *SRGB_CURVE), para(0, 1.8), curv(563), curv(*(i * i for i in range(256)))],
)
def test_littlecms_sees_the_same_colours(
    colorants: tuple[tuple[float, float, float], ...], curve: bytes
) -> None:
    """Colours inside sRGB come out as LittleCMS makes them, within two bytes of 8-bit work."""
    data = icc(matrix_tags(colorants, curve))
    bytes_ = np.random.default_rng(5).integers(40, 216, (32, 32, 3), dtype=np.uint8)
    theirs = ImageCms.profileToProfile(
        Image.fromarray(bytes_),
        ImageCms.ImageCmsProfile(io.BytesIO(data)),
        ImageCms.createProfile("sRGB"),
        renderingIntent=ImageCms.Intent.RELATIVE_COLORIMETRIC,
    )
    decoding = decoding_of(data)
    light = np.stack([decoding.curves[c][bytes_[..., c]] for c in range(3)], axis=-1)
    linear = light @ decoding.matrix.T
    inside = np.all((linear > 0.002) & (linear < 0.998), axis=-1)
    ours = 255 * srgb_encode(linear)
    assert inside.mean() > 0.5
    assert np.abs(ours - np.asarray(theirs))[inside].max() < 2


class TestCurves:
    """The kinds of curve of ICC.1:2022, 10.6 and 10.18, against their formulas."""

    def test_none_and_gamma(self) -> None:
        """No entry is a straight line, one entry a power in steps of 1/256."""
        assert curve_of(curv()) == pytest.approx(X, abs=1e-6)
        assert curve_of(curv(round(2.2 * 256))) == pytest.approx(X ** (563 / 256), abs=1e-6)

    def test_a_table_is_interpolated(self) -> None:
        """Entries are spread evenly over 0 to 1 with straight lines between."""
        expected = np.where(X < 0.5, X / 2, 0.25 + (X - 0.5) * 1.5)
        assert curve_of(curv(0, 16384, 65535)) == pytest.approx(expected, abs=2e-5)

    @pytest.mark.parametrize(
        ("kind", "values", "formula"),
        [
            (0, (2.2,), lambda x: x**2.2),
            (1, (2.0, 1.25, -0.25), lambda x: np.where(x >= 0.2, (1.25 * x - 0.25) ** 2, 0)),
            (
                2,
                (2.0, 1.0, -0.2, 0.1),
                lambda x: np.where(x >= 0.2, (x - 0.2) ** 2 + 0.1, 0.1),
            ),
            (
                3,
                (2.0, 0.9, 0.1, 0.25, 0.125),
                lambda x: np.where(x >= 0.125, (0.9 * x + 0.1) ** 2, 0.25 * x),
            ),
            (
                4,
                (2.0, 0.9, 0.1, 0.25, 0.125, -0.01, 0.03),
                lambda x: np.where(x >= 0.125, (0.9 * x + 0.1) ** 2 - 0.01, 0.25 * x + 0.03),
            ),
        ],
    )
    def test_parametric(self, kind: int, values: tuple[float, ...], formula: Formula) -> None:
        """Types 0 to 4 follow their formulas."""
        expected = np.clip(formula(X), 0, 1)
        assert curve_of(para(kind, *values)) == pytest.approx(expected, abs=2e-4)


class TestNames:
    """What a profile calls itself."""

    @pytest.mark.parametrize(
        ("tag", "name"),
        [
            (mluc("Breiter Farbraum", b"deDE"), "Breiter Farbraum"),
            (mluc("Wide\x07 colours"), "Wide colours"),
            (desc("Old name"), "Old name"),
            (mluc("x" * 500), "x" * 100),
            (mluc("")[:20], "a profile without a name"),
            (b"junk", "a profile without a name"),
            (b"", "a profile without a name"),
        ],
    )
    def test_both_kinds_are_read_and_junk_is_no_hindrance(self, tag: bytes, name: str) -> None:
        """The name is cut to what can be shown; a damaged one does not damage the profile."""
        profile = read_icc(icc({**matrix_tags(SRGB_COLORANTS, curv()), "desc": tag}))
        assert profile.description == name
        assert profile.decoding is not None

    def test_english_comes_first(self) -> None:
        """Of several languages the English name is taken."""
        german, english = "Weit".encode("utf-16-be"), "Wide".encode("utf-16-be")
        tag = b"mluc\0\0\0\0" + struct.pack(">II", 2, 12)
        tag += struct.pack(">4sII", b"deDE", 8, 40) + struct.pack(">4sII", b"enUS", 8, 48)
        tags = {**matrix_tags(SRGB_COLORANTS, curv()), "desc": tag + german + english}
        assert read_icc(icc(tags)).description == "Wide"


def test_a_profile_of_tables_only_has_no_decoding() -> None:
    """It is named, and left to LittleCMS."""
    profile = read_icc(icc({"desc": mluc("Tables"), "A2B0": bytes(64)}, pcs=b"Lab "))
    assert profile.description == "Tables"
    assert profile.decoding is None


def damaged() -> dict[str, bytes]:
    """Give profiles that cannot be used, each for its own reason."""
    good = matrix_tags(SRGB_COLORANTS, para(3, *SRGB_CURVE))
    sound = icc(good)
    return {
        "empty": b"",
        "cut in the header": sound[:60],
        "cut in the tags": sound[:150],
        "cut in the data": sound[:-40],
        "no signature": sound[:36] + b"nope" + sound[40:],
        "grey": icc(good, space=b"GRAY"),
        "inks": icc(good, space=b"CMYK"),
        "no primaries": icc({k: v for k, v in good.items() if "XYZ" not in k}),
        "too many tags": sound[:128] + struct.pack(">I", 10**6) + sound[132:],
        "tag beyond the end": sound[:136] + struct.pack(">I", 2**32 - 8) + sound[140:],
        "unknown curve": icc({**good, "rTRC": b"what" + bytes(20)}),
        "unknown type": icc({**good, "rTRC": para(5, 1, 1, 1)}),
        "level curve": icc({**good, "gTRC": para(1, 2.0, 0.0, 0.5)}),
        "falling curve": icc({**good, "gTRC": curv(65535, 0)}),
        "huge table": icc({**good, "gTRC": b"curv\0\0\0\0" + b"\xff" * 8}),
        "primary of another kind": icc({**good, "gXYZ": curv(1, 2, 3)}),
        "no white": icc({**good, "gXYZ": xyz(0, 0, 0)}),
        "equal primaries": icc(
            {**good, **dict.fromkeys(("rXYZ", "gXYZ", "bXYZ"), xyz(0.32, 0.33, 0.27))}
        ),
        "too large": sound + bytes(17 * 2**20),
    }


@pytest.mark.parametrize("reason", damaged())
def test_damage_is_a_value_error(reason: str) -> None:
    """Every kind of damage is told in the one way that the reader handles."""
    with pytest.raises(ValueError, match=r"profile"):
        read_icc(damaged()[reason])


@settings(max_examples=200, deadline=None, derandomize=True)
@given(
    st.lists(st.tuples(st.integers(0, 700), st.integers(0, 255)), max_size=6),
    st.integers(0, 700),
)
def test_garbled_profiles_read_or_raise_value_errors(hits: list[tuple[int, int]], end: int) -> None:
    """Whatever is done to the bytes, the outcome is a finite decoding or a ValueError."""
    data = bytearray(p3_profile())
    for where, value in hits:
        data[where % len(data)] = value
    try:
        decoding = read_icc(bytes(data[: max(end, 300)])).decoding
    except ValueError:
        return
    if decoding is not None:
        assert np.all(np.isfinite(decoding.curves))
        assert np.all(np.isfinite(decoding.matrix))
