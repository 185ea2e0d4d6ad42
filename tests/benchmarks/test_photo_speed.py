"""How fast a photo becomes colours, against the plain way in the same run, and in what memory.

The plain way decodes every pixel through colour-science to CIELAB and clusters a sample of them.
In an ordinary test run each is called once, on a smaller picture, and only the answers are judged;
memory is judged at full size, for it does not depend on what else the machine does.
"""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from time import perf_counter
from typing import TYPE_CHECKING

import numpy as np
import pytest
from PIL import Image

from swatchwright.acts.colours import colours_of, open_photo
from swatchwright.acts.live import follow_grey
from swatchwright.acts.samples import sample_photos
from swatchwright.colour.difference import delta_e_2000
from swatchwright.values import Rect

if TYPE_CHECKING:
    from numpy.typing import NDArray
    from pytest_benchmark.fixture import BenchmarkFixture

SMALL = (1600, 1200)
SIZES = {"12 megapixels": (4000, 3000), "48 megapixels": (8000, 6000)}

MOST_MEMORY = 700 * 2**20
"""Bytes at 48 megapixels, the program and its libraries included."""

PLAIN_UP_TO = 3 * 2**20
"""Bytes of a file of 12 megapixels, with room to spare, and less than one of 48 has."""

PROGRAM = Path(__file__).with_name("read_one_photo.py")
ON_ITS_SIDE = 6


def sized(folder: Path, size: tuple[int, int], orientation: int = 1) -> Path:
    """Give a sample photo of so many pixels."""
    path = folder / "cushion.jpg"
    exif = Image.Exif()
    exif[0x0112] = orientation
    with Image.open(sample_photos()[0].path) as picture:
        picture.resize(size, Image.Resampling.BILINEAR).save(path, quality=92, exif=exif)
    return path


@pytest.fixture(params=list(SIZES.values()), ids=list(SIZES))
def photo_file(request: pytest.FixtureRequest, benchmark: BenchmarkFixture, tmp_path: Path) -> Path:
    """Give a sample photo, in full size where it is measured."""
    return sized(tmp_path, SMALL if benchmark.disabled else request.param)


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
    """A photo becomes colours; how much faster than the plain way is among the extra figures."""
    ours(photo_file)
    check(benchmark(ours, photo_file))
    # The plain way needs some 10 GB for 48 megapixels, so that it is only held against 12.
    if benchmark.stats is not None and photo_file.stat().st_size < PLAIN_UP_TO:
        start = perf_counter()
        check(plainly(photo_file))
        seconds = perf_counter() - start
        benchmark.extra_info["times_as_fast"] = seconds / benchmark.stats.stats.median


@pytest.mark.benchmark(group="photo to colours")
def test_photo_to_colours_plainly(benchmark: BenchmarkFixture, tmp_path: Path) -> None:
    """The plain way finds the same colours, more slowly and in far more memory."""
    path = sized(tmp_path, SMALL if benchmark.disabled else SIZES["12 megapixels"])
    check(benchmark.pedantic(plainly, (path,), rounds=1))


@pytest.mark.benchmark(group="dragging the grey mark")
def test_a_dragged_grey_is_followed(benchmark: BenchmarkFixture, photo_file: Path) -> None:
    """While the mark moves, colours follow at a small part of what reading them anew takes."""
    sample = sample_photos()[0]
    photo, grey = open_photo(photo_file), scaled(sample.grey, photo_file)
    area = scaled(sample.cloth, photo_file)
    start = perf_counter()
    found = colours_of(photo, grey=grey, area=area)
    seconds = perf_counter() - start
    followed = benchmark(follow_grey, found, grey)
    for lab, colour in zip(followed.labs, found.colours, strict=True):
        assert float(delta_e_2000(lab.triple, colour.colour.lab.triple)) < 1
    if benchmark.stats is not None:
        benchmark.extra_info["times_as_fast"] = seconds / benchmark.stats.stats.median


@pytest.mark.skipif(sys.platform == "win32", reason="Windows does not tell what was used at most")
@pytest.mark.parametrize("orientation", [1, ON_ITS_SIDE])
def test_48_megapixels_fit(tmp_path: Path, orientation: int) -> None:
    """From the file to its colours a process stays below 700 MiB, upright or on its side."""
    path = sized(tmp_path, SIZES["48 megapixels"], orientation)
    written = subprocess.run(
        [sys.executable, str(PROGRAM), str(path)], capture_output=True, text=True, check=True
    )
    told = json.loads(written.stdout)
    print(told)  # noqa: T201
    assert told["colours"] > 1
    assert told["peak"] < MOST_MEMORY
