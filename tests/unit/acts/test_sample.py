"""The sample loop: what is kept of it, what it asks for, and when it ends."""

from __future__ import annotations

import json
from dataclasses import replace

import numpy as np
import pytest

from swatchwright.acts.correct import neighbours
from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.sample import (
    advice_on,
    dried_in_photos,
    expected_beside,
    learnt_shelf,
    stripes_beside,
)
from swatchwright.acts.sample_in_photo import colour_in_photo, judged_by_photo
from swatchwright.acts.sample_judged import (
    How,
    Judged,
    judged_by_eye,
    judged_by_figures,
    picked_by_eye,
)
from swatchwright.acts.sample_marks import SampleShot
from swatchwright.acts.sample_rounds import (
    SAMPLES_PART,
    SampleLoop,
    Stop,
    cloth_of,
    cloths_apart,
    kept_as,
    learn_from_pick,
    new_loop,
    stop_of,
    take_round,
    tried_as,
)
from swatchwright.acts.sample_tried import tried_line
from swatchwright.colour.difference import ACCEPTED, JUST_SEEN, delta_e_2000
from swatchwright.errors import MendableError
from swatchwright.photo.quality import Finding
from swatchwright.photo.references import Reference
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.decoding import decoded
from swatchwright.shelf.jobs import Document, Job
from swatchwright.values import KnownColour, Lab, Rect, isotropic
from unit.photo.boards import board, grey_lab, mark

SHELF = demo_shelf()
MIX = (("strong-red-orange", 21.7), ("pale-blue-greyish", 5.8), ("strong-yellow-orange", 2.5))
CLOTH = Lab(46, 34, 24)
DAY = "2026-03-01"


def loop_with(*said: str) -> SampleLoop:
    """Give a loop of samples that were judged by eye."""
    loop = new_loop(KnownColour(CLOTH, isotropic(2.5), "a photo"))
    for words in said:
        loop = take_round(SHELF, loop, MIX, judged_by_eye(words, CLOTH), day=DAY)
    return loop


# --- judging -------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("said", "axis", "sign", "size"),
    [
        ("too light", 0, 1, 1.5),
        ("a touch too dark", 0, -1, 1.5),
        ("clearly too red", 1, 1, 3.0),
        ("slightly too green", 1, -1, 1.5),
        ("much too yellow", 2, 1, 6.0),
        ("It is much too blue.", 2, -1, 6.0),
    ],
)
def test_words_are_steps_of_the_size_they_mean(
    said: str, axis: int, sign: int, size: float
) -> None:
    """Each word goes its way, as far in CIEDE2000 as it says."""
    judged = judged_by_eye(said, CLOTH)
    assert np.sign(judged.vector[axis]) == sign
    assert judged.delta_e == pytest.approx(size, abs=0.01)
    assert judged.how is How.EYE


def test_two_words_are_two_steps() -> None:
    """“A touch too light and much too yellow” is a small step up and a large one to yellow."""
    both = judged_by_eye("a touch too light and much too yellow", CLOTH)
    one = judged_by_eye("a touch too light", CLOTH)
    other = judged_by_eye("much too yellow", CLOTH)
    assert np.array(both.vector) == pytest.approx(np.array(one.vector) + other.vector, abs=1e-6)
    assert both.give_or_take > one.give_or_take


def test_one_word_for_two_ways_is_one_step() -> None:
    """“A touch too light and too yellow” is a touch off, both ways; opposite ways are refused."""
    both = judged_by_eye("a touch too light and too yellow", CLOTH)
    assert both.delta_e == pytest.approx(1.5, abs=0.01)
    assert both.vector[0] > 0.5
    assert both.vector[2] > 0.5
    assert judged_by_eye("much too dark and too red", CLOTH).delta_e == pytest.approx(6, abs=0.01)
    with pytest.raises(MendableError, match="opposite"):
        judged_by_eye("a touch too light and too dark", CLOTH)


def test_too_vivid_is_away_from_grey() -> None:
    """Vivid and grey go along the cloth's own chroma; a grey cloth has none and says so."""
    vivid = judged_by_eye("too vivid", CLOTH).sample
    assert np.hypot(vivid.a, vivid.b) > np.hypot(CLOTH.a, CLOTH.b)
    assert vivid.a / vivid.b == pytest.approx(CLOTH.a / CLOTH.b)
    with pytest.raises(MendableError, match="grey"):
        judged_by_eye("too vivid", Lab(50, 0, 0))


