"""Take the pictures of the window that the documentation shows, from the running program.

Run as ``python tools/take_screenshots.py [FOLDER]``.
"""

from __future__ import annotations

import os
import sys
import time
from collections.abc import Callable
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtWidgets import QApplication, QWidget

from swatchwright.acts.samples import sample_photos
from swatchwright.desktop.window import Window

PICTURES = Path(__file__).parents[1] / "docs" / "pictures"
SIZE = (1280, 760)
PATIENCE = 120.0


def settle(application: QApplication, done: Callable[[], bool]) -> None:
    """Let the window work until it is done, then let it paint."""
    end = time.monotonic() + PATIENCE
    while not done():
        if time.monotonic() > end:
            raise TimeoutError("the window did not come to rest")
        application.processEvents()
        time.sleep(0.01)
    for _ in range(20):
        application.processEvents()


def pause(application: QApplication) -> None:
    """Let a window that waits for a hand to rest begin its work."""
    end = time.monotonic() + 0.5
    while time.monotonic() < end:
        application.processEvents()
        time.sleep(0.01)


def main() -> None:
    """Take all pictures."""
    folder = Path(sys.argv[1]) if len(sys.argv) > 1 else PICTURES
    folder.mkdir(parents=True, exist_ok=True)
    application = QApplication([])
    application.setStyle("Fusion")
    window = Window()
    window.resize(*SIZE)
    window.show()
    resting = window.session.workshop.idle
    by_window, by_lamp, printed = sample_photos()

    def take(name: str, what: Callable[[], QWidget | None] = lambda: window) -> None:
        settle(application, resting)
        widget = what()
        if widget is None:
            raise LookupError(f"there is nothing to take {name} of")
        widget.grab().save(str(folder / name))
        if widget is not window:
            widget.close()
        print(f"took {name}")

    take("start.png")
    window.open_sample(by_window)
    take("cushion_to_mix.png")
    first = window.mix_side.columns()[0]
    first.nearby.click()
    take("neighbours.png", lambda: window.mix_side.opened)
    first.mend.click()
    pause(application)
    take("put_right.png", lambda: window.mix_side.opened)
    window.open_sample(by_lamp)
    settle(application, resting)
    window.photo_side.tools.put_right.setChecked(False)
    take("lamp_as_shot.png")
    window.photo_side.tools.put_right.setChecked(True)
    take("lamp_put_right.png")
    window.open_sample(printed)
    settle(application, resting)
    window.session.choose(1)
    window.set_dark(dark=True)
    take("candidates.png")
    window.close()


if __name__ == "__main__":
    main()
