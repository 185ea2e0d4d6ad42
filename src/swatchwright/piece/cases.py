"""Chests, boxes and cabinets from their outer sizes."""

from __future__ import annotations

from swatchwright.piece.faces import EDGES
from swatchwright.piece.part import Axes, Face, Moulding, Part, Shape, Spot
from swatchwright.piece.wanted import (
    BOARD,
    Wanted,
    apron,
    board,
    drawer_rows,
    knobs,
    legs,
    sides,
    upright,
)

__all__ = ["bedside_cabinet", "blanket_box", "chest_of_drawers", "dresser"]

_OVER = 15.0
_GAP = 3.0
_SEEN_TOP = (Face.OUTSIDE, Face.FRONT_EDGE, Face.SHORT_EDGES)
_PANELLED = 1.3
"""What a panelled door is measured by: [IS1200]."""


def chest_of_drawers(wanted: Wanted) -> tuple[Part, ...]:
    """Give a chest of even drawers on a plinth."""
    w, h, d = wanted.width, wanted.height, wanted.depth
    plinth = min(90.0, 0.12 * h)
    case = h - BOARD - plinth
    fronts = drawer_rows(
        wanted.drawers,
        1,
        (w - 2 * _OVER - 2 * BOARD, case - BOARD),
        (_OVER + BOARD, plinth),
        thick=BOARD,
    )
    return (
        board("top", (w, d), (0, h - BOARD, 0), faces=_SEEN_TOP),
        sides(wanted, (case, d - _OVER), (plinth, _OVER), inset=_OVER),
        *_case_front(wanted, (plinth, case)),
        fronts,
        knobs(fronts, 2),
        *_plinth(wanted, plinth, _OVER),
    )


def _case_front(wanted: Wanted, at: tuple[float, float]) -> tuple[Part, ...]:
    """Give the rail above the drawers, down to their gap, and the bare back."""
    wide = wanted.width - 2 * _OVER - 2 * BOARD
    y, high = at
    return (
        apron(
            "top rail",
            wide,
            (BOARD + _GAP, BOARD),
            (Spot(_OVER + BOARD, y + high - BOARD - _GAP, _OVER, Axes.XYZ),),
        ),
        upright(
            "back",
            (wide, high),
            (_OVER + BOARD, y, wanted.depth - 6),
            thickness=6.0,
            faces=(),
        ),
    )


def _plinth(wanted: Wanted, high: float, inset: float) -> tuple[Part, ...]:
    w, d = wanted.width, wanted.depth
    return (
        # Its ends are seen beside the returns, which butt against it from behind.
        upright(
            "plinth",
            (w - 2 * inset, high),
            (inset, 0, inset),
            faces=(Face.OUTSIDE, Face.SHORT_EDGES),
        ),
        Part(
            "plinth returns",
            Shape.PANEL,
            high,
            d - inset - BOARD,
            BOARD,
            count=2,
            painted=(Face.OUTSIDE,),
            spots=tuple(Spot(x, 0, inset + BOARD, Axes.YZX) for x in (inset, w - inset - BOARD)),
        ),
    )


def blanket_box(wanted: Wanted) -> tuple[Part, ...]:
    """Give a box with a lid, and a moulding round its foot."""
    w, h, d = wanted.width, wanted.height, wanted.depth
    case = h - BOARD
    skirt = min(70.0, 0.15 * h)
    inner = (Face.INSIDE,) if wanted.inside else ()
    # The sides stand between front and back, whose ends make the corners of the box.
    faces = (Face.OUTSIDE, Face.SHORT_EDGES, *inner)
    lid_faces = (Face.OUTSIDE, *EDGES, *inner)
    long = w - 2 * _OVER
    deep = d - 2 * _OVER
    floor = board(
        "floor",
        (long - 2 * BOARD, deep - 2 * BOARD),
        (_OVER + BOARD, 5, _OVER + BOARD),
        thickness=10.0,
        faces=inner,
        zone="body",
    )
    return (
        board("lid", (w, d), (0, case, 0), faces=lid_faces),
        upright("front", (long, case), (_OVER, 0, _OVER), faces=faces),
        upright("back", (long, case), (_OVER, 0, d - _OVER - BOARD), faces=faces),
        sides(
            wanted,
            (case, deep - 2 * BOARD),
            (0, _OVER + BOARD),
            inset=_OVER,
            inside=wanted.inside,
            open_in_front=False,
        ),
        floor,
        Part(
            "foot moulding",
            Shape.MOULDING,
            w,
            skirt,
            _OVER,
            moulding=Moulding.BEVEL,
            painted=(Face.OUTSIDE,),
            spots=(Spot(0, 0, 0, Axes.XYZ),),
        ),
        Part(
            "side mouldings",
            Shape.MOULDING,
            d - _OVER,
            skirt,
            _OVER,
            moulding=Moulding.BEVEL,
            count=2,
            painted=(Face.OUTSIDE,),
            spots=(Spot(0, 0, _OVER, Axes.ZYX), Spot(w - _OVER, 0, _OVER, Axes.ZYX)),
        ),
    )


