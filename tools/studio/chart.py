"""A 24-patch chart rendered through a camera, with its rectangles and its true colours."""

from functools import cache
from pathlib import Path
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from studio.camera import Camera, encode, expose, finish, gains, raw_response, vignette
from studio.field import Field
from studio.lights import GRID, Array
from studio.truth import lab_d65

__all__ = ["RenderedChart", "chart_lab", "chart_reflectances", "render_chart"]

SPECTRA = Path(__file__).parents[2] / "tests" / "data" / "chart24_spectra_10nm.csv"
COLUMNS, ROWS = 6, 4
BOARD = 0.045
"""Reflectance of the black board the patches are on; invented."""

Rect = tuple[int, int, int, int]


class RenderedChart(NamedTuple):
    """A picture of the chart.

    Parameters
    ----------
    picture
        Linear sRGB as the camera sees it, float and neither cut off nor noisy unless asked; or
        the stored sRGB bytes. Shape (rows, columns, 3).
    rects
        x, y, width and height of each patch in pixels, drawn in a little from its edges.
    names
        Plain name of each patch, row by row.
    lab
        True CIELAB under D65, 2 degrees, shape (24, 3).
    """

    picture: Field | NDArray[np.uint8]
    rects: list[Rect]
    names: list[str]
    lab: Array


@cache
def _table() -> tuple[list[str], Array, Array]:
    """Read names, wavelengths and reflectances (24, n) of the patches."""
    lines = [line for line in SPECTRA.read_text("utf-8").splitlines() if not line.startswith("#")]
    names = lines[0].split(",")[1:]
    rows = np.array([[float(cell) for cell in line.split(",")] for line in lines[1:]])
    return names, rows[:, 0], rows[:, 1:].T


def chart_reflectances() -> Array:
    """Give the reflectance of the patches on the grid, shape (24, 81), held flat over 730 nm."""
    _, known, reflectances = _table()
    return np.stack([np.interp(GRID, known, row) for row in reflectances])


def chart_lab() -> Array:
    """Give the true CIELAB of the patches under D65, 2 degrees, shape (24, 3)."""
    _, known, reflectances = _table()
    return np.stack([lab_d65(row, known) for row in reflectances])


def render_chart(
    power: Array,
    cam: Camera,
    *,
    balance: float = 1.0,
    exposure: float = 0.9,
    fall: float = 0.0,
    corner: float = 0.0,
    tone: float = 0.0,
    noise_seed: int | None = None,
    stored: bool = False,
    patch: int = 60,
) -> RenderedChart:
    """Photograph the chart.

    Parameters
    ----------
    power
        The light, shape (81,).
    cam
        The camera.
    balance
        How far its white balance goes: 0 daylight preset, 1 full.
    exposure
        Raw value of a perfect white.
    fall
        Part of the light lost from the left side to the right.
    corner
        Part of the light the lens loses in the corners.
    tone
        Strength of the camera's tone curve, in stored pictures only.
    noise_seed
        Seed of the noise, none if None.
    stored
        True for the sRGB bytes, False for linear light.
    patch
        Side of a patch in pixels.
    """
    names, _, _ = _table()
    surface, rects = _layout(patch)
    reflectances = np.vstack([chart_reflectances(), np.full(GRID.size, BOARD)])
    raw: Field = raw_response(cam, power, reflectances)[surface]
    height, width = surface.shape
    across = (np.arange(width) + 0.5) / width
    raw = raw * (vignette(height, width, corner) * (1.0 - fall * across))[..., None]
    raw = raw * exposure if noise_seed is None else expose(raw, exposure, 40000.0, noise_seed)
    linear = finish(cam, raw, gains(cam, power, balance))
    picture = encode(linear, tone) if stored else linear
    return RenderedChart(picture, rects, list(names), chart_lab())


def _layout(patch: int) -> tuple[NDArray[np.int64], list[Rect]]:
    """Lay out the board: which surface each pixel shows, 24 for the board, and the rectangles."""
    gap, inset = patch // 5, patch // 6
    step = patch + gap
    surface = np.full((ROWS * step + gap, COLUMNS * step + gap), COLUMNS * ROWS, dtype=np.int64)
    rects: list[Rect] = []
    for index in range(COLUMNS * ROWS):
        x, y = gap + index % COLUMNS * step, gap + index // COLUMNS * step
        surface[y : y + patch, x : x + patch] = index
        rects.append((x + inset, y + inset, patch - 2 * inset, patch - 2 * inset))
    return surface, rects
