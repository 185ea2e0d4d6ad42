"""What a painter reads of a stack of layers: what each is, and what to mind."""

from __future__ import annotations

from collections.abc import Sequence
from functools import reduce

from swatchwright.language import mark, mark_in, say, say_in
from swatchwright.paint.layers import Layer, LayerKind, Stack, wash_of
from swatchwright.paint.paints import Paint
from swatchwright.paint.wiped import share_left
from swatchwright.shelf.shelf import Shelf

__all__ = [
    "clear_word",
    "duller_words",
    "laid_words",
    "layer_words",
    "notes_on",
    "thinner_word",
]

_THICKENS = mark(
    "Thinned paint thickens as it stands in warm air, so the end of it goes on heavier than its "
    "start: stir the paint of a wash once for the whole job, so that the colour stays the same, "
    "and thin only what you use within the hour (common practice)."
)
_RAGS = mark(
    "Rags with drying oil can heat up and catch fire by themselves: spread them out to dry, "
    "outdoors, never in a heap. The label on the tin says more."
)
_OVER_WAX = mark(
    "Nothing but more wax holds on wax. Lay the rest before it, or clean the wax off first."
)
_OVER_OIL = mark(
    "Water-borne paint on oil or solvent-borne paint needs a dry, rubbed-down surface to hold on."
)
_SEAL = mark(
    "A wash on a chalky or mineral paint sinks in at once and cannot be moved about: damp the "
    "surface first, and try it on an inside face."
)
_YELLOWS = mark("An oil or amber finish yellows on; whites and pale blues show it most.")

_DULLER = {
    LayerKind.WAX: mark(
        "The wax is duller than the paint below it, so it looks a little paler; on a chalky paint "
        "it would deepen it."
    ),
    LayerKind.OIL: mark(
        "The oil is duller than the paint below it, so it looks a little paler; on a chalky paint "
        "it would deepen it."
    ),
    LayerKind.VARNISH: mark(
        "The varnish is duller than the paint below it, so it looks a little paler; on a chalky "
        "paint it would deepen it."
    ),
}

_AFTER_A = "after “a”"
_KINDS = {
    LayerKind.WAX: mark_in("after “a”", "wax"),
    LayerKind.OIL: mark_in("after “a”", "oil"),
    LayerKind.VARNISH: mark_in("after “a”", "varnish"),
}

# Adjectives follow the gender of what they are of in other languages: a varnish is not as a wax.
_OF_VARNISH, _OF_WAX = "of a varnish", "of a wax or an oil"
_LOOKS = (
    *(mark_in("of a varnish", "matte"), mark_in("of a varnish", "eggshell")),
    *(mark_in("of a varnish", "satin"), mark_in("of a varnish", "gloss")),
    *(mark_in("of a varnish", "clear"), mark_in("of a varnish", "amber")),
    *(mark_in("of a wax or an oil", "matte"), mark_in("of a wax or an oil", "eggshell")),
    *(mark_in("of a wax or an oil", "satin"), mark_in("of a wax or an oil", "gloss")),
    *(mark_in("of a wax or an oil", "clear"), mark_in("of a wax or an oil", "amber")),
)


def layer_words(layer: Layer, paints: Sequence[Paint]) -> str:
    """Say what a layer is, as in “a wash of White, clean, 1 to 3 of water, twice”."""
    told = _once(layer, paints)
    if layer.passes == 0:
        return say("{layer}, not laid", layer=told)
    if layer.passes == 1:
        return told
    if layer.passes == 2:
        return say("{layer}, twice", layer=told)
    return say("{layer}, {passes} times", layer=told, passes=layer.passes)


def laid_words(layer: Layer, paints: Sequence[Paint]) -> str:
    """Say what a layer is, as `layer_words` does, and of a wash how far it is wiped back."""
    told, left = layer_words(layer, paints), float(wash_of(layer).left)
    if layer.kind is not LayerKind.WASH or left >= 1 or layer.passes == 0:
        return told
    if layer.passes == 1:
        return say("{wash}, wiped back to {left}", wash=told, left=share_left(left))
    return say("{wash}, wiped back to {left} each time", wash=told, left=share_left(left))


