"""Jobs kept: what each act does, says, refuses, and how it is undone."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from io import BytesIO
from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from swatchwright.acts.batches import (
    choose_recipe,
    keep_recipes,
    make_batch,
    shelf_of_recipe,
    take_back_batch,
    what_has_changed,
)
from swatchwright.acts.job_photos import (
    COPY_SIDE,
    add_photo,
    mark_photo,
    photo_copy,
    remove_photo,
)
from swatchwright.acts.jobs import (
    change_job,
    copy_job,
    edits,
    find_jobs,
    id_of,
    job_of,
    keep_document,
    list_jobs,
    new_job,
    note_job,
    open_jobs,
    redo,
    remove_job,
    status_of,
    undo,
    want_colours,
)
from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.recipes import Recipes, recipes_for, typed_colour
from swatchwright.acts.stock import kept_shelf, put_paints, set_stock
from swatchwright.colour.names import closeness
from swatchwright.errors import MendableError
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.jobs import Marks, Status, WantedColour
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store.store import Store
from swatchwright.values import KnownColour, Lab, Rect
from unit.acts.scenes import CLOTH, GREY, scene

WANTED = typed_colour(46, 34, 24)


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give an empty store."""
    with open_jobs(tmp_path / "store.sqlite") as made:
        yield made


@pytest.fixture
def box(store: Store) -> str:
    """Give the id of a job in it."""
    return new_job(store, title="Blanket box", client="Harbour workshop").jobs[0]


@pytest.fixture(scope="module")
def found() -> Recipes:
    """Give the recipes for a clay red."""
    return recipes_for(WANTED, demo_shelf(), keep=3)


def left(store: Store, id_: str) -> float | None:
    """Give how much of a paint is left."""
    return next(s.ml_left for s in kept_shelf(store).stocked if s.paint.id == id_)


# --- the head ------------------------------------------------------------------------------------


def test_a_job_is_begun(store: Store) -> None:
    """A new job has what was said of it, an id to type, and the time."""
    changes = new_job(store, title=" Blanket box ", client="A", brief="B", room_light="north")
    job = job_of(store, changes.jobs[0])
    assert (job.id, job.title, job.client, job.brief) == ("blanket-box", "Blanket box", "A", "B")
    assert (job.room_light, job.status) == ("north", Status.ASKED)
    assert job.created == job.changed == edits(store)[0].made
    assert changes.label == edits(store)[0].label == "Begin “Blanket box”"


def test_the_head_is_changed(store: Store, box: str) -> None:
    """What is given is changed, what is not stays; changing nothing is no edit."""
    change_job(store, box, brief="Matt", status=Status.AGREED)
    job = job_of(store, box)
    assert (job.brief, job.client, job.status) == ("Matt", "Harbour workshop", Status.AGREED)
    assert not change_job(store, box, brief="Matt")
    assert len(edits(store)) == 2
    with pytest.raises(MendableError, match="title"):
        change_job(store, box, title="  ")


def test_notes_are_kept_in_their_order(store: Store, box: str) -> None:
    """Notes come one after another, and their words find the job."""
    note_job(store, box, "Sand between coats.")
    note_job(store, box, "Second coat on Friday.")
    assert [n.text for n in job_of(store, box).notes] == [
        "Sand between coats.",
        "Second coat on Friday.",
    ]
    assert [f.line.id for f in find_jobs(store, text="friday sand")] == [box]
    with pytest.raises(MendableError, match="note"):
        note_job(store, box, " ")


def test_parts_of_others_are_kept(store: Store, box: str) -> None:
    """A value of another part of the program is kept by name with the version of its layout."""
    value = {"areas": [WantedColour("top", KnownColour(Lab(1, 2, 3), None, "x"))]}
    changes = keep_document(store, box, "piece", value, schema=4)
    assert changes.parts == ((box, "piece"),)
    document = job_of(store, box).document("piece")
    assert document is not None
    assert document.schema == 4
    assert document.read(dict[str, list[WantedColour]]) == value
    keep_document(store, box, "piece", None)
    assert job_of(store, box).document("piece") is None
    with pytest.raises(MendableError):
        keep_document(store, box, "recipes", [])


