"""Jobs as they truly are, for judging what the program says after a brushed sample.

Nothing here goes by what the program thinks may be amiss. Paints differ from what their shelf says
of K and S, some shelves more than others; two paints together scatter and absorb otherwise than
Kubelka-Munk has it; hands slip by 5 % in each amount; a sample is a film of some thickness over
white card; cloths are of other colorants than paint; and each photo is rendered from spectra
through published camera sensitivities, with noise, uneven light, and a grey card that is not quite
grey.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from itertools import combinations
from typing import Any

import numpy as np
from numpy.typing import NDArray

from judge_sample_loop import guessed, invent
from studio.board import LOOKS, Look, Scene, photograph
from studio.camera import Camera, camera
from studio.lights import GRID, daylight
from studio.surfaces import cie_samples, cloths
from studio.truth import lab_d65
from swatchwright.acts.sample_in_photo import judged_by_photo
from swatchwright.acts.sample_judged import Judged
from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.paint.film import film_reflectance
from swatchwright.paint.paints import Paint
from swatchwright.photo.estimate import estimate
from swatchwright.photo.image import FileFacts, Photo, srgb_decoding
from swatchwright.photo.references import Reference
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import KnownColour, Rect

__all__ = ["KINDS", "World", "prepare", "world"]

Floats = NDArray[np.floating[Any]]
Mixed = tuple[tuple[str, float], ...]

KINDS = ("stated", "one colour", "ill stated")
"""Paints whose K and S are stated, paints that are known by one colour alone, and paints whose
stated K and S are off by twice what is usual."""

ON_SHELF, MADE, WHITES = 10, 60, 12
SLIP = 0.05
"""Standard deviation of the logarithm of an amount that was measured."""

LOAD, OF_K, OF_S = 0.15, 0.15, 0.08
"""What a usual stated paint is off by: how much pigment it holds, and bumps in ln K and ln S."""

UNLIKE = 0.5
"""How unlike shelves are in that: standard deviation of the logarithm of a factor on all three."""

TOGETHER = 0.12
"""What a pair of paints in equal parts does to ln K/S beyond its own: height of a bump."""

DYED = 0.08
"""How a cloth's spectrum wavers about that of paint of its colour: height of bumps in its log."""

UNREACHED = 0.2
"""Share of the cloths that are any published surface, and not of a colour the shelf can mix."""

_K1, _K2 = 0.04, 0.6
_HIDES, _MOST_LAID = 2.6, 20.0


def bumps(rng: np.random.Generator, height: float, count: int = 4) -> Floats:
    """Give a smooth random curve (36,) that is off by about so much."""
    at, width = rng.uniform(380, 730, (count, 1)), rng.uniform(30, 120, (count, 1))
    made = rng.normal(0, height, (count, 1)) * np.exp(-(((WAVELENGTHS - at) / width) ** 2))
    return np.asarray(made.sum(axis=0))


def _spectrum(reflectance: Floats) -> Floats:
    """Bring a reflectance to the grid of the cameras."""
    return np.interp(GRID, WAVELENGTHS, reflectance)


@cache
def _one_colour_store(block: int) -> tuple[tuple[Paint, ...], tuple[Paint, ...]]:
    rng = np.random.default_rng([23, block])
    true = tuple(invent(rng, i) for i in range(MADE))
    return true, tuple(guessed(paint, rng, strength_known=False) for paint in true)


def _one_colour(rng: np.random.Generator, block: int) -> tuple[list[Paint], list[Paint]]:
    true, known = _one_colour_store(block)
    others = WHITES + rng.choice(MADE - WHITES, ON_SHELF - 1, replace=False)
    ids = [int(rng.integers(0, WHITES)), *map(int, others)]
    return [true[i] for i in ids], [known[i] for i in ids]


def _stated(rng: np.random.Generator, usual: float) -> tuple[list[Paint], list[Paint]]:
    paints = demo_shelf().paints
    white = next(i for i, paint in enumerate(paints) if "white" in paint.id)
    rest = [i for i in range(len(paints)) if i != white]
    ids = [white, *(int(i) for i in rng.choice(rest, ON_SHELF - 1, replace=False))]
    unlike = usual * float(np.exp(rng.normal(0.0, UNLIKE)))
    known = [paints[i] for i in ids]
    return [_truly(paint, rng, unlike) for paint in known], known


def _truly(paint: Paint, rng: np.random.Generator, unlike: float) -> Paint:
    load = rng.normal(0.0, LOAD * unlike)
    K = paint.K * np.exp(load + bumps(rng, OF_K * unlike))
    S = paint.S * np.exp(load + bumps(rng, OF_S * unlike))
    solids = paint.volume_solids * float(np.exp(rng.normal(0.0, 0.05)))
    return replace(paint, K=K, S=S, volume_solids=solids)


