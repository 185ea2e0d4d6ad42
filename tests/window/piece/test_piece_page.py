"""The piece used as a painter does: choose, size, change its parts, read what to mix, keep."""

from __future__ import annotations

from decimal import Decimal
from math import hypot
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication, QDoubleSpinBox

from swatchwright.acts.batches import keep_recipes
from swatchwright.acts.parts import with_part
from swatchwright.acts.piece import sized
from swatchwright.acts.tins_typed import tins_written
from swatchwright.desktop.pages.piece_page import PiecePage
from swatchwright.desktop.widgets.amounts_buying import BuyingModel
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.widgets.piece_parts import PartsModel
from swatchwright.desktop.words import amounts as amount_words
from swatchwright.desktop.words import piece as words
from swatchwright.language.money import priced
from swatchwright.piece.common import Kind, common_piece
from swatchwright.piece.drawing import View
from swatchwright.piece.order import ProductKind
from swatchwright.piece.part import Face, Shape
from swatchwright.piece.spreading import Tool
from swatchwright.piece.tins import TinSize
from window.piece_hands import LEFT, row_named, told, typed

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.modeltest import ModelTester
    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window
    from swatchwright.piece.amounts import Batch

    Settle = Callable[[], None]


class TestChoosing:
    """From nothing to a piece drawn to scale."""

    def test_waiting_is_said(self, page: PiecePage) -> None:
        """Before a piece is chosen the page says what to do, and no amounts are in view."""
        assert words.WAIT in told(page)
        assert not page.card.isVisible()

    @pytest.mark.parametrize("kind", list(Kind))
    def test_each_piece_is_drawn_and_reckoned(
        self, page: PiecePage, kind: Kind, qtbot: QtBot, settle: Settle
    ) -> None:
        """One press sizes a piece: its area is that of the core, its zones are numbered."""
        qtbot.mouseClick(page.kinds.buttons[kind], LEFT)
        settle()
        found = sized(common_piece(kind))
        assert page.piece == found.piece
        assert page.bench.total.text() == words.total_line(found.areas.total)
        seen = [field.lines[0] for field in page.bench.zones.fields]
        assert seen == [f"{n}  {z.zone}" for n, z in enumerate(found.areas.zones, 1)]
        assert page.bench.drawing.numbered().keys() == {z.zone for z in found.areas.zones}
        assert page.amounts is not None
        assert page.card.take

    def test_keyboard_alone(self, page: PiecePage, qtbot: QtBot, settle: Settle) -> None:
        """A piece is chosen with the space bar, and its width typed."""
        page.kinds.buttons[Kind.CHAIR].setFocus()
        qtbot.keyClick(page.kinds.buttons[Kind.CHAIR], Qt.Key.Key_Space)
        width = page.sizes.fields["width"]
        width.setFocus()
        width.selectAll()
        qtbot.keyClicks(width, "500")
        settle()
        assert page.form is not None
        assert page.form.width == 500
        assert page.piece == common_piece(Kind.CHAIR, width=500)

    def test_only_fields_that_it_has(self, table: PiecePage, qtbot: QtBot) -> None:
        """A table has legs to choose and no inside, a box an inside and no legs or drawers."""
        assert table.sizes.leg.isVisible()
        assert not table.sizes.inside.isVisible()
        qtbot.mouseClick(table.kinds.buttons[Kind.BLANKET_BOX], LEFT)
        assert table.sizes.inside.isVisible()
        assert not table.sizes.leg.isVisible()
        assert not table.sizes.drawers.isVisible()
        assert words.RAIL_NAMES["height"] not in told(table)
        qtbot.mouseClick(table.kinds.buttons[Kind.PICTURE_RAIL], LEFT)
        assert words.RAIL_NAMES["height"] in told(table)

    def test_legs_drawers_and_inside(self, table: PiecePage, qtbot: QtBot, settle: Settle) -> None:
        """What is chosen besides the sizes builds the piece too."""
        table.sizes.drawers.setValue(2)
        table.sizes.leg.setCurrentIndex(2)
        table.sizes.leg.activated.emit(2)
        assert table.piece == common_piece(Kind.CONSOLE_TABLE, drawers=2, leg=Shape.TURNED_LEG)
        qtbot.mouseClick(table.kinds.buttons[Kind.BLANKET_BOX], LEFT)
        table.sizes.inside.click()
        settle()
        assert table.piece == common_piece(Kind.BLANKET_BOX, inside=True)
        assert "inside" in [field.lines[0].split()[-1] for field in table.bench.zones.fields]

    def test_the_sizes_are_written_on_the_front(self, table: PiecePage, qtbot: QtBot) -> None:
        """From the front the drawing is as wide and high as the piece, and says so."""
        qtbot.mouseClick(table.bench.views[View.FRONT], LEFT)
        assert table.bench.drawing._told == (words.millimetres(900), words.millimetres(780))
        name = table.bench.drawing.accessibleName()
        assert "900 mm wide" in name
        assert "top" in name


