"""What a sheet says, as plain values: nothing of it is looked up or reckoned when it is drawn."""

from __future__ import annotations

from dataclasses import dataclass

from swatchwright.measures.kitchen import Country
from swatchwright.values import Lab

__all__ = [
    "BatchLine",
    "BuyLine",
    "CautionBox",
    "Ending",
    "NoteLine",
    "PaintLine",
    "PieceLine",
    "PlanLine",
    "SheetContent",
    "Units",
    "Zone",
]


@dataclass(frozen=True, slots=True)
class Units:
    """In what amounts are told, beside parts; at least one.

    Parameters
    ----------
    ml, grams
        Millilitres, grams.
    spoons
        Cups and spoons of a country; None for none.
    """

    ml: bool = True
    grams: bool = True
    spoons: Country | None = None


@dataclass(frozen=True, slots=True)
class PaintLine:
    """One paint of a recipe.

    Parameters
    ----------
    id, name
        As on the shelf.
    parts
        Parts of it, above 0: whole ones where the zone says that they can be counted.
    share
        Of the wet volume, 0-1.
    ml
        To measure, ml.
    grams
        The same; None where its density is not known.
    spoons
        The same in cups and spoons, in words; empty where not asked for.
    own
        Its own dry colour.
    how_known
        In a few words.
    tins
        Sizes sold, ml.
    kind
        What kind of paint it is: the finish that it dries to, in a word.
    label
        What the shelf notes of it, as the number of its tin; empty for nothing.
    note
        What is to be said of it: that it has changed since, for example.
    name_tells
        Whether its name alone tells which paint of the shelf it is.
    """

    id: str
    name: str
    parts: float
    share: float
    ml: float
    grams: float | None
    spoons: str
    own: Lab
    how_known: str
    tins: tuple[float, ...]
    kind: str = ""
    label: str = ""
    note: str = ""
    name_tells: bool = True


@dataclass(frozen=True, slots=True)
class Ending:
    """How a mix looks in the end on some parts of the piece, which are said, under their layers."""

    parts: str
    lab: Lab


@dataclass(frozen=True, slots=True)
class Zone:
    """A colour zone of the piece with its recipe.

    Parameters
    ----------
    name
        “body”, “drawers”, as it is kept; empty for the whole piece.
    wanted
        The colour that is wanted; None where none was given.
    dry, wet
        The mix, as computed.
    finished
        Under all layers of its finish; None where it has none, or where these are not the same on
        all parts of the piece that have this mix.
    apart
        CIEDE2000 of the dry mix, measured by the ml, from the wanted colour; None without one.
    apart_in_parts
        The same by the parts; None without a wanted colour, or where they are not told.
    in_parts
        Whether the mix can also be told in parts, as there are few enough to count.
    paints
        In the order of the recipe, the largest share first.
    volume
        Of all of them, ml.
    volume_from
        Where the volume comes from, in words.
    pour
        How to pour, in sentences.
    finish
        The layers over it in words, the lowest first.
    minding
        What to mind with them, in sentences.
    trust
        How sure all of it is, in sentences.
    code
        The recipe as text for a code that can be scanned.
    tried
        How near a sample of it came; empty where none was tried.
    sample
        The same, or how near an untried mix usually comes, in sentences.
    check
        What to do before the batch is mixed, in sentences.
    ends
        Under the layers of each part, where these are not the same on all that have this mix.
    wish
        What the client wants now in place of the wanted colour, in sentences.
    """

    name: str
    wanted: Lab | None
    dry: Lab
    wet: Lab
    finished: Lab | None
    apart: float | None
    apart_in_parts: float | None
    in_parts: bool
    paints: tuple[PaintLine, ...]
    volume: float
    volume_from: str
    pour: tuple[str, ...]
    finish: tuple[str, ...]
    minding: tuple[str, ...]
    trust: tuple[str, ...]
    code: str
    tried: str = ""
    sample: tuple[str, ...] = ()
    check: tuple[str, ...] = ()
    ends: tuple[Ending, ...] = ()
    wish: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class BatchLine:
    """A batch that was mixed: its number, day, ml, zone as it is kept, and what was noted of it."""

    number: int
    day: str
    ml: float
    zone: str
    note: str


@dataclass(frozen=True, slots=True)
class PieceLine:
    """What one product takes on one zone: m2, coats, and ml with what the tools keep.

    `told` is the same in whole ml, which add up over the zones.
    """

    zone: str
    product: str
    area: float
    coats: int
    ml: float
    told: float


@dataclass(frozen=True, slots=True)
class BuyLine:
    """What is needed of one paint, ml, and in words what to buy for it and what that costs.

    The cost is empty where it is not known, or nothing is to be bought.
    """

    name: str
    ml: float
    words: str
    cost: str = ""


@dataclass(frozen=True, slots=True)
class PlanLine:
    """A step of the plan: its day, its time, what, and how long to wait after it, in words."""

    day: str
    time: str
    title: str
    wait: str


@dataclass(frozen=True, slots=True)
class CautionBox:
    """What can hurt, why, and what to do about it."""

    danger: str
    why: str
    do: str


@dataclass(frozen=True, slots=True)
class NoteLine:
    """A note with its day."""

    day: str
    text: str


@dataclass(frozen=True, slots=True)
class SheetContent:
    """All that is on a recipe sheet.

    Parameters
    ----------
    title
        The piece.
    client, brief, room_light
        Who it is for, what was asked, and the light where it will stand; each may be empty.
    day
        Of the sheet, as in 2026-03-01.
    job
        Id of the job; empty where there is none.
    units
        In what amounts are told.
    zones
        At least one.
    batches, piece, mixed, buy, plan, notes
        What is known of each; empty where nothing is. What to buy is for what is mixed here.
    size
        Width, height and depth of the piece in words; empty where it is not known.
    buy_cost
        What all that is to buy costs, in a sentence; empty where no price is known.
    ready
        When the piece may be used by the plan; empty without one.
    cautions
        What can hurt.
    again
        How to make the colour again, in sentences.
    invented
        Whether a paint of it is invented for a demonstration.
    gaps
        What is left out of the sheet, and why.
    gaps_in
        Which parts are left out: ``piece``, ``plan`` or ``finish``.
    jars
        The washes and glazes over the zones, told as mixes with what thins them: only labels.
    """

    title: str
    client: str
    brief: str
    room_light: str
    day: str
    job: str
    units: Units
    zones: tuple[Zone, ...]
    batches: tuple[BatchLine, ...] = ()
    size: str = ""
    piece: tuple[PieceLine, ...] = ()
    mixed: tuple[str, ...] = ()
    buy: tuple[BuyLine, ...] = ()
    buy_cost: str = ""
    plan: tuple[PlanLine, ...] = ()
    ready: str = ""
    cautions: tuple[CautionBox, ...] = ()
    notes: tuple[NoteLine, ...] = ()
    again: tuple[str, ...] = ()
    invented: bool = False
    gaps: tuple[str, ...] = ()
    gaps_in: tuple[str, ...] = ()
    jars: tuple[Zone, ...] = ()
