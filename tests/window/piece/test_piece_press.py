"""The parts of the drawing: pressed, gone to by keys, pointed at, and told."""

from __future__ import annotations

from functools import partial
from itertools import pairwise
from typing import TYPE_CHECKING

import pytest
from hypothesis import given
from hypothesis import strategies as st
from matplotlib.patches import Ellipse
from matplotlib.path import Path
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QHelpEvent, QPalette
from PySide6.QtWidgets import QApplication, QToolTip

from swatchwright.acts.batches import keep_recipes
from swatchwright.acts.parts import with_part, with_value
from swatchwright.desktop.widgets.piece_paths import path_of, topmost
from swatchwright.desktop.widgets.piece_press import NONE
from swatchwright.desktop.words import piece as words
from swatchwright.piece.common import Kind, common_piece
from swatchwright.piece.drawing import Outline, Side, View, drawn
from swatchwright.piece.part import Shape
from window.piece_hands import LEFT, press, row_named, spot_of, told

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtGui import QImage
    from PySide6.QtWidgets import QTableView
    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.pages.piece_page import PiecePage
    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

_NEAR = 0.5
"""mm from an edge; who is so near it may be told either way."""


def in_outline(outline: Outline, x: float, y: float, near: float) -> bool:
    """Ask matplotlib whether a point lies in an outline that is wider by so many mm."""
    if outline.ellipse:
        middle, (rx, ry) = outline.points
        made = Ellipse(middle, 2 * (rx + near), 2 * (ry + near))
        return bool(made.contains_point((x, y)))
    closed = [*outline.points, outline.points[0]]
    shape = Path(closed)
    # It widens what goes round against the clock, and narrows the other.
    turns = sum(a[0] * b[1] - a[1] * b[0] for a, b in pairwise(closed))
    return bool(shape.contains_point((x, y), radius=near if turns > 0 else -near))


class TestWhatIsOnTop:
    """Which face of a drawing is seen at a spot."""

    @given(st.sampled_from(Kind), st.sampled_from(View), st.floats(0, 1), st.floats(0, 1))
    def test_as_another_library_finds_it(
        self, kind: Kind, view: View, across: float, up: float
    ) -> None:
        """The face found is the last drawn one that matplotlib finds the spot in."""
        drawing = drawn(common_piece(kind), view)
        x, y = across * drawing.width, up * drawing.height
        place = topmost([path_of(outline) for outline in drawing.outlines], QPointF(x, -y))
        later = drawing.outlines if place is None else drawing.outlines[place + 1 :]
        assert not any(in_outline(outline, x, y, -_NEAR) for outline in later)
        if place is not None:
            assert in_outline(drawing.outlines[place], x, y, _NEAR)

    def test_the_last_painted_wins(self) -> None:
        """Where two overlap, what is painted last is seen; beside both there is nothing."""
        square = Outline("a", "body", Side.FRONT, ((0, 0), (10, 0), (10, 10), (0, 10)))
        disc = Outline("b", "body", Side.FRONT, ((10, 5), (3, 3)), ellipse=True)
        paths = [path_of(square), path_of(disc)]
        assert topmost(paths, QPointF(2, -5)) == 0
        assert topmost(paths, QPointF(9, -5)) == 1
        assert topmost(paths, QPointF(12.5, -5)) == 1
        assert topmost(paths, QPointF(12.5, -7.5)) is None
        assert topmost([], QPointF()) is None


