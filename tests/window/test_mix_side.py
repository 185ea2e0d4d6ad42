"""The mixes side by side: laid one at a time, and their amounts as what is asked for changes."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel

from swatchwright.desktop.window import Window
from swatchwright.desktop.words import keeping as words
from swatchwright.desktop.words import millilitres

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton


class TestLaying:
    """Mixes come one after another."""

    def test_each_mix_is_laid_once_and_in_its_order(self, mixed: Window) -> None:
        """All that were found stand there, the closest first, once the window is at rest."""
        recipes = mixed.session.recipes
        assert recipes is not None
        columns = mixed.mix_side.columns()
        assert [column.measured for column in columns] == list(recipes.recipes)
        assert [column.number for column in columns] == list(range(1, len(columns) + 1))
        assert all(a.x() < b.x() for a, b in pairwise(columns))

    def test_others_wanted_meanwhile_take_their_place(self, mixed: Window, settle: Settle) -> None:
        """Mixes that are laid still when others are found do not come among those."""
        session = mixed.session
        for found in (None, session.recipes):
            session.recipes = found
            session.recipes_changed.emit()
        assert mixed.mix_side.laying()
        session.set_most_paints(3)
        session.type_colour("30, 2, -25")
        settle()
        recipes = session.recipes
        assert recipes is not None
        columns = mixed.mix_side.columns()
        assert [column.measured for column in columns] == list(recipes.recipes)


class TestTyping:
    """The amount is typed, and the next press is meant."""

    def test_the_press_that_ends_typing_is_not_lost(
        self, mixed: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """She types how much, and keeps a mix: the button is there still when she lets go of it."""
        volume, keep = mixed.mix_side.volume, mixed.mix_side.columns()[1].keep
        volume.setFocus()
        volume.selectAll()
        qtbot.keyClicks(volume, "750")
        qtbot.mouseClick(keep, LEFT)
        settle()
        assert mixed.session.volume == 750
        assert mixed.mix_side.columns()[1].keep is keep
        assert keep.text() == words.KEPT

    def test_another_volume_is_another_amount(self, mixed: Window, settle: Settle) -> None:
        """Each paint's amount follows, to the ml that was asked for in all."""
        for volume in (300, 900):
            mixed.mix_side.volume.setValue(volume)
            settle()
            recipes = mixed.session.recipes
            assert recipes is not None
            for column, measured in zip(mixed.mix_side.columns(), recipes.recipes, strict=True):
                told = " ".join(label.text() for label in column.findChildren(QLabel))
                assert sum(a.ml for a in measured.amounts) == pytest.approx(volume)
                assert all(millilitres(a.ml) in told for a in measured.amounts)
