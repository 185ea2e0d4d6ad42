"""Take the pictures of the window that the documentation shows, from the running program.

Run as ``python tools/take_screenshots.py [FOLDER]``.
"""

from __future__ import annotations

import os
import sys
import time
from collections.abc import Callable
from pathlib import Path
from tempfile import TemporaryDirectory

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtWidgets import QApplication, QWidget

from swatchwright.acts.demo_job import begin_demo_job, demo_findings
from swatchwright.acts.jobs import open_jobs
from swatchwright.acts.samples import sample_photos
from swatchwright.acts.sheet import content_of, document_of, pictures_of
from swatchwright.desktop.pages.brief_page import BriefPage
from swatchwright.desktop.pages.sample_page import SamplePage
from swatchwright.desktop.window import Window
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.piece.work.order import Age, FinishKind, PlanOrder, Surface

PLAN = PlanOrder(
    "Blanket box", "2027-03-01", Surface.PAINTED, Age.RECENT, washes=1, finish=FinishKind.WAX
)
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
    """Take all pictures, with a store of their own: nobody's jobs and paints are pictured."""
    with TemporaryDirectory() as store:
        os.environ["SWATCHWRIGHT_HOME"] = store
        take_all()


def take_all() -> None:
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
    window.set_dark(dark=False)
    take_pages(application, window, take)
    window.close()
    take_sheet(folder)


def take_pages(application: QApplication, window: Window, take: Callable[[str], None]) -> None:
    """Take the pages of the demonstration's job."""

    def at_rest() -> bool:
        return window.session.workshop.idle(besides="proof") and window.desk.idle()

    window.show_page("brief")
    brief = window.page("brief")
    if not isinstance(brief, BriefPage):
        raise TypeError("the page of the job is another")
    brief.play()
    settle(application, at_rest)
    pause(application)
    window.desk.keep_part("finish", Stack((Layer(LayerKind.WASH, paints=(("white-clean", 1.0),)),)))
    window.desk.keep_part("plan", PLAN)
    settle(application, at_rest)
    take_sample(application, window, take)
    for key in ("brief", "compare", "shelf", "finish", "piece", "plan", "sheet"):
        window.show_page(key)
        settle(application, at_rest)
        pause(application)
        settle(application, at_rest)
        name = {"brief": "job.png", "sheet": "sheet_page.png"}.get(key, f"{key}.png")
        take(name)


def take_sample(application: QApplication, window: Window, take: Callable[[str], None]) -> None:
    """Take the page of the sample with the rendered one on it."""
    window.show_page("sample")
    page = window.page("sample")
    if not isinstance(page, SamplePage):
        raise TypeError("the page of the sample is another")
    page.photo_side.try_it.click()
    settle(application, lambda: window.session.workshop.idle(besides="proof"))
    pause(application)
    pause(application)
    settle(application, lambda: window.session.workshop.idle(besides="proof"))
    take("sample.png")


def take_sheet(folder: Path) -> None:
    """Take the first page of the recipe sheet of the demonstration's job."""
    store = open_jobs()
    found = begin_demo_job(store, demo_findings())
    content = content_of(store, found.jobs[0])
    store.close()
    (folder / "sheet.png").write_bytes(pictures_of(document_of(content), dpi=90)[0])


if __name__ == "__main__":
    main()
