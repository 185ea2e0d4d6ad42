"""The page of the sample: marked, said, kept, learnt from and brought home."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QImage

from swatchwright.acts.sample_judged import How
from swatchwright.acts.sample_rounds import SAMPLES_PART, Round, SampleLoop, Stop
from swatchwright.acts.sample_why import Why
from swatchwright.acts.samples import sample_of_a_sample
from swatchwright.desktop.neighbours_window import NeighboursWindow
from swatchwright.desktop.pages.sample_page import SamplePage
from swatchwright.desktop.widgets.photo_view import Mark
from swatchwright.desktop.words import sample as words
from swatchwright.desktop.words import sample_taught as taught_words
from swatchwright.values import Rect

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    from swatchwright.acts.sample import Advice
    from swatchwright.acts.sample_judged import Judged
    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton


def sample_page(window: Window) -> SamplePage:
    """Show the page."""
    window.show_page("sample")
    page = window.page("sample")
    assert isinstance(page, SamplePage)
    return page


def judged_on(page: SamplePage) -> Judged | None:
    """Give what was compared by now."""
    return page.judged


def rounds_on(page: SamplePage) -> tuple[Round, ...]:
    """Give the samples there are by now."""
    return () if page.samples.loop is None else page.samples.loop.rounds


def advice_for(page: SamplePage) -> Advice | None:
    """Give what was advised by now."""
    return page.samples.advice


def say(page: SamplePage, qtbot: QtBot, amount: str, way: str) -> None:
    """Say by eye how the sample looks."""
    page.eye.amount.setCurrentIndex(page.eye.amount.findData(amount))
    page.eye.first.setCurrentIndex(page.eye.first.findData(way))
    qtbot.mouseClick(page.eye.take, LEFT)


def keep(page: SamplePage, qtbot: QtBot, settle: Settle) -> None:
    """Keep the sample and wait for the advice."""
    qtbot.mouseClick(page.told.ask, LEFT)
    settle()


def test_it_waits_for_a_mix(window: Window, settle: Settle) -> None:
    """Without a wanted colour the page says what it waits for, and opens once there is one."""
    settle()
    page = sample_page(window)
    assert page.waiting.text() == words.WAIT
    assert page.waiting.isVisible()
    window.session.type_colour("46, 34, 24")
    settle()
    assert not page.waiting.isVisible()
    assert page.mixed.amounts


def test_the_rendered_sample_is_compared(mixed: Window, settle: Settle, qtbot: QtBot) -> None:
    """One press opens it with its marks; colours, words and figures appear."""
    page = sample_page(mixed)
    qtbot.mouseClick(page.photo_side.try_it, LEFT)
    settle()
    assert page.judged is not None
    assert page.told.field.colours() == (page.judged.cloth, page.judged.sample)
    assert page.told.words.text() == words.difference(page.judged)
    assert page.told.figures.text() == words.figures(page.judged)
    assert page.told.field.accessibleName() == words.field_name(page.judged)


def test_boxes_are_drawn_by_dragging(mixed: Window, settle: Settle, qtbot: QtBot) -> None:
    """On a photo without marks the three boxes are asked for in turn, and then it is compared."""
    found = sample_of_a_sample()
    assert found is not None
    assert found.sample is not None
    page = sample_page(mixed)
    side = page.photo_side
    side.open_file(found.path)
    settle()
    assert page.judged is None
    for mark, rect in (
        (Mark.GREY, found.grey),
        (Mark.CLOTH, found.cloth),
        (Mark.SAMPLE, found.sample),
    ):
        assert side.modes[mark].isChecked()
        start = side.view.to_widget(rect.x, rect.y).toPoint()
        end = side.view.to_widget(rect.right, rect.bottom).toPoint()
        qtbot.mousePress(side.view, LEFT, pos=start)
        qtbot.mouseMove(side.view, start + QPoint(8, 8))
        qtbot.mouseMove(side.view, end)
        qtbot.mouseRelease(side.view, LEFT, pos=end)
    settle()
    assert set(side.marks) == set(Mark)
    judged = judged_on(page)
    assert judged is not None
    assert judged.delta_e > 1


def test_a_box_is_taken_away_by_key(mixed: Window, settle: Settle, qtbot: QtBot) -> None:
    """Delete takes the sample's box away, and with it the comparison."""
    page = sample_page(mixed)
    qtbot.mouseClick(page.photo_side.try_it, LEFT)
    settle()
    page.photo_side.view.setFocus()
    qtbot.keyClick(page.photo_side.view, Qt.Key.Key_Delete)
    settle()
    assert Mark.SAMPLE not in page.photo_side.marks
    assert judged_on(page) is None
    assert not page.told.ask.isVisible()


