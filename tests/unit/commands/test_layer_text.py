"""A layer as it is typed."""

from __future__ import annotations

import pytest

from swatchwright.commands.layer_text import layer_of_text
from swatchwright.errors import MendableError
from swatchwright.paint.layers import Layer, LayerKind, Sheen


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
    ],
)
def test_what_is_no_layer_is_refused(text: str, says: str) -> None:
    """What cannot be read is named, with what would do."""
    with pytest.raises(MendableError) as caught:
        layer_of_text(text)
    assert says in caught.value.what
    assert caught.value.mend
