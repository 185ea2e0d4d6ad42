"""The mix that the samples found becomes the mix of the piece."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel

from swatchwright.acts.sample_learnt import Taught
from swatchwright.acts.sample_tried import taken_for, tried_line
from swatchwright.colour.names import closeness_between
from swatchwright.desktop.pages.brief_page import BriefPage
from swatchwright.desktop.pages.sample_page import SamplePage
from swatchwright.desktop.widgets.sample_mixed import MOST_LINES
from swatchwright.desktop.words import keeping as keeping_words
from swatchwright.desktop.words import sample as words
from swatchwright.desktop.words import sample_taught as taught_words
from window.sample_hands import page_of

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window
    from swatchwright.shelf.jobs import KeptRecipe

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton


def shares(recipe: KeptRecipe | None) -> dict[str, float]:
    """Give the shares of a recipe by its paints."""
    assert recipe is not None
    return {paint.paint: paint.share for paint in recipe.paints}


def of(mixed: tuple[tuple[str, float], ...]) -> dict[str, float]:
    """Give the shares of ids and ml."""
    total = sum(ml for _, ml in mixed)
    return {id_: ml / total for id_, ml in mixed}


def chosen(window: Window) -> KeptRecipe | None:
    """Give the mix of the piece by now."""
    return None if window.desk.job is None else window.desk.job.chosen("all")


def say_it(page: SamplePage, qtbot: QtBot, said: tuple[str, str]) -> None:
    """Say by eye how a sample looks."""
    page.eye.amount.setCurrentIndex(page.eye.amount.findData(said[0]))
    page.eye.first.setCurrentIndex(page.eye.first.findData(said[1]))
    qtbot.mouseClick(page.eye.take, LEFT)


def sample_it(page: SamplePage, qtbot: QtBot, settle: Settle, said: tuple[str, str] | None) -> None:
    """Say how a sample looks, or that it is like the cloth, and keep it."""
    if said is None:
        qtbot.mouseClick(page.eye.like, LEFT)
    else:
        say_it(page, qtbot, said)
    qtbot.mouseClick(page.told.ask, LEFT)
    settle()


def home(window: Window, qtbot: QtBot, settle: Settle) -> SamplePage:
    """Come home with the second sample."""
    page = page_of(window)
    sample_it(page, qtbot, settle, ("clearly", "light"))
    sample_it(page, qtbot, settle, None)
    return page


def test_what_is_done_is_taken(bench: Window, settle: Settle, qtbot: QtBot) -> None:
    """One press beside Done: job, Colour page, Job page and sheet go by the sample's own mix."""
    before = shares(chosen(bench))
    page = home(bench, qtbot, settle)
    loop = page.samples.loop
    assert loop is not None
    button = page.next.takes[False]
    assert button.text() == words.take_for("all")
    qtbot.mouseClick(button, LEFT)
    settle()
    now = shares(chosen(bench))
    assert now == pytest.approx(of(loop.rounds[1].mixed), abs=1e-9)
    assert now != pytest.approx(before, abs=1e-3)
    assert page.next.takes == {}
    assert words.is_mix_for("all") in page.next.lines
    assert words.is_mix_for("all") in page.rounds.lines
    assert set(page.rounds.buttons) == {1}
    bench.show_page("colour")
    bar = bench.mix_side.keep_bar
    assert bar.told.text() == keeping_words.kept_from_sample(2, "all", added=False)
    job = bench.desk.job
    assert job is not None
    told = tried_line(job, list(now.items()))
    assert "Found by sample 2 beside the cloth, off by about 0.0" in told


def test_one_undo_gives_the_first_mix_back(bench: Window, settle: Settle, qtbot: QtBot) -> None:
    """Undone, the first mix is the piece's again, the samples stay, and the button is back."""
    before = shares(chosen(bench))
    page = home(bench, qtbot, settle)
    qtbot.mouseClick(page.next.takes[False], LEFT)
    settle()
    qtbot.mouseClick(bench.undo, LEFT)
    settle()
    assert shares(chosen(bench)) == before
    assert taken_for(bench.desk.job, "all") is None
    assert page.samples.loop is not None
    assert len(page.samples.loop.rounds) == 2
    assert False in page.next.takes
    assert set(page.rounds.buttons) == {1, 2}


def test_each_sample_of_the_list_can_be_taken(bench: Window, settle: Settle, qtbot: QtBot) -> None:
    """The small button beside the first sample takes the first one's mix."""
    page = home(bench, qtbot, settle)
    assert page.rounds.buttons[1].accessibleName() == words.take_name(1, "all")
    qtbot.mouseClick(page.rounds.buttons[1], LEFT)
    settle()
    assert page.samples.loop is not None
    assert shares(chosen(bench)) == pytest.approx(of(page.samples.loop.rounds[0].mixed), abs=1e-9)
    taken = page.samples.taken
    assert taken is not None
    assert taken.number == 1


