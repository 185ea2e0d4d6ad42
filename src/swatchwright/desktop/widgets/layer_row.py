"""One layer of a finish: what it is, which paint, how thin, how often; to be moved or removed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtWidgets import (
    QComboBox,
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from swatchwright.desktop.letters import follow_letters, grown
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.layer_choices import CalmNumber, CalmTimes, Paints, WordCombo
from swatchwright.desktop.words import finish as words
from swatchwright.desktop.words import finish_parts as parts_words
from swatchwright.paint.layers import MOST_PASSES, Layer, LayerKind, wash_of

__all__ = ["LayerRow", "Place"]

Place = tuple[tuple[str, ...], str]
"""Parts of the piece, none for all of it, and how they are told."""

_BESIDE, _APART = 6, 8
"""Pixels between what is set, and before the next, beyond that."""
_EDGES = (12, 8, 10, 8)
"""Pixels about a layer, left, above, right and below."""
_HIGH = 26
"""Pixels of height of all that is set in a row."""
_MOST_WATER, _MOST_PARTS, _MOST_PAINTS = 50.0, 100.0, 4


class LayerRow(QFrame):
    """The controls of one layer.

    Signals
    -------
    changed(Layer)
        It was changed.
    moved(int)
        It is to be laid one earlier (-1) or later (1).
    removed()
        It is to be taken away.
    placed(object)
        It is to go on these parts of the piece, by their names; with none on all of it.
    """

    changed = Signal(object)
    moved = Signal(int)
    removed = Signal()
    placed = Signal(object)

    def __init__(
        self, number: int, layer: Layer, paints: Paints, places: Sequence[Place] = ()
    ) -> None:
        super().__init__()
        self.setObjectName("sheet")
        self.layer, self._number, self._paints = layer, number, paints
        self._places = tuple(places)
        self._made_for = (layer.kind, len(layer.paints), self._places)
        self.paints: list[QComboBox] = []
        self.parts: list[CalmNumber] = []
        self.water = CalmNumber(0.0, _MOST_WATER, 0.5)
        self.left = WordCombo(words.LEFT_WORDS)
        self.amber = WordCombo(words.AMBER_WORDS)
        self.sheen = WordCombo(words.SHEEN_WORDS)
        self.passes = CalmTimes(MOST_PASSES)
        self.goes_on = WordCombo(self._places)
        self.more = self._button(words.MORE_PAINT)
        self.less: list[QPushButton] = []
        self.earlier, self.later = self._button(words.EARLIER), self._button(words.LATER)
        self.remove = self._button(words.REMOVE)
        self._lay_out()
        self.show_layer(layer)
        self._listen()

    # --- laying out ------------------------------------------------------------------------------

    def _lay_out(self) -> None:
        head = QLabel(words.layer_head(self._number, self.layer.kind))
        head.setObjectName("strong")
        head.setMinimumWidth(82)
        top = QHBoxLayout()
        top.setSpacing(8)
        top.addWidget(head, 0, Qt.AlignmentFlag.AlignTop)
        top.addLayout(self._paint_rows(), 1)
        for button in (self.earlier, self.later, self.remove):
            top.addWidget(button, 0, Qt.AlignmentFlag.AlignTop)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(*_EDGES)
        rows.setSpacing(6)
        rows.addLayout(top)
        self._numbers = self._number_row()
        rows.addWidget(self._numbers)

    def _paint_rows(self) -> QGridLayout:
        """Lay out the paints in it; one that is alone needs no parts."""
        grid = QGridLayout()
        grid.setHorizontalSpacing(6)
        grid.setVerticalSpacing(4)
        grid.setColumnStretch(1, 1)
        kind, rows = self.layer.kind, list(self.layer.paints)
        if kind in {LayerKind.OIL, LayerKind.VARNISH}:
            return grid
        for place, (id_, _) in enumerate(rows or [("", 1.0)]):
            combo = self._paints.combo(id_, or_none=self._may_be_bare(place))
            self._name(combo, words.WHICH_PAINT, place)
            self.paints.append(combo)
            grid.addWidget(combo, place, 1)
            if len(rows) > 1:
                self._add_parts(grid, place)
        return grid

    def _add_parts(self, grid: QGridLayout, place: int) -> None:
        part = CalmNumber(0.5, _MOST_PARTS, 1.0)
        self._name(part, words.PARTS, place)
        self.parts.append(part)
        grid.addWidget(part, place, 0)
        if place > 0:
            less = self._button(words.LESS_PAINT)
            self._name(less, words.LESS_PAINT, place)
            less.clicked.connect(lambda: self._leave_out(place))
            self.less.append(less)
            grid.addWidget(less, place, 2)

    def _may_be_bare(self, place: int) -> bool:
        return self.layer.kind is LayerKind.WAX and place == 0 and len(self.layer.paints) < 2

    def _number_row(self) -> BreakingRow:
        """Lay out what is said of it in numbers and words."""
        row = BreakingRow(_BESIDE, yields=True)
        kind = self.layer.kind
        self._put(row, self.passes, words.TIMES, "")
        if self.layer.paints:
            self._put(row, self.water, words.ONE_TO, words.THINNER[kind])
        if kind is LayerKind.WASH:
            self._put(row, self.left, words.LEFT, "")
        if not self.layer.is_paint:
            self._put(row, self.amber, words.AMBER, "")
            self._put(row, self.sheen, words.SHEEN, "")
        if self._places:
            self._put(row, self.goes_on, parts_words.GOES_ON, "")
            self.goes_on.setToolTip(parts_words.GOES_ON_TIP)
        if 0 < len(self.layer.paints) < _MOST_PAINTS:
            row.put(self.more, pushed=True)
        return row

    def _put(self, row: BreakingRow, widget: QWidget, before: str, after: str) -> None:
        _keep_high(widget)
        label = QLabel(before)
        label.setBuddy(widget)
        self._name(widget, f"{before} {after}".strip())
        told = [QLabel(after)] if after else []
        row.put(label, widget, *told, gap=_APART)

    def _button(self, text: str) -> QPushButton:
        button = QPushButton(text)
        button.setObjectName("little")
        self._name(button, text)
        return button

    def _name(self, widget: QWidget, what: str, place: int = 0) -> None:
        told = f"{what} {place + 1}" if place else what
        widget.setAccessibleName(words.of_layer(told, self._number, self.layer.kind))
        if isinstance(widget, QComboBox):
            # On Linux Qt gives the value of a choice as its name.
            widget.setAccessibleDescription(widget.accessibleName())

    def _listen(self) -> None:
        for place, combo in enumerate(self.paints):
            combo.activated.connect(lambda _=0, p=place: self._paint_chosen(p))
        for part in self.parts:
            part.valueChanged.connect(self._parts_set)
        self.water.valueChanged.connect(lambda value: self._tell(water=value))
        self.left.activated.connect(lambda: self._tell(left=self.left.value()))
        self.amber.activated.connect(lambda: self._tell(amber=self.amber.value()))
        self.sheen.activated.connect(lambda: self._tell(sheen=self.sheen.value()))
        self.passes.valueChanged.connect(lambda value: self._tell(passes=value))
        self.goes_on.activated.connect(lambda: self.placed.emit(self.goes_on.value()))
        self.more.clicked.connect(self._add_paint)
        self.earlier.clicked.connect(lambda: self.moved.emit(-1))
        self.later.clicked.connect(lambda: self.moved.emit(1))
        self.remove.clicked.connect(self.removed)

    # --- showing ---------------------------------------------------------------------------------

    def unbroken(self) -> int:
        """Give the width, in pixels, at which nothing of it breaks."""
        left, _, right, _ = _EDGES
        return max(left + self._numbers.unbroken() + right, self.minimumSizeHint().width())

    def fits(self, layer: Layer, places: Sequence[Place] = ()) -> bool:
        """Tell whether a layer can be shown by the controls that are there."""
        return (layer.kind, len(layer.paints), tuple(places)) == self._made_for

    def show_place(self, zones: tuple[str, ...]) -> None:
        """Show what of the piece it goes on, where that can be chosen; nothing is told of it."""
        if self._places:
            with QSignalBlocker(self.goes_on):
                self.goes_on.show_value(zones)

    def show_layer(self, layer: Layer) -> None:
        """Show a layer that fits; nothing is told of it."""
        self.layer = layer
        inputs = [self.water, self.left, self.amber, self.sheen, self.passes]
        blocked = [QSignalBlocker(w) for w in (*inputs, *self.paints, *self.parts)]
        for place, (combo, (id_, _)) in enumerate(zip(self.paints, layer.paints, strict=False)):
            self._paints.choose(combo, id_, or_none=self._may_be_bare(place))
        for part, (_, amount) in zip(self.parts, layer.paints, strict=False):
            part.setValue(amount)
        wash = wash_of(layer)
        self.water.setValue(wash.water)
        self.left.show_value(_nearest_left(wash.left), words.left_word(wash.left))
        self.amber.show_value(layer.amber, words.amber_word(layer.amber or 0.0))
        self.sheen.show_value(layer.sheen)
        self.passes.setSuffix(words.times_suffix(layer.passes))
        self.passes.setValue(layer.passes)
        del blocked

    def allow_moves(self, *, earlier: bool, later: bool) -> None:
        """Say where it may be moved."""
        self.earlier.setEnabled(earlier)
        self.later.setEnabled(later)

    # --- changing --------------------------------------------------------------------------------

    def _tell(self, **changes: object) -> None:
        layer = replace(self.layer, **changes)  # type: ignore[arg-type]
        if layer != self.layer:
            self.layer = layer
            self.passes.setSuffix(words.times_suffix(layer.passes))
            self.changed.emit(layer)

    def _paint_chosen(self, place: int) -> None:
        chosen = str(self.paints[place].currentData())
        if not chosen:
            self._tell(paints=(), water=None)
            return
        rows = list(self.layer.paints) or [("", 1.0)]
        if chosen in {id_ for n, (id_, _) in enumerate(rows) if n != place}:
            # A paint is in it once: the other place shows what was there before.
            self.show_layer(self.layer)
            return
        rows[place] = (chosen, rows[place][1])
        self._tell(paints=tuple(rows))

    def _parts_set(self) -> None:
        ids = [id_ for id_, _ in self.layer.paints]
        amounts = [part.value() for part in self.parts]
        self._tell(paints=tuple(zip(ids, amounts, strict=True)))

    def _add_paint(self) -> None:
        other = self._paints.another([id_ for id_, _ in self.layer.paints])
        self._tell(paints=(*self.layer.paints, (other, 1.0)))

    def _leave_out(self, place: int) -> None:
        rows = tuple(row for n, row in enumerate(self.layer.paints) if n != place)
        self._tell(paints=rows if len(rows) > 1 else tuple((id_, 1.0) for id_, _ in rows))


def _keep_high(widget: QWidget) -> None:
    follow_letters(widget, lambda: widget.setFixedHeight(grown(_HIGH)))


def _nearest_left(left: float) -> float:
    """Give the share that has a word where it is as good as that."""
    return next((share for share, _ in words.LEFT_WORDS if abs(share - left) < 0.005), left)
