"""What washes, glazes and clear finishes come to, step by step."""

from __future__ import annotations

from dataclasses import dataclass

from swatchwright.colour.spectrum import Light
from swatchwright.paint.layers import Layer
from swatchwright.values import Lab

__all__ = ["BuildUp", "Look", "Pass", "StepLook"]

# CIEDE2000 between flats and grain from which they are told apart in figures to a tenth.
_SEEN_IN_GRAIN = 0.05


@dataclass(frozen=True, slots=True)
class StepLook:
    """How a piece looks after one layer more.

    Parameters
    ----------
    layer
        The layer; None for the bare coat.
    words
        What it is, in a painter's words.
    film_um
        Dry paint that it leaves on the mean, micrometres; None for a clear finish or the bare coat.
    flat, dry, grain
        Its dry colour on the flats (0.3 of the mean thickness), on the whole, and in grain and
        mouldings (1.7).
    grain_range
        CIEDE2000 between flats and grain.
    wet
        Its colour while the layer is wet, on the whole.
    lights
        How it looks dry under each light of `acts.in_light.ROOM`, to an eye that has got used to
        that light.
    change
        CIEDE2000 from the step before.
    doubt
        How far off it usually is, CIEDE2000: paints, formula, hand and sheen.
    """

    layer: Layer | None
    words: str
    film_um: float | None
    flat: Lab
    dry: Lab
    grain: Lab
    grain_range: float
    wet: Lab
    lights: tuple[tuple[Light, Lab], ...]
    change: float
    doubt: float

    @property
    def in_grain(self) -> bool:
        """Whether a layer lies so much thicker in the grain that it looks otherwise there."""
        return self.grain_range >= _SEEN_IN_GRAIN

    def under(self, light: Light) -> Lab:
        """Give how it looks dry under a light of the room."""
        return next(lab for one, lab in self.lights if one is light)


@dataclass(frozen=True, slots=True)
class Look:
    """A stack step by step: the bare coat first; and what to mind, in plain words."""

    steps: tuple[StepLook, ...]
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Pass:
    """The colour after so many passes, on the flats, on the whole and in the grain."""

    count: int
    film_um: float
    flat: Lab
    dry: Lab
    grain: Lab


@dataclass(frozen=True, slots=True)
class BuildUp:
    """How a wash or a glaze builds up, from no pass on, and the colour it tends to."""

    passes: tuple[Pass, ...]
    tends_to: Lab
