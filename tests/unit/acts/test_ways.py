"""The ways to take a coat where it is wanted, side by side."""

from __future__ import annotations

from dataclasses import replace
from math import hypot

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from swatchwright.acts.client_wish import Stands, Wanted
from swatchwright.acts.correct import put_right
from swatchwright.acts.finish import preview
from swatchwright.acts.layering import Primer
from swatchwright.acts.recoat import surface_of
from swatchwright.acts.ways import Way, WayKind, Ways, of_every_wash, ways_to
from swatchwright.colour.difference import delta_e_2000
from swatchwright.errors import MendableError
from swatchwright.mixing.asked import Asked
from swatchwright.mixing.search import find_recipes
from swatchwright.mixing.wash_risks import RiskKind
from swatchwright.paint.family import Family
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.paint.paints import Paint
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab
from unit.paint.made import paint

DEMO = demo_shelf()
RED = [("strong-red-orange", 3.0), ("white-clean", 1.0)]
STACKS = (
    Stack((Layer(LayerKind.WAX),)),
    Stack((Layer(LayerKind.WAX, amber=1.0), Layer(LayerKind.VARNISH))),
    Stack(
        (
            Layer(LayerKind.WASH, (("soft-black", 1.0),)),
            Layer(LayerKind.WAX, (("soft-black", 1.0),)),
        )
    ),
)
QUIETER = Wanted(asked=(Asked.LESS_VIVID, 1 / 3))


def test_a_third_less_vivid_both_ways() -> None:
    """Washes and the pot are shown side by side, each bringing the chroma down by about a third."""
    found = ways_to(DEMO, RED, QUIETER)
    assert {way.kind for way in found.ways} == {WayKind.WASH, WayKind.STIR}
    own = hypot(found.now.a, found.now.b)
    for way in found.ways:
        assert hypot(way.dry.a, way.dry.b) / own == pytest.approx(2 / 3, abs=0.15)
        assert way.risks
    felt = [way.felt for way in found.ways]
    assert felt == sorted(felt)


def test_a_wash_that_is_found_can_be_looked_at() -> None:
    """Its layer, laid by the forward reckoning, has the colours that were told."""
    for way in ways_to(DEMO, RED, QUIETER).ways:
        if way.layer is not None:
            step = preview(DEMO, RED, Stack((way.layer,))).steps[1]
            assert step.dry.triple == pytest.approx(way.dry.triple, abs=1e-9)
            assert step.flat.triple == pytest.approx(way.flat.triple, abs=1e-9)
            assert step.grain.triple == pytest.approx(way.grain.triple, abs=1e-9)


def test_a_part_is_judged_by_its_own_layers() -> None:
    """What is wanted of the body is seen under the body's wax; its wash goes on it alone."""
    amber = Layer(LayerKind.WAX, amber=2.0, zone="body")
    over = Stack((amber, Layer(LayerKind.WASH, (("soft-black", 1.0),), zone="top")))
    body, top = (ways_to(DEMO, RED, QUIETER, over=over, zone=zone) for zone in ("body", "top"))
    alone = ways_to(DEMO, RED, QUIETER, over=Stack((replace(amber, zone=""),)))
    assert (body.now, body.aim, body.before) == (alone.now, alone.aim, alone.before)
    assert body.over == (amber,)
    assert top.now == ways_to(DEMO, RED, QUIETER).now
    assert not any("washes and glazes" in note for note in body.notes)
    assert any("washes and glazes" in note for note in top.notes)
    assert {way.layer.zone for way in body.ways if way.layer is not None} == {"body"}
    assert ways_to(DEMO, RED, QUIETER, over=over, zone="all").now == top.now


