"""What a painter reads of a stack of layers: what each is, and what to mind."""

from __future__ import annotations

from collections.abc import Sequence

from swatchwright.paint.layers import Layer, LayerKind, Stack, wash_of
from swatchwright.paint.paints import Paint
from swatchwright.shelf.shelf import Shelf

__all__ = ["layer_words", "notes_on"]

_THICKENS = (
    "Thinned paint thickens as it stands in warm air, so the end of a batch goes on heavier than "
    "its start: keep it covered, and mix little at a time."
)
_RAGS = (
    "Rags with drying oil can heat up and catch fire by themselves: spread them out to dry, "
    "outdoors, never in a heap. The label on the tin says more."
)
_OVER_WAX = "Nothing but more wax holds on wax. Lay the rest before it, or clean the wax off first."
_OVER_OIL = (
    "Water-borne paint on oil or solvent-borne paint needs a dry, rubbed-down surface to hold on."
)
_SEAL = (
    "A wash on a chalky or mineral paint sinks in at once and cannot be moved about: damp the "
    "surface first, and try it on an inside face."
)
_YELLOWS = "An oil or amber finish yellows on; whites and pale blues show it most."


def layer_words(layer: Layer, paints: Sequence[Paint]) -> str:
    """Say what a layer is, as in “a wash of White, clean, 1 to 3 of water, twice”."""
    named = _mixed(layer, paints)
    if layer.is_paint:
        thinner = _thinner(layer, paints)
        told = f"a {layer.kind.value} of {named}, 1 to {wash_of(layer).water:g} of {thinner}"
    elif layer.kind is LayerKind.WAX and paints:
        told = f"a wax tinted with {named}, 1 to {wash_of(layer).water:g} of clear wax"
    else:
        told = _clear_words(layer)
    times = {0: ", not laid", 1: "", 2: ", twice"}.get(layer.passes, f", {layer.passes} times")
    return told + times


def _mixed(layer: Layer, paints: Sequence[Paint]) -> str:
    if len(paints) == 1:
        return paints[0].name
    rows = zip(paints, layer.paints, strict=False)
    return " with ".join(f"{amount:g} of {paint.name}" for paint, (_, amount) in rows)


def _thinner(layer: Layer, paints: Sequence[Paint]) -> str:
    if layer.kind is LayerKind.GLAZE:
        return "glaze medium"
    return "water" if all(p.finish.waterborne for p in paints) else "its own thinner"


def _clear_words(layer: Layer) -> str:
    amber = "" if layer.amber is None else "clear " if layer.amber == 0 else "amber "
    sheen = "" if layer.sheen is None else f"{layer.sheen.value} "
    words = f"{sheen}{amber}{layer.kind.value}"
    return f"{'an' if words[0] in 'aeiou' else 'a'} {words}"


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
    return tuple(notes)


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
