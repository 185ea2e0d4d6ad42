"""The sample loop: brush a sample, hold it to the cloth, learn from it, and say what to add.

What is believed of the paints is worked out anew from all rounds, so that taking one back takes
back what was learnt from it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import isfinite

from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.paint import dry_alike
from swatchwright.acts.recipes import check_volume
from swatchwright.acts.sample_adding import pot_of, to_add
from swatchwright.acts.sample_in_photo import colour_in_photo
from swatchwright.acts.sample_learnt import check_rounds, learn_from, learnt_shelf
from swatchwright.acts.sample_mixes import (
    SAMPLE_VOLUME,
    NextMix,
    mixes_beside,
    next_mix,
    shares_of,
)
from swatchwright.acts.sample_rounds import (
    Round,
    SampleLoop,
    Stop,
    best_of_last,
    stop_of,
)
from swatchwright.acts.sample_why import Why, costs_of_adding, hardly_nearer, told_nearer, why_fresh
from swatchwright.colour.difference import ACCEPTED
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.mixing.learnt import Learnt
from swatchwright.mixing.mend import Additions, pot_colour
from swatchwright.mixing.remix import MOST_PAINTS, Outlook, Remix, outlook, remix
from swatchwright.mixing.search import find_recipes
from swatchwright.paint.fit.drying import Drying
from swatchwright.photo.image import Photo
from swatchwright.photo.references import Reference
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab, Rect

__all__ = [
    "SAMPLE_VOLUME",
    "Advice",
    "NextMix",
    "advice_on",
    "dried_in_photos",
    "expected_beside",
    "learnt_shelf",
    "stripes_beside",
]

_ROOM = 2.0
_BEGINNINGS = 8
_MOST_SOUGHT = 3


@dataclass(frozen=True, slots=True)
class Advice:
    """What to do after a sample.

    Parameters
    ----------
    last
        The sample; of several that were looked at together, the one nearest to the cloth.
    cloth
        The colour of the cloth, as it is believed to be by now.
    stop
        Why no further one is needed; None where one is.
    accepted
        Whether most would accept it as it is.
    additions
        What to add to the pot, the least first.
    pot
        Ids and ml of what the pot holds.
    turns
        Computed colours of the pot as it is and after each addition, which tell what each does.
    after
        What to expect of the pot after that.
    fresh
        The mix to take instead for a new sample or the next batch.
    beside
        Mixes to brush out beside it, one to either side of where it is least sure.
    why
        Why the fresh mix is better than adding; empty where adding does as well.
    costs
        What speaks against adding, even where a fresh mix is no better.
    unsure
        Whether neither is likely to be nearer than the sample is: too much is not known.
    wider
        A fresh mix of one paint more than was asked for, where it should come clearly nearer.
    """

    last: Round
    cloth: Lab
    stop: Stop | None
    accepted: bool
    additions: Additions
    pot: tuple[tuple[str, float], ...]
    turns: tuple[Lab, ...]
    after: Outlook
    fresh: NextMix
    beside: tuple[NextMix, ...]
    why: tuple[Why, ...]
    costs: tuple[Why, ...]
    unsure: bool
    wider: NextMix | None = None

    @property
    def better_fresh(self) -> bool:
        """Whether the fresh mix is better than adding."""
        return bool(self.why)

    @property
    def leave(self) -> bool:
        """Whether a good sample is better left: whatever follows is hardly likely to be nearer."""
        wider = self.wider is not None and self.wider.outlook.usual < self.last.delta_e
        return self.accepted and self.unsure and not wider and not self.last.misread


def advice_on(
    shelf: Shelf,
    loop: SampleLoop,
    *,
    pot: float | None = None,
    tub: float | None = None,
    fresh: float = SAMPLE_VOLUME,
    without: frozenset[str] = frozenset(),
    most_paints: int = MOST_PAINTS,
) -> tuple[SampleLoop, Advice]:
    """Say what the last sample asks for.

    Parameters
    ----------
    shelf
        The paints.
    loop
        The samples; the last one is to be put right, or the best of those looked at with it.
    pot
        ml of that mix that are to be put right; as much as was mixed if None.
    tub
        How full the pot may get, ml; twice what is in it if None.
    fresh
        ml of a fresh mix.
    without
        Ids of paints that may not be added.
    most_paints
        How many paints the fresh mix may have; where one more would bring it clearly nearer, that
        is told beside it.

    Returns
    -------
    The loop with what is proposed written to its last round, and the advice.

    Raises
    ------
    MendableError
        If there is no sample, its paints are not on the shelf, or a volume cannot be.
    """
    check_rounds(shelf, loop)
    check_volume(fresh)
    last = best_of_last(loop)
    learnt = learn_from(shelf, loop)
    held = pot_of(learnt, last, pot)
    room = held.volume * _ROOM if tub is None else tub
    if not isfinite(room):
        raise MendableError(say("The size of the pot is no number."), say("Give it in ml."))
    added, after = to_add(learnt, held, room, without)
    own = [paint.id for paint in held.paints]
    may = [paint.id for paint in shelf.paints if paint.id not in without]
    water = held.paints[0].finish.waterborne
    also = _others(learnt, may, water=water, most=most_paints)
    again = remix(learnt, own, may, also=also, most=most_paints)
    new = next_mix(learnt, again, fresh)
    wider = None
    if most_paints < MOST_PAINTS and stop_of(last) is None:
        more = next_mix(learnt, remix(learnt, own, may, also=also, most=most_paints + 1), fresh)
        several = len(more.mixed) > max(most_paints, len(new.mixed))
        wider = more if several and told_nearer(more.outlook, new.outlook) else None
    advice = Advice(
        last=last,
        cloth=learnt.cloth,
        stop=stop_of(last),
        accepted=last.delta_e <= ACCEPTED,
        additions=added,
        pot=tuple((p.id, ml) for p, ml in zip(held.paints, held.volumes, strict=True)),
        turns=(pot_colour(held), *(step.after for step in added.steps)),
        after=after,
        fresh=new,
        wider=wider,
        beside=mixes_beside(learnt, again, fresh),
        why=why_fresh(last, held, added, after, new.outlook),
        costs=costs_of_adding(last, held, added, after, new.outlook),
        unsure=hardly_nearer(last, after, new.outlook),
    )
    proposed = replace(last, added=tuple((s.paint.id, s.ml) for s in added.steps))
    rounds = tuple(proposed if one is last else one for one in loop.rounds)
    return replace(loop, rounds=rounds), advice


def _others(learnt: Learnt, may: Sequence[str], *, water: bool, most: int) -> list[tuple[str, ...]]:
    """Give the sets of paints that a search of the whole shelf would now begin with."""
    allowed = set(may)
    paints = [p for p in learnt.paints() if p.id in allowed and p.finish.waterborne is water]
    if len(paints) < 2:
        return []
    found = find_recipes(
        learnt.cloth, paints, keep=_BEGINNINGS, most_paints=min(most, _MOST_SOUGHT)
    )
    return [tuple(paint.id for paint in recipe.paints) for recipe in found.recipes]


def stripes_beside(
    shelf: Shelf, loop: SampleLoop, mixed: Sequence[tuple[str, float]], *, volume: float
) -> tuple[NextMix, ...]:
    """Say what to brush out beside a mix in the same photo, so that one photo teaches the most.

    Parameters
    ----------
    shelf, loop
        The paints, and the samples so far; there may be none.
    mixed
        Ids and amounts of the mix.
    volume
        ml of each.

    Returns
    -------
    A mix of the same paints to either side of where the mix is least sure; none for one paint.

    Raises
    ------
    MendableError
        If the mix or the volume cannot be.
    """
    look_of_mix(shelf, mixed)
    check_volume(volume)
    shares = shares_of(mixed)
    learnt = learn_from(shelf, loop)
    return mixes_beside(learnt, Remix(shares, outlook(learnt, shares)), volume)


def expected_beside(outlook_: Outlook, believed: Lab, cloth: Lab) -> Lab:
    """Give the colour to expect as it will stand beside a cloth that a photo shows otherwise.

    Parameters
    ----------
    outlook_
        What to expect of a mix.
    believed, cloth
        The cloth as it is believed to be, and as the photo shows it.
    """
    return cloth.moved(believed, outlook_.dry)


def dried_in_photos(
    shelf: Shelf,
    id_: str,
    *,
    wet: tuple[Photo, Sequence[Reference], Rect],
    dry: tuple[Photo, Sequence[Reference], Rect],
) -> tuple[Shelf, Drying]:
    """Learn how a paint dries from two photos of one stroke, wet and dry.

    Parameters
    ----------
    shelf, id_
        The paint.
    wet, dry
        The photo, the greys and chips in it, and where the stroke is.

    Raises
    ------
    MendableError
        If a mark cannot be read, or the two colours are not of one stroke of this paint.
    """
    return dry_alike(shelf, id_, wet=colour_in_photo(*wet), dry=colour_in_photo(*dry))
