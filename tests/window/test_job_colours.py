"""The colours of a job on its page: their amounts, which are in use, and taking one off."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel

from swatchwright.acts.batches import WHOLE_PIECE, keep_recipes
from swatchwright.acts.jobs import keep_document, new_job
from swatchwright.acts.kept_words import kept_words
from swatchwright.acts.labels import TAKE_MIX_OFF
from swatchwright.acts.recipes import recipes_for, typed_colour, with_volume
from swatchwright.desktop.pages.brief_page import BriefPage
from swatchwright.desktop.pages.finish_page import FinishPage
from swatchwright.desktop.words import FROM_MIX
from swatchwright.desktop.words import brief as words
from swatchwright.desktop.words import finish as finish_words
from swatchwright.piece.common import Kind, common_piece
from swatchwright.shelf.csv_file import demo_shelf

if TYPE_CHECKING:
    from collections.abc import Callable

    from swatchwright.acts.jobs import Store
    from swatchwright.acts.recipes import Recipes
    from swatchwright.desktop.widgets.job_colours import ZoneRow
    from swatchwright.desktop.window import Window
    from swatchwright.shelf.store.history import Changes

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture(scope="module")
def found() -> dict[str, Recipes]:
    """Give mixes of two paints: one kept for the whole piece, and one for each zone of a box."""
    colours = ((WHOLE_PIECE, (60, 5, 20), 500), ("body", (46, 34, 24), 300))
    return {
        zone: with_volume(recipes_for(typed_colour(*lab), demo_shelf(), most_paints=2), ml)
        for zone, lab, ml in (*colours, ("top", (28, 3, -24), 120))
    }


@pytest.fixture
def box(window: Window, settle: Settle, found: dict[str, Recipes]) -> BriefPage:
    """Give the page of a box whose mix was kept before it was sized, and then one for each zone."""
    window.show_page("brief")

    def begin(store: Store) -> Changes:
        changes = new_job(store, title="Box")
        keep_document(store, changes.jobs[0], "piece", common_piece(Kind.BLANKET_BOX))
        for zone, recipes in found.items():
            keep_recipes(store, changes.jobs[0], recipes, zone=zone)
        return changes

    window.desk.begin(begin)
    settle()
    page = window.page("brief")
    assert isinstance(page, BriefPage)
    return page


def told(row: ZoneRow) -> list[str]:
    """Give all that a row says."""
    return [label.text() for label in row.findChildren(QLabel)]


def test_the_mix_of_before_is_history(box: BriefPage, window: Window, settle: Settle) -> None:
    """It stays on the page and is said to be unused; batches and finish know the others alone."""
    rows = box.colours.zones
    assert list(rows) == [WHOLE_PIECE, "body", "top"]
    assert [words.NOT_IN_USE in told(row) for row in rows.values()] == [True, False, False]
    zone = box.batches.zone
    assert [zone.itemData(i) for i in range(zone.count())] == ["body", "top"]
    window.show_page("finish")
    settle()
    finish = window.page("finish")
    assert isinstance(finish, FinishPage)
    chosen = [mix.word for mix in finish.mixes][:2]
    assert chosen == [finish_words.chosen_word("top"), finish_words.chosen_word("body")]
    assert all(mix.word != finish_words.chosen_word(WHOLE_PIECE) for mix in finish.mixes)


def test_each_tells_its_amount(box: BriefPage, found: dict[str, Recipes]) -> None:
    """The amount beside a colour is the one it was kept for."""
    for zone, row in box.colours.zones.items():
        ml = words.ml(found[zone].volume)
        assert any(ml in text for text in told(row))


def test_taken_off_and_back(box: BriefPage, window: Window, settle: Settle) -> None:
    """Pressed, the colour is gone from the page; one undo brings it back where it was."""
    QTest.mouseClick(box.colours.zones[WHOLE_PIECE].off, LEFT)
    settle()
    assert list(box.colours.zones) == ["body", "top"]
    assert window.desk.job is not None
    assert {recipe.zone for recipe in window.desk.job.recipes} == {"body", "top"}
    label = kept_words(TAKE_MIX_OFF.format(job="Box"))
    assert label in window.undo.toolTip()
    QTest.mouseClick(window.undo, LEFT)
    settle()
    assert list(box.colours.zones) == [WHOLE_PIECE, "body", "top"]


def test_named_for_a_reader(box: BriefPage) -> None:
    """Each button says which colour it takes off, and can be reached by the keyboard."""
    for zone, row in box.colours.zones.items():
        assert row.off.accessibleName() == words.take_off_name(zone)
        assert row.off.focusPolicy() & Qt.FocusPolicy.TabFocus
        assert row.off.toolTip() == words.TAKE_OFF_TIP


def test_another_piece_in_a_kept_mix(box: BriefPage, window: Window, settle: Settle) -> None:
    """A job of its own wants the mix as it dries, with the paints in use; the first stays as it is.

    Of the same paints the mix itself is found again, as it was kept to the figure: nothing is off.
    """
    first, row = window.desk.job, box.colours.zones["body"]
    assert first is not None
    assert row.recipe is not None
    dry = row.recipe.dry
    window.session.set_most_paints(2)
    QTest.mouseClick(row.another, LEFT)
    settle()
    assert window.colour_page.isVisible()
    job, wanted, recipes = window.desk.job, window.session.wanted, window.session.recipes
    assert job is not None
    assert wanted is not None
    assert recipes is not None
    assert job.id != first.id
    assert job.client == first.client
    assert not job.wanted
    assert wanted.lab == dry
    assert recipes.recipes[0].recipe.delta_e < 0.05
    window.keeping.keep(1)
    settle()
    assert window.desk.job is not None
    assert [one.colour.origin for one in window.desk.job.wanted] == [FROM_MIX]
    window.desk.open_job(first.id)
    settle()
    assert window.desk.job is not None
    assert window.desk.job.wanted == first.wanted
