"""Spots that show a colour well."""

from __future__ import annotations

import numpy as np

from swatchwright.photo.spots import spots


def test_spots_lie_deep_inside_the_patches_and_apart() -> None:
    """Two large patches get spots well away from their edges, a speck gets none."""
    distance = np.full((100, 150), np.inf)
    distance[20:80, 10:60], distance[20:80, 90:140], distance[2:5, 70:73] = 0.5, 0.5, 0.0
    y, x = np.indices(distance.shape) * 10 + 3
    found = spots(distance, x, y)
    assert 2 <= len(found) <= 3
    for column, row in found:
        part = distance[row // 10 - 4 : row // 10 + 5, column // 10 - 4 : column // 10 + 5]
        assert np.all(part == 0.5)
    apart = [np.hypot(a[0] - b[0], a[1] - b[1]) for a in found for b in found if a is not b]
    assert min(apart) > 300


def test_a_lone_pixel_gets_a_spot() -> None:
    """There is always one, be the patch ever so small."""
    distance = np.full((30, 30), np.inf)
    distance[7, 21] = 9.0
    y, x = np.indices(distance.shape)
    assert spots(distance, x, y) == ((21, 7),)


def test_a_spot_shows_the_colour_itself() -> None:
    """Inside the patch the pixel nearest to the colour is taken, not any."""
    distance = np.full((60, 60), 2.9)
    distance[::3, ::3] = 0.1
    y, x = np.indices(distance.shape)
    column, row = spots(distance, x, y)[0]
    assert distance[row, column] == 0.1
