"""What a job keeps of its piece on a photo, and which colours its zones are seen in."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from swatchwright.acts.batches import WHOLE_PIECE
from swatchwright.acts.colours import open_photo
from swatchwright.acts.finish import preview
from swatchwright.acts.job_bench import keep_mix
from swatchwright.acts.job_photos import add_photo, hash_of
from swatchwright.acts.jobs import edits, job_of, keep_document, new_job, open_jobs, redo, undo
from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.piece import sized_piece
from swatchwright.acts.recipes import Recipes, recipes_for, typed_colour
from swatchwright.acts.repaint_file import sample_box
from swatchwright.acts.repaint_job import (
    AS_IT_IS,
    REPAINT_PART,
    SAMPLE_COLOURS,
    Choice,
    ChoiceKind,
    RepaintPlan,
    choice_for,
    choices_of,
    colours_of_zones,
    keep_repaint,
    piece_photo,
    sample_colours,
    zones_to_mark,
)
from swatchwright.acts.samples import sample_photos
from swatchwright.errors import MendableError
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.photo.repaint_strokes import Marked, Stroke
from swatchwright.piece.common import Kind
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.store.store import Store
from swatchwright.values import Lab, Rect


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give an empty store."""
    with open_jobs(tmp_path / "store.sqlite") as made:
        yield made


@pytest.fixture
def box(store: Store) -> str:
    """Give the id of a job in it."""
    return new_job(store, title="Blanket box").jobs[0]


@pytest.fixture(scope="module")
def found() -> Recipes:
    """Give recipes of two paints for a clay red."""
    return recipes_for(typed_colour(46, 34, 24), demo_shelf(), most_paints=2)


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """Give a copy of the sample box that may be moved away."""
    sample = sample_box()
    assert sample is not None
    return Path(shutil.copy(sample.path, tmp_path))


def plan_of(path: Path) -> RepaintPlan:
    """Give the strokes of the sample box for a file."""
    sample = sample_box()
    assert sample is not None
    return RepaintPlan(hash_of(path), sample.strokes, sample.grey, sample.reflectance)


class TestKeeping:
    """Photo and strokes are kept with the job."""

    def test_one_edit(self, store: Store, box: str, file: Path) -> None:
        """The photo and the strokes come and go together, and come back as they were."""
        plan = plan_of(file)
        keep_repaint(store, box, plan, "Open it", path=file, photo=open_photo(file))
        job = job_of(store, box)
        document = job.document(REPAINT_PART)
        assert document is not None
        assert document.read(RepaintPlan) == plan
        kept = piece_photo(job, plan)
        assert kept is not None
        assert kept.hash == plan.photo
        assert edits(store)[0].label == "Open it"
        undo(store)
        assert not job_of(store, box).photos
        assert job_of(store, box).document(REPAINT_PART) is None
        redo(store)
        assert job_of(store, box) == job

    def test_a_stroke_adds_no_photo(self, store: Store, box: str, file: Path) -> None:
        """Once the photo is kept, only what is set changes, even where the file has gone."""
        plan = plan_of(file)
        keep_repaint(store, box, plan, "Open it", path=file, photo=open_photo(file))
        file.unlink()
        fewer = replace(plan, marked=replace(plan.marked, strokes=plan.marked.strokes[:3]))
        keep_repaint(store, box, fewer, "A stroke", path=file, photo=None)
        assert len(job_of(store, box).photos) == 1

    def test_another_photo_takes_its_place(self, store: Store, box: str, file: Path) -> None:
        """A job has one photo of its piece; that of a cloth stays, and stays the last."""
        cloth = sample_photos()[0].path
        add_photo(store, box, cloth)
        keep_repaint(store, box, plan_of(file), "Open", path=file, photo=open_photo(file))
        other = sample_photos()[1].path
        plan = RepaintPlan(hash_of(other), Marked((1600, 1200)))
        keep_repaint(store, box, plan, "Another", path=other, photo=open_photo(other))
        hashes = [photo.hash for photo in job_of(store, box).photos]
        assert hashes == [hash_of(other), hash_of(cloth)]

    def test_the_card_moves_with_the_size(self, file: Path) -> None:
        """On a reduced copy the grey card lies where it lay on the original."""
        photo = open_photo(file)
        plan = plan_of(file)
        assert plan.grey_on(photo) == plan.grey
        half = photo.part(Rect(0, 0, photo.width, photo.height), step=2)
        grey = plan.grey_on(half)
        assert grey is not None
        assert plan.grey is not None
        assert grey.x == pytest.approx(plan.grey.x / 2, abs=1)
        assert grey.inside(half.width, half.height)

    def test_a_file_that_is_gone_is_told(self, tmp_path: Path) -> None:
        """A photo that cannot be read any more is said to be so."""
        with pytest.raises(MendableError, match="cannot be read"):
            hash_of(tmp_path / "none.jpg")


