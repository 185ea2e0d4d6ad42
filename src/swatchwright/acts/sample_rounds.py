"""The rounds of a sample loop: what was mixed, and how it differed from the cloth when dry.

All are plain values, kept with a job as its part “samples”.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import StrEnum

from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.sample_judged import How, Judged, picked_by_eye
from swatchwright.acts.sample_known import TaughtPaint
from swatchwright.acts.sample_lessons import Lesson
from swatchwright.acts.sample_marks import SampleShot
from swatchwright.acts.sample_taken import Taken
from swatchwright.colour.difference import JUST_SEEN, delta_e_2000
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.mixing.fan import Neighbour
from swatchwright.mixing.readings import contradict, one_reading
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Covariance, KnownColour, Lab, isotropic

__all__ = [
    "SAMPLES_PART",
    "Round",
    "SampleLoop",
    "Stop",
    "best_of_last",
    "cloth_of",
    "cloths_apart",
    "kept_as",
    "learn_from_pick",
    "new_loop",
    "stop_of",
    "take_round",
    "tried_as",
]

SAMPLES_PART = "samples"
"""Name of the part of a job in which the loop is kept."""

_MOST_ROUNDS = 40

_SAME_MIX = 0.015
"""Shares by which a sample measured to 0.1 ml may differ from the mix it is a sample of."""

# How well a cloth is known whose colour is given without its doubt: it is seldom the very cloth.
_CLOTH_DOUBT = 4.0


class Stop(StrEnum):
    """Why no further sample is needed."""

    UNSEEN = "unseen"
    UNTOLD = "untold"


@dataclass(frozen=True, slots=True)
class Round:
    """A sample that was brushed and compared with the cloth.

    Parameters
    ----------
    day
        When, as in 2026-03-01.
    mixed
        Ids and ml of all that was in it.
    how, said
        How it was compared, and what was said of it.
    vector, covariance
        The sample less the cloth (L*, a*, b*) and the uncertainty of that.
    delta_e, give_or_take
        The same as CIEDE2000, and its usual error.
    cloth, sample
        Both colours, as they are shown.
    added
        Ids and ml of what was then proposed to add.
    sitting
        With which others it was brushed and looked at, counted from 1.
    kept
        Whether the shelf has learnt from it, so that it need not be learnt again.
    misread
        Whether the grey in its photo was plainly none.
    shot
        Its photo and what was marked in it; None by eye.
    cloth_covariance
        Uncertainty of the cloth's own colour in that photo, in squared Lab units; None by eye.
    """

    day: str
    mixed: tuple[tuple[str, float], ...]
    how: How
    vector: tuple[float, float, float]
    covariance: Covariance
    delta_e: float
    give_or_take: float
    cloth: Lab
    sample: Lab
    said: str = ""
    added: tuple[tuple[str, float], ...] = ()
    sitting: int = 1
    kept: bool = False
    misread: bool = False
    shot: SampleShot | None = None
    cloth_covariance: Covariance | None = None

    def same_as(self, other: Round) -> bool:
        """Tell whether it is the same sample, whatever was proposed or learnt since."""
        return replace(self, added=(), kept=False) == replace(other, added=(), kept=False)

    @property
    def judged(self) -> Judged:
        """The comparison that it was kept with, without what was wrong with its photo."""
        return Judged(
            *(self.how, self.vector, self.covariance, self.delta_e, self.give_or_take),
            *(self.cloth, self.sample, self.said),
            cloth_covariance=self.cloth_covariance,
        )


@dataclass(frozen=True, slots=True)
class SampleLoop:
    """All samples for one wanted colour.

    Parameters
    ----------
    wanted, covariance
        The colour as it was read before any sample, and its uncertainty.
    rounds
        The samples in their order.
    taken
        Whose mix was taken as that of a zone, the last for each.
    taught
        Which paints have learnt from these samples, or from those before them, in that order.
    lessons
        What these samples taught each paint, and what it was before.
    settled
        What samples before these taught, which stays with the paints.
    """

    wanted: Lab
    covariance: Covariance
    rounds: tuple[Round, ...] = ()
    taken: tuple[Taken, ...] = ()
    taught: tuple[TaughtPaint, ...] = ()
    lessons: tuple[Lesson, ...] = ()
    settled: tuple[Lesson, ...] = ()


def new_loop(wanted: KnownColour) -> SampleLoop:
    """Begin a loop for a wanted colour."""
    given = wanted.covariance
    return SampleLoop(wanted.lab, isotropic(_CLOTH_DOUBT) if given is None else given)


def stop_of(judged: Judged | Round) -> Stop | None:
    """Say why no further sample is needed, or None where one is.

    The eye goes first: what half of all people cannot see need not be put right; then what the
    comparison cannot tell from nothing cannot be.
    """
    if judged.delta_e < JUST_SEEN:
        return Stop.UNSEEN
    return Stop.UNTOLD if judged.delta_e < judged.give_or_take else None


def take_round(
    shelf: Shelf,
    loop: SampleLoop,
    mixed: Sequence[tuple[str, float]],
    judged: Judged,
    *,
    day: str,
    beside: bool = False,
    shot: SampleShot | None = None,
) -> SampleLoop:
    """Keep a sample that was brushed, dried and compared with the cloth.

    Parameters
    ----------
    shelf
        Where its paints are.
    loop
        The samples so far.
    mixed
        Ids and ml of all that was in it.
    judged
        How it differs from the cloth.
    day
        When, as in 2026-03-01.
    beside
        Whether it was brushed and looked at together with the last one.
    shot
        Its photo and what is marked in it, where it was compared in one.

    Raises
    ------
    MendableError
        If the mix cannot be, or there are very many samples already.
    """
    look_of_mix(shelf, mixed)
    if len(loop.rounds) >= _MOST_ROUNDS:
        raise MendableError(
            say("{many} samples have been kept for this colour.", many=_MOST_ROUNDS),
            say("Take the early ones back, or begin anew with another mix."),
        )
    new = Round(
        day=day,
        mixed=tuple((id_, float(ml)) for id_, ml in mixed),
        how=judged.how,
        vector=judged.vector,
        covariance=judged.covariance,
        delta_e=judged.delta_e,
        give_or_take=judged.give_or_take,
        cloth=judged.cloth,
        sample=judged.sample,
        said=judged.said,
        sitting=_sitting(loop, beside=beside),
        misread=judged.misread,
        shot=shot if judged.how is How.PHOTO else None,
        cloth_covariance=judged.cloth_covariance,
    )
    return replace(loop, rounds=(*loop.rounds, new))


def _sitting(loop: SampleLoop, *, beside: bool) -> int:
    if not loop.rounds:
        return 1
    return loop.rounds[-1].sitting + (not beside)


def best_of_last(loop: SampleLoop) -> Round:
    """Give the sample of the last sitting that is nearest to the cloth: it is to be put right."""
    sitting = loop.rounds[-1].sitting
    return min((r for r in loop.rounds if r.sitting == sitting), key=lambda r: r.delta_e)


def kept_as(loop: SampleLoop | None, shot: SampleShot | None) -> int:
    """Give the number, from 1, of the sample that was kept of a photo as it is marked; or 0."""
    rounds = () if loop is None or shot is None else loop.rounds
    return next((n for n, one in reversed(list(enumerate(rounds, 1))) if one.shot == shot), 0)


def tried_as(loop: SampleLoop | None, mix: Sequence[tuple[str, float]]) -> tuple[int, Round] | None:
    """Give the last sample of a mix with its number from 1; None where it has not been tried.

    Parameters
    ----------
    loop
        The samples of a job; None for none.
    mix
        Ids and amounts of the mix; only their proportions count.
    """
    rounds = () if loop is None else loop.rounds
    wanted = _proportions(mix)
    for number, one in reversed(list(enumerate(rounds, start=1))):
        brushed = _proportions(one.mixed)
        ids = wanted.keys() | brushed.keys()
        if all(abs(wanted.get(i, 0.0) - brushed.get(i, 0.0)) <= _SAME_MIX for i in ids):
            return number, one
    return None


def _proportions(mix: Sequence[tuple[str, float]]) -> dict[str, float]:
    total = sum(amount for _, amount in mix)
    return {id_: amount / total for id_, amount in mix if amount > 0}


def cloth_of(loop: SampleLoop) -> KnownColour:
    """Give the colour of the cloth as all photos of it together show it.

    Of a sitting one photo counts, and none whose grey was none, nor that from which the wanted
    colour itself was read.
    """
    first = KnownColour(loop.wanted, loop.covariance, "")
    shown = {
        one.sitting: KnownColour(one.cloth, one.cloth_covariance, "")
        for one in loop.rounds
        if one.how is How.PHOTO and not one.misread and one.cloth != loop.wanted
    }
    return one_reading(first, list(shown.values()))


def cloths_apart(judged: Judged, wanted: KnownColour) -> float | None:
    """Give how far apart, CIEDE2000, two photos of one cloth are; None within their doubts.

    Parameters
    ----------
    judged
        The sample beside the cloth; by eye there is no second photo.
    wanted
        The colour of the cloth as it was read before.
    """
    if not contradict(KnownColour(judged.cloth, judged.cloth_covariance, ""), wanted):
        return None
    return float(delta_e_2000(judged.cloth.triple, wanted.lab.triple))


def learn_from_pick(shelf: Shelf, loop: SampleLoop, picked: Neighbour, *, day: str) -> SampleLoop:
    """Keep a mix that was picked from a fan: brushed and dried, it looks like the cloth.

    Raises
    ------
    MendableError
        As `take_round` does.
    """
    mixed = [(p.id, ml) for p, ml in zip(picked.paints, picked.ml, strict=True)]
    return take_round(shelf, loop, mixed, picked_by_eye(loop.wanted), day=day)
