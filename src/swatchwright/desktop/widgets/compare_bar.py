"""What is laid beside the wanted colour: which mixes, in which states, under which light."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QButtonGroup, QLabel, QPushButton, QVBoxLayout, QWidget

from swatchwright.acts.compare import MOST_MIXES, ROOM, CompareView, State
from swatchwright.colour.spectrum import Light
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.words import compare as words
from swatchwright.desktop.words import finish_seen as seen
from swatchwright.desktop.words import first_up
from swatchwright.desktop.words import taken as taken_words

__all__ = ["CompareBar"]


class CompareBar(QWidget):
    """Buttons that stay pressed; what is pressed is what is shown.

    Signals
    -------
    changed(CompareView)
        Something else is to be shown.
    full_wanted()
        The screen is to be filled.
    """

    changed = Signal(object)
    full_wanted = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._view = CompareView()
        self._room: Light | None = None
        self.of_room = QLabel()
        self.of_room.setToolTip(seen.OF_ROOM_TIP)
        self.of_room.setObjectName("small")
        self.of_room.hide()
        self.taken = QPushButton(first_up(taken_words.YOURS))
        self.mixes = [QPushButton(str(n)) for n in range(1, MOST_MIXES + 1)]
        self.states = {state: QPushButton(words.STATES[state]) for state in State}
        self.lights = {light: QPushButton(words.LIGHTS[light]) for light in ROOM}
        self.figures = _toggle(words.FIGURES, words.FIGURES_TIP)
        self.every_light = _toggle(words.EVERY_LIGHT, words.EVERY_LIGHT_TIP)
        self.full = QPushButton(words.FULL)
        self.full.setToolTip(f"<p>{words.FULL_TIP} ({words.FULL_KEY})</p>")
        self.full.setShortcut(QKeySequence(words.FULL_KEY))
        self.full.clicked.connect(self.full_wanted)
        self._lay_out()
        self.figures.clicked.connect(self._press)
        self.every_light.clicked.connect(self._press)

    def _lay_out(self) -> None:
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(6)
        top, below = BreakingRow(6), BreakingRow(6)
        for row in (top, below):
            rows.addWidget(row)
        self._add(top, words.MIXES, (self.taken, *self.mixes))
        self.taken.hide()
        for state, button in self.states.items():
            button.setToolTip(words.STATE_TIPS[state])
        self._add(top, words.SEEN, tuple(self.states.values()), gap=16)
        top.put(self.figures, pushed=True)
        group = QButtonGroup(self)
        for light, button in self.lights.items():
            button.setToolTip(words.LIGHT_TIPS[light])
            group.addButton(button)
        self._add(below, words.IN_LIGHT, tuple(self.lights.values()))
        below.put(self.of_room)
        below.put(self.every_light, pushed=True)
        below.put(self.full)

    def _add(
        self, row: BreakingRow, told: str, buttons: Sequence[QPushButton], gap: int = 0
    ) -> None:
        """Put buttons into a row, the first of them beside the word for all."""
        for button in buttons:
            button.setCheckable(True)
            button.clicked.connect(self._press)
        row.put(QLabel(told), buttons[0], gap=gap)
        for button in buttons[1:]:
            row.put(button)

    def show_view(
        self,
        view: CompareView,
        mixes: Sequence[str],
        states: Sequence[State],
        taken: str = "",
        room: Light | None = None,
    ) -> None:
        """Show what is pressed, which mixes there are, and in which states they can be seen.

        `taken` tells the mix that was taken from a sample; empty where there is none. `room` is
        the light of the room, where the job names one.
        """
        self._view, self._room = view, room
        shown = view.light or room or Light.D65
        self.of_room.setText(seen.of_room(shown))
        self.of_room.setVisible(shown is room and not view.every_light)
        self.taken.setVisible(bool(taken))
        self.taken.setChecked(view.taken)
        self.taken.setToolTip(f"<p>{first_up(taken)}</p>")
        self.taken.setAccessibleName(taken)
        for number, button in enumerate(self.mixes, start=1):
            there = number <= len(mixes)
            button.setVisible(there)
            button.setChecked(number in view.mixes)
            if there:
                button.setToolTip(f"<p>{first_up(mixes[number - 1])}</p>")
                button.setAccessibleName(mixes[number - 1])
        for state, button in self.states.items():
            button.setChecked(state in view.states)
            button.setEnabled(state in states)
        for light, button in self.lights.items():
            button.setChecked(light is shown)
            button.setEnabled(not view.every_light)
        self.figures.setChecked(view.figures)
        self.every_light.setChecked(view.every_light)

    def _press(self) -> None:
        """Tell what is pressed now; the last mix and the last state stay."""
        shown = [n for n, button in enumerate(self.mixes, start=1) if not button.isHidden()]
        mixes = tuple(n for n in shown if self.mixes[n - 1].isChecked())
        beyond = tuple(n for n in self._view.mixes if n not in shown)
        states = tuple(state for state, button in self.states.items() if button.isChecked())
        there = not self.taken.isHidden()
        taken = self.taken.isChecked() if there else self._view.taken
        if not mixes and there and not taken:
            taken = self._view.taken
        view = replace(
            self._view,
            mixes=(*mixes, *beyond) if mixes or (there and taken) else self._view.mixes,
            taken=taken,
            states=states or self._view.states,
            light=self._pressed_light(),
            figures=self.figures.isChecked(),
            every_light=self.every_light.isChecked(),
        )
        self.changed.emit(view)

    def _pressed_light(self) -> Light | None:
        """Give the light that is chosen; None for that of the room, which goes by the job."""
        pressed = (light for light, button in self.lights.items() if button.isChecked())
        light = next(pressed, self._view.light)
        return None if light is (self._room or Light.D65) else light


def _toggle(text: str, tip: str) -> QPushButton:
    button = QPushButton(text)
    button.setCheckable(True)
    button.setToolTip(f"<p>{tip}</p>")
    return button