class TestChoices:
    """Which colour a zone is seen in."""

    def test_body_and_top_where_nothing_is_sized(self, store: Store, box: str) -> None:
        """Without a sized piece body and top can be marked, and what is marked already."""
        assert zones_to_mark(None) == ("body", "top")
        marked = Marked((9, 9), (Stroke("plinth", ((1, 1),)),))
        assert zones_to_mark(job_of(store, box), marked) == ("body", "top", "plinth")
        piece = sized_piece(Kind.CHEST_OF_DRAWERS).piece
        parts = tuple(
            replace(part, zone="drawers" if n == 0 else "case")
            for n, part in enumerate(piece.parts)
        )
        keep_document(store, box, "piece", replace(piece, parts=parts))
        assert set(zones_to_mark(job_of(store, box))) >= {"drawers", "case"}
        assert "top" not in zones_to_mark(job_of(store, box))

    def test_a_zone_is_seen_in_its_own_mix(self, store: Store, box: str, found: Recipes) -> None:
        """The mix chosen for the zone comes first, then that of the whole piece."""
        keep_mix(store, box, found, choose=2, zone="top")
        choices = choices_of(job_of(store, box), found, None, demo_shelf())
        top = choice_for("top", choices, None)
        assert top is not None
        assert (top.kind, top.lab) == (ChoiceKind.CHOSEN, found.recipes[1].recipe.dry)
        assert choice_for("body", choices, None) is None
        keep_mix(store, box, found, choose=1, zone=WHOLE_PIECE)
        choices = choices_of(job_of(store, box), found, None, demo_shelf())
        body = choice_for("body", choices, None)
        assert body is not None
        assert body.lab == found.recipes[0].recipe.dry

    def test_without_a_job_the_first_zone_takes_the_first_mix(self, found: Recipes) -> None:
        """The other zones stay as they are until a colour is set for them."""
        marked = Marked((9, 9), (Stroke("body", ((1, 1),)), Stroke("top", ((5, 5),))))
        plan = RepaintPlan("", marked)
        choices = choices_of(None, found, found.wanted, demo_shelf())
        body = choice_for("body", choices, plan)
        assert body is not None
        assert body.key == "mix:1"
        assert choice_for("top", choices, plan) is None
        plan = replace(plan, colours=(("top", "wanted"), ("body", AS_IT_IS)))
        top = choice_for("top", choices, plan)
        assert top is not None
        assert top.lab == found.wanted.lab
        assert choice_for("body", choices, plan) is None
        gone = replace(plan, colours=(("body", "paint:no-such"),))
        assert choice_for("body", choices, gone) == body

    def test_with_nothing_mixed_nothing_is_painted(self) -> None:
        """A paint from the tin is offered and never taken unasked."""
        choices = choices_of(None, None, None, demo_shelf())
        assert {choice.kind for choice in choices} == {ChoiceKind.PAINT}
        assert choice_for("body", choices, None) is None

    def test_the_sample_box_is_seen_in_the_kept_mixes(self) -> None:
        """A zone has its own kept mix by name; with none of its zones kept, the body the first."""

        def kept(zone: str) -> Choice:
            return Choice(ChoiceKind.CHOSEN, zone, f"zone:{zone}", (("a", 1.0),), Lab(30, 0, -20))

        paints = tuple(
            Choice(ChoiceKind.PAINT, key, key, ((key[6:], 1.0),)) for _, key in SAMPLE_COLOURS
        )
        marked = Marked((9, 9), (Stroke("body", ((1, 1),)), Stroke("top", ((5, 5),))))

        def seen(*choices: Choice) -> dict[str, str]:
            plan = RepaintPlan("x", marked, colours=sample_colours((*choices, *paints)))
            found = {z: choice_for(z, (*choices, *paints), plan) for z in marked.zones}
            return {zone: choice.key for zone, choice in found.items() if choice is not None}

        assert seen() == dict(SAMPLE_COLOURS)
        assert seen(kept("top")) == {"top": "zone:top"}
        assert seen(kept("body"), kept("top")) == {"body": "zone:body", "top": "zone:top"}
        assert seen(kept("doors")) == {"body": "zone:doors"}
        whole = kept(WHOLE_PIECE)
        assert seen(whole) == {"body": whole.key, "top": whole.key}

    def test_colours_are_those_of_mix_and_finish(self, found: Recipes) -> None:
        """Dry is what the mix dries to; with layers it is what the finish makes of it."""
        shelf = demo_shelf()
        choices = {c.key: c for c in choices_of(None, found, found.wanted, shelf)}
        zones = {"a": choices["mix:1"], "b": choices["paint:deep-blue-red"], "c": choices["wanted"]}
        dry = colours_of_zones(zones, shelf)
        assert dry["a"] == found.recipes[0].recipe.dry
        assert dry["b"] == look_of_mix(shelf, [("deep-blue-red", 1)]).dry
        wax = Stack((Layer(LayerKind.WAX),))
        finished = colours_of_zones(zones, shelf, wax)
        assert finished["b"] == preview(shelf, [("deep-blue-red", 1)], wax).steps[-1].dry
        assert finished["c"] == dry["c"]

    def test_each_zone_is_seen_under_its_own_layers(self) -> None:
        """A wash for the body is seen on the body of the photo, and not on its top."""
        shelf = demo_shelf()
        blue = {c.key: c for c in choices_of(None, None, None, shelf)}["paint:deep-blue-red"]
        wash = Layer(LayerKind.WASH, (("white-clean", 1.0),), zone="body")
        seen = colours_of_zones({"body": blue, "top": blue}, shelf, Stack((wash,)))
        plain = replace(wash, zone="")
        mix = [("deep-blue-red", 1.0)]
        assert seen["body"] == preview(shelf, mix, Stack((plain,))).steps[-1].dry
        assert seen["top"] == look_of_mix(shelf, mix).dry
