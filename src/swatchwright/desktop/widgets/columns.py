"""Parts of a page side by side while each has the width it needs, else one below the other."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QEvent, QSize, Qt, Signal
from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import QBoxLayout, QSplitter, QWidget

from swatchwright.desktop.letters import follow_letters, grown
from swatchwright.desktop.widgets.areas import ScrollArea
from swatchwright.desktop.widgets.breaking_row import BreakingRow

__all__ = ["Columns"]

_WIDEST = 16_777_215
"""Pixels that a widget may have of itself; QWIDGETSIZE_MAX."""


@dataclass(frozen=True, slots=True)
class _Part:
    """A part, the width it is kept to or needs, of ours, and its height below others."""

    widget: QWidget
    wide: int
    least: int
    high: int
    unbroken: Callable[[], int] | None

    def needs(self) -> int:
        """Give the width, in pixels, without which it cannot stand beside another."""
        if self.wide:
            return grown(self.wide)
        return max(grown(self.least), self.asks()) if self.least else self.whole()

    def whole(self) -> int:
        """Give the width, in pixels, at which none of its rows breaks."""
        if self.wide:
            return grown(self.wide)
        rows = self.widget.findChildren(BreakingRow)
        return max(
            grown(self.least),
            self.asks(),
            0 if self.unbroken is None else self.unbroken(),
            *(row.unbroken() for row in rows if row.isVisibleTo(self.widget)),
        )

    def asks(self) -> int:
        """Give the width, in pixels, that it needs in any case."""
        return self.widget.minimumSizeHint().width()

    def areas(self) -> list[ScrollArea]:
        """Give what is scrolled in it."""
        own = [self.widget] if isinstance(self.widget, ScrollArea) else []
        inside = [*own, *self.widget.findChildren(ScrollArea)]
        # What keeps the size of its contents is a picture with bars of its own.
        return [area for area in inside if area.widgetResizable()]


class Columns(QWidget):
    """Lays parts side by side, as a layout or a splitter does, or one below the other.

    One below the other, each is as high as all of it is, so that what is read is scrolled with the
    page, and in one direction only, as WCAG 2.2, 1.4.10 asks [WCAG22].

    Parameters
    ----------
    gap
        Pixels between parts.
    shares
        Widths to begin with, where she may drag the border between two parts.

    Signals
    -------
    turned(bool)
        They stand side by side now, or no longer.
    """

    turned = Signal(bool)

    def __init__(self, gap: int = 12, *, shares: Sequence[int] = ()) -> None:
        super().__init__()
        self.abreast = True
        self._gap, self._shares = gap, list(shares)
        self._parts: list[_Part] = []
        self._box = QBoxLayout(QBoxLayout.Direction.LeftToRight, self)
        self._box.setContentsMargins(0, 0, 0, 0)
        self._box.setSpacing(gap)
        self._splitter = QSplitter(Qt.Orientation.Horizontal) if shares else None
        if self._splitter is not None:
            self._splitter.setChildrenCollapsible(False)
            self._splitter.setHandleWidth(gap)
            self._splitter.splitterMoved.connect(self._dragged)
            self._box.addWidget(self._splitter)
        follow_letters(self, self._fit)

    def put(
        self,
        part: QWidget,
        *,
        stretch: int = 0,
        wide: int = 0,
        least: int = 0,
        high: int = 0,
        unbroken: Callable[[], int] | None = None,
    ) -> None:
        """Add a part.

        Parameters
        ----------
        part
            What stands beside the part before it, or below.
        stretch
            What it takes of the room that is left, in proportion.
        wide
            Pixels of ours that it is kept to beside others, or, where she drags the border, that
            it always has; 0 for what it asks itself.
        least
            Pixels of ours without which it goes below, where that is more than it asks itself; 0
            where it goes below rather than that a row of it breaks.
        high
            Pixels that it has at the least where it stands below others, for what has no height.
        unbroken
            Tells the width at which none of its rows breaks, where these have edges about them.
        """
        self._parts.append(_Part(part, wide, least, high, unbroken))
        if self._splitter is None:
            self._box.addWidget(part, stretch)
        else:
            self._splitter.addWidget(part)
            self._splitter.setStretchFactor(len(self._parts) - 1, stretch)
            self._splitter.setSizes(self._shares)
        self._fit()

    def parts(self) -> tuple[QWidget, ...]:
        """Give what stands in it, from left to right or from the top down."""
        return tuple(part.widget for part in self._parts)

    def abreast_width(self) -> int:
        """Give the width, in pixels, at which all stand side by side."""
        return self._together([part.needs() for part in self._shown()])

    def _together(self, widths: Sequence[int]) -> int:
        return sum(widths) + self._gap * max(len(widths) - 1, 0)

    def minimumSizeHint(self) -> QSize:
        """Need the width of the widest part: the others may stand below it."""
        wide = max((p.widget.minimumSizeHint().width() for p in self._shown()), default=0)
        return QSize(wide, super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Stand side by side, or one below the other."""
        super().resizeEvent(event)
        self._turn()

    def showEvent(self, event: QShowEvent) -> None:
        """Take up what has changed out of view."""
        super().showEvent(event)
        self._turn()

    def event(self, event: QEvent) -> bool:
        """Look anew once a part is larger or smaller."""
        done = super().event(event)
        if event.type() == QEvent.Type.LayoutRequest:
            self._turn()
        return done

    def _dragged(self) -> None:
        # Not the widths before it turned: in a window that grows narrow those are the least.
        if self._splitter is not None and self.abreast:
            self._shares = self._splitter.sizes()

    def _shown(self) -> list[_Part]:
        return [part for part in self._parts if not part.widget.isHidden()]

    def _turn(self) -> None:
        # Out of view it has no width of its own yet.
        if not self.isVisible():
            return
        abreast = self.width() >= self.abreast_width()
        if abreast != self.abreast:
            self._turn_to(abreast=abreast)
        self._fit()

    def _turn_to(self, *, abreast: bool) -> None:
        self.abreast = abreast
        splitter, way = self._splitter, QBoxLayout.Direction
        if splitter is None:
            self._box.setDirection(way.LeftToRight if abreast else way.TopToBottom)
        else:
            along = Qt.Orientation
            splitter.setOrientation(along.Horizontal if abreast else along.Vertical)
        for part in self._parts:
            for area in part.areas():
                area.set_whole(whole=not abreast)
        self._fit()
        if splitter is not None and abreast:
            splitter.setSizes(self._shares)
        self.turned.emit(abreast)

    def _fit(self) -> None:
        """Give each part the width that it is kept to, or the height that all of it has."""
        whole = self.width() >= self._together([part.whole() for part in self._shown()])
        for part in self._parts:
            widget = part.widget
            least = part.whole() if whole else part.needs()
            wide = least if self.abreast else 0
            widget.setMinimumWidth(wide)
            if part.wide and self._splitter is None:
                widget.setMaximumWidth(wide if self.abreast else _WIDEST)
            widget.setMinimumHeight(0 if self.abreast else self._height_of(part))

    def _height_of(self, part: _Part) -> int:
        """Give the height of a part below another; a layout knows it, a splitter does not."""
        widget = part.widget
        if self._splitter is None:
            return part.high
        if widget.hasHeightForWidth():
            return max(part.high, widget.heightForWidth(self.width()))
        return max(part.high, widget.minimumSizeHint().height())
