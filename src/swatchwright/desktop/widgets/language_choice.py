"""Choosing the language of the window, and starting again to speak it."""

from __future__ import annotations

from PySide6.QtGui import QAction, QActionGroup
from PySide6.QtWidgets import QMenu, QToolButton

from swatchwright.acts.habits import keep_language
from swatchwright.desktop.widgets.offer import Offer
from swatchwright.desktop.words import language as words
from swatchwright.language import language, languages

__all__ = ["LanguageButton", "LanguageOffer"]


class LanguageOffer(Offer):
    """Hidden until another language is chosen; then it says in that one when it is spoken."""

    def __init__(self) -> None:
        super().__init__(words.start_again(language()), words.later(language()))

    def offer(self, code: str) -> None:
        """Say in a language when it is spoken; nothing if it is the one in use."""
        self.told.setText(words.from_next_start(code))
        self.take.setText(words.start_again(code))
        self.leave.setText(words.later(code))
        self.setVisible(code != language())


class LanguageButton(QToolButton):
    """Shows the language in use and a menu of all, each by its own name."""

    def __init__(self, offer: LanguageOffer) -> None:
        super().__init__()
        self._offer = offer
        self.setText(words.OWN_NAMES.get(language(), language()))
        self.setAccessibleName(words.LANGUAGE)
        self.setToolTip(words.LANGUAGE_TIP)
        menu, group = QMenu(self), QActionGroup(self)
        self.choices: dict[str, QAction] = {}
        for code in languages():
            action = menu.addAction(words.OWN_NAMES.get(code, code))
            action.setCheckable(True)
            action.setChecked(code == language())
            action.triggered.connect(lambda _=False, c=code: self._choose(c))
            group.addAction(action)
            self.choices[code] = action
        self.setMenu(menu)
        self.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)

    def _choose(self, code: str) -> None:
        keep_language(code)
        self._offer.offer(code)
