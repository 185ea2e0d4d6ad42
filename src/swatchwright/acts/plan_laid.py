"""What goes over the paint as a plan of work takes it: of what it is stirred, where, how much."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from swatchwright.acts.amounts_products import Over, over_tool
from swatchwright.acts.piece import sized
from swatchwright.acts.piece_form import PieceForm
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.paint.layers import Layer, LayerKind, Stack, check_stack, wash_of
from swatchwright.paint.paints import Paint
from swatchwright.piece.names import zone_word
from swatchwright.piece.order import ProductKind
from swatchwright.piece.part import Piece
from swatchwright.piece.spreading import CLEAR_RATES, Ground, coat_rate, loss
from swatchwright.piece.work.order import FinishKind, Laid, PlanOrder
from swatchwright.piece.work.seen import sides_of_zone
from swatchwright.shelf.shelf import Shelf

__all__ = ["as_often", "check_zones", "laid_in", "topped_in", "washes_on"]

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


def topped_in(
    stack: Stack | None, piece: Piece | None = None, form: PieceForm | None = None
) -> tuple[Laid, ...]:
    """Give on which parts the coats of the finish go; none where there is one, on all of it.

    Where there are several finishes it is told which one goes where, and how much of it.

    Parameters
    ----------
    stack
        What goes over the paint.
    piece, form
        The piece and how it is painted; None where it is not sized.
    """
    clear = [one for one in (() if stack is None else stack.layers) if not one.is_paint]
    laid = [_topped(one, piece) for one in clear if one.passes]
    if len({one.finish for one in laid if one.faces != ()}) > 1:
        return tuple(_clear_ml(one, piece, form) for one in _put_together(laid))
    there = [one.finish for one in laid if one.faces != ()]
    last = there[-1:] or [one.finish for one in laid[-1:]]
    mine = [one for one in laid if one.finish in last or one.faces == ()]
    if not any(one.zone for one in mine):
        return ()
    return tuple(replace(one, finish=None, ml=None) for one in mine)


def _topped(layer: Layer, piece: Piece | None) -> Laid:
    finish = FinishKind(layer.kind.value)
    laid = Laid((), 0.0, passes=layer.passes, zone=layer.zone, finish=finish)
    return _on_piece(laid, piece, None, None)


def _put_together(laid: Sequence[Laid]) -> list[Laid]:
    """Let what is the same on the same part follow on itself be one, laid as often as both."""
    found: list[Laid] = []
    for one in laid:
        on = [n for n, other in enumerate(found) if other.zone in {"", one.zone} or not one.zone]
        if on and replace(found[on[-1]], passes=one.passes) == one:
            found[on[-1]] = replace(one, passes=found[on[-1]].passes + one.passes)
        else:
            found.append(one)
    return found


def _clear_ml(laid: Laid, piece: Piece | None, form: PieceForm | None) -> Laid:
    """Tell how much of a clear finish goes on, as the amounts of the piece are reckoned."""
    if piece is None or form is None or laid.finish is None:
        return laid
    area = sized(piece).areas.total if laid.area is None else laid.area
    name, tool = laid.finish.value, over_tool(laid.finish.value, form.coats.tool)
    rate = form.coats.rates.get(ProductKind.CLEAR, CLEAR_RATES[name])
    litre = coat_rate(rate, Ground.PAINTED, tool, 2) * (1.0 - loss(tool))
    return replace(laid, ml=_ML * area / litre if area else None)


def as_often(topped: Sequence[Laid], over: Sequence[Over]) -> tuple[Laid, ...]:
    """Let several finishes be laid as often as is set with the piece.

    Parameters
    ----------
    topped
        Which goes where, as `topped_in` gives it.
    over
        What goes over the paint, with the coats that hold.
    """
    left: dict[tuple[str, str], int] = {}
    for clear in over:
        if clear.kind is ProductKind.CLEAR:
            key = (clear.name, clear.zone)
            left[key] = left.get(key, 0) + clear.coats
    laid = []
    for n, one in enumerate(topped):
        if one.finish is None or one.faces == ():
            laid.append(one)
            continue
        key = (one.finish.value, one.zone)
        free = left.get(key, 0)
        more = (one.finish, one.zone) in ((o.finish, o.zone) for o in topped[n + 1 :])
        times = min(one.passes, free) if more else free
        left[key] = free - times
        laid.append(replace(one, passes=times))
    return tuple(one for one in laid if one.passes)


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
    check_zones(zones, piece)
    laid = [_on_piece(Laid((), 0.0, zone=zone), piece, None, None) for zone in zones]
    most = max((zones.count(zone) for zone in zones), default=0)
    return replace(order, laid=tuple(laid), washes=most)


def check_zones(zones: Sequence[str], piece: Piece | None) -> None:
    """Refuse a part that a piece does not have.

    Raises
    ------
    MendableError
        If there is one.
    """
    there = [] if piece is None else [zone.zone for zone in sized(piece).areas.zones]
    for zone in zones:
        if there and zone not in there:
            raise MendableError(
                say("The piece has no part “{part}”.", part=zone_word(zone)),
                say("Use one of: {names}.", names=", ".join(map(zone_word, there))),
            )


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
