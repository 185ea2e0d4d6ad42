"""The sample beside the cloth: both colours touching, the difference in words, then figures."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from swatchwright.acts.sample import Advice, expected_beside
from swatchwright.acts.sample_judged import Judged
from swatchwright.desktop.widgets.piece_fields import label
from swatchwright.desktop.widgets.sample_field import SampleField
from swatchwright.desktop.widgets.shelf_bits import button
from swatchwright.desktop.words import sample as words

__all__ = ["SampleTold"]


class SampleTold(QWidget):
    """What was found, and the button that keeps it and asks what to add.

    Signals
    -------
    keep()
        This is the sample: what is to be added?
    """

    keep = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.field = SampleField()
        self.words = label("", "big")
        self.near = label()
        self.figures = label("", "quiet")
        self.figures.setToolTip(words.FIGURES_TIP)
        self.warnings = label("", "warn")
        self.waiting = label(words.NO_DIFFERENCE, "quiet")
        self.ask = button(words.KEEP, self.keep.emit, "main", tip=words.KEEP_TIP)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(6)
        for part in (
            self.waiting,
            self.field,
            self.words,
            self.near,
            self.figures,
            self.warnings,
            self.ask,
        ):
            rows.addWidget(part)
        self.show_judged(None, None)

    def show_judged(self, judged: Judged | None, advice: Advice | None) -> None:
        """Show a comparison, and beside it what may be expected after the last advice."""
        there = judged is not None
        self.waiting.setVisible(not there)
        for part in (self.field, self.words, self.figures, self.ask):
            part.setVisible(there)
        self.near.setVisible(judged is not None and bool(words.nearness(judged)))
        self.warnings.setVisible(there and bool(judged and judged.findings))
        if judged is None:
            return
        fields = [(words.FIELD_CLOTH, judged.cloth), (words.FIELD_SAMPLE, judged.sample)]
        if advice is not None and advice.stop is None and advice.last.vector == judged.vector:
            seen = advice.fresh.outlook if advice.better_fresh else advice.after
            fields.append((words.FIELD_AFTER, expected_beside(seen, advice.cloth, judged.cloth)))
        self.field.show_colours(fields, words.field_name(judged))
        self.words.setText(words.difference(judged))
        self.near.setText(words.nearness(judged))
        self.figures.setText(words.figures(judged))
        told = [f"{found.text} {found.mend}" for found in judged.findings]
        self.warnings.setText("\n".join(told))
