"""Under each column of the picture: how near the mix is, and which way it differs, in words."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QGridLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from swatchwright.acts.compare import Candidate, Compared, State
from swatchwright.colour.spectrum import Light
from swatchwright.desktop.widgets.told_label import told_label
from swatchwright.desktop.words import compare as words
from swatchwright.desktop.words.bits import SCALE_TIP

__all__ = ["CompareTold"]


class CompareTold(QWidget):
    """Columns as wide as those of the picture, a row a state."""

    def __init__(self) -> None:
        super().__init__()
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(0)
        self._grid.setVerticalSpacing(6)
        self._cells: list[QWidget] = []

    def minimumSizeHint(self) -> QSize:
        """Ask for little: how high it must be follows from its width, which Qt asks for then."""
        return QSize(super().minimumSizeHint().width(), 0)

    def texts(self) -> list[str]:
        """Give all that is told, cell by cell."""
        return [
            "\n".join(label.text() for label in cell.findChildren(QLabel)) for cell in self._cells
        ]

    def show_compared(
        self,
        told: Compared,
        names: Sequence[str],
        states: Sequence[State],
        light: Light,
        *,
        figures: bool,
    ) -> None:
        """Tell the same as the picture shows."""
        for cell in self._cells:
            self._grid.removeWidget(cell)
            cell.hide()
            cell.deleteLater()
        self._cells = []
        count = max(self._grid.columnCount(), len(told.candidates))
        for column in range(count):
            self._grid.setColumnStretch(column, 1 if column < len(told.candidates) else 0)
            self._grid.setColumnMinimumWidth(column, 0)
        for column, (name, one) in enumerate(zip(names, told.candidates, strict=True)):
            for row, state in enumerate(states):
                # What a sample said is said once, under the first state that is shown.
                tried = "" if row else one.tried
                cell = _cell(name, one, state, light, tried=tried, figures=figures)
                self._grid.addWidget(cell, row, column)
                self._cells.append(cell)


def _cell(
    name: str, candidate: Candidate, state: State, light: Light, *, tried: str, figures: bool
) -> QWidget:
    sight = candidate.sight(state, light)
    cell = QWidget()
    rows = QVBoxLayout(cell)
    rows.setContentsMargins(9, 0, 9, 0)
    rows.setSpacing(2)
    near = words.near_line(name, sight, figures=figures)
    lines = [(near, "strong"), (words.way_line(sight), "")]
    if figures:
        lines.append((words.figures_line(sight), "quiet"))
    lines += [(words.laid_line(candidate, state), "small"), (tried, "small")]
    for text, look in lines:
        if text:
            line = _label(text, look)
            explained = text == tried or (figures and look in {"strong", "quiet"})
            line.setToolTip(SCALE_TIP if explained else "")
            rows.addWidget(line)
    rows.addStretch(1)
    return cell


def _label(text: str, name: str) -> QLabel:
    label = told_label(text, name)
    # Columns are to be as wide as those of the picture, whatever the words.
    label.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
    return label
