"""The photo and what is said of it: followed live, its worth, references, faults, the weave."""

from __future__ import annotations

import json
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel

from hands import drag
from swatchwright.acts.paint import look_of_paint
from swatchwright.acts.references import marked_grey
from swatchwright.colour.difference import delta_e_2000
from swatchwright.desktop import words as common
from swatchwright.desktop.widgets.photo_view import Mark
from swatchwright.desktop.window import Window
from swatchwright.desktop.words import photo as words
from swatchwright.values import Rect

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtCore import QPoint
    from pytestqt.qtbot import QtBot

    from swatchwright.acts.samples import SamplePhoto
    from swatchwright.desktop.photo_side import PhotoSide

    Settle = Callable[[], None]

LEFT, NONE = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
PATIENCE = 60_000
CHIP, PAPER = (600, 500, 650, 545), (1262, 560, 1400, 630)
"""Where boxes are drawn, in pixels of the sample: on the red of the cushion, and on the card."""


@pytest.fixture
def side(with_cushion: Window) -> PhotoSide:
    """Give the side of the photo with the sample cushion marked."""
    return with_cushion.photo_side


def shown(side: PhotoSide) -> list[str]:
    """Give the colours of the strip as they are painted."""
    return [block.grab().toImage().pixelColor(40, 40).name() for block in side.strip.blocks()]


def add(side: PhotoSide, kind: str, box: tuple[int, int, int, int]) -> None:
    """Add a reference of a kind by drawing its box."""
    QTest.mouseClick(side.worth.add_other, LEFT)
    side.tools.adding.kind.setCurrentText(kind)
    drag(side.view, box[:2], box[2:])


