"""Brush-outs with a known truth, for the tests of the fit."""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.spectrum import lab_of
from swatchwright.paint.fit.fitted import FittedPaint, known_paint, predict
from swatchwright.paint.fit.prior import Errors, Surface, basis
from swatchwright.paint.fit.readings import BrushOut, Reading

Floats = NDArray[np.floating[Any]]

SURFACE = Surface(glare_spread=1e-3, paint_glare_spread=1e-3)
EXACT = Errors(reading=1e-3, formula=1e-3, colour=0.02, share=1e-3, alike=1.0, doubt=30.0)

BLACK, GREY, PALE = (np.full(36, value) for value in (0.03, 0.4, 0.8))


def paint(**amounts: float) -> FittedPaint:
    """Make a paint of colorants, as a truth."""
    names, K, S = basis()
    used = [names.index(name) for name in amounts]
    parts = np.array(list(amounts.values()))
    return known_paint(parts @ K[used], parts @ S[used])


WHITE = paint(white=1.0)
BLUE = paint(violet_blue=0.4, bone_black=0.02, white=0.2)


def truth(
    paints: dict[str, FittedPaint], shares: dict[str, float], ground: Floats | None = None
) -> Floats:
    """Give the reflectance that is to be predicted."""
    return predict(paints, shares, ground, surface=SURFACE)


def brushed(
    share: float, *, colour: bool = False, grounds: tuple[Floats | None, ...] = (None,)
) -> BrushOut:
    """Make a brush-out of the blue in white, read without error."""
    shares = {"blue": share, "white": 1 - share} if share < 1 else {"blue": 1.0}
    spectra = [truth({"blue": BLUE, "white": WHITE}, shares, ground) for ground in grounds]
    readings = [
        Reading(lab=lab_of(seen), ground=ground) if colour else Reading(seen, ground=ground)
        for seen, ground in zip(spectra, grounds, strict=True)
    ]
    return BrushOut(shares, tuple(readings), thickness_spread=1e-3)
