"""How large a piece is, all round."""

from __future__ import annotations

from swatchwright.acts.piece_form import PieceForm
from swatchwright.errors import MendableError
from swatchwright.piece.check import checked_piece
from swatchwright.piece.part import Piece
from swatchwright.piece.solids import solids_of

__all__ = ["outer_size"]


def outer_size(piece: Piece, form: PieceForm | None = None) -> tuple[float, float, float] | None:
    """Give width, height and depth of a piece, mm; None where not all its parts have a place.

    Parameters
    ----------
    piece
        The piece.
    form
        What was set for it: of a common piece whose parts were not changed since the sizes that
        were asked for, which leave knobs and feet out.
    """
    if form is not None and form.kind is not None and not form.by_hand:
        return form.width, form.height, form.depth
    if any(len(part.spots) < part.count for part in piece.parts):
        return None
    try:
        solids = solids_of(checked_piece(piece))
    except MendableError:
        return None
    ends = [
        max(solid.high[axis] for solid in solids) - min(solid.low[axis] for solid in solids)
        for axis in range(3)
    ]
    return (ends[0], ends[1], ends[2])
