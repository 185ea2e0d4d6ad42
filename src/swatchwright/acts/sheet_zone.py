"""A zone of a recipe sheet: one mix with its amounts, its look, its code and how sure it is."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import reduce

from swatchwright.acts.amounts_whole import pours_told
from swatchwright.acts.client_wish import ClientWish, Stands
from swatchwright.acts.confidence import confidence_in
from swatchwright.acts.finish_values import Look
from swatchwright.acts.known import known_of
from swatchwright.acts.mix import MixLook, look_of_mix, own_colours
from swatchwright.acts.recipes import check_volume
from swatchwright.acts.sheet_over import over_mix
from swatchwright.acts.sheet_wish import wish_words
from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.names import closeness
from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.measures.kitchen import in_spoons
from swatchwright.measures.shares import rounded_amounts
from swatchwright.mixing.pour import pouring_order
from swatchwright.mixing.recipe import Parts, Recipe, can_be_counted
from swatchwright.paint.layers import Stack
from swatchwright.paint.paints import HowKnown, Paint
from swatchwright.photo.origin import origin_words
from swatchwright.piece.names import zone_word
from swatchwright.sheet.code import CodePaint, CodeRecipe, write_code
from swatchwright.sheet.content import Ending, PaintLine, Units, Zone
from swatchwright.sheet.told import amount_text, spoons_text
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import KnownColour

__all__ = ["Mix", "zone_of"]

_SAMPLE = mark(
    "Print and screen only come near these colours. Brush a sample on card, let it dry, and hold "
    "it to the cloth before you mix the batch."
)
_INVENTED = mark("The paints are invented, so the figures say nothing of any real paint.")
_KNOWN = {
    HowKnown.MEASURED: mark("measured with an instrument"),
    HowKnown.FITTED: mark("fitted from brush-outs"),
    HowKnown.GUESSED: mark("guessed from little"),
    HowKnown.INVENTED: mark("invented"),
}


@dataclass(frozen=True, slots=True)
class Mix:
    """What a zone is made from.

    Parameters
    ----------
    parts
        Ids and exact amounts; only their proportions count.
    shelf
        Where these paints are, and those of the layers.
    wanted
        The colour that is wanted; None where none was given.
    layers
        What goes over it.
    zone
        Its name; empty for the whole piece.
    title
        The piece, for the code.
    day, batch
        When it was mixed and the number of the batch, for the code.
    volume, volume_from
        ml, and where that comes from, in words.
    changed
        What is to be said of a paint, by its id.
    counts
        Whole parts that come near the exact amounts; None where these are the parts themselves.
    tried
        How near a sample of it came, in words; empty where it has not been tried.
    on
        The parts of the piece that have it; none where these are not known.
    asked
        What the client wants now in place of the wanted colour, and how far that has come.
    """

    parts: Sequence[tuple[str, float]]
    shelf: Shelf
    wanted: KnownColour | None = None
    layers: Stack = field(default_factory=Stack)
    zone: str = ""
    title: str = ""
    day: str = ""
    batch: int | None = None
    volume: float = 500.0
    volume_from: str = ""
    changed: dict[str, str] = field(default_factory=dict)
    counts: Sequence[float] | None = None
    tried: str = ""
    on: tuple[str, ...] = ()
    asked: tuple[ClientWish, Stands | None] | None = None

    @property
    def by_parts(self) -> list[tuple[str, float]]:
        """Ids and parts, as one would count them."""
        counts = [amount for _, amount in self.parts] if self.counts is None else self.counts
        return [(id_, count) for (id_, _), count in zip(self.parts, counts, strict=True)]


def zone_of(mix: Mix, units: Units) -> Zone:
    """Work out all that a sheet says of a zone.

    Raises
    ------
    MendableError
        If the mix, a layer or the volume cannot be.
    """
    check_volume(mix.volume)
    look = look_of_mix(mix.shelf, mix.parts)
    over = over_mix(mix.shelf, mix.parts, mix.layers, mix.on)
    finished = None if over.look is None else over.look.steps[-1].dry
    ml = rounded_amounts([parts for _, parts in mix.parts], mix.volume)
    order = sorted(range(len(ml)), key=lambda i: -look.shares[i])
    lines = _lines(mix, look, ml, units)
    in_parts = can_be_counted([count for _, count in mix.by_parts], look.shares)
    return Zone(
        name=zone_word(mix.zone),
        wanted=None if mix.wanted is None else mix.wanted.lab,
        dry=look.dry,
        wet=look.wet,
        finished=finished,
        apart=_apart(mix.wanted, look),
        apart_in_parts=_apart_in_parts(mix, look) if in_parts else None,
        in_parts=in_parts,
        paints=tuple(lines[i] for i in order),
        volume=round(mix.volume, 1),
        volume_from=mix.volume_from,
        pour=_pour(look, ml),
        finish=over.words,
        minding=over.minding,
        trust=_trust(mix, look, over.looks),
        tried=mix.tried,
        sample=(mix.tried or _usual(mix, look),),
        check=(say(_SAMPLE),),
        ends=tuple(Ending(parts, seen.steps[-1].dry) for parts, seen in over.ends),
        wish=wish_words(mix.asked, look.dry, finished, by_part=bool(over.ends)),
        code=_code(mix, look),
    )


def _apart(wanted: KnownColour | None, look: MixLook) -> float | None:
    return None if wanted is None else float(delta_e_2000(wanted.lab.triple, look.dry.triple))


def _apart_in_parts(mix: Mix, look: MixLook) -> float | None:
    """Give how far off the mix is when it is poured by its whole parts."""
    return _apart(mix.wanted, look if mix.counts is None else look_of_mix(mix.shelf, mix.by_parts))


def _lines(mix: Mix, look: MixLook, ml: Sequence[float], units: Units) -> list[PaintLine]:
    owned = own_colours(look.paints)
    rows = zip(look.paints, mix.by_parts, look.shares, ml, owned, strict=True)
    return [
        PaintLine(
            id=paint.id,
            name=paint.name,
            parts=parts,
            share=share,
            ml=amount,
            grams=None if paint.density is None else round(amount * paint.density, 1),
            spoons="" if units.spoons is None else spoons_text(in_spoons(amount, units.spoons)),
            own=own,
            how_known=_how_known(mix, paint),
            tins=tuple(tin.ml for tin in paint.tins),
            kind=say(paint.family.value),
            label="" if paint.how_known is HowKnown.INVENTED else paint.note,
            note=mix.changed.get(paint.id, ""),
            name_tells=sum(one.name == paint.name for one in mix.shelf.paints) < 2,
        )
        for paint, (_, parts), share, amount, own in rows
    ]


def _how_known(mix: Mix, paint: Paint) -> str:
    """Say where a paint is known from, and how well, as everywhere."""
    how, known = say(_KNOWN[paint.how_known]), known_of(mix.shelf, paint).words
    return say("{how}, {known}", how=how, known=known) if known else how


# --- pouring -------------------------------------------------------------------------------------


def _pour(look: MixLook, ml: Sequence[float]) -> tuple[str, ...]:
    """Say in which order to pour."""
    if len(look.paints) == 1:
        return ()
    recipe = Recipe(look.paints, look.shares, 0.0, look.dry, look.wet, Parts((), 0.0, 0.0), None)
    pours = pours_told(pouring_order(recipe, ml))
    first = [
        say("{amount} ml of {paint}", amount=amount_text(p.ml), paint=p.paint.name)
        for p in pours[:-4]
    ]
    told = reduce(_then, first[1:], say("{paint} first", paint=first[0]))
    return (
        f"{told}.",
        say(
            "Then {paint} in three portions of {amount} ml, each well stirred in.",
            paint=pours[-1].paint.name,
            amount=amount_text(pours[-2].ml),
        ),
        say(
            "Hold the last {amount} ml back until a sample has dried.",
            amount=amount_text(pours[-1].ml),
        ),
    )


def _then(before: str, paint: str) -> str:
    return say("{before}, then {paint}", before=before, paint=paint)


# --- trust ---------------------------------------------------------------------------------------


def _trust(mix: Mix, look: MixLook, finish: Sequence[Look]) -> tuple[str, ...]:
    """State plainly how sure it is; of finishes that are not the same by the least sure."""
    doubts = [seen.steps[-1].doubt for seen in finish]
    told = say("Under its finish, give or take {doubt:.0f}.", doubt=max(doubts, default=0.0))
    return (
        *_origin(mix.wanted),
        *([told] if doubts else []),
        *([say(_INVENTED)] if _any_invented(look.paints) else []),
    )


def _any_invented(paints: Sequence[Paint]) -> bool:
    return any(paint.how_known is HowKnown.INVENTED for paint in paints)


def _origin(wanted: KnownColour | None) -> tuple[str, ...]:
    if wanted is None or not wanted.origin:
        return ()
    told = origin_words(wanted.origin, places=False).rstrip(".")
    return (say("The wanted colour: {origin}.", origin=told),)


def _usual(mix: Mix, look: MixLook) -> str:
    """Say how far off it usually is; of invented paints only what the photo brings is said."""
    known = mix.wanted or KnownColour(look.dry, None, "")
    doubt = confidence_in(known, look.paints, look.shares)
    if doubt.photo and doubt.paints:
        return say(
            "Not tried yet: it usually dries within {both:.0f} of the cloth, {seen} (the photo "
            "{photo:.1f}, the paints {paints:.1f}).",
            both=doubt.both,
            seen=closeness(round(doubt.both)),
            photo=doubt.photo,
            paints=doubt.paints,
        )
    if doubt.photo:
        return say(
            "Not tried yet: it usually dries within {photo:.0f} of the cloth ({seen}), for the "
            "photo.",
            photo=doubt.photo,
            seen=closeness(round(doubt.photo)),
        )
    if doubt.paints and not _any_invented(look.paints):
        return say(
            "Not tried yet: it usually dries within {paints:.0f} of what is computed ({seen}).",
            paints=doubt.paints,
            seen=closeness(round(doubt.paints)),
        )
    return say("It has not been tried.")


# --- the code ------------------------------------------------------------------------------------


def _code(mix: Mix, look: MixLook) -> str:
    """Write the code; empty where the recipe does not fit into one."""
    # Parts of a hundred are the exact shares; counted ones would bring back another mix.
    typed = [amount for _, amount in mix.parts] if mix.counts is None else None
    rows = zip(look.paints, typed or [100 * share for share in look.shares], strict=True)
    recipe = CodeRecipe(
        paints=tuple(CodePaint(p.id, parts, p.name) for p, parts in rows),
        title=mix.title,
        zone=mix.zone,
        wanted=None if mix.wanted is None else mix.wanted.lab,
        dry=look.dry,
        day=mix.day,
        batch=mix.batch,
        ml=mix.volume,
    )
    try:
        return write_code(recipe)
    except MendableError:
        return ""
