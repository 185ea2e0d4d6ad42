"""At 1280 x 720 each page of a job stands in columns, and in each of them all is seen.

This holds in every language; `test_in_german` runs it in German.
"""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

import pytest
from PySide6.QtWidgets import QTableView, QWidget

from swatchwright.desktop.pages.piece_page import PiecePage
from swatchwright.desktop.widgets.columns import Columns

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

SIZES = {"1280x720": (1280, 720), "1366x768": (1366, 768)}


def not_abreast(page: QWidget) -> list[str]:
    """Tell of columns in view whose parts stand below each other, and what each part needs."""
    shown = [one for one in page.findChildren(Columns) if one.isVisible()]
    assert shown
    return [
        f"{one.width()} for {[part.needs() for part in one._shown()]}"
        for one in shown
        if not one.abreast
    ]


def in_columns(page: QWidget) -> bool:
    """Tell whether all columns in view stand side by side."""
    return not not_abreast(page)


@pytest.mark.parametrize("size", SIZES)
def test_pages_stand_in_columns(with_job: Window, settle: Settle, qtbot: QtBot, size: str) -> None:
    """The pages that have columns have them on a small screen."""
    with_job.resize(*SIZES[size])
    for key in ("brief", "shelf", "sample", "finish", "piece", "plan", "sheet"):
        with_job.show_page(key)
        settle()
        page = with_job.page(key)
        qtbot.waitUntil(partial(in_columns, page))


def test_the_piece_with_all_that_is_said_of_it(
    with_job: Window, settle: Settle, qtbot: QtBot
) -> None:
    """With a part outlined, three tins of each paint and a price, nothing goes below or is cut."""
    with_job.show_page("piece")
    settle()
    page = with_job.page("piece")
    assert isinstance(page, PiecePage)
    price, model = page.panel.price, page.panel.model
    price.currency.named.emit("crowns")
    for row in range(model.rowCount()):
        tins = "125: 7.50; 400: 14.00; 1000: 32.00"
        model.setData(model.index(row, 3), tins)
        settle()
    price.rate.setValue(45)
    for row in range(page.parts.model.rowCount()):
        page.parts.pick(row)
        settle()
        qtbot.waitUntil(partial(in_columns, page))
    tables = [page.panel.table, page.parts.table]
    assert all(isinstance(table, QTableView) for table in tables)
    qtbot.waitUntil(lambda: all(one.horizontalScrollBar().maximum() == 0 for one in tables))
    buy = page.panel.table
    high = buy.horizontalHeader().height() + buy.verticalHeader().length()
    assert buy.height() >= high
