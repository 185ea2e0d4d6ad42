"""A table whose columns fit their words, and what is scrolled as high as its text."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QModelIndex, Qt
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from swatchwright.desktop.widgets.areas import ScrollArea
from swatchwright.desktop.widgets.fitted_table import CellModel, FittedTable

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.widgets.fitted_table import Index

ROWS = (("White", "1 l", "none"), ("Deep blue, slightly red", "0.25 l", "half a tin"))
SHOWN = Qt.ItemDataRole.DisplayRole


class Paints(CellModel):
    """Two rows of three columns, that counts what it is asked."""

    def __init__(self) -> None:
        super().__init__(self._of)
        self.rows = [list(row) for row in ROWS]
        self.asked: Counter[tuple[int, int, int]] = Counter()

    def rowCount(self, parent: Index | None = None) -> int:  # noqa: N802 - Qt names it
        """Give two."""
        return 0 if parent is not None and parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index | None = None) -> int:  # noqa: N802 - Qt names it
        """Give three."""
        return 0 if parent is not None and parent.isValid() else 3

    def _of(self, index: Index, role: int) -> str | None:
        self.asked[index.row(), index.column(), role] += 1
        return self.rows[index.row()][index.column()] if role == SHOWN else None

    def put(self, text: str) -> None:
        """Write something else into the second cell of the first row."""
        self.rows[0][1] = text
        self.dataChanged.emit(self.index(0, 1), self.index(0, 1))


@pytest.fixture
def table(qtbot: QtBot) -> FittedTable:
    """Give a table of them whose first column has the room that is left."""
    made = FittedTable(0)
    qtbot.addWidget(made)
    made.setModel(Paints())
    made.resize(600, 200)
    made.show()
    qtbot.waitExposed(made)
    return made


def words_fit(table: FittedTable) -> bool:
    """Tell whether the words of each cell fit its column."""
    model, letters = table.model(), table.fontMetrics()
    return all(
        letters.horizontalAdvance(str(model.index(row, n).data())) < table.columnWidth(n)
        for row in range(2)
        for n in range(3)
    )


def fills(table: FittedTable) -> bool:
    """Tell whether the columns have all the room there is, and no more."""
    wide = sum(table.columnWidth(n) for n in range(3))
    return 0 <= table.viewport().width() - wide <= 1


def test_words_fit_and_one_column_has_the_rest(table: FittedTable) -> None:
    """Each is as wide as its words, and the first takes what is left."""
    assert words_fit(table)
    assert fills(table)
    assert table.columnWidth(0) > table.sizeHintForColumn(0)


def test_longer_words(table: FittedTable, qtbot: QtBot) -> None:
    """Where the words of a cell become longer its column does, at the cost of the first."""
    before, model = table.columnWidth(1), table.model()
    assert isinstance(model, Paints)
    model.put("0.25 l in a jar, and what is left of a tin")
    qtbot.waitUntil(lambda: table.columnWidth(1) > before)
    assert words_fit(table)
    assert fills(table)


def test_larger_letters(table: FittedTable, qtbot: QtBot) -> None:
    """In larger letters all are measured anew."""
    before = table.columnWidth(1)
    table.setStyleSheet("QWidget { font-size: 28px; }")
    qtbot.waitUntil(lambda: table.columnWidth(1) > 1.2 * before)
    assert words_fit(table)


def test_no_narrower_than_its_words(table: FittedTable, qtbot: QtBot) -> None:
    """Without room there is a bar below, unless words may take more lines."""
    told: list[None] = []
    table.fitted.connect(lambda: told.append(None))
    table.resize(180, 200)
    bar = table.horizontalScrollBar()
    qtbot.waitUntil(lambda: bar.maximum() > 0)
    assert words_fit(table)
    assert told
    table.let_wrap(wraps=True)
    qtbot.waitUntil(lambda: table.columnWidth(0) < table.sizeHintForColumn(0))


def test_what_changed_out_of_view(table: FittedTable, qtbot: QtBot) -> None:
    """It is measured once it is seen again."""
    before, model = table.columnWidth(1), table.model()
    assert isinstance(model, Paints)
    table.hide()
    model.put("0.25 l in a jar, and what is left of a tin")
    table.show()
    qtbot.waitUntil(lambda: table.columnWidth(1) > before)


def test_a_cell_is_worded_once(table: FittedTable, qtbot: QtBot) -> None:
    """However often it is asked for; until it changes."""
    model = table.model()
    assert isinstance(model, Paints)
    table.setStyleSheet("QWidget { font-size: 20px; }")
    qtbot.wait(50)
    assert model.asked[1, 0, SHOWN] == 1
    model.put("2 l")
    assert model.index(0, 1).data() == "2 l"
    model.beginResetModel()
    model.rows[1][0] = "Black"
    model.endResetModel()
    assert model.index(1, 0).data() == "Black"
    assert model.data(QModelIndex()) is None


def test_as_high_as_its_text(qtbot: QtBot) -> None:
    """What is scrolled with the page grows with a text that has no layout about it."""
    around, text, area = QWidget(), QLabel("Short."), ScrollArea()
    qtbot.addWidget(around)
    text.setWordWrap(True)
    area.setWidget(text)
    area.setWidgetResizable(True)
    area.set_whole(whole=True)
    column = QVBoxLayout(around)
    column.addWidget(area)
    column.addStretch(1)
    around.resize(300, 600)
    around.show()
    qtbot.waitExposed(around)
    low = area.height()
    text.setText("Much more is to be said of a wash that lies below a wax. " * 8)
    qtbot.waitUntil(lambda: area.height() > low + 40)
    assert area.verticalScrollBar().maximum() == 0
