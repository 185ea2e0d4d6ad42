"""What a sheet of brush-outs says of a film: its thickness and its dry shares."""

from __future__ import annotations

from collections.abc import Mapping

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.paint.paints import Paint
from swatchwright.shelf.brush_outs import Strip

__all__ = ["check_same", "dry_shares", "thickness"]

# Standard deviations of the logarithm of a film's thickness: measured, told in coats, not told.
_MEASURED_SPREAD, _COATS_SPREAD, _UNTOLD_SPREAD = 0.1, 0.3, 0.5


def check_same(id_: str, strips: list[Strip]) -> None:
    """Refuse lines of one film that differ in more than their ground.

    Raises
    ------
    MendableError
        That names the lines, or the film.
    """
    first = strips[0]
    for strip in strips[1:]:
        if (dict(strip.mix), strip.coats, strip.thickness) != (
            dict(first.mix),
            first.coats,
            first.thickness,
        ):
            raise MendableError(
                say(
                    "Lines {first} and {second} of the sheet are both of film {film}, and differ "
                    "in mix or thickness.",
                    first=first.line,
                    second=strip.line,
                    film=id_,
                ),
                say("One id is one film, read over several grounds; give each film its own."),
            )
    if len({not strip.over for strip in strips}) > 1:
        raise MendableError(
            say(
                "Film {film} of the sheet is said to hide, and to lie over a ground too.", film=id_
            ),
            say("If the ground shows through anywhere, say for each line what it lies over."),
        )


def thickness(strip: Strip, paints: Mapping[str, Paint], unit: float) -> tuple[float, float]:
    """Give a film's thickness in the fit's unit, and how surely that is known."""
    if strip.thickness is not None:
        return strip.thickness * unit, _MEASURED_SPREAD
    total = sum(parts for _, parts in strip.mix)
    wet = sum(parts / total / paints[id_].spreading_rate for id_, parts in strip.mix)
    solids = sum(parts / total * paints[id_].volume_solids for id_, parts in strip.mix)
    coats = 1.0 if strip.coats is None else strip.coats
    spread = _UNTOLD_SPREAD if strip.coats is None else _COATS_SPREAD
    return coats * wet * solids * unit, spread


def dry_shares(strip: Strip, paints: Mapping[str, Paint], *, by_weight: bool) -> dict[str, float]:
    """Give shares by dry volume, summing to 1, from parts by wet volume or by weight."""
    dry: dict[str, float] = {}
    for id_, parts in strip.mix:
        density = 1.0
        if by_weight and len(strip.mix) > 1:
            known = paints[id_].density
            if known is None:
                raise MendableError(
                    say("Parts are by weight, and the density of {paint} is not known.", paint=id_),
                    say("Give density_g_per_ml in a line of that paint alone, or parts by volume."),
                )
            density = known
        dry[id_] = parts / density * paints[id_].volume_solids
    total = sum(dry.values())
    return {id_: part / total for id_, part in dry.items()}
