"""Which mixes a piece is painted with, wherever that is asked; and mixes that are taken off."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from swatchwright.acts.amounts import amounts_for
from swatchwright.acts.batch_offer import offered_volume
from swatchwright.acts.batches import WHOLE_PIECE, keep_recipes, make_batch, take_off_mix
from swatchwright.acts.job_bench import volume_kept
from swatchwright.acts.jobs import edits, job_of, keep_document, new_job, open_jobs, redo, undo
from swatchwright.acts.mixes_in_use import mixes_in_use, of_no_zone, stood_down
from swatchwright.acts.piece_job import amounts_order_of, at_hand
from swatchwright.acts.plan_job import paints_in_use
from swatchwright.acts.recipes import Recipes, recipes_for, typed_colour, with_volume
from swatchwright.acts.sheet import content_of
from swatchwright.acts.sheet_form import zones_told
from swatchwright.acts.stock import take_demo_shelf
from swatchwright.errors import MendableError
from swatchwright.piece.common import Kind, common_piece
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.store.store import Store

CREAM, RED, BLUE = (typed_colour(*lab) for lab in ((85, 2, 14), (46, 34, 24), (28, 3, -24)))


@pytest.fixture(scope="module")
def found() -> dict[str, Recipes]:
    """Give the mixes for a cream, a red and a blue, each for an amount of its own."""
    shelf = demo_shelf()
    return {
        zone: with_volume(recipes_for(wanted, shelf, keep=2), ml)
        for zone, wanted, ml in ((WHOLE_PIECE, CREAM, 500), ("body", RED, 300), ("top", BLUE, 120))
    }


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give a store with the demonstration shelf."""
    with open_jobs(tmp_path / "store.sqlite") as made:
        take_demo_shelf(made)
        yield made


@pytest.fixture
def box(store: Store, found: dict[str, Recipes]) -> str:
    """Give the id of a job whose mix was kept before its box was sized: a body and a top."""
    id_ = new_job(store, title="Blanket box").jobs[0]
    keep_recipes(store, id_, found[WHOLE_PIECE])
    keep_document(store, id_, "piece", common_piece(Kind.BLANKET_BOX))
    return id_


def zones(store: Store, id_: str) -> list[str]:
    """Name the zones whose mixes are in use."""
    return [recipe.zone for recipe in mixes_in_use(job_of(store, id_))]


class TestTheWholePiece:
    """The mix for the whole piece serves until each painted zone has its own."""

    def test_until_the_last_zone(self, store: Store, box: str, found: dict[str, Recipes]) -> None:
        """With one zone of two kept it is still needed; with both it is not."""
        assert zones(store, box) == [WHOLE_PIECE]
        keep_recipes(store, box, found["body"], zone="body")
        assert zones(store, box) == [WHOLE_PIECE, "body"]
        keep_recipes(store, box, found["top"], zone="top")
        assert zones(store, box) == ["body", "top"]
        job = job_of(store, box)
        assert stood_down(job) == job.chosen(WHOLE_PIECE)
        take_off_mix(store, box, "top")
        assert zones(store, box) == [WHOLE_PIECE, "body"]

    def test_without_a_piece_all_are_in_use(self, store: Store, found: dict[str, Recipes]) -> None:
        """Where no piece tells what is painted, nothing is left out."""
        id_ = new_job(store, title="Chair").jobs[0]
        assert mixes_in_use(None) == mixes_in_use(job_of(store, id_)) == ()
        for zone, recipes in found.items():
            keep_recipes(store, id_, recipes, zone=zone)
        assert zones(store, id_) == [WHOLE_PIECE, "body", "top"]
        assert stood_down(job_of(store, id_)) is None

    def test_sheet_and_piece_buy_the_same(
        self, store: Store, box: str, found: dict[str, Recipes]
    ) -> None:
        """What the sheet tells to buy is what the amounts of the piece do; nothing is for both."""
        for zone in ("body", "top"):
            keep_recipes(store, box, found[zone], zone=zone)
        job, shelf = job_of(store, box), demo_shelf()
        order = amounts_order_of(store, job, shelf)
        assert order is not None
        piece = {p.name: p.need_ml for p in amounts_for(order).purchases}
        content = content_of(store, box)
        assert [zone.name for zone in content.zones] == ["body", "top"] == list(zones_told(job))
        assert {line.name: line.ml for line in content.buy} == pytest.approx(piece)
        cream = {p.paint for r in job.recipes if r.zone == WHOLE_PIECE for p in r.paints}
        own = {p.paint for recipe in mixes_in_use(job) for p in recipe.paints}
        assert cream - own
        used = {paint.id for paint in paints_in_use(mixes_in_use(job), None, shelf)}
        assert used == own == {paint.id for paint in at_hand(store, mixes_in_use(job)).paints}

    def test_it_is_not_mixed_any_more(
        self, store: Store, box: str, found: dict[str, Recipes]
    ) -> None:
        """Asked for by name, sheet and batch say which mixes there are instead."""
        for zone in ("body", "top"):
            keep_recipes(store, box, found[zone], zone=zone)
        with pytest.raises(MendableError, match="body and top have mixes of their own"):
            make_batch(store, box, volume=100, zone=WHOLE_PIECE)
        with pytest.raises(MendableError, match="body and top have mixes of their own"):
            content_of(store, box, zone=WHOLE_PIECE)
        # Kept last of all, it is not what a batch of no zone is mixed of.
        keep_recipes(store, box, found[WHOLE_PIECE])
        make_batch(store, box, volume=100)
        assert job_of(store, box).batches[-1].zone == "top"


