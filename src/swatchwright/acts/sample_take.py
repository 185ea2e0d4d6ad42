"""Take the mix of a sample as the mix of a zone: what came home is what the piece is painted with.

It is kept by the act that keeps any mix, with its shares exactly as they were poured and with what
the samples taught as the colour to expect of it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from swatchwright.acts.job_bench import BenchPhoto, keep_mix
from swatchwright.acts.jobs import keep_document
from swatchwright.acts.labels import KEEP_SAMPLE, KEEP_SAMPLE_FOR_ZONE
from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.mixes_in_use import WHOLE_PIECE
from swatchwright.acts.poured import poured_recipe
from swatchwright.acts.recipes import (
    DEFAULT_VOLUME,
    MeasuredRecipe,
    Recipes,
)
from swatchwright.acts.sample import Advice, expected_beside
from swatchwright.acts.sample_known import TaughtPaint, noted
from swatchwright.acts.sample_learnt import check_rounds, expected_off, learn_from
from swatchwright.acts.sample_mixes import shares_of
from swatchwright.acts.sample_rounds import SAMPLES_PART, Round, SampleLoop
from swatchwright.acts.sample_taken import Taken, same_mix
from swatchwright.acts.shelf_used import UsedShelf
from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.mixing.learnt import Learnt
from swatchwright.mixing.remix import outlook
from swatchwright.shelf.jobs import Job, Marks
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store import job_rows
from swatchwright.shelf.store.history import Changes
from swatchwright.shelf.store.store import Store
from swatchwright.values import KnownColour, Lab

__all__ = [
    "keep_sample",
    "poured_after",
    "recipe_of_sample",
    "taken_so",
    "zone_of_samples",
]

_FROM = mark("the cloth of the samples")


def zone_of_samples(job: Job | None, loop: SampleLoop, at: str) -> str:
    """Say which zone the samples are for: the one at hand, unless only others want their colour.

    Parameters
    ----------
    job, loop
        The job, and its samples.
    at
        The zone that mixes are kept for.
    """
    zones = [] if job is None else [w.zone for w in job.wanted if w.colour.lab == loop.wanted]
    return at if at in zones or not zones else zones[0]


def poured_after(
    one: Round, added: Sequence[tuple[str, float]], pot: float | None = None
) -> tuple[tuple[str, float], ...]:
    """Give what a pot holds of each paint after an addition, ml.

    Parameters
    ----------
    one
        The sample that was brushed from it.
    added
        Ids and ml of what was added.
    pot
        ml that were in it before; as much as was mixed for the sample if None.
    """
    total = sum(ml for _, ml in one.mixed)
    factor = 1.0 if pot is None else pot / total
    held = {id_: ml * factor for id_, ml in one.mixed}
    for id_, ml in added:
        held[id_] = held.get(id_, 0.0) + ml
    return tuple(held.items())


def taken_so(taken: Taken, advice: Advice) -> bool | None:
    """Tell whether what was taken of a sample is what an advice on it says.

    Returns
    -------
    False if it was taken as it is; True for the pot after just this addition; None for another.
    """
    if not taken.added:
        return False
    steps = [(step.paint.id, step.ml) for step in advice.additions.steps]
    pot = sum(ml for _, ml in advice.pot)
    return True if same_mix(taken.mixed, poured_after(advice.last, steps, pot)) else None


def recipe_of_sample(
    shelf: Shelf,
    loop: SampleLoop,
    mixed: Sequence[tuple[str, float]],
    wanted: KnownColour,
    *,
    volume: float = DEFAULT_VOLUME,
) -> MeasuredRecipe:
    """Make the recipe of what was poured, with what the samples taught as its look.

    Parameters
    ----------
    shelf, loop
        The paints, and the samples; at least one.
    mixed
        Ids and amounts as they were poured; the shares are just theirs.
    wanted
        The colour that the samples are for.
    volume
        ml to measure out.

    Raises
    ------
    MendableError
        If a paint is not on the shelf any more, or the mix cannot be.
    """
    check_rounds(shelf, loop)
    look_of_mix(shelf, mixed)
    learnt = learn_from(shelf, loop)
    shares = dict(sorted(shares_of(mixed).items(), key=lambda row: -row[1]))
    taught = replace(shelf, paints=learnt.paints())
    dry, wet = _looks(taught, learnt, shares, wanted.lab)
    # As the samples showed them: whoever reckons with the recipe comes near to what was brushed.
    paints = tuple(taught.paint(id_) for id_ in shares)
    return poured_recipe(
        paints, tuple(shares.values()), dry=dry, wet=wet, wanted=wanted, volume=volume
    )


def _looks(taught: Shelf, learnt: Learnt, shares: dict[str, float], wanted: Lab) -> tuple[Lab, Lab]:
    """Give the dry colour to expect beside the cloth, and the wet one that goes with it."""
    dry = expected_beside(outlook(learnt, shares), learnt.cloth, wanted)
    computed = look_of_mix(taught, list(shares.items()))
    return dry, computed.wet.moved(computed.dry, dry)


def keep_sample(
    store: Store,
    id_: str,
    loop: SampleLoop,
    number: int,
    *,
    shelf: Shelf,
    zone: str = WHOLE_PIECE,
    added: Sequence[tuple[str, float]] = (),
    pot: float | None = None,
    others: Recipes | None = None,
    volume: float = DEFAULT_VOLUME,
    photo: BenchPhoto | None = None,
    read: Marks | None = None,
    most_paints: int = 3,
    used: UsedShelf | None = None,
) -> Changes:
    """Take the mix of a sample as the mix of a zone, in one edit.

    Parameters
    ----------
    store, id_
        Which job.
    loop
        Its samples; they are kept with it.
    number
        Which of them, from 1.
    shelf
        The paints it is of.
    zone
        The zone of the piece.
    added, pot
        What was added to the pot after the sample, and how much was in it; see `poured_after`.
    others
        What was found before any sample: it stays beside it, where it is for the same colour.
    volume
        ml to mix.
    photo, read, most_paints, used
        The bench, and which shelf is in use, as for `keep_mix`.

    Raises
    ------
    MendableError
        If there is no such job or sample, or a paint of it is not on the shelf any more.
    """
    if not 1 <= number <= len(loop.rounds):
        raise MendableError(
            say("There is no sample {number}.", number=number),
            say("The samples are numbered 1 to {many}.", many=len(loop.rounds)),
        )
    one = loop.rounds[number - 1]
    mixed = poured_after(one, added, pot) if added else one.mixed
    with store.editing("Keep the mix of a sample") as edit:
        job = job_rows.read_job(edit.connection, id_)
        wanted = _wanted(job, loop, others)
        measured = recipe_of_sample(shelf, loop, mixed, wanted, volume=volume)
        found = _beside(measured, wanted, others, volume)
        keep_mix(
            *(store, id_, found),
            choose=1,
            zone=zone,
            photo=photo,
            read=read,
            most_paints=most_paints,
            shelf=used,
        )
        taken = _taken(shelf, loop, number, mixed, added=added, zone=zone)
        rest = tuple(t for t in loop.taken if t.zone != zone)
        known = _same_tins(shelf, measured, loop, number)
        kept = replace(loop, taken=(*rest, taken), taught=(*loop.taught, *known))
        keep_document(store, id_, SAMPLES_PART, kept)
        label = KEEP_SAMPLE if zone == WHOLE_PIECE else KEEP_SAMPLE_FOR_ZONE
        edit.call(label.format(number=number, job=job.title, zone=zone))
        return edit.changes


def _same_tins(
    shelf: Shelf, measured: MeasuredRecipe, loop: SampleLoop, number: int
) -> tuple[TaughtPaint, ...]:
    """Note that the paints of a recipe are those of the shelf, as the samples showed them."""
    paints = measured.recipe.paints
    here = Shelf(shelf.name, tuple(shelf.paint(paint.id) for paint in paints))
    rows = noted(here, Shelf(shelf.name, paints), number)
    return tuple(row for row in rows if row not in loop.taught)


def _taken(
    shelf: Shelf,
    loop: SampleLoop,
    number: int,
    mixed: Sequence[tuple[str, float]],
    *,
    added: Sequence[tuple[str, float]],
    zone: str,
) -> Taken:
    """Note how near it came, or, of a pot that nothing was brushed from since, how near it should.

    A promise counts all that is not known, as the advice does that it followed.
    """
    one = loop.rounds[number - 1]
    if not added:
        return Taken(zone, number, tuple(mixed), one.delta_e, one.give_or_take)
    off = expected_off(shelf, loop, mixed)
    extra = tuple(added)
    return Taken(zone, number, tuple(mixed), off, added=True, extra=extra, reckoned=True)


def _wanted(job: Job, loop: SampleLoop, others: Recipes | None) -> KnownColour:
    """Give the colour of the samples as the job or the bench knows it, with where it is from."""
    known = [w.colour for w in job.wanted]
    if others is not None:
        known.insert(0, others.wanted)
    same = (colour for colour in known if colour.lab == loop.wanted)
    return next(same, KnownColour(loop.wanted, loop.covariance, _FROM))


def _beside(
    measured: MeasuredRecipe, wanted: KnownColour, others: Recipes | None, volume: float
) -> Recipes:
    """Put the mix of the sample before those that were found for the same colour."""
    if others is not None and others.wanted.lab == wanted.lab:
        return replace(others, recipes=(measured, *others.recipes), volume=volume)
    return Recipes(
        wanted=wanted,
        recipes=(measured,),
        shortfall=None,
        volume=volume,
        subsets_tried=0,
        proven_gap=None,
        why_first="",
        possible=True,
        notes=(),
    )
