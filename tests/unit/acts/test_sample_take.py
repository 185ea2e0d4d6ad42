"""Taking the mix of a sample as the mix of a zone."""

from __future__ import annotations

from pathlib import Path

import pytest

from swatchwright.acts.batches import keep_recipes
from swatchwright.acts.jobs import Store, job_of, keep_document, new_job, open_jobs, undo
from swatchwright.acts.recipes import recipes_for
from swatchwright.acts.sample import advice_on
from swatchwright.acts.sample_judged import judged_by_eye
from swatchwright.acts.sample_rounds import SAMPLES_PART, SampleLoop, new_loop, take_round
from swatchwright.acts.sample_take import keep_sample, poured_after, zone_of_samples
from swatchwright.acts.sample_tried import loop_of, taken_for, tried_line
from swatchwright.acts.sheet_mixes import mixes_of_job
from swatchwright.acts.sheet_parts import parts_of
from swatchwright.errors import MendableError
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.jobs import Job, KeptRecipe, WantedColour
from swatchwright.values import KnownColour, Lab, isotropic

SHELF = demo_shelf()
CLOTH = KnownColour(Lab(46, 34, 24), isotropic(2.5), "a photo")
FIRST = (("strong-red-orange", 21.7), ("pale-blue-greyish", 5.8), ("strong-yellow-orange", 2.5))
RIGHT = (("strong-red-orange", 20.0), ("pale-blue-greyish", 6.1), ("strong-yellow-orange", 4.0))


def loop_home() -> SampleLoop:
    """Give a loop whose second sample is like the cloth."""
    loop = new_loop(CLOTH)
    for mixed, said in ((FIRST, "clearly too light"), (RIGHT, "like the cloth")):
        loop = take_round(SHELF, loop, mixed, judged_by_eye(said, CLOTH.lab), day="2026-03-01")
    return loop


def chosen_in(job: Job) -> KeptRecipe:
    """Give the chosen mix of the body."""
    found = job.chosen("body")
    assert found is not None
    return found