@pytest.mark.parametrize("kind", list(Kind))
@pytest.mark.parametrize("view", list(View))
def test_numbers_keep_clear_of_each_other(
    table: PiecePage, kind: Kind, view: View, settle: Settle
) -> None:
    """In every drawing the numbers of the zones stand apart, each on its own zone."""
    table.kinds.buttons[kind].click()
    table.bench.views[view].click()
    settle()
    spots = list(table.bench.drawing.numbered().values())
    assert spots
    for place, one in enumerate(spots):
        for other in spots[:place]:
            assert hypot(one.x() - other.x(), one.y() - other.y()) > 22


def test_an_unseen_zone_says_so(table: PiecePage, settle: Settle) -> None:
    """The inside of a box is a zone that the drawing does not show, and its field says so."""
    table.kinds.buttons[Kind.BLANKET_BOX].click()
    table.sizes.inside.click()
    settle()
    unseen = {f.lines[0].split()[-1] for f in table.bench.zones.fields if "unseen" in f.lines[1]}
    assert unseen == {"inside"}


class TestColours:
    """The zones in the colours that are chosen."""

    def test_bare_of_colour_is_grey(self, table: PiecePage) -> None:
        """Without a mix a zone is grey and says that it has none."""
        for field in table.bench.zones.fields:
            assert field.lines[2] == words.NO_MIX
            assert field.colour.saturation() == 0

    def test_the_mix_on_the_bench_fills_it(
        self, table: PiecePage, window: Window, settle: Settle
    ) -> None:
        """The first mix of the Colour page is painted into the drawing, pixel by pixel."""
        window.session.set_most_paints(2)
        window.session.type_colour("46, 34, 24")
        settle()
        assert window.session.recipes is not None
        colour = screen_colour(window.session.recipes.recipes[0].recipe.dry)
        assert {field.colour.name() for field in table.bench.zones.fields} == {colour.name()}
        drawing = table.bench.drawing
        seen = drawing.grab().toImage()
        spot = drawing.numbered()["top"].toPoint()
        shown = {seen.pixelColor(spot.x() - 7, spot.y() + dy).name() for dy in (-3, 0, 3)}
        assert colour.name() in shown

    def test_zones_have_their_own_recipes(
        self, table: PiecePage, window: Window, settle: Settle
    ) -> None:
        """A recipe kept for one zone fills that one alone, and the amounts follow."""
        table._keeper.keep()
        settle()
        window.session.set_most_paints(2)
        window.session.type_colour("30, 0, -20")
        settle()
        found = window.session.recipes
        assert found is not None
        window.desk.edit_job(lambda store, id_: keep_recipes(store, id_, found, zone="top"))
        settle()
        lines = {f.lines[0].split()[-1]: f.lines[2] for f in table.bench.zones.fields}
        assert lines["top"] != words.NO_MIX
        assert lines["body"] == words.NO_MIX
        assert table.amounts is not None
        assert len([b for b in table.amounts.batches if b.kind is ProductKind.PAINT]) == 2