@settings(max_examples=10)
@given(
    st.sampled_from(DEMO.paints),
    st.sampled_from(Asked),
    st.floats(0, 1),
)
def test_no_way_is_worse_than_doing_nothing(below: Paint, word: Asked, dial: float) -> None:
    """Every way that is shown comes nearer than the coat is."""
    found = ways_to(DEMO, [(below.id, 1.0)], Wanted(asked=(word, dial)))
    assert all(way.felt < found.before and way.delta_e < found.before for way in found.ways)
    assert found.ways or any("leave it as it is" in note for note in found.notes)


def test_as_grey_as_a_cloth() -> None:
    """The aim has the cloth's chroma and the coat's own lightness."""
    found = ways_to(DEMO, RED, Wanted(grey_as=Lab(70, 3, 4)))
    assert hypot(found.aim.a, found.aim.b) == pytest.approx(5)
    assert found.aim.triple[0] == pytest.approx(found.now.triple[0])
    more = ways_to(DEMO, [("stone-grey-warm", 1.0)], Wanted(grey_as=Lab(70, 30, 40)))
    assert any("more vivid" in note for note in more.notes)


def test_only_what_may_be_used_is_used() -> None:
    """Other paints than those named are in no way."""
    may = {"white-clean", "soft-black"}
    for way in ways_to(DEMO, RED, QUIETER, only=sorted(may)).ways:
        used = {p.id for p in way.washing.paints} if way.washing else set()
        used |= {s.paint.id for s in way.additions.steps} if way.additions else set()
        assert not used - may


def test_a_coat_over_a_primer_starts_from_what_is_seen() -> None:
    """What shows through counts, and the pot is said to be reckoned without it."""
    found = ways_to(DEMO, [("strong-yellow-green", 1.0)], QUIETER, ground=Primer(Lab(20, 0, 0), 1))
    hiding = ways_to(DEMO, [("strong-yellow-green", 1.0)], QUIETER)
    assert found.now.L < hiding.now.L - 5
    assert any("a coat that hides" in note for note in found.notes)


def stirring(found: Ways) -> Way:
    """Give the way of stirring into the pot."""
    return next(way for way in found.ways if way.kind is WayKind.STIR)


def test_a_pot_with_little_room_is_told_of() -> None:
    """Where the room stops the stirring short, it is told how much it would take, and for what."""
    grey = Wanted(asked=(Asked.LESS_VIVID, 0.9))
    tight, roomy = (stirring(ways_to(DEMO, RED, grey, pot=100, tub=tub)) for tub in (102.0, 5000.0))
    assert roomy.roomier is None
    assert tight.roomier is not None
    assert tight.roomier.delta_e < tight.delta_e
    enough = tight.roomier.volume + 0.1
    again = stirring(ways_to(DEMO, RED, grey, pot=100, tub=enough))
    assert again.delta_e == pytest.approx(tight.roomier.delta_e, abs=0.5)


@pytest.mark.parametrize("above", STACKS)
def test_what_lies_above_stays_on(above: Stack) -> None:
    """Every way is told as it looks with the layers on that stay above it.

    Laid by the forward reckoning with those layers over it, a wash has the colours that were told;
    washes and glazes of the stack are left out, since the new one goes in their place.
    """
    clear = tuple(layer for layer in above.layers if not layer.is_paint)
    found = ways_to(DEMO, RED, QUIETER, over=above)
    assert found.over == clear
    bare = preview(DEMO, RED, Stack(clear)).steps[-1]
    assert found.now.triple == pytest.approx(bare.dry.triple, abs=1e-9)
    assert found.ways
    for way in found.ways:
        if way.layer is not None:
            step = preview(DEMO, RED, Stack((way.layer, *clear))).steps[-1]
            assert float(delta_e_2000(step.dry.triple, way.dry.triple)) < 0.01
            assert float(delta_e_2000(step.grain.triple, way.grain.triple)) < 0.01
        assert way.delta_e == pytest.approx(float(delta_e_2000(found.aim.triple, way.dry.triple)))
    said = any("left out" in note for note in found.notes)
    assert said is (clear != above.layers)