class TestPressed:
    """A press on the drawing, and a row of the table."""

    def test_a_press_picks_the_part(self, table: PiecePage, qtbot: QtBot) -> None:
        """The row of the pressed part is picked, its faces offered, and its words are told."""
        row = press(table, "legs", qtbot)
        assert table.parts.table.currentIndex().row() == row
        assert table.parts.table.selectionModel().isRowSelected(row)
        assert "legs" in told(table)
        assert table.bench.told.text().startswith("legs, colour of body: no mix yet, 0.41")
        assert words.painted_faces(table.parts.model.part(row)) in told(table)  # type: ignore[arg-type]

    def test_beside_all_parts(self, table: PiecePage, qtbot: QtBot) -> None:
        """A press beside all parts picks none again, and the hint is back."""
        press(table, "legs", qtbot)
        drawing = table.bench.drawing
        qtbot.mouseClick(drawing, LEFT, pos=QPoint(3, 3))
        assert drawing.here() == NONE
        assert not drawing.marked()
        assert not table.parts.table.currentIndex().isValid()
        assert table.bench.told.text() == words.PRESS_PART
        assert not table.bench.to_row.isEnabled()

    def test_a_row_outlines_its_part(self, table: PiecePage, qtbot: QtBot) -> None:
        """All faces of the part of the row that is picked are outlined, and no others."""
        shown = table.parts.table
        row = row_named(table, "legs")
        qtbot.mouseClick(shown.viewport(), LEFT, pos=centre(shown, row))
        drawing = table.bench.drawing
        assert drawing.here() == row
        assert table.piece is not None
        outlines = drawn(table.piece, View.PICTURE).outlines
        legs = {place for place, outline in enumerate(outlines) if outline.part == "legs"}
        assert drawing.marked() == legs

    @pytest.mark.parametrize("dark", [False, True])
    def test_the_outline_is_the_grey_of_what_is_pressed(
        self, table: PiecePage, window: Window, qtbot: QtBot, *, dark: bool
    ) -> None:
        """The outline has the neutral grey of what is pressed, where the paint was before."""
        window.set_dark(dark=dark)
        drawing = table.bench.drawing
        press_grey = drawing.palette().color(QPalette.ColorRole.Highlight).rgb()
        before = drawing.grab().toImage()
        press(table, "top", qtbot)
        after = drawing.grab().toImage()
        assert count(after, press_grey) > count(before, press_grey) + 300

    def test_what_is_hidden_is_dashed(self, table: PiecePage, qtbot: QtBot, settle: Settle) -> None:
        """A part that others hide is shown by dashes over them, from its edges and nowhere else."""
        qtbot.mouseClick(table.kinds.buttons[Kind.CHEST_OF_DRAWERS], LEFT)
        settle()
        drawing = table.bench.drawing
        row = row_named(table, "back")
        with pytest.raises(AssertionError):
            spot_of(drawing, row)
        before = drawing.grab().toImage()
        table.parts.pick(row)
        after = drawing.grab().toImage()
        across, down = range(before.width()), range(before.height())
        changed = [(x, y) for x in across for y in down if before.pixel(x, y) != after.pixel(x, y)]
        assert changed
        lines = {after.pixel(x, y) for x, y in changed}
        press_grey = drawing.palette().color(QPalette.ColorRole.Highlight).rgb()
        rim = drawing.palette().color(QPalette.ColorRole.HighlightedText).rgb()
        assert {press_grey, rim} <= lines
        assert len(changed) < 0.1 * before.width() * before.height()

    def test_the_other_view(self, table: PiecePage, qtbot: QtBot) -> None:
        """Seen from the front the same part is outlined, and a press works there as well."""
        row = press(table, "top", qtbot)
        qtbot.mouseClick(table.bench.views[View.FRONT], LEFT)
        assert table.bench.drawing.here() == row
        assert table.bench.drawing.marked()
        press(table, "aprons", qtbot)
        assert table.parts.table.currentIndex().row() == row_named(table, "aprons")

    def test_two_parts_of_one_name(self, table: PiecePage, qtbot: QtBot, settle: Settle) -> None:
        """Parts go by their rows: of two that are called alike the pressed one is picked."""
        piece = table.piece
        assert piece is not None
        piece = with_part(piece, Shape.PANEL)
        last = len(piece.parts) - 1
        table.parts.changed.emit(with_value(piece, last, name="top"))
        settle()
        drawing = table.bench.drawing
        qtbot.mouseClick(drawing, LEFT, pos=spot_of(drawing, last))
        assert table.parts.table.currentIndex().row() == last

    def test_another_piece_has_none_picked(
        self, table: PiecePage, qtbot: QtBot, settle: Settle
    ) -> None:
        """What was picked of a table is not picked of the chair that is chosen next."""
        press(table, "legs", qtbot)
        qtbot.mouseClick(table.kinds.buttons[Kind.CHAIR], LEFT)
        settle()
        assert table.bench.drawing.here() == NONE
        assert not table.parts.table.currentIndex().isValid()

    def test_a_resized_piece_keeps_it(self, table: PiecePage, qtbot: QtBot, settle: Settle) -> None:
        """A part stays picked and outlined while the piece is sized."""
        row = press(table, "legs", qtbot)
        table.sizes.fields["width"].setValue(1200)
        settle()
        assert table.bench.drawing.here() == row
        assert table.bench.drawing.marked()

    def test_a_removed_part(self, table: PiecePage, qtbot: QtBot, settle: Settle) -> None:
        """Once the pressed part is removed, what is outlined is what the table has picked."""
        press(table, "legs", qtbot)
        qtbot.mouseClick(table.parts.remove, LEFT)
        settle()
        assert table.bench.drawing.here() == table.parts.table.currentIndex().row()
        assert "legs" not in table.bench.told.text()

    def test_to_its_row(self, table: PiecePage, qtbot: QtBot, settle: Settle) -> None:
        """The button below the drawing brings the row into view, with the keyboard on it."""
        row = press(table, "legs", qtbot)
        shown = table.parts.table
        assert not inside(shown, table)
        qtbot.mouseClick(table.bench.to_row, LEFT)
        settle()
        assert inside(shown, table)
        assert QApplication.focusWidget() is shown
        assert shown.viewport().rect().contains(centre(shown, row))

    def test_the_table_scrolls_to_it(self, table: PiecePage, qtbot: QtBot, settle: Settle) -> None:
        """In a table longer than is shown, the row of the pressed part is scrolled to."""
        qtbot.mouseClick(table.kinds.buttons[Kind.DRESSER], LEFT)
        settle()
        row = press(table, "shelves", qtbot)
        shown = table.parts.table
        assert row > 8
        assert shown.viewport().rect().contains(centre(shown, row))

    def test_too_many_parts_to_draw(self, table: PiecePage, qtbot: QtBot, settle: Settle) -> None:
        """While the drawing is not of the parts in the table, none is chosen on it."""
        piece = table.piece
        assert piece is not None
        row = press(table, "top", qtbot)
        many = piece
        for place in range(3):
            many = with_value(many, place, count=200)
        table.parts.changed.emit(many)
        settle()
        assert not table.bench.drawing.isEnabled()
        table.parts.changed.emit(piece)
        settle()
        assert table.bench.drawing.isEnabled()
        assert press(table, "top", qtbot) == row