@dataclass(frozen=True)
class World:
    """One job.

    Parameters
    ----------
    rng
        What is drawn as it goes on.
    shelf
        The paints as the program knows them.
    true
        As they are, by id.
    together
        What a pair does to ln K/S (36,), by its two ids.
    cloth, card
        Reflectance of the cloth and of the grey card (81,).
    camera, look
        The one camera of all its photos.
    """

    rng: np.random.Generator
    shelf: Shelf
    true: Mapping[str, Paint]
    together: Mapping[tuple[str, str], Floats]
    cloth: Floats
    card: Floats
    camera: Camera
    look: str

    def poured(self, mixed: Mixed, into: Mapping[str, float] | None = None) -> dict[str, float]:
        """Measure by hand, ml, into what is there."""
        found = dict(into or {})
        for id_, ml in mixed:
            found[id_] = found.get(id_, 0.0) + ml * float(np.exp(self.rng.normal(0.0, SLIP)))
        return found

    def brushed(self, amounts: Mapping[str, float]) -> Floats:
        """Brush it on white card until it hides, and let it dry: reflectance (81,)."""
        return _spectrum(_film(self.true, self.together, amounts, self.rng))

    def lab(self, reflectance: Floats) -> Floats:
        """Give the true colour, worked out by colour-science."""
        return lab_d65(np.asarray(reflectance, dtype=np.float64))

    def read(self) -> KnownColour:
        """Photograph the cloth alone."""
        photo, rects = self._photo(self.cloth)
        seen = photo.linear(rects[1]).mean(axis=(0, 1))
        correction = estimate(photo, [Reference.grey(rects[0], 0.18)], light="daylight")
        middle = (rects[1].x + rects[1].width / 2, rects[1].y + rects[1].height / 2)
        return KnownColour(*correction.apply(seen, *middle), "a photo")

    def compared(self, sample: Floats) -> Judged:
        """Photograph a sample beside the cloth."""
        photo, rects = self._photo(self.cloth, sample)
        grey = Reference.grey(rects[0], 0.18)
        return judged_by_photo(photo, (grey,), rects[1], rects[2], light="daylight")

    def _photo(self, *surfaces: Floats) -> tuple[Photo, list[Rect]]:
        rng = self.rng
        scene = Scene(
            daylight(float(rng.choice([5000.0, 5500.0, 6000.0, 6500.0, 7500.0]))),
            across=float(rng.normal(0.0, 0.05)),
            down=float(rng.normal(0.0, 0.03)),
            corner=0.04,
            seed=int(rng.integers(1, 1_000_000)),
        )
        look: Look = LOOKS[self.look]
        board = photograph(self.camera, scene, np.vstack([self.card, *surfaces]), look, columns=3)
        height, width = board.picture.shape[:2]
        facts = FileFacts("board", "PNG", width, height, "sRGB", 0, ())
        linear = self.look == "linear"
        facts = replace(facts, linear=linear, tone_mapped=not linear)
        return Photo(board.picture, None, srgb_decoding(), facts), [Rect(*r) for r in board.rects]


def _film(
    true: Mapping[str, Paint],
    together: Mapping[tuple[str, str], Floats],
    amounts: Mapping[str, float],
    rng: np.random.Generator,
) -> Floats:
    """Give the reflectance (36,) of a film as it is brushed until it hides."""
    dry = {id_: ml * true[id_].volume_solids for id_, ml in amounts.items()}
    total = sum(dry.values())
    shares = {id_: one / total for id_, one in dry.items()}
    K = sum(share * true[id_].K for id_, share in shares.items())
    S = sum(share * true[id_].S for id_, share in shares.items())
    for one, other in combinations(sorted(shares), 2):
        K = K * np.exp(4 * shares[one] * shares[other] * together[one, other])
    deep = np.sqrt(K * (K + 2 * S))[5:30].min()
    laid = min(_HIDES / deep, _MOST_LAID / float(np.mean(S))) * float(np.exp(rng.normal(0, 0.2)))
    inside = film_reflectance(K, S, laid, 0.85)
    glare = sum(share * true[id_].finish.glare for id_, share in shares.items())
    return np.asarray(glare * _K1 + (1 - _K1) * (1 - _K2) * inside / (1 - _K2 * inside))


def _cloth(
    rng: np.random.Generator,
    true: Mapping[str, Paint],
    together: Mapping[tuple[str, str], Floats],
) -> Floats:
    if rng.uniform() < UNREACHED:
        every = np.vstack([cloths(), cie_samples()])
        bright = every[every.max(axis=1) > 0.12]
        return np.asarray(bright[rng.integers(len(bright))])
    picked = rng.choice(list(true), int(rng.integers(2, 4)), replace=False)
    shares = rng.dirichlet(np.full(len(picked), 0.8)) + 0.02
    amounts = {str(id_): float(s) for id_, s in zip(picked, shares, strict=True)}
    film = _film(true, together, amounts, rng)
    return np.clip(_spectrum(film * np.exp(bumps(rng, DYED, 6))), 0.005, 0.97)


def prepare(kinds: Sequence[str], first: int) -> None:
    """Make the paints that jobs from a number on share, before work is spread out."""
    if "one colour" in kinds:
        _one_colour_store(first // 1000)


def world(kind: str, seed: int) -> World:
    """Make a job of a kind."""
    rng = np.random.default_rng([KINDS.index(kind), seed])
    if kind == "one colour":
        true, known = _one_colour(rng, seed // 1000)
    else:
        true, known = _stated(rng, 2.0 if kind == "ill stated" else 1.0)
    by_id = {paint.id: paint for paint in true}
    together = {pair: bumps(rng, TOGETHER) for pair in combinations(sorted(by_id), 2)}
    card = 0.18 * np.exp(rng.normal(0.0, 0.02) + rng.normal(0.0, 0.01) * (GRID - 550) / 150)
    return World(
        rng=rng,
        shelf=Shelf("simulated", tuple(known)),
        true=by_id,
        together=together,
        cloth=_cloth(rng, by_id, together),
        card=np.asarray(card),
        camera=camera(int(rng.integers(0, 2))),
        look=str(rng.choice(list(LOOKS))),
    )
