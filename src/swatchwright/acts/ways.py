"""The ways to take a coat where a client wants it: a wash over it, or something in the pot."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from math import hypot

from swatchwright.acts.layering import Parts, Primer, base_coat, paints_for
from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.recipes import check_volume
from swatchwright.colour.difference import ACCEPTED, delta_e_2000
from swatchwright.colour.spectrum import lab_of
from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.mixing.asked import Asked, asked_for
from swatchwright.mixing.knock_back import WORTH, Washing, as_grey_as, best_washes
from swatchwright.mixing.mend import Additions, Pot, additions
from swatchwright.mixing.wash_risks import Risk, risks_of_stirring, risks_of_wash
from swatchwright.paint.layered import Base, look_of
from swatchwright.paint.layers import Layer, LayerKind
from swatchwright.paint.paints import Paint
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab

__all__ = ["MOST_KEPT", "Wanted", "Way", "WayKind", "Ways", "ways_to"]

MOST_KEPT = 10

_ROOM = 1.25
_MOST_OF_IT = 0.6

_NOT_GREYER = mark(
    "The colour to be as grey as is no greyer than the mix: the ways shown make it more vivid."
)
_MIX_HIDES = mark("Stirring into the pot is reckoned for a coat that hides.")
_LITTLE_ROOM = mark(
    "The tub has little room left: in a larger one more could be stirred in, and come nearer."
)
_COVERED = mark(
    "Keep a thinned wash covered and mix little at a time: the end of a batch that stood in warm "
    "air goes on heavier than its start."
)
_NOTHING = mark(
    "Nothing on the shelf, as a wash or in the pot, brings it nearer by enough to be seen: leave "
    "it as it is."
)


class WayKind(StrEnum):
    """What is done."""

    WASH = "wash"
    STIR = "stir"


@dataclass(frozen=True, slots=True)
class Wanted:
    """Where a client wants a coat to go; just one of the three.

    Parameters
    ----------
    asked
        A word and how far, 0-1, as `mixing.asked` has them.
    grey_as
        A colour to be as grey as: its chroma, at the coat's own hue and lightness.
    colour
        A colour to become.
    """

    asked: tuple[Asked, float] | None = None
    grey_as: Lab | None = None
    colour: Lab | None = None

    def aim(self, now: Lab) -> Lab:
        """Give the colour to go for.

        Raises
        ------
        MendableError
            If not just one of the three is given, or it cannot be.
        """
        if sum(v is not None for v in (self.asked, self.grey_as, self.colour)) != 1:
            raise MendableError(
                say("It is not clear where the colour should go."),
                say(
                    "Give one of: a word such as “less vivid” and how far, a colour to be as grey "
                    "as, or the wanted colour."
                ),
            )
        if self.asked is not None:
            return asked_for(now, *self.asked)
        return as_grey_as(now, self.grey_as) if self.grey_as else self.colour or now


@dataclass(frozen=True, slots=True)
class Way:
    """One way to get there.

    Parameters
    ----------
    kind
        A wash over the coat, or something stirred into the rest of the pot.
    layer
        The wash; None for stirring.
    washing
        The same with its paints; None for stirring.
    additions
        What to stir in; None for a wash.
    flat, dry, grain
        The dry colour on the flats, on the whole, and in the grain; alike for stirring.
    delta_e
        CIEDE2000 of the whole from the aim.
    felt
        The same over flat, whole and grain: what the ways are ranked by.
    risks
        What to weigh before it is done.
    """

    kind: WayKind
    layer: Layer | None
    washing: Washing | None
    additions: Additions | None
    flat: Lab
    dry: Lab
    grain: Lab
    delta_e: float
    felt: float
    risks: tuple[Risk, ...]


@dataclass(frozen=True, slots=True)
class Ways:
    """The ways to take a coat somewhere, the nearest first.

    Parameters
    ----------
    now, aim
        Its dry colour, and where it should go.
    before
        CIEDE2000 between the two: what doing nothing comes to.
    ways
        Each nearer than doing nothing by 0.4 and more; empty where nothing is.
    notes
        What was assumed, and what to mind.
    """

    now: Lab
    aim: Lab
    before: float
    ways: tuple[Way, ...]
    notes: tuple[str, ...]


def ways_to(
    shelf: Shelf,
    parts: Parts,
    wanted: Wanted,
    *,
    ground: Primer | None = None,
    left: float = 0.2,
    pot: float = 250.0,
    tub: float | None = None,
    only: Sequence[str] | None = None,
    keep: int = 3,
) -> Ways:
    """Find the washes that take a coat where it is wanted, and what to stir into the pot instead.

    Parameters
    ----------
    shelf
        The paints.
    parts
        Ids and amounts of the mix the coat is of.
    wanted
        Where it should go.
    ground
        What is below the coat, where it may not hide.
    left
        Share of the wet wash that is left after wiping, above 0 to 1.
    pot
        ml of the mix that are left.
    tub
        ml that their tub holds; a quarter more than is in it if None.
    only
        Ids of the paints that may be used; all of the shelf if None.
    keep
        How many washes at the most, 1-10.

    Raises
    ------
    MendableError
        If the mix, what is wanted, or a number cannot be.
    """
    check_volume(pot)
    if not 1 <= keep <= MOST_KEPT:
        raise MendableError(
            say("{many} washes were asked for.", many=keep),
            say("Ask for 1 to {most}.", most=MOST_KEPT),
        )
    look = look_of_mix(shelf, parts)
    base = base_coat(shelf, parts, ground)
    now = Lab.of(lab_of(look_of(base, ()))[0])
    aim = wanted.aim(now)
    before = float(delta_e_2000(aim.triple, now.triple))
    may = paints_for(shelf, look.paints, only)
    washes = best_washes(base, aim, may, left=left, keep=keep)
    mixed = Pot(look.paints, tuple(share * pot for share in look.shares))
    room = pot * _ROOM if tub is None else tub
    found = [_wash(washing, base, now, aim) for washing in washes]
    found += _stirred(mixed, aim, may, room)
    better = [way for way in found if way.felt < before - WORTH]
    return Ways(
        now=now,
        aim=aim,
        before=before,
        ways=tuple(sorted(better, key=lambda way: way.felt)),
        notes=(*look.notes, *_notes(wanted, now, ground, better, room - pot)),
    )


def _wash(washing: Washing, base: Base, now: Lab, aim: Lab) -> Way:
    layer = Layer(
        LayerKind.WASH,
        tuple((p.id, float(n)) for p, n in zip(washing.paints, washing.parts, strict=True)),
        water=washing.water,
        left=washing.left,
        passes=washing.passes,
    )
    return Way(
        WayKind.WASH,
        layer,
        washing,
        None,
        washing.flat,
        washing.dry,
        washing.grain,
        washing.delta_e,
        washing.felt,
        risks_of_wash(washing, base, now, aim),
    )


def _stirred(pot: Pot, aim: Lab, may: Sequence[Paint], tub: float) -> list[Way]:
    added = additions(pot, aim, may, tub)
    if not added.steps:
        return []
    after = added.steps[-1].after
    return [
        Way(
            WayKind.STIR,
            None,
            None,
            added,
            after,
            after,
            after,
            added.delta_e,
            added.delta_e,
            risks_of_stirring(pot, added, aim),
        )
    ]


def _notes(
    wanted: Wanted, now: Lab, ground: Primer | None, found: Sequence[Way], spare: float
) -> tuple[str, ...]:
    notes = []
    cloth = wanted.grey_as
    if cloth is not None and hypot(cloth.a, cloth.b) > hypot(now.a, now.b):
        notes.append(_NOT_GREYER)
    if ground is not None:
        notes.append(_MIX_HIDES)
    if any(way.kind is WayKind.WASH for way in found):
        notes.append(_COVERED)
    if any(way.kind is WayKind.STIR and _is_short(way, spare) for way in found):
        notes.append(_LITTLE_ROOM)
    if not found:
        notes.append(_NOTHING)
    return tuple(say(note) for note in notes)


def _is_short(way: Way, spare: float) -> bool:
    """Tell whether stirring stays off and fills most of the room that the tub has to spare, ml."""
    steps = () if way.additions is None else way.additions.steps
    return way.delta_e > ACCEPTED and sum(step.ml for step in steps) > _MOST_OF_IT * spare
