"""What a layer's controls choose from: the paints of a shelf with their colours, and words."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from PySide6.QtCore import QObject, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPixmap, QStandardItem, QStandardItemModel
from PySide6.QtWidgets import QComboBox, QWidget

from swatchwright.acts.mix import own_colours
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.widgets.fields import ChoiceField, CountField, NumberField
from swatchwright.desktop.words import finish as words
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab

__all__ = ["CalmNumber", "CalmTimes", "Paints", "WordCombo", "colour_chip"]

_CHIP, _HIGH = QSize(26, 16), 26
_ID = Qt.ItemDataRole.UserRole


class CalmNumber(NumberField):
    """A number of a layer, told once it is done."""

    def __init__(self, least: float, most: float, step: float, decimals: int = 1) -> None:
        super().__init__()
        self.setRange(least, most)
        self.setSingleStep(step)
        self.setDecimals(decimals)
        self.setMinimumHeight(_HIGH)
        self.setKeyboardTracking(False)

    def textFromValue(self, value: float) -> str:
        """Write 3 for 3.0."""
        return self.locale().toString(value, "g", 6)


class CalmTimes(CountField):
    """A count of a layer, told once it is done."""

    def __init__(self, most: int) -> None:
        super().__init__()
        self.setRange(0, most)
        self.setMinimumHeight(_HIGH)
        self.setKeyboardTracking(False)


class WordCombo(ChoiceField):
    """Values told in words; one that has no word is offered by its number."""

    def __init__(self, choices: Sequence[tuple[Any, str]]) -> None:
        super().__init__()
        self._values = [value for value, _ in choices]
        for _, word in choices:
            self.addItem(word)
        self._own = len(choices)

    def value(self) -> Any:  # noqa: ANN401 - whatever the choices are of
        """Give the value that is chosen."""
        return self._values[self.currentIndex()]

    def show_value(self, value: object, word: str = "") -> None:
        """Choose a value; where it is none of the choices, offer it under a word of its own."""
        while len(self._values) > self._own:
            self._values.pop()
            self.removeItem(self.count() - 1)
        if value not in self._values:
            self._values.append(value)
            self.addItem(word)
        self.setCurrentIndex(self._values.index(value))


class Paints(QObject):
    """The paints of a shelf as models for choices: with their own colours, shared by all layers.

    Parameters
    ----------
    shelf
        The paints.
    colours
        The dry colour of each, in their order.
    """

    def __init__(self, shelf: Shelf, colours: Sequence[Lab], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.shelf = shelf
        self.model = QStandardItemModel(self)
        self.model_or_none = QStandardItemModel(self)
        none = QStandardItem(words.NO_COLOUR)
        none.setData("", _ID)
        self.model_or_none.appendRow(none)
        self._rows = {paint.id: row for row, paint in enumerate(shelf.paints)}
        lightest = max(range(len(colours)), key=lambda i: colours[i].L)
        self.first = shelf.paints[lightest].id
        for paint, lab in zip(shelf.paints, colours, strict=True):
            chip = colour_chip(screen_colour(lab))
            for model in (self.model, self.model_or_none):
                item = QStandardItem(chip, paint.name)
                item.setData(paint.id, _ID)
                model.appendRow(item)

    @classmethod
    def of(cls, shelf: Shelf) -> Paints:
        """Make them of a shelf."""
        return cls(shelf, own_colours(shelf.paints))

    def combo(self, chosen: str, *, or_none: bool) -> QComboBox:
        """Make a choice of paint; of "" none is chosen, of one that is not there that is said."""
        combo = ChoiceField()
        combo.setIconSize(_CHIP)
        combo.setPlaceholderText(words.NOT_THERE)
        combo.setModel(self.model_or_none if or_none else self.model)
        combo.setMinimumContentsLength(15)
        combo.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.choose(combo, chosen, or_none=or_none)
        return combo

    def choose(self, combo: QComboBox, chosen: str, *, or_none: bool) -> None:
        """Choose a paint in a combo of these."""
        row = self._rows.get(chosen, -1)
        combo.setCurrentIndex(row + 1 if or_none and (row >= 0 or not chosen) else row)

    def another(self, than: Sequence[str]) -> str:
        """Give a paint that is none of those; the last of the shelf where all are."""
        fitting = (paint.id for paint in self.shelf.paints if paint.id not in than)
        return next(fitting, self.shelf.paints[-1].id)


def colour_chip(colour: QColor, of: QWidget | None = None) -> QPixmap:
    """Draw a colour as a little field with an edge."""
    ratio = 2.0 if of is None else max(2.0, of.devicePixelRatio())
    chip = QPixmap(_CHIP * ratio)
    chip.setDevicePixelRatio(ratio)
    chip.fill(colour)
    painter = QPainter(chip)
    painter.setPen(QColor("#7a7a7a"))
    painter.drawRect(0, 0, _CHIP.width() - 1, _CHIP.height() - 1)
    painter.end()
    return chip
