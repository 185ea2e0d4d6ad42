"""What was taken from a sample stands beside the mixes found: on Colour, and on Compare."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QLabel

from swatchwright.acts.compare import ROOM, Compared, State
from swatchwright.acts.jobs import new_job
from swatchwright.acts.sample_tried import tried_line
from swatchwright.colour.names import closeness
from swatchwright.colour.spectrum import Light
from swatchwright.desktop.pages.compare_page import ComparePage
from swatchwright.desktop.widgets.recipe_column import RecipeColumn
from swatchwright.desktop.words import keeping as keeping_words
from swatchwright.desktop.words import taken as words
from window.known import known_findings
from window.sample_hands import page_of

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.pages.sample_page import SamplePage
    from swatchwright.desktop.window import Window
    from swatchwright.shelf.jobs import Job, KeptRecipe

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton
PATIENCE = 60_000


def sample_it(page: SamplePage, qtbot: QtBot, settle: Settle, said: tuple[str, str] | None) -> None:
    """Say how a sample looks, or that it is like the cloth, and keep it."""
    if said is None:
        qtbot.mouseClick(page.eye.like, LEFT)
    else:
        page.eye.amount.setCurrentIndex(page.eye.amount.findData(said[0]))
        page.eye.first.setCurrentIndex(page.eye.first.findData(said[1]))
        qtbot.mouseClick(page.eye.take, LEFT)
    qtbot.mouseClick(page.told.ask, LEFT)
    settle()


@pytest.fixture
def taken(bench: Window, settle: Settle, qtbot: QtBot) -> Window:
    """Give the window on the page Colour, with the second sample's mix taken as it was poured."""
    with known_findings():
        page = page_of(bench)
        sample_it(page, qtbot, settle, ("clearly", "light"))
        sample_it(page, qtbot, settle, None)
        qtbot.mouseClick(page.next.takes[False], LEFT)
        settle()
        bench.show_page("colour")
        settle()
    return bench


@pytest.fixture
def poured(bench: Window, settle: Settle, qtbot: QtBot) -> Window:
    """Give the window on the page Colour, with the pot taken after what was added to it."""
    with known_findings():
        page = page_of(bench)
        sample_it(page, qtbot, settle, ("clearly", "light"))
        qtbot.mouseClick(page.next.takes[True], LEFT)
        settle()
        bench.show_page("colour")
        settle()
    return bench


def job_of(window: Window) -> Job:
    """Give the job on the bench, which must be there."""
    assert window.desk.job is not None
    return window.desk.job


def chosen(window: Window) -> KeptRecipe:
    """Give the mix of the piece, which must be there."""
    found = job_of(window).chosen("all")
    assert found is not None
    return found


def hers(window: Window) -> RecipeColumn:
    """Give her card, which must be there."""
    found = window.mix_side.hers
    assert found is not None
    return found


def texts(card: RecipeColumn) -> list[str]:
    """Give all that stands on a card."""
    return [label.text() for label in card.findChildren(QLabel) if not label.isHidden()]


def promise(window: Window) -> str:
    """Give what the job says of its mix."""
    return tried_line(job_of(window), [(p.paint, p.share) for p in chosen(window).paints])


def compare(window: Window, settle: Settle) -> ComparePage:
    """Bring the page Compare into view."""
    window.show_page("compare")
    settle()
    page = window.page("compare")
    assert isinstance(page, ComparePage)
    return page


def shown(page: ComparePage) -> Compared:
    """Give what the page shows, which must be there."""
    assert page.found is not None
    return page.found


