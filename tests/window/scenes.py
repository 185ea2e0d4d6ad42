"""The telling states of every page, one after another, on one bench that is used as a hand does."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator
from typing import TypeVar

from PySide6.QtCore import QRect, Qt
from PySide6.QtWidgets import (
    QApplication,
    QComboBox,
    QDialog,
    QPushButton,
    QScrollArea,
    QWidget,
)

from swatchwright.acts.client_wish import Stands, Wanted
from swatchwright.acts.samples import sample_photos
from swatchwright.colour.spectrum import Light
from swatchwright.desktop.correct_window import CorrectWindow
from swatchwright.desktop.pages.brief_page import BriefPage
from swatchwright.desktop.pages.compare_page import ComparePage
from swatchwright.desktop.pages.finish_page import FinishPage
from swatchwright.desktop.pages.piece_page import PiecePage
from swatchwright.desktop.pages.plan_page import PlanPage
from swatchwright.desktop.pages.repaint_page import RepaintPage
from swatchwright.desktop.pages.sample_page import SamplePage
from swatchwright.desktop.pages.sheet_page import SheetPage
from swatchwright.desktop.pages.shelf_page import ShelfPage
from swatchwright.desktop.window import Window
from swatchwright.mixing.asked import Asked
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.piece.work.order import Age, FinishKind, PlanOrder, Surface

__all__ = ["Bench", "scenes", "visible_area"]

T = TypeVar("T", bound=QWidget)

_PATIENCE = 120.0
_PAUSE = 0.12
PLAN = PlanOrder(
    "Blanket box", "2027-03-01", Surface.PAINTED, Age.RECENT, washes=1, finish=FinishKind.WAX
)
LAID = Stack(
    (Layer(LayerKind.WASH, paints=(("white-clean", 1.0),)), Layer(LayerKind.WAX, paints=()))
)


class Bench:
    """A window that is worked at, and rests between two acts."""

    def __init__(self, window: Window) -> None:
        self.window = window

    def page(self, key: str, kind: type[T]) -> T:
        """Bring a page into view, and give it at rest."""
        self.window.show_page(key)
        self.rest()
        page = self.window.page(key)
        assert isinstance(page, kind)
        return page

    def rest(self) -> None:
        """Wait until all work is done and kept, but for a proof in the background."""
        for _ in range(3):
            self._until(self.window.at_rest)
            # What waits for a hand to rest begins its work only after a while.
            self._live(_PAUSE)

    def press(self, button: QWidget) -> None:
        """Press a button, and wait."""
        assert hasattr(button, "click")
        button.click()
        self.rest()

    def choose(self, box: QComboBox, data: object) -> None:
        """Choose from a list as a hand does, which tells the page of it."""
        place = box.findData(data)
        assert place >= 0, data
        box.setCurrentIndex(place)
        box.activated.emit(place)
        self.rest()

    def _live(self, seconds: float) -> None:
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            QApplication.processEvents()
            time.sleep(0.005)

    def _until(self, done: Callable[[], bool]) -> None:
        end = time.monotonic() + _PATIENCE
        while not done():
            assert time.monotonic() < end, "the window did not come to rest"
            QApplication.processEvents()
            time.sleep(0.005)


def scenes(bench: Bench) -> Iterator[tuple[str, QWidget]]:
    """Go through the work; give the name of each state and the window that shows it."""
    window = bench.window
    bench.rest()
    yield "start", window
    yield from _colour(bench)
    yield from _compare(bench)
    yield from _job(bench)
    yield from _shelf(bench)
    yield from _sample(bench)
    yield from _finish(bench)
    yield from _rest_of_it(bench)


def _colour(bench: Bench) -> Iterator[tuple[str, QWidget]]:
    window = bench.window
    by_window, _, printed = sample_photos()
    window.open_sample(by_window)
    bench.rest()
    yield "mixes found", window
    bench.press(window.photo_side.strip.blocks()[1])
    yield "another colour picked", window
    for name in ("nearby", "mend"):
        bench.press(getattr(window.mix_side.columns()[0], name))
        opened = window.mix_side.opened
        assert isinstance(opened, QDialog)
        if isinstance(opened, CorrectWindow):
            opened.wants.show_wanted(Wanted(asked=(Asked.LESS_VIVID, 1 / 3)))
            opened.wants.changed.emit()
            bench.rest()
        if name == "nearby":
            bench.press(next(b for b in opened.findChildren(QPushButton) if b.isVisible()))
        yield f"window {name}", opened
        opened.close()
        bench.rest()
    window.show_reach()
    bench.rest()
    assert window.reach_window is not None
    yield "reach, inside", window.reach_window
    window.reach_window.close()
    window.session.set_reflectance(0.9)
    bench.rest()
    yield "a wrong reference warned of", window
    window.open_sample(printed)
    bench.rest()
    bench.press(window.photo_side.strip.blocks()[1])
    yield "out of reach", window
    window.session.type_colour("52, -70, 60")
    bench.rest()
    window.show_reach()
    bench.rest()
    assert window.reach_window is not None
    yield "reach, outside", window.reach_window
    window.reach_window.close()
    window.open_sample(by_window)
    bench.rest()


def _compare(bench: Bench) -> Iterator[tuple[str, QWidget]]:
    page = bench.page("compare", ComparePage)
    yield "compared", bench.window
    bench.press(page.bar.lights[Light.LAMP])
    yield "compared under a lamp", bench.window
    bench.press(page.bar.every_light)
    yield "compared in every light", bench.window
    bench.press(page.bar.every_light)


def _job(bench: Bench) -> Iterator[tuple[str, QWidget]]:
    page = bench.page("brief", BriefPage)
    yield "no job yet", bench.window
    page.play()
    bench.rest()
    bench.window.desk.keep_part("finish", LAID)
    bench.window.desk.keep_part("plan", PLAN)
    bench.rest()
    yield "a job", bench.window
    bench.window.show_page("colour")
    bench.rest()
    yield "a mix kept", bench.window
    bench.window.set_dark(dark=True)
    bench.rest()
    yield "a mix kept, dark", bench.window
    bench.window.set_dark(dark=False)


def _shelf(bench: Bench) -> Iterator[tuple[str, QWidget]]:
    page = bench.page("shelf", ShelfPage)
    page.table.choose("strong-orange")
    bench.rest()
    yield "a paint shown", bench.window
    page.show_sitting()
    bench.rest()
    paints = page.sitting.choose.paints
    for row in (3, 7):
        paints.item(row).setCheckState(Qt.CheckState.Checked)
    bench.rest()
    yield "paints to brush chosen", bench.window
    bench.press(page.sitting.next)
    yield "cards to brush", bench.window
    bench.press(page.sitting.leave)


def _sample(bench: Bench) -> Iterator[tuple[str, QWidget]]:
    page = bench.page("sample", SamplePage)
    bench.press(page.photo_side.try_it)
    bench.rest()
    yield "a sample compared", bench.window
    bench.press(page.told.ask)
    yield "a sample kept", bench.window
    next(_areas(page.home)).ensureWidgetVisible(page.home)
    bench.rest()
    yield "how the samples came home", bench.window


def _areas(inside: QWidget) -> Iterator[QScrollArea]:
    above = inside.parentWidget()
    while above is not None:
        if isinstance(above, QScrollArea):
            yield above
        above = above.parentWidget()


def _finish(bench: Bench) -> Iterator[tuple[str, QWidget]]:
    page = bench.page("finish", FinishPage)
    bench.press(next(f for f in page.strip.fields() if "body" in f.accessibleName()))
    yield "layers laid", bench.window
    bench.press(page.sides[1])
    yield "a wish, asked about", bench.window
    bench.press(page.reverse.ask.stands[Stands.PAINTED])
    yield "ways to a wish", bench.window
    bench.press(page.sides[0])


def _rest_of_it(bench: Bench) -> Iterator[tuple[str, QWidget]]:
    bench.page("piece", PiecePage)
    yield "a piece", bench.window
    repaint = bench.page("repaint", RepaintPage)
    bench.press(repaint.sample)
    bench.rest()
    yield "strokes on a photo", bench.window
    plan = bench.page("plan", PlanPage)
    yield "the days", bench.window
    bench.choose(plan.now.age, Age.UNKNOWN)
    yield "lead asked about", bench.window
    bench.choose(plan.now.age, Age.RECENT)
    sheet = bench.page("sheet", SheetPage)
    bench.rest()
    yield "the sheet", bench.window
    bench.press(sheet.choices.label)
    bench.rest()
    yield "the label", bench.window


def visible_area(widget: QWidget, room: int = 0) -> QRect:
    """Give where a widget is seen in its window, with some room about it."""
    seen = widget.visibleRegion().boundingRect()
    at = QRect(widget.mapTo(widget.window(), seen.topLeft()), seen.size())
    return at.adjusted(-room, -room, room, room).intersected(widget.window().rect())
