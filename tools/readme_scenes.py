"""What is done in the window for each picture of the readme."""

from __future__ import annotations

from pathlib import Path

from screens import Camera
from swatchwright.acts.client_wish import Wanted
from swatchwright.acts.demo_job import begin_demo_job, demo_findings
from swatchwright.acts.jobs import open_jobs
from swatchwright.acts.samples import sample_photos
from swatchwright.acts.sheet import content_of, document_of, pictures_of
from swatchwright.desktop.correct_window import CorrectWindow
from swatchwright.desktop.pages.brief_page import BriefPage
from swatchwright.desktop.pages.page import Page
from swatchwright.desktop.pages.sample_page import SamplePage
from swatchwright.mixing.asked import Asked
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.piece.work.order import Age, FinishKind, PlanOrder, Surface

__all__ = ["take_readme", "take_sheet"]

PLAN = PlanOrder(
    "Blanket box", "2027-03-01", Surface.PAINTED, Age.RECENT, washes=1, finish=FinishKind.WAX
)
WASH = Layer(LayerKind.WASH, paints=(("white-clean", 1.0),))


def take_readme(camera: Camera) -> None:
    """Take the pictures of the readme."""
    by_window, by_lamp, printed = sample_photos()
    window = camera.window
    camera.rest()
    camera.take("start")
    window.open_sample(by_window)
    camera.rest(proof=True)
    camera.take("cushion_to_mix")
    _windows_of_a_mix(camera)
    window.open_sample(by_lamp)
    camera.rest()
    window.photo_side.tools.put_right.setChecked(False)
    camera.rest()
    camera.take("lamp_as_shot")
    window.photo_side.tools.put_right.setChecked(True)
    camera.rest()
    camera.take("lamp_put_right")
    window.open_sample(printed)
    camera.rest()
    window.session.choose(1)
    window.set_dark(dark=True)
    camera.rest()
    camera.take("candidates")
    window.set_dark(dark=False)
    _pages(camera)


def _windows_of_a_mix(camera: Camera) -> None:
    mixes = camera.window.mix_side
    for button, name in ((mixes.columns()[0].nearby, "neighbours"), (mixes.columns()[0].mend, "")):
        button.click()
        camera.rest()
        if isinstance(mixes.opened, CorrectWindow):
            mixes.opened.wants.show_wanted(Wanted(asked=(Asked.LESS_VIVID, 1 / 3)))
            mixes.opened.wants.changed.emit()
            camera.rest()
        camera.take(name or "put_right", mixes.opened, room=0)
        if mixes.opened is not None:
            mixes.opened.close()


def _pages(camera: Camera) -> None:
    """Take the pages of the demonstration's job."""
    camera.page("brief", BriefPage).play()
    camera.rest()
    camera.window.desk.keep_part("finish", Stack((WASH,)))
    camera.window.desk.keep_part("plan", PLAN)
    camera.rest()
    sample = camera.page("sample", SamplePage)
    sample.photo_side.try_it.click()
    camera.rest()
    camera.rest()
    camera.take("sample")
    for key in ("brief", "compare", "shelf", "finish", "piece", "plan", "sheet"):
        camera.page(key, Page)
        camera.take({"brief": "job", "sheet": "sheet_page"}.get(key, key))


def take_sheet(folder: Path) -> None:
    """Take the first page of the recipe sheet of the demonstration's job."""
    store = open_jobs()
    found = begin_demo_job(store, demo_findings())
    content = content_of(store, found.jobs[0])
    store.close()
    (folder / "sheet.png").write_bytes(pictures_of(document_of(content), dpi=90)[0])
