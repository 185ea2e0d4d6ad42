"""Getting to know paints in one sitting, and how one of them dries."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

import numpy as np
import pytest
from PySide6.QtCore import Qt

from hands import drag
from swatchwright.acts.known import GOOD
from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.own_paint import ColourFrom
from swatchwright.acts.paint import look_of_paint
from swatchwright.acts.sitting import names_in
from swatchwright.acts.sitting_fit import most_helpful
from swatchwright.colour.difference import delta_e_2000
from swatchwright.desktop.pages.shelf_page import ShelfPage
from swatchwright.desktop.widgets.doubt_bar import DoubtScale
from swatchwright.desktop.words import shelf as words
from swatchwright.desktop.words import sitting as sitting_words
from swatchwright.shelf.measured import Measurement, Measurements, write_measurements
from swatchwright.values import Lab
from window.shelf_hands import DEMO, SIX, WHITE, colour_of, enter, photo_of, tick, to_reading

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def page(window: Window, settle: Settle) -> ShelfPage:
    """Give the page, in view, with its paints shown."""
    window.show_page("shelf")
    settle()
    return cast(ShelfPage, window.page("shelf"))


class TestSitting:
    """Getting to know paints."""

    def test_six_paints_and_a_white(
        self, window: Window, page: ShelfPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """Chosen, read, fitted and kept by clicks and keys, paints carry their smaller doubt.

        What is read is what the paints' own optics give, to two digits. The mixes that the fitted
        paints make come out near those of the true ones, nearer than their stated doubt.
        """
        window.session.type_colour("46, 34, 24")
        to_reading(page, qtbot, (WHITE, *SIX))
        sitting = page.sitting
        cards = sitting.sitting.cards
        assert sitting.sitting.white == WHITE
        assert len(cards) == 1 + 3 * len(SIX)
        assert cards[0].mix == ((WHITE, 1.0),)
        for number, card in enumerate(cards):
            assert sitting.reading.turn == number
            name = sitting_words.card_words(card, names_in(sitting.sitting, DEMO))
            assert name in sitting.reading.now.text()
            enter(page, qtbot, colour_of(card.mix))
        assert sitting.reading.now.text() == sitting_words.OF_CARDS.done
        qtbot.mouseClick(sitting.next, LEFT)
        qtbot.mouseClick(sitting.result.fit, LEFT)
        settle()
        found = sitting.result.found
        assert found is not None
        assert len(sitting.result.bars) == 1 + len(SIX)
        assert "What would help most" in sitting.result.helps.text()
        qtbot.mouseClick(sitting.result.keep, LEFT)
        settle()
        settle()
        assert sitting.result.told.text().startswith(words.KEPT)
        shelf = window.session.shelf
        assert {p.id for p in shelf.paints} == {WHITE, *SIX}
        assert all(p.spread is not None for p in shelf.paints)
        recipes = window.session.recipes
        assert recipes is not None
        for measured in recipes.recipes:
            confidence = measured.confidence
            assert confidence.by_spread
            # 10.5 is the usual error of mixes from paints of which a single drawdown is known.
            assert 0 < confidence.paints < 10.5 * 0.6
            recipe = measured.recipe
            mix = [(p.id, s) for p, s in zip(recipe.paints, recipe.shares, strict=True)]
            true = look_of_mix(DEMO, mix).dry
            assert delta_e_2000(recipe.dry.triple, true.triple) < 2 * confidence.paints

    def test_more_cards_leave_less_doubt(
        self, window: Window, page: ShelfPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """The card that would help most is added, read, and the doubt after it is smaller."""
        ids = (WHITE, "deep-blue-red")
        to_reading(page, qtbot, ids)
        sitting = page.sitting
        blue = [n for n, c in enumerate(sitting.sitting.cards) if c.mix[0][0] == ids[1]]
        for n in [0, blue[0]]:
            sitting.reading.take_turn(n)
            enter(page, qtbot, colour_of(sitting.sitting.cards[n].mix))
        sitting.steps[3].click()
        qtbot.mouseClick(sitting.result.fit, LEFT)
        settle()
        before = _doubt(page, ids[1])
        helped = sitting.result.found
        assert helped is not None
        qtbot.mouseClick(sitting.result.more, LEFT)
        card = sitting.sitting.cards[sitting.reading.turn]
        assert not card.is_read
        helpful = most_helpful(helped)
        assert helpful is not None
        assert helpful.next.mix in [one.mix for one in sitting.sitting.cards]
        assert any(ids[1] in dict(one.mix) for one in sitting.sitting.cards)
        for n, one in enumerate(sitting.sitting.cards):
            if not one.over and not one.is_read:
                sitting.reading.take_turn(n)
                enter(page, qtbot, colour_of(one.mix))
        sitting.steps[3].click()
        qtbot.mouseClick(sitting.result.fit, LEFT)
        settle()
        assert _doubt(page, ids[1]) < 0.8 * before
        assert window.session.workshop.idle(besides="proof")

    def test_a_typed_colour_is_asked_how_it_is_known(self, page: ShelfPage, qtbot: QtBot) -> None:
        """Unless she says otherwise, a colour that is typed counts as seen by eye: the least sure.

        Said to be measured, it counts so.
        """
        to_reading(page, qtbot, (WHITE,))
        reading = page.sitting.reading
        assert reading.means.accessibleName() == sitting_words.READ_WITH
        assert reading.means.currentText() == sitting_words.how_read(ColourFrom.EYE)
        for how in (None, ColourFrom.MEASURED):
            if how is not None:
                reading.means.setCurrentIndex(reading.means.findData(how.usually_off))
            reading.typed.setText("#f4f2ea")
            qtbot.keyClick(reading.typed, Qt.Key.Key_Return)
            used = how or ColourFrom.EYE
            assert page.sitting.sitting.cards[0].usually_off == used.usually_off

    def test_contradiction_is_told(self, page: ShelfPage, settle: Settle, qtbot: QtBot) -> None:
        """A let-down that is darker than its paint cannot be, and it is said what to do."""
        to_reading(page, qtbot, (WHITE, "deep-blue-red"))
        sitting = page.sitting
        for card in sitting.sitting.cards:
            lab = colour_of(card.mix)
            enter(page, qtbot, lab if dict(card.mix).get(WHITE, 0) < 2 else Lab(12, 0, 0))
        sitting.steps[3].click()
        qtbot.mouseClick(sitting.result.fit, LEFT)
        settle()
        assert sitting_words.WHAT_TO_DO in sitting.result.trouble.text()
        assert "card 4" in sitting.result.trouble.text()
        assert sitting.result.trouble.isVisible()
        assert not sitting.result.keep.isVisible()

    def test_read_off_a_photo(
        self, page: ShelfPage, settle: Settle, qtbot: QtBot, tmp_path: Path
    ) -> None:
        """In a photo in yellow light the grey and then each card is marked; the page says which."""
        to_reading(page, qtbot, (WHITE, "clay-red-muted"))
        sitting, reading = page.sitting, page.sitting.reading
        cards = sitting.sitting.cards
        labs = [colour_of(card.mix) for card in cards]
        reading.open_file(photo_of(tmp_path, labs))
        settle()
        assert reading.now.text() == sitting_words.FIRST_GREY
        drag(reading.view, (20, 20), (180, 180))
        settle()
        for n, card in enumerate(cards):
            assert reading.turn == n
            name = sitting_words.card_words(card, names_in(sitting.sitting, DEMO))
            assert reading.now.text() == sitting_words.next_line(
                n + 1, name, read=False, photo=True
            )
            left = 200 * (n + 1)
            drag(reading.view, (left + 30, 30), (left + 170, 170))
        settle()
        for card, lab in zip(sitting.sitting.cards, labs, strict=True):
            assert card.lab is not None
            assert delta_e_2000(card.lab.triple, lab.triple) < 2.5
            assert card.usually_off is not None
            assert 1 < card.usually_off < 12
            assert card.read_by == "cards.png"

    def test_read_by_keyboard_alone(
        self, page: ShelfPage, settle: Settle, qtbot: QtBot, tmp_path: Path
    ) -> None:
        """Return puts a box, arrows move it, Return goes on, for the grey and for a card."""
        to_reading(page, qtbot, (WHITE,))
        reading = page.sitting.reading
        white = colour_of(page.sitting.sitting.cards[0].mix)
        reading.open_file(photo_of(tmp_path, [white]))
        settle()
        view = reading.view
        # The photo is 400 wide: a box in the middle lies over both; 20 steps of 4 bring it home.
        for key in (Qt.Key.Key_Left, Qt.Key.Key_Right):
            qtbot.keyClick(view, Qt.Key.Key_Return)
            for _ in range(20):
                qtbot.keyClick(view, key)
            settle()
            qtbot.keyClick(view, Qt.Key.Key_Return)
        settle()
        read = page.sitting.sitting.cards[0].lab
        assert read is not None
        assert delta_e_2000(read.triple, white.triple) < 2.5

    def test_card_without_grey_is_refused(
        self, page: ShelfPage, settle: Settle, qtbot: QtBot, tmp_path: Path
    ) -> None:
        """A card marked before the grey is not read, and it is said what comes first."""
        to_reading(page, qtbot, (WHITE,))
        reading = page.sitting.reading
        reading.open_file(photo_of(tmp_path, [Lab(90, 0, 0)]))
        settle()
        qtbot.mouseClick(reading.modes[list(reading.modes)[1]], LEFT)
        drag(reading.view, (230, 30), (370, 170))
        settle()
        assert sitting_words.NO_GREY[1] in reading.trouble.text()
        assert not page.sitting.sitting.cards[0].is_read

    def test_measurement_file(
        self, page: ShelfPage, settle: Settle, qtbot: QtBot, tmp_path: Path
    ) -> None:
        """Samples that have the cards' numbers are taken from a CGATS file; others are refused."""
        to_reading(page, qtbot, (WHITE, "clay-red-muted"))
        sitting = page.sitting
        path = tmp_path / "cards.txt"
        nothing = np.zeros(0)
        rows = [
            Measurement(str(n), str(n), nothing, None, colour_of(card.mix))
            for n, card in enumerate(sitting.sitting.cards, 1)
        ]
        write_measurements(Measurements("m", tuple(rows[:3])), path)
        sitting.open_measurements(path)
        settle()
        assert [card.is_read for card in sitting.sitting.cards] == [True] * 3 + [False]
        write_measurements(
            Measurements("m", (Measurement("x", "x", nothing, None, Lab(50, 0, 0)),)), path
        )
        sitting.open_measurements(path)
        settle()
        assert sitting.trouble.isVisible()
        assert "No sample" in sitting.trouble.text()

    def test_new_paint_and_list(
        self, page: ShelfPage, settle: Settle, qtbot: QtBot, tmp_path: Path
    ) -> None:
        """A new paint is taken down and its cards stand in the list; not a nameless one."""
        qtbot.mouseClick(page.get_to_know, LEFT)
        tick(page, qtbot, (WHITE,))
        choose = page.sitting.choose
        qtbot.mouseClick(choose.add, LEFT)
        assert choose.trouble.isVisible()
        qtbot.keyClicks(choose.name, "Harbour blue")
        choose.tin.setValue(750)
        choose.price.setValue(24)
        qtbot.keyClick(choose.name, Qt.Key.Key_Return)
        assert not choose.trouble.isVisible()
        qtbot.mouseClick(page.sitting.next, LEFT)
        assert [tin.id for tin in page.sitting.sitting.new] == ["harbour-blue"]
        assert len(page.sitting.sitting.cards) == 4
        path = tmp_path / "cards.txt"
        page.sitting.save_list(path)
        settle()
        text = path.read_text(encoding="utf-8")
        assert "Harbour blue 1\u00a0:\u00a010 White, clean" in text
        assert "mask" in text

    def test_a_new_white_is_let_down_with(self, page: ShelfPage, qtbot: QtBot) -> None:
        """A new paint that is called a white is let down with; red and blue are not offered."""
        qtbot.mouseClick(page.get_to_know, LEFT)
        choose = page.sitting.choose
        tick(page, qtbot, ("clay-red-muted", "deep-blue-red"))
        assert [choose.white.itemData(n) for n in range(choose.white.count())] == [""]
        qtbot.keyClicks(choose.name, "Chalk-white")
        qtbot.keyClick(choose.name, Qt.Key.Key_Return)
        assert page.sitting.sitting.white == "chalk-white"
        offered = [choose.white.itemData(n) for n in range(choose.white.count())]
        assert offered == ["", "chalk-white"]
        assert choose.white.currentText() == "Chalk-white"

    def test_it_opens_where_there_is_something_to_do(self, page: ShelfPage, qtbot: QtBot) -> None:
        """Left at a later step with nothing chosen, it opens at the first again."""
        qtbot.mouseClick(page.get_to_know, LEFT)
        page.sitting.show_step(1)
        qtbot.mouseClick(page.sitting.leave, LEFT)
        qtbot.mouseClick(page.get_to_know, LEFT)
        assert page.sitting.step == 0

    def test_what_is_to_be_brushed_is_counted(self, page: ShelfPage, qtbot: QtBot) -> None:
        """Bare cards are not counted among those to brush, and it is said how much paint one takes.

        ISO 216 gives A6 as 148 mm by 105 mm; a litre covers 12 m2, as the paints are taken to.
        """
        qtbot.mouseClick(page.get_to_know, LEFT)
        page.sitting.choose.ground.click()
        tick(page, qtbot, (WHITE,))
        qtbot.mouseClick(page.sitting.next, LEFT)
        cards = page.sitting.sitting.cards
        told = page.sitting.brush_told.text()
        assert sum(not card.mix for card in cards) == 2
        assert told.startswith(f"{len(cards) - 2} cards to brush.")
        assert sitting_words.BARE_TOO in told
        assert 1000 * 0.148 * 0.105 / DEMO.paint(WHITE).spreading_rate == pytest.approx(
            1.5, abs=0.4
        )
        assert "1.5 ml for each coat" in sitting_words.AMOUNT_HINT
        assert sitting_words.AMOUNT_HINT in told

    def test_what_will_happen_is_said(self, page: ShelfPage, settle: Settle, qtbot: QtBot) -> None:
        """Before the paints are worked out it is said what will be done; then it makes room."""
        to_reading(page, qtbot, (WHITE, "clay-red-muted"))
        result = page.sitting.result
        for card in page.sitting.sitting.cards:
            enter(page, qtbot, colour_of(card.mix))
        page.sitting.steps[3].click()
        assert result.fit_told.text() == sitting_words.FIT_TOLD
        assert result.fit_told.isVisible()
        qtbot.mouseClick(result.fit, LEFT)
        settle()
        assert not result.fit_told.isVisible()
        assert result.found is not None
        assert {fit.cards for fit in result.found.fits} == {3}

    def test_what_is_ticked_stays_ticked(self, page: ShelfPage, qtbot: QtBot) -> None:
        """The card of black and white stays ticked when paints are ticked, added or let down."""
        qtbot.mouseClick(page.get_to_know, LEFT)
        choose, sitting = page.sitting.choose, page.sitting
        choose.ground.click()
        qtbot.keyClicks(choose.name, "Harbour blue")
        qtbot.keyClick(choose.name, Qt.Key.Key_Return)
        tick(page, qtbot, (WHITE, "clay-red-muted"))
        choose.white.setCurrentIndex(choose.white.findData("harbour-blue"))
        choose.white.activated.emit(choose.white.currentIndex())
        assert choose.ground.isChecked()
        assert sitting.sitting.ground
        qtbot.mouseClick(sitting.next, LEFT)
        assert {card.over for card in sitting.sitting.cards} == {"", "black", "white"}
        qtbot.mouseClick(sitting.back, LEFT)
        assert choose.ground.isChecked()
        assert set(sitting.sitting.ids) == {"harbour-blue", WHITE, "clay-red-muted"}

    def test_one_colour_is_told_as_it_is(
        self, page: ShelfPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """A new paint from one colour is hardly known, and how it hides a guess, in every place."""
        qtbot.mouseClick(page.get_to_know, LEFT)
        choose, sitting = page.sitting.choose, page.sitting
        qtbot.keyClicks(choose.name, "Harbour blue")
        qtbot.keyClick(choose.name, Qt.Key.Key_Return)
        sitting.show_step(2)
        enter(page, qtbot, Lab(30, 5, -30))
        sitting.show_step(3)
        qtbot.mouseClick(sitting.result.fit, LEFT)
        settle()
        found = sitting.result.found
        assert found is not None
        hardly = found.fits[0].likely.words
        assert hardly == "hardly known"
        assert hardly in sitting.result.bars[0].accessibleName()
        assert sitting_words.before_word(found.fits[0]) in sitting.result.bars[0].accessibleName()
        assert sitting_words.hiding_line(found) in sitting.result.notes.text()
        assert "Harbour blue" in sitting_words.hiding_line(found)
        qtbot.mouseClick(sitting.result.keep, LEFT)
        settle()
        settle()
        qtbot.mouseClick(sitting.leave, LEFT)
        settle()
        assert hardly in page.panel.known.text()
        assert "guess" in page.panel.hides.text()
        assert "ell enough known" not in page.panel.next.text()
        assert hardly in page.table.paints.index(0, 4).data()
        assert words.OVER_CARD_GUESSED in page.panel.picture.accessibleName()

    def test_bars_are_on_one_scale(self, page: ShelfPage, settle: Settle, qtbot: QtBot) -> None:
        """A bar is as long as it is far off, before as now, and the scale names what is good."""
        to_reading(page, qtbot, (WHITE, "clay-red-muted"))
        for card in page.sitting.sitting.cards:
            enter(page, qtbot, colour_of(card.mix))
        page.sitting.steps[3].click()
        qtbot.mouseClick(page.sitting.result.fit, LEFT)
        settle()
        bars = page.sitting.result.bars
        scale = page.sitting.result.findChild(DoubtScale)
        assert isinstance(scale, DoubtScale)
        assert scale.isVisible()
        assert scale.accessibleName() == sitting_words.SCALE_TOLD
        for one in (scale, *bars):
            assert one.at(0.0) == scale.at(0.0)
            assert one.at(8.0) - one.at(0.0) == pytest.approx(2 * (one.at(4.0) - one.at(0.0)))
            assert one.at(GOOD) < one.at(10.0) < one.end() < one.width()
        assert page.sitting.result.fit.hasFocus()

    def test_kept_with_the_job(
        self, window: Window, page: ShelfPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """A sitting is kept with its readings, and is there again when the job is opened."""
        to_reading(page, qtbot, (WHITE, "clay-red-muted"))
        enter(page, qtbot, Lab(93, 0, 2))
        qtbot.waitUntil(lambda: window.desk.job is not None, timeout=10_000)
        settle()
        kept, job = page.sitting.sitting, window.desk.job
        assert job is not None
        window.desk.put_away()
        settle()
        assert not page.sitting.sitting.ids
        window.desk.open_job(job.id)
        settle()
        assert page.sitting.sitting == kept
        assert page.sitting.sitting.cards[0].lab == Lab(93, 0, 2)

    def test_fit_can_be_stopped(self, page: ShelfPage, settle: Settle, qtbot: QtBot) -> None:
        """A stopped fit brings nothing, and another can be started."""
        to_reading(page, qtbot, (WHITE, "clay-red-muted"))
        for card in page.sitting.sitting.cards:
            enter(page, qtbot, colour_of(card.mix))
        page.sitting.steps[3].click()
        result = page.sitting.result
        qtbot.mouseClick(result.fit, LEFT)
        qtbot.mouseClick(result.stop, LEFT)
        settle()
        assert result.found is None
        assert result.fit.isEnabled()
        qtbot.mouseClick(result.fit, LEFT)
        settle()
        assert result.found is not None


class TestDrying:
    """Wet and dry of one stroke."""

    def test_a_paint_learns_how_it_dries(
        self, window: Window, page: ShelfPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """A stroke that dries less than its kind does teaches the paint so, and that is kept."""
        id_ = "deep-blue-red"
        look = look_of_paint(DEMO, id_)
        page.table.choose(id_)
        settle()
        qtbot.mouseClick(page.dry, LEFT)
        drying = page.drying
        wet = (np.array(look.wet.triple) + np.array(look.dry.triple)) / 2
        assert not drying.learn.isEnabled()
        for lab in (Lab.of(wet), look.dry):
            drying.reading.typed.setText(", ".join(f"{v:.2f}" for v in lab.triple))
            qtbot.keyClick(drying.reading.typed, Qt.Key.Key_Return)
        qtbot.mouseClick(drying.learn, LEFT)
        settle()
        found = drying.found
        assert found is not None
        assert found.drying.off_after < found.drying.off_before
        assert drying.field is not None
        qtbot.mouseClick(drying.keep, LEFT)
        settle()
        settle()
        assert window.session.shelf.paint(id_).own_finish == found.drying.paint.own_finish

    def test_another_paint_is_refused(self, page: ShelfPage, settle: Settle, qtbot: QtBot) -> None:
        """Colours that are not of the paint are refused in place, with what to see to."""
        page.table.choose("deep-blue-red")
        settle()
        qtbot.mouseClick(page.dry, LEFT)
        for text in ("80, 0, 0", "84, 0, 0"):
            page.drying.reading.typed.setText(text)
            qtbot.keyClick(page.drying.reading.typed, Qt.Key.Key_Return)
        qtbot.mouseClick(page.drying.learn, LEFT)
        settle()
        assert page.drying.trouble.isVisible()
        assert "same paint" in page.drying.trouble.text()


def _doubt(page: ShelfPage, id_: str) -> float:
    found = page.sitting.result.found
    assert found is not None
    likely = next(fit.likely for fit in found.fits if fit.paint.id == id_)
    assert likely.with_white is not None
    return likely.with_white.whole
