"""Every set of paints that may meet."""

from __future__ import annotations

from math import comb

import pytest

from swatchwright.mixing.subsets import subsets
from swatchwright.paint.family import Family
from swatchwright.paint.paints import stack
from unit.paint.made import paint


@pytest.mark.parametrize("size", [1, 2, 3])
@pytest.mark.parametrize("count", [2, 3, 7])
def test_all_of_them_once(count: int, size: int) -> None:
    """Each subset of a shelf is listed once, its paints rising."""
    rows = subsets(stack([paint(str(i)) for i in range(count)]), size).tolist()
    assert len(rows) == comb(count, size) == len({tuple(row) for row in rows})
    assert all(row == sorted(set(row)) for row in rows)
    assert rows == sorted(rows)


def test_water_and_solvent_never_meet() -> None:
    """Of two water-borne and three solvent-borne paints only those of one kind are mixed."""
    families = [Family.OIL, Family.SATIN, Family.OIL, Family.CHALKY, Family.OIL]
    stacked = stack([paint(str(i), family=f) for i, f in enumerate(families)])
    assert subsets(stacked, 1).tolist() == [[0], [1], [2], [3], [4]]
    assert subsets(stacked, 2).tolist() == [[0, 2], [0, 4], [1, 3], [2, 4]]
    assert subsets(stacked, 3).tolist() == [[0, 2, 4]]


def test_no_pair_is_a_list_of_none() -> None:
    """One of each kind makes no pair, and three of two paints make none; the shape stays."""
    both = stack([paint("a"), paint("b", family=Family.OIL)])
    assert subsets(both, 2).shape == (0, 2)
    assert subsets(both, 3).shape == (0, 3)
