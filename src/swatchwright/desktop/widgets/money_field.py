"""The field in which she names her money."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtGui import QValidator
from PySide6.QtWidgets import QLineEdit, QWidget

from swatchwright.acts.habits import MOST_MONEY, is_money, may_be_money
from swatchwright.desktop.letters import follow_letters, grown
from swatchwright.desktop.money import follow_money, name_money
from swatchwright.desktop.words import money as words
from swatchwright.language.money import money_in_use

__all__ = ["HerMoney", "MoneyField"]


_WIDTH = 110
"""Pixels that the longest name needs."""


class MoneyField(QLineEdit):
    """A sign or a short word; what can be none cannot be typed.

    Signals
    -------
    named(str)
        She has named it otherwise and is done: the name, empty for none.
    """

    named = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._shown = ""
        self.setPlaceholderText(words.EXAMPLE)
        self.setAccessibleName(words.NAME)
        self.setToolTip(f"<p>{words.TIP}</p>")
        self.setValidator(_Name(self))
        self.show_name("")
        self.editingFinished.connect(self._done)

    def show_name(self, name: str) -> None:
        """Show what the money is called; a name that is longer than may be typed, whole."""
        self._shown = name
        self.setMaxLength(max(MOST_MONEY, len(name)))
        if self.text() != name:
            self.setText(name)

    def shown(self) -> str:
        """Give the name as it was last shown or named."""
        return self._shown

    def _done(self) -> None:
        name = self.text().strip()
        if name != self._shown:
            self.show_name(name)
            self.named.emit(name)


class HerMoney(MoneyField):
    """The same, for all of the program: it shows what is kept, and keeps what is named."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("typed")
        follow_letters(self, lambda: self.setFixedWidth(grown(_WIDTH)))
        self.named.connect(name_money)
        follow_money(self, lambda: self.show_name(money_in_use()))


class _Name(QValidator):
    """Lets only what may become a name be typed; what is none yet is left for the one before."""

    def __init__(self, field: MoneyField) -> None:
        super().__init__(field)
        self._field = field

    def validate(self, text: str, place: int) -> tuple[QValidator.State, str, int]:
        """Take a name as far as it is typed."""
        if not may_be_money(text):
            return QValidator.State.Invalid, text, place
        whole = not text.strip() or is_money(text.strip())
        state = QValidator.State.Acceptable if whole else QValidator.State.Intermediate
        return state, text, place

    def fixup(self, text: str) -> str:  # noqa: ARG002 - Qt hands it over
        """Go back to the name that was shown."""
        return self._field.shown()
