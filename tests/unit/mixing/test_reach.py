"""What a shelf can make, and what would widen it."""

from __future__ import annotations

import numpy as np
import pytest

from swatchwright.errors import MendableError
from swatchwright.mixing.reach import NEAR, hull_of, one_more
from swatchwright.mixing.search import find_recipes
from swatchwright.paint.family import Family
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.values import Lab
from unit.mixing.shelves import STRONG, made_by, some
from unit.paint.made import paint

DEMO = demo_shelf().paints


def test_the_hull_holds_the_mixes() -> None:
    """Mixes of any three lie within the hull, or 1.5 units outside it between its samples."""
    shelf = some(*STRONG)
    hull = hull_of(shelf)
    corners = hull.points[hull.faces]
    normals = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    normals /= np.linalg.norm(normals, axis=1, keepdims=True)
    middle = hull.points.mean(axis=0)
    outward = np.sign(np.einsum("ij,ij->i", normals, corners[:, 0] - middle))
    normals *= outward[:, None]
    rng = np.random.default_rng(2)
    for _ in range(200):
        which = rng.choice(len(shelf), 3, replace=False)
        mixed = made_by([shelf[i] for i in which], rng.dirichlet([1, 1, 1]).tolist())
        lab = np.array(mixed.triple)
        assert np.einsum("ij,ij->i", normals, lab - corners[:, 0]).max() < 1.5


def test_a_shelf_of_greys_fills_no_body() -> None:
    """White, grey and black make a line, and that is said."""
    greys = [paint(str(k), K=k, S=60.0) for k in (0.1, 3.0, 100.0)]
    with pytest.raises(MendableError, match="no body"):
        hull_of(greys)


def test_the_missing_paint_is_named() -> None:
    """A red is out of reach of white, black and blue; a red on the list brings it within 1."""
    shelf = some("white-clean", "soft-black", "deep-blue-red", "straw-yellow-muted")
    wanted = made_by(some("strong-red-orange", "white-clean"), (0.6, 0.4))
    assert find_recipes(wanted, shelf).recipes[0].delta_e > 5
    found = one_more(wanted, shelf, DEMO)
    assert found[0].paint.id == "strong-red-orange"
    assert [o.delta_e for o in found] == sorted(o.delta_e for o in found)
    assert all(o.delta_e <= NEAR for o in found)
    for o in found:
        assert find_recipes(wanted, [*shelf, o.paint]).recipes[0].delta_e <= NEAR + 0.1


def test_what_does_not_mix_is_passed_over() -> None:
    """An oil paint is no help to a water-borne shelf, nor is a paint that is there already."""
    shelf = some("white-clean", "soft-black")
    red = some("strong-red-orange")[0]
    oil = paint("oil", red.K, red.S, Family.OIL)
    assert one_more(Lab(45, 40, 30), shelf, [oil, *shelf]) == ()
