"""What a plan is made from: what the piece is, what goes on, where and when it is worked on."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from swatchwright.language import mark, mark_in
from swatchwright.values import Lab

__all__ = [
    "Age",
    "Carrier",
    "FinishKind",
    "Laid",
    "Lead",
    "Loose",
    "PaintTimes",
    "PlanOrder",
    "Pot",
    "Primer",
    "Room",
    "Surface",
    "Use",
    "Week",
    "Which",
]


class Surface(StrEnum):
    """What is on the piece now."""

    RAW = mark("raw wood")
    PAINTED = mark("painted")
    VARNISHED = mark("varnished")
    WAXED = mark("waxed")
    VENEER = mark("veneer")
    LAMINATE = mark("laminate")
    METAL = mark("metal")
    UNKNOWN = mark("unknown")


class Age(StrEnum):
    """How old what is on it may be.

    Recent means known to be from after 1992, when the last general sale of leaded paint ended in
    the United Kingdom ([LeadUK]); the United States take 1978 ([LeadUS]).
    """

    RECENT = "recent"
    OLD = "old"
    UNKNOWN = "unknown"


class Lead(StrEnum):
    """What is known of lead in what is on it."""

    NOT_ANSWERED = "not answered"
    TESTED_NEGATIVE = "tested negative"
    TREAT_AS_LEAD = "treat as lead"


class Carrier(StrEnum):
    """What carries a paint, and thins it."""

    WATER = mark("water-borne")
    SOLVENT = mark("solvent-borne")


class Primer(StrEnum):
    """What goes on before the paint."""

    NONE = "none"
    ORDINARY = mark("primer")
    ADHESION = mark("adhesion primer")


class FinishKind(StrEnum):
    """What goes on after the paint."""

    NONE = "none"
    WAX = mark("wax")
    VARNISH = mark("varnish")
    OIL = mark("oil")


class Use(StrEnum):
    """Who will live with it, where that asks for care."""

    CHILDREN = "children"
    FOOD = "food"


class Loose(StrEnum):
    """What of a piece is taken off or out before it is painted."""

    LID = "lid"
    DRAWERS = "drawers"
    DOORS = "doors"


class Which(StrEnum):
    """A way that the piece can be stood or laid on, or painted from."""

    UNDERSIDE = mark_in("side", "underside")
    TOP = mark_in("side", "top")
    FRONT = mark_in("side", "front")
    BACK = mark_in("side", "back")
    SIDES = mark_in("side", "sides")
    INSIDE = mark_in("side", "inside")


@dataclass(frozen=True, slots=True)
class PaintTimes:
    """How long a product dries, in minutes, as its tin says.

    Parameters
    ----------
    touch_dry
        Until a finger leaves no mark.
    recoat
        Until the next coat may go on.
    hard
        Until it may be used.
    """

    touch_dry: float
    recoat: float
    hard: float


@dataclass(frozen=True, slots=True)
class Room:
    """Where it dries.

    Parameters
    ----------
    temperature
        Celsius.
    humidity
        Relative humidity, %.
    tin_allows
        Whether the tin allows it, where it is colder or damper than is usual.
    """

    temperature: float = 20.0
    humidity: float = 50.0
    tin_allows: bool = False


@dataclass(frozen=True, slots=True)
class Week:
    """When she works: days (0 Monday to 6 Sunday) and minutes of the day, local time."""

    days: tuple[int, ...] = (0, 1, 2, 3, 4)
    begin: int = 9 * 60
    end: int = 17 * 60


@dataclass(frozen=True, slots=True)
class Laid:
    """A wash, a glaze or a clear finish: what it is stirred of, and how it is laid.

    Parameters
    ----------
    paints
        Names and parts.
    water
        Parts of water, of a glaze its medium, to one of paint.
    glaze
        Whether it is a glaze.
    wiped
        Whether it is wiped back.
    left
        Share of it that is left then; None where that is not known.
    passes
        How often it is laid.
    zone
        The part of the piece that it goes on, as “body”; empty for all of it.
    faces
        From where that part is seen; None where that is not known, none where the piece has no
        such part.
    area
        m2 of it; None where that is not known.
    ml
        Of it as it is laid, for one pass; None where that is not known.
    finish
        Of a clear finish where there are several, which one it is; else None.
    """

    paints: tuple[tuple[str, float], ...]
    water: float
    glaze: bool = False
    wiped: bool = True
    passes: int = 1
    left: float | None = None
    zone: str = ""
    faces: tuple[Which, ...] | None = None
    area: float | None = None
    ml: float | None = None
    finish: FinishKind | None = None


@dataclass(frozen=True, slots=True)
class Pot:
    """One of several colours of a piece, mixed whole in one pot.

    Parameters
    ----------
    on
        The parts that it goes on, as “body”, each with the sides from where it is seen, None where
        these are not known; an empty part is all that has no colour of its own.
    dry
        Its colour; None for parts that have no mix yet.
    ml
        How much of it is mixed at once; None where that is not known.
    """

    on: tuple[tuple[str, tuple[Which, ...] | None], ...]
    dry: Lab | None = None
    ml: float | None = None


@dataclass(frozen=True, slots=True)
class PlanOrder:
    """All that a plan is made from.

    Parameters
    ----------
    name
        Of the piece.
    start
        First day, as 2026-12-01.
    surface, age, lead
        What is on it now.
    area
        m2 to be painted; how long things take is reckoned from it.
    carrier
        Of primer, paint and washes.
    primer
        None for what is usual on such a surface.
    primer_coats
        0 for as many as are usual.
    coats, washes
        Of paint, 0 for a piece that is painted already in this job; of wash.
    finish, finish_coats
        What goes on top; of several finishes the one that is told last.
    stain_block
        Whether knots or stains are sealed first.
    repairs
        Whether there are dents to fill.
    fittings
        Whether there are handles, hinges or locks to take off.
    faces
        What is painted.
    flat
        Whether it lies flat to be painted.
    uses
        Who will live with it.
    primer_times, paint_times, wash_times, finish_times
        What the tins say; None for common practice.
    room, week
        Where and when.
    laid
        What the washes are, in their turn; empty where it is not known.
    loose
        What of the piece comes off or out; None where it is not known.
    seat
        Whether it is sat on.
    own
        What was set by hand and follows nothing else; None where that is not told.
    topped
        On which parts the coats of the finish go, in their turn; empty where each is on all. Where
        there are several finishes, which one goes where.
    wax_times, oil_times, varnish_times
        What the tins say where there are several finishes; None for common practice.
    pots
        The colours of the paint where there are several; empty where it is one.
    """

    name: str
    start: str
    surface: Surface = Surface.UNKNOWN
    age: Age = Age.UNKNOWN
    lead: Lead = Lead.NOT_ANSWERED
    area: float = 2.0
    carrier: Carrier = Carrier.WATER
    primer: Primer | None = None
    primer_coats: int = 0
    coats: int = 2
    washes: int = 0
    finish: FinishKind = FinishKind.NONE
    finish_coats: int = 1
    stain_block: bool = False
    repairs: bool = False
    fittings: bool = True
    faces: tuple[Which, ...] = (Which.FRONT, Which.SIDES, Which.TOP)
    flat: bool = False
    uses: tuple[Use, ...] = ()
    primer_times: PaintTimes | None = None
    paint_times: PaintTimes | None = None
    wash_times: PaintTimes | None = None
    finish_times: PaintTimes | None = None
    room: Room = Room()
    week: Week = Week()
    laid: tuple[Laid, ...] = ()
    loose: tuple[Loose, ...] | None = None
    seat: bool = False
    own: tuple[str, ...] | None = None
    topped: tuple[Laid, ...] = ()
    wax_times: PaintTimes | None = None
    oil_times: PaintTimes | None = None
    varnish_times: PaintTimes | None = None
    pots: tuple[Pot, ...] = ()

    @property
    def tops(self) -> tuple[Laid, ...]:
        """Which clear finish goes where, in their turn; none where there is but one finish."""
        if self.finish is FinishKind.NONE:
            return ()
        return tuple(one for one in self.topped if one.finish not in {None, FinishKind.NONE})

    @property
    def finishes(self) -> tuple[FinishKind, ...]:
        """The clear finishes that go on, each once, in their turn."""
        if self.finish is FinishKind.NONE:
            return ()
        there = (one.finish for one in self.tops if one.faces != () and one.passes)
        return tuple(dict.fromkeys(kind for kind in there if kind)) or (self.finish,)

    def tin_of(self, finish: FinishKind) -> PaintTimes | None:
        """Give what the tin of a clear finish says; None where it is not asked."""
        own = {
            FinishKind.WAX: self.wax_times,
            FinishKind.OIL: self.oil_times,
            FinishKind.VARNISH: self.varnish_times,
        }.get(finish)
        return self.finish_times if own is None and finish is self.finish else own

    @property
    def painted(self) -> bool:
        """Whether it is painted already in this job, so that work begins with what goes over."""
        return self.coats == 0

    @property
    def lead_asked(self) -> bool:
        """Whether lead must be answered before there is a plan: where anything old is rubbed."""
        return self.lead_matters and not self.painted

    @property
    def lead_below(self) -> bool:
        """Whether what lies below paint of this job may hold lead, as nobody has tested it."""
        return self.painted and self.lead_matters and self.lead is not Lead.TESTED_NEGATIVE

    @property
    def lead_matters(self) -> bool:
        """Whether what is on it may hold lead, so that it may not be sanded dry untested.

        Bare wood and laminate carry no coat. Of what is unknown nobody can say that it is recent.
        """
        if self.surface is Surface.UNKNOWN:
            return True
        return self.surface not in {Surface.RAW, Surface.LAMINATE} and self.age is not Age.RECENT

    @property
    def without_dust(self) -> bool:
        """Whether everything is to be rubbed down wet, as it may hold lead."""
        return self.lead is Lead.TREAT_AS_LEAD or (
            self.lead_matters and self.lead is not Lead.TESTED_NEGATIVE
        )
