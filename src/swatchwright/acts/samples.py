"""The sample photos, with their marks already known."""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import swatchwright
from swatchwright.values import Rect

__all__ = ["SamplePhoto", "sample_of_a_sample", "sample_photos", "told_of_samples"]


@dataclass(frozen=True, slots=True)
class SamplePhoto:
    """A sample photo: where it is, what it shows, and where its grey card and cloth are.

    `sample` is where a brushed sample lies on the cloth; None where there is none in it.
    """

    path: Path
    shows: str
    grey: Rect
    reflectance: float
    cloth: Rect
    sample: Rect | None = None


def sample_photos() -> tuple[SamplePhoto, ...]:
    """List the sample photos; empty where the program was installed without them."""
    folder, rows = told_of_samples("images")
    return tuple(
        SamplePhoto(
            path=folder / row["file"],
            shows=row["shows"],
            grey=Rect(*row["grey_card"]),
            reflectance=row["grey_reflectance"],
            cloth=Rect(*row["area"]),
        )
        for row in rows
    )


def sample_of_a_sample() -> SamplePhoto | None:
    """Give the photo of a brushed sample beside its cloth; None where it was not installed."""
    folder, rows = told_of_samples("brushed")
    for row in rows:
        return SamplePhoto(
            path=folder / row["file"],
            shows=row["shows"],
            grey=Rect(*row["grey_card"]),
            reflectance=row["grey_reflectance"],
            cloth=Rect(*row["cloth"]),
            sample=Rect(*row["sample"]),
        )
    return None


def told_of_samples(kind: str) -> tuple[Path, list[dict[str, Any]]]:
    """Give the folder of the samples and what is told of those of a kind; empty without them."""
    for folder in _folders():
        listed = folder / "truth.json"
        if listed.is_file():
            return folder, json.loads(listed.read_text(encoding="utf-8")).get(kind, [])
    return Path(), []


def _folders() -> tuple[Path, ...]:
    """Give where they may be: beside the package in an installed copy, in the tree in a clone."""
    package = Path(swatchwright.__file__).parent
    return package / "sample_images", package.parents[1] / "sample_images"
