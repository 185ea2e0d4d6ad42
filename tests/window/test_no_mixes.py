"""Where no mix is possible, the page of the mixes says why, and leads to where it is mended."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt

from swatchwright.desktop import words
from swatchwright.desktop.words import wishes as wish_words
from swatchwright.mixing.wishes import Wishes

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton


def without_any(window: Window) -> Wishes:
    """Wish for a mix of no paint at all."""
    return Wishes(without=frozenset(paint.id for paint in window.session.shelf.paints))


class TestWhy:
    """The reason is told in place."""

    def test_before_a_colour_is_wanted_the_mixes_are_to_come(
        self, window: Window, settle: Settle
    ) -> None:
        """With nothing wanted the page says what brings the mixes, and has no buttons."""
        settle()
        lacking = window.mix_side.lacking
        assert lacking.told.text() == words.WAIT_MIXES
        assert not lacking.to_shelf.isVisibleTo(lacking)
        assert not lacking.no_wishes.isVisibleTo(lacking)

    def test_no_paint_in_use(self, mixed: Window, settle: Settle) -> None:
        """With no paint ticked it says so, and that is not that the cloth must be marked."""
        mixed.session.wish(without_any(mixed))
        settle()
        lacking = mixed.mix_side.lacking
        assert lacking.isVisibleTo(mixed)
        assert lacking.told.text() == wish_words.NO_PAINT_USED
        assert lacking.to_shelf.isVisibleTo(lacking)

    @pytest.mark.parametrize(
        "wishes",
        [
            Wishes(most_price=0.5),
            Wishes(only=frozenset()),
            Wishes(owned=frozenset(), most_to_buy=0),
        ],
    )
    def test_wishes_that_leave_none(self, mixed: Window, settle: Settle, wishes: Wishes) -> None:
        """What is wrong stands there as the page Shelf tells it, with both buttons."""
        mixed.session.wish(wishes)
        settle()
        lacking, why = mixed.mix_side.lacking, mixed.session.wish_trouble
        assert why is not None
        assert mixed.session.recipes is None
        assert lacking.told.text() in (wish_words.none_possible(why), wish_words.NO_PAINT_USED)
        assert lacking.to_shelf.isVisibleTo(lacking)
        assert lacking.no_wishes.isVisibleTo(lacking)

    def test_meanwhile_it_says_that_it_looks(self, mixed: Window) -> None:
        """While mixes are being found again, no old reason stands there."""
        mixed.session.recipes = None
        mixed.session.recipes_changed.emit()
        mixed.session.set_most_paints(3)
        assert mixed.mix_side.lacking.told.text() == words.FINDING_MIXES


class TestMending:
    """The buttons lead to where it is mended."""

    def test_no_wishes_brings_the_mixes(self, mixed: Window, settle: Settle, qtbot: QtBot) -> None:
        """The wishes are dropped in place, the mixes come, and undo brings the wishes back."""
        asked = without_any(mixed)
        mixed.session.wish(asked)
        settle()
        qtbot.mouseClick(mixed.mix_side.lacking.no_wishes, LEFT)
        settle()
        assert mixed.session.wishes == Wishes()
        assert mixed.mix_side.columns()
        assert not mixed.mix_side.lacking.isVisibleTo(mixed)
        mixed.session.history.undo()
        settle()
        assert mixed.session.wishes == asked

    def test_the_other_goes_to_the_shelf(self, mixed: Window, settle: Settle, qtbot: QtBot) -> None:
        """The page Shelf is shown."""
        mixed.session.wish(replace(Wishes(), most_price=0.5))
        settle()
        qtbot.mouseClick(mixed.mix_side.lacking.to_shelf, LEFT)
        settle()
        assert mixed.page("shelf").isVisibleTo(mixed)
