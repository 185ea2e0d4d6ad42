"""The layers over a mix, in the order they are laid, and buttons to lay on more."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QApplication,
    QFrame,
    QLabel,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts import finish_parts as over_part
from swatchwright.acts.finish_parts import LaidOn
from swatchwright.desktop.widgets.areas import ScrollArea, bring_into_view
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.layer_choices import Paints
from swatchwright.desktop.widgets.layer_row import LayerRow, Place
from swatchwright.desktop.words import adding
from swatchwright.desktop.words import finish as words
from swatchwright.language import say
from swatchwright.paint.layers import MOST_LAYERS, Layer, LayerKind, Stack

__all__ = ["LayerList"]

_EDGE = 10


class LayerList(QWidget):
    """Shows what lies over a part of the piece, and lets it be changed.

    What lies over the other parts only is neither shown nor touched.

    Signals
    -------
    changed(Stack)
        It was changed by hand.
    looked_at(int)
        A layer, by its place, has the focus.
    part_wanted(object)
        A layer is about to go on these parts, none for all of the piece: they are to be looked at.
    """

    changed = Signal(object)
    looked_at = Signal(int)
    part_wanted = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self._stack = Stack()
        self._on, self._places = LaidOn(), tuple[Place, ...]()
        self._paints: Paints | None = None
        self.rows: list[LayerRow] = []
        self._in_view: LayerRow | None = None
        self.add = {kind: QPushButton(words.PUT_ON[kind]) for kind in LayerKind}
        self.empty = QLabel(words.NO_LAYERS)
        self.empty.setObjectName("quiet")
        self.empty.setWordWrap(True)
        self._column = QVBoxLayout()
        self.area = ScrollArea()
        self._lay_out()
        application = QApplication.instance()
        if isinstance(application, QApplication):
            application.focusChanged.connect(self._focus_moved)

    def _lay_out(self) -> None:
        holder = QWidget()
        holder.setObjectName("bench")
        inside = QVBoxLayout(holder)
        inside.setContentsMargins(0, 0, 4, 0)
        self._column.setSpacing(6)
        inside.addWidget(self.empty)
        inside.addLayout(self._column)
        inside.addStretch(1)
        self.area.setWidget(holder)
        self.area.setWidgetResizable(True)
        self.area.setFrameShape(QFrame.Shape.NoFrame)
        self.area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.area.verticalScrollBar().rangeChanged.connect(self._scroll)
        self.area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(6)
        rows.addWidget(self._add_row())
        rows.addWidget(self.area, 1)

    def _add_row(self) -> BreakingRow:
        row = BreakingRow(6)
        before: tuple[QWidget, ...] = (QLabel(words.ADD),)
        for kind, button in self.add.items():
            button.setAccessibleName(adding(say(kind.value)))
            button.clicked.connect(lambda _=False, k=kind: self._add(k))
            row.put(*before, button)
            before = ()
        return row

    # --- showing ---------------------------------------------------------------------------------

    def unbroken(self) -> int:
        """Give the width, in pixels, at which nothing of a layer breaks."""
        widest = max((row.unbroken() for row in self.rows), default=0)
        return widest + self.area.verticalScrollBar().sizeHint().width() + _EDGE

    def set_paints(self, paints: Paints) -> None:
        """Choose from these paints from now on."""
        self._paints = paints
        self._drop_rows(0)
        self.show_stack(self._stack)

    def show_stack(self, stack: Stack) -> None:
        """Show a stack; controls that fit stay, so that the focus does."""
        self._stack = stack
        if self._paints is not None:
            self._fit_rows(self._paints)
        self.empty.setVisible(not self._layers())
        full = len(stack.layers) + max(1, len(self._on.target)) > MOST_LAYERS
        for kind, button in self.add.items():
            button.setEnabled(self._paints is not None and not full)
            button.setToolTip(words.FULL if full else words.PUT_ON_TIPS[kind])

    def show_part(self, stack: Stack, on: LaidOn, places: Sequence[Place] = ()) -> None:
        """Show what of a stack lies over a part from now on, and offer these places for a layer."""
        if (stack, on, tuple(places)) != (self._stack, self._on, self._places):
            self._on, self._places = on, tuple(places)
            self.show_stack(stack)

    def _layers(self) -> tuple[Layer, ...]:
        """Give the layers that are shown."""
        return self._on.over(self._stack).layers

    def _fit_rows(self, paints: Paints) -> None:
        """Make the rows those of the part: only what does not fit is made anew."""
        layers = self._layers()
        self._drop_rows(len(layers))
        for place, layer in enumerate(layers):
            if place < len(self.rows) and self.rows[place].fits(layer, self._places):
                self.rows[place].show_layer(layer)
            else:
                self._put_row(place, LayerRow(place + 1, layer, paints, self._places))
            self.rows[place].show_place(self._on.goes_on(layer))
            self.rows[place].allow_moves(earlier=place > 0, later=place + 1 < len(layers))

    def _drop_rows(self, keep: int) -> None:
        for row in self.rows[keep:]:
            self._column.removeWidget(row)
            row.hide()
            row.deleteLater()
        self.rows = self.rows[:keep]

    def _put_row(self, place: int, row: LayerRow) -> None:
        row.changed.connect(lambda new: self._change(place, new))
        row.moved.connect(lambda by: self._move(place, place + by))
        row.removed.connect(lambda: self._remove(place))
        row.placed.connect(lambda zones: self._place(place, zones))
        if place < len(self.rows):
            old = self.rows[place]
            self._column.replaceWidget(old, row)
            old.hide()
            old.deleteLater()
            self.rows[place] = row
        else:
            self.rows.append(row)
            self._column.addWidget(row)

    def _focus_moved(self, _: QWidget | None, now: QWidget | None) -> None:
        for place, row in enumerate(self.rows):
            if now is not None and row.isAncestorOf(now):
                self._in_view = row
                self.looked_at.emit(place)

    # --- changing --------------------------------------------------------------------------------

    def _put(self, stack: Stack) -> None:
        self.show_stack(stack)
        self.changed.emit(self._stack)

    def set_passes(self, place: int, passes: int) -> None:
        """Lay a layer so often."""
        self._change(place, replace(self._layers()[place], passes=passes))

    def lay_first(self, wash: Layer) -> None:
        """Lay a wash straight over the mix in place of all washes and glazes that are there."""
        self._put(over_part.laid_as_first_wash(self._stack, self._on, wash))

    def _add(self, kind: LayerKind) -> None:
        if self._paints is None:
            return
        painted = kind in {LayerKind.WASH, LayerKind.GLAZE}
        layer = Layer(kind, ((self._paints.first, 1.0),) if painted else ())
        self._put(over_part.laid(self._stack, self._on, layer))
        last = self.rows[-1]
        (last.paints[0] if painted else last.passes).setFocus()
        self._bring_into_view(last)

    def _change(self, place: int, layer: Layer) -> None:
        rebuilt = len(layer.paints) != len(self._layers()[place].paints)
        self._put(over_part.laid_otherwise(self._stack, self._on, place, layer))
        if rebuilt:
            row = self.rows[place]
            row.paints[-1].setFocus()
            self._bring_into_view(row)
        self.looked_at.emit(place)

    def _move(self, place: int, to: int) -> None:
        self._put(over_part.moved(self._stack, self._on, place, to - place))
        row = self.rows[to]
        mover = row.earlier if to < place else row.later
        (mover if mover.isEnabled() else row.remove).setFocus()
        self._bring_into_view(row)

    def _place(self, place: int, zones: tuple[str, ...]) -> None:
        """Let a layer go on other parts; the focus stays with it."""
        if zones != self._on.goes_on(self._layers()[place]):
            self.part_wanted.emit(zones)
            self._put(over_part.placed(self._stack, self._on, place, zones))
        if place < len(self.rows):
            self.rows[place].goes_on.setFocus()
            self._bring_into_view(self.rows[place])

    def _remove(self, place: int) -> None:
        self._put(over_part.taken_off(self._stack, self._on, place))
        if self.rows:
            self.rows[min(place, len(self.rows) - 1)].remove.setFocus()
        else:
            self.add[LayerKind.WASH].setFocus()

    def _bring_into_view(self, row: LayerRow) -> None:
        """Scroll to a row; again once it has been laid out, and so has its place."""
        self._in_view = row
        self._scroll()

    def _scroll(self) -> None:
        if self._in_view is not None and self._in_view in self.rows:
            bring_into_view(self._in_view, above=4)
