"""What is left in a pot of a mix: all of it in one field, or each paint in its own."""

from __future__ import annotations

from PySide6.QtCore import QObject, QSignalBlocker, Signal
from PySide6.QtWidgets import QFormLayout, QPushButton, QSizePolicy

from swatchwright.acts.recipes import MeasuredRecipe
from swatchwright.desktop.widgets.layer_choices import CalmNumber
from swatchwright.desktop.words import pot as words

__all__ = ["PotAmounts"]

_LEAST, _MOST = 0.1, 100_000.0


class PotAmounts(QObject):
    """Rows of a form for what is in the pot; the paints are in it as in the mix, unless said.

    Signals
    -------
    changed()
        Something else is in the pot.
    """

    changed = Signal()

    def __init__(self, measured: MeasuredRecipe) -> None:
        super().__init__()
        recipe = measured.recipe
        self._shares = {p.id: s for p, s in zip(recipe.paints, recipe.shares, strict=True)}
        self._names = {p.id: p.name for p in recipe.paints}
        self.pot = _millilitres(words.LEFT)
        self.each = QPushButton(words.EACH)
        self.singles = {id_: _millilitres(name) for id_, name in self._names.items()}
        self._form: QFormLayout | None = None
        self.pot.setValue(sum(amount.ml for amount in measured.amounts))
        self._share_out()
        self.each.setCheckable(True)
        self.each.setAutoDefault(False)
        self.each.setObjectName("little")
        self.each.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Fixed)
        self.each.setToolTip(words.EACH_TIP)
        self.each.toggled.connect(self._show_singles)
        self.pot.valueChanged.connect(self._pot_changed)
        for box in self.singles.values():
            box.valueChanged.connect(self._single_changed)

    def add_to(self, form: QFormLayout) -> None:
        """Lay the rows out in a form."""
        self._form = form
        form.addRow(words.LEFT, self.pot)
        form.addRow("", self.each)
        for id_, box in self.singles.items():
            form.addRow(self._names[id_], box)
        self._show_singles(on=False)

    def volumes(self) -> list[tuple[str, float]]:
        """Give the ids and ml of what is in the pot."""
        if self.each.isChecked():
            return [(id_, box.value()) for id_, box in self.singles.items()]
        return [(id_, share * self.pot.value()) for id_, share in self._shares.items()]

    def _share_out(self) -> None:
        """Show of each paint what is in the pot by the mix."""
        for id_, box in self.singles.items():
            with QSignalBlocker(box):
                box.setValue(self._shares[id_] * self.pot.value())

    def _show_singles(self, on: bool) -> None:  # noqa: FBT001 - as Qt tells it
        self.pot.setEnabled(not on)
        for box in self.singles.values():
            if self._form is not None:
                self._form.setRowVisible(box, on)
        if not on:
            self._share_out()
        self.changed.emit()

    def _pot_changed(self) -> None:
        if not self.each.isChecked():
            self._share_out()
            self.changed.emit()

    def _single_changed(self) -> None:
        """Add up what is in the pot."""
        with QSignalBlocker(self.pot):
            self.pot.setValue(sum(box.value() for box in self.singles.values()))
        self.changed.emit()


def _millilitres(name: str) -> CalmNumber:
    box = CalmNumber(_LEAST, _MOST, 10.0)
    box.setSuffix(" ml")
    box.setAccessibleName(name)
    return box
