"""What is known of the photo's file, and what the light was; shown on asking."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.fields import ChoiceField
from swatchwright.desktop.widgets.shelf_bits import label
from swatchwright.desktop.words import photo as words

__all__ = ["PhotoAbout"]


class PhotoAbout(QWidget):
    """A button's worth of facts: light, file, assumptions.

    Signals
    -------
    changed()
        The facts were shown or put away.
    """

    changed = Signal()

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self.toggle = QPushButton(words.MORE)
        self.toggle.setObjectName("little")
        self.toggle.setCheckable(True)
        self.toggle.setAccessibleName(words.MORE)
        self.toggle.toggled.connect(lambda _: self.show_facts())
        self.light = ChoiceField()
        self.light.setAccessibleName(words.LIGHT)
        for word, kind in words.LIGHTS:
            self.light.addItem(word, kind)
        self.light.activated.connect(self._light_told)
        self.facts = label("", "small")
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(4)
        row = QHBoxLayout()
        told = label(words.LIGHT, wraps=False)
        told.setBuddy(self.light)
        row.addWidget(told)
        row.addWidget(self.light)
        row.addStretch(1)
        rows.addLayout(row)
        rows.addWidget(self.facts)
        session.colours_changed.connect(self.show_facts)
        session.marks_changed.connect(self.show_facts)
        self.show_facts()

    @property
    def asked(self) -> bool:
        """Whether the facts are asked for, and there are any."""
        return self.toggle.isChecked() and self._session.found is not None

    def show_facts(self) -> None:
        """Show the facts, if they are asked for and known."""
        found = self._session.found
        self.toggle.setVisible(found is not None)
        self.setVisible(self.asked)
        self.changed.emit()
        kinds = [kind for _, kind in words.LIGHTS]
        self.light.setCurrentIndex(kinds.index(self._session.marks.light))
        if found is None:
            return
        told = words.file_line(found.photo.facts)
        self.toggle.setToolTip(f"{words.MORE_TIP}\n{told}")
        self.facts.setText(" ".join([told, words.light_told(found), *found.notes]))

    def _light_told(self, place: int) -> None:
        marks = replace(self._session.marks, light=words.LIGHTS[place][1])
        self._session.set_marks(marks, words.DID_LIGHT)
