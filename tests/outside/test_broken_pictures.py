"""Broken pictures of others: all that the tests of two picture libraries hold, opened by us.

The source distributions of Pillow and pillow-heif hold some 1,100 pictures, many of them made to
crash, to hang or to eat all memory. They are fetched by the names of the packages, once, into the
folder for caches. Each picture is opened in a process of its own kind, with its memory bounded; it
must be read or refused in words. Pictures of kinds that are not among them are broken by us.
"""

from __future__ import annotations

import json
import os
import queue
import re
import shutil
import subprocess
import sys
import tarfile
import threading
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from typing import IO

import numpy as np
import pytest

from unit.photo.readers.invented import avif, deep_tiff, heic, negative

SOURCES = ("pillow==12.0.0", "pillow-heif==1.8.1")
WITHIN = re.compile(r"/[Tt]ests/images/")
FEWEST = 1000

PROGRAM = Path(__file__).with_name("open_pictures.py")
PROCESSES = 2
MOST_SECONDS = 10.0
"""Of the processor, all its threads together: twice what a person waits, since memory shared with
other work slows a processor, which is no fault of a picture."""

PATIENCE = 90.0
"""Seconds of the clock without a word after which a picture is said to hang."""

BROKEN_EACH = 60

_NO_NETWORK = re.compile(
    r"NewConnectionError|NameResolutionError|ConnectTimeout|Network is unreachable"
    r"|Temporary failure in name resolution|ProxyError"
)


@dataclass(frozen=True, slots=True)
class Opened:
    """How the opening of a picture ended, and what it took of the processor, in seconds."""

    path: Path
    end: str
    seconds: float


