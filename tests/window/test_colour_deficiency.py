"""The whole job for whoever sees colours otherwise, or not at all.

The window is grabbed in its telling states, and each grab is turned into what eyes without the
long, the middle or the short cones make of it, or without any colour: what tells a state still has
to stand out, and words have to be read. And what a colour tells is told in words as well.

References
----------
[Machado2009]: what such eyes see. [WCAG22]: 1.4.1 (nothing by colour alone), 1.4.3 (words, 4.5),
1.4.11 (what is drawn, 3), 2.4.13 (the focus: as much as a line about half of it), 4.1.2 (names).
"""

from __future__ import annotations

import re
import shutil
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

import numpy as np
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from PySide6.QtCore import QPointF, QRect, Qt
from PySide6.QtGui import QAccessible, QColor, QImage, QPainter
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QAbstractScrollArea,
    QApplication,
    QComboBox,
    QFileDialog,
    QLabel,
    QLineEdit,
    QWidget,
)

from swatchwright.acts.repaint import NOT_THIS, Stroke
from swatchwright.acts.samples import sample_photos
from swatchwright.desktop.look import ink_on, reads_on, write_on
from swatchwright.desktop.pages.brief_page import BriefPage
from swatchwright.desktop.pages.plan_page import PlanPage
from swatchwright.desktop.pages.shelf_page import ShelfPage
from swatchwright.desktop.widgets.day_picture import DayPicture
from swatchwright.desktop.widgets.repaint_marks import paint_stroke
from swatchwright.desktop.window import Window
from window.eyes import SIGHTS, Light, apart, grab, lightness, linear, ratio
from window.listener import Listener, spoken_name
from window.scenes import Bench, scenes, visible_area
from window.test_everyone import CONTROLS, shown

if TYPE_CHECKING:
    from pathlib import Path

LEAST_DRAWN, LEAST_WORDS = 3.0, 4.5
LEAST_MARK = 20
"""Pixels of a tick: what tells that something is pressed changes as many at least."""

LEAST_GREYED = 5
"""Pixels of the strokes of a short word."""

HUES = re.compile(
    r"\b(red|orange|yellow|green|blue|violet|purple|pink|brown|beige|cream|grey|gr[ae]yish|plum"
    r"|black|white|straw|olive)\b",
    re.IGNORECASE,
)
"""What the names of colours are made of."""


PASSED_BY = {"MixesToCome", "PhotoToTake"}
"""Drawings in grey beside words that say the same, which a screen reader passes by."""


@dataclass
class Tour:
    """What was seen on the way through the work: each with its scene and widget in words."""

    scenes: list[str] = field(default_factory=list)
    words: dict[str, set[str]] = field(default_factory=dict)
    contrasts: list[tuple[float, str]] = field(default_factory=list)
    colours: list[tuple[str, str]] = field(default_factory=list)
    nameless: list[str] = field(default_factory=list)
    pressed: list[tuple[int, str]] = field(default_factory=list)
    greyed: list[tuple[int, str]] = field(default_factory=list)
    focus: list[tuple[float, str]] = field(default_factory=list)
    picked: dict[str, int] = field(default_factory=dict)
    warned: list[float] = field(default_factory=list)
    days: dict[bool, list[float]] = field(default_factory=lambda: {True: [], False: []})
    known: set[object] = field(default_factory=set)

    def new(self, *what: object) -> bool:
        """Tell whether a kind of control is seen for the first time."""
        fresh = what not in self.known
        self.known.add(what)
        return fresh


