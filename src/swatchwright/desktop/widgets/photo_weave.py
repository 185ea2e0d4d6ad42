"""Which colour of a weave is wanted: that of its yarn, or of the cloth from a metre away."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from swatchwright.acts.references import weave_shows
from swatchwright.desktop.session import Session
from swatchwright.desktop.words import photo as words

__all__ = ["WeaveChoice"]


class WeaveChoice(QWidget):
    """Two buttons, there only where the two colours differ to the eye."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self.buttons: dict[bool, QPushButton] = {}
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(6)
        for metre, word in ((False, words.WEAVE_YARN), (True, words.WEAVE_METRE)):
            made = QPushButton(word)
            made.setObjectName("little")
            made.setCheckable(True)
            made.setAccessibleName(words.WEAVE_NAMES[metre])
            made.setToolTip(words.WEAVE_SENTENCE)
            made.clicked.connect(lambda _=False, m=metre: self._choose(metre=m))
            self.buttons[metre] = made
            row.addWidget(made)
        session.colours_changed.connect(self.show_choice)
        session.marks_changed.connect(self.show_choice)
        self.show_choice()

    def needed(self) -> bool:
        """Tell whether there is anything to choose."""
        found = self._session.found
        if found is None or found.area is None:
            return False
        return self._session.marks.metre or weave_shows(found)

    def show_choice(self) -> None:
        """Show what is chosen."""
        self.setVisible(self.needed())
        for metre, made in self.buttons.items():
            made.setChecked(metre is self._session.marks.metre)

    def _choose(self, *, metre: bool) -> None:
        self._session.set_metre(metre=metre)
        self.show_choice()