def paint_batches(page: PiecePage) -> list[Batch]:
    """Give the batches of paint that are reckoned."""
    assert page.amounts is not None
    return [batch for batch in page.amounts.batches if batch.kind is ProductKind.PAINT]


class TestAmounts:
    """How much to mix, to buy, and to ask."""

    def test_the_big_number_goes_to_the_mix(
        self, table: PiecePage, window: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """The amount is what the core says, is shown large, and is mixed on a press."""
        window.session.set_most_paints(2)
        window.session.type_colour("46, 34, 24")
        settle()
        assert table.amounts is not None
        (batch,) = paint_batches(table)
        qtbot.waitUntil(lambda: amount_words.big_amount(batch.mix_ml) in told(table))
        assert amount_words.why_line(batch) in told(table)
        qtbot.mouseClick(table.card.take[0], LEFT)
        assert window.session.volume == batch.mix_ml
        assert window.session.recipes is not None
        poured = [a.ml for a in window.session.recipes.recipes[0].amounts]
        assert sum(poured) == pytest.approx(batch.mix_ml)

    def test_two_zones_by_hand(self, table: PiecePage) -> None:
        """The need is area times coats over the rate and over what a brush lays: by hand."""
        assert table.amounts is not None
        areas = sized(common_piece(Kind.CONSOLE_TABLE)).areas
        for zone, batch in zip(areas.zones, paint_batches(table), strict=True):
            assert batch.need_ml == pytest.approx(zone.area * 2 / 12 * 1000 / 0.95)

    def test_coats_tool_and_surface(self, table: PiecePage, settle: Settle) -> None:
        """Three coats with a spray on bare wood, with a primer below, take more of all."""
        assert table.amounts is not None
        before = {b.product: b.need_ml for b in table.amounts.batches}
        table.coats.coats[ProductKind.PAINT].setValue(3)
        table.coats.coats[ProductKind.PRIMER].setValue(1)
        table.coats.rates[ProductKind.PAINT].setValue(10)
        for box, value in (
            (table.coats.tool, Tool.SPRAY),
            (table.coats.ground, "raw wood, bare wood"),
        ):
            place = box.findData(value)
            box.setCurrentIndex(place)
            box.activated.emit(place)
        settle()
        after = {b.product: b.need_ml for b in table.amounts.batches}
        assert "primer" in after
        # Three coats for two, at 10 for 12 m2 a litre, with 35 % lost for 5 %.
        for zone in ("top", "body"):
            assert after[zone] == pytest.approx(before[zone] * 3 / 2 * 12 / 10 * 0.95 / 0.65)
        assert amount_words.COAT_NAMES[ProductKind.PRIMER] in told(table)

    def test_nothing_to_put_on_is_said_in_place(self, table: PiecePage, settle: Settle) -> None:
        """With no coat at all the card says what to do, and the message strip stays away."""
        table.coats.coats[ProductKind.PAINT].setValue(0)
        table.coats.coats[ProductKind.PRIMER].setValue(0)
        settle()
        assert table.card.trouble.isVisible()
        table.coats.coats[ProductKind.PAINT].setValue(1)
        settle()
        assert not table.card.trouble.isVisible()

    def test_tins_left_and_price(self, table: PiecePage, settle: Settle, qtbot: QtBot) -> None:
        """Tins and what is left, typed into the table, make the cost, and that the price."""
        table.coats.coats[ProductKind.PRIMER].setValue(0)
        settle()
        grid = table.panel.table
        for row in range(2):
            typed(grid, row, 3, "500: 19.50", qtbot)
            settle()
        typed(grid, 0, 2, "100", qtbot)
        settle()
        assert table.form is not None
        assert set(table.form.left.values()) == {100.0}
        assert grid.model().index(0, 4).data() == "1 × 500 ml"
        table.panel.price.hours.setValue(10)
        table.panel.price.rate.setValue(30)
        table.panel.price.margin.setValue(20)
        qtbot.keyClicks(table.panel.price.currency, "crowns")
        qtbot.keyClick(table.panel.price.currency, Qt.Key.Key_Return)
        settle()
        assert table.amounts is not None
        assert table.amounts.price is not None
        # (10 h at 30, two tins at 19.50) and a fifth on top.
        assert table.amounts.price.total == (Decimal(300) + Decimal(39)) * Decimal("1.2")
        assert priced(Decimal("406.80"), "crowns") in told(table)

    def test_tins_that_cannot_be_read_are_told_in_place(
        self, table: PiecePage, qtbot: QtBot, window: Window
    ) -> None:
        """What is no tin is refused beside the table and changes nothing."""
        typed(table.panel.table, 0, 3, "large", qtbot)
        assert table.panel.trouble.isVisible()
        assert "large" in table.panel.trouble.text()
        assert table.form is not None
        assert not table.form.tins
        assert not window.trouble.isVisible()

    def test_one_amount_is_told_in_one_way(self, table: PiecePage, settle: Settle) -> None:
        """What is needed of a paint is what is poured of it, whatever the rest rounds to."""
        settle()
        assert table.amounts is not None
        names = amount_words.names_of(table.amounts)
        needed: dict[str, int] = {}
        for batch in table.amounts.batches:
            for amount, name in amount_words.pours(batch, names)[: len(batch.paints)]:
                needed[name] = needed.get(name, 0) + int(amount.removesuffix(" ml"))
        model = table.panel.model
        rows = range(model.rowCount())
        shown = {model.index(i, 0).data(): model.index(i, 1).data() for i in rows}
        assert shown == {name: f"{ml} ml" for name, ml in needed.items()}

    def test_what_could_not_be_read_stands_in_its_cell(
        self, table: PiecePage, settle: Settle, qtbot: QtBot
    ) -> None:
        """It is there to be mended; meanwhile the tins are as before, and so they are emptied."""
        grid, model = table.panel.table, table.panel.model
        typed(grid, 0, 3, "500: 19.50", qtbot)
        settle()
        assert table.form is not None
        before = dict(table.form.tins)
        typed(grid, 0, 3, "400: 15.00, 50 for", qtbot)
        typed(grid, 0, 3, "9", qtbot)
        settle()
        assert model.index(0, 3).data() == "9"
        assert table.panel.trouble.isVisible()
        assert table.form.tins == before
        typed(grid, 1, 2, "20", qtbot)
        settle()
        assert model.index(0, 3).data() == "9"
        assert table.panel.trouble.isVisible()
        typed(grid, 0, 3, " ", qtbot)
        settle()
        assert model.index(0, 3).data(Qt.ItemDataRole.EditRole) == tins_written(*before.values())
        assert not table.panel.trouble.isVisible()
        assert table.form.tins == before

    def test_what_could_not_be_read_is_mended(
        self, table: PiecePage, settle: Settle, qtbot: QtBot
    ) -> None:
        """Tins that are told with their unit are taken, and the message goes."""
        typed(table.panel.table, 0, 3, "9", qtbot)
        assert table.panel.trouble.isVisible()
        typed(table.panel.table, 0, 3, "9 l 60", qtbot)
        settle()
        assert not table.panel.trouble.isVisible()
        assert table.form is not None
        assert list(table.form.tins.values()) == [(TinSize(9000, Decimal(60)),)]

    def test_what_could_not_be_read_is_of_its_job(
        self, table: PiecePage, settle: Settle, qtbot: QtBot, window: Window
    ) -> None:
        """Another job on the bench shows its own tins."""
        typed(table.panel.table, 0, 3, "9", qtbot)
        qtbot.waitUntil(lambda: window.desk.job is not None)
        settle()
        window.desk.put_away()
        settle()
        qtbot.mouseClick(table.kinds.buttons[Kind.CONSOLE_TABLE], LEFT)
        settle()
        assert table.panel.model.index(0, 3).data() != "9"
        assert not table.panel.trouble.isVisible()


class TestParts:
    """The list of parts."""

    def test_models_keep_the_rules(
        self, table: PiecePage, qtmodeltester: ModelTester, settle: Settle
    ) -> None:
        """The models of parts and of paints to buy keep every rule Qt has for models."""
        qtmodeltester.check(table.parts.model)
        qtmodeltester.check(table.panel.model)
        qtmodeltester.check(PartsModel())
        qtmodeltester.check(BuyingModel())
        settle()

    def test_a_size_is_typed(self, table: PiecePage, settle: Settle, qtbot: QtBot) -> None:
        """A longer top has a larger area, in its row, its zone and all told."""
        row = row_named(table, "top")
        typed(table.parts.table, row, 3, "1800", qtbot)
        settle()
        assert table.piece is not None
        assert table.piece.parts[row].length == 1800
        # A board of 1800 by 350 by 22: its face and its four edges.
        area = (1800 * 350 + 2 * 22 * (1800 + 350)) * 1e-6
        assert table.parts.model.index(row, 8).data() == f"{area:.3f}"
        assert words.BY_HAND in told(table)

    def test_count_and_zone(self, table: PiecePage, settle: Settle, qtbot: QtBot) -> None:
        """Legs of their own zone get their own number, colour field and batch."""
        row = row_named(table, "legs")
        typed(table.parts.table, row, 6, "legs", qtbot)
        typed(table.parts.table, row, 2, "6", qtbot)
        settle()
        assert table.piece is not None
        assert table.piece.parts[row].count == 6
        assert [f.lines[0].split()[-1] for f in table.bench.zones.fields][1] == "legs"
        assert table.amounts is not None
        assert len(paint_batches(table)) == 3

    def test_add_and_remove(self, table: PiecePage, settle: Settle, qtbot: QtBot) -> None:
        """A part of any shape is added and picked, and goes again with the Delete key."""
        before = table.piece
        assert before is not None
        table.parts.shape.setCurrentText(Shape.SPHERE.value)
        qtbot.mouseClick(table.parts.add, LEFT)
        settle()
        assert table.piece == with_part(before, Shape.SPHERE)
        assert table.parts.table.currentIndex().row() == len(before.parts)
        table.parts.table.setFocus()
        qtbot.keyClick(table.parts.table, Qt.Key.Key_Delete)
        settle()
        assert table.piece == before

    def test_faces_are_ticked(self, table: PiecePage, settle: Settle) -> None:
        """A ticked face is painted, and told in the row."""
        row = row_named(table, "top")
        table.parts.table.selectRow(row)
        table.parts.faces[Face.INSIDE].click()
        settle()
        assert table.piece is not None
        assert Face.INSIDE in table.piece.parts[row].painted
        assert table.parts.model.index(row, 7).data() == "all over"

    def test_what_cannot_be_is_told_in_place(
        self, table: PiecePage, qtbot: QtBot, window: Window
    ) -> None:
        """A part without a name is refused beside the table."""
        typed(table.parts.table, 0, 0, " ", qtbot)
        assert table.parts.trouble.isVisible()
        assert not window.trouble.isVisible()
        assert table.piece == common_piece(Kind.CONSOLE_TABLE)


def test_the_wheel_scrolls_and_changes_nothing(table: PiecePage) -> None:
    """A field that is not being used leaves the wheel to the page."""
    field = table.sizes.fields["width"]
    table.kinds.buttons[Kind.CHAIR].setFocus()
    assert not turned(field)
    assert field.value() == 900
    field.setFocus()
    assert turned(field)
    assert field.value() > 900


def turned(field: QDoubleSpinBox) -> bool:
    """Turn the wheel by a notch over a field; tell whether the field took it."""
    middle = QPointF(field.rect().center())
    wheel = QWheelEvent(
        middle,
        QPointF(field.mapToGlobal(middle)),
        QPoint(),
        QPoint(0, 120),
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    wheel.ignore()
    QApplication.sendEvent(field, wheel)
    return bool(wheel.isAccepted())