def test_other_words_are_refused_with_those_that_are_known() -> None:
    """What is not understood is answered with what is."""
    with pytest.raises(MendableError, match="too light"):
        judged_by_eye("rather nice", CLOTH)


@pytest.mark.parametrize("vector", [(1.0, 2.0), (float("nan"), 0, 0), (99.0, 0, 0)])
def test_figures_that_are_no_difference_are_refused(vector: tuple[float, ...]) -> None:
    """Two numbers, no numbers, and a difference no paint has."""
    with pytest.raises(MendableError, match="three numbers"):
        judged_by_figures(vector, CLOTH)


def test_a_photo_tells_the_difference_and_what_is_weak_in_it() -> None:
    """In a rendered photo the difference comes out; without a grey that is said."""
    photo = board([grey_lab(0.18), (45, 30, 20), (48, 27, 22)])
    grey = (Reference.grey(mark(0), 0.18),)
    judged = judged_by_photo(photo, grey, mark(1), mark(2))
    assert np.array(judged.vector) == pytest.approx([3, -3, 2], abs=0.6)
    without = judged_by_photo(photo, (), mark(1), mark(2))
    assert any("No grey is marked" in found.text for found in without.findings)


def test_a_pick_is_as_sure_as_the_fan_is_fine() -> None:
    """A mix picked from a fan is like the cloth to within about half the fan's spacing."""
    judged = picked_by_eye(CLOTH)
    assert judged.delta_e == 0
    assert 0.5 < judged.give_or_take < 1.5


# --- stopping ------------------------------------------------------------------------------------


def test_it_stops_where_the_eye_does() -> None:
    """Below 0.8 nobody is bothered; below what the comparison can tell, that is said instead."""
    seen = judged_by_figures((0.9, 0, 0), CLOTH, usual=0.2)
    assert stop_of(seen) is None or seen.delta_e < JUST_SEEN
    assert stop_of(judged_by_figures((0.3, 0, 0), CLOTH)) is Stop.UNSEEN
    assert stop_of(judged_by_figures((1.5, 0, 0), CLOTH, usual=5.0)) is Stop.UNTOLD
    assert stop_of(judged_by_figures((4.0, 0, 0), CLOTH)) is None


def test_what_most_accept_is_told() -> None:
    """Between just seen and accepted it goes on, and says that most would take it."""
    judged = judged_by_figures((1.3, 0, 0), CLOTH, usual=0.2)
    assert JUST_SEEN < judged.delta_e < ACCEPTED
    loop = take_round(SHELF, loop_with(), MIX, judged, day=DAY)
    _, advice = advice_on(SHELF, loop)
    assert advice.accepted
    assert advice.stop is None


# --- what it asks for ----------------------------------------------------------------------------


def test_too_light_a_sample_gets_darker_paint() -> None:
    """What is added to a pot that dried too light darkens it, and no more than the tub holds."""
    loop, advice = advice_on(SHELF, loop_with("much too light"), pot=300.0, tub=450.0)
    held = sum(ml for _, ml in advice.pot)
    assert held == pytest.approx(300.0)
    assert advice.additions.steps
    before = look_of_mix(SHELF, MIX).dry
    after = dict(advice.pot)
    for step in advice.additions.steps:
        after[step.paint.id] = after.get(step.paint.id, 0.0) + step.ml
    assert look_of_mix(SHELF, list(after.items())).dry.L < before.L - 2
    assert sum(after.values()) <= 450.0 + 0.05
    assert loop.rounds[-1].added == tuple((s.paint.id, s.ml) for s in advice.additions.steps)


def test_the_fresh_mix_goes_the_other_way_too() -> None:
    """The fresh mix is darker as well, of 30 ml, poured the strongest last with some held back."""
    _, advice = advice_on(SHELF, loop_with("much too light"))
    assert sum(ml for _, ml in advice.fresh.mixed) == pytest.approx(30.0)
    before = look_of_mix(SHELF, MIX).dry
    assert look_of_mix(SHELF, advice.fresh.mixed).dry.L < before.L - 2
    assert advice.fresh.pours[-1].held_back
    assert sum(p.ml for p in advice.fresh.pours) == pytest.approx(30.0)
    assert len(advice.beside) == 2


def test_paints_that_may_not_be_added_are_not() -> None:
    """What is left out on the shelf is neither added nor in the fresh mix."""
    _, free = advice_on(SHELF, loop_with("much too red"))
    used = {id_ for id_, _ in free.fresh.mixed} - {id_ for id_, _ in MIX}
    without = frozenset(p.id for p in SHELF.paints) - {id_ for id_, _ in MIX}
    _, bound = advice_on(SHELF, loop_with("much too red"), without=without)
    assert not {id_ for id_, _ in bound.fresh.mixed} & without
    assert not {s.paint.id for s in bound.additions.steps} & without
    assert used <= without