def test_the_pot_is_taken_with_what_was_added(bench: Window, settle: Settle, qtbot: QtBot) -> None:
    """Once it is added, the pot as it then is can be the mix of the piece."""
    page = page_of(bench)
    sample_it(page, qtbot, settle, ("clearly", "light"))
    advice = page.samples.advice
    assert advice is not None
    assert advice.additions.steps
    held = dict(advice.pot)
    for step in advice.additions.steps:
        held[step.paint.id] = held.get(step.paint.id, 0.0) + step.ml
    button = page.next.takes[True]
    assert button.text() == words.pot_for("all")
    qtbot.mouseClick(button, LEFT)
    settle()
    assert shares(chosen(bench)) == pytest.approx(of(tuple(held.items())), abs=1e-9)
    assert words.is_mix_for("all") in page.next.lines
    bench.show_page("colour")
    told = bench.mix_side.keep_bar.told.text()
    assert told == keeping_words.kept_from_sample(1, "all", added=True)


def test_its_own_zone_gets_it(bench: Window, settle: Settle, qtbot: QtBot) -> None:
    """Where only another zone wants the colour of the samples, that one gets the mix."""
    page = home(bench, qtbot, settle)
    bench.keeping.zone = "drawers"
    page.arrive()
    assert page.samples.zone == "all"
    assert page.next.takes[False].text() == words.take_for("all")


def test_the_list_is_short_and_begins_with_what_is_advised(
    bench: Window, settle: Settle, qtbot: QtBot
) -> None:
    """Ten lines at the most, no mix twice: what to brush now, its stripes by number, the kept."""
    page = page_of(bench)
    qtbot.mouseClick(page.stripes, LEFT)
    settle()
    sample_it(page, qtbot, settle, ("much", "light"))
    say_it(page, qtbot, ("clearly", "red"))
    which, advice = page.mixed.which, page.samples.advice
    assert advice is not None
    told = [which.itemText(i) for i in range(which.count())]
    assert len(told) <= MOST_LINES
    assert which.currentIndex() == 0
    assert told[0] == (words.PROPOSED if advice.better_fresh else words.JAR)
    kept = next(i for i, line in enumerate(told) if line.startswith("kept for"))
    assert {words.PROPOSED, words.JAR, *words.NEXT_STRIPES} == set(told[:kept])
    assert len({which.itemData(i) for i in range(which.count())}) == len(told)


def test_what_was_taught_is_no_other_paint(bench: Window, qtbot: QtBot, settle: Settle) -> None:
    """Taught, what the paints learnt is in view, and the page Job speaks of the same tins.

    It does not warn, and no paint of the mix is said to be another.
    """
    page = page_of(bench)
    sample_it(page, qtbot, settle, ("clearly", "light"))
    page._area.ensureWidgetVisible(page.teach)
    qtbot.mouseClick(page.teach, LEFT)
    settle()
    qtbot.waitUntil(lambda: not page.teach.visibleRegion().isEmpty(), timeout=5_000)
    told = [one for one in page.rounds.findChildren(QLabel) if one.text().startswith("✓")]
    assert not told[0].visibleRegion().isEmpty()
    bench.show_page("brief")
    brief = bench.page("brief")
    assert isinstance(brief, BriefPage)
    settle()
    row = brief.colours.zones["all"]
    recipe = chosen(bench)
    assert recipe is not None
    assert row.changed.isHidden()
    assert all(f"“{paint.name}”" in row.taught.text() for paint in recipe.paints)
    assert row.taught.isVisibleTo(row)


def test_it_answers_in_her_own_words(bench: Window, qtbot: QtBot) -> None:
    """What was said by eye stands as she said it, and no other step is named."""
    page = page_of(bench)
    page.eye.second.setCurrentIndex(page.eye.second.findData("yellow"))
    say_it(page, qtbot, ("a touch", "light"))
    assert page.told.words.text() == "A touch too light and too yellow"
    assert not page.told.near.isVisible()
    assert page.judged is not None
    assert page.judged.delta_e == pytest.approx(1.5, abs=0.01)
    # 1.5, right to about half of it: of a word no figure is told, but between which words it lies.
    told = page.told.figures.text()
    assert closeness_between(1, 2) in told
    assert not any(character.isdigit() for character in told)


def test_what_was_taught_is_told_as_it_is() -> None:
    """Surer, less sure with the reason, and nothing new: each in its own words."""
    surer = taught_words.taught_lines(Taught(("Red", "Blue"), 3, 3.4, 1.2))
    assert "“Red” and “Blue”" in surer[0]
    assert "within 1.2 (" in surer[1]
    assert "before 3.4 (" in surer[1]
    assert "otherwise" not in surer[1]
    assert "otherwise than thought" in taught_words.taught_lines(Taught(("Red",), 3, 1.2, 2.0))[1]
    assert len(taught_words.taught_lines(Taught((), 1, 0.0, 0.0))) == 1
