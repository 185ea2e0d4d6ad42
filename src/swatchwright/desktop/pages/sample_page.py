"""The page of the sample: beside the cloth in one photo, what is left between them, what to add."""

from __future__ import annotations

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QHideEvent
from PySide6.QtWidgets import QFrame, QVBoxLayout, QWidget

from swatchwright.acts.sample import Advice
from swatchwright.acts.sample_judged import How, Judged, judged_by_eye
from swatchwright.acts.sample_rounds import cloths_apart, kept_as
from swatchwright.acts.sample_take import taken_so
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.neighbours_window import NeighboursWindow
from swatchwright.desktop.pages.page import Page
from swatchwright.desktop.sample_bringing import Bringing
from swatchwright.desktop.sample_desk import SampleDesk
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.areas import bring_into_view
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.columns import Columns
from swatchwright.desktop.widgets.piece_fields import card, label
from swatchwright.desktop.widgets.sample_eye import SampleEye
from swatchwright.desktop.widgets.sample_home import SampleHome
from swatchwright.desktop.widgets.sample_mixed import SampleMixed
from swatchwright.desktop.widgets.sample_next import SampleNext
from swatchwright.desktop.widgets.sample_photo import SamplePhotoSide
from swatchwright.desktop.widgets.sample_rounds import SampleRounds
from swatchwright.desktop.widgets.sample_told import SampleTold
from swatchwright.desktop.widgets.shelf_bits import button, scrolled
from swatchwright.desktop.words import sample as words
from swatchwright.desktop.words import sample_taught as taught_words
from swatchwright.errors import MendableError

__all__ = ["SamplePage"]

_HEADING = 44
"""Pixels that the heading of a part stands above it."""
_BESIDE, _ABOVE = 6, 50
"""Pixels between buttons, and above what is brought into view."""
_LEFT_HIGH = 520
"""Pixels of height that the photo and what is said of it have where they stand above the rest."""


