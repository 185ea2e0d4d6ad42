"""What of a piece a new coat is to go on."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from swatchwright.acts.batches import keep_recipes
from swatchwright.acts.jobs import job_of, new_job, open_jobs
from swatchwright.acts.piece import sized
from swatchwright.acts.piece_job import form_for, keep_piece, piece_of_form
from swatchwright.acts.recipes import recipes_for, typed_colour
from swatchwright.acts.recoat import PER_M2, new_coat, to_paint_in
from swatchwright.piece.common import Kind
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.values import Lab

if TYPE_CHECKING:
    from pathlib import Path


def test_the_zone_of_the_mix(tmp_path: Path) -> None:
    """A mix for a zone goes on that zone, one for the whole piece on all that has none of its own.

    Its coats are as they were set for the piece.
    """
    form = form_for(Kind.BLANKET_BOX)
    piece = piece_of_form(form)
    areas = {zone.zone: zone.area for zone in sized(piece).areas.zones}
    with open_jobs(tmp_path / "store.sqlite") as store:
        id_ = new_job(store, title="Box").jobs[0]
        found = recipes_for(typed_colour(46, 34, 24), demo_shelf(), keep=1, most_paints=2)
        keep_recipes(store, id_, found, zone="body")
        assert to_paint_in(job_of(store, id_), "body") == PER_M2
        keep_piece(store, id_, form, piece, None)
        job = job_of(store, id_)
    body, rest = to_paint_in(job, "body"), to_paint_in(job, "all")
    assert body.area == pytest.approx(areas["body"])
    assert rest.area == pytest.approx(areas["top"])
    assert to_paint_in(job, "") == rest
    assert body.coats.paint == form.coats.paint
    assert (body.known, PER_M2.known) == (True, False)


def test_without_a_piece_a_square_metre_stands_for_it() -> None:
    """Without a job, or of a zone that its piece does not have, it is told for each m2."""
    assert to_paint_in(None, "body") == PER_M2
    assert PER_M2.area == 1.0


def test_one_paint_makes_no_mix() -> None:
    """From less than two paints nothing is mixed."""
    shelf = demo_shelf()
    assert new_coat(shelf, shelf.paints[:1], Lab(50, 0, 0)) is None
