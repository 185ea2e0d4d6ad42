"""How much of a piece is to be painted, by part and by colour zone."""

from __future__ import annotations

from dataclasses import dataclass

from swatchwright.piece.check import checked_piece
from swatchwright.piece.faces import face_areas
from swatchwright.piece.part import Face, Part, Piece

__all__ = ["PartArea", "PieceAreas", "ZoneArea", "areas_of", "part_areas"]

_MM2 = 1e-6


@dataclass(frozen=True, slots=True)
class PartArea:
    """What is painted of all the parts of one line.

    Parameters
    ----------
    name, count
        Of the part.
    zone
        Its colour zone.
    area
        m2 painted in this zone, of all of them together.
    """

    name: str
    count: int
    zone: str
    area: float


@dataclass(frozen=True, slots=True)
class ZoneArea:
    """A colour zone and its painted area, m2."""

    zone: str
    area: float


@dataclass(frozen=True, slots=True)
class PieceAreas:
    """The painted areas of a piece.

    Parameters
    ----------
    parts
        In their order; a part in two colours has a row for each.
    zones
        In the order in which they first come.
    total
        m2.
    """

    parts: tuple[PartArea, ...]
    zones: tuple[ZoneArea, ...]
    total: float


def areas_of(piece: Piece) -> PieceAreas:
    """Add up the painted faces of a piece.

    Raises
    ------
    MendableError
        If the piece cannot be.
    """
    rows = [row for part in checked_piece(piece).parts for row in part_areas(part)]
    zones: dict[str, float] = {}
    for row in rows:
        zones[row.zone] = zones.get(row.zone, 0.0) + row.area
    return PieceAreas(
        tuple(rows),
        tuple(ZoneArea(zone, area) for zone, area in zones.items()),
        sum(zones.values()),
    )


def part_areas(part: Part) -> list[PartArea]:
    """Give what is painted of a part: a row for each of its colours, none where it is left bare."""
    areas = face_areas(part)
    by_zone: dict[str, float] = {}
    for face in part.painted:
        zone = (part.inside_zone or part.zone) if face is Face.INSIDE else part.zone
        by_zone[zone] = by_zone.get(zone, 0.0) + part.count * areas[face] * _MM2
    return [PartArea(part.name, part.count, zone, area) for zone, area in by_zone.items()]
