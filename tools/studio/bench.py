"""A weathered workbench of planks, seen from above."""

import numpy as np

from studio.field import Field, Frame, layered_noise, noise, soft_step

__all__ = ["bench"]

PLANK = 236.0
GAP = 5.0
KNOTS = ((1130.0, 118.0, 24.0), (210.0, 1010.0, 30.0), (1500.0, 880.0, 20.0))
"""x, y and radius of each knot, in pixels."""


def bench(frame: Frame, palette: dict[str, Field], at: tuple[float, float] = (0.0, 0.0)) -> Field:
    """Paint the bench.

    Parameters
    ----------
    frame
        The picture plane.
    palette
        Colour of each material, shape (3,), by its name.
    at
        Which part of the bench is seen: pixels from its corner, right and down.

    Returns
    -------
    Field
        Colour times shading, shape (rows, columns, 3).
    """
    x, y = frame.places()
    x, y = (
        x - 0.018 * y + at[0],
        y + 0.018 * x + at[1],
    )  # laid a degree out of true, as benches are photographed
    plank = np.floor((y + 70.0) / PLANK)
    inside = (y + 70.0) - plank * PLANK
    dark = _darkness(x, y, plank)
    shade = _shade(x, inside, plank)
    worn = _old_paint(x, y, plank)[..., None]
    wood = palette["pale wood"] * (1 - dark[..., None]) + palette["dark wood"] * dark[..., None]
    painted: Field = (wood * (1 - worn) + palette["old sea paint"] * worn) * shade[..., None]
    return painted


def _darkness(x: Field, y: Field, plank: Field) -> Field:
    """Give the share of dark wood, 0-1: rings, streaks, cracks and knots."""
    bent = y + 10.0 * noise(x / 330 + 7 * plank, y / 90, 11)
    knots = np.zeros_like(x)
    for knot_x, knot_y, radius in KNOTS:
        away = ((x - knot_x) / (3.2 * radius)) ** 2 + ((y - knot_y) / (1.5 * radius)) ** 2
        near = np.exp(-away)
        bent += np.sign(y - knot_y) * near * radius * -0.9
        eye = soft_step(away, 0.13, 0.03) * (0.72 + 0.28 * np.sin(30 * np.sqrt(away)))
        knots = np.maximum(knots, eye)
    shift = 31.7 * plank
    rings = np.sin(bent / 4.3 + 9 * noise(x / 700 + shift, bent / 60, 13))
    fibres = 0.9 * noise(x / 30 + shift, bent / 1.5, 17) + noise(x / 130 + shift, bent / 3.2, 19)
    broad = layered_noise(x / 260 + shift, bent / 48, 23)
    tone = 0.13 * np.sin(plank * 2.3 + 1.0)
    share = 0.27 + tone + 0.085 * rings + 0.12 * fibres + 0.19 * broad
    cracks = soft_step(noise(x / 150 + shift, bent / 2.6, 29), 0.62, 0.86)
    share = share + 0.5 * cracks * soft_step(broad, -0.2, 0.5)
    dark: Field = np.clip(np.maximum(share, 0.86 * knots), 0.02, 1.0).astype(np.float32)
    return dark


def _shade(x: Field, inside: Field, plank: Field) -> Field:
    """Give the light on the planks: dark gaps, rounded edges, dents."""
    ragged = 1.6 * noise(x / 60, plank * 5.0, 31)
    edge = np.minimum(inside, PLANK - inside) + ragged
    gap = soft_step(edge, GAP * 0.35, GAP * 0.75)
    lit = 0.10 * np.exp(-(((inside - GAP - 3) / 3.5) ** 2))
    turned = 0.22 * np.exp(-(((PLANK - inside) - GAP) / 6.0))
    dents = 1.0 + 0.05 * noise(x / 90, inside / 40 + 13 * plank, 37)
    shade: Field = (0.07 + 0.93 * gap) * (dents + lit - turned * (inside > PLANK / 2))
    return shade


def _old_paint(x: Field, y: Field, plank: Field) -> Field:
    """Give where flecks of old paint are left, 0-1."""
    patch = layered_noise(x / 300, y / 170 + 3 * plank, 41, 2)
    flecks = layered_noise(x / 34, y / 9, 43, 3)
    left: Field = 0.62 * soft_step(patch + 0.6 * flecks, 0.66, 0.84)
    return left
