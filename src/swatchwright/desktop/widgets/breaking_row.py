"""A row of controls that goes on below where it would be wider than there is room."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QEvent, QRect, QSize, Qt
from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import QLabel, QSizePolicy, QWidget, QWidgetItem

from swatchwright.desktop.widgets.even_rows import EvenRows

__all__ = ["BreakingRow"]

_MOST_LINES = 3
"""Lines of a text beside controls, above which it takes a row of its own."""


@dataclass(frozen=True, slots=True)
class _Cell:
    """What is never parted: widgets side by side, with a space before them.

    `text` may take several lines; `pushed` stands at the right end of its row.
    """

    items: tuple[QWidgetItem, ...]
    gap: int = 0
    text: QLabel | None = None
    stretches: bool = False
    pushed: bool = False

    def shown(self) -> list[QWidgetItem]:
        """Give what takes room now."""
        return [item for item in self.items if not item.isEmpty()]


class _Asked:
    """What items ask for, asked once while one reckoning lasts: a row in a row asks its own again.

    Nothing changes meanwhile, for no widget is moved.
    """

    def __init__(self) -> None:
        self._deep = 0
        self._least: dict[int, QSize] = {}
        self._hint: dict[int, QSize] = {}

    def __enter__(self) -> None:
        self._deep += 1

    def __exit__(self, *_: object) -> None:
        self._deep -= 1
        if not self._deep:
            self._least.clear()
            self._hint.clear()

    def least(self, item: QWidgetItem) -> QSize:
        """Give the least size of an item."""
        key = id(item)
        if key not in self._least:
            self._least[key] = item.minimumSize()
        return self._least[key]

    def hint(self, item: QWidgetItem) -> QSize:
        """Give the size that an item asks for."""
        key = id(item)
        if key not in self._hint:
            self._hint[key] = item.sizeHint()
        return self._hint[key]


_ASKED = _Asked()


class BreakingRow(QWidget):
    """Lays widgets side by side, as a row of a layout does, and breaks where they do not fit.

    In one row everything has the place and the size that a layout would give it. That is asked for
    by WCAG 2.2, 1.4.10: what is read is scrolled in one direction only [WCAG22].

    Parameters
    ----------
    spacing, between
        Pixels between widgets of a row, and between rows.
    yields
        Whether what it stands in may be pressed lower while all stands in one row, as with a row
        of a layout.
    """

    def __init__(self, spacing: int = 8, between: int = 6, *, yields: bool = False) -> None:
        super().__init__()
        self._yields, self._one = yields, True
        self._needs = 0
        self._spacing, self._between = spacing, between
        self._cells: list[_Cell] = []
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def put(
        self,
        *widgets: QWidget,
        gap: int = 0,
        stretches: bool = False,
        pushed: bool = False,
        align: Qt.AlignmentFlag | None = None,
    ) -> None:
        """Add widgets that are never parted.

        Parameters
        ----------
        widgets
            Side by side.
        gap
            Pixels before them, beyond the usual, where they do not begin a row.
        stretches
            Whether they take what the others of their row leave; of several the first does.
        pushed
            Whether they stand at the right end of their row.
        align
            Where they stand in the height of the row, where not in all of it.
        """
        for widget in widgets:
            widget.setParent(self)
        items = tuple(QWidgetItem(widget) for widget in widgets)
        for item in items if align is not None else ():
            item.setAlignment(align or Qt.AlignmentFlag.AlignVCenter)
        wraps = [w for w in widgets if isinstance(w, QLabel) and w.wordWrap()]
        text = wraps[0] if wraps else None
        self._cells.append(_Cell(items, gap, text, stretches, pushed))

    # --- what it needs ---------------------------------------------------------------------------

    def unbroken(self) -> int:
        """Give the width, in pixels, at which all stands in one row."""
        with _ASKED:
            return self._whole(self._shown())

    def minimumSizeHint(self) -> QSize:
        """Need the width of what cannot be parted."""
        with _ASKED:
            cells = self._shown()
            high = max((_ASKED.least(i).height() for c in cells for i in c.shown()), default=0)
            return QSize(max((self._least([cell]) for cell in cells), default=0), high)

    def sizeHint(self) -> QSize:
        """Ask for one row."""
        with _ASKED:
            cells = self._shown()
            wide = self._wide(cells, [_ASKED.hint(i).width() for c in cells for i in c.shown()])
            return QSize(wide, self.heightForWidth(wide))

    def hasHeightForWidth(self) -> bool:
        """Tell whether its height goes by its width."""
        return super().hasHeightForWidth() and not (self._yields and self._one)

    def heightForWidth(self, width: int) -> int:
        """Give how high all rows are in a width."""
        with _ASKED:
            rows = [high for _, high in self._rows(width)]
        return sum(rows) + self._between * max(len(rows) - 1, 0)

    def rows(self) -> int:
        """Give in how many rows it stands."""
        return len(self._broken(self.width()))

    # --- laying ----------------------------------------------------------------------------------

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lay all anew."""
        super().resizeEvent(event)
        self._lay()

    def showEvent(self, event: QShowEvent) -> None:
        """Lay what has changed out of view, and ask for its height: nobody told of it there."""
        super().showEvent(event)
        before = self._needs
        self._lay()
        if self._needs != before:
            self.updateGeometry()

    def event(self, event: QEvent) -> bool:
        """Lay all anew once a part has another size, or comes or goes."""
        if event.type() == QEvent.Type.LayoutRequest:
            self.updateGeometry()
            self._lay()
        return super().event(event)

    def _lay(self) -> None:
        with _ASKED:
            rows = self._rows(self.width())
        one = len(rows) < 2
        if self._yields and one != self._one:
            self._one = one
            self.updateGeometry()
        self._needs = sum(high for _, high in rows) + self._between * (len(rows) - 1)
        spare = self.height() - self._needs
        top = 0
        for cells, needs in rows:
            high = needs + (max(spare, 0) if len(rows) == 1 else 0)
            self._lay_row(cells, top, high)
            top += high + self._between

    def _lay_row(self, cells: Sequence[_Cell], top: int, high: int) -> None:
        widths = self._widths(cells, self.width())
        left, rest = 0, self.width() - self._wide(cells, widths)
        each = iter(widths)
        for place, cell in enumerate(cells):
            left += cell.gap if place else 0
            if cell.pushed:
                left, rest = left + max(rest, 0), 0
            for item in cell.shown():
                wide = next(each)
                item.setGeometry(QRect(left, top, wide, high))
                left += wide + self._spacing

    def _shown(self) -> list[_Cell]:
        return [cell for cell in self._cells if cell.shown()]

    def _rows(self, width: int) -> list[tuple[list[_Cell], int]]:
        """Give the rows in a width, each with its height."""
        return [(cells, self._high(cells, width)) for cells in self._broken(width)]

    def _broken(self, width: int) -> list[list[_Cell]]:
        """Part the cells into rows that fit a width."""
        rows: list[list[_Cell]] = []
        for cell in self._shown():
            if rows and self._fits([*rows[-1], cell], width):
                rows[-1].append(cell)
            else:
                rows.append([cell])
        return rows

    def _fits(self, cells: Sequence[_Cell], width: int) -> bool:
        """Tell whether cells stand well side by side: no text beside others becomes a column."""
        if self._whole(cells) > width:
            return False
        texts = [cell.text for cell in cells if cell.text is not None]
        if not texts:
            return True
        items = [item for cell in cells for item in cell.shown()]
        for item, wide in zip(items, self._widths(cells, width), strict=True):
            label = item.widget()
            if isinstance(label, QLabel) and label in texts:
                most = _MOST_LINES * label.fontMetrics().lineSpacing() + 2 * label.margin()
                if item.heightForWidth(wide) > max(most, label.minimumHeight()):
                    return False
        return True

    def _high(self, cells: Sequence[_Cell], width: int) -> int:
        items = [item for cell in cells for item in cell.shown()]
        return max(
            item.heightForWidth(wide) if item.hasHeightForWidth() else _ASKED.hint(item).height()
            for item, wide in zip(items, self._widths(cells, width), strict=True)
        )

    def _least(self, cells: Sequence[_Cell]) -> int:
        items = [item for cell in cells for item in cell.shown()]
        return self._wide(cells, [_ASKED.least(item).width() for item in items])

    def _whole(self, cells: Sequence[_Cell]) -> int:
        """Give the least width of cells in one row, where no rows within them break either."""
        items = [item for cell in cells for item in cell.shown()]
        return self._wide(cells, [_unbroken(item) for item in items])

    def _wide(self, cells: Sequence[_Cell], widths: Sequence[int]) -> int:
        """Give how wide a row of cells is whose widgets have these widths."""
        gaps = sum(cell.gap for cell in cells[1:])
        return sum(widths) + gaps + self._spacing * max(len(widths) - 1, 0)

    def _widths(self, cells: Sequence[_Cell], width: int) -> list[int]:
        """Give each widget of a row its width: as it asks, less where that is too much.

        What stretches takes the rest.
        """
        items = [item for cell in cells for item in cell.shown()]
        least = [_ASKED.least(item).width() for item in items]
        widths = [
            max(_ASKED.hint(item).width(), low) for item, low in zip(items, least, strict=True)
        ]
        first = next((cell for cell in cells if cell.stretches), None)
        taker = None if first is None else items.index(first.shown()[-1])
        if taker is not None:
            widths[taker] = least[taker]
        over = self._wide(cells, widths) - width
        while over > 0 and widths != least:
            given = [place for place, wide in enumerate(widths) if wide > least[place]]
            for place in given:
                less = min(-(-over // len(given)), widths[place] - least[place], over)
                widths[place] -= less
                over -= less
        if taker is not None:
            widths[taker] += max(-over, 0)
        return widths


def _unbroken(item: QWidgetItem) -> int:
    widget = item.widget()
    least = _ASKED.least(item).width()
    return max(least, widget.unbroken()) if isinstance(widget, BreakingRow | EvenRows) else least
