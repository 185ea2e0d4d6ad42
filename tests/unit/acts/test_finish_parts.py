"""Which part of a piece a mix is on, and edits of its layers that leave the other parts' alone."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.acts.batches import WHOLE_PIECE, keep_recipes
from swatchwright.acts.finish_parts import (
    EVERYWHERE,
    LaidOn,
    laid,
    laid_as_first_wash,
    laid_otherwise,
    mixes_on,
    moved,
    on_colour,
    placed,
    taken_off,
)
from swatchwright.acts.jobs import job_of, keep_document, new_job, open_jobs
from swatchwright.acts.recipes import Recipes, recipes_for, typed_colour
from swatchwright.acts.stock import take_demo_shelf
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.piece.common import Kind, common_piece
from swatchwright.shelf.csv_file import demo_shelf

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from swatchwright.shelf.store.store import Store

RED, BLUE = typed_colour(46, 34, 24), typed_colour(28, 3, -24)
WASH = Layer(LayerKind.WASH, (("white-clean", 1.0),))
WAX = Layer(LayerKind.WAX)
BODY = LaidOn(("body",), whole=False, others=("top",), mixed=("top",))
REST = LaidOn(("body", "drawers"), whole=False, others=("top",), mixed=("top",))


def on(zone: str, layer: Layer = WASH) -> Layer:
    """Give a layer on a part."""
    return Layer(layer.kind, layer.paints, zone=zone)


@pytest.fixture(scope="module")
def found() -> dict[str, Recipes]:
    """Give the mixes for a red and a blue."""
    return {
        name: recipes_for(lab, demo_shelf(), keep=1) for name, lab in (("red", RED), ("blue", BLUE))
    }


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give a store with the demonstration shelf."""
    with open_jobs(tmp_path / "store.sqlite") as made:
        take_demo_shelf(made)
        yield made


def job_with(
    store: Store, found: dict[str, Recipes], kept: dict[str, str], *, kind: Kind | None
) -> str:
    """Keep mixes for parts, by name, with a job whose piece may be sized; give its id."""
    id_ = new_job(store, title="Box").jobs[0]
    if kind is not None:
        keep_document(store, id_, "piece", common_piece(kind))
    for zone, name in kept.items():
        keep_recipes(store, id_, found[name], zone=zone)
    return id_


class TestWhichPart:
    """What a mix is on."""

    def test_one_mix_for_all_lays_on_all(self, store: Store, found: dict[str, Recipes]) -> None:
        """Sized or not, a layer over the only mix goes on all of the piece."""
        for kind in (None, Kind.BLANKET_BOX):
            id_ = job_with(store, found, {WHOLE_PIECE: "red"}, kind=kind)
            (mix,) = mixes_on(job_of(store, id_), Stack((WASH,)))
            assert mix.on.target == EVERYWHERE
            assert mix.on.mixed == mix.besides == ()
            assert bool(mix.on.choices) is (kind is not None)

    def test_all_but_the_lid(self, store: Store, found: dict[str, Recipes]) -> None:
        """Beside a lid with a mix of its own, the mix for the whole piece is on the rest."""
        id_ = job_with(store, found, {WHOLE_PIECE: "red", "top": "blue"}, kind=Kind.BLANKET_BOX)
        top, rest = mixes_on(job_of(store, id_), Stack())
        assert (top.on.target, top.on.mixed) == (("top",), ("body",))
        assert (rest.on.target, rest.on.mixed, rest.besides) == (("body",), ("top",), ("top",))
        job = job_of(store, id_)
        assert on_colour(job, RED.lab, Stack()) == rest.on
        assert on_colour(job, BLUE.lab, Stack()) == top.on

    def test_what_cannot_be_told_apart_goes_on_all(
        self, store: Store, found: dict[str, Recipes]
    ) -> None:
        """Of a piece that is not sized the rest has no name: what is laid on it goes on the lid."""
        id_ = job_with(store, found, {WHOLE_PIECE: "red", "top": "blue"}, kind=None)
        top, rest = mixes_on(job_of(store, id_), Stack())
        assert (top.on.target, top.on.mixed) == (("top",), (WHOLE_PIECE,))
        assert (rest.on.target, rest.on.mixed) == (EVERYWHERE, ("top",))

    def test_parts_of_a_mix_with_other_layers_are_given_apart(
        self, store: Store, found: dict[str, Recipes]
    ) -> None:
        """A mix on all of a box, with a wash over its lid alone, is given for body and lid."""
        id_ = job_with(store, found, {WHOLE_PIECE: "red"}, kind=Kind.BLANKET_BOX)
        mixes = mixes_on(job_of(store, id_), Stack((on("top"), WAX)))
        assert {mix.on.target for mix in mixes} == {("body",), ("top",)}
        assert all(mix.on.mixed == () for mix in mixes)
        mixes = mixes_on(job_of(store, id_), Stack((on("top"), on("body"), WAX)))
        assert [mix.on.target for mix in mixes] == [EVERYWHERE]

    def test_a_colour_of_no_part(self, store: Store, found: dict[str, Recipes]) -> None:
        """A colour that the job does not know would go over all its mixes."""
        id_ = job_with(store, found, {"body": "red", "top": "blue"}, kind=None)
        job = job_of(store, id_)
        stray = on_colour(job, typed_colour(85, 2, 14).lab, Stack())
        assert (stray.target, set(stray.mixed)) == (EVERYWHERE, {"body", "top"})
        assert on_colour(None, RED.lab, Stack()) == LaidOn()


