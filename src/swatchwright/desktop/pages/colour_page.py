"""The page of the cloth and its mixes: the photo on the left, the mixes on the right."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QSplitter, QVBoxLayout, QWidget

from swatchwright.desktop import words
from swatchwright.desktop.keeping import Keeping
from swatchwright.desktop.mix_side import MixSide
from swatchwright.desktop.photo_side import PhotoSide
from swatchwright.desktop.session import Session

__all__ = ["ColourPage"]


class ColourPage(QWidget):
    """Photo and mixes side by side; both say themselves what they wait for."""

    def __init__(self, session: Session, keeping: Keeping) -> None:
        super().__init__()
        self.setAccessibleName(words.PAGE_COLOUR)
        self.photo_side = PhotoSide(session)
        self.mix_side = MixSide(session, keeping)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        sides = QSplitter(Qt.Orientation.Horizontal)
        sides.setChildrenCollapsible(False)
        sides.setHandleWidth(18)
        sides.addWidget(self.photo_side)
        sides.addWidget(self.mix_side)
        sides.setStretchFactor(0, 8)
        sides.setStretchFactor(1, 12)
        sides.setSizes([520, 740])
        rows.addWidget(sides)

    def arrive(self) -> None:
        """Need nothing: the sides draw from the session's signals."""
