"""The next start opens on the page where she was, and takes back what was done to the job last."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt

from swatchwright.desktop import words
from swatchwright.desktop.history import History
from swatchwright.desktop.widgets.elided_label import ElidedLabel
from swatchwright.desktop.window import Window

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    Settle = Callable[[], None]
    Opened = Callable[[], Window]

LEFT = Qt.MouseButton.LeftButton


def remembered(store: Path) -> str:
    """Give the page that is written down for the next start."""
    told = json.loads((store / "last-bench.json").read_text(encoding="utf-8"))
    return str(told["page"])


@pytest.fixture
def store(tmp_path: Path) -> Path:
    """Give the folder of the store."""
    return tmp_path / "store"


class TestPage:
    """The page that was in view."""

    @pytest.mark.parametrize("key", ["plan", "shelf", "colour"])
    def test_it_is_in_view_again(
        self, window: Window, settle: Settle, opened: Opened, qtbot: QtBot, key: str
    ) -> None:
        """With or without anything on the bench, also a page that waits for something."""
        window.show_page("compare")
        window.show_page(key)
        settle()
        window.close()
        again = opened()
        qtbot.waitUntil(lambda: again.rail.shown == key)
        assert again.page(key).isVisible()

    def test_the_first_start(self, opened: Opened) -> None:
        """Where nothing is written down it opens on Colour."""
        assert opened().rail.shown == "colour"

    @pytest.mark.parametrize("key", ["", "no such page"])
    def test_a_page_that_is_not_there(self, opened: Opened, store: Path, key: str) -> None:
        """A page of another version is none."""
        store.mkdir()
        (store / "last-bench.json").write_text(json.dumps({"page": key}), encoding="utf-8")
        assert opened().rail.shown == "colour"

    def test_she_was_quicker(
        self, opened: Opened, store: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        """Who has gone to another page by then stays there."""
        store.mkdir()
        (store / "last-bench.json").write_text('{"page": "plan"}', encoding="utf-8")
        show_left = Window._show_left

        def late(self: Window, key: str) -> None:
            self.show_page("sheet")
            show_left(self, key)

        monkeypatch.setattr(Window, "_show_left", late)
        assert opened().rail.shown == "sheet"

    def test_a_page_that_ends_the_program(
        self, opened: Opened, store: Path, monkeypatch: pytest.MonkeyPatch, qtbot: QtBot
    ) -> None:
        """It is not opened a second time: it is remembered anew only once it is in view."""
        store.mkdir()
        (store / "last-bench.json").write_text('{"page": "plan"}', encoding="utf-8")
        before: list[str] = []
        show_left = Window._show_left

        def watched(self: Window, key: str) -> None:
            before.append(remembered(store))
            show_left(self, key)

        monkeypatch.setattr(Window, "_show_left", watched)
        again = opened()
        assert before == [""]
        qtbot.waitUntil(lambda: again.rail.shown == "plan")
        qtbot.waitUntil(lambda: remembered(store) == "plan")


class TestUndo:
    """What was done before the window was opened."""

    def test_the_last_edits_of_the_job(
        self, mixed: Window, settle: Settle, opened: Opened, qtbot: QtBot
    ) -> None:
        """Undo takes back that a mix was kept, redo brings it back, and no job is taken away."""
        for number in (1, 2):
            qtbot.mouseClick(mixed.mix_side.columns()[number - 1].keep, LEFT)
            settle()
        label = mixed.session.history.last
        mixed.close()
        again = opened()
        qtbot.waitUntil(again.undo.isEnabled)
        assert again.session.history.last == label
        assert label in again.undo.toolTip()
        assert again.keeping.kept_number() == 2
        qtbot.mouseClick(again.undo, LEFT)
        qtbot.waitUntil(lambda: again.keeping.kept_number() == 1)
        # What was taken back is said beside the buttons, as in a running session.
        qtbot.waitUntil(lambda: again.busy.told() == words.undone_told(label), timeout=20_000)
        assert again.busy.isVisible()
        assert label in again.busy.told()
        (line,) = again.busy.findChildren(ElidedLabel)
        qtbot.waitUntil(lambda: line.text() == line.whole(), timeout=4000)
        assert not again.undo.isEnabled(), "the edit that began the job"
        assert again.desk.job is not None
        qtbot.mouseClick(again.redo, LEFT)
        qtbot.waitUntil(lambda: again.keeping.kept_number() == 2)
        qtbot.waitUntil(lambda: again.busy.told() == words.redone_told(label), timeout=20_000)

    def test_why_there_is_nothing(
        self, with_cushion: Window, settle: Settle, opened: Opened, qtbot: QtBot
    ) -> None:
        """Marks and picks are not among it, and the button says so."""
        qtbot.mouseClick(with_cushion.photo_side.strip.blocks()[1], LEFT)
        settle()
        assert with_cushion.undo.isEnabled()
        with_cushion.close()
        again = opened()
        assert not again.undo.isEnabled()
        assert words.NOTHING_TO_UNDO in again.undo.toolTip()
        assert again.undo.accessibleDescription() == words.NOTHING_TO_UNDO
        assert words.NOTHING_TO_REDO in again.redo.toolTip()


class TestHistory:
    """The history itself."""

    def test_in_the_order_of_undoing(self) -> None:
        """What was done last is taken back first, and what was taken back last done first."""
        history, done = History(), list[str]()
        history.recall(
            ("b", "a"), ("c", "d"), lambda: done.append("back"), lambda: done.append("forth")
        )
        assert (history.last, history.next) == ("b", "c")
        assert not history.by_hand
        history.undo()
        assert (history.last, history.next) == ("a", "b")
        history.redo()
        history.redo()
        assert (history.last, history.next) == ("c", "d")
        assert done == ["back", "forth", "forth"]

    def test_nothing_is_recalled_over_what_was_done(self) -> None:
        """What was done meanwhile comes first in the store too: the rest would not fit below it."""
        history = History()
        history.add("by hand", lambda: None, lambda: None)
        history.recall(("before",), (), lambda: None, lambda: None)
        assert history.last == "by hand"
        history.undo()
        assert not history.last
        history.recall(("before",), (), lambda: None, lambda: None)
        assert not history.last

    def test_it_lasts_and_gives_way(self) -> None:
        """Another photo leaves it; something new ends what could have been done again."""
        history = History()
        history.recall(("before",), ("again",), lambda: None, lambda: None)
        history.forget()
        assert (history.last, history.next) == ("before", "again")
        history.add("by hand", lambda: None, lambda: None)
        assert (history.last, history.next) == ("by hand", "")
        assert history.by_hand
