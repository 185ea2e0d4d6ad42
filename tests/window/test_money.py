"""What she calls her money: named once, on either page, and told beside every price at once."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import TYPE_CHECKING, cast

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QGuiApplication, QKeyEvent
from PySide6.QtWidgets import QApplication, QLabel

from swatchwright.acts.habits import MOST_MONEY, habits, keep_money
from swatchwright.desktop import words as common
from swatchwright.desktop.pages.piece_page import PiecePage
from swatchwright.desktop.pages.shelf_page import ShelfPage
from swatchwright.desktop.window import Window
from swatchwright.desktop.words import amounts, shelf
from swatchwright.language.money import beside_figure, priced, use_money
from swatchwright.piece.common import Kind
from swatchwright.piece.order import Terms

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.widgets.money_field import MoneyField

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton
HEAD, SHOWN = Qt.Orientation.Horizontal, Qt.ItemDataRole.DisplayRole
_LITRE, _TINS, _COST = 7, 3, 5


@pytest.fixture(autouse=True)
def nothing_named() -> Iterator[None]:
    """Leave the money without a name."""
    yield
    use_money("")


@pytest.fixture
def shelf_page(window: Window, settle: Settle) -> ShelfPage:
    """Give the page of the shelf, in view."""
    window.show_page("shelf")
    settle()
    return cast(ShelfPage, window.page("shelf"))


def piece_page(window: Window, settle: Settle, qtbot: QtBot) -> PiecePage:
    """Give the page of the piece, in view, with a console table."""
    window.show_page("piece")
    settle()
    page = cast(PiecePage, window.page("piece"))
    qtbot.mouseClick(page.kinds.buttons[Kind.CONSOLE_TABLE], LEFT)
    settle()
    return page


def name(field: MoneyField, text: str, qtbot: QtBot) -> None:
    """Name the money as a hand does: click, all of it, the word, Return."""
    qtbot.mouseClick(field, LEFT)
    qtbot.keyClick(field, Qt.Key.Key_A, Qt.KeyboardModifier.ControlModifier)
    qtbot.keyClick(field, Qt.Key.Key_Delete)
    for letter in text:
        # Qt's own typing for tests ends the process at a letter beyond Latin-1, as € is.
        press = QKeyEvent(QEvent.Type.KeyPress, 0, Qt.KeyboardModifier.NoModifier, letter)
        QApplication.sendEvent(field, press)
    qtbot.keyClick(field, Qt.Key.Key_Return)


def texts(window: Window) -> str:
    """Give all the text of the labels in view."""
    return "\n".join(label.text() for label in window.findChildren(QLabel) if label.isVisible())


def card_costs(window: Window) -> list[str]:
    """Give the line of every mix that tells what it costs."""
    recipes = window.session.recipes
    assert recipes is not None
    lines = [common.cost_line(recipe) for recipe in recipes.recipes]
    labels = [label.text() for label in window.mix_side.findChildren(QLabel)]
    assert all(line in labels for line in lines)
    return lines


class TestOnTheShelf:
    """Named beside the prices of the shelf."""

    def test_every_price_follows_at_once(
        self, with_cushion: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """Table, wish and mixes tell it, the same columns as before, and it is kept."""
        window = with_cushion
        columns, bare = window.mix_side.columns(), card_costs(window)
        window.show_page("shelf")
        settle()
        page = cast(ShelfPage, window.page("shelf"))
        cell = page.table.paints.index(0, _LITRE)
        line, before = page.table.paints.line(0), cell.data()
        assert line.price is not None
        with qtbot.waitSignal(page.table.paints.dataChanged):
            name(page.money, "kr", qtbot)
        assert cell.data() == priced(line.price, "kr") != before
        assert habits().money == "kr"
        page.strip.price.setValue(28)
        settle()
        assert priced(28, "kr") in page.strip.told.text()
        assert page.strip.price.text().endswith("kr")
        page.strip.price.setValue(0)
        settle()
        named = card_costs(window)
        assert [line.removesuffix("\N{NO-BREAK SPACE}kr") for line in named] == bare
        name(page.money, "€", qtbot)
        assert len(columns) == len(window.mix_side.columns())
        recipes = window.session.recipes
        assert recipes is not None
        price = recipes.recipes[0].price
        assert price is not None
        assert priced(price, "€") in card_costs(window)[0]

    def test_no_mix_is_laid_anew_for_it(
        self, with_cushion: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """The columns of the mixes stay, tell it while in view, and copy it."""
        window, before = with_cushion, with_cushion.mix_side.columns()
        window.show_page("shelf")
        settle()
        name(cast(ShelfPage, window.page("shelf")).money, "CHF", qtbot)
        window.show_page("colour")
        settle()
        assert window.mix_side.columns() == before
        assert "CHF" in texts(window)
        qtbot.mouseClick(before[0].copy, LEFT)
        assert card_costs(window)[0] in QGuiApplication.clipboard().text()

    def test_what_is_no_name_cannot_be_typed(self, shelf_page: ShelfPage, qtbot: QtBot) -> None:
        """Figures, markup and more than has room do not get in; a mark alone is dropped."""
        name(shelf_page.money, "k5r<6", qtbot)
        assert habits().money == shelf_page.money.text() == "kr"
        name(shelf_page.money, "crownsandmore", qtbot)
        assert habits().money == "crownsandmore"[:MOST_MONEY]
        name(shelf_page.money, ".", qtbot)
        shelf_page.table.setFocus()
        assert shelf_page.money.text() == habits().money == "crownsandmore"[:MOST_MONEY]

    def test_it_can_be_taken_back(self, shelf_page: ShelfPage, qtbot: QtBot) -> None:
        """An empty field is no name, and figures stand alone again."""
        cell = shelf_page.table.paints.index(0, _LITRE)
        before = cell.data()
        name(shelf_page.money, "£", qtbot)
        assert cell.data() == shelf.price_cell(shelf_page.table.paints.line(0).price) != before
        name(shelf_page.money, "", qtbot)
        assert cell.data() == before
        assert habits().money == ""

    def test_by_leaving_the_field(self, shelf_page: ShelfPage, qtbot: QtBot) -> None:
        """The tab key ends it as Return does, and nothing is told for every letter."""
        qtbot.mouseClick(shelf_page.money, LEFT)
        qtbot.keyClicks(shelf_page.money, "kr")
        assert habits().money == ""
        qtbot.keyClick(shelf_page.money, Qt.Key.Key_Tab)
        assert habits().money == "kr"


class TestOnThePiece:
    """Named where a price is made for the client."""

    def test_it_is_the_same_name(self, with_cushion: Window, settle: Settle, qtbot: QtBot) -> None:
        """What is named there is told by the mixes, and by all that is to be bought."""
        window = with_cushion
        page = piece_page(window, settle, qtbot)
        panel, model = page.panel, page.panel.model
        name(panel.price.currency, "CHF", qtbot)
        settle()
        assert habits().money == "CHF"
        assert all(line.endswith(priced(1, "CHF")[4:]) for line in card_costs(window))
        assert page.amounts is not None
        for row, purchase in enumerate(page.amounts.purchases):
            cell = model.index(row, _COST).data()
            wanted = amounts.NOT_KNOWN if purchase.cost is None else priced(purchase.cost, "CHF")
            assert cell == wanted
        assert model.headerData(_TINS, HEAD, SHOWN) == amounts.buy_head(_TINS, "CHF")
        assert panel.price.rate.suffix().endswith("CHF")
        assert amounts.materials_line(page.amounts, "CHF") in texts(window)

    def test_it_shows_what_was_named_on_the_shelf(
        self, window: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """The field there holds it, and follows it while no price was reckoned with another."""
        page = piece_page(window, settle, qtbot)
        window.show_page("shelf")
        settle()
        money = cast(ShelfPage, window.page("shelf")).money
        name(money, "kr", qtbot)
        assert page.panel.price.currency.text() == "kr"
        name(money, "£", qtbot)
        assert page.panel.price.currency.text() == "£"
        rate = page.panel.price.rate
        assert (rate.prefix(), rate.suffix()) == beside_figure("£")

    def test_a_job_keeps_the_word_of_its_price(
        self, window: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """A job that names its money tells its own prices in that, whatever she calls hers."""
        keep_money("kr")
        page = piece_page(window, settle, qtbot)
        assert page.form is not None
        theirs = replace(page.form, terms=Terms(Decimal(4), Decimal(50), currency="CHF"))
        page.panel.changed.emit(theirs)
        settle()
        window.show_page("shelf")
        settle()
        money = cast(ShelfPage, window.page("shelf")).money
        name(money, "£", qtbot)
        assert page.panel.price.currency.text() == "CHF"
        window.show_page("piece")
        settle()
        assert page.amounts is not None
        assert amounts.materials_line(page.amounts, "CHF") in texts(window)
        name(page.panel.price.currency, "Fr.", qtbot)
        settle()
        assert habits().money == "£"
        assert page.form.terms.currency == "Fr."
        assert amounts.materials_line(page.amounts, "Fr.") in texts(window)

    def test_a_price_takes_the_word_with_it(
        self, window: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """Hours are kept with what the money is called, so that another's house tells it too."""
        page = piece_page(window, settle, qtbot)
        name(page.panel.price.currency, "kr", qtbot)
        qtbot.mouseClick(page.panel.price.hours, LEFT)
        page.panel.price.hours.setValue(3)
        settle()
        assert page.form is not None
        assert page.form.terms.currency == "kr"
        name(page.panel.price.currency, "CHF", qtbot)
        settle()
        assert (habits().money, page.form.terms.currency) == ("CHF", "CHF")


def test_the_next_start_knows_it(
    qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What was named last is there when the window is opened again, before any price is shown."""
    monkeypatch.setenv("SWATCHWRIGHT_HOME", str(tmp_path))
    keep_money("kr")
    again = Window()
    qtbot.addWidget(again)
    assert priced(2) == priced(2, "kr")
    page = cast(ShelfPage, again.page("shelf"))
    assert page.money.text() == "kr"
    again.session.close()
    again.desk.close()
