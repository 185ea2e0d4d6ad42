"""The rail of pages along the left edge of the bench, each a drawing and a word."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QButtonGroup, QSizePolicy, QToolButton, QVBoxLayout, QWidget

from swatchwright.desktop.letters import follow_letters, grown
from swatchwright.desktop.look import Look
from swatchwright.desktop.widgets.page_icons import page_icon

__all__ = ["Rail"]


class Rail(QWidget):
    """One button for each page; the page in view is pressed.

    Signals
    -------
    chosen(str)
        The key of the page that was pressed.
    """

    chosen = Signal(str)

    def __init__(self, pages: Sequence[tuple[str, str, str]]) -> None:
        """Take the pages as (key, word, what it is for)."""
        super().__init__()
        self.buttons: dict[str, QToolButton] = {}
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        # A window with its title still has all pages in view on a screen 720 pixels high.
        column.setSpacing(2)
        group = QButtonGroup(self)
        for number, (key, word, tip) in enumerate(pages, start=1):
            button = QToolButton()
            button.setObjectName("page")
            button.setText(word)
            button.setAccessibleName(word)
            button.setAccessibleDescription(tip)
            shortcut = QKeySequence(f"Ctrl+{number % 10}")
            button.setShortcut(shortcut)
            told = shortcut.toString(QKeySequence.SequenceFormat.NativeText)
            button.setToolTip(f"{tip} ({told})")
            button.setCheckable(True)
            button.setIconSize(QSize(24, 24))
            button.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextUnderIcon)
            button.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
            button.clicked.connect(lambda _=False, k=key: self.chosen.emit(k))
            group.addButton(button)
            column.addWidget(button)
            self.buttons[key] = button
        column.addStretch(1)
        follow_letters(self, lambda: self.setFixedWidth(grown(76)))

    @property
    def shown(self) -> str:
        """The key of the page in view."""
        return next((key for key, button in self.buttons.items() if button.isChecked()), "")

    def show_page(self, key: str) -> None:
        """Press the button of the page in view."""
        self.buttons[key].setChecked(True)

    def set_look(self, look: Look) -> None:
        """Draw the icons in the ink of a bench."""
        for key, button in self.buttons.items():
            button.setIcon(page_icon(key, look.ink, look.press_ink))
