"""What a painter sets for a piece, kept with its job as a form."""

from __future__ import annotations

from dataclasses import dataclass, field

from swatchwright.acts.amounts import Coats
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.piece.common import USUAL, Kind, common_piece
from swatchwright.piece.order import Terms
from swatchwright.piece.part import Piece, Shape
from swatchwright.piece.tins import TinSize
from swatchwright.piece.work.order import Surface

__all__ = [
    "FOLLOWING",
    "PieceForm",
    "form_for",
    "form_of_parts",
    "has_inside",
    "own_coats",
    "piece_of_form",
]

FOLLOWING = ("primer", "wash", "clear", "wash_thinned", "ground")
"""The coats of a form that follow what other parts of the job say, unless they are set by hand."""


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
    surface
        What is on it now, where that was set with the piece; see `own`.
    own
        Which of its coats were set by hand and follow nothing else: names of `FOLLOWING`. None
        where that is not told: then those that are not as of a new form.
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
    surface: Surface = Surface.UNKNOWN
    own: tuple[str, ...] | None = None


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


def own_coats(form: PieceForm) -> frozenset[str]:
    """Name the coats of a form that were set by hand."""
    if form.own is not None:
        return frozenset(form.own)
    usual = Coats()
    return frozenset(
        name for name in FOLLOWING if getattr(form.coats, name) != getattr(usual, name)
    )