class TestKeys:
    """The drawing by keyboard."""

    def test_it_is_come_to_by_tab(self, table: PiecePage, qtbot: QtBot) -> None:
        """Tab comes from the light to the drawing, and from there to the button below it."""
        table.bench.seen.lights.setFocus()
        qtbot.keyClick(table.bench.seen.lights, Qt.Key.Key_Tab)
        assert QApplication.focusWidget() is table.bench.drawing
        qtbot.keyClick(table.bench.drawing, Qt.Key.Key_Down)
        qtbot.keyClick(table.bench.drawing, Qt.Key.Key_Return)
        qtbot.keyClick(table.bench.drawing, Qt.Key.Key_Tab)
        assert QApplication.focusWidget() is table.bench.to_row

    def test_the_focus_shows(self, table: PiecePage) -> None:
        """The frame of what has the keyboard is painted about the drawing."""
        table.bench.seen.lights.setFocus()
        before = table.bench.drawing.grab().toImage()
        table.bench.drawing.setFocus()
        after = table.bench.drawing.grab().toImage()
        middle = before.width() // 2
        assert before.pixel(middle, 1) != after.pixel(middle, 1)

    def test_arrows_and_enter(self, table: PiecePage, qtbot: QtBot) -> None:
        """Arrows outline and tell part after part as in the table; Enter picks, Escape none."""
        drawing = table.bench.drawing
        drawing.setFocus()
        outlined = []
        for _ in names(table):
            qtbot.keyClick(drawing, Qt.Key.Key_Right)
            outlined.append(drawing.here())
            assert table.bench.told.text() in drawing.accessibleName()
        assert outlined == list(range(len(names(table))))
        qtbot.keyClick(drawing, Qt.Key.Key_Down)
        assert drawing.here() == outlined[-1]
        assert not table.parts.table.currentIndex().isValid()
        qtbot.keyClick(drawing, Qt.Key.Key_Up)
        qtbot.keyClick(drawing, Qt.Key.Key_Return)
        assert table.parts.table.currentIndex().row() == outlined[-2]
        qtbot.keyClick(drawing, Qt.Key.Key_Escape)
        assert not table.parts.table.currentIndex().isValid()
        assert drawing.here() == NONE

    def test_gone_away_without_choosing(self, table: PiecePage, qtbot: QtBot) -> None:
        """Who leaves the drawing finds outlined on it what is picked in the table."""
        row = press(table, "top", qtbot)
        drawing = table.bench.drawing
        qtbot.keyClick(drawing, Qt.Key.Key_Down)
        assert drawing.here() != row
        table.bench.seen.lights.setFocus()
        assert drawing.here() == row
        assert table.bench.told.text().startswith("top")