class TestOnColour:
    """Her card among those of the mixes found."""

    def test_it_stands_first_and_is_hers(self, taken: Window) -> None:
        """It has no number and is marked; the mixes found keep theirs, and stand to its right."""
        card, columns = hers(taken), taken.mix_side.columns()
        assert words.HEADING in texts(card)
        assert card.accessibleName() == words.HEADING
        assert card.keep.isChecked()
        assert card.keep.text() == keeping_words.KEPT
        assert [column.number for column in columns] == list(range(1, len(columns) + 1))
        assert not any(column.keep.isChecked() for column in columns)
        assert all(card.x() < column.x() for column in columns)
        assert taken.mix_side.pager.told.text().startswith("Your mix and")

    def test_it_is_what_the_job_is_painted_with(self, taken: Window) -> None:
        """Paints, shares and colours are those of the job, to the last digit."""
        recipe, kept = hers(taken).measured.recipe, chosen(taken)
        assert [p.id for p in recipe.paints] == [p.paint for p in kept.paints]
        assert recipe.shares == tuple(p.share for p in kept.paints)
        assert (recipe.dry, recipe.wet) == (kept.dry, kept.wet)
        assert hers(taken).field._fields[1][1] == kept.dry

    def test_it_promises_what_is_promised_elsewhere(self, taken: Window) -> None:
        """The figure of its sample stands on it with its word and its doubt, as on the job."""
        card = hers(taken)
        assert card.taken is not None
        assert card.taken.told == promise(taken)
        told = words.line(card.taken)
        assert told in texts(card)
        off, doubt = card.taken.taken.off, card.taken.taken.give_or_take
        for figure in (f"{off:.1f}", closeness(off), f"give or take {doubt:.1f}"):
            assert figure in told
            assert figure in promise(taken)
        assert card.copy.isEnabled()
        card.copy.click()
        assert promise(taken) in QApplication.clipboard().text()

    def test_a_pot_that_was_added_to(self, poured: Window, settle: Settle) -> None:
        """What is promised of it on the page Sample is promised here, on the job and on Compare."""
        card, page = hers(poured), page_of(poured)
        advice = page.samples.advice
        assert advice is not None
        assert card.taken is not None
        figure = f"within about {advice.after.usual:.1f} of the cloth"
        assert figure in words.line(card.taken)
        assert figure in promise(poured)
        assert words.way(card.taken) in ("", *texts(card))
        lines = "\n".join(compare(poured, settle).told.texts())
        assert figure in lines

    def test_it_stays_through_another_search(
        self, taken: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """Other mixes are found, and the same card stands first, untouched."""
        card = hers(taken)
        before = taken.mix_side.columns()
        qtbot.mouseClick(taken.mix_side.counts[3], LEFT)
        settle()
        assert taken.mix_side.columns() != before
        assert hers(taken) is card
        assert all(card.x() < column.x() for column in taken.mix_side.columns())
        assert card.keep.isChecked()

    def test_it_follows_the_amount(self, taken: Window, settle: Settle, qtbot: QtBot) -> None:
        """For another volume its ml add up to that, on the same card."""
        card, volume = hers(taken), taken.mix_side.volume
        volume.setFocus()
        volume.selectAll()
        qtbot.keyClicks(volume, "750")
        qtbot.keyClick(volume, Qt.Key.Key_Return)
        settle()
        assert hers(taken) is card
        assert sum(one.ml for one in card.measured.amounts) == pytest.approx(750)

    def test_it_is_for_its_colour_only(self, taken: Window, settle: Settle) -> None:
        """With another colour wanted it is not there; with its own it is back."""
        taken.session.type_colour("30, 2, -25")
        settle()
        assert taken.mix_side.hers is None
        taken.session.type_colour("46, 34, 24")
        settle()
        assert hers(taken).measured.recipe.dry == chosen(taken).dry

    def test_undo_and_redo(self, taken: Window, settle: Settle, qtbot: QtBot) -> None:
        """It goes when the taking is taken back, and comes again with it."""
        qtbot.mouseClick(taken.undo, LEFT)
        settle()
        assert taken.mix_side.hers is None
        assert taken.mix_side.columns()[0].keep.isChecked()
        qtbot.mouseClick(taken.redo, LEFT)
        settle()
        assert hers(taken).keep.isChecked()

    def test_it_goes_with_its_sample(self, taken: Window, settle: Settle, qtbot: QtBot) -> None:
        """Without the sample it was taken from nothing says that it was judged."""
        qtbot.mouseClick(page_of(taken).back, LEFT)
        settle()
        assert taken.mix_side.hers is None

    def test_it_goes_for_another_mix(self, taken: Window, settle: Settle, qtbot: QtBot) -> None:
        """Another is kept in its place."""
        qtbot.mouseClick(taken.mix_side.columns()[1].keep, LEFT)
        settle()
        assert taken.mix_side.hers is None
        assert taken.mix_side.columns()[1].keep.isChecked()

    def test_it_goes_and_comes_with_its_job(self, taken: Window, settle: Settle) -> None:
        """With another job on the bench it is not there; with its own it is, as it was."""
        before, id_ = hers(taken).measured, job_of(taken).id
        taken.desk.begin(lambda store: new_job(store, title="A stool"))
        settle()
        assert taken.mix_side.hers is None
        taken.session.type_colour("46, 34, 24")
        settle()
        assert taken.mix_side.hers is None
        taken.desk.open_job(id_)
        settle()
        assert hers(taken).measured.recipe.dry == before.recipe.dry
        assert hers(taken).measured.amounts == before.amounts

    def test_at_the_next_start(
        self, taken: Window, opened: Callable[[], Window], settle: Settle, qtbot: QtBot
    ) -> None:
        """It stands there again, here and on Compare, with the same colours and words."""
        card = hers(taken)
        told, lines = texts(card), compare(taken, settle).told.texts()
        taken.show_page("colour")
        taken.close()
        again = opened()
        assert texts(hers(again)) == told
        assert hers(again).measured.recipe.dry == card.measured.recipe.dry
        rest = partial(qtbot.waitUntil, again.at_rest, timeout=PATIENCE)
        assert compare(again, rest).told.texts() == lines

    def test_its_sample_is_one_press_away(self, taken: Window, qtbot: QtBot) -> None:
        """The button on the card brings the page Sample into view."""
        qtbot.mouseClick(hers(taken).sample, LEFT)
        assert taken.rail.shown == "sample"


class TestOnCompare:
    """Her column beside the others."""

    def test_it_is_the_first_column(self, taken: Window, settle: Settle) -> None:
        """In the colour of the job, as far off as its sample was seen to be."""
        page = compare(taken, settle)
        found = shown(page)
        first = found.candidates[0]
        dry = first.sight(State.DRY, Light.D65)
        assert dry.lab.triple == pytest.approx(chosen(taken).dry.triple, abs=1e-9)
        assert dry.shown.triple == pytest.approx(chosen(taken).dry.triple, abs=1e-6)
        card = hers(taken)
        assert card.taken is not None
        assert dry.delta_e == card.taken.taken.off
        assert page.bar.taken.isVisible()
        assert page.bar.taken.isChecked()
        assert page.picture.fields()[1].word.startswith(words.name())
        assert promise(taken) in page.told.texts()[0]

    def test_it_is_there_in_every_light_and_state(
        self, taken: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """It has a field for each; the same step parts them from what its paints come to."""
        page = compare(taken, settle)
        for state in (State.WET, State.WASHED, State.WAXED):
            qtbot.mouseClick(page.bar.states[state], LEFT)
        qtbot.mouseClick(page.bar.every_light, LEFT)
        settle()
        count = len(shown(page).candidates)
        assert len(page.lights.pairs()) == len(State) * len(ROOM) * count
        first = shown(page).candidates[0]
        labs = [s.lab.triple for s in first.sights if s.state is State.WET]
        assert len({tuple(np.round(lab, 3)) for lab in labs}) == len(ROOM)
        wet = first.sight(State.WET, Light.D65).lab
        assert wet.triple == pytest.approx(chosen(taken).wet.triple, abs=0.05)

    def test_it_can_be_left_out_and_shown_alone(
        self, taken: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """Its button is as those of the others; the last one that is pressed stays."""
        page = compare(taken, settle)
        count = len(shown(page).candidates)
        qtbot.mouseClick(page.bar.taken, LEFT)
        settle()
        assert len(shown(page).candidates) == count - 1
        assert not any(one.tried for one in shown(page).candidates)
        qtbot.mouseClick(page.bar.taken, LEFT)
        for button in page.bar.mixes[:3]:
            qtbot.mouseClick(button, LEFT)
        settle()
        (alone,) = shown(page).candidates
        assert alone.tried == promise(taken)
        qtbot.mouseClick(page.bar.taken, LEFT)
        settle()
        assert page.bar.taken.isChecked()
        assert len(shown(page).candidates) == 1

    def test_it_goes_with_its_sample(self, taken: Window, settle: Settle, qtbot: QtBot) -> None:
        """Taken back while the page is in view, its column and its button go."""
        page = compare(taken, settle)
        qtbot.mouseClick(taken.undo, LEFT)
        settle()
        assert not page.bar.taken.isVisible()
        assert not any(one.tried for one in shown(page).candidates)
        qtbot.mouseClick(taken.redo, LEFT)
        settle()
        assert page.bar.taken.isVisible()
        assert shown(page).candidates[0].tried == promise(taken)

    def test_the_whole_screen_begins_with_it(
        self, taken: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """Hers is the first beside the wanted colour, by its name."""
        page = compare(taken, settle)
        qtbot.mouseClick(page.bar.full, LEFT)
        assert page.pair is not None
        assert words.name() in page.pair.line.lower()
        page.pair.close()
