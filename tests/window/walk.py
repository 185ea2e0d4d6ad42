"""Walk through all pages on a screen of one's own, and tell as JSON what is cut or out of view.

A scale of Qt's and the letters of the system are settled before an application is made, so each
walk is a process: ``python walk.py STORE LETTERS TIMES``, with LETTERS in pixels, or 0 for the
usual, and TIMES how many times larger she likes them.
"""

from __future__ import annotations

import faulthandler
import json
import os
import sys
from collections.abc import Iterator
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtWidgets import QAbstractButton, QApplication, QLabel, QScrollArea, QWidget

from swatchwright.acts.samples import sample_photos
from swatchwright.desktop.pages import PAGES
from swatchwright.desktop.pages.brief_page import BriefPage
from swatchwright.desktop.widgets.bench_area import BenchArea
from swatchwright.desktop.widgets.columns import Columns
from swatchwright.desktop.window import Window
from window.scenes import LAID, PLAN, Bench
from window.test_everyone import CONTROLS, shown, told

OFF = Qt.ScrollBarPolicy.ScrollBarAlwaysOff


def widest_line(label: QLabel) -> int:
    """Give the width of the longest line of a label that does not wrap."""
    return max(label.fontMetrics().horizontalAdvance(line) for line in label.text().split("\n"))


def is_cut(widget: QWidget) -> bool:
    """Tell whether a label or a button has too little room for its words."""
    if isinstance(widget, QLabel):
        if not widget.text() or widget.text().startswith("<"):
            return False
        if widget.wordWrap():
            return widget.height() + 1 < widget.heightForWidth(widget.width())
        return widest_line(widget) > widget.contentsRect().width() + 1
    return widget.width() + 1 < widget.minimumSizeHint().width()


def areas_about(widget: QWidget) -> Iterator[QScrollArea]:
    """Give the scroll areas that a widget is in."""
    above = widget.parentWidget()
    while above is not None:
        if isinstance(above, QScrollArea):
            yield above
        above = above.parentWidget()


def is_lost(widget: QWidget, window: Window) -> bool:
    """Tell whether a part of a widget is cut off, and no scroll bar brings it into view."""
    inner = widget
    for area in areas_about(widget):
        contents = area.widget()
        if contents is not None:
            place = QRect(inner.mapTo(contents, QPoint(0, 0)), inner.size())
            room = contents.rect().adjusted(-1, -1, 1, 1)
            # The mixes have no bar below them, but two arrows that bring each of them in.
            if area.horizontalScrollBarPolicy() == OFF and area is not window.mix_side.area:
                room.setRight(area.viewport().width())
            if not room.contains(place):
                return True
        inner = area
    return False


def scrolls_sideways(area: BenchArea) -> bool:
    """Tell whether the page in view is scrolled sideways, or what is read on it.

    A sheet of paper is a picture.
    """
    inner = [one for one in area.findChildren(QScrollArea) if one.isVisible()]
    read = [
        one for one in inner if one.horizontalScrollBarPolicy() != OFF and one.widgetResizable()
    ]
    return any(one.horizontalScrollBar().maximum() > 0 for one in (area, *read))


def needed(bench: Bench) -> QSize:
    """Give what the page in view needs, on all of the screen where a narrow window breaks it."""
    window = bench.window
    columns = [one for one in window.findChildren(Columns) if one.isVisible()]
    colour = window.colour_page.abreast or not window.colour_page.isVisible()
    if colour and all(one.abreast for one in columns):
        return window.needs()
    size = window.size()
    window.resize(window.screen().availableSize())
    bench.rest()
    needs = window.needs()
    window.resize(size)
    bench.rest()
    return needs


def walk(bench: Bench) -> dict[str, object]:
    """Go through the pages with the demonstration's job on the bench; tell what is wrong."""
    window = bench.window
    window.open_sample(sample_photos()[0])
    bench.rest()
    bench.page("brief", BriefPage).play()
    bench.rest()
    window.desk.keep_part("finish", LAID)
    window.desk.keep_part("plan", PLAN)
    bench.rest()
    cut, lost, sideways, seen, needs = [], [], [], 0, QSize()
    (area,) = window.findChildren(BenchArea)
    for kind in PAGES:
        window.show_page(kind.key)
        bench.rest()
        needs = needs.expandedTo(needed(bench))
        if scrolls_sideways(area):
            sideways.append(kind.key)
        for widget in shown(window, (QLabel, *CONTROLS)):
            seen += 1
            where = f"{kind.key}: {told(widget)}"
            if isinstance(widget, QLabel | QAbstractButton) and is_cut(widget):
                cut.append(where)
            if is_lost(widget, window):
                lost.append(where)
    screen, asks = window.screen().availableSize(), window.minimumSizeHint()
    return {
        "cut": cut,
        "lost": lost,
        "sideways": sideways,
        "seen": seen,
        "ratio": window.devicePixelRatio(),
        "screen": [screen.width(), screen.height()],
        "needs": [needs.width(), needs.height()],
        "asks": [asks.width(), asks.height()],
        "size": [window.width(), window.height()],
        "letters": window.photo_side.tools.hint.fontInfo().pixelSize(),
    }


def main() -> None:
    """Walk, and print what was found."""
    faulthandler.enable()
    os.environ["SWATCHWRIGHT_HOME"] = sys.argv[1]
    application = QApplication([])
    application.setStyle("Fusion")
    letters = int(sys.argv[2])
    if letters:
        font = application.font()
        font.setPixelSize(letters)
        application.setFont(font)
    window = Window()
    window.resize(1280, 720)
    window.show()
    window.set_letters(float(sys.argv[3]))
    found = walk(Bench(window))
    window.close()
    window.session.close()
    window.desk.close()
    sys.stdout.write(json.dumps(found) + "\n")


if __name__ == "__main__":
    main()
