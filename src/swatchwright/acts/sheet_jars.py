"""Labels for the jars of washes: their paints and parts, what thins them, and what they are for."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import suppress
from itertools import takewhile

from swatchwright.acts.amounts_whole import poured
from swatchwright.acts.finish import preview
from swatchwright.acts.finish_words import thinner_word
from swatchwright.acts.mix import own_colours
from swatchwright.acts.sheet_amounts import Reckoned
from swatchwright.acts.sheet_mixes import KeptMix
from swatchwright.acts.sheet_zone import Mix
from swatchwright.errors import MendableError
from swatchwright.language import listed, say
from swatchwright.mixing.recipe import can_be_counted
from swatchwright.paint.layers import Layer, Stack, wash_of
from swatchwright.paint.paints import Paint
from swatchwright.piece.amounts import Batch
from swatchwright.piece.names import paint_word, zone_word
from swatchwright.piece.order import ProductKind
from swatchwright.sheet.content import PaintLine, Zone
from swatchwright.values import Lab

__all__ = ["jars_of"]


def jars_of(reckoned: Reckoned | None, kept: Sequence[KeptMix]) -> tuple[Zone, ...]:
    """Give what the label says of the jar of each wash and glaze over some mixes.

    Of a wash whose paints or amounts are not known there is none.

    Parameters
    ----------
    reckoned
        Amounts of the piece; None where they are not known.
    kept
        The mixes that are told.
    """
    batches = () if reckoned is None else reckoned.amounts.batches
    found = []
    for batch in batches:
        if batch.kind is ProductKind.WASH and reckoned is not None:
            with suppress(MendableError):
                found += list(_jar(batch, reckoned, kept))
    return tuple(found)


def _jar(batch: Batch, reckoned: Reckoned, kept: Sequence[KeptMix]) -> Iterator[Zone]:
    """Give the jar of a wash that lies over one of some mixes; none where it lies over none."""
    rows = reckoned.amounts.coatings
    zones = [row.zone for row in rows if row.product == batch.product]
    thinned = {product.id: product.thinned for product in reckoned.order.products}[batch.product]
    below = [(k.mix, zone) for zone in zones for k in kept if zone in k.mix.on]
    for mix, zone in below[:1]:
        laid = mix.layers.over(zone)
        layer = next((one for one in laid.layers if _is_of(one, batch, thinned)), None)
        if layer is not None:
            named = [] if {row.zone for row in rows} == set(zones) else zones
            yield _told(batch, layer, mix, _seen(mix, laid, layer), named)


def _is_of(layer: Layer, batch: Batch, thinned: float) -> bool:
    """Tell whether a layer is of the wash of a batch."""
    same = {id_ for id_, _ in layer.paints} == {paint.id for paint in batch.paints}
    return layer.is_paint and same and float(wash_of(layer).water) == thinned


def _seen(mix: Mix, laid: Stack, layer: Layer) -> Lab:
    """Give how a mix looks when a layer of its is dry."""
    below = tuple(takewhile(lambda one: one is not layer, laid.layers))
    return preview(mix.shelf, mix.parts, Stack((*below, layer))).steps[-1].dry


def _told(batch: Batch, layer: Layer, mix: Mix, seen: Lab, zones: Sequence[str]) -> Zone:
    """Tell a wash as a mix of its paints and of what thins them."""
    paints = tuple(mix.shelf.paint(id_) for id_, _ in layer.paints)
    parts = [n for _, n in layer.paints]
    parts.append(sum(parts) * float(wash_of(layer).water))
    *ml, water = poured(batch)
    owned = own_colours(paints)
    volumes = dict(zip((paint.id for paint in batch.paints), ml, strict=True))
    lines = [
        _line(paint, n, volumes[paint.id], own)
        for paint, n, own in zip(paints, parts, owned, strict=False)
    ]
    thinner = PaintLine(
        "", thinner_word(layer, paints), parts[-1], 0.0, water, water, "", seen, "", ()
    )
    product = paint_word(batch.product)
    parted = listed(map(zone_word, zones))
    return Zone(
        name=say("{product} for {parts}", product=product, parts=parted) if zones else product,
        wanted=None,
        dry=seen,
        wet=seen,
        finished=None,
        apart=None,
        apart_in_parts=None,
        in_parts=can_be_counted(parts),
        paints=(*lines, thinner) if parts[-1] else tuple(lines),
        volume=round(batch.mix_ml, 1),
        volume_from="",
        pour=(),
        finish=(),
        minding=(),
        trust=(),
        code="",
    )


def _line(paint: Paint, parts: float, ml: float, own: Lab) -> PaintLine:
    grams = None if paint.density is None else round(ml * paint.density, 1)
    return PaintLine(paint.id, paint.name, parts, 0.0, ml, grams, "", own, "", ())
