"""A sample teaches once, and what it taught can be taken back to the last digit."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from swatchwright.acts.jobs import job_of, keep_document, new_job, open_jobs, redo, undo
from swatchwright.acts.kept_recipe import shelf_of_recipe, what_has_changed
from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.sample import advice_on, learnt_shelf
from swatchwright.acts.sample_judged import judged_by_eye, judged_by_figures
from swatchwright.acts.sample_learnt import (
    begun_anew,
    knows,
    learn_from,
    taken_back,
    taught_by,
)
from swatchwright.acts.sample_lessons import (
    Stand,
    is_whole,
    learnt_since,
    put_as_taught,
    stand_of,
    taught_again,
    untaught,
)
from swatchwright.acts.sample_rounds import SAMPLES_PART, SampleLoop, new_loop, take_round
from swatchwright.acts.sample_take import keep_sample, poured_after
from swatchwright.acts.sample_taken import Taken
from swatchwright.acts.sample_teach import keep_samples
from swatchwright.acts.sample_tried import lessons_in, loop_of, taken_for, taught_in, tried_line
from swatchwright.colour.difference import delta_e_2000
from swatchwright.shelf.csv_file import demo_shelf, read_shelf
from swatchwright.shelf.jobs import Document, Job
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store.paint_rows import paint_bytes
from swatchwright.shelf.write import write_shelf
from swatchwright.values import KnownColour, Lab, isotropic

SHELF = demo_shelf()
MIX = (("strong-red-orange", 21.7), ("pale-blue-greyish", 5.8), ("strong-yellow-orange", 2.5))
OTHER = (("strong-red-orange", 20.0), ("pale-blue-greyish", 8.0))
CLOTH = Lab(46, 34, 24)


def looped(*said: str, loop: SampleLoop | None = None) -> SampleLoop:
    """Give a loop of samples of one mix that were judged by eye."""
    made = loop or new_loop(KnownColour(CLOTH, isotropic(2.5), "a photo"))
    for words in said:
        made = take_round(SHELF, made, MIX, judged_by_eye(words, CLOTH), day="2026-03-01")
    return made


def as_bytes(shelf: Shelf) -> list[bytes]:
    """Give the paints of a shelf to the last digit."""
    return [paint_bytes(paint) for paint in shelf.paints]


def near(one: Shelf, other: Shelf) -> bool:
    """Tell whether two shelves are alike but for rounding in a file."""
    return all(
        np.allclose(a.K, b.K, rtol=1e-3) and np.allclose(a.S, b.S, rtol=1e-3)
        for a, b in zip(one.paints, other.paints, strict=True)
    )


def test_a_sample_teaches_once() -> None:
    """Taught five times over, paints and promise are just what they were after the first time."""
    loop = looped("clearly too light")
    assert not knows(SHELF, loop)
    first, kept = learnt_shelf(SHELF, loop)
    assert knows(first, kept)
    shelf, again = first, kept
    for _ in range(4):
        shelf, again = learnt_shelf(shelf, again)
    assert as_bytes(shelf) == as_bytes(first)
    assert again == kept
    assert taught_by(first, shelf, again).paints == ()
    assert knows(shelf, again)


def test_the_advice_is_the_same_before_and_after() -> None:
    """Teaching counts nothing twice: what to add and how near that comes do not change by it."""
    loop = looped("clearly too light", "a touch too red")
    _, before = advice_on(SHELF, loop)
    shelf, kept = learnt_shelf(SHELF, loop)
    _, after = advice_on(shelf, kept)
    assert after.after.usual == pytest.approx(before.after.usual, abs=1e-9)
    assert [s.ml for s in after.additions.steps] == [s.ml for s in before.additions.steps]


def test_taken_back_and_kept_again_it_is_the_same_sample() -> None:
    """Taken back the paints are what they were to the last digit; kept again it teaches the same.

    So it is when the job is read back from its file between.
    """
    shelf, loop = learnt_shelf(SHELF, looped("clearly too light"))
    first = as_bytes(shelf)
    loop = Document.of(loop).read(SampleLoop)
    shelf, loop = taken_back(shelf, loop)
    assert as_bytes(shelf) == as_bytes(SHELF)
    assert (loop.rounds, loop.lessons) == ((), ())
    loop = looped("clearly too light", loop=loop)
    shelf, loop = learnt_shelf(shelf, loop)
    assert as_bytes(shelf) == first


def test_taking_back_one_of_two_leaves_what_the_other_taught() -> None:
    """The paints are then as if the second had never been."""
    one, _ = learnt_shelf(SHELF, looped("clearly too light"))
    two = learnt_shelf(SHELF, looped("clearly too light", "a touch too red"))
    shelf, loop = taken_back(*two)
    assert as_bytes(shelf) == as_bytes(one)
    assert knows(shelf, loop)


def test_what_taught_nothing_is_taken_back_without_the_shelf() -> None:
    """A sample that the paints have not learnt from leaves them as they are."""
    shelf, rest = taken_back(SHELF, looped("clearly too light"))
    assert shelf is SHELF
    assert rest.rounds == ()


def test_after_a_new_start_it_teaches_the_same() -> None:
    """With the shelf as it was before, the lesson is open again and comes to the same paints."""
    shelf, loop = learnt_shelf(SHELF, looped("clearly too light"))
    again = Document.of(loop).read(SampleLoop)
    assert not knows(SHELF, again)
    assert as_bytes(learnt_shelf(SHELF, again)[0]) == as_bytes(shelf)


def test_a_shelf_that_is_taken_anew_is_taught_again() -> None:
    """What paints learnt since their shelf was taken brings the same paints back from it."""
    shelf, _ = learnt_shelf(SHELF, looped("clearly too light", "a touch too red"))
    told = learnt_since(SHELF, shelf)
    assert {one.id for one in told} == {id_ for id_, _ in MIX}
    again = taught_again(demo_shelf(), told)
    assert as_bytes(again) == as_bytes(shelf)
    # Taught already, or others by now, paints stay just what they are.
    assert taught_again(again, told) is again
    strange = replace(SHELF, paints=tuple(replace(p, K=2 * p.K) for p in SHELF.paints))
    assert taught_again(strange, told) is strange
    assert learnt_since(SHELF, SHELF) == ()
    assert learnt_since(Shelf("", SHELF.paints[:0]), shelf) == ()


def test_one_lesson_upon_another() -> None:
    """What was taught before the samples were begun anew is taught first."""
    first, kept = learnt_shelf(SHELF, looped("clearly too light"))
    second, kept = learnt_shelf(first, looped("a touch too red", loop=begun_anew(kept)))
    lessons = (*kept.settled, *kept.lessons)
    assert as_bytes(taught_again(demo_shelf(), lessons)) == as_bytes(second)
    assert all(is_whole(one) for one in lessons)
    assert lessons_in(None) == ()
    job = Job("a", "A box", documents=((SAMPLES_PART, Document.of(kept)),))
    assert lessons_in(job) == lessons


def test_begun_anew_the_same_sample_is_no_news() -> None:
    """Forgotten with all others and kept again, a sample teaches nothing that it has taught."""
    shelf, loop = learnt_shelf(SHELF, looped("clearly too light"))
    loop = looped("clearly too light", loop=begun_anew(loop))
    assert knows(shelf, loop)
    taught, _ = learnt_shelf(shelf, loop)
    assert as_bytes(taught) == as_bytes(shelf)
    # Another one is news, and is learnt upon the first.
    more = looped("a touch too red", loop=loop)
    assert not knows(shelf, more)
    assert as_bytes(learnt_shelf(shelf, more)[0]) != as_bytes(shelf)


def test_the_same_look_twice_says_it_once() -> None:
    """One mix that was seen just so is one piece of evidence, however often it is kept."""
    once, twice = looped("clearly too light"), looped("clearly too light", "clearly too light")
    assert as_bytes(learnt_shelf(SHELF, once)[0]) == as_bytes(learnt_shelf(SHELF, twice)[0])
    assert len(learn_from(SHELF, twice).shares) == 1


def test_a_doubtful_word_teaches_less_than_a_reading() -> None:
    """A word by eye moves the mix by less than it says, and by less than a reading of the same."""
    said = judged_by_eye("much too light", CLOTH)
    read = judged_by_figures(said.vector, CLOTH)
    moved = []
    for judged in (said, read):
        begun = new_loop(KnownColour(look_of_mix(SHELF, MIX).dry, isotropic(0.5), "a photo"))
        loop = take_round(SHELF, begun, MIX, judged, day="2026-03-01")
        learnt, _ = learnt_shelf(SHELF, loop)
        moved.append(look_of_mix(learnt, MIX).dry.L - look_of_mix(SHELF, MIX).dry.L)
    assert 0.0 < moved[0] < 0.8 * moved[1]
    assert moved[0] < said.vector[0] / 2


def test_a_taught_shelf_that_was_written_and_read_is_known() -> None:
    """Through a file, which rounds, it still is the taught one and learns nothing again."""
    shelf, loop = learnt_shelf(SHELF, looped("clearly too light"))
    rounded = replace(
        shelf,
        paints=tuple(
            replace(p, K=np.round(p.K, 6), S=np.round(p.S, 6), spread=p.spread)
            for p in shelf.paints
        ),
    )
    assert knows(rounded, loop)
    assert near(learnt_shelf(rounded, loop)[0], shelf)


def test_through_the_program_s_own_file(tmp_path: Path) -> None:
    """Written as the command does and read again, nothing teaches twice."""
    shelf, loop = learnt_shelf(SHELF, looped("clearly too light"))
    write_shelf(shelf, tmp_path / "taught.csv")
    there = read_shelf(tmp_path / "taught.csv")
    assert knows(there, loop)
    assert near(learnt_shelf(there, loop)[0], there)


def test_a_paint_made_anew_is_left_alone() -> None:
    """What is another paint by now is not put back to what that tin was."""
    shelf, loop = learnt_shelf(SHELF, looped("clearly too light"))
    id_ = MIX[0][0]
    paints = tuple(replace(p, K=2 * p.K) if p.id == id_ else p for p in shelf.paints)
    mine = Shelf("mine", paints)
    lesson = next(one for one in loop.lessons if one.id == id_)
    assert stand_of(mine.paint(id_), lesson) is Stand.OTHER
    assert untaught(mine, loop.lessons).paint(id_) is mine.paint(id_)


def test_lessons_are_put_and_taken_away() -> None:
    """From one lesson to another and to none: the paints are just those of then."""
    one, first = learnt_shelf(SHELF, looped("clearly too light"))
    two, second = learnt_shelf(one, looped("a touch too red", loop=first))
    assert as_bytes(put_as_taught(two, second.lessons, first.lessons)) == as_bytes(one)
    assert as_bytes(put_as_taught(one, first.lessons, ())) == as_bytes(SHELF)
    assert as_bytes(put_as_taught(SHELF, (), first.lessons)) == as_bytes(one)
    assert put_as_taught(SHELF, (), ()) is SHELF


def test_teaching_is_one_edit_that_says_so(tmp_path: Path) -> None:
    """It is undone and redone as one, and only it is called so."""
    with open_jobs(tmp_path / "jobs.db") as store:
        id_ = new_job(store, title="A box").jobs[0]
        loop = looped("clearly too light")
        assert keep_samples(store, id_, loop).label == "Samples of “A box”"
        _, kept = learnt_shelf(SHELF, loop)
        changes = keep_samples(store, id_, kept)
        assert changes.label == "Teach the paints by the samples of “A box”"
        undo(store)
        there = loop_of(job_of(store, id_))
        assert there == loop
        redo(store)
        assert loop_of(job_of(store, id_)) == kept


def test_one_promise_for_one_pot(tmp_path: Path) -> None:
    """Advice, job and sheet tell the same figure of the pot after an addition, taught or not."""
    with open_jobs(tmp_path / "jobs.db") as store:
        id_ = new_job(store, title="A box").jobs[0]
        loop = looped("clearly too light")
        loop, advice = advice_on(SHELF, loop, pot=300.0)
        added = tuple((s.paint.id, s.ml) for s in advice.additions.steps)
        for shelf, known in ((SHELF, loop), learnt_shelf(SHELF, loop)):
            keep_document(store, id_, SAMPLES_PART, known)
            keep_sample(store, id_, known, 1, shelf=shelf, added=added, pot=300.0)
            job = job_of(store, id_)
            taken = taken_for(job, "all")
            assert taken is not None
            assert taken.off == pytest.approx(advice.after.usual, abs=1e-9)
            assert taken.extra == added
            mix = poured_after(known.rounds[0], added, 300.0)
            assert f"within about {advice.after.usual:.1f} of the cloth" in tried_line(job, mix)


def test_a_promise_of_before_is_not_told(tmp_path: Path) -> None:
    """A figure that was kept when it left out what is not known is told no more."""
    with open_jobs(tmp_path / "jobs.db") as store:
        id_ = new_job(store, title="A box").jobs[0]
        old = Taken("all", 1, OTHER, 0.4, added=True)
        keep_document(store, id_, SAMPLES_PART, replace(looped("too light"), taken=(old,)))
        told = tried_line(job_of(store, id_), OTHER)
        assert "0.4" not in told
        assert "nothing was brushed from it since" in told


def test_what_was_taken_is_reckoned_as_it_was_brushed(tmp_path: Path) -> None:
    """The paints of the kept mix are those that the samples showed, and no others than the tins."""
    with open_jobs(tmp_path / "jobs.db") as store:
        id_ = new_job(store, title="A box").jobs[0]
        loop, advice = advice_on(SHELF, looped("much too red"))
        added = tuple((s.paint.id, s.ml) for s in advice.additions.steps)
        keep_sample(store, id_, loop, 1, shelf=SHELF, added=added)
        job = job_of(store, id_)
        recipe = job.chosen("all")
        assert recipe is not None
        changed = what_has_changed(store, recipe, in_use=SHELF, taught=taught_in(job))
        assert changed.others == ()
        mix = [(paint.paint, paint.share) for paint in recipe.paints]
        bare = look_of_mix(SHELF, mix).dry
        told = look_of_mix(shelf_of_recipe(store, recipe), mix).dry
        off = [float(delta_e_2000(lab.triple, recipe.dry.triple)) for lab in (told, bare)]
        assert off[0] < 0.5 * off[1]
        # Taught afterwards, they are just the paints of the shelf.
        shelf, known = learnt_shelf(SHELF, loop)
        keep_samples(store, id_, known)
        again = what_has_changed(store, recipe, in_use=shelf, taught=taught_in(job_of(store, id_)))
        assert again.others == again.taught == ()
