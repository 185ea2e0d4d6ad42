"""Judge what the program reads from photos: many lights, cameras and references, from spectra.

Run it from anywhere: `python tools/judge_photos.py` prints the tables, and `--write` puts them into
docs/accuracy.md between their marks. It takes a few minutes.

The wanted colours are every other one of the 99 surfaces of CIE 224:2017. The sizes in
`photo/model.py` were set on the other half. A painter's brushed-out paints are taken to be that
half and the 18 coloured patches of a chart: the six nearest to the wanted colour are her chips.
"""

from __future__ import annotations

import sys
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

import numpy as np

from studio.board import LOOKS, Board, Scene, photograph
from studio.camera import camera
from studio.lights import light
from studio.surfaces import chart_patches, cie_samples, cloths, flat, matt_paint
from studio.truth import lab_d65
from swatchwright.colour.difference import delta_e_2000
from swatchwright.errors import MendableError
from swatchwright.photo.compare import difference_by
from swatchwright.photo.estimate import Correction, estimate
from swatchwright.photo.image import FileFacts, Photo, srgb_decoding
from swatchwright.photo.references import Reference
from swatchwright.values import Lab, Rect, usual_distance

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from numpy.typing import NDArray

    from swatchwright.photo.model import LightKind

PAGE = Path(__file__).resolve().parents[1] / "docs" / "accuracy.md"
START, END = "<!-- photos: made by tools/judge_photos.py -->", "<!-- photos: end -->"

LIGHTS = ("D65", "D50", "A", "LED-B1", "LED-B5", "FL11")
NAMES = {
    "D65": "daylight D65", "D50": "daylight D50", "A": "tungsten A", "LED-B1": "warm LED B1",
    "LED-B5": "cool LED B5", "FL11": "tube FL11",
}  # fmt: skip
SETS = ("grey", "three greys", "grey and six chips", "three greys and six chips")
CAMERAS = (0, 1)
CHIPS = 18
GREYS = (0.9, 0.18, 0.035)
INSIDE = 6.251
"""90 % of the chi-squared distribution of three degrees of freedom."""


class Reading(NamedTuple):
    """One colour read: its error, the stated usual error, and how far out it lies (squared)."""

    error: float
    stated: float
    out: float


@dataclass(frozen=True)
class Shot:
    """A photograph of chart, greys and wanted colours."""

    board: Board
    photo: Photo
    told: LightKind
    greys: int

    @property
    def first(self) -> int:
        """Index of the first wanted colour; the greys come before it, the chips before these."""
        return self.greys + len(GREYS)

    def rect(self, index: int) -> Rect:
        """Give where a patch is."""
        return Rect(*self.board.rects[index])


def told_of(name: str) -> LightKind:
    """Give what a painter would say of a light."""
    return "daylight" if name.startswith("D") else "lamp"


def photo_of(board: Board, look: str) -> Photo:
    """Take a picture as the program would read it from a file of its kind."""
    height, width = board.picture.shape[:2]
    facts = FileFacts("board", "PNG", width, height, "sRGB", 0, ())
    facts = replace(facts, linear=look == "linear", tone_mapped=look != "linear")
    return Photo(board.picture, None, srgb_decoding(), facts)


def shoot(name: str, position: int, look: str, seed: int = 1) -> Shot:
    """Photograph the wanted colours among references, in light that falls off a little."""
    surfaces = np.vstack([brushed_out(), flat(*GREYS), cie_samples()[1::2]])
    scene = Scene(light(name), across=0.06, down=0.03, corner=0.04, balance=0.7, seed=seed)
    board = photograph(camera(position), scene, surfaces, LOOKS[look])
    return Shot(board, photo_of(board, look), told_of(name), len(brushed_out()))


def brushed_out() -> NDArray[np.float64]:
    """Give the chips a painter has, shape (68, 81)."""
    return np.vstack([chart_patches()[:CHIPS], cie_samples()[0::2]])


def references(shot: Shot, wanted: NDArray[np.float64]) -> dict[str, list[Reference]]:
    """Give each set of references for a wanted colour."""
    greys = [Reference.grey(shot.rect(shot.greys + i), R) for i, R in enumerate(GREYS)]
    nearest = np.argsort(delta_e_2000(shot.board.lab[: shot.greys], wanted))[:6]
    chips = [Reference.chip(shot.rect(int(at)), Lab.of(shot.board.lab[at])) for at in nearest]
    return dict(zip(SETS, (greys[1:2], greys, greys[1:2] + chips, greys + chips), strict=True))


def readings(shot: Shot, every: int = 1) -> dict[str, list[Reading]]:
    """Read each wanted colour with each set of references; what is refused is left out."""
    found: dict[str, list[Reading]] = {name: [] for name in SETS}
    shared: dict[str, Correction] = {}
    for index in range(shot.first, len(shot.board.rects), every):
        truth = shot.board.lab[index]
        for name, given in references(shot, truth).items():
            try:
                if "chips" in name or name not in shared:
                    shared[name] = estimate(shot.photo, given, light=shot.told)
            except MendableError:
                continue
            found[name].append(read_one(shared[name], shot.rect(index), truth))
    return found


