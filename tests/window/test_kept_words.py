"""What is kept stays English, whatever language it is shown in.

The catalogue is one of the tests' own, made by Babel.
"""

from __future__ import annotations

from itertools import product
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt

from swatchwright.acts.batches import WHOLE_PIECE
from swatchwright.acts.jobs import new_job
from swatchwright.acts.kept_words import kept_words
from swatchwright.acts.repaint import NOT_THIS
from swatchwright.acts.sample_judged import AMOUNTS, LIKE_THE_CLOTH, TOO, judged_by_eye
from swatchwright.desktop.widgets.job_head import JobHead
from swatchwright.desktop.words import brief, keeping, repaint, sample
from swatchwright.errors import MendableError
from swatchwright.values import Lab

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

OPPOSED = (
    {"light", "dark"},
    {"red", "green"},
    {"yellow", "blue"},
    {"vivid", "grey"},
    {"warm", "cool"},
)
"""Two words that say a sample is off both ways at once, of whatever colour it is."""

GERMAN = {
    "Warm lamp in the evening": "Warme Lampe am Abend",
    "A stroke on {zone}": "Strich auf: {zone}",
    "Another colour for {zone}": "Anderer Farbton für: {zone}",
    "top": "Platte",
    "whole piece": "ganzes Stück",
    "not this": "nicht dies",
}


@pytest.fixture
def german(speak: Callable[[Mapping[str, str]], None]) -> None:
    """Speak a German of just what is looked at here, and English again after the test."""
    speak(GERMAN)


@pytest.mark.usefixtures("german")
class TestInGerman:
    """Shown in German, kept in English."""

    def test_a_light_that_is_picked(self, window: Window, settle: Settle, qtbot: QtBot) -> None:
        """A light picked from the list is kept by its English words, and shown in German."""
        window.desk.begin(lambda store: new_job(store, title="Chair"))
        settle()
        head = JobHead(window.desk)
        qtbot.addWidget(head)
        head.show()
        job = window.desk.job
        assert job is not None
        head.show_job(job)
        head.light.setCurrentIndex(head.light.findText("Warme Lampe am Abend"))
        qtbot.keyClick(head.light.line, Qt.Key.Key_Return)
        settle()
        kept = window.desk.job
        assert kept is not None
        assert kept.room_light == "Warm lamp in the evening"
        head.show_job(kept)
        assert head.light.currentText() == "Warme Lampe am Abend"

    def test_a_light_of_her_own(self) -> None:
        """A light that she wrote herself is kept as she wrote it."""
        assert brief.light_kept("Kerzen") == brief.light_told("Kerzen") == "Kerzen"

    @pytest.mark.parametrize(
        ("kept", "english", "told"),
        [
            (repaint.did_stroke("top"), "A stroke on top", "Strich auf: Platte"),
            (
                repaint.did_colour(WHOLE_PIECE),
                "Another colour for whole piece",
                "Anderer Farbton für: ganzes Stück",
            ),
        ],
    )
    def test_what_undo_takes_back(self, kept: str, english: str, told: str) -> None:
        """What was done on the photo is kept in English, and can be told with its zone."""
        assert kept == english
        assert kept_words(kept) == told

    def test_zones(self) -> None:
        """Zones of the program's own are translated, one of hers is not."""
        assert keeping.zone_item(WHOLE_PIECE) == repaint.zone_word(WHOLE_PIECE) == "ganzes Stück"
        assert keeping.zone_item("top") == repaint.zone_word("top") == "Platte"
        assert keeping.zone_heading("knobs") == "Knobs"
        assert repaint.zone_word(NOT_THIS) == "nicht dies"


class TestBothWays:
    """Words that are chosen are words that are understood."""

    def test_said_by_eye(self) -> None:
        """All that can be said by eye is understood, and told again in the same words."""
        ways = [key for _, key in sample.ways()]
        assert [f"too {way}" for way in ways] == list(TOO)
        amounts = [key for _, key in sample.amounts()]
        assert amounts == list(AMOUNTS)
        refused = []
        for amount, first, second in product(amounts, ways, ["", *ways]):
            said = sample.said(amount, first, second)
            assert sample.eye_told(said) == said
            try:
                judged_by_eye(said, Lab(45.0, 34.0, 24.0))
            except MendableError as error:
                if "opposite" not in error.what:
                    raise
                refused.append({first, second})
        # Of this red, vivid is warm too, so that a few more words than these are at odds.
        assert all(words in refused for words in OPPOSED)
        assert len(refused) <= 2 * len(amounts) * (len(OPPOSED) + 2)

    @pytest.mark.parametrize(
        "said", ["too red", "much too dark and a touch too grey and too cool", "no difference"]
    )
    def test_said_in_a_command(self, said: str) -> None:
        """What was said in the words of the command is told as it was."""
        assert sample.eye_told(said) == said

    def test_like_the_cloth(self) -> None:
        """What ends the samples is told as its button says it."""
        assert sample.eye_told(LIKE_THE_CLOTH) == sample.EYE_LIKE

    def test_lights(self) -> None:
        """Each light of the list is kept as it is listed."""
        assert [brief.light_kept(brief.light_told(light)) for light in brief.LIGHTS] == list(
            brief.LIGHTS
        )