def test_a_copy_starts_anew(store: Store, box: str, found: Recipes) -> None:
    """A copy has colours, recipes and parts, no batches, a note of where it is from."""
    keep_recipes(store, box, found)
    make_batch(store, box, volume=100)
    change_job(store, box, status=Status.DONE)
    copy = job_of(store, copy_job(store, box, title="Second box").jobs[0])
    old = job_of(store, box)
    assert (copy.id, copy.status, copy.batches) == ("second-box", Status.ASKED, ())
    assert (copy.recipes, copy.wanted, copy.client) == (old.recipes, old.wanted, old.client)
    assert "Blanket box" in copy.notes[0].text


def test_a_removed_job_comes_back(store: Store, box: str, found: Recipes) -> None:
    """Removing is undone, redone and undone again."""
    keep_recipes(store, box, found)
    job = job_of(store, box)
    remove_job(store, box)
    with pytest.raises(MendableError, match="no job"):
        job_of(store, box)
    assert undo(store).jobs == (box,)
    assert job_of(store, box) == job
    redo(store)
    assert list_jobs(store) == ()
    undo(store)
    assert job_of(store, box) == job


def test_lists_are_by_status(store: Store, box: str) -> None:
    """A list may hold only the jobs that have come so far; its words are checked."""
    other = new_job(store, title="Chair").jobs[0]
    change_job(store, other, status=status_of(" Painted"))
    assert [line.id for line in list_jobs(store, status=Status.PAINTED)] == [other]
    assert {line.id for line in list_jobs(store)} == {box, other}
    with pytest.raises(MendableError, match="asked, sampling"):
        status_of("finished")


def test_what_is_not_there_is_said(store: Store, box: str) -> None:
    """Each act refuses a job that is not there and names one that is."""
    assert id_of(store, "blan") == box
    for act in (job_of, copy_job, remove_job):
        with pytest.raises(MendableError, match=f"such as {box}"):
            act(store, "blanket-bx")
    assert len(edits(store)) == 1


def test_within_is_bounded(store: Store) -> None:
    """How near a colour may be looked for is checked."""
    for within in (0.0, -1.0, 1000.0, float("nan")):
        with pytest.raises(MendableError, match="within"):
            find_jobs(store, like=Lab(50, 0, 0), within=within)


def test_words_and_colour_together(store: Store, box: str) -> None:
    """A colour and words narrow each other; the nearest colour comes first."""
    chair = new_job(store, title="Chair").jobs[0]
    for id_, L in ((box, 50.0), (chair, 52.0)):
        want_colours(store, id_, (WantedColour("all", typed_colour(L, 10, 10)),))
    like = Lab(52.2, 10, 10)
    assert [f.line.id for f in find_jobs(store, like=like)] == [chair, box]
    assert [f.line.id for f in find_jobs(store, like=like, text="blanket")] == [box]
    assert [f.line.id for f in find_jobs(store, like=like, within=0.5)] == [chair]
    assert find_jobs(store, like=Lab(5, 0, 0)) == ()


# --- photos --------------------------------------------------------------------------------------


def test_a_photo_is_kept_reduced(store: Store, box: str, tmp_path: Path) -> None:
    """A photo leaves a small JPEG, its marks, and by what its original is known."""
    path = tmp_path / "large.png"
    rng = np.random.default_rng(1)
    Image.fromarray(rng.integers(90, 160, (1200, 2000, 3)).astype(np.uint8)).save(path)
    marks = Marks((Rect(0, 0, 100, 100),), Rect(200, 200, 300, 300), 0.2)
    add_photo(store, box, path, marks=marks)
    (photo,) = job_of(store, box).photos
    assert (photo.width, photo.height, photo.size) == (2000, 1200, path.stat().st_size)
    assert photo.marks == marks
    copy = Image.open(BytesIO(photo_copy(store, photo)))
    assert copy.format == "JPEG"
    assert copy.size == (COPY_SIDE, 960)
    path.unlink()
    assert photo_copy(store, photo)


