"""How the piece is seen in its drawing: with its finish or bare, and in which light."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from swatchwright.acts.finish_zones import SeenZones
from swatchwright.acts.in_light import ROOM
from swatchwright.colour.spectrum import Light
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.piece_fields import choice, label
from swatchwright.desktop.words import piece as words
from swatchwright.desktop.words.compare import LIGHTS
from swatchwright.desktop.words.finish_seen import DRY_IN, OF_ROOM_TIP, of_room

__all__ = ["PieceSeen"]


class PieceSeen(QWidget):
    """Two buttons and a light; where nothing lies over the mixes, a line says so.

    Signals
    -------
    changed()
        It is to be seen otherwise.
    light_chosen(Light)
        It is to be seen in a light that was chosen by hand.
    """

    changed = Signal()
    light_chosen = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.finished, self.bare = QPushButton(), QPushButton(words.SEEN_BARE)
        self.told = label(words.NOTHING_OVER, "small", wraps=False)
        self.trouble = label("", "warn")
        self.lights = choice([(LIGHTS[light], light) for light in ROOM], words.DRAWN_IN)
        self._group = QButtonGroup(self)
        lit = QWidget()
        light = QHBoxLayout(lit)
        light.setContentsMargins(0, 0, 0, 0)
        light.setSpacing(6)
        light.addWidget(label(DRY_IN, "small", wraps=False))
        light.addWidget(self.lights)
        row = BreakingRow(0)
        for button in (self.finished, self.bare):
            button.setObjectName("little")
            button.setCheckable(True)
            self._group.addButton(button)
        row.put(self.finished, self.bare)
        row.put(self.told)
        self.of_room = label("", "small", wraps=False)
        self.of_room.setToolTip(OF_ROOM_TIP)
        self.of_room.hide()
        row.put(lit, pushed=True)
        row.put(self.of_room, pushed=True)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        column.addWidget(row)
        column.addWidget(self.trouble)
        self.finished.setChecked(True)
        self.finished.setToolTip(f"<p>{words.SEEN_FINISHED_TIP}</p>")
        self.bare.setToolTip(f"<p>{words.SEEN_BARE_TIP}</p>")
        self._group.idClicked.connect(self.changed)
        self.lights.activated.connect(lambda: self.light_chosen.emit(self.light()))
        self.lights.activated.connect(self.changed)
        self.show_seen(SeenZones())

    def show_seen(self, seen: SeenZones) -> None:
        """Offer what lies over the mixes; say so where nothing does, or it cannot be reckoned."""
        self.finished.setText(words.seen_finished(seen.over))
        for button in (self.finished, self.bare):
            button.setVisible(bool(seen.over))
        why = seen.why_bare
        self.told.setVisible(not seen.over and why is None)
        self.trouble.setText("" if why is None else words.shown_bare(why))
        self.trouble.setVisible(why is not None)

    def show_light(self, light: Light, room: Light | None) -> None:
        """Show it in a light, and say whether it is that of the room."""
        self.of_room.setText(of_room(light))
        self.of_room.setVisible(light is room)
        if light is not self.light():
            self.lights.setCurrentIndex(self.lights.findData(light))
            self.changed.emit()

    def is_finished(self) -> bool:
        """Tell whether it is to be seen with its finish."""
        return self.finished.isChecked()

    def light(self) -> Light:
        """Give the light that it is to be seen in."""
        return Light(self.lights.currentData())
