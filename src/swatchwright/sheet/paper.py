"""Sizes of paper and of labels.

The papers are those of ISO 216 and ASME Y14.1. The sizes of labels, how many stand on a page and
how far apart, are common practice, no source: lay a print on plain paper over a sheet of labels
first, and hold both to the light.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from swatchwright.errors import MendableError
from swatchwright.language import say

__all__ = ["LABELS", "LabelSize", "Paper", "label_named", "paper_named"]

_INCH = 25.4


class Paper(StrEnum):
    """A size of paper."""

    A4 = "A4"
    LETTER = "Letter"

    @property
    def size(self) -> tuple[float, float]:
        """Width and height, mm."""
        return (210.0, 297.0) if self is Paper.A4 else (8.5 * _INCH, 11 * _INCH)


@dataclass(frozen=True, slots=True)
class LabelSize:
    """A size of label and how such labels stand on their page.

    Parameters
    ----------
    name
        What it is asked for by.
    width, height
        mm.
    paper
        What their page is.
    across, down
        How many stand on it.
    between
        How far they are apart across, mm; down they touch. The whole is in the middle of the page.
    """

    name: str
    width: float
    height: float
    paper: Paper
    across: int
    down: int
    between: float

    def places(self) -> tuple[tuple[float, float], ...]:
        """Give the top left corners of the labels on their page, mm, row by row."""
        wide, high = self.paper.size
        left = (wide - self.across * self.width - (self.across - 1) * self.between) / 2
        top = (high - self.down * self.height) / 2
        return tuple(
            (left + i * (self.width + self.between), top + j * self.height)
            for j in range(self.down)
            for i in range(self.across)
        )


LABELS = (
    LabelSize("99.1x67.7", 99.1, 67.7, Paper.A4, 2, 4, 2.5),
    LabelSize("63.5x38.1", 63.5, 38.1, Paper.A4, 3, 7, 2.54),
    LabelSize("70x37", 70.0, 37.0, Paper.A4, 3, 8, 0.0),
    LabelSize("4x2in", 4 * _INCH, 2 * _INCH, Paper.LETTER, 2, 5, 4.76),
)
"""The sizes that are offered, mm unless inches are said."""


def paper_named(text: str) -> Paper:
    """Read the name of a paper, in any case.

    Raises
    ------
    MendableError
        If there is none of that name.
    """
    for paper in Paper:
        if paper.value.lower() == text.strip().lower():
            return paper
    raise MendableError(
        say("There is no paper “{name}”.", name=text), _one_of(paper.value for paper in Paper)
    )


def label_named(text: str) -> LabelSize:
    """Read the size of a label, as 63.5x38.1 or 4x2in.

    Raises
    ------
    MendableError
        If it is not one that is offered.
    """
    wanted = re.sub(r"\s|mm", "", text.lower().replace("×", "x"))
    for size in LABELS:
        if size.name == wanted:
            return size
    raise MendableError(
        say("There is no label of the size “{size}”.", size=text),
        _one_of(size.name for size in LABELS),
    )


def _one_of(names: Iterable[str]) -> str:
    return say("Use one of: {words}.", words=", ".join(names))