def read_one(correction: Correction, rect: Rect, truth: NDArray[np.float64]) -> Reading:
    """Read one patch."""
    seen = correction.photo.linear(rect).mean(axis=(0, 1))
    at = (rect.x + rect.width / 2, rect.y + rect.height / 2)
    lab, covariance = correction.apply(seen, *at)
    off = np.array(lab.triple) - truth
    out = float(off @ np.linalg.solve(np.array(covariance), off))
    return Reading(float(delta_e_2000(lab.triple, truth)), usual_distance(covariance), out)


def pairs(seed: int = 5) -> NDArray[np.float64]:
    """Give cloths with a paint for each, 0.8 to 6 CIEDE2000 apart, cloth and paint by turns."""
    rng = np.random.default_rng(seed)
    made = []
    for surface in np.vstack([cloths(), cie_samples()[1::4], chart_patches()[:CHIPS]]):
        for _ in range(50):
            paint = matt_paint(surface, tuple(0.18 * rng.standard_normal(3)), 0.01)
            if 0.8 < float(delta_e_2000(lab_d65(surface), lab_d65(paint))) < 6:
                made += [surface, paint]
                break
    return np.stack(made)


def differences(name: str, position: int, look: str) -> list[Reading]:
    """Compare each paint with its cloth within one photo, with one grey; refusals left out."""
    surfaces = np.vstack([flat(0.18), pairs()])
    scene = Scene(light(name), across=0.06, down=0.03, corner=0.04, balance=0.7, seed=3)
    board = photograph(camera(position), scene, surfaces, LOOKS[look])
    rects = [Rect(*rect) for rect in board.rects]
    given = [Reference.grey(rects[0], 0.18)]
    correction = estimate(photo_of(board, look), given, light=told_of(name))
    found = []
    for index in range(1, len(surfaces), 2):
        try:
            told = difference_by(correction, rects[index], rects[index + 1])
        except MendableError:
            continue
        truth = board.lab[index + 1] - board.lab[index]
        off = np.array(told.vector) - truth
        out = float(off @ np.linalg.solve(np.array(told.covariance), off))
        error = delta_e_2000(board.lab[index] + told.vector, board.lab[index + 1])
        found.append(Reading(float(error), told.give_or_take, out))
    return found


def cell(found: Sequence[Reading]) -> str:
    """Write median and 90 % of the errors, and how often the stated region holds the truth."""
    errors = [reading.error for reading in found]
    return f"{np.median(errors):.1f}, {np.percentile(errors, 90):.1f} ({inside(found):.0f} %)"


def inside(found: Sequence[Reading]) -> float:
    """Give how often the stated 90 % region holds the truth, in per cent."""
    return 100 * float(np.mean([reading.out <= INSIDE for reading in found]))


def tables() -> Iterable[str]:
    """Write the tables, a line at a time."""
    every: dict[str, list[Reading]] = {name: [] for name in SETS}
    for look in LOOKS:
        yield f"**{look[0].upper() + look[1:]}**"
        yield ""
        yield "| light | camera | " + " | ".join(SETS) + " |"
        yield "| --- " * (len(SETS) + 2) + "|"
        for name in LIGHTS:
            for position in CAMERAS:
                found = readings(shoot(name, position, look))
                cells = [cell(found[each]) for each in SETS]
                yield f"| {NAMES[name]} | {position + 1} | " + " | ".join(cells) + " |"
                for each in SETS:
                    every[each] += found[each]
        yield ""
    held = ", ".join(f"{each} {inside(every[each]):.0f} %" for each in SETS)
    yield f"All together the stated 90 % region holds the truth in: {held}."
    yield ""
    yield from difference_table()


def difference_table() -> Iterable[str]:
    """Write the table of differences within a photo."""
    yield "| a paint against its cloth, one grey | linear | plain JPEG | phone |"
    yield "| --- | --- | --- | --- |"
    for name in LIGHTS:
        cells = [
            cell([r for position in CAMERAS for r in differences(name, position, look)])
            for look in LOOKS
        ]
        yield f"| {NAMES[name]} | " + " | ".join(cells) + " |"


def main(arguments: Sequence[str]) -> None:
    """Print the tables, or write them into the page."""
    text = "\n".join(tables())
    if "--write" not in arguments:
        print(text)
        return
    page = PAGE.read_text(encoding="utf-8")
    before, rest = page.split(START)
    _, after = rest.split(END)
    PAGE.write_text(f"{before}{START}\n\n{text}\n\n{END}{after}", encoding="utf-8")


if __name__ == "__main__":
    main(sys.argv[1:])