@pytest.fixture(scope="module")
def tour(qapp: QApplication, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Tour]:
    """Go through the work once, and note what is seen."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("SWATCHWRIGHT_HOME", str(tmp_path_factory.mktemp("seen")))
        window = Window()
        window.resize(1280, 720)
        window.show()
        window.activateWindow()
        noted, bench = Tour(), Bench(window)
        qapp.processEvents()
        for name, shows in scenes(bench):
            noted.scenes.append(name)
            look_at(noted, name, shows)
            look_closer(noted, name, bench)
        yield noted
        window.session.close()
        window.desk.close()
        window.close()
        window.deleteLater()


def look_at(noted: Tour, scene: str, window: QWidget) -> None:
    """Note words, colours and states of all that is in view."""
    window.activateWindow()
    QApplication.processEvents()
    light = grab(window)
    noted.words[scene] = set()
    for widget in window.findChildren(QWidget):
        if not widget.isVisible() or widget.visibleRegion().isEmpty():
            continue
        area = visible_area(widget)
        piece = light[area.top() : area.bottom() + 1, area.left() : area.right() + 1]
        where = f"{scene}: {told(widget)}"
        if ours(widget) and not isinstance(widget, QAbstractItemView):
            note_colour(noted, where, widget, piece)
        elif area.size() == widget.size() or widget.objectName() == "warn":
            note_words(noted, scene, widget, piece)
    for widget in list(shown(window, CONTROLS)):
        if not widget.visibleRegion().isEmpty():
            note_states(noted, scene, widget)


def told(widget: QWidget) -> str:
    """Name a widget so that it can be found."""
    text = getattr(widget, "text", None)
    said = text() if callable(text) else widget.accessibleName()
    return f"{type(widget).__name__} {said!r} in {type(widget.parent()).__name__}"


def ours(widget: QWidget) -> bool:
    """Tell whether we paint a widget ourselves."""
    return any(
        kind.__module__.startswith("swatchwright") and "paintEvent" in vars(kind)
        for kind in type(widget).__mro__
    )


def note_colour(noted: Tour, where: str, widget: QWidget, piece: Light) -> None:
    """Note what is told of a widget that we paint, and whether it shows colour."""
    said = f"{widget.accessibleName()} {widget.accessibleDescription()}"
    if not widget.accessibleName() and type(widget).__name__ not in PASSED_BY:
        noted.nameless.append(where)
    if ((piece.max(-1) - piece.min(-1)) > 0.03).mean() > 0.02:
        noted.colours.append((said, where))


def note_words(noted: Tour, scene: str, widget: QWidget, piece: Light) -> None:
    """Note the contrast of words with the ground that most of their widget is."""
    if not isinstance(widget, QLabel | QAbstractButton | QLineEdit) or not widget.text():
        return
    noted.words[scene].add(widget.text())
    if widget.isEnabled() and noted.new("words", widget.text(), widget.objectName(), piece.shape):
        least = min(on_ground(piece, sight) for sight in SIGHTS)
        noted.contrasts.append((least, f"{scene}: {told(widget)}"))
        if widget.objectName() == "warn":
            noted.warned.append(min(around(widget, piece, sight) for sight in SIGHTS))


def ground_of(seen: np.ndarray) -> float:
    """Give the luminance that there is most of."""
    values, counts = np.unique(seen.round(4), return_counts=True)
    return float(values[counts.argmax()])


def on_ground(piece: Light, sight: str) -> float:
    """Give the contrast of what stands out most with its ground."""
    seen = lightness(piece, sight)
    return float(ratio(seen, np.array(ground_of(seen))).max())


def around(widget: QWidget, piece: Light, sight: str) -> float:
    """Give the contrast of the ground of a widget with that of the bench about it."""
    # A warning too long for its room scrolls in it: the bench is about that.
    port = widget.parentWidget()
    area = None if port is None else port.parentWidget()
    outer = area if isinstance(area, QAbstractScrollArea) else widget
    about = grab(widget.window(), visible_area(outer, room=3))
    edge = np.concatenate([about[0], about[-1]])
    own, bench = ground_of(lightness(piece, sight)), ground_of(lightness(edge, sight))
    return float(ratio(np.array(own), np.array(bench)))


def note_states(noted: Tour, scene: str, widget: QWidget) -> None:
    """Note how far pressed, out of use and focus stand out, once for each kind of control."""
    kind = (type(widget), widget.objectName(), widget.window().palette().window().color().name())
    where = f"{scene}: {told(widget)}"
    pressed = isinstance(widget, QAbstractButton) and widget.isChecked()
    if isinstance(widget, QAbstractButton) and widget.isCheckable() and noted.new("press", *kind):
        noted.pressed.append((least_apart(*both_ways(widget)), where))
    if not widget.isEnabled() and noted.new("off", *kind, pressed) and has_words(widget):
        one = grab_about(widget)
        widget.setEnabled(True)
        noted.greyed.append((least_apart(one, grab_about(widget)), where))
        widget.setEnabled(False)
    elif widget.focusPolicy() & Qt.FocusPolicy.TabFocus and widget.isEnabled():
        active = widget.window().isActiveWindow()
        if active and noted.new("focus", *kind, pressed):
            noted.focus.append((focused_share(widget), where))


def has_words(widget: QWidget) -> bool:
    """Tell whether anything is written in a control, so that it can be greyed."""
    return bool(getattr(widget, "text", lambda: "")()) or isinstance(widget, QComboBox)


def grab_about(widget: QWidget) -> Light:
    """Give what is seen of a widget and a little about it."""
    return grab(widget.window(), visible_area(widget, room=2))


def least_apart(one: Light, other: Light) -> int:
    """Count the pixels that tell two states apart, to the eyes that see least of it."""
    return min(apart(one, other, sight, LEAST_DRAWN) for sight in SIGHTS)


def both_ways(button: QAbstractButton) -> tuple[Light, Light]:
    """Give a button as it is and the other way, whatever group it is in, and put it back."""
    group, alone, was = button.group(), button.autoExclusive(), button.isChecked()
    exclusive = group is not None and group.exclusive()
    button.blockSignals(True)
    button.setAutoExclusive(False)
    if group is not None:
        group.setExclusive(False)
    one = grab_about(button)
    button.setChecked(not was)
    other = grab_about(button)
    button.setChecked(was)
    if group is not None:
        group.setExclusive(exclusive)
    button.setAutoExclusive(alone)
    button.blockSignals(False)
    return one, other


def focused_share(widget: QWidget) -> float:
    """Give how much the focus changes, as a share of half the line about the widget."""
    before = QApplication.focusWidget()
    if before is not None:
        before.clearFocus()
    one = grab_about(widget)
    widget.setFocus(Qt.FocusReason.TabFocusReason)
    other = grab_about(widget)
    widget.clearFocus()
    area = visible_area(widget)
    return least_apart(one, other) / max(1, area.width() + area.height())


def look_closer(noted: Tour, scene: str, bench: Bench) -> None:
    """Note what only single pages have: picked rows, and the blocks of the days."""
    if scene == "a job":
        page = bench.page("brief", BriefPage)
        view = page.jobs.view
        area = view.visualRect(page.jobs.model.index(0))
        told_of = page.jobs.model.index(0).data(Qt.ItemDataRole.AccessibleTextRole)
        noted.colours.append((str(told_of), "row of the jobs"))
        noted.picked["a job"] = picked_apart(view.viewport(), area, view.clearSelection)
    if scene == "a paint shown":
        table = bench.page("shelf", ShelfPage).table
        area = table.visualRect(table.currentIndex())
        noted.picked["a paint"] = picked_apart(table.viewport(), area, table.clearSelection)
        for row in range(table.paints.rowCount()):
            told_of = table.paints.index(row, 1).data(Qt.ItemDataRole.AccessibleTextRole)
            noted.colours.append((str(told_of), f"row {row} of the shelf"))
    if scene == "the days":
        note_days(noted, bench.page("plan", PlanPage).findChild(DayPicture))


def picked_apart(view: QWidget, area: QRect, clear: object) -> int:
    """Count what tells a picked row from one that is not."""
    assert callable(clear)
    one = grab(view, area)
    clear()
    return least_apart(one, grab(view, area))


def note_days(noted: Tour, picture: DayPicture | None) -> None:
    """Note how dark the blocks of work and of waiting are."""
    assert picture is not None
    light = grab(picture)
    for number, row in enumerate(picture.rows()):
        for place, block in enumerate(row.blocks):
            box = picture.box(number, place).toRect().intersected(picture.rect())
            inside = light[box.top() + 2 : box.bottom() - 1, box.left() + 2 : box.right() - 1]
            if inside.size:
                darkest = max(float(np.median(lightness(inside, sight))) for sight in SIGHTS)
                noted.days[block.drying].append(darkest)


# --- what was seen -------------------------------------------------------------------------------


def test_all_states_were_seen(tour: Tour) -> None:
    """The tour came by all states, and each kind of thing was looked at."""
    assert len(tour.scenes) == 31
    assert len(tour.contrasts) > 300
    assert len(tour.colours) > 60
    assert len(tour.pressed) >= 10
    assert len(tour.greyed) >= 4
    assert len(tour.focus) >= 25


def test_pressed_is_seen_by_all(tour: Tour) -> None:
    """A button that is pressed, ticked or picked differs by a shape in 3 : 1 for all eyes."""
    assert not [row for row in tour.pressed if row[0] < LEAST_MARK]


def test_focus_is_seen_by_all(tour: Tour) -> None:
    """Where the keyboard is shows in 3 : 1 by as much as a line about half of the control."""
    assert not [row for row in tour.focus if row[0] < 1]


def test_out_of_use_is_seen_by_all(tour: Tour) -> None:
    """The words of what cannot be pressed now differ in 3 : 1 from what they were."""
    assert not [row for row in tour.greyed if row[0] < LEAST_GREYED]


def test_a_picked_row_is_seen_by_all(tour: Tour) -> None:
    """The row of a list that is picked has another ground, or a frame, to all eyes."""
    assert set(tour.picked) == {"a job", "a paint"}
    assert min(tour.picked.values()) > 1000


def test_a_warning_is_seen_by_all(tour: Tour) -> None:
    """A warning stands on a ground of its own, 3 : 1 from the bench."""
    assert tour.warned
    assert min(tour.warned) >= LEAST_DRAWN


def test_work_and_waiting_are_told_apart_by_all(tour: Tour) -> None:
    """In the plan a block of work is filled and a block of waiting is not."""
    work, waiting = max(tour.days[False]), min(tour.days[True])
    assert float(ratio(np.array(work), np.array(waiting))) >= LEAST_DRAWN


def test_all_words_are_read_by_all(tour: Tour) -> None:
    """Words have 4.5 : 1 with their ground for all eyes, on every page."""
    assert not [row for row in tour.contrasts if row[0] < LEAST_WORDS]


def test_what_is_painted_has_a_name(tour: Tour) -> None:
    """Every picture, field and bar that we paint is named for a screen reader."""
    assert not tour.nameless


def test_what_is_coloured_is_told_in_words(tour: Tour) -> None:
    """Whatever shows a colour tells it by a colour's name, or that of a paint."""
    assert not [row for row in tour.colours if not HUES.search(row[0])]


