"""What of a job lies on the bench, and keeping what lies there."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.acts.batches import WHOLE_PIECE, keep_recipes
from swatchwright.acts.bench_shelf import other_than, shelf_of
from swatchwright.acts.colours import colours_of, open_photo
from swatchwright.acts.job_bench import (
    BENCH,
    BenchPhoto,
    Laid,
    chosen_among,
    keep_mix,
    laid_photo,
    photo_of_colour,
    photo_to_lay,
    pick_among,
    scaled,
    settings_of,
    wanted_to_lay,
    zones_of,
)
from swatchwright.acts.job_photos import remove_photo
from swatchwright.acts.jobs import (
    edits,
    job_of,
    keep_document,
    new_job,
    open_jobs,
    redo,
    remove_job,
    undo,
)
from swatchwright.acts.last_job import last_job, remember_job
from swatchwright.acts.piece import sized_piece
from swatchwright.acts.recipes import Recipes, recipes_for, typed_colour, with_volume
from swatchwright.acts.samples import SamplePhoto, sample_photos
from swatchwright.acts.stock import KeptShelf, kept_shelf, put_paints, set_stock, take_demo_shelf
from swatchwright.paint.paints import HowKnown
from swatchwright.piece.common import Kind
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.jobs import Document, Job, KeptPhoto, Marks, ReadFrom, WantedColour
from swatchwright.shelf.store.store import Store
from swatchwright.values import Rect


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
def sample(tmp_path: Path) -> SamplePhoto:
    """Give a copy of the sample photo that may be moved away."""
    first = sample_photos()[0]
    return replace(first, path=Path(shutil.copy(first.path, tmp_path)))


def on_bench(sample: SamplePhoto) -> BenchPhoto:
    """Lay the sample photo with its marks."""
    marks = Marks((sample.grey,), sample.cloth, sample.reflectance)
    return BenchPhoto(open_photo(sample.path), marks, sample.path)


class TestKeeping:
    """A mix is kept with all that belongs to it, in one edit."""

    def test_one_edit(self, store: Store, box: str, found: Recipes, sample: SamplePhoto) -> None:
        """Recipes, wanted colour, photo, marks and amount come and go together."""
        keep_mix(
            store, box, with_volume(found, 750), choose=2, photo=on_bench(sample), most_paints=2
        )
        job = job_of(store, box)
        assert len(job.recipes) == len(found.recipes)
        assert job.chosen(WHOLE_PIECE) == job.recipes[1]
        assert job.photos[0].marks.cloth == sample.cloth
        assert settings_of(job) == Laid(750, 2, WHOLE_PIECE, job.photos[0].hash)
        assert "mix 2" in edits(store)[0].label
        undo(store)
        assert not job_of(store, box).photos
        assert not job_of(store, box).recipes
        redo(store)
        assert job_of(store, box) == job

    def test_kept_again_the_photo_only_changes_its_marks(
        self, store: Store, box: str, found: Recipes, sample: SamplePhoto
    ) -> None:
        """A photo that the job has already is not added twice."""
        keep_mix(store, box, found, choose=1, photo=on_bench(sample))
        kept = job_of(store, box).photos[0]
        again = replace(on_bench(sample), kept=kept, marks=Marks())
        keep_mix(store, box, found, choose=1, photo=again)
        assert [photo.marks for photo in job_of(store, box).photos] == [Marks()]

    def test_a_photo_that_has_gone_is_said(
        self, store: Store, box: str, found: Recipes, sample: SamplePhoto
    ) -> None:
        """The mix is kept where its photo cannot be read any more, with a warning."""
        photo = on_bench(sample)
        sample.path.unlink()
        changes = keep_mix(store, box, found, choose=1, photo=photo)
        assert sample.path.name in changes.warnings[0]
        job = job_of(store, box)
        assert job.chosen(WHOLE_PIECE) is not None
        assert not job.photos

    def test_each_zone_has_its_own(self, store: Store, box: str, found: Recipes) -> None:
        """Keeping for the lid leaves what is kept for the body."""
        keep_mix(store, box, found, choose=1, zone="body")
        keep_mix(store, box, found, choose=2, zone="lid")
        job = job_of(store, box)
        assert chosen_among(job, found, "body") == 1
        assert chosen_among(job, found, "lid") == 2
        assert chosen_among(job, found, "top") is None
        assert zones_of(job) == ("body", "lid")
        wanted = wanted_to_lay(job)
        assert wanted is not None
        assert wanted.zone == "lid"

    def test_another_paint_of_the_same_name_is_not_the_kept_mix(
        self, store: Store, box: str, found: Recipes
    ) -> None:
        """Where a paint has become another, no mix of it is shown as the kept one."""
        keep_recipes(store, box, found, choose=1)
        other = found.recipes[0]
        dry = replace(other.recipe.dry, L=other.recipe.dry.L - 2)
        changed = replace(other, recipe=replace(other.recipe, dry=dry))
        assert chosen_among(job_of(store, box), replace(found, recipes=(changed,)), "all") is None


class TestWhereItWasRead:
    """Each colour remembers the cloth it was read from."""

    RED, BLUE = Rect(560, 490, 100, 110), Rect(830, 490, 100, 110)

    def keep(
        self, store: Store, box: str, found: Recipes, photo: BenchPhoto, zone: str, cloth: Rect
    ) -> None:
        """Keep a colour for a zone, read from this cloth."""
        marks = replace(photo.marks, cloth=cloth)
        photo = replace(photo, marks=marks)
        keep_mix(store, box, found, choose=1, zone=zone, photo=photo, read=marks)

    def test_each_its_own(
        self, store: Store, box: str, found: Recipes, sample: SamplePhoto
    ) -> None:
        """The photo has the marks of the last, and each colour the cloth that is its own."""
        photo, other = on_bench(sample), replace(found, wanted=typed_colour(28, 3, -24))
        self.keep(store, box, found, photo, "body", self.RED)
        before = job_of(store, box)
        self.keep(store, box, other, photo, "top", self.BLUE)
        job = job_of(store, box)
        hash_ = job.photos[0].hash
        assert {w.zone: w.read for w in job.wanted} == {
            "body": ReadFrom(hash_, self.RED),
            "top": ReadFrom(hash_, self.BLUE),
        }
        laid = [photo_of_colour(job, wanted) for wanted in job.wanted]
        assert [None if p is None else p.marks.cloth for p in laid] == [self.RED, self.BLUE]
        assert all(p is not None and p.marks.grey == (sample.grey,) for p in laid)
        undo(store)
        assert job_of(store, box) == before
        redo(store)
        assert job_of(store, box) == job

    def test_from_a_metre(
        self, store: Store, box: str, found: Recipes, sample: SamplePhoto
    ) -> None:
        """Whether the yarn or the cloth from a metre away was meant is remembered too."""
        photo = on_bench(sample)
        far = replace(photo, marks=replace(photo.marks, metre=True))
        keep_mix(store, box, found, choose=1, zone="body", photo=far, read=far.marks)
        (wanted,) = job_of(store, box).wanted
        assert wanted.read is not None
        assert wanted.read.metre
        keep_mix(store, box, replace(found, wanted=typed_colour(1, 2, 3)), choose=1, photo=photo)
        laid = photo_of_colour(job_of(store, box), wanted)
        assert laid is not None
        assert laid.marks.metre

    def test_a_typed_colour_has_none(
        self, store: Store, box: str, found: Recipes, sample: SamplePhoto
    ) -> None:
        """Typed while a photo lay there, a colour was not read from it."""
        keep_mix(store, box, found, choose=1, photo=on_bench(sample))
        (wanted,) = job_of(store, box).wanted
        assert wanted.read is None
        assert photo_of_colour(job_of(store, box), wanted) is None
        assert photo_of_colour(job_of(store, box), None) is None

    def test_kept_again_it_is_where_it_was(
        self, store: Store, box: str, found: Recipes, sample: SamplePhoto
    ) -> None:
        """A kept colour that is brought back and kept once more, or for the top, keeps its box."""
        self.keep(store, box, found, on_bench(sample), "body", self.RED)
        keep_mix(store, box, found, choose=2, zone="body")
        keep_recipes(store, box, found, zone="top")
        job = job_of(store, box)
        assert [w.read for w in job.wanted] == [ReadFrom(job.photos[0].hash, self.RED)] * 2

    def test_a_photo_taken_from_the_job(
        self, store: Store, box: str, found: Recipes, sample: SamplePhoto
    ) -> None:
        """A colour outlives its photo, and undo brings both together again."""
        self.keep(store, box, found, on_bench(sample), "body", self.RED)
        before = job_of(store, box)
        remove_photo(store, box, before.photos[0].hash)
        job = job_of(store, box)
        assert job.wanted == before.wanted
        assert photo_of_colour(job, job.wanted[0]) is None
        undo(store)
        assert photo_of_colour(job_of(store, box), job.wanted[0]) is not None

    @given(st.data())
    def test_a_box_on_the_copy_is_the_same_box_again(self, data: st.DataObject) -> None:
        """Carried to the original, which is larger, and back to the copy, no box moves a pixel."""
        copy = data.draw(st.tuples(st.integers(8, 1600), st.integers(8, 1600)))
        whole = tuple(data.draw(st.integers(side, 6 * side)) for side in copy)
        x, y = (data.draw(st.integers(0, side - 1)) for side in copy)
        width, height = (
            data.draw(st.integers(1, copy[0] - x)),
            data.draw(st.integers(1, copy[1] - y)),
        )
        marks = Marks(cloth=Rect(x, y, width, height))
        there = scaled(marks, copy, (whole[0], whole[1]))
        assert there.cloth is not None
        assert there.cloth.inside(whole[0], whole[1])
        assert scaled(there, (whole[0], whole[1]), copy) == marks

    def test_a_job_of_before_has_none(self) -> None:
        """A colour as it was written before boxes were remembered is read without one."""
        colour = '{"lab":{"L":46,"a":34,"b":24},"covariance":null,"origin":"x"}'
        (wanted,) = Document(1, f'[{{"zone":"all","colour":{colour}}}]').read(
            tuple[WantedColour, ...]
        )
        assert wanted.read is None


class TestLaying:
    """What is kept comes back to the bench."""

    def test_the_original_where_it_was(
        self, store: Store, box: str, found: Recipes, sample: SamplePhoto
    ) -> None:
        """A photo that still is where it was is opened itself."""
        keep_mix(store, box, found, choose=1, photo=on_bench(sample))
        kept = photo_to_lay(job_of(store, box))
        assert kept is not None
        laid = laid_photo(store, kept)
        assert laid.path == sample.path
        assert laid.marks.grey == (sample.grey,)

    def test_the_copy_where_it_has_gone(
        self, store: Store, box: str, found: Recipes, sample: SamplePhoto
    ) -> None:
        """Of a photo that was moved or changed the reduced copy is opened, and that is said."""
        from PIL import Image

        with Image.open(sample.path) as picture:
            picture.resize((3200, 2400)).save(sample.path, quality=95)
        marks = Marks((), type(sample.cloth)(1040, 940, 840, 480))
        photo = BenchPhoto(open_photo(sample.path), marks, sample.path)
        keep_mix(store, box, found, choose=1, photo=photo)
        sample.path.write_bytes(b"something else")
        kept = photo_to_lay(job_of(store, box))
        assert kept is not None
        laid = laid_photo(store, kept)
        assert laid.path is None
        assert laid.photo.facts.name == sample.path.name
        assert "copy" in laid.photo.facts.notes[-1]
        # Half as large: 1600 of 3200 pixels.
        assert laid.marks.cloth == sample.cloth
        keep_mix(store, box, found, choose=1, photo=replace(laid, marks=laid.marks))
        assert job_of(store, box).photos[0].marks == marks

    def test_the_wanted_colour_is_found_in_the_photo(self, sample: SamplePhoto) -> None:
        """A colour that was read from a photo is the same block of it again; another is none."""
        photo = open_photo(sample.path)
        colours = colours_of(photo, grey=sample.grey, area=sample.cloth)
        assert pick_among(colours, colours.colours[1].colour) == 1
        assert pick_among(colours, typed_colour(60, -40, 30)) is None

    def test_settings_that_cannot_be_read_are_the_usual(self, store: Store, box: str) -> None:
        """A part of another layout does not keep a job from being opened."""
        keep_document(store, box, BENCH, {"volume": "much"})
        assert settings_of(job_of(store, box)) == Laid()


class TestZones:
    """A mix is kept for a zone of the piece."""

    def test_of_the_piece(self, store: Store, box: str) -> None:
        """A dresser with doors painted inside has several zones, wherever its parts are kept."""
        piece = sized_piece(Kind.DRESSER, inside=True).piece
        keep_document(store, box, "piece", {"piece": piece, "other": 1})
        zones = zones_of(job_of(store, box))
        assert {"body", "doors", "inside"} <= set(zones)
        assert len(zones) == len(set(zones))

    def test_of_one_colour(self, store: Store, box: str) -> None:
        """A piece all of one colour, like no piece at all, is kept for as a whole."""
        assert zones_of(None) == zones_of(job_of(store, box)) == (WHOLE_PIECE,)
        keep_document(store, box, "piece", sized_piece(Kind.PICTURE_RAIL).piece)
        assert zones_of(job_of(store, box)) == (WHOLE_PIECE,)


class TestTheNextStart:
    """What was on the bench is there at the next start."""

    def test_the_last_job(self, store: Store, box: str) -> None:
        """The last job is told as long as it is kept."""
        assert last_job(store) is None
        remember_job(store, box)
        assert last_job(store) == box
        remove_job(store, box)
        assert last_job(store) is None

    @pytest.mark.parametrize("written", ["", "[]", '{"job": 7}', "\x00"])
    def test_damaged_memory_is_none(self, store: Store, box: str, written: str) -> None:
        """A file that was cut off or is none of ours begins with an empty bench."""
        remember_job(store, box)
        store.path.with_name("last-job.json").write_text(written, encoding="utf-8")
        assert last_job(store) is None

    def test_the_kept_shelf(self, store: Store) -> None:
        """An empty shelf gives the invented paints under their name, a filled one its own."""
        assert shelf_of(KeptShelf(())).name == demo_shelf().name
        assert other_than(store, demo_shelf()) is None
        take_demo_shelf(store)
        assert other_than(store, demo_shelf()) is None
        paint = replace(demo_shelf().paints[0], id="own", how_known=HowKnown.GUESSED)
        put_paints(store, (paint,))
        own = other_than(store, demo_shelf())
        assert own is not None
        assert [p.id for p in own.paints] == ["own"]
        assert own.name != demo_shelf().name
        set_stock(store, "own", 200)
        assert kept_shelf(store).stocked[0].ml_left == 200
        assert other_than(store, own) is None


def test_the_photo_of_the_piece_is_not_laid_as_the_cloth() -> None:
    """A photo on which the piece is repainted is no cloth, even where the job has no other."""
    cloth, piece = (
        KeptPhoto(hash_, f"{hash_}.jpg", 10, "", 100, 80, hash_) for hash_ in ("cloth", "piece")
    )
    part = ("repaint", Document.of({"photo": "piece"}))
    alone = Job("a", "A box", photos=(piece,), documents=(part,))
    assert photo_to_lay(alone) is None
    both = Job("a", "A box", photos=(cloth, piece), documents=(part,))
    assert photo_to_lay(both) == cloth


def test_the_photo_of_a_sample_is_not_laid_as_the_cloth() -> None:
    """A sample beside its cloth belongs on its own page, unless it lay on the bench as well."""
    sample = KeptPhoto("sample", "sample.jpg", 10, "", 100, 80, "sample")
    part = ("sample-photo", Document.of({"photo": "sample"}))
    assert photo_to_lay(Job("a", "A box", photos=(sample,), documents=(part,))) is None
    bench = (BENCH, Document.of(Laid(photo="sample")))
    laid = photo_to_lay(Job("a", "A box", photos=(sample,), documents=(part, bench)))
    assert laid == sample
