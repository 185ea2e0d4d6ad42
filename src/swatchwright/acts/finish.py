"""Show what washes, glazes and clear finishes do to a coat, layer by layer."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import sqrt
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.acts.confidence import confidence_in
from swatchwright.acts.finish_values import BuildUp, Look, Pass, StepLook
from swatchwright.acts.finish_words import clear_word, duller_words, layer_words, notes_on
from swatchwright.acts.in_light import ROOM, adapted
from swatchwright.acts.layering import Parts, Primer, base_coat, coats_of_layer, film_of_layer
from swatchwright.acts.mix import look_of_mix
from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import lab_of
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.paint.layered import (
    Base,
    Clear,
    Coat,
    Film,
    glare_of,
    look_of,
)
from swatchwright.paint.layers import (
    MOST_PASSES,
    Layer,
    Stack,
    check_layer,
    check_stack,
)
from swatchwright.paint.paints import Paint
from swatchwright.paint.wash import GRAIN
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import KnownColour, Lab

__all__ = [
    "BuildUp",
    "Look",
    "Pass",
    "StepLook",
    "build_up",
    "preview",
]

Floats = NDArray[np.floating[Any]]
# How much more a hand may leave than it means to, how far a sheen may be off, and how much less of
# the pores a finish may fill: common practice, no source.
_HAND, _SHEEN_OFF, _FILL_OFF = 1.3, 0.2, 0.2

# Half of all washes over paint lie within this of adding-doubling, CIEDE2000: docs/finishes.md.
_FORMULA = 1.0

# L* by which a finish has to be paler than what it lies on for that to be told.
_PALER = 0.3


def preview(shelf: Shelf, parts: Parts, layers: Stack, ground: Primer | None = None) -> Look:
    """Show a mix under layers, step by step.

    Parameters
    ----------
    shelf
        Where the paints of the mix and of the layers are.
    parts
        Ids and amounts of the mix.
    layers
        What goes over it.
    ground
        What is below the mix, where that may not hide; None for a coat that hides.

    Raises
    ------
    MendableError
        If the mix, a layer or the ground cannot be.
    """
    check_stack(layers)
    look = look_of_mix(shelf, parts)
    base = base_coat(shelf, parts, ground)
    laid = _Laid(base, (), _known(look.paints, look.shares))
    steps, dull = [_look_of_step(laid)], []
    for layer in layers.layers:
        new, used = coats_of_layer(shelf, layer)
        known = max(laid.known, _known(used, [parts for _, parts in layer.paints]))
        below, laid = laid, _Laid(base, (*laid.coats, *new), known)
        step = _look_of_step(laid)
        if not used and laid.glare > below.glare and step.dry.L - steps[-1].dry.L > _PALER:
            dull.append(duller_words(layer.kind))
        steps.append(
            replace(
                step,
                layer=layer,
                words=layer_words(layer, used),
                film_um=_paint_um(new),
                change=_apart(steps[-1].dry, step.dry),
            )
        )
    minded = dict.fromkeys((*dull, *notes_on(shelf, look.paints, layers)))
    return Look(tuple(steps), (*look.notes, *minded))


@dataclass(frozen=True, slots=True, eq=False)
class _Laid:
    """A coat, what lies on it so far, and how far off its least known mix usually is."""

    base: Base
    coats: tuple[Coat, ...]
    known: float

    def seen(self, *, wet: bool = False) -> Floats:
        """Give its reflectance (36,) on the whole."""
        return np.asarray(look_of(self.base, self.coats, wet=wet)[0])

    @property
    def glare(self) -> float:
        """Give the share of its surface's own reflection that is seen."""
        return float(np.ravel(glare_of(self.base, self.coats))[0])


def _known(paints: tuple[Paint, ...], parts: Sequence[float]) -> float:
    """Give how far off a mix usually is for what is not known of its paints; 0 for no paint."""
    if not paints:
        return 0.0
    shares = tuple(part / sum(parts) for part in parts)
    exact = KnownColour(Lab(0.0, 0.0, 0.0), None, "")
    return confidence_in(exact, paints, shares).paints