class TestTold:
    """What is told of a part."""

    def test_the_colour_it_is_to_have(
        self, table: PiecePage, window: Window, qtbot: QtBot, settle: Settle
    ) -> None:
        """The words below the drawing and those at the mouse name the colour and the area."""
        window.session.type_colour("46, 34, 24")
        settle()
        found = window.session.recipes
        assert found is not None
        window.desk.edit_job(partial(keep_recipes, found=found, zone="body"))
        settle()
        row = press(table, "legs", qtbot)
        colour = words.zone_colour(found.recipes[0].recipe.dry)
        assert table.bench.told.text() == f"legs, colour of body: {colour}, 0.41\u00a0m²"
        drawing = table.bench.drawing
        spot = spot_of(drawing, row)
        asks = QHelpEvent(QHelpEvent.Type.ToolTip, spot, drawing.mapToGlobal(spot))
        QApplication.sendEvent(drawing, asks)
        assert table.bench.told.text() in QToolTip.text()
        QToolTip.hideText()

    def test_two_colours_and_none(self, table: PiecePage, qtbot: QtBot, settle: Settle) -> None:
        """A part that is another colour inside tells both, and one that is left bare says so."""
        qtbot.mouseClick(table.kinds.buttons[Kind.BLANKET_BOX], LEFT)
        table.sizes.inside.click()
        settle()
        press(table, "front", qtbot)
        shown = table.bench.told.text()
        assert shown.startswith("front: body: no mix yet, ")
        assert "; inside: no mix yet, " in shown
        qtbot.mouseClick(table.kinds.buttons[Kind.CHEST_OF_DRAWERS], LEFT)
        settle()
        table.parts.pick(row_named(table, "back"))
        assert table.bench.told.text() == "back: left bare"

    def test_a_hand_where_something_is_pressed(self, table: PiecePage, qtbot: QtBot) -> None:
        """Over a part the mouse is a hand, beside all it is as it was."""
        drawing = table.bench.drawing
        qtbot.mouseMove(drawing, spot_of(drawing, row_named(table, "top")))
        qtbot.waitUntil(lambda: drawing.cursor().shape() is Qt.CursorShape.PointingHandCursor)
        qtbot.mouseMove(drawing, QPoint(3, 3))
        qtbot.waitUntil(lambda: drawing.cursor().shape() is Qt.CursorShape.ArrowCursor)


def names(page: PiecePage) -> list[str]:
    """Name the parts in the order of the table."""
    assert page.piece is not None
    return [part.name for part in page.piece.parts]


def centre(table: QTableView, row: int) -> QPoint:
    """Give the middle of the first cell of a row."""
    return table.visualRect(table.model().index(row, 0)).center()


def inside(table: QTableView, page: PiecePage) -> bool:
    """Tell whether all of a table is in view in its page."""
    seen = table.rect().translated(table.mapTo(page, QPoint()))
    return page.rect().contains(seen)


def count(image: QImage, rgb: int) -> int:
    """Count the pixels of a colour."""
    size = image.size()
    pixels = ((x, y) for x in range(size.width()) for y in range(size.height()))
    return sum(image.pixel(x, y) == rgb for x, y in pixels)