class SamplePage(Page):
    """Photo on the left; difference, advice and the way home on the right."""

    def __init__(self, session: Session, desk: Desk) -> None:
        super().__init__(session, desk, words.HEADING, words.HINT, scrolls=False)
        self.samples = SampleDesk.of(session, desk)
        self.judged: Judged | None = None
        self.photo_side = SamplePhotoSide(session, desk)
        self.eye = SampleEye()
        self.mixed = SampleMixed(session)
        self.told = SampleTold()
        self.next = SampleNext()
        self.home = SampleHome()
        self.rounds = SampleRounds()
        self.fan = button(words.FAN, self._show_fan)
        self.stripes = button(
            words.FIND_STRIPES, self._find_stripes, "little", tip=words.FIND_STRIPES_TIP
        )
        self.stripes_told = label("", "small")
        self.back = button(words.TAKE_BACK, self.samples.take_back, "little")
        self.teach = button(words.TEACH, self._teach, "little", tip=words.TEACH_TIP)
        self.teach_told = label("", "quiet")
        self.anew = button(words.ANEW, self.samples.begin_anew, "little")
        self.opened: NeighboursWindow | None = None
        self._live: Judged | None = None
        self._spent: tuple[Judged, int] | None = None
        self._job = None if desk.job is None else desk.job.id
        self._lay_out()
        self._listen()
        self.photo_side.begin()
        self._show()
        self._show_advice()

    # --- the page --------------------------------------------------------------------------------

    def _lay_out(self) -> None:
        rows = QVBoxLayout(self.body)
        rows.setContentsMargins(0, 0, 0, 0)
        left = QWidget()
        column = QVBoxLayout(left)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(self.photo_side, 1)
        column.addWidget(self.eye)
        self._right = right = QWidget()
        right.setObjectName("bench")
        inner = QVBoxLayout(right)
        inner.setContentsMargins(0, 0, 8, 0)
        inner.setSpacing(10)
        for heading, part in (
            (words.DIFFERENCE, self.told),
            (words.MIXED, self._mixed_part()),
            (words.NEXT, self._next()),
            (words.HOME, self._way_home()),
        ):
            inner.addWidget(_sheet(heading, part))
        inner.addStretch(1)
        sides = Columns(16, shares=(640, 520))
        sides.put(left, stretch=12, high=_LEFT_HIGH)
        self._area = scrolled(right, words.DIFFERENCE)
        self._bringing = Bringing(self._area)
        sides.put(self._area, stretch=9)
        rows.addWidget(sides)

    def _mixed_part(self) -> QWidget:
        part = QWidget()
        rows = QVBoxLayout(part)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.addWidget(self.mixed)
        rows.addWidget(self.stripes, 0, Qt.AlignmentFlag.AlignLeft)
        rows.addWidget(self.stripes_told)
        return part

    def _next(self) -> QWidget:
        part = QWidget()
        rows = QVBoxLayout(part)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.addWidget(self.next)
        rows.addWidget(self.fan, 0, Qt.AlignmentFlag.AlignLeft)
        return part

    def _way_home(self) -> QWidget:
        part = QWidget()
        rows = QVBoxLayout(part)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.addWidget(self.home)
        rows.addWidget(self.rounds)
        buttons = BreakingRow(_BESIDE)
        for one in (self.back, self.teach, self.anew):
            buttons.put(one)
        rows.addWidget(buttons)
        rows.addWidget(self.teach_told)
        return part

    def _listen(self) -> None:
        self.photo_side.judged.connect(self._take)
        self.eye.said.connect(self._said)
        self.told.keep.connect(self._keep)
        self.rounds.take.connect(self.samples.take)
        self.next.pot_changed.connect(self.samples.set_pot)
        self.next.take.connect(self._take_mix)
        self.samples.changed.connect(self._show)
        self.samples.advised.connect(self._show_advice)
        self.session.recipes_changed.connect(self._show)
        self.desk.job_changed.connect(self._follow)

    def arrive(self) -> None:
        """Show the mixes there are by now."""
        self._show()
        self._show_next()

    def hideEvent(self, event: QHideEvent) -> None:
        """Keep what is marked when the page goes out of view."""
        self.photo_side.keep()
        super().hideEvent(event)

    def _follow(self) -> None:
        """Let go what was judged by eye for another job."""
        job = None if self.desk.job is None else self.desk.job.id
        # A job that the first photo or sample begins is no other one.
        if job != self._job and self._job is not None and self.photo_side.photo is None:
            self._live = None
        self._job = job
        self._show()
        self._show_next()

    # --- acts ------------------------------------------------------------------------------------

    def _take(self, judged: Judged | None) -> None:
        """Take what was compared; where it is none, the last sample is shown again."""
        self._live = judged
        self._show()

    def _kept_number(self) -> int:
        """Give the number of the kept sample that is looked at; 0 for one that is not kept yet."""
        loop, live, spent = self.samples.loop, self._live, self._spent
        count = 0 if loop is None else len(loop.rounds)
        if live is None:
            return count if self.photo_side.photo is None else 0
        if spent is not None and spent[0] is live and spent[1] <= count:
            return spent[1]
        return kept_as(loop, self.photo_side.shot) if live.how is How.PHOTO else 0

    def _show_judged(self, number: int) -> None:
        loop, wanted = self.samples.loop, self.samples.wanted()
        again = loop is not None and number > 0 and self._live is None
        self.judged = loop.rounds[number - 1].judged if again and loop else self._live
        judged = self.judged
        far = None if judged is None or wanted is None else cloths_apart(judged, wanted)
        self.told.show_judged(judged, far)
        self.told.ask.setEnabled(judged is not None and number == 0)
        if self.samples.advice is None and self.next.asks != self._asks():
            self._show_next()

    def _said(self, text: str) -> None:
        wanted = self.samples.wanted()
        if wanted is None:
            return
        try:
            self._take(judged_by_eye(text, wanted.lab))
        except MendableError as error:
            self.session.workshop.failed.emit(error)

    def _keep(self) -> None:
        mixed = self.mixed.mixed()
        if self._live is not None and mixed:
            # One sample is kept once: another comparison frees the button again.
            loop = self.samples.loop
            self._bringing.ask(self._scroll_to_next)
            self._spent = self._live, 1 + (0 if loop is None else len(loop.rounds))
            shot = self.photo_side.shot if self._live.how is How.PHOTO else None
            self.samples.keep(mixed, self._live, shot)

    def _take_mix(self, added: bool) -> None:  # noqa: FBT001 - a signal has no names
        advice = self.samples.advice
        if advice is not None:
            self.samples.take(self._number(advice), added=added)

    def _teach(self) -> None:
        self._bringing.ask(self._scroll_to_taught)
        self.samples.teach()

    def _find_stripes(self) -> None:
        self.samples.find_stripes(self.mixed.mixed())

    def _show_fan(self) -> None:
        found = self.session.recipes
        if found is None:
            return
        self.opened = NeighboursWindow(self.session, found.recipes[0], self)
        self.opened.show()

    # --- showing ---------------------------------------------------------------------------------

    def _show(self) -> None:
        loop = self.samples.loop
        there = loop is not None and bool(loop.rounds)
        self.wait_for("" if there or self.samples.wanted() is not None else words.WAIT)
        number = self._kept_number()
        self._show_judged(number)
        self._show_mixed(number)
        self.fan.setEnabled(self.session.recipes is not None)
        for one in (self.back, self.anew):
            one.setEnabled(there)
        self._show_teaching(there)
        self.home.setVisible(there)
        if loop is not None and loop.rounds:
            self.home.show_loop(loop)
        samples = self.samples
        self.rounds.show_loop(
            *(loop, self.session.shelf),
            zone=samples.zone,
            taken=samples.taken,
            taught=samples.taught,
        )

    def _show_teaching(self, there: bool) -> None:  # noqa: FBT001 - whether there are samples
        """Say beforehand what teaching changes; grey the button where it would change nothing."""
        samples = self.samples
        known = there and samples.known
        self.teach.setEnabled(there and not known)
        why = taught_words.TEACH_KNOWN if known else words.TEACH_NONE
        self.teach.setToolTip(words.TEACH_TIP if there and not known else why)
        would = None if samples.reckoning else samples.would
        told = (
            taught_words.teach_line(known=known, would=would, by_eye=self._by_eye())
            if there
            else ""
        )
        self.teach_told.setText(told)
        self.teach_told.setToolTip("" if known or not told else words.FIGURES_TIP)
        self.teach_told.setVisible(bool(told))

    def _by_eye(self) -> bool:
        """Tell whether all samples were only looked at."""
        loop = self.samples.loop
        return loop is not None and all(r.how in {How.EYE, How.PICK} for r in loop.rounds)

    def _show_mixed(self, number: int) -> None:
        """Keep a sample's own mix beside it; for the next one offer what it may be of."""
        samples, loop = self.samples, self.samples.loop
        rounds = () if loop is None else loop.rounds
        held = rounds[number - 1].mixed if number else None
        self.mixed.hold(number or len(rounds) + 1, held)
        live, shot = self._live, self.photo_side.shot
        by_photo = live is not None and live.how is How.PHOTO
        beside = held is None and by_photo and samples.beside(shot)
        self.mixed.offer(self.desk.job, samples.advice, samples.stripes, beside=beside)

    def _show_advice(self) -> None:
        samples = self.samples
        self._show_next()
        self._show_teaching(samples.loop is not None and bool(samples.loop.rounds))
        self._show_mixed(self._kept_number())
        told = words.stripes_text(samples.stripes, self.session.shelf)
        self.stripes_told.setText(told)
        self.stripes_told.setVisible(bool(told))
        if samples.advice is not None and not samples.reckoning:
            # What was asked for may lie below.
            self._bringing.there()

    def _show_next(self) -> None:
        samples = self.samples
        advice, taken = samples.advice, samples.taken
        which = None
        if advice is not None and taken is not None and taken.number == self._number(advice):
            which = taken_so(taken, advice)
        self.next.show_advice(
            *(advice, samples.trouble, self.session.shelf),
            zone=samples.zone,
            taken=which,
            reckoning=samples.reckoning,
            ask=self._asks(),
        )

    def _asks(self) -> str:
        """Give what the button says that asks what to add, while it can be pressed."""
        ask = self.told.ask
        return ask.text() if ask.isEnabled() and not ask.isHidden() else ""

    def _number(self, advice: Advice) -> int:
        """Give the number of the sample that an advice is about."""
        loop = self.samples.loop
        rounds = () if loop is None else loop.rounds
        same = (n for n, one in reversed(list(enumerate(rounds, 1))) if one.same_as(advice.last))
        return next(same, len(rounds))

    def _scroll_to_taught(self) -> None:
        """Bring what the paints learnt into view, above its button."""
        bring_into_view(self.teach, above=_ABOVE)

    def _scroll_to_next(self) -> None:
        """Bring what to do to the top, under its heading."""
        top = self.next.mapTo(self._right, QPoint(0, 0)).y() - _HEADING
        self._area.verticalScrollBar().setValue(top)


def _sheet(heading: str, part: QWidget) -> QFrame:
    sheet, column = card(heading)
    column.addWidget(part)
    return sheet