def test_a_photo_is_known_again(store: Store, box: str, tmp_path: Path) -> None:
    """The same photo brought in twice is one photo with the later marks; marks are checked."""
    path = scene(tmp_path / "scene.png")
    add_photo(store, box, path)
    add_photo(store, box, path, marks=Marks((GREY,), CLOTH))
    (photo,) = job_of(store, box).photos
    assert photo.marks.cloth == CLOTH
    mark_photo(store, box, photo.hash, Marks())
    assert job_of(store, box).photos[0].marks == Marks()
    with pytest.raises(MendableError, match="does not lie in the photo"):
        mark_photo(store, box, photo.hash, Marks((Rect(0, 0, 9000, 9),)))
    remove_photo(store, box, photo.hash)
    assert job_of(store, box).photos == ()
    with pytest.raises(MendableError, match="no such photo"):
        remove_photo(store, box, photo.hash)
    undo(store)
    assert photo_copy(store, job_of(store, box).photos[0])


# --- recipes and batches -------------------------------------------------------------------------


def test_recipes_are_kept_with_their_paints(store: Store, box: str, found: Recipes) -> None:
    """The colour and the mixes are kept; those of another zone stay."""
    keep_recipes(store, box, found, zone="body", choose=2)
    keep_recipes(store, box, found, zone="top", choose=None)
    job = job_of(store, box)
    assert [(w.zone, w.colour) for w in job.wanted] == [("body", WANTED), ("top", WANTED)]
    assert [r.chosen for r in job.recipes if r.zone == "body"] == [False, True, False]
    assert job.chosen("top") is None
    kept = job.chosen()
    assert kept is not None
    recipe = found.recipes[1].recipe
    assert (kept.dry, kept.wet, kept.delta_e) == (recipe.dry, recipe.wet, recipe.delta_e)
    assert [p.share for p in kept.paints] == list(recipe.shares)
    keep_recipes(store, box, found, zone="body", choose=1)
    assert len(job_of(store, box).recipes) == 6
    with pytest.raises(MendableError, match="Choose from 1 to 3"):
        keep_recipes(store, box, found, choose=4)


def test_another_recipe_is_chosen(store: Store, box: str, found: Recipes) -> None:
    """One recipe of a zone is chosen at a time."""
    keep_recipes(store, box, found)
    recipes = job_of(store, box).recipes
    choose_recipe(store, box, recipes[2])
    assert [r.chosen for r in job_of(store, box).recipes] == [False, False, True]
    with pytest.raises(MendableError, match="no such recipe"):
        choose_recipe(store, box, replace(recipes[2], zone="nowhere"))


def test_a_recipe_is_mixed_again_when_the_shelf_is_gone(
    store: Store, box: str, found: Recipes
) -> None:
    """From the paints kept with the recipe the same colour comes out, with others on the shelf."""
    put_paints(store, demo_shelf().paints)
    keep_recipes(store, box, found)
    put_paints(store, (replace(demo_shelf().paints[0], id="other"),), replace_all=True)
    kept = job_of(store, box).chosen()
    assert kept is not None
    shelf = shelf_of_recipe(store, kept)
    look = look_of_mix(shelf, [(p.paint, p.share) for p in kept.paints])
    assert look.dry.triple == pytest.approx(kept.dry.triple, abs=1e-9)
    told = what_has_changed(store, kept).others
    assert len(told) == len(kept.paints)
    assert all("not on the shelf any more" in sentence for sentence in told)


def test_paints_of_the_bench_are_not_missing_from_an_empty_shelf(
    store: Store, box: str, found: Recipes
) -> None:
    """While nothing is kept the demonstration is mixed from, or the shelf that is in use instead.

    A mix of its paints is not said to lack them; one of paints that shelf has not is.
    """
    keep_recipes(store, box, found)
    kept = job_of(store, box).chosen()
    assert kept is not None
    assert what_has_changed(store, kept).others == ()
    assert what_has_changed(store, kept, in_use=demo_shelf()).others == ()
    assert make_batch(store, box, volume=100, in_use=demo_shelf()).warnings == ()
    fewer = tuple(p for p in demo_shelf().paints if p.id != kept.paints[0].paint)
    (told,) = what_has_changed(store, kept, in_use=Shelf("a file", fewer)).others
    assert told == f"“{kept.paints[0].name}” is not on the shelf any more."


