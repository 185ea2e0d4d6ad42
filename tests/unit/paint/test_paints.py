"""A paint, and paints stacked into arrays."""

from __future__ import annotations

import numpy as np
from numpy.testing import assert_allclose

from swatchwright.paint.family import FAMILIES, Family, Finish
from swatchwright.paint.paints import HowKnown, Tin, stack
from unit.paint.made import paint


def test_a_stack_keeps_the_order() -> None:
    """Rows of a stack are the paints in their order, with their own and their family's numbers."""
    paints = [
        paint("one", 1, 100, Family.CHALKY, volume_solids=0.4, spreading_rate=13),
        paint("two", 2, 50, Family.GLOSS, volume_solids=0.42, spreading_rate=14),
        paint("three", 3, 20, Family.OIL, volume_solids=0.5, spreading_rate=15),
    ]
    stacked = stack(paints)
    assert len(stacked) == 3
    assert stacked.K.shape == stacked.S.shape == (3, 36)
    assert_allclose(stacked.K[:, 0], [1, 2, 3])
    assert_allclose(stacked.S[:, -1], [100, 50, 20])
    assert stacked.solids.tolist() == [0.4, 0.42, 0.5]
    assert stacked.spreading_rate.tolist() == [13, 14, 15]
    assert stacked.glare.tolist() == [FAMILIES[p.family].glare for p in paints]
    assert stacked.wet_scattering.tolist() == [FAMILIES[p.family].wet_scattering for p in paints]
    assert stacked.milk.tolist() == [FAMILIES[p.family].milk for p in paints]
    assert stacked.waterborne.tolist() == [True, True, False]


def test_a_stack_is_a_copy() -> None:
    """Changing a stack does not change the paint it came from."""
    one = paint("one", 1, 100)
    stack([one]).K[:] = 9
    assert np.all(one.K == 1)


def test_a_paint_is_trusted_no_more_than_is_said() -> None:
    """Where nothing is said, K and S count as guessed, and weight and price as unknown."""
    made = paint()
    assert made.how_known is HowKnown.GUESSED
    assert made.density is None
    assert made.tins == ()
    assert Tin(500).price is None
    assert made.finish == FAMILIES[Family.CHALKY]


def test_a_finish_of_its_own_goes_before_its_familys() -> None:
    """A paint that has learnt how it dries does as it has learnt, in a stack too."""
    own = Finish(0.6, 0.5, 0.0)
    made = paint(own_finish=own)
    assert made.finish == own
    assert stack([made, paint()]).wet_scattering.tolist() == [
        0.5,
        FAMILIES[Family.CHALKY].wet_scattering,
    ]
