"""The sizes of a common piece, with fields for what it has and no others."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QComboBox, QDoubleSpinBox, QLabel, QVBoxLayout, QWidget

from swatchwright.acts.piece_job import PieceForm, has_inside
from swatchwright.desktop.widgets.piece_fields import add_row, choice, form, label, number
from swatchwright.desktop.words import piece as words
from swatchwright.piece.common import USUAL, Kind
from swatchwright.piece.part import Shape

__all__ = ["PieceSizes"]

_SIZES = ("width", "height", "depth")
_LEGS = (Shape.SQUARE_LEG, Shape.TAPERED_LEG, Shape.TURNED_LEG)


class PieceSizes(QWidget):
    """Fields for the outer sizes of a piece.

    Signals
    -------
    sized(PieceForm)
        A size was changed; the form with it.
    """

    sized = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._form: PieceForm | None = None
        self._showing = False
        self.fields: dict[str, QDoubleSpinBox] = {
            name: number(1, 6000, " mm", step=10) for name in _SIZES
        }
        self.drawers = number(0, 12)
        self.leg: QComboBox = choice([(words.LEG_NAMES[leg], leg) for leg in _LEGS], words.LEGS)
        self.inside = QCheckBox(words.INSIDE)
        self.by_hand = label("", "quiet")
        self._rows = form()
        for name, field in self.fields.items():
            add_row(self._rows, words.SIZE_NAMES[name], field)
            field.valueChanged.connect(self._changed)
        add_row(self._rows, words.DRAWERS, self.drawers)
        add_row(self._rows, words.LEGS, self.leg)
        self.drawers.valueChanged.connect(self._changed)
        self.leg.activated.connect(self._changed)
        self.inside.toggled.connect(self._changed)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addLayout(self._rows)
        column.addWidget(self.inside)
        column.addWidget(self.by_hand)

    def show_form(self, shown: PieceForm) -> None:
        """Show the sizes of a form."""
        self._showing, self._form = True, shown
        kind = shown.kind
        for name, field in self.fields.items():
            self._show_size(kind, name, field, getattr(shown, name))
        usual = None if kind is None else USUAL[kind]
        has_drawers = usual is not None and usual.drawers is not None
        self._rows.setRowVisible(self.drawers, has_drawers)
        if usual is not None and usual.drawers is not None:
            self.drawers.setMinimum(1 if usual.drawers else 0)
            self.drawers.setValue(shown.drawers or 0)
        self._rows.setRowVisible(self.leg, usual is not None and usual.leg is not None)
        self.leg.setCurrentIndex(max(0, self.leg.findData(shown.leg)))
        self.inside.setVisible(kind is not None and has_inside(kind))
        self.inside.setChecked(shown.inside)
        told = words.FROM_FILE if kind is None else words.BY_HAND if shown.by_hand else ""
        self.by_hand.setText(told)
        self.by_hand.setVisible(bool(told))
        self._showing = False

    def _show_size(self, kind: Kind | None, name: str, field: QDoubleSpinBox, mm: float) -> None:
        self._rows.setRowVisible(field, kind is not None)
        if kind is None:
            return
        names = words.RAIL_NAMES if kind is Kind.PICTURE_RAIL else words.SIZE_NAMES
        told = self._rows.labelForField(field)
        if isinstance(told, QLabel):
            told.setText(names[name])
        field.setAccessibleName(names[name])
        usual, axis = USUAL[kind], _SIZES.index(name)
        field.setRange(usual.least[axis], usual.most[axis])
        field.setSingleStep(10 if usual.most[axis] > 300 else 1)
        field.setToolTip(words.size_range(usual.least[axis], usual.most[axis]))
        if field.value() != mm:
            field.setValue(mm)

    def _changed(self) -> None:
        if self._showing or self._form is None or self._form.kind is None:
            return
        usual = USUAL[self._form.kind]
        self.sized.emit(
            replace(
                self._form,
                width=self.fields["width"].value(),
                height=self.fields["height"].value(),
                depth=self.fields["depth"].value(),
                drawers=None if usual.drawers is None else round(self.drawers.value()),
                leg=None if usual.leg is None else Shape(self.leg.currentData()),
                inside=self.inside.isChecked(),
                by_hand=False,
            )
        )
