"""Layers in a JSON file, good and broken."""

from __future__ import annotations

import json
from contextlib import suppress
from typing import TYPE_CHECKING

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.acts.stack_file import layer_json, read_stack, stack_of_json
from swatchwright.errors import MendableError
from swatchwright.paint.layers import Layer, LayerKind, Sheen, Stack

if TYPE_CHECKING:
    from pathlib import Path

STACK = Stack(
    (
        Layer(LayerKind.WASH, (("a", 1.0), ("b", 2.0)), water=3, left=0.2, passes=2),
        Layer(LayerKind.VARNISH, amber=0.5, sheen=Sheen.SATIN, zone="top"),
    )
)


def test_what_is_told_reads_back(tmp_path: Path) -> None:
    """The JSON that the commands print of layers is what a file of them holds."""
    path = tmp_path / "finish.json"
    path.write_text(json.dumps({"layers": [layer_json(layer) for layer in STACK.layers]}))
    assert read_stack(path) == STACK


@pytest.mark.parametrize(
    ("text", "says"),
    [
        (b"", "does not hold layers"),
        (b"[]", "does not hold layers"),
        (b'{"layers": 3}', "does not hold layers"),
        (b'{"layers": [3]}', "does not hold layers"),
        (b'{"layers": [{"kind": "tar"}]}', "tar"),
        (b'{"layers": [{"kind": "wash", "watter": 3}]}', "watter"),
        (b'{"layers": [{"kind": "wash", "paints": [["a"]]}]}', "does not hold layers"),
        (b'{"layers": [{"kind": "wax", "passes": 1e99}]}', "does not hold layers"),
        (b'{"layers": [{"kind": "wax", "passes": 99}]}', "99"),
        (b'{"layers": [{"kind": "wash"}]}', "0 paints"),
        (b"\xff\xfe", "does not hold layers"),
        (b"[" * 100_000, "does not hold layers"),
    ],
)
def test_a_broken_file_is_refused(text: bytes, says: str) -> None:
    """What is no stack is refused with what is off."""
    with pytest.raises(MendableError) as caught:
        stack_of_json(text, "finish.json")
    assert says in caught.value.what
    assert caught.value.mend


def test_on_which_part() -> None:
    """A layer with no part, or for all, goes on all of the piece; no part is told of it."""
    layers = [{"kind": "wax"}, {"kind": "wax", "zone": "all"}, {"kind": "oil", "zone": " top "}]
    stack = stack_of_json(json.dumps({"layers": layers}).encode(), "finish.json")
    assert [layer.zone for layer in stack.layers] == ["", "", "top"]
    assert [layer_json(layer).get("zone") for layer in stack.layers] == [None, None, "top"]


@given(st.binary(max_size=200))
def test_nothing_else_comes_of_any_bytes(text: bytes) -> None:
    """Whatever the file holds, it is a stack or is refused in words."""
    with suppress(MendableError):
        assert isinstance(stack_of_json(text, "finish.json"), Stack)


def test_a_file_that_is_not_there_or_too_large(tmp_path: Path) -> None:
    """Both are said, and no more than a megabyte is read."""
    with pytest.raises(MendableError, match="cannot be read"):
        read_stack(tmp_path / "none.json")
    large = tmp_path / "large.json"
    large.write_bytes(b" " * 1_000_001)
    with pytest.raises(MendableError, match="more than 1 MB"):
        read_stack(large)
