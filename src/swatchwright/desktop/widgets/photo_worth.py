"""What the photo is worth for the wanted colour, and which reference would make it worth more."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from swatchwright.acts.colours import helpful_references
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.shelf_bits import button, label
from swatchwright.desktop.words import photo as words
from swatchwright.desktop.words.bits import SCALE_TIP
from swatchwright.photo.advise import Advice

__all__ = ["PhotoWorth"]

_GAP = 4


class PhotoWorth(QWidget):
    """A line on how sure the wanted colour is, and a quiet one on what to add.

    Signals
    -------
    add(str)
        A further reference is to be marked, of this kind; empty if that is still open.
    """

    add = Signal(str)

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self._advice: Advice | None = None
        self.line = label("", "quiet")
        self.help = label("", "small")
        self.add_it = button(words.ADD_IT, self._add_it, "little", tip=words.ADD_IT_TIP)
        self.add_other = button(words.ADD, lambda: self.add.emit(""), "little", tip=words.ADD_TIP)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(_GAP)
        rows.addWidget(self.line)
        row = BreakingRow(6)
        row.put(self.help, stretches=True)
        row.put(self.add_it, self.add_other, pushed=True)
        rows.addWidget(row)
        self.hide()

    def room(self) -> int:
        """Give the height of the quiet line in its two lines, in pixels."""
        lines = 2 * self.help.fontMetrics().lineSpacing() + 2
        return max(lines, self.add_other.sizeHint().height()) + _GAP

    def show_worth(self) -> None:
        """Say what the photo is worth for the colour that is wanted now."""
        found, pick = self._session.found, self._session.pick
        if found is None:
            self._session.workshop.stop("advice")
            return
        colour = found.colours[pick] if pick is not None and pick < len(found.colours) else None
        self.line.setText(words.worth_line(found, colour))
        self.line.setToolTip("" if colour is None else SCALE_TIP)
        if colour is None or not found.correction.references:
            self._session.workshop.stop("advice")
            self._advise(None)
            return

        def done(ranked: tuple[Advice, ...]) -> None:
            if self._session.found is found:
                self._advise(ranked[0])

        self._session.workshop.start(
            "advice", words.WEIGHING, lambda _: helpful_references(found, colour), done
        )

    def _advise(self, advice: Advice | None) -> None:
        text = words.help_line(advice)
        self._advice = advice if text else None
        self.help.setText(text)
        self.add_it.setVisible(bool(text))
        self.add_it.setAccessibleName(f"{words.ADD_IT}: {text}")

    def _add_it(self) -> None:
        if self._advice is not None:
            self.add.emit(words.kind_of(self._advice))
