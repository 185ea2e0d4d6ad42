"""The plan used as a painter does: say what it is, answer, read the days, take the calendar."""

from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING

import vobject
from PySide6.QtCore import QPoint, Qt, QTime

from swatchwright.acts.jobs import keep_document
from swatchwright.acts.piece_job import keep_piece
from swatchwright.acts.plan import plan_for
from swatchwright.acts.plan_job import FINISH_PART, PLAN_PART
from swatchwright.desktop.pages.plan_page import PlanPage
from swatchwright.desktop.words import plan as words
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.piece.common import Kind, common_piece
from swatchwright.piece.work.cautions import CAUTIONS, Danger
from swatchwright.piece.work.order import Age, FinishKind, Lead, PlanOrder, Surface, Use
from swatchwright.piece.work.task import DRY_SANDING, StepKind
from swatchwright.piece.work.times import Source
from window.plan_hands import LEFT, choose, keep, kinds, told

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]


class TestLead:
    """The question that cannot be passed."""

    def test_unknown_has_no_plan(self, page: PlanPage) -> None:
        """Of what is unknown there is no plan, no answer is there, and the question is in view."""
        assert page.now.lead.isVisible()
        assert not any(answer.isChecked() for answer in page.now.lead.answers.values())
        assert words.LEAD_WAIT in told(page)
        assert not page.picture.isVisible()
        assert not page.calendar.isVisible()

    def test_treated_as_lead(self, page: PlanPage) -> None:
        """Treated as lead it is planned without a step that makes dust, and the caution is told."""
        page.now.lead.answers[Lead.TREAT_AS_LEAD].click()
        assert not set(kinds(page)) & DRY_SANDING
        assert CAUTIONS[Danger.LEAD].do in page.steps.text()
        assert page.picture.isVisible()

    def test_tested(self, page: PlanPage) -> None:
        """Tested negative it may be sanded dry, and the plan says why."""
        page.now.lead.answers[Lead.TESTED_NEGATIVE].click()
        assert set(kinds(page)) & DRY_SANDING
        assert "tested" in page.steps.text()

    def test_another_coat_is_asked_anew(self, page: PlanPage) -> None:
        """An answer given for one coat is not taken for another."""
        page.now.lead.answers[Lead.TESTED_NEGATIVE].click()
        choose(page.now.surface, Surface.RAW)
        assert not page.now.lead.isVisible()
        assert page.made is not None
        choose(page.now.surface, Surface.VARNISHED)
        choose(page.now.age, Age.OLD)
        assert page.now.lead.isVisible()
        assert page.order.lead is Lead.NOT_ANSWERED
        assert not page.picture.isVisible()

    def test_recent_paint_is_not_asked(self, page: PlanPage) -> None:
        """Paint known to be recent has a plan at once."""
        choose(page.now.surface, Surface.PAINTED)
        choose(page.now.age, Age.RECENT)
        assert not page.now.lead.isVisible()
        assert page.picture.isVisible()

    def test_bare_wood_has_no_age(self, page: PlanPage) -> None:
        """Bare wood is not asked how old its coat is."""
        choose(page.now.surface, Surface.RAW)
        assert not page.now.age.isVisible()