class TestLive:
    """The grey card is followed while it is dragged."""

    @staticmethod
    def pull(side: PhotoSide, grey: Rect, way: tuple[int, int]) -> tuple[QPoint, QPoint]:
        """Take the grey box and move it, without letting go; give both places."""
        x, y = grey.x + grey.width / 2, grey.y + grey.height / 2
        start = side.view.to_widget(x, y).toPoint()
        end = side.view.to_widget(x + way[0], y + way[1]).toPoint()
        QTest.mousePress(side.view, LEFT, NONE, start)
        QTest.mouseMove(side.view, (start + end) / 2)
        QTest.mouseMove(side.view, end)
        return start, end

    def test_colours_follow_the_hand(
        self, side: PhotoSide, with_cushion: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """With the button still down strip and picture change; no mark is set, nothing undone."""
        session = with_cushion.session
        before, marks, picture = shown(side), session.marks, side.view.grab().toImage()
        assert marks.grey is not None
        _, end = self.pull(side, marks.grey, (60, 190))
        qtbot.waitUntil(lambda: shown(side) != before, timeout=PATIENCE)
        assert session.marks == marks
        assert not session.history.last
        assert side.view.grab().toImage() != picture
        followed = session.found
        QTest.mouseRelease(side.view, LEFT, NONE, end)
        settle()
        assert session.marks != marks
        assert session.found is not followed
        assert session.history.last == common.DID_MARK

    def test_what_followed_is_what_is_read(
        self, side: PhotoSide, with_cushion: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """The full reading gives the colours that were shown meanwhile, very nearly."""
        session = with_cushion.session
        followed: list[tuple[object, ...]] = []
        side.live.followed.connect(lambda seen, _: followed.append(seen.labs))
        assert session.marks.grey is not None
        _, end = self.pull(side, session.marks.grey, (0, 60))
        qtbot.waitUntil(lambda: bool(followed), timeout=PATIENCE)
        QTest.mouseRelease(side.view, LEFT, NONE, end)
        settle()
        assert session.found is not None
        for lab, colour in zip(followed[-1], session.found.colours, strict=True):
            assert float(delta_e_2000(lab.triple, colour.colour.lab.triple)) < 1.5  # type: ignore[attr-defined]

    def test_a_resting_hand_is_read_in_full(
        self, side: PhotoSide, with_cushion: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """Where the hand rests the photo is read; let go where it was taken, all is as before."""
        session = with_cushion.session
        first, marks = session.found, session.marks
        assert first is not None
        assert marks.grey is not None
        start, _ = self.pull(side, marks.grey, (60, 190))
        qtbot.waitUntil(
            lambda: session.found is not None and session.found is not first, timeout=PATIENCE
        )
        assert session.found is not None
        assert session.found.balance.gains != first.balance.gains
        assert session.marks == marks
        QTest.mouseMove(side.view, start)
        QTest.mouseRelease(side.view, LEFT, NONE, start)
        settle()
        assert session.marks == marks
        assert session.found.balance.gains == first.balance.gains

    def test_off_the_card_it_is_said(
        self, side: PhotoSide, with_cushion: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """Dragged onto the stripes the hint says that there is no even grey, and forgets it."""
        grey = with_cushion.session.marks.grey
        assert grey is not None
        _, end = self.pull(side, grey, (-700, 0))
        told = {words.NOT_THERE, words.NOT_EVEN}
        qtbot.waitUntil(lambda: side.tools.hint.text() in told, timeout=PATIENCE)
        QTest.mouseRelease(side.view, LEFT, NONE, end)
        settle()
        assert side.tools.hint.text() not in told

    def test_a_mere_click_reads_nothing(self, side: PhotoSide, with_cushion: Window) -> None:
        """A click on the box of the card starts no work."""
        grey = with_cushion.session.marks.grey
        assert grey is not None
        at = side.view.to_widget(grey.x + 90, grey.y + 120).toPoint()
        QTest.mouseClick(side.view, LEFT, NONE, at)
        assert not with_cushion.session.workshop.doing("colours")


class TestWorth:
    """How sure the colours are, and what would help."""

    def test_each_colour_says_how_sure_it_is(self, side: PhotoSide, with_cushion: Window) -> None:
        """Name and tip of a block give its usual error, rounded to what is known."""
        found = with_cushion.session.found
        assert found is not None
        for block, colour in zip(side.strip.blocks(), found.colours, strict=True):
            told = f"give or take {colour.give_or_take:.0f}"
            assert told in block.accessibleName()
            assert told in block.toolTip()

    def test_a_good_photo_says_so(self, side: PhotoSide, with_cushion: Window) -> None:
        """With nothing found wrong the line says so, with the doubt of the wanted colour."""
        assert not side.findings.isVisible()
        assert side.worth.line.text().startswith(words.GOOD[:-1])
        found = with_cushion.session.found
        assert found is not None
        assert words.give_or_take(found.colours[0]) in side.worth.line.text()

    def test_what_would_help_is_named_and_added(self, side: PhotoSide, qtbot: QtBot) -> None:
        """The best addition is named; pressing its button asks for just that."""
        assert "brushed-out paint" in side.worth.help.text()
        qtbot.mouseClick(side.worth.add_it, LEFT)
        adding = side.tools.adding
        assert adding.isVisible()
        assert adding.kind.currentText() == words.A_PAINT
        assert "red" in adding.paint.currentText().lower()
        qtbot.mouseClick(adding.cancel, LEFT)
        assert not adding.isVisible()
        assert side.tools.buttons[Mark.CLOTH].isChecked()

    def test_without_a_card_it_is_far_less(
        self, window: Window, settle: Settle, cushion: SamplePhoto
    ) -> None:
        """A photo without references says so, and offers one."""
        window.open(cushion.path)
        settle()
        assert "No grey card" in window.photo_side.worth.line.text()
        assert not window.photo_side.worth.add_it.isVisible()
        assert window.photo_side.worth.add_other.isVisible()


class TestReferences:
    """More things of known colour."""

    def test_a_paint_of_the_shelf(
        self, side: PhotoSide, with_cushion: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """A brushed-out paint is a box with number and name, of its dry colour, and undone."""
        session = with_cushion.session
        add(side, words.A_PAINT, CHIP)
        settle()
        (marked,) = session.marks.references
        paint = next(p for p in session.shelf.paints if p.name == marked.name)
        assert marked.lab == look_of_paint(session.shelf, paint.id).dry
        assert abs(marked.rect.x - CHIP[0]) < 6
        assert side.tools.further.buttons[1].text() == f"1 {paint.name}"
        assert side.view.tags[1] == f"1 {paint.name}"
        assert session.found is not None
        assert len(session.found.correction.references) == 2
        qtbot.mouseClick(with_cushion.undo, LEFT)
        settle()
        assert not session.marks.references
        assert not side.tools.further.isVisible()
        qtbot.mouseClick(with_cushion.redo, LEFT)
        settle()
        assert session.marks.references == (marked,)

    def test_greys_and_numbers(self, side: PhotoSide, with_cushion: Window, settle: Settle) -> None:
        """Another grey of any figure, and a colour by its numbers, are told apart in the list."""
        side.worth.add.emit(words.BLACK)
        assert side.tools.adding.percent.value() == pytest.approx(4)
        side.tools.adding.percent.setValue(22)
        drag(side.view, PAPER[:2], PAPER[2:])
        settle()
        side.worth.add.emit(words.BY_NUMBERS)
        side.tools.adding.numbers.setText("46, 34, 24")
        drag(side.view, CHIP[:2], CHIP[2:])
        settle()
        marked = with_cushion.session.marks.references
        assert [m.name for m in marked] == ["a grey of 22 %", "L* 46, a* 34, b* 24"]
        assert [m.kind for m in marked] == ["grey", "chip"]

    def test_an_impossible_reference_loses_nothing(
        self, side: PhotoSide, with_cushion: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """Blue cloth said to be an orange paint is refused in words; undone all is as it was."""
        session = with_cushion.session
        before, strip = session.marks, shown(side)
        side.worth.add.emit(words.BY_NUMBERS)
        side.tools.adding.numbers.setText("45.17, 45.17, 28.7")
        session.set_marks(replace(before, light="daylight"))
        drag(side.view, (300, 400), (360, 450))
        settle()
        assert "contradict" in " ".join(
            label.text() for label in side.window().findChildren(QLabel) if label.isVisible()
        )
        for _ in range(2):
            qtbot.mouseClick(with_cushion.undo, LEFT)
            settle()
        assert session.marks == before
        assert shown(side) == strip

    def test_no_colour_no_reference(
        self, side: PhotoSide, with_cushion: Window, settle: Settle
    ) -> None:
        """A box for numbers that are no colour is not kept, and it is said how to mend it."""
        side.worth.add.emit(words.BY_NUMBERS)
        side.tools.adding.numbers.setText("reddish")
        drag(side.view, CHIP[:2], CHIP[2:])
        settle()
        assert not with_cushion.session.marks.references
        assert with_cushion.trouble.isVisible()
        assert side.tools.adding.isVisible()

    def test_moved_and_taken_away_by_keys(
        self, side: PhotoSide, with_cushion: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """A chosen reference is moved by the arrows, and goes by Delete or by its cross."""
        session = with_cushion.session
        box = Rect(1262, 560, 120, 60)
        both = (marked_grey(box, 0.18), marked_grey(Rect(1262, 420, 120, 60), 0.18))
        session.set_marks(replace(session.marks, references=both))
        settle()
        qtbot.mouseClick(side.tools.further.buttons[1], LEFT)
        qtbot.keyClick(side.view, Qt.Key.Key_Left)
        settle()
        assert session.marks.references[0].rect.x < box.x
        qtbot.keyClick(side.view, Qt.Key.Key_Delete)
        settle()
        assert [marked.rect for marked in session.marks.references] == [both[1].rect]
        qtbot.mouseClick(side.tools.further.away[1], LEFT)
        settle()
        assert not side.tools.further.buttons
        assert side.view.hasFocus()

    def test_what_the_light_was(
        self, side: PhotoSide, with_cushion: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """Told that it was a lamp the colours are less sure than told that it was daylight."""
        session = with_cushion.session
        qtbot.mouseClick(side.about.toggle, LEFT)
        sure = {}
        for place, (_, kind) in enumerate(words.LIGHTS):
            side.about.light.setCurrentIndex(place)
            side.about.light.activated.emit(place)
            settle()
            assert session.found is not None
            sure[kind] = session.found.colours[0].give_or_take
        assert sure["daylight"] <= sure[None] <= sure["lamp"]
        assert sure["daylight"] < sure["lamp"]
        assert session.history.last == words.DID_LIGHT

    def test_a_card_of_another_figure_in_place(
        self, side: PhotoSide, with_cushion: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """Another figure for the card is typed where it is chosen, in no window of its own."""
        other = side.tools.card.findText(common.CARD_OTHER)
        side.tools.card.activated.emit(other)
        side.tools.percent.setValue(21.5)
        qtbot.keyClick(side.tools.percent, Qt.Key.Key_Return)
        settle()
        assert with_cushion.session.marks.reflectance == pytest.approx(0.215)
        assert side.tools.card.isVisible()
        assert "21.5" in side.tools.card.currentText()


class TestProposal:
    """A likely grey is asked about, never used."""

    @pytest.fixture
    def bare(self, window: Window, settle: Settle, cushion: SamplePhoto) -> Window:
        """Give the window with the sample and no marks."""
        window.open(cushion.path)
        settle()
        return window

    def test_it_is_only_asked(self, bare: Window, qtbot: QtBot, settle: Settle) -> None:
        """Until she agrees nothing is marked; after the last No the hint is back."""
        proposal = bare.photo_side.tools.proposal
        assert proposal.isVisible()
        assert bare.session.marks.grey is None
        while proposal.asked is not None:
            qtbot.mouseClick(proposal.no, LEFT)
        settle()
        assert bare.session.marks.grey is None
        assert not proposal.isVisible()
        assert bare.photo_side.tools.hint.text() == common.HINT_GREY

    def test_yes_marks_it(
        self, bare: Window, qtbot: QtBot, settle: Settle, cushion: SamplePhoto
    ) -> None:
        """What is proposed lies within the card of the file that tells the truth of the sample."""
        proposal = bare.photo_side.tools.proposal
        rect = proposal.asked
        assert rect is not None
        rows = json.loads((cushion.path.parent / "truth.json").read_text(encoding="utf-8"))
        row = next(r for r in rows["images"] if r["file"] == cushion.path.name)
        x, y, width, height = row["grey_card"]
        assert x - 40 <= rect.x < rect.right <= x + width + 40
        assert y - 40 <= rect.y < rect.bottom <= y + height + 40
        qtbot.mouseClick(proposal.yes, LEFT)
        settle()
        assert bare.session.marks.grey == rect
        assert not proposal.isVisible()
        assert bare.photo_side.tools.buttons[Mark.CLOTH].isChecked()
        qtbot.mouseClick(bare.undo, LEFT)
        settle()
        assert bare.session.marks.grey is None

    def test_nothing_is_asked_where_it_is_marked(self, side: PhotoSide) -> None:
        """A photo that comes with its marks is not asked about."""
        assert side.tools.proposal.asked is None
        assert not side.tools.proposal.isVisible()


class TestFindings:
    """What is wrong, each with what to do."""

    def test_the_worst_first_and_more_on_asking(
        self, side: PhotoSide, with_cushion: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """One finding is in view with its weight in words; the others come where they are asked."""
        add(side, words.WHITE, PAPER)
        with_cushion.session.set_cloth(Rect(700, 600, 12, 12))
        settle()
        found = with_cushion.session.found
        assert found is not None
        told = words.findings_told(found, with_cushion.session.marks.references)
        assert len(told) == len(found.warnings) >= 2
        assert side.findings.list.text() == told[0]
        assert told[0].startswith("This shifts the colours: ")
        assert side.findings.more.text() == words.more_findings(len(told) - 1)
        qtbot.mouseClick(side.findings.more, LEFT)
        assert side.findings.list.text().split("\n") == list(told)
        qtbot.mouseClick(side.findings.more, LEFT)
        assert side.findings.list.text() == told[0]
        assert not side.worth.line.text().startswith(words.GOOD[:-1])

    def test_a_contradicted_reference_is_named(
        self, side: PhotoSide, with_cushion: Window, settle: Settle
    ) -> None:
        """A grey card said to be white paper as well is told by number and word, not by pixels."""
        add(side, words.WHITE, PAPER)
        settle()
        found, marked = with_cushion.session.found, with_cushion.session.marks.references
        assert found is not None
        told = " ".join(words.findings_told(found, marked))
        assert "reference 1, white paper" in told
        assert "pixels)" not in told


class TestWeave:
    """The yarn, or the cloth from a metre away."""

    def test_it_changes_what_is_wanted(
        self, side: PhotoSide, with_cushion: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """From a metre the wanted colour is that of the whole weave; undone it is the yarn's."""
        session = with_cushion.session
        assert session.found is not None
        yarn, metre = session.found.colours[0].colour, session.found.colours[0].from_a_metre
        assert session.wanted == yarn
        qtbot.mouseClick(side.weave.buttons[True], LEFT)
        settle()
        assert session.wanted == metre
        assert side.weave.buttons[True].isChecked()
        assert session.recipes is not None
        assert session.recipes.wanted == metre
        qtbot.mouseClick(with_cushion.undo, LEFT)
        settle()
        assert session.wanted == yarn
        assert side.weave.buttons[False].isChecked()

    def test_only_for_a_marked_cloth(self, side: PhotoSide, with_cushion: Window) -> None:
        """A whole photo has no weave to choose of."""
        assert side.weave.isVisible()
        with_cushion.session.lay(None, type(with_cushion.session.marks)())
        assert not side.weave.isVisible()


class TestAbout:
    """What the file is."""

    def test_facts_on_asking(self, side: PhotoSide, with_cushion: Window, qtbot: QtBot) -> None:
        """Kind, size and profile are told on pressing the button, with what was assumed."""
        assert not side.about.isVisible()
        qtbot.mouseClick(side.about.toggle, LEFT)
        found = with_cushion.session.found
        assert found is not None
        for told in (found.photo.facts.words, *found.notes):
            assert told in side.about.facts.text()
        assert "1600 × 1200" in side.about.toggle.toolTip()

    def test_every_kind_of_file_can_be_picked(self) -> None:
        """The picker offers what a phone and a camera save."""
        for kind in ("heic", "heif", "avif", "dng", "cr3", "nef", "arw", "jpg", "tiff"):
            assert f"*.{kind}" in common.PHOTO_FILES
            first, *_ = common.PHOTO_FILES.split(";;")
            assert {f"*.{kind}", f"*.{kind.upper()}"} <= set(first.partition("(")[2][:-1].split())


class TestKept:
    """What was told of a photo belongs to the job."""

    def test_laid_again(
        self, side: PhotoSide, with_cushion: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """References, light and how the weave is seen are there when the window is opened again."""
        session = with_cushion.session
        add(side, words.A_PAINT, CHIP)
        settle()
        side.about.light.activated.emit(1)
        settle()
        qtbot.mouseClick(side.weave.buttons[True], LEFT)
        settle()
        marks, wanted = session.marks, session.wanted
        assert marks.references
        assert (marks.light, marks.metre) == ("daylight", True)
        qtbot.mouseClick(with_cushion.mix_side.columns()[0].keep, LEFT)
        settle()
        with_cushion.close()
        made = Window()
        made.resize(1280, 720)
        qtbot.addWidget(made)
        made.show()
        qtbot.waitUntil(
            lambda: made.session.recipes is not None and made.at_rest(),
            timeout=PATIENCE,
        )
        assert made.session.marks == marks
        assert made.session.wanted == wanted
        assert made.photo_side.tools.further.buttons[1].isVisible()
        assert made.photo_side.weave.buttons[True].isChecked()
        assert made.photo_side.strip.blocks()[0].isChecked()
        made.session.close()
        made.desk.close()