class TestEdits:
    """What is done over one part."""

    def test_laid_for_each_part_of_a_mix(self) -> None:
        """A layer over a mix on two parts is kept for each of them, and edited as one."""
        stack = laid(Stack((WAX,)), REST, WASH)
        assert stack.layers == (WAX, on("body"), on("drawers"))
        twice = laid_otherwise(stack, REST, 1, Layer(LayerKind.WASH, WASH.paints, passes=2))
        assert [layer.passes for layer in twice.layers] == [1, 2, 2]
        assert twice.zones == ("body", "drawers")
        assert taken_off(twice, REST, 1) == Stack((WAX,))

    def test_on_all_and_back(self) -> None:
        """A layer of a part can go on all of the piece, and on the part again, at its place."""
        stack = Stack((on("top", WAX), on("body"), WAX))
        everywhere = placed(stack, BODY, 0, EVERYWHERE)
        assert everywhere.layers == (on("top", WAX), WASH, WAX)
        assert placed(everywhere, BODY, 0, BODY.zones) == stack

    def test_a_wash_for_the_client_leaves_the_lid_alone(self) -> None:
        """It replaces the washes of its part; one that lay on all stays on the lid."""
        stack = Stack((WASH, on("body"), on("top"), WAX))
        new = Layer(LayerKind.WASH, (("soft-black", 1.0),))
        washed = laid_as_first_wash(stack, BODY, new)
        assert washed.over("body").layers == (on("body", new), WAX)
        assert [(one.kind, one.paints) for one in washed.over("top").layers] == [
            (one.kind, one.paints) for one in stack.over("top").layers
        ]
        assert laid_as_first_wash(Stack((WASH, WAX)), LaidOn(), new).layers == (new, WAX)

    @given(st.lists(st.sampled_from(["", "body", "drawers", "top"]), max_size=8), st.data())
    def test_moving_leaves_what_lies_over_the_lid(
        self, zones: list[str], data: st.DataObject
    ) -> None:
        """Over the part layers change places; over the lid only what is on all does."""
        rest = [zone for zone in zones if zone in {"", "top"}]
        # A layer of the mix on two parts is one for each of them.
        spread = [z for zone in zones for z in (REST.zones if zone in REST.zones else (zone,))]
        stack = Stack(
            tuple(Layer(LayerKind.WAX, passes=n % 20, zone=z) for n, z in enumerate(spread))
        )
        shown = REST.over(stack).layers
        if len(shown) < 2:
            return
        place = data.draw(st.integers(0, len(shown) - 2))
        after = moved(stack, REST, place, 1)
        wanted = list(shown)
        wanted[place], wanted[place + 1] = wanted[place + 1], wanted[place]
        assert list(REST.over(after).layers) == wanted
        assert moved(after, REST, place + 1, -1).over("body") == stack.over("body")
        assert len(after.over("drawers").layers) == len(wanted)
        if "" not in {shown[place].zone, shown[place + 1].zone} or not rest:
            assert after.over("top") == stack.over("top")
        if (shown[place].zone == "") is not (shown[place + 1].zone == ""):
            assert after.over("top") == stack.over("top")
