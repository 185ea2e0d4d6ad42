"""What is told below the picture of a finish: other parts, and how far it is from the client."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtWidgets import QLabel, QPushButton, QVBoxLayout, QWidget

from swatchwright.acts.finish_parts import LaidOn
from swatchwright.acts.layering import BARE, without_washes
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.words import finish_parts as words
from swatchwright.desktop.words.bits import SCALE_TIP
from swatchwright.paint.layers import Stack

__all__ = ["FinishTold"]


class FinishTold(QWidget):
    """Says which layers go over other mixes as well, and what is laid past the client's wish."""

    def __init__(self) -> None:
        super().__init__()
        self.also, self.elsewhere, self.off = _line(), _line(), _line()
        self.off.setObjectName("strong")
        self.off.setToolTip(SCALE_TIP)
        self.again = QPushButton()
        self.again.setObjectName("little")
        self._row = BreakingRow()
        self._row.put(self.off, stretches=True)
        self._row.put(self.again, gap=6, pushed=True)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        for part in (self._row, self.also, self.elsewhere):
            column.addWidget(part)
        self.show_places(BARE, (), LaidOn())
        self.show_off(None)

    def show_places(self, stack: Stack, parts: Sequence[LaidOn], here: LaidOn) -> None:
        """Say what of the layers over a part lies on others too, and what lies on none of all."""
        counted = enumerate(here.over(stack).layers, start=1)
        also = [(number, layer) for number, layer in counted if not layer.zone]
        _tell(self.also, words.also_over(also, here.mixed))
        known = {"", *(zone for part in parts for zone in part.zones)}
        away = [layer for layer in stack.layers if layer.zone not in known]
        _tell(self.elsewhere, words.elsewhere(away))
        self._fold()

    def show_off(self, off: float | None, over: Stack = BARE) -> None:
        """Say how far it is from what the client wants; nothing where she has no wish."""
        self._row.setVisible(off is not None)
        self.off.setText("" if off is None else words.off_client(off))
        self.again.setVisible(off is not None and off >= words.SEEN_FROM)
        self.again.setText(words.ask_again(without_washes(over).layers))
        self._fold()

    def _fold(self) -> None:
        """Take no room where nothing is told."""
        told = (self.off, self.also, self.elsewhere)
        self.setVisible(any(label.text() for label in told))


def _line() -> QLabel:
    label = QLabel()
    label.setObjectName("quiet")
    label.setWordWrap(True)
    return label


def _tell(label: QLabel, text: str) -> None:
    label.setText(text)
    label.setVisible(bool(text))
