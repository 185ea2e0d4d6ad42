"""Tables, chairs, frames and rails from their outer sizes."""

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
    side_apron,
    turned_profile,
)

__all__ = ["chair", "console_table", "mirror_frame", "picture_rail"]

_OVER = 20.0
_THICK_TOP = 22.0
_LEG = 42.0


def console_table(wanted: Wanted) -> tuple[Part, ...]:
    """Give a table on four legs, with an apron, and drawers in it where asked for."""
    w, d = wanted.width, wanted.depth
    leg_high = wanted.height - _THICK_TOP
    thick = min(_LEG, 0.15 * d)
    far_x, far_z = w - _OVER - thick, d - _OVER - thick
    corners = tuple(Spot(x, 0, z) for z in (far_z, _OVER) for x in (_OVER, far_x))
    high = min(110.0, 0.2 * wanted.height)
    y = leg_high - high
    long, short = far_x - _OVER - thick, far_z - _OVER - thick
    start = _OVER + thick
    size = high, BOARD
    shaped = [
        board("top", (w, d), (0, leg_high, 0), thickness=_THICK_TOP),
        legs("legs", wanted.leg, leg_high, thick, corners),
        side_apron(
            "side aprons", short, size, (Spot(_OVER, y, start), Spot(w - _OVER - BOARD, y, start))
        ),
    ]
    back = Spot(start, y, d - _OVER - BOARD, Axes.XYZ)
    if not wanted.drawers:
        front = Spot(start, y, _OVER, Axes.XYZ)
        return (*shaped, apron("aprons", long, size, (back, front)))
    fronts = drawer_rows(1, wanted.drawers, (long, high), (start, y), thick=_OVER)
    return (*shaped, apron("back apron", long, size, (back,)), fronts, knobs(fronts, 1))


def chair(wanted: Wanted) -> tuple[Part, ...]:
    """Give a chair with a shaped seat, four legs, spindles in its back and stretchers."""
    w, h, d = wanted.width, wanted.height, wanted.depth
    seat_high, thick = 0.5 * h, 38.0
    seat_back, leg_high = 0.88 * w, 0.5 * h - 30.0
    left, right = (w - seat_back) / 2, (w + seat_back) / 2 - thick
    back_z, front_z = d - thick, 20.0
    spots = Spot(20, 0, front_z), Spot(w - 20 - thick, 0, front_z)
    across, along = right - left - thick, back_z - front_z - thick
    spindles = 5
    step = across / (spindles + 1)
    bar = 24.0
    high = 0.08 * h
    long = h - high - seat_high
    return (
        Part(
            "seat",
            Shape.SEAT,
            d,
            w,
            30.0,
            end=seat_back,
            painted=(Face.OUTSIDE, Face.INSIDE, *EDGES),
            zone="seat",
            spots=(Spot(0, leg_high, 0, Axes.ZXY),),
        ),
        legs("front legs", wanted.leg, leg_high, thick, spots),
        legs(
            "back posts",
            Shape.SQUARE_LEG,
            h - seat_high,
            thick,
            (Spot(left, seat_high, back_z), Spot(right, seat_high, back_z)),
        ),
        legs(
            "back legs",
            Shape.SQUARE_LEG,
            leg_high,
            thick,
            (Spot(left, 0, back_z), Spot(right, 0, back_z)),
        ),
        apron(
            "top rail",
            across,
            (high, BOARD),
            (Spot(left + thick, h - high, back_z, Axes.XYZ),),
        ),
        Part(
            "spindles",
            Shape.SPINDLE,
            long,
            profile=turned_profile(long, 18.0),
            count=spindles,
            painted=(Face.ROUND,),
            spots=tuple(
                Spot(left + thick + step * (i + 1) - 9, seat_high, back_z + 10)
                for i in range(spindles)
            ),
        ),
        side_apron(
            "side stretchers",
            along,
            (bar, bar),
            (
                Spot(left, 0.3 * leg_high, front_z + thick),
                Spot(right + 14, 0.3 * leg_high, front_z + thick),
            ),
        ),
        apron(
            "front stretcher",
            w - 40 - 2 * thick,
            (bar, bar),
            (Spot(20 + thick, 0.4 * leg_high, front_z + 7, Axes.XYZ),),
        ),
    )


def mirror_frame(wanted: Wanted) -> tuple[Part, ...]:
    """Give a frame with a bead round its opening; the glass is left out."""
    member = 0.11 * min(wanted.width, wanted.height)
    bead = min(10.0, member / 3)
    tall, wide = wanted.height - 2 * member, wanted.width - 2 * member
    out = -bead / 2
    return (
        Part(
            "frame",
            Shape.FRAME,
            wanted.height,
            wanted.width,
            wanted.depth,
            member=member,
            painted=(Face.OUTSIDE, *EDGES, Face.INNER_EDGES),
            spots=(Spot(0, 0, 0),),
        ),
        _bead("upright beads", tall, bead, ((member - bead, member), (member + wide, member)), out),
        _bead(
            "level beads",
            wide + 2 * bead,
            bead,
            ((member - bead, member - bead), (member - bead, member + tall)),
            out,
        ),
    )


def _bead(
    name: str, run: float, width: float, at: tuple[tuple[float, float], ...], out: float
) -> Part:
    axes = Axes.YXZ if name.startswith("upright") else Axes.XYZ
    return Part(
        name,
        Shape.MOULDING,
        run,
        width,
        width / 2,
        moulding=Moulding.HALF_ROUND,
        count=len(at),
        painted=(Face.OUTSIDE,),
        zone="bead",
        spots=tuple(Spot(x, y, out, axes) for x, y in at),
    )


def picture_rail(wanted: Wanted) -> tuple[Part, ...]:
    """Give a run of moulding with an ogee, as long as the piece is wide."""
    return (
        Part(
            "rail",
            Shape.MOULDING,
            wanted.width,
            wanted.height,
            wanted.depth,
            moulding=Moulding.OGEE,
            painted=(Face.OUTSIDE,),
            spots=(Spot(0, 0, 0, Axes.XYZ),),
        ),
    )
