"""What each zone is seen in: its colour, its word, and the list to choose another from."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from swatchwright.acts.repaint_job import AS_IT_IS, Choice
from swatchwright.desktop.look import write_on
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.widgets.fields import ChoiceField
from swatchwright.desktop.words import repaint as words
from swatchwright.values import Lab

__all__ = ["RepaintZones"]

_HIGH, _GAP, _LIST = 44, 5, 10
"""Pixels of a field, between it and its list, and of the list around its letters."""


class RepaintZones(QWidget):
    """Touching fields, one for each zone, each over its list.

    Signals
    -------
    chosen(str, str)
        A zone is to be seen in another colour: the zone, and the key of the choice.
    """

    chosen = Signal(str, str)

    def __init__(self) -> None:
        super().__init__()
        self.cells: dict[str, _Cell] = {}
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(0)
        # Before the first stroke the room is left already: a hand is on its way to the photo above.
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        policy.setRetainSizeWhenHidden(True)
        self.setSizePolicy(policy)

    def sizeHint(self) -> QSize:
        """Ask for the height of a zone, though there be none."""
        return super().sizeHint().expandedTo(self.minimumSizeHint())

    def minimumSizeHint(self) -> QSize:
        """Need it, too."""
        high = _HIGH + _GAP + self.fontMetrics().height() + _LIST
        return super().minimumSizeHint().expandedTo(QSize(0, high))

    def show_zones(
        self, zones: Sequence[str], choices: Sequence[Choice], keys: Mapping[str, str]
    ) -> None:
        """Show these zones with what can be chosen for each, and what is chosen."""
        if tuple(self.cells) != tuple(zones):
            for cell in self.cells.values():
                self._row.removeWidget(cell)
                cell.hide()
                cell.deleteLater()
            self.cells = {zone: _Cell(zone) for zone in zones}
            for zone, cell in self.cells.items():
                cell.chosen.connect(lambda key, z=zone: self.chosen.emit(z, key))
                self._row.addWidget(cell, 1)
        for zone, cell in self.cells.items():
            cell.show_choices(choices, keys.get(zone, AS_IT_IS))

    def show_colours(self, colours: Mapping[str, Lab], *, finished: bool) -> None:
        """Show the colour that each zone is seen in."""
        for zone, cell in self.cells.items():
            cell.show_colour(colours.get(zone), finished=finished)

    def told(self) -> list[tuple[str, str]]:
        """Give the zones with the words for what they are seen in."""
        return [(zone, cell.words.text()) for zone, cell in self.cells.items()]


class _Cell(QWidget):
    """One zone."""

    chosen = Signal(str)

    def __init__(self, zone: str) -> None:
        super().__init__()
        self._shown: tuple[Choice, ...] | None = None
        self.field = _Field(zone)
        self.list = ChoiceField()
        self.list.setAccessibleName(words.zone_name(zone))
        self.list.setMinimumContentsLength(12)
        self.list.activated.connect(lambda _: self.chosen.emit(self.list.currentData()))
        self.words = QLabel()
        self.words.setObjectName("small")
        self.words.setWordWrap(True)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(_GAP)
        rows.addWidget(self.field)
        below = QHBoxLayout()
        below.setContentsMargins(0, 0, 12, 0)
        below.addWidget(self.list)
        below.addWidget(self.words, 1)
        rows.addLayout(below)

    def show_choices(self, choices: Sequence[Choice], key: str) -> None:
        """Fill the list, and show what is chosen."""
        if tuple(choices) != self._shown:
            self._shown = tuple(choices)
            self.list.clear()
            self.list.addItem(words.LEAVE, AS_IT_IS)
            for choice in choices:
                self.list.addItem(words.choice_word(choice), choice.key)
        self.list.setCurrentIndex(max(0, self.list.findData(key)))

    def show_colour(self, lab: Lab | None, *, finished: bool) -> None:
        """Show the colour, and say it in words."""
        self.words.setText(words.zone_told(lab, finished=finished))
        self.field.show_colour(lab, self.words.text())


class _Field(QWidget):
    """A field of the colour with the name of the zone in it; a frame where it stays as it is."""

    def __init__(self, zone: str) -> None:
        super().__init__()
        self._zone = zone
        self.setFixedHeight(_HIGH)
        self.setAccessibleName(words.zone_word(zone))
        self._lab: Lab | None = None

    def sizeHint(self) -> QSize:
        """Ask for a good size."""
        return QSize(200, _HIGH)

    def show_colour(self, lab: Lab | None, told: str) -> None:
        """Show a colour, or none."""
        self._lab = lab
        self.setAccessibleName(f"{words.zone_word(self._zone)}: {told}")
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint it."""
        del event
        painter = QPainter(self)
        where = int(Qt.AlignmentFlag.AlignLeft) | int(Qt.AlignmentFlag.AlignVCenter)
        room, word = self.rect().adjusted(11, 0, -11, 0), words.zone_word(self._zone)
        if self._lab is None:
            painter.setPen(self.palette().placeholderText().color())
            painter.drawRect(self.rect().adjusted(0, 0, -1, -1))
            painter.drawText(room, where, word)
        else:
            colour = screen_colour(self._lab)
            painter.fillRect(self.rect(), colour)
            write_on(painter, room, where, word, colour)
        painter.end()
