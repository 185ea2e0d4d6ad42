"""What a client wants now, as a job keeps it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from swatchwright.acts.client_wish import CLIENT_PART, ClientWish, ClientWishes, Stands, Wanted
from swatchwright.acts.job_told import told_parts
from swatchwright.acts.jobs import job_of, keep_document, new_job, open_jobs
from swatchwright.colour.names import colour_name
from swatchwright.mixing.asked import Asked
from swatchwright.shelf.jobs import Document
from swatchwright.values import Lab

if TYPE_CHECKING:
    from pathlib import Path

RED, BLUE = Lab(46, 34, 24), Lab(40, 2, -25)
QUIETER = ClientWish(RED, Wanted(asked=(Asked.LESS_VIVID, 0.33)), Lab(46, 22.78, 16.08))
OTHER = ClientWish(BLUE, Wanted(grey_as=Lab(50, 3, 4)), Lab(40, 0.4, -5))


def test_one_wish_for_each_colour_that_was_wanted_first() -> None:
    """A new wish takes the place of the old one for the same colour, and of no other."""
    both = ClientWishes().but(RED, QUIETER).but(BLUE, OTHER)
    again = ClientWish(RED, Wanted(colour=BLUE), BLUE)
    assert both.of(RED) == QUIETER
    assert both.but(RED, again).of(RED) == again
    assert both.but(RED, again).of(BLUE) == OTHER
    assert both.but(RED, None).of(RED) is None
    assert len(both.but(RED, None).wishes) == 1


def test_a_job_keeps_it(tmp_path: Path) -> None:
    """Read again, the wishes are those that were kept, and the job tells the colour wanted now."""
    wishes = ClientWishes((QUIETER, OTHER))
    store = open_jobs(tmp_path / "store.sqlite")
    try:
        id_ = new_job(store, title="Blanket box").jobs[0]
        changes = keep_document(store, id_, CLIENT_PART, wishes)
        job = job_of(store, id_)
    finally:
        store.close()
    document = job.document(CLIENT_PART)
    assert document is not None
    assert document.read(ClientWishes) == wishes
    assert colour_name(QUIETER.aim) in told_parts(job)[CLIENT_PART]
    assert "What the client wants of “Blanket box”" in changes.label


def test_how_far_each_colour_has_come() -> None:
    """It is told of one colour at a time, and what is wanted of it goes its own way."""
    said = ClientWishes((QUIETER,)).standing(RED, Stands.POT).standing(BLUE, Stands.PAINTED)
    assert said.stands(RED) is Stands.POT
    again = said.standing(RED, Stands.PAINTED).but(RED, None)
    assert (again.stands(RED), again.stands(BLUE)) == (Stands.PAINTED, Stands.PAINTED)
    assert again.wishes == ()
    assert ClientWishes().stands(RED) is None


def test_what_is_said_of_a_colour_goes_with_it() -> None:
    """Of colours that are wanted no more nothing is said; while none is known all of it counts."""
    said = ClientWishes((QUIETER,)).standing(RED, Stands.PAINTED).standing(BLUE, Stands.UNMIXED)
    assert said.among(()) == said
    assert said.among([BLUE]) == ClientWishes().standing(BLUE, Stands.UNMIXED)
    assert said.among([RED]).of(RED) == QUIETER


def test_a_job_kept_before_it_was_asked() -> None:
    """What was kept without it is read: it is then simply not said."""
    text = Document.of({"wishes": []}).json
    kept = Document(1, text).read(ClientWishes)
    assert kept == ClientWishes()
    told = Document.of(ClientWishes().standing(RED, Stands.POT)).read(ClientWishes)
    assert told.stands(RED) is Stands.POT
