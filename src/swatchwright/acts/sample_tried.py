"""Whether a mix of a job has been tried: what the last sample of it came to."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress

from swatchwright.acts.sample_known import TaughtPaint
from swatchwright.acts.sample_lessons import Lesson, is_whole
from swatchwright.acts.sample_rounds import SAMPLES_PART, SampleLoop, tried_as
from swatchwright.acts.sample_taken import Taken, same_mix
from swatchwright.colour.names import closeness
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.sheet.told import date_text
from swatchwright.shelf.jobs import Job

__all__ = ["lessons_in", "loop_of", "taken_for", "taught_in", "tried_line"]


def loop_of(job: Job | None) -> SampleLoop | None:
    """Give the samples of a job; None where there are none, or they cannot be read."""
    document = None if job is None else job.document(SAMPLES_PART)
    with suppress(MendableError):
        return None if document is None else document.read(SampleLoop)
    return None


def taught_in(job: Job | None) -> tuple[TaughtPaint, ...]:
    """Give which paints the samples of a job taught; none where it has no samples."""
    loop = loop_of(job)
    return () if loop is None else loop.taught


def lessons_in(job: Job | None) -> tuple[Lesson, ...]:
    """Give what the samples of a job taught its paints, one lesson upon another."""
    loop = loop_of(job)
    told = () if loop is None else (*loop.settled, *loop.lessons)
    return tuple(one for one in told if is_whole(one))


def taken_for(job: Job | None, zone: str) -> Taken | None:
    """Give from which sample the mix of a zone was taken; None where it is another mix.

    Parameters
    ----------
    job
        The job with its mixes and its samples.
    zone
        The zone of the piece.
    """
    chosen = None if job is None else job.chosen(zone)
    if chosen is None:
        return None
    mix = [(paint.paint, paint.share) for paint in chosen.paints]
    return _taken(loop_of(job), mix, zone)


def _taken(
    loop: SampleLoop | None, mix: Sequence[tuple[str, float]], zone: str | None = None
) -> Taken | None:
    if loop is None:
        return None
    there = (t for t in loop.taken if zone in {None, t.zone} and t.number <= len(loop.rounds))
    return next((one for one in there if same_mix(one.mixed, mix)), None)


def tried_line(job: Job, mix: Sequence[tuple[str, float]]) -> str:
    """Say how near the last sample of a mix came, and when; empty where none was kept.

    Parameters
    ----------
    job
        The job with its samples.
    mix
        Ids and amounts of the mix; only their proportions count.
    """
    loop = loop_of(job)
    found = tried_as(loop, mix)
    taken = _taken(loop, mix)
    if taken is not None and (found is None or found[0] <= taken.number) and loop is not None:
        return _found_line(taken, loop)
    if found is None:
        return ""
    number, one = found
    if one.misread:
        return say(
            "Sample {number} of it, {day}, was compared by a grey that was none.",
            number=number,
            day=date_text(one.day),
        )
    return say(
        "Tried: sample {number} was {off:.1f} off the cloth, {seen} (give or take {doubt:.1f}), "
        "{day}.",
        number=number,
        off=one.delta_e,
        seen=closeness(one.delta_e),
        doubt=one.give_or_take,
        day=date_text(one.day),
    )


def _found_line(taken: Taken, loop: SampleLoop) -> str:
    """Say by which sample a mix was found, and how near that came."""
    one = loop.rounds[taken.number - 1]
    if taken.added and not taken.reckoned:
        return say(
            "Found by sample {number} and what was then added to its pot, {day}; nothing was "
            "brushed from it since.",
            number=taken.number,
            day=date_text(one.day),
        )
    if taken.added:
        return say(
            "Found by sample {number} and what was then added to its pot, {day}; it should be "
            "within about {off:.1f} of the cloth ({seen}).",
            number=taken.number,
            day=date_text(one.day),
            off=taken.off,
            seen=closeness(taken.off),
        )
    if one.misread:
        return say(
            "Found by sample {number}, {day}, which was compared by a grey that was none.",
            number=taken.number,
            day=date_text(one.day),
        )
    return say(
        "Found by sample {number} beside the cloth, off by about {off:.1f}, {seen} (give or take "
        "{doubt:.1f}), {day}.",
        number=taken.number,
        off=taken.off,
        seen=closeness(taken.off),
        doubt=taken.give_or_take,
        day=date_text(one.day),
    )
