"""Which reference more would help most: computed, not guessed.

For each thing a painter could lay into the picture, the doubt of the wanted colour is worked out as
if it had been there; the one that leaves least is the one to add.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

import numpy as np

from swatchwright.colour.convert import lab_to_linear_srgb
from swatchwright.colour.doubt import usual_difference
from swatchwright.language import mark, say
from swatchwright.photo.estimate import to_covariance
from swatchwright.photo.references import Seen

if TYPE_CHECKING:
    from collections.abc import Iterator

    from numpy.typing import NDArray

    from swatchwright.photo.estimate import Correction

__all__ = ["Addition", "Advice", "next_references"]

Addition = Literal["grey", "white", "black", "far grey", "chip"]

_WORDS: dict[Addition, str] = {
    "grey": mark("a grey card close to the cloth"),
    "white": mark("white paper with no brightener, beside the cloth"),
    "black": mark("a black card beside the cloth"),
    "far grey": mark("a second grey at the other side of the cloth"),
    "chip": mark("a brushed-out paint near the wanted colour, measured"),
}

_REFLECTANCES: dict[Addition, float] = {"grey": 0.18, "white": 0.9, "black": 0.04, "far grey": 0.18}
_SPREADS: dict[Addition, float] = {
    "grey": 0.7, "white": 1.2, "black": 0.7, "far grey": 0.7, "chip": 0.8,
}  # fmt: skip

_BESIDE = 0.15
_CHIP_AWAY = (5.0, 0.85, 0.85)
"""Where a reference would lie, in half widths of the frame from the cloth; and how a chip would
differ from the wanted colour: so much lighter, and so much weaker in a* and b*."""

_LEAST_GAIN = 0.03


@dataclass(frozen=True, slots=True)
class Advice:
    """A reference that could be added.

    Parameters
    ----------
    addition
        Which.
    words
        What it is, for a painter.
    now, then
        The usual error of the wanted colour without and with it: median CIEDE2000.
    """

    addition: Addition
    words: str
    now: float
    then: float

    @property
    def worth_it(self) -> bool:
        """Whether it would help by as much as a figure can show."""
        return self.now - self.then > _LEAST_GAIN * self.now


def next_references(
    correction: Correction, light: NDArray[np.float64], x: float, y: float
) -> tuple[Advice, ...]:
    """Rank what could be added, the most helpful first.

    Parameters
    ----------
    correction
        What there is.
    light
        Linear sRGB of the wanted colour in the photo, shape (3,).
    x, y
        Where it is, in pixels.
    """
    wanted = Seen.at(correction.photo, light, x, y)
    lab, covariance = correction.apply(light, x, y)
    now = usual_difference(lab, covariance)
    found = []
    for addition, more in _additions(correction, wanted):
        left = correction.with_one_more(more, _SPREADS[addition], wanted)
        then = usual_difference(lab, to_covariance(left))
        found.append(Advice(addition, say(_WORDS[addition]), now, then))
    return tuple(sorted(found, key=lambda advice: advice.then))


def _additions(correction: Correction, wanted: Seen) -> Iterator[tuple[Addition, Seen]]:
    """Say how the photo would show each addition."""
    gains = np.asarray(correction.balance.gains)
    inward = -np.sign(wanted.place[0, 0]) or 1.0
    beside = wanted.place + np.array([[_BESIDE * inward, 0.0]])
    has_grey = any(reference.neutral for reference in correction.references)
    for addition, reflectance in _REFLECTANCES.items():
        if addition == "far grey" and not has_grey:
            continue
        far = addition == "far grey"
        place = -_middle_place(correction) if far else beside
        yield addition, Seen(np.full((1, 3), reflectance) / gains, place)
    L, a, b = correction.lab_of(wanted.light, *_pixel(correction, wanted))[0]
    lighter, weaker_a, weaker_b = _CHIP_AWAY
    chip = lab_to_linear_srgb([min(L + lighter, 97.0), weaker_a * a, weaker_b * b])
    yield "chip", Seen(np.maximum(chip, 1e-4)[np.newaxis] / gains, beside)


def _middle_place(correction: Correction) -> NDArray[np.float64]:
    """Give the middle of the references there are."""
    return np.asarray(correction.seen.place.mean(axis=0, keepdims=True))


def _pixel(correction: Correction, wanted: Seen) -> tuple[float, float]:
    """Give the pixel of a place."""
    across, down = wanted.place[0]
    photo = correction.photo
    return (across + 1) * photo.width / 2 - 0.5, (down + 1) * photo.height / 2 - 0.5
