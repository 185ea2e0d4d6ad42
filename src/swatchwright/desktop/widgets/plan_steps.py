"""The steps of a plan as a dated list, with what to take care of where it binds."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QLabel, QVBoxLayout, QWidget

from swatchwright.acts.plan import PlannedWork
from swatchwright.desktop.widgets.piece_fields import label
from swatchwright.desktop.words import plan as words
from swatchwright.language.dates import day_and_month
from swatchwright.piece.work.cautions import Danger
from swatchwright.piece.work.plan import Step

__all__ = ["DaySheet", "PlanSteps"]


class DaySheet(QFrame):
    """A day of the plan with its steps."""

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("sheet")
        self.used = True
        self.heading = label("", "heading")
        self.steps = QLabel()
        self.steps.setTextFormat(Qt.TextFormat.RichText)
        self.steps.setWordWrap(True)
        self.steps.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        column = QVBoxLayout(self)
        column.setContentsMargins(14, 10, 14, 12)
        column.setSpacing(6)
        column.addWidget(self.heading)
        column.addWidget(self.steps)

    def show_steps(self, heading: str, html: Sequence[str]) -> None:
        """Write the steps of a day out."""
        self.heading.setText(heading)
        self.steps.setText("".join(f"<p style='margin: 0 0 9px 0'>{step}</p>" for step in html))
        self.use(used=True)

    def use(self, *, used: bool) -> None:
        """Show the sheet, or put it aside; showing what is shown would lay it out anew."""
        if used != self.used:
            self.used = used
            self.setVisible(used)


class PlanSteps(QWidget):
    """A sheet for each day, on it its steps; a caution is told in full where it first binds.

    Sheets are used again: making them anew for every change of a setting would be felt.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.sheets: list[DaySheet] = []
        self._of_step: dict[int, DaySheet] = {}
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(10)

    def show_plan(self, made: PlannedWork) -> None:
        """Write all steps out, then what was assumed."""
        seen: set[Danger] = set()
        self._of_step = {}
        used = 0
        for day, group in groupby(made.plan.steps, lambda step: step.start[:10]):
            sheet = self._sheet(used)
            sheet.show_steps(day_and_month(day), self._written(sheet, list(group), seen))
            used += 1
        self._sheet(used).show_steps(words.NOTES, [words.note_html(n) for n in made.plan.notes])
        for sheet in self.sheets[used + 1 :]:
            sheet.use(used=False)

    def _written(self, sheet: DaySheet, steps: list[Step], seen: set[Danger]) -> list[str]:
        written = []
        for step in steps:
            written.append(words.step_html(step, seen))
            seen.update(step.cautions)
            self._of_step[step.number] = sheet
        return written

    def _sheet(self, place: int) -> DaySheet:
        while len(self.sheets) <= place:
            made = DaySheet()
            self.sheets.append(made)
            self._column.addWidget(made)
        return self.sheets[place]

    def sheet_of(self, number: int) -> DaySheet | None:
        """Give the sheet that a step stands on; None where there is no such step."""
        return self._of_step.get(number)

    def text(self) -> str:
        """Give all that is written."""
        return "\n".join(s.steps.text() for s in self.sheets if s.used)
