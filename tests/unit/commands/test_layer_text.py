"""A layer as it is typed."""

from __future__ import annotations

import pytest

from swatchwright.commands.layer_text import layer_of_text, over_part
from swatchwright.errors import MendableError
from swatchwright.paint.layers import Layer, LayerKind, Sheen, Stack


@pytest.mark.parametrize(
    ("text", "layer"),
    [
        ("wax", Layer(LayerKind.WAX)),
        ("WAX amber=1", Layer(LayerKind.WAX, amber=1.0)),
        (
            "wash a b=2 water=2.5 left=20% passes=2",
            Layer(LayerKind.WASH, (("a", 1.0), ("b", 2.0)), water=2.5, left=0.2, passes=2),
        ),
        ("oil coats=2", Layer(LayerKind.OIL, passes=2)),
        ("varnish sheen=Satin", Layer(LayerKind.VARNISH, sheen=Sheen.SATIN)),
        ("wash a water=2 on=body", Layer(LayerKind.WASH, (("a", 1.0),), water=2.0, zone="body")),
        ("wax on=left  door", Layer(LayerKind.WAX, zone="left door")),
        ("wax on=all", Layer(LayerKind.WAX)),
    ],
)
def test_a_layer_is_read(text: str, layer: Layer) -> None:
    """Its kind, its paints and what is said of it, in any order after the kind."""
    assert layer_of_text(text) == layer


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "nothing in it"),
        ("tar", "tar"),
        ("wash a water=much", "much"),
        ("wash a passes=1.5", "1.5"),
        ("wash a left=300", "300 %"),
        ("wash a=x", "a=x"),
        ("varnish sheen=shiny", "shiny"),
        ("wash water=3", "0 paints"),
        ("wax amber=nan", "nan"),
        ("wax on=", "no part"),
        ("wash a on=body water=2", "body water=2"),
        ("on=body", "nothing in it"),
        ("wax on=" + 61 * "x", "too long"),
    ],
)
def test_what_is_no_layer_is_refused(text: str, says: str) -> None:
    """What cannot be read is named, with what would do."""
    with pytest.raises(MendableError) as caught:
        layer_of_text(text)
    assert says in caught.value.what
    assert caught.value.mend


def test_the_part_that_is_asked_of() -> None:
    """What lies over a part is what goes on all and what on it; which part has to be said."""
    wash, wax = layer_of_text("wash a on=body"), layer_of_text("wax")
    stack = Stack((wash, wax))
    assert over_part(stack, "body") == stack
    assert over_part(stack, "top") == over_part(stack, "all") == Stack((wax,))
    assert over_part(Stack((wax,)), None) == Stack((wax,))
    with pytest.raises(MendableError, match="one part alone") as caught:
        over_part(stack, None)
    assert "--part body" in caught.value.mend
