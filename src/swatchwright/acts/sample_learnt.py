"""What the samples taught: the paints as they are believed to be by now, and how sure that is."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from swatchwright.acts.confidence import confidence_in
from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.sample_judged import How
from swatchwright.acts.sample_known import known_to, noted
from swatchwright.acts.sample_lessons import (
    Stand,
    evidence_mark,
    lessons_of,
    settled,
    stand_of,
    untaught,
)
from swatchwright.acts.sample_mixes import shares_of
from swatchwright.acts.sample_rounds import Round, SampleLoop, cloth_of
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.mixing.learn import Tried, learn
from swatchwright.mixing.learnt import Learnt
from swatchwright.mixing.remix import outlook
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store.paint_rows import paint_bytes
from swatchwright.values import KnownColour

__all__ = [
    "Taught",
    "begun_anew",
    "check_rounds",
    "expected_off",
    "knows",
    "learn_from",
    "learnt_shelf",
    "mark_of",
    "taken_back",
    "taught_by",
    "would_teach",
]


@dataclass(frozen=True, slots=True)
class Taught:
    """What the paints of a shelf have learnt.

    Parameters
    ----------
    paints
        The names of those that are now believed to be otherwise, or surer.
    sample
        The number of the last sample, by whose mix it is told how sure they are.
    before, after
        How far that mix usually dries from what is computed, CIEDE2000.
    """

    paints: tuple[str, ...]
    sample: int
    before: float
    after: float


def mark_of(one: Round) -> str:
    """Give the mark of what a sample says; see `evidence_mark`."""
    return evidence_mark(shares_of(one.mixed), one.how, one.vector, one.covariance)


def learn_from(shelf: Shelf, loop: SampleLoop) -> Learnt:
    """Learn from all samples, each once, beginning from the paints as they were before them.

    Where what a paint was before is not known any more, those that it may have learnt from do not
    count again, but for the last one: it is what is to be put right.
    """
    ground = untaught(shelf, loop.lessons)
    held = _held(ground, loop)
    rounds = _once(loop.rounds)
    told = [one for one in rounds if mark_of(one) not in held]
    return _learn(ground, loop, told or rounds[-1:])


def _learn(ground: Shelf, loop: SampleLoop, rounds: Sequence[Round]) -> Learnt:
    tried = [
        Tried(shares_of(r.mixed), r.vector, r.covariance, by_photo=r.how is How.PHOTO)
        for r in rounds
    ]
    return learn(ground.paints, cloth_of(loop), tried)


def _once(rounds: Sequence[Round]) -> list[Round]:
    """Leave out what says just the same as a later one: looked at twice, it says it once."""
    marks = {mark_of(one): place for place, one in enumerate(rounds)}
    return [rounds[place] for place in sorted(marks.values())]


def _held(ground: Shelf, loop: SampleLoop) -> set[str]:
    """Give the marks of the samples that the paints hold already and cannot be freed of."""
    held: set[str] = set()
    paints = {paint.id: paint for paint in ground.paints}
    for lesson in (*loop.lessons, *loop.settled):
        paint = paints.get(lesson.id)
        if paint is not None and stand_of(paint, lesson) is not Stand.BEFORE:
            held.update(lesson.samples)
    if not loop.lessons:
        # Taught before it was noted what the paints had been.
        known = known_to(ground, loop.taught)
        held |= {mark_of(r) for n, r in enumerate(loop.rounds, 1) if r.kept and n <= known}
    return held


def knows(shelf: Shelf, loop: SampleLoop) -> bool:
    """Tell whether the paints of a shelf hold just what the samples say, so that none is news."""
    marks = {mark_of(one) for one in loop.rounds}
    paints = {paint.id: paint for paint in shelf.paints}
    held = _held(untaught(shelf, loop.lessons), loop)
    if loop.lessons:
        own = [(paints.get(one.id), one) for one in loop.lessons]
        taught = {mark for _, lesson in own for mark in lesson.samples}
        there = all(p is None or stand_of(p, one) is not Stand.BEFORE for p, one in own)
        return there and taught - held == marks - held
    return marks <= held


def learnt_shelf(shelf: Shelf, loop: SampleLoop) -> tuple[Shelf, SampleLoop]:
    """Give the shelf with what the samples taught of its paints, and the loop that knows it.

    Taught again, it is the same shelf: what the samples say counts once.

    Raises
    ------
    MendableError
        If a paint of a sample is not on the shelf any more, or there is no sample.
    """
    check_rounds(shelf, loop)
    return _taught(shelf, loop)


def taken_back(shelf: Shelf, loop: SampleLoop) -> tuple[Shelf, SampleLoop]:
    """Take the last sample back, and from the paints what it taught them.

    Returns
    -------
    The shelf, the very same one where the sample had taught it nothing, and the loop without it.
    """
    if not loop.rounds:
        return shelf, loop
    gone = mark_of(loop.rounds[-1])
    rest = replace(loop, rounds=loop.rounds[:-1])
    if not any(gone in lesson.samples for lesson in loop.lessons):
        return shelf, rest
    return _taught(shelf, rest)


def begun_anew(loop: SampleLoop) -> SampleLoop:
    """Forget all samples, as for another colour; what they taught stays with the paints."""
    kept = settled(loop.lessons, loop.settled)
    return replace(loop, rounds=(), lessons=(), settled=kept)


def _taught(shelf: Shelf, loop: SampleLoop) -> tuple[Shelf, SampleLoop]:
    ground = untaught(shelf, loop.lessons)
    held = _held(ground, loop)
    fresh = [one for one in _once(loop.rounds) if mark_of(one) not in held]
    learnt = ground
    if fresh:
        learnt = replace(shelf, paints=_learn(ground, loop, fresh).paints())
    lessons = lessons_of(ground, learnt, [mark_of(one) for one in fresh])
    # A paint that cannot be freed of what it learnt keeps its lesson.
    new = {one.id for one in lessons}
    paints = {paint.id: paint for paint in ground.paints}
    stays = tuple(
        one
        for one in loop.lessons
        if one.id not in new
        and one.id in paints
        and stand_of(paints[one.id], one) is not Stand.BEFORE
    )
    rounds = tuple(replace(r, kept=True) for r in loop.rounds)
    rows = (*noted(ground, learnt, len(rounds)), *noted(shelf, learnt, len(rounds)))
    rows = tuple(row for row in dict.fromkeys(rows) if row.id in new)
    taught = (*loop.taught, *(row for row in rows if row not in loop.taught))
    return learnt, replace(loop, rounds=rounds, taught=taught, lessons=(*stays, *lessons))


def expected_off(shelf: Shelf, loop: SampleLoop, mixed: Sequence[tuple[str, float]]) -> float:
    """Say how far off the cloth a mix will usually be when dry, CIEDE2000, for all not known.

    This is the one figure that is promised of a mix that follows from samples, wherever it is told.

    Parameters
    ----------
    shelf, loop
        The paints, and the samples; at least one.
    mixed
        Ids and amounts of the mix.
    """
    return outlook(learn_from(shelf, loop), shares_of(mixed)).usual


def would_teach(shelf: Shelf, loop: SampleLoop) -> Taught | None:
    """Say beforehand what teaching would change; None where the paints know it all.

    Raises
    ------
    MendableError
        As `learnt_shelf` does.
    """
    if knows(shelf, loop):
        return None
    return taught_by(shelf, learnt_shelf(shelf, loop)[0], loop)


def taught_by(before: Shelf, after: Shelf, loop: SampleLoop) -> Taught:
    """Say which paints have learnt from the samples, and how much surer their mix is by that.

    Parameters
    ----------
    before, after
        The shelf as it was, and as `learnt_shelf` gave it.
    loop
        The samples; at least one.
    """
    pairs = zip(before.paints, after.paints, strict=True)
    names = tuple(new.name for old, new in pairs if paint_bytes(new) != paint_bytes(old))
    return Taught(names, len(loop.rounds), *(_doubt(one, loop) for one in (before, after)))


def _doubt(shelf: Shelf, loop: SampleLoop) -> float:
    look = look_of_mix(shelf, loop.rounds[-1].mixed)
    return confidence_in(KnownColour(look.dry, None, ""), look.paints, look.shares).paints


def check_rounds(shelf: Shelf, loop: SampleLoop) -> None:
    """Refuse samples that nothing can be learnt from.

    Raises
    ------
    MendableError
        If there are none, or a paint of one is not on the shelf any more.
    """
    if not loop.rounds:
        raise MendableError(
            say("No sample has been kept yet."), say("Brush one, dry it and compare it.")
        )
    for one in loop.rounds:
        for id_, _ in one.mixed:
            shelf.paint(id_)
