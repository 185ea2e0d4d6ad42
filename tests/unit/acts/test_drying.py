"""A stroke read wet and dry."""

from __future__ import annotations

import numpy as np
import pytest

from swatchwright.acts.drying import learn_stroke
from swatchwright.acts.paint import look_of_paint
from swatchwright.colour.difference import delta_e_2000
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.values import Lab

DEMO = demo_shelf()
BLUE = "deep-blue-red"


def test_a_stroke_that_dries_as_its_kind_does() -> None:
    """The paint's own wet and dry colour teach nothing new."""
    look = look_of_paint(DEMO, BLUE)
    found = learn_stroke(DEMO, BLUE, wet=look.wet, dry=look.dry)
    assert delta_e_2000(found.by_kind.triple, look.wet.triple) < 0.01
    assert delta_e_2000(found.own.triple, look.wet.triple) < 0.3
    assert found.drying.off_before == pytest.approx(0, abs=0.01)


def test_a_stroke_that_dries_less() -> None:
    """By what was learnt the wet colour comes out nearer to what was read than by its kind."""
    look = look_of_paint(DEMO, BLUE)
    wet = Lab.of((np.array(look.wet.triple) + np.array(look.dry.triple)) / 2)
    found = learn_stroke(DEMO, BLUE, wet=wet, dry=look.dry)
    own, kind = (delta_e_2000(lab.triple, wet.triple) for lab in (found.own, found.by_kind))
    assert own < kind
    assert own == pytest.approx(found.drying.off_after, abs=0.05)
    assert kind == pytest.approx(found.drying.off_before, abs=0.05)
    assert found.shelf.paint(BLUE).own_finish is not None
