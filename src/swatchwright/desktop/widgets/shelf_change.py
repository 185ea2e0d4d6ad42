"""Changing a paint of the shelf in place: its name, its tins and what they cost."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFormLayout, QFrame, QLineEdit, QVBoxLayout, QWidget

from swatchwright.acts.own_paint import name_and_tins
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.shelf_bits import button, label, scrolled
from swatchwright.desktop.widgets.shelf_tins import ShelfTins
from swatchwright.desktop.words import own_paint as words
from swatchwright.desktop.words import shelf as shelf_words
from swatchwright.errors import MendableError
from swatchwright.paint.paints import Paint

__all__ = ["ShelfChange"]

_WIDEST = 620


class ShelfChange(QWidget):
    """The form for a paint that is on the shelf.

    Signals
    -------
    changed(str, str, object)
        The paint of this id is to have this name and these tins.
    left()
        Back to the shelf.
    """

    changed = Signal(str, str, object)
    left = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._id = ""
        self.name = QLineEdit()
        self.name.setObjectName("typed")
        self.name.setAccessibleName(words.NAME)
        self.tins = ShelfTins()
        self.trouble = label(name="warn")
        self.trouble.hide()
        self.keep = button(words.KEEP_CHANGES, self._keep, "main")
        self.back = button(shelf_words.BACK_TO_SHELF, self.left.emit)
        sheet = QFrame()
        sheet.setObjectName("sheet")
        form = QFormLayout(sheet)
        form.setContentsMargins(16, 12, 16, 12)
        form.setVerticalSpacing(10)
        form.addRow(words.NAME, self.name)
        form.addRow(words.TINS, self.tins)
        form.addRow(self.trouble)
        foot = BreakingRow()
        foot.put(self.keep)
        foot.put(self.back)
        form.addRow(foot)
        holder = QWidget()
        rows = QVBoxLayout(holder)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.addWidget(sheet)
        rows.addStretch(1)
        around = QVBoxLayout(self)
        around.setContentsMargins(0, 0, 0, 0)
        around.addWidget(scrolled(holder, words.CHANGE_HEADING))
        self.setMaximumWidth(_WIDEST)
        self.name.returnPressed.connect(self._keep)

    def show_paint(self, paint: Paint) -> None:
        """Show a paint as it is."""
        self._id = paint.id
        self.name.setText(paint.name)
        self.tins.show_tins(paint.tins)
        self.trouble.hide()

    def _keep(self) -> None:
        """Ask for the change, or say in place what is wrong with it."""
        try:
            name, tins = name_and_tins(self.name.text(), self.tins.tins())
        except MendableError as error:
            self.trouble.setText(shelf_words.trouble(error))
            self.trouble.show()
            return
        self.trouble.hide()
        self.changed.emit(self._id, name, tins)
