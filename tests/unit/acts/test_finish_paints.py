"""A finish is kept with its paints, and a sheet is made whatever has become of them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from swatchwright.acts.batches import keep_recipes
from swatchwright.acts.client_wish import Wanted
from swatchwright.acts.finish import preview
from swatchwright.acts.finish_paints import (
    FINISH_PAINTS,
    keep_finish,
    paints_at_hand,
    paints_of_finish,
)
from swatchwright.acts.job_files import export_job, import_job
from swatchwright.acts.jobs import job_of, keep_document, new_job, open_jobs, undo
from swatchwright.acts.plan_job import FINISH_PART
from swatchwright.acts.recipes import Recipes, recipes_for, typed_colour
from swatchwright.acts.sheet import content_of, document_of
from swatchwright.acts.stock import put_paints
from swatchwright.acts.ways import WayKind, ways_to
from swatchwright.mixing.asked import Asked
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.paint.paints import HowKnown
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store.paint_rows import paint_bytes
from swatchwright.shelf.store.store import Store

WASH = Layer(LayerKind.WASH, (("stone-grey-warm", 1.0),))
WASHED = Stack((WASH, Layer(LayerKind.WAX)))


@pytest.fixture(scope="module")
def found() -> Recipes:
    """Give the recipes for a clay red, of the demonstration."""
    return recipes_for(typed_colour(46, 34, 24), demo_shelf(), keep=2)


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give a store with two paints of her own on the shelf."""
    with open_jobs(tmp_path / "store.sqlite") as made:
        own = (replace(p, id=f"my-{p.id}", how_known=HowKnown.GUESSED) for p in demo_shelf().paints)
        put_paints(made, tuple(own)[:2])
        yield made


@pytest.fixture
def box(store: Store, found: Recipes) -> str:
    """Give the id of a job with a recipe of the demonstration."""
    id_ = new_job(store, title="Blanket box").jobs[0]
    keep_recipes(store, id_, found)
    return id_


def test_the_paints_come_with_the_finish(store: Store, box: str) -> None:
    """A sheet without the shelf of then is reckoned as with it; one edit keeps both."""
    changes = keep_finish(store, box, WASHED, demo_shelf())
    assert changes.label == "Finish of “Blanket box”"
    (zone,) = content_of(store, box).zones
    recipe = job_of(store, box).chosen("all")
    assert recipe is not None
    parts = [(paint.paint, paint.share) for paint in recipe.paints]
    assert zone.finished == preview(demo_shelf(), parts, WASHED).steps[-1].dry
    undo(store)
    assert job_of(store, box).documents == ()


def test_they_are_kept_as_they_are(store: Store, box: str, tmp_path: Path) -> None:
    """A paint comes back byte for byte, also after the job went out and came in."""
    keep_finish(store, box, WASHED, demo_shelf())
    path = export_job(store, box, tmp_path / "box.swatchjob")
    back = job_of(store, import_job(store, path).jobs[0])
    (paint,) = paints_of_finish(back)
    assert paint_bytes(paint) == paint_bytes(demo_shelf().paint("stone-grey-warm"))


def test_another_shelf_keeps_what_was_kept(store: Store, box: str) -> None:
    """Set again on a shelf that lacks the paint, the finish still has it; bare, it has none."""
    keep_finish(store, box, WASHED, demo_shelf())
    hers = Shelf("two", demo_shelf().paints[:2])
    keep_finish(store, box, Stack((replace(WASH, passes=2),)), hers)
    assert [paint.id for paint in paints_of_finish(job_of(store, box))] == ["stone-grey-warm"]
    keep_finish(store, box, Stack(), hers)
    assert job_of(store, box).document(FINISH_PAINTS) is None


def test_a_finish_of_before_is_found_on_the_bench(store: Store, box: str) -> None:
    """Where no paints were kept with it, those of the shelf in use are taken, then the kept."""
    keep_document(store, box, FINISH_PART, WASHED)
    assert content_of(store, box, in_use=demo_shelf()).zones[0].finished is not None
    ids = [p.id for p in paints_at_hand(store, job_of(store, box), demo_shelf())]
    assert len(ids) == len(set(ids)) == 26


def test_a_paint_that_is_nowhere(store: Store, box: str) -> None:
    """The sheet is made all the same: the wash by its id, and one line of what is left out."""
    keep_document(store, box, FINISH_PART, WASHED)
    content = content_of(store, box)
    (zone,) = content.zones
    assert zone.finished is None
    assert zone.finish[0] == "a wash of stone-grey-warm, 1 to 3 of water, wiped back to a fifth"
    (told,) = zone.minding
    assert told.startswith("“stone-grey-warm” is on no shelf any more")
    assert document_of(content).startswith(b"%PDF")


def test_the_hand_that_wipes(store: Store, box: str) -> None:
    """The sheet says what half as much again left on does, as the card of the way did."""
    recipe = job_of(store, box).chosen("all")
    assert recipe is not None
    parts = [(paint.paint, paint.share) for paint in recipe.paints]
    quieter = Wanted(asked=(Asked.LESS_VIVID, 1 / 3))
    way = next(w for w in ways_to(demo_shelf(), parts, quieter).ways if w.kind is WayKind.WASH)
    assert way.layer is not None
    card = next(risk.words for risk in way.risks if "half as much again" in risk.words)
    keep_finish(store, box, Stack((way.layer,)), demo_shelf())
    (zone,) = content_of(store, box).zones
    assert zone.minding[0] == card
    assert "wiped back to a fifth" in zone.finish[0]


def test_what_is_left_is_not_wiped(store: Store, box: str) -> None:
    """Of a glaze, and of a wash that is left, no wiping is told."""
    for layer in (replace(WASH, kind=LayerKind.GLAZE), replace(WASH, left=1.0)):
        keep_finish(store, box, Stack((layer,)), demo_shelf())
        (zone,) = content_of(store, box).zones
        assert not any("half as much again" in told for told in zone.minding)
        assert "wiped" not in zone.finish[0]