def test_a_sample_that_is_kept_tells_what_to_add(
    mixed: Window, settle: Settle, qtbot: QtBot
) -> None:
    """Said too light by eye and kept, it gets an addition, a fresh mix and a place in the list."""
    page = sample_page(mixed)
    say(page, qtbot, "much", "light")
    keep(page, qtbot, settle)
    advice = page.samples.advice
    assert advice is not None
    for line in (*words.add_lines(advice), *words.fresh_lines(advice)):
        assert line in page.next.lines
    assert not page.told.ask.isEnabled()
    kept = mixed.desk.part(SAMPLES_PART, SampleLoop)
    assert kept is not None
    assert kept.rounds[0].said == words.said("much", "light", "")
    assert page.home.accessibleName() == words.home_name(kept)


def test_it_says_done(mixed: Window, settle: Settle, qtbot: QtBot) -> None:
    """Like the cloth by eye: as near as she can see, and nothing is to be added."""
    page = sample_page(mixed)
    qtbot.mouseClick(page.eye.like, LEFT)
    keep(page, qtbot, settle)
    advice = page.samples.advice
    assert advice is not None
    assert page.next.lines == [*words.done_lines(advice)]
    assert page.next.lines[0] == words.DONE_BY_EYE
    by_photo = replace(advice, last=replace(advice.last, how=How.PHOTO, delta_e=0.6))
    assert words.done_lines(by_photo)[0] == words.DONE_UNSEEN
    assert "0.6" in words.done_lines(by_photo)[1]
    assert words.done_lines(replace(advice, stop=Stop.UNTOLD))[0] == words.DONE_UNTOLD


def test_another_pot_is_reckoned_anew(mixed: Window, settle: Settle, qtbot: QtBot) -> None:
    """For ten times the pot about ten times as much is to be added."""
    page = sample_page(mixed)
    say(page, qtbot, "clearly", "light")
    keep(page, qtbot, settle)
    assert page.samples.advice is not None
    before = sum(step.ml for step in page.samples.advice.additions.steps)
    page.next.tub.setValue(600)
    settle()
    page.next.pot.setValue(300)
    settle()
    assert page.samples.advice is not None
    held = sum(ml for _, ml in page.samples.advice.pot)
    after = sum(step.ml for step in page.samples.advice.additions.steps)
    assert held == pytest.approx(300)
    assert after == pytest.approx(10 * before, rel=0.25)


def test_a_sample_is_taken_back_and_undone(mixed: Window, settle: Settle, qtbot: QtBot) -> None:
    """Taken back it is gone with its advice; undo brings it back."""
    page = sample_page(mixed)
    say(page, qtbot, "clearly", "dark")
    keep(page, qtbot, settle)
    qtbot.mouseClick(page.back, LEFT)
    settle()
    assert rounds_on(page) == ()
    assert advice_for(page) is None
    # It names the button that can be pressed, and none where none can.
    ask = page.told.ask
    pressed = ask.isVisible() and ask.isEnabled()
    assert page.next.lines == [words.no_advice(ask.text() if pressed else "")]
    qtbot.mouseClick(mixed.undo, LEFT)
    settle()
    assert len(rounds_on(page)) == 1
    assert advice_for(page) is not None


def test_a_button_is_named_only_while_it_can_be_pressed(
    mixed: Window, settle: Settle, qtbot: QtBot
) -> None:
    """From state to state: what to do names the button in view, by what that says, or none."""
    page = sample_page(mixed)
    ask = page.told.ask

    def told() -> list[str]:
        pressed = ask.isVisible() and ask.isEnabled()
        named = [line for line in page.next.lines if words.KEEP[:-1] in line]
        assert bool(named) is (pressed and page.samples.advice is None)
        assert all(ask.text() in line for line in named)
        return page.next.lines

    assert told() == [words.NO_SAMPLE]
    say(page, qtbot, "clearly", "dark")
    settle()
    assert ask.text() in told()[0]
    keep(page, qtbot, settle)
    told()
    assert page.samples.advice is not None
    qtbot.mouseClick(page.back, LEFT)
    settle()
    told()
    say(page, qtbot, "much", "light")
    settle()
    assert ask.text() in told()[0]


def test_the_job_brings_its_samples_back(mixed: Window, settle: Settle, qtbot: QtBot) -> None:
    """Put away and opened again, the job has its samples and what to add."""
    page = sample_page(mixed)
    say(page, qtbot, "clearly", "red")
    keep(page, qtbot, settle)
    job = mixed.desk.job
    assert job is not None
    mixed.desk.put_away()
    settle()
    assert rounds_on(page) == ()
    mixed.desk.open_job(job.id)
    settle()
    assert len(rounds_on(page)) == 1
    assert advice_for(page) is not None


