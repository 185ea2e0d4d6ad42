"""Take the pictures of the window at twice the size, for docs/look.md, from the running program.

Run as ``python tools/scale_pictures.py [FOLDER]``; they go to FOLDER (``docs/pictures``).
"""

from __future__ import annotations

import json
import os
import sys
from io import BytesIO
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING

from PIL import Image

if TYPE_CHECKING:
    from PySide6.QtGui import QPixmap

PICTURES = Path(__file__).parents[1] / "docs" / "pictures"
PAGES = ("colour", "compare", "piece")
SCREEN = {"name": "one", "x": 0, "y": 0, "width": 2560, "height": 1440, "dpr": 1}
LETTERS = {"logicalDpi": 96, "logicalBaseDpi": 96}
MOST_BYTES = 250_000


def small(taken: QPixmap) -> bytes:
    """Give a picture as PNG of 256 colours, in three quarters of its size where it is large."""
    from PySide6.QtCore import QBuffer

    buffer = QBuffer()
    buffer.open(QBuffer.OpenModeFlag.WriteOnly)
    taken.save(buffer, "PNG")
    image = Image.open(BytesIO(buffer.data().data())).convert("RGB")
    for size in (image.size, (image.width * 3 // 4, image.height * 3 // 4)):
        sized = image if size == image.size else image.resize(size, Image.Resampling.LANCZOS)
        into = BytesIO()
        few = sized.quantize(256, Image.Quantize.FASTOCTREE, dither=Image.Dither.NONE)
        few.save(into, "PNG", optimize=True)
        if len(into.getvalue()) < MOST_BYTES:
            return into.getvalue()
    raise ValueError("no palette makes this picture small")


def take(folder: Path) -> None:
    """Take them of the demonstration's job."""
    from PySide6.QtWidgets import QApplication

    import screens
    from swatchwright.acts.samples import sample_photos
    from swatchwright.desktop.pages.brief_page import BriefPage
    from swatchwright.desktop.window import Window

    application = QApplication([])
    application.setStyle("Fusion")
    screens.SIZE = (1280, 720)
    window = Window()
    camera = screens.Camera(window, folder)
    window.open_sample(sample_photos()[0])
    camera.rest(proof=True)
    camera.page("brief", BriefPage).play()
    camera.rest()
    for key in PAGES:
        window.show_page(key)
        camera.rest()
        path = folder / f"scale_200_{key}.png"
        path.write_bytes(small(window.grab()))
        print(f"took {path.name}, {path.stat().st_size // 1000} kB")
    window.close()


def main() -> None:
    """Settle scale, screen and store before Qt is there, and take the pictures."""
    with TemporaryDirectory() as kept:
        file = Path(kept) / "screen.json"
        file.write_text(json.dumps({"screens": [{**SCREEN, **LETTERS}]}), encoding="utf-8")
        os.environ["QT_QPA_PLATFORM"] = f"offscreen:configfile={file}"
        os.environ["QT_SCALE_FACTOR"] = "2"
        os.environ["SWATCHWRIGHT_HOME"] = kept
        take(Path(sys.argv[1]) if len(sys.argv) > 1 else PICTURES)


if __name__ == "__main__":
    main()
