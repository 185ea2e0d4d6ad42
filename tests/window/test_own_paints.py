"""Adding a paint to the shelf by hand, changing it there, and taking it off."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

import pytest
from PySide6.QtCore import Qt

from hands import drag
from swatchwright.acts.own_paint import ColourFrom
from swatchwright.colour.difference import delta_e_2000
from swatchwright.desktop.pages.shelf_page import ShelfPage
from swatchwright.desktop.words import own_paint as words
from swatchwright.desktop.words import shelf as shelf_words
from swatchwright.paint.family import Family
from swatchwright.paint.paints import Tin
from swatchwright.values import Lab
from window.shelf_hands import DEMO, photo_of

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton
RETURN = Qt.Key.Key_Return


@pytest.fixture
def page(window: Window, settle: Settle) -> ShelfPage:
    """Give the page, in view, with its paints shown."""
    window.show_page("shelf")
    settle()
    return cast(ShelfPage, window.page("shelf"))


def begun(page: ShelfPage, settle: Settle, qtbot: QtBot) -> None:
    """Press the button for a new paint."""
    qtbot.mouseClick(page.add, LEFT)
    settle()
    assert page.own.form.isVisible()
    assert page.heading.text() == words.HEADING


def added(page: ShelfPage, settle: Settle, qtbot: QtBot, name: str, colour: str) -> None:
    """Add a paint by its name and a colour, by keyboard."""
    begun(page, settle, qtbot)
    form = page.own.form
    qtbot.keyClicks(form.name, name)
    qtbot.keyClicks(form.colour, colour)
    qtbot.keyClick(form.colour, RETURN)
    settle()
    settle()


class TestAdding:
    """A paint that is not there yet."""

    def test_it_begins_a_shelf_of_her_own(
        self, window: Window, page: ShelfPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """Typed and added, her paint alone is the shelf, with its tins, and large; undo takes it.

        The least sure way is the usual one, and the paint is hardly known.
        """
        begun(page, settle, qtbot)
        form = page.own.form
        assert form.name.hasFocus()
        assert form.known.currentData() == ColourFrom.EYE
        qtbot.keyClicks(form.name, "Harbour blue")
        form.family.setCurrentIndex(form.family.findData(Family.SATIN))
        qtbot.keyClicks(form.colour, "#2f4a7d")
        assert form.seen.colour is not None
        assert form.seen.colour.name() == "#2f4a7d"
        form.tins.sizes[0].setValue(750)
        form.tins.prices[0].setValue(24)
        qtbot.mouseClick(form.tins.more, LEFT)
        form.tins.sizes[1].setValue(125)
        qtbot.mouseClick(form.add, LEFT)
        settle()
        settle()
        shelf = window.session.shelf
        assert [paint.name for paint in shelf.paints] == ["Harbour blue"]
        paint = shelf.paints[0]
        assert (paint.family, paint.tins) == (Family.SATIN, (Tin(125), Tin(750, 24.0)))
        assert page.table.isVisible()
        assert page.heading.text() == shelf_words.HEADING
        assert page.said.text().startswith(words.added_line("Harbour blue", (), 0.0))
        assert page.panel.name.text() == "Harbour blue"
        assert "hardly known" in page.panel.known.text()
        qtbot.mouseClick(window.undo, LEFT)
        settle()
        settle()
        assert len(window.session.shelf.paints) == len(DEMO.paints)

    def test_how_it_is_known_is_what_it_is_worth(
        self, window: Window, page: ShelfPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """A measured colour is taken nearly as it is; one by eye is less sure, and differs more."""
        given = (60.0, -30.0, 20.0)
        added(page, settle, qtbot, "By eye", "60, -30, 20")
        begun(page, settle, qtbot)
        form = page.own.form
        assert not form.name.text()
        qtbot.keyClicks(form.name, "Measured")
        qtbot.keyClicks(form.colour, "60, -30, 20")
        form.known.setCurrentIndex(form.known.findData(ColourFrom.MEASURED))
        qtbot.mouseClick(form.add, LEFT)
        settle()
        settle()
        eye, measured = window.session.shelf.paints
        lines = [page.table.paints.line(row) for row in range(2)]
        assert [line.paint.id for line in lines] == [eye.id, measured.id] == ["by-eye", "measured"]
        assert delta_e_2000(lines[1].dry.triple, given) < 0.5
        assert (lines[0].known.off or 0) > (lines[1].known.off or 0) > 0

    def test_the_colour_is_taken_from_the_photo_on_the_bench(
        self, window: Window, page: ShelfPage, settle: Settle, qtbot: QtBot, tmp_path: Path
    ) -> None:
        """The photo on the bench is there; a box on its grey and one on the paint give the colour.

        Typed over, it is no longer the photo's.
        """
        paint = Lab(46, 34, 24)
        window.session.open(photo_of(tmp_path, [paint]))
        settle()
        begun(page, settle, qtbot)
        form = page.own.form
        assert form.marker.photo is window.session.photo
        assert form.now.text() == words.FIRST_GREY
        drag(form.marker.view, (20, 20), (180, 180))
        settle()
        assert form.now.text() == words.THEN_PAINT
        drag(form.marker.view, (230, 30), (370, 170))
        settle()
        assert form.now.text() == words.TAKEN
        assert form.known.currentData() == ColourFrom.PHOTO
        read = [float(part) for part in form.colour.text().split(",")]
        assert delta_e_2000(read, paint.triple) < 2.5
        qtbot.keyClicks(form.name, "Clay")
        qtbot.keyClick(form.name, RETURN)
        settle()
        settle()
        assert [one.id for one in window.session.shelf.paints] == ["clay"]

    def test_what_is_wrong_is_said_in_place(
        self, window: Window, page: ShelfPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """A paint without a colour or a name, or a colour that is none, is refused; all stays."""
        begun(page, settle, qtbot)
        form = page.own.form
        qtbot.mouseClick(form.add, LEFT)
        assert words.NO_COLOUR[0] in form.trouble.text()
        qtbot.keyClicks(form.colour, "blue")
        qtbot.mouseClick(form.add, LEFT)
        assert "not a colour" in form.trouble.text()
        form.colour.clear()
        qtbot.keyClicks(form.colour, "30, 5, -30")
        qtbot.mouseClick(form.add, LEFT)
        settle()
        assert "no name" in form.trouble.text()
        assert form.trouble.isVisible()
        assert form.colour.text() == "30, 5, -30"
        assert not window.trouble.isVisible()
        qtbot.mouseClick(form.back, LEFT)
        assert page.table.isVisible()
        assert len(window.session.shelf.paints) == len(DEMO.paints)


class TestChanging:
    """A paint that is there."""

    def test_name_sizes_and_price(
        self, window: Window, page: ShelfPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """From its panel a paint gets another name and other tins; undo gives the old ones back."""
        added(page, settle, qtbot, "Harbour blue", "#2f4a7d")
        qtbot.mouseClick(page.panel.change, LEFT)
        change = page.own.change
        assert change.isVisible()
        assert change.name.text() == "Harbour blue"
        change.name.clear()
        qtbot.mouseClick(change.keep, LEFT)
        assert "no name" in change.trouble.text()
        qtbot.keyClicks(change.name, "Quay blue")
        change.tins.sizes[0].setValue(500)
        change.tins.prices[0].setValue(19.5)
        qtbot.keyClick(change.name, RETURN)
        settle()
        settle()
        paint = window.session.shelf.paint("harbour-blue")
        assert (paint.name, paint.tins) == ("Quay blue", (Tin(500, 19.5),))
        assert page.panel.name.text() == "Quay blue"
        assert page.table.paints.index(0, 2).data() == "Quay blue"
        assert page.said.text() == words.changed_line("Quay blue")
        qtbot.mouseClick(window.undo, LEFT)
        settle()
        settle()
        assert window.session.shelf.paint("harbour-blue").name == "Harbour blue"

    def test_taken_off(self, window: Window, page: ShelfPage, settle: Settle, qtbot: QtBot) -> None:
        """A paint is taken off from its panel; undo brings it back."""
        added(page, settle, qtbot, "Harbour blue", "#2f4a7d")
        added(page, settle, qtbot, "Barn red", "#8a2f24")
        assert page.panel.name.text() == "Barn red"
        qtbot.mouseClick(page.panel.take_off, LEFT)
        settle()
        settle()
        assert [p.id for p in window.session.shelf.paints] == ["harbour-blue"]
        assert page.said.text() == words.taken_off_line("Barn red")
        qtbot.mouseClick(window.undo, LEFT)
        settle()
        settle()
        assert {p.id for p in window.session.shelf.paints} == {"harbour-blue", "barn-red"}

    def test_paints_that_are_not_kept(self, page: ShelfPage) -> None:
        """Of a paint that is not kept, the panel says what to do first, and offers no change."""
        assert page.panel.keep_first.isVisible()
        assert not page.panel.change.isVisible()
        assert not page.panel.take_off.isVisible()


def test_the_forms_fit_a_small_laptop(
    window: Window, page: ShelfPage, settle: Settle, qtbot: QtBot
) -> None:
    """Both forms fit a window of 1280 by 720, and all that can be focused has a name."""
    begun(page, settle, qtbot)
    form = page.own.form
    for _ in range(3):
        qtbot.mouseClick(form.tins.more, LEFT)
    assert window.needs().width() <= 1280
    assert window.needs().height() <= 720
    fields = [form.name, form.family, form.colour, form.known, *form.tins.sizes, *form.tins.prices]
    assert all(field.accessibleName() for field in fields)
    assert len({field.accessibleName() for field in fields}) == len(fields)
