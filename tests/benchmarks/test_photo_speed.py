"""How fast a photo becomes colours, against the plain way in the same run.

The plain way decodes every pixel through colour-science to CIELAB and clusters a sample of them.
In an ordinary test run each is called once, on a smaller picture, and only the answers are judged.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import pytest
from PIL import Image

from swatchwright.acts.colours import colours_of, open_photo
from swatchwright.acts.samples import sample_photos
from swatchwright.colour.difference import delta_e_2000
from swatchwright.values import Rect

if TYPE_CHECKING:
    from pathlib import Path

    from numpy.typing import NDArray
    from pytest_benchmark.fixture import BenchmarkFixture

TWELVE_MEGAPIXELS = (4000, 3000)
SMALL = (1600, 1200)


@pytest.fixture
def photo_file(benchmark: BenchmarkFixture, tmp_path: Path) -> Path:
    """Give a sample photo, at 12 megapixels where it is measured."""
    size = SMALL if benchmark.disabled else TWELVE_MEGAPIXELS
    path = tmp_path / "cushion.jpg"
    with Image.open(sample_photos()[0].path) as picture:
        picture.resize(size, Image.Resampling.LANCZOS).save(path, quality=92)
    return path


def scaled(rect: Rect, path: Path) -> Rect:
    """Carry a rectangle of the sample to the size of the file."""
    with Image.open(path) as picture:
        factor = picture.width / SMALL[0]
    return Rect(*(round(v * factor) for v in (rect.x, rect.y, rect.width, rect.height)))


def ours(path: Path) -> NDArray[np.float64]:
    """Read the colours of the cloth with the program."""
    sample = sample_photos()[0]
    found = colours_of(
        open_photo(path), grey=scaled(sample.grey, path), area=scaled(sample.cloth, path), count=3
    )
    return np.array([c.colour.lab.triple for c in found.colours])


def plainly(path: Path) -> NDArray[np.float64]:
    """Read them the plain way."""
    import colour
    from sklearn.cluster import KMeans

    sample = sample_photos()[0]
    grey, cloth = scaled(sample.grey, path), scaled(sample.cloth, path)
    with Image.open(path) as picture:
        encoded = np.asarray(picture.convert("RGB")) / 255
    linear = colour.models.eotf_sRGB(encoded)
    card = linear[grey.y : grey.bottom, grey.x : grey.right].reshape(-1, 3)
    linear = linear * (0.18 / np.median(card, axis=0))
    XYZ = colour.RGB_to_XYZ(linear, "sRGB")
    lab = colour.XYZ_to_Lab(
        XYZ, colour.CCS_ILLUMINANTS["CIE 1931 2 Degree Standard Observer"]["D65"]
    )
    pixels = lab[cloth.y : cloth.bottom, cloth.x : cloth.right].reshape(-1, 3)
    step = max(1, len(pixels) // 60_000)
    fitted = KMeans(3, n_init=4, random_state=0).fit(pixels[::step])
    return np.asarray(fitted.cluster_centers_)


def check(labs: NDArray[np.float64]) -> None:
    """Judge that each yarn is found, to the width that shadow leaves the plain way."""
    for yarn in ((44.98, 32.95, 23.79), (26.93, 2.02, -24.02), (78.02, 3.0, 13.99)):
        assert float(delta_e_2000(yarn, labs).min()) < 15


@pytest.mark.benchmark(group="photo to colours")
def test_photo_to_colours(benchmark: BenchmarkFixture, photo_file: Path) -> None:
    """A photo becomes colours."""
    ours(photo_file)
    check(benchmark(ours, photo_file))


@pytest.mark.benchmark(group="photo to colours")
def test_photo_to_colours_plainly(benchmark: BenchmarkFixture, photo_file: Path) -> None:
    """The plain way finds the same colours, more slowly."""
    check(benchmark.pedantic(plainly, (photo_file,), rounds=1))
