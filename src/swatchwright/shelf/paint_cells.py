"""What the cells of a shelf file say of a paint, other than its spectra."""

from __future__ import annotations

from dataclasses import replace

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.paint.family import FAMILIES, Family, Finish, family_of
from swatchwright.paint.paints import HowKnown, Tin
from swatchwright.shelf.rows import Row

__all__ = [
    "HIDING",
    "NO_PRICE",
    "PER_MM",
    "family_cell",
    "hiding_cell",
    "how_known_cell",
    "own_finish_cells",
    "tins_cell",
    "unit_cells",
]

PER_MM = "per mm"
"""What stands under ``unit`` where K and S are per mm of dry film and not to be scaled."""

NO_PRICE = "-"
"""What stands for the price of a tin that has none."""

HIDING = {True: "read", False: "guessed"}
"""What stands under ``hiding``: whether a coat over black was read."""

# Far beyond what any paint does between wet and dry.
_MOST_WET = 10.0
_MOST_MILK = 100.0


def family_cell(row: Row, notes: list[str]) -> Family:
    """Read the family; one we do not know becomes emulsion matte, with a note."""
    text = row.text("family")
    family = family_of(text)
    if family is None:
        notes.append(
            say(
                "The finish family “{text}” is not one we know; taken as emulsion matte. "
                "Known are: {families}.",
                text=text,
                families=", ".join(Family),
            )
        )
        return Family.EMULSION
    return family


def how_known_cell(row: Row) -> HowKnown:
    """Read where K and S come from; guessed where nothing is said."""
    text = row.text("how_known").lower()
    try:
        return HowKnown(text) if text else HowKnown.GUESSED
    except ValueError as error:
        raise MendableError(
            say(
                "Line {line} of the shelf has “{text}” under {column}.",
                line=row.line,
                text=text,
                column="how_known",
            ),
            say("Use one of: {words}.", words=", ".join(HowKnown)),
        ) from error


def hiding_cell(row: Row) -> bool | None:
    """Read whether a coat over black was read; None where nothing is said."""
    text = row.text("hiding").lower()
    if text and text not in HIDING.values():
        raise MendableError(
            say(
                "Line {line} of the shelf has “{text}” under {column}.",
                line=row.line,
                text=text,
                column="hiding",
            ),
            say("Use one of: {words}.", words=", ".join(HIDING.values())),
        )
    return text == HIDING[True] if text else None


def unit_cells(rows: list[Row]) -> str:
    """Read the unit of K and S, the same in all rows; empty where nothing is said."""
    found = {row.text("unit").lower().replace("1/mm", PER_MM): row.line for row in rows}
    for text, line in found.items():
        if text not in {"", PER_MM}:
            raise MendableError(
                say(
                    "Line {line} of the shelf has “{text}” under {column}.",
                    line=line,
                    text=text,
                    column="unit",
                ),
                say("Write “{unit}” there for all paints, or leave the column out.", unit=PER_MM),
            )
    return PER_MM if PER_MM in found else ""


def own_finish_cells(row: Row, family: Family) -> Finish | None:
    """Read what a paint does between wet and dry by itself; None where nothing is said."""
    usual = FAMILIES[family]
    given = {
        "glare": row.within("glare", 0, 1),
        "wet_scattering": row.between("wet_scattering", None, 0, _MOST_WET),
        "milk": row.within("milk", 0, _MOST_MILK),
    }
    own = {name: value for name, value in given.items() if value is not None}
    return replace(usual, **own) if own else None  # type: ignore[arg-type]


def tins_cell(row: Row) -> tuple[Tin, ...]:
    """Read the sizes sold and what they cost."""
    sizes = [t for t in row.text("tins_ml").replace("|", ";").split(";") if t.strip()]
    prices = [t for t in row.text("prices").replace("|", ";").split(";") if t.strip()]
    if prices and len(prices) != len(sizes):
        raise MendableError(
            say(
                "Line {line} of the shelf has {sizes} tin sizes and {prices} prices.",
                line=row.line,
                sizes=len(sizes),
                prices=len(prices),
            ),
            say("Give one price for each size, in the same order, parted by semicolons."),
        )
    known = [None if p.strip() == NO_PRICE else row.parsed("prices", p) for p in prices]
    if any(price is not None and price < 0 for price in known):
        raise MendableError(
            say("Line {line} of the shelf has a price below zero.", line=row.line),
            say("Give what a tin costs."),
        )
    ml = [row.checked("tins_ml", row.parsed("tins_ml", size), 0, 1e6) for size in sizes]
    return tuple(Tin(*tin) for tin in zip(ml, known or [None] * len(sizes), strict=True))
