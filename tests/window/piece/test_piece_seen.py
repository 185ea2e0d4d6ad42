"""The drawing of the piece: with its finish or bare, in a light, and mixes that are on no part."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from swatchwright.acts.batches import keep_recipes
from swatchwright.acts.finish import preview
from swatchwright.colour.spectrum import Light
from swatchwright.desktop.pages.piece_page import PiecePage
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.words import piece as words
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.piece.common import Kind
from window.piece_hands import LEFT, row_named, told, typed

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]


class TestWithItsFinish:
    """The piece is drawn as it will look, and it is said how that is."""

    WAX = Stack((Layer(LayerKind.WASH, (("white-clean", 1.0),), passes=4), Layer(LayerKind.WAX)))

    def mixed(self, window: Window, settle: Settle) -> None:
        """Have mixes on the bench."""
        window.session.set_most_paints(2)
        window.session.type_colour("46, 34, 24")
        settle()

    def test_it_is_drawn_with_what_lies_over_it(
        self, table: PiecePage, window: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """Drawing and zones have the colour of the page Finish; a press shows the bare mixes."""
        self.mixed(window, settle)
        assert words.NOTHING_OVER in told(table)
        assert not table.bench.seen.finished.isVisible()
        found = window.session.recipes
        assert found is not None
        recipe = found.recipes[0].recipe
        parts = [(p.id, share) for p, share in zip(recipe.paints, recipe.shares, strict=True)]
        window.desk.keep_part("finish", self.WAX)
        settle()
        steps = preview(window.session.shelf, parts, self.WAX).steps
        bench = table.bench
        dry = screen_colour(steps[-1].under(Light.D65)).name()
        assert {field.colour.name() for field in bench.zones.fields} == {dry}
        assert set(bench.colours().values()) == {dry}
        assert bench.seen.finished.text() == "With wash and wax"
        assert "wash and wax on" in bench.drawing.accessibleName()
        qtbot.mouseClick(bench.seen.bare, LEFT)
        bare = screen_colour(steps[0].under(Light.D65)).name()
        assert {field.colour.name() for field in bench.zones.fields} == {bare}
        assert "Bare mixes" in bench.drawing.accessibleName()

    def test_in_another_light(self, table: PiecePage, window: Window, settle: Settle) -> None:
        """Under a warm lamp it has the colour that the page Finish shows under that lamp."""
        self.mixed(window, settle)
        window.desk.keep_part("finish", self.WAX)
        settle()
        lights = table.bench.seen.lights
        place = lights.findData(Light.LAMP)
        lights.setCurrentIndex(place)
        lights.activated.emit(place)
        found = window.session.recipes
        assert found is not None
        recipe = found.recipes[0].recipe
        parts = [(p.id, share) for p, share in zip(recipe.paints, recipe.shares, strict=True)]
        lamp = preview(window.session.shelf, parts, self.WAX).steps[-1].under(Light.LAMP)
        assert {f.colour.name() for f in table.bench.zones.fields} == {screen_colour(lamp).name()}

    def test_a_wash_that_cannot_be(self, table: PiecePage, window: Window, settle: Settle) -> None:
        """Where a paint of the wash is gone the mixes are shown bare, and it is said why."""
        self.mixed(window, settle)
        gone = Stack((Layer(LayerKind.WASH, (("no-such-paint", 1.0),)),))
        window.desk.keep_part("finish", gone)
        settle()
        assert "Shown bare" in table.bench.seen.trouble.text()
        assert table.bench.seen.trouble.isVisible()


class TestAZoneThatIsGone:
    """A mix for a zone that the piece does not have is told of, and taken off on a press."""

    def kept_for(self, *zones: str, window: Window, settle: Settle) -> None:
        """Have mixes kept for zones."""
        window.session.set_most_paints(2)
        window.session.type_colour("46, 34, 24")
        settle()
        found = window.session.recipes
        assert found is not None
        for zone in zones:
            window.desk.edit_job(partial(keep_recipes, found=found, zone=zone))
        settle()

    def test_told_and_taken_off(
        self, table: PiecePage, window: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """It is said above the drawing and beside the parts; taking it off can be undone."""
        self.kept_for("body", "drawers", window=window, settle=settle)
        assert told(table).count(words.no_such_zone("drawers")) == 2
        assert list(table.bench.gone.buttons) == list(table.parts.gone.buttons) == ["drawers"]
        qtbot.mouseClick(table.bench.gone.buttons["drawers"], LEFT)
        settle()
        job = window.desk.job
        assert job is not None
        assert job.chosen("drawers") is None
        assert not table.bench.gone.isVisible()
        window.session.history.undo()
        settle()
        assert table.bench.gone.isVisible()
        # A piece that has drawers takes it up.
        qtbot.mouseClick(table.kinds.buttons[Kind.CHEST_OF_DRAWERS], LEFT)
        settle()
        assert not table.bench.gone.isVisible()

    def test_another_zone_typed(
        self, table: PiecePage, window: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """As soon as the last part of a zone is given another, its mix is told of."""
        self.kept_for("top", window=window, settle=settle)
        assert not table.parts.gone.isVisible()
        typed(table.parts.table, row_named(table, "top"), 6, "body", qtbot)
        settle()
        assert list(table.parts.gone.buttons) == ["top"]


def test_long_words_of_a_colour_are_whole(
    page: PiecePage, window: Window, settle: Settle, qtbot: QtBot
) -> None:
    """With four zones beside each other, a colour in three words takes two lines, and is whole."""
    window.session.set_most_paints(2)
    window.session.type_colour("12, 8, -20")
    settle()
    qtbot.mouseClick(page.kinds.buttons[Kind.DRESSER], LEFT)
    settle()
    fields = page.bench.zones.fields
    assert len(fields) >= 4
    for field in fields:
        wide = field.fontMetrics().horizontalAdvance(field.lines[-1])
        assert wide <= field.width() - 16 or field.rows == 4
        assert field.height() >= field.rows * field.fontMetrics().lineSpacing()