class TestWhatGoesOn:
    """Fields and other pages."""

    def test_the_plan_is_that_of_the_core(self, raw: PlanPage) -> None:
        """What is shown is the plan of the order that is set."""
        assert raw.made == plan_for(raw.order)
        assert words.summary(plan_for(raw.order)) in told(raw)
        for step in plan_for(raw.order).plan.steps:
            assert step.title in raw.steps.text()

    def test_coats_washes_and_finish(self, raw: PlanPage) -> None:
        """Three coats, a wash and wax are each a step for each coat, and wax is buffed."""
        raw.on.coats.setValue(3)
        raw.on.washes.setValue(1)
        choose(raw.on.finish, FinishKind.WAX)
        counts = {kind: kinds(raw).count(kind) for kind in set(kinds(raw))}
        assert counts[StepKind.COAT] == 3
        assert counts[StepKind.WASH] == counts[StepKind.CLEAR] == counts[StepKind.BUFF] == 1

    def test_oil_warns_of_rags_where_it_binds(self, raw: PlanPage) -> None:
        """With oil on top the caution of rags is in full at its first step, and short after."""
        assert CAUTIONS[Danger.RAGS].do not in raw.steps.text()
        choose(raw.on.finish, FinishKind.OIL)
        raw.on.finish_coats.setValue(2)
        assert raw.steps.text().count(CAUTIONS[Danger.RAGS].do) == 1
        assert words.care_line(Danger.RAGS, first=False) in raw.steps.text()

    def test_children(self, raw: PlanPage) -> None:
        """A piece that children use says so, with what to do."""
        raw.now.uses[Use.CHILDREN].click()
        assert "Children" in raw.steps.text()

    def test_the_piece_and_the_finish_are_followed(
        self, page: PlanPage, window: Window, settle: Settle
    ) -> None:
        """Before anything is set here, piece and finish are those of the other pages."""
        table = common_piece(Kind.CONSOLE_TABLE)
        window.desk.edit_job(lambda store, id_: keep_piece(store, id_, None, table, None))
        wax = Stack((Layer(LayerKind.WAX, passes=2),))
        window.desk.edit_job(lambda store, id_: keep_document(store, id_, FINISH_PART, wax))
        settle()
        choose(page.now.surface, Surface.RAW)
        assert page.order.name == table.name
        assert (page.order.finish, page.order.finish_coats) == (FinishKind.WAX, 2)
        assert table.name in told(page)
        assert "underside" in told(page)

    def test_what_differs_is_told_and_taken_over(
        self, raw: PlanPage, window: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """What is set by hand stays; what the other pages say is told at the head, to be taken."""
        choose(raw.on.finish, FinishKind.OIL)
        keep(raw, settle)
        wax = Stack((Layer(LayerKind.WAX),))
        window.desk.edit_job(lambda store, id_: keep_document(store, id_, FINISH_PART, wax))
        settle()
        assert raw.order.finish is FinishKind.OIL
        assert "wax" in raw.differs.text()
        assert raw.take.isVisible()
        # Beside the headline, where it is in view without scrolling.
        top = raw.take.mapTo(raw, QPoint(0, 0)).y()
        assert top < raw.picture.mapTo(raw, QPoint(0, 0)).y()
        qtbot.mouseClick(raw.take, LEFT)
        assert raw.on.finish.currentData() == FinishKind.WAX
        assert not raw.take.isVisible()
        settle()

    def test_what_is_left_alone_follows(
        self, raw: PlanPage, window: Window, settle: Settle
    ) -> None:
        """After the plan was begun a field that nobody set still follows the page Finish."""
        raw.on.coats.setValue(3)
        keep(raw, settle)
        layers = Stack((Layer(LayerKind.WASH, (("white-clean", 1.0),), 4.0), Layer(LayerKind.WAX)))
        window.desk.edit_job(lambda store, id_: keep_document(store, id_, FINISH_PART, layers))
        settle()
        assert (raw.order.coats, raw.order.washes, raw.order.finish) == (3, 1, FinishKind.WAX)
        assert not raw.differs.isVisible()
        assert "4 parts of water" in told(raw)

    def test_wax_for_children(self, raw: PlanPage) -> None:
        """Wax where children are is said to be weak beside the headline, a varnish is not."""
        choose(raw.on.finish, FinishKind.WAX)
        assert not raw.weak.isVisible()
        raw.now.uses[Use.CHILDREN].click()
        assert raw.weak.isVisible()
        assert "label" in raw.weak.text()
        choose(raw.on.finish, FinishKind.VARNISH)
        assert not raw.weak.isVisible()


class TestWhereAndWhen:
    """Days, hours, the room, and the tins."""

    def test_the_first_day(self, raw: PlanPage) -> None:
        """The plan begins on the day that is set, and names it."""
        assert raw.made is not None
        assert raw.made.days[0].day == "2026-12-01"
        assert "Tue 1 Dec" in told(raw)

    def test_a_day_that_is_no_working_day(self, raw: PlanPage) -> None:
        """With Tuesdays off the work begins on a Wednesday (1 December 2026 is a Tuesday)."""
        raw.when.days[1].click()
        assert raw.made is not None
        assert date.fromisoformat(raw.made.plan.steps[0].start[:10]).isoweekday() == 3

    def test_no_days_at_all(self, raw: PlanPage) -> None:
        """With every day off there is no plan, and in its place is said what to give."""
        for button in raw.when.days:
            if button.isChecked():
                button.click()
        assert raw.blocked.isVisible()
        assert "days" in raw.blocked.text()
        raw.when.days[5].click()
        assert raw.picture.isVisible()

    def test_hours(self, raw: PlanPage) -> None:
        """No work begins before the hours that are set."""
        raw.when.begin.setTime(QTime(13, 30))
        assert raw.made is not None
        assert all(s.start[11:] >= "13:30" for st in raw.made.plan.steps for s in st.sessions)
        raw.when.end.setTime(QTime(13, 0))
        assert raw.blocked.isVisible()

    def test_a_cold_room(self, raw: PlanPage) -> None:
        """Cold draws the waits out, and says so; too cold stops it until the tin allows it."""
        assert not raw.factor.isVisible()
        raw.when.temperature.setValue(10)
        assert "2.0" in raw.factor.text()
        raw.when.temperature.setValue(5)
        assert raw.blocked.isVisible()
        raw.when.tin_allows.click()
        assert raw.picture.isVisible()

    def test_times_of_a_tin(self, raw: PlanPage) -> None:
        """Hours typed from the tin are waited, and told to be the tin's."""
        assert not raw.times.fields["paint"][1].isEnabled()
        raw.times.ticks["paint"].click()
        raw.times.fields["paint"][1].setValue(6)
        assert raw.made is not None
        waits = [s for s in raw.made.plan.steps if s.kind is StepKind.COAT]
        assert waits[0].wait == 360
        assert waits[0].wait_from is Source.TIN
        assert "as the tin says" in raw.steps.text()
        assert not raw.times.ticks["wash"].isVisible()

    def test_times_that_cannot_be(self, raw: PlanPage) -> None:
        """A recoat time shorter than touch dry stops the plan, and is told in its place."""
        raw.times.ticks["paint"].click()
        raw.times.fields["paint"][0].setValue(9)
        assert raw.blocked.isVisible()
        assert "touch dry" in raw.blocked.text()


class TestPicture:
    """The days as a picture."""

    def test_every_block_of_work_has_its_number(self, raw: PlanPage) -> None:
        """Where a block is too narrow for it, the number stands beside it, on no other block."""
        picture, letters = raw.picture, raw.picture.fontMetrics()
        narrow = 0
        for row, day in enumerate(picture.rows()):
            beside = picture.beside(row)
            work = [place for place, block in enumerate(day.blocks) if not block.drying]
            for place in work:
                wide = letters.horizontalAdvance(str(day.blocks[place].step))
                assert place in beside or picture.box(row, place).width() >= wide
            for place, spot in beside.items():
                narrow += 1
                assert picture.rect().contains(spot.toAlignedRect())
                assert spot.width() >= letters.horizontalAdvance(str(day.blocks[place].step))
        assert narrow > 0

    def test_hours_are_read_whole(self, raw: PlanPage) -> None:
        """The figure of each time fits its field: a week is 168, without a tenth."""
        for fields in raw.times.fields.values():
            for field in fields:
                assert not field.text().endswith((".0", ",0"))

    def test_a_row_for_each_day(self, raw: PlanPage) -> None:
        """All days are there in their order; only days of mere hardening share a row."""
        assert raw.made is not None
        shown = [day for row in raw.picture.rows() for day in row.days]
        assert tuple(shown) == raw.made.days
        for row in raw.picture.rows():
            if len(row.days) > 1:
                assert all(b.drying and (b.begin, b.end) == (0, 1440) for b in row.blocks)

    def test_work_is_full_and_waiting_hatched(self, raw: PlanPage) -> None:
        """In the picture work is one ink, and waiting shows the ground between its strokes."""
        picture = raw.picture
        seen = picture.grab().toImage()
        found: dict[bool, set[int]] = {}
        for row, day in enumerate(picture.rows()):
            for place, block in enumerate(day.blocks):
                box = picture.box(row, place).adjusted(2, 2, -2, -2).toRect()
                if box.width() > 30:
                    found.setdefault(block.drying, set()).update(
                        seen.pixelColor(x, box.top() + 1).value()
                        for x in range(box.left(), box.left() + 14)
                    )
        assert len(found[False]) == 1
        assert len(found[True]) > 1

    def test_keys_go_from_block_to_block(self, raw: PlanPage, qtbot: QtBot) -> None:
        """The arrow keys reach every block; each is told to a screen reader and read out below."""
        raw.picture.setFocus()
        blocks = [b for row in raw.picture.rows() for b in row.blocks]
        for block in blocks:
            qtbot.keyClick(raw.picture, Qt.Key.Key_Right)
            assert raw.picture.picked() == block
            assert f"step {block.step}," in raw.picture.accessibleName()
            assert f"<b>{block.step}." in raw.picked.text()
        qtbot.keyClick(raw.picture, Qt.Key.Key_Right)
        assert raw.picture.picked() == blocks[-1]
        qtbot.keyClick(raw.picture, Qt.Key.Key_Up)
        qtbot.keyClick(raw.picture, Qt.Key.Key_Left)
        assert raw.picture.picked() != blocks[-1]
        qtbot.keyClick(raw.picture, Qt.Key.Key_Down)
        assert raw.picture.picked() in blocks

    def test_return_finds_the_step(self, raw: PlanPage, qtbot: QtBot) -> None:
        """Return on a block brings its day in the list into view."""
        raw.picture.setFocus()
        for _ in range(sum(len(row.blocks) for row in raw.picture.rows())):
            qtbot.keyClick(raw.picture, Qt.Key.Key_Right)
        # The list is laid out with the next event.
        qtbot.waitUntil(lambda: raw._right.verticalScrollBar().maximum() > 0)
        before = raw._right.verticalScrollBar().value()
        qtbot.keyClick(raw.picture, Qt.Key.Key_Return)
        assert raw._right.verticalScrollBar().value() > before

    def test_the_mouse_picks_a_block(self, raw: PlanPage, qtbot: QtBot) -> None:
        """A pressed block is picked, and work lies over the wait beside it."""
        middle = raw.picture.box(0, 0).center().toPoint()
        qtbot.mouseClick(raw.picture, LEFT, pos=middle)
        picked = raw.picture.picked()
        assert picked is not None
        assert not picked.drying


class TestKept:
    """What is set stays with the job, and goes out as a calendar."""

    def test_kept_and_shown_again(
        self, raw: PlanPage, window: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """The order is kept with the job; undo shows the one before."""
        keep(raw, settle)
        raw.on.coats.setValue(4)
        keep(raw, settle)
        assert window.desk.part(PLAN_PART, PlanOrder) == raw.order
        qtbot.mouseClick(window.undo, LEFT)
        settle()
        assert raw.on.coats.value() == 2
        qtbot.mouseClick(window.redo, LEFT)
        settle()
        assert raw.on.coats.value() == 4

    def test_leaving_the_page_keeps_it(self, raw: PlanPage, window: Window, settle: Settle) -> None:
        """What was just set is kept when another page is shown."""
        window.show_page("colour")
        settle()
        kept = window.desk.part(PLAN_PART, PlanOrder)
        assert kept is not None
        assert kept.surface is Surface.RAW
        assert raw.order == kept

    def test_a_look_keeps_nothing(self, page: PlanPage, window: Window, settle: Settle) -> None:
        """Who only looks at the page begins no job."""
        window.show_page("colour")
        settle()
        assert window.desk.job is None
        assert page.made is None

    def test_the_calendar(self, raw: PlanPage, settle: Settle, tmp_path: Path) -> None:
        """The file is read by another parser, with an event for every time of work."""
        path = tmp_path / "piece.ics"
        raw.save_calendar(path)
        settle()
        found = vobject.readOne(path.read_bytes().decode())
        assert raw.made is not None
        times = sum(len(step.sessions) for step in raw.made.plan.steps)
        assert len(found.contents["vevent"]) == times
        assert words.saved("piece.ics") in told(raw)

    def test_where_one_cannot_save(
        self, raw: PlanPage, window: Window, settle: Settle, tmp_path: Path
    ) -> None:
        """A folder that is not there is told of, and the plan stays."""
        raw.save_calendar(tmp_path / "nowhere" / "piece.ics")
        settle()
        assert window.trouble.isVisible()
        assert raw.picture.isVisible()