class TestAZoneThatIsGone:
    """A mix for a zone that the piece does not have is on no part of it."""

    def test_it_is_neither_bought_nor_printed(
        self, store: Store, box: str, found: dict[str, Recipes]
    ) -> None:
        """A box has no drawers: what is kept for them is left out everywhere, till it has some."""
        keep_recipes(store, box, found["body"], zone="body")
        keep_recipes(store, box, found["top"], zone="drawers")
        job = job_of(store, box)
        assert zones(store, box) == [WHOLE_PIECE, "body"]
        assert [recipe.zone for recipe in of_no_zone(job)] == ["drawers"]
        content = content_of(store, box)
        assert "drawers" not in [zone.name for zone in content.zones]
        used = {paint.id for paint in paints_in_use(mixes_in_use(job), None, demo_shelf())}
        kept = {p.paint for r in job.recipes if r.zone == "drawers" for p in r.paints}
        assert kept - used
        bought = {line.name for line in content.buy}
        names = {p.name for r in job.recipes if r.zone == "drawers" for p in r.paints}
        assert names - bought
        keep_document(store, box, "piece", common_piece(Kind.DRESSER))
        assert zones(store, box) == [WHOLE_PIECE, "body", "drawers"]
        assert of_no_zone(job_of(store, box)) == ()

    def test_asked_for_by_name(self, store: Store, box: str, found: dict[str, Recipes]) -> None:
        """Sheet and batch say which zones the piece has."""
        keep_recipes(store, box, found["top"], zone="drawers")
        for act in (
            lambda: make_batch(store, box, volume=100, zone="drawers"),
            lambda: content_of(store, box, zone="drawers"),
        ):
            with pytest.raises(
                MendableError, match="The mix for drawers of “Blanket box” is on no"
            ):
                act()

    def test_the_only_one(self, store: Store, box: str, found: dict[str, Recipes]) -> None:
        """Where no other is kept, the sheet says that no part of the piece has a mix."""
        keep_recipes(store, box, found["top"], zone="drawers")
        take_off_mix(store, box, WHOLE_PIECE)
        with pytest.raises(MendableError, match="No part of “Blanket box” has a mix"):
            content_of(store, box)
        take_off_mix(store, box, "drawers")
        undo(store)
        assert [recipe.zone for recipe in of_no_zone(job_of(store, box))] == ["drawers"]


class TestTheOrder:
    """Colours keep their places."""

    def test_kept_again(self, store: Store, box: str, found: dict[str, Recipes]) -> None:
        """A mix that is kept once more stays where it was on the sheet and in the job."""
        for zone in ("body", "top", "body"):
            keep_recipes(store, box, found[zone], zone=zone)
        assert [w.zone for w in job_of(store, box).wanted] == [WHOLE_PIECE, "body", "top"]
        assert [zone.name for zone in content_of(store, box).zones] == ["body", "top"]


class TestTakenOff:
    """A colour that was kept can be taken off."""

    def test_one_step(self, store: Store, box: str, found: dict[str, Recipes]) -> None:
        """Colour and mixes go together, and come back where they were; batches stay."""
        keep_recipes(store, box, found["body"], zone="body")
        make_batch(store, box, volume=100, zone="body")
        before = job_of(store, box)
        take_off_mix(store, box, "body")
        after = job_of(store, box)
        assert [w.zone for w in after.wanted] == [WHOLE_PIECE]
        assert {r.zone for r in after.recipes} == {WHOLE_PIECE}
        assert after.batches == before.batches
        assert edits(store)[0].label == "Take a colour and its mixes off “Blanket box”, body"
        undo(store)
        assert job_of(store, box) == before
        redo(store)
        assert job_of(store, box) == after

    def test_what_is_not_there(self, store: Store, box: str) -> None:
        """A zone of which nothing is kept is named."""
        with pytest.raises(MendableError, match="zone doors"):
            take_off_mix(store, box, "doors")


class TestTheAmount:
    """Each colour is kept with its amount."""

    def test_each_its_own(self, store: Store, box: str, found: dict[str, Recipes]) -> None:
        """Another colour kept for another amount leaves that of the first."""
        for zone in ("body", "top"):
            keep_recipes(store, box, found[zone], zone=zone)
        job = job_of(store, box)
        assert {w.zone: w.volume for w in job.wanted} == {WHOLE_PIECE: 500, "body": 300, "top": 120}
        assert [volume_kept(job, zone) for zone in ("body", "top", "doors")] == [300, 120, 500]

    def test_without_a_piece_the_sheet_tells_it(
        self, store: Store, found: dict[str, Recipes]
    ) -> None:
        """With neither batch nor piece the sheet and the offer are for what was kept."""
        id_ = new_job(store, title="Chair").jobs[0]
        keep_recipes(store, id_, found["body"], zone="body")
        zone = content_of(store, id_).zones[0]
        assert (zone.volume, zone.volume_from) == (300, "as kept with the colour")
        assert offered_volume(store, id_, "body", demo_shelf()) == 300
