"""How the zones of a piece look with their finish."""

from __future__ import annotations

import pytest

from swatchwright.acts.finish import preview
from swatchwright.acts.finish_zones import looks_of_zones
from swatchwright.acts.in_light import ROOM
from swatchwright.colour.spectrum import Light
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.shelf.csv_file import demo_shelf

DEMO = demo_shelf()
RED, BLUE = (("strong-red-orange", 0.8), ("white-clean", 0.2)), (("deep-blue-red", 1.0),)
OVER = Stack((Layer(LayerKind.WASH, (("white-clean", 1.0),)), Layer(LayerKind.WAX, amber=1.0)))


def test_each_zone_in_each_light() -> None:
    """A zone looks as the page of the finish shows its mix, bare and with all on, in each light."""
    seen = looks_of_zones(DEMO, {"body": RED, "top": BLUE}, OVER)
    assert seen.over == OVER.layers
    for zone, parts in (("body", RED), ("top", BLUE)):
        steps = preview(DEMO, parts, OVER).steps
        for light in ROOM:
            look = seen.looks[zone]
            assert look.seen(light, finished=True) == steps[-1].under(light)
            assert look.seen(light, finished=False) == steps[0].under(light)
        dry = seen.looks[zone].seen(Light.D65, finished=True)
        assert dry.triple == pytest.approx(steps[-1].dry.triple, abs=1e-6)


def test_each_zone_has_its_own_layers() -> None:
    """A wash for the body alters the body alone; what goes on all lies over both."""
    wash = Layer(LayerKind.WASH, (("white-clean", 1.0),), zone="body")
    over = Stack((wash, Layer(LayerKind.WAX, amber=1.0)))
    seen = looks_of_zones(DEMO, {"body": RED, "top": RED}, over)
    assert seen.over == over.layers
    body, top = seen.looks["body"], seen.looks["top"]
    assert body.bare == top.bare
    assert body.finished == preview(DEMO, RED, over.over("body")).steps[-1].lights
    assert top.finished == preview(DEMO, RED, over.over("top")).steps[-1].lights
    assert body.finished != top.finished
    assert looks_of_zones(DEMO, {"all": RED}, over).looks["all"].finished == top.finished


def test_a_layer_that_cannot_be_on_one_zone() -> None:
    """Where the body's wash cannot be, the body is seen bare, and the top with its wax."""
    gone = Layer(LayerKind.WASH, (("no-such-paint", 1.0),), zone="body")
    over = Stack((gone, Layer(LayerKind.WAX, amber=1.0)))
    seen = looks_of_zones(DEMO, {"body": RED, "top": BLUE}, over)
    assert seen.why_bare is not None
    assert seen.looks["body"].bare == seen.looks["body"].finished
    assert seen.looks["top"].bare != seen.looks["top"].finished
    assert seen.over == over.layers[1:]


def test_nothing_over_it() -> None:
    """With no layers a zone looks bare either way."""
    seen = looks_of_zones(DEMO, {"body": RED}, Stack())
    look = seen.looks["body"]
    assert look.bare == look.finished
    assert (seen.over, seen.why_bare) == ((), None)


def test_a_wash_of_a_paint_that_is_gone() -> None:
    """Where a layer cannot be, the zones are seen bare, and it is told why."""
    gone = Stack((Layer(LayerKind.WASH, (("no-such-paint", 1.0),)),))
    seen = looks_of_zones(DEMO, {"body": RED}, gone)
    assert seen.over == ()
    assert seen.why_bare is not None
    assert "no-such-paint" in seen.why_bare.what
    assert seen.looks["body"].bare == seen.looks["body"].finished


def test_a_mix_of_a_paint_that_is_gone() -> None:
    """A zone whose mix cannot be reckoned is passed over, and the others are not."""
    seen = looks_of_zones(DEMO, {"body": (("no-such-paint", 1.0),), "top": BLUE}, OVER)
    assert set(seen.looks) == {"top"}
    assert seen.why_bare is None
