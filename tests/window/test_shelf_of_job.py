"""A job worked with a shelf that is taken for now keeps to it: on its pages, sheet and restart."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QLabel, QMenu

from swatchwright.desktop import words
from swatchwright.desktop.pages.brief_page import BriefPage
from swatchwright.desktop.pages.finish_page import FinishPage
from swatchwright.desktop.pages.sheet_page import SheetPage
from swatchwright.desktop.window import Window
from swatchwright.desktop.words import brief as brief_words
from swatchwright.desktop.words import keeping
from swatchwright.paint.layers import LayerKind
from swatchwright.shelf.csv_file import demo_shelf, save_demo_shelf
from window.known import known_findings

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton
PATIENCE = 60_000


def own_paints(path: Path, count: int) -> Path:
    """Write a shelf file of the first paints of the demonstration under ids of her own."""
    save_demo_shelf(path)
    lines = path.read_text(encoding="utf-8").replace("invented", "guessed").splitlines()
    own = [f"my-{line}" for line in lines[1 : count + 1]]
    path.write_text("\n".join([lines[0], *own]) + "\n", encoding="utf-8")
    return path


def action(window: Window, text: str) -> QAction:
    """Find an entry of the menus at the top."""
    menus = window.findChildren(QMenu)
    return next(a for menu in menus for a in menu.actions() if a.text() == text)


@pytest.fixture
def hers(window: Window, settle: Settle, qtbot: QtBot, tmp_path: Path) -> Window:
    """Give the window with two paints of her own kept, and the demonstration's taken for now."""
    settle()
    window.session.open_shelf(own_paints(tmp_path / "mine.csv", 2))
    settle()
    qtbot.mouseClick(window.offer.take, LEFT)
    settle()
    assert window.shelf_told.whole().startswith("2 paints")
    action(window, words.DEMO_SHELF).trigger()
    settle()
    return window


@pytest.fixture
def washed(hers: Window, settle: Settle, qtbot: QtBot) -> Window:
    """Give it with a mix kept, and a wash of the demonstration laid over it."""
    with known_findings():
        hers.session.type_colour("46, 34, 24")
        settle()
        qtbot.mouseClick(hers.mix_side.columns()[0].keep, LEFT)
        settle()
        hers.show_page("finish")
        settle()
        page = hers.page("finish")
        assert isinstance(page, FinishPage)
        qtbot.mouseClick(page.layered.layers.add[LayerKind.WASH], LEFT)
        qtbot.waitUntil(lambda: len(page.stack.layers) == 1, timeout=PATIENCE)
        settle()
    return hers


@pytest.fixture
def again(opened: Callable[[], Window]) -> Callable[[Window], Window]:
    """Give a function that closes the window and opens it on the same store."""

    def make(before: Window) -> Window:
        before.close()
        return opened()

    return make


def sheet_of(window: Window, qtbot: QtBot) -> SheetPage:
    """Bring the page of the sheet into view, and wait for the sheet."""
    window.show_page("sheet")
    page = window.page("sheet")
    assert isinstance(page, SheetPage)
    qtbot.waitUntil(lambda: page.made is not None and window.at_rest(), timeout=PATIENCE)
    return page


class TestSheet:
    """What is printed follows the shelf that is named at the top."""

    def test_a_wash_of_the_shelf_in_use(self, washed: Window, qtbot: QtBot) -> None:
        """There is a sheet, with the wash by its paint's name and the colour it comes to."""
        page = sheet_of(washed, qtbot)
        assert page.made is not None
        (zone,) = page.made.content.zones
        assert zone.finished is not None
        finish = washed.page("finish")
        assert isinstance(finish, FinishPage)
        id_ = finish.stack.layers[0].paints[0][0]
        assert demo_shelf().paint(id_).name in zone.finish[0]

    def test_no_paint_is_said_to_be_missing(
        self, washed: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """Neither the sheet nor the page of the job says that a paint is off the shelf."""
        made = sheet_of(washed, qtbot).made
        assert made is not None
        assert [paint.note for zone in made.content.zones for paint in zone.paints] == ["", "", ""]
        washed.show_page("brief")
        settle()
        brief = washed.page("brief")
        assert isinstance(brief, BriefPage)
        told = [label.text() for label in brief.colours.findChildren(QLabel) if label.isVisible()]
        assert any(paint.name in told for paint in made.content.zones[0].paints)
        assert not any(brief_words.PAINT_CHANGED in text for text in told)

    def test_next_year(self, washed: Window, settle: Settle, qtbot: QtBot) -> None:
        """With her own shelf in use again the sheet is reckoned with the wash as it was kept."""
        first = sheet_of(washed, qtbot).made
        action(washed, keeping.YOUR_PAINTS).trigger()
        settle()
        assert washed.shelf_told.whole().startswith("2 paints")
        page = sheet_of(washed, qtbot)
        qtbot.waitUntil(
            lambda: page.made is not None and bool(page.made.content.zones[0].paints[0].note),
            timeout=PATIENCE,
        )
        assert first is not None
        assert page.made is not None
        assert page.made.content.zones[0].finished == first.content.zones[0].finished


class TestRestart:
    """The shelf of a job is taken again."""

    def test_the_demonstration(self, washed: Window, again: Callable[[Window], Window]) -> None:
        """It is in use after a restart, and mixes are found."""
        made = again(washed)
        assert made.session.shelf.name == demo_shelf().name
        assert len(made.session.shelf.paints) == 24
        assert made.mix_side.columns()[0].keep.isChecked()

    def test_a_job_brings_its_shelf(self, washed: Window, settle: Settle) -> None:
        """Opened from the list while her own shelf is in use, the job brings the one it had."""
        job = washed.desk.job
        assert job is not None
        action(washed, keeping.YOUR_PAINTS).trigger()
        settle()
        washed.desk.put_away()
        settle()
        assert len(washed.session.shelf.paints) == 2
        washed.desk.open_job(job.id)
        settle()
        assert washed.session.shelf.name == demo_shelf().name

    def test_a_file(
        self, hers: Window, settle: Settle, again: Callable[[Window], Window], tmp_path: Path
    ) -> None:
        """A file that was opened for now is opened again."""
        hers.session.open_shelf(own_paints(tmp_path / "other.csv", 8))
        settle()
        made = again(hers)
        assert len(made.session.shelf.paints) == 8
        assert not made.trouble.isVisible()

    @pytest.mark.parametrize("left", [0, 5])
    def test_a_file_that_is_another_by_now(
        self,
        hers: Window,
        settle: Settle,
        qtbot: QtBot,
        again: Callable[[Window], Window],
        tmp_path: Path,
        left: int,
    ) -> None:
        """Gone, her kept shelf is used in its place; changed, it is used as it is: each is said."""
        path = own_paints(tmp_path / "other.csv", 8)
        hers.session.open_shelf(path)
        hers.session.type_colour("46, 34, 24")
        settle()
        path.unlink()
        if left:
            own_paints(path, left)
        made = again(hers)
        qtbot.waitUntil(made.trouble.isVisible, timeout=PATIENCE)
        assert path.name in made.trouble.text()
        assert len(made.session.shelf.paints) == (left or 2)

    def test_her_own_shelf_stays(
        self, hers: Window, settle: Settle, again: Callable[[Window], Window]
    ) -> None:
        """Asked back by hand before the end, it is the one after a restart."""
        action(hers, keeping.YOUR_PAINTS).trigger()
        settle()
        assert len(again(hers).session.shelf.paints) == 2
