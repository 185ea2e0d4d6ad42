"""The list of the samples: how far each was from the cloth, and its mix to be taken."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from swatchwright.acts.sample_learnt import Taught, knows
from swatchwright.acts.sample_rounds import SampleLoop
from swatchwright.acts.sample_taken import Taken
from swatchwright.desktop.widgets.piece_fields import clear, label
from swatchwright.desktop.widgets.shelf_bits import button
from swatchwright.desktop.words import sample as words
from swatchwright.desktop.words import sample_taught as taught_words
from swatchwright.shelf.shelf import Shelf

__all__ = ["SampleRounds"]


class SampleRounds(QWidget):
    """A line for each sample, with a button that makes its mix that of the zone.

    Signals
    -------
    take(int)
        The mix of the sample of this number, from 1, is to be that of the zone.
    """

    take = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.buttons: dict[int, QPushButton] = {}
        self.lines: list[str] = []
        self._rows = QVBoxLayout(self)
        self._rows.setContentsMargins(0, 0, 0, 0)

    def show_loop(
        self,
        loop: SampleLoop | None,
        shelf: Shelf,
        *,
        zone: str,
        taken: Taken | None,
        taught: Taught | None = None,
    ) -> None:
        """Show the samples.

        `taken` is the one whose mix is that of the zone by now; `taught` what the paints on the
        bench have just learnt from them.
        """
        clear(self._rows)
        self.buttons, self.lines = {}, []
        if loop is None or not loop.rounds:
            self._say(words.NO_ROUNDS, "quiet")
            return
        for number, kept in enumerate(loop.rounds, start=1):
            row = QHBoxLayout()
            told = label(words.round_line(number, kept, shelf))
            told.setToolTip(words.FIGURES_TIP)
            row.addWidget(told, 1)
            self._rows.addLayout(row)
            if taken is not None and taken.number == number and not taken.added:
                self._say(words.is_mix_for(zone), "strong")
                continue
            made = button(
                words.TAKE,
                partial(self.take.emit, number),
                "little",
                told=words.take_name(number, zone),
                tip=words.TAKE_TIP,
            )
            self.buttons[number] = made
            row.addWidget(made, 0, Qt.AlignmentFlag.AlignTop)
            if taken is not None and taken.number == number:
                self._say(words.is_mix_added(zone, taken, shelf), "strong")
        if taught is not None and knows(shelf, loop):
            for line in taught_words.taught_lines(taught):
                self._say(line, "quiet")

    def _say(self, text: str, name: str) -> None:
        self.lines.append(text)
        self._rows.addWidget(label(text, name))
