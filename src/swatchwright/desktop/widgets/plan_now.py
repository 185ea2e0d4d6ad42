"""What is on the piece now, and the question of lead where that matters."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QButtonGroup, QCheckBox, QFrame, QRadioButton, QVBoxLayout, QWidget

from swatchwright.acts.plan_job import answered
from swatchwright.desktop.widgets.piece_fields import add_row, choice, form, label
from swatchwright.desktop.words import plan as words
from swatchwright.piece.work.order import Age, Lead, PlanOrder, Surface, Use

__all__ = ["LeadQuestion", "PlanNow"]

_BARE = (Surface.RAW, Surface.LAMINATE)


class LeadQuestion(QFrame):
    """Asks whether what is on the piece holds lead; neither answer is there before one is given.

    Signals
    -------
    answered(Lead)
        One of the answers was chosen.
    """

    answered = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("lead")
        self.setStyleSheet("#lead { border: 2px solid palette(window-text); border-radius: 8px; }")
        self.setAccessibleName(words.LEAD_HEAD)
        self.setAccessibleDescription(words.LEAD_ASK)
        self._group = QButtonGroup(self)
        self.answers: dict[Lead, QRadioButton] = {}
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 10, 12, 12)
        column.setSpacing(6)
        column.addWidget(label(f"▲ {words.LEAD_HEAD}", "heading"))
        column.addWidget(label(words.LEAD_ASK))
        for lead, text in words.LEAD_WORDS.items():
            button = QRadioButton(text)
            button.clicked.connect(lambda _=False, given=lead: self.answered.emit(given))
            self._group.addButton(button)
            self.answers[lead] = button
            column.addWidget(button)

    def show_answer(self, lead: Lead) -> None:
        """Show what was answered, or that nothing was."""
        if lead in self.answers:
            self.answers[lead].setChecked(True)
            return
        self._group.setExclusive(False)
        for button in self.answers.values():
            button.setChecked(False)
        self._group.setExclusive(True)


class PlanNow(QWidget):
    """Fields for what is on the piece, and who will live with it.

    Signals
    -------
    changed(PlanOrder)
        One of them was changed; the order with it.
    """

    changed = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._order: PlanOrder | None = None
        self.surface = choice([(words.surface_word(s), s) for s in Surface], words.SURFACE)
        self.age = choice([(words.AGE_WORDS[a], a) for a in Age], words.AGE)
        self.lead = LeadQuestion()
        self.ticks = {
            "stain_block": QCheckBox(words.STAINS),
            "repairs": QCheckBox(words.REPAIRS),
            "fittings": QCheckBox(words.FITTINGS),
        }
        self.uses = {use: QCheckBox(words.USE_WORDS[use]) for use in Use}
        self._rows = form()
        add_row(self._rows, words.SURFACE, self.surface)
        add_row(self._rows, words.AGE, self.age)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addLayout(self._rows)
        column.addWidget(self.lead)
        for box in (*self.ticks.values(), *self.uses.values()):
            column.addWidget(box)
            box.clicked.connect(self._changed)
        for field in (self.surface, self.age):
            field.activated.connect(self._changed)
        self.lead.answered.connect(self._answered)

    def show_order(self, order: PlanOrder) -> None:
        """Show what an order says."""
        self._order = order
        self.surface.setCurrentIndex(self.surface.findData(order.surface))
        self.age.setCurrentIndex(self.age.findData(order.age))
        self._rows.setRowVisible(self.age, order.surface not in _BARE)
        self.lead.setVisible(order.lead_asked)
        self.lead.show_answer(order.lead)
        for name, box in self.ticks.items():
            box.setChecked(bool(getattr(order, name)))
            box.setVisible(name == "fittings" or not order.painted)
        for use, box in self.uses.items():
            box.setChecked(use in order.uses)

    def _answered(self, lead: Lead) -> None:
        if self._order is not None:
            self.changed.emit(replace(self._order, lead=lead))

    def _changed(self) -> None:
        if self._order is None:
            return
        order = replace(
            self._order,
            surface=Surface(self.surface.currentData()),
            age=Age(self.age.currentData()),
            stain_block=self.ticks["stain_block"].isChecked(),
            repairs=self.ticks["repairs"].isChecked(),
            fittings=self.ticks["fittings"].isChecked(),
            uses=tuple(use for use, box in self.uses.items() if box.isChecked()),
        )
        self.changed.emit(answered(order))