def test_what_was_taken_back_is_forgotten() -> None:
    """The advice after a sample that was taken back is that of before."""
    one = loop_with("much too light")
    two = take_round(SHELF, one, MIX, judged_by_eye("clearly too red", CLOTH), day=DAY)
    back = replace(two, rounds=two.rounds[:-1])
    assert advice_on(SHELF, back)[1].fresh.mixed == advice_on(SHELF, one)[1].fresh.mixed


def test_of_stripes_looked_at_together_the_best_is_put_right() -> None:
    """Kept beside the first, a worse stripe is learnt from and is not the one to be put right."""
    loop = loop_with("a touch too light")
    worse = judged_by_eye("much too light", CLOTH)
    other = (("strong-red-orange", 20.0), ("pale-blue-greyish", 8.0))
    both = take_round(SHELF, loop, other, worse, day=DAY, beside=True)
    assert [one.sitting for one in both.rounds] == [1, 1]
    kept, advice = advice_on(SHELF, both)
    assert advice.last.mixed == MIX
    assert kept.rounds[0].added == tuple((s.paint.id, s.ml) for s in advice.additions.steps)
    later = take_round(SHELF, both, other, worse, day=DAY)
    assert later.rounds[-1].sitting == 2
    assert advice_on(SHELF, later)[1].last.mixed == other


def test_stripes_lie_to_either_side() -> None:
    """Beside a mix two others of its paints are named; they differ from it and from each other."""
    stripes = stripes_beside(SHELF, loop_with(), MIX, volume=20.0)
    assert len(stripes) == 2
    middle = look_of_mix(SHELF, MIX).dry
    sides = [look_of_mix(SHELF, one.mixed).dry for one in stripes]
    assert all(float(delta_e_2000(middle.triple, side.triple)) > 1 for side in sides)
    assert float(delta_e_2000(sides[0].triple, sides[1].triple)) > 2
    for one in stripes:
        assert sum(ml for _, ml in one.mixed) == pytest.approx(20.0)
        assert {id_ for id_, _ in one.mixed} <= {id_ for id_, _ in MIX}
    assert stripes_beside(SHELF, loop_with(), MIX[:1], volume=20.0) == ()


def test_the_shelf_learns() -> None:
    """Of the learnt paints the sample computes nearer to where it was seen; others stay."""
    loop = loop_with("much too light", "clearly too light")
    learnt, kept = learnt_shelf(SHELF, loop)
    seen = Lab.of(np.array(loop.wanted.triple) + loop.rounds[-1].vector)
    before, after = (look_of_mix(shelf, MIX).dry for shelf in (SHELF, learnt))
    assert float(delta_e_2000(seen.triple, after.triple)) < float(
        delta_e_2000(seen.triple, before.triple)
    )
    touched = {id_ for id_, _ in MIX}
    for old, new in zip(SHELF.paints, learnt.paints, strict=True):
        assert (new is old) == (old.id not in touched)
    assert all(one.kept for one in kept.rounds)


def test_a_pick_from_a_fan_is_learnt_from() -> None:
    """Picking the darker neighbour teaches that the paints are lighter than they were thought."""
    darker = next(n for n in neighbours(SHELF, MIX) if n.word == "darker")
    cloth = KnownColour(look_of_mix(SHELF, MIX).dry, isotropic(1.0), "a photo")
    loop = learn_from_pick(SHELF, new_loop(cloth), darker, day=DAY)
    assert loop.rounds[-1].how is How.PICK
    learnt, _ = learnt_shelf(SHELF, loop)
    parts = [(p.id, ml) for p, ml in zip(darker.paints, darker.ml, strict=True)]
    assert look_of_mix(learnt, parts).dry.L > look_of_mix(SHELF, parts).dry.L


def test_a_loop_is_kept_as_plain_values() -> None:
    """Written as JSON and read back it is the same."""
    loop, _ = advice_on(SHELF, loop_with("much too light", "a touch too red"))
    document = Document.of(loop)
    assert document.read(SampleLoop) == loop
    assert json.loads(document.json)["rounds"][0]["day"] == DAY


def test_each_addition_tells_what_it_does() -> None:
    """The colours of the pot before and after each addition, the last being the computed end."""
    _, advice = advice_on(SHELF, loop_with("much too light"), pot=300.0, tub=450.0)
    steps = advice.additions.steps
    assert len(advice.turns) == len(steps) + 1
    assert advice.turns[-1] == steps[-1].after
    assert advice.turns[-1].L < advice.turns[0].L