@pytest.fixture(scope="module")
def pictures() -> list[Path]:
    """Fetch the pictures, or take them from the cache."""
    cache = Path(os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache")
    folder = cache / "swatchwright-tests" / "broken-pictures"
    found = []
    for source in SOURCES:
        place = folder / source.replace("==", "-")
        if not (place / "complete").is_file():
            fetch(source, place)
        found += [p for p in sorted(place.rglob("*")) if p.is_file() and p.name != "complete"]
    return found


def fetch(source: str, place: Path) -> None:
    """Download a source distribution with pip and take the pictures out of it."""
    shutil.rmtree(place, ignore_errors=True)
    place.mkdir(parents=True)
    command = [*pip(), "download", "--quiet", "--no-deps", "--no-binary", ":all:", source]
    # No PYTHONPATH of ours: pip runs the build tools of the package to learn its name.
    clean = {k: v for k, v in os.environ.items() if k != "PYTHONPATH"}
    done = subprocess.run(
        [*command, "--dest", str(place)], capture_output=True, text=True, check=False, env=clean
    )
    if done.returncode != 0 and _NO_NETWORK.search(done.stderr):
        pytest.skip("there is no network to fetch the broken pictures by")
    assert done.returncode == 0, done.stderr
    archive = next(place.glob("*.tar.gz"))
    with tarfile.open(archive) as packed:
        wanted = [m for m in packed.getmembers() if m.isfile() and WITHIN.search(m.name)]
        packed.extractall(place, wanted, filter="data")
    archive.unlink()
    (place / "complete").touch()


def pip() -> list[str]:
    """Find a pip: that of this environment, or one on the path."""
    own = [sys.executable, "-m", "pip"]
    if subprocess.run([*own, "--version"], capture_output=True, check=False).returncode == 0:
        return own
    elsewhere = shutil.which("pip") or shutil.which("pip3")
    assert elsewhere is not None, "no pip to fetch the broken pictures with"
    return [elsewhere]


def open_all(paths: list[Path], folder: Path) -> list[Opened]:
    """Open pictures in processes side by side."""
    shares = [paths[i::PROCESSES] for i in range(PROCESSES)]
    with ThreadPoolExecutor(PROCESSES) as pool:
        done = pool.map(open_share, shares, [folder / f"{i}.txt" for i in range(PROCESSES)])
        return [opened for share in done for opened in share]


def open_share(paths: list[Path], listing: Path) -> list[Opened]:
    """Open pictures one after another; where the process dies, go on behind the one it died of."""
    opened: list[Opened] = []
    while len(opened) < len(paths):
        listing.write_text("\n".join(str(p) for p in paths[len(opened) :]) + "\n", encoding="utf-8")
        opened += open_listed(listing)
    return opened


def open_listed(listing: Path) -> list[Opened]:
    """Open what is listed, as far as the process gets."""
    # One thread each: the room that others would set aside counts as memory.
    single = dict.fromkeys(("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS"), "1")
    with subprocess.Popen(
        [sys.executable, str(PROGRAM), str(listing)],
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        text=True,
        env={**os.environ, **single},
    ) as process:
        assert process.stdout is not None
        lines: queue.Queue[str] = queue.Queue()
        reader = threading.Thread(target=pass_on, args=(process.stdout, lines), daemon=True)
        reader.start()
        try:
            return heard(process, lines)
        finally:
            process.kill()
            reader.join()


def pass_on(stream: IO[str], lines: queue.Queue[str]) -> None:
    """Hand over lines as they come, and an empty one at the end."""
    for line in stream:
        lines.put(line)
    lines.put("")


def heard(process: subprocess.Popen[str], lines: queue.Queue[str]) -> list[Opened]:
    """Listen until the process ends, dies or falls silent."""
    opened: list[Opened] = []
    path: Path | None = None
    while True:
        try:
            line = lines.get(timeout=PATIENCE)
        except queue.Empty:
            return [*opened, Opened(path or Path(), "hung", PATIENCE)]
        if not line:
            break
        words = json.loads(line)
        if "path" in words:
            path = Path(words["path"])
        elif path is not None:
            opened.append(Opened(path, words["end"], words["seconds"]))
            path = None
    if path is not None:
        return [*opened, Opened(path, f"died with {process.wait()}", 0.0)]
    assert process.wait() == 0, "the program that opens pictures did not start"
    return opened


def judge(opened: list[Opened]) -> None:
    """Demand that each was read or refused, and soon."""
    assert [o for o in opened if o.end not in {"read", "refused"}] == []
    assert [o for o in opened if o.seconds > MOST_SECONDS] == []


def test_every_picture_of_the_collections_is_read_or_refused(
    pictures: list[Path], tmp_path: Path
) -> None:
    """None crashes, hangs, or throws what is not meant for the user; many are read."""
    assert len(pictures) >= FEWEST
    opened = open_all(pictures, tmp_path)
    judge(opened)
    read = {o.path.name for o in opened if o.end == "read"}
    assert len(read) > len(pictures) / 4
    # A sound one of each kind, so that refusing all would not pass.
    assert {"hopper.jpg", "hopper.avif", "RGB_10__128x128.heif", "RGB_16__128x128.png"} <= read


def test_files_broken_at_random_are_read_or_refused(tmp_path: Path) -> None:
    """The same of digital negatives, HEIC, AVIF and 16-bit TIFF with bytes changed or cut off."""
    light = np.random.default_rng(3).uniform(0, 1, (48, 64, 3))
    deep = np.rint(light * 65535).astype(np.uint16)
    upper = (deep >> 8).astype(np.uint8)
    sound = {
        "mosaic.dng": negative(tmp_path / "mosaic.dng", light).read_bytes(),
        "linear.dng": negative(tmp_path / "linear.dng", light, mosaic=False).read_bytes(),
        "deep.tif": deep_tiff(tmp_path / "deep.tif", deep, compression="zlib").read_bytes(),
        "phone.heic": heic(upper),
        "deep.heic": heic(deep),
        "small.avif": avif(upper),
    }
    paths = [path for name, data in sound.items() for path in broken(data, tmp_path / name)]
    opened = open_all(paths, tmp_path)
    judge(opened)
    ends = {o.path.name: o.end for o in opened}
    assert all(ends[f"{name}-0"] == "read" for name in sound)
    assert "refused" in ends.values()


def broken(data: bytes, stem: Path) -> list[Path]:
    """Write a file whole, and broken in several places or cut short in ever other ways."""
    rng = np.random.default_rng(17)
    paths = []
    for number in range(BROKEN_EACH + 1):
        hit = bytearray(data)
        for where in rng.uniform(0, 1, number and 1 + number % 8) ** 3:
            # The head is where most goes wrong: the cube sends more hits there.
            hit[int(where * len(hit))] = int(rng.integers(256))
        end = len(hit) if number % 5 else int(len(hit) * (1 - (number / BROKEN_EACH) ** 2))
        path = stem.with_name(f"{stem.name}-{number}")
        path.write_bytes(bytes(hit[: end or len(hit)]))
        paths.append(path)
    return paths