class TestKept:
    """A job with a first mix for its body, and the samples."""

    @pytest.fixture
    def job(self, tmp_path: Path) -> tuple[Store, str]:
        """Give the store and the job."""
        store = open_jobs(tmp_path / "jobs.db")
        id_ = new_job(store, title="A box").jobs[0]
        found = recipes_for(CLOTH, SHELF, most_paints=3, keep=2)
        keep_recipes(store, id_, found, zone="body")
        keep_document(store, id_, SAMPLES_PART, loop_home())
        return store, id_

    def test_it_is_the_mix_of_the_zone_as_it_was_poured(self, job: tuple[Store, str]) -> None:
        """Its shares are exactly those poured, its look is what the samples taught."""
        store, id_ = job
        keep_sample(store, id_, loop_home(), 2, shelf=SHELF, zone="body")
        kept = job_of(store, id_)
        chosen = chosen_in(kept)
        total = sum(ml for _, ml in RIGHT)
        assert {p.paint: p.share for p in chosen.paints} == pytest.approx(
            {id_: ml / total for id_, ml in RIGHT}, abs=1e-12
        )
        assert [p.share for p in chosen.paints] == sorted(
            (p.share for p in chosen.paints), reverse=True
        )
        assert chosen.delta_e < 1.5
        assert chosen.wanted == CLOTH.lab
        assert [w.colour for w in kept.wanted if w.zone == "body"] == [CLOTH]

    def test_its_record_is_its_sample(self, job: tuple[Store, str]) -> None:
        """Job and sheet say by which sample it was found, and how far off that was."""
        store, id_ = job
        keep_sample(store, id_, loop_home(), 2, shelf=SHELF, zone="body")
        kept = job_of(store, id_)
        taken = taken_for(kept, "body")
        assert taken is not None
        assert (taken.number, taken.off, taken.added) == (2, 0.0, False)
        mix = [(p.paint, p.share) for p in chosen_in(kept).paints]
        assert "Found by sample 2 beside the cloth, off by about 0.0" in tried_line(kept, mix)
        parts = parts_of(store, kept)
        (on_sheet,) = mixes_of_job(store, kept, parts, zone=None, volume=None, in_use=SHELF)
        assert on_sheet.mix.tried == tried_line(kept, mix)
        assert dict(on_sheet.mix.parts) == pytest.approx(dict(mix))
        assert taken_for(kept, "drawers") is None

    def test_one_undo_takes_it_back(self, job: tuple[Store, str]) -> None:
        """The mix of before is chosen again, and no sample is said to have found it."""
        store, id_ = job
        before = job_of(store, id_)
        assert taken_for(before, "body") is None
        changes = keep_sample(store, id_, loop_home(), 2, shelf=SHELF, zone="body")
        assert changes.label == "Take sample 2 as the mix of “A box”, body"
        undo(store)
        after = job_of(store, id_)
        assert after.recipes == before.recipes
        assert loop_of(after) == loop_of(before)

    def test_another_mix_is_not_said_to_be_the_sample(self, job: tuple[Store, str]) -> None:
        """Where another is chosen afterwards, nothing says that the sample found it."""
        store, id_ = job
        keep_sample(store, id_, loop_home(), 2, shelf=SHELF, zone="body")
        keep_recipes(store, id_, recipes_for(CLOTH, SHELF, keep=1), zone="body")
        assert taken_for(job_of(store, id_), "body") is None

    def test_what_was_found_before_stays_beside_it(self, job: tuple[Store, str]) -> None:
        """The mixes of the bench are kept beside it, none of them chosen."""
        store, id_ = job
        found = recipes_for(CLOTH, SHELF, keep=2)
        keep_sample(store, id_, loop_home(), 2, shelf=SHELF, zone="body", others=found)
        kept = [r for r in job_of(store, id_).recipes if r.zone == "body"]
        assert [r.chosen for r in kept] == [True, False, False]

    def test_the_pot_after_an_addition_is_taken(self, job: tuple[Store, str]) -> None:
        """What was added is in it; it is told as found by the sample and what was added."""
        store, id_ = job
        loop = loop_home()
        loop = SampleLoop(loop.wanted, loop.covariance, loop.rounds[:1])
        _, advice = advice_on(SHELF, loop, pot=300.0)
        added = tuple((s.paint.id, s.ml) for s in advice.additions.steps)
        assert added
        keep_sample(store, id_, loop, 1, shelf=SHELF, zone="body", added=added, pot=300.0)
        kept = job_of(store, id_)
        poured = dict(poured_after(loop.rounds[0], added, 300.0))
        total = sum(poured.values())
        assert total == pytest.approx(300.0 + sum(ml for _, ml in added))
        assert {p.paint: p.share for p in chosen_in(kept).paints} == pytest.approx(
            {i: ml / total for i, ml in poured.items()}
        )
        taken = taken_for(kept, "body")
        assert taken is not None
        assert taken.added
        mix = [(p.paint, p.share) for p in chosen_in(kept).paints]
        assert "what was then added" in tried_line(kept, mix)

    def test_no_such_sample(self, job: tuple[Store, str]) -> None:
        """A number beyond the samples is refused, and nothing is kept."""
        store, id_ = job
        before = job_of(store, id_)
        with pytest.raises(MendableError, match="no sample 3"):
            keep_sample(store, id_, loop_home(), 3, shelf=SHELF, zone="body")
        assert job_of(store, id_) == before


def test_the_zone_is_the_one_that_wants_the_colour() -> None:
    """The zone at hand, unless only another wants the colour of the samples."""
    loop = loop_home()
    other = WantedColour("drawers", KnownColour(Lab(30, 0, 0), None, ""))
    job = Job("a", "A box", wanted=(WantedColour("body", CLOTH), other))
    assert zone_of_samples(job, loop, "body") == "body"
    assert zone_of_samples(job, loop, "drawers") == "body"
    assert zone_of_samples(None, loop, "all") == "all"
    assert zone_of_samples(Job("a", "A box", wanted=(other,)), loop, "drawers") == "drawers"
