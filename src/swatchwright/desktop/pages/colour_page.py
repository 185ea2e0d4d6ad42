"""The page of the cloth and its mixes: the photo on the left, the mixes on the right."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QSplitter, QVBoxLayout, QWidget

from swatchwright.desktop import words
from swatchwright.desktop.keeping import Keeping
from swatchwright.desktop.mix_side import MixSide
from swatchwright.desktop.photo_side import PhotoSide
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.photo_references import FurtherReferences
from swatchwright.desktop.widgets.photo_start import PhotoStart

__all__ = ["ColourPage"]

_ABREAST, _BELOW = Qt.Orientation.Horizontal, Qt.Orientation.Vertical
_GAP = 18


class ColourPage(QWidget):
    """Photo and mixes; both say themselves what they wait for.

    They stand side by side where both have the width that their controls need in one row each, and
    one below the other where they have not, with letters twice as large or in a narrow window. Then
    the page is as high as all of it is, and is scrolled in that direction only, as WCAG 2.2, 1.4.10
    asks [WCAG22].
    """

    def __init__(self, session: Session, keeping: Keeping) -> None:
        super().__init__()
        self.setAccessibleName(words.PAGE_COLOUR)
        self.photo_side = PhotoSide(session)
        self.mix_side = MixSide(session, keeping)
        self._rows = [(side, _breaking(side)) for side in (self.photo_side, self.mix_side)]
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        self._sides = QSplitter(_ABREAST)
        self._sides.setChildrenCollapsible(False)
        self._sides.setHandleWidth(_GAP)
        self._sides.addWidget(self.photo_side)
        self._sides.addWidget(self.mix_side)
        self._sides.setStretchFactor(0, 8)
        self._sides.setStretchFactor(1, 12)
        self._shares = [520, 740]
        self._sides.setSizes(self._shares)
        rows.addWidget(self._sides)

    def dressed_parts(self) -> tuple[QWidget, ...]:
        """Give the sides, each dressed by itself."""
        return self.photo_side, self.mix_side

    def arrive(self) -> None:
        """Need nothing: the sides draw from the session's signals."""

    @property
    def abreast(self) -> bool:
        """Whether photo and mixes stand side by side."""
        return self._sides.orientation() == _ABREAST

    def abreast_width(self) -> int:
        """Give the width, in pixels, at which they can."""
        return sum(self._unbroken()) + _GAP

    def minimumSizeHint(self) -> QSize:
        """Need the width of the wider side: the other may stand below it."""
        wide = max(side.minimumSizeHint().width() for side, _ in self._rows)
        return QSize(wide, super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Stand side by side, or one below the other."""
        super().resizeEvent(event)
        self._turn()

    def event(self, event: QEvent) -> bool:
        """Look anew once something on the sides is larger or smaller."""
        done = super().event(event)
        if event.type() == QEvent.Type.LayoutRequest:
            self._turn()
        return done

    def _unbroken(self) -> list[int]:
        """Give the width of each side, in pixels, at which none of its rows breaks."""
        return [
            max(
                side.minimumSizeHint().width(),
                *(row.unbroken() for row in rows if row.isVisibleTo(side)),
            )
            for side, rows in self._rows
        ]

    def _turn(self) -> None:
        wide = self._unbroken()
        abreast = self.width() >= sum(wide) + _GAP
        if abreast != self.abreast:
            self._turn_to(abreast=abreast)
        for (side, _), unbroken in zip(self._rows, wide, strict=True):
            if abreast:
                side.setMinimumSize(unbroken, 0)
            elif (layout := side.layout()) is not None:
                side.setMinimumSize(0, layout.totalMinimumHeightForWidth(self.width()))

    def _turn_to(self, *, abreast: bool) -> None:
        if not abreast:
            self._shares = self._sides.sizes()
        for side, _ in self._rows:
            side.setMinimumSize(0, 0)
        self._sides.setOrientation(_ABREAST if abreast else _BELOW)
        self.photo_side.set_abreast(abreast=abreast)
        self.mix_side.set_abreast(abreast=abreast)
        if abreast:
            self._sides.setSizes(self._shares)


def _breaking(side: QWidget) -> list[BreakingRow | FurtherReferences | PhotoStart]:
    """Give what breaks on a side where it is narrow."""
    return [
        *side.findChildren(BreakingRow),
        *side.findChildren(FurtherReferences),
        *side.findChildren(PhotoStart),
    ]