def test_inside_or_outside_is_said(tour: Tour) -> None:
    """Whether the shelf reaches a colour is a word above the picture, not a place in it alone."""
    assert any(text.startswith("Inside") for text in tour.words["reach, inside"])
    assert any(text.startswith("Outside") for text in tour.words["reach, outside"])


# --- words on colours ----------------------------------------------------------------------------

BYTE = st.integers(0, 255)


def contrast_on(ink: QColor, ground: tuple[int, int, int], sight: str) -> float:
    """Give the contrast of an ink on a colour, as a kind of eyes sees both."""
    drawn = (ink.red(), ink.green(), ink.blue())
    light = linear(np.array([drawn, ground]) / 255)
    one, other = lightness(light, sight)
    return float(ratio(one, other))


@settings(max_examples=400)
@given(st.tuples(BYTE, BYTE, BYTE))
@example((255, 0, 0))
@example((198, 101, 59))
@example((235, 10, 10))
@example((0, 0, 255))
def test_ink_is_read_on_every_colour(ground: tuple[int, int, int]) -> None:
    """Black or white has 4.5 on a colour for all eyes, or is said not to and has 3 at least."""
    colour = QColor(*ground)
    least = min(contrast_on(ink_on(colour), ground, sight) for sight in SIGHTS)
    # Colour by colour to the last digit of the matrices.
    assert reads_on(colour) == (least >= LEAST_WORDS) or abs(least - LEAST_WORDS) < 0.01
    assert least >= LEAST_DRAWN


