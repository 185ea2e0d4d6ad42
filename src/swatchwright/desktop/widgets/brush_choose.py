"""The first step of a sitting: which paints, new ones too, and what they are let down with."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import (
    QCheckBox,
    QFormLayout,
    QFrame,
    QHBoxLayout,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.shelf_view import PaintLine
from swatchwright.acts.sitting import Sitting, new_tin
from swatchwright.desktop.money import in_her_money
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.widgets.columns import Columns
from swatchwright.desktop.widgets.fields import ChoiceField
from swatchwright.desktop.widgets.shelf_bits import amount, button, label, swatch
from swatchwright.desktop.words import shelf as shelf_words
from swatchwright.desktop.words import sitting as words
from swatchwright.errors import MendableError
from swatchwright.paint.family import Family

__all__ = ["BrushChoose"]

_ID = Qt.ItemDataRole.UserRole
_SWATCH = QSize(64, 30)
_LIST_WIDTH, _LIST_HIGH = 300, 380
"""Pixels without which new paints go below the list, and its height there."""


class BrushChoose(QWidget):
    """A list of paints to tick, and a form for one that is not there yet.

    Signals
    -------
    changed(object)
        The choice is another (`Sitting`).
    """

    changed = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self._sitting = Sitting()
        self._lines: tuple[PaintLine, ...] = ()
        self.paints = QListWidget()
        self.paints.setAccessibleName(words.CHOOSE_HINT)
        self.paints.setIconSize(_SWATCH)
        self.paints.setSpacing(1)
        self.name = QLineEdit()
        self.name.setObjectName("typed")
        self.name.setPlaceholderText(words.NAME_EXAMPLE)
        self.family = ChoiceField()
        for family in Family:
            self.family.addItem(words.family_item(family), family)
        self.tin = amount(words.TIN, 100_000, " ml", words.NOT_KNOWN)
        self.price = amount(words.PRICE, 100_000, "", words.NOT_KNOWN, decimals=2)
        in_her_money(self.price)
        self.solids = amount(words.SOLIDS, 95, " %", words.NOT_KNOWN)
        self.add = button(words.ADD, self._add)
        self.trouble = label(name="warn")
        self.trouble.hide()
        self.white = ChoiceField()
        self.white.setAccessibleName(words.WHITE_IS)
        self.ground = QCheckBox(words.HAVE_CARD)
        self.form = self._form()
        self._lay_out()
        self.paints.itemChanged.connect(self._ticked)
        self.white.activated.connect(self._white_chosen)
        self.ground.clicked.connect(self._ground_ticked)
        self.name.returnPressed.connect(self._add)

    def _lay_out(self) -> None:
        around = QVBoxLayout(self)
        around.setContentsMargins(0, 0, 0, 0)
        columns = Columns(14)
        around.addWidget(columns)
        chosen, new = QWidget(), QWidget()
        left = QVBoxLayout(chosen)
        left.setContentsMargins(0, 0, 0, 0)
        left.setSpacing(8)
        left.addWidget(label(words.CHOOSE_HINT, "quiet"))
        left.addWidget(self.paints, 1)
        columns.put(chosen, stretch=3, least=_LIST_WIDTH, high=_LIST_HIGH)
        right = QVBoxLayout(new)
        right.setContentsMargins(0, 0, 0, 0)
        right.setSpacing(12)
        right.addWidget(self.form)
        row = QHBoxLayout()
        told = label(words.WHITE_IS, "strong", wraps=False)
        told.setBuddy(self.white)
        row.addWidget(told)
        row.addWidget(self.white, 1)
        right.addLayout(row)
        self.ground.setText("")
        self.ground.setAccessibleName(words.HAVE_CARD)
        card = QHBoxLayout()
        card.addWidget(self.ground, 0, Qt.AlignmentFlag.AlignTop)
        has = label(words.HAVE_CARD)
        has.setBuddy(self.ground)
        card.addWidget(has, 1)
        right.addLayout(card)
        right.addStretch(1)
        columns.put(new, stretch=2)

    def _form(self) -> QFrame:
        sheet = QFrame()
        sheet.setObjectName("sheet")
        form = QFormLayout(sheet)
        form.setContentsMargins(16, 12, 16, 12)
        form.addRow(label(words.ADD_NEW, "heading"))
        for told, box in (
            (words.NAME, self.name),
            (words.FINISH, self.family),
            (words.TIN, self.tin),
            (words.PRICE, self.price),
            (words.SOLIDS, self.solids),
        ):
            box.setAccessibleName(told)
            form.addRow(told, box)
        form.addRow(self.trouble)
        form.addRow(self.add)
        return sheet

    def show_sitting(self, sitting: Sitting, lines: Sequence[PaintLine]) -> None:
        """Show what is chosen of these paints."""
        self._sitting, self._lines = sitting, tuple(lines)
        self.paints.blockSignals(True)
        at = self.paints.currentRow()
        self.paints.clear()
        for line in self._lines:
            self._entry(line.paint.id, line.paint.name, screen_colour(line.dry).name())
        for tin in sitting.new:
            self._entry(tin.id, f"{tin.name}, {words.family_item(tin.family)}", "")
        self.paints.setCurrentRow(max(0, at))
        self.paints.blockSignals(False)
        self.ground.setChecked(sitting.ground)
        self._show_whites()

    def _entry(self, id_: str, told: str, colour: str) -> None:
        entry = QListWidgetItem(told)
        entry.setData(_ID, id_)
        entry.setFlags(entry.flags() | Qt.ItemFlag.ItemIsUserCheckable)
        on = id_ in self._sitting.ids
        entry.setCheckState(Qt.CheckState.Checked if on else Qt.CheckState.Unchecked)
        entry.setIcon(swatch(colour, _SWATCH))
        self.paints.addItem(entry)

    def _show_whites(self) -> None:
        """Offer the whites among the chosen paints to let down with, and what is new.

        What is new may be a white, whose colour nobody has read yet.
        """
        sitting = self._sitting
        chosen = [
            line
            for line in self._lines
            if line.paint.id in sitting.ids and (line.is_white or line.paint.id == sitting.white)
        ]
        chosen.sort(key=lambda line: -line.dry.L)
        pairs = [(tin.id, tin.name) for tin in sitting.new if tin.id in sitting.ids]
        pairs += [(line.paint.id, line.paint.name) for line in chosen]
        self.white.clear()
        self.white.addItem(words.NO_WHITE, "")
        for id_, name in pairs:
            self.white.addItem(name, id_)
        self.white.setCurrentIndex(max(0, self.white.findData(sitting.white)))

    def _ticked(self, entry: QListWidgetItem) -> None:
        id_, sitting = str(entry.data(_ID)), self._sitting
        ids = tuple(one for one in sitting.ids if one != id_)
        white = sitting.white
        if entry.checkState() is Qt.CheckState.Checked:
            ids = (*ids, id_)
            white = white or self._if_white(id_)
        elif white == id_:
            white = ""
        self._sitting = replace(sitting, ids=ids, white=white)
        self._show_whites()
        self.changed.emit(self._sitting)

    def _if_white(self, id_: str) -> str:
        light = [line.paint.id for line in self._lines if line.is_white]
        return id_ if id_ in light else ""

    def _ground_ticked(self, on: bool) -> None:  # noqa: FBT001 - as the box tells it
        self._sitting = replace(self._sitting, ground=on)
        self.changed.emit(self._sitting)

    def _white_chosen(self) -> None:
        self._sitting = replace(self._sitting, white=str(self.white.currentData()))
        self.changed.emit(self._sitting)

    def _add(self) -> None:
        """Add a new paint, or say what is wrong with what was entered."""
        sitting = self._sitting
        taken = [line.paint.id for line in self._lines] + [tin.id for tin in sitting.new]
        try:
            tin = new_tin(
                self.name.text(),
                Family(self.family.currentData()),
                taken=taken,
                tin_ml=self.tin.value() or None,
                price=self.price.value() or None,
                volume_solids=self.solids.value() / 100 or None,
            )
        except MendableError as error:
            self.trouble.setText(shelf_words.trouble(error))
            self.trouble.show()
            return
        self.trouble.hide()
        for box in (self.tin, self.price, self.solids):
            box.setValue(0)
        self.name.clear()
        more = replace(
            sitting,
            new=(*sitting.new, tin),
            ids=(*sitting.ids, tin.id),
            white=sitting.white or (tin.id if _is_called_white(tin.name) else ""),
        )
        self.show_sitting(more, self._lines)
        self.paints.scrollToBottom()
        self.name.setFocus()
        self.changed.emit(more)


def _is_called_white(name: str) -> bool:
    """Tell whether a new paint is a white by its name."""
    white = words.WHITE_WORD.casefold()
    return any(word.endswith(white) for word in name.casefold().split())
