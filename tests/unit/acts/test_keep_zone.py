"""For which zone a colour is likely meant, and what keeping it would replace."""

from __future__ import annotations

from dataclasses import replace

from swatchwright.acts.batches import WHOLE_PIECE
from swatchwright.acts.keep_zone import free_zone, replaced_in
from swatchwright.shelf.jobs import Job, WantedColour
from swatchwright.values import KnownColour, Lab

RED, BLUE = Lab(46, 34, 24), Lab(27, 2, -24)
NEARLY_RED = Lab(47, 33, 23)
EMPTY = Job("box", "Blanket box")
ZONES = ("top", "body", "drawers")


def job(**kept: Lab) -> Job:
    """Give a job with a colour kept for each of these zones."""
    wanted = tuple(WantedColour(z, KnownColour(lab, None, "typed in")) for z, lab in kept.items())
    return replace(EMPTY, wanted=wanted)


def test_another_colour_goes_to_the_next_zone_without_one() -> None:
    """After the chosen zone, and round to the first; a new reading of the kept one stays."""
    assert free_zone(job(body=RED), ZONES, "body", BLUE) == "drawers"
    assert free_zone(job(drawers=RED), ZONES, "drawers", BLUE) == "top"
    assert free_zone(job(body=RED, drawers=BLUE), ZONES, "body", BLUE) == "top"
    assert free_zone(job(body=RED), ZONES, "body", NEARLY_RED) == "body"


def test_a_zone_stays_where_there_is_no_better() -> None:
    """With nothing kept for it, no job, no other zone, or a colour for each, it stays chosen."""
    assert free_zone(None, ZONES, "body", BLUE) == "body"
    assert free_zone(job(top=RED), ZONES, "body", BLUE) == "body"
    assert free_zone(job(top=RED, body=RED, drawers=RED), ZONES, "body", BLUE) == "body"
    whole = replace(EMPTY, wanted=(WantedColour(WHOLE_PIECE, KnownColour(RED, None, "")),))
    assert free_zone(whole, (WHOLE_PIECE,), WHOLE_PIECE, BLUE) == WHOLE_PIECE


def test_what_is_replaced_is_the_kept_colour() -> None:
    """It is told unless it is the same to the eye, or nothing is kept there."""
    assert replaced_in(job(body=RED), "body", BLUE) == RED
    assert replaced_in(job(body=RED), "body", RED) is None
    assert replaced_in(job(body=RED), "top", BLUE) is None
    assert replaced_in(None, "body", BLUE) is None
