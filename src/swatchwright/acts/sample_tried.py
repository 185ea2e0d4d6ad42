"""Whether a mix of a job has been tried: what the last sample of it came to."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress

from swatchwright.acts.sample_rounds import SAMPLES_PART, SampleLoop, tried_as
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.sheet.told import date_text
from swatchwright.shelf.jobs import Job

__all__ = ["tried_line"]


def tried_line(job: Job, mix: Sequence[tuple[str, float]]) -> str:
    """Say how near the last sample of a mix came, and when; empty where none was kept.

    Parameters
    ----------
    job
        The job with its samples.
    mix
        Ids and amounts of the mix; only their proportions count.
    """
    document = job.document(SAMPLES_PART)
    loop = None
    with suppress(MendableError):
        loop = None if document is None else document.read(SampleLoop)
    found = tried_as(loop, mix)
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
        "Tried: sample {number} was {off:.1f} off the cloth (give or take {doubt:.1f}), {day}.",
        number=number,
        off=one.delta_e,
        doubt=one.give_or_take,
        day=date_text(one.day),
    )
