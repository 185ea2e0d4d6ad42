"""The ways to where a client wants a colour, side by side."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QRect, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import (
    QFrame,
    QLabel,
    QPushButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.ways import Way, WayKind, Ways, of_every_wash
from swatchwright.desktop.letters import follow_letters, grown
from swatchwright.desktop.widgets.areas import ScrollArea
from swatchwright.desktop.widgets.even_rows import EvenRows
from swatchwright.desktop.widgets.finish_afresh import AfreshColumn
from swatchwright.desktop.widgets.finish_bands import Band, paint_bands
from swatchwright.desktop.widgets.told_label import told_label
from swatchwright.desktop.words import finish
from swatchwright.desktop.words import finish_ways as words
from swatchwright.desktop.words.bits import SCALE_TIP
from swatchwright.values import Lab

__all__ = ["FinishWays", "WayColumn", "WayField"]

_HEIGHT, _NARROWEST, _WIDEST, _ALONE = 150, 236, 380, 640

_TAKE: dict[WayKind, tuple[str, str, Callable[[int], str]]] = {
    WayKind.WASH: (words.LAY_THIS, words.LAY_THIS_TIP, words.lay_this_name),
    WayKind.STIR: (words.KEEP_POT, words.KEEP_POT_TIP, words.keep_pot_name),
    WayKind.RECOAT: (words.TO_COLOUR, words.TO_COLOUR_TIP, words.to_colour_name),
}
"""What the button of a way says, what it does, and how it is named by its number."""


class WayField(QWidget):
    """Where it should go, what the way makes of it, and as it is: edge to edge."""

    def __init__(self, now: Lab, aim: Lab, way: Way, told: str) -> None:
        super().__init__()
        self._now, self._aim, self._way = now, aim, way
        self.setAccessibleName(told)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setFixedHeight(_HEIGHT)

    def sizeHint(self) -> QSize:
        """Ask for a good size."""
        return QSize(_NARROWEST, _HEIGHT)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the goal above, the way in the middle from flat to grain, as it is below."""
        del event
        painter = QPainter(self)
        way, width, third = self._way, self.width(), self.height() // 3
        paint_bands(painter, QRect(0, 0, width, third), (Band(self._aim, finish.GOAL),))
        middle = [
            (way.flat, finish.FLATS, 1),
            (way.dry, finish.WHOLE, 2),
            (way.grain, finish.GRAIN, 1),
        ]
        if way.kind is not WayKind.WASH:
            middle = [(way.dry, finish.WHOLE, 1)]
        whole, left = sum(weight for _, _, weight in middle), 0
        for lab, word, weight in middle:
            edges = [width * at // whole for at in (left, left + weight)]
            paint_bands(
                painter, QRect(edges[0], third, edges[1] - edges[0], third), (Band(lab, word),)
            )
            left += weight
        below = QRect(0, 2 * third, width, self.height() - 2 * third)
        paint_bands(painter, below, (Band(self._now, finish.NOW),))
        painter.end()


class WayColumn(QFrame):
    """One way: its colour, what to do, and what to weigh.

    Signals
    -------
    taken(Way)
        Its wash is to be laid over the mix, the colour of its new coat is wanted, or what it
        makes of the pot is to be kept.
    """

    taken = Signal(object)

    def __init__(self, number: int, way: Way, found: Ways, common: tuple[str, ...]) -> None:
        super().__init__()
        self.way = way
        self.setObjectName("sheet")
        follow_letters(self, lambda: self.setMinimumWidth(grown(_NARROWEST)))
        self.keep_within(_WIDEST)
        told = words.way_told(number, way, found.over)
        self.setAccessibleName(told)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 12)
        rows.setSpacing(7)
        self.field = WayField(found.now, found.aim, way, told)
        rows.addWidget(self.field)
        text = QVBoxLayout()
        text.setContentsMargins(12, 2, 12, 0)
        text.setSpacing(5)
        text.addWidget(told_label(words.way_head(number, way), "strong"))
        near = told_label(words.way_near(way, found.over), "quiet")
        near.setToolTip(SCALE_TIP)
        text.addWidget(near)
        self.told = told_label(words.what_to_do(way))
        text.addWidget(self.told)
        told, tip, name = _TAKE[way.kind]
        self.take = QPushButton(told)
        self.take.setToolTip(f"<p>{tip}</p>")
        self.take.setAccessibleName(name(number))
        self.take.clicked.connect(lambda: self.taken.emit(way))
        text.addWidget(self.take, 0, Qt.AlignmentFlag.AlignLeft)
        for risk in way.risks:
            if risk.words not in common:
                line = told_label(f"·  {risk.words}", "small")
                line.setToolTip(words.risk_tip(risk.kind))
                text.addWidget(line)
        rows.addLayout(text)
        rows.addStretch(1)

    def keep_within(self, wide: int) -> None:
        """Be no wider than so many pixels of ours."""
        follow_letters(self, lambda: self.setMaximumWidth(grown(wide)))