def _once(layer: Layer, paints: Sequence[Paint]) -> str:
    """Say what a layer is, laid once."""
    if not layer.is_paint and not (layer.kind is LayerKind.WAX and paints):
        return _clear_words(layer)
    named, water = _mixed(layer, paints), wash_of(layer).water
    if not layer.is_paint:
        return say(
            "a wax tinted with {paint}, 1 to {water:g} of clear wax", paint=named, water=water
        )
    thinner = thinner_word(layer, paints)
    if layer.kind is LayerKind.GLAZE:
        words = mark("a glaze of {paint}, 1 to {water:g} of {thinner}")
    else:
        words = mark("a wash of {paint}, 1 to {water:g} of {thinner}")
    return say(words, paint=named, water=water, thinner=thinner)


def _mixed(layer: Layer, paints: Sequence[Paint]) -> str:
    if len(paints) == 1:
        return paints[0].name
    rows = zip(paints, layer.paints, strict=False)
    told = [say("{parts:g} of {paint}", parts=n, paint=paint.name) for paint, (_, n) in rows]
    return reduce(_with, told, "")


def _with(first: str, second: str) -> str:
    return say("{first} with {second}", first=first, second=second) if first else second


def thinner_word(layer: Layer, paints: Sequence[Paint]) -> str:
    """Say what the paints of a wash or a glaze are thinned with."""
    if layer.kind is LayerKind.GLAZE:
        return say_in("what thins", "glaze medium")
    if all(p.finish.waterborne for p in paints):
        return say_in("what thins", "water")
    return say_in("what thins", "its own thinner")


def clear_word(kind: LayerKind) -> str:
    """Say what a clear finish is, after “a”."""
    return say_in(_AFTER_A, _KINDS[kind])


def duller_words(kind: LayerKind) -> str:
    """Say that a clear finish makes a glossier paint paler."""
    return say(_DULLER[kind])


def _clear_words(layer: Layer) -> str:
    amber = None if layer.amber is None else "clear" if layer.amber == 0 else "amber"
    keys = [word for word in (layer.sheen, amber) if word is not None]
    first = keys[0] if keys else layer.kind.value
    article = say_in("before a wax", "an") if first[0] in "aeiou" else say_in("before a wax", "a")
    context = _OF_VARNISH if layer.kind is LayerKind.VARNISH else _OF_WAX
    looks = [say_in(context, str(key)) for key in keys]
    kind = clear_word(layer.kind)
    if not looks:
        return say("{article} {kind}", article=article, kind=kind)
    if len(looks) == 1:
        return say("{article} {look} {kind}", article=article, look=looks[0], kind=kind)
    sheen, tone = looks
    return say(
        "{article} {sheen} {tone} {kind}", article=article, sheen=sheen, tone=tone, kind=kind
    )


def notes_on(shelf: Shelf, base: Sequence[Paint], layers: Stack) -> tuple[str, ...]:
    """Say what to mind when a stack is laid over a mix."""
    laid = [layer for layer in layers.layers if layer.passes > 0]
    notes = []
    if any(layer.is_paint for layer in laid):
        notes.append(_THICKENS)
    first_wax = next((i for i, layer in enumerate(laid) if layer.kind is LayerKind.WAX), len(laid))
    if any(layer.kind is not LayerKind.WAX for layer in laid[first_wax:]):
        notes.append(_OVER_WAX)
    if _on_solvent(shelf, base, laid):
        notes.append(_OVER_OIL)
    if laid and laid[0].is_paint and any(p.finish.wet_scattering < 1 for p in base):
        notes.append(_SEAL)
    if any(layer.kind is LayerKind.OIL for layer in laid):
        notes += [_RAGS, _YELLOWS]
    elif any(layer.amber for layer in laid):
        notes.append(_YELLOWS)
    return tuple(say(note) for note in notes)


def _on_solvent(shelf: Shelf, base: Sequence[Paint], laid: Sequence[Layer]) -> bool:
    """Tell whether a water-borne wash goes over solvent-borne paint."""
    below = any(not p.finish.waterborne for p in base)
    for layer in laid:
        if layer.kind is LayerKind.OIL:
            below = True
        elif layer.is_paint:
            waterborne = all(shelf.paint(id_).finish.waterborne for id_, _ in layer.paints)
            if below and waterborne:
                return True
            below = not waterborne
    return False
