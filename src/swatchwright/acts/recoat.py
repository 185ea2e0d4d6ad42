"""Paint over with a new coat: a mix that looks as a client wants it, and how much of it.

Where a wax, an oil or a varnish lies over the coat in the end, the mix is sought that looks so with
it on.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from swatchwright.acts.amounts import Coats, amounts_for, order_of
from swatchwright.acts.mixes_in_use import WHOLE_PIECE, mixes_in_use
from swatchwright.acts.piece import sized
from swatchwright.acts.piece_form import PieceForm
from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import lab_of
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.measures.shares import rounded_amounts
from swatchwright.mixing.recipe import Recipe
from swatchwright.mixing.search import find_recipes
from swatchwright.paint.layered import Coat, base_of, look_of
from swatchwright.paint.mixture import mix
from swatchwright.paint.paints import Paint, stack
from swatchwright.piece.areas import ZoneArea
from swatchwright.piece.part import Piece
from swatchwright.piece.spreading import Ground
from swatchwright.shelf.jobs import Job
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab

__all__ = ["PER_M2", "Recoat", "ToPaint", "new_coat", "surface_of", "to_paint_in"]

_MOST_AREA, _MOST_COATS = 1000.0, 20

# How often the colour below the layers is sought anew, and what is near enough, CIEDE2000.
_TRIES, _NEAR = 4, 0.1


@dataclass(frozen=True, slots=True)
class ToPaint:
    """What is to be painted over.

    Parameters
    ----------
    zones
        Its zones and their areas, m2.
    coats
        How often and with what; only coats of paint count.
    sample_ml, touch_up
        As in `AmountsOrder`.
    known
        Whether the piece was sized; else it is a square metre that stands for it.
    """

    zones: tuple[ZoneArea, ...]
    coats: Coats
    sample_ml: float = 30.0
    touch_up: float = 0.1
    known: bool = True

    @property
    def area(self) -> float:
        """All of it, m2."""
        return sum(zone.area for zone in self.zones)


PER_M2 = ToPaint((ZoneArea(WHOLE_PIECE, 1.0),), Coats(), sample_ml=0.0, touch_up=0.0, known=False)
"""A square metre in two coats, where the piece was not sized."""


@dataclass(frozen=True, slots=True, eq=False)
class Recoat:
    """A full new coat.

    Parameters
    ----------
    recipe
        The mix.
    seen
        Its dry colour with all on that lies over it in the end.
    delta_e
        CIEDE2000 of that from where it should go.
    over
        What is painted over.
    volume
        ml to mix in all.
    ml
        ml of each paint in it.
    """

    recipe: Recipe
    seen: Lab
    delta_e: float
    over: ToPaint
    volume: float
    ml: tuple[float, ...]


def surface_of(area: float, coats: int = 2) -> ToPaint:
    """Give a surface of so many m2 to be painted over so often.

    Raises
    ------
    MendableError
        If the area is not above 0 and up to 1000 m2, or the coats are not 1 to 20.
    """
    if not 0 < area <= _MOST_AREA:
        raise MendableError(
            say("{area:g} m² are to be painted over.", area=area),
            say("Give an area above 0 and up to {most:g} m².", most=_MOST_AREA),
        )
    if not 1 <= coats <= _MOST_COATS:
        raise MendableError(
            say("{coats} coats were asked for.", coats=coats),
            say("Give 1 to {most}.", most=_MOST_COATS),
        )
    return ToPaint((ZoneArea(WHOLE_PIECE, area),), Coats(paint=coats))


def to_paint_in(job: Job | None, zone: str) -> ToPaint:
    """Give what of a job's piece has the mix for a zone, in as many coats as were set for it.

    A square metre stands for it where the piece was not sized, or does not have the zone.

    Raises
    ------
    MendableError
        If what is kept of the piece cannot be read.
    """
    document = None if job is None else job.document("piece")
    if job is None or document is None:
        return PER_M2
    own = {recipe.zone for recipe in mixes_in_use(job)} - {WHOLE_PIECE}
    all_zones = sized(document.read(Piece)).areas.zones
    here = tuple(z for z in all_zones if z.zone == zone)
    if zone in {"", WHOLE_PIECE}:
        here = tuple(z for z in all_zones if z.zone not in own)
    kept = job.document("piece-form")
    form = PieceForm(None) if kept is None else kept.read(PieceForm)
    if not here:
        return PER_M2
    coats = replace(form.coats, paint=max(1, form.coats.paint))
    return ToPaint(here, coats, form.sample_ml, form.touch_up)


def new_coat(
    shelf: Shelf,
    paints: Sequence[Paint],
    aim: Lab,
    *,
    over: Sequence[Coat] = (),
    surface: ToPaint = PER_M2,
) -> Recoat | None:
    """Find a mix for a full new coat, and reckon how much of it there must be.

    Parameters
    ----------
    shelf
        Where the paints are.
    paints
        Those that may be used.
    aim
        How it should look, with all on that lies over it.
    over
        What lies over it in the end, the lowest first.
    surface
        What is painted over.

    Returns
    -------
    Recoat | None
        None where there are not two paints to mix from.
    """
    if len(paints) < 2:
        return None
    recipe, seen, off = _recipe_under(paints, aim, over)
    volume = _volume(shelf, recipe, surface)
    ml = rounded_amounts(list(recipe.shares), volume)
    return Recoat(recipe, seen, off, surface, volume, tuple(ml))


def _recipe_under(
    paints: Sequence[Paint], aim: Lab, over: Sequence[Coat]
) -> tuple[Recipe, Lab, float]:
    """Find the mix that looks nearest to a colour under layers.

    What the layers do to one mix is allowed for in seeking the next.
    """
    wanted, found = aim, []
    for _ in range(_TRIES if over else 1):
        recipe = find_recipes(wanted, paints, keep=1).recipes[0]
        seen = _seen(recipe, over)
        off = float(delta_e_2000(aim.triple, seen.triple))
        found.append((recipe, seen, off))
        if off < _NEAR:
            break
        wanted = Lab(
            min(100.0, max(0.0, wanted.L + aim.L - seen.L)),
            _bounded(wanted.a + aim.a - seen.a),
            _bounded(wanted.b + aim.b - seen.b),
        )
    return min(found, key=lambda one: one[2])


def _bounded(coordinate: float) -> float:
    return min(128.0, max(-128.0, coordinate))


def _seen(recipe: Recipe, over: Sequence[Coat]) -> Lab:
    mixture = mix(stack(recipe.paints), [range(len(recipe.paints))], [recipe.shares])
    return Lab.of(lab_of(look_of(base_of(mixture), over))[0])


def _volume(shelf: Shelf, recipe: Recipe, surface: ToPaint) -> float:
    """Give ml to mix for all coats on all zones, in one batch: the ground is painted."""
    coats = replace(surface.coats, primer=0, wash=0, clear=0, ground=Ground.PAINTED)
    order = order_of(
        surface.zones,
        coats,
        shelf=shelf,
        recipes={"": [(p.id, s) for p, s in zip(recipe.paints, recipe.shares, strict=True)]},
        sample_ml=surface.sample_ml,
        touch_up=surface.touch_up,
    )
    return amounts_for(order).batches[0].mix_ml
