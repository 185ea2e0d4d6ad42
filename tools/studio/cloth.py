"""Woven and printed cloth: threads that catch the light, stripes and a printed sprig."""

import numpy as np

from studio.field import Field, noise, soft_step

__all__ = ["STRIPES", "printed", "striped", "thread_relief"]

THREAD = 5.2
"""Distance between threads, in pixels of the full-size picture."""

COLUMN, ROW = 178.0, 252.0
"""Repeat of the print, in pixels."""

CLAY, BLUE, LINEN = 0, 1, 2
STRIPES = (
    (CLAY, 46), (LINEN, 5), (BLUE, 4), (LINEN, 5), (CLAY, 6), (BLUE, 28), (CLAY, 6), (LINEN, 5),
    (BLUE, 4), (LINEN, 5),
)  # fmt: skip
"""Yarn and number of threads of each stripe of one repeat; the first is centred."""


def striped(u: Field, v: Field) -> tuple[Field, Field]:
    """Weave a striped four-and-one twill, its weft ink blue.

    Parameters
    ----------
    u, v
        Place on the cloth across and along the stripes, in pixels from its middle.

    Returns
    -------
    yarn : Field
        Which yarn is on top: 0 clay red, 1 ink blue, 2 natural linen.
    shade : Field
        Light on it, 0-1; one on a crown.
    """
    sequence = np.concatenate([np.full(count, yarn) for yarn, count in STRIPES])
    wander = 0.12 * THREAD
    u = u + wander * noise(u / 40, v / 28, 51)
    v = v + wander * noise(u / 28, v / 40, 53)
    warp, weft = np.floor(u / THREAD), np.floor(v / THREAD)
    step = np.mod(warp + weft, 5)
    shade = thread_relief(u / THREAD, v / THREAD, step, 4)
    position = np.mod(warp + STRIPES[0][1] // 2, sequence.size).astype(np.int32)
    # The warps on both sides swell over a weft, so that only its middle is seen.
    covered = np.abs(2 * (u / THREAD - warp) - 1) > 0.55
    yarn: Field = np.where((step < 4) | covered, sequence[position], BLUE).astype(np.float32)
    return yarn, shade


def thread_relief(u: Field, v: Field, step: Field, run: int) -> Field:
    """Shade threads of a weave: lit crowns, flanks down to a half, dark gaps.

    Parameters
    ----------
    u, v
        Place in threads across the warp and across the weft.
    step
        Place in the float of the warp, 0 to run - 1; `run` where the weft is on top.
    run
        How many wefts a warp passes over.
    """
    in_u, in_v = u - np.floor(u), v - np.floor(v)
    warp_on_top = step < run
    side = 2 * np.where(warp_on_top, in_u, in_v) - 1
    length = np.where(warp_on_top, (step + in_v) / run, in_u)
    end = 2 * length - 1
    flank = 1 - 0.5 * np.abs(side) ** 3.2
    dip = 1 - 0.45 * np.abs(end) ** (4 if run > 1 else 2.6)
    gap = 1 - (0.45 if run > 1 else 0.28) * soft_step(np.abs(side), 0.80, 1.0)
    lean = 1 - 0.10 * np.clip(side, 0, 1)  # the flank turned from the light
    thread = np.where(warp_on_top, np.floor(u), 500 + np.floor(v))
    run_along = np.where(warp_on_top, v, u)
    fibre = 1 + 0.035 * np.sin(2 * np.pi * (2.2 * run_along + 0.9 * side))
    # Where the warp is dense, the weft lies deep.
    deep = np.where(warp_on_top | (run == 1), 1, 0.62)
    uneven = 1 + 0.05 * noise(thread * 0.73, run_along / 9, 59)
    shade: Field = (flank * dip * gap * lean * deep * fibre * uneven).astype(np.float32)
    return shade


def printed(u: Field, v: Field) -> tuple[Field, Field]:
    """Print a sprig in half-drop on a fine plain weave.

    Parameters
    ----------
    u, v
        Place on the cloth, in pixels.

    Returns
    -------
    ink : Field
        Share of each colour, shape (..., 4): off-white, sea green, straw yellow, ink blue.
    shade : Field
        Light on the threads, 0-1.
    """
    pitch = 5.0
    step = np.mod(np.floor(u / pitch) + np.floor(v / pitch), 2)
    shade = thread_relief(u / pitch, v / pitch, step, 1)
    shade = 1 - 0.42 * (1 - shade)  # a fine thread, pressed flat by printing
    ragged = 0.9 * noise(u / 3.5, v / 3.5, 61)
    column = np.floor(u / COLUMN)
    a = u - (column + 0.5) * COLUMN
    b = np.mod(v + ROW / 2 * np.mod(column, 2), ROW) - ROW / 2
    between = np.mod(u + COLUMN / 2, COLUMN) - COLUMN / 2
    layers = _sprig(a, b) + _beads(between, np.mod(v, ROW / 4) - ROW / 8)
    ink = np.zeros((*u.shape, 4), dtype=np.float32)
    ink[..., 0] = 1
    for colour, away in layers:
        cover = soft_step(away + ragged, 0.7, -0.7)[..., None]
        ink *= 1 - cover
        ink[..., colour : colour + 1] += cover
    return ink, shade


def _sprig(a: Field, b: Field) -> list[tuple[int, Field]]:
    """Give each shape of the sprig: its colour and the distance to its edge, in pixels."""
    bend = 16 * np.sin(b / 62)
    stem = np.maximum(np.abs(a - bend) - 3.4, np.maximum(-54 - b, b - 114))
    shapes: list[tuple[int, Field]] = [(3, stem)]
    for at, turn, size in _LEAVES:
        root = 16 * np.sin(at / 62)
        shapes.append((1, _leaf(a - root, b - at, turn, size)))
        shapes.append((0, _vein(a - root, b - at, turn, size)))
    return shapes + _flower(a - 16 * np.sin(-86 / 62), b + 86)


def _beads(a: Field, b: Field) -> list[tuple[int, Field]]:
    return [
        (2, np.hypot(a, b) - 8.5),
        (3, np.hypot(a, np.abs(b) - ROW / 8) - 7.0),
        (3, np.hypot(a, b) - 3.2),
    ]


_LEAVES = (
    (-22.0, 0.58, 74.0), (4.0, 2.56, 78.0), (40.0, 0.58, 82.0), (68.0, 2.56, 80.0),
)  # fmt: skip
"""Where each leaf leaves the stem, its turn in radians and its length in pixels."""


def _turned(a: Field, b: Field, turn: float) -> tuple[Field, Field]:
    cos, sin = np.float32(np.cos(turn)), np.float32(np.sin(turn))
    return a * cos - b * sin, a * sin + b * cos


def _leaf(a: Field, b: Field, turn: float, size: float) -> Field:
    p, q = _turned(a, b, turn)
    bulge = size * 0.56  # two arcs through both tips
    offset = np.sqrt(bulge**2 - (size / 2) ** 2)
    away: Field = np.hypot(p - size / 2 - 3, np.abs(q) + offset) - bulge
    return away


def _vein(a: Field, b: Field, turn: float, size: float) -> Field:
    p, q = _turned(a, b, turn)
    away: Field = np.maximum(np.abs(q) - 1.5, np.abs(p - size * 0.47) - size * 0.36)
    return away


def _flower(a: Field, b: Field) -> list[tuple[int, Field]]:
    around = np.arctan2(b, a)
    reach = np.hypot(a, b)
    petals = reach - (33 + 9 * np.cos(8 * around))
    return [(2, petals), (0, reach - 15.5), (3, reach - 11.5)]
