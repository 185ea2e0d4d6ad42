"""Measure how quick the window is, and how much memory it takes: docs/performance.md.

Run ``python tools/measure_window.py`` from the root on a machine that does little else. Every row
is a process of its own, with a store of its own; times are of the clock, medians of five.
"""

from __future__ import annotations

import os
import re
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
RUNS = 5
PATIENCE = 120.0
FRAMES = 60
WIDE, HIGH = 4032, 3024
"""A photo of 12 megapixels."""


def main() -> None:
    """Measure all, each in processes of their own."""
    up = [_run("up") for _ in range(RUNS)]
    print(f"window up, from the start of the process: {median(row['up'] for row in up):.2f} s")
    memory = [_run("memory") for _ in range(3)]
    print(f"memory, empty bench: {median(row['empty'] for row in memory):.0f} MiB")
    print(f"memory, 12 megapixels open, mixes found: {median(r['open'] for r in memory):.0f} MiB")
    pages = [_run("pages") for _ in range(3)]
    for key in pages[0]:
        print(f"page {key}: {1000 * median(row[key] for row in pages):.0f} ms")
    drag = [_run("drag") for _ in range(3)]
    print(f"drag of the grey mark: {median(row['frames'] for row in drag):.0f} frames a second")


def _run(what: str) -> dict[str, float]:
    """Run one measurement in a new process, and read its rows ``name=figure``."""
    with TemporaryDirectory() as home:
        environment = {**os.environ, "SWATCHWRIGHT_HOME": home, "BEGUN": str(time.time())}
        words = [sys.executable, __file__, what]
        done = subprocess.run(  # noqa: S603 - this file
            words, env=environment, capture_output=True, text=True, check=True
        )
    rows = (line.partition("=") for line in done.stdout.splitlines() if "=" in line)
    return {name: float(figure) for name, _, figure in rows}


def _up() -> None:
    """Tell how long it takes from the start of the process until the window is painted."""
    from PySide6.QtWidgets import QApplication

    from swatchwright.desktop.tongue import settle_language

    application = QApplication([])
    application.setStyle("Fusion")
    settle_language(application)
    from swatchwright.desktop.window import Window

    window = Window()
    window.show()
    application.processEvents()
    print(f"up={time.time() - float(os.environ['BEGUN'])}")
    window.close()


def _memory() -> None:
    """Tell the resident memory with an empty bench, and with a photo of 12 megapixels."""
    from swatchwright.acts.samples import sample_photos

    bench = _Bench()
    bench.rest()
    print(f"empty={_resident()}")
    sample = sample_photos()[0]
    photo = _enlarged(sample.path)
    from PIL import Image

    with Image.open(sample.path) as image:
        scale = WIDE / image.width
    from swatchwright.desktop.marks import Marks
    from swatchwright.values import Rect

    def larger(rect: Rect) -> Rect:
        return Rect(*(round(side * scale) for side in (rect.x, rect.y, rect.width, rect.height)))

    window = bench.window
    window.session.open(photo, Marks(larger(sample.grey), larger(sample.cloth)))
    bench.rest()
    if window.session.recipes is None:
        raise RuntimeError("no mixes were found")
    # What is free is given back once the window has rested for a while.
    end = time.monotonic() + 3
    while time.monotonic() < end:
        bench.rest()
    print(f"open={_resident()}")
    window.close()


def _pages() -> None:
    """Tell how long each page takes until it is painted, when first seen and after that."""
    from swatchwright.acts.samples import sample_photos
    from swatchwright.desktop.pages import PAGES

    bench = _Bench()
    bench.window.open_sample(sample_photos()[0])
    bench.rest()
    for round_ in ("first", "again"):
        for kind in PAGES:
            begun = time.perf_counter()
            bench.window.show_page(kind.key)
            bench.window.repaint()
            print(f"{kind.key} {round_}={time.perf_counter() - begun}")
            bench.rest()
    bench.window.close()


def _drag() -> None:
    """Tell how many frames a second there are while the grey mark is dragged."""
    from PySide6.QtCore import QPointF, Qt
    from PySide6.QtTest import QTest

    from swatchwright.acts.samples import sample_photos

    bench = _Bench()
    sample = sample_photos()[0]
    bench.window.open_sample(sample)
    bench.rest()
    view = bench.window.photo_side.view
    grey = sample.grey
    middle = view.to_widget(grey.x + grey.width / 2, grey.y + grey.height / 2)
    left = Qt.MouseButton.LeftButton
    QTest.mousePress(view, left, Qt.KeyboardModifier.NoModifier, middle.toPoint())
    begun = time.perf_counter()
    for frame in range(FRAMES):
        at = middle + QPointF(frame % 20 - 10, frame % 14 - 7)
        QTest.mouseMove(view, at.toPoint())
        view.repaint()
        bench.application.processEvents()
    took = time.perf_counter() - begun
    QTest.mouseRelease(view, left, Qt.KeyboardModifier.NoModifier, middle.toPoint())
    print(f"frames={FRAMES / took}")
    bench.rest()
    bench.window.close()


class _Bench:
    """A window, and waiting until it rests."""

    def __init__(self) -> None:
        from PySide6.QtWidgets import QApplication

        from swatchwright.desktop.memory import keep_few_arenas
        from swatchwright.desktop.window import Window

        keep_few_arenas()
        self.application = QApplication([])
        self.application.setStyle("Fusion")
        self.window = Window()
        self.window.resize(1280, 720)
        self.window.show()

    def rest(self) -> None:
        """Let the window work until all is done, but for a proof in the background."""
        end, calm = time.monotonic() + PATIENCE, 0
        while calm < 20:
            if time.monotonic() > end:
                raise TimeoutError("the window did not come to rest")
            self.application.processEvents()
            calm = calm + 1 if self.window.at_rest() else 0
            time.sleep(0.01)


def _resident() -> float:
    """Give the resident memory of this process in MiB."""
    told = Path("/proc/self/status").read_text(encoding="ascii")
    found = re.search(r"VmRSS:\s+(\d+) kB", told)
    if found is None:
        raise RuntimeError("this system does not tell the memory of a process")
    return int(found[1]) / 1024


def _enlarged(path: Path) -> Path:
    """Write a photo of 12 megapixels beside the store, from a smaller one, and forget it."""
    file = Path(os.environ["SWATCHWRIGHT_HOME"]) / "photo.jpg"
    code = (
        "import sys; from PIL import Image; "
        f"Image.open(sys.argv[1]).resize(({WIDE}, {HIGH})).save(sys.argv[2], quality=92)"
    )
    # In a process of its own, so that its memory is not counted here.
    subprocess.run([sys.executable, "-c", code, path, file], check=True)  # noqa: S603
    return file


WHAT: dict[str, Callable[[], None]] = {
    "up": _up,
    "memory": _memory,
    "pages": _pages,
    "drag": _drag,
}

if __name__ == "__main__":
    WHAT[sys.argv[1]]() if len(sys.argv) > 1 else main()
