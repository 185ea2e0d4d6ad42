"""The page of the cloth and its mixes: the photo on the left, the mixes on the right."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from swatchwright.desktop import words
from swatchwright.desktop.keeping import Keeping
from swatchwright.desktop.mix_side import MixSide
from swatchwright.desktop.photo_side import PhotoSide
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.columns import Columns
from swatchwright.desktop.widgets.photo_references import FurtherReferences
from swatchwright.desktop.widgets.photo_start import PhotoStart

__all__ = ["ColourPage"]

_GAP = 18
_SHARES = (520, 740)


class ColourPage(QWidget):
    """Photo and mixes; both say themselves what they wait for.

    They stand side by side where both have the width that their controls need in one row each, and
    one below the other where they have not, with letters twice as large or in a narrow window.
    """

    def __init__(self, session: Session, keeping: Keeping) -> None:
        super().__init__()
        self.setAccessibleName(words.PAGE_COLOUR)
        self.photo_side = PhotoSide(session)
        self.mix_side = MixSide(session, keeping)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        self._sides = Columns(_GAP, shares=_SHARES)
        self._sides.turned.connect(self._turned)
        self._sides.put(self.photo_side, stretch=8, unbroken=self._photo_unbroken)
        self._sides.put(self.mix_side, stretch=12)
        rows.addWidget(self._sides)

    def dressed_parts(self) -> tuple[QWidget, ...]:
        """Give the sides, each dressed by itself."""
        return self.photo_side, self.mix_side

    def arrive(self) -> None:
        """Need nothing: the sides draw from the session's signals."""

    @property
    def abreast(self) -> bool:
        """Whether photo and mixes stand side by side."""
        return self._sides.abreast

    def abreast_width(self) -> int:
        """Give the width, in pixels, at which they can."""
        return self._sides.abreast_width()

    def _photo_unbroken(self) -> int:
        """Give the width, in pixels, at which nothing on the side of the photo breaks."""
        side = self.photo_side
        breaking: list[FurtherReferences | PhotoStart] = [
            *side.findChildren(FurtherReferences),
            *side.findChildren(PhotoStart),
        ]
        return max((one.unbroken() for one in breaking if one.isVisibleTo(side)), default=0)

    def _turned(self, abreast: bool) -> None:  # noqa: FBT001 - as the signal tells it
        self.photo_side.set_abreast(abreast=abreast)
        self.mix_side.set_abreast(abreast=abreast)
