"""A chart of 24 known colours written in each kind of file, and read back as colours.

The reflectances are the average of 30 printed charts, in daylight D65 (CIE 015:2018). What stands
in each file is worked out by colour-science and written by libraries that are not ours: Pillow,
tifffile, libheif, Qt. The middle grey sets the scale.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import colour
import numpy as np
import pytest
from numpy.typing import NDArray
from PIL import Image

from swatchwright.colour.convert import lab_to_linear_srgb, linear_srgb_to_lab
from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import lab_of
from swatchwright.photo.image import Photo
from swatchwright.photo.readers import read_photo
from swatchwright.values import Rect
from unit.photo.pictures import SRGB_COLORANTS, icc, matrix_tags, p3_profile, para
from unit.photo.readers.invented import COLOUR_MATRIX, deep_tiff, heic, negative

Floats = NDArray[np.floating[Any]]

TABLE = Path(__file__).parents[1] / "data" / "chart24_spectra_10nm.csv"
SIDE = 16


def chart() -> tuple[Floats, int]:
    """Give CIELAB of the 24 patches, shape (24, 3), and which of them is the middle grey."""
    rows = [line for line in TABLE.read_text(encoding="utf-8").splitlines() if line[0] != "#"]
    names = rows[0].split(",")[1:]
    spectra = np.array([[float(v) for v in row.split(",")[1:]] for row in rows[1:]]).T
    return np.asarray(lab_of(spectra), dtype=np.float64), names.index("neutral 5")


LAB, GREY = chart()
XYZ = colour.Lab_to_XYZ(LAB, colour.CCS_ILLUMINANTS["CIE 1931 2 Degree Standard Observer"]["D65"])


def light_in(space: str) -> Floats:
    """Give linear light of the patches in the primaries of a space, unclipped."""
    to_rgb = colour.RGB_COLOURSPACES[space].matrix_XYZ_to_RGB
    return np.asarray(XYZ @ to_rgb.T)


def laid_out(patches: Floats) -> Floats:
    """Lay the patches out in four rows of six squares."""
    return np.kron(patches.reshape(4, 6, 3), np.ones((SIDE, SIDE, 1)))


def bytes_of(encoded: Floats) -> NDArray[np.uint8]:
    """Write numbers of 0-1 as bytes."""
    return np.rint(np.clip(laid_out(encoded), 0, 1) * 255).astype(np.uint8)


def deep_of(encoded: Floats) -> NDArray[np.uint16]:
    """Write numbers of 0-1 with 16 bits."""
    return np.rint(np.clip(laid_out(encoded), 0, 1) * 65535).astype(np.uint16)


def differences(photo: Photo) -> Floats:
    """Scale by what the middle grey is known to be and give CIEDE2000 of the patches."""
    inner = [
        Rect(SIDE * c + 4, SIDE * r + 4, SIDE - 8, SIDE - 8) for r in range(4) for c in range(6)
    ]
    seen = np.stack([photo.linear(rect).mean(axis=(0, 1)) for rect in inner])
    gains = lab_to_linear_srgb(LAB[GREY]) / seen[GREY]
    return np.asarray(delta_e_2000(linear_srgb_to_lab(seen * gains), LAB), dtype=np.float64)


def srgb_jpeg(path: Path) -> None:
    """Write the ordinary photo; cyan is outside sRGB and clipped."""
    encoded = colour.models.eotf_inverse_sRGB(np.clip(light_in("sRGB"), 0, 1))
    Image.fromarray(bytes_of(encoded)).save(path, "JPEG", quality=100, subsampling=0)


def p3_webp(path: Path) -> None:
    """Display P3 by an embedded profile."""
    encoded = colour.models.eotf_inverse_sRGB(light_in("Display P3"))
    Image.fromarray(bytes_of(encoded)).save(
        path, "WEBP", lossless=True, exact=True, icc_profile=p3_profile()
    )


def p3_deep_tiff(path: Path) -> None:
    """Display P3 with 16 bits."""
    encoded = colour.models.eotf_inverse_sRGB(light_in("Display P3"))
    deep_tiff(path, deep_of(encoded), compression="zlib", iccprofile=p3_profile())


def linear_tiff(path: Path) -> None:
    """Linear light in sRGB primaries, as a developer of raw files writes it; half exposed."""
    straight = icc(matrix_tags(SRGB_COLORANTS, para(0, 1.0), "Straight"))
    deep_tiff(path, deep_of(0.5 * np.clip(light_in("sRGB"), 0, 1)), iccprofile=straight)


def qt_png(path: Path) -> None:
    """SRGB with 16 bits, written by Qt."""
    from PySide6.QtGui import QImage

    encoded = colour.models.eotf_inverse_sRGB(np.clip(light_in("sRGB"), 0, 1))
    deep = np.dstack([deep_of(encoded), np.full((4 * SIDE, 6 * SIDE), 65535, dtype=np.uint16)])
    rows, columns = deep.shape[:2]
    image = QImage(deep.tobytes(), columns, rows, 8 * columns, QImage.Format.Format_RGBX64)
    named = path.with_suffix(".png")
    assert image.save(str(named))
    named.rename(path)


def p3_heic(path: Path) -> None:
    """Display P3 with 10 bits by code points, as phones write it."""
    encoded = colour.models.eotf_inverse_sRGB(light_in("Display P3"))
    path.write_bytes(heic(deep_of(encoded), color_primaries=12, transfer_characteristics=13))


def video_heic(path: Path) -> None:
    """BT.2020 with the curve of BT.709, 10 bits."""
    encoded = colour.models.oetf_BT709(light_in("ITU-R BT.2020"))
    path.write_bytes(heic(deep_of(encoded), color_primaries=9, transfer_characteristics=1))


def pq_heic(path: Path) -> None:
    """BT.2020 for HDR screens: white paper at 203 cd/m² (ITU-R BT.2408), 10 bits."""
    encoded = colour.models.eotf_inverse_ST2084(203 * light_in("ITU-R BT.2020"))
    path.write_bytes(heic(deep_of(encoded), color_primaries=9, transfer_characteristics=16))


def hlg_heic(path: Path) -> None:
    """Write the same by hybrid log-gamma, of the light of the scene."""
    paper = colour.models.oetf_inverse_BT2100_HLG(0.75)
    # Its formula for the lights is worked out for the darks as well, and then not taken.
    with np.errstate(invalid="ignore"):
        encoded = colour.models.oetf_BT2100_HLG(paper * light_in("ITU-R BT.2020"))
    path.write_bytes(heic(deep_of(encoded), color_primaries=9, transfer_characteristics=18))


def raw(path: Path) -> None:
    """Write a digital negative of an invented camera, each dot of which sees one primary."""
    negative(path, laid_out(0.9 * XYZ @ COLOUR_MATRIX.T).astype(np.float64))


@pytest.mark.parametrize(
    ("write", "median", "most"),
    [
        (srgb_jpeg, 0.5, 2.5),
        (p3_webp, 0.4, 1.2),
        (p3_deep_tiff, 0.02, 0.05),
        (linear_tiff, 0.05, 2.5),
        (qt_png, 0.05, 2.5),
        (p3_heic, 0.15, 0.4),
        (video_heic, 0.15, 0.5),
        (pq_heic, 0.3, 1.0),
        (hlg_heic, 0.25, 0.8),
        (raw, 0.1, 0.3),
    ],
)
def test_the_chart_comes_back_from_each_kind_of_file(
    tmp_path: Path, write: Any, median: float, most: float
) -> None:
    """To what the bits allow; what sRGB cannot hold (cyan) is only as near as it can be there."""
    path = tmp_path / "chart"
    write(path)
    off = differences(read_photo(path))
    print(f"{write.__name__:14s} median {np.median(off):.3f}, most {off.max():.3f}")  # noqa: T201
    assert np.median(off) < median
    assert off.max() < most


def test_a_raw_file_agrees_with_the_developer_of_libraw(tmp_path: Path) -> None:
    """Where LibRaw's own way to sRGB does not clip, light is the same within 0.002."""
    import rawpy

    path = tmp_path / "chart.dng"
    raw(path)
    with rawpy.imread(str(path)) as file:
        theirs = file.postprocess(
            use_camera_wb=True,
            no_auto_bright=True,
            adjust_maximum_thr=0.0,
            gamma=(1, 1),
            output_bps=16,
        )
    ours = read_photo(path).linear()
    inside = (theirs.min(axis=2) > 0) & (theirs.max(axis=2) < 65535)
    assert inside.mean() > 0.9
    assert ours[inside] == pytest.approx(theirs[inside] / 65535, abs=2e-3)
