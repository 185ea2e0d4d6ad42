"""A process that edits the store is killed at random moments; nothing but its last edit is lost.

``python tools/kill_store.py`` does the same five hundred times.
"""

from __future__ import annotations

import random
from pathlib import Path

from kill_store import begin, kills, look, one_more
from swatchwright.acts.jobs import open_jobs
from swatchwright.acts.stock import set_stock

KILLS = 25


def test_a_killed_process_loses_at_most_the_edit_under_way(tmp_path: Path) -> None:
    """Every time the file is sound, every edit whole, and all that was told as done is there."""
    done = list(kills(tmp_path / "store.sqlite", KILLS, seed=20260301))
    assert [kill.found for kill in done if kill.found] == []
    assert len(done) == KILLS
    assert sum(kill.done for kill in done) > KILLS, "it did edit"
    assert any(kill.in_flight for kill in done), "some were killed within an edit"


def test_a_lost_edit_would_be_seen(tmp_path: Path) -> None:
    """The look at the store does find an edit that is missing, and one that is half done."""
    path = tmp_path / "store.sqlite"
    begin(path)
    with open_jobs(path) as store:
        one_more(store, 1, random.Random(1))  # noqa: S311 - a test's dice
    assert look(path, {1}) == ""
    assert "the count is 1" in look(path, {2, 3})
    with open_jobs(path) as store:
        set_stock(store, "white-clean", 7)
    assert "half an edit" in look(path, {1})
