"""The piece of a job: how it was sized and is painted, its mixes by zone, its order, kept in one.

What a painter sets for a piece is a `PieceForm`. From it, the mixes that are chosen and the shelf
follow the order of amounts and what of each zone is seen.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, field

from swatchwright.acts.amounts import Coats, order_of
from swatchwright.acts.batches import WHOLE_PIECE, shelf_of_recipe
from swatchwright.acts.jobs import keep_document
from swatchwright.acts.labels import THE_PIECE
from swatchwright.acts.piece import sized
from swatchwright.acts.stock import kept_shelf
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.mixing.recipe import Recipe
from swatchwright.paint.paints import Paint
from swatchwright.piece.common import USUAL, Kind, common_piece
from swatchwright.piece.order import AmountsOrder, ProductKind, Terms
from swatchwright.piece.part import Piece, Shape
from swatchwright.piece.tins import TinSize
from swatchwright.shelf.jobs import KeptRecipe
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store import job_rows
from swatchwright.shelf.store.history import Changes
from swatchwright.shelf.store.store import Store
from swatchwright.values import Lab

__all__ = [
    "AMOUNTS_PART",
    "FORM_PART",
    "PIECE_PART",
    "AtHand",
    "PieceForm",
    "ZoneMix",
    "at_hand",
    "form_for",
    "form_of_parts",
    "has_inside",
    "keep_piece",
    "keep_sized",
    "mixes_by_zone",
    "order_for_job",
    "piece_of_form",
]

PIECE_PART, AMOUNTS_PART, FORM_PART = "piece", "amounts", "piece-form"
"""Names of the parts of a job: the piece, its order of amounts, and what was set for both."""

Share = tuple[str, float]


@dataclass(frozen=True, slots=True)
class PieceForm:
    """What a painter has set for a piece.

    Parameters
    ----------
    kind, width, height, depth, drawers, leg, inside
        A common piece and its outer sizes, mm, as of `common_piece`; None and 0 for a piece that
        was read from a file of parts.
    by_hand
        Whether its parts were changed since, so that the sizes alone no longer tell them.
    coats
        What goes on.
    sample_ml, touch_up
        As in `AmountsOrder`.
    tins, left
        Sizes sold and ml left, by what they are of; they come before what the shelf knows.
    terms
        What she asks of a client.
    """

    kind: Kind | None
    width: float = 0.0
    height: float = 0.0
    depth: float = 0.0
    drawers: int | None = None
    leg: Shape | None = None
    inside: bool = False
    by_hand: bool = False
    coats: Coats = field(default_factory=Coats)
    sample_ml: float = 30.0
    touch_up: float = 0.1
    tins: dict[str, tuple[TinSize, ...]] = field(default_factory=dict)
    left: dict[str, float] = field(default_factory=dict)
    terms: Terms = field(default_factory=Terms)


def form_for(kind: Kind) -> PieceForm:
    """Give the form of a common piece as it usually is."""
    usual = USUAL[kind]
    width, height, depth = map(float, usual.size)
    return PieceForm(kind, width, height, depth, drawers=usual.drawers, leg=usual.leg)


def form_of_parts() -> PieceForm:
    """Give a form for a piece that is told by its parts alone, as one of a file."""
    return PieceForm(None, by_hand=True)


def has_inside(kind: Kind) -> bool:
    """Tell whether a common piece has an inside that may be painted too."""
    return common_piece(kind, inside=True) != common_piece(kind)


def piece_of_form(form: PieceForm) -> Piece:
    """Build the common piece of a form.

    Raises
    ------
    MendableError
        If it cannot be built so, or was not built from sizes.
    """
    if form.kind is None:
        raise MendableError(
            say("The piece came from a file of parts."), say("Change its parts instead.")
        )
    return common_piece(
        form.kind,
        width=form.width,
        height=form.height,
        depth=form.depth,
        drawers=form.drawers,
        leg=form.leg,
        inside=form.inside,
    )


# --- mixes ---------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class ZoneMix:
    """The mix that is chosen for a zone: ids and shares of its paints, and its dry colour."""

    parts: tuple[Share, ...]
    dry: Lab


def mixes_by_zone(
    piece: Piece, kept: Sequence[KeptRecipe], first: Recipe | None
) -> dict[str, ZoneMix]:
    """Give the mix of each painted zone that has one.

    Parameters
    ----------
    piece
        The piece.
    kept
        The recipes of the job. One that is chosen for the whole piece serves every zone that has
        none of its own.
    first
        A mix that is on the bench and not chosen yet: it serves all zones where the job has no
        chosen one.
    """
    chosen = {recipe.zone: _kept_mix(recipe) for recipe in kept if recipe.chosen}
    whole = chosen.get(WHOLE_PIECE)
    if not chosen and first is not None:
        shares = zip(first.paints, first.shares, strict=True)
        whole = ZoneMix(tuple((paint.id, share) for paint, share in shares), first.dry)
    found = {zone.zone: chosen.get(zone.zone, whole) for zone in sized(piece).areas.zones}
    return {zone: mix for zone, mix in found.items() if mix is not None}


def _kept_mix(recipe: KeptRecipe) -> ZoneMix:
    return ZoneMix(tuple((paint.paint, paint.share) for paint in recipe.paints), recipe.dry)


@dataclass(frozen=True, slots=True)
class AtHand:
    """What the store knows of paints: those of kept recipes as they were, and what is left, ml."""

    paints: tuple[Paint, ...] = ()
    left: Mapping[str, float] = field(default_factory=dict)


def at_hand(store: Store, kept: Sequence[KeptRecipe]) -> AtHand:
    """Ask the store for the paints of chosen recipes, and for what is left of every paint."""
    found = [paint for r in kept if r.chosen for paint in shelf_of_recipe(store, r).paints]
    stocked = kept_shelf(store).stocked
    left = {s.paint.id: s.ml_left for s in stocked if s.ml_left is not None}
    return AtHand(tuple(found), left)


# --- the order -----------------------------------------------------------------------------------


def order_for_job(
    form: PieceForm, piece: Piece, mixes: Mapping[str, ZoneMix], shelf: Shelf, known: AtHand
) -> AmountsOrder:
    """Put together the order of amounts for a piece and its mixes.

    A paint is taken from the shelf, or, where that lacks it, as it was when its recipe was kept.

    Raises
    ------
    MendableError
        If nothing of the piece is painted, or a number cannot be.
    """
    zones = sized(piece).areas.zones
    if not zones:
        raise MendableError(
            say("No face of any part is painted."),
            say("Tick a painted face of a part in the list of parts."),
        )
    paints = {paint.id: paint for paint in (*known.paints, *shelf.paints)}
    recipes = {
        zone: mix.parts for zone, mix in mixes.items() if all(id_ in paints for id_, _ in mix.parts)
    }
    used = {id_ for parts in recipes.values() for id_, _ in parts} if form.coats.paint else set()
    bare = {zone.zone for zone in zones if zone.zone not in recipes} if form.coats.paint else set()
    names = used | bare | {kind.value for kind, n in _others(form.coats) if n}
    left = {**known.left, **form.left}
    return order_of(
        zones,
        form.coats,
        shelf=Shelf(shelf.name, tuple(paints.values())),
        recipes=recipes,
        tins={name: sizes for name, sizes in form.tins.items() if name in names},
        left={name: ml for name, ml in left.items() if name in names},
        terms=form.terms,
        sample_ml=form.sample_ml,
        touch_up=form.touch_up,
    )


def _others(coats: Coats) -> tuple[tuple[ProductKind, int], ...]:
    return (
        (ProductKind.PRIMER, coats.primer),
        (ProductKind.WASH, coats.wash),
        (ProductKind.CLEAR, coats.clear),
    )


def keep_piece(
    store: Store, id_: str, form: PieceForm | None, piece: Piece | None, order: AmountsOrder | None
) -> Changes:
    """Keep the piece of a job, what was set for it and its order of amounts, as one edit.

    What is None is taken away.

    Raises
    ------
    MendableError
        If there is no such job, or one of them is too large to be kept.
    """
    with store.editing("The piece") as edit:
        edit.call(THE_PIECE.format(job=job_rows.read_job(edit.connection, id_).title))
        for part, value in ((PIECE_PART, piece), (FORM_PART, form), (AMOUNTS_PART, order)):
            keep_document(store, id_, part, value)
        return edit.changes


def keep_sized(
    store: Store,
    id_: str,
    form: PieceForm,
    piece: Piece,
    *,
    mixes: Mapping[str, ZoneMix],
    shelf: Shelf,
    known: AtHand,
) -> Changes:
    """Keep a piece with the order of amounts that follows from it; see `order_for_job`.

    Where there can be no order, as nothing is painted, the piece is kept without one.

    Raises
    ------
    MendableError
        As `keep_piece`.
    """
    order: AmountsOrder | None = None
    with suppress(MendableError):
        order = order_for_job(form, piece, mixes, shelf, known)
    return keep_piece(store, id_, form, piece, order)