class FinishWays(QWidget):
    """All ways that were found, the nearest first, and what is to be minded of all.

    Signals
    -------
    taken(Way)
        The wash of a way is to be laid over the mix, the colour of its new coat is wanted, or
        what it makes of the pot is to be kept.
    afresh()
        Mixes for what the client wants are to be found: nothing is mixed yet.
    """

    taken = Signal(object)
    afresh = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.before = QLabel(words.WAIT_WAYS)
        self.before.setObjectName("quiet")
        self.before.setToolTip(SCALE_TIP)
        self.before.setWordWrap(True)
        self.notes = QLabel()
        self.notes.setObjectName("quiet")
        self.notes.setWordWrap(True)
        self._row = EvenRows(12, stretch=1, keeps=True)
        self.columns: list[WayColumn] = []
        self.from_start: AfreshColumn | None = None
        holder = QWidget()
        holder.setObjectName("bench")
        inside = QVBoxLayout(holder)
        inside.setContentsMargins(0, 0, 4, 0)
        inside.setSpacing(8)
        inside.addWidget(self._row)
        inside.addWidget(self.notes)
        inside.addStretch(1)
        area = ScrollArea()
        area.setWidget(holder)
        area.setWidgetResizable(True)
        area.setAccessibleName(finish.BY_CLIENT)
        self._row.broke.connect(lambda broken: area.set_whole(whole=broken))
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(6)
        rows.addWidget(self.before)
        rows.addWidget(area, 1)

    def show_trouble(self, text: str) -> None:
        """Say why there are no ways."""
        self._clear()
        self.before.setText(text)

    def show_ways(self, found: Ways, of_shelf: tuple[str, ...]) -> None:
        """Show what was found."""
        self._clear()
        self.before.setText(words.before_line(found))
        common = of_every_wash(found)
        for number, way in enumerate(found.ways, start=1):
            column = WayColumn(number, way, found, common)
            if len(found.ways) == 1:
                column.keep_within(_ALONE)
            column.taken.connect(self.taken)
            self.columns.append(column)
        self._row.put(*self.columns)
        told = [words.of_every_wash_line(text) for text in common]
        told += finish.cautions(found.notes, of_shelf, laid=bool(found.ways))
        self.notes.setText("\n".join(told))

    def show_afresh(self, first: Lab, aim: Lab) -> None:
        """Show what helps while nothing is mixed: another colour in place of the first."""
        self._clear()
        self.before.setText(words.afresh_line(first, aim))
        self.from_start = AfreshColumn(first, aim)
        self.from_start.taken.connect(self.afresh)
        self._row.put(self.from_start)

    def _clear(self) -> None:
        there = [] if self.from_start is None else [self.from_start]
        for column in [*self.columns, *there]:
            column.hide()
            column.deleteLater()
        self.columns, self.from_start = [], None
        self._row.put()
        self.notes.clear()
