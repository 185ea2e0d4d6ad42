"""The forward side of a finish: the big picture of it above, its layers and cautions below."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QButtonGroup,
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.finish import Look
from swatchwright.desktop.widgets.finish_build_up import BuildUpPicture
from swatchwright.desktop.widgets.finish_steps import FinishSteps
from swatchwright.desktop.widgets.layer_list import LayerList
from swatchwright.desktop.words import finish as words
from swatchwright.values import Lab

__all__ = ["FinishLayers"]

_FEW, _MANY = 1, 6
"""How much of the room the layers have beside the picture's 5, while there are none, and else."""


class FinishLayers(QWidget):
    """What each layer does, and the layers to be set."""

    def __init__(self) -> None:
        super().__init__()
        self.steps = FinishSteps()
        self.layers = LayerList()
        self.build_up = BuildUpPicture()
        self.result = QLabel()
        self.result.setWordWrap(True)
        self.mind = QLabel()
        self.mind.setWordWrap(True)
        self.mind.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.seen = [QPushButton(word) for word in words.SEEN]
        self.figures = QPushButton(words.FIGURES)
        self._rows = rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(8)
        rows.addLayout(self._views())
        rows.addWidget(self.steps, 5)
        rows.addWidget(self.result)
        below = QHBoxLayout()
        below.setSpacing(18)
        below.addWidget(self.layers, 17)
        below.addLayout(self._aside(), 10)
        rows.addLayout(below, _FEW)

    def _views(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(6)
        group = QButtonGroup(self)
        for place, button in enumerate(self.seen):
            button.setCheckable(True)
            button.setChecked(place == 0)
            button.setToolTip(words.SEEN_TIPS[place])
            group.addButton(button, place)
            row.addWidget(button)
        group.idClicked.connect(self.steps.see)
        row.addStretch(1)
        self.figures.setCheckable(True)
        self.figures.setToolTip(words.FIGURES_TIP)
        self.figures.toggled.connect(self._show_figures)
        row.addWidget(self.figures)
        return row

    def _show_figures(self, on: bool) -> None:  # noqa: FBT001 - as Qt tells it
        self.steps.show_figures(shown=on)
        self.figures.setToolTip(f"<p>{words.figures_note() if on else words.FIGURES_TIP}</p>")

    def _aside(self) -> QVBoxLayout:
        column = QVBoxLayout()
        column.setSpacing(8)
        column.addWidget(self.build_up)
        area = QScrollArea()
        area.setWidget(self.mind)
        area.setWidgetResizable(True)
        area.setFrameShape(QFrame.Shape.NoFrame)
        area.setAccessibleName(words.MIND)
        column.addWidget(area, 1)
        return column

    def show_look(self, look: Look | None, wanted: Lab | None, of_shelf: tuple[str, ...]) -> None:
        """Show what comes of the layers, and what to mind; or nothing."""
        self.steps.show_look(look, wanted)
        self.result.setText("" if look is None else words.result_line(look))
        laid = look is not None and len(look.steps) > 1
        # While nothing is laid on, the mix itself has the room.
        self._rows.setStretch(self._rows.count() - 1, _MANY if laid else _FEW)
        told = () if look is None else words.cautions(look.notes, of_shelf, laid=laid)
        self.mind.setText("\n\n".join(told))