def test_the_pot_answers_the_same_wherever_it_is_asked() -> None:
    """The same question of the same pot and room has one answer, beside washes or by itself."""
    wax = Stack((Layer(LayerKind.WASH, (("soft-black", 1.0),)), Layer(LayerKind.WAX, amber=1.0)))
    may = [paint.id for paint in DEMO.paints if paint.id != "soft-black"]
    for room in (None, 255.0, 900.0):
        beside = stirring(ways_to(DEMO, RED, QUIETER, pot=250, tub=room, over=wax, only=may))
        pot = [(id_, 250 * parts / 4) for id_, parts in RED]
        alone = put_right(DEMO, pot, QUIETER, tub=room, over=wax, only=may)
        assert beside.additions == alone.additions
        assert beside.roomier == alone.roomier


def test_where_each_wash_ends_is_told_of_each() -> None:
    """What is said of all washes alike is never where one ends, or how its hue turns."""
    for dial in (0.2, 0.4, 0.6):
        found = ways_to(DEMO, RED, Wanted(asked=(Asked.LESS_VIVID, dial)))
        own = {
            risk.words
            for way in found.ways
            for risk in way.risks
            if risk.kind in {RiskKind.HUE, RiskKind.SIDE_EFFECT}
        }
        assert own
        assert not own & set(of_every_wash(found))


def test_a_solvent_mix_is_washed_with_its_kind() -> None:
    """Water-borne paint is neither washed over nor stirred into a solvent-borne mix here."""
    oils = tuple(paint(i, K=k, family=Family.OIL) for i, k in (("a", 5.0), ("b", 80.0)))
    shelf = Shelf("mine", (*oils, paint("w", K=200.0)))
    found = ways_to(shelf, [("a", 1)], Wanted(asked=(Asked.DARKER, 0.3)))
    assert found.ways
    assert all(way.layer is None or "w" not in dict(way.layer.paints) for way in found.ways)
    with pytest.raises(MendableError, match="solvent-borne"):
        ways_to(shelf, [("a", 1)], QUIETER, only=["w"])


@pytest.mark.parametrize(
    ("wanted", "more", "says"),
    [
        (Wanted(), {}, "where the colour should go"),
        (Wanted(asked=(Asked.WARMER, 0.1), colour=Lab(50, 0, 0)), {}, "where the colour should go"),
        (Wanted(asked=(Asked.WARMER, 2.0)), {}, "dial"),
        (QUIETER, {"left": 0.0}, "0 %"),
        (QUIETER, {"pot": 0.0}, "0 ml"),
        (QUIETER, {"pot": 100.0, "tub": 50.0}, "room for only 50 ml"),
        (QUIETER, {"keep": 0}, "0 washes"),
    ],
)
def test_what_cannot_be_asked_is_refused(wanted: Wanted, more: dict[str, float], says: str) -> None:
    """No aim or two, and numbers out of range, are named."""
    with pytest.raises(MendableError) as caught:
        ways_to(DEMO, RED, wanted, **more)  # type: ignore[arg-type]
    assert says in caught.value.what


def test_the_difference_told_is_the_difference() -> None:
    """Each way's figure is CIEDE2000 between its colour and the aim."""
    found = ways_to(DEMO, RED, Wanted(colour=Lab(55, 20, 15)))
    for way in found.ways:
        apart = float(delta_e_2000(found.aim.triple, way.dry.triple))
        assert way.delta_e == pytest.approx(apart, abs=1e-9)