def test_a_paint_that_has_changed_is_said(store: Store, box: str, found: Recipes) -> None:
    """A batch tells which paint is no longer the recipe's, and by how much its colour moved."""
    put_paints(store, demo_shelf().paints)
    keep_recipes(store, box, found)
    first = found.recipes[0].recipe.paints[0]
    assert make_batch(store, box, volume=100).warnings == ()
    put_paints(store, (replace(first, note="new label"),))
    assert make_batch(store, box, volume=100).warnings == ()
    put_paints(store, (replace(first, K=first.K * 1.5),))
    (told,) = make_batch(store, box, volume=100).warnings
    assert first.name in told
    apart = float(told.partition(" from what it was")[0].split()[-1])
    assert f"from what it was ({closeness(apart)})" in told


def test_a_batch_is_numbered_and_drawn_from_stock(store: Store, box: str, found: Recipes) -> None:
    """Batches have the recipe's shares at any volume; what is known to be there is drawn."""
    put_paints(store, demo_shelf().paints)
    keep_recipes(store, box, found)
    recipe = found.recipes[0].recipe
    first = recipe.paints[0].id
    set_stock(store, first, 600)
    for number, volume in enumerate((300.0, 90.5), start=1):
        make_batch(store, box, volume=volume, day="2026-03-02", note="north")
        batch = job_of(store, box).batches[-1]
        assert (batch.number, batch.day, batch.note) == (number, "2026-03-02", "north")
        assert sum(p.ml for p in batch.poured) == pytest.approx(volume)
        for poured, share in zip(batch.poured, recipe.shares, strict=True):
            assert poured.ml == pytest.approx(volume * share, abs=0.1)
    drawn = sum(b.poured[0].ml for b in job_of(store, box).batches)
    assert left(store, first) == pytest.approx(600 - drawn)
    assert left(store, recipe.paints[1].id) is None
    undo(store)
    undo(store)
    assert left(store, first) == 600
    redo(store)
    assert left(store, first) == pytest.approx(600 - job_of(store, box).batches[0].poured[0].ml)


def test_a_stock_that_falls_short_is_said(store: Store, box: str, found: Recipes) -> None:
    """More than there is cannot be drawn, which is told; taking back gives what was drawn."""
    put_paints(store, demo_shelf().paints)
    keep_recipes(store, box, found)
    first = found.recipes[0].recipe.paints[0].id
    set_stock(store, first, 50)
    (told,) = make_batch(store, box, volume=500).warnings
    assert "only 50 ml" in told
    assert left(store, first) == 0
    make_batch(store, box, volume=100)
    take_back_batch(store, box, 1)
    assert left(store, first) == 50
    assert [b.number for b in job_of(store, box).batches] == [2]
    make_batch(store, box, volume=100)
    assert [b.number for b in job_of(store, box).batches] == [2, 3]


@pytest.mark.parametrize(
    ("more", "told"),
    [
        ({"volume": 0}, "volume"),
        ({"volume": float("nan")}, "volume"),
        ({"volume": 100, "zone": "top"}, "top"),
        ({"volume": 100, "day": "yesterday"}, "yesterday"),
    ],
)
def test_a_batch_that_cannot_be(
    store: Store, box: str, found: Recipes, more: dict[str, object], told: str
) -> None:
    """A volume, zone or day that cannot be is named, and nothing is mixed."""
    keep_recipes(store, box, found)
    with pytest.raises(MendableError, match=told):
        make_batch(store, box, **more)  # type: ignore[arg-type]
    with pytest.raises(MendableError, match="none so far"):
        take_back_batch(store, box, 1)
    assert job_of(store, box).batches == ()


def test_a_batch_needs_a_recipe(store: Store, box: str) -> None:
    """Without a chosen recipe there is nothing to mix by."""
    with pytest.raises(MendableError, match="Find and keep a recipe"):
        make_batch(store, box, volume=100)
