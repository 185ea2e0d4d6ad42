"""How the preview is seen, and what is done with the sheet."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QButtonGroup, QMenu, QPushButton

from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.words import sheet as words

__all__ = ["SheetBar"]


class SheetBar(BreakingRow):
    """Buttons above the preview.

    Signals
    -------
    full_wanted(bool)
        Pages are to be seen as large as on paper, or a whole one.
    grey_wanted(bool)
        They are to be seen in black and white, or in colour.
    copy_wanted(int)
        The text of the code of a zone is to be copied, by its place on the sheet.
    print_wanted()
        The sheet is to be printed.
    save_wanted()
        The sheet is to be written to a file.
    """

    full_wanted = Signal(bool)
    grey_wanted = Signal(bool)
    copy_wanted = Signal(int)
    print_wanted = Signal()
    save_wanted = Signal()

    def __init__(self) -> None:
        super().__init__(6)
        self.whole = _button(words.WHOLE, words.WHOLE_TIP, words.WHOLE_KEY)
        self.full = _button(words.FULL, words.FULL_TIP, words.FULL_KEY)
        self.grey = _button(words.GREY, words.GREY_TIP)
        self.copy = _button(words.COPY, words.COPY_TIP)
        self.print = _button(words.PRINT, words.PRINT_TIP, words.PRINT_KEY)
        self.save = _button(words.SAVE, words.SAVE_TIP, words.SAVE_KEY)
        self.save.setObjectName("main")
        self.menu = QMenu(self)
        self._lay_out()
        self.whole.clicked.connect(lambda: self.full_wanted.emit(False))
        self.full.clicked.connect(lambda: self.full_wanted.emit(True))
        self.grey.toggled.connect(self.grey_wanted)
        self.copy.clicked.connect(self._copy)
        self.print.clicked.connect(self.print_wanted)
        self.save.clicked.connect(self.save_wanted)
        self.show_zones(())

    def _lay_out(self) -> None:
        group = QButtonGroup(self)
        for button in (self.whole, self.full):
            button.setCheckable(True)
            group.addButton(button)
            self.put(button)
        self.whole.setChecked(True)
        self.grey.setCheckable(True)
        self.put(self.grey)
        self.put(self.copy, self.print, self.save, pushed=True)

    def show_zones(self, codes: Sequence[tuple[str, str]]) -> None:
        """Show whose codes can be copied, as (zone, text)."""
        self.copy.setEnabled(any(text for _, text in codes))
        self.copy.setToolTip(f"<p>{words.COPY_TIP if self.copy.isEnabled() else words.NO_CODE}</p>")
        self.menu.clear()
        self._single = len(codes) == 1
        for place, (zone, text) in enumerate(codes):
            action = self.menu.addAction(words.copy_of(zone))
            action.setEnabled(bool(text))
            action.triggered.connect(lambda _=False, at=place: self.copy_wanted.emit(at))

    def _copy(self) -> None:
        if self._single:
            self.copy_wanted.emit(0)
        else:
            self.menu.popup(self.copy.mapToGlobal(self.copy.rect().bottomLeft()))


def _button(text: str, tip: str, key: str = "") -> QPushButton:
    button = QPushButton(text)
    sequence = QKeySequence(key)
    told = sequence.toString(QKeySequence.SequenceFormat.NativeText)
    button.setToolTip(f"<p>{tip}{f' ({told})' if told else ''}</p>")
    button.setAccessibleDescription(tip)
    if key:
        button.setShortcut(sequence)
    return button
