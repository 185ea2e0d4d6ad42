"""References from the command line: where they are and what colour they have."""

from __future__ import annotations

from typing import TYPE_CHECKING

from swatchwright.errors import MendableError
from swatchwright.photo.reference import reflectance_from_lightness
from swatchwright.photo.references import Reference
from swatchwright.values import Lab

if TYPE_CHECKING:
    from collections.abc import Iterable

    from swatchwright.values import Rect

__all__ = ["references_of"]

_HOW = (
    "Write --ref X,Y,W,H=VALUE, where VALUE is a reflectance (0.18 or 18%), an L* (16 to 100) or"
    " L*,a*,b*: --ref 40,60,120,90=0.18"
)


def references_of(texts: Iterable[str]) -> tuple[Reference, ...]:
    """Read each ``X,Y,W,H=VALUE``.

    Raises
    ------
    MendableError
        If one is not a rectangle and a colour that a reference can have.
    """
    return tuple(_reference(text) for text in texts)


def _reference(text: str) -> Reference:
    from swatchwright.commands.words import rectangle

    where, equals, value = text.partition("=")
    rect = rectangle(where, "--ref") if equals else None
    if rect is None:
        raise MendableError(f"--ref was given “{text}”.", f"{_HOW}.")
    return _of_value(rect, value, text)


def _of_value(rect: Rect, value: str, text: str) -> Reference:
    """Make a reference of a rectangle and one number or three."""
    percent = value.strip().endswith("%")
    try:
        numbers = [float(part) for part in value.strip().removesuffix("%").split(",")]
    except ValueError as error:
        raise MendableError(f"--ref was given “{text}”.", f"{_HOW}.") from error
    if len(numbers) == 3 and not percent:
        return Reference.chip(rect, Lab.of_a_surface(*numbers))
    if len(numbers) != 1:
        raise MendableError(f"--ref was given “{text}”.", f"{_HOW}.")
    if percent:
        return Reference.grey(rect, numbers[0] / 100)
    # No grey reflects more than all light, and none of L* 1 can be seen.
    if numbers[0] <= 1:
        return Reference.grey(rect, numbers[0])
    return Reference.grey(rect, reflectance_from_lightness(numbers[0]))
