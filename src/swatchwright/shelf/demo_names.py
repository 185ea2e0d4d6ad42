"""The names of the invented paints, marked for translation: their file holds them in English."""

from __future__ import annotations

from swatchwright.language import mark

__all__ = ["DEMO_NAMES", "DEMO_NOTE"]

DEMO_NAMES = (
    mark("White, clean"),
    mark("White, slightly yellow"),
    mark("Cream, pale yellow"),
    mark("Straw yellow, muted"),
    mark("Strong yellow, slightly orange"),
    mark("Strong yellow, slightly green"),
    mark("Strong orange"),
    mark("Clay red, muted"),
    mark("Strong red, slightly orange"),
    mark("Deep red, slightly blue"),
    mark("Pale pink, greyish"),
    mark("Dark plum"),
    mark("Deep blue, slightly red"),
    mark("Mid blue, clear"),
    mark("Ink blue, dark"),
    mark("Pale blue, greyish"),
    mark("Green-blue, mid"),
    mark("Deep green, slightly blue"),
    mark("Leaf green, mid"),
    mark("Sage green, pale"),
    mark("Olive, dark"),
    mark("Earth brown, mid"),
    mark("Stone grey, warm"),
    mark("Soft black"),
)
DEMO_NOTE = mark("Invented for demonstration. No such paint is sold.")
