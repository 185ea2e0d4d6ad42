"""Take the pictures of the window that the documentation shows, from the running program.

Run as ``python tools/take_screenshots.py [--language CODE] [--only readme|guide] [FOLDER]``. They
go below FOLDER (``docs``): those of the readme, which is in English, to ``pictures``, and those of
the guide to ``guide/CODE/pictures``.
"""

from __future__ import annotations

import argparse
import os
from pathlib import Path
from tempfile import TemporaryDirectory

from PySide6.QtWidgets import QApplication

from screens import Camera
from swatchwright.desktop.tongue import LANGUAGE, settle_language
from swatchwright.language import ENGLISH, languages

DOCS = Path(__file__).parents[1] / "docs"


def main() -> None:
    """Take what is asked for, with a store of its own: nobody's jobs and paints are pictured."""
    asked = argparse.ArgumentParser(description="Take the pictures of the documentation.")
    asked.add_argument("folder", nargs="?", type=Path, default=DOCS)
    asked.add_argument("--language", choices=languages(), default=ENGLISH)
    asked.add_argument("--only", choices=("readme", "guide"))
    options = asked.parse_args()
    os.environ[LANGUAGE] = options.language
    if options.only != "guide" and options.language == ENGLISH:
        take(options.folder / "pictures", of_guide=False)
    if options.only != "readme":
        take(options.folder / "guide" / options.language / "pictures", of_guide=True)


def take(folder: Path, *, of_guide: bool) -> None:
    """Take the pictures of the readme or of the guide."""
    application = QApplication.instance() or QApplication([])
    if isinstance(application, QApplication):
        application.setStyle("Fusion")
        settle_language(application)
    # Not before the language was settled: the words of the window are said when it is imported.
    from guide_scenes import take_guide
    from readme_scenes import take_readme, take_sheet
    from swatchwright.desktop.window import Window

    with TemporaryDirectory() as store:
        os.environ["SWATCHWRIGHT_HOME"] = store
        window = Window()
        camera = Camera(window, folder, small=of_guide)
        if of_guide:
            take_guide(camera)
        else:
            take_readme(camera)
        window.close()
        if not of_guide:
            take_sheet(folder)


if __name__ == "__main__":
    main()