def bedside_cabinet(wanted: Wanted) -> tuple[Part, ...]:
    """Give a small case on short feet: drawers above, a panelled door below."""
    w, h, d = wanted.width, wanted.height, wanted.depth
    foot = min(120.0, 0.2 * h)
    case = h - BOARD - foot
    wide = w - 2 * _OVER - 2 * BOARD
    drawers_high = min(0.28 * wanted.drawers, 0.6) * case
    fronts = drawer_rows(
        wanted.drawers,
        1,
        (wide, drawers_high - BOARD),
        (_OVER + BOARD, foot + case - drawers_high),
        thick=BOARD,
    )
    far = w - _OVER - 40.0
    corners = tuple(Spot(x, 0, z) for z in (d - 40.0, _OVER) for x in (_OVER, far))
    return (
        board("top", (w, d), (0, h - BOARD, 0), faces=_SEEN_TOP),
        sides(wanted, (case, d - _OVER), (foot, _OVER), inset=_OVER, inside=wanted.inside),
        *_case_front(wanted, (foot, case)),
        legs("feet", Shape.TAPERED_LEG, foot, 40.0, corners),
        fronts,
        knobs(fronts, 1),
        _doors(1, (wide, case - drawers_high), (_OVER + BOARD, foot), inside=wanted.inside),
    )


def _doors(
    count: int, opening: tuple[float, float], at: tuple[float, float], *, inside: bool
) -> Part:
    wide = opening[0] / count - 3
    return Part(
        "doors" if count > 1 else "door",
        Shape.PANEL,
        opening[1] - 3,
        wide,
        BOARD,
        count=count,
        painted=(Face.OUTSIDE, *EDGES) + ((Face.INSIDE,) if inside else ()),
        zone="doors",
        inside_zone="inside" if inside else "",
        enrichment=_PANELLED,
        spots=tuple(Spot(at[0] + i * (wide + 3), at[1], 0) for i in range(count)),
    )


def dresser(wanted: Wanted) -> tuple[Part, ...]:
    """Give a case of drawers and panelled doors with open shelves and a cornice above it."""
    w, h, d = wanted.width, wanted.height, wanted.depth
    low = min(900.0, 0.47 * h)
    plinth = 80.0
    case = low - BOARD - plinth
    wide = w - 2 * _OVER - 2 * BOARD
    drawer = min(150.0, 0.25 * case)
    fronts = drawer_rows(
        1,
        wanted.drawers,
        (wide, drawer),
        (_OVER + BOARD, plinth + case - drawer - BOARD),
        thick=BOARD,
    )
    doors = (wide, case - drawer - BOARD)
    return (
        board("top", (w, d), (0, low - BOARD, 0), faces=_SEEN_TOP),
        sides(wanted, (case, d - _OVER), (plinth, _OVER), inset=_OVER, inside=wanted.inside),
        *_case_front(wanted, (plinth, case)),
        fronts,
        knobs(fronts, 1),
        _doors(2, doors, (_OVER + BOARD, plinth), inside=wanted.inside),
        *_plinth(wanted, plinth, _OVER),
        *_shelves(wanted, low, h - low),
    )


def _shelves(wanted: Wanted, low: float, high: float) -> tuple[Part, ...]:
    w, deep = wanted.width, 0.45 * wanted.depth
    z = wanted.depth - deep
    inner = w - 2 * _OVER - 2 * BOARD
    heights = tuple(low + high * share for share in (0.3, 0.63))
    cornice = 60.0
    return (
        Part(
            "shelf sides",
            Shape.PANEL,
            high - BOARD,
            deep,
            BOARD,
            count=2,
            painted=(Face.OUTSIDE, Face.INSIDE, Face.FRONT_EDGE),
            spots=tuple(Spot(x, low, z, Axes.YZX) for x in (_OVER, w - _OVER - BOARD)),
        ),
        upright(
            "back boards",
            (inner, high - BOARD),
            (_OVER + BOARD, low, wanted.depth - 10),
            thickness=10.0,
        ),
        Part(
            "shelves",
            Shape.PANEL,
            inner,
            deep - 10,
            BOARD,
            count=len(heights),
            painted=(Face.OUTSIDE, Face.INSIDE, Face.FRONT_EDGE),
            spots=tuple(Spot(_OVER + BOARD, y, z, Axes.XZY) for y in heights),
        ),
        board("cap", (w, deep), (0, wanted.height - BOARD, z), zone="body"),
        Part(
            "cornice",
            Shape.MOULDING,
            w,
            cornice,
            _OVER,
            moulding=Moulding.OGEE,
            painted=(Face.OUTSIDE,),
            spots=(Spot(0, wanted.height - BOARD - cornice, z - _OVER, Axes.XYZ),),
        ),
    )
