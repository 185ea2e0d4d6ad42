"""The page of the shelf: the paints, the wishes for all mixes, and getting to know paints."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import cached_property

from PySide6.QtCore import QTimer
from PySide6.QtGui import QHideEvent
from PySide6.QtWidgets import (
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.fit import FittedShelf
from swatchwright.acts.jobs import Changes
from swatchwright.acts.last_sitting import LastSitting
from swatchwright.acts.shelf_view import PaintLine, WholeLook, shelf_lines, whole_look
from swatchwright.acts.sitting_fit import kept_paints
from swatchwright.acts.stock import (
    KeptShelf,
    StockedPaint,
    add_stock,
    kept_shelf,
    put_paints,
    set_stock,
)
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.keeping import Keeping
from swatchwright.desktop.kept_sitting import KeptSitting
from swatchwright.desktop.our_cards import OurCards
from swatchwright.desktop.own_paints import OwnPaints
from swatchwright.desktop.pages.page import Page
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.bench_area import PageStack
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.columns import Columns
from swatchwright.desktop.widgets.money_field import HerMoney
from swatchwright.desktop.widgets.paint_drying import PaintDrying
from swatchwright.desktop.widgets.paint_panel import PaintPanel
from swatchwright.desktop.widgets.shelf_bits import button, label, scrolled
from swatchwright.desktop.widgets.shelf_sitting import ShelfSitting
from swatchwright.desktop.widgets.shelf_table import ShelfTable
from swatchwright.desktop.widgets.wish_strip import WishStrip
from swatchwright.desktop.wish_desk import WishDesk
from swatchwright.desktop.words import money
from swatchwright.desktop.words import own_paint as own_words
from swatchwright.desktop.words import shelf as words
from swatchwright.mixing.wishes import Wishes
from swatchwright.paint.paints import Paint
from swatchwright.shelf.shelf import Shelf

__all__ = ["ShelfPage"]

_TABLE_WIDTH, _PANEL_WIDTH = 420, 384
"""Pixels without which the paint in hand goes below the table."""
_TABLE_HIGH = 420
_SHARES = (640, 384)


class ShelfPage(Page):
    """The table with one paint large beside it; in its place a sitting, or a stroke wet and dry."""

    def __init__(self, session: Session, desk: Desk) -> None:
        super().__init__(session, desk, words.HEADING, words.HINT, scrolls=False)
        self._wishes = WishDesk.of(session, desk)
        self._kept: tuple[StockedPaint, ...] = ()
        self._shown: Shelf | None = None
        self._id = ""
        self.table = ShelfTable(session, self._use)
        self.panel = PaintPanel(session)
        self.strip = WishStrip(session)
        self._lines: tuple[PaintLine, ...] = ()
        self.get_to_know = button(
            words.GET_TO_KNOW, self.show_sitting, "main", tip=words.GET_TO_KNOW_TIP
        )
        self.add = button(own_words.ADD_A_PAINT, self.show_add, tip=own_words.ADD_TIP)
        self.dry = button(words.DRY_ALIKE, self.show_drying, tip=words.DRY_ALIKE_TIP)
        self.keep = button(words.KEEP_SHELF, self._keep_shelf, tip=words.KEEP_SHELF_TIP)
        self.said = label(name="quiet")
        self.money = HerMoney()
        self._stack, self._paints = PageStack(), QWidget()
        self.ours = OurCards(session, self._show_view, self)
        self.own = OwnPaints(session, desk, self._show_view, self)
        self._lay_out()
        self._fresh = True
        self._connect()
        self._ask_kept()
        self._look_again()
        # In a step of its own: it is as large as all the rest of the page.
        QTimer.singleShot(0, self, lambda: self.kept_sitting)

    @cached_property
    def kept_sitting(self) -> KeptSitting:
        """The sitting with what keeps it, made when it is first asked for."""
        made = KeptSitting(self.session, self.desk, self._stack, self)
        made.sitting.show_paints(self._lines)
        made.sitting.left.connect(self.show_shelf)
        made.sitting.ours_wanted.connect(lambda: self.ours.show(made.in_view))
        made.sitting.result.kept.connect(self._keep_fitted)
        made.memory.came_back.connect(self._come_back)
        return made

    @property
    def sitting(self) -> ShelfSitting:
        """The sitting in which paints are got to know."""
        return self.kept_sitting.sitting

    @cached_property
    def drying(self) -> PaintDrying:
        """What is needed to learn how a paint dries, made when it is first asked for."""
        made = PaintDrying(self.session)
        made.left.connect(self.show_shelf)
        made.kept.connect(self._keep_dried)
        return made

    def _lay_out(self) -> None:
        rows = QVBoxLayout(self._paints)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(10)
        top = BreakingRow()
        for one in (self.get_to_know, self.add, self.dry, self.keep):
            top.put(one)
        top.put(self.said, stretches=True)
        named = label(money.NAME, wraps=False)
        named.setBuddy(self.money)
        top.put(named, self.money, pushed=True)
        rows.addWidget(top)
        self.said.hide()
        sides = Columns(14, shares=_SHARES)
        sides.put(self.table, stretch=1, least=_TABLE_WIDTH, high=_TABLE_HIGH)
        sides.put(scrolled(self.panel, words.WHICH_PAINT), wide=_PANEL_WIDTH)
        rows.addWidget(sides, 1)
        rows.addWidget(self.strip)
        self._stack.addWidget(self._paints)
        body = QVBoxLayout(self.body)
        body.setContentsMargins(0, 0, 0, 0)
        body.addWidget(self._stack)

    def _connect(self) -> None:
        session, desk = self.session, self.desk
        session.shelf_changed.connect(self._shelf_changed)
        desk.paints_changed.connect(self._ask_kept)
        self.table.chosen.connect(self._choose)
        self.panel.wished.connect(self._wish)
        self.panel.stock_told.connect(self._set_stock)
        self.panel.tin_bought.connect(self._add_tin)
        self.panel.change_wanted.connect(self.own.show_change)
        self.panel.gone.connect(self.own.take_off)
        self.own.shown.connect(self._head)
        self.own.left.connect(self.show_shelf)
        self.own.done.connect(self._done)
        self.strip.wished.connect(self._wish)
        self.ours.put_away.connect(self.show_sitting)

    # --- what is shown ---------------------------------------------------------------------------

    def arrive(self) -> None:
        """Look at what is left of the paints, which other pages draw from."""
        self._ask_kept()

    def show_shelf(self) -> None:
        """Show the paints."""
        self._show(self._paints, words.HEADING, words.HINT)
        self.table.setFocus()

    def show_sitting(self) -> None:
        """Show the sitting, at the step where it was left."""
        if not self.sitting.sitting.ids:
            # Nothing is chosen yet: the other steps would be empty.
            self.sitting.show_step(0)
        self._show(self.sitting, words.GET_TO_KNOW, words.GET_TO_KNOW_HINT)
        self.sitting.choose.paints.setFocus()

    def show_add(self) -> None:
        """Show the form for a paint that is not there yet."""
        self.own.show_form()

    def show_drying(self) -> None:
        """Show what is needed to learn how a paint dries."""
        self.drying.show_paints(self._id)
        self._show(self.drying, words.DRY_ALIKE, words.STROKE_HINT)
        self.drying.paint.setFocus()

    def hideEvent(self, event: QHideEvent) -> None:
        """Keep what was set before the page goes out of view."""
        self.kept_sitting.keep()
        self.kept_sitting.memory.remember()
        super().hideEvent(event)

    def _come_back(self, left: LastSitting) -> None:
        """Show the sitting where it was left, unless she has begun to do something else."""
        if self._fresh and left.in_view and self.sitting.sitting.ids:
            self.sitting.show_step(left.step)
            self.show_sitting()

    def dressed_parts(self) -> tuple[QWidget, ...]:
        """Give the heads and the view that is shown: the others are dressed when they come."""
        return *self.heads(), self._stack.currentWidget() or self._paints

    def _show(self, view: QWidget, heading: str, hint: str) -> None:
        self._show_view(view)
        self._head(heading, hint)

    def _show_view(self, view: QWidget) -> None:
        if self._stack.indexOf(view) < 0:
            self._stack.addWidget(view)
        self.coming.emit(view)
        self._stack.setCurrentWidget(view)

    def _head(self, heading: str, hint: str) -> None:
        self._fresh = False
        self.heading.setText(heading)
        self.hint.setText(hint)
        self.kept_sitting.memory.note()

    def _shelf_changed(self) -> None:
        if self.session.shelf is not self._shown:
            self._look_again()

    def _look_again(self) -> None:
        """Work out the lines of the table anew."""
        shelf, kept = self.session.shelf, self._kept
        self._shown = shelf
        self.session.workshop.start(
            "shelf-lines", words.LOOKING, lambda _: shelf_lines(shelf, kept), self._show_lines
        )

    def _show_lines(self, lines: tuple[PaintLine, ...]) -> None:
        self._lines = lines
        self.table.paints.show_lines(lines)
        self.sitting.show_paints(lines)
        ids = [line.paint.id for line in lines]
        chosen = self._id if self._id in ids else next(iter(ids), "")
        if chosen:
            self.table.choose(chosen)
            self._choose(chosen)

    def _choose(self, id_: str) -> None:
        """Show a paint large."""
        self._id, shelf = id_, self.session.shelf

        def done(whole: WholeLook) -> None:
            if self._id == id_:
                self.panel.show_paint(whole)
                self._show_stock()

        self.session.workshop.start(
            "paint-look", words.LOOKING, lambda _: whole_look(shelf, id_), done
        )

    def _show_stock(self) -> None:
        left = {one.paint.id: one.ml_left for one in self._kept}
        self.panel.show_stock(left.get(self._id), kept=self._id in left)

    # --- wishes ----------------------------------------------------------------------------------

    def _wish(self, wishes: Wishes) -> None:
        self._wishes.wish(wishes)

    def _use(self, id_: str, used: bool) -> None:  # noqa: FBT001 - as the table tells it
        wishes = self.session.wishes
        without = wishes.without - {id_} if used else wishes.without | {id_}
        self._wish(replace(wishes, without=without))

    # --- what is kept ----------------------------------------------------------------------------

    def _ask_kept(self) -> None:
        self.desk.ask(kept_shelf, self._show_kept)

    def _show_kept(self, kept: KeptShelf) -> None:
        before = [(one.paint.id, one.ml_left) for one in self._kept]
        self._kept = kept.stocked
        ids = {one.paint.id for one in kept.stocked}
        self.keep.setVisible(not all(paint.id in ids for paint in self.session.shelf.paints))
        if before != [(one.paint.id, one.ml_left) for one in kept.stocked]:
            self._look_again()

    def _set_stock(self, id_: str, ml: float | None) -> None:
        self.desk.edit(lambda store: set_stock(store, id_, ml))

    def _add_tin(self, id_: str, ml: float) -> None:
        self.desk.edit(lambda store: add_stock(store, id_, ml))

    def _keep_shelf(self) -> None:
        self._put(self.session.shelf.paints, self._say)

    def _keep_fitted(self, found: FittedShelf) -> None:
        self.kept_sitting.keep()

        def said(line: str) -> None:
            self.sitting.result.say(line)
            self.kept_sitting.memory.take_over()

        self._put(kept_paints(found), said)

    def _keep_dried(self, shelf: Shelf) -> None:
        self._put(shelf.paints, self.drying.say)

    def _put(self, paints: tuple[Paint, ...], say: Callable[[str], None]) -> None:
        """Keep paints, use the kept shelf, and say so."""

        def done(changes: Changes) -> None:
            keeping = self.session.findChild(Keeping)
            if isinstance(keeping, Keeping):
                keeping.use_kept()
            say(words.put_away_line(changes.warnings))

        self.desk.edit(lambda store: put_paints(store, paints), done)

    def _done(self, id_: str, told: str) -> None:
        """Show the shelf with what was done to a paint of it."""
        self._id = id_ or self._id
        self.show_shelf()
        self._say(told)

    def _say(self, text: str) -> None:
        self.said.setText(text)
        self.said.show()
        QTimer.singleShot(15_000, self, self.said.hide)
