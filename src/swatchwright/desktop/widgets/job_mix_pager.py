"""Says which of the mixes are in view, and brings the others into it."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import QEvent, QObject, Qt, QTimer
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QScrollArea, QWidget

from swatchwright.desktop.words import keeping as words
from swatchwright.desktop.words import taken as taken_words

__all__ = ["MixPager"]


_STEPS = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}
_BY_KEY = (Qt.FocusReason.TabFocusReason, Qt.FocusReason.BacktabFocusReason)


class MixPager(QWidget):
    """A line such as “Mixes 1 to 3 of 6” between two arrows that move by one mix.

    The arrow keys do the same where the mixes were gone to, and what is gone to by the Tab key
    brings its mix into view whole.
    """

    def __init__(self, area: QScrollArea, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._area = area
        area.installEventFilter(self)
        self._columns: Sequence[QWidget] = ()
        self._hers = False
        self.told = QLabel()
        self.told.setObjectName("quiet")
        self.earlier = self._arrow(words.EARLIER, words.EARLIER_NAME, -1)
        self.later = self._arrow(words.LATER, words.LATER_NAME, 1)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        for widget in (self.earlier, self.told, self.later):
            row.addWidget(widget)
        bar = area.horizontalScrollBar()
        bar.valueChanged.connect(self._show)
        bar.rangeChanged.connect(self._show)
        self._laid = QTimer(self)
        self._laid.setSingleShot(True)
        self._laid.timeout.connect(self._show)

    def show_columns(self, columns: Sequence[QWidget], *, hers: bool = False) -> None:
        """Take the mixes that lie side by side in the area; the first may be hers, unnumbered."""
        self._columns, self._hers = columns, hers
        for column in columns:
            column.installEventFilter(self)
            for part in column.findChildren(QPushButton):
                part.installEventFilter(self)
        self._show()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Count anew once mixes are laid out: before that all of them stand at the left edge."""
        if watched is self._area:
            return self._area_key(event) or super().eventFilter(watched, event)
        if isinstance(watched, QPushButton):
            if isinstance(event, QFocusEvent) and event.gotFocus() and event.reason() in _BY_KEY:
                self._bring_soon(watched)
        elif event.type() in (QEvent.Type.Move, QEvent.Type.Resize):
            self._laid.start(0)
        return super().eventFilter(watched, event)

    def _area_key(self, event: QEvent) -> bool:
        """Move by a mix for an arrow key, and tell whether it was one."""
        if not isinstance(event, QKeyEvent) or event.type() != QEvent.Type.KeyPress:
            return False
        step = _STEPS.get(Qt.Key(event.key()))
        if step is not None:
            self._move(step)
        return step is not None

    def _bring_soon(self, part: QWidget) -> None:
        """Bring the mix that something is of into view, after the area has brought in that."""
        for place, column in enumerate(self._columns):
            if column.isAncestorOf(part):
                QTimer.singleShot(0, self, partial(self._bring, place))

    def _bring(self, place: int) -> None:
        """Bring a mix into view whole, if it is still there."""
        if place < len(self._columns):
            column, bar = self._columns[place], self._area.horizontalScrollBar()
            least = column.x() + column.width() - self._area.viewport().width()
            bar.setValue(min(max(bar.value(), least), column.x()))

    def _arrow(self, text: str, name: str, step: int) -> QPushButton:
        button = QPushButton(text)
        button.setObjectName("little")
        button.setAccessibleName(name)
        button.setToolTip(name)
        button.clicked.connect(lambda: self._move(step))
        return button

    def _in_view(self) -> list[int]:
        """Give the places of the mixes that are wholly in view, or of the first one in part."""
        left = self._area.horizontalScrollBar().value()
        right = left + self._area.viewport().width()
        spans = [(c.x(), c.x() + c.width()) for c in self._columns]
        whole = [i for i, (start, end) in enumerate(spans) if left <= start and end <= right]
        part = [i for i, (_, end) in enumerate(spans) if end > left]
        return whole or part[:1]

    def _move(self, step: int) -> None:
        """Bring the next mix on one side to the left edge, or as far as it goes."""
        seen = self._in_view()
        if seen:
            place = min(max(seen[0] + step, 0), len(self._columns) - 1)
            self._area.horizontalScrollBar().setValue(self._columns[place].x())

    def _show(self) -> None:
        seen, count = self._in_view(), len(self._columns)
        self.setVisible(count > 0)
        if not seen:
            return
        first, last = (place + (not self._hers) for place in (seen[0], seen[-1]))
        tell = taken_words.shown if self._hers else words.shown_line
        self.told.setText(tell(first, last, count - self._hers))
        bar = self._area.horizontalScrollBar()
        self.earlier.setEnabled(bar.value() > bar.minimum())
        self.later.setEnabled(bar.value() < bar.maximum())
        for arrow in (self.earlier, self.later):
            arrow.setVisible(bar.maximum() > 0)