def _paint_um(coats: Sequence[Coat]) -> float | None:
    """Give the dry paint of a layer on the mean, micrometres; None where there is none."""
    films = [float(np.sum(c.thickness)) for c in coats if isinstance(c, Film)]
    return 1000 * sum(films) if films else None


def build_up(
    shelf: Shelf, parts: Parts, layer: Layer, *, passes: int = 6, ground: Primer | None = None
) -> BuildUp:
    """Show how a wash or a glaze builds up over a mix, pass by pass.

    Parameters
    ----------
    shelf, parts, ground
        As for `preview`.
    layer
        The wash or glaze; its own number of passes does not count.
    passes
        How many to show, 1-20.

    Raises
    ------
    MendableError
        As `preview` does, or if the layer is a clear finish.
    """
    if not layer.is_paint:
        raise MendableError(
            say("A {finish} was to be built up.", finish=clear_word(layer.kind)),
            say("Only a wash or a glaze builds up."),
        )
    if not 1 <= passes <= MOST_PASSES:
        raise MendableError(
            say("{passes} passes were asked for.", passes=passes),
            say("Ask for 1 to {most}.", most=MOST_PASSES),
        )
    check_layer(layer)
    base = base_coat(shelf, parts, ground)
    film, paints = film_of_layer(shelf, replace(layer, passes=1))
    films = [replace(film, thickness=n * np.asarray(film.thickness)) for n in range(passes + 1)]
    rows = [
        Pass(n, 1000 * float(np.sum(f.thickness)), *_labs_in_grain(base, (f,)))
        for n, f in enumerate(films)
    ]
    return BuildUp(tuple(rows), look_of_mix(shelf, _ids(paints, layer)).dry)


def _ids(paints: Sequence[Paint], layer: Layer) -> list[tuple[str, float]]:
    return [(p.id, amount) for p, (_, amount) in zip(paints, layer.paints, strict=True)]


def _labs_in_grain(base: Base, coats: Sequence[Coat]) -> tuple[Lab, Lab, Lab]:
    flat, mean, grain = lab_of(look_of(base, coats, factor=np.array(GRAIN)))
    return Lab.of(flat), Lab.of(mean), Lab.of(grain)


def _look_of_step(laid: _Laid) -> StepLook:
    """Give how a piece looks so far, as the bare coat."""
    flat, dry, grain = _labs_in_grain(laid.base, laid.coats)
    R = laid.seen()
    return StepLook(
        layer=None,
        words=say("the bare coat"),
        film_um=None,
        flat=flat,
        dry=dry,
        grain=grain,
        grain_range=_apart(flat, grain),
        wet=Lab.of(lab_of(laid.seen(wet=True))),
        lights=tuple((light, Lab.of(adapted(R, light))) for light in ROOM),
        change=0.0,
        doubt=_doubt(laid, dry),
    )


def _apart(one: Lab, two: Lab) -> float:
    return float(delta_e_2000(one.triple, two.triple))


def _doubt(laid: _Laid, dry: Lab) -> float:
    """Give how far off a step usually is: what is not known moved one at a time, and added up."""
    coats = laid.coats
    formula = _FORMULA if any(isinstance(c, Film) for c in coats) else 0.0
    others = [
        [_heavier(c) for c in coats],
        *([_otherwise(c, name, off) for c in coats] for name, off in _CLEAR_OFF),
    ]
    moved = [_apart(dry, Lab.of(lab_of(look_of(laid.base, other))[0])) for other in others]
    return sqrt(sum(size**2 for size in (laid.known, formula, *moved)))


_CLEAR_OFF = (("glare", _SHEEN_OFF), ("fills", -_FILL_OFF))


def _heavier(coat: Coat) -> Coat:
    """Leave more of a film than was meant."""
    if isinstance(coat, Clear):
        return coat
    return replace(coat, thickness=_HAND * np.asarray(coat.thickness))


def _otherwise(coat: Coat, name: str, off: float) -> Coat:
    """Make a clear finish a little otherwise."""
    if isinstance(coat, Film):
        return coat
    value = min(1.0, max(0.0, getattr(coat.finish, name) + off))
    return replace(coat, finish=replace(coat.finish, **{name: value}))
