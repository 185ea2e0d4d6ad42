"""Layers as plain values: what may be said of each, and what is usual."""

from __future__ import annotations

import msgspec
import pytest

from swatchwright.errors import MendableError
from swatchwright.paint.clear import AMBER_WAX, CLEAR_WAX
from swatchwright.paint.layers import (
    MOST_LAYERS,
    Layer,
    LayerKind,
    Sheen,
    Stack,
    check_layer,
    check_stack,
    clear_of,
    follows_grain,
    wash_of,
)

WHITE = (("white", 1.0),)


def test_a_stack_is_kept_and_read_again() -> None:
    """Layers survive being written as JSON and read, to the last field."""
    stack = Stack(
        (
            Layer(LayerKind.WASH, (("white", 2.0), ("grey", 1.0)), water=2.5, left=0.3, passes=2),
            Layer(LayerKind.WAX, amber=1.0),
            Layer(LayerKind.VARNISH, sheen=Sheen.SATIN),
        )
    )
    assert msgspec.json.decode(msgspec.json.encode(stack), type=Stack) == stack
    assert msgspec.convert(msgspec.to_builtins(stack), Stack) == stack


@pytest.mark.parametrize(
    ("layer", "says"),
    [
        (Layer(LayerKind.WASH), "0 paints"),
        (Layer(LayerKind.VARNISH, WHITE), "1 paints"),
        (Layer(LayerKind.WASH, WHITE, water=-1), "“water” at \N{MINUS SIGN}1"),
        (Layer(LayerKind.WASH, WHITE, water=float("nan")), "“water” at nan"),
        (Layer(LayerKind.WASH, WHITE, left=1.5), "“left” at 1.5"),
        (Layer(LayerKind.WASH, WHITE, passes=21), "“passes” at 21"),
        (Layer(LayerKind.WASH, WHITE, sheen=Sheen.GLOSS), "A layer of wash was given “sheen”"),
        (Layer(LayerKind.GLAZE, WHITE, left=0.5), "A layer of glaze was given “left”"),
        (Layer(LayerKind.OIL, water=1), "A layer of oil was given “water”"),
        (Layer(LayerKind.OIL, amber=6), "“amber” at 6"),
    ],
)
def test_a_layer_that_cannot_be_is_refused(layer: Layer, says: str) -> None:
    """What is out of range, or has no meaning for the kind, is named."""
    with pytest.raises(MendableError) as caught:
        check_layer(layer)
    assert says in caught.value.what
    assert caught.value.mend


def test_too_many_layers_are_refused() -> None:
    """A stack has an end."""
    check_stack(Stack((Layer(LayerKind.WAX),) * MOST_LAYERS))
    with pytest.raises(MendableError, match="13 layers"):
        check_stack(Stack((Layer(LayerKind.WAX),) * (MOST_LAYERS + 1)))


def test_what_is_usual_is_taken_where_nothing_is_said() -> None:
    """A wash is wiped to a fifth, a glaze is left; a wax is clear unless it is said to be amber."""
    assert wash_of(Layer(LayerKind.WASH, WHITE)).left == pytest.approx(0.2)
    assert wash_of(Layer(LayerKind.GLAZE, WHITE)).left == 1
    assert clear_of(Layer(LayerKind.WAX)) == CLEAR_WAX
    assert clear_of(Layer(LayerKind.WAX, amber=1)) == AMBER_WAX
    assert clear_of(Layer(LayerKind.VARNISH, sheen=Sheen.GLOSS)).glare == 0


def test_what_is_wiped_follows_the_grain() -> None:
    """A wash gathers in the grain most, a glaze less, a varnish not at all."""
    kinds = (LayerKind.WASH, LayerKind.GLAZE, LayerKind.VARNISH)
    wash, glaze, varnish = (follows_grain(Layer(kind)) for kind in kinds)
    assert 1 == wash > glaze > varnish == 0


class TestPartsOfThePiece:
    """A layer goes on all of a piece or on one part of it."""

    WASH = Layer(LayerKind.WASH, (("white-clean", 1.0),), zone="body")
    WAX = Layer(LayerKind.WAX)
    GLAZE = Layer(LayerKind.GLAZE, (("white-clean", 1.0),), zone="top")
    STACK = Stack((WASH, WAX, GLAZE))

    def test_what_lies_over_a_part(self) -> None:
        """What goes on all of it and what on it alone, in their order."""
        assert self.STACK.over("body").layers == (self.WASH, self.WAX)
        assert self.STACK.over("top").layers == (self.WAX, self.GLAZE)

    def test_what_lies_over_all(self) -> None:
        """A part without layers of its own, and the whole piece, have what goes on all."""
        assert self.STACK.over("drawers").layers == self.STACK.over("").layers == (self.WAX,)
        assert self.STACK.zones == ("body", "top")

    def test_a_name_too_long(self) -> None:
        """A name that no part has is refused, and how to mend it is said."""
        with pytest.raises(MendableError, match="too long"):
            check_layer(Layer(LayerKind.WAX, zone="x" * 61))