def test_a_mix_that_was_brushed_counts_as_tried() -> None:
    """The last sample of its proportions is found, however much was mixed; of others none."""
    loop = loop_with("much too light", "a touch too red")
    batch = [(id_, 10 * ml) for id_, ml in MIX]
    assert tried_as(loop, batch) == (2, loop.rounds[1])
    assert tried_as(loop, [*batch[:2], (batch[2][0], 3 * batch[2][1])]) is None
    assert tried_as(loop, batch[:2]) is None
    assert tried_as(None, batch) is None


def test_the_job_says_how_near_the_sample_came() -> None:
    """Number, distance and day of the sample; nothing for a mix that was not tried."""
    loop = loop_with("clearly too light")
    job = Job("a", "A box", documents=((SAMPLES_PART, Document.of(loop)),))
    told = tried_line(job, MIX)
    assert f"sample 1 was {loop.rounds[0].delta_e:.1f} off" in told
    assert "1 March 2026" in told
    assert tried_line(job, MIX[:1]) == ""
    assert tried_line(Job("a", "A box"), MIX) == ""
    misread = replace(loop, rounds=(replace(loop.rounds[0], misread=True),))
    other = Job("a", "A box", documents=((SAMPLES_PART, Document.of(misread)),))
    assert "Tried" not in tried_line(other, MIX)


def test_two_photos_of_one_cloth_may_differ() -> None:
    """Beyond what both leave in doubt it is told; 6.25 squared deviations are nine in ten.

    The 0.9 quantile of the chi-squared distribution with three degrees of freedom is 6.251
    (any table of it).
    """
    wanted = KnownColour(CLOTH, ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)), "a photo")
    seen = judged_by_eye("too light", CLOTH)

    def apart(step: float) -> float | None:
        there = Lab(CLOTH.L + step, CLOTH.a, CLOTH.b)
        return cloths_apart(replace(seen, cloth=there, cloth_covariance=wanted.covariance), wanted)

    assert apart(1.4 * 2.5) is None
    far = apart(1.43 * 2.5)
    assert far is not None
    assert far == pytest.approx(
        float(delta_e_2000(CLOTH.triple, (CLOTH.L + 1.43 * 2.5, CLOTH.a, CLOTH.b)))
    )
    assert cloths_apart(seen, wanted) is None


def photographed(cloth: Lab, usual: float = 2.5, *, misread: bool = False) -> Judged:
    """Give a sample that was compared in a photo which shows the cloth so."""
    seen = replace(judged_by_eye("a touch too light", CLOTH), how=How.PHOTO, cloth=cloth)
    bad = (Finding("card not grey", "warning", "It is none.", "Mark another."),) if misread else ()
    return replace(seen, cloth_covariance=isotropic(usual), findings=bad)


def test_each_photo_says_something_of_the_cloth() -> None:
    """A second photo's own reading moves what the cloth is believed to be, and is kept."""
    redder = Lab(CLOTH.L, CLOTH.a + 2, CLOTH.b)
    loop = take_round(SHELF, loop_with("too red"), MIX, photographed(redder), day=DAY)
    found = cloth_of(loop)
    assert found.lab.a == pytest.approx(CLOTH.a + 1, abs=0.01)
    assert found.covariance is not None
    assert found.covariance[0][0] < loop.covariance[0][0]
    assert Document.of(loop).read(SampleLoop) == loop
    by_eye = loop_with("too red", "a touch too red")
    assert cloth_of(by_eye) == KnownColour(CLOTH, by_eye.covariance, "")


def test_a_photo_counts_once_and_only_if_its_grey_was_one() -> None:
    """Stripes of one photo, the photo it began with, and a misread one narrow nothing further."""
    redder = Lab(CLOTH.L, CLOTH.a + 2, CLOTH.b)
    one = take_round(SHELF, loop_with(), MIX, photographed(redder), day=DAY)
    two = take_round(SHELF, one, MIX, photographed(redder), day=DAY, beside=True)
    assert cloth_of(two) == cloth_of(one)
    for judged in (photographed(CLOTH), photographed(redder, misread=True)):
        loop = take_round(SHELF, loop_with(), MIX, judged, day=DAY)
        assert cloth_of(loop) == KnownColour(CLOTH, loop.covariance, "")


