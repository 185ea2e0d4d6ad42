"""What is chosen beside the sheet, and how it is kept."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pypdfium2
import pytest
from PySide6.QtCore import QPoint, Qt

from swatchwright.acts.jobs import new_job
from swatchwright.acts.sheet import LABELS, Paper, Units
from swatchwright.acts.sheet_form import FORM_PART, SheetForm
from swatchwright.desktop.pages.sheet_page import SheetPage
from swatchwright.desktop.words import sheet as words
from swatchwright.measures.kitchen import Country
from swatchwright.sheet.told import date_text
from window.sheet_hands import (
    LEFT,
    choose,
    document,
    rest,
    text_of,
)

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]


class TestChoices:
    """What is chosen beside it."""

    def test_letter(self, page: SheetPage, qtbot: QtBot) -> None:
        """Letter is 8.5 by 11 inches of 72 points (ANSI/ASME Y14.1)."""
        choose(page.choices.paper, Paper.LETTER)
        rest(page, qtbot)
        with pypdfium2.PdfDocument(document(page)) as opened:
            assert opened[0].get_size() == pytest.approx((612, 792), abs=0.5)

    @pytest.mark.parametrize("place", range(len(LABELS)))
    def test_a_label(self, page: SheetPage, qtbot: QtBot, place: int) -> None:
        """A jar label is a page of its own size, or a whole page of its paper filled."""
        size = LABELS[place]
        qtbot.mouseClick(page.choices.label, LEFT)
        choose(page.choices.label_size, size.name)
        rest(page, qtbot)
        points = 72 / 25.4
        with pypdfium2.PdfDocument(document(page)) as opened:
            alone = (size.width * points, size.height * points)
            assert opened[0].get_size() == pytest.approx(alone, abs=0.5)
        choose(page.choices.fill, True)
        rest(page, qtbot)
        with pypdfium2.PdfDocument(document(page)) as opened:
            paper = tuple(side * points for side in size.paper.size)
            assert opened[0].get_size() == pytest.approx(paper, abs=0.5)
        text = text_of(document(page))
        assert page.made is not None
        first = page.made.content.zones[0].paints[0]
        assert text.count(f"{first.parts:g} ") >= size.across * size.down

    def test_only_what_has_a_meaning_is_shown(self, box: SheetPage, qtbot: QtBot) -> None:
        """Paper is asked of a sheet, size and number of a label, the zone where there are two."""
        choices = box.choices
        assert choices.paper.isVisible()
        assert choices.zone.isVisible()
        assert not choices.label_size.isVisible()
        qtbot.mouseClick(choices.label, LEFT)
        assert not choices.paper.isVisible()
        assert choices.label_size.isVisible()
        assert choices.fill.isVisible()

    def test_one_zone(self, box: SheetPage, qtbot: QtBot) -> None:
        """Of one zone chosen the sheet tells that one only."""
        choose(box.choices.zone, "top")
        rest(box, qtbot)
        assert box.made is not None
        assert [zone.name for zone in box.made.content.zones] == ["top"]

    def test_spoons_and_grams(self, page: SheetPage, qtbot: QtBot) -> None:
        """Amounts are told in what is ticked, and in the spoons of the country chosen."""
        assert "tsp" not in text_of(document(page))
        qtbot.mouseClick(page.choices.grams, LEFT, pos=QPoint(8, 12))
        choose(page.choices.spoons, Country.UNITED_KINGDOM)
        rest(page, qtbot)
        assert page.made is not None
        assert page.made.content.units == Units(ml=True, grams=False, spoons=Country.UNITED_KINGDOM)
        spoons = [paint.spoons for paint in page.made.content.zones[0].paints]
        assert all(spoons)
        assert spoons[0].split()[0] in text_of(document(page))

    def test_the_last_of_the_amounts_stays(self, page: SheetPage, qtbot: QtBot) -> None:
        """One way to tell amounts is left, whatever is unticked."""
        choices = page.choices
        qtbot.mouseClick(choices.grams, LEFT, pos=QPoint(8, 12))
        qtbot.mouseClick(choices.ml, LEFT, pos=QPoint(8, 12))
        assert choices.ml.isChecked()
        choose(choices.spoons, Country.METRIC)
        qtbot.mouseClick(choices.ml, LEFT, pos=QPoint(8, 12))
        assert not choices.ml.isChecked()
        choose(choices.spoons, None)
        assert choices.ml.isChecked()
        assert page.form.units == Units(ml=True, grams=False)

    def test_the_amount(self, page: SheetPage, qtbot: QtBot) -> None:
        """A typed amount is on the sheet; of 0 it is that of the bench again."""
        field = page.choices.volume
        field.setFocus()
        field.selectAll()
        qtbot.keyClicks(field, "320")
        qtbot.keyClick(field, Qt.Key.Key_Return)
        rest(page, qtbot)
        assert page.made is not None
        assert sum(p.ml for p in page.made.content.zones[0].paints) == pytest.approx(320)
        field.setValue(0)
        rest(page, qtbot)
        assert page.made is not None
        assert page.made.content.zones[0].volume == page.session.volume
        assert field.text() == words.VOLUME_OF_BENCH

    def test_the_day(self, page: SheetPage, qtbot: QtBot) -> None:
        """Another day than today is on the sheet, and today again when that is ticked."""
        choices = page.choices
        assert not choices.day.isEnabled()
        qtbot.mouseClick(choices.today, LEFT, pos=QPoint(8, 12))
        choices.day.setDate(choices.day.date().addDays(-40))
        told = date_text(choices.day.date().toString(Qt.DateFormat.ISODate))
        rest(page, qtbot)
        assert told in text_of(document(page))
        qtbot.mouseClick(choices.today, LEFT, pos=QPoint(8, 12))
        rest(page, qtbot)
        assert told not in text_of(document(page))
        assert page.form.day is None

    def test_kept_with_the_job(
        self, window: Window, box: SheetPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """What is chosen is kept with the job, shown when it is opened again, and undone."""
        job = window.desk.job
        assert job is not None
        qtbot.mouseClick(box.choices.label, LEFT)
        choose(box.choices.label_size, LABELS[2].name)
        rest(box, qtbot)
        window.show_page("brief")
        settle()
        assert window.desk.part(FORM_PART, SheetForm) == box.form
        window.desk.put_away()
        settle()
        window.desk.begin(lambda store: new_job(store, title="Sea chest"))
        settle()
        assert not box.form.as_label
        window.desk.open_job(job.id)
        settle()
        window.show_page("sheet")
        rest(box, qtbot)
        assert box.choices.label.isChecked()
        assert box.form.label == LABELS[2].name
        assert box.choices.label_size.currentData() == LABELS[2].name

    def test_undone(self, window: Window, box: SheetPage, settle: Settle, qtbot: QtBot) -> None:
        """A choice that is taken back is taken back on the page and on the sheet."""
        choose(box.choices.paper, Paper.LETTER)
        box._keeper.keep()
        settle()
        qtbot.mouseClick(window.undo, LEFT)
        settle()
        rest(box, qtbot)
        assert box.form.paper is Paper.A4
        assert box.choices.paper.currentData() == Paper.A4

    def test_a_choice_begins_no_job(self, window: Window, page: SheetPage, settle: Settle) -> None:
        """With no job on the bench none is begun for a choice of paper; one begun later has it."""
        choose(page.choices.paper, Paper.LETTER)
        window.show_page("brief")
        settle()
        assert window.desk.job is None
        window.desk.begin(lambda store: new_job(store, title="Sea chest"))
        settle()
        assert page.form.paper is Paper.LETTER

    def test_a_form_from_elsewhere(
        self, window: Window, box: SheetPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """A form with what there is not is taken as far as it can be."""
        odd = SheetForm(
            as_label=True,
            label="1x1",
            units=Units(ml=False, grams=False),
            volume=-3,
            zone="attic",
            day="never",
        )
        window.desk.keep_part(FORM_PART, odd)
        settle()
        rest(box, qtbot)
        assert box.form == SheetForm(as_label=True, units=Units(ml=True, grams=False))
        assert box.made is not None
