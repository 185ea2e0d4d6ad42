"""The sheet looked at as a painter does: what is seen is what will print."""

from __future__ import annotations

from functools import partial
from io import BytesIO
from typing import TYPE_CHECKING

import numpy as np
import pytest
from PIL import Image
from PySide6.QtCore import QPoint, Qt

from swatchwright.acts.jobs import change_job, new_job
from swatchwright.acts.sheet import pictures_of
from swatchwright.acts.sheet_form import FORM_PART
from swatchwright.desktop.pages.sheet_page import SheetPage
from swatchwright.desktop.words import sheet as words
from window.sheet_hands import (
    CLAY,
    LEFT,
    document,
    of_png,
    on_screen,
    rest,
    text_of,
)

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]


class TestPreview:
    """What is seen is what will print."""

    def test_waits_for_a_mix(
        self, window: Window, empty: SheetPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """With neither job nor mix the page says what it waits for, and shows the sheet then."""
        assert empty.side.blocked.isVisible()
        assert empty.side.blocked.text() == words.WAIT
        assert not empty.bar.isVisible()
        assert empty.code.text.isVisible()
        window.session.type_colour(CLAY)
        settle()
        rest(empty, qtbot)
        assert not empty.side.blocked.isVisible()
        assert empty.preview.isVisible()
        assert empty.side.source.text() == words.FIRST_MIX

    def test_full_size_is_the_page_dot_for_dot(self, page: SheetPage, qtbot: QtBot) -> None:
        """Each dot of the window is that of the page at the dots of the screen."""
        qtbot.mouseClick(page.bar.full, LEFT)
        rest(page, qtbot)
        expected = pictures_of(document(page), dpi=float(page.logicalDpiX()))
        assert len(expected) == len(page.preview.leaves.images)
        for number, png in enumerate(expected):
            assert np.array_equal(on_screen(page, number), of_png(png))

    def test_a_whole_page_is_the_page_made_small(self, page: SheetPage, qtbot: QtBot) -> None:
        """The whole page in view is the large page with its dots averaged in squares."""
        rest(page, qtbot)
        assert page.drawn is not None
        times = -(-50 // page.drawn.dpi)
        large = pictures_of(document(page), dpi=page.drawn.dpi * times)[0]
        with Image.open(BytesIO(large)) as opened:
            small = np.asarray(opened.convert("RGB").reduce(int(times)))
        shown = on_screen(page, 0)
        assert np.array_equal(shown, small)
        assert shown.std() > 20
        assert page.preview.leaves.places[0].height() <= page.preview.viewport().height()

    def test_a_large_window_shows_a_larger_page(
        self, window: Window, page: SheetPage, qtbot: QtBot
    ) -> None:
        """Once the window keeps another size the pages are drawn for it."""
        before = page.preview.leaves.images[0].height()
        window.resize(1280, 1000)
        qtbot.waitUntil(page.preview._rested.isActive)
        rest(page, qtbot)
        after = page.preview.leaves.images[0].height()
        assert after > before + 150
        assert after <= page.preview.viewport().height()

    def test_zoom_by_keys(self, page: SheetPage, qtbot: QtBot) -> None:
        """The keys for larger and smaller go to full size and back to the whole page."""

        def seen(full: object) -> bool:
            return page.preview.full is full

        for key, full in ((Qt.Key.Key_Plus, True), (Qt.Key.Key_Minus, False)):
            qtbot.keyClick(page.window(), key, Qt.KeyboardModifier.ControlModifier)
            qtbot.waitUntil(partial(seen, full))
            rest(page, qtbot)
            assert (page.preview.times == pytest.approx(1)) is full

    def test_arrows_move_the_page(self, page: SheetPage, qtbot: QtBot) -> None:
        """In full size the arrow keys move what is seen."""
        qtbot.mouseClick(page.bar.full, LEFT)
        rest(page, qtbot)
        page.preview.setFocus()
        assert page.preview.verticalScrollBar().value() == 0
        qtbot.keyClick(page.preview, Qt.Key.Key_Down)
        qtbot.keyClick(page.preview, Qt.Key.Key_PageDown)
        assert page.preview.verticalScrollBar().value() > 100

    def test_black_and_white(self, page: SheetPage, qtbot: QtBot) -> None:
        """It shows the luma of BT.601 (from memory: 0.299 R + 0.587 G + 0.114 B) of each dot."""
        qtbot.mouseClick(page.bar.full, LEFT)
        rest(page, qtbot)
        colour = on_screen(page, 0)
        assert np.ptp(colour, axis=2).max() > 60
        qtbot.mouseClick(page.bar.grey, LEFT)
        rest(page, qtbot)
        grey = on_screen(page, 0)
        assert np.ptp(grey, axis=2).max() == 0
        luma = colour @ np.array([0.299, 0.587, 0.114])
        assert np.abs(grey[:, :, 0] - luma).max() <= 1
        assert "black and white" in page.preview.accessibleName()
        qtbot.mouseClick(page.bar.grey, LEFT)
        rest(page, qtbot)
        assert np.array_equal(on_screen(page, 0), colour)

    def test_the_ground_is_neutral(self, page: SheetPage) -> None:
        """Around the pages there is the grey of the bench, and nothing tinted."""
        window = page.window()
        seen = window.grab().toImage()
        shade = seen.pixelColor(page.preview.mapTo(window, QPoint(5, 5)))
        bench = seen.pixelColor(QPoint(4, 4))
        assert shade == bench
        assert shade.red() == shade.green() == shade.blue()

    def test_named_for_a_screen_reader(self, page: SheetPage) -> None:
        """The picture is named, and what is on it is told: paints with their parts."""
        assert page.made is not None
        assert page.preview.accessibleName().startswith("Recipe sheet")
        for paint in page.made.content.zones[0].paints:
            assert f"{paint.name} {paint.parts:g} parts" in page.preview.accessibleDescription()


class TestOfWhat:
    """A job on the bench, or the first mix."""

    def test_the_first_mix(self, page: SheetPage) -> None:
        """With no job it tells the first mix of the bench, for the amount set there."""
        assert page.made is not None
        recipes = page.session.recipes
        assert recipes is not None
        zone = page.made.content.zones[0]
        first = recipes.recipes[0].recipe
        told = {paint.id: paint.parts for paint in zone.paints}
        assert told == dict(zip((p.id for p in first.paints), first.parts.counts, strict=True))
        assert zone.volume == recipes.volume
        assert page.desk.job is None

    def test_the_amount_of_the_bench_is_followed(self, page: SheetPage, qtbot: QtBot) -> None:
        """Another amount on the Colour page is on the sheet a moment later."""
        page.session.set_volume(750)
        qtbot.waitUntil(page._soon.isActive)
        rest(page, qtbot)
        assert "750" in text_of(document(page))

    def test_a_job_tells_all_that_is_kept(self, box: SheetPage) -> None:
        """Both zones, the piece and the note of a job are on its sheet."""
        text = text_of(document(box))
        for told in ("Blanket box", "Harbour workshop", "Body", "Top", "Two coats, then wax."):
            assert told in text
        assert not box.side.source.isVisible()
        assert "no plan, finish or batch yet" in box.side.lacks.text()

    def test_a_change_of_the_job_is_followed(
        self, window: Window, box: SheetPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """Another title is on the sheet a moment later, and undone it is the old one again."""
        window.desk.edit_job(lambda store, id_: change_job(store, id_, title="Sea chest"))
        settle()
        rest(box, qtbot)
        assert "Sea chest" in text_of(document(box))
        qtbot.mouseClick(window.undo, LEFT)
        settle()
        rest(box, qtbot)
        assert "Sea chest" not in text_of(document(box))
        assert "Blanket box" in text_of(document(box))

    def test_what_no_sheet_tells_makes_none_anew(
        self, window: Window, box: SheetPage, settle: Settle
    ) -> None:
        """A part that is not on a sheet, and the form itself, leave the sheet as it is."""
        before = box.made
        window.desk.keep_part("compare", {"mixes": [1]})
        window.desk.keep_part(FORM_PART, box.form)
        settle()
        assert not box._soon.isActive()
        assert box.made is before

    def test_away_from_the_page_nothing_is_made(
        self, window: Window, box: SheetPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """While another page is in view the sheet rests; on coming back it is made anew."""
        before = box.made
        window.show_page("brief")
        window.desk.edit_job(lambda store, id_: change_job(store, id_, title="Sea chest"))
        settle()
        assert not box._soon.isActive()
        assert box.made is before
        window.show_page("sheet")
        rest(box, qtbot)
        assert "Sea chest" in text_of(document(box))

    def test_a_job_without_a_kept_mix_shows_the_one_on_the_bench(
        self, window: Window, page: SheetPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """A job with nothing kept yet lends its name to the first mix of the bench."""
        window.desk.begin(lambda store: new_job(store, title="Sea chest"))
        settle()
        rest(page, qtbot)
        assert "Sea chest" in text_of(document(page))
        assert page.side.source.text() == words.FIRST_MIX

    def test_a_part_that_cannot_be_used_is_told(
        self, window: Window, box: SheetPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """A finish from elsewhere that cannot be read is named with what to do."""
        window.desk.keep_part("finish", {"layers": "a coat of moonlight"})
        settle()
        rest(box, qtbot)
        assert box.made is not None
        assert box.side.gaps.isVisible()
        assert "finish" in box.side.gaps.text()
        for gap in box.made.content.gaps:
            assert gap in box.side.gaps.text()
        assert "no plan or batch yet" in box.side.lacks.text()