def test_a_better_photo_brings_the_mix_to_the_cloth_it_shows() -> None:
    """What is believed of the cloth goes where a much better second photo shows it."""
    darker = Lab(CLOTH.L - 3, CLOTH.a, CLOTH.b)
    rough = replace(loop_with(), covariance=isotropic(6.0))
    loop = take_round(SHELF, rough, MIX, photographed(darker, 0.8), day=DAY)
    assert pytest.approx(CLOTH.L - 3, abs=0.2) == cloth_of(loop).lab.L


def test_a_photo_as_it_is_marked_is_kept_once() -> None:
    """The sample of just these marks is found again; moved marks are another sample."""
    shot = SampleShot("abc", (100, 80), cloth=Rect(1, 1, 9, 9), sample=Rect(20, 1, 9, 9))
    seen = replace(judged_by_eye("too light", CLOTH), how=How.PHOTO)
    loop = take_round(SHELF, loop_with("too red"), MIX, seen, day=DAY, shot=shot)
    assert kept_as(loop, shot) == 2
    assert kept_as(loop, replace(shot, sample=Rect(21, 1, 9, 9))) == 0
    assert kept_as(loop, None) == 0
    assert loop.rounds[1].judged == seen


def test_the_expected_colour_stands_beside_the_cloth_of_the_photo() -> None:
    """Where a photo shows the cloth otherwise than it is believed to be, both move alike."""
    _, advice = advice_on(SHELF, loop_with("much too light"))
    shown = Lab(advice.cloth.L + 2, advice.cloth.a, advice.cloth.b - 1)
    moved = expected_beside(advice.after, advice.cloth, shown)
    assert pytest.approx(advice.after.dry.L + 2) == moved.L
    assert moved.b == pytest.approx(advice.after.dry.b - 1)


# --- refusals ------------------------------------------------------------------------------------


def test_no_advice_without_a_sample_or_its_paints() -> None:
    """No sample, a paint that has gone, a pot of nothing: each is said."""
    with pytest.raises(MendableError, match="No sample"):
        advice_on(SHELF, loop_with())
    gone = replace(SHELF, paints=tuple(p for p in SHELF.paints if p.id != MIX[0][0]))
    with pytest.raises(MendableError, match=MIX[0][0]):
        advice_on(gone, loop_with("too red"))
    with pytest.raises(MendableError, match="volume"):
        advice_on(SHELF, loop_with("too red"), pot=0.0)
    with pytest.raises(MendableError, match="room"):
        advice_on(SHELF, loop_with("too red"), tub=1.0)


def test_samples_are_counted() -> None:
    """After very many samples no more are taken."""
    loop = loop_with("too red")
    full = replace(loop, rounds=loop.rounds * 40)
    with pytest.raises(MendableError, match="40 samples"):
        take_round(SHELF, full, MIX, judged_by_eye("too red", CLOTH), day=DAY)


# --- wet and dry ---------------------------------------------------------------------------------


def test_drying_is_learnt_from_two_photos() -> None:
    """A stroke that is darker wet in one photo than dry in the other teaches its drying."""
    paint = SHELF.paint("clay-red-muted")
    dry = look_of_mix(SHELF, [(paint.id, 1)]).dry
    wet = Lab(dry.L - 6, dry.a + 2, dry.b + 2)
    photos = [
        (board([grey_lab(0.18), lab.triple]), (Reference.grey(mark(0), 0.18),), mark(1))
        for lab in (wet, dry)
    ]
    read = colour_in_photo(*photos[1])
    assert float(delta_e_2000(read.triple, dry.triple)) < 1.0
    learnt, drying = dried_in_photos(SHELF, paint.id, wet=photos[0], dry=photos[1])
    assert drying.off_after < drying.off_before
    assert learnt.paint(paint.id).own_finish is not None


def test_samples_kept_before_photos_told_of_the_cloth_are_read() -> None:
    """A loop without what its photos said of the cloth's doubt opens as it was, and goes on."""
    judged = replace(judged_by_eye("too light", CLOTH), cloth_covariance=isotropic(3.0))
    loop = take_round(SHELF, new_loop(KnownColour(CLOTH, isotropic(2.5), "")), MIX, judged, day=DAY)
    plain = json.loads(Document.of(loop).json)
    for kept in plain["rounds"]:
        assert kept.pop("cloth_covariance") is not None
    before = decoded(json.dumps(plain), SampleLoop)
    assert before == replace(loop, rounds=(replace(loop.rounds[0], cloth_covariance=None),))
    _, advice = advice_on(SHELF, before)
    assert advice.fresh.mixed == advice_on(SHELF, loop)[1].fresh.mixed
