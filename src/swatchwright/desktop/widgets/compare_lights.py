"""All lights at once: a small table of touching pairs, and what changes from light to light."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QGridLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from swatchwright.acts.compare import Compared, Sight, State, WantedSight
from swatchwright.desktop.widgets.finish_bands import Band, paint_bands
from swatchwright.desktop.words import compare as words
from swatchwright.desktop.words.bits import SCALE_TIP

__all__ = ["CompareLights", "PairField"]

_HEIGHT, _HEAD = 40, 150


class PairField(QWidget):
    """The wanted colour on the left, a mix on the right, touching."""

    def __init__(self, name: str, short: str, wanted: WantedSight, sight: Sight) -> None:
        super().__init__()
        self.labs = (wanted.shown, sight.shown)
        self._name, self._short = name, short
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        self.setFixedHeight(_HEIGHT)
        self.setAccessibleName(words.picture_told(wanted, [words.sight_told(name, sight)]))
        self.setToolTip(f"<p>{words.sight_told(name, sight)}</p>")

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the two, each with its word where that fits."""
        del event
        painter = QPainter(self)
        middle = self.width() // 2
        areas = QRect(0, 0, middle, _HEIGHT), QRect(middle, 0, self.width() - middle, _HEIGHT)
        wanted, mix = self.labs
        paint_bands(painter, areas[0], (Band(wanted, words.WANTED),))
        paint_bands(painter, areas[1], (Band(mix, self._name, short=self._short),))
        painter.end()


class CompareLights(QWidget):
    """A table for each state: a row a light, a column a mix."""

    def __init__(self) -> None:
        super().__init__()
        self._grid = QGridLayout()
        self._grid.setHorizontalSpacing(0)
        self._grid.setVerticalSpacing(0)
        self._grid.setColumnMinimumWidth(0, _HEAD)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.addLayout(self._grid)
        rows.addStretch(1)
        self._made: list[QWidget] = []
        self._told: list[QLabel] = []
        self._short: tuple[str, ...] = ()
        self._figures = False

    def minimumSizeHint(self) -> QSize:
        """Ask for little: how high it must be follows from its width, which Qt asks for then."""
        return QSize(super().minimumSizeHint().width(), 0)

    def pairs(self) -> list[PairField]:
        """Give the pairs, light by light."""
        return [widget for widget in self._made if isinstance(widget, PairField)]

    def texts(self) -> list[str]:
        """Give the words below the pairs, in the same order."""
        return [label.text() for label in self._told]

    def show_compared(
        self,
        told: Compared,
        names: Sequence[str],
        states: Sequence[State],
        *,
        short: Sequence[str],
        figures: bool,
    ) -> None:
        """Show mixes of these names in these states, under every light.

        Where a name is too long for its field, the short one stands there.
        """
        self._figures, self._short = figures, tuple(short)
        self._clear()
        for column in range(1, max(self._grid.columnCount(), len(names) + 1)):
            self._grid.setColumnStretch(column, 1 if column <= len(names) else 0)
        row = 0
        for state in states:
            heading = _label(words.overview_head(state), "quiet")
            heading.setContentsMargins(0, 4, 0, 8)
            self._put(heading, row, 0, columns=len(names) + 1)
            for place, wanted in enumerate(told.sights):
                self._put_light(told, names, state, wanted, row + 1 + 2 * place)
            row += 1 + 2 * len(told.sights)

    def _put_light(
        self,
        told: Compared,
        names: Sequence[str],
        state: State,
        wanted: WantedSight,
        row: int,
    ) -> None:
        self._put(_head(wanted), row, 0, rows=2)
        rows = zip(names, self._short, told.candidates, strict=True)
        for column, (name, short, one) in enumerate(rows, 1):
            sight = one.sight(state, wanted.light)
            self._put(PairField(name, short, wanted, sight), row, column)
            label = _label(words.change_line(sight, figures=self._figures), "small")
            label.setToolTip(SCALE_TIP if self._figures else "")
            self._told.append(label)
            self._put(label, row + 1, column)

    def _put(
        self, widget: QWidget, row: int, column: int, *, rows: int = 1, columns: int = 1
    ) -> None:
        self._grid.addWidget(widget, row, column, rows, columns)
        self._made.append(widget)

    def _clear(self) -> None:
        for widget in self._made:
            self._grid.removeWidget(widget)
            widget.hide()
            widget.deleteLater()
        self._made, self._told = [], []


def _head(wanted: WantedSight) -> QWidget:
    head = QWidget()
    rows = QVBoxLayout(head)
    rows.setContentsMargins(0, 0, 8, 6)
    rows.setSpacing(0)
    for text, name in ((words.light_head(wanted), "strong"), (words.turn_line(wanted), "quiet")):
        if text:
            label = QLabel(text)
            label.setObjectName(name)
            label.setWordWrap(True)
            rows.addWidget(label)
    rows.addStretch(1)
    return head


def _label(text: str, name: str) -> QLabel:
    label = QLabel(text)
    label.setObjectName(name)
    label.setWordWrap(True)
    label.setContentsMargins(9, 3, 9, 7)
    label.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
    label.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
    return label
