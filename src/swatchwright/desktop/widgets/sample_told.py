"""The sample beside the cloth: both colours touching, the difference in words, then figures."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from swatchwright.acts.sample_judged import How, Judged
from swatchwright.desktop.widgets.photo_findings import PhotoFindings
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
        for told in (self.near, self.figures):
            told.setToolTip(words.FIGURES_TIP)
        self.against = label("", "quiet")
        self.misread = label(words.MISREAD, "warn")
        self.warnings = PhotoFindings()
        self.waiting = label(words.NO_DIFFERENCE, "quiet")
        self.ask = button(words.KEEP, self.keep.emit, "main", tip=words.KEEP_TIP)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(6)
        for part in (
            self.waiting,
            self.misread,
            self.field,
            self.words,
            self.near,
            self.figures,
            self.against,
            self.warnings,
            self.ask,
        ):
            rows.addWidget(part)
        self.show_judged(None)

    def show_judged(self, judged: Judged | None, apart: float | None = None) -> None:
        """Show a comparison.

        `apart` is how far the cloth is from the colour that was wanted, where that is more than
        both photos leave in doubt.
        """
        there = judged is not None
        self.waiting.setVisible(not there)
        misread = judged is not None and judged.misread
        self.ask.setVisible(there)
        for part in (self.field, self.words, self.figures):
            part.setVisible(there and not misread)
        self.misread.setVisible(misread)
        self.against.setVisible(judged is not None and judged.how is How.PHOTO and not misread)
        near = "" if judged is None or misread else words.nearness(judged)
        self.near.setVisible(bool(near))
        # A grey that is none is told of beside the photo, and nothing else is the matter.
        found = () if judged is None or misread else judged.findings
        self.warnings.show_findings(tuple(f"{one.text} {one.mend}" for one in found))
        self.warnings.setVisible(bool(found))
        if judged is None:
            return
        fields = [(words.FIELD_CLOTH, judged.cloth), (words.FIELD_SAMPLE, judged.sample)]
        self.field.show_colours(fields, words.field_name(judged))
        self.words.setText(words.difference(judged))
        self.near.setText(near)
        self.figures.setText(words.figures(judged))
        self.against.setText(words.AGAINST if apart is None else words.two_photos(apart))
        self.ask.setText(words.KEEP_ALL_THE_SAME if misread else words.KEEP)
