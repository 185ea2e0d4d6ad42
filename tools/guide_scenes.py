"""What is done in the window for each picture of the guide, from the cushion to the jar label."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QComboBox, QScrollArea

from screens import Camera
from swatchwright.acts.client_wish import Stands
from swatchwright.acts.samples import sample_photos
from swatchwright.desktop.correct_window import CorrectWindow
from swatchwright.desktop.pages.brief_page import BriefPage
from swatchwright.desktop.pages.compare_page import ComparePage
from swatchwright.desktop.pages.finish_page import FinishPage
from swatchwright.desktop.pages.page import Page
from swatchwright.desktop.pages.plan_page import PlanPage
from swatchwright.desktop.pages.repaint_page import RepaintPage
from swatchwright.desktop.pages.sample_page import SamplePage
from swatchwright.desktop.pages.sheet_page import SheetPage
from swatchwright.desktop.pages.shelf_page import ShelfPage
from swatchwright.language import say
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.piece.work.order import Age, FinishKind, PlanOrder, Surface

__all__ = ["take_guide"]

PLAN = PlanOrder(
    "Blanket box", "2027-03-01", Surface.PAINTED, Age.RECENT, washes=1, finish=FinishKind.WAX
)
TO_KNOW = ("white-clean", "deep-blue-red", "strong-red-orange", "leaf-green-mid", "soft-black")
WASH = Layer(LayerKind.WASH, paints=(("white-clean", 1.0),))


def take_guide(camera: Camera) -> None:
    """Take all pictures of the guide, in the order of the work."""
    _colour(camera)
    _compare(camera)
    _begin_job(camera)
    _shelf(camera)
    _sample(camera)
    _finish(camera)
    _too_bright(camera)
    camera.page("piece", Page)
    camera.take("amounts")
    _on_photo(camera)
    _plan(camera)
    _sheet(camera)
    camera.page("brief", BriefPage)
    camera.take("jobs")
    _everyone(camera)


def choose(box: QComboBox, place: int) -> None:
    """Choose from a list as a hand does, which tells the page of it."""
    box.setCurrentIndex(place)
    box.activated.emit(place)


def _colour(camera: Camera) -> None:
    """Go from the empty bench to mixes."""
    window = camera.window
    camera.rest()
    camera.take("start")
    window.open_sample(sample_photos()[0])
    camera.rest(proof=True)
    photo, mixes = window.photo_side, window.mix_side
    camera.take("colour")
    camera.take("photograph", photo.tools, photo.view, photo.worth)
    first, second = mixes.columns()[:2]
    camera.take("mix", first, second, high=490)


def _begin_job(camera: Camera) -> None:
    """Lay the demonstration's job on the bench."""
    camera.page("brief", BriefPage).play()
    camera.rest()
    camera.window.desk.keep_part("finish", Stack((WASH,)))
    camera.window.desk.keep_part("plan", PLAN)
    camera.rest()


def _compare(camera: Camera) -> None:
    """Mixes of two paints only, which differ enough to be seen in a small picture."""
    mixes = camera.window.mix_side
    mixes.counts[2].click()
    camera.rest()
    page = camera.page("compare", ComparePage)
    camera.take("compare")
    page.bar.every_light.click()
    camera.rest()
    camera.take("compare_lights")
    page.bar.every_light.click()
    mixes.counts[3].click()
    camera.rest()


def _shelf(camera: Camera) -> None:
    page = camera.page("shelf", ShelfPage)
    camera.take("shelf")
    page.show_sitting()
    camera.rest()
    paints = page.sitting.choose.paints
    for row in range(paints.count()):
        entry = paints.item(row)
        if entry.data(Qt.ItemDataRole.UserRole) in TO_KNOW:
            entry.setCheckState(Qt.CheckState.Checked)
    camera.rest()
    page.sitting.next.click()
    camera.rest()
    camera.take("shelf_cards")
    page.sitting.leave.click()
    camera.rest()


def _sample(camera: Camera) -> None:
    """Compare the rendered sample, and ask what to add."""
    page = camera.page("sample", SamplePage)
    page.photo_side.try_it.click()
    camera.rest()
    camera.rest()
    camera.take("sample")
    page.told.ask.click()
    camera.rest()
    camera.take("sample_add", page.findChild(QScrollArea))


def _finish(camera: Camera) -> None:
    page = camera.page("finish", FinishPage)
    # The body, as the top is too dark for much to be seen of what a wash does.
    body = next(field for field in page.strip.fields() if say("body") in field.accessibleName())
    body.click()
    camera.rest()
    camera.take("finish")
    page.sides[1].click()
    page.reverse.ask.stands[Stands.PAINTED].click()
    camera.rest()
    camera.take("too_bright")
    page.sides[0].click()


def _too_bright(camera: Camera) -> None:
    """Take the two windows that a mix opens."""
    window = camera.window
    window.show_page("colour")
    camera.rest()
    for name in ("nearby", "mend"):
        getattr(window.mix_side.columns()[0], name).click()
        camera.rest()
        opened = window.mix_side.opened
        if isinstance(opened, CorrectWindow):
            choose(opened.word, 0)
            camera.rest()
        camera.take({"mend": "put_right"}.get(name, name), opened, room=0)
        if opened is not None:
            opened.close()


def _on_photo(camera: Camera) -> None:
    page = camera.page("repaint", RepaintPage)
    page.sample.click()
    camera.rest()
    camera.rest()
    camera.take("on_photo")


def _plan(camera: Camera) -> None:
    page = camera.page("plan", PlanPage)
    camera.take("plan")
    choose(page.now.age, page.now.age.findData(Age.UNKNOWN))
    camera.rest()
    camera.take("lead", page.now.parentWidget())
    choose(page.now.age, page.now.age.findData(Age.RECENT))
    camera.rest()


def _sheet(camera: Camera) -> None:
    page = camera.page("sheet", SheetPage)
    camera.rest()
    camera.take("sheet")
    page.choices.label.click()
    camera.rest()
    camera.rest()
    camera.take("label")
    page.choices.sheet.click()
    camera.rest()


def _everyone(camera: Camera) -> None:
    """Take the dark bench, and the guide itself."""
    window = camera.window
    window.show_page("colour")
    window.dark.trigger()
    camera.rest()
    camera.take("dark")
    window.dark.trigger()
    window.guide.click()
    camera.rest()
    opened = window.guide.opened
    camera.take("guide", opened, room=0)
    if opened is not None:
        opened.close()
    QApplication.processEvents()
