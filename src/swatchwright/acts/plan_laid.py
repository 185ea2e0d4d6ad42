"""What goes over the paint as a plan of work takes it: of what it is stirred, where, how much."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from swatchwright.acts.piece import sized
from swatchwright.acts.piece_form import PieceForm
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.paint.layers import Layer, LayerKind, Stack, check_stack, wash_of
from swatchwright.paint.paints import Paint
from swatchwright.piece.names import zone_word
from swatchwright.piece.order import ProductKind
from swatchwright.piece.part import Piece
from swatchwright.piece.spreading import loss
from swatchwright.piece.work.order import Laid, PlanOrder
from swatchwright.piece.work.seen import sides_of_zone
from swatchwright.shelf.shelf import Shelf

__all__ = ["laid_in", "topped_in", "washes_on"]

_ML = 1000.0


def laid_in(
    stack: Stack | None, shelf: Shelf, piece: Piece | None = None, form: PieceForm | None = None
) -> tuple[Laid, ...]:
    """Give what the washes and glazes of a finish are stirred of, and where they go, in their turn.

    A paint that the shelf does not have is told by its id.

    Parameters
    ----------
    stack
        What goes over the paint.
    shelf
        The paints that are in use.
    piece, form
        The piece and how it is painted; None where it is not sized.
    """
    paints = {paint.id: paint for paint in shelf.paints}
    return tuple(
        _on_piece(_wash(layer, paints), piece, _rate(layer, paints, form), form)
        for layer in (() if stack is None else stack.layers)
        if layer.is_paint and layer.passes
    )


def _wash(layer: Layer, paints: dict[str, Paint]) -> Laid:
    wash, wiped = wash_of(layer), layer.kind is LayerKind.WASH
    return Laid(
        tuple((paints[id_].name if id_ in paints else id_, n) for id_, n in layer.paints),
        float(wash.water),
        glaze=layer.kind is LayerKind.GLAZE,
        wiped=wiped and float(wash.left) < 1,
        passes=layer.passes,
        left=float(wash.left) if wiped else None,
        zone=layer.zone,
    )


def topped_in(stack: Stack | None, piece: Piece | None = None) -> tuple[Laid, ...]:
    """Give on which parts the coats of the finish laid last go; none where each is on all of it."""
    clear = [one for one in (() if stack is None else stack.layers) if not one.is_paint]
    last = [one for one in clear if one.kind is clear[-1].kind and one.passes]
    if not any(one.zone for one in last):
        return ()
    return tuple(
        _on_piece(Laid((), 0.0, passes=one.passes, zone=one.zone), piece, None, None)
        for one in last
    )


def washes_on(order: PlanOrder, zones: Sequence[str], piece: Piece | None = None) -> PlanOrder:
    """Let an order have washes of which nothing is known but the parts that they go on.

    Parameters
    ----------
    order
        What is set so far.
    zones
        The part for each wash, in turn.
    piece
        The piece; None where it is not sized.

    Raises
    ------
    MendableError
        If the piece has no such part, or there are too many washes.
    """
    check_stack(Stack(tuple(Layer(LayerKind.WAX, zone=zone) for zone in zones)))
    there = [] if piece is None else [zone.zone for zone in sized(piece).areas.zones]
    for zone in zones:
        if there and zone not in there:
            raise MendableError(
                say("The piece has no part “{part}”.", part=zone_word(zone)),
                say("Use one of: {names}.", names=", ".join(map(zone_word, there))),
            )
    laid = [_on_piece(Laid((), 0.0, zone=zone), piece, None, None) for zone in zones]
    most = max((zones.count(zone) for zone in zones), default=0)
    return replace(order, laid=tuple(laid), washes=most)


def _on_piece(laid: Laid, piece: Piece | None, rate: float | None, form: PieceForm | None) -> Laid:
    """Tell from where the part is seen that something goes on, and how much of it goes there."""
    if piece is None:
        return laid
    areas = sized(piece).areas
    if laid.zone:
        on = sum(zone.area for zone in areas.zones if zone.zone == laid.zone)
        laid = replace(laid, faces=sides_of_zone(piece, laid.zone) if on else (), area=on)
    area = areas.total if laid.area is None else laid.area
    if rate is None or form is None or not area:
        return laid
    # As the amounts of the piece are reckoned: what the tool keeps or misses is lost.
    return replace(laid, ml=_ML * area / rate / (1.0 - loss(form.coats.tool)))


def _rate(layer: Layer, paints: dict[str, Paint], form: PieceForm | None) -> float | None:
    """Give how far a litre of a wash goes, m2; None where one of its paints is not known."""
    if form is not None and ProductKind.WASH in form.coats.rates:
        return form.coats.rates[ProductKind.WASH]
    if any(id_ not in paints for id_, _ in layer.paints):
        return None
    return _mixed_rate([(paints[id_], parts) for id_, parts in layer.paints])


def _mixed_rate(mixed: Sequence[tuple[Paint, float]]) -> float | None:
    total = sum(parts for _, parts in mixed)
    used = sum(parts / paint.spreading_rate for paint, parts in mixed)
    return total / used if used else None