@pytest.mark.parametrize("name", ["#ff0000", "#c6653b", "#e0482a", "#a55249", "#ffffff"])
def test_words_on_a_colour_are_read_by_all(qapp: QApplication, name: str) -> None:
    """What is drawn of a word has 4.5 with what is at once about it, even on vivid reds."""
    del qapp
    ground = QColor(name)
    image = QImage(160, 60, QImage.Format.Format_RGB888)
    image.fill(ground)
    painter = QPainter(image)
    font = painter.font()
    font.setPixelSize(14)
    painter.setFont(font)
    write_on(painter, QRect(10, 10, 140, 40), int(Qt.AlignmentFlag.AlignCenter), "wanted", ground)
    painter.end()
    rows = np.frombuffer(image.constBits(), np.uint8).reshape(image.height(), -1)
    light = linear(rows[:, : 3 * image.width()].reshape(60, 160, 3) / 255)
    ink = ink_on(ground).red() / 255
    letters = np.argwhere(np.abs(light - ink).max(-1) < 0.02)
    assert len(letters) > 10
    for sight in SIGHTS:
        seen = lightness(light, sight)
        for y, x in letters[:: max(1, len(letters) // 40)]:
            about = seen[max(0, y - 2) : y + 3, max(0, x - 2) : x + 3]
            assert float(ratio(about, np.array(seen[y, x])).max()) >= LEAST_WORDS


def test_strokes_are_told_apart_by_all(qapp: QApplication) -> None:
    """On any photo a stroke of a zone, and one that is not this, differ by their lines."""
    del qapp
    for ground in ("#8a6a50", "#202020", "#f0f0f0"):
        drawn = []
        for zone in ("body", NOT_THIS):
            image = QImage(300, 80, QImage.Format.Format_RGB888)
            image.fill(QColor(ground))
            painter = QPainter(image)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            stroke = Stroke(zone, ((20.0, 40.0), (280.0, 40.0)), 12.0)
            paint_stroke(painter, stroke, QPointF, 1.0)
            painter.end()
            rows = np.frombuffer(image.constBits(), np.uint8).reshape(80, -1)
            drawn.append(linear(rows[:, :900].reshape(80, 300, 3) / 255))
        assert least_apart(*drawn) > 150


# --- the whole job, unseen -----------------------------------------------------------------------


def test_every_choice_is_named(with_cushion: Window) -> None:
    """A list to choose from is named by a label or a description: Qt reads out its value else."""
    bench = Bench(with_cushion)
    nameless: list[str] = []
    for key in ("sample", "finish", "piece", "plan", "brief"):
        with_cushion.show_page(key)
        bench.rest()
        nameless += [
            f"{key}: {box.currentText()}"
            for box in with_cushion.page(key).findChildren(QComboBox)
            if not spoken_name(QAccessible.queryAccessibleInterface(box))
        ]
    assert not nameless


def test_the_whole_job_by_names_alone(
    window: Window, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """From the photo to the sheet, each control is chosen by its name as it is read out."""
    photo, sheet = tmp_path / "cloth.jpg", tmp_path / "sheet.pdf"
    shutil.copy(sample_photos()[0].path, photo)
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (str(photo), ""))
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(sheet), ""))
    bench = Bench(window)
    bench.rest()
    painter = Listener(window, bench.rest)
    painter.press("Open a photo…")
    painter.press("Grey card in the dotted box\\? Yes")
    painter.press("Mark the cloth")
    painter.keys("Photo with the marks.*", Qt.Key.Key_Return, Qt.Key.Key_Left)
    marks = painter.named("Photo with the marks.*").description
    assert re.fullmatch(r"Reference: \d+% from the left.*; Cloth: (39|40)% from the left.*", marks)
    painter.press(r"Colour \d: .*\bred\b.*")
    assert painter.hears("Mixes for: .*red, as the photo shows it")
    assert painter.hears(r"\d+(\.\d)?% of [A-Z]|\d+ parts? of [A-Z]")
    painter.press("Keep mix 1 for the whole piece")
    assert painter.named("Mix 1 is kept for the whole piece").interface.state().checked
    painter.press("Piece")
    painter.press("Blanket box")
    assert painter.hears(r"m² to paint")
    painter.press("Finish")
    painter.press("Add wax")
    assert painter.hears("1. wax")
    painter.press("Plan")
    painter.choose("On it now", "raw wood")
    painter.press("Fittings to take off")
    painter.keys("The days: .*", Qt.Key.Key_Right)
    assert painter.hears(r"step 1,")
    painter.press("Sheet")
    assert painter.hears(r"Recipe sheet as it will print, \d pages?")
    painter.press("Save…")
    assert sheet.read_bytes().startswith(b"%PDF")
