"""What the samples taught: the paints as they are believed to be by now, and how sure that is."""

from __future__ import annotations

from dataclasses import dataclass, replace

from swatchwright.acts.confidence import confidence_in
from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.sample_judged import How
from swatchwright.acts.sample_known import known_to, noted
from swatchwright.acts.sample_mixes import shares_of
from swatchwright.acts.sample_rounds import SampleLoop, cloth_of
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.mixing.learn import Tried, learn
from swatchwright.mixing.learnt import Learnt
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import KnownColour

__all__ = ["Taught", "check_rounds", "knows", "learn_from", "learnt_shelf", "taught_by"]


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


def learn_from(shelf: Shelf, loop: SampleLoop) -> Learnt:
    """Learn from the rounds that the shelf has not learnt from, and from the last.

    What paints learnt that are no longer on the bench is learnt again.
    """
    known = known_to(shelf, loop.taught)
    last = len(loop.rounds)
    rounds = [r for n, r in enumerate(loop.rounds, 1) if not r.kept or n > known or n == last]
    tried = [
        Tried(shares_of(r.mixed), r.vector, r.covariance, by_photo=r.how is How.PHOTO)
        for r in rounds
    ]
    return learn(shelf.paints, cloth_of(loop), tried)


def knows(shelf: Shelf, loop: SampleLoop) -> bool:
    """Tell whether the paints of a shelf have learnt from all samples, and still know it."""
    known = known_to(shelf, loop.taught)
    return all(one.kept and n <= known for n, one in enumerate(loop.rounds, 1))


def learnt_shelf(shelf: Shelf, loop: SampleLoop) -> tuple[Shelf, SampleLoop]:
    """Give the shelf with what the samples taught of its paints, and the loop that knows it.

    Raises
    ------
    MendableError
        If a paint of a sample is not on the shelf any more, or there is no sample.
    """
    check_rounds(shelf, loop)
    learnt = replace(shelf, paints=learn_from(shelf, loop).paints())
    rounds = tuple(replace(r, kept=True) for r in loop.rounds)
    taught = (*loop.taught, *noted(shelf, learnt, len(rounds)))
    return learnt, replace(loop, rounds=rounds, taught=taught)


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
    names = tuple(new.name for old, new in pairs if new is not old)
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