class TestHowFarItHasCome:
    """What helps a piece that is painted is not what helps paint in the pot."""

    def test_in_the_pot(self) -> None:
        """Paint in the pot takes what is stirred in, as it does where nothing was said."""
        in_pot = ways_to(DEMO, RED, QUIETER, stands=Stands.POT, pot=300)
        assert [way.kind for way in in_pot.ways] == [WayKind.STIR]
        unsaid = stirring(ways_to(DEMO, RED, QUIETER, pot=300)).additions
        said = in_pot.ways[0].additions
        assert said is not None
        assert unsaid is not None
        assert [(s.paint.id, s.ml) for s in said.steps] == [
            (s.paint.id, s.ml) for s in unsaid.steps
        ]
        assert not any("wash" in note for note in in_pot.notes)

    def test_painted(self) -> None:
        """A painted piece takes the washes there were, and last a full new coat."""
        painted = ways_to(DEMO, RED, QUIETER, stands=Stands.PAINTED)
        unsaid = [w.layer for w in ways_to(DEMO, RED, QUIETER).ways if w.kind is WayKind.WASH]
        assert [way.layer for way in painted.ways] == [*unsaid, None]
        assert painted.ways[-1].kind is WayKind.RECOAT

    @pytest.mark.parametrize("over", STACKS)
    def test_a_new_coat_looks_as_told(self, over: Stack) -> None:
        """Laid by the forward reckoning below what stays over it, the new coat is as was told.

        It comes nearer than the mix for the bare colour would, since the layers are allowed for.
        """
        found = ways_to(DEMO, RED, QUIETER, stands=Stands.PAINTED, over=over)
        way = found.ways[-1]
        assert way.recoat is not None
        stays = Stack(tuple(layer for layer in over.layers if not layer.is_paint))
        recipe = way.recoat.recipe
        parts = [(p.id, share) for p, share in zip(recipe.paints, recipe.shares, strict=True)]
        seen = preview(DEMO, parts, stays).steps[-1].dry
        assert seen.triple == pytest.approx(way.dry.triple, abs=1e-6)
        off = float(delta_e_2000(seen.triple, found.aim.triple))
        assert off == pytest.approx(way.delta_e, abs=1e-6)
        assert off < 1.5
        bare = find_recipes(found.aim, DEMO.paints, keep=1).recipes[0]
        parts = [(p.id, share) for p, share in zip(bare.paints, bare.shares, strict=True)]
        unallowed = preview(DEMO, parts, stays).steps[-1].dry
        assert off <= float(delta_e_2000(unallowed.triple, found.aim.triple)) + 1e-6

    def test_its_amount_by_hand(self) -> None:
        """The need is area times coats over the rate and over what a brush lays: by hand.

        A brush loses a twentieth, a sample takes 30 ml and touching up a tenth: common practice,
        no source. All of it is rounded up to 5 ml.
        """
        way = ways_to(DEMO, RED, QUIETER, stands=Stands.PAINTED, surface=surface_of(1.5, 3)).ways[
            -1
        ]
        assert way.recoat is not None
        recipe = way.recoat.recipe
        rate = 1 / sum(
            s / p.spreading_rate for p, s in zip(recipe.paints, recipe.shares, strict=True)
        )
        need = 1.5 * 3 / rate * 1000 / 0.95
        assert way.recoat.volume == pytest.approx(need * 1.1 + 30, abs=5)
        assert sum(way.recoat.ml) == pytest.approx(way.recoat.volume)

    def test_what_may_be_on_already(self) -> None:
        """Neither wash nor paint holds on wax: that is said of a painted piece, not of a pot."""
        wax = STACKS[0]
        painted = ways_to(DEMO, RED, QUIETER, over=wax, stands=Stands.PAINTED)
        assert any("wax" in note and "take it off" in note for note in painted.notes)
        in_pot = ways_to(DEMO, RED, QUIETER, over=wax, stands=Stands.POT)
        assert not any("take it off" in note for note in in_pot.notes)

    @pytest.mark.parametrize(("area", "coats"), [(0.0, 2), (1001.0, 2), (1.0, 0), (1.0, 21)])
    def test_a_surface_that_cannot_be(self, area: float, coats: int) -> None:
        """An area or a number of coats that cannot be is refused."""
        with pytest.raises(MendableError):
            surface_of(area, coats)
