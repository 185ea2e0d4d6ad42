"""A paint shown large, with what is known of it, what is left, and what is wished of it."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QFrame, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from swatchwright.acts.shelf_view import WholeLook
from swatchwright.acts.wish import most_share_of, with_most_share
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.paint_picture import PaintPicture
from swatchwright.desktop.widgets.shelf_bits import amount, button, label
from swatchwright.desktop.words import own_paint as own_words
from swatchwright.desktop.words import shelf as words
from swatchwright.desktop.words import wishes as wish_words
from swatchwright.mixing.wishes import Wishes

__all__ = ["PaintPanel"]

_MOST_LEFT = 100_000.0


class PaintPanel(QFrame):
    """The paint that is chosen in the table.

    Signals
    -------
    wished(object)
        Something else is asked of all mixes (`Wishes`).
    stock_told(str, object)
        What is left of a paint, by its id: ml, or None where it is not known.
    tin_bought(str, float)
        A tin of a paint was bought, of so many ml.
    change_wanted(str), gone(str)
        A paint is to be changed, or taken off the shelf, by its id.
    """

    wished = Signal(object)
    stock_told = Signal(str, object)
    tin_bought = Signal(str, float)
    change_wanted = Signal(str)
    gone = Signal(str)

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self._id = ""
        self.setObjectName("sheet")
        self.picture = PaintPicture()
        self.name = label(name="heading")
        self.known, self.hides, self.next = label(), label(name="quiet"), label(name="quiet")
        self.left = amount(words.LEFT_NOW, _MOST_LEFT, " ml", words.UNKNOWN_LEFT)
        self.take_down = button(words.TAKE_DOWN, self._take_down, "little")
        self.bought = button(words.TIN_BOUGHT, self._buy, "little")
        self.change = button(
            own_words.CHANGE,
            lambda: self.change_wanted.emit(self._id),
            "little",
            tip=own_words.CHANGE_TIP,
        )
        self.take_off = button(
            own_words.TAKE_OFF,
            lambda: self.gone.emit(self._id),
            "little",
            tip=own_words.TAKE_OFF_TIP,
        )
        self._tin = 0.0
        self.keep_first = label(words.KEEP_FIRST, "small")
        self.leave_out = QCheckBox(wish_words.LEAVE_OUT)
        self.must = QCheckBox(wish_words.MUST)
        self.opened = QCheckBox(wish_words.OPENED)
        self.owned = QCheckBox(wish_words.OWNED)
        self.most = amount(wish_words.MOST, 100, " %", wish_words.ANY)
        self._stock = QWidget()
        self.known.setToolTip(words.DOUBT_TIP)
        self._lay_out()
        for box in (self.leave_out, self.must, self.opened, self.owned):
            box.clicked.connect(self._wish)
        self.most.valueChanged.connect(self._wish)
        session.wishes_changed.connect(self._show_wishes)

    def _lay_out(self) -> None:
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 10)
        rows.setSpacing(7)
        rows.addWidget(self.picture)
        text = QVBoxLayout()
        text.setContentsMargins(14, 2, 14, 0)
        text.setSpacing(6)
        text.addWidget(self.name)
        self._own = BreakingRow()
        self._own.put(self.change)
        self._own.put(self.take_off)
        text.addWidget(self._own)
        for told in (self.known, self.hides, self.next):
            text.addWidget(told)
        stock = QHBoxLayout(self._stock)
        stock.setContentsMargins(0, 0, 0, 0)
        left = QLabel(words.LEFT_NOW)
        left.setBuddy(self.left)
        for part in (left, self.left, self.take_down, self.bought):
            stock.addWidget(part)
        stock.addStretch(1)
        text.addWidget(self._stock)
        text.addWidget(self.keep_first)
        row = QHBoxLayout()
        most = QLabel(wish_words.MOST)
        most.setBuddy(self.most)
        row.addWidget(label(wish_words.OF_PAINT, "strong", wraps=False))
        row.addSpacing(14)
        row.addWidget(most)
        row.addWidget(self.most)
        row.addStretch(1)
        text.addLayout(row)
        for pair in ((self.leave_out, self.must), (self.owned, self.opened)):
            row = QHBoxLayout()
            for box in pair:
                row.addWidget(box)
            row.addStretch(1)
            text.addLayout(row)
        rows.addLayout(text)
        rows.addStretch(1)

    def show_paint(self, whole: WholeLook) -> None:
        """Show a paint."""
        paint = whole.look.paint
        self._id = paint.id
        names = {one.id: one.name for one in self._session.shelf.paints}
        self.picture.show_paint(whole)
        self._tin = min((tin.ml for tin in paint.tins), default=0.0)
        self.bought.setVisible(self._tin > 0)
        self.bought.setToolTip(words.bought_tip(self._tin))
        self.name.setText(paint.name)
        self.known.setText(words.known_line(whole))
        self.hides.setText(words.hides_line(whole))
        self.next.setText(words.wanted_line(whole, names))
        self._show_wishes()

    def show_stock(self, ml: float | None, *, kept: bool) -> None:
        """Show what is left of it, and what can be done with it, if it is kept at all."""
        self._stock.setVisible(kept)
        self._own.setVisible(kept)
        self.keep_first.setVisible(not kept)
        self.left.setValue(0.0 if ml is None else ml)

    def _take_down(self) -> None:
        ml = self.left.value()
        self.stock_told.emit(self._id, ml or None)

    def _buy(self) -> None:
        self.tin_bought.emit(self._id, self._tin)

    def _show_wishes(self) -> None:
        wishes, id_ = self._session.wishes, self._id
        share = most_share_of(wishes, id_)
        for box, on in (
            (self.leave_out, id_ in wishes.without),
            (self.must, id_ in wishes.must),
            (self.opened, id_ in wishes.opened),
            (self.owned, wishes.owned is None or id_ in wishes.owned),
        ):
            box.setChecked(on)
        self.most.blockSignals(True)
        self.most.setValue(0.0 if share is None else 100 * share)
        self.most.blockSignals(False)

    def _wish(self) -> None:
        if not self._id:
            return
        wishes, one = self._session.wishes, frozenset({self._id})

        def among(ids: frozenset[str], box: QCheckBox) -> frozenset[str]:
            return ids | one if box.isChecked() else ids - one

        asked = replace(
            with_most_share(wishes, self._id, self.most.value() / 100 or None),
            without=among(wishes.without, self.leave_out),
            must=among(wishes.must, self.must),
            opened=among(wishes.opened, self.opened),
            owned=self._owned(wishes),
        )
        self.wished.emit(asked)

    def _owned(self, wishes: Wishes) -> frozenset[str] | None:
        everything = frozenset(paint.id for paint in self._session.shelf.paints)
        owned = everything if wishes.owned is None else wishes.owned
        one = frozenset({self._id})
        owned = owned | one if self.owned.isChecked() else owned - one
        return None if everything <= owned else owned
