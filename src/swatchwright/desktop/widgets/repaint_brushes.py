"""The brushes: one for each zone, one for what is not the piece, and one for the grey card."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QLabel, QPushButton, QSlider, QWidget

from swatchwright.acts.repaint import NOT_THIS
from swatchwright.desktop.words import repaint as words

__all__ = ["RepaintBrushes"]

_NARROW, _USUAL, _WIDE = 3, 12, 60
"""Widths of the brush, thousandths of the longer side of the photo."""


class RepaintBrushes(QWidget):
    """Buttons that stay pressed, and the width of the brush.

    Signals
    -------
    changed()
        Another brush is taken, or another width.
    """

    changed = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.buttons: dict[str | None, QPushButton] = {}
        self.width_slider = QSlider(Qt.Orientation.Horizontal)
        self.width_slider.setRange(_NARROW, _WIDE)
        self.width_slider.setValue(_USUAL)
        self.width_slider.setFixedWidth(96)
        self.width_slider.setAccessibleName(words.WIDTH_NAME)
        self.width_slider.setToolTip(words.WIDTH_TIP)
        self.width_slider.valueChanged.connect(lambda _: self.changed.emit())
        self._group = QButtonGroup(self)
        self._group.buttonClicked.connect(lambda _: self.changed.emit())
        self._zones: tuple[str, ...] = ()
        self._row = QHBoxLayout()
        self._row.setSpacing(0)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        row.addWidget(QLabel(words.BRUSHES))
        row.addLayout(self._row)
        told = QLabel(words.WIDTH)
        told.setBuddy(self.width_slider)
        row.addWidget(told)
        row.addWidget(self.width_slider)
        row.addStretch(1)

    def show_zones(self, zones: Sequence[str]) -> None:
        """Show a brush for each of these zones."""
        if tuple(zones) == self._zones:
            return
        before = self.zone() if self.buttons else None
        self._zones = tuple(zones)
        for button in self.buttons.values():
            self._group.removeButton(button)
            self._row.removeWidget(button)
            button.hide()
            button.deleteLater()
        texts = [(zone, words.zone_word(zone)) for zone in zones]
        self.buttons = {}
        for zone, text in (*texts, (NOT_THIS, words.zone_word(NOT_THIS)), (None, words.GREY)):
            button = QPushButton(text)
            button.setCheckable(True)
            button.setAccessibleName(words.brush_name(text))
            self._group.addButton(button)
            self._row.addWidget(button)
            self.buttons[zone] = button
        self.buttons[before if before in self.buttons and before else zones[0]].setChecked(True)
        self.changed.emit()

    def take(self, zone: str | None) -> None:
        """Take the brush of a zone, or of None that of the grey card."""
        if zone in self.buttons:
            self.buttons[zone].setChecked(True)
            self.changed.emit()

    def zone(self) -> str | None:
        """Give the zone of the brush; None for the grey card."""
        pressed = (zone for zone, button in self.buttons.items() if button.isChecked())
        return next(pressed, NOT_THIS)

    def width_on(self, size: tuple[int, int]) -> float:
        """Give the width of the brush in pixels of a photo of this size."""
        return max(2.0, self.width_slider.value() * max(size) / 1000)

    def widen(self, way: int) -> None:
        """Take a wider brush, or a narrower one."""
        self.width_slider.setValue(self.width_slider.value() + 3 * way)
