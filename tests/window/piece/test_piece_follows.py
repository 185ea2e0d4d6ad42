"""The page of the piece follows the pages Finish and Plan, but for what she sets by hand."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt

from swatchwright.acts.plan_job import FINISH_PART
from swatchwright.desktop.pages.piece_page import PiecePage
from swatchwright.desktop.pages.plan_page import PlanPage
from swatchwright.desktop.words import amounts as words
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.piece.order import ProductKind
from swatchwright.piece.work.coats import usual_primer
from swatchwright.piece.work.order import Primer, Surface

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton

WASHED_AND_WAXED = Stack(
    (
        Layer(LayerKind.WASH, (("white-clean", 1.0), ("soft-black", 1.0)), 4.0),
        Layer(LayerKind.WAX),
    )
)


def lay(window: Window, stack: Stack) -> None:
    """Keep layers with the job, as the page of the finish does."""
    window.desk.keep_part(FINISH_PART, stack)


class TestOtherPages:
    """What the pages Finish and Plan say of what goes on."""

    def test_the_finish_is_bought(self, table: PiecePage, window: Window, settle: Settle) -> None:
        """A wash of two paints with four waters, and wax, are laid, poured and bought as there."""
        lay(window, WASHED_AND_WAXED)
        settle()
        assert table.coats.coats[ProductKind.WASH].value() == 1
        assert table.coats.names[ProductKind.CLEAR].text() == "Wax"
        assert table.coats.thinned.value() == 4
        assert table.amounts is not None
        wash = next(b for b in table.amounts.batches if b.kind is ProductKind.WASH)
        assert wash.thinner_ml == pytest.approx(wash.mix_ml * 4 / 5)
        assert [paint.id for paint in wash.paints] == ["white-clean", "soft-black"]
        assert {"white-clean", "soft-black", "wax"} <= {p.id for p in table.amounts.purchases}
        shown = [table.panel.model.index(row, 0).data() for row in range(6)]
        assert {"wax", "Soft black"} <= set(shown)

    def test_what_is_set_by_hand_stays(
        self, table: PiecePage, window: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """No wash, set by hand, stays none; let go, it follows again, and undo brings it back."""
        lay(window, WASHED_AND_WAXED)
        settle()
        table.coats.coats[ProductKind.WASH].setValue(0)
        table._keeper.keep()
        settle()
        lay(window, Stack((replace(WASHED_AND_WAXED.layers[0], passes=3),)))
        settle()
        assert table.coats.coats[ProductKind.WASH].value() == 0
        assert table.coats.coats[ProductKind.CLEAR].value() == 0
        qtbot.mouseClick(table.coats.again, LEFT)
        assert table.coats.coats[ProductKind.WASH].value() == 3
        assert not table.coats.again.isVisible()
        table._keeper.keep()
        settle()
        window.session.history.undo()
        settle()
        assert table.coats.coats[ProductKind.WASH].value() == 0

    def test_other_coats_of_the_plan_are_told(
        self, table: PiecePage, window: Window, settle: Settle
    ) -> None:
        """Coats set on the plan stand beside those of the piece where they differ."""
        lay(window, WASHED_AND_WAXED)
        settle()
        assert not table.coats.plan.isVisible()
        plan = window.page("plan")
        assert isinstance(plan, PlanPage)
        for coats in (0, 3):
            plan.on.coats.setValue(coats)
            plan._keeper.keep()
            settle()
            assert table.coats.plan.text() == words.plan_coats(coats)
            assert table.coats.plan.isVisible()
        table.coats.coats[ProductKind.PAINT].setValue(3)
        assert not table.coats.plan.isVisible()

    def test_the_primer_is_one_answer(
        self, table: PiecePage, window: Window, settle: Settle
    ) -> None:
        """What is on the piece and its primer are the same on both pages, set on either."""
        plan = window.page("plan")
        assert isinstance(plan, PlanPage)
        assert table.coats.coats[ProductKind.PRIMER].value() == usual_primer(plan.order)[1] == 2
        table.coats.coats[ProductKind.PRIMER].setValue(1)
        table._keeper.keep()
        settle()
        assert usual_primer(plan.order) == (Primer.ADHESION, 1)
        plan._change(replace(plan.order, primer=Primer.ORDINARY, primer_coats=3))
        plan._keeper.keep()
        settle()
        assert table.coats.coats[ProductKind.PRIMER].value() == 3
        plan._change(replace(plan.order, surface=Surface.RAW, primer=None, primer_coats=0))
        plan._keeper.keep()
        settle()
        assert table.coats.ground.currentText() == "raw wood"
        assert table.coats.coats[ProductKind.PRIMER].value() == 1
        place = table.coats.ground.findText("varnished")
        table.coats.ground.setCurrentIndex(place)
        table.coats.ground.activated.emit(place)
        table._keeper.keep()
        settle()
        assert plan.order.surface is Surface.VARNISHED
