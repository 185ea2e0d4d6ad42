"""What helps while nothing is mixed yet: another wanted colour, and mixes for that."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QFrame, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from swatchwright.colour.difference import delta_e_2000
from swatchwright.desktop.letters import follow_letters, grown
from swatchwright.desktop.widgets.finish_bands import Band, paint_bands
from swatchwright.desktop.widgets.told_label import told_label
from swatchwright.desktop.words import finish
from swatchwright.desktop.words import finish_ways as words
from swatchwright.desktop.words.bits import SCALE_TIP
from swatchwright.values import Lab

__all__ = ["AfreshColumn"]

_HEIGHT, _NARROWEST, _WIDEST = 150, 236, 640


class _Field(QWidget):
    """What is wanted now above what was wanted so far: edge to edge."""

    def __init__(self, first: Lab, aim: Lab, told: str) -> None:
        super().__init__()
        self._bands = (Band(aim, finish.GOAL), Band(first, words.WANTED_SO_FAR))
        self.setAccessibleName(told)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setFixedHeight(_HEIGHT)

    def sizeHint(self) -> QSize:
        """Ask for a good size."""
        return QSize(_NARROWEST, _HEIGHT)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the goal above, and what was wanted so far below it."""
        del event
        painter = QPainter(self)
        paint_bands(painter, self.rect(), self._bands)
        painter.end()


class AfreshColumn(QFrame):
    """The colour that is wanted now, and the way to its mixes.

    Signals
    -------
    taken()
        Its mixes are to be found.
    """

    taken = Signal()

    def __init__(self, first: Lab, aim: Lab) -> None:
        super().__init__()
        self.first, self.aim = first, aim
        self.setObjectName("sheet")
        follow_letters(self, lambda: self.setMinimumWidth(grown(_NARROWEST)))
        follow_letters(self, lambda: self.setMaximumWidth(grown(_WIDEST)))
        near = words.from_wanted(float(delta_e_2000(first.triple, aim.triple)))
        told = f"{words.AFRESH}: {near}"
        self.setAccessibleName(told)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 12)
        rows.setSpacing(7)
        rows.addWidget(_Field(first, aim, told))
        text = QVBoxLayout()
        text.setContentsMargins(12, 2, 12, 0)
        text.setSpacing(5)
        text.addWidget(told_label(words.AFRESH, "strong"))
        far = told_label(near, "quiet")
        far.setToolTip(SCALE_TIP)
        text.addWidget(far)
        text.addWidget(told_label(words.AFRESH_TOLD))
        self.take = QPushButton(words.FIND_ITS_MIXES)
        self.take.setToolTip(f"<p>{words.FIND_ITS_MIXES_TIP}</p>")
        self.take.clicked.connect(self.taken)
        text.addWidget(self.take, 0, Qt.AlignmentFlag.AlignLeft)
        rows.addLayout(text)
        rows.addStretch(1)