def test_the_paints_are_taught(mixed: Window, settle: Settle, qtbot: QtBot) -> None:
    """One press, and the paints on the bench are what the samples showed them to be."""
    page = sample_page(mixed)
    say(page, qtbot, "much", "light")
    keep(page, qtbot, settle)
    assert page.samples.loop is not None
    id_ = page.samples.loop.rounds[0].mixed[0][0]
    before = mixed.session.shelf.paint(id_)
    qtbot.mouseClick(page.teach, LEFT)
    settle()
    after = mixed.session.shelf.paint(id_)
    assert before.spread is None
    assert after.spread is not None
    assert all(one.kept for one in page.samples.loop.rounds)
    taught = page.samples.taught
    assert taught is not None
    names = {mixed.session.shelf.paint(i).name for i, _ in page.samples.loop.rounds[0].mixed}
    assert set(taught.paints) == names
    assert page.rounds.lines[-2:] == [*taught_words.taught_lines(taught)]
    assert all(name in page.rounds.lines[-2] for name in names)
    # The paints of the demonstration are taken for what they are said to be until they are tried.
    assert taught.before == 0.0 < taught.after
    assert "otherwise than thought" in page.rounds.lines[-1]


def test_a_pick_from_the_fan_is_a_sample(mixed: Window, settle: Settle, qtbot: QtBot) -> None:
    """The neighbour that is picked by eye is learnt from, as a mix like the cloth."""
    page = sample_page(mixed)
    qtbot.mouseClick(page.fan, LEFT)
    opened = page.opened
    assert isinstance(opened, NeighboursWindow)
    settle()
    qtbot.mouseClick(opened.fields["darker"], LEFT)
    chosen = opened.chosen
    assert chosen is not None
    qtbot.mouseClick(opened.want, LEFT)
    settle()
    loop = page.samples.loop
    assert loop is not None
    assert loop.rounds[0].mixed == tuple(
        (p.id, ml) for p, ml in zip(chosen.paints, chosen.ml, strict=True)
    )
    assert loop.rounds[0].delta_e == 0
    assert loop.wanted.triple == pytest.approx((46, 34, 24))


def test_the_next_sample_is_offered_as_proposed(
    mixed: Window, settle: Settle, qtbot: QtBot
) -> None:
    """After the advice, what was proposed is what the next sample is taken to be mixed of."""
    page = sample_page(mixed)
    say(page, qtbot, "clearly", "yellow")
    keep(page, qtbot, settle)
    offered = [page.mixed.which.itemText(i) for i in range(page.mixed.which.count())]
    assert words.PROPOSED in offered[:3]
    advice = page.samples.advice
    assert advice is not None
    page.mixed.which.setCurrentIndex(offered.index(words.PROPOSED))
    page.mixed.which.activated.emit(offered.index(words.PROPOSED))
    assert page.mixed.mixed() == advice.fresh.mixed


def test_stripes_of_one_photo_are_one_sitting(mixed: Window, settle: Settle, qtbot: QtBot) -> None:
    """What to brush beside a mix is told and offered; of one photo the best stripe is put right."""
    page = sample_page(mixed)
    qtbot.mouseClick(page.stripes, LEFT)
    settle()
    assert page.stripes_told.text() == words.stripes_text(page.samples.stripes, mixed.session.shelf)
    offered = [page.mixed.which.itemText(i) for i in range(page.mixed.which.count())]
    assert set(words.STRIPES) <= set(offered)
    qtbot.mouseClick(page.photo_side.try_it, LEFT)
    settle()
    keep(page, qtbot, settle)
    found = sample_of_a_sample()
    assert found is not None
    page.photo_side.view.marked.emit(Mark.SAMPLE, _rect(820, 520))
    settle()
    assert page.mixed.which.currentText() == words.STRIPES[0]
    keep(page, qtbot, settle)
    loop, advice = page.samples.loop, page.samples.advice
    assert loop is not None
    assert advice is not None
    assert [one.sitting for one in loop.rounds] == [1, 1]
    assert advice.last.delta_e == min(one.delta_e for one in loop.rounds)


def test_an_addition_is_shown_beside_the_cloth(mixed: Window, settle: Settle, qtbot: QtBot) -> None:
    """Both ways are shown as cloth, sample and what is expected; each paint tells what it does."""
    page = sample_page(mixed)
    say(page, qtbot, "much", "light")
    keep(page, qtbot, settle)
    advice = page.samples.advice
    assert advice is not None
    last = advice.last
    assert len(page.next.fields) == 2
    for field in page.next.fields:
        cloth, sample, _ = field.colours()
        assert (cloth, sample) == (last.cloth, last.sample)
    assert any("darker" in line for line in words.add_lines(advice))


