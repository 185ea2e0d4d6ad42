"""The desk: which job is on the bench, and acts that come on the heels of one another."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from swatchwright.acts.jobs import keep_document, new_job, remove_job

if TYPE_CHECKING:
    from collections.abc import Callable

    from swatchwright.desktop.desk import Desk
    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]


@pytest.fixture
def desk(window: Window, settle: Settle) -> Desk:
    """Give the desk of an empty store."""
    settle()
    return window.desk


def parts(desk: Desk) -> set[str]:
    """Give the parts that are kept with the job on the bench."""
    assert desk.job is not None
    return {part for part, _ in desk.job.documents}


def titles(desk: Desk) -> list[str]:
    """Give the title of the job on the bench, if there is one."""
    return [] if desk.job is None else [desk.job.title]


def test_two_parts_begin_one_job(desk: Desk, settle: Settle) -> None:
    """Two things kept at the same moment with no job go into one, undone one by one."""
    desk.keep_part("plan", {"days": 3})
    desk.keep_part("finish", {"layers": 1})
    settle()
    assert len(desk.jobs) == 1
    assert parts(desk) == {"plan", "finish"}
    desk.history.undo()
    settle()
    assert parts(desk) == {"plan"}
    desk.history.undo()
    settle()
    assert not titles(desk)


def test_a_job_put_away_is_not_written_to(desk: Desk, settle: Settle) -> None:
    """What is kept after a job was put away begins another."""
    desk.keep_part("plan", {"days": 3})
    settle()
    desk.put_away()
    desk.keep_part("plan", {"days": 4})
    settle()
    assert len(desk.jobs) == 2


def test_a_job_opened_and_removed_is_not_mistaken(desk: Desk, settle: Settle) -> None:
    """After a job is removed, what is kept begins another, and not one begun before."""
    desk.keep_part("plan", {"days": 3})
    desk.begin(lambda store: new_job(store, title="Chair"))
    settle()
    desk.edit(lambda store: remove_job(store, "chair"))
    settle()
    desk.keep_part("finish", {"layers": 1})
    settle()
    assert len(desk.jobs) == 2
    assert parts(desk) == {"finish"}


def test_undo_of_another_job_leaves_the_bench(desk: Desk, settle: Settle) -> None:
    """Taking back what was done to one job does not put another off the bench."""
    desk.edit(lambda store: new_job(store, title="Chest"))
    desk.begin(lambda store: new_job(store, title="Chair"))
    desk.edit(lambda store: keep_document(store, "chest", "plan", {"days": 1}))
    settle()
    desk.history.undo()
    settle()
    assert titles(desk) == ["Chair"]


def test_a_removed_job_comes_back_to_the_bench(desk: Desk, settle: Settle) -> None:
    """Undo lays a job that was removed from the bench there again, and redo takes it off."""
    desk.begin(lambda store: new_job(store, title="Chair"))
    settle()
    desk.edit(lambda store: remove_job(store, "chair"))
    settle()
    assert not titles(desk)
    desk.history.undo()
    settle()
    assert titles(desk) == ["Chair"]
    desk.history.redo()
    settle()
    assert not titles(desk)


def test_an_edit_for_the_last_job_does_not_undo_opening(desk: Desk, settle: Settle) -> None:
    """An edit still under way while another job is opened leaves the other on the bench."""
    desk.edit(lambda store: new_job(store, title="Chest"))
    desk.begin(lambda store: new_job(store, title="Chair"))
    settle()
    desk.open_job("chest")
    desk.edit(lambda store: keep_document(store, "chair", "plan", {"days": 1}))
    settle()
    assert titles(desk) == ["Chest"]


def test_what_lasts_can_be_undone_with_another_photo(desk: Desk, settle: Settle) -> None:
    """Another photo makes the marks of the old one be forgotten, not what was kept."""
    desk.keep_part("plan", {"days": 3})
    settle()
    desk.history.add("a mark", lambda: None, lambda: None)
    desk.history.forget()
    assert desk.history.last.startswith("Plan")


def test_undo_waits_for_what_is_on_its_way(desk: Desk, settle: Settle) -> None:
    """Undo that comes while an edit is still being written takes that edit back."""
    desk.begin(lambda store: new_job(store, title="Chair"))
    settle()
    desk.keep_part("plan", {"days": 3})
    desk.settled(desk.history.undo)
    settle()
    assert not parts(desk)


def test_an_act_that_fails_is_told_and_leaves_the_rest(
    window: Window, desk: Desk, settle: Settle
) -> None:
    """What cannot be kept is said in the window; the job stays as it was."""
    desk.begin(lambda store: new_job(store, title="Chair"))
    settle()
    desk.keep_part("Not A Name", {"days": 3})
    settle()
    assert window.trouble.isVisible()
    assert not parts(desk)
    desk.keep_part("plan", {"days": 3})
    settle()
    assert parts(desk) == {"plan"}
