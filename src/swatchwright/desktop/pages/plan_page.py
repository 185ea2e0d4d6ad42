"""The page of the plan: what the piece is and what goes on, and so what to do on which day."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtGui import QHideEvent
from PySide6.QtWidgets import (
    QFrame,
    QPushButton,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.client_wish import CLIENT_PART, ClientWishes
from swatchwright.acts.jobs import Changes, Store
from swatchwright.acts.mixes_in_use import mixes_in_use
from swatchwright.acts.piece_job import FORM_PART, PIECE_PART, PieceForm
from swatchwright.acts.plan import PlannedWork, plan_for, save_calendar
from swatchwright.acts.plan_job import (
    FINISH_PART,
    PLAN_PART,
    Elsewhere,
    following,
    keep_plan,
    laid_in,
    paints_in_use,
    pots_in,
    said_painted,
    topped_in,
)
from swatchwright.acts.plan_own import ANSWERS, answers_set, own_answers
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.files import ask_save
from swatchwright.desktop.pages.page import Page
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.areas import ScrollArea, bring_into_view
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.columns import Columns
from swatchwright.desktop.widgets.day_picture import DayPicture
from swatchwright.desktop.widgets.piece_fields import card, label
from swatchwright.desktop.widgets.piece_keeper import Keeper
from swatchwright.desktop.widgets.plan_now import PlanNow
from swatchwright.desktop.widgets.plan_offer import PlanOffer
from swatchwright.desktop.widgets.plan_on import PlanOn
from swatchwright.desktop.widgets.plan_steps import PlanSteps
from swatchwright.desktop.widgets.plan_times import PlanTimes
from swatchwright.desktop.widgets.plan_when import PlanWhen
from swatchwright.desktop.words import plan as words
from swatchwright.desktop.words.days import LEGEND
from swatchwright.errors import MendableError
from swatchwright.paint.layers import Stack
from swatchwright.piece.part import Piece
from swatchwright.piece.work.order import Lead, PlanOrder

__all__ = ["PlanPage"]

_SHARED = frozenset({"surface", "primer"})
"""Answers that piece and plan have in common: they never differ."""

_WIDE = 368
_BESIDE = 6
"""Pixels between a text and the button beside it."""


class PlanPage(Page):
    """Settings on the left; the picture of the days and the list of steps on the right."""

    def __init__(self, session: Session, desk: Desk) -> None:
        super().__init__(session, desk, words.HEADING, words.HINT, scrolls=False)
        self.now, self.on = PlanNow(), PlanOn()
        self.when, self.times = PlanWhen(), PlanTimes()
        self.offer = PlanOffer()
        self.summary = label("", "big")
        self.weak = label("", "strong")
        self.weak.hide()
        self.differs = label("")
        self.take = QPushButton(words.TAKE_OVER)
        self.take.setObjectName("little")
        self.factor = label("", "strong")
        self.picture = DayPicture()
        self.steps = PlanSteps()
        self.picked = label("")
        self.picked.setTextFormat(Qt.TextFormat.RichText)
        self.picked.hide()
        self.blocked = label("", "waiting")
        self.calendar = QPushButton(words.CALENDAR)
        self.saved = label("", "quiet")
        self.made: PlannedWork | None = None
        self._plan_part = QWidget()
        self._right = ScrollArea()
        self._elsewhere = Elsewhere()
        self._usual = PlanOrder("piece", date.today().isoformat())  # noqa: DTZ011 - her own day
        self._lay_out()
        self._keeper: Keeper[PlanOrder] = Keeper(
            self, desk, read=self._read, act=_keeping, show=lambda _: self._refresh()
        )
        for part in (self.now, self.on, self.when, self.times):
            part.changed.connect(self._change)
        self.take.clicked.connect(self._take_over)
        self.offer.taken.connect(lambda: self._change(replace(self.order, coats=0)))
        self.picture.chosen.connect(self._read_out)
        self.picture.wanted.connect(self._go_to)
        self.calendar.clicked.connect(self._ask_calendar)
        session.recipes_changed.connect(self._look_elsewhere)
        session.shelf_changed.connect(self._look_elsewhere)
        desk.job_changed.connect(self._look_elsewhere)
        desk.job_changed.connect(self._show_offer)
        self._elsewhere = self._found_elsewhere()
        self._keeper.begin()

    def _lay_out(self) -> None:
        rows = QVBoxLayout(self.body)
        rows.setContentsMargins(0, 0, 0, 0)
        self._columns = columns = Columns()
        rows.addWidget(columns)
        settings = QWidget()
        settings.setObjectName("bench")
        left = QVBoxLayout(settings)
        left.setContentsMargins(0, 0, 4, 0)
        left.setSpacing(12)
        for heading, part in (
            (words.NOW, self.now),
            (words.ON, self.on),
            (words.WHEN, self.when),
            (words.TIMES, self.times),
        ):
            sheet, column = card(heading)
            column.addWidget(part)
            left.addWidget(sheet)
        left.addStretch(1)
        area = _scrolled(ScrollArea(), settings, words.HINT)
        columns.put(area, wide=_WIDE)
        columns.put(_scrolled(self._right, self._plan_side(), words.LIST), stretch=1)

    def dressed_parts(self) -> tuple[QWidget, ...]:
        """Give the settings and the plan, each dressed by itself."""
        return *self.heads(), *self._columns.parts()

    def _plan_side(self) -> QWidget:
        side = QWidget()
        side.setObjectName("bench")
        column = QVBoxLayout(side)
        column.setContentsMargins(0, 0, 6, 0)
        column.setSpacing(10)
        self.blocked.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.blocked.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        column.addWidget(self.offer)
        column.addWidget(self.blocked, 1)
        column.addWidget(self._plan_part)
        rows = QVBoxLayout(self._plan_part)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(10)
        top = BreakingRow()
        top.put(self.summary, stretches=True)
        top.put(self.calendar, pushed=True)
        sheet, inside = card("")
        inside.addWidget(top)
        inside.addWidget(self.weak)
        inside.addWidget(self._elsewhere_row())
        inside.addWidget(self.saved)
        inside.addWidget(self.factor)
        inside.addWidget(self.picture)
        inside.addWidget(label(LEGEND, "small"))
        inside.addWidget(self.picked)
        rows.addWidget(sheet)
        rows.addWidget(self.steps)
        column.addStretch(0)
        return side

    def _elsewhere_row(self) -> QWidget:
        """Give the row that says what other pages have and the plan has not."""
        self._differing = BreakingRow(_BESIDE)
        self._differing.put(self.differs, stretches=True)
        self._differing.put(self.take, pushed=True)
        return self._differing

    def hideEvent(self, event: QHideEvent) -> None:
        """Keep what is set before another page needs it."""
        super().hideEvent(event)
        self._keeper.keep()

    # --- what is set -----------------------------------------------------------------------------

    @property
    def order(self) -> PlanOrder:
        """The order as it stands; before anything is set, as the other pages have it."""
        return following(self._keeper.value or self._usual, self._elsewhere)

    def _change(self, order: PlanOrder) -> None:
        """Keep what was changed; what was set by hand follows no other page from now on."""
        self._keeper.set(answers_set(self.order, order))
        self._refresh()

    def _take_over(self) -> None:
        self._keeper.set(self._as_elsewhere())
        self._refresh()

    def _as_elsewhere(self) -> PlanOrder:
        """Give the order as it would be if nothing that another page says were set by hand."""
        own = tuple(name for name in ANSWERS if name in own_answers(self.order) & _SHARED)
        return following(replace(self.order, own=own), self._elsewhere)

    def _read(self) -> PlanOrder | None:
        return self.desk.part(PLAN_PART, PlanOrder)

    # --- elsewhere -------------------------------------------------------------------------------

    def _found_elsewhere(self) -> Elsewhere:
        kept = mixes_in_use(self.desk.job)
        found = self.session.recipes
        first = found.recipes[0].recipe if found is not None and found.recipes else None
        stack = self.desk.part(FINISH_PART, Stack)
        piece, form = self.desk.part(PIECE_PART, Piece), self.desk.part(FORM_PART, PieceForm)
        shelf = self.session.shelf
        return Elsewhere(
            piece,
            form,
            stack,
            paints_in_use(kept, first, shelf),
            laid_in(stack, shelf, piece, form),
            topped_in(stack, piece, form),
            pots_in(self.desk.job, shelf),
        )

    def _look_elsewhere(self) -> None:
        found = self._found_elsewhere()
        if found != self._elsewhere:
            self._elsewhere = found
            self._refresh()

    # --- showing ---------------------------------------------------------------------------------

    def _show_offer(self) -> None:
        """Offer to begin with the wash where it was said that the piece is painted already."""
        job = self.desk.job
        colours = () if job is None else tuple(wanted.colour.lab for wanted in job.wanted)
        said = said_painted(self.desk.part(CLIENT_PART, ClientWishes), colours)
        self.offer.setVisible(said and not self.order.painted)

    def _refresh(self) -> None:
        order = self.order
        self._show_offer()
        self.now.show_order(order)
        self.on.show_order(order, sized=self._elsewhere.piece is not None)
        told = words.differs_line(order, self._as_elsewhere())
        self.differs.setText(told)
        self._differing.setVisible(bool(told))
        self.when.show_order(order)
        self.times.show_order(order)
        self.saved.hide()
        try:
            self._show_plan(order, plan_for(order))
        except MendableError as error:
            self._block(order, error)

    def _block(self, order: PlanOrder, error: MendableError) -> None:
        """Say in place of the plan what keeps it from being made."""
        self.made = None
        asks = order.lead_asked and order.lead is Lead.NOT_ANSWERED
        self.blocked.setText(words.LEAD_WAIT if asks else f"{error.what}\n{error.mend}")
        self.blocked.show()
        self._plan_part.hide()

    def _show_plan(self, order: PlanOrder, made: PlannedWork) -> None:
        self.blocked.hide()
        self._plan_part.show()
        self.summary.setText(words.summary(made))
        self.weak.setText(made.plan.weak)
        self.weak.setVisible(bool(made.plan.weak))
        told = words.factor_line(made.plan.wait_factor)
        self.factor.setText(told)
        self.factor.setVisible(bool(told))
        if made != self.made:
            self.made = made
            self.picked.hide()
            self.picture.show_days(made, order.week)
            self.steps.show_plan(made)

    def _read_out(self, number: int) -> None:
        """Write out the step of a block below the picture."""
        if self.made is not None:
            step = self.made.plan.steps[number - 1]
            self.picked.setText(words.step_html(step, ()))
            self.picked.show()

    def _go_to(self, number: int) -> None:
        """Bring the day of a step into view in the list."""
        if (sheet := self.steps.sheet_of(number)) is not None:
            bring_into_view(sheet, above=10)

    # --- the calendar ----------------------------------------------------------------------------

    def save_calendar(self, path: Path) -> None:
        """Write the plan to a calendar file."""
        made = self.made
        if made is None:
            return

        def work(_: object) -> Path:
            save_calendar(made.plan, path)
            return path

        def done(written: Path) -> None:
            self.saved.setText(words.saved(written.name))
            self.saved.show()

        self.session.workshop.start("file", words.SAVING, work, done)

    def _ask_calendar(self) -> None:
        name, _ = ask_save(
            self, words.CALENDAR, words.file_name(self.order.name), words.CALENDAR_FILES
        )
        if name:
            self.save_calendar(Path(name))


def _keeping(order: PlanOrder) -> Callable[[Store, str], Changes]:
    return lambda store, id_: keep_plan(store, id_, order)


def _scrolled(area: QScrollArea, contents: QWidget, name: str) -> QScrollArea:
    area.setWidget(contents)
    area.setWidgetResizable(True)
    area.setFrameShape(QFrame.Shape.NoFrame)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    area.setAccessibleName(name)
    return area