def test_the_better_way_comes_first(mixed: Window, settle: Settle, qtbot: QtBot) -> None:
    """Where adding takes more than a quarter of the pot, a fresh sample is told first, and why."""
    page = sample_page(mixed)
    say(page, qtbot, "much", "grey")
    keep(page, qtbot, settle)
    advice = page.samples.advice
    assert advice is not None
    held = sum(ml for _, ml in advice.pot)
    assert advice.additions.volume > 1.25 * held
    assert Why.MUCH in advice.why
    lines = page.next.lines
    assert lines[0] == words.FRESH_BETTER
    assert set(words.why_lines(advice)) <= set(lines[1:3])
    assert lines.index(words.fresh_lines(advice)[0]) < lines.index(words.add_lines(advice)[0])


def test_a_kept_sample_stands_beside_its_own_mix(
    mixed: Window, settle: Settle, qtbot: QtBot
) -> None:
    """What was mixed stays with the photo that shows it, until the next sample is begun."""
    page = sample_page(mixed)
    qtbot.mouseClick(page.photo_side.try_it, LEFT)
    settle()
    brushed = page.mixed.mixed()
    keep(page, qtbot, settle)
    assert page.mixed.mixed() == brushed
    assert page.mixed.head.text() == words.sample_head(1, held=True)
    assert not any(field.isEnabled() for field in page.mixed.amounts.values())
    say(page, qtbot, "clearly", "red")
    assert page.mixed.head.text() == words.sample_head(2, held=False)
    assert page.mixed.mixed() != brushed
    assert all(field.isEnabled() for field in page.mixed.amounts.values())


def test_amounts_she_corrected_stay(mixed: Window, settle: Settle, qtbot: QtBot) -> None:
    """A comparison does not take away what was typed of the mix."""
    page = sample_page(mixed)
    first = next(iter(page.mixed.amounts.values()))
    first.setValue(17.3)
    say(page, qtbot, "clearly", "red")
    settle()
    assert page.mixed.mixed()[0][1] == pytest.approx(17.3)


def test_words_of_the_lines_stand_apart(mixed: Window, settle: Settle, qtbot: QtBot) -> None:
    """With a sample that is far off, “accepted” and “just seen” do not lie over each other."""
    page = sample_page(mixed)
    say(page, qtbot, "much", "light")
    keep(page, qtbot, settle)
    loop = page.samples.loop
    assert loop is not None
    page.home.show_loop(replace(loop, rounds=(replace(loop.rounds[0], delta_e=40.0),)))
    (_, _, seen), (_, _, accepted) = page.home.line_labels()
    assert not seen.intersects(accepted)
    assert page.home.rect().toRectF().contains(seen)


def test_a_weak_photo_tells_what_is_wrong(mixed: Window, settle: Settle, tmp_path: Path) -> None:
    """A photo without a grey says that its colours are the camera's own."""
    picture = QImage(300, 200, QImage.Format.Format_RGB888)
    picture.fill(0xB06050)
    for x in range(150, 300):
        for y in range(200):
            picture.setPixel(x, y, 0xFFB86A58)
    path = tmp_path / "weak.png"
    picture.save(str(path))
    page = sample_page(mixed)
    page.photo_side.open_file(path)
    settle()
    for mark, x in ((Mark.CLOTH, 20), (Mark.SAMPLE, 170)):
        page.photo_side.set_mode(mark)
        page.photo_side.view.marked.emit(mark, _rect(x))
    settle()
    assert page.judged is not None
    assert "No grey is marked" in page.told.warnings.list.text()
    assert page.told.warnings.isVisible()


def _rect(x: int, y: int = 40) -> Rect:
    return Rect(x, y, 100, 100)


def test_everything_has_a_name(mixed: Window, settle: Settle, qtbot: QtBot) -> None:
    """Each button, field and picture names itself to a screen reader."""
    page = sample_page(mixed)
    qtbot.mouseClick(page.photo_side.try_it, LEFT)
    settle()
    named = [
        page.photo_side.view,
        page.photo_side.card,
        *page.photo_side.modes.values(),
        page.eye.amount,
        page.eye.first,
        page.eye.second,
        page.mixed.which,
        *page.mixed.amounts.values(),
        page.next.pot,
        page.next.tub,
        page.told.field,
        page.home,
    ]
    assert all(widget.accessibleName() for widget in named)
