"""The ways to take a coat where a client wants it.

A piece that is painted takes a wash over it, or a full new coat. Paint that is in the pot still
takes something stirred in.

Where a wax, an oil or a varnish lies over the coat, or will, all colours are those seen with it on.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import hypot

from swatchwright.acts.client_wish import Stands, Wanted
from swatchwright.acts.correct import Correction, correct_pot
from swatchwright.acts.layering import (
    BARE,
    Parts,
    Primer,
    base_coat,
    coats_of_stack,
    paints_for,
    without_washes,
)
from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.mixes_in_use import WHOLE_PIECE
from swatchwright.acts.recipes import check_volume
from swatchwright.acts.recoat import PER_M2, Recoat, ToPaint, new_coat
from swatchwright.acts.ways_values import Way, WayKind, Ways, of_every_wash
from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import lab_of
from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.mixing.knock_back import WORTH, Washing, best_washes
from swatchwright.mixing.wash_risks import risks_of_recoat, risks_of_stirring, risks_of_wash
from swatchwright.paint.layered import Base, Coat, look_of
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab

__all__ = ["MOST_KEPT", "Way", "WayKind", "Ways", "of_every_wash", "ways_to"]

MOST_KEPT = 10

_NOT_GREYER = mark(
    "The colour to be as grey as is no greyer than the mix: the ways shown make it more vivid."
)
_MIX_HIDES = mark("Stirring into the pot is reckoned for a coat that hides.")
_WASHES_GO = mark(
    "The washes and glazes that lie there are left out here: a wash of these goes in their place."
)
_STIRRED_INSTEAD = mark(
    "The washes and glazes that lie there are left out here: what is stirred in goes in their "
    "place."
)
_ON_ALREADY = mark(
    "If the wax, oil or varnish is on already, neither wash nor paint holds on it: take it off or "
    "dull it first as its label says, and lay it on again afterwards."
)
_COVERED = mark(
    "Stir the paint of a wash once for the whole job, so that the colour stays the same, and thin "
    "only what you use within the hour: what stood in warm air goes on heavier (common practice)."
)
_NOTHING = mark(
    "Nothing on the shelf, as a wash or in the pot, brings it nearer by enough to be seen: leave "
    "it as it is."
)


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
    over: Stack = BARE,
    stands: Stands | None = None,
    surface: ToPaint = PER_M2,
    zone: str | None = None,
) -> Ways:
    """Find what takes a coat where it is wanted.

    For a piece that is painted that is a wash over it, or a full new coat; for paint in the pot it
    is something to stir in. Where it was not said how far it has come, washes and stirring in.

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
        How full their pot may get, ml, with what is in it now; a quarter more than that if None.
    only
        Ids of the paints that may be used; all of the shelf if None.
    keep
        How many washes at the most, 1-10.
    over
        What lies over the coat, or will. A wash goes straight over the coat, in place of the
        washes and glazes there; what is clear stays over it.
    stands
        Whether it is painted already or in the pot; None where that is not known.
    surface
        What a full new coat is to go over.
    zone
        The part of the piece that is asked of: only what lies over it counts, and a wash that is
        found goes on it alone. What goes on all of the piece where that is empty or `all`; all
        of `over` where it is None.

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
    part = "" if zone in {None, WHOLE_PIECE} else str(zone)
    over = over if zone is None else over.over(part)
    base, stays = base_coat(shelf, parts, ground), without_washes(over)
    coat = _Coat(base, coats_of_stack(shelf, stays), wanted, part)
    before = float(delta_e_2000(coat.aim.triple, coat.now.triple))
    may = paints_for(shelf, look.paints, only)
    found: list[Way] = []
    if stands is not Stands.POT:
        washes = best_washes(base, coat.aim, may, left=left, keep=keep, over=coat.over)
        found += [coat.washed(washing) for washing in washes]
    if stands is not Stands.PAINTED:
        volumes = [(p.id, share * pot) for p, share in zip(look.paints, look.shares, strict=True)]
        stirred = correct_pot(shelf, volumes, wanted=coat.aim, tub=tub, over=stays, only=only)
        found += [coat.stirred(stirred)] if stirred.additions.steps else []
    if stands is Stands.PAINTED:
        coated = new_coat(shelf, may, coat.aim, over=coat.over, surface=surface)
        found += [] if coated is None else [coat.coated(coated)]
    better = [way for way in found if way.felt < before - WORTH]
    notes = (*_notes(wanted, coat.now, ground, better), *_of_layers(over, stays, stands))
    return Ways(
        now=coat.now,
        aim=coat.aim,
        before=before,
        ways=tuple(sorted(better, key=lambda way: (way.kind is WayKind.RECOAT, way.felt))),
        notes=(*look.notes, *(say(note) for note in notes)),
        over=stays.layers,
    )


class _Coat:
    """A coat, what stays over it, and where both together should go."""

    def __init__(self, base: Base, over: tuple[Coat, ...], wanted: Wanted, zone: str) -> None:
        self.base, self.over, self.zone = base, over, zone
        self.now = Lab.of(lab_of(look_of(base, over))[0])
        self.aim = wanted.aim(self.now)

    def washed(self, washing: Washing) -> Way:
        """Give the way of laying a wash over the coat."""
        layer = Layer(
            LayerKind.WASH,
            tuple((p.id, float(n)) for p, n in zip(washing.paints, washing.parts, strict=True)),
            water=washing.water,
            left=washing.left,
            passes=washing.passes,
            zone=self.zone,
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
            risks_of_wash(washing, self.base, self.now, self.aim, self.over),
        )

    def stirred(self, found: Correction) -> Way:
        """Give the way of stirring something into the pot."""
        added = found.additions
        after = added.steps[-1].after
        return Way(
            WayKind.STIR,
            None,
            None,
            added,
            after,
            after,
            after,
            added.delta_e,
            added.delta_e,
            risks_of_stirring(found.pot, added, self.aim, self.over),
            found.roomier,
        )

    def coated(self, found: Recoat) -> Way:
        """Give the way of a full new coat."""
        return Way(
            WayKind.RECOAT,
            None,
            None,
            None,
            found.seen,
            found.seen,
            found.seen,
            found.delta_e,
            found.delta_e,
            risks_of_recoat(found.recipe, self.now, found.seen, self.aim),
            recoat=found,
        )


def _notes(
    wanted: Wanted, now: Lab, ground: Primer | None, found: Sequence[Way]
) -> tuple[str, ...]:
    notes = []
    cloth = wanted.grey_as
    if cloth is not None and hypot(cloth.a, cloth.b) > hypot(now.a, now.b):
        notes.append(_NOT_GREYER)
    if ground is not None:
        notes.append(_MIX_HIDES)
    if any(way.kind is WayKind.WASH for way in found):
        notes.append(_COVERED)
    if not found:
        notes.append(_NOTHING)
    return tuple(notes)


def _of_layers(over: Stack, stays: Stack, stands: Stands | None) -> tuple[str, ...]:
    """Say what becomes of the layers over the coat."""
    left_out = _STIRRED_INSTEAD if stands is Stands.POT else _WASHES_GO
    on_it = stands is Stands.PAINTED and bool(stays.layers)
    return (*([] if over == stays else [left_out]), *([_ON_ALREADY] if on_it else []))
